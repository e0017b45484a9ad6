#include "base/deliver.h"

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
    int result;

    snprintf(folder, sizeof folder, "%.*s", slash ? (int)(slash - path + 1) : 1,
             slash ? path : ".");
    file = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    result = file >= 0 ? fsync(file) : -1;
    if (file >= 0)
        close(file);
    /* Some file systems cannot sync a folder, and say so with EINVAL. */
    if (result != 0 && errno != EINVAL)
        return fault_say(note, FAULT_IO, 0, "the folder cannot be synced: %s", strerror(errno));
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
    return fault_say(note, why == ENOSPC || why == EDQUOT ? FAULT_FULL : FAULT_IO, 0,
                     "\"%.150s\" cannot be written: %s", path, strerror(why));
}

enum fault deliver_name(const char *temporary, const char *path, bool replace,
                        struct fault_note *note)
{
    if (replace && rename(temporary, path) == 0)
        return FAULT_NONE;
    if (!replace && link(temporary, path) == 0) {
        unlink(temporary);
        return FAULT_NONE;
    }
    /* Not every file system has hard links; renaming is the next best there. */
    if (!replace && errno != EEXIST && access(path, F_OK) != 0 && rename(temporary, path) == 0)
        return FAULT_NONE;
    if (!replace && access(path, F_OK) == 0)
        return fault_say(note, FAULT_DUPLICATE, 0, "\"%.150s\" is there already", path);
    return say(note, path, errno);
}

enum fault deliver_file(const char *path, const void *bytes, size_t count, bool replace,
                        struct fault_note *note)
{
    char temporary[PATH_MAX + 16];
    enum fault fault = FAULT_NONE;

    if (!*path || strlen(path) >= PATH_MAX)
        return fault_say(note, FAULT_IO, 0, "this is no name of a file");
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
