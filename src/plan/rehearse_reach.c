/*
 * Where the head of a point lies, and whether it can be driven: a tool that is handy enough
 * (rehearse_bar.h), a hand that brings it (rehearse_hand.h), and no cloth before either.
 */
#include "plan/rehearse_bar.h"
#include "plan/rehearse_hand.h"

#include <assert.h>

#define INTO_THE_ROOM FIELDS_MM(100) /* of a bolt in a wall or floor */

/* How far behind a side a block of wood begins and ends. */
struct depths {
    int64_t near, far;
};

/* False where the block does not lie under a place of the side. */
static bool lies_under(const struct staged_box *box, const struct lump *lump, int64_t side,
                       struct vector at, struct depths *ret_depths)
{
    assert(side >= 0 && side < SIDE_COUNT);

    const struct facing_out *out = &stage_sides[side];
    int64_t size = stage_size(box->box, out->axis);
    int64_t low = stage_along(lump->solid.low, out->axis);
    int64_t high = stage_along(lump->solid.high, out->axis);

    for (int axis = 0; axis < AXIS_COUNT; axis++)
        if (axis != out->axis && (stage_along(lump->solid.low, axis) > stage_along(at, axis) ||
                                  stage_along(lump->solid.high, axis) <= stage_along(at, axis)))
            return false;
    *ret_depths =
        out->sign > 0 ? (struct depths){size - high, size - low} : (struct depths){low, high};
    return true;
}

int64_t reach_wood_behind(const struct staged_box *box, int64_t side, struct vector at)
{
    struct depths first = {INT64_MAX, 0};
    struct depths depths;

    for (size_t i = 0; box && i < box->lumps.count; i++) {
        const struct lump *lump = &box->lumps.at[i];

        if ((lump->side < 0 || box->box->frame == FRAME_BOARD) &&
            lies_under(box, lump, side, at, &depths) && depths.near < first.near)
            first = depths;
    }
    return first.far;
}

struct head {
    struct vector at;
    int axis, sign; /* away from the wood */
    int64_t length; /* of the screw or bolt */
};

static struct head head_of_bolt(const struct stage *stage, const struct staged_join *join,
                                const struct plan_point *point)
{
    const struct staged_box *a = stage_box(stage, join->junction->box_a);
    const struct staged_box *b = stage_box(stage, join->junction->box_b);
    bool in_b = join->junction->head_box == join->junction->box_b;
    const struct facing_out *out = &stage_sides[in_b ? join->join->side_b : join->join->side_a];
    int64_t in_wood[2] = {reach_wood_behind(a, join->join->side_a, point->in_a),
                          b ? reach_wood_behind(b, join->join->side_b, point->in_b) : 0};
    struct head head = {.axis = out->axis, .sign = -out->sign};

    head.at = stage_moved(in_b ? point->in_b : point->in_a, out->axis, -out->sign * in_wood[in_b]);
    if (!b)
        in_wood[1] = INTO_THE_ROOM + stage->plan->value[TRADE_WALL_BOARD];
    head.length =
        in_wood[0] + in_wood[1] + join->junction->cloth + stage->plan->value[TRADE_BOLT_BEYOND];
    return head;
}

static struct head head_at(const struct stage *stage, const struct staged_join *join, size_t index)
{
    assert(index < stage->plan->points.count);

    const struct plan *plan = stage->plan;
    const struct plan_point *point = &plan->points.at[index];

    if (point->screw == PLAN_NONE)
        return head_of_bolt(stage, join, point);
    const struct screw *screw = &plan->screws.at[point->screw];
    return (struct head){screw->at, screw->axis, -screw->sign,
                         plan->screw_kinds.at[screw->kind].length};
}

/* Cloth over a head that lies on the outside. */
static struct verdict look_for_cloth(const struct stage *stage, const struct staged_join *join,
                                     size_t point)
{
    struct spot spots[STAGE_SPOTS];
    size_t count = stage_spots(stage, join, point, spots);
    assert(count > 0 && count <= STAGE_SPOTS);
    const struct spot *head = &spots[count - 1];
    const struct place place = {head->box,       head->side, head->u, head->v,
                                join->join->key, point,      true};
    const struct sheet *sheet = head->head ? stage_shut_by(stage, &place) : NULL;

    return sheet ? stage_lapse_layer(stage, LAPSE_CLOTH_IN_WAY, sheet->layer) : stage_fine(stage);
}

/* Cloth that the tool would have to stand through, where it is longer than the hollow before it. */
static struct verdict look_through_side(const struct view *view, const struct staged_join *join,
                                        const struct head *head, int64_t length, size_t point)
{
    struct place place = {
        .box = view->box->box->key, .join = join->join->key, .point = point, .opens = true};
    int64_t size = stage_size(view->box->box, head->axis);
    int64_t at = stage_along(head->at, head->axis);
    const struct sheet *sheet;

    for (int64_t side = 0; side < SIDE_COUNT; side++)
        if (stage_sides[side].axis == head->axis && stage_sides[side].sign == head->sign)
            place.side = side;
    assert(stage_sides[place.side].axis == head->axis &&
           stage_sides[place.side].sign == head->sign);
    place.u = stage_along(head->at, stage_sides[place.side].u);
    place.v = stage_along(head->at, stage_sides[place.side].v);
    if (length <= (head->sign > 0 ? size - at : at))
        return stage_fine(view->stage);
    sheet = stage_shut_by(view->stage, &place);
    return sheet ? stage_lapse_layer(view->stage, LAPSE_CLOTH_IN_WAY, sheet->layer)
                 : stage_fine(view->stage);
}

/* With one tool, that has room behind the head. */
static struct verdict reach_with(const struct view *view, const struct staged_join *join,
                                 const struct head *head, int64_t length, size_t point)
{
    const struct grasp grasp = {view, join, head->at, head->axis, head->sign, length};
    struct verdict verdict;

    if (!join->junction->head_inside)
        return look_for_cloth(view->stage, join, point);
    verdict = look_through_side(view, join, head, length, point);
    return verdict.lapse == LAPSE_NONE ? hand_brought(&grasp) : verdict;
}

struct verdict reach_head(const struct stage *stage, const struct staged_join *join, size_t point)
{
    const struct staged_box *box = stage_box(stage, join->junction->head_box);
    struct verdict first = stage_fine(stage);
    struct tool_bar bars[BARS];

    if (!join->junction->reachable || !box)
        return stage_lapse(stage, LAPSE_NO_WAY);
    const struct view *view = look_round(stage, box);
    struct head head = head_at(stage, join, point);
    size_t count = bars_for(stage, join->junction->tool, head.length, bars);

    for (size_t i = 0; i < count; i++) {
        const struct near_by *near = bar_blocked(view, head.at, head.axis, head.sign, &bars[i]);
        struct verdict verdict = near ? look_lapse(stage, LAPSE_WOOD_IN_WAY, near)
                                      : reach_with(view, join, &head, bars[i].length, point);

        if (verdict.lapse == LAPSE_NONE)
            return verdict;
        if (first.lapse == LAPSE_NONE || first.lapse == LAPSE_WOOD_IN_WAY)
            first = first.lapse == LAPSE_NONE || !near ? verdict : first;
    }
    return first;
}
