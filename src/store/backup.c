#include "store/internal.h"

#include "base/deliver.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static enum fault copy_into(struct store *store, const char *path, struct fault_note *note)
{
    sqlite3_stmt *statement;
    struct binder binder;
    enum fault fault = store_statement(store, STATEMENT_BACKUP, &statement, note);

    if (fault)
        return fault;
    binder = binder_start(statement);
    bind_string(&binder, path);
    return binder_run(store, &binder, note);
}

/* SQLite does not sync what it vacuums into. */
static enum fault sync_file(const char *path, struct fault_note *note)
{
    int file = open(path, O_RDWR | O_CLOEXEC | O_NOFOLLOW);
    int result = file >= 0 ? fsync(file) : -1;
    int why = errno;

    if (file >= 0)
        close(file);
    return result == 0
               ? FAULT_NONE
               : fault_say(note, FAULT_IO, 0, "the copy cannot be synced: %s", strerror(why));
}

enum fault store_backup(struct store *store, const char *path, struct fault_note *note)
{
    char temporary[PATH_MAX + 48];
    enum fault fault;
    int file;

    if (strlen(path) >= PATH_MAX)
        return fault_say(note, FAULT_IO, 0, "this is no name of a file");
    snprintf(temporary, sizeof temporary, "%s%s.new-XXXXXX", strchr(path, '/') ? "" : "./", path);
    file = mkstemp(temporary);
    if (file < 0)
        return fault_say(note, FAULT_IO, 0, "the copy cannot be made: %s", strerror(errno));
    close(file);
    fault = copy_into(store, temporary, note);
    if (!fault)
        fault = sync_file(temporary, note);
    if (!fault && rename(temporary, path) != 0)
        fault = fault_say(note, FAULT_IO, 0, "the copy cannot be named: %s", strerror(errno));
    if (!fault)
        return deliver_sync_folder(path, note);
    unlink(temporary);
    return fault;
}
