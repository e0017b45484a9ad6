/*
 * From an older version to this one: one transaction a step, with the version in it, so that an
 * interrupted step was never begun. A copy of the file as it was stands beside it first.
 */
#include "store/internal.h"

#include <assert.h>
#include <limits.h>

static enum fault run_step(struct store *store, const char *sql, int64_t version,
                           struct fault_note *note)
{
    char set_version[64];
    int64_t now = 0;
    enum fault fault = store_execute(store, "BEGIN IMMEDIATE", note);

    if (fault)
        return fault;
    snprintf(set_version, sizeof set_version, "PRAGMA user_version = %d", (int)version + 1);
    fault = store_ask_whole(store, "PRAGMA user_version", &now, note);
    /* Another program may have taken this step before the file was ours to write. */
    if (!fault && now == version)
        fault = store_execute(store, sql, note);
    if (!fault && now == version)
        fault = store_execute(store, set_version, note);
    if (!fault)
        fault = store_execute(store, "COMMIT", note);
    if (fault && !sqlite3_get_autocommit(store->db))
        store_execute(store, "ROLLBACK", NULL);
    return fault;
}

enum fault migrate(struct store *store, const struct store_options *options,
                   struct fault_note *note)
{
    char copy[PATH_MAX + 32];
    int64_t version = 0;
    enum fault fault = store_ask_whole(store, "PRAGMA user_version", &version, note);

    if (fault || version >= options->step_count)
        return fault;
    assert(!store->read_only);
    fault = store_check(store, note);
    snprintf(copy, sizeof copy, "%s.before-%d", store->path, options->step_count);
    if (!fault)
        fault = store_backup(store, copy, true, note);
    for (; version < options->step_count && !fault; version++)
        fault = run_step(store, options->steps[version], version, note);
    return fault;
}
