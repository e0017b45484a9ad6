#include "plan/cures.h"

#include "plan/findings.h"

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

void cure_remove(struct cure_draft *draft, enum entity_kind entity, int64_t key)
{
    *LIST_ADD(draft->planning->arena, &draft->edits) = (struct cure_edit){entity, key, NULL, NULL};
}

static void offer(const struct cure_draft *draft, struct finding *finding, bool on_trial)
{
    struct cure *cures;

    if (draft->edits.count == 0)
        return;
    cures = ARENA_MANY(draft->planning->arena, struct cure, finding->cure_count + 1);
    for (size_t i = 0; i < finding->cure_count; i++)
        cures[i] = finding->cures[i];
    cures[finding->cure_count++] =
        (struct cure){draft->text, draft->edits.at, draft->edits.count, on_trial};
    finding->cures = cures;
}

void cure_offer(const struct cure_draft *draft, struct finding *finding)
{
    offer(draft, finding, false);
}

void cure_offer_on_trial(const struct cure_draft *draft, struct finding *finding)
{
    if (!draft->planning->plan->trial)
        offer(draft, finding, true);
}

/* ---- trials ---- */

#define TRIALS_LEAST 3
#define TRIALS_MOST 12
#define TRIALS_BOXES 60 /* boxes in all trials together */
#define KEPT_MOST 3

/* Each trial is a whole plan, and a plan is made at every key: large builds have fewer. */
static size_t trials_for(const struct model *model)
{
    size_t trials = TRIALS_BOXES / (model->boxes.count + 1);

    return trials < TRIALS_LEAST ? TRIALS_LEAST : trials > TRIALS_MOST ? TRIALS_MOST : trials;
}

static bool stops_more(const struct plan *tried, const struct plan *now)
{
    for (size_t i = 0; i < tried->findings.count; i++) {
        const struct finding *finding = &tried->findings.at[i];

        if (plan_finding_severity(finding) == SEVERITY_STOP &&
            findings_like(tried, finding) > findings_like(now, finding))
            return true;
    }
    return false;
}

/* What is told for the money that can be saved has to save it, where anything has a price. */
static bool saves(const struct planning *planning, const struct finding *finding,
                  const struct plan *tried)
{
    int64_t now = planning->plan->cost.estimate;

    return finding->kind != FINDING_COVER_HIDDEN || now == 0 || tried->cost.estimate < now;
}

static bool helps(const struct planning *planning, const struct finding *finding,
                  const struct cure *cure)
{
    const struct plan *tried = pass_try(planning, cure, true);

    return tried && findings_like(tried, finding) < findings_like(planning->plan, finding) &&
           !stops_more(tried, planning->plan) && saves(planning, finding, tried);
}

static void try_those_of(const struct planning *planning, struct finding *finding, size_t *left)
{
    struct cure *kept = ARENA_MANY(planning->arena, struct cure, finding->cure_count);
    size_t passed = 0;
    size_t count = 0;

    for (size_t i = 0; i < finding->cure_count; i++) {
        struct cure cure = finding->cures[i];

        if (cure.on_trial) {
            if (passed == KEPT_MOST || *left == 0)
                continue;
            --*left;
            if (!helps(planning, finding, &cure))
                continue;
            passed++;
            cure.on_trial = false;
        }
        kept[count++] = cure;
    }
    finding->cures = kept;
    finding->cure_count = count;
}

void cures_try(struct planning *planning)
{
    size_t left = trials_for(planning->model);

    for (size_t i = 0; i < planning->plan->findings.count; i++)
        if (planning->plan->findings.at[i].cure_count > 0)
            try_those_of(planning, &planning->plan->findings.at[i], &left);
}
