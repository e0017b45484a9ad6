/*
 * First the shelf, the largest part first, by cuts from edge to edge; then the roll. Its first
 * layout comes from a few orders; then hunts (rollhunt.h) go on from the best order, each with its
 * way of laying parts and its aim, a slice of work at a time in turn with beams (rollbeams.h) and
 * sweeps (rollsweep.h).
 *
 *  1. `best` lays every part of the roll, and `length` is where the farthest ends, kerf included.
 *  2. `bound` is a length that no layout undercuts, so the search is over when both are equal.
 *  3. Hunts aim below `best`: at the next shorter length, or at the longest that is sold for less.
 *  4. Choices by chance come from generators with fixed seeds; work is counted.
 */
#include "cut/rolls.h"

#include "base/quantity.h"
#include "cut/ranking.h"
#include "cut/rollbeams.h"
#include "cut/rollbound.h"
#include "cut/rollhunt.h"
#include "cut/rollrows.h"
#include "cut/rollsweep.h"
#include "cut/split.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#define NOWHERE SIZE_MAX
#define NOOKS_MOST 40              /* parts up to which a plain job is laid by nooks as well */
#define QUICK_WORK INT64_C(400000) /* of the first layout, after the first orders */
#define SLICE INT64_C(1000000)     /* of one hunt in turn */

/* Work in vain for each part until the search has run its course. */
#define STALE_FEW INT64_C(250000)
#define STALE_SOME INT64_C(10000000)
#define STALE_MANY INT64_C(100000000)
#define FEW_PARTS 4
#define SOME_PARTS 12

/* In turn with the hunts go beams and sweeps, so many quarters of a slice each: at first, and
 * once hunts and beams have done so much work (where a pattern binds parts: so much in vain). Hunts
 * always go on, for they alone look for a shorter length that costs the same. Of more parts than so
 * many hunts get most. */
#define SHARE (SLICE / 4)
#define FEW_SWEPT 30
#define TIRED_PLAIN INT64_C(300000000)
#define TIRED_BOUND INT64_C(220000000)

struct shares {
    int64_t hunts, beams, sweeps;
    int64_t from_best; /* of those of the sweeps, where they ask for two lengths */
};

static const struct shares many_shares = {16, 0, 4, 0};
static const struct shares plain_shares[2] = {{1, 4, 1, 0}, {2, 3, 18, 6}};
static const struct shares bound_shares[2] = {{4, 1, 4, 0}, {1, 1, 28, 8}};

enum aim { AIM_SHORTER, AIM_CHEAPER, AIMS };

/* Each sort once first; then hunts by the skyline for a cheaper length, which find most where parts
 * and the sale let them be. */
static const struct {
    enum roll_way way;
    enum aim aim;
} turns[] = {{ROLL_SKYLINE, AIM_SHORTER}, {ROLL_SKYLINE, AIM_CHEAPER}, {ROLL_NOOKS, AIM_SHORTER},
             {ROLL_NOOKS, AIM_CHEAPER},   {ROLL_SKYLINE, AIM_CHEAPER}, {ROLL_SKYLINE, AIM_CHEAPER},
             {ROLL_SKYLINE, AIM_CHEAPER}};

#define TURNS (sizeof turns / sizeof *turns)

/* One sweep goes up from the bound; while that is some steps away another asks for what would be
 * cheaper than the best, which is found the sooner, and refuted for all steps below. */
enum from { FROM_BOUND, FROM_BEST, SWEEPS };

struct swept {
    struct roll_sweep *sweep; /* none before it is first asked */
    int64_t target;           /* 0: none yet */
    int64_t unjudged;         /* a target of which it can say no more */
};

struct rolls_search {
    const struct cut_job *job;
    struct arena *arena;
    struct cut_layout shelf; /* what lies on the shelf's pieces, and what is left out */
    struct roll_job roll;
    int64_t bound;

    struct roll_order order; /* of the best */
    struct roll_spot *spots;
    int64_t length; /* of the best; 0: none yet */

    struct roll_hunt hunts[ROLL_WAYS][AIMS];
    bool hunting;
    bool thorough; /* the bound is the best that is known without a sweep */

    struct swept sweeps[SWEEPS];

    struct roll_beams *beams; /* none before they are first asked */

    size_t turn;
    int64_t hunted; /* work of hunts and beams, */
    int64_t stale;  /* and of it since the best was found */
};

/* ---- the shelf ---- */

static size_t choose_roll(const struct cut_job *job)
{
    size_t roll = NOWHERE;

    for (size_t i = 0; i < job->size_count; i++)
        if (job->sizes[i].limit == CUT_ANY &&
            (roll == NOWHERE || job->sizes[i].width > job->sizes[roll].width))
            roll = i;
    return roll;
}

static void add_place(const struct cut_job *job, struct cut_place place, struct cut_blank *blank,
                      struct arena *arena, struct cut_layout *layout)
{
    const struct cut_piece *part = &job->parts[place.part];
    int64_t end = place.along + (place.turned ? part->width : part->length);

    if (end > blank->used)
        blank->used = end;
    blank->count++;
    *LIST_ADD(arena, &layout->places) = place;
}

struct shelf {
    struct free_areas free;
    struct cut_piece *parts; /* with a kerf; none that is matched may go there */
    size_t *left;            /* indices of parts that have no place yet */
    size_t left_count;
};

/* Fills one piece from the shelf with parts that are left, in their order. */
static void use_piece(struct rolls_search *search, struct shelf *shelf, size_t size)
{
    const struct cut_job *job = search->job;
    struct cut_blank blank = {.size = size, .first = search->shelf.places.count};
    size_t kept = 0;

    shelf->free.areas.count = 0;
    areas_open(&shelf->free, search->arena,
               (struct free_area){0, 0, 0, job->sizes[size].length + job->kerf,
                                  job->sizes[size].width + job->kerf});
    for (size_t i = 0; i < shelf->left_count; i++) {
        struct cut_place place = {.part = shelf->left[i]};
        size_t only;

        if (!piece_matched(job, &job->parts[place.part]) &&
            areas_place(&shelf->free, search->arena, &shelf->parts[place.part], FIT_AREA,
                        SPLIT_LARGE, &only, &place))
            add_place(job, place, &blank, search->arena, &search->shelf);
        else
            shelf->left[kept++] = place.part;
    }
    shelf->left_count = kept;
    if (blank.count > 0)
        *LIST_ADD(search->arena, &search->shelf.blanks) = blank;
}

static void use_shelf(struct rolls_search *search, struct shelf *shelf)
{
    const struct cut_job *job = search->job;

    *shelf = (struct shelf){.left_count = job->part_count};
    shelf->parts = ARENA_MANY(search->arena, struct cut_piece, job->part_count);
    shelf->left = ARENA_MANY(search->arena, size_t, job->part_count);
    for (size_t i = 0; i < job->part_count; i++) {
        shelf->parts[i] = job->parts[i];
        shelf->parts[i].length += job->kerf;
        shelf->parts[i].width += job->kerf;
        shelf->left[i] = i;
    }
    ranking_sort(shelf->parts, shelf->left, shelf->left_count, BY_AREA, search->arena);
    for (size_t i = 0; i < job->size_count; i++)
        for (int64_t n = 0; n < job->sizes[i].limit && n < (int64_t)job->part_count; n++)
            use_piece(search, shelf, i);
}

/* What the shelf left goes on the roll, or is left out. */
static void take_to_roll(struct rolls_search *search, struct shelf *shelf)
{
    const struct cut_job *job = search->job;
    size_t size = choose_roll(job);
    bool *outside = ARENA_MANY(search->arena, bool, job->part_count);
    const bool *takes = size == NOWHERE ? NULL : roll_takes(job, size, search->arena);
    size_t count = 0;

    for (size_t i = 0; i < shelf->left_count; i++) {
        if (takes && takes[shelf->left[i]])
            shelf->left[count++] = shelf->left[i];
        else
            outside[shelf->left[i]] = true;
    }
    for (size_t i = 0; i < job->part_count; i++)
        if (outside[i])
            *LIST_ADD(search->arena, &search->shelf.left_out) = i;
    if (count > 0)
        search->roll = roll_job_make(job, size, shelf->left, count, search->arena);
}

/* ---- the best ---- */

static int64_t cost_of(const struct rolls_search *search, int64_t length)
{
    return roll_sold(&search->job->sale, length - search->job->kerf);
}

static void keep(struct rolls_search *search, const struct roll_pack *pack,
                 const struct roll_order *order)
{
    size_t count = search->roll.count;

    roll_order_copy(&search->roll, order, &search->order);
    memcpy(search->spots, pack->spots, count * sizeof *pack->spots);
    search->length = pack->length;
    assert(search->length >= search->bound);
}

/* Longer than any layout that leaves nothing undone: one part after another. */
static int64_t end_of_all(const struct roll_job *job)
{
    int64_t end = 0;

    for (size_t i = 0; i < job->count; i++) {
        const struct roll_part *part = &job->parts[i];

        end += (part->length > part->width ? part->length : part->width) + job->pattern.along;
    }
    for (size_t i = 0; i < job->blemish_count; i++)
        if (job->blemishes[i].far > 0)
            end += job->blemishes[i].far;
    return end + job->pattern.along + 1;
}

static bool way_serves(const struct roll_job *job, enum roll_way way)
{
    return way == ROLL_SKYLINE ? roll_job_plain(job)
                               : !roll_job_plain(job) || job->count <= NOOKS_MOST;
}

static void try_order(struct rolls_search *search, struct roll_pack *pack,
                      const struct roll_order *order)
{
    for (int way = 0; way < ROLL_WAYS; way++) {
        int64_t target = search->length > 0 ? search->length - 1 : end_of_all(&search->roll);

        if (!way_serves(&search->roll, (enum roll_way)way) || search->length == search->bound)
            continue;
        if (way == ROLL_SKYLINE ? roll_pack_skyline(pack, order, target, 0)
                                : roll_pack_nooks(pack, order, target, 0))
            keep(search, pack, order);
    }
}

/* A few orders, largest first by one measure or another; what is matched comes before the rest. */
static void try_orders(struct rolls_search *search)
{
    struct roll_job *roll = &search->roll;
    struct cut_piece *parts = ARENA_MANY(search->arena, struct cut_piece, roll->count);
    size_t *indices = ARENA_MANY(search->arena, size_t, roll->count);
    struct roll_order order;
    struct roll_pack pack;

    roll_pack_init(&pack, roll, search->arena);
    roll_order_init(&order, roll, search->arena);
    for (size_t i = 0; i < roll->count; i++) {
        parts[i] =
            (struct cut_piece){.length = roll->parts[i].length, .width = roll->parts[i].width};
        indices[i] = i;
    }
    for (int by = 0; by < PART_ORDERS; by++) {
        ranking_sort(parts, indices, roll->count, (enum part_order)by, search->arena);
        for (size_t i = 0; i < roll->count; i++)
            order.at[i] = (int32_t)indices[i];
        try_order(search, &pack, &order);
    }
    assert(search->length > 0 || roll->area == 0);
}

/* ---- hunts ---- */

/* What to reach: `length` 0 where nothing shorter can come of it. */
static int64_t target_of(const struct rolls_search *search, enum aim aim)
{
    int64_t target = search->length - 1;

    if (aim == AIM_CHEAPER)
        target = roll_used_for(&search->job->sale, cost_of(search, search->length) - 1) +
                 search->job->kerf;
    return target >= search->bound ? target : 0;
}

static void aim_hunts(struct rolls_search *search, bool anew)
{
    for (int way = 0; way < ROLL_WAYS; way++)
        for (int aim = 0; aim < AIMS; aim++) {
            struct roll_hunt *hunt = &search->hunts[way][aim];
            int64_t target = target_of(search, (enum aim)aim);

            if (hunt->job && target > 0 && (anew || hunt->target > target))
                roll_hunt_aim(hunt, anew ? &search->order : &hunt->now, target);
        }
}

/* A hunt for each way that serves; for a cheaper length only where lengths are sold in steps. */
static void begin_hunts(struct rolls_search *search)
{
    for (int way = 0; way < ROLL_WAYS; way++)
        for (int aim = 0; aim < AIMS; aim++)
            if (way_serves(&search->roll, (enum roll_way)way) &&
                (aim == AIM_SHORTER || search->job->sale.step > 1))
                roll_hunt_init(&search->hunts[way][aim], &search->roll, (enum roll_way)way,
                               search->arena,
                               UINT64_C(88172645463325252) + (uint64_t)(way * AIMS + aim));
    search->hunting = true;
    aim_hunts(search, true);
}

static void count_hunted(struct rolls_search *search, int64_t work)
{
    search->hunted += work;
    search->stale += work;
}

/* About `work` units by one hunt. */
static void hunt_on(struct rolls_search *search, struct roll_hunt *hunt, int64_t work,
                    int64_t *done)
{
    int64_t begin = hunt->pack.work;
    bool found = false;

    while (!found && hunt->pack.work - begin < work)
        found = roll_hunt_round(hunt);
    *done += hunt->pack.work - begin;
    count_hunted(search, hunt->pack.work - begin);
    if (!found)
        return;
    keep(search, &hunt->pack, &hunt->now);
    search->stale = 0;
    aim_hunts(search, false);
}

static bool cost_proven(const struct rolls_search *search)
{
    return cost_of(search, search->length) == cost_of(search, search->bound);
}

static int64_t patience(const struct rolls_search *search)
{
    int64_t count = (int64_t)search->roll.count;

    if (count <= FEW_PARTS || cost_proven(search))
        return count * STALE_FEW;
    return count * (count > SOME_PARTS ? STALE_MANY : STALE_SOME);
}

static bool is_hunted(const struct rolls_search *search)
{
    return search->roll.count > 1 && search->length > search->bound &&
           search->stale < patience(search);
}

/* All hunts in turn, until about `work` is done. */
static void hunt_all(struct rolls_search *search, int64_t work, int64_t *done)
{
    int64_t begin = *done;

    if (!search->hunting && is_hunted(search))
        begin_hunts(search);
    while (is_hunted(search) && *done - begin < work) {
        size_t turn = search->turn++ % TURNS;
        struct roll_hunt *hunt = &search->hunts[turns[turn].way][turns[turn].aim];
        int64_t left = work - (*done - begin);

        if (hunt->job && target_of(search, turns[turn].aim) > 0)
            hunt_on(search, hunt, left < SLICE ? left : SLICE, done);
    }
}

/* ---- sweeps ---- */

/* The longest length that costs as little as the bound; where lengths are not sold in steps, the
 * next that is shorter. 0 where there is nothing to ask. */
static int64_t target_from_bound(const struct rolls_search *search)
{
    int64_t unjudged = search->sweeps[FROM_BOUND].unjudged;
    int64_t target = search->length - 1, cheapest, from;

    if (search->length <= search->bound || cost_proven(search) || search->roll.count > SWEEP_PARTS)
        return 0;
    from = unjudged < search->bound ? search->bound : unjudged + 1;
    cheapest = roll_used_for(&search->job->sale, cost_of(search, from)) + search->job->kerf;
    target = search->job->sale.step > 1 && cheapest < target ? cheapest : target;
    return target > unjudged ? target : 0;
}

/* 0 where it is the other sweep's or the next, or where that one has nothing left to ask. */
static int64_t target_from_best(const struct rolls_search *search)
{
    int64_t other = target_from_bound(search), target;

    if (other == 0)
        return 0;
    target = target_of(search, AIM_CHEAPER);
    if (cost_of(search, target) <= cost_of(search, other) + search->job->sale.step)
        return 0;
    return target != search->sweeps[FROM_BEST].unjudged ? target : 0;
}

static int64_t sweep_target(const struct rolls_search *search, enum from from)
{
    return from == FROM_BOUND ? target_from_bound(search) : target_from_best(search);
}

static bool sooner(const struct roll_spot *a, const struct roll_spot *b)
{
    return a->along < b->along || (a->along == b->along && a->across < b->across);
}

/* Parts in the order in which they lie. */
static void set_order(struct rolls_search *search, const struct roll_spot *spots)
{
    int32_t *at = search->order.at;

    for (size_t i = 1; i < search->roll.count; i++) {
        int32_t kept = at[i];
        size_t to = i;

        for (; to > 0 && sooner(&spots[kept], &spots[at[to - 1]]); to--)
            at[to] = at[to - 1];
        at[to] = kept;
    }
}

/* Takes over what the sweep found, and lets hunts look below it. */
static void keep_swept(struct rolls_search *search, const struct roll_spot *spots)
{
    int64_t length = 0;

    for (size_t i = 0; i < search->roll.count; i++) {
        const struct roll_part *part = &search->roll.parts[i];
        int64_t far = spots[i].along + (spots[i].turned ? part->width : part->length);

        length = far > length ? far : length;
    }
    assert(length < search->length && length >= search->bound);
    memcpy(search->spots, spots, search->roll.count * sizeof *spots);
    search->length = length;
    search->stale = 0;
    set_order(search, spots);
    if (search->hunting)
        aim_hunts(search, true);
}

static void sweep_from(struct rolls_search *search, enum from from, int64_t work, int64_t *done)
{
    struct swept *swept = &search->sweeps[from];
    int64_t begin = *done, target;

    while (*done - begin < work && (target = sweep_target(search, from)) > 0) {
        enum sweep_verdict verdict;

        if (!swept->sweep)
            swept->sweep = roll_sweep_new(&search->roll, search->arena);
        if (swept->target != target)
            roll_sweep_aim(swept->sweep, target);
        swept->target = target;
        verdict = roll_sweep_on(swept->sweep, work - (*done - begin), done);
        if (verdict == SWEEP_NEVER)
            search->bound = target + 1;
        if (verdict == SWEEP_FITS)
            keep_swept(search, roll_sweep_spots(swept->sweep));
        if (verdict == SWEEP_UNKNOWN)
            swept->unjudged = target;
    }
}

static void sweep_on(struct rolls_search *search, const struct shares *shares, int64_t *done)
{
    int64_t from_best = target_from_best(search) > 0 ? shares->from_best : 0;

    sweep_from(search, FROM_BOUND, (shares->sweeps - from_best) * SHARE, done);
    sweep_from(search, FROM_BEST, from_best * SHARE, done);
}

/* Beams look below the best for as long as hunts do. */
static void beam_on(struct rolls_search *search, int64_t work, int64_t *done)
{
    int64_t begin = *done, target;

    while (is_hunted(search) && *done - begin < work &&
           (target = target_of(search, AIM_CHEAPER)) > 0) {
        int64_t before = *done;
        bool found;

        if (!search->beams)
            search->beams = roll_beams_new(&search->roll, search->arena);
        found = roll_beams_on(search->beams, target, work - (*done - begin), done);
        count_hunted(search, *done - before);
        if (found)
            keep_swept(search, roll_beams_spots(search->beams));
    }
}

/* ---- layouts ---- */

static int in_order_of_cutting(const void *a, const void *b)
{
    const struct cut_place *left = a, *right = b;

    if (left->along != right->along)
        return left->along < right->along ? -1 : 1;
    if (left->across != right->across)
        return left->across < right->across ? -1 : 1;
    return left->part < right->part ? -1 : left->part > right->part;
}

static void lay_roll(const struct rolls_search *search, struct cut_layout *layout)
{
    const struct roll_job *roll = &search->roll;
    struct cut_blank blank = {.size = roll->size, .first = layout->places.count};

    for (size_t i = 0; i < roll->count; i++) {
        const struct roll_spot *spot = &search->spots[i];

        add_place(search->job,
                  (struct cut_place){roll->parts[i].part, spot->along,
                                     spot->across + search->job->trim, spot->turned},
                  &blank, search->arena, layout);
    }
    qsort(&layout->places.at[blank.first], blank.count, sizeof *layout->places.at,
          in_order_of_cutting);
    *LIST_ADD(search->arena, &layout->blanks) = blank;
    layout->cost = roll_sold(&search->job->sale, blank.used);
    layout->bound = cost_of(search, search->bound);
    assert(layout->bound <= layout->cost);
}

static struct cut_layout lay(const struct rolls_search *search)
{
    struct cut_layout layout = {0};

    for (size_t i = 0; i < search->shelf.blanks.count; i++)
        *LIST_ADD(search->arena, &layout.blanks) = search->shelf.blanks.at[i];
    for (size_t i = 0; i < search->shelf.places.count; i++)
        *LIST_ADD(search->arena, &layout.places) = search->shelf.places.at[i];
    layout.left_out = search->shelf.left_out;
    if (search->roll.count > 0)
        lay_roll(search, &layout);
    return layout;
}

/* ---- the method ---- */

/* Fills the shelf, lists what is left out, and finds the quick layout of the roll. */
static void search_quickly(struct rolls_search *search, const struct cut_job *job,
                           struct arena *arena)
{
    struct shelf shelf;
    int64_t done = 0;

    assert(arena->escape && job->kerf >= 0 && job->trim >= 0);
    *search = (struct rolls_search){.job = job, .arena = arena};
    use_shelf(search, &shelf);
    take_to_roll(search, &shelf);
    if (search->roll.count == 0)
        return;
    roll_order_init(&search->order, &search->roll, arena);
    search->spots = ARENA_MANY(arena, struct roll_spot, search->roll.count);
    search->bound = roll_bound(&search->roll, ROLL_PAIRS_FEW, arena);
    try_orders(search);
    hunt_all(search, QUICK_WORK, &done);
}

void rolls_cut(const struct cut_job *job, struct arena *arena, struct cut_layout *ret_layout)
{
    struct rolls_search search;

    search_quickly(&search, job, arena);
    *ret_layout = lay(&search);
}

void *rolls_begin(const struct cut_job *job, struct arena *arena, const struct cut_layout *quick)
{
    struct rolls_search *search = ARENA_NEW(arena, struct rolls_search);

    (void)quick; /* made again: its order is where the search goes on */
    search_quickly(search, job, arena);
    return search;
}

static bool is_worth_it(const struct rolls_search *search)
{
    return is_hunted(search) || target_from_bound(search) > 0;
}

/* More pairs of functions may show more, and slices; but they need not. */
static void look_closer(struct rolls_search *search, int64_t *done)
{
    int64_t bound = roll_bound(&search->roll, ROLL_PAIRS_MANY, search->arena);

    if (bound > search->bound)
        search->bound = bound;
    if (search->roll.count <= SWEEP_PARTS && !cost_proven(search))
        bound = roll_rows_bound(&search->roll, search->arena, done);
    if (bound > search->bound)
        search->bound = bound;
    search->thorough = true;
}

static const struct shares *shares_of(const struct rolls_search *search)
{
    if (search->roll.count > FEW_SWEPT)
        return &many_shares;
    if (roll_job_plain(&search->roll))
        return &plain_shares[search->hunted > TIRED_PLAIN];
    return &bound_shares[search->stale > TIRED_BOUND];
}

bool rolls_step(void *state, int64_t work, int64_t *done, struct cut_layout *best)
{
    struct rolls_search *search = state;
    int64_t before = search->length, bound = search->bound, begin = *done;

    if (!search->thorough && is_hunted(search))
        look_closer(search, done);
    while (is_worth_it(search) && *done - begin < work) {
        const struct shares *shares = shares_of(search);

        hunt_all(search, shares->hunts * SHARE, done);
        beam_on(search, shares->beams * SHARE, done);
        sweep_on(search, shares, done);
    }
    if (search->length < before || search->bound > bound)
        *best = lay(search);
    return is_worth_it(search);
}
