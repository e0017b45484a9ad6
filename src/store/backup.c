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
    return result == 0 ? FAULT_NONE
                       : fault_say(note, FAULT_IO, "the copy cannot be synced: %s", strerror(why));
}

/* What was copied is read once more, from the disk. */
static enum fault verify(const char *path, const struct store *store, struct fault_note *note)
{
    const struct store_options options = {.vfs = store->vfs, .patience = store->patience};
    struct store copy = {.read_only = FAULT_NONE};
    enum fault fault = connect_file(&copy, path, &options, note);

    if (!fault)
        fault = check_content(&copy, note);
    for (int i = 0; i < STATEMENT_COUNT; i++)
        sqlite3_finalize(copy.statements[i]);
    sqlite3_close(copy.db);
    if (fault)
        fault_at(note, "the copy");
    return fault;
}

enum fault store_backup(struct store *store, const char *path, bool replace,
                        struct fault_note *note)
{
    char temporary[PATH_MAX + 48];
    enum fault fault;
    int file;

    if (strlen(path) >= PATH_MAX)
        return fault_say(note, FAULT_IO, "this is no name of a file");
    snprintf(temporary, sizeof temporary, "%s%s.new-XXXXXX", strchr(path, '/') ? "" : "./", path);
    file = mkstemp(temporary);
    if (file < 0)
        return fault_say(note, FAULT_IO, "the copy cannot be made: %s", strerror(errno));
    close(file);
    fault = copy_into(store, temporary, note);
    if (!fault)
        fault = sync_file(temporary, note);
    if (!fault)
        fault = verify(temporary, store, note);
    if (!fault)
        fault = deliver_name(temporary, path, replace, note);
    if (!fault)
        return deliver_sync_folder(path, note);
    unlink(temporary);
    return fault;
}
