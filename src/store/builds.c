/* The list of builds, and the cache of what their plans said. */
#include "store/internal.h"

#include <setjmp.h>

struct listing {
    struct store *store;
    struct arena *arena;
    LIST_OF(struct store_build) builds;
    struct fault_note *note;
};

static enum fault read_text(struct listing *listing, sqlite3_stmt *statement, int column,
                            const char **ret_text)
{
    const char *string;
    enum fault fault = column_string(statement, column, &string, listing->note);

    if (!fault)
        *ret_text = string[0] ? arena_text(listing->arena, string) : "";
    return fault;
}

static enum fault read_word(struct listing *listing, sqlite3_stmt *statement, int column,
                            const struct words *words, int64_t *ret_value)
{
    const char *string;
    enum fault fault = column_string(statement, column, &string, listing->note);
    int value;

    if (fault)
        return fault;
    value = words_find(words, string);
    if (value < 0)
        return fault_say(listing->note,
                         listing->store->read_only == FAULT_NEWER ? FAULT_NEWER : FAULT_DAMAGED, 0,
                         "%s \"%s\" is not known to this version", words->name, string);
    *ret_value = value;
    return FAULT_NONE;
}

static enum fault read_summary(struct listing *listing, sqlite3_stmt *statement,
                               struct store_summary *summary)
{
    summary->next_step = "";
    summary->missing = "";
    if (sqlite3_column_type(statement, 7) == SQLITE_NULL)
        return FAULT_NONE;
    summary->digest = (uint64_t)sqlite3_column_int64(statement, 7);
    summary->estimate = sqlite3_column_int64(statement, 8);
    summary->steps_done = sqlite3_column_int64(statement, 9);
    summary->steps_total = sqlite3_column_int64(statement, 10);
    enum fault fault = read_text(listing, statement, 11, &summary->next_step);
    return fault ? fault : read_text(listing, statement, 12, &summary->missing);
}

/* Columns as in STATEMENT_BUILDS. */
static enum fault read_build(struct listing *listing, sqlite3_stmt *statement,
                             struct store_build *build)
{
    enum fault fault = read_text(listing, statement, 1, &build->name);

    build->key = sqlite3_column_int64(statement, 0);
    build->budget = sqlite3_column_int64(statement, 5);
    build->spend = sqlite3_column_int64(statement, 6);
    if (!fault)
        fault = read_word(listing, statement, 2, &words_state, &build->state);
    if (!fault)
        fault = read_word(listing, statement, 3, &words_units, &build->units);
    if (!fault)
        fault = read_text(listing, statement, 4, &build->due);
    return fault ? fault : read_summary(listing, statement, &build->summary);
}

/* Nothing is held in this frame when the arena leaves through the escape. */
static enum fault read_guarded(struct listing *listing, sqlite3_stmt *statement)
{
    jmp_buf escape;
    bool row = false;
    enum fault fault;

    listing->arena->escape = &escape;
    if (setjmp(escape))
        return fault_say(listing->note, FAULT_MEMORY, 0, "%s", fault_words(FAULT_MEMORY));
    while (!(fault = store_step(listing->store, statement, &row, listing->note)) && row) {
        fault = read_build(listing, statement, LIST_ADD(listing->arena, &listing->builds));
        if (fault)
            break;
    }
    return fault;
}

enum fault store_builds(struct store *store, struct arena *arena, struct store_build **ret_at,
                        size_t *ret_count, struct fault_note *note)
{
    struct listing listing = {.store = store, .arena = arena, .note = note};
    jmp_buf *outer = arena->escape;
    sqlite3_stmt *statement;
    enum fault fault = store_statement(store, STATEMENT_BUILDS, &statement, note);

    if (fault)
        return fault;
    fault = read_guarded(&listing, statement);
    arena->escape = outer;
    sqlite3_reset(statement);
    if (fault)
        return fault;
    *ret_at = listing.builds.at;
    *ret_count = listing.builds.count;
    return FAULT_NONE;
}

static enum fault put(struct store *store, int64_t build, const struct store_summary *summary,
                      struct fault_note *note)
{
    sqlite3_stmt *statement;
    struct binder binder;
    enum fault fault = store_statement(store, STATEMENT_SUMMARY_PUT, &statement, note);

    if (fault)
        return fault;
    binder = binder_start(statement);
    bind_whole(&binder, build);
    bind_whole(&binder, (int64_t)summary->digest);
    bind_whole(&binder, summary->estimate);
    bind_whole(&binder, summary->steps_done);
    bind_whole(&binder, summary->steps_total);
    bind_string(&binder, summary->next_step);
    bind_string(&binder, summary->missing);
    return binder_run(store, &binder, note);
}

enum fault store_summary_put(struct store *store, int64_t build,
                             const struct store_summary *summary, struct fault_note *note)
{
    enum fault fault;

    if (store->read_only || store_check(store, NULL))
        return FAULT_NONE;
    sqlite3_busy_timeout(store->db, 0);
    fault = put(store, build, summary, note);
    sqlite3_busy_timeout(store->db, store->patience);
    return fault == FAULT_LOCKED ? FAULT_NONE : fault;
}
