#include "files.h"

#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

static struct {
    int at; /* 0: none fails */
    int error;
    bool for_good;
    int calls;
} files;

void files_arm(int at, int error, bool for_good)
{
    files.at = at;
    files.error = error;
    files.for_good = for_good;
    files.calls = 0;
}

void files_heal(void)
{
    files.at = 0;
}

int files_calls(void)
{
    return files.calls;
}

static bool fails(void)
{
    files.calls++;
    if (files.at == 0 || files.calls < files.at || (files.calls > files.at && !files.for_good))
        return false;
    errno = files.error;
    return true;
}

/* The linker's names: what is asked for as write comes to __wrap_write, the real one is
 * __real_write. With files of 64 bits, as meson has it, open and mkstemp are called open64 and
 * mkstemp64. */
int __real_open64(const char *path, int flags, ...);
int __real_mkstemp64(char *name);
ssize_t __real_write(int file, const void *bytes, size_t count);
int __real_fsync(int file);
int __real_fchmod(int file, mode_t mode);
int __real_close(int file);
int __real_link(const char *from, const char *to);
int __real_rename(const char *from, const char *to);

int __wrap_open64(const char *path, int flags, ...);
int __wrap_mkstemp64(char *name);
ssize_t __wrap_write(int file, const void *bytes, size_t count);
int __wrap_fsync(int file);
int __wrap_fchmod(int file, mode_t mode);
int __wrap_close(int file);
int __wrap_link(const char *from, const char *to);
int __wrap_rename(const char *from, const char *to);

int __wrap_open64(const char *path, int flags, ...)
{
    va_list more;
    va_start(more, flags);
    mode_t mode = flags & O_CREAT ? va_arg(more, mode_t) : 0;
    va_end(more);
    return fails() ? -1 : __real_open64(path, flags, mode);
}

int __wrap_mkstemp64(char *name)
{
    return fails() ? -1 : __real_mkstemp64(name);
}

/* A disk that is filling up takes a part first. */
ssize_t __wrap_write(int file, const void *bytes, size_t count)
{
    if (!fails())
        return __real_write(file, bytes, count > 65536 ? 65536 : count);
    if (count > 1 && __real_write(file, bytes, count / 2) < 0)
        return -1;
    errno = files.error;
    return -1;
}

int __wrap_fsync(int file)
{
    return fails() ? -1 : __real_fsync(file);
}

int __wrap_fchmod(int file, mode_t mode)
{
    return fails() ? -1 : __real_fchmod(file, mode);
}

/* The file is closed all the same, as close(2) of most systems does it. */
int __wrap_close(int file)
{
    bool failed = fails();
    int result = __real_close(file);
    if (failed)
        errno = files.error;
    return failed ? -1 : result;
}

int __wrap_link(const char *from, const char *to)
{
    return fails() ? -1 : __real_link(from, to);
}

int __wrap_rename(const char *from, const char *to)
{
    return fails() ? -1 : __real_rename(from, to);
}
