/*
 *  1  inverse * basis = 1, and level = inverse * wanted, not below 0 but for rounding; so that
 *     rounding does not pile up, the inverse is made anew now and then, and before the end
 *  2  dual = cost of the basis * inverse
 *  3  A basic column of the pool takes no more of a kind than is left: each can be cut whole.
 *
 * A want is cheap at first: a trifle dearer than its parts are worth by their length. That keeps
 * every dual near that worth, and so the fillings that waste least are found first; where many
 * kinds make the relaxation degenerate it saves most of the steps. Wants that are still there when
 * no filling gains become dearer, stage by stage (du Merle, Villeneuve, Desrosiers and Hansen,
 * "Stabilized column generation", 1999, with only the upper half of their boxes).
 */
#include "cut/columns.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#define TINY 1e-9
#define DEAR 3           /* what must go costs so many of the dearest sticks */
#define WANT_TRIFLE 1e-5 /* the trifle of a stick for a want: more than that of a filling */
#define PIVOT_LEAST 1e-6
#define GAIN 1e-7         /* of the dearest price: columns that gain less are not worth a step */
#define PIVOTS_PER_ROW 60 /* that end the method, and PIVOTS_LEAST in any case */
#define PIVOTS_LEAST 1000
#define PIVOTS_UNTIL_ANEW 100 /* or as many as there are rows */
#define WANT_COST 1.3         /* of a stick */
#define SCALE_GAIN 1000       /* of all parts once more, in sticks: trifles are small beside it */
#define NEIGHBOURS_MOST 24
#define NEIGHBOURS_SHARE 0.5

/* What a want costs at each stage but the last, for what its parts are worth by their length. */
static const double eagerness[] = {1.02, 1.08, 1.32};

#define LAST_STAGE ((int)(sizeof eagerness / sizeof *eagerness))

/* A stick with as many parts of one kind as it takes, whether there are so many or not: the
 * cheapest for a part, and dearer than any filling that can be cut. */
static struct want want_of(const struct columns *columns, size_t kind)
{
    assert(kind < columns->task->kind_count);

    const struct bar_task *task = columns->task;
    struct want best = {1, DEAR * columns->dearest};

    for (size_t s = 0; s < task->size_count; s++) {
        int64_t whole = task->sizes[s].room / task->kinds[kind].length;
        double take = (double)whole;
        double cost = WANT_COST * (double)task->sizes[s].price + columns->dearest * WANT_TRIFLE;

        if (task->sizes[s].limit == CUT_ANY && take > 0 && cost * best.take < best.cost * take)
            best = (struct want){take, cost};
    }
    return best;
}

static double least_by_length(const struct bar_task *task)
{
    double least = 0;

    for (size_t s = 0; s < task->size_count; s++) {
        double price = (double)task->sizes[s].price / (double)task->sizes[s].room;

        if (task->sizes[s].limit == CUT_ANY && (least <= 0 || price < least))
            least = price;
    }
    return least;
}

static void begin(struct columns *columns, const struct bar_task *task)
{
    struct arena *arena = task->arena;
    size_t rows = task->kind_count;

    assert(task->kind_count > 0 && task->size_count > 0);
    *columns = (struct columns){.task = task, .dearest = 1};
    columns->limit_row = ARENA_MANY(arena, size_t, task->size_count);
    for (size_t s = 0; s < task->size_count; s++) {
        columns->limit_row[s] = task->sizes[s].limit == CUT_ANY ? SIZE_MAX : rows++;
        if ((double)task->sizes[s].price > columns->dearest)
            columns->dearest = (double)task->sizes[s].price;
    }
    columns->row_count = rows;
    columns->least_by_length = least_by_length(task);
    columns->kept = (struct kept_basis){
        ARENA_MANY(arena, double, rows *rows), ARENA_MANY(arena, double, rows),
        ARENA_MANY(arena, double, rows), ARENA_MANY(arena, struct basic, rows), LAST_STAGE};
    columns->waiting = ARENA_MANY(arena, struct basic, rows);
    columns->closed = ARENA_MANY(arena, bool, rows);
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
}

void columns_begin(struct columns *columns, const struct bar_task *task)
{
    begin(columns, task);
    knapsack_begin(&columns->knapsack, task);
}

void columns_begin_closed(struct columns *columns, const struct bar_task *task, const bool *barred)
{
    begin(columns, task);
    columns->barred = barred;
}

static double cost_of_stick(const struct columns *columns, size_t size)
{
    assert(size < columns->task->size_count);
    return (double)columns->task->sizes[size].price + columns->dearest * COLUMNS_TRIFLE;
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

    assert(size < columns->task->size_count);
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
        return columns->scaling ? 0 : (double)columns->counts[row];
    for (size_t s = 0; s < columns->task->size_count; s++)
        if (columns->limit_row[s] == row)
            return (double)columns->limits[s];
    return 0;
}

static double cost_of_want(const struct columns *columns, size_t kind)
{
    const struct want *want = &columns->wants[kind];
    double cost;

    if (columns->scaling)
        return DEAR * SCALE_GAIN * columns->dearest;
    if (columns->stage == LAST_STAGE)
        return want->cost;
    cost = eagerness[columns->stage] * columns->least_by_length * want->take *
           (double)columns->task->kinds[kind].length;
    return cost < want->cost ? cost : want->cost;
}

/* Every part with its like, every stick unused: a basis that is its own inverse. */
static void start(struct columns *columns, const int64_t *counts, const int64_t *limits)
{
    size_t rows = columns->row_count;

    columns->counts = counts;
    columns->limits = limits;
    columns->pivots = columns->since_anew = 0;
    columns->stage = columns->least_by_length > 0 ? 0 : LAST_STAGE;
    memset(columns->inverse, 0, rows * rows * sizeof *columns->inverse);
    for (size_t row = 0; row < rows; row++) {
        bool part = row < columns->task->kind_count;

        double take = part ? columns->wants[row].take : 1;

        columns->inverse[row * rows + row] = 1 / take;
        columns->basis[row] = (struct basic){part ? BASIC_WANT : BASIC_SPARE, row};
        columns->level[row] = wanted(columns, row) / take;
        columns->dual[row] = part ? cost_of_want(columns, row) / take : 0;
    }
}

void columns_start(struct columns *columns, const int64_t *counts, const int64_t *limits)
{
    columns->scaling = false;
    start(columns, counts, limits);
}

/* Wants are at their dearest, and a scale gains less than any want costs: it grows by fillings
 * only. */
void columns_start_scaling(struct columns *columns, const int64_t *counts, const int64_t *limits)
{
    for (size_t s = 0; s < columns->task->size_count; s++)
        assert(columns->limit_row[s] != SIZE_MAX);
    columns->scaling = true;
    start(columns, counts, limits);
}

double columns_scale(const struct columns *columns)
{
    for (size_t row = 0; row < columns->row_count; row++)
        if (columns->basis[row].as == BASIC_SCALE)
            return columns->level[row];
    return 0;
}

/* ---- cutting some ---- */

static double cost_of_basic(const struct columns *columns, const struct basic *basic)
{
    switch (basic->as) {
    case BASIC_FILLING:
        return columns->pool.at[basic->index].cost;
    case BASIC_SPARE:
        return 0;
    case BASIC_SCALE:
        return -SCALE_GAIN * columns->dearest;
    case BASIC_WANT:
        return cost_of_want(columns, basic->index);
    case BASIC_DEAR:
    case BASIC_TURNED:
        break;
    }
    return DEAR * columns->dearest;
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

static struct kept_basis now(const struct columns *columns)
{
    return (struct kept_basis){columns->inverse, columns->level, columns->dual, columns->basis,
                               columns->stage};
}

static void copy_basis(const struct columns *columns, struct kept_basis *to,
                       const struct kept_basis *from)
{
    size_t rows = columns->row_count;

    to->stage = from->stage;
    memcpy(to->inverse, from->inverse, rows * rows * sizeof *to->inverse);
    memcpy(to->level, from->level, rows * sizeof *to->level);
    memcpy(to->dual, from->dual, rows * sizeof *to->dual);
    memcpy(to->basis, from->basis, rows * sizeof *to->basis);
}

void columns_keep(struct columns *columns)
{
    const struct kept_basis from = now(columns);

    copy_basis(columns, &columns->kept, &from);
}

void columns_back(struct columns *columns, const int64_t *counts, const int64_t *limits)
{
    struct kept_basis to = now(columns);

    copy_basis(columns, &to, &columns->kept);
    columns->stage = to.stage;
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

static bool can_be_cut(const struct columns *columns, size_t index)
{
    assert(index < columns->pool.count);

    const struct column *column = &columns->pool.at[index];

    if (columns->barred)
        return !columns->barred[index] && columns->limits[column->size] != 0;
    return columns_times_left(columns, column, columns->counts, columns->limits) > 0;
}

static void price_pool(struct columns *columns, struct offer *offer)
{
    for (size_t i = 0; i < columns->pool.count; i++) {
        double gain = gain_of(columns, &columns->pool.at[i]);

        if (gain > offer->gain && can_be_cut(columns, i))
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

/* All parts once more are worth their price. */
static void price_scale(const struct columns *columns, struct offer *offer)
{
    double gain = SCALE_GAIN * columns->dearest;

    for (size_t k = 0; k < columns->task->kind_count; k++)
        gain -= columns->dual[k] * (double)columns->counts[k];
    if (columns->scaling && gain > offer->gain)
        *offer = (struct offer){{BASIC_SCALE, 0}, gain};
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

/* The column of what stands, or shall stand, in the basis. */
static void write_column(struct columns *columns, const struct basic *basic)
{
    const struct column *column;
    double sign = basic->as == BASIC_TURNED ? -1 : 1;
    double *to = columns->entering;

    memset(to, 0, columns->row_count * sizeof *to);
    if (basic->as == BASIC_SCALE) {
        for (size_t k = 0; k < columns->task->kind_count; k++)
            to[k] = -(double)columns->counts[k];
        return;
    }
    if (basic->as == BASIC_SPARE || basic->as == BASIC_WANT) {
        bool part = basic->index < columns->task->kind_count;

        to[basic->index] = basic->as == BASIC_WANT ? columns->wants[basic->index].take
                           : part                  ? -1
                                                   : 1;
        return;
    }
    column = &columns->pool.at[basic->index];
    for (size_t i = column->first; i < column->first + column->count; i++)
        to[columns->takes.at[i].kind] = sign * (double)columns->takes.at[i].count;
    if (columns->limit_row[column->size] != SIZE_MAX)
        to[columns->limit_row[column->size]] = sign;
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

/* In fours, which compilers turn into vectors: this is most of what a step costs. */
static void subtract_row(double *restrict from, const double *restrict row, double factor,
                         size_t count)
{
    size_t i = 0;

    for (; i + 4 <= count; i += 4) {
        from[i] -= factor * row[i];
        from[i + 1] -= factor * row[i + 1];
        from[i + 2] -= factor * row[i + 2];
        from[i + 3] -= factor * row[i + 3];
    }
    for (; i < count; i++)
        from[i] -= factor * row[i];
}

/* Makes the direction a unit column of `row`, in the whole inverse. */
static void turn_inverse(struct columns *columns, size_t row)
{
    size_t rows = columns->row_count;
    double *pivot_row = &columns->inverse[row * rows];

    assert(row < rows && columns->direction[row] != 0);
    for (size_t i = 0; i < rows; i++)
        pivot_row[i] /= columns->direction[row];
    for (size_t other = 0; other < rows; other++) {
        double factor = columns->direction[other];
        double *other_row = &columns->inverse[other * rows];

        if (other == row || (factor > -TINY && factor < TINY))
            continue;
        subtract_row(other_row, pivot_row, factor, rows);
        columns->work += (int64_t)rows / 3;
    }
}

static void exchange(struct columns *columns, size_t leaving, const struct offer *offer)
{
    assert(leaving < columns->row_count);

    double *level = columns->level;
    double step = (level[leaving] > 0 ? level[leaving] : 0) / columns->direction[leaving];

    turn_inverse(columns, leaving);
    for (size_t row = 0; row < columns->row_count; row++) {
        level[row] -= columns->direction[row] * step;
        columns->dual[row] -= offer->gain * columns->inverse[leaving * columns->row_count + row];
    }
    level[leaving] = step;
    columns->basis[leaving] = offer->basic;
    columns->since_anew++;
}

/* ---- the inverse anew ---- */

/* Rows of a column that have no basic column yet; of a spare or a want none, so that they come
 * first. */
static size_t open_rows(const struct columns *columns, const struct basic *basic)
{
    const struct column *column;
    size_t open = 0;

    if (basic->as == BASIC_SPARE || basic->as == BASIC_WANT)
        return 0;
    if (basic->as == BASIC_SCALE)
        return columns->row_count;
    column = &columns->pool.at[basic->index];
    for (size_t i = column->first; i < column->first + column->count; i++)
        open += !columns->closed[columns->takes.at[i].kind];
    if (columns->limit_row[column->size] != SIZE_MAX)
        open += !columns->closed[columns->limit_row[column->size]];
    return open;
}

/* Takes one of the first `count` waiting columns, with the fewest open rows: what comes in early
 * fills little of the inverse. */
static struct basic take_waiting(struct columns *columns, size_t count)
{
    size_t best = 0, fewest = SIZE_MAX;
    struct basic taken;

    for (size_t i = 0; i < count && fewest > 0; i++) {
        size_t open = open_rows(columns, &columns->waiting[i]);

        if (open < fewest) {
            best = i;
            fewest = open;
        }
    }
    columns->work += (int64_t)count;
    taken = columns->waiting[best];
    columns->waiting[best] = columns->waiting[count - 1];
    return taken;
}

/* Puts a column into the open row where its pivot is largest; false where it has none. */
static bool enter_anew(struct columns *columns, const struct basic *basic)
{
    size_t best = columns->row_count;

    write_column(columns, basic);
    fill_direction(columns);
    for (size_t row = 0; row < columns->row_count; row++)
        if (!columns->closed[row] &&
            (best == columns->row_count ||
             fabs(columns->direction[row]) > fabs(columns->direction[best])))
            best = row;
    if (best == columns->row_count || fabs(columns->direction[best]) < TINY)
        return false;
    turn_inverse(columns, best);
    columns->basis[best] = *basic;
    columns->closed[best] = true;
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
    columns->work += (int64_t)(rows * rows);
}

/* From the unit matrix, one basic column after the other. */
static void make_anew(struct columns *columns)
{
    size_t rows = columns->row_count;

    columns->since_anew = 0;
    memset(columns->inverse, 0, rows * rows * sizeof *columns->inverse);
    memset(columns->closed, 0, rows * sizeof *columns->closed);
    memcpy(columns->waiting, columns->basis, rows * sizeof *columns->basis);
    for (size_t row = 0; row < rows; row++)
        columns->inverse[row * rows + row] = 1;
    for (size_t count = rows; count > 0; count--) {
        struct basic basic = take_waiting(columns, count);

        if (!enter_anew(columns, &basic)) {
            start(columns, columns->counts, columns->limits);
            return;
        }
    }
    levels_and_duals_anew(columns);
}

/* ---- a step ---- */

static struct offer best_offer(struct columns *columns, double least)
{
    struct offer offer = {{BASIC_SPARE, 0}, least};

    price_pool(columns, &offer);
    price_spare(columns, &offer);
    price_scale(columns, &offer);
    if (offer.gain <= least && !columns->barred)
        price_new(columns, &offer);
    return offer;
}

/* Parts are still wanted: makes them dearer. False at the last stage, or where all are cut. */
static bool raise_wants(struct columns *columns)
{
    bool wanting = false;

    for (size_t row = 0; row < columns->row_count; row++)
        wanting = wanting || (columns->basis[row].as == BASIC_WANT && columns->level[row] > TINY);
    if (!wanting || columns->stage == LAST_STAGE)
        return false;
    columns->stage++;
    levels_and_duals_anew(columns);
    return true;
}

static int pivots_until_anew(const struct columns *columns)
{
    int rows = (int)columns->row_count;

    return rows > PIVOTS_UNTIL_ANEW ? rows : PIVOTS_UNTIL_ANEW;
}

bool columns_step(struct columns *columns)
{
    double least = columns->dearest * GAIN;
    struct offer offer;
    size_t leaving;

    assert(columns->counts && columns->limits); /* it was started */
    columns->work += 8 * (int64_t)columns->row_count + (int64_t)columns->pool.count;
    if (columns->pivots++ > PIVOTS_PER_ROW * (int)columns->row_count + PIVOTS_LEAST)
        return false;
    if (columns->since_anew >= pivots_until_anew(columns))
        make_anew(columns);
    offer = best_offer(columns, least);
    if (offer.gain <= least && raise_wants(columns))
        return true;
    if (offer.gain <= least && columns->since_anew > PIVOTS_UNTIL_ANEW / 4) {
        make_anew(columns);
        return true;
    }
    if (offer.gain <= least)
        return false;
    write_column(columns, &offer.basic);
    fill_direction(columns);
    leaving = leaving_row(columns);
    if (leaving == columns->row_count)
        return false;
    exchange(columns, leaving, &offer);
    return true;
}

/* What is wanted counts at its last stage: it must not look cheaper than cutting it. */
double columns_cost(const struct columns *columns)
{
    double cost = 0;

    for (size_t row = 0; row < columns->row_count; row++) {
        const struct basic *basic = &columns->basis[row];

        cost += columns->level[row] * (basic->as == BASIC_WANT ? columns->wants[basic->index].cost
                                                               : cost_of_basic(columns, basic));
    }
    return cost;
}
