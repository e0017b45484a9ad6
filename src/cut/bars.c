/*
 * Sequential value correction: a plan is made stick by stick, each time the filling with the most
 * value for its price, where a part's value is corrected after each filling by what the filling
 * made it cost (parts that waste stick become dear and are placed with more care in the next
 * plan). The method is Mukhacheva's, as given by Belov and Scheithauer, "A branch-and-cut-and-price
 * algorithm for one-dimensional stock cutting and two-dimensional two-stage cutting", 2006. In the
 * first plans a part is worth its length, and each stick takes the longest part that is left, so
 * these are filled as full as possible one after the other (minimum bin slack).
 *
 *  1. Lengths of parts and room in sticks carry one kerf more: n parts fit exactly when their
 *     lengths with a kerf each are at most the stick with one kerf (exact both ways).
 *  2. Equal parts are one kind; kinds fall in length. A plan is a list of fillings, each repeated
 *     as often as the parts that are left allow.
 *  3. Work is counted in steps of the search for a filling; a plan that has been begun is finished.
 *  4. Mixes of sticks that are cheaper than the best plan are then tried as they are (mix.h): they
 *     find what a value for each part cannot say.
 *  5. A finished plan moves each filling to the cheapest size that is long enough.
 */
#include "cut/bars.h"

#include "base/whole.h"
#include "cut/bars_task.h"
#include "cut/bound.h"
#include "cut/mix.h"
#include "cut/ranking.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#define PLANS 48             /* at most */
#define STEPS_IN_ALL 60000   /* of all searches for fillings */
#define STEPS_A_FILLING 1500 /* of one */
#define VALUE_UNIT (1 << 20) /* value of the dearest size */

/* How a filling corrects the values of its parts. */
enum share { SHARE_NOTHING, SHARE_BY_LENGTH, SHARE_BY_SQUARE };

/* A size as the search sees it. */
struct stick {
    int64_t room;  /* without trim, with a kerf */
    int64_t value; /* its price, scaled; 0 on the shelf */
};

struct plan_of_bars {
    LIST_OF(struct bar_filling) fillings;
    LIST_OF(struct bar_take) takes;
    int64_t left_out; /* parts */
    int64_t cost;     /* in values of sticks */
    int64_t blanks;
    int64_t rest; /* the largest */
};

struct search {
    const struct cut_job *job;
    struct arena *arena;
    struct stick *sticks;
    size_t *order;          /* parts, longest first */
    struct bar_kind *kinds; /* lengths not in units of a grid */
    size_t kind_count;
    int64_t *left;   /* of each kind, not yet placed */
    int64_t *limits; /* of each size, no more than there are parts; CUT_ANY */
    int64_t *stock;  /* of each size, not yet used; CUT_ANY */
    int64_t *value;  /* of each kind */
    int64_t *worth;  /* of each kind for the filling that is sought: its value, or its length */
    int64_t *now, *best, *chosen; /* takes by kind: being tried, best of this stick, of all */
    int64_t best_worth;
    int steps_left;   /* of this filling */
    int64_t all_left; /* of the whole job */
};

/* ---- the job as kinds and sticks ---- */

static void rank_parts(struct search *search)
{
    const struct cut_job *job = search->job;
    int64_t before = 0;

    search->order = ARENA_MANY(search->arena, size_t, job->part_count);
    search->kinds = ARENA_MANY(search->arena, struct bar_kind, job->part_count);
    for (size_t i = 0; i < job->part_count; i++)
        search->order[i] = i;
    ranking_sort(job->parts, search->order, job->part_count, BY_LENGTH, search->arena);
    for (size_t i = 0; i < job->part_count; i++) {
        int64_t length = job->parts[search->order[i]].length + job->kerf;

        assert(length > 0 && (i == 0 || length <= before));
        if (i == 0 || length != before)
            search->kinds[search->kind_count++] = (struct bar_kind){.length = length, .first = i};
        search->kinds[search->kind_count - 1].count++;
        before = length;
    }
}

/* Where nothing on offer has a price, a stick is worth its length. */
static int64_t priced_as(const struct cut_size *size, int64_t dearest)
{
    if (size->limit != CUT_ANY && size->price == 0)
        return 0;
    return dearest > 0 ? size->price : size->length;
}

static void weigh_sticks(struct search *search)
{
    const struct cut_job *job = search->job;
    int64_t dearest = 0;
    int64_t most = 1;

    search->sticks = ARENA_MANY(search->arena, struct stick, job->size_count);
    for (size_t i = 0; i < job->size_count; i++)
        if (job->sizes[i].price > dearest)
            dearest = job->sizes[i].price;
    for (size_t i = 0; i < job->size_count; i++)
        if (priced_as(&job->sizes[i], dearest) > most)
            most = priced_as(&job->sizes[i], dearest);
    for (size_t i = 0; i < job->size_count; i++) {
        struct stick *stick = &search->sticks[i];

        stick->room = job->sizes[i].length - job->trim + job->kerf;
        if (whole_share(priced_as(&job->sizes[i], dearest), VALUE_UNIT, most, &stick->value))
            stick->value = VALUE_UNIT;
    }
}

static bool on_shelf(const struct search *search, size_t size)
{
    return search->sticks[size].value == 0;
}

/* More of the shelf than there are parts is of no use. */
static int64_t useful(const struct cut_job *job, int64_t limit)
{
    return limit < (int64_t)job->part_count ? limit : (int64_t)job->part_count;
}

static void search_begin(struct search *search, const struct cut_job *job, struct arena *arena)
{
    *search = (struct search){.job = job, .arena = arena, .all_left = STEPS_IN_ALL};
    weigh_sticks(search);
    rank_parts(search);
    search->left = ARENA_MANY(arena, int64_t, search->kind_count);
    search->stock = ARENA_MANY(arena, int64_t, job->size_count);
    search->limits = ARENA_MANY(arena, int64_t, job->size_count);
    for (size_t i = 0; i < job->size_count; i++)
        search->limits[i] = useful(job, job->sizes[i].limit);
    search->value = ARENA_MANY(arena, int64_t, search->kind_count);
    search->worth = ARENA_MANY(arena, int64_t, search->kind_count);
    search->now = ARENA_MANY(arena, int64_t, search->kind_count);
    search->best = ARENA_MANY(arena, int64_t, search->kind_count);
    search->chosen = ARENA_MANY(arena, int64_t, search->kind_count);
    for (size_t k = 0; k < search->kind_count; k++)
        search->value[k] = search->kinds[k].length;
}

/* ---- one filling ---- */

/* Whether some kind from `kind` on, by its worth for its length, could fill `room` with more than
 * this. */
static bool can_hold_more(const struct search *search, size_t kind, int64_t room, int64_t worth)
{
    for (size_t k = kind; k < search->kind_count; k++)
        if (search->left[k] > 0 && search->kinds[k].length <= room &&
            room * search->worth[k] > worth * search->kinds[k].length)
            return true;
    return false;
}

/* Tries all ways to fill `room` with kinds from `kind` on, the most of the longest first. */
static void fill(struct search *search, size_t kind, int64_t room, int64_t worth)
{
    if (worth > search->best_worth) {
        search->best_worth = worth;
        memcpy(search->best, search->now, search->kind_count * sizeof *search->now);
    }
    for (size_t k = kind; k < search->kind_count && search->steps_left > 0; k++) {
        int64_t length = search->kinds[k].length;
        int64_t most = room / length < search->left[k] ? room / length : search->left[k];

        if (most == 0)
            continue;
        search->steps_left--;
        if (!can_hold_more(search, k, room, search->best_worth - worth))
            break;
        for (int64_t count = most; count > 0 && search->steps_left > 0; count--) {
            search->now[k] = count;
            fill(search, k + 1, room - count * length, worth + count * search->worth[k]);
        }
        search->now[k] = 0;
    }
}

/* A step looks at all kinds: the more there are, the fewer steps for one filling. */
static int steps_a_filling(const struct search *search)
{
    return (int)(STEPS_A_FILLING / (1 + search->kind_count / 8)) + 1;
}

/* The most worth that a stick holds, its takes in `best`; `forced` is a kind that must be in it,
 * or none (kind_count). 0 when nothing fits. */
static int64_t fill_stick(struct search *search, size_t size, size_t forced)
{
    int64_t room = search->sticks[size].room;
    const int64_t *worth = on_shelf(search, size) ? NULL : search->value;
    int64_t begin = 0;

    for (size_t k = 0; k < search->kind_count; k++)
        search->worth[k] = worth ? worth[k] : search->kinds[k].length;
    memset(search->now, 0, search->kind_count * sizeof *search->now);
    search->best_worth = 0;
    search->steps_left = steps_a_filling(search);
    if (forced < search->kind_count && search->kinds[forced].length <= room) {
        search->left[forced]--;
        room -= search->kinds[forced].length;
        begin = search->worth[forced];
        fill(search, forced, room, begin);
        search->best[forced]++;
        search->left[forced]++;
    } else if (forced == search->kind_count) {
        fill(search, 0, room, 0);
    }
    search->all_left -= steps_a_filling(search) - search->steps_left;
    return search->best_worth;
}

/* ---- one plan ---- */

/* More worth for its price; on the shelf, the one that is filled better. */
static bool better_stick(const struct search *search, size_t size, int64_t worth, size_t other,
                         int64_t other_worth)
{
    bool shelf = on_shelf(search, size);

    if (other_worth == 0)
        return true;
    if (shelf != on_shelf(search, other))
        return shelf;
    if (shelf)
        return worth * search->sticks[other].room > other_worth * search->sticks[size].room;
    return worth * search->sticks[other].value > other_worth * search->sticks[size].value;
}

/* The longest kind left that some stick at hand takes; kind_count when there is none. */
static size_t longest_left(const struct search *search)
{
    for (size_t k = 0; k < search->kind_count; k++)
        for (size_t i = 0; search->left[k] > 0 && i < search->job->size_count; i++)
            if (search->stock[i] != 0 && search->sticks[i].room >= search->kinds[k].length)
                return k;
    return search->kind_count;
}

/* The best size for the next filling, its takes in `chosen`; size_count when nothing fits. */
static size_t choose_stick(struct search *search, bool with_longest)
{
    size_t size_count = search->job->size_count;
    size_t longest = longest_left(search);
    size_t choice = size_count;
    int64_t choice_worth = 0;

    if (longest == search->kind_count)
        return size_count;
    for (size_t i = 0; i < size_count; i++) {
        int64_t worth;

        if (search->stock[i] == 0)
            continue;
        worth = fill_stick(search, i, with_longest ? longest : search->kind_count);
        if (worth > 0 && better_stick(search, i, worth, choice, choice_worth)) {
            choice = i;
            choice_worth = worth;
            memcpy(search->chosen, search->best, search->kind_count * sizeof *search->best);
        }
    }
    return choice;
}

static int64_t times_possible(const struct search *search, size_t size)
{
    int64_t times = search->stock[size] == CUT_ANY ? INT64_MAX : search->stock[size];

    for (size_t k = 0; k < search->kind_count; k++)
        if (search->chosen[k] > 0 && search->left[k] / search->chosen[k] < times)
            times = search->left[k] / search->chosen[k];
    return times;
}

static void add_filling(struct search *search, struct plan_of_bars *plan, size_t size,
                        int64_t times)
{
    struct bar_filling *filling = LIST_ADD(search->arena, &plan->fillings);

    filling->size = size;
    filling->first = plan->takes.count;
    filling->times = times;
    assert(times > 0);
    for (size_t k = 0; k < search->kind_count; k++) {
        if (search->chosen[k] == 0)
            continue;
        *LIST_ADD(search->arena, &plan->takes) = (struct bar_take){k, search->chosen[k]};
        search->left[k] -= filling->times * search->chosen[k];
        filling->taken += search->chosen[k] * search->kinds[k].length;
        filling->count++;
    }
    if (search->stock[size] != CUT_ANY)
        search->stock[size] -= filling->times;
    assert(filling->taken <= search->sticks[size].room);
}

/* How a part weighs in the price of its stick. By the square of its length small parts hardly
 * count: they ride along where only long ones decide. The square is divided by 2^16, and first by
 * 2^4, so that it fits. */
static int64_t weight_of(const struct bar_kind *kind, enum share share)
{
    return share == SHARE_BY_SQUARE ? kind->length * (kind->length / 16 + 1) / 4096 + 1
                                    : kind->length;
}

/* Moves the values of the parts in a filling a third of the way to what they cost in it: their
 * share of the stick's price. */
static void correct_values(struct search *search, const struct bar_filling *filling,
                           const struct bar_take *takes, enum share share)
{
    int64_t total = 0;

    assert(filling->count > 0);
    for (size_t i = 0; i < filling->count; i++) {
        const struct bar_take *take = &takes[filling->first + i];

        total += take->count * weight_of(&search->kinds[take->kind], share);
    }
    for (size_t i = 0; i < filling->count; i++) {
        size_t k = takes[filling->first + i].kind;
        int64_t cost = search->sticks[filling->size].value * weight_of(&search->kinds[k], share);

        search->value[k] = (2 * search->value[k] + cost / total) / 3;
    }
}

/* To the cheapest size that can be had and holds it. */
static void shrink(const struct search *search, struct bar_filling *filling)
{
    const struct cut_size *sizes = search->job->sizes;

    if (on_shelf(search, filling->size))
        return;
    for (size_t i = 0; i < search->job->size_count; i++)
        if (sizes[i].limit == CUT_ANY && search->sticks[i].room >= filling->taken &&
            search->sticks[i].value < search->sticks[filling->size].value)
            filling->size = i;
}

static void sum_up(const struct search *search, struct plan_of_bars *plan)
{
    plan->cost = plan->blanks = plan->rest = plan->left_out = 0;
    for (size_t i = 0; i < plan->fillings.count; i++) {
        struct bar_filling *filling = &plan->fillings.at[i];
        int64_t rest;

        shrink(search, filling);
        rest = search->sticks[filling->size].room - filling->taken;
        plan->cost += filling->times * search->sticks[filling->size].value;
        plan->blanks += filling->times;
        if (rest > plan->rest)
            plan->rest = rest;
    }
    for (size_t k = 0; k < search->kind_count; k++) {
        assert(search->left[k] >= 0 && search->left[k] <= search->kinds[k].count);
        plan->left_out += search->left[k];
    }
}

static void make_plan(struct search *search, struct plan_of_bars *plan, bool with_longest,
                      enum share share)
{
    const struct cut_job *job = search->job;
    size_t size;

    plan->fillings.count = plan->takes.count = 0;
    for (size_t k = 0; k < search->kind_count; k++)
        search->left[k] = search->kinds[k].count;
    memcpy(search->stock, search->limits, job->size_count * sizeof *search->stock);
    while ((size = choose_stick(search, with_longest)) < job->size_count) {
        add_filling(search, plan, size, times_possible(search, size));
        if (share != SHARE_NOTHING && !on_shelf(search, size))
            correct_values(search, &plan->fillings.at[plan->fillings.count - 1], plan->takes.at,
                           share);
    }
    sum_up(search, plan);
}

static bool plan_better(const struct plan_of_bars *a, const struct plan_of_bars *b)
{
    if (a->left_out != b->left_out)
        return a->left_out < b->left_out;
    if (a->cost != b->cost)
        return a->cost < b->cost;
    if (a->blanks != b->blanks)
        return a->blanks < b->blanks;
    return a->rest > b->rest;
}

/* Values of the first corrected plan: lengths, in the measure of the sticks' prices. */
static void values_from_lengths(struct search *search)
{
    int64_t longest = 1;

    for (size_t i = 0; i < search->job->size_count; i++)
        if (search->sticks[i].room > longest)
            longest = search->sticks[i].room;
    for (size_t k = 0; k < search->kind_count; k++)
        search->value[k] = search->kinds[k].length * VALUE_UNIT / longest;
}

/* The plan of a mix: each stick is a filling of its own; one that stays empty is left out. */
static void plan_from_mix(struct search *search, const struct mix *mix, struct plan_of_bars *plan)
{
    plan->fillings.count = plan->takes.count = 0;
    for (size_t k = 0; k < search->kind_count; k++)
        search->left[k] = search->kinds[k].count;
    memcpy(search->stock, search->limits, search->job->size_count * sizeof *search->stock);
    for (size_t stick = 0; stick < mix->stick_count; stick++) {
        bool empty = true;

        memset(search->chosen, 0, search->kind_count * sizeof *search->chosen);
        for (size_t k = 0; k < search->kind_count; k++)
            for (int64_t n = 0; n < search->kinds[k].count; n++)
                if (mix->owner[search->kinds[k].first + (size_t)n] == stick) {
                    search->chosen[k]++;
                    empty = false;
                }
        if (!empty)
            add_filling(search, plan, mix->sizes[stick], 1);
    }
    sum_up(search, plan);
    assert(plan->left_out == 0); /* a mix takes all */
}

/* Looks for a mix of sticks that is cheaper than a plan that places all parts. */
static void search_mixes(struct search *search, struct plan_of_bars *best)
{
    const struct cut_job *job = search->job;
    struct mix_job mixes = {.count = job->part_count, .size_count = job->size_count};
    int64_t *lengths = ARENA_MANY(search->arena, int64_t, job->part_count);
    int64_t *rooms = ARENA_MANY(search->arena, int64_t, job->size_count);
    int64_t *values = ARENA_MANY(search->arena, int64_t, job->size_count);
    struct plan_of_bars now = {0};
    struct mix mix;

    if (best->left_out > 0)
        return;
    for (size_t i = 0; i < job->part_count; i++)
        lengths[i] = job->parts[search->order[i]].length + job->kerf;
    for (size_t i = 0; i < job->size_count; i++) {
        rooms[i] = search->sticks[i].room;
        values[i] = search->sticks[i].value;
    }
    mixes.lengths = lengths;
    mixes.rooms = rooms;
    mixes.values = values;
    mixes.shelf = search->limits;
    if (!mix_find(&mixes, best->cost, search->arena, &mix))
        return;
    plan_from_mix(search, &mix, &now);
    if (plan_better(&now, best))
        *best = now;
}

static void search_run(struct search *search, struct plan_of_bars *best)
{
    struct plan_of_bars other = {0};
    struct plan_of_bars *now = &other;

    make_plan(search, best, true, SHARE_NOTHING);
    make_plan(search, now, false, SHARE_NOTHING);
    values_from_lengths(search);
    for (int i = 0; i < PLANS && search->all_left > 0; i++) {
        if (plan_better(now, best)) {
            struct plan_of_bars kept = *now;

            *now = *best;
            *best = kept;
        }
        make_plan(search, now, i % 2 == 1, i < PLANS / 2 ? SHARE_BY_LENGTH : SHARE_BY_SQUARE);
    }
    if (plan_better(now, best))
        *best = *now;
    search_mixes(search, best);
}

/* ---- the layout ---- */

static int by_index(const void *a, const void *b)
{
    size_t left = *(const size_t *)a, right = *(const size_t *)b;

    return left < right ? -1 : left > right;
}

static void lay_out(const struct search *search, const struct plan_of_bars *plan,
                    struct cut_layout *layout)
{
    size_t *next = ARENA_MANY(search->arena, size_t, search->kind_count);
    struct bar_laying laying = {.job = search->job,
                                .arena = search->arena,
                                .order = search->order,
                                .kinds = search->kinds,
                                .next = next,
                                .layout = layout};

    for (size_t i = 0; i < plan->fillings.count; i++)
        for (int64_t n = 0; n < plan->fillings.at[i].times; n++)
            bar_lay_stick(&laying, &plan->fillings.at[i], plan->takes.at,
                          plan->fillings.at[i].size);
    for (size_t k = 0; k < search->kind_count; k++)
        for (size_t n = next[k]; n < (size_t)search->kinds[k].count; n++)
            *LIST_ADD(search->arena, &layout->left_out) = search->order[search->kinds[k].first + n];
    if (layout->left_out.count > 1)
        qsort(layout->left_out.at, layout->left_out.count, sizeof(size_t), by_index);
}

/* ---- bounds ---- */

static int64_t longest_offered(const struct search *search)
{
    int64_t longest = 0;

    for (size_t i = 0; i < search->job->size_count; i++)
        if (search->job->sizes[i].limit == CUT_ANY && search->sticks[i].room > longest)
            longest = search->sticks[i].room;
    return longest;
}

static int64_t cheapest_for(const struct search *search, int64_t length)
{
    int64_t least = INT64_MAX;

    for (size_t i = 0; i < search->job->size_count; i++)
        if (search->job->sizes[i].limit == CUT_ANY && search->sticks[i].room >= length &&
            search->job->sizes[i].price < least)
            least = search->job->sizes[i].price;
    return least == INT64_MAX ? 0 : least;
}

static int64_t bound_by_length(const struct search *search)
{
    int64_t *rooms = ARENA_MANY(search->arena, int64_t, search->job->size_count);
    int64_t total = 0;

    for (size_t i = 0; i < search->job->size_count; i++)
        rooms[i] = search->sticks[i].room;
    for (size_t k = 0; k < search->kind_count; k++)
        if (search->kinds[k].length <= longest_offered(search))
            total += search->kinds[k].count * search->kinds[k].length;
    return bound_by_content(search->job, rooms, total);
}

/* Of parts longer than half of the longest stick no two share a stick that is bought; the shelf
 * takes the dearest of them off the bill. */
static int64_t bound_by_halves(const struct search *search)
{
    int64_t longest = longest_offered(search);
    int64_t free = 0;
    int64_t bound = 0;

    for (size_t i = 0; i < search->job->size_count; i++)
        if (search->job->sizes[i].limit != CUT_ANY)
            free += search->job->sizes[i].limit * (2 * search->sticks[i].room / (longest + 1));
    for (size_t k = 0; k < search->kind_count && 2 * search->kinds[k].length > longest; k++) {
        int64_t paid = search->kinds[k].count > free ? search->kinds[k].count - free : 0;

        if (search->kinds[k].length > longest)
            continue;
        free -= search->kinds[k].count - paid;
        bound += paid * cheapest_for(search, search->kinds[k].length);
    }
    return bound;
}

void bars_cut(const struct cut_job *job, struct arena *arena, struct cut_layout *ret_layout)
{
    struct search search;
    struct plan_of_bars best = {0};
    struct cut_layout layout = {0};
    int64_t halves;

    assert(arena->escape && job->kerf >= 0 && job->trim >= 0);
    search_begin(&search, job, arena);
    search_run(&search, &best);
    lay_out(&search, &best, &layout);
    layout.bound = bound_by_length(&search);
    halves = bound_by_halves(&search);
    if (halves > layout.bound)
        layout.bound = halves;
    assert(layout.left_out.count > 0 || layout.bound <= layout.cost);
    *ret_layout = layout;
}
