/*
 * Transactions nest by a counter: only the outermost is SQLite's. A write takes the lock at its
 * begin, because a read that is turned into a write can be refused at once, however patient.
 *
 * An action is a write that is recorded. States of the store:
 *   idle     depth 0, no session
 *   open     depth > 0; store_begin, store_write_begin lead here, the outermost store_end back
 *   action   open, and the session records; store_action_begin leads here, store_action_end back
 */
#include "store/internal.h"

#include <assert.h>

static void assert_store(const struct store *store)
{
    assert(store->depth >= 0);
    assert((store->depth == 0) == (store->opened_at == NULL));
    assert(!store->session || store->depth > 0);
}

static enum fault begin(struct store *store, enum statement how, const char *where,
                        struct fault_note *note)
{
    enum fault fault = FAULT_NONE;

    assert_store(store);
    if (store->depth == 0)
        fault = store_run(store, how, note);
    if (fault)
        return fault;
    if (store->depth++ == 0)
        store->opened_at = where;
    return FAULT_NONE;
}

enum fault store_begin(struct store *store, const char *where, struct fault_note *note)
{
    return begin(store, STATEMENT_BEGIN, where, note);
}

/* After a full disk, a failed read or exhausted memory SQLite may have rolled back by itself. */
static void take_back(struct store *store)
{
    if (!sqlite3_get_autocommit(store->db) && store_run(store, STATEMENT_ROLLBACK, NULL))
        sqlite3_exec(store->db, "ROLLBACK", NULL, NULL, NULL);
    assert(sqlite3_get_autocommit(store->db));
}

enum fault store_end(struct store *store, enum fault fault, struct fault_note *note)
{
    assert(store->depth > 0);
    assert_store(store);
    if (--store->depth > 0)
        return fault;
    store->opened_at = NULL;
    if (!fault)
        fault = store_run(store, STATEMENT_COMMIT, note);
    if (fault == FAULT_REFERENCE && !sqlite3_get_autocommit(store->db))
        fault = say_still_used(store, note);
    if (fault)
        take_back(store);
    return fault;
}

enum fault store_data_version(struct store *store, int64_t *ret_version, struct fault_note *note)
{
    sqlite3_stmt *statement;
    bool row = false;
    enum fault fault = store_statement(store, STATEMENT_DATA_VERSION, &statement, note);

    if (fault)
        return fault;
    fault = store_step(store, statement, &row, note);
    if (row)
        *ret_version = sqlite3_column_int64(statement, 0);
    sqlite3_reset(statement);
    return fault;
}

static enum fault say_read_only(const struct store *store, struct fault_note *note)
{
    const char *why = "there is no permission to write to the file or its folder";

    assert(store->read_only != FAULT_NONE);
    if (store->read_only == FAULT_NEWER)
        why = "made by a newer version of this program, which alone may write to it";
    else if (store->read_only == FAULT_DAMAGED)
        why = "the file is damaged; nothing is written to it";
    return fault_say(note, store->read_only, "%s", why);
}

static enum fault check_unchanged(struct store *store, struct fault_note *note)
{
    int64_t version = 0;
    enum fault fault = store_data_version(store, &version, note);

    if (!fault && version != store->seen)
        fault = fault_say(note, FAULT_CHANGED,
                          "another program changed the file meanwhile; it has to be read again");
    return fault;
}

enum fault store_write_begin(struct store *store, const char *where, struct fault_note *note)
{
    enum fault fault;

    if (store->read_only)
        return say_read_only(store, note);
    fault = store_check(store, note);
    if (!fault)
        fault = begin(store, STATEMENT_BEGIN_WRITE, where, note);
    if (fault)
        return fault;
    assert(store->is_checked && store->depth > 0);
    fault = check_unchanged(store, note);
    return fault ? store_end(store, fault, note) : FAULT_NONE;
}

/*
 * Children before parents: where a change is applied again, a build's rows are deleted before the
 * build, so that the cascade finds nothing that the change still has to delete.
 */
static int attach_tables(sqlite3_session *session)
{
    int result = SQLITE_OK;

    for (int kind = ENTITY_COUNT - 1; kind >= 0 && result == SQLITE_OK; kind--)
        result = sqlite3session_attach(session, entity_of((enum entity_kind)kind)->name);
    if (result == SQLITE_OK)
        result = sqlite3session_attach(session, entity_of(ENTITY_build)->name);
    if (result == SQLITE_OK)
        result = sqlite3session_attach(session, entity_of(ENTITY_workshop)->name);
    return result;
}

/* SQLite's own does not take NULL. */
void store_stop_recording(struct store *store)
{
    if (store->session)
        sqlite3session_delete(store->session);
    store->session = NULL;
}

enum fault store_action_begin(struct store *store, const char *where, struct fault_note *note)
{
    enum fault fault = store_write_begin(store, where, note);
    int result;

    if (fault)
        return fault;
    assert(!store->session);
    result = sqlite3session_create(store->db, "main", &store->session);
    if (result == SQLITE_OK)
        result = attach_tables(store->session);
    if (result == SQLITE_OK)
        return FAULT_NONE;
    store_stop_recording(store);
    return store_end(store, store_say(store, result, note), note);
}

/* The history itself is no attached table, so writing it is not recorded. */
static enum fault record(struct store *store, const void *changeset, int size, int64_t build,
                         const char *label, struct fault_note *note)
{
    sqlite3_stmt *statement;
    struct binder binder;
    enum fault fault;

    assert(!store->session && size > 0 && build >= 0);
    fault = store_run(store, STATEMENT_DROP_UNDONE, note);

    if (!fault)
        fault = store_statement(store, STATEMENT_RECORD, &statement, note);
    if (fault)
        return fault;
    binder = binder_start(statement);
    bind_whole(&binder, build);
    bind_string(&binder, label);
    bind_bytes(&binder, changeset, size);
    fault = binder_run(store, &binder, note);
    if (!fault)
        fault = store_statement(store, STATEMENT_TRIM, &statement, note);
    if (fault)
        return fault;
    binder = binder_start(statement);
    bind_whole(&binder, STORE_HISTORY);
    return binder_run(store, &binder, note);
}

enum fault store_action_end(struct store *store, enum fault fault, int64_t build, const char *label,
                            struct fault_note *note)
{
    void *changeset = NULL;
    int size = 0;
    int result;

    assert(store->session);
    if (!fault) {
        result = sqlite3session_changeset(store->session, &size, &changeset);
        if (result != SQLITE_OK)
            fault = store_say(store, result, note);
    }
    store_stop_recording(store);
    if (!fault && size > 0)
        fault = record(store, changeset, size, build, label, note);
    sqlite3_free(changeset);
    return store_end(store, fault, note);
}
