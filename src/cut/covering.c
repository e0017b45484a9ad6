#include "cut/covering.h"

#include "base/quantity.h"

#include <assert.h>
#include <string.h>

#define STEPS_MOST INT64_C(400000) /* fields of the table over costs */

static int64_t common_divisor(int64_t a, int64_t b)
{
    while (b != 0) {
        int64_t rest = a % b;

        a = b;
        b = rest;
    }
    return a;
}

static int64_t coin_of(const struct bar_task *task)
{
    int64_t coin = 0;

    for (size_t s = 0; s < task->size_count; s++)
        coin = common_divisor(coin, task->sizes[s].price);
    return coin > 0 ? coin : 1;
}

static int64_t value_of_all(const struct bar_task *task, const int64_t *values)
{
    int64_t total = 0;

    for (size_t k = 0; k < task->kind_count; k++) {
        int64_t product;

        if (whole_multiply(values[k], task->kinds[k].count, &product) ||
            whole_add(total, product, &total))
            return -1;
    }
    return total;
}

/* What a number of sticks costs beyond its table ends: nothing is bought of it. */
static void offer_bundle(int64_t *held, int64_t steps, int64_t cost, int64_t value)
{
    for (int64_t at = steps; at >= cost; at--)
        if (held[at - cost] + value > held[at])
            held[at] = held[at - cost] + value;
}

static void offer_any(int64_t *held, int64_t steps, int64_t cost, int64_t value)
{
    for (int64_t at = cost; at <= steps; at++)
        if (held[at - cost] + value > held[at])
            held[at] = held[at - cost] + value;
}

static void offer_size(const struct bar_size *size, int64_t *held, int64_t steps, int64_t coin,
                       int64_t value)
{
    int64_t left = size->limit;
    int64_t cost = size->price / coin;

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

int64_t covering_bound(const struct bar_task *task, const struct value_table *table, int64_t most)
{
    int64_t coin = coin_of(task);
    int64_t steps = whole_divide_up(most, coin);
    int64_t total = value_of_all(task, table->values);
    int64_t *held;
    int64_t at = 0;

    assert(most >= 0);
    if (total < 0 || steps > STEPS_MOST)
        return 0;
    held = ARENA_MANY(task->arena, int64_t, (size_t)steps + 1);
    for (size_t s = 0; s < task->size_count; s++)
        offer_size(&task->sizes[s], held, steps, coin,
                   value_at_most(table, 0, task->sizes[s].room));
    while (at < steps && held[at] < total)
        at++;
    return at * coin < most ? at * coin : most;
}
