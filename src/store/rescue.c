/* What can still be read of a file that is damaged. */
#include "store/internal.h"

#include <setjmp.h>

struct finding_builds {
    struct store *store;
    struct arena *arena;
    LIST_OF(int64_t) keys;
};

/* Nothing is held in this frame when the arena leaves through the escape. The list ends where the
 * table cannot be read on. */
static enum fault find_guarded(struct finding_builds *finding, sqlite3_stmt *statement,
                               struct fault_note *note)
{
    jmp_buf escape;
    bool row = false;

    finding->arena->escape = &escape;
    if (setjmp(escape))
        return fault_say(note, FAULT_MEMORY, 0, "%s", fault_words(FAULT_MEMORY));
    while (!store_step(finding->store, statement, &row, NULL) && row)
        *LIST_ADD(finding->arena, &finding->keys) = sqlite3_column_int64(statement, 0);
    return FAULT_NONE;
}

enum fault store_rescue_builds(struct store *store, struct arena *arena, int64_t **ret_at,
                               size_t *ret_count, struct fault_note *note)
{
    struct finding_builds finding = {store, arena, {{0}}};
    jmp_buf *outer = arena->escape;
    sqlite3_stmt *statement;
    enum fault fault = store_statement(store, STATEMENT_BUILD_KEYS, &statement, note);

    if (fault)
        return fault;
    fault = find_guarded(&finding, statement, note);
    arena->escape = outer;
    sqlite3_reset(statement);
    *ret_at = finding.keys.at;
    *ret_count = finding.keys.count;
    return fault;
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
