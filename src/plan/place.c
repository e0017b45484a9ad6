/*
 * One point of a join: where it lies in both boxes, what wood is there, from which edges it is
 * measured, and which room its screw may take up.
 *
 * Distances are taken from the same two edges along a whole run, so that the maker reads one side
 * of the rule: of two edges equally near, the left, back or bottom one.
 */
#include "plan/place.h"

#include "plan/geometry.h"

#include <assert.h>

void place_edges(const struct area *face, int64_t twice_u, int64_t twice_v,
                 struct from_edge edges[2])
{
    edges[0].edge = twice_u <= area_width(face) ? EDGE_LEFT : EDGE_RIGHT;
    edges[1].edge = twice_v <= area_height(face) ? EDGE_BOTTOM : EDGE_TOP;
}

static void measure_edges(const struct area *face, int64_t u, int64_t v, struct from_edge edges[2])
{
    edges[0].distance = edges[0].edge == EDGE_LEFT ? u : face->u1 - u;
    edges[1].distance = edges[1].edge == EDGE_BOTTOM ? v : face->v1 - v;
}

static void measure(const struct placing *placing, const struct area *about,
                    struct plan_point *point)
{
    struct area face = face_area(placing->a, placing->join->side_a);
    int64_t u, v;

    place_edges(&face, about->u0 + about->u1, about->v0 + about->v1, point->edges);
    measure_edges(&face, point->u, point->v, point->edges);
    if (!placing->b)
        return;
    struct area face_b = face_area(placing->b, placing->join->side_b);
    struct area about_b = place_area_to_b(placing, about);
    place_edges(&face_b, about_b.u0 + about_b.u1, about_b.v0 + about_b.v1, point->edges_b);
    box_to_face(placing->join->side_b, point->in_b, &u, &v);
    measure_edges(&face_b, u, v, point->edges_b);
}

static size_t member_of(const struct backing *wood)
{
    return wood ? wood->member : PLAN_NONE;
}

struct plan_point place_locate(const struct placing *placing, int64_t u, int64_t v)
{
    struct plan_point point = {.join = placing->join->key,
                               .u = u,
                               .v = v,
                               .in_a = face_to_box(placing->a, placing->join->side_a, u, v),
                               .screw = PLAN_NONE,
                               .member_a = member_of(backing_at(&placing->faces.a, u, v)),
                               .member_b = PLAN_NONE};
    int64_t u_b, v_b;

    if (!placing->b)
        return point;
    point.in_b = point_to_b(placing->planning, &placing->junction, point.in_a);
    box_to_face(placing->join->side_b, point.in_b, &u_b, &v_b);
    point.member_b = member_of(backing_at(&placing->faces.b, u_b, v_b));
    return point;
}

struct plan_point *place_add(struct placing *placing, int64_t u, int64_t v,
                             const struct area *about)
{
    struct planning *planning = placing->planning;
    struct plan_point *point = LIST_ADD(planning->arena, &planning->plan->points);

    *point = place_locate(placing, u, v);
    point->rank = (int)++placing->junction.point_count;
    measure(placing, about, point);
    return point;
}

/* ---- the room of its screw ---- */

static int64_t diameter_of(const struct placing *placing)
{
    const struct stock *stock = MODEL_FIND(placing->planning->model, stock, placing->join->stock);

    if (stock && stock->diameter > 0)
        return stock->diameter;
    if (placing->join->fastener == FASTENER_BOLT)
        return placing->planning->value[TRADE_BOLT_DIAMETER];
    return screw_gauge_diameter(stock && stock->gauge > 0
                                    ? stock->gauge
                                    : placing->planning->value[TRADE_SCREW_GAUGE_JOIN]);
}

bool place_room(const struct placing *placing, const struct plan_point *point,
                struct screw_axis *ret_in_a)
{
    int axis = side_axis(placing->join->side_a);
    int sign = side_sign(placing->join->side_a);
    int64_t face = vector_along(point->in_a, axis);
    struct screw_axis in_a = {point->in_a, point->in_a, diameter_of(placing)};
    struct fastening fastening;
    int64_t in_front, behind; /* of the mating face of a */

    if (fasten_reckon(placing->planning, &placing->junction, &placing->faces, point, false,
                      &fastening)) {
        behind = fastening.depth;
        in_front = fastening.need.receiving;
    } else if (fasten_reckon(placing->planning, &placing->junction, &placing->faces, point, true,
                             &fastening)) {
        behind = fastening.need.receiving;
        in_front = fastening.depth;
    } else {
        return false;
    }
    vector_set(&in_a.head, axis, face - sign * behind);
    vector_set(&in_a.tip, axis, face + sign * in_front);
    *ret_in_a = in_a;
    return true;
}

struct screw_axis place_room_in_b(const struct placing *placing, const struct screw_axis *in_a)
{
    return (struct screw_axis){point_to_b(placing->planning, &placing->junction, in_a->head),
                               point_to_b(placing->planning, &placing->junction, in_a->tip),
                               in_a->diameter};
}

void place_stand(struct placing *placing, const struct plan_point *point)
{
    struct screw_axis in_a;
    struct screw_axis in_b;

    if (!place_room(placing, point, &in_a))
        return;
    thicket_add(placing->in_a, &in_a, PLAN_NONE);
    if (!placing->b)
        return;
    in_b = place_room_in_b(placing, &in_a);
    thicket_add(placing->in_b, &in_b, PLAN_NONE);
}
