/*
 * What a cutting step writes down when it is ticked: each part, and of sticks, sheets and foam the
 * piece that it came out of and where it lay on it, so that what is cut later is cut from what
 * those leave (plan/buy_begun.c). Of rolls the layout tells all there is to know.
 *
 * 1  The first step of a stock cuts its first layout; one that cuts what is missing cuts the layout
 *    of that. What a step wrote down goes with its tick.
 * 2  Where the first step was ticked before pieces were written down, the first edit after it does
 *    so, as the plan laid them out by then; where it could not, none are for later steps either.
 */
#include "desk/internal.h"

#include "plan/buy.h"
#include "plan/buy_job.h"
#include "plan/steps.h"

#include <string.h>

struct cutting_down {
    struct model *draft;
    const struct plan *plan;
    const char *step;
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

static struct cut_stock *add_piece(const struct cutting_down *down, const struct cutting *cutting)
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
    return from;
}

static int64_t cut_piece_now(const struct cutting_down *down, const struct cutting *cutting)
{
    struct cut_stock *from = add_piece(down, cutting);

    if (cutting->source->leftover)
        shelf_take(down->draft, cutting->source->leftover);
    from->kept = shelf_put(down->draft, down->plan, down->step, from);
    return from->key;
}

/* What it left was put on the shelf by then; but nothing was taken off it. */
static int64_t cut_piece_then(const struct cutting_down *down, const struct cutting *cutting)
{
    struct cut_stock *from = add_piece(down, cutting);

    if (cutting->source->leftover)
        shelf_take(down->draft, cutting->source->leftover);
    from->kept = shelf_keeps(down->draft, down->plan, down->step, from);
    return from->key;
}

/* ---- parts ---- */

static void add_part(const struct cutting_down *down, const struct part *part)
{
    struct cut_part *cut = MODEL_ADD(down->draft, cut_part);

    cut->tick = down->tick;
    cut->part = arena_text(down->draft->arena, part->label);
    cut->length = part->length;
    cut->width = part->width;
    cut->box = part->box;
}

/* The cut parts of one layout, in the order of the plan, are told what they came out of; those that
 * no piece holds came out of none. */
static void place_parts(const struct cutting_down *down, const struct plan_job *job,
                        struct cut_part *const *cuts,
                        int64_t (*cut)(const struct cutting_down *, const struct cutting *))
{
    const struct plan *plan = down->plan;

    for (size_t i = 0; i < job->layout->blanks.count; i++) {
        const struct cutting *cutting = &plan->cuttings.at[job->first_cutting + i];
        int64_t piece = cut(down, cutting);

        for (size_t k = 0; k < cutting->placement_count; k++) {
            const struct placement *place = &plan->placements.at[cutting->first_placement + k];
            struct cut_part *part = cuts[place->part - job->first_part];

            part->cut_stock = piece;
            part->along = place->along;
            part->across = place->across;
            part->turned = place->turned;
        }
    }
}

static void add_parts_of(const struct cutting_down *down, const struct plan_job *job)
{
    size_t count = job->job->part_count;
    size_t first = down->draft->cut_parts.count;
    struct cut_part **cuts = ARENA_MANY(down->draft->arena, struct cut_part *, count);

    for (size_t i = 0; i < count; i++)
        add_part(down, &down->plan->parts.at[job->first_part + i]);
    for (size_t i = 0; i < count; i++)
        cuts[i] = &down->draft->cut_parts.at[first + i];
    place_parts(down, job, cuts, cut_piece_now);
}

static bool is_rolled(const struct stock *stock)
{
    return !stock || job_is_roll(stock);
}

static void add_first_parts(const struct cutting_down *down)
{
    int64_t stock = step_key_of(down->step);

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
    int64_t stock = step_key_of(down->step);

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
    struct cutting_down down = {draft, plan, step->name,
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

/* ---- ticks from before ---- */

static bool was_cut_anew(const struct model *draft, int64_t stock)
{
    for (size_t i = 0; i < draft->ticks.count; i++)
        if (step_kind_of(draft->ticks.at[i].step) == STEP_RECUT &&
            step_key_of(draft->ticks.at[i].step) == stock)
            return true;
    return false;
}

static const struct plan_job *first_job(const struct plan *plan, int64_t stock)
{
    for (size_t i = 0; i < plan->jobs.count; i++)
        if (plan->jobs.at[i].stock == stock && !plan->jobs.at[i].again)
            return &plan->jobs.at[i];
    return NULL;
}

static bool is_part(const struct cut_part *cut, const struct part *part)
{
    return strcmp(cut->part, part->label) == 0 && cut->length == part->length &&
           cut->width == part->width;
}

/* What a tick cut, in the order of the job's parts; NULL where those are not just that. */
static struct cut_part **cuts_as_planned(const struct cutting_down *down,
                                         const struct plan_job *job)
{
    struct cut_part **cuts =
        ARENA_MANY(down->draft->arena, struct cut_part *, job->job->part_count);
    size_t count = 0;

    for (size_t i = 0; i < down->draft->cut_parts.count; i++) {
        struct cut_part *cut = &down->draft->cut_parts.at[i];

        if (cut->tick != down->tick)
            continue;
        if (count == job->job->part_count ||
            !is_part(cut, &down->plan->parts.at[job->first_part + count]))
            return NULL;
        cuts[count++] = cut;
    }
    return count == job->job->part_count ? cuts : NULL;
}

static void catch_up(const struct cutting_down *down, const struct plan_job *job)
{
    struct cut_part **cuts = cuts_as_planned(down, job);

    if (!cuts)
        return;
    for (size_t i = 0; i < job->job->part_count; i++)
        cuts[i]->box = down->plan->parts.at[job->first_part + i].box;
    place_parts(down, job, cuts, cut_piece_then);
}

void cutting_catch_up(struct model *draft, const struct plan *plan)
{
    for (size_t i = 0; i < draft->ticks.count; i++) {
        const struct tick *tick = &draft->ticks.at[i];
        int kind = step_kind_of(tick->step);
        int64_t stock = step_key_of(tick->step);
        struct cutting_down down = {draft, plan, tick->step, MODEL_FIND(draft, stock, stock),
                                    tick->key};
        const struct plan_job *job = first_job(plan, stock);

        if ((kind != STEP_CUT && kind != STEP_SLICE) || !job || is_rolled(down.stock) ||
            stock_is_begun(draft, stock) || was_cut_anew(draft, stock))
            continue;
        catch_up(&down, job);
    }
}
