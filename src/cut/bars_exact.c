/*
 * Every plan is looked at as loss: a filling loses what its stick costs over what its parts are
 * worth, which is never below 0 (bar_values_set), and a plan may lose no more than what the sum
 * allowed is over the worth of all parts. So the search goes on with the longest part left, through
 * the fillings that hold it and lose little, and gives up once too much is lost.
 *
 *  1  Only fillings that no part left could join are tried: a part that is moved into one from a
 *     later stick makes no plan dearer.
 *  2  A state is what is left of parts and limited sticks. One that failed with so much to lose
 *     fails with less, too.
 */
#include "cut/bars_exact.h"

#include "base/whole.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#define FAILED_STATES ((size_t)1 << 14)
#define CANDIDATES_MOST 20000 /* of one state */
#define SUM_MOST (INT64_C(1) << 50)
#define SCALE_MOST 1000000
#define SHRINKS_MOST 4    /* of values, until none is left */
#define WORK_STEP 8       /* of the search for fillings */
#define WORK_CANDIDATE 80 /* kept, sorted, tried */
#define WORK_KIND 4       /* of a kind in the hash of a state */

/* ---- values ---- */

void bar_values_begin(struct bar_values *values, const struct bar_task *task)
{
    values->of_kind = ARENA_MANY(task->arena, int64_t, task->kind_count);
    values->over = ARENA_MANY(task->arena, int64_t, task->size_count);
    value_table_begin(&values->table, task);
}

/* As fine as the sum of all prices allows. */
static int64_t scale_for(const struct bar_task *task)
{
    int64_t dearest = 1;
    int64_t scale;

    for (size_t s = 0; s < task->size_count; s++)
        if (task->sizes[s].price > dearest)
            dearest = task->sizes[s].price;
    scale = SUM_MOST / dearest / (int64_t)task->part_count;
    return scale < 1 ? 1 : scale > SCALE_MOST ? SCALE_MOST : scale;
}

static int64_t surplus(const struct bar_values *values, const struct bar_task *task, size_t size)
{
    assert(size < task->size_count);
    return value_at_most(&values->table, 0, task->sizes[size].room) -
           task->sizes[size].price * values->scale;
}

/* Shrinks all values by as much as the fullest filling of a size on offer is over its price, where
 * that is most. */
static void shrink_values(struct bar_values *values, const struct bar_task *task)
{
    double most = 1;

    for (size_t s = 0; s < task->size_count; s++) {
        double price = (double)task->sizes[s].price * (double)values->scale;

        if (task->sizes[s].limit == CUT_ANY &&
            (double)value_at_most(&values->table, 0, task->sizes[s].room) > most * price)
            most = (double)value_at_most(&values->table, 0, task->sizes[s].room) / price;
    }
    for (size_t k = 0; k < task->kind_count; k++)
        values->of_kind[k] = (int64_t)((double)values->of_kind[k] / most);
    value_table_fill(&values->table, values->of_kind);
}

static bool any_over(const struct bar_values *values, const struct bar_task *task)
{
    for (size_t s = 0; s < task->size_count; s++)
        if (task->sizes[s].limit == CUT_ANY && surplus(values, task, s) > 0)
            return true;
    return false;
}

void bar_values_set(struct bar_values *values, const struct bar_task *task, const double *duals,
                    int64_t best_cost)
{
    values->scale = scale_for(task);
    for (size_t k = 0; k < task->kind_count; k++)
        values->of_kind[k] = duals[k] > 0 ? (int64_t)(duals[k] * (double)values->scale) : 0;
    value_table_fill(&values->table, values->of_kind);
    for (int i = 0; i < SHRINKS_MOST && any_over(values, task); i++)
        shrink_values(values, task);
    if (any_over(values, task)) {
        memset(values->of_kind, 0, task->kind_count * sizeof *values->of_kind);
        value_table_fill(&values->table, values->of_kind);
    }
    for (size_t s = 0; s < task->size_count; s++)
        values->over[s] = surplus(values, task, s) > 0 ? surplus(values, task, s) : 0;
    values->covering = covering_make(task, &values->table, best_cost);
}

static int64_t worth_of(const struct bar_values *values, const struct bar_task *task,
                        const int64_t *counts)
{
    int64_t worth = 0;

    for (size_t k = 0; k < task->kind_count; k++)
        worth += counts[k] * values->of_kind[k];
    return worth;
}

/* What limited sticks may hold beyond their price. */
static int64_t over_of(const struct bar_values *values, const struct bar_task *task,
                       const int64_t *limits)
{
    int64_t over = 0;

    for (size_t s = 0; s < task->size_count; s++)
        if (limits[s] != CUT_ANY)
            over += limits[s] * values->over[s];
    return over;
}

int64_t bar_values_bound(const struct bar_values *values, const struct bar_task *task,
                         const int64_t *counts, const int64_t *limits, int64_t most)
{
    int64_t worth = worth_of(values, task, counts);
    int64_t paid = worth - over_of(values, task, limits);
    int64_t linear = paid > 0 ? whole_divide_up(paid, values->scale) : 0;
    int64_t whole = covering_bound(&values->covering, worth, most);

    return linear > whole ? linear : whole;
}

/* ---- the search ---- */

struct candidate {
    size_t size;
    size_t first, count; /* takes */
    int64_t value, loss;
};

struct failed_state {
    uint64_t hash;
    int64_t to_lose;
};

/* One that is being searched: what its candidates leave follows it on the stack. */
struct open_state {
    uint64_t hash;
    int64_t to_lose;
    size_t first_candidate, first_take;
    size_t next, end; /* candidates still to be tried */
    bool complete_before;
};

struct bar_exact {
    const struct bar_task *task;
    const struct bar_values *values;
    int64_t *counts, *limits;
    int64_t worth;                        /* of what is left */
    int64_t budget;                       /* money left */
    int64_t *now;                         /* takes of the filling that is being made */
    LIST_OF(struct candidate) candidates; /* a stack, state by state */
    LIST_OF(struct bar_take) takes;       /* of the candidates */
    LIST_OF(struct open_state) states;    /* a stack; a path of one less leads to the last */
    LIST_OF(struct candidate) path;       /* chosen */
    struct failed_state *failed;          /* NULL until the first search */
    uint64_t searches;
    int64_t work_left;
    bool complete; /* nothing was left out so far */
    bool all_cut;  /* the path is a plan */
};

struct bar_exact *bar_exact_begin(const struct bar_task *task)
{
    struct bar_exact *exact = ARENA_NEW(task->arena, struct bar_exact);

    exact->task = task;
    exact->now = ARENA_MANY(task->arena, int64_t, task->kind_count);
    return exact;
}

/* ---- fillings that hold the longest part ---- */

struct filling_search {
    size_t size;
    size_t longest; /* kind that must be in it; SIZE_MAX: none must */
    int64_t least;  /* value: less would lose too much */
    size_t most;    /* candidates in all */
};

/* Whether no part left could join a filling that leaves this room. Short kinds stand last. */
static bool is_full(const struct bar_exact *exact, int64_t room)
{
    const struct bar_task *task = exact->task;

    for (size_t k = task->kind_count; k-- > 0;) {
        if (task->kinds[k].length > room)
            return true;
        if (exact->counts[k] > exact->now[k])
            return false;
    }
    return true;
}

static void keep_candidate(struct bar_exact *exact, const struct filling_search *search,
                           int64_t value)
{
    const struct bar_values *values = exact->values;
    struct arena *arena = exact->task->arena;
    struct candidate candidate = {
        .size = search->size, .first = exact->takes.count, .value = value};

    candidate.loss =
        exact->task->sizes[search->size].price * values->scale + values->over[search->size] - value;
    assert(candidate.loss >= 0);
    exact->work_left -= WORK_CANDIDATE;
    for (size_t k = 0; k < exact->task->kind_count; k++)
        if (exact->now[k] > 0) {
            *LIST_ADD(arena, &exact->takes) = (struct bar_take){k, exact->now[k]};
            candidate.count++;
        }
    *LIST_ADD(arena, &exact->candidates) = candidate;
}

static void find_fillings(struct bar_exact *exact, const struct filling_search *search, size_t kind,
                          int64_t room, int64_t value)
{
    const struct bar_task *task = exact->task;
    int64_t most, least = kind == search->longest;

    exact->work_left -= WORK_STEP;
    if (exact->candidates.count >= search->most || exact->work_left <= 0) {
        exact->complete = false;
        return;
    }
    if (value + value_at_most(&exact->values->table, kind, room) < search->least)
        return;
    while (kind < task->kind_count && (exact->counts[kind] == 0 || task->kinds[kind].length > room))
        kind++;
    if (kind == task->kind_count) {
        if (value >= search->least && is_full(exact, room))
            keep_candidate(exact, search, value);
        return;
    }
    most = room / task->kinds[kind].length;
    if (most > exact->counts[kind])
        most = exact->counts[kind];
    for (int64_t count = most; count >= least; count--) {
        exact->now[kind] = count;
        find_fillings(exact, search, kind + 1, room - count * task->kinds[kind].length,
                      value + count * exact->values->of_kind[kind]);
    }
    exact->now[kind] = 0;
}

static int least_loss_first(const void *a, const void *b)
{
    const struct candidate *left = a, *right = b;

    if (left->loss != right->loss)
        return left->loss < right->loss ? -1 : 1;
    return left->first < right->first ? -1 : left->first > right->first;
}

/* Fillings of a size that lose no more than that, with one kind in them or, SIZE_MAX, any. */
static void fill_size(struct bar_exact *exact, size_t size, size_t longest, size_t most,
                      int64_t to_lose)
{
    const struct bar_size *of = &exact->task->sizes[size];
    struct filling_search search = {.size = size,
                                    .longest = longest,
                                    .most = most,
                                    .least = of->price * exact->values->scale +
                                             exact->values->over[size] - to_lose};

    find_fillings(exact, &search, longest == SIZE_MAX ? 0 : longest, of->room, 0);
}

static void find_candidates(struct bar_exact *exact, size_t longest, int64_t to_lose)
{
    const struct bar_task *task = exact->task;
    size_t first = exact->candidates.count;

    for (size_t s = 0; s < task->size_count; s++)
        if (exact->limits[s] != 0 && task->sizes[s].room >= task->kinds[longest].length)
            fill_size(exact, s, longest, first + CANDIDATES_MOST, to_lose);
    if (exact->candidates.count - first > 1)
        qsort(&exact->candidates.at[first], exact->candidates.count - first,
              sizeof *exact->candidates.at, least_loss_first);
}

/* ---- states ---- */

static uint64_t mixed(uint64_t value)
{
    value ^= value >> 30;
    value *= UINT64_C(0xbf58476d1ce4e5b9);
    value ^= value >> 27;
    value *= UINT64_C(0x94d049bb133111eb);
    return value ^ value >> 31;
}

static uint64_t hash_of(const struct bar_exact *exact)
{
    uint64_t hash = exact->searches; /* no search knows the states of another */

    for (size_t k = 0; k < exact->task->kind_count; k++)
        hash = mixed(hash + (uint64_t)exact->counts[k] * UINT64_C(0x9e3779b97f4a7c15) + k);
    for (size_t s = 0; s < exact->task->size_count; s++)
        if (exact->limits[s] != CUT_ANY)
            hash = mixed(hash + (uint64_t)exact->limits[s] + (s << 32));
    return hash;
}

static void cut_candidate(struct bar_exact *exact, const struct candidate *candidate, int64_t times)
{
    for (size_t i = candidate->first; i < candidate->first + candidate->count; i++)
        exact->counts[exact->takes.at[i].kind] -= times * exact->takes.at[i].count;
    if (exact->limits[candidate->size] != CUT_ANY) {
        exact->limits[candidate->size] -= times;
        assert(exact->limits[candidate->size] >= 0); /* below 0 it would read as CUT_ANY */
    }
    exact->worth -= times * candidate->value;
    exact->budget -= times * exact->task->sizes[candidate->size].price;
}

/* Whether the money left may buy sticks that hold what is left. */
static bool can_be_paid(const struct bar_exact *exact)
{
    return exact->budget >= 0 &&
           exact->worth <= covering_holds(&exact->values->covering, exact->budget);
}

/* ---- the stack ---- */

enum entered { ENTERED, ALL_CUT, FAILED_BEFORE };

/* Begins with a state: lists its candidates. Whether that was all of them is in `complete`, which
 * leave_state joins with what it was before. */
static enum entered enter_state(struct bar_exact *exact, int64_t to_lose)
{
    struct open_state state = {.to_lose = to_lose,
                               .first_candidate = exact->candidates.count,
                               .first_take = exact->takes.count,
                               .next = exact->candidates.count,
                               .complete_before = exact->complete};
    const struct failed_state *failed;
    size_t longest = 0;

    while (longest < exact->task->kind_count && exact->counts[longest] == 0)
        longest++;
    if (longest == exact->task->kind_count)
        return ALL_CUT;
    exact->work_left -= WORK_KIND * (int64_t)exact->task->kind_count;
    state.hash = hash_of(exact);
    failed = &exact->failed[state.hash % FAILED_STATES];
    if (failed->hash == state.hash && failed->to_lose >= to_lose)
        return FAILED_BEFORE;
    exact->complete = true;
    find_candidates(exact, longest, to_lose);
    state.end = exact->candidates.count;
    *LIST_ADD(exact->task->arena, &exact->states) = state;
    return ENTERED;
}

static void take_back(struct bar_exact *exact)
{
    const struct candidate *last = &exact->path.at[exact->path.count - 1];

    assert(exact->path.count > 0);
    exact->path.count--;
    cut_candidate(exact, last, -1);
}

/* All its candidates were tried, or the work is done. */
static void leave_state(struct bar_exact *exact)
{
    const struct open_state *state = &exact->states.at[exact->states.count - 1];

    assert(exact->states.count > 0);
    exact->states.count--;
    if (exact->work_left <= 0)
        exact->complete = false;
    exact->candidates.count = state->first_candidate;
    exact->takes.count = state->first_take;
    if (exact->complete)
        exact->failed[state->hash % FAILED_STATES] =
            (struct failed_state){state->hash, state->to_lose};
    exact->complete = exact->complete && state->complete_before;
    if (exact->path.count > 0)
        take_back(exact);
}

/* Goes down into the next candidate of the last state; true when nothing is left to cut there. */
static bool try_next(struct bar_exact *exact)
{
    struct open_state *state = &exact->states.at[exact->states.count - 1];
    struct candidate candidate = exact->candidates.at[state->next++];
    enum entered entered;

    assert(state->next <= state->end && exact->path.count + 1 == exact->states.count);
    cut_candidate(exact, &candidate, 1);
    *LIST_ADD(exact->task->arena, &exact->path) = candidate;
    entered =
        can_be_paid(exact) ? enter_state(exact, state->to_lose - candidate.loss) : FAILED_BEFORE;
    if (entered == FAILED_BEFORE)
        take_back(exact);
    return entered == ALL_CUT;
}

static bool has_next(const struct bar_exact *exact)
{
    const struct open_state *state = &exact->states.at[exact->states.count - 1];

    return state->next < state->end && exact->work_left > 0;
}

static void write_filling(const struct bar_exact *exact, const struct candidate *candidate,
                          struct bar_plan *plan)
{
    bar_plan_fill(exact->task, plan, candidate->size, 1);
    for (size_t i = candidate->first; i < candidate->first + candidate->count; i++)
        bar_plan_take(exact->task, plan, exact->takes.at[i].kind, exact->takes.at[i].count);
}

/* Begins anew, for plans that cost at most `most`; what they may lose. */
static int64_t begin(struct bar_exact *exact, const struct bar_values *values, int64_t *counts,
                     int64_t *limits, int64_t most, int64_t work)
{
    exact->values = values;
    exact->counts = counts;
    exact->limits = limits;
    exact->worth = worth_of(values, exact->task, counts);
    exact->budget = most;
    exact->work_left = work;
    exact->complete = true;
    exact->candidates.count = exact->takes.count = exact->states.count = exact->path.count = 0;
    return most * values->scale - exact->worth + over_of(values, exact->task, limits);
}

void bar_exact_set_out(struct bar_exact *exact, const struct bar_values *values, int64_t *counts,
                       int64_t *limits, int64_t most, int64_t work)
{
    int64_t to_lose = begin(exact, values, counts, limits, most, work);

    if (!exact->failed)
        exact->failed = ARENA_MANY(exact->task->arena, struct failed_state, FAILED_STATES);
    exact->searches++;
    exact->all_cut = to_lose >= 0 && can_be_paid(exact) && enter_state(exact, to_lose) == ALL_CUT;
}

enum bar_outcome bar_exact_go_on(struct bar_exact *exact, int64_t slice, struct bar_plan *plan,
                                 int64_t *done)
{
    int64_t begun = exact->work_left;

    while (!exact->all_cut && exact->states.count > 0 && begun - exact->work_left < slice) {
        if (has_next(exact))
            exact->all_cut = try_next(exact);
        else
            leave_state(exact);
    }
    *done += begun - exact->work_left;
    if (!exact->all_cut && exact->states.count > 0)
        return BAR_GOES_ON;
    if (!exact->all_cut)
        return exact->complete ? BAR_NONE : BAR_UNDECIDED;
    for (size_t i = 0; i < exact->path.count; i++)
        write_filling(exact, &exact->path.at[i], plan);
    while (exact->path.count > 0)
        take_back(exact);
    assert(exact->worth ==
           worth_of(exact->values, exact->task, exact->counts)); /* all given back */
    return BAR_FOUND;
}

enum bar_outcome bar_exact_search(struct bar_exact *exact, const struct bar_values *values,
                                  int64_t *counts, int64_t *limits, int64_t most, int64_t work,
                                  struct bar_plan *plan, int64_t *done)
{
    bar_exact_set_out(exact, values, counts, limits, most, work);
    *done += work - exact->work_left;
    return bar_exact_go_on(exact, INT64_MAX, plan, done);
}

bool bar_exact_fillings(struct bar_exact *exact, const struct bar_values *values, int64_t *counts,
                        int64_t *limits, int64_t most, size_t fillings, int64_t work,
                        struct bar_plan *plan, int64_t *done)
{
    int64_t to_lose = begin(exact, values, counts, limits, most, work);

    for (size_t s = 0; to_lose >= 0 && s < exact->task->size_count; s++)
        if (limits[s] != 0)
            fill_size(exact, s, SIZE_MAX, fillings + 1, to_lose);
    *done += work - exact->work_left;
    if (!exact->complete || exact->candidates.count > fillings)
        return false;
    for (size_t i = 0; i < exact->candidates.count; i++)
        write_filling(exact, &exact->candidates.at[i], plan);
    return true;
}
