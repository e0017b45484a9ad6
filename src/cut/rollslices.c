/*
 * The least sum of slices is a linear program with a column for each filling of a slice, by columns
 * that pay (Gilmore and Gomory, 1961): the simplex method with the inverse of its basis proposes a
 * value for each kind, the fullest slice by these values is looked for exactly.
 *
 *  1  inverse * basis = 1, level = inverse * counts, dual = costs of the basis * inverse
 *  2  However the values came about, no slice is worth more than `worth`; so parts that are worth
 *     n times as much need n slices. The best values of all rounds are kept.
 */
#include "cut/rollslices.h"

#include "base/quantity.h"

#include <assert.h>
#include <string.h>

#define WHOLE (INT64_C(1) << 30) /* what a full slice is worth */
#define NEAR 1e-7
#define TINY 1e-11
#define ROUNDS_PER_KIND 40
#define WORK_NODE 8 /* units for each part that is put into a slice in trial */

/* ---- the fullest slice ---- */

struct fullest {
    const struct slices *slices;
    size_t *tied, *loose; /* ways with a repeat and without, by falling value for their size */
    size_t tied_count, loose_count;
    int64_t least_loose; /* size */
    int64_t *left;       /* by kind */
    int64_t *now, *most; /* by way: how many; of the fullest */
    int64_t best;
    int64_t nodes, nodes_most;
};

/* The most that a room can be worth when parts may be parted. */
static int64_t worth_of(const struct fullest *fullest, const size_t *ways, size_t count,
                        int64_t room)
{
    const struct slice_way *densest;

    if (count == 0 || room <= 0)
        return 0;
    densest = &fullest->slices->ways[ways[0]];
    return room * densest->value / densest->size; /* none below 0 */
}

static void note(struct fullest *fullest, int64_t value)
{
    if (value <= fullest->best)
        return;
    fullest->best = value;
    memcpy(fullest->most, fullest->now, fullest->slices->way_count * sizeof *fullest->now);
}

static void fill_loose(struct fullest *fullest, size_t index, int64_t room, int64_t value)
{
    note(fullest, value);
    for (size_t i = index; i < fullest->loose_count; i++) {
        size_t at = fullest->loose[i];
        const struct slice_way *way = &fullest->slices->ways[at];
        int64_t *left = &fullest->left[way->kind];

        if (value + worth_of(fullest, &fullest->loose[i], 1, room) <= fullest->best)
            return;
        if (way->size > room || *left == 0)
            continue;
        if (fullest->nodes++ > fullest->nodes_most)
            return;
        --*left;
        fullest->now[at]++;
        fill_loose(fullest, i, room - way->size, value + way->value);
        fullest->now[at]--;
        ++*left;
    }
}

static int64_t first_at(const struct slice_way *way, int64_t from)
{
    return way->at + whole_divide_up(from - way->at, way->repeat) * way->repeat;
}

/* What of the room between tied parts loose ones may use. Beside the edges all of it: the origin
 * may be a little farther, and then more is on the one side and less on the other. */
static int64_t usable(const struct fullest *fullest, int64_t from, int64_t to)
{
    return from == 0 || to - from >= fullest->least_loose ? to - from : 0;
}

static void fill_tied(struct fullest *fullest, int64_t from, int64_t loose, int64_t value);

static void place_tied(struct fullest *fullest, size_t at, int64_t from, int64_t begin,
                       int64_t loose, int64_t value)
{
    const struct slice_way *way = &fullest->slices->ways[at];

    if (begin + way->size > fullest->slices->room || fullest->nodes++ > fullest->nodes_most)
        return;
    fullest->left[way->kind]--;
    fullest->now[at]++;
    fill_tied(fullest, begin + way->size, loose + usable(fullest, from, begin), value + way->value);
    fullest->now[at]--;
    fullest->left[way->kind]++;
}

/* From left to right; `loose` is the room between and beside what is tied, as far as loose parts
 * can use it. A tied part goes to its next place; where the room before that is of no use, also to
 * the first at which it is: from there on what is won before it is lost behind. */
static void fill_tied(struct fullest *fullest, int64_t from, int64_t loose, int64_t value)
{
    const struct slices *slices = fullest->slices;
    int64_t open = loose + slices->room - from;
    int64_t beside = worth_of(fullest, fullest->loose, fullest->loose_count, loose);
    int64_t tied = worth_of(fullest, fullest->tied, fullest->tied_count, slices->room - from);
    int64_t other = worth_of(fullest, fullest->loose, fullest->loose_count, slices->room - from);

    /* Loose parts may lie beside and beyond: together they are worth up to 1 more, for each of both
     * is rounded down. */
    if (value + beside + (tied > other ? tied : other) + 1 <= fullest->best)
        return;
    fill_loose(fullest, 0, open, value);
    for (size_t i = 0; i < fullest->tied_count; i++) {
        size_t at = fullest->tied[i];
        const struct slice_way *way = &slices->ways[at];
        int64_t begin = first_at(way, from);

        if (fullest->left[way->kind] == 0)
            continue;
        if (fullest->nodes > fullest->nodes_most)
            return;
        place_tied(fullest, at, from, begin, loose, value);
        if (begin > from && usable(fullest, from, begin) == 0)
            place_tied(fullest, at, from, first_at(way, from + fullest->least_loose), loose, value);
    }
}

static bool denser(const struct slice_way *a, const struct slice_way *b)
{
    return a->value * b->size > b->value * a->size;
}

static void insert_way(const struct slices *slices, size_t *list, size_t *count, size_t way)
{
    assert(way < slices->way_count);

    size_t at = (*count)++;

    while (at > 0 && denser(&slices->ways[way], &slices->ways[list[at - 1]])) {
        list[at] = list[at - 1];
        at--;
    }
    list[at] = way;
}

struct slices slices_begin(size_t kinds, size_t ways, struct arena *arena)
{
    struct slices slices = {0};
    struct slice_scratch *scratch = &slices.scratch;

    slices.kinds = ARENA_MANY(arena, struct slice_kind, kinds);
    slices.ways = ARENA_MANY(arena, struct slice_way, ways);
    scratch->inverse = ARENA_MANY(arena, double, kinds *kinds);
    scratch->level = ARENA_MANY(arena, double, kinds);
    scratch->dual = ARENA_MANY(arena, double, kinds);
    scratch->entering = ARENA_MANY(arena, double, kinds);
    scratch->direction = ARENA_MANY(arena, double, kinds);
    scratch->tied = ARENA_MANY(arena, size_t, ways);
    scratch->loose = ARENA_MANY(arena, size_t, ways);
    scratch->left = ARENA_MANY(arena, int64_t, kinds);
    scratch->now = ARENA_MANY(arena, int64_t, ways);
    scratch->most = ARENA_MANY(arena, int64_t, ways);
    scratch->values = ARENA_MANY(arena, int64_t, ways);
    return slices;
}

static struct fullest fullest_begin(const struct slices *slices)
{
    const struct slice_scratch *scratch = &slices->scratch;

    memset(scratch->now, 0, slices->way_count * sizeof *scratch->now);
    return (struct fullest){.slices = slices,
                            .tied = scratch->tied,
                            .loose = scratch->loose,
                            .left = scratch->left,
                            .now = scratch->now,
                            .most = scratch->most};
}

/* The most that a slice is worth by the ways' values; -1 when that took more than the nodes. */
static int64_t fullest_find(struct fullest *fullest)
{
    const struct slices *slices = fullest->slices;

    fullest->tied_count = fullest->loose_count = 0;
    fullest->least_loose = slices->room + 1;
    for (size_t i = 0; i < slices->way_count; i++) {
        const struct slice_way *way = &slices->ways[i];

        if (way->value == 0)
            continue;
        if (way->repeat > 0)
            insert_way(slices, fullest->tied, &fullest->tied_count, i);
        else
            insert_way(slices, fullest->loose, &fullest->loose_count, i);
        if (way->repeat == 0 && way->size < fullest->least_loose)
            fullest->least_loose = way->size;
    }
    for (size_t k = 0; k < slices->kind_count; k++)
        fullest->left[k] = slices->kinds[k].count;
    fullest->best = 0;
    fullest->nodes = 0;
    fill_tied(fullest, 0, 0, 0);
    return fullest->nodes > fullest->nodes_most ? -1 : fullest->best;
}

/* ---- the linear program ---- */

struct program {
    struct slices *slices;
    size_t rows;
    double unit; /* the longest share */
    double *inverse, *level, *dual;
    double *entering, *direction;
};

/* Each kind alone, the first way. */
static struct program program_begin(struct slices *slices)
{
    size_t rows = slices->kind_count;
    struct program program = {.slices = slices, .rows = rows, .unit = 1};

    program.inverse = slices->scratch.inverse;
    program.level = slices->scratch.level;
    program.dual = slices->scratch.dual;
    program.entering = slices->scratch.entering;
    program.direction = slices->scratch.direction;
    memset(program.inverse, 0, rows * rows * sizeof *program.inverse);
    for (size_t w = 0; w < slices->way_count; w++)
        if ((double)slices->ways[w].share > program.unit)
            program.unit = (double)slices->ways[w].share;
    for (size_t k = 0; k < rows; k++) {
        double share = (double)slices->ways[slices->kinds[k].first].share / program.unit;

        program.inverse[k * rows + k] = share;
        program.level[k] = share * slices->kinds[k].wanted;
        program.dual[k] = share;
    }
    return program;
}

/* Brings a column of this cost into the basis. False when none can leave. */
static bool exchange(struct program *program, double cost)
{
    size_t rows = program->rows, leaving = rows;
    double gain = cost, first = 0;

    for (size_t row = 0; row < rows; row++) {
        double sum = 0;

        for (size_t k = 0; k < rows; k++)
            sum += program->inverse[row * rows + k] * program->entering[k];
        program->direction[row] = sum;
        gain -= program->dual[row] * program->entering[row];
        if (sum > NEAR && (leaving == rows || program->level[row] / sum < first)) {
            leaving = row;
            first = program->level[row] / sum;
        }
    }
    program->slices->work += (int64_t)(2 * rows * rows);
    if (leaving == rows)
        return false;
    for (size_t k = 0; k < rows; k++)
        program->inverse[leaving * rows + k] /= program->direction[leaving];
    for (size_t row = 0; row < rows; row++) {
        if (row == leaving)
            continue;
        for (size_t k = 0; k < rows; k++)
            program->inverse[row * rows + k] -=
                program->direction[row] * program->inverse[leaving * rows + k];
        program->level[row] -= program->direction[row] * first;
    }
    program->level[leaving] = first;
    for (size_t k = 0; k < rows; k++)
        program->dual[k] += gain * program->inverse[leaving * rows + k];
    return true;
}

/* Values in whole numbers from the duals; those below 0 count as 0. */
static void set_values(struct program *program)
{
    struct slices *slices = program->slices;

    for (size_t w = 0; w < slices->way_count; w++) {
        struct slice_way *way = &slices->ways[w];
        double value = program->dual[way->kind] * program->unit / (double)way->share;

        way->value = value <= 0 ? 0 : value >= 1 ? WHOLE : (int64_t)(value * (double)WHOLE);
    }
}

int64_t slices_kind_worth(const struct slices *slices, const struct slice_kind *kind)
{
    int64_t least = INT64_MAX;

    for (size_t w = kind->first; w < kind->first + kind->way_count; w++) {
        int64_t worth = slices->ways[w].value * slices->ways[w].share;

        least = worth < least ? worth : least;
    }
    return least;
}

/* The slices that the wanted parts need by these values: a proposal. */
static double wanted_by(const struct slices *slices, int64_t worth)
{
    double sum = 0;

    for (size_t k = 0; k < slices->kind_count; k++)
        sum += slices->kinds[k].wanted * (double)slices_kind_worth(slices, &slices->kinds[k]);
    return sum / (double)worth;
}

/* The slices that all parts need by the values that are set. */
static int64_t least_by(const struct slices *slices)
{
    int64_t sum = 0;

    for (size_t k = 0; k < slices->kind_count; k++)
        sum += slices->kinds[k].count * slices_kind_worth(slices, &slices->kinds[k]);
    return slices->worth > 0 ? whole_divide_up(sum, slices->worth) : 0;
}

/* A row of which there is too much may be given back. */
static bool give_back(struct program *program)
{
    for (size_t k = 0; k < program->rows; k++) {
        if (program->dual[k] >= -NEAR)
            continue;
        memset(program->entering, 0, program->rows * sizeof *program->entering);
        program->entering[k] = -1;
        return exchange(program, 0);
    }
    return false;
}

static bool take_fullest(struct program *program, const struct fullest *fullest)
{
    const struct slices *slices = program->slices;

    memset(program->entering, 0, program->rows * sizeof *program->entering);
    for (size_t w = 0; w < slices->way_count; w++)
        if (fullest->most[w] > 0)
            program->entering[slices->ways[w].kind] +=
                (double)fullest->most[w] * program->unit / (double)slices->ways[w].share;
    return exchange(program, 1);
}

static bool sums_fit(const struct slices *slices)
{
    int64_t share = 0, sum;

    for (size_t k = 0; k < slices->kind_count; k++)
        share += slices->kinds[k].count * slices->ways[slices->kinds[k].first].share;
    return !whole_multiply(share, WHOLE, &sum);
}

int64_t slices_solve(struct slices *slices, int64_t limit)
{
    struct program program = program_begin(slices);
    struct fullest fullest = fullest_begin(slices);
    int64_t *values = slices->scratch.values;
    int64_t begin = slices->work;
    double best = 0;

    slices->worth = 0;
    memset(values, 0, slices->way_count * sizeof *values);
    if (!sums_fit(slices))
        return 0;
    for (size_t round = 0; round < ROUNDS_PER_KIND * (slices->kind_count + 1); round++) {
        int64_t worth;

        if (give_back(&program))
            continue;
        set_values(&program);
        fullest.nodes_most = (limit - (slices->work - begin)) / WORK_NODE;
        worth = fullest_find(&fullest);
        slices->work += WORK_NODE * fullest.nodes;
        if (worth <= 0)
            break;
        if (wanted_by(slices, worth) > best) {
            best = wanted_by(slices, worth);
            slices->worth = worth;
            for (size_t w = 0; w < slices->way_count; w++)
                values[w] = slices->ways[w].value;
        }
        if ((double)worth <= (double)WHOLE * (1 + NEAR) || !take_fullest(&program, &fullest))
            break;
    }
    for (size_t w = 0; w < slices->way_count; w++)
        slices->ways[w].value = values[w];
    return least_by(slices);
}

/* The ways of a kind, moved to the front behind those that are kept; what they are worth at least
 * is given back. */
static int64_t turn_ways(struct slices *slices, struct slice_kind *kind, int64_t room, size_t first)
{
    int64_t least = INT64_MAX;
    size_t kept = first;

    for (size_t w = kind->first; w < kind->first + kind->way_count; w++) {
        struct slice_way way = slices->ways[w];

        way.size = way.share;
        way.share = way.value * SLICES_WHOLE / slices->worth;
        way.at = way.repeat = 0;
        if (way.size > room)
            continue;
        least = way.share < least ? way.share : least;
        slices->ways[kept++] = way;
    }
    kind->first = first;
    kind->way_count = kept - first;
    return least;
}

bool slices_turn(struct slices *slices, int64_t room)
{
    size_t kinds = 0, ways = 0;

    assert(slices->worth > 0);
    for (size_t k = 0; k < slices->kind_count; k++) {
        struct slice_kind kind = slices->kinds[k];
        int64_t least = turn_ways(slices, &kind, room, ways);

        if (kind.way_count == 0)
            return false;
        if (least == 0)
            continue;
        for (size_t w = kind.first; w < kind.first + kind.way_count; w++)
            slices->ways[w].kind = kinds;
        ways += kind.way_count;
        slices->kinds[kinds++] = kind;
    }
    slices->kind_count = kinds;
    slices->way_count = ways;
    slices->room = room;
    return true;
}
