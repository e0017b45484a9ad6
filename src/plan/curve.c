#include "plan/curve.h"

#include "plan/geometry.h"

#include <assert.h>

#define DEEPEST 12           /* halvings of a stretch */
#define AT_LEAST 3           /* so that a curve is not taken for its chord */
#define FLAT (2 * LENGTH_MM) /* an arch of less is straight: its circle has no end */

bool curve_has(const struct box *box, int64_t side)
{
    return box->outline != OUTLINE_RECTANGLE && side_axis(side) == side_axis(box->main_side);
}

bool curve_bends(const struct box *box, int64_t side)
{
    return curve_has(box, side) && box->outline != OUTLINE_SLOPE;
}

bool curve_under(const struct box *box, int64_t side)
{
    return curve_has(box, box->main_side) && side == edge_side(box->main_side, EDGE_TOP);
}

static struct area main_face(const struct box *box)
{
    return face_area(box, box->main_side);
}

/* No outline rises more than the face is high, and no circle more than half as wide. */
static int64_t rise_of(const struct box *box)
{
    struct area face = main_face(box);
    int64_t most = area_height(&face);

    if (box->outline != OUTLINE_SLOPE)
        most = length_smaller(most, area_width(&face) / 2);
    return length_smaller(box->rise, most);
}

/* How far below the top of a circle of that radius it lies `off` its middle. */
static int64_t sagitta(int64_t radius, int64_t off)
{
    assert(-radius <= off && off <= radius);
    return radius - whole_root(radius * radius - off * off);
}

/* Of the circle through both ends and the top of an arch; 0 where it is straight. */
static int64_t arch_radius(const struct box *box, int64_t width)
{
    int64_t rise = rise_of(box);

    return rise < FLAT ? 0 : whole_divide_up(width * width / 4 + rise * rise, 2 * rise);
}

int64_t curve_radius(const struct box *box)
{
    struct area face = main_face(box);

    if (box->outline == OUTLINE_ARCH)
        return arch_radius(box, area_width(&face));
    return box->outline == OUTLINE_SHOULDER ? rise_of(box) : 0;
}

static int64_t arch_drop(const struct box *box, int64_t width, int64_t u)
{
    int64_t rise = rise_of(box);
    int64_t radius = arch_radius(box, width);

    if (radius == 0)
        return 0;
    return length_smaller(rise, sagitta(radius, u - width / 2));
}

static int64_t shoulder_drop(const struct box *box, int64_t width, int64_t u)
{
    int64_t radius = rise_of(box);
    int64_t near = length_smaller(u, width - u);

    return near < radius ? sagitta(radius, radius - near) : 0;
}

/* Height of the line from one point to the next over u; -1 where it does not pass there. */
static int64_t segment_height(const struct outline_point *a, const struct outline_point *b,
                              int64_t u)
{
    const struct outline_point *left = a->u <= b->u ? a : b;
    const struct outline_point *right = left == a ? b : a;

    if (u < left->u || u > right->u)
        return -1;
    if (left->u == right->u)
        return length_larger(a->v, b->v);
    return left->v + whole_divide_even((right->v - left->v) * (u - left->u), right->u - left->u);
}

/* The point of a box that comes next in its order, the first one again after the last. */
static const struct outline_point *next_point(const struct model *model,
                                              const struct outline_point *point)
{
    const struct outline_point *next = NULL, *first = NULL;

    for (size_t i = 0; i < model->outline_points.count; i++) {
        const struct outline_point *other = &model->outline_points.at[i];

        if (other->box != point->box)
            continue;
        if (!first || other->rank < first->rank)
            first = other;
        if (other->rank > point->rank && (!next || other->rank < next->rank))
            next = other;
    }
    return next ? next : first;
}

static int64_t points_height(const struct model *model, const struct box *box, int64_t u)
{
    int64_t height = -1;

    for (size_t i = 0; i < model->outline_points.count; i++) {
        const struct outline_point *point = &model->outline_points.at[i];

        if (point->box == box->key)
            height = length_larger(height, segment_height(point, next_point(model, point), u));
    }
    return height;
}

int64_t curve_height(const struct model *model, const struct box *box, int64_t u)
{
    struct area face = main_face(box);
    int64_t width = area_width(&face);
    int64_t height = area_height(&face);
    int64_t by_points;

    assert(0 <= u && u <= width);
    switch (box->outline) {
    case OUTLINE_ARCH:
        return height - arch_drop(box, width, u);
    case OUTLINE_SHOULDER:
        return height - shoulder_drop(box, width, u);
    case OUTLINE_SLOPE:
        return height - whole_divide_even(rise_of(box) * u, width);
    case OUTLINE_POINTS:
        by_points = points_height(model, box, u);
        return by_points >= 0 ? length_smaller(by_points, height) : height;
    default:
        return height;
    }
}

/* It falls toward its ends, or lies lowest at one of its points. */
int64_t curve_lowest(const struct model *model, const struct box *box)
{
    struct area face = main_face(box);
    int64_t width = area_width(&face);
    int64_t low = length_smaller(curve_height(model, box, 0), curve_height(model, box, width));

    for (size_t i = 0; i < model->outline_points.count; i++) {
        const struct outline_point *point = &model->outline_points.at[i];

        if (box->outline == OUTLINE_POINTS && point->box == box->key && point->u > 0 &&
            point->u < width)
            low = length_smaller(low, curve_height(model, box, point->u));
    }
    return low;
}

/* A place on the outline. */
struct on_curve {
    int64_t u, v;
};

/* In parts of a count, so that roots rounded down do not add up to anything. */
#define PARTS 16

static int64_t chord(struct on_curve a, struct on_curve b)
{
    int64_t across = PARTS * (b.u - a.u);
    int64_t up = PARTS * (b.v - a.v);

    return whole_root(across * across + up * up);
}

/* Halves a stretch until its halves are no longer than itself. */
static int64_t along(const struct model *model, const struct box *box, struct on_curve from,
                     struct on_curve to, int depth)
{
    struct on_curve middle = {(from.u + to.u) / 2, 0};
    int64_t whole = chord(from, to);

    if (depth == DEEPEST || to.u - from.u < 2)
        return whole;
    middle.v = curve_height(model, box, middle.u);
    if (depth >= AT_LEAST && chord(from, middle) + chord(middle, to) <= whole + 1)
        return whole;
    return along(model, box, from, middle, depth + 1) + along(model, box, middle, to, depth + 1);
}

int64_t curve_top(const struct model *model, const struct box *box, int64_t from, int64_t to)
{
    assert(from <= to);
    return whole_divide_even(along(model, box,
                                   (struct on_curve){from, curve_height(model, box, from)},
                                   (struct on_curve){to, curve_height(model, box, to)}, 0),
                             PARTS);
}

int64_t curve_longer(const struct model *model, const struct box *box, int64_t from, int64_t to)
{
    return curve_top(model, box, from, to) - (to - from);
}

int64_t curve_side(const struct model *model, const struct box *box, int64_t edge)
{
    struct area face = main_face(box);

    return curve_height(model, box, edge == EDGE_RIGHT ? area_width(&face) : 0);
}

#define STRIPS 1024 /* of an area, each between two straight sides */

int64_t curve_away(const struct model *model, const struct box *box, const struct area *area)
{
    struct area face = main_face(box);
    struct area in = area_cut(&face, area);
    int64_t sum = 0;

    if (area_empty(&in))
        return 0;
    for (int64_t i = 0; i <= STRIPS; i++) {
        int64_t height = curve_height(model, box, in.u0 + area_width(&in) * i / STRIPS);
        int64_t away = length_larger(0, length_smaller(in.v1 - height, area_height(&in)));

        sum += i == 0 || i == STRIPS ? away : 2 * away;
    }
    return whole_divide_even(area_width(&in) * sum, 2 * STRIPS * LENGTH_MM * LENGTH_MM);
}

static struct plan_outline outline_of(const struct model *model, const struct box *box)
{
    struct area face = main_face(box);
    struct plan_outline outline = {
        .box = box->key, .side = box->main_side, .width = area_width(&face)};

    for (int64_t i = 0; i < OUTLINE_HEIGHTS; i++)
        outline.heights[i] = curve_height(model, box, outline.width * i / (OUTLINE_HEIGHTS - 1));
    outline.lengths[EDGE_LEFT] = curve_side(model, box, EDGE_LEFT);
    outline.lengths[EDGE_RIGHT] = curve_side(model, box, EDGE_RIGHT);
    outline.lengths[EDGE_TOP] = curve_top(model, box, 0, outline.width);
    outline.lengths[EDGE_BOTTOM] = outline.width;
    return outline;
}

void curve_outlines(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->boxes.count; i++)
        if (curve_has(&model->boxes.at[i], model->boxes.at[i].main_side))
            *LIST_ADD(planning->arena, &planning->plan->outlines) =
                outline_of(model, &model->boxes.at[i]);
}
