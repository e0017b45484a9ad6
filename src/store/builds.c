/* The list of builds, and the cache of what their plans said. */
#include "store/internal.h"

#include <assert.h>

/* The columns of STATEMENT_BUILDS. */
enum column {
    COLUMN_KEY,
    COLUMN_NAME,
    COLUMN_STATE,
    COLUMN_UNITS,
    COLUMN_DUE,
    COLUMN_BUDGET,
    COLUMN_SPEND,
    COLUMN_DIGEST, /* NULL, as all that follow, where there is no summary */
    COLUMN_ESTIMATE,
    COLUMN_STEPS_DONE,
    COLUMN_STEPS_TOTAL,
    COLUMN_NEXT_STEP,
    COLUMN_MISSING
};

struct listing {
    struct store *store;
    sqlite3_stmt *statement;
    struct arena *arena;
    LIST_OF(struct store_build) builds;
    struct fault_note *note;
    enum fault fault;
};

static enum fault read_text(struct listing *listing, enum column column, const char **ret_text)
{
    const char *string;
    enum fault fault = column_string(listing->statement, (int)column, &string, listing->note);

    if (!fault)
        *ret_text = string[0] ? arena_text(listing->arena, string) : "";
    return fault;
}

static enum fault read_word(struct listing *listing, enum column column, const struct words *words,
                            int64_t *ret_value)
{
    const char *string;
    enum fault fault = column_string(listing->statement, (int)column, &string, listing->note);

    if (fault)
        return fault;
    return store_read_word(listing->store, words, words->name, string, ret_value, listing->note);
}

static int64_t read_whole(const struct listing *listing, enum column column)
{
    return sqlite3_column_int64(listing->statement, (int)column);
}

static enum fault read_summary(struct listing *listing, struct store_summary *summary)
{
    enum fault fault;

    summary->next_step = "";
    summary->missing = "";
    if (sqlite3_column_type(listing->statement, COLUMN_DIGEST) == SQLITE_NULL)
        return FAULT_NONE;
    summary->digest = (uint64_t)read_whole(listing, COLUMN_DIGEST);
    summary->estimate = read_whole(listing, COLUMN_ESTIMATE);
    summary->steps_done = read_whole(listing, COLUMN_STEPS_DONE);
    summary->steps_total = read_whole(listing, COLUMN_STEPS_TOTAL);
    fault = read_text(listing, COLUMN_NEXT_STEP, &summary->next_step);
    return fault ? fault : read_text(listing, COLUMN_MISSING, &summary->missing);
}

static enum fault read_build(struct listing *listing, struct store_build *build)
{
    enum fault fault = read_text(listing, COLUMN_NAME, &build->name);

    build->key = read_whole(listing, COLUMN_KEY);
    build->budget = read_whole(listing, COLUMN_BUDGET);
    build->spend = read_whole(listing, COLUMN_SPEND);
    if (!fault)
        fault = read_word(listing, COLUMN_STATE, &words_state, &build->state);
    if (!fault)
        fault = read_word(listing, COLUMN_UNITS, &words_units, &build->units);
    if (!fault)
        fault = read_text(listing, COLUMN_DUE, &build->due);
    return fault ? fault : read_summary(listing, &build->summary);
}

/* Holds nothing: the arena may leave it by its escape. */
static void read_builds(void *context)
{
    struct listing *listing = context;
    bool row = true;

    while (!listing->fault && row) {
        listing->fault = store_step(listing->store, listing->statement, &row, listing->note);
        if (!listing->fault && row)
            listing->fault = read_build(listing, LIST_ADD(listing->arena, &listing->builds));
    }
}

enum fault store_builds(struct store *store, struct arena *arena, struct store_build **ret_at,
                        size_t *ret_count, struct fault_note *note)
{
    struct listing listing = {.store = store, .arena = arena, .note = note};
    enum fault fault = store_statement(store, STATEMENT_BUILDS, &listing.statement, note);

    if (fault)
        return fault;
    assert(sqlite3_column_count(listing.statement) == COLUMN_MISSING + 1);
    if (!arena_try(arena, read_builds, &listing))
        listing.fault = fault_say_plain(note, FAULT_MEMORY);
    sqlite3_reset(listing.statement);
    if (listing.fault)
        return listing.fault;
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
