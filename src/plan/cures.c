#include "plan/cures.h"

#include <assert.h>
#include <inttypes.h>

struct cure_draft cure_begin(struct planning *planning, const char *text)
{
    return (struct cure_draft){.planning = planning, .text = text};
}

void cure_word(struct cure_draft *draft, enum entity_kind entity, int64_t key, const char *field,
               const char *word)
{
    assert(field && word);
    *LIST_ADD(draft->planning->arena, &draft->edits) = (struct cure_edit){entity, key, field, word};
}

void cure_length(struct cure_draft *draft, enum entity_kind entity, int64_t key, const char *field,
                 int64_t length)
{
    char printed[QUANTITY_TEXT];

    quantity_print_exact(printed, QUANTITY_LENGTH, model_units(draft->planning->model), length);
    cure_word(draft, entity, key, field, arena_text(draft->planning->arena, printed));
}

void cure_count(struct cure_draft *draft, enum entity_kind entity, int64_t key, const char *field,
                int64_t count)
{
    cure_word(draft, entity, key, field, arena_format(draft->planning->arena, "%" PRId64, count));
}

void cure_refer(struct cure_draft *draft, enum entity_kind entity, int64_t key, const char *field,
                int64_t to)
{
    cure_word(draft, entity, key, field, arena_format(draft->planning->arena, "#%" PRId64, to));
}

void cure_offer(const struct cure_draft *draft, struct finding *finding)
{
    struct cure *cures;

    if (draft->edits.count == 0)
        return;
    cures = ARENA_MANY(draft->planning->arena, struct cure, finding->cure_count + 1);
    for (size_t i = 0; i < finding->cure_count; i++)
        cures[i] = finding->cures[i];
    cures[finding->cure_count++] = (struct cure){draft->text, draft->edits.at, draft->edits.count};
    finding->cures = cures;
}
