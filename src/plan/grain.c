/*
 * Screws and the grain of the wood that they go through: how far from its ends, where it splits,
 * and from its edges, and how close in one line (common practice, no source). Of the screws of a
 * frame and of a join the worst is told, with the member it stands in.
 *
 * The end of a rail at a corner is the one place where frames are always closer than is good: there
 * only what is refused is told, and the card of the frame says what makes it hold.
 */
#include "plan/standing.h"

#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/point.h"

#include <assert.h>
#include <string.h>

/* What a screw keeps from the ends and edges of its wood, the less the worse. */
struct worst {
    int64_t distance; /* less what is wanted: below 0 it is too near */
    int64_t is, wanted;
    size_t member;
};

struct keeping {
    struct planning *planning;
    enum entity_kind entity;
    int64_t key;
    struct worst end, edge;
};

static int64_t diameters(const struct planning *planning, enum trade trade, int64_t diameter)
{
    int64_t length;

    return whole_share(diameter, planning->value[trade], 1000000, &length) ? 0 : length;
}

static void keep_worst(struct worst *worst, int64_t is, int64_t wanted, size_t member)
{
    if (is - wanted < worst->distance)
        *worst = (struct worst){is - wanted, is, wanted, member};
}

/* Holds a screw against one member that it goes through or into, all in the axes of its box. */
static void hold_against(struct keeping *keeping, size_t index, struct vector at, int screw_axis,
                         int64_t diameter)
{
    assert(index < keeping->planning->plan->members.count);

    const struct plan_member *member = &keeping->planning->plan->members.at[index];

    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        int64_t place = vector_along(at, axis);
        int64_t is = length_smaller(place - vector_along(member->solid.low, axis),
                                    vector_along(member->solid.high, axis) - place);

        if (axis == screw_axis)
            continue;
        if (axis == member->axis)
            keep_worst(&keeping->end, is,
                       diameters(keeping->planning, TRADE_END_MIN_PILOTED_WARN, diameter), index);
        else
            keep_worst(&keeping->edge, is, screw_edge_margin(keeping->planning->value, diameter),
                       index);
    }
}

/* ---- ways out ---- */

/* As far from both ends of the wood as is wanted, on the marking grid; in the middle where there is
 * no room for that. */
static int64_t drawn_in(const struct planning *planning, int64_t at, int64_t low, int64_t high,
                        int64_t wanted)
{
    int64_t grid = planning->value[TRADE_MARK_GRID];
    int64_t least = low + (wanted + grid - 1) / grid * grid;
    int64_t most = high - (wanted + grid - 1) / grid * grid;

    if (at >= low + wanted && at <= high - wanted)
        return at;
    if (least > most)
        return (low + high) / 2;
    return at < least ? least : most;
}

static struct vector drawn_into(const struct planning *planning, size_t index, struct vector at,
                                int screw_axis, int64_t diameter)
{
    const struct plan_member *member;

    if (index == PLAN_NONE)
        return at;
    member = &planning->plan->members.at[index];
    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        int64_t wanted = axis == member->axis
                             ? diameters(planning, TRADE_END_MIN_PILOTED_WARN, diameter)
                             : screw_edge_margin(planning->value, diameter);

        if (axis != screw_axis)
            vector_set(&at, axis,
                       drawn_in(planning, vector_along(at, axis),
                                vector_along(member->solid.low, axis),
                                vector_along(member->solid.high, axis), wanted));
    }
    return at;
}

/* Where a point would be good in the wood of both boxes, on the face of the first one. */
static void better_place(const struct planning *planning, const struct join *join,
                         const struct plan_point *point, int64_t diameter, int64_t *ret_u,
                         int64_t *ret_v)
{
    const struct junction *junction = plan_junction(planning->plan, join->key);
    struct vector at =
        drawn_into(planning, point->member_a, point->in_a, side_axis(join->side_a), diameter);

    if (junction->box_b)
        at = point_to_a(planning, junction,
                        drawn_into(planning, point->member_b, point_to_b(planning, junction, at),
                                   side_axis(join->side_b), diameter));
    box_to_face(join->side_a, at, ret_u, ret_v);
}

static const struct point *by_hand(const struct model *model, const struct plan_point *point)
{
    for (size_t i = 0; i < model->points.count; i++) {
        const struct point *hand = &model->points.at[i];

        if (hand->join == point->join && hand->u == point->u && hand->v == point->v)
            return hand->existing ? NULL : hand;
    }
    return NULL;
}

static int64_t diameter_at(const struct planning *planning, const struct plan_point *point)
{
    const struct plan *plan = planning->plan;

    return point->screw == PLAN_NONE
               ? screw_gauge_diameter(planning->value[TRADE_SCREW_GAUGE_JOIN])
               : plan->screw_kinds.at[plan->screws.at[point->screw].kind].diameter;
}

static void offer_places(struct planning *planning, const struct join *join,
                         struct finding *finding)
{
    const struct junction *junction = plan_junction(planning->plan, join->key);
    struct cure_draft inward = cure_begin(planning, "Move its holes in, away from edges and ends");
    struct cure_draft free =
        cure_begin(planning, "Take away its holes by hand: the program places them");

    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point = &planning->plan->points.at[junction->first_point + i];
        const struct point *hand = by_hand(planning->model, point);
        int64_t u, v;

        if (!hand)
            continue;
        better_place(planning, join, point, diameter_at(planning, point), &u, &v);
        if (u != point->u)
            cure_length(&inward, ENTITY_point, hand->key, "u", u);
        if (v != point->v)
            cure_length(&inward, ENTITY_point, hand->key, "v", v);
        cure_remove(&free, ENTITY_point, hand->key);
    }
    cure_offer_on_trial(&inward, finding);
    cure_offer_on_trial(&free, finding);
}

static int64_t value_of_build(const struct model *model, const char *name)
{
    for (size_t i = 0; i < model->build_values.count; i++)
        if (strcmp(model->build_values.at[i].name, name) == 0)
            return model->build_values.at[i].key;
    return 0;
}

static void offer_thinner(struct planning *planning, enum trade trade, struct finding *finding)
{
    const char *name = trade_values[trade].key;
    int64_t value = value_of_build(planning->model, name);

    for (int64_t thinner = 1; thinner <= 2; thinner++) {
        int64_t gauge = planning->value[trade] - 2 * thinner;
        struct cure_draft cure;

        if (gauge < trade_values[trade].least)
            return;
        cure = cure_begin(
            planning, arena_format(planning->arena, "Take thinner screws there, #%d", (int)gauge));
        if (!value)
            cure_word(&cure, ENTITY_build_value, 0, "name", name);
        cure_count(&cure, ENTITY_build_value, value, "value", gauge);
        cure_offer_on_trial(&cure, finding);
    }
}

static void offer_ways_out(const struct keeping *keeping, struct finding *finding)
{
    struct planning *planning = keeping->planning;

    if (keeping->entity == ENTITY_join)
        offer_places(planning, MODEL_FIND(planning->model, join, keeping->key), finding);
    offer_thinner(planning,
                  keeping->entity == ENTITY_join ? TRADE_SCREW_GAUGE_JOIN : TRADE_SCREW_GAUGE_FRAME,
                  finding);
}

/* ---- telling ---- */

static void tell(const struct keeping *keeping, enum finding_kind kind, const struct worst *worst,
                 int64_t wanted)
{
    assert(worst->member < keeping->planning->plan->members.count);

    struct finding *finding = finding_add(keeping->planning, kind, keeping->entity, keeping->key);

    argument_length(finding, 0, length_larger(worst->is, 0));
    argument_length(finding, 1, wanted);
    argument_text(finding, 2, keeping->planning->plan->members.at[worst->member].label);
    offer_ways_out(keeping, finding);
}

/* Four sevenths of what is wanted are the least: the trade's two values, 4 and 7 diameters. */
static int64_t end_least(const struct planning *planning, int64_t wanted)
{
    int64_t least;

    return whole_share(wanted, planning->value[TRADE_END_MIN_PILOTED_REJECT],
                       planning->value[TRADE_END_MIN_PILOTED_WARN], &least)
               ? 0
               : least;
}

static void tell_worst(const struct keeping *keeping)
{
    const struct worst *end = &keeping->end;
    int64_t least = end_least(keeping->planning, end->wanted);

    if (keeping->edge.distance < 0)
        tell(keeping, FINDING_SCREW_EDGE, &keeping->edge, keeping->edge.wanted);
    if (end->distance >= 0)
        return;
    if (end->is < least)
        tell(keeping, FINDING_SCREW_END, end, least);
    else if (keeping->entity != ENTITY_box)
        tell(keeping, FINDING_SCREW_END_NEAR, end, end->wanted);
}

static struct keeping keeping_of(struct planning *planning, enum entity_kind entity, int64_t key)
{
    const struct worst none = {.distance = INT64_MAX, .member = PLAN_NONE};

    return (struct keeping){planning, entity, key, none, none};
}

/* ---- frames ---- */

static void hold_frame_screw(struct keeping *keeping, const struct screw *screw)
{
    assert(screw->use == SCREW_FRAME && screw->of < keeping->planning->plan->joints.count);

    const struct plan *plan = keeping->planning->plan;
    const struct joint *joint = &plan->joints.at[screw->of];
    int64_t diameter = plan->screw_kinds.at[screw->kind].diameter;

    hold_against(keeping, joint->through, screw->at, screw->axis, diameter);
    hold_against(keeping, joint->into, screw->at, screw->axis, diameter);
}

static void check_frames(struct planning *planning)
{
    const struct plan *plan = planning->plan;
    size_t i = 0;

    while (i < plan->screws.count && plan->screws.at[i].use == SCREW_FRAME) {
        int64_t box = plan->screws.at[i].box;
        struct keeping keeping = keeping_of(planning, ENTITY_box, box);

        for (; i < plan->screws.count && plan->screws.at[i].use == SCREW_FRAME &&
               plan->screws.at[i].box == box;
             i++)
            hold_frame_screw(&keeping, &plan->screws.at[i]);
        tell_worst(&keeping);
    }
}

/* ---- joins ---- */

static void hold_point(struct keeping *keeping, const struct join *join,
                       const struct plan_point *point)
{
    int64_t diameter = diameter_at(keeping->planning, point);

    if (point->member_a != PLAN_NONE)
        hold_against(keeping, point->member_a, point->in_a, side_axis(join->side_a), diameter);
    if (point->member_b != PLAN_NONE)
        hold_against(keeping, point->member_b, point->in_b, side_axis(join->side_b), diameter);
}

/* In one line of grain nearer than the least: the wood splits from hole to hole. */
static bool split_between(const struct planning *planning, const struct plan_point *a,
                          const struct plan_point *b, int64_t *ret_apart)
{
    assert(a->member_a != PLAN_NONE && a->member_a == b->member_a);

    const struct plan_member *member = &planning->plan->members.at[a->member_a];
    int64_t along =
        vector_along(a->in_a, (int)member->axis) - vector_along(b->in_a, (int)member->axis);
    struct vector off = {a->in_a.x - b->in_a.x, a->in_a.y - b->in_a.y, a->in_a.z - b->in_a.z};
    int64_t across;

    vector_set(&off, (int)member->axis, 0);
    across = vector_length(off);
    *ret_apart = along < 0 ? -along : along;
    return across < planning->value[TRADE_ACROSS_MIN] &&
           *ret_apart < planning->value[TRADE_ALONG_MIN];
}

static void check_spacing(struct planning *planning, const struct junction *junction)
{
    const struct plan_point *at = &planning->plan->points.at[junction->first_point];
    int64_t closest = planning->value[TRADE_ALONG_MIN];
    size_t member = PLAN_NONE;

    for (size_t i = 0; i < junction->point_count; i++)
        for (size_t k = i + 1; k < junction->point_count; k++) {
            int64_t apart;

            if (!at[k].taken || at[i].member_a == PLAN_NONE || at[i].member_a != at[k].member_a ||
                !split_between(planning, &at[i], &at[k], &apart) || apart >= closest)
                continue;
            closest = apart;
            member = at[i].member_a;
        }
    if (member == PLAN_NONE)
        return;
    struct finding *finding =
        finding_add(planning, FINDING_HOLES_IN_LINE, ENTITY_join, junction->join);
    argument_length(finding, 0, closest);
    argument_length(finding, 1, planning->value[TRADE_ALONG_MIN]);
    argument_text(finding, 2, planning->plan->members.at[member].label);
}

static void check_join(struct planning *planning, const struct junction *junction)
{
    const struct join *join = MODEL_FIND(planning->model, join, junction->join);
    struct keeping keeping = keeping_of(planning, ENTITY_join, junction->join);

    assert(join);
    for (size_t i = 0; i < junction->point_count; i++)
        hold_point(&keeping, join, &planning->plan->points.at[junction->first_point + i]);
    tell_worst(&keeping);
    if (junction->point_count > 0)
        check_spacing(planning, junction);
}

void check_grain(struct planning *planning)
{
    check_frames(planning);
    for (size_t i = 0; i < planning->plan->junctions.count; i++)
        check_join(planning, &planning->plan->junctions.at[i]);
}
