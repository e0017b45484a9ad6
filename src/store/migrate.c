/*
 * From an older version to this one, in one transaction: what is interrupted was never begun. A
 * copy of the file as it was stands beside it first.
 */
#include "store/internal.h"

#include <assert.h>
#include <limits.h>

/* Each step says the version that it leads to. Where one fails the caller closes the store, and
 * SQLite takes back what was begun. */
static enum fault take_steps(struct store *store, const struct store_options *options,
                             struct fault_note *note)
{
    int64_t version = options->step_count;
    enum fault fault = store_execute(store, "BEGIN IMMEDIATE", note);

    /* Another program may have taken them before the file was ours to write. */
    if (!fault)
        fault = store_ask_whole(store, "PRAGMA user_version", &version, note);
    for (; version < options->step_count && !fault; version++)
        fault = store_execute(store, options->steps[version], note);
    return fault ? fault : store_execute(store, "COMMIT", note);
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
    return fault ? fault : take_steps(store, options, note);
}
