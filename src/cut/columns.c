/*
 *  1  inverse * basis = 1, and level = inverse * wanted, not below 0 but for rounding
 *  2  dual = cost of the basis * inverse
 *  3  A basic column of the pool takes no more of a kind than is left: each can be cut whole.
 */
#include "cut/columns.h"

#include <assert.h>
#include <string.h>

#define TINY 1e-9
#define GAIN 1e-7 /* of the dearest price: columns that gain less are not worth a step */
#define PIVOTS_PER_ROW 60

void columns_begin(struct columns *columns, const struct bar_task *task)
{
    struct arena *arena = task->arena;
    size_t rows = task->kind_count;

    *columns = (struct columns){.task = task, .dearest = 1};
    columns->limit_row = ARENA_MANY(arena, size_t, task->size_count);
    for (size_t s = 0; s < task->size_count; s++) {
        columns->limit_row[s] = task->sizes[s].limit == CUT_ANY ? SIZE_MAX : rows++;
        if ((double)task->sizes[s].price > columns->dearest)
            columns->dearest = (double)task->sizes[s].price;
    }
    columns->row_count = rows;
    columns->kept =
        (struct kept_basis){ARENA_MANY(arena, double, rows *rows), ARENA_MANY(arena, double, rows),
                            ARENA_MANY(arena, double, rows), ARENA_MANY(arena, size_t, rows)};
    columns->inverse = ARENA_MANY(arena, double, rows *rows);
    columns->level = ARENA_MANY(arena, double, rows);
    columns->dual = ARENA_MANY(arena, double, rows);
    columns->basis = ARENA_MANY(arena, size_t, rows);
    columns->direction = ARENA_MANY(arena, double, rows);
    columns->entering = ARENA_MANY(arena, double, rows);
    columns->scratch = ARENA_MANY(arena, int64_t, task->kind_count);
    knapsack_begin(&columns->knapsack, task);
}

static double cost_of_stick(const struct columns *columns, size_t size)
{
    return (double)columns->task->sizes[size].price + columns->dearest * 1e-6;
}

/* ---- the pool ---- */

static bool same_column(const struct columns *columns, const struct column *column, size_t size,
                        const int64_t *takes)
{
    size_t kinds = 0;

    for (size_t k = 0; k < columns->task->kind_count; k++)
        kinds += takes[k] > 0;
    if (column->size != size || column->count != kinds)
        return false;
    for (size_t i = column->first; i < column->first + column->count; i++)
        if (takes[columns->takes.at[i].kind] != columns->takes.at[i].count)
            return false;
    return true;
}

static size_t add_column(struct columns *columns, size_t size, const int64_t *takes)
{
    struct arena *arena = columns->task->arena;
    struct column *column;

    for (size_t i = 0; i < columns->pool.count; i++)
        if (same_column(columns, &columns->pool.at[i], size, takes))
            return i;
    column = LIST_ADD(arena, &columns->pool);
    *column = (struct column){
        .size = size, .first = columns->takes.count, .cost = cost_of_stick(columns, size)};
    for (size_t k = 0; k < columns->task->kind_count; k++)
        if (takes[k] > 0) {
            *LIST_ADD(arena, &columns->takes) = (struct bar_take){k, takes[k]};
            column->count++;
        }
    return columns->pool.count - 1;
}

int64_t columns_times_left(const struct columns *columns, const struct column *column,
                           const int64_t *counts, const int64_t *limits)
{
    int64_t times = limits[column->size] == CUT_ANY ? INT64_MAX : limits[column->size];

    for (size_t i = column->first; i < column->first + column->count; i++) {
        const struct bar_take *take = &columns->takes.at[i];

        if (counts[take->kind] / take->count < times)
            times = counts[take->kind] / take->count;
    }
    return times;
}

/* ---- start ---- */

static double wanted(const struct columns *columns, size_t row)
{
    if (row < columns->task->kind_count)
        return (double)columns->counts[row];
    for (size_t s = 0; s < columns->task->size_count; s++)
        if (columns->limit_row[s] == row)
            return (double)columns->limits[s];
    return 0;
}

/* Every part dear and by itself, every stick unused: a basis that is its own inverse. */
void columns_start(struct columns *columns, const int64_t *counts, const int64_t *limits)
{
    size_t rows = columns->row_count;

    columns->counts = counts;
    columns->limits = limits;
    columns->pivots = 0;
    memset(columns->inverse, 0, rows * rows * sizeof *columns->inverse);
    for (size_t row = 0; row < rows; row++) {
        bool part = row < columns->task->kind_count;

        columns->inverse[row * rows + row] = 1;
        columns->basis[row] = (part ? BASIS_WANT : BASIS_SPARE) + row;
        columns->level[row] = wanted(columns, row);
        columns->dual[row] = part ? 3 * columns->dearest : 0;
    }
}

/* ---- cutting some ---- */

/* Changes what a basic column costs, and with it the duals. */
static void make_dear(struct columns *columns, size_t row, double cost, double sign)
{
    size_t rows = columns->row_count;
    double change = sign * 3 * columns->dearest - cost;

    for (size_t i = 0; i < rows; i++)
        columns->dual[i] += change * columns->inverse[row * rows + i];
    if (sign < 0)
        for (size_t i = 0; i < rows; i++)
            columns->inverse[row * rows + i] = -columns->inverse[row * rows + i];
    columns->level[row] *= sign;
    columns->basis[row] = BASIS_WANT + row;
    columns->work += (int64_t)rows;
}

void columns_take(struct columns *columns, size_t row, int64_t times)
{
    assert(columns->basis[row] < BASIS_SPARE);
    columns->level[row] -= (double)times;
}

/* A column whose level fell below 0 is turned round: what was cut too often comes back at a price.
 */
void columns_settle(struct columns *columns)
{
    for (size_t row = 0; row < columns->row_count; row++) {
        size_t basic = columns->basis[row];
        const struct column *column;

        if (basic >= BASIS_SPARE)
            continue;
        column = &columns->pool.at[basic];
        if (columns->level[row] < -TINY)
            make_dear(columns, row, column->cost, -1);
        else if (!columns_times_left(columns, column, columns->counts, columns->limits))
            make_dear(columns, row, column->cost, 1);
    }
    columns->pivots = 0;
}

static void copy_basis(const struct columns *columns, struct kept_basis *to,
                       const struct kept_basis *from)
{
    size_t rows = columns->row_count;

    memcpy(to->inverse, from->inverse, rows * rows * sizeof *to->inverse);
    memcpy(to->level, from->level, rows * sizeof *to->level);
    memcpy(to->dual, from->dual, rows * sizeof *to->dual);
    memcpy(to->basis, from->basis, rows * sizeof *to->basis);
}

void columns_keep(struct columns *columns)
{
    const struct kept_basis now = {columns->inverse, columns->level, columns->dual, columns->basis};

    copy_basis(columns, &columns->kept, &now);
}

void columns_back(struct columns *columns, const int64_t *counts, const int64_t *limits)
{
    struct kept_basis now = {columns->inverse, columns->level, columns->dual, columns->basis};

    copy_basis(columns, &now, &columns->kept);
    columns->counts = counts;
    columns->limits = limits;
    columns->pivots = 0;
    columns->work += (int64_t)(columns->row_count * columns->row_count);
}

/* ---- pricing ---- */

struct offer {
    size_t column; /* of the pool, or a row's slack */
    double gain;
};

static double gain_of(const struct columns *columns, const struct column *column)
{
    size_t row = columns->limit_row[column->size];
    double gain = (row == SIZE_MAX ? 0 : columns->dual[row]) - column->cost;

    for (size_t i = column->first; i < column->first + column->count; i++)
        gain += (double)columns->takes.at[i].count * columns->dual[columns->takes.at[i].kind];
    return gain;
}

static bool can_be_cut(const struct columns *columns, const struct column *column)
{
    return columns_times_left(columns, column, columns->counts, columns->limits) > 0;
}

static void price_pool(struct columns *columns, struct offer *offer)
{
    for (size_t i = 0; i < columns->pool.count; i++) {
        double gain = gain_of(columns, &columns->pool.at[i]);

        if (gain > offer->gain && can_be_cut(columns, &columns->pool.at[i]))
            *offer = (struct offer){i, gain};
    }
    columns->work += (int64_t)columns->takes.count;
}

/* A part too many costs nothing; an unused stick neither. */
static void price_spare(const struct columns *columns, struct offer *offer)
{
    for (size_t row = 0; row < columns->row_count; row++) {
        bool part = row < columns->task->kind_count;
        double gain = part ? -columns->dual[row] : columns->dual[row];

        if (gain > offer->gain)
            *offer = (struct offer){BASIS_SPARE + row, gain};
    }
}

/* The best new filling of each size that gains; the best of all is the offer. */
static void price_new(struct columns *columns, struct offer *offer)
{
    const struct bar_task *task = columns->task;

    columns->work += knapsack_solve(&columns->knapsack, task, columns->dual, columns->counts,
                                    columns->dearest * TINY);
    for (size_t s = 0; s < task->size_count; s++) {
        size_t row = columns->limit_row[s];
        double gain = (row == SIZE_MAX ? 0 : columns->dual[row]) - cost_of_stick(columns, s);

        if (columns->limits[s] == 0)
            continue;
        gain += knapsack_best(&columns->knapsack, task, task->sizes[s].room, columns->scratch);
        if (gain <= columns->dearest * GAIN)
            continue;
        size_t column = add_column(columns, s, columns->scratch);
        if (gain > offer->gain)
            *offer = (struct offer){column, gain};
    }
}

/* ---- a step ---- */

static void fill_entering(struct columns *columns, size_t entering)
{
    memset(columns->entering, 0, columns->row_count * sizeof *columns->entering);
    if (entering >= BASIS_SPARE) {
        size_t row = entering - BASIS_SPARE;

        columns->entering[row] = row < columns->task->kind_count ? -1 : 1;
        return;
    }
    const struct column *column = &columns->pool.at[entering];
    for (size_t i = column->first; i < column->first + column->count; i++)
        columns->entering[columns->takes.at[i].kind] = (double)columns->takes.at[i].count;
    if (columns->limit_row[column->size] != SIZE_MAX)
        columns->entering[columns->limit_row[column->size]] = 1;
}

static void fill_direction(struct columns *columns)
{
    size_t rows = columns->row_count;

    memset(columns->direction, 0, rows * sizeof *columns->direction);
    for (size_t k = 0; k < rows; k++) {
        double entry = columns->entering[k];

        if (entry > -TINY && entry < TINY)
            continue;
        for (size_t row = 0; row < rows; row++)
            columns->direction[row] += columns->inverse[row * rows + k] * entry;
        columns->work += (int64_t)rows;
    }
}

/* The row that reaches 0 first; of equals the one with the largest pivot. row_count: none. */
static size_t leaving_row(const struct columns *columns)
{
    size_t best = columns->row_count;
    double least = 0;

    for (size_t row = 0; row < columns->row_count; row++) {
        double pivot = columns->direction[row];
        double level = columns->level[row] > 0 ? columns->level[row] : 0;

        if (pivot <= 1e-7)
            continue;
        if (best == columns->row_count || level / pivot < least - TINY ||
            (level / pivot < least + TINY && pivot > columns->direction[best])) {
            best = row;
            least = level / pivot;
        }
    }
    return best;
}

static void exchange(struct columns *columns, size_t leaving, const struct offer *offer)
{
    size_t rows = columns->row_count;
    double *pivot_row = &columns->inverse[leaving * rows];
    double pivot = columns->direction[leaving];
    double step = (columns->level[leaving] > 0 ? columns->level[leaving] : 0) / pivot;

    for (size_t i = 0; i < rows; i++)
        pivot_row[i] /= pivot;
    for (size_t row = 0; row < rows; row++) {
        double factor = columns->direction[row];

        if (row == leaving || (factor > -TINY && factor < TINY))
            continue;
        for (size_t i = 0; i < rows; i++)
            columns->inverse[row * rows + i] -= factor * pivot_row[i];
        columns->level[row] -= factor * step;
        columns->work += (int64_t)rows / 2;
    }
    for (size_t i = 0; i < rows; i++)
        columns->dual[i] -= offer->gain * pivot_row[i];
    columns->level[leaving] = step;
    columns->basis[leaving] = offer->column;
}

bool columns_step(struct columns *columns)
{
    double least = columns->dearest * GAIN;
    struct offer offer = {0, least};
    size_t leaving;

    if (columns->pivots++ > PIVOTS_PER_ROW * (int)columns->row_count + 1000)
        return false;
    price_pool(columns, &offer);
    price_spare(columns, &offer);
    if (offer.gain <= least)
        price_new(columns, &offer);
    if (offer.gain <= least)
        return false;
    fill_entering(columns, offer.column);
    fill_direction(columns);
    leaving = leaving_row(columns);
    if (leaving == columns->row_count)
        return false;
    exchange(columns, leaving, &offer);
    return true;
}

double columns_cost(const struct columns *columns)
{
    double cost = 0;

    for (size_t row = 0; row < columns->row_count; row++) {
        size_t basic = columns->basis[row];
        double price = 0;

        if (basic >= BASIS_WANT)
            price = 3 * columns->dearest;
        else if (basic < BASIS_SPARE)
            price = columns->pool.at[basic].cost;
        cost += price * columns->level[row];
    }
    return cost;
}
