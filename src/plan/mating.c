/*
 * Two boxes face to face: where a place on one is on the other, and where their faces overlap.
 * Everything goes through the room, in which each box has its pose.
 */
#include "plan/place.h"

#include "plan/findings.h"
#include "plan/geometry.h"

#include <assert.h>

/* Faces further apart than this do not meet, cloth and rounding apart. */
#define FACES_MEET (6 * LENGTH_MM)

/* ---- from box to box ---- */

struct vector point_to_b(const struct planning *planning, const struct junction *junction,
                         struct vector in_a)
{
    const struct box *a = MODEL_FIND(planning->model, box, junction->box_a);
    const struct box *b = MODEL_FIND(planning->model, box, junction->box_b);

    assert(a && b);
    return pose_to_box(plan_pose(planning->plan, b->key), b,
                       pose_to_room(plan_pose(planning->plan, a->key), a, in_a));
}

struct vector point_to_a(const struct planning *planning, const struct junction *junction,
                         struct vector in_b)
{
    const struct box *a = MODEL_FIND(planning->model, box, junction->box_a);
    const struct box *b = MODEL_FIND(planning->model, box, junction->box_b);

    assert(a && b);
    return pose_to_box(plan_pose(planning->plan, a->key), a,
                       pose_to_room(plan_pose(planning->plan, b->key), b, in_b));
}

int64_t point_side(const struct planning *planning, const struct junction *junction, bool of_b)
{
    const struct join *join = MODEL_FIND(planning->model, join, junction->join);

    assert(join);
    return of_b ? join->side_b : join->side_a;
}

void point_on_face(const struct planning *planning, const struct junction *junction,
                   const struct plan_point *point, bool of_b, int64_t *ret_u, int64_t *ret_v)
{
    if (of_b) {
        box_to_face(point_side(planning, junction, true), point->in_b, ret_u, ret_v);
    } else {
        *ret_u = point->u;
        *ret_v = point->v;
    }
}

static struct area area_between(int64_t side, struct vector p, struct vector q)
{
    int64_t u0, v0, u1, v1;

    box_to_face(side, p, &u0, &v0);
    box_to_face(side, q, &u1, &v1);
    return (struct area){u0 < u1 ? u0 : u1, v0 < v1 ? v0 : v1, u0 < u1 ? u1 : u0,
                         v0 < v1 ? v1 : v0};
}

struct area place_area_to_a(const struct work *work, const struct area *on_b)
{
    int64_t side = work->join->side_b;
    struct vector low = face_to_box(work->b, side, on_b->u0, on_b->v0);
    struct vector high = face_to_box(work->b, side, on_b->u1, on_b->v1);

    return area_between(work->join->side_a, point_to_a(work->planning, &work->junction, low),
                        point_to_a(work->planning, &work->junction, high));
}

struct area place_area_to_b(const struct work *work, const struct area *on_a)
{
    int64_t side = work->join->side_a;
    struct vector low = face_to_box(work->a, side, on_a->u0, on_a->v0);
    struct vector high = face_to_box(work->a, side, on_a->u1, on_a->v1);

    return area_between(work->join->side_b, point_to_b(work->planning, &work->junction, low),
                        point_to_b(work->planning, &work->junction, high));
}

/* ---- zone ---- */

static bool sides_face(const struct work *work)
{
    const struct plan *plan = work->planning->plan;
    int turn_a = plan_pose(plan, work->a->key)->turn;
    int turn_b = plan_pose(plan, work->b->key)->turn;

    int64_t looks_to = side_turned(work->join->side_a, (4 - turn_a) % 4);

    return side_turned(side_opposite(looks_to), turn_b) == work->join->side_b;
}

static int64_t gap_between(const struct work *work)
{
    int axis = side_axis(work->join->side_a);
    struct vector here = face_to_box(work->a, work->join->side_a, 0, 0);
    struct vector there =
        point_to_a(work->planning, &work->junction, face_to_box(work->b, work->join->side_b, 0, 0));
    int64_t gap = vector_along(there, axis) - vector_along(here, axis);

    return gap < 0 ? -gap : gap;
}

void place_zone(struct work *work)
{
    struct area face = face_area(work->a, work->join->side_a);
    struct junction *junction = &work->junction;

    junction->zone = face;
    if (!work->b)
        return;
    struct area face_b = face_area(work->b, work->join->side_b);
    struct area there = place_area_to_a(work, &face_b);
    junction->zone = area_cut(&face, &there);
    if (!sides_face(work) || gap_between(work) > FACES_MEET || area_empty(&junction->zone)) {
        finding_add(work->planning, FINDING_JOIN_FACES_APART, ENTITY_join, work->join->key);
        junction->zone = (struct area){0};
        return;
    }
    junction->zone_b = place_area_to_b(work, &junction->zone);
}
