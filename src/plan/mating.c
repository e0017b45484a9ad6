/*
 * Two boxes face to face: where a place on one is on the other, and where their faces overlap.
 * Everything goes through the room, in which each box has its pose.
 */
#include "plan/place.h"

#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/pose.h"
#include "plan/stance.h"
#include "plan/stance_cure.h"

#include <assert.h>
#include <stdlib.h>

/* Faces further apart than this do not meet, cloth and rounding apart. */
#define FACES_MEET (6 * LENGTH_MM)

/* Wood that leans on the other face is cut into strips so long for their width, but not into more
 * than so many. */
#define STRIP_LENGTH 3
#define STRIPS_MOST 100

/* ---- from box to box ---- */

struct vector point_to_b(const struct planning *planning, const struct junction *junction,
                         struct vector in_a)
{
    const struct box *a = MODEL_FIND(planning->model, box, junction->box_a);
    const struct box *b = MODEL_FIND(planning->model, box, junction->box_b);

    assert(a && b);
    return pose_across(plan_pose(planning->plan, a->key), a, plan_pose(planning->plan, b->key), b,
                       in_a);
}

struct vector point_to_a(const struct planning *planning, const struct junction *junction,
                         struct vector in_b)
{
    const struct box *a = MODEL_FIND(planning->model, box, junction->box_a);
    const struct box *b = MODEL_FIND(planning->model, box, junction->box_b);

    assert(a && b);
    return pose_across(plan_pose(planning->plan, b->key), b, plan_pose(planning->plan, a->key), a,
                       in_b);
}

int64_t point_side(const struct planning *planning, const struct junction *junction, bool of_b)
{
    const struct join *join = MODEL_FIND(planning->model, join, junction->join);

    assert(join);
    return of_b ? join->side_b : join->side_a;
}

bool join_is_to_box(const struct join *join)
{
    return join->target == TARGET_BOX || join->target == TARGET_OTHER_BUILD;
}

bool join_is_in_room(const struct join *join)
{
    return join->place == PLACE_SITE || !join_is_to_box(join);
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

/* A flat block of a face as it lies on a face of the other box: the smallest area round it. */
static struct area area_round(const struct placing *placing, bool from_b, const struct area *area)
{
    const struct plan *plan = placing->planning->plan;
    const struct box *from = from_b ? placing->b : placing->a;
    const struct box *to = from_b ? placing->a : placing->b;
    int64_t side = from_b ? placing->join->side_b : placing->join->side_a;
    struct solid flat = {face_to_box(from, side, area->u0, area->v0),
                         face_to_box(from, side, area->u1, area->v1)};
    struct solid there =
        pose_block_across(plan_pose(plan, from->key), from, plan_pose(plan, to->key), to, &flat);

    return solid_on_side(&there, from_b ? placing->join->side_a : placing->join->side_b);
}

struct area place_area_to_b(const struct placing *placing, const struct area *on_a)
{
    return area_round(placing, false, on_a);
}

/* How a rectangle lies that leans in the plane of the face: by 0 to 45 degrees. */
struct leaning {
    int64_t wide, high; /* along u and v as nearly as it goes */
    int64_t sine, cosine;
};

/* A part of one, made of the directions of two axes. */
static int64_t part_along(struct vector a, struct vector b)
{
    return llabs(a.x * b.x / POSE_ONE + a.y * b.y / POSE_ONE + a.z * b.z / POSE_ONE);
}

static struct leaning lean_on_a(const struct placing *placing, const struct area *on_b)
{
    const struct pose *a = plan_pose(placing->planning->plan, placing->a->key);
    const struct pose *b = plan_pose(placing->planning->plan, placing->b->key);
    struct vector u_b = pose_axis(b, side_u_axis(placing->join->side_b));
    int64_t by_u = part_along(u_b, pose_axis(a, side_u_axis(placing->join->side_a)));
    int64_t by_v = part_along(u_b, pose_axis(a, side_v_axis(placing->join->side_a)));
    int64_t width = area_width(on_b);
    int64_t height = area_height(on_b);

    return by_u >= by_v ? (struct leaning){width, height, by_v, by_u}
                        : (struct leaning){height, width, by_u, by_v};
}

/* The largest upright rectangle in one that leans: either two of its corners lie on the long sides,
 * or all four on the four sides. */
static struct leaning upright_in(const struct leaning *leaning)
{
    int64_t sine = leaning->sine;
    int64_t cosine = leaning->cosine;
    int64_t longer = length_larger(leaning->wide, leaning->high);
    int64_t shorter = length_smaller(leaning->wide, leaning->high);
    int64_t across = (cosine - sine) * (cosine + sine) / POSE_ONE;

    assert(sine > 0 && cosine >= sine);
    if (2 * (sine * cosine / POSE_ONE) * longer >= shorter * POSE_ONE) {
        int64_t along_sine = shorter * POSE_ONE / (2 * sine);
        int64_t along_cosine = shorter * POSE_ONE / (2 * cosine);

        return leaning->wide >= leaning->high ? (struct leaning){along_sine, along_cosine, 0, 0}
                                              : (struct leaning){along_cosine, along_sine, 0, 0};
    }
    return (struct leaning){(leaning->wide * cosine - leaning->high * sine) / across,
                            (leaning->high * cosine - leaning->wide * sine) / across, 0, 0};
}

static bool leans_on_a(const struct placing *placing)
{
    const struct plan *plan = placing->planning->plan;

    return !poses_agree(plan_pose(plan, placing->a->key), plan_pose(plan, placing->b->key));
}

int64_t place_strips(const struct placing *placing, const struct area *on_b)
{
    int64_t longer = length_larger(area_width(on_b), area_height(on_b));
    int64_t shorter = length_smaller(area_width(on_b), area_height(on_b));

    if (area_empty(on_b) || !leans_on_a(placing))
        return 1;
    return length_smaller(whole_divide_up(longer, STRIP_LENGTH * shorter), STRIPS_MOST);
}

/* The strip of an area, cut across its longer side. */
static struct area strip_of(const struct area *area, int64_t strip, int64_t count)
{
    struct area cut = *area;

    if (area_width(area) >= area_height(area)) {
        cut.u0 = area->u0 + area_width(area) * strip / count;
        cut.u1 = area->u0 + area_width(area) * (strip + 1) / count;
    } else {
        cut.v0 = area->v0 + area_height(area) * strip / count;
        cut.v1 = area->v0 + area_height(area) * (strip + 1) / count;
    }
    return cut;
}

struct area place_strip_to_a(const struct placing *placing, const struct area *on_b, int64_t strip)
{
    struct area cut = strip_of(on_b, strip, place_strips(placing, on_b));
    struct area round = area_round(placing, true, &cut);

    if (!leans_on_a(placing))
        return round;
    struct leaning leaning = lean_on_a(placing, &cut);
    struct leaning upright = upright_in(&leaning);
    int64_t u = (round.u0 + round.u1 - upright.wide) / 2;
    int64_t v = (round.v0 + round.v1 - upright.high) / 2;
    return (struct area){u, v, u + upright.wide, v + upright.high};
}

/* ---- zone ---- */

static int64_t gap_between(const struct placing *placing)
{
    int axis = side_axis(placing->join->side_a);
    struct vector here = face_to_box(placing->a, placing->join->side_a, 0, 0);
    struct vector there = point_to_a(placing->planning, &placing->junction,
                                     face_to_box(placing->b, placing->join->side_b, 0, 0));
    int64_t gap = vector_along(there, axis) - vector_along(here, axis);

    return gap < 0 ? -gap : gap;
}

/* Whether the join is told already to want another place: then it is no news that faces are apart.
 */
static bool contradicts(const struct placing *placing)
{
    const struct pose *stands = plan_pose(placing->planning->plan, placing->b->key);
    struct pose wanted;

    assert(stands);
    return !stance_wanted(placing->planning, placing->join, &wanted) ||
           wanted.turn != stands->turn || !stance_same_place(&wanted, stands);
}

static void tell_askew(const struct placing *placing, int64_t askew)
{
    struct finding *finding =
        finding_add(placing->planning, FINDING_JOIN_FACES_ASKEW, ENTITY_join, placing->join->key);

    argument_quantity(finding, 0, QUANTITY_ANGLE, askew);
    stance_cure_lean(placing->planning, placing->join, finding);
}

/* How far [low, high) has to be moved to lie on [0, whole), or over all of it. */
static int64_t way_onto(int64_t low, int64_t high, int64_t whole)
{
    int64_t past = high - whole;

    if (low < 0)
        return length_smaller(-low, length_larger(-past, 0));
    return -length_smaller(low, length_larger(past, 0));
}

static void tell_past(const struct placing *placing, const struct area *there)
{
    const struct area *zone = &placing->junction.zone;
    struct area face = face_area(placing->a, placing->join->side_a);
    struct finding *finding =
        finding_add(placing->planning, FINDING_JOIN_FACES_PAST, ENTITY_join, placing->join->key);

    argument_length(finding, 0,
                    length_larger(length_larger(-area_width(zone), -area_height(zone)), 0));
    stance_cure_miss(placing->planning, placing->join, way_onto(there->u0, there->u1, face.u1),
                     way_onto(there->v0, there->v1, face.v1), finding);
}

/* What keeps the faces from meeting, told unless it is a contradiction; false when nothing does. A
 * join that placed a box, or agrees with those that did, has its faces in one plane. */
static bool faces_miss(const struct placing *placing, const struct area *there)
{
    const struct plan *plan = placing->planning->plan;
    int64_t askew = pose_askew(plan_pose(plan, placing->a->key), placing->join->side_a,
                               plan_pose(plan, placing->b->key), placing->join->side_b);

    if (askew == 0 && gap_between(placing) <= FACES_MEET && !area_empty(&placing->junction.zone))
        return false;
    if (contradicts(placing))
        return true;
    if (askew > 0)
        tell_askew(placing, askew);
    else
        tell_past(placing, there);
    return true;
}

void place_zone(struct placing *placing)
{
    struct area face = face_area(placing->a, placing->join->side_a);
    struct junction *junction = &placing->junction;

    junction->zone = face;
    if (!placing->b)
        return;
    struct area face_b = face_area(placing->b, placing->join->side_b);
    struct area there = area_round(placing, true, &face_b);
    junction->zone = area_cut(&face, &there);
    if (faces_miss(placing, &there)) {
        junction->zone = (struct area){0};
        return;
    }
    there = area_round(placing, false, &junction->zone);
    junction->zone_b = area_cut(&face_b, &there);
}
