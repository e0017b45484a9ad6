/*
 * Stock that cutting has begun on. What a ticked step cut is a fact piece by piece: sticks, sheets
 * and slabs with where they came from and what they left, parts with where they lay on them. So
 * the parts that stand are told as they were cut, and what is missing is cut from what there is.
 *
 * 1  A part stands when a piece of its label was cut to its size, as near as a tape shows, and was
 *    neither spoiled nor cut up since. Every other part is to be cut again.
 * 2  A piece that was cut and stands for no part is there to be cut from, until it is in a frame,
 *    on one, or under cloth.
 * 3  Of what was cut something is left once: on the shelf where it was put there, else as a rest
 *    of the piece that it was cut from. What was cut from since is neither.
 */
#include "plan/buy_job.h"

#include "model/offer.h"
#include "plan/geometry.h"
#include "plan/steps.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

/* ---- the facts ---- */

static const char *step_of(const struct model *model, int64_t tick)
{
    const struct tick *of = MODEL_FIND(model, tick, tick);

    return of ? of->step : "";
}

const struct cut_stock *next_cut_stock(const struct model *model, int64_t stock, size_t *at)
{
    while (*at < model->cut_stocks.count) {
        const struct cut_stock *cut = &model->cut_stocks.at[(*at)++];

        if (step_key_of(step_of(model, cut->tick)) == stock)
            return cut;
    }
    return NULL;
}

bool stock_is_begun(const struct model *model, int64_t stock)
{
    const struct cut_stock *cut;

    for (size_t at = 0; (cut = next_cut_stock(model, stock, &at));)
        if (step_kind_of(step_of(model, cut->tick)) != STEP_RECUT)
            return true;
    return false;
}

static int64_t stock_of(const struct model *model, const struct cut_part *cut)
{
    return step_key_of(step_of(model, cut->tick));
}

/* ---- parts that stand ---- */

static bool is_piece_of(const struct cut_part *cut, const struct cut_stock *from)
{
    return cut->length == from->length && cut->width == from->width &&
           strcmp(cut->part, from->part) == 0;
}

/* Cut up for another part since: each piece that was a part takes one of them, none that was
 * spoiled. */
static bool *cut_up(const struct model *model, struct arena *arena)
{
    bool *gone = ARENA_MANY(arena, bool, model->cut_parts.count + 1);

    for (size_t i = 0; i < model->cut_stocks.count; i++) {
        const struct cut_stock *from = &model->cut_stocks.at[i];

        for (size_t k = 0; from->origin == ORIGIN_PART && k < model->cut_parts.count; k++) {
            const struct cut_part *cut = &model->cut_parts.at[k];

            if (gone[k] || cut->spoiled || !is_piece_of(cut, from))
                continue;
            gone[k] = true;
            break;
        }
    }
    return gone;
}

static bool is_as_long(int64_t a, int64_t b, int64_t grain)
{
    return a - b < grain && b - a < grain;
}

static bool is_cut_as(const struct planning *planning, const struct part *part,
                      const struct cut_part *cut)
{
    int64_t grain = quantity_tape_grain(model_units(planning->model));

    return strcmp(cut->part, part->label) == 0 && is_as_long(cut->length, part->length, grain) &&
           is_as_long(cut->width, part->width, grain) &&
           stock_of(planning->model, cut) == part->stock;
}

/* By index of the stock; one more at the end for stock that has gone. */
static const bool *begun_stocks(const struct planning *planning)
{
    const struct model *model = planning->model;
    bool *begun = ARENA_MANY(planning->arena, bool, model->stocks.count + 1);

    for (size_t i = 0; i < model->stocks.count; i++)
        begun[i] = stock_is_begun(model, model->stocks.at[i].key);
    return begun;
}

void mark_what_is_cut(struct planning *planning)
{
    const struct model *model = planning->model;
    struct plan *plan = planning->plan;
    const bool *begun;
    bool *taken;

    if (model->cut_stocks.count == 0)
        return;
    begun = begun_stocks(planning);
    taken = cut_up(model, planning->arena);
    for (size_t i = 0; i < plan->parts.count; i++) {
        struct part *part = &plan->parts.at[i];

        if (!begun[model_index(model, ENTITY_stock, part->stock)])
            continue;
        for (size_t k = 0; k < model->cut_parts.count && part->cut == PLAN_NONE; k++) {
            const struct cut_part *cut = &model->cut_parts.at[k];

            if (taken[k] || cut->spoiled || !is_cut_as(planning, part, cut))
                continue;
            taken[k] = true;
            part->cut = k;
        }
        part->again = part->cut == PLAN_NONE;
    }
}

const bool *cut_parts_to_spare(const struct plan *plan, const struct model *model,
                               struct arena *arena)
{
    const bool *gone = cut_up(model, arena);
    bool *spare = ARENA_MANY(arena, bool, model->cut_parts.count + 1);

    for (size_t i = 0; i < model->cut_parts.count; i++)
        spare[i] = !gone[i] && !model->cut_parts.at[i].spoiled;
    for (size_t i = 0; i < plan->parts.count; i++)
        if (plan->parts.at[i].cut != PLAN_NONE)
            spare[plan->parts.at[i].cut] = false;
    return spare;
}

/* ---- as it was cut ---- */

static const struct cut_part *cut_of(const struct cutting_job *job, size_t part)
{
    size_t cut = job->planning->plan->parts.at[job->first + part].cut;

    assert(cut < job->planning->model->cut_parts.count);
    return &job->planning->model->cut_parts.at[cut];
}

static const struct offer *offer_of(const struct cutting_job *job, const struct cut_stock *from)
{
    const struct model *model = job->planning->model;
    const struct offer *found = NULL;

    for (size_t i = 0; i < model->offers.count && from->origin == ORIGIN_BOUGHT; i++) {
        const struct offer *offer = &model->offers.at[i];

        if (offer->stock == job->stock->key && offer->length == from->length &&
            (job->stock->kind == STOCK_STICK || offer->width == from->width) &&
            (!found || (found->pack != from->pack && offer->pack == from->pack)))
            found = offer;
    }
    return found;
}

static void add_cut_size(struct cutting_job *job, const struct cut_stock *from)
{
    static const enum size_origin origins[ORIGIN_COUNT] = {[ORIGIN_BOUGHT] = SIZE_BOUGHT,
                                                           [ORIGIN_SHELF] = SIZE_SHELF,
                                                           [ORIGIN_REST] = SIZE_REST,
                                                           [ORIGIN_PART] = SIZE_PART};
    const struct offer *offer = offer_of(job, from);
    int64_t price = offer ? offer_price(job->planning->model, offer) : 0;

    *LIST_ADD(job->planning->arena, &job->sizes) = (struct cut_size){
        from->length, from->width, offer ? whole_divide_up(price, offer->pack) : 0, 1};
    *LIST_ADD(job->planning->arena, &job->sources) =
        (struct cut_source){.origin = origins[from->origin],
                            .offer = offer ? offer->key : 0,
                            .pack = from->pack,
                            .length = from->length,
                            .part = from->part};
}

static void add_place(const struct cutting_job *job, struct cut_layout *layout, size_t part)
{
    const struct cut_part *cut = cut_of(job, part);
    struct cut_blank *blank = &layout->blanks.at[layout->blanks.count - 1];
    size_t at = layout->places.count;

    (void)LIST_ADD(job->planning->arena, &layout->places);
    for (; at > blank->first && (layout->places.at[at - 1].along > cut->along ||
                                 (layout->places.at[at - 1].along == cut->along &&
                                  layout->places.at[at - 1].across > cut->across));
         at--)
        layout->places.at[at] = layout->places.at[at - 1];
    layout->places.at[at] = (struct cut_place){part, cut->along, cut->across, cut->turned != 0};
    blank->count++;
    blank->used = length_larger(blank->used, cut->along + (cut->turned ? cut->width : cut->length));
}

/* A piece that no part stands of any more is not shown. */
static void add_blank(struct cutting_job *job, struct cut_layout *layout,
                      const struct cut_stock *from)
{
    struct cut_blank blank = {.size = job->sizes.count,
                              .first = layout->places.count,
                              .rest = from->rest,
                              .rest_across = from->rest_across};

    for (size_t i = 0; i < job->count; i++) {
        if (cut_of(job, i)->cut_stock != from->key)
            continue;
        if (blank.size == job->sizes.count) {
            add_cut_size(job, from);
            *LIST_ADD(job->planning->arena, &layout->blanks) = blank;
            layout->cost += job->sizes.at[blank.size].price;
        }
        add_place(job, layout, i);
    }
}

static struct cut_job *job_as_cut(const struct cutting_job *job)
{
    struct cut_piece *parts = ARENA_MANY(job->planning->arena, struct cut_piece, job->count);
    struct cut_job *made = ARENA_NEW(job->planning->arena, struct cut_job);

    for (size_t i = 0; i < job->count; i++) {
        const struct cut_part *cut = cut_of(job, i);

        parts[i] = (struct cut_piece){.length = cut->length,
                                      .width = cut->width,
                                      .may_turn = job->stock->kind != STOCK_STICK};
    }
    *made = (struct cut_job){.parts = parts,
                             .part_count = job->count,
                             .sizes = job->sizes.at,
                             .size_count = job->sizes.count};
    return made;
}

void job_put_as_cut(struct cutting_job *job)
{
    struct arena *arena = job->planning->arena;
    const struct model *model = job->planning->model;
    struct plan_job *made = LIST_ADD(arena, &job->planning->plan->jobs);
    struct cut_layout *layout = ARENA_NEW(arena, struct cut_layout);
    const struct cut_stock *from;

    for (size_t at = 0; (from = next_cut_stock(model, job->stock->key, &at));)
        add_blank(job, layout, from);
    for (size_t i = 0; i < job->count; i++)
        if (!MODEL_FIND(model, cut_stock, cut_of(job, i)->cut_stock))
            *LIST_ADD(arena, &layout->left_out) = i;
    *made = (struct plan_job){.stock = job->stock->key,
                              .way = job_way(job->stock),
                              .job = job_as_cut(job),
                              .layout = layout,
                              .first_part = job->first,
                              .first_cutting = job->planning->plan->cuttings.count,
                              .taken = true,
                              .cut = true,
                              .sources = job->sources.at};
    made->digest = cut_digest(made->way, made->job);
    job_keep_blanks(job, layout);
}

/* ---- what is left ---- */

/* Rests that were cut from since. */
static bool *rests_cut_up(const struct model *model, int64_t stock, struct arena *arena)
{
    bool *gone = ARENA_MANY(arena, bool, model->cut_stocks.count + 1);
    const struct cut_stock *from, *of;

    for (size_t at = 0; (from = next_cut_stock(model, stock, &at));)
        for (size_t k = 0; from->origin == ORIGIN_REST && (of = next_cut_stock(model, stock, &k));)
            if (!gone[k - 1] && !of->kept && of->rest == from->length &&
                of->rest_across == from->width) {
                gone[k - 1] = true;
                break;
            }
    return gone;
}

/* Whether some part of the job comes out of a piece. */
static bool holds_some(const struct cutting_job *job, int64_t length, int64_t width)
{
    for (size_t i = job->first; i < job->first + job->count; i++) {
        const struct part *part = &job->planning->plan->parts.at[i];

        if (part->length <= length && part->width <= width)
            return true;
        if (part->may_turn && part->width <= length && part->length <= width)
            return true;
    }
    return false;
}

/* A stick's first end is squared already: the saw takes nothing off it. */
static void add_remain(struct cutting_job *job, int64_t length, int64_t width,
                       struct cut_source source)
{
    bool stick = job->stock->kind == STOCK_STICK;
    const int64_t *value = job->planning->value;

    if (!holds_some(job, length, width))
        return;
    source.length = length;
    source.ahead = stick ? value[TRADE_STICK_TRIM] : 0;
    if (stick)
        length += value[TRADE_STICK_TRIM] + value[TRADE_STICK_TRIM_FAR];
    job_add_size(job, (struct cut_size){length, width, 0, 1}, source);
}

static bool is_of_facing(const struct model *model, int64_t key, int64_t box)
{
    const struct facing *facing = MODEL_FIND(model, facing, key);

    return facing && facing->box == box;
}

static bool is_of_layer(const struct model *model, int64_t key, int64_t box)
{
    const struct layer *layer = MODEL_FIND(model, layer, key);

    return layer && layer->box == box;
}

/* Whether a step that was done has fixed what was cut of a stock for a box. */
static bool is_fixed(const struct model *model, enum stock_word kind, int64_t box)
{
    for (size_t i = 0; i < model->ticks.count; i++) {
        const char *step = model->ticks.at[i].step;
        int of = step_kind_of(step);
        int64_t key = step_key_of(step);

        if ((of == STEP_FRAME || of == STEP_CLEAT) && kind != STOCK_FOAM && key == box)
            return true;
        if (of == STEP_PANEL && kind == STOCK_SHEET && is_of_facing(model, key, box))
            return true;
        if (of == STEP_PAD && kind == STOCK_FOAM && is_of_layer(model, key, box))
            return true;
    }
    return false;
}

static void add_spare_parts(struct cutting_job *job)
{
    const struct model *model = job->planning->model;
    const bool *spare = cut_parts_to_spare(job->planning->plan, model, job->planning->arena);

    for (size_t i = 0; i < model->cut_parts.count; i++) {
        const struct cut_part *cut = &model->cut_parts.at[i];

        if (!spare[i] || stock_of(model, cut) != job->stock->key ||
            is_fixed(model, (enum stock_word)job->stock->kind, cut->box))
            continue;
        add_remain(job, cut->length, cut->width,
                   (struct cut_source){.origin = SIZE_PART, .part = cut->part});
    }
}

void job_add_remains(struct cutting_job *job)
{
    const struct model *model = job->planning->model;
    const bool *gone = rests_cut_up(model, job->stock->key, job->planning->arena);
    const struct cut_stock *from;

    for (size_t at = 0; (from = next_cut_stock(model, job->stock->key, &at));)
        if (!gone[at - 1] && !from->kept && from->rest > 0)
            add_remain(job, from->rest, from->rest_across,
                       (struct cut_source){.origin = SIZE_REST, .part = ""});
    add_spare_parts(job);
}

/* ---- what was bought ---- */

/* The length of a stick that is cut up, or the areas that were cut from a sheet. */
static int64_t used_of(const struct model *model, const struct cut_stock *from, bool stick)
{
    int64_t used = 0;

    for (size_t i = 0; i < model->cut_parts.count; i++) {
        const struct cut_part *cut = &model->cut_parts.at[i];

        if (cut->cut_stock != from->key)
            continue;
        used = stick ? length_larger(used, cut->along + cut->length)
                     : used + cut->length / LENGTH_MM * (cut->width / LENGTH_MM);
    }
    return used;
}

int64_t job_cut_of(const struct cutting_job *job, size_t size, int64_t *ret_used)
{
    assert(size < job->sizes.count);

    const struct model *model = job->planning->model;
    bool stick = job->stock->kind == STOCK_STICK;
    const struct cut_source *source = &job->sources.at[size];
    const struct cut_stock *from;
    int64_t count = 0;

    for (size_t at = 0; (from = next_cut_stock(model, job->stock->key, &at));) {
        if (from->origin != ORIGIN_BOUGHT || from->length != source->length ||
            from->pack != source->pack || (!stick && from->width != job->sizes.at[size].width))
            continue;
        *ret_used += used_of(model, from, stick);
        count++;
    }
    return count;
}
