#include "cut/bars_mix.h"

#include "base/whole.h"
#include "cut/bars_pool.h"

#include <assert.h>
#include <string.h>

#define STEPS_MOST 2000000 /* of one search for a mix */
#define SIZES_MOST 10      /* with more of them mixes are too many to go through */
#define STRIKES_MOST 400
#define VALUE_SCALE INT64_C(1000000)
#define FILLINGS_MOST 1500 /* of a mix: more are not branched over */
#define POOL_WORK INT64_C(30000000)
#define SEARCH_WORK INT64_C(4000000) /* to list them, or to pack a mix part by part */
#define PATIENCE_MOST 64             /* times the work that a mix is given at first */
#define WORK_STEP 8                  /* of the search for a mix, by refutation */
#define PARTLY 1e-3                  /* of a part: less is rounding */

/* The sticks of every plan hold this much: sum of held[s] * counts[s] >= total. */
struct refutation {
    int64_t held[SIZES_MOST];
    int64_t total;
};

/* A mix that was tried: not to be found again. */
struct struck {
    int64_t counts[SIZES_MOST];
    bool open; /* only set aside */
};

struct bar_mixes {
    struct bar_task task; /* with a limit on every size, and no prices */
    const struct bar_task *priced;
    struct columns columns;
    struct value_table table;
    int64_t *values;
    LIST_OF(struct refutation) refutations;
    LIST_OF(struct struck) struck;
    int64_t now[SIZES_MOST], best[SIZES_MOST];
    int64_t best_cost;
    int64_t steps_left;
    int64_t open;     /* cost of the cheapest set aside */
    int64_t patience; /* what is done for one mix, of what is done for it at first */
    struct bar_values lengths, shares;
    struct bar_exact *exact;
    struct bar_pool *pool;    /* NULL until a mix is branched over */
    struct bar_plan fillings; /* that may stand in a plan of the mix */
    bool pooled;              /* the mix is being branched over, not packed part by part */
};

/* Values by length: what a filling loses is room. */
static void value_lengths(struct bar_mixes *mixes)
{
    const struct bar_task *task = &mixes->task;
    double *worth = ARENA_MANY(task->arena, double, task->kind_count);

    for (size_t k = 0; k < task->kind_count; k++)
        worth[k] = (double)task->kinds[k].length / (double)task->longest;
    bar_values_begin(&mixes->lengths, task);
    bar_values_set(&mixes->lengths, task, worth, 0);
    bar_values_begin(&mixes->shares, task);
}

struct bar_mixes *bar_mixes_begin(const struct bar_task *task)
{
    struct bar_mixes *mixes;

    if (task->size_count > SIZES_MOST)
        return NULL;
    mixes = ARENA_NEW(task->arena, struct bar_mixes);
    mixes->priced = task;
    mixes->task = *task;
    mixes->task.sizes = ARENA_MANY(task->arena, struct bar_size, task->size_count);
    for (size_t s = 0; s < task->size_count; s++) {
        mixes->task.sizes[s] = task->sizes[s];
        mixes->task.sizes[s].price = 0;
        mixes->task.sizes[s].limit = (int64_t)task->part_count;
    }
    mixes->values = ARENA_MANY(task->arena, int64_t, task->kind_count);
    value_table_begin(&mixes->table, task);
    columns_begin(&mixes->columns, &mixes->task);
    mixes->open = INT64_MAX;
    mixes->patience = 1;
    value_lengths(mixes);
    mixes->exact = bar_exact_begin(&mixes->task);
    return mixes;
}

struct columns *bar_mixes_columns(struct bar_mixes *mixes)
{
    return &mixes->columns;
}

const int64_t *bar_mixes_counts(const struct bar_mixes *mixes)
{
    return mixes->best;
}

int64_t bar_mixes_open(const struct bar_mixes *mixes)
{
    return mixes->open;
}

/* ---- refuting ---- */

static void add_refutation(struct bar_mixes *mixes, const struct value_table *table,
                           const int64_t *values)
{
    const struct bar_task *task = mixes->priced;
    struct refutation *refutation = LIST_ADD(task->arena, &mixes->refutations);

    for (size_t k = 0; k < task->kind_count; k++)
        refutation->total += values[k] * task->kinds[k].count;
    for (size_t s = 0; s < task->size_count; s++)
        refutation->held[s] = value_at_most(table, 0, task->sizes[s].room);
}

void bar_mixes_refute(struct bar_mixes *mixes, const struct bar_values *values)
{
    add_refutation(mixes, &values->table, values->of_kind);
}

static bool refutes(const struct bar_mixes *mixes, const struct refutation *refutation,
                    const int64_t *counts)
{
    int64_t held = 0;

    for (size_t s = 0; s < mixes->priced->size_count; s++)
        held += counts[s] * refutation->held[s];
    return held < refutation->total;
}

/* ---- the next mix ---- */

static bool is_struck(const struct bar_mixes *mixes)
{
    for (size_t i = 0; i < mixes->struck.count; i++)
        if (memcmp(mixes->struck.at[i].counts, mixes->now,
                   mixes->priced->size_count * sizeof *mixes->now) == 0)
            return true;
    return false;
}

static bool is_refuted(const struct bar_mixes *mixes)
{
    for (size_t i = mixes->refutations.count; i-- > 0;)
        if (refutes(mixes, &mixes->refutations.at[i], mixes->now))
            return true;
    return false;
}

/* Money that sizes from `size` on cost at least, by one refutation: what is missing of its total,
 * at the best value for money. INT64_MAX where no money buys it. */
static int64_t needed(const struct bar_mixes *mixes, size_t size, const struct refutation *of)
{
    const struct bar_task *task = mixes->priced;
    int64_t missing = of->total;
    int64_t least = INT64_MAX;

    for (size_t s = 0; s < size; s++)
        missing -= mixes->now[s] * of->held[s];
    for (size_t s = size; s < task->size_count; s++)
        if (task->sizes[s].limit != CUT_ANY && task->sizes[s].price == 0)
            missing -= task->sizes[s].limit * of->held[s];
    if (missing <= 0)
        return 0;
    for (size_t s = size; s < task->size_count; s++) {
        int64_t money;

        if (task->sizes[s].price == 0 || of->held[s] == 0 ||
            whole_share(missing, task->sizes[s].price, of->held[s], &money))
            continue;
        least = money < least ? money : least;
    }
    /* Shares are rounded half to even: one may be a coin too dear. */
    return least == INT64_MAX || least == 0 ? least : least - 1;
}

static bool can_be_cheaper(const struct bar_mixes *mixes, size_t size, int64_t cost)
{
    for (size_t i = 0; i < mixes->refutations.count; i++) {
        int64_t more = needed(mixes, size, &mixes->refutations.at[i]);

        if (more == INT64_MAX || cost + more >= mixes->best_cost)
            return false;
    }
    return cost < mixes->best_cost;
}

static int64_t most_of(const struct bar_mixes *mixes, size_t size, int64_t cost)
{
    assert(size < mixes->priced->size_count);

    const struct bar_size *of = &mixes->priced->sizes[size];
    int64_t most = of->limit == CUT_ANY ? (int64_t)mixes->priced->part_count : of->limit;

    if (of->price > 0 && (mixes->best_cost - 1 - cost) / of->price < most)
        most = (mixes->best_cost - 1 - cost) / of->price;
    return most;
}

/* Of a size and those after it, none holds more for its price by any refutation. Then the fewer of
 * it, the more the others must cost. */
static bool is_best_value(const struct bar_mixes *mixes, size_t size)
{
    const struct bar_size *sizes = mixes->priced->sizes;

    for (size_t i = 0; i < mixes->refutations.count; i++) {
        const int64_t *held = mixes->refutations.at[i].held;

        for (size_t s = size + 1; s < mixes->priced->size_count; s++) {
            int64_t mine, other;

            if (whole_multiply(held[size], sizes[s].price, &mine) ||
                whole_multiply(held[s], sizes[size].price, &other) ||
                (sizes[s].price > 0 && other > mine))
                return false;
        }
    }
    return true;
}

static void end_mix(struct bar_mixes *mixes, int64_t cost)
{
    if (is_refuted(mixes) || is_struck(mixes))
        return;
    assert(cost < mixes->best_cost);
    memcpy(mixes->best, mixes->now, sizeof mixes->now);
    mixes->best_cost = cost;
}

/* Goes on with sizes from `size`; the mix so far can be cheaper than the best. */
static void find_mix(struct bar_mixes *mixes, size_t size, int64_t cost)
{
    assert(size <= mixes->priced->size_count);

    int64_t price, most, least;
    bool best_value;

    if (size == mixes->priced->size_count) {
        end_mix(mixes, cost);
        return;
    }
    price = mixes->priced->sizes[size].price;
    most = most_of(mixes, size, cost);
    best_value = is_best_value(mixes, size);
    /* What lies on the shelf costs nothing: all of it, or none is left out for nothing. */
    least = price == 0 ? most : 0;
    for (int64_t count = most; count >= least && mixes->steps_left-- > 0; count--) {
        mixes->now[size] = count;
        if (can_be_cheaper(mixes, size + 1, cost + count * price))
            find_mix(mixes, size + 1, cost + count * price);
        else if (best_value)
            break;
    }
    mixes->now[size] = 0;
}

/* Goes through all mixes below a price, with so many steps at the most. */
static void find_mix_below(struct bar_mixes *mixes, int64_t below, int64_t *done)
{
    mixes->best_cost = below;
    mixes->steps_left = STEPS_MOST;
    if (can_be_cheaper(mixes, 0, 0))
        find_mix(mixes, 0, 0);
    *done += (STEPS_MOST - mixes->steps_left) * WORK_STEP * (int64_t)mixes->refutations.count;
}

/* Few mixes cost hardly more than the bound, and those are soon gone through: so the price below
 * which mixes are looked for goes up from there in steps. */
enum mix_outcome bar_mixes_next(struct bar_mixes *mixes, int64_t bound, int64_t below,
                                int64_t *ret_cost, int64_t *done)
{
    int64_t reach = 1;

    assert(bound <= below);
    if (mixes->struck.count >= STRIKES_MOST)
        return MIX_TOO_MANY;
    for (;;) {
        int64_t most = below - bound > reach ? bound + reach : below;

        find_mix_below(mixes, most, done);
        if (mixes->steps_left <= 0)
            return MIX_TOO_MANY;
        if (mixes->best_cost < most || most == below)
            break;
        reach *= 4;
    }
    *ret_cost = mixes->best_cost;
    return mixes->best_cost < below ? MIX_FOUND : MIX_NONE;
}

/* ---- packing it ---- */

/* Refutes the mix by the duals of what cannot be packed, as whole values; false where they do not,
 * for rounding. */
static bool refute_by_duals(struct bar_mixes *mixes)
{
    const struct bar_task *task = mixes->priced;
    struct refutation *last;

    for (size_t k = 0; k < task->kind_count; k++)
        mixes->values[k] = mixes->columns.dual[k] > 0
                               ? (int64_t)(mixes->columns.dual[k] * (double)VALUE_SCALE)
                               : 0;
    value_table_fill(&mixes->table, mixes->values);
    add_refutation(mixes, &mixes->table, mixes->values);
    last = &mixes->refutations.at[mixes->refutations.count - 1];
    if (refutes(mixes, last, mixes->best))
        return true;
    mixes->refutations.count--;
    return false;
}

static double left_unpacked(const struct columns *columns)
{
    double left = 0;

    for (size_t row = 0; row < columns->row_count; row++)
        if (columns->basis[row].as == BASIC_WANT)
            left += columns->level[row] * columns->wants[columns->basis[row].index].take;
        else if (columns->basis[row].as == BASIC_TURNED || columns->basis[row].as == BASIC_DEAR)
            left += columns->level[row];
    return left;
}

bool bar_mixes_relax_rest(struct bar_mixes *mixes, int64_t *done)
{
    struct columns *columns = &mixes->columns;
    int64_t before = columns->work;

    while (columns_step(columns) && columns_cost(columns) > PARTLY)
        ;
    *done += columns->work - before;
    return left_unpacked(columns) < PARTLY;
}

bool bar_mixes_relax(struct bar_mixes *mixes, const int64_t *counts, const int64_t *limits,
                     int64_t *done)
{
    struct columns *columns = &mixes->columns;
    bool refuted;

    columns_start(columns, counts, limits);
    if (bar_mixes_relax_rest(mixes, done)) {
        columns_keep(columns);
        return true;
    }
    refuted = refute_by_duals(mixes);
    *done += mixes->table.work;
    return !refuted;
}

/* The values by which the mix holds least beyond what the parts have: a filling may lose little by
 * them. Those of the lengths where there are none. */
static const struct bar_values *tightest_values(struct bar_mixes *mixes, const int64_t *counts,
                                                const int64_t *limits, int64_t *done)
{
    struct columns *columns = &mixes->columns;
    int64_t before = columns->work;

    columns_start_scaling(columns, counts, limits);
    while (columns_step(columns))
        ;
    *done += columns->work - before;
    if (columns_scale(columns) <= 0)
        return &mixes->lengths;
    bar_values_set(&mixes->shares, &mixes->task, columns->dual, 0);
    *done += mixes->shares.table.work;
    return &mixes->shares;
}

void bar_mixes_set_out(struct bar_mixes *mixes, int64_t *counts, int64_t *limits, int64_t *done)
{
    const struct bar_values *values = tightest_values(mixes, counts, limits, done);

    bar_plan_clear(&mixes->fillings);
    mixes->pooled = bar_exact_fillings(mixes->exact, values, counts, limits, 0,
                                       (size_t)mixes->patience * FILLINGS_MOST,
                                       mixes->patience * SEARCH_WORK, &mixes->fillings, done);
    if (!mixes->pooled) {
        bar_exact_set_out(mixes->exact, values, counts, limits, 0, mixes->patience * SEARCH_WORK);
        return;
    }
    if (!mixes->pool)
        mixes->pool = bar_pool_begin(&mixes->task);
    bar_pool_set_out(mixes->pool, &mixes->fillings, counts, limits, mixes->patience * POOL_WORK);
}

enum bar_outcome bar_mixes_go_on(struct bar_mixes *mixes, int64_t slice, struct bar_plan *plan,
                                 int64_t *done)
{
    return mixes->pooled ? bar_pool_go_on(mixes->pool, slice, plan, done)
                         : bar_exact_go_on(mixes->exact, slice, plan, done);
}

static struct struck *strike(struct bar_mixes *mixes)
{
    struct struck *struck = LIST_ADD(mixes->priced->arena, &mixes->struck);

    memcpy(struck->counts, mixes->best, sizeof struck->counts);
    struck->open = false;
    return struck;
}

void bar_mixes_strike(struct bar_mixes *mixes)
{
    strike(mixes);
}

void bar_mixes_set_aside(struct bar_mixes *mixes, int64_t cost)
{
    strike(mixes)->open = true;
    mixes->open = cost < mixes->open ? cost : mixes->open;
}

bool bar_mixes_again(struct bar_mixes *mixes)
{
    size_t kept = 0;
    bool any = mixes->open < INT64_MAX;

    assert(mixes->patience >= 1 && mixes->patience <= PATIENCE_MOST);
    for (size_t i = 0; i < mixes->struck.count; i++)
        if (!mixes->struck.at[i].open)
            mixes->struck.at[kept++] = mixes->struck.at[i];
    mixes->struck.count = kept;
    mixes->open = INT64_MAX;
    if (!any || mixes->patience >= PATIENCE_MOST)
        return false;
    mixes->patience *= 4;
    return true;
}
