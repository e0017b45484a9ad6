#include "base/deliver.h"

#include <assert.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum fault deliver_sync_folder(const char *path, struct fault_note *note)
{
    char folder[PATH_MAX];
    const char *slash = strrchr(path, '/');
    int file;
    int why = 0;

    snprintf(folder, sizeof folder, "%.*s", slash ? (int)(slash - path + 1) : 1,
             slash ? path : ".");
    file = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (file < 0 || fsync(file) != 0)
        why = errno;
    if (file >= 0)
        close(file);
    /* Some file systems cannot sync a folder, and say so with EINVAL. */
    if (why != 0 && why != EINVAL)
        return fault_say(note, FAULT_IO, "the folder cannot be synced: %s", strerror(why));
    return FAULT_NONE;
}

static bool write_all(int file, const char *bytes, size_t count)
{
    while (count > 0) {
        ssize_t written = write(file, bytes, count);

        if (written < 0 && errno != EINTR)
            return false;
        if (written > 0) {
            bytes += written;
            count -= (size_t)written;
        }
    }
    return true;
}

/* As a file that open() makes: mkstemp gives nobody else a right. */
static bool give_rights(int file)
{
    mode_t mask = umask(0);

    umask(mask);
    return fchmod(file, 0666 & ~mask) == 0;
}

static enum fault say(struct fault_note *note, const char *path, int why)
{
    assert(why != 0);
    return fault_say(note, why == ENOSPC || why == EDQUOT ? FAULT_FULL : FAULT_IO,
                     "\"%.150s\" cannot be written: %s", path, strerror(why));
}

static bool exists(const char *path)
{
    return access(path, F_OK) == 0;
}

/* Gives a name that is free. Not every file system has hard links; renaming is the next best there.
 * Why it failed, as errno; 0 when it did not. */
static int take_name(const char *temporary, const char *path)
{
    if (link(temporary, path) == 0) {
        unlink(temporary);
        return 0;
    }
    if (errno == EEXIST || exists(path))
        return EEXIST;
    return rename(temporary, path) == 0 ? 0 : errno;
}

enum fault deliver_name(const char *temporary, const char *path, bool replace,
                        struct fault_note *note)
{
    int why;

    if (replace)
        why = rename(temporary, path) == 0 ? 0 : errno;
    else
        why = take_name(temporary, path);
    if (!replace && why == EEXIST)
        return fault_say(note, FAULT_DUPLICATE, "\"%.150s\" is there already", path);
    return why ? say(note, path, why) : FAULT_NONE;
}

enum fault deliver_file(const char *path, const void *bytes, size_t count, bool replace,
                        struct fault_note *note)
{
    char temporary[PATH_MAX + 16];
    enum fault fault = FAULT_NONE;

    if (!*path || strlen(path) >= PATH_MAX)
        return fault_say(note, FAULT_IO, "this is no name of a file");
    snprintf(temporary, sizeof temporary, "%s.new-XXXXXX", path);
    int file = mkstemp(temporary);
    if (file < 0)
        return say(note, path, errno);
    if (!give_rights(file) || !write_all(file, bytes, count) || fsync(file) != 0)
        fault = say(note, path, errno);
    if (close(file) != 0 && !fault)
        fault = say(note, path, errno);
    if (!fault)
        fault = deliver_name(temporary, path, replace, note);
    if (fault) {
        unlink(temporary);
        return fault;
    }
    return deliver_sync_folder(path, note);
}
