/*
 * From some place on the tool's axis the fingers go aside along a line; from there the hand goes
 * straight out through the reach side, no farther than an arm, and a hand's length beyond it.
 */
#include "plan/rehearse_hand.h"

struct hindrance {
    const struct near_by *wood;
    const struct sheet *cloth;
};

/* The side that the hand comes through. */
static const struct facing_out *way_out(const struct grasp *grasp)
{
    return &stage_sides[grasp->join->junction->reach_side];
}

static bool leans_into(const struct near_by *near, const struct solid *block)
{
    struct body body;

    if (!near->leans)
        return true;
    body = body_of_block(block);
    return bodies_meet(near->leans, &body);
}

static const struct near_by *stands_in_block(const struct view *view, const struct solid *block)
{
    for (size_t i = 0; i < view->near.count; i++) {
        const struct solid *solid = &view->near.at[i].solid;
        bool meets = true;

        for (int axis = 0; axis < AXIS_COUNT; axis++)
            meets = meets && stage_along(solid->low, axis) < stage_along(block->high, axis) &&
                    stage_along(block->low, axis) < stage_along(solid->high, axis);
        if (meets && leans_into(&view->near.at[i], block))
            return &view->near.at[i];
    }
    return NULL;
}

/* From a place along an axis, as a bar of a half width. */
static struct solid bar_along(struct vector at, int axis, int64_t by, int64_t half)
{
    struct solid bar = {at, at};

    for (int other = 0; other < AXIS_COUNT; other++) {
        int64_t back = other == axis ? (by < 0 ? by : 0) : -half;
        int64_t on = other == axis ? (by > 0 ? by : 0) : half;

        bar.low = stage_moved(bar.low, other, back);
        bar.high = stage_moved(bar.high, other, on);
    }
    return bar;
}

/* Straight out through the side from a place: NULL when it can. Somebody who stands too far away
 * for an arm is told as the box itself. */
static const struct near_by *stands_outward(const struct grasp *grasp, struct vector at)
{
    static const struct near_by too_far = {.entity = ENTITY_none, .since = PLAN_NONE};
    const struct facing_out *out = way_out(grasp);
    const int64_t *value = grasp->view->stage->plan->value;
    int64_t size = stage_size(grasp->view->box->box, out->axis);
    int64_t way = out->sign > 0 ? size - stage_along(at, out->axis) : stage_along(at, out->axis);
    int64_t whole = (way > 0 ? way : 0) + value[TRADE_HAND_HOLE_HEIGHT];
    struct solid hand =
        bar_along(at, out->axis, out->sign * whole, value[TRADE_HAND_HOLE_WIDTH] / 4);

    if (way > value[TRADE_ARM_REACH])
        return &too_far;
    return stands_in_block(grasp->view, &hand);
}

/* Cloth over the place where the hand goes in that cannot be held aside for this join. */
static const struct sheet *cloth_over_entry(const struct grasp *grasp, struct vector at)
{
    const struct facing_out *out = way_out(grasp);
    const struct place place = {.box = grasp->view->box->box->key,
                                .side = grasp->join->junction->reach_side,
                                .u = stage_along(at, out->u),
                                .v = stage_along(at, out->v),
                                .join = grasp->join->join->key,
                                .point = PLAN_NONE,
                                .opens = true};

    return stage_shut_by(grasp->view->stage, &place);
}

/* What is beside the box does not come through its side. */
static bool is_behind_side(const struct grasp *grasp, struct vector at)
{
    const struct facing_out *out = way_out(grasp);
    const struct box *box = grasp->view->box->box;

    return stage_along(at, out->u) >= 0 && stage_along(at, out->u) < stage_size(box, out->u) &&
           stage_along(at, out->v) >= 0 && stage_along(at, out->v) < stage_size(box, out->v);
}

/* Whether a hand comes out from a place; else why not, cloth being told before wood. */
static bool comes_out(const struct grasp *grasp, struct vector at, struct hindrance *hindrance)
{
    const struct near_by *wood;
    const struct sheet *cloth;

    if (!is_behind_side(grasp, at))
        return false;
    wood = stands_outward(grasp, at);
    if (wood) {
        hindrance->wood = hindrance->wood ? hindrance->wood : wood;
        return false;
    }
    cloth = cloth_over_entry(grasp, at);
    if (cloth)
        hindrance->cloth = cloth;
    return !cloth;
}

#define PACES 8 /* to either side: as far as fingers get round a corner */

/* Fingers go from a place along one axis across the reach side, then along the other. */
static bool fingers_come(const struct grasp *grasp, struct vector at, int first, int64_t by_first,
                         int second, int64_t by_second)
{
    struct solid along = bar_along(at, first, by_first, 0);
    struct solid across = bar_along(stage_moved(at, first, by_first), second, by_second, 0);

    return !stands_in_block(grasp->view, &along) && !stands_in_block(grasp->view, &across);
}

/* From a place on the tool's axis: straight out, or first aside. */
static bool comes_out_aside(const struct grasp *grasp, struct vector at,
                            struct hindrance *hindrance)
{
    const struct facing_out *out = way_out(grasp);
    int64_t pace = grasp->view->stage->plan->value[TRADE_HAND_HOLE_WIDTH] / 4;

    if (comes_out(grasp, at, hindrance))
        return true;
    for (int64_t u = -PACES; u <= PACES; u++)
        for (int64_t v = -PACES; v <= PACES; v++) {
            struct vector aside = stage_moved(stage_moved(at, out->u, u * pace), out->v, v * pace);

            if ((fingers_come(grasp, at, out->u, u * pace, out->v, v * pace) ||
                 fingers_come(grasp, at, out->v, v * pace, out->u, u * pace)) &&
                comes_out(grasp, aside, hindrance))
                return true;
        }
    return false;
}

/* Round the end of the tool, or from one side of it. */
static bool holds_end(const struct grasp *grasp, int aside, int64_t by)
{
    int64_t half = grasp->view->stage->plan->value[TRADE_HAND_HOLE_WIDTH] / 4;
    struct vector from =
        stage_moved(grasp->head, grasp->axis, grasp->sign * (grasp->length - 2 * half));
    struct solid hand =
        bar_along(stage_moved(from, aside, by * half), grasp->axis, grasp->sign * 2 * half, half);

    return !stands_in_block(grasp->view, &hand);
}

/* Where the tool is longer than the hollow before it, the hand holds it outside. */
static bool holds_outside(const struct grasp *grasp)
{
    int64_t size = stage_size(grasp->view->box->box, grasp->axis);
    int64_t at = stage_along(grasp->head, grasp->axis);
    int64_t out = grasp->sign > 0 ? size - at : at;
    bool holds = false;

    for (int aside = 0; aside < AXIS_COUNT; aside++)
        for (int64_t by = -1; by <= 1; by++)
            holds = holds || (aside != grasp->axis && holds_end(grasp, aside, by));
    return holds &&
           out + grasp->view->stage->plan->value[TRADE_HAND_HOLE_WIDTH] / 2 < grasp->length;
}

static bool hand_comes(const struct grasp *grasp, struct hindrance *hindrance)
{
    if (holds_outside(grasp))
        return true;
    for (int64_t away = LENGTH_INCH / 2; away <= grasp->length; away += LENGTH_INCH) {
        struct vector at = stage_moved(grasp->head, grasp->axis, grasp->sign * away);

        if (comes_out_aside(grasp, at, hindrance))
            return true;
    }
    return false;
}

struct verdict hand_brought(const struct grasp *grasp)
{
    const struct stage *stage = grasp->view->stage;
    struct hindrance hindrance = {NULL, NULL};

    if (hand_comes(grasp, &hindrance))
        return stage_fine(stage);
    if (hindrance.cloth)
        return stage_lapse_layer(stage, LAPSE_CLOTH_IN_WAY, hindrance.cloth->layer);
    if (!hindrance.wood)
        return stage_lapse(stage, LAPSE_NO_HAND);
    return look_lapse(stage, LAPSE_NO_HAND, hindrance.wood);
}
