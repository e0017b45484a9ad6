/*
 * The way to a head, cut open along its screw.
 *
 * The cut lies in the plane of the screw and of the direction in which the hand comes in, so that
 * the open side is at the picture's top or bottom. What shows is what the driver could touch: wood
 * of the box with the heads that comes as near to the plane as the driver is wide.
 */
#include "draw/drawing.h"

#include "plan/geometry.h"
#include "plan/screws.h"
#include "plan/slices.h"

#include <assert.h>

struct cut {
    struct drawing *drawing;
    const struct plan *plan;
    const struct junction *junction;
    struct screw_axis axis;
    int along, across, through; /* axes of the box with the heads */
    int away;                   /* +1 or -1: from the head towards the driver */
    int64_t radius;             /* of the driver */
    struct arena *arena;
};

static void add_mark(const struct cut *cut, enum mark_kind kind, struct area area)
{
    *LIST_ADD(cut->arena, &cut->drawing->marks) = (struct mark){kind, area};
}

/* u counts from the tip towards the driver. */
static int64_t u_of(const struct cut *cut, int64_t along)
{
    return cut->away * (along - vector_along(cut->axis.tip, cut->along));
}

static struct area area_of(const struct cut *cut, const struct solid *solid)
{
    int64_t u0 = u_of(cut, vector_along(solid->low, cut->along));
    int64_t u1 = u_of(cut, vector_along(solid->high, cut->along));

    return (struct area){length_smaller(u0, u1), vector_along(solid->low, cut->across),
                         length_larger(u0, u1), vector_along(solid->high, cut->across)};
}

static bool is_near(const struct cut *cut, const struct solid *solid)
{
    int64_t middle = vector_along(cut->axis.head, cut->through);

    return vector_along(solid->low, cut->through) < middle + cut->radius &&
           vector_along(solid->high, cut->through) > middle - cut->radius;
}

static struct area driver_of(const struct cut *cut)
{
    int64_t head = u_of(cut, vector_along(cut->axis.head, cut->along));
    int64_t middle = vector_along(cut->axis.head, cut->across);

    return (struct area){head, middle - cut->radius, head + cut->junction->room_needed,
                         middle + cut->radius};
}

static void add_solid(const struct cut *cut, enum mark_kind kind, const struct solid *solid)
{
    struct area driver = driver_of(cut);
    struct area area = area_of(cut, solid);

    if (!is_near(cut, solid))
        return;
    area = area_cut(&area, &cut->drawing->bounds);
    if (area_empty(&area))
        return;
    add_mark(cut, kind, area);
    area = area_cut(&area, &driver);
    if (!area_empty(&area))
        add_mark(cut, MARK_BLOCKER, area);
}

static void add_wood(const struct cut *cut)
{
    const struct plan *plan = cut->plan;
    struct slice members = plan_members_of(plan, cut->junction->head_box);
    struct slice panels = plan_panels_of(plan, cut->junction->head_box);

    for (size_t i = members.from; i < members.to; i++)
        add_solid(cut, MARK_MEMBER, &plan->members.at[i].solid);
    for (size_t i = panels.from; i < panels.to; i++)
        add_solid(cut, MARK_PANEL, &plan->panels.at[i].solid);
}

/* The wood that the screw bites in belongs to the other box: what of it lies round the tip. */
static void add_receiving(const struct cut *cut, int64_t face)
{
    const struct area *bounds = &cut->drawing->bounds;

    add_mark(cut, MARK_PANEL, (struct area){bounds->u0, bounds->v0, face, bounds->v1});
}

static void set_bounds(const struct cut *cut)
{
    struct area driver = driver_of(cut);
    int64_t margin = length_larger(2 * cut->radius, 3 * LENGTH_INCH);

    cut->drawing->bounds =
        (struct area){-LENGTH_INCH, driver.v0 - margin, driver.u1, driver.v1 + margin};
}

static void add_screw(const struct cut *cut, const struct plan_point *point)
{
    bool in_a = cut->junction->head_box == cut->junction->box_a;
    int64_t head = u_of(cut, vector_along(cut->axis.head, cut->along));
    int64_t middle = vector_along(cut->axis.head, cut->across);
    int64_t face = u_of(cut, vector_along(in_a ? point->in_a : point->in_b, cut->along));

    add_receiving(cut, face);
    add_mark(cut, MARK_SCREW, (struct area){0, middle, head, middle});
    add_mark(cut, MARK_TIP, (struct area){0, middle, 0, middle});
    add_mark(cut, MARK_POINT, (struct area){head, middle, head, middle});
}

/* The direction across: the one that the hand comes in by, up and down where it comes along the
 * screw itself. */
static int axis_across(const struct junction *junction, int along)
{
    int hand = side_axis(junction->head_inside ? junction->reach_side : junction->head_side);

    if (hand != along)
        return hand;
    return along == AXIS_Z ? AXIS_X : AXIS_Z;
}

void draw_corridor(struct drawing *drawing, const struct plan *plan, size_t index,
                   struct arena *arena)
{
    assert(index < plan->points.count);

    const struct plan_point *point = &plan->points.at[index];

    *drawing = (struct drawing){0};
    if (point->screw == PLAN_NONE)
        return;
    const struct screw *screw = &plan->screws.at[point->screw];
    struct cut cut = {.drawing = drawing,
                      .plan = plan,
                      .junction = plan_junction(plan, point->join),
                      .axis = screw_axis_of(plan, screw),
                      .along = screw->axis,
                      .away = -screw->sign,
                      .arena = arena};

    cut.across = axis_across(cut.junction, cut.along);
    cut.through = AXIS_X + AXIS_Y + AXIS_Z - cut.along - cut.across;
    cut.radius = plan->value[cut.junction->tool == TOOL_LONG_BIT ? TRADE_DRIVER_RADIUS_LONG_BIT
                                                                 : TRADE_DRIVER_RADIUS];
    set_bounds(&cut);
    add_mark(&cut, MARK_DRIVER, driver_of(&cut));
    add_wood(&cut);
    add_screw(&cut, point);
}

int64_t draw_corridor_up(const struct plan *plan, size_t index)
{
    assert(index < plan->points.count);

    static const int64_t up[] = {[AXIS_X] = SIDE_RIGHT, [AXIS_Y] = SIDE_FRONT, [AXIS_Z] = SIDE_TOP};
    const struct plan_point *point = &plan->points.at[index];

    if (point->screw == PLAN_NONE)
        return SIDE_TOP;
    return up[axis_across(plan_junction(plan, point->join), plan->screws.at[point->screw].axis)];
}
