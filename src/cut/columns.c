/*
 *  1  inverse * basis = 1, and level = inverse * wanted, not below 0 but for rounding; so that
 *     rounding does not pile up, the inverse is made anew now and then, and before the end
 *  2  dual = cost of the basis * inverse
 *  3  A basic column of the pool takes no more of a kind than is left: each can be cut whole.
 */
#include "cut/columns.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#define TINY 1e-9
#define PIVOT_LEAST 1e-6
#define GAIN 1e-7 /* of the dearest price: columns that gain less are not worth a step */
#define PIVOTS_PER_ROW 60
#define PIVOTS_UNTIL_ANEW 100
#define WANT_COST 1.3 /* of a stick */
#define NEIGHBOURS_MOST 24
#define NEIGHBOURS_SHARE 0.5

/* A stick with as many parts of one kind as it takes, whether there are so many or not: the
 * cheapest for a part, and dearer than any filling that can be cut. */
static struct want want_of(const struct columns *columns, size_t kind)
{
    const struct bar_task *task = columns->task;
    struct want best = {1, 3 * columns->dearest};

    for (size_t s = 0; s < task->size_count; s++) {
        double take = (double)(task->sizes[s].room / task->kinds[kind].length);
        double cost = WANT_COST * (double)task->sizes[s].price + columns->dearest * 1e-5;

        if (task->sizes[s].limit == CUT_ANY && take > 0 && cost * best.take < best.cost * take)
            best = (struct want){take, cost};
    }
    return best;
}

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
                            ARENA_MANY(arena, double, rows), ARENA_MANY(arena, struct basic, rows)};
    columns->matrix = ARENA_MANY(arena, double, rows *rows);
    columns->inverse = ARENA_MANY(arena, double, rows *rows);
    columns->level = ARENA_MANY(arena, double, rows);
    columns->dual = ARENA_MANY(arena, double, rows);
    columns->basis = ARENA_MANY(arena, struct basic, rows);
    columns->direction = ARENA_MANY(arena, double, rows);
    columns->entering = ARENA_MANY(arena, double, rows);
    columns->scratch = ARENA_MANY(arena, int64_t, task->kind_count);
    columns->wants = ARENA_MANY(arena, struct want, task->kind_count);
    for (size_t k = 0; k < task->kind_count; k++)
        columns->wants[k] = want_of(columns, k);
    knapsack_begin(&columns->knapsack, task);
}

static double cost_of_stick(const struct columns *columns, size_t size)
{
    return (double)columns->task->sizes[size].price + columns->dearest * 1e-6;
}

/* ---- the pool ---- */

static uint64_t hash_of(size_t size, const int64_t *takes, size_t count)
{
    uint64_t hash = size;

    for (size_t k = 0; k < count; k++)
        if (takes[k] > 0)
            hash = (hash ^ (k << 8) ^ (uint64_t)takes[k]) * UINT64_C(0x9e3779b97f4a7c15) + k;
    return hash;
}

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

size_t columns_add(struct columns *columns, size_t size, const int64_t *takes)
{
    struct arena *arena = columns->task->arena;
    uint64_t hash = hash_of(size, takes, columns->task->kind_count);
    struct column *column;

    for (size_t i = 0; i < columns->pool.count; i++)
        if (columns->pool.at[i].hash == hash &&
            same_column(columns, &columns->pool.at[i], size, takes))
            return i;
    columns->work += (int64_t)columns->pool.count;
    column = LIST_ADD(arena, &columns->pool);
    *column = (struct column){.size = size,
                              .first = columns->takes.count,
                              .cost = cost_of_stick(columns, size),
                              .hash = hash};
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

/* Every part with its like, every stick unused: a basis that is its own inverse. */
void columns_start(struct columns *columns, const int64_t *counts, const int64_t *limits)
{
    size_t rows = columns->row_count;

    columns->counts = counts;
    columns->limits = limits;
    columns->pivots = columns->since_anew = 0;
    memset(columns->inverse, 0, rows * rows * sizeof *columns->inverse);
    for (size_t row = 0; row < rows; row++) {
        bool part = row < columns->task->kind_count;

        double take = part ? columns->wants[row].take : 1;

        columns->inverse[row * rows + row] = 1 / take;
        columns->basis[row] = (struct basic){part ? BASIC_WANT : BASIC_SPARE, row};
        columns->level[row] = wanted(columns, row) / take;
        columns->dual[row] = part ? columns->wants[row].cost / take : 0;
    }
}

/* ---- cutting some ---- */

static double cost_of_basic(const struct columns *columns, const struct basic *basic)
{
    switch (basic->as) {
    case BASIC_FILLING:
        return columns->pool.at[basic->index].cost;
    case BASIC_SPARE:
        return 0;
    case BASIC_WANT:
        return columns->wants[basic->index].cost;
    case BASIC_DEAR:
    case BASIC_TURNED:
        break;
    }
    return 3 * columns->dearest;
}

/* Changes what a basic filling is, and with it the duals. */
static void make_dear(struct columns *columns, size_t row, enum basic_as as)
{
    size_t rows = columns->row_count;
    double *inverse = &columns->inverse[row * rows];
    double cost = cost_of_basic(columns, &columns->basis[row]);
    double sign = as == BASIC_TURNED ? -1 : 1;

    columns->basis[row].as = as;
    for (size_t i = 0; i < rows; i++) {
        columns->dual[i] -= cost * inverse[i];
        inverse[i] *= sign;
        columns->dual[i] += cost_of_basic(columns, &columns->basis[row]) * inverse[i];
    }
    columns->level[row] *= sign;
    columns->work += (int64_t)rows;
}

void columns_take(struct columns *columns, size_t row, int64_t times)
{
    assert(columns->basis[row].as == BASIC_FILLING);
    columns->level[row] -= (double)times;
}

void columns_settle(struct columns *columns)
{
    for (size_t row = 0; row < columns->row_count; row++) {
        const struct column *column;

        if (columns->basis[row].as != BASIC_FILLING)
            continue;
        column = &columns->pool.at[columns->basis[row].index];
        if (columns->level[row] < -TINY)
            make_dear(columns, row, BASIC_TURNED);
        else if (!columns_times_left(columns, column, columns->counts, columns->limits))
            make_dear(columns, row, BASIC_DEAR);
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
    struct basic basic;
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
            *offer = (struct offer){{BASIC_FILLING, i}, gain};
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
            *offer = (struct offer){{BASIC_SPARE, row}, gain};
    }
}

static void price_filling(struct columns *columns, size_t size, double gain, struct offer *offer)
{
    size_t column = columns_add(columns, size, columns->scratch);

    if (gain > offer->gain)
        *offer = (struct offer){{BASIC_FILLING, column}, gain};
}

/* One part of a kind and the best filling of what is left beside it: for every kind this gives a
 * filling that may gain, all from one table. Those that gain nearly as much as the best are kept
 * for the steps that follow, which then need no table of their own. */
static void keep_neighbours(struct columns *columns, size_t size, double charge, double best)
{
    const struct bar_task *task = columns->task;
    struct knapsack *knapsack = &columns->knapsack;
    int kept = 0;

    for (size_t k = 0; k < task->kind_count && kept < NEIGHBOURS_MOST && knapsack->value; k++) {
        int64_t room = task->sizes[size].room - task->kinds[k].length;

        if (room < 0 || columns->counts[k] == 0 ||
            columns->dual[k] + knapsack->value[room] - charge < best * NEIGHBOURS_SHARE)
            continue;
        knapsack_best(knapsack, task, room, columns->scratch);
        columns->work += (int64_t)knapsack->bundle_count;
        if (++columns->scratch[k] > columns->counts[k])
            continue;
        columns_add(columns, size, columns->scratch);
        kept++;
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
        double charge = cost_of_stick(columns, s) - (row == SIZE_MAX ? 0 : columns->dual[row]);
        double gain;

        if (columns->limits[s] == 0)
            continue;
        gain =
            knapsack_best(&columns->knapsack, task, task->sizes[s].room, columns->scratch) - charge;
        if (gain <= columns->dearest * GAIN)
            continue;
        price_filling(columns, s, gain, offer);
        keep_neighbours(columns, s, charge, gain);
    }
}

/* ---- exchange ---- */

/* The column of what stands, or shall stand, in the basis; `step` apart in memory. */
static void write_column(const struct columns *columns, const struct basic *basic, double *to,
                         size_t step)
{
    const struct column *column;
    double sign = basic->as == BASIC_TURNED ? -1 : 1;

    for (size_t i = 0; i < columns->row_count; i++)
        to[i * step] = 0;
    if (basic->as == BASIC_SPARE || basic->as == BASIC_WANT) {
        bool part = basic->index < columns->task->kind_count;

        to[basic->index * step] = basic->as == BASIC_WANT ? columns->wants[basic->index].take
                                  : part                  ? -1
                                                          : 1;
        return;
    }
    column = &columns->pool.at[basic->index];
    for (size_t i = column->first; i < column->first + column->count; i++)
        to[columns->takes.at[i].kind * step] = sign * (double)columns->takes.at[i].count;
    if (columns->limit_row[column->size] != SIZE_MAX)
        to[columns->limit_row[column->size] * step] = sign;
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

/* The row that reaches 0 first; of those that are as good as first, the one with the largest pivot.
 * row_count: none. */
static size_t leaving_row(const struct columns *columns)
{
    size_t best = columns->row_count;
    double first = 0;

    for (size_t row = 0; row < columns->row_count; row++) {
        double pivot = columns->direction[row];
        double level = columns->level[row] > 0 ? columns->level[row] : 0;

        if (pivot <= PIVOT_LEAST)
            continue;
        if (best == columns->row_count || (level + TINY) / pivot < first)
            first = (level + TINY) / pivot;
        best = row;
    }
    for (size_t row = 0; row < columns->row_count; row++)
        if (columns->direction[row] > PIVOT_LEAST &&
            columns->level[row] <= first * columns->direction[row] &&
            (columns->level[best] > first * columns->direction[best] ||
             columns->direction[row] > columns->direction[best]))
            best = row;
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
    columns->basis[leaving] = offer->basic;
    columns->since_anew++;
}

/* ---- the inverse anew ---- */

static void swap_rows(double *matrix, size_t rows, size_t a, size_t b)
{
    for (size_t i = 0; i < rows; i++) {
        double kept = matrix[a * rows + i];

        matrix[a * rows + i] = matrix[b * rows + i];
        matrix[b * rows + i] = kept;
    }
}

static void subtract_row(double *matrix, size_t rows, size_t from, size_t row, double factor)
{
    for (size_t i = 0; i < rows; i++)
        matrix[from * rows + i] -= factor * matrix[row * rows + i];
}

/* One column of the Gauss-Jordan method; false where the basis has no inverse. */
static bool clear_column(double *matrix, double *inverse, size_t rows, size_t column)
{
    size_t best = column;
    double pivot;

    for (size_t row = column; row < rows; row++)
        if (fabs(matrix[row * rows + column]) > fabs(matrix[best * rows + column]))
            best = row;
    pivot = matrix[best * rows + column];
    if (fabs(pivot) < TINY)
        return false;
    swap_rows(matrix, rows, best, column);
    swap_rows(inverse, rows, best, column);
    for (size_t i = 0; i < rows; i++) {
        matrix[column * rows + i] /= pivot;
        inverse[column * rows + i] /= pivot;
    }
    for (size_t row = 0; row < rows; row++) {
        double factor = matrix[row * rows + column];

        if (row == column || (factor > -1e-14 && factor < 1e-14))
            continue;
        subtract_row(matrix, rows, row, column, factor);
        subtract_row(inverse, rows, row, column, factor);
    }
    return true;
}

static void levels_and_duals_anew(struct columns *columns)
{
    size_t rows = columns->row_count;

    memset(columns->dual, 0, rows * sizeof *columns->dual);
    for (size_t row = 0; row < rows; row++) {
        double cost = cost_of_basic(columns, &columns->basis[row]);
        double level = 0;

        for (size_t i = 0; i < rows; i++) {
            level += columns->inverse[row * rows + i] * wanted(columns, i);
            columns->dual[i] += cost * columns->inverse[row * rows + i];
        }
        columns->level[row] = level;
    }
}

static void make_anew(struct columns *columns)
{
    size_t rows = columns->row_count;

    columns->since_anew = 0;
    columns->work += (int64_t)(rows * rows * rows / 2);
    memset(columns->inverse, 0, rows * rows * sizeof *columns->inverse);
    for (size_t row = 0; row < rows; row++) {
        columns->inverse[row * rows + row] = 1;
        write_column(columns, &columns->basis[row], &columns->matrix[row], rows);
    }
    for (size_t column = 0; column < rows; column++)
        if (!clear_column(columns->matrix, columns->inverse, rows, column)) {
            columns_start(columns, columns->counts, columns->limits);
            return;
        }
    levels_and_duals_anew(columns);
}

/* ---- a step ---- */

static struct offer best_offer(struct columns *columns, double least)
{
    struct offer offer = {{BASIC_SPARE, 0}, least};

    price_pool(columns, &offer);
    price_spare(columns, &offer);
    if (offer.gain <= least)
        price_new(columns, &offer);
    return offer;
}

bool columns_step(struct columns *columns)
{
    double least = columns->dearest * GAIN;
    struct offer offer;
    size_t leaving;

    if (columns->pivots++ > PIVOTS_PER_ROW * (int)columns->row_count + 1000)
        return false;
    if (columns->since_anew >= PIVOTS_UNTIL_ANEW)
        make_anew(columns);
    offer = best_offer(columns, least);
    if (offer.gain <= least && columns->since_anew > PIVOTS_UNTIL_ANEW / 4) {
        make_anew(columns);
        return true;
    }
    if (offer.gain <= least)
        return false;
    write_column(columns, &offer.basic, columns->entering, 1);
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

    for (size_t row = 0; row < columns->row_count; row++)
        cost += cost_of_basic(columns, &columns->basis[row]) * columns->level[row];
    return cost;
}
