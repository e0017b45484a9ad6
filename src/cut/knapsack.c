#include "cut/knapsack.h"

#include "base/whole.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#define FIELDS_MOST INT64_C(8000000) /* of a table */
#define STEPS_MOST 20000             /* of a search without one */

static int64_t least(int64_t a, int64_t b)
{
    return a < b ? a : b;
}

/* The most of a kind that any stick takes. */
static int64_t most_of(const struct bar_task *task, size_t kind, int64_t count)
{
    assert(kind < task->kind_count);
    return least(count, task->longest / task->kinds[kind].length);
}

/* ---- proposals by table ---- */

/* Bundles that make up any number to `count`. */
static size_t bundles_of(int64_t count)
{
    size_t bundles = 0;

    for (int64_t bundle = 1; count > 0; bundle *= 2, bundles++)
        count -= least(bundle, count);
    return bundles;
}

void knapsack_begin(struct knapsack *knapsack, const struct bar_task *task)
{
    size_t bundles = 0;
    size_t rooms = (size_t)task->longest + 1;

    *knapsack = (struct knapsack){.room = task->longest};
    for (size_t k = 0; k < task->kind_count; k++)
        bundles += bundles_of(most_of(task, k, task->kinds[k].count));
    knapsack->bundles = ARENA_MANY(task->arena, struct knapsack_bundle, bundles);
    knapsack->now = ARENA_MANY(task->arena, int64_t, task->kind_count);
    knapsack->best = ARENA_MANY(task->arena, int64_t, task->kind_count);
    if ((int64_t)bundles * (int64_t)rooms > FIELDS_MOST)
        return;
    knapsack->value = ARENA_MANY(task->arena, double, rooms);
    knapsack->taken = ARENA_MANY(task->arena, uint8_t, bundles * rooms);
}

static void lay_bundle(struct knapsack *knapsack, int64_t length, double worth)
{
    size_t bundle = knapsack->bundle_count - 1;
    double *value = knapsack->value;
    uint8_t *taken = &knapsack->taken[bundle * ((size_t)knapsack->room + 1)];

    assert(length > 0);
    memset(taken, 0, (size_t)knapsack->room + 1);
    for (int64_t room = knapsack->room; room >= length; room--) {
        double with = value[room - length] + worth;

        taken[room] = with > value[room];
        value[room] = taken[room] ? with : value[room];
    }
}

static void lay_kind(struct knapsack *knapsack, const struct bar_task *task, size_t kind,
                     int64_t count, double value)
{
    int64_t left = most_of(task, kind, count);

    for (int64_t bundle = 1; left > 0; bundle *= 2) {
        int64_t some = least(bundle, left);

        knapsack->bundles[knapsack->bundle_count++] =
            (struct knapsack_bundle){.kind = kind, .count = some};
        lay_bundle(knapsack, some * task->kinds[kind].length, (double)some * value);
        left -= some;
    }
}

static double read_table(const struct knapsack *knapsack, const struct bar_task *task, int64_t room,
                         int64_t *ret_takes)
{
    double value = knapsack->value[room];

    assert(room <= knapsack->room);
    memset(ret_takes, 0, task->kind_count * sizeof *ret_takes);
    for (size_t i = knapsack->bundle_count; i-- > 0;) {
        const struct knapsack_bundle *bundle = &knapsack->bundles[i];

        if (!knapsack->taken[i * ((size_t)knapsack->room + 1) + (size_t)room])
            continue;
        ret_takes[bundle->kind] += bundle->count;
        room -= bundle->count * task->kinds[bundle->kind].length;
    }
    assert(room >= 0);
    return value;
}

/* ---- proposals by search ---- */

static int densest_first(const void *a, const void *b)
{
    const struct knapsack_bundle *left = a, *right = b;

    if (left->value < right->value || left->value > right->value)
        return left->value > right->value ? -1 : 1;
    return left->kind < right->kind ? -1 : left->kind > right->kind;
}

static void search_filling(struct knapsack *knapsack, const struct bar_task *task, size_t next,
                           int64_t room, double value)
{
    if (value > knapsack->best_value) {
        knapsack->best_value = value;
        memcpy(knapsack->best, knapsack->now, task->kind_count * sizeof *knapsack->now);
    }
    for (size_t i = next; i < knapsack->bundle_count && knapsack->steps_left-- > 0; i++) {
        const struct knapsack_bundle *kind = &knapsack->bundles[i];
        int64_t length = task->kinds[kind->kind].length;

        if (value + (double)room * kind->value <= knapsack->best_value)
            return;
        for (int64_t count = least(kind->count, room / length); count > 0; count--) {
            knapsack->now[kind->kind] = count;
            search_filling(knapsack, task, i + 1, room - count * length,
                           value + (double)count * knapsack->values[kind->kind]);
        }
        knapsack->now[kind->kind] = 0;
    }
}

static void rank_kinds(struct knapsack *knapsack, const struct bar_task *task,
                       const int64_t *counts, double least_value)
{
    for (size_t k = 0; k < task->kind_count; k++)
        if (knapsack->values[k] > least_value && counts[k] > 0)
            knapsack->bundles[knapsack->bundle_count++] = (struct knapsack_bundle){
                k, counts[k], knapsack->values[k] / (double)task->kinds[k].length};
    if (knapsack->bundle_count > 1)
        qsort(knapsack->bundles, knapsack->bundle_count, sizeof *knapsack->bundles, densest_first);
}

/* ---- both ---- */

int64_t knapsack_solve(struct knapsack *knapsack, const struct bar_task *task, const double *values,
                       const int64_t *counts, double least_value)
{
    knapsack->bundle_count = 0;
    knapsack->values = values;
    if (!knapsack->value) {
        rank_kinds(knapsack, task, counts, least_value);
        return STEPS_MOST * (int64_t)task->size_count;
    }
    memset(knapsack->value, 0, ((size_t)knapsack->room + 1) * sizeof *knapsack->value);
    for (size_t k = 0; k < task->kind_count; k++)
        if (values[k] > least_value)
            lay_kind(knapsack, task, k, counts[k], values[k]);
    return (int64_t)knapsack->bundle_count * knapsack->room;
}

double knapsack_best(struct knapsack *knapsack, const struct bar_task *task, int64_t room,
                     int64_t *ret_takes)
{
    if (knapsack->value)
        return read_table(knapsack, task, room, ret_takes);
    memset(knapsack->now, 0, task->kind_count * sizeof *knapsack->now);
    memset(knapsack->best, 0, task->kind_count * sizeof *knapsack->best);
    knapsack->best_value = 0;
    knapsack->steps_left = STEPS_MOST;
    search_filling(knapsack, task, 0, room, 0);
    memcpy(ret_takes, knapsack->best, task->kind_count * sizeof *ret_takes);
    return knapsack->best_value;
}

/* ---- exact ---- */

void value_table_begin(struct value_table *table, const struct bar_task *task)
{
    size_t rooms = (size_t)task->longest + 1;
    int64_t *fields;

    *table = (struct value_table){.task = task};
    table->densest = ARENA_MANY(task->arena, size_t, task->kind_count);
    if ((int64_t)(task->kind_count + 1) * (int64_t)rooms > FIELDS_MOST)
        return;
    table->best = ARENA_MANY(task->arena, int64_t *, task->kind_count + 1);
    fields = ARENA_MANY(task->arena, int64_t, (task->kind_count + 1) * rooms);
    for (size_t k = 0; k <= task->kind_count; k++)
        table->best[k] = &fields[k * rooms];
}

/* One kind over what the later ones give, bundle by bundle. */
static void add_kind(struct value_table *table, size_t kind)
{
    const struct bar_task *task = table->task;
    int64_t length = task->kinds[kind].length;
    int64_t left = most_of(task, kind, task->kinds[kind].count);
    int64_t *now = table->best[kind];

    memcpy(now, table->best[kind + 1], ((size_t)task->longest + 1) * sizeof *now);
    for (int64_t bundle = 1; left > 0 && table->values[kind] > 0; bundle *= 2) {
        int64_t count = least(bundle, left);

        for (int64_t room = task->longest; room >= count * length; room--) {
            int64_t with = now[room - count * length] + count * table->values[kind];

            now[room] = with > now[room] ? with : now[room];
        }
        table->work += task->longest;
        left -= count;
    }
}

static bool is_denser(const struct value_table *table, size_t a, size_t b)
{
    const struct bar_kind *kinds = table->task->kinds;

    return (double)table->values[a] * (double)kinds[b].length >
           (double)table->values[b] * (double)kinds[a].length;
}

void value_table_fill(struct value_table *table, const int64_t *values)
{
    table->values = values;
    table->work = 0;
    for (size_t k = table->task->kind_count; k-- > 0;) {
        bool last = k + 1 == table->task->kind_count;

        assert(values[k] >= 0);
        table->densest[k] =
            last || is_denser(table, k, table->densest[k + 1]) ? k : table->densest[k + 1];
        if (table->best)
            add_kind(table, k);
    }
}

/* Without a table: the best value for its length, rounded up with a little more for the rounding of
 * the comparison. */
static int64_t by_density(const struct value_table *table, size_t kind, int64_t room)
{
    size_t densest = table->densest[kind];
    int64_t value;

    if (whole_share(table->values[densest], room, table->task->kinds[densest].length, &value))
        return INT64_MAX / 4;
    return value + 2 + value / 1000000;
}

int64_t value_at_most(const struct value_table *table, size_t kind, int64_t room)
{
    if (kind == table->task->kind_count)
        return 0;
    return table->best ? table->best[kind][room] : by_density(table, kind, room);
}
