#include "cut/covering.h"

#include "base/whole.h"

#include <assert.h>
#include <string.h>

#define STEPS_MOST INT64_C(400000) /* fields of the table over costs */

static int64_t coin_of(const struct bar_task *task)
{
    int64_t coin = 0;

    for (size_t s = 0; s < task->size_count; s++)
        coin = whole_common_divisor(coin, task->sizes[s].price);
    return coin > 0 ? coin : 1;
}

/* One bundle of sticks, bought whole or not at all. */
static void offer_bundle(int64_t *held, int64_t steps, int64_t cost, int64_t value)
{
    for (int64_t at = steps; at >= cost; at--)
        if (held[at - cost] + value > held[at])
            held[at] = held[at - cost] + value;
}

/* Any number of sticks. */
static void offer_any(int64_t *held, int64_t steps, int64_t cost, int64_t value)
{
    for (int64_t at = cost; at <= steps; at++)
        if (held[at - cost] + value > held[at])
            held[at] = held[at - cost] + value;
}

/* A size, by its limit: bundles of 1, 2, 4 ... sticks make up any number up to it. Where any number
 * is to be had for nothing no part has a value (bar_values_set), so that such a size adds nothing.
 */
static void offer_size(const struct bar_size *size, int64_t *held, int64_t steps, int64_t coin,
                       int64_t value)
{
    int64_t left = size->limit;
    int64_t cost = size->price / coin;

    assert(size->price % coin == 0 && value >= 0);
    if (size->limit == CUT_ANY && cost > 0) {
        offer_any(held, steps, cost, value);
        return;
    }
    for (int64_t bundle = 1; left > 0; bundle *= 2) {
        int64_t count = bundle < left ? bundle : left;

        if (count * cost <= steps)
            offer_bundle(held, steps, count * cost, count * value);
        left -= count;
    }
}

/* Whether the values of all sticks that so many steps of money could buy add up within an int64. */
static bool fits(const struct bar_task *task, const struct value_table *table, int64_t steps,
                 int64_t coin)
{
    int64_t sum = 0;

    for (size_t s = 0; s < task->size_count; s++) {
        int64_t cost = task->sizes[s].price / coin;
        int64_t count = task->sizes[s].limit == CUT_ANY ? steps / (cost > 0 ? cost : 1) + 1
                                                        : task->sizes[s].limit;
        int64_t value;

        if (whole_multiply(count, value_at_most(table, 0, task->sizes[s].room), &value) ||
            whole_add(sum, value, &sum))
            return false;
    }
    return true;
}

struct covering covering_make(const struct bar_task *task, const struct value_table *table,
                              int64_t most)
{
    struct covering covering = {.coin = coin_of(task)};

    assert(most >= 0);
    covering.steps = whole_divide_down(most, covering.coin);
    if (covering.steps > STEPS_MOST || !fits(task, table, covering.steps, covering.coin))
        return covering;
    covering.held = ARENA_MANY(task->arena, int64_t, (size_t)covering.steps + 1);
    for (size_t s = 0; s < task->size_count; s++)
        offer_size(&task->sizes[s], covering.held, covering.steps, covering.coin,
                   value_at_most(table, 0, task->sizes[s].room));
    return covering;
}

int64_t covering_holds(const struct covering *covering, int64_t price)
{
    int64_t at = price / covering->coin;

    if (!covering->held || at > covering->steps)
        return INT64_MAX;
    return price < 0 ? -1 : covering->held[at];
}

/* More money never holds less, so `held` rises. */
int64_t covering_bound(const struct covering *covering, int64_t value, int64_t most)
{
    int64_t low = 0, high = covering->steps + 1; /* where no price holds enough */

    if (!covering->held)
        return 0;
    while (low < high) {
        int64_t middle = low + (high - low) / 2;

        if (covering->held[middle] >= value)
            high = middle;
        else
            low = middle + 1;
    }
    assert(low > covering->steps || covering->held[low] >= value);
    assert(low == 0 || covering->held[low - 1] < value);
    return low * covering->coin < most ? low * covering->coin : most;
}
