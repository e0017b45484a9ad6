/*
 * A state is what is left of parts and sticks, and the fillings that are not barred. Where its
 * relaxation leaves parts unpacked, the duals are values of the parts; when the sticks, each by its
 * fullest filling, hold less of them than the parts have, in whole numbers, the state is given up.
 * Else one filling that is cut a broken number of times is barred, and each whole number of it is a
 * state: the nearest first. Before all that, cuts (below) narrow the relaxation of the first state;
 * a cut is a further row that the fillings must give enough of, as if it were a kind of part.
 *
 *  1  left and limits are what is left; chosen holds what was taken, each filling once
 *  2  barred[i] exactly where an open branch chooses how often filling i is cut
 *  3  gives, the wanted of cuts, and all that gives a state up are whole numbers; floating point
 *     proposes only what to look at
 */
#include "cut/bars_pool.h"

#include "base/whole.h"
#include "cut/columns.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#define VALUE_SCALE 1e9 /* of a dual; what a part unpacked costs is a few units */
#define VALUE_MOST 1e13
#define CUTS_MOST 40
#define CUTS_A_ROUND 8
#define ROUNDS_MOST 12
#define WHOLES_MOST 400 /* multipliers come in at most so many parts of one */
#define IN_PARTS 1e-5   /* nearer than this to a whole number of parts is one */
#define CUT_LEAST 0.02  /* a cut takes so much away, or is not worth a row */
#define PARTLY 1e-3     /* of a part: less is rounding */
#define WHOLE 1e-6      /* nearer to a whole number is one */

struct chosen {
    size_t filling;
    int64_t times;
};

/* A filling whose number is chosen: `chosen` was taken before it. Whole numbers from `up` on and
 * from `down` on are to be tried, by turns. */
struct branch {
    size_t filling, chosen;
    int64_t most, up, down;
    bool falls; /* next */
};

/* What each row and the limit of each size counts in a new row, in parts of `whole`. */
struct multipliers {
    int64_t *of_row, *of_size;
    int64_t whole;
};

struct bar_pool {
    const struct bar_task *task;
    struct bar_task wide; /* the task with rows for cuts as further kinds */
    struct columns columns;
    size_t row_count; /* kinds and the cuts so far */
    bool *barred;
    int64_t *gives;          /* by cut and filling: what it gives of the cut's row */
    size_t room;             /* of barred, and of gives for one cut */
    struct multipliers next; /* scratch */
    int64_t *left;           /* of each row; below 0 where more was cut */
    int64_t *counts;         /* the same, not below 0 */
    int64_t *limits;
    int64_t *values;       /* by row: that refuted a state, the last time */
    int64_t *takes, *held; /* scratch: by row; by size */
    bool *loose;           /* scratch, by row of the relaxation: its cut is */
    LIST_OF(struct chosen) chosen;
    LIST_OF(struct branch) branches; /* that are open, each in a state of the one before */
    const struct bar_plan *fillings;
    int64_t work_most;
    int round;     /* of cuts */
    bool begun;    /* the first state was looked at */
    bool complete; /* so far: no state was left undecided */
};

/* Rows for cuts are kinds of which nothing is wanted yet. */
static void widen(struct bar_pool *pool)
{
    const struct bar_task *task = pool->task;
    size_t rows = task->kind_count + CUTS_MOST;

    pool->wide = *task;
    pool->wide.kind_count = rows;
    pool->wide.kinds = ARENA_MANY(task->arena, struct bar_kind, rows);
    memcpy(pool->wide.kinds, task->kinds, task->kind_count * sizeof *task->kinds);
    for (size_t k = task->kind_count; k < rows; k++)
        pool->wide.kinds[k].length = 1;
}

struct bar_pool *bar_pool_begin(const struct bar_task *task)
{
    struct bar_pool *pool = ARENA_NEW(task->arena, struct bar_pool);
    size_t rows = task->kind_count + CUTS_MOST;

    pool->task = task;
    widen(pool);
    pool->left = ARENA_MANY(task->arena, int64_t, rows);
    pool->counts = ARENA_MANY(task->arena, int64_t, rows);
    pool->takes = ARENA_MANY(task->arena, int64_t, rows);
    pool->values = ARENA_MANY(task->arena, int64_t, rows);
    pool->limits = ARENA_MANY(task->arena, int64_t, task->size_count);
    pool->held = ARENA_MANY(task->arena, int64_t, task->size_count);
    pool->next.of_row = ARENA_MANY(task->arena, int64_t, rows);
    pool->next.of_size = ARENA_MANY(task->arena, int64_t, task->size_count);
    columns_begin_closed(&pool->columns, &pool->wide, NULL);
    pool->loose = ARENA_MANY(task->arena, bool, pool->columns.row_count);
    return pool;
}

/* What the fillings take, and what they give of the rows of cuts. */
static void read_fillings(struct bar_pool *pool)
{
    const struct bar_plan *fillings = pool->fillings;
    int64_t *takes = pool->takes;

    pool->columns.pool.count = pool->columns.takes.count = 0;
    for (size_t i = 0; i < fillings->fillings.count; i++) {
        const struct bar_filling *filling = &fillings->fillings.at[i];

        memset(takes, 0, pool->wide.kind_count * sizeof *takes);
        for (size_t j = filling->first; j < filling->first + filling->count; j++)
            takes[fillings->takes.at[j].kind] = fillings->takes.at[j].count;
        for (size_t row = pool->task->kind_count; row < pool->row_count; row++)
            takes[row] = pool->gives[(row - pool->task->kind_count) * pool->room + i];
        columns_add(&pool->columns, filling->size, takes);
    }
}

/* ---- giving a state up ---- */

static int64_t value_of(const struct bar_pool *pool, const struct column *column)
{
    int64_t value = 0;

    for (size_t i = column->first; i < column->first + column->count; i++)
        value += pool->columns.takes.at[i].count * pool->values[pool->columns.takes.at[i].kind];
    return value;
}

/* By the values: do all sticks left hold less than the parts left have? Each holds no more than by
 * its fullest filling. */
static bool holds_too_little(struct bar_pool *pool)
{
    const struct columns *columns = &pool->columns;
    int64_t wanted = 0, held = 0;

    for (size_t k = 0; k < pool->row_count; k++)
        wanted += pool->values[k] * pool->counts[k];
    memset(pool->held, 0, pool->task->size_count * sizeof *pool->held);
    for (size_t i = 0; i < columns->pool.count; i++) {
        size_t size = columns->pool.at[i].size;
        int64_t value = pool->barred[i] ? 0 : value_of(pool, &columns->pool.at[i]);

        if (value > pool->held[size])
            pool->held[size] = value;
    }
    for (size_t s = 0; s < pool->task->size_count; s++)
        held += pool->limits[s] * pool->held[s];
    pool->columns.work += (int64_t)columns->takes.count;
    return held < wanted;
}

/* The duals as whole values. */
static bool is_refuted(struct bar_pool *pool)
{
    for (size_t k = 0; k < pool->row_count; k++) {
        double value = pool->columns.dual[k] / pool->columns.dearest * VALUE_SCALE;

        pool->values[k] = value > 0 ? (int64_t)fmin(value, VALUE_MOST) : 0;
    }
    return holds_too_little(pool);
}

/* ---- taking some ---- */

static void take(struct bar_pool *pool, size_t filling, int64_t times)
{
    assert(filling < pool->columns.pool.count);

    const struct column *column = &pool->columns.pool.at[filling];

    for (size_t i = column->first; i < column->first + column->count; i++) {
        const struct bar_take *take = &pool->columns.takes.at[i];

        pool->left[take->kind] -= times * take->count;
        pool->counts[take->kind] = pool->left[take->kind] > 0 ? pool->left[take->kind] : 0;
    }
    pool->limits[column->size] -= times;
}

static void choose(struct bar_pool *pool, size_t filling, int64_t times)
{
    take(pool, filling, times);
    *LIST_ADD(pool->task->arena, &pool->chosen) = (struct chosen){filling, times};
}

static void give_back(struct bar_pool *pool, size_t chosen)
{
    assert(chosen <= pool->chosen.count);
    while (pool->chosen.count > chosen) {
        const struct chosen *last = &pool->chosen.at[--pool->chosen.count];

        take(pool, last->filling, -last->times);
    }
}

static bool nothing_left(const struct bar_pool *pool)
{
    for (size_t k = 0; k < pool->row_count; k++)
        if (pool->counts[k] > 0)
            return false;
    return true;
}

/* More than this of a filling takes no more parts. */
static int64_t times_of_use(const struct bar_pool *pool, size_t filling)
{
    assert(filling < pool->columns.pool.count);

    const struct column *column = &pool->columns.pool.at[filling];
    int64_t times = 0;

    for (size_t i = column->first; i < column->first + column->count; i++) {
        const struct bar_take *take = &pool->columns.takes.at[i];
        int64_t all = whole_divide_up(pool->counts[take->kind], take->count);

        times = all > times ? all : times;
    }
    return times < pool->limits[column->size] ? times : pool->limits[column->size];
}

/* ---- states ---- */

/* How often the filling of a row is cut; 0 where none stands in it. */
static double times_in(const struct bar_pool *pool, size_t row)
{
    assert(row < pool->columns.row_count);
    return pool->columns.basis[row].as == BASIC_FILLING ? pool->columns.level[row] : 0;
}

/* Solves the relaxation of the state; false when it cannot be packed in fractions, proven. */
static bool relax(struct bar_pool *pool)
{
    struct columns *columns = &pool->columns;

    columns_start(columns, pool->counts, pool->limits);
    while (columns->work < pool->work_most && columns_step(columns) &&
           columns_cost(columns) > PARTLY)
        ;
    return columns_cost(columns) <= PARTLY || !is_refuted(pool);
}

/* The row whose filling is farthest above a whole number; row_count where all are whole. */
static size_t broken_row(const struct bar_pool *pool)
{
    size_t best = pool->columns.row_count;
    double most = WHOLE;

    for (size_t row = 0; row < pool->columns.row_count; row++) {
        double times = times_in(pool, row);
        double above = times - floor(times + WHOLE);

        if (above > most) {
            most = above;
            best = row;
        }
    }
    return best;
}

/* All that the relaxation cuts, in whole numbers: is anything left? */
static bool all_is_whole(struct bar_pool *pool)
{
    size_t chosen = pool->chosen.count;
    bool fits = true;

    for (size_t row = 0; row < pool->columns.row_count; row++) {
        int64_t times = (int64_t)(times_in(pool, row) + 0.5);

        if (times > 0)
            choose(pool, pool->columns.basis[row].index, times);
    }
    for (size_t s = 0; s < pool->task->size_count; s++)
        fits = fits && pool->limits[s] >= 0;
    if (fits && nothing_left(pool))
        return true;
    give_back(pool, chosen);
    return false;
}

enum look { LOOK_FOUND, LOOK_DEAD, LOOK_OPEN };

/* Makes a branch of a filling that none is open for: each number of times that it may be cut
 * becomes a state, beginning around `below`. */
static void branch_on(struct bar_pool *pool, size_t filling, int64_t below)
{
    assert(filling < pool->columns.pool.count);
    assert(!pool->barred[filling]);
    pool->barred[filling] = true;
    *LIST_ADD(pool->task->arena, &pool->branches) =
        (struct branch){.filling = filling,
                        .chosen = pool->chosen.count,
                        .most = times_of_use(pool, filling),
                        .up = below + 1,
                        .down = below};
}

static enum look look_at_state(struct bar_pool *pool)
{
    struct columns *columns = &pool->columns;
    size_t row;

    if (nothing_left(pool))
        return LOOK_FOUND;
    if (holds_too_little(pool) || !relax(pool)) /* the values of the last state are tried first */
        return LOOK_DEAD;
    row = broken_row(pool);
    if (row == columns->row_count && all_is_whole(pool))
        return LOOK_FOUND;
    if (row == columns->row_count) {
        pool->complete = false;
        return LOOK_DEAD;
    }
    branch_on(pool, columns->basis[row].index, (int64_t)floor(times_in(pool, row)));
    return LOOK_OPEN;
}

/* How often a branch's filling is cut next: the nearest first; false when all was tried. */
static bool next_times(struct branch *branch, int64_t *ret_times)
{
    while (branch->up <= branch->most || branch->down >= 0) {
        *ret_times = branch->falls ? branch->down-- : branch->up++;
        branch->falls = !branch->falls;
        if (*ret_times >= 0 && *ret_times <= branch->most)
            return true;
    }
    return false;
}

/* One state more: the next of the last branch that has any. */
static enum look look_on(struct bar_pool *pool)
{
    struct branch *last = &pool->branches.at[pool->branches.count - 1];
    int64_t times;

    assert(pool->branches.count > 0 && pool->barred[last->filling]); /* invariant 2 */
    give_back(pool, last->chosen);
    if (!next_times(last, &times)) {
        pool->barred[last->filling] = false;
        pool->branches.count--;
        return LOOK_DEAD;
    }
    choose(pool, last->filling, times);
    return look_at_state(pool);
}

/* ---- cuts ---- */

/*
 * Every row says that fillings give at least so much of something, and every size that at most so
 * many sticks are cut. Any sum of these with multipliers not below 0 holds as well, and as fillings
 * are cut whole times, it still holds when all that it counts is rounded up (Gomory, "Outline of an
 * algorithm for integer solutions to linear programs", 1958; Chvatal, "Edmonds polytopes and a
 * hierarchy of combinatorial problems", 1973). The multipliers come from a broken row of the
 * inverse; what they give is counted in whole numbers.
 */

static int64_t broken_part(double value, int64_t whole)
{
    int64_t part = (int64_t)floor(value * (double)whole + 0.5) % whole;

    return part < 0 ? part + whole : part;
}

static bool is_in_parts(const double *row, size_t count, int64_t whole)
{
    for (size_t i = 0; i < count; i++) {
        double parts = row[i] * (double)whole;

        if (fabs(parts - floor(parts + 0.5)) > IN_PARTS)
            return false;
    }
    return true;
}

/* The fractions of a row of the inverse, or of its opposite; false when they are too fine. */
static bool set_multipliers(struct bar_pool *pool, size_t basic, int sign)
{
    const struct columns *columns = &pool->columns;
    const double *row = &columns->inverse[basic * columns->row_count];
    struct multipliers *next = &pool->next;

    next->whole = 2;
    while (!is_in_parts(row, columns->row_count, next->whole))
        if (next->whole++ == WHOLES_MOST)
            return false;
    for (size_t k = 0; k < pool->row_count; k++)
        next->of_row[k] = broken_part(sign * row[k], next->whole);
    for (size_t s = 0; s < pool->task->size_count; s++)
        next->of_size[s] = broken_part(-sign * row[columns->limit_row[s]], next->whole);
    return true;
}

static int64_t given_by(const struct bar_pool *pool, const struct column *column)
{
    int64_t sum = -pool->next.of_size[column->size];

    for (size_t i = column->first; i < column->first + column->count; i++)
        sum += pool->columns.takes.at[i].count * pool->next.of_row[pool->columns.takes.at[i].kind];
    return whole_divide_up(sum, pool->next.whole);
}

static int64_t wanted_by(const struct bar_pool *pool)
{
    int64_t sum = 0;

    for (size_t k = 0; k < pool->row_count; k++)
        sum += pool->counts[k] * pool->next.of_row[k];
    for (size_t s = 0; s < pool->task->size_count; s++)
        sum -= pool->limits[s] * pool->next.of_size[s];
    return whole_divide_up(sum, pool->next.whole);
}

/* Whether the fillings of the relaxation give too little of a row that wants so much. */
static bool cuts_off(const struct bar_pool *pool, int64_t wanted)
{
    const struct columns *columns = &pool->columns;
    double given = 0;

    for (size_t row = 0; row < columns->row_count; row++)
        if (columns->basis[row].as == BASIC_FILLING)
            given += columns->level[row] *
                     (double)given_by(pool, &columns->pool.at[columns->basis[row].index]);
    return given < (double)wanted - CUT_LEAST;
}

/* Writes a cut after those of this round; false where it stands there already. */
static bool write_cut(struct bar_pool *pool, size_t cut, size_t first, int64_t wanted)
{
    size_t kinds = pool->task->kind_count, count = pool->columns.pool.count;
    int64_t *gives = &pool->gives[cut * pool->room];

    assert(cut < CUTS_MOST && first <= cut && count <= pool->room);
    for (size_t i = 0; i < count; i++)
        gives[i] = given_by(pool, &pool->columns.pool.at[i]);
    for (size_t other = first; other < cut; other++)
        if (pool->left[kinds + other] == wanted &&
            memcmp(&pool->gives[other * pool->room], gives, count * sizeof *gives) == 0)
            return false;
    pool->left[kinds + cut] = wanted;
    pool->columns.work += (int64_t)pool->columns.takes.count;
    return true;
}

/* Cuts of which the fillings give more than is wanted go. */
static void drop_loose_cuts(struct bar_pool *pool, size_t old_rows)
{
    const struct columns *columns = &pool->columns;
    size_t kinds = pool->task->kind_count, kept = kinds;

    memset(pool->loose, 0, columns->row_count * sizeof *pool->loose);
    for (size_t row = 0; row < columns->row_count; row++)
        if (columns->basis[row].as == BASIC_SPARE)
            pool->loose[columns->basis[row].index] = true;
    for (size_t row = kinds; row < pool->row_count; row++) {
        if (row < old_rows && pool->loose[row])
            continue;
        memmove(&pool->gives[(kept - kinds) * pool->room], &pool->gives[(row - kinds) * pool->room],
                columns->pool.count * sizeof *pool->gives);
        pool->left[kept] = pool->left[row];
        kept++;
    }
    for (size_t row = kept; row < pool->row_count; row++)
        pool->left[row] = pool->counts[row] = 0;
    assert(kept >= kinds && kept <= pool->row_count);
    pool->row_count = kept;
}

/* Cuts from all broken rows; false when there is none. */
static bool add_cuts(struct bar_pool *pool)
{
    const struct columns *columns = &pool->columns;
    size_t kinds = pool->task->kind_count, first = pool->row_count - kinds, cut = first;

    for (size_t row = 0; row < columns->row_count; row++) {
        double times = times_in(pool, row);

        if (fabs(times - floor(times + 0.5)) < CUT_LEAST)
            continue;
        for (int sign = 1; sign >= -1; sign -= 2) {
            int64_t wanted;

            if (cut == CUTS_MOST || cut == first + CUTS_A_ROUND ||
                !set_multipliers(pool, row, sign))
                continue;
            wanted = wanted_by(pool);
            if (wanted > 0 && cuts_off(pool, wanted))
                cut += write_cut(pool, cut, first, wanted);
        }
    }
    pool->row_count = kinds + cut;
    drop_loose_cuts(pool, kinds + first);
    for (size_t k = kinds; k < pool->row_count; k++)
        pool->counts[k] = pool->left[k];
    read_fillings(pool);
    return cut > first;
}

/* One round of cuts; when no more come, the first state itself. */
static enum look look_at_first(struct bar_pool *pool)
{
    if (pool->round < ROUNDS_MOST) {
        if (!relax(pool))
            return LOOK_DEAD;
        pool->round = add_cuts(pool) ? pool->round + 1 : ROUNDS_MOST;
        return LOOK_OPEN;
    }
    pool->begun = true;
    return look_at_state(pool);
}

static void write_chosen(const struct bar_pool *pool, struct bar_plan *plan)
{
    const struct columns *columns = &pool->columns;

    for (size_t i = 0; i < pool->chosen.count; i++) {
        const struct column *column = &columns->pool.at[pool->chosen.at[i].filling];

        if (pool->chosen.at[i].times == 0)
            continue;
        bar_plan_fill(pool->task, plan, column->size, pool->chosen.at[i].times);
        for (size_t j = column->first; j < column->first + column->count; j++)
            if (columns->takes.at[j].kind < pool->task->kind_count)
                bar_plan_take(pool->task, plan, columns->takes.at[j].kind,
                              columns->takes.at[j].count);
    }
}

void bar_pool_set_out(struct bar_pool *pool, const struct bar_plan *fillings, const int64_t *counts,
                      const int64_t *limits, int64_t work)
{
    struct arena *arena = pool->task->arena;
    size_t kinds = pool->task->kind_count, count = fillings->fillings.count;

    for (size_t s = 0; s < pool->task->size_count; s++)
        assert(limits[s] >= 0); /* every size has a limit */
    if (count > pool->room || pool->room == 0) {
        pool->room = count + 1;
        pool->barred = ARENA_MANY(arena, bool, pool->room);
        pool->gives = ARENA_MANY(arena, int64_t, CUTS_MOST * pool->room);
        pool->columns.barred = pool->barred;
    }
    memset(pool->barred, 0, pool->room * sizeof *pool->barred);
    memset(pool->counts, 0, pool->wide.kind_count * sizeof *pool->counts);
    memcpy(pool->counts, counts, kinds * sizeof *counts);
    memcpy(pool->left, pool->counts, pool->wide.kind_count * sizeof *pool->left);
    memcpy(pool->limits, limits, pool->task->size_count * sizeof *limits);
    memset(pool->values, 0, pool->wide.kind_count * sizeof *pool->values);
    pool->row_count = kinds;
    pool->chosen.count = 0;
    pool->branches.count = 0;
    pool->complete = true;
    pool->begun = false;
    pool->round = 0;
    pool->work_most = pool->columns.work + work;
    pool->fillings = fillings;
    read_fillings(pool);
}

enum bar_outcome bar_pool_go_on(struct bar_pool *pool, int64_t slice, struct bar_plan *plan,
                                int64_t *done)
{
    const struct columns *columns = &pool->columns;
    int64_t before = columns->work;
    enum look look = LOOK_OPEN;
    bool over = false;

    while (!over && columns->work - before < slice) {
        look = pool->begun ? look_on(pool) : look_at_first(pool);
        over = look == LOOK_FOUND || (look == LOOK_DEAD && pool->branches.count == 0);
        if (!over && columns->work >= pool->work_most) {
            pool->complete = false;
            over = true;
        }
    }
    *done += columns->work - before;
    if (!over)
        return BAR_GOES_ON;
    if (look != LOOK_FOUND)
        return pool->complete ? BAR_NONE : BAR_UNDECIDED;
    write_chosen(pool, plan);
    return BAR_FOUND;
}
