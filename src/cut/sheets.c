/*
 * First plans fill sheets one after the other, each size on offer in turn as the one of which more
 * are opened. Where there are few parts, or few kinds of them, the best of all patterns is known
 * soon (few.h, kinds.h). Else a search works towards goals: a goal is a set of sheets that costs
 * less than the best plan, all open at once, and it is reached when ruin and recreate (ruin.h)
 * places all parts in them. The sets are those that are as large as the money allows (sheetsets.h),
 * so that each cheaper set lies inside one of them; what stays empty is not bought. Between goals,
 * and when none is left, the best plan is made neater: fewer cuts, fewer fence settings, one large
 * rest.
 *
 *  1  sheets that cost nothing are always open
 *  2  `best` holds the best plan, with no sheet in it that is empty and has a price
 *  3  a plan is better by fewer parts left out, then by price, then by fences_judge(), then by
 *     what its gaps are worth
 *  4  memory is taken at the beginning only, but for what the lists of layouts grow by
 */
#include "cut/sheets.h"

#include "cut/few.h"
#include "cut/kinds.h"
#include "cut/ruin.h"
#include "cut/sheetcovers.h"
#include "cut/sheetsets.h"
#include "cut/strokes.h"

#include <assert.h>
#include <string.h>

#define QUICK_WORK INT64_C(2500000)
#define QUICK_WORK_LEAST INT64_C(600000)
#define KINDS_WORK_QUICK INT64_C(1500000)
#define FEW_WORK_QUICK INT64_C(2000000)
#define FEW_WORK INT64_C(20000000)
#define SETS_MOST 48
#define SLICE_FIRST INT64_C(200000) /* of a goal; each round of all goals is longer by a half */
#define SLICE_MOST INT64_C(400000000)
#define QUANTUM INT64_C(200000) /* of either, before the other may have its turn */
#define NEAT_SHARE 8            /* one unit in so many goes to neatness while goals are left */

/* By number of parts: the work in vain, with no goal left, that ends the search. Few parts lie in
 * few ways. */
static const int64_t idle_by_parts[] = {0,         1000000,   10000000, 30000000,
                                        100000000, 200000000, 400000000};

struct sheet_search {
    struct arena *arena;
    struct sheet_job job;
    struct ruin goal, neat; /* two searches, each with its own plan at hand */
    struct trees best, scratch;
    int64_t best_price;
    int32_t best_out;   /* parts left out that fit some size */
    int64_t laid_price; /* of the layout that there is, and its parts left out */
    int32_t laid_out;
    struct ruin_score best_neat;
    int64_t bound;
    struct sheet_covers covers;
    struct sheet_sets sets;
    size_t *best_counts, *all_counts; /* sheets by size: of the best plan; and all with a limit */
    bool goals_stale, goal_open, neat_open;
    size_t next_set;
    int64_t slice, slice_left;
    int64_t goal_work, neat_work, neat_idle;
    struct few *few;     /* NULL where there are many parts, or all is known */
    struct kinds *kinds; /* NULL where there are many kinds, or all is known of prices */
    int64_t few_work, kinds_work;
    struct strokes strokes;
    struct cut_layout layouts[2];
    int layout_now;
};

/* ---- plans ---- */

static int64_t price_of(const struct sheet_search *search, const struct trees *trees)
{
    int64_t price = 0;

    for (int32_t i = 0; i < trees->root_count; i++)
        if (trees_used(trees, i))
            price += search->job.sizes[trees->roots[i].size].price;
    return price;
}

static bool is_free(const struct sheet_search *search, size_t size)
{
    assert(size < search->job.size_count);
    return search->job.sizes[size].usable && search->job.sizes[size].price == 0;
}

static void close_unused(const struct sheet_search *search, struct trees *trees)
{
    for (int32_t i = trees->root_count - 1; i >= 0; i--)
        if (!trees_used(trees, i) && !is_free(search, trees->roots[i].size))
            trees_close(trees, i);
}

static void count_best(struct sheet_search *search)
{
    memset(search->best_counts, 0, search->job.size_count * sizeof *search->best_counts);
    for (int32_t i = 0; i < search->best.root_count; i++)
        search->best_counts[search->best.roots[i].size]++;
}

/* Takes over what a search holds as the best plan. */
static void keep_plan(struct sheet_search *search, const struct ruin *ruin)
{
    trees_copy(&search->best, &ruin->now);
    close_unused(search, &search->best);
    search->best_price = price_of(search, &search->best);
    search->best_out = ruin->outside_count;
    search->goals_stale = true;
    search->goal_open = search->neat_open = false;
    search->neat_idle = 0;
    count_best(search);
}

/* ---- first plans ---- */

static size_t opened(const struct trees *trees, size_t size)
{
    size_t count = 0;

    for (int32_t i = 0; i < trees->root_count; i++)
        count += trees->roots[i].size == size;
    return count;
}

static bool can_open(const struct sheet_search *search, size_t size, const struct sheet_part *part)
{
    assert(size < search->job.size_count);

    const struct sheet_size *sized = &search->job.sizes[size];

    return sized->usable && sheetjob_fits(sized, part) &&
           (sized->any || opened(&search->goal.now, size) < sized->limit);
}

/* The size to open for a part: the main one if that takes it, else the cheapest that does. */
static size_t size_for(const struct sheet_search *search, const struct sheet_part *part,
                       size_t main_size)
{
    size_t best = SIZE_MAX;

    if (main_size != SIZE_MAX && can_open(search, main_size, part))
        return main_size;
    for (size_t s = 0; s < search->job.size_count; s++)
        if (can_open(search, s, part) &&
            (best == SIZE_MAX || search->job.sizes[s].price < search->job.sizes[best].price))
            best = s;
    return best;
}

static void open_free(const struct sheet_search *search, struct trees *trees)
{
    for (size_t s = 0; s < search->job.size_count; s++)
        for (size_t n = 0; is_free(search, s) && n < search->job.sizes[s].limit; n++)
            trees_open(trees, &search->job, s);
}

/* Places all parts in an order of ruin.h, opening sheets as they are needed. */
static void first_plan(struct sheet_search *search, size_t main_size, const int32_t *rank)
{
    struct ruin *ruin = &search->goal;
    size_t count = search->job.part_count;

    for (size_t i = 0; i < count; i++)
        ruin->taken[rank[i]] = (int32_t)i;
    trees_clear(&search->scratch);
    open_free(search, &search->scratch);
    ruin_from(ruin, &search->scratch, RUIN_PLACE);
    ruin->outside_count = 0;
    ruin->blink = INT32_MAX;
    for (size_t i = 0; i < count; i++) {
        const struct sheet_part *part = &search->job.parts[ruin->taken[i]];
        bool put = ruin_put(ruin, (size_t)ruin->taken[i]);
        size_t size = put || !part->fits ? SIZE_MAX : size_for(search, part, main_size);

        if (size != SIZE_MAX) {
            trees_open(&ruin->now, &search->job, size);
            ruin_put(ruin, (size_t)ruin->taken[i]);
        } else if (!put && part->fits) {
            ruin->outside[ruin->outside_count++] = ruin->taken[i];
        }
    }
}

static void try_first(struct sheet_search *search, size_t main_size, const int32_t *rank)
{
    int64_t price;

    first_plan(search, main_size, rank);
    price = price_of(search, &search->goal.now);
    if (search->best_out < 0 || search->goal.outside_count < search->best_out ||
        (search->goal.outside_count == search->best_out && price < search->best_price))
        keep_plan(search, &search->goal);
}

static void first_plans(struct sheet_search *search)
{
    search->best_out = -1;
    for (int rank = RANK_AREA; rank <= RANK_LONG; rank++) {
        try_first(search, SIZE_MAX, search->goal.rank[rank]);
        for (size_t s = 0; s < search->job.size_count; s++)
            if (search->job.sizes[s].usable)
                try_first(search, s, search->goal.rank[rank]);
    }
}

/* ---- bound and goals ---- */

/* Parts that any plan as full as the best places: all that fit, or, where some stay outside,
 * those that must not. */
static void bound_plan(struct sheet_search *search)
{
    bool *counted = ARENA_MANY(search->arena, bool, search->job.part_count);

    for (size_t i = 0; i < search->job.part_count; i++)
        counted[i] =
            search->best_out == 0 ? search->job.parts[i].fits : search->job.parts[i].on_offer;
    covers_make(&search->covers, &search->job, counted, search->arena);
    search->bound = covers_bound(&search->covers, &search->job, search->best_price, search->arena);
}

static bool price_proven(const struct sheet_search *search)
{
    return search->best_out == 0 && search->bound >= search->best_price;
}

static void find_goals(struct sheet_search *search)
{
    sets_find(&search->sets, &search->covers, &search->job, search->best_price,
              search->best_counts);
    if (search->best_out > 0) {
        for (size_t s = 0; s < search->job.size_count; s++)
            search->all_counts[s] =
                search->job.sizes[s].any ? search->best_counts[s] : search->job.sizes[s].limit;
        sets_add(&search->sets, &search->job, search->all_counts);
    }
    search->next_set = 0;
    search->slice = SLICE_FIRST;
    search->goals_stale = false;
}

/* The sheet of a size that holds least, or TREE_NONE. */
static int32_t emptiest(const struct sheet_search *search, const struct trees *trees, size_t size)
{
    int32_t best = TREE_NONE;
    int64_t least = INT64_MAX;

    for (int32_t i = 0; i < trees->root_count; i++) {
        int64_t held = 0;

        if (trees->roots[i].size != size)
            continue;
        for (size_t p = 0; p < search->job.part_count; p++)
            if (trees->where[p] != TREE_NONE &&
                trees_top(trees, trees->where[p]) == trees->roots[i].node)
                held += search->job.parts[p].area;
        if (held < least) {
            least = held;
            best = i;
        }
    }
    return best;
}

/* Empties and closes sheets of a size until no more than `count` are open. */
static void close_some(const struct sheet_search *search, struct trees *trees, size_t size,
                       size_t count)
{
    for (size_t open = opened(trees, size); open > count; open--) {
        int32_t root = emptiest(search, trees, size);

        assert(root != TREE_NONE); /* one is open */
        trees_empty(trees, root);
        trees_close(trees, root);
    }
}

/* The best plan with the sheets of a set in place of its own, into `scratch`. */
static void change_sheets(struct sheet_search *search, const size_t *counts)
{
    struct trees *trees = &search->scratch;

    trees_copy(trees, &search->best);
    for (size_t s = 0; s < search->job.size_count; s++)
        if (!is_free(search, s))
            close_some(search, trees, s, counts[s]);
    for (size_t s = 0; s < search->job.size_count; s++)
        for (size_t open = opened(trees, s); !is_free(search, s) && open < counts[s]; open++)
            trees_open(trees, &search->job, s);
}

static void open_goal(struct sheet_search *search)
{
    const size_t *counts = &search->sets.counts[search->next_set * search->job.size_count];

    assert(search->next_set < search->sets.count);
    change_sheets(search, counts);
    ruin_from(&search->goal, &search->scratch, RUIN_PLACE);
    ruin_fill(&search->goal);
    search->goal_open = true;
    search->slice_left = search->slice;
}

static bool goal_reached(const struct sheet_search *search)
{
    const struct ruin *goal = &search->goal;

    for (int32_t i = 0; i < goal->outside_count; i++)
        if (goal->outside_count > search->best_out || search->job.parts[goal->outside[i]].on_offer)
            return false;
    return goal->outside_count < search->best_out ||
           price_of(search, &goal->now) < search->best_price;
}

/* Goes on to the next set; with only one it stays with it. */
static void next_goal(struct sheet_search *search)
{
    search->next_set = (search->next_set + 1) % search->sets.count;
    if (search->next_set == 0 && search->slice < SLICE_MOST)
        search->slice += search->slice / 2;
    search->goal_open = false;
}

/* Works on the goal at hand for a bit; true when the best plan became better. */
static bool step_goal(struct sheet_search *search)
{
    int64_t before = search->goal.work, spent = 0;
    bool reached = false;

    if (!search->goal_open)
        open_goal(search);
    reached = goal_reached(search);
    while (!reached && spent < QUANTUM) {
        if (ruin_round(&search->goal))
            reached = goal_reached(search);
        spent = search->goal.work - before;
    }
    spent = search->goal.work - before;
    search->slice_left -= spent;
    search->goal_work += spent;
    if (reached)
        keep_plan(search, &search->goal);
    else if (search->slice_left <= 0)
        next_goal(search);
    return reached;
}

/* ---- neatness ---- */

static void open_neat(struct sheet_search *search)
{
    ruin_from(&search->neat, &search->best, RUIN_NEAT);
    search->best_neat = search->neat.score;
    search->neat_open = true;
}

/* Makes the best plan neater; true when it became so. Where a sheet with a price comes out empty
 * the plan is cheaper as well. */
static bool step_neat(struct sheet_search *search)
{
    int64_t before = search->neat.work, spent = 0;
    bool better = false;

    if (!search->neat_open)
        open_neat(search);
    while (!better && spent < QUANTUM) {
        better = ruin_round(&search->neat) && ruin_better(search->neat.score, search->best_neat);
        spent = search->neat.work - before;
    }
    search->neat_work += spent;
    search->neat_idle += spent;
    if (!better)
        return false;
    search->neat_idle = 0;
    search->best_neat = search->neat.score;
    if (price_of(search, &search->neat.now) < search->best_price)
        keep_plan(search, &search->neat);
    else
        trees_copy(&search->best, &search->neat.now);
    return true;
}

/* ---- few parts ---- */

/* Takes over a plan in `scratch` if it is better than the best. */
static void keep_scratch(struct sheet_search *search, int64_t price)
{
    struct ruin *neat = &search->neat;
    struct ruin_score before;

    ruin_from(neat, &search->best, RUIN_NEAT);
    before = neat->score;
    ruin_from(neat, &search->scratch, RUIN_NEAT);
    search->neat_open = false;
    if (search->best_out > 0 || price < search->best_price || ruin_better(neat->score, before))
        keep_plan(search, neat);
}

/* The best of all patterns, where so much work finds it: only fence settings and rests are left to
 * search for then. */
static void solve_few(struct sheet_search *search, int64_t work)
{
    int64_t price;

    trees_clear(&search->scratch);
    open_free(search, &search->scratch);
    if (!few_solve(search->few, &search->scratch, work, &price, &search->few_work))
        return;
    search->few = NULL;
    assert(search->best_out > 0 || price <= search->best_price);
    search->bound = price;
    keep_scratch(search, price);
}

/* Goes on with the least price of all patterns; true when it became known. */
static bool step_kinds(struct sheet_search *search, int64_t work)
{
    enum kinds_outcome outcome = kinds_step(search->kinds, work, &search->kinds_work);
    struct kinds *kinds = search->kinds;

    if (outcome != KINDS_GOING_ON)
        search->kinds = NULL;
    if (outcome != KINDS_DONE || kinds_price(kinds) == INT64_MAX)
        return false;
    search->bound = kinds_price(kinds);
    assert(search->best_out > 0 || search->bound <= search->best_price);
    if (search->best_out == 0 && search->bound == search->best_price)
        return true;
    trees_clear(&search->scratch);
    open_free(search, &search->scratch);
    kinds_lay(kinds, &search->scratch);
    keep_scratch(search, search->bound);
    return true;
}

/* ---- layouts ---- */

static int64_t rest_of(const struct cut_layout *layout)
{
    int64_t largest = 0;

    for (size_t i = 0; i < layout->blanks.count; i++) {
        int64_t rest = layout->blanks.at[i].rest * layout->blanks.at[i].rest_across;

        largest = rest > largest ? rest : largest;
    }
    return largest;
}

static bool layout_neater(const struct cut_layout *a, const struct cut_layout *b)
{
    if (a->stuck != b->stuck)
        return a->stuck < b->stuck;
    if (a->strokes.count != b->strokes.count)
        return a->strokes.count < b->strokes.count;
    if (a->fences != b->fences)
        return a->fences < b->fences;
    return rest_of(a) > rest_of(b);
}

/* Lays the best plan out; true when that is better than the layout that there is. */
static bool lay_best(struct sheet_search *search)
{
    struct cut_layout *now = &search->layouts[search->layout_now];
    struct cut_layout *next = &search->layouts[!search->layout_now];
    bool better = search->best_out != search->laid_out || search->best_price != search->laid_price;

    strokes_lay_out(&search->strokes, &search->best, next);
    next->bound = search->job.fair_prices ? search->bound : 0;
    assert(next->left_out.count > 0 || next->bound <= next->cost);
    if (!better && !layout_neater(next, now))
        return false;
    search->layout_now = !search->layout_now;
    search->laid_out = search->best_out;
    search->laid_price = search->best_price;
    return true;
}

/* ---- the search ---- */

static size_t root_most(const struct sheet_job *job)
{
    size_t most = job->part_count;

    for (size_t s = 0; s < job->size_count; s++)
        if (!job->sizes[s].any || job->sizes[s].price == 0)
            most += job->sizes[s].limit;
    return most;
}

static struct sheet_search *search_begin(const struct cut_job *job, struct arena *arena)
{
    struct sheet_search *search = ARENA_NEW(arena, struct sheet_search);
    size_t roots;

    search->arena = arena;
    sheetjob_make(job, arena, &search->job);
    roots = root_most(&search->job);
    ruin_init(&search->goal, &search->job, arena, roots, UINT64_C(88172645463325252));
    ruin_init(&search->neat, &search->job, arena, roots, UINT64_C(2463534242884512));
    trees_init(&search->best, arena, job->part_count, roots);
    trees_init(&search->scratch, arena, job->part_count, roots);
    strokes_init(&search->strokes, &search->job, arena, &search->best);
    sets_init(&search->sets, &search->job, SETS_MOST, arena);
    search->best_counts = ARENA_MANY(arena, size_t, job->size_count);
    search->all_counts = ARENA_MANY(arena, size_t, job->size_count);
    search->laid_out = -1;
    if (job->part_count > 0) {
        first_plans(search);
        bound_plan(search);
        if (job->part_count <= FEW_PARTS) {
            search->few = few_make(&search->job, arena);
            solve_few(search, FEW_WORK_QUICK);
        }
        if (!price_proven(search))
            search->kinds = kinds_begin(&search->job, arena);
        if (search->kinds)
            step_kinds(search, KINDS_WORK_QUICK);
    }
    lay_best(search);
    return search;
}

static int64_t work_of(const struct sheet_search *search)
{
    return search->goal_work + search->neat_work + search->few_work + search->kinds_work;
}

static int64_t idle_most(const struct sheet_search *search)
{
    size_t last = sizeof idle_by_parts / sizeof *idle_by_parts - 1;

    return idle_by_parts[search->job.part_count < last ? search->job.part_count : last];
}

/* Goes on with what few parts or few kinds allow to be known, besides the search: it changes the
 * bound of the layout as well. True when the layout may be better. */
static bool search_to_the_end(struct sheet_search *search, struct cut_layout *best)
{
    bool known = false;

    if (search->few) {
        solve_few(search, FEW_WORK);
        known = search->few == NULL;
        search->few = NULL;
    } else if (price_proven(search)) {
        search->kinds = NULL;
    } else if (search->kinds && search->kinds_work <= search->goal_work) {
        known = step_kinds(search, QUANTUM);
    }
    if (known)
        best->bound = search->job.fair_prices ? search->bound : 0;
    return known;
}

/* A bit of work on what is due. False when there is nothing to do; sets *ret_better. */
static bool search_bit(struct sheet_search *search, bool *ret_better)
{
    bool goals;

    if (search->goals_stale && !price_proven(search))
        find_goals(search);
    goals = !price_proven(search) && search->sets.count > 0;
    if (!goals && search->neat_idle >= idle_most(search))
        return false;
    if (goals && search->neat_work * NEAT_SHARE >= search->goal_work) {
        int32_t out = search->best_out;

        *ret_better = step_goal(search);
        if (out > 0 && search->best_out == 0)
            bound_plan(search);
    } else {
        *ret_better = step_neat(search);
    }
    return true;
}

/* About so much work; without the search to the end where it does not go on. */
static bool search_work(struct sheet_search *search, int64_t work, bool going_on,
                        struct cut_layout *best)
{
    int64_t until = work_of(search) + work;
    bool better;

    while (work_of(search) < until) {
        if (search->job.part_count == 0)
            return false;
        if (going_on && search_to_the_end(search, best))
            better = true;
        else if (!search_bit(search, &better))
            return false;
        if (better && lay_best(search))
            *best = search->layouts[search->layout_now];
    }
    return true;
}

/* For the first layout: less where it is the best of all patterns already, or where that was tried
 * for. */
static int64_t quick_work(const struct sheet_search *search)
{
    bool known = search->job.part_count <= FEW_PARTS && !search->few;
    int64_t left = QUICK_WORK - work_of(search);

    return known || left < QUICK_WORK_LEAST ? QUICK_WORK_LEAST : left;
}

void sheets_cut(const struct cut_job *job, struct arena *arena, struct cut_layout *ret_layout)
{
    struct sheet_search *search;

    assert(arena->escape && job->kerf >= 0 && job->trim >= 0);
    search = search_begin(job, arena);
    *ret_layout = search->layouts[search->layout_now];
    search_work(search, quick_work(search), false, ret_layout);
}

void *sheets_begin(const struct cut_job *job, struct arena *arena, const struct cut_layout *quick)
{
    struct sheet_search *search = search_begin(job, arena);
    struct cut_layout same = search->layouts[search->layout_now];

    search_work(search, quick_work(search), false, &same);
    assert(same.cost == quick->cost);
    (void)quick;
    return search;
}

bool sheets_step(void *state, int64_t work, int64_t *done, struct cut_layout *best)
{
    struct sheet_search *search = state;
    int64_t before = work_of(search);
    bool more = search_work(search, work, true, best);

    *done += work_of(search) - before;
    return more;
}
