/*
 * Two searches, one inside the other. Inside, a given set of sheets is filled part by part, each
 * into the free area that fits it best, in several orders and with several rules of fitting and
 * splitting; a set is good when one of them places every part. Outside, the set of the best plan
 * is made cheaper by moves: a sheet less, a sheet for a cheaper one, a sheet for two that are
 * cheaper together, as long as some move succeeds.
 *
 *  1. Parts and sheets carry one kerf more in both directions, and then parts may touch; for cuts
 *     from edge to edge that is exact. Places are turned back when the layout is made.
 *  2. All sheets of a set are open at once, those from the shelf included: opened sheets that stay
 *     empty are not in the layout and cost nothing.
 *  3. Every plan keeps `places` by part and `owner` by part, so that plans can be compared and kept
 *     without looking at the order they were made in.
 *  4. Work is counted in free areas looked at; a filling that has been begun is finished.
 */
#include "cut/sheets.h"

#include "base/quantity.h"
#include "cut/bound.h"
#include "cut/ranking.h"
#include "cut/split.h"

#include <assert.h>
#include <string.h>

#define STEPS_IN_ALL 120000
#define NOWHERE SIZE_MAX

struct sheet_plan {
    size_t *owner;            /* by part: index into sizes, or NOWHERE */
    struct cut_place *places; /* by part, in measures with a kerf */
    LIST_OF(size_t) sizes;    /* by sheet */
    int64_t left_out;
    int64_t cost;
    int64_t wastes; /* free areas in sheets that are used: each costs a cut */
};

struct search {
    const struct cut_job *job;
    struct arena *arena;
    struct cut_piece *parts;    /* with a kerf */
    size_t *order[PART_ORDERS]; /* of parts */
    int64_t *length, *width;    /* of sizes, with a kerf, without trim */
    int64_t *price;             /* of sizes; areas where nothing has a price */
    LIST_OF(size_t) set;        /* sizes of the sheets to open */
    size_t more;                /* size of which more may be opened, or NOWHERE */
    struct free_areas free;
    bool *used; /* by sheet, while a plan is summed up */
    struct sheet_plan now, best;
};

static void order_parts(struct search *search)
{
    size_t count = search->job->part_count;

    for (int order = 0; order < PART_ORDERS; order++) {
        search->order[order] = ARENA_MANY(search->arena, size_t, count);
        for (size_t i = 0; i < count; i++)
            search->order[order][i] = i;
        ranking_sort(search->parts, search->order[order], count, (enum part_order)order,
                     search->arena);
    }
}

/* ---- the job with kerfs ---- */

static void measure_sizes(struct search *search)
{
    const struct cut_job *job = search->job;
    int64_t dearest = 0;

    search->length = ARENA_MANY(search->arena, int64_t, job->size_count);
    search->width = ARENA_MANY(search->arena, int64_t, job->size_count);
    search->price = ARENA_MANY(search->arena, int64_t, job->size_count);
    for (size_t i = 0; i < job->size_count; i++)
        if (job->sizes[i].price > dearest)
            dearest = job->sizes[i].price;
    for (size_t i = 0; i < job->size_count; i++) {
        const struct cut_size *size = &job->sizes[i];

        search->length[i] = size->length - 2 * job->trim + job->kerf;
        search->width[i] = size->width - 2 * job->trim + job->kerf;
        search->price[i] = size->price;
        if (dearest == 0 && size->limit == CUT_ANY)
            search->price[i] = size->length * size->width / CUT_LENGTH_MAX + 1;
    }
}

/* Pieces of a size on the shelf, no more than could be used. */
static int64_t on_shelf(const struct search *search, size_t size)
{
    int64_t limit = search->job->sizes[size].limit;
    int64_t parts = (int64_t)search->job->part_count;

    if (limit == CUT_ANY)
        return 0;
    return limit < parts ? limit : parts;
}

static void plan_begin(struct search *search, struct sheet_plan *plan)
{
    plan->owner = ARENA_MANY(search->arena, size_t, search->job->part_count);
    plan->places = ARENA_MANY(search->arena, struct cut_place, search->job->part_count);
}

/* Open at once: the shelf, a set (one for each part, and one more in a move) and what is opened
 * beyond it. */
static size_t sheets_at_most(const struct search *search)
{
    size_t most = 2 * search->job->part_count + 2;

    for (size_t i = 0; i < search->job->size_count; i++)
        most += (size_t)on_shelf(search, i);
    return most;
}

static void search_begin(struct search *search, const struct cut_job *job, struct arena *arena)
{
    *search = (struct search){.job = job, .arena = arena, .more = NOWHERE};
    search->parts = ARENA_MANY(arena, struct cut_piece, job->part_count);
    for (size_t i = 0; i < job->part_count; i++) {
        search->parts[i] = job->parts[i];
        search->parts[i].length += job->kerf;
        search->parts[i].width += job->kerf;
    }
    measure_sizes(search);
    order_parts(search);
    search->used = ARENA_MANY(arena, bool, sheets_at_most(search));
    plan_begin(search, &search->now);
    plan_begin(search, &search->best);
}

static bool fits_size(const struct search *search, size_t size, const struct cut_piece *part)
{
    int64_t length = search->length[size], width = search->width[size];

    return (part->length <= length && part->width <= width) ||
           (part->may_turn && part->width <= length && part->length <= width);
}

/* The cheapest size on offer that takes a part; NOWHERE when none does. */
static size_t cheapest_for(const struct search *search, const struct cut_piece *part)
{
    size_t best = NOWHERE;

    for (size_t i = 0; i < search->job->size_count; i++)
        if (search->job->sizes[i].limit == CUT_ANY && fits_size(search, i, part) &&
            (best == NOWHERE || search->price[i] < search->price[best]))
            best = i;
    return best;
}

/* ---- filling a set ---- */

static void open_sheet(struct search *search, size_t size)
{
    size_t sheet = search->now.sizes.count;

    *LIST_ADD(search->arena, &search->now.sizes) = size;
    areas_open(&search->free, search->arena,
               (struct free_area){sheet, 0, 0, search->length[size], search->width[size]});
}

static void open_set(struct search *search)
{
    search->free.areas.count = 0;
    search->now.sizes.count = 0;
    for (size_t i = 0; i < search->job->size_count; i++)
        for (int64_t n = 0; n < on_shelf(search, i); n++)
            open_sheet(search, i);
    for (size_t i = 0; i < search->set.count; i++)
        open_sheet(search, search->set.at[i]);
}

static bool place_part(struct search *search, size_t part, enum fit_rule fit, enum split_rule split)
{
    const struct cut_piece *sized = &search->parts[part];
    struct cut_place *place = &search->now.places[part];
    size_t size;

    place->part = part;
    if (areas_place(&search->free, search->arena, sized, fit, split, &search->now.owner[part],
                    place))
        return true;
    search->now.owner[part] = NOWHERE;
    if (search->more == NOWHERE)
        return false;
    size = fits_size(search, search->more, sized) ? search->more : cheapest_for(search, sized);
    if (size == NOWHERE)
        return false;
    open_sheet(search, size);
    return areas_place(&search->free, search->arena, sized, fit, split, &search->now.owner[part],
                       place);
}

static void sum_up(struct search *search)
{
    struct sheet_plan *plan = &search->now;
    bool *used = search->used;

    memset(used, 0, plan->sizes.count * sizeof *used);
    plan->cost = plan->wastes = 0;
    for (size_t i = 0; i < search->job->part_count; i++) {
        size_t sheet = plan->owner[i];

        if (sheet == NOWHERE || used[sheet])
            continue;
        used[sheet] = true;
        plan->cost += search->price[plan->sizes.at[sheet]];
    }
    for (size_t i = 0; i < search->free.areas.count; i++)
        plan->wastes += used[search->free.areas.at[i].blank];
}

/* False when more parts stay outside than in the best plan, at the first of them. */
static bool fill_set(struct search *search, enum part_order order, enum fit_rule fit,
                     enum split_rule split, int64_t allowed)
{
    open_set(search);
    search->now.left_out = 0;
    for (size_t i = 0; i < search->job->part_count; i++)
        if (!place_part(search, search->order[order][i], fit, split) &&
            ++search->now.left_out > allowed)
            return false;
    sum_up(search);
    return true;
}

static bool plan_better(const struct sheet_plan *a, const struct sheet_plan *b)
{
    if (a->left_out != b->left_out)
        return a->left_out < b->left_out;
    if (a->cost != b->cost)
        return a->cost < b->cost;
    return a->wastes < b->wastes;
}

static void keep_plan(struct search *search)
{
    struct sheet_plan kept = search->now;

    search->now = search->best;
    search->best = kept;
}

/* Fills the set by all rules while work lasts; true when the best plan became better. */
static bool try_set(struct search *search, int64_t allowed)
{
    bool better = false;

    for (int order = 0; order < PART_ORDERS; order++)
        for (int fit = 0; fit < FIT_RULES; fit++)
            for (int split = 0; split < SPLIT_RULES; split++) {
                if (search->free.steps >= STEPS_IN_ALL && search->best.sizes.count > 0)
                    return better;
                if (fill_set(search, (enum part_order)order, (enum fit_rule)fit,
                             (enum split_rule)split, allowed) &&
                    (search->best.sizes.count == 0 || plan_better(&search->now, &search->best))) {
                    keep_plan(search);
                    better = true;
                }
            }
    return better;
}

/* ---- cheaper sets ---- */

static bool sheet_used(const struct search *search, size_t sheet)
{
    for (size_t i = 0; i < search->job->part_count; i++)
        if (search->best.owner[i] == sheet)
            return true;
    return false;
}

/* The bought sheets of the best plan. */
static void set_from_best(struct search *search)
{
    search->set.count = 0;
    for (size_t i = 0; i < search->best.sizes.count; i++)
        if (search->job->sizes[search->best.sizes.at[i]].limit == CUT_ANY && sheet_used(search, i))
            *LIST_ADD(search->arena, &search->set) = search->best.sizes.at[i];
}

/* The set of the best plan without sheet `out`, with one or two sheets in its place (NOWHERE:
 * none); true when that was better. */
static bool try_move(struct search *search, size_t out, size_t in, size_t second)
{
    set_from_best(search);
    list_remove(&search->set.any, out, sizeof(size_t));
    if (in != NOWHERE)
        *LIST_ADD(search->arena, &search->set) = in;
    if (second != NOWHERE)
        *LIST_ADD(search->arena, &search->set) = second;
    return try_set(search, search->best.left_out);
}

static bool try_cheaper_pair(struct search *search, size_t out, int64_t price, size_t in)
{
    const struct cut_size *sizes = search->job->sizes;

    for (size_t second = in; second < search->job->size_count; second++)
        if (sizes[second].limit == CUT_ANY && search->price[in] + search->price[second] < price &&
            try_move(search, out, in, second))
            return true;
    return false;
}

static bool try_without(struct search *search, size_t out)
{
    const struct cut_size *sizes = search->job->sizes;
    int64_t price = search->price[search->set.at[out]];

    if (try_move(search, out, NOWHERE, NOWHERE))
        return true;
    for (size_t in = 0; in < search->job->size_count; in++) {
        if (sizes[in].limit != CUT_ANY || search->price[in] >= price)
            continue;
        if (try_move(search, out, in, NOWHERE) || try_cheaper_pair(search, out, price, in))
            return true;
    }
    return false;
}

static bool improve(struct search *search)
{
    set_from_best(search);
    for (size_t out = 0; out < search->set.count; out++) {
        size_t size = search->set.at[out];

        if (out > 0 && size == search->set.at[out - 1])
            continue;
        if (search->free.steps >= STEPS_IN_ALL)
            return false;
        if (try_without(search, out))
            return true;
        set_from_best(search);
    }
    return false;
}

/* First plans: the shelf alone, then each size on offer as the one of which more are opened. */
static void search_run(struct search *search)
{
    const struct cut_job *job = search->job;
    int64_t any = (int64_t)job->part_count;

    for (size_t i = 0; i < job->size_count; i++) {
        if (job->sizes[i].limit != CUT_ANY)
            continue;
        search->more = i;
        try_set(search, any);
    }
    search->more = NOWHERE;
    if (search->best.sizes.count == 0)
        try_set(search, any);
    while (search->best.sizes.count > 0 && improve(search))
        assert(search->best.cost >= 0);
}

/* ---- the layout ---- */

static void lay_part(const struct search *search, size_t part, struct cut_blank *blank,
                     struct cut_layout *layout)
{
    const struct cut_piece *sized = &search->job->parts[part];
    struct cut_place place = search->best.places[part];
    int64_t end;

    place.along += search->job->trim;
    place.across += search->job->trim;
    end = place.along + (place.turned ? sized->width : sized->length);
    if (end > blank->used)
        blank->used = end;
    blank->count++;
    *LIST_ADD(search->arena, &layout->places) = place;
}

/* The free areas of the plan are gone by now: the largest rest is the larger of what lies beyond
 * all parts and what lies beside them, both whole to the sheet's edge. */
static void find_rest(const struct search *search, const struct cut_layout *layout,
                      struct cut_blank *blank)
{
    const struct cut_job *job = search->job;
    const struct cut_size *size = &job->sizes[blank->size];
    int64_t beside = 0, beyond_rest = size->length - blank->used - job->kerf, beside_rest;

    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &layout->places.at[i];
        const struct cut_piece *part = &job->parts[place->part];
        int64_t side = place->across + (place->turned ? part->length : part->width);

        if (side > beside)
            beside = side;
    }
    beside_rest = size->width - beside - job->kerf;
    if (beyond_rest > 0 && beyond_rest * size->width >= beside_rest * size->length) {
        blank->rest = beyond_rest;
        blank->rest_across = size->width;
    } else if (beside_rest > 0) {
        blank->rest = size->length;
        blank->rest_across = beside_rest;
    }
}

static void lay_sheet(const struct search *search, size_t sheet, struct cut_layout *layout)
{
    struct cut_blank blank = {.size = search->best.sizes.at[sheet], .first = layout->places.count};

    for (size_t i = 0; i < search->job->part_count; i++)
        if (search->best.owner[search->order[BY_AREA][i]] == sheet)
            lay_part(search, search->order[BY_AREA][i], &blank, layout);
    if (blank.count == 0)
        return;
    find_rest(search, layout, &blank);
    layout->cost += search->job->sizes[blank.size].price;
    *LIST_ADD(search->arena, &layout->blanks) = blank;
}

static void lay_out(const struct search *search, struct cut_layout *layout)
{
    for (size_t i = 0; i < search->best.sizes.count; i++)
        lay_sheet(search, i, layout);
    for (size_t i = 0; i < search->job->part_count; i++)
        if (search->best.sizes.count == 0 || search->best.owner[i] == NOWHERE)
            *LIST_ADD(search->arena, &layout->left_out) = i;
}

static int64_t bound_by_area(const struct search *search)
{
    const struct cut_job *job = search->job;
    int64_t *areas = ARENA_MANY(search->arena, int64_t, job->size_count);
    int64_t total = 0;
    int64_t dearest_part = 0;
    int64_t bound;

    for (size_t i = 0; i < job->size_count; i++)
        if (search->length[i] > 0 && search->width[i] > 0)
            areas[i] = search->length[i] * search->width[i];
    for (size_t i = 0; i < job->part_count; i++) {
        size_t size = cheapest_for(search, &search->parts[i]);

        if (size == NOWHERE)
            continue;
        total += search->parts[i].length * search->parts[i].width;
        if (job->sizes[size].price > dearest_part)
            dearest_part = job->sizes[size].price;
    }
    bound = bound_by_content(job, areas, total);
    for (size_t i = 0; i < job->size_count; i++)
        if (job->sizes[i].limit > 0)
            return bound;
    return bound > dearest_part ? bound : dearest_part;
}

void sheets_cut(const struct cut_job *job, struct arena *arena, struct cut_layout *ret_layout)
{
    struct search search;
    struct cut_layout layout = {0};

    assert(arena->escape && job->kerf >= 0 && job->trim >= 0);
    search_begin(&search, job, arena);
    if (job->part_count > 0)
        search_run(&search);
    lay_out(&search, &layout);
    layout.bound = bound_by_area(&search);
    assert(layout.left_out.count > 0 || layout.bound <= layout.cost);
    *ret_layout = layout;
}

void *sheets_begin(const struct cut_job *job, struct arena *arena, const struct cut_layout *quick)
{
    (void)job;
    (void)arena;
    (void)quick;
    return NULL;
}

bool sheets_step(void *state, int64_t work, int64_t *done, struct cut_layout *best)
{
    (void)state;
    (void)work;
    (void)done;
    (void)best;
    return false;
}
