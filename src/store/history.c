/*
 * Undo and redo: an action's changeset is applied, inverted for undo. SQLite compares every row
 * with what the changeset says of it; the first one that differs stops the whole.
 */
#include "store/internal.h"

#include "base/show.h"

#include <assert.h>

/* The columns of STATEMENT_NEXT_UNDO and STATEMENT_NEXT_REDO. */
enum column { COLUMN_SEQUENCE, COLUMN_LABEL, COLUMN_BUILD, COLUMN_CHANGESET };

/* An action of the history, as a row of NEXT_UNDO or NEXT_REDO that is still open. */
struct action {
    int64_t sequence;
    int64_t build;
    char label[STORE_LABEL];
    const void *changeset;
    int size;
};

static enum fault read_action(struct store *store, sqlite3_stmt *statement,
                              struct action *ret_action, struct fault_note *note)
{
    bool row = false;
    enum fault fault = store_step(store, statement, &row, note);

    if (!fault && !row)
        return fault_say(note, FAULT_MISSING, "there is nothing to %s",
                         statement == store->statements[STATEMENT_NEXT_UNDO] ? "undo" : "redo");
    if (fault)
        return fault;
    assert(sqlite3_column_count(statement) == COLUMN_CHANGESET + 1);
    ret_action->sequence = sqlite3_column_int64(statement, COLUMN_SEQUENCE);
    show_into(ret_action->label, sizeof ret_action->label,
              (const char *)sqlite3_column_text(statement, COLUMN_LABEL));
    ret_action->build = sqlite3_column_int64(statement, COLUMN_BUILD);
    ret_action->changeset = sqlite3_column_blob(statement, COLUMN_CHANGESET);
    ret_action->size = sqlite3_column_bytes(statement, COLUMN_CHANGESET);
    return FAULT_NONE;
}

static int stop_at_conflict(void *context, int why, sqlite3_changeset_iter *at)
{
    (void)context;
    (void)why;
    (void)at;
    return SQLITE_CHANGESET_ABORT;
}

static enum fault apply(struct store *store, int size, void *changeset, struct fault_note *note)
{
    int result = sqlite3changeset_apply(store->db, size, changeset, NULL, stop_at_conflict, NULL);

    if (result == SQLITE_OK)
        return FAULT_NONE;
    if ((result & 0xff) == SQLITE_ABORT || (result & 0xff) == SQLITE_CONSTRAINT)
        return fault_say(note, FAULT_CHANGED, "another program changed what this action had done");
    return store_say(store, result, note);
}

static enum fault apply_inverted(struct store *store, const struct action *action,
                                 struct fault_note *note)
{
    void *inverted = NULL;
    int size = 0;
    int result = sqlite3changeset_invert(action->size, action->changeset, &size, &inverted);
    enum fault fault =
        result == SQLITE_OK ? apply(store, size, inverted, note) : store_say(store, result, note);

    sqlite3_free(inverted);
    return fault;
}

static enum fault mark(struct store *store, int64_t sequence, bool undone, struct fault_note *note)
{
    sqlite3_stmt *statement;
    struct binder binder;
    enum fault fault = store_statement(store, STATEMENT_MARK, &statement, note);

    if (fault)
        return fault;
    binder = binder_start(statement);
    bind_whole(&binder, sequence);
    bind_whole(&binder, undone);
    return binder_run(store, &binder, note);
}

/* The row stays open while its changeset is applied: the bytes live in it. */
static enum fault move(struct store *store, bool undo, struct action *ret_action,
                       struct fault_note *note)
{
    sqlite3_stmt *statement;
    struct action action;
    enum fault fault;

    assert(store->depth > 0 && !store->session);
    fault =
        store_statement(store, undo ? STATEMENT_NEXT_UNDO : STATEMENT_NEXT_REDO, &statement, note);

    if (fault)
        return fault;
    fault = read_action(store, statement, &action, note);
    if (!fault)
        fault = undo ? apply_inverted(store, &action, note)
                     : apply(store, action.size, (void *)(uintptr_t)action.changeset, note);
    sqlite3_reset(statement);
    if (!fault)
        fault = mark(store, action.sequence, undo, note);
    if (!fault)
        *ret_action = action;
    return fault;
}

static enum fault step(struct store *store, bool undo, char label[STORE_LABEL], int64_t *ret_build,
                       struct fault_note *note)
{
    struct action action;
    enum fault fault = store_write_begin(store, undo ? "store_undo" : "store_redo", note);

    if (fault)
        return fault;
    fault = move(store, undo, &action, note);
    fault = store_end(store, fault, note);
    if (fault)
        return fault;
    show_into(label, STORE_LABEL, action.label);
    *ret_build = action.build;
    return FAULT_NONE;
}

enum fault store_undo(struct store *store, char label[STORE_LABEL], int64_t *ret_build,
                      struct fault_note *note)
{
    return step(store, true, label, ret_build, note);
}

enum fault store_redo(struct store *store, char label[STORE_LABEL], int64_t *ret_build,
                      struct fault_note *note)
{
    return step(store, false, label, ret_build, note);
}

static enum fault peek(struct store *store, enum statement which, char label[STORE_LABEL],
                       struct fault_note *note)
{
    sqlite3_stmt *statement;
    struct action action;
    enum fault fault = store_statement(store, which, &statement, note);

    if (fault)
        return fault;
    fault = read_action(store, statement, &action, note);
    sqlite3_reset(statement);
    if (!fault)
        show_into(label, STORE_LABEL, action.label);
    return fault;
}

enum fault store_undo_label(struct store *store, char label[STORE_LABEL], struct fault_note *note)
{
    return peek(store, STATEMENT_NEXT_UNDO, label, note);
}

enum fault store_redo_label(struct store *store, char label[STORE_LABEL], struct fault_note *note)
{
    return peek(store, STATEMENT_NEXT_REDO, label, note);
}
