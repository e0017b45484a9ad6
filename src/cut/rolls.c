/*
 * First the shelf, the largest part first; then the roll, in one of two ways, of which the better
 * plan is kept. Rows: the first part left opens a row of its length, and every part left that finds
 * room in the row, beside or beyond what lies there, is cut out of it by cuts from edge to edge.
 * Skyline: each part in turn goes where it ends soonest. Both are tried in several orders, and then
 * in orders that differ from the best by a swap, as long as the bound is not reached and work is
 * left.
 *
 *  1. A plan is a place for each part of the roll; its length is the far end of the farthest.
 *  2. Parts and the roll's width carry one kerf more, as in sheets.c.
 *  3. Work is counted in ledges and free areas looked at; a plan that has been begun is finished.
 *  4. Swaps come from a generator with a fixed seed.
 */
#include "cut/rolls.h"

#include "base/quantity.h"
#include "cut/ranking.h"
#include "cut/skyline.h"
#include "cut/split.h"

#include <assert.h>
#include <string.h>

#define STEPS_IN_ALL 60000 /* of the quick layout */
#define WORK_OF_A_STEP 16
#define STALE_MOST \
    INT64_C(100000000) /* work without anything better: the search has run its course */
#define SWAPS_MOST 4
#define NOWHERE SIZE_MAX

struct roll_plan {
    size_t *order;            /* of the parts on the roll */
    struct cut_place *places; /* in the same order */
    int64_t length;
};

struct search {
    const struct cut_job *job;
    struct arena *arena;
    struct cut_piece *parts; /* with a kerf */
    size_t roll;             /* size, or NOWHERE */
    int64_t width;           /* of the roll, with a kerf */
    size_t count;            /* parts on the roll */
    int64_t bound;           /* with a kerf */
    struct skyline skyline;
    struct free_areas free;
    bool *placed; /* in a row plan, by rank in the order */
    uint64_t chance;
    struct roll_plan now, best;
};

static bool fits(const struct cut_piece *part, int64_t width)
{
    return part->width <= width || (part->may_turn && part->length <= width);
}

/* ---- one plan of the roll ---- */

static int64_t far_end(const struct search *search, const struct cut_place *place)
{
    const struct cut_piece *part = &search->parts[place->part];

    return place->along + (place->turned ? part->width : part->length);
}

static void sum_up(const struct search *search, struct roll_plan *plan)
{
    plan->length = 0;
    for (size_t i = 0; i < search->count; i++)
        if (far_end(search, &plan->places[i]) > plan->length)
            plan->length = far_end(search, &plan->places[i]);
}

static void plan_skyline(struct search *search)
{
    skyline_clear(&search->skyline, search->arena, search->width);
    for (size_t i = 0; i < search->count; i++) {
        struct cut_place *place = &search->now.places[i];

        place->part = search->now.order[i];
        if (!skyline_place(&search->skyline, search->arena, &search->parts[place->part], place))
            BUG("a part that fits the roll found no place on it");
    }
    sum_up(search, &search->now);
}

/* How much roll a row takes that a part opens: its length, or its width where it must turn. */
static int64_t row_for(const struct search *search, const struct cut_piece *part)
{
    return part->width <= search->width ? part->length : part->width;
}

static void fill_row(struct search *search, size_t first, int fit, int split)
{
    for (size_t i = first; i < search->count; i++) {
        struct cut_place *place = &search->now.places[i];
        size_t blank;

        place->part = search->now.order[i];
        if (!search->placed[i])
            search->placed[i] =
                areas_place(&search->free, search->arena, &search->parts[place->part],
                            (enum fit_rule)fit, (enum split_rule)split, &blank, place);
    }
    assert(search->placed[first]);
}

static void plan_rows(struct search *search, int fit, int split)
{
    int64_t along = 0;

    memset(search->placed, 0, search->count * sizeof *search->placed);
    search->free.areas.count = 0;
    for (size_t i = 0; i < search->count; i++) {
        int64_t row;

        if (search->placed[i])
            continue;
        row = row_for(search, &search->parts[search->now.order[i]]);
        areas_open(&search->free, search->arena,
                   (struct free_area){0, along, 0, row, search->width});
        fill_row(search, i, fit, split);
        along += row;
    }
    sum_up(search, &search->now);
}

/* ---- the search ---- */

static bool done(const struct search *search)
{
    return search->best.length == search->bound ||
           search->skyline.steps + search->free.steps >= STEPS_IN_ALL;
}

static void keep_better(struct search *search)
{
    if (search->best.length > 0 && search->now.length >= search->best.length)
        return;
    memcpy(search->best.order, search->now.order, search->count * sizeof(size_t));
    memcpy(search->best.places, search->now.places, search->count * sizeof(struct cut_place));
    search->best.length = search->now.length;
}

static void try_order(struct search *search)
{
    plan_skyline(search);
    keep_better(search);
    for (int fit = 0; fit < FIT_RULES; fit++)
        for (int split = 0; split < SPLIT_RULES && !done(search); split++) {
            plan_rows(search, fit, split);
            keep_better(search);
        }
}

/* The next number by chance below `limit`: an xorshift generator (Marsaglia, 2003). */
static size_t by_chance(struct search *search, size_t limit)
{
    search->chance ^= search->chance << 13;
    search->chance ^= search->chance >> 7;
    search->chance ^= search->chance << 17;
    return (size_t)(search->chance % limit);
}

static void swap_two(struct search *search)
{
    size_t a = by_chance(search, search->count), b = by_chance(search, search->count);
    size_t kept;

    memcpy(search->now.order, search->best.order, search->count * sizeof(size_t));
    kept = search->now.order[a];
    search->now.order[a] = search->now.order[b];
    search->now.order[b] = kept;
}

static void search_roll(struct search *search)
{
    for (int order = 0; order < PART_ORDERS; order++) {
        if (order > 0 && done(search))
            return;
        ranking_sort(search->parts, search->now.order, search->count, (enum part_order)order,
                     search->arena);
        try_order(search);
    }
    while (search->count > 2 && !done(search)) {
        swap_two(search);
        plan_skyline(search);
        keep_better(search);
        plan_rows(search, (int)by_chance(search, FIT_RULES), (int)by_chance(search, SPLIT_RULES));
        keep_better(search);
    }
}

/* ---- the bound: area, and parts that no other lies beside ---- */

static int64_t least_along(const struct search *search, const struct cut_piece *part)
{
    int64_t least = part->width <= search->width ? part->length : part->width;

    if (part->may_turn && part->length <= search->width && part->width < least)
        least = part->width;
    return least;
}

static bool over_half(const struct search *search, const struct cut_piece *part)
{
    return 2 * part->width > search->width && (!part->may_turn || 2 * part->length > search->width);
}

static int64_t bound_of_roll(const struct search *search)
{
    int64_t area = 0, alone = 0, longest = 0;

    for (size_t i = 0; i < search->count; i++) {
        const struct cut_piece *part = &search->parts[search->now.order[i]];
        int64_t along = least_along(search, part);

        area += part->length * part->width;
        if (over_half(search, part))
            alone += along;
        if (along > longest)
            longest = along;
    }
    area = search->count > 0 ? whole_divide_up(area, search->width) : 0;
    if (longest > alone)
        alone = longest;
    return area > alone ? area : alone;
}

/* ---- shelf, roll, layout ---- */

static void choose_roll(struct search *search)
{
    const struct cut_job *job = search->job;

    search->roll = NOWHERE;
    for (size_t i = 0; i < job->size_count; i++)
        if (job->sizes[i].limit == CUT_ANY &&
            (search->roll == NOWHERE || job->sizes[i].width > job->sizes[search->roll].width))
            search->roll = i;
    if (search->roll != NOWHERE)
        search->width = job->sizes[search->roll].width + job->kerf;
}

static void add_place(const struct search *search, struct cut_place place, struct cut_blank *blank,
                      struct cut_layout *layout)
{
    int64_t end = far_end(search, &place) - search->job->kerf;

    if (end > blank->used)
        blank->used = end;
    blank->count++;
    *LIST_ADD(search->arena, &layout->places) = place;
}

/* Fills one piece from the shelf with parts of `left` in their order; takes them out of it. */
static void use_piece(struct search *search, size_t size, size_t *left, size_t *left_count,
                      struct cut_layout *layout)
{
    const struct cut_size *piece = &search->job->sizes[size];
    struct cut_blank blank = {.size = size, .first = layout->places.count};
    size_t kept = 0;

    search->free.areas.count = 0;
    areas_open(&search->free, search->arena,
               (struct free_area){0, 0, 0, piece->length + search->job->kerf,
                                  piece->width + search->job->kerf});
    for (size_t i = 0; i < *left_count; i++) {
        struct cut_place place = {.part = left[i]};
        size_t only;

        if (areas_place(&search->free, search->arena, &search->parts[left[i]], FIT_AREA,
                        SPLIT_LARGE, &only, &place))
            add_place(search, place, &blank, layout);
        else
            left[kept++] = left[i];
    }
    *left_count = kept;
    if (blank.count > 0)
        *LIST_ADD(search->arena, &layout->blanks) = blank;
}

static void use_shelf(struct search *search, size_t *left, size_t *left_count,
                      struct cut_layout *layout)
{
    const struct cut_job *job = search->job;

    ranking_sort(search->parts, left, *left_count, BY_AREA, search->arena);
    for (size_t i = 0; i < job->size_count; i++)
        for (int64_t n = 0; n < job->sizes[i].limit && n < (int64_t)job->part_count; n++)
            use_piece(search, i, left, left_count, layout);
}

static void split_left(struct search *search, const size_t *left, size_t left_count,
                       struct cut_layout *layout)
{
    bool *outside = ARENA_MANY(search->arena, bool, search->job->part_count);

    for (size_t i = 0; i < left_count; i++) {
        if (search->roll != NOWHERE && fits(&search->parts[left[i]], search->width))
            search->now.order[search->count++] = left[i];
        else
            outside[left[i]] = true;
    }
    for (size_t i = 0; i < search->job->part_count; i++)
        if (outside[i])
            *LIST_ADD(search->arena, &layout->left_out) = i;
}

static void lay_roll(const struct search *search, struct cut_layout *layout)
{
    struct cut_blank blank = {.size = search->roll, .first = layout->places.count};

    for (size_t i = 0; i < search->count; i++)
        add_place(search, search->best.places[i], &blank, layout);
    *LIST_ADD(search->arena, &layout->blanks) = blank;
    layout->cost = blank.used;
    layout->bound = search->bound - search->job->kerf;
    assert(layout->bound <= layout->cost);
}

static void search_begin(struct search *search, const struct cut_job *job, struct arena *arena)
{
    size_t count = job->part_count;

    *search = (struct search){.job = job, .arena = arena, .chance = 88172645463325252U};
    search->parts = ARENA_MANY(arena, struct cut_piece, count);
    for (size_t i = 0; i < count; i++) {
        search->parts[i] = job->parts[i];
        search->parts[i].length += job->kerf;
        search->parts[i].width += job->kerf;
    }
    search->placed = ARENA_MANY(arena, bool, count);
    search->now.order = ARENA_MANY(arena, size_t, count);
    search->now.places = ARENA_MANY(arena, struct cut_place, count);
    search->best.order = ARENA_MANY(arena, size_t, count);
    search->best.places = ARENA_MANY(arena, struct cut_place, count);
    choose_roll(search);
}

/* Fills the shelf, lists what is left out, and finds the quick plan of the roll. */
static void search_quickly(struct search *search, const struct cut_job *job, struct arena *arena,
                           struct cut_layout *layout)
{
    size_t left_count = job->part_count;
    size_t *left;

    assert(arena->escape && job->kerf >= 0 && job->trim == 0);
    search_begin(search, job, arena);
    left = ARENA_MANY(arena, size_t, job->part_count);
    for (size_t i = 0; i < job->part_count; i++)
        left[i] = i;
    use_shelf(search, left, &left_count, layout);
    split_left(search, left, left_count, layout);
    if (search->count > 0) {
        search->bound = bound_of_roll(search);
        search_roll(search);
    }
}

void rolls_cut(const struct cut_job *job, struct arena *arena, struct cut_layout *ret_layout)
{
    struct search search;
    struct cut_layout layout = {0};

    search_quickly(&search, job, arena, &layout);
    if (search.count > 0)
        lay_roll(&search, &layout);
    *ret_layout = layout;
}

/* ---- the search that goes on ---- */

struct rolls_search {
    struct search search;
    struct cut_layout shelf; /* what lies on the shelf's pieces, and what is left out */
    int64_t stale;           /* work since the best was found */
};

void *rolls_begin(const struct cut_job *job, struct arena *arena, const struct cut_layout *quick)
{
    struct rolls_search *on = ARENA_NEW(arena, struct rolls_search);

    (void)quick; /* made again: its plan of the roll is where the search goes on */
    search_quickly(&on->search, job, arena, &on->shelf);
    return on;
}

/* An order that differs from the best by one swap, or now and then by a few. */
static void try_near(struct search *search)
{
    swap_two(search);
    for (size_t more = by_chance(search, SWAPS_MOST); more > 1; more--) {
        size_t a = by_chance(search, search->count), b = by_chance(search, search->count);
        size_t kept = search->now.order[a];

        search->now.order[a] = search->now.order[b];
        search->now.order[b] = kept;
    }
    plan_skyline(search);
    keep_better(search);
    plan_rows(search, (int)by_chance(search, FIT_RULES), (int)by_chance(search, SPLIT_RULES));
    keep_better(search);
}

static void lay_again(struct rolls_search *on, struct cut_layout *best)
{
    struct cut_layout layout = {0};

    for (size_t i = 0; i < on->shelf.blanks.count; i++)
        *LIST_ADD(on->search.arena, &layout.blanks) = on->shelf.blanks.at[i];
    for (size_t i = 0; i < on->shelf.places.count; i++)
        *LIST_ADD(on->search.arena, &layout.places) = on->shelf.places.at[i];
    layout.left_out = on->shelf.left_out;
    lay_roll(&on->search, &layout);
    *best = layout;
}

static bool is_worth_it(const struct rolls_search *on)
{
    return on->search.count > 2 && on->search.best.length > on->search.bound &&
           on->stale < STALE_MOST;
}

bool rolls_step(void *state, int64_t work, int64_t *done, struct cut_layout *best)
{
    struct rolls_search *on = state;
    struct search *search = &on->search;
    int64_t before = search->best.length, worked = 0;

    while (is_worth_it(on) && worked < work) {
        int64_t length = search->best.length;
        int64_t steps = search->skyline.steps + search->free.steps;

        try_near(search);
        steps = search->skyline.steps + search->free.steps - steps;
        worked += steps * WORK_OF_A_STEP;
        on->stale = search->best.length < length ? 0 : on->stale + steps * WORK_OF_A_STEP;
    }
    *done += worked;
    if (search->best.length < before)
        lay_again(on, best);
    return is_worth_it(on);
}
