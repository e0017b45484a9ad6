/*
 * Wood on both sides of a zone is the overlap of two patchworks of rectangles. Overlaps that stand
 * end to end are put together, so that a seam or two members in line do not break a run; what then
 * remains are rectangles, each a run along its longer way.
 */
#include "plan/run.h"

#include "plan/geometry.h"

#include <assert.h>

struct strips {
    LIST_OF(struct area) areas;
};

struct run_list {
    LIST_OF(struct run) runs;
};

int64_t run_length(const struct run *run)
{
    return run->along_u ? area_width(&run->area) : area_height(&run->area);
}

int64_t run_end(const struct planning *planning, const struct join *join, const struct run *run)
{
    if (join->end > 0)
        return join->end;
    return planning->value[run_length(run) < planning->value[TRADE_JOIN_LONG] ? TRADE_JOIN_END_SHORT
                                                                              : TRADE_JOIN_END];
}

/* ---- strips ---- */

static void add_overlaps(const struct planning *planning, struct strips *strips,
                         const struct area *zone, const struct area *a, const struct area *b,
                         size_t count_b)
{
    struct area in_zone = area_cut(a, zone);

    for (size_t i = 0; i < count_b; i++) {
        struct area common = area_cut(&in_zone, &b[i]);

        if (!area_empty(&common))
            *LIST_ADD(planning->arena, &strips->areas) = common;
    }
}

static void overlap(const struct planning *planning, struct strips *strips, const struct area *zone,
                    const struct area *a, size_t count_a, const struct area *b, size_t count_b)
{
    for (size_t i = 0; i < count_a; i++)
        add_overlaps(planning, strips, zone, &a[i], b, count_b);
}

static bool touch(int64_t a0, int64_t a1, int64_t b0, int64_t b1)
{
    return a0 <= b1 && b0 <= a1;
}

/* Makes `a` the two together where they stand end to end with equal widths. */
static bool put_together(struct area *a, const struct area *b)
{
    bool in_row = a->v0 == b->v0 && a->v1 == b->v1 && touch(a->u0, a->u1, b->u0, b->u1);
    bool in_column = a->u0 == b->u0 && a->u1 == b->u1 && touch(a->v0, a->v1, b->v0, b->v1);

    if (!in_row && !in_column)
        return false;
    a->u0 = a->u0 < b->u0 ? a->u0 : b->u0;
    a->v0 = a->v0 < b->v0 ? a->v0 : b->v0;
    a->u1 = a->u1 > b->u1 ? a->u1 : b->u1;
    a->v1 = a->v1 > b->v1 ? a->v1 : b->v1;
    return true;
}

static bool put_one_together(struct strips *strips)
{
    for (size_t i = 0; i < strips->areas.count; i++) {
        for (size_t j = i + 1; j < strips->areas.count; j++) {
            if (put_together(&strips->areas.at[i], &strips->areas.at[j])) {
                list_remove(&strips->areas.any, j, sizeof(struct area));
                return true;
            }
        }
    }
    return false;
}

struct runs run_find(const struct planning *planning, const struct area *zone,
                     const struct patchwork *a, const struct patchwork *b)
{
    struct strips strips = {0};
    struct run_list list = {0};

    overlap(planning, &strips, zone, a->side_grain.at, a->side_grain.count, b->side_grain.at,
            b->side_grain.count);
    if (strips.areas.count == 0) {
        overlap(planning, &strips, zone, a->end_grain.at, a->end_grain.count, b->side_grain.at,
                b->side_grain.count);
        overlap(planning, &strips, zone, a->side_grain.at, a->side_grain.count, b->end_grain.at,
                b->end_grain.count);
    }
    while (put_one_together(&strips))
        continue;
    for (size_t i = 0; i < strips.areas.count; i++) {
        const struct area *area = &strips.areas.at[i];

        *LIST_ADD(planning->arena, &list.runs) =
            (struct run){*area, area_width(area) >= area_height(area)};
    }
    return (struct runs){list.runs.at, list.runs.count};
}

/* ---- choice ---- */

static int64_t twice_middle(const struct run *run)
{
    return run->along_u ? run->area.v0 + run->area.v1 : run->area.u0 + run->area.u1;
}

static bool takes_two(const struct planning *planning, const struct join *join,
                      const struct run *run)
{
    return run_length(run) >= 2 * run_end(planning, join, run);
}

static bool is_long(const struct area *zone, const struct run *run)
{
    return 2 * run_length(run) >= (run->along_u ? area_width(zone) : area_height(zone));
}

/* Of two runs at the same height the longer one is better; else the one farther out is. */
static bool is_farther_out(const struct run *run, const struct run *best, int sign)
{
    int64_t gain = best ? sign * (twice_middle(run) - twice_middle(best)) : 1;

    return gain > 0 || (gain == 0 && run_length(run) > run_length(best));
}

struct choice {
    const struct planning *planning;
    const struct join *join;
    const struct area *zone;
    bool only_long;
};

static const struct run *outermost(const struct choice *choice, const struct runs *runs,
                                   bool along_u, int sign)
{
    const struct run *best = NULL;

    assert(sign == 1 || sign == -1);
    for (size_t i = 0; i < runs->count; i++) {
        const struct run *run = &runs->at[i];

        if (run->along_u != along_u || !takes_two(choice->planning, choice->join, run) ||
            (choice->only_long && !is_long(choice->zone, run)))
            continue;
        if (is_farther_out(run, best, sign))
            best = run;
    }
    return best;
}

static void add_outer_pair(const struct choice *choice, const struct runs *runs, bool along_u,
                           struct run_list *list)
{
    const struct run *low = outermost(choice, runs, along_u, -1);
    const struct run *high = outermost(choice, runs, along_u, +1);

    if (!low)
        return;
    assert(high); /* of the same runs, from the other side */
    *LIST_ADD(choice->planning->arena, &list->runs) = *low;
    if (high != low && twice_middle(high) != twice_middle(low))
        *LIST_ADD(choice->planning->arena, &list->runs) = *high;
}

static const struct run *longest(const struct runs *runs)
{
    const struct run *best = NULL;

    for (size_t i = 0; i < runs->count; i++) {
        if (!best || run_length(&runs->at[i]) > run_length(best))
            best = &runs->at[i];
    }
    return best;
}

struct runs run_choose(const struct planning *planning, const struct join *join,
                       const struct area *zone, const struct runs *runs)
{
    struct choice choice = {planning, join, zone, true};
    struct run_list list = {0};

    for (int attempt = 0; list.runs.count == 0 && attempt < 2; attempt++) {
        choice.only_long = attempt == 0;
        add_outer_pair(&choice, runs, true, &list);
        add_outer_pair(&choice, runs, false, &list);
    }
    if (list.runs.count == 0 && runs->count > 0)
        *LIST_ADD(planning->arena, &list.runs) = *longest(runs);
    assert(list.runs.count > 0 || runs->count == 0);
    return (struct runs){list.runs.at, list.runs.count};
}
