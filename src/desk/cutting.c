/*
 * What a cutting step writes down when it is ticked: each part, and of sticks, sheets and foam the
 * piece that it came out of and where it lay on it, so that what is cut later is cut from what
 * those leave (plan/buy_begun.c). Of rolls the layout tells all there is to know.
 *
 * 1  The first step of a stock cuts its first layout; one that cuts what is missing cuts the layout
 *    of that. What a step wrote down goes with its tick.
 * 2  Where the first step was ticked before pieces were written down, none are for later ones.
 */
#include "desk/internal.h"

#include "plan/buy.h"
#include "plan/buy_job.h"
#include "plan/steps.h"

#include <string.h>

struct cutting_down {
    struct model *draft;
    const struct plan *plan;
    const struct step *step;
    const struct stock *stock;
    int64_t tick;
};

/* ---- pieces ---- */

static int64_t origin_of(const struct cut_source *source)
{
    switch (source->origin) {
    case SIZE_SHELF:
        return ORIGIN_SHELF;
    case SIZE_REST:
        return ORIGIN_REST;
    case SIZE_PART:
        return ORIGIN_PART;
    default:
        return ORIGIN_BOUGHT;
    }
}

static int64_t add_piece(const struct cutting_down *down, const struct cutting *cutting)
{
    struct model *draft = down->draft;
    struct cut_stock *from = MODEL_ADD(draft, cut_stock);

    from->tick = down->tick;
    from->origin = origin_of(cutting->source);
    from->part = arena_text(draft->arena, cutting->source->part);
    from->length = cutting->length;
    from->width = cutting->width;
    from->pack = cutting->source->pack;
    from->rest = cutting->rest;
    from->rest_across = cutting->rest_across;
    if (cutting->source->leftover)
        shelf_take(draft, cutting->source->leftover);
    from->kept = shelf_put(draft, down->plan, down->step->name, from);
    return from->key;
}

/* ---- parts ---- */

static struct cut_part *add_part(const struct cutting_down *down, const struct part *part)
{
    struct cut_part *cut = MODEL_ADD(down->draft, cut_part);

    cut->tick = down->tick;
    cut->part = arena_text(down->draft->arena, part->label);
    cut->length = part->length;
    cut->width = part->width;
    cut->box = part->box;
    return cut;
}

/* The parts of one layout, in the order of the plan; those that no piece holds have none. */
static void add_parts_of(const struct cutting_down *down, const struct plan_job *job)
{
    const struct plan *plan = down->plan;
    size_t count = job->job->part_count;
    int64_t *pieces = ARENA_MANY(down->draft->arena, int64_t, count);
    const struct placement **places =
        ARENA_MANY(down->draft->arena, const struct placement *, count);

    for (size_t i = 0; i < job->layout->blanks.count; i++) {
        const struct cutting *cutting = &plan->cuttings.at[job->first_cutting + i];
        int64_t piece = add_piece(down, cutting);

        for (size_t k = 0; k < cutting->placement_count; k++) {
            const struct placement *place = &plan->placements.at[cutting->first_placement + k];

            pieces[place->part - job->first_part] = piece;
            places[place->part - job->first_part] = place;
        }
    }
    for (size_t i = 0; i < count; i++) {
        struct cut_part *cut = add_part(down, &plan->parts.at[job->first_part + i]);

        cut->cut_stock = pieces[i];
        if (!places[i])
            continue;
        cut->along = places[i]->along;
        cut->across = places[i]->across;
        cut->turned = places[i]->turned;
    }
}

static bool is_rolled(const struct stock *stock)
{
    return !stock || job_is_roll(stock);
}

static void add_first_parts(const struct cutting_down *down)
{
    int64_t stock = step_key_of(down->step->name);

    for (size_t i = 0; i < down->plan->parts.count; i++) {
        const struct part *part = &down->plan->parts.at[i];

        if (part->stock == stock && !part->again)
            add_part(down, part);
    }
}

/* ---- cut anew, where only labels are known ---- */

static int64_t times_recut(const struct model *model, const char *label)
{
    int64_t times = 0;

    for (size_t i = 0; i < model->cut_parts.count; i++) {
        const struct tick *tick = MODEL_FIND(model, tick, model->cut_parts.at[i].tick);

        times += strcmp(model->cut_parts.at[i].part, label) == 0 &&
                 step_kind_of(tick->step) == STEP_RECUT;
    }
    return times;
}

static int64_t times_spoiled(const struct model *model, const char *label)
{
    int64_t times = 0;

    for (size_t i = 0; i < model->cut_parts.count; i++)
        times += strcmp(model->cut_parts.at[i].part, label) == 0 && model->cut_parts.at[i].spoiled;
    return times;
}

/* As many as were spoiled and not cut anew yet; parts of one label stand together. */
static void add_spoiled_parts(const struct cutting_down *down)
{
    int64_t stock = step_key_of(down->step->name);

    for (size_t i = 0; i < down->plan->parts.count; i++) {
        const struct part *part = &down->plan->parts.at[i];

        if (part->again && part->stock == stock &&
            times_recut(down->draft, part->label) < times_spoiled(down->draft, part->label))
            add_part(down, part);
    }
}

/* ---- the tick ---- */

void cutting_take(struct model *draft, const struct plan *plan, const struct step *step,
                  int64_t tick)
{
    bool again = step->kind == STEP_RECUT;
    struct cutting_down down = {draft, plan, step,
                                MODEL_FIND(draft, stock, step_key_of(step->name)), tick};

    if (is_rolled(down.stock) || (again && !stock_is_begun(draft, down.stock->key))) {
        (again ? add_spoiled_parts : add_first_parts)(&down);
        if (!again)
            shelf_put_roll(draft, plan, step->name);
        return;
    }
    for (size_t i = 0; i < plan->jobs.count; i++) {
        const struct plan_job *job = &plan->jobs.at[i];

        if (job->stock == down.stock->key && !job->cut && job->again == again)
            add_parts_of(&down, job);
    }
}

void cutting_give_back(struct model *draft, const struct tick *tick)
{
    int64_t stock = step_key_of(tick->step);

    for (size_t i = 0; i < draft->cut_stocks.count; i++) {
        const struct cut_stock *from = &draft->cut_stocks.at[i];

        if (from->tick == tick->key && from->origin == ORIGIN_SHELF)
            shelf_give_back(draft, stock, from);
    }
    shelf_give_rests_back(draft, tick->step);
}
