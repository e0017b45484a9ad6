/*
 * Opening a file that may have come from anywhere. In this order, so that nothing is written before
 * the file is known to be whole and ours:
 *
 *   1  the name: folder resolved, no link at its end
 *   2  the header, read as bytes: magic, application, version; WAL or not
 *   3  the schema, word for word as this program's of that version
 *   4  the content, where the file is small (else before the first write)
 *   5  back from WAL to the rollback journal; steps to this version
 *
 * The connection is hardened: nothing that a file can hold (triggers, views, functions in its
 * schema) is run.
 */
#include "store/internal.h"

#include "base/memory.h"

#include <assert.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* Files up to this size are looked through at opening, which takes 6 ms a megabyte. */
#define CHECKED_AT_OPENING (INT64_C(1) << 20)

static const struct {
    int option;
    int value;
} hardening[] = {
    {SQLITE_DBCONFIG_DEFENSIVE, 1},      {SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0},
    {SQLITE_DBCONFIG_ENABLE_TRIGGER, 0}, {SQLITE_DBCONFIG_ENABLE_VIEW, 0},
    {SQLITE_DBCONFIG_ENABLE_FKEY, 1},    {SQLITE_DBCONFIG_ENABLE_LOAD_EXTENSION, 0},
    {SQLITE_DBCONFIG_DQS_DML, 0},        {SQLITE_DBCONFIG_DQS_DDL, 0},
};

/* One attached database is what VACUUM INTO needs. */
static const struct {
    int limit;
    int most;
} limits[] = {
    {SQLITE_LIMIT_LENGTH, 64 << 20},     {SQLITE_LIMIT_SQL_LENGTH, 1 << 20},
    {SQLITE_LIMIT_ATTACHED, 1},          {SQLITE_LIMIT_COLUMN, 100},
    {SQLITE_LIMIT_EXPR_DEPTH, 100},      {SQLITE_LIMIT_TRIGGER_DEPTH, 20},
    {SQLITE_LIMIT_VARIABLE_NUMBER, 100},
};

/* Lets SQLite read a file whose end is missing, or of whose tables one is described wrongly. */
static int read_damaged(sqlite3 *db)
{
    int result = sqlite3_db_config(db, SQLITE_DBCONFIG_DEFENSIVE, 0, NULL);

    return result == SQLITE_OK ? sqlite3_db_config(db, SQLITE_DBCONFIG_WRITABLE_SCHEMA, 1, NULL)
                               : result;
}

enum fault connect_file(struct store *store, const char *path, const struct store_options *options,
                        struct fault_note *note)
{
    int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_NOFOLLOW | SQLITE_OPEN_NOMUTEX |
                SQLITE_OPEN_PRIVATECACHE | SQLITE_OPEN_EXRESCODE;
    int result = sqlite3_open_v2(path, &store->db, flags, options->vfs);

    for (size_t i = 0; i < sizeof hardening / sizeof hardening[0] && result == SQLITE_OK; i++)
        result = sqlite3_db_config(store->db, hardening[i].option, hardening[i].value, NULL);
    if (result == SQLITE_OK && options->damaged)
        result = read_damaged(store->db);
    if (result != SQLITE_OK)
        return store_say(store, result, note);
    for (size_t i = 0; i < sizeof limits / sizeof limits[0]; i++)
        sqlite3_limit(store->db, limits[i].limit, limits[i].most);
    store->vfs = options->vfs;
    store->patience = options->patience;
    sqlite3_busy_timeout(store->db, store->patience);
    return FAULT_NONE;
}

enum fault settle_connection(struct store *store, struct fault_note *note)
{
    return store_execute(store,
                         "PRAGMA cell_size_check = ON; PRAGMA mmap_size = 0;"
                         "PRAGMA synchronous = FULL; PRAGMA temp_store = MEMORY",
                         note);
}

/* The folder's real name and the file's own, in memory of ours. */
static enum fault resolve(const char *path, char **ret_path, struct fault_note *note)
{
    const char *slash = strrchr(path, '/');
    const char *name = slash ? slash + 1 : path;
    char folder[PATH_MAX];
    char real[PATH_MAX];
    size_t size;

    if (!*name || strlen(path) >= PATH_MAX)
        return fault_say(note, FAULT_IO, "this is no name of a file");
    snprintf(folder, sizeof folder, "%.*s", slash ? (int)(slash - path + 1) : 1,
             slash ? path : ".");
    if (!realpath(folder, real))
        return fault_say(note, FAULT_IO, "the folder cannot be reached: %s", strerror(errno));
    size = strlen(real) + strlen(name) + 2;
    *ret_path = memory_resize(NULL, size);
    if (!*ret_path)
        return fault_say_plain(note, FAULT_MEMORY);
    snprintf(*ret_path, size, "%s/%s", strcmp(real, "/") == 0 ? "" : real, name);
    return FAULT_NONE;
}

/* Makes the file where there is none; refuses what is no plain file. */
static enum fault find_file(const char *path, const struct store_options *options,
                            struct fault_note *note)
{
    struct stat about;

    if (lstat(path, &about) != 0)
        return errno == ENOENT
                   ? create_file(path, options, note)
                   : fault_say(note, FAULT_IO, "cannot be reached: %s", strerror(errno));
    if (S_ISLNK(about.st_mode))
        return fault_say(note, FAULT_REFUSED, "is a symbolic link; name the file itself");
    if (!S_ISREG(about.st_mode))
        return fault_say(note, FAULT_FOREIGN, "is not a file");
    return FAULT_NONE;
}

/* A file can be written to only where its journal can be made beside it. */
static bool folder_takes_files(const char *path)
{
    char folder[PATH_MAX];

    assert(strchr(path, '/')); /* resolve made it whole */
    snprintf(folder, sizeof folder, "%.*s", (int)(strrchr(path, '/') - path + 1), path);
    return faccessat(AT_FDCWD, folder, W_OK, AT_EACCESS) == 0;
}

static enum fault check_small(struct store *store, struct fault_note *note)
{
    int64_t pages = 0;
    int64_t size = 0;
    enum fault fault = store_ask_whole(store, "PRAGMA page_count", &pages, note);

    if (!fault)
        fault = store_ask_whole(store, "PRAGMA page_size", &size, note);
    if (!fault && pages <= CHECKED_AT_OPENING / size)
        fault = store_check(store, note);
    return fault;
}

/* Back to the rollback journal. LOCKED where another program keeps the file in WAL mode. */
static enum fault leave_wal(struct store *store, struct fault_note *note)
{
    return store_execute(store, "PRAGMA journal_mode = DELETE", note);
}

static enum fault look_at(struct store *store, const struct store_options *options,
                          struct fault_note *note)
{
    enum fault fault = check_header(store, options->step_count, note);

    /* Closing a WAL file writes to it: not before the file is known to be ours. */
    sqlite3_db_config(store->db, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, NULL);
    if (!fault)
        fault = settle_connection(store, note);
    if (!fault && store->read_only != FAULT_NEWER)
        fault = check_schema(store, options, note);
    if (options->damaged) {
        store->read_only = FAULT_DAMAGED;
        return fault;
    }
    if (!fault)
        fault = check_size(store, note);
    if (!fault)
        fault = check_small(store, note);
    if (fault || store->read_only == FAULT_NEWER)
        return fault;
    assert(store->read_only == FAULT_NONE);
    if (sqlite3_db_readonly(store->db, "main") == 1 || !folder_takes_files(store->path)) {
        store->read_only = FAULT_REFUSED;
        return FAULT_NONE;
    }
    fault = leave_wal(store, note);
    return fault ? fault : migrate(store, options, note);
}

enum fault store_open_with(struct store **ret_store, const char *path,
                           const struct store_options *options, struct fault_note *note)
{
    struct store *store = memory_resize(NULL, sizeof *store);
    enum fault fault;

    if (!store)
        return fault_say_plain(note, FAULT_MEMORY);
    *store = (struct store){.read_only = FAULT_NONE};
    fault = resolve(path, &store->path, note);
    if (!fault)
        fault = find_file(store->path, options, note);
    if (!fault)
        fault = connect_file(store, store->path, options, note);
    if (!fault)
        fault = look_at(store, options, note);
    if (!fault)
        fault = store_data_version(store, &store->seen, note);
    if (fault) {
        fault_at(note, "%s", path);
        store_close(store);
        return fault;
    }
    *ret_store = store;
    return FAULT_NONE;
}

enum fault store_open(struct store **ret_store, const char *path, struct fault_note *note)
{
    const struct store_options options = {
        .patience = STORE_PATIENCE, .steps = store_steps, .step_count = store_step_count};

    return store_open_with(ret_store, path, &options, note);
}

enum fault store_open_damaged(struct store **ret_store, const char *path, struct fault_note *note)
{
    const struct store_options options = {.patience = STORE_PATIENCE,
                                          .steps = store_steps,
                                          .step_count = store_step_count,
                                          .damaged = true};

    return store_open_with(ret_store, path, &options, note);
}

void store_close(struct store *store)
{
    if (!store)
        return;
    store_stop_recording(store);
    for (int i = 0; i < STATEMENT_COUNT; i++)
        sqlite3_finalize(store->statements[i]);
    for (int kind = 0; kind <= ENTITY_build; kind++)
        for (int verb = 0; verb < ROW_VERBS; verb++)
            sqlite3_finalize(store->rows[kind][verb]);
    if (sqlite3_close(store->db) != SQLITE_OK)
        BUG("a statement of the store is open at its close");
    memory_release(store->path);
    memory_release(store);
}

enum fault store_read_only(const struct store *store)
{
    return store->read_only;
}

const char *store_path(const struct store *store)
{
    return store->path;
}

bool store_changed(struct store *store)
{
    int64_t version = 0;

    return store_data_version(store, &version, NULL) || version != store->seen;
}

bool store_moved(struct store *store)
{
    int moved = 0;

    sqlite3_file_control(store->db, "main", SQLITE_FCNTL_HAS_MOVED, &moved);
    return moved != 0;
}
