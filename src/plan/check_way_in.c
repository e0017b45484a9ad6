/*
 * Sheets ride home in a vehicle: as they are bought they go through its opening, and lie on its
 * floor where that was measured. The shop's saw comes before the ride; which cut it makes first
 * stands in the layout, and is named.
 */
#include "plan/check.h"

#include "plan/findings.h"
#include "plan/homeward.h"

static const struct plan_job *job_of(const struct plan *plan, int64_t stock)
{
    for (size_t i = 0; i < plan->jobs.count; i++)
        if (plan->jobs.at[i].stock == stock && plan->jobs.at[i].way == CUT_SHEETS)
            return &plan->jobs.at[i];
    return NULL;
}

/* What the shop does with the first sheet of that size that a cut is known of. */
static const char *way_home(const struct planning *planning, const struct stock *stock,
                            const struct offer *offer)
{
    const struct plan_job *job = job_of(planning->plan, stock->key);
    struct homeward home = {0};
    char words[HOMEWARD_TEXT];

    for (size_t i = 0; job && i < job->layout->blanks.count; i++) {
        const struct cut_size *size = &job->job->sizes[job->layout->blanks.at[i].size];

        if (size->length == offer->length && size->width == offer->width &&
            homeward_first_cut(planning->model, job->job, job->layout, i, stock->thickness, &home))
            break;
    }
    return arena_text(planning->arena, homeward_words(words, planning->model, &home));
}

static void check_sheet(struct planning *planning, const struct purchase *line)
{
    const struct model *model = planning->model;
    const struct stock *stock = MODEL_FIND(model, stock, line->stock);
    const struct offer *offer = MODEL_FIND(model, offer, line->offer);
    const struct passage *vehicle;
    struct finding *finding;

    if (!stock || stock->kind != STOCK_SHEET || !offer || line->packs == 0)
        return;
    vehicle = homeward_too_small(model, offer->length, offer->width, stock->thickness);
    if (!vehicle)
        return;
    finding = finding_add(planning, FINDING_SHEET_TOO_LARGE, ENTITY_stock, stock->key);
    argument_length(finding, 0, offer->length);
    argument_length(finding, 1, offer->width);
    argument_text(finding, 2, *vehicle->name ? vehicle->name : "the vehicle");
    argument_text(finding, 3, way_home(planning, stock, offer));
}

void check_way_in(struct planning *planning)
{
    for (size_t i = 0; i < planning->plan->purchases.count; i++)
        check_sheet(planning, &planning->plan->purchases.at[i]);
}
