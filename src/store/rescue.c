/* What can still be read of a file that is damaged. */
#include "store/internal.h"

struct finding {
    struct store *store;
    sqlite3_stmt *statement;
    struct arena *arena;
    LIST_OF(int64_t) keys;
};

/* The list ends where the table cannot be read on. Holds nothing: the arena may leave it by its
 * escape. */
static void find_keys(void *context)
{
    struct finding *finding = context;
    bool row = false;

    while (!store_step(finding->store, finding->statement, &row, NULL) && row)
        *LIST_ADD(finding->arena, &finding->keys) = sqlite3_column_int64(finding->statement, 0);
}

enum fault store_rescue_builds(struct store *store, struct arena *arena, int64_t **ret_at,
                               size_t *ret_count, struct fault_note *note)
{
    struct finding finding = {.store = store, .arena = arena};
    enum fault fault = store_statement(store, STATEMENT_BUILD_KEYS, &finding.statement, note);

    if (fault)
        return fault;
    if (!arena_try(arena, find_keys, &finding))
        fault = fault_say_plain(note, FAULT_MEMORY);
    sqlite3_reset(finding.statement);
    if (fault)
        return fault;
    *ret_at = finding.keys.at;
    *ret_count = finding.keys.count;
    return FAULT_NONE;
}

enum fault store_rescue(struct store *store, int64_t build, struct model *model,
                        struct arena *arena, size_t *ret_lost, struct fault_note *note)
{
    size_t lost = 0;
    enum fault fault = load_rows(store, build, model, arena, &lost, note);

    if (fault)
        return fault;
    if (build > 0) {
        model->build.key = build;
        if (!*model->build.name)
            model->build.name = "Rescued build";
    }
    *ret_lost = lost + model_mend(model);
    return FAULT_NONE;
}
