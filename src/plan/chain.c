/*
 * Between two breaks an outline is a part of one circle or one straight line: a chord is near
 * enough where the middle of what it spans is. Else it is halved.
 *
 * 1  The breaks are the ends, the ends of an outline's quarter rounds, and the points that it is
 *    given by.
 *
 * 2  Only at a given point can there be a corner or a step: all else is round. Points that turn
 *    less than a corner does stand for a curve.
 */
#include "plan/chain.h"

#include "plan/curve.h"
#include "plan/geometry.h"

#include <assert.h>
#include <stdlib.h>

#define DEEPEST 12        /* halvings between two breaks */
#define STEP LENGTH_MM    /* a rise within one count that is one */
#define CORNER_PARTS 11   /* a turn of more than 20 degrees: */
#define CORNER_OF_WHOLE 4 /* its tangent is 4/11 */

struct forging {
    struct chain chain;
    const struct model *model;
    const struct box *box;
    int64_t off, width;
    LIST_OF(int64_t) breaks;
    struct arena *arena;
};

static int64_t height_at(const struct forging *forging, int64_t u)
{
    return curve_height(forging->model, forging->box, u);
}

static void add_place(struct forging *forging, int64_t u, int64_t v)
{
    struct chain_place *place = LIST_ADD(forging->arena, &forging->chain.of);

    place->u = u;
    place->v = v;
}

/* ---- breaks ---- */

static void add_break(struct forging *forging, int64_t u)
{
    if (0 < u && u < forging->width)
        *LIST_ADD(forging->arena, &forging->breaks) = u;
}

static int compare_lengths(const void *a, const void *b)
{
    int64_t left = *(const int64_t *)a;
    int64_t right = *(const int64_t *)b;

    return (left > right) - (left < right);
}

static void find_breaks(struct forging *forging)
{
    const struct model *model = forging->model;
    const struct box *box = forging->box;

    *LIST_ADD(forging->arena, &forging->breaks) = 0;
    *LIST_ADD(forging->arena, &forging->breaks) = forging->width;
    if (box->outline == OUTLINE_SHOULDER) {
        add_break(forging, curve_radius(box));
        add_break(forging, forging->width - curve_radius(box));
    }
    for (size_t i = 0; i < model->outline_points.count && box->outline == OUTLINE_POINTS; i++)
        if (model->outline_points.at[i].box == box->key)
            add_break(forging, model->outline_points.at[i].u);
    qsort(forging->breaks.at, forging->breaks.count, sizeof *forging->breaks.at, compare_lengths);
}

/* ---- the chain ---- */

/* How far a place lies beside the line between two others. */
static int64_t beside(const struct chain_place *place, const struct chain_place *a,
                      const struct chain_place *b)
{
    struct vector line = {b->u - a->u, b->v - a->v, 0};
    int64_t twice = line.x * (place->v - a->v) - line.y * (place->u - a->u);

    return llabs(twice) / length_larger(1, vector_length(line));
}

/* All places after the first up to the last. */
static void halve(struct forging *forging, const struct chain_place *from,
                  const struct chain_place *to, int depth)
{
    struct chain_place middle = {(from->u + to->u) / 2, 0, false};

    middle.v = height_at(forging, middle.u);
    if (depth == DEEPEST || to->u - from->u < 2 || beside(&middle, from, to) <= forging->off) {
        add_place(forging, to->u, to->v);
        return;
    }
    halve(forging, from, &middle, depth + 1);
    halve(forging, &middle, to, depth + 1);
}

/* The height just beside a break, where the outline steps there; else the break's own. */
static int64_t height_beside(const struct forging *forging, int64_t u, int64_t way)
{
    int64_t at = height_at(forging, u);
    int64_t next = height_at(forging, u + way);

    return forging->box->outline == OUTLINE_POINTS && llabs(next - at) > STEP ? next : at;
}

/* From one break to the next, with the step up or down to its beginning. */
static void add_stretch(struct forging *forging, int64_t from, int64_t to)
{
    struct chain_place first = {from, height_beside(forging, from, 1), false};
    struct chain_place last = {to, height_beside(forging, to, -1), false};
    const struct chain *chain = &forging->chain;

    if (chain->of.count == 0 || chain->of.at[chain->of.count - 1].v != first.v)
        add_place(forging, first.u, first.v);
    halve(forging, &first, &last, 0);
}

static bool is_break(const struct forging *forging, int64_t u)
{
    return bsearch(&u, forging->breaks.at, forging->breaks.count, sizeof u, compare_lengths);
}

static bool turns(const struct chain_place *before, const struct chain_place *at,
                  const struct chain_place *after)
{
    struct vector come = {at->u - before->u, at->v - before->v, 0};
    struct vector go = {after->u - at->u, after->v - at->v, 0};
    int64_t side = llabs(come.x * go.y - come.y * go.x);
    int64_t on = come.x * go.x + come.y * go.y;

    return side * CORNER_PARTS > on * CORNER_OF_WHOLE;
}

static void find_corners(struct forging *forging)
{
    struct chain_place *places = forging->chain.of.at;

    for (size_t i = 1; i + 1 < forging->chain.of.count; i++)
        places[i].corner = forging->box->outline == OUTLINE_POINTS &&
                           is_break(forging, places[i].u) &&
                           turns(&places[i - 1], &places[i], &places[i + 1]);
}

struct chain chain_of(const struct model *model, const struct box *box, int64_t off,
                      struct arena *arena)
{
    struct area face = face_area(box, box->main_side);
    struct forging forging = {
        .model = model, .box = box, .off = off, .width = area_width(&face), .arena = arena};

    assert(off > 0 && forging.width > 0);
    find_breaks(&forging);
    for (size_t i = 1; i < forging.breaks.count; i++)
        if (forging.breaks.at[i - 1] < forging.breaks.at[i])
            add_stretch(&forging, forging.breaks.at[i - 1], forging.breaks.at[i]);
    find_corners(&forging);
    assert(forging.chain.of.count >= 2);
    return forging.chain;
}
