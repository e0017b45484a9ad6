/*
 * A driver behind a head, and a hand that brings it there.
 *
 * 1  All that stands near is seen from the box with the heads: its own wood, and that of every box
 *    joined to it by now; once it is fixed in the room, the wood of all that is fixed there, and
 *    the walls; in the room the floor under it.
 * 2  A tool is a round bar behind the head, as long as it needs with the screw before it. Nothing
 *    comes nearer to its axis than its radius. A driver with a bit may be held at a slant, which
 *    takes as much off its radius as the slant moves its body aside.
 * 3  A hand is a block half as wide as a hand hole. From some place on the tool's axis the fingers
 *    go aside along a line; from there the hand goes straight out through the reach side, no
 *    farther than an arm, and a hand's length beyond it.
 */
#include "plan/rehearse_stage.h"

#include <assert.h>
#include <stdlib.h>

#define FAR_OUT (FIELDS_ROOM)
#define INTO_THE_ROOM FIELDS_MM(100) /* of a bolt in a wall or floor */

/* ---- what stands near ---- */

struct near_by {
    struct solid solid;       /* in the axes of the box with the heads */
    const struct body *leans; /* what lies within it, where that leans to these axes; else NULL */
    enum entity_kind entity;
    int64_t key;
    const char *label;
    size_t since;
};

struct view {
    const struct stage *stage;
    const struct staged_box *box;
    LIST_OF(struct near_by) near;
    size_t at; /* the step of the look round */
};

/* What lies there by its own weight is lifted off, unless something is fixed over it. */
static bool is_held_down(const struct stage *stage, const struct staged_box *box, int64_t side)
{
    for (size_t i = 0; i < box->sheets.count; i++)
        if (box->sheets.at[i].side == side && box->sheets.at[i].own &&
            (STAGE_CLOTH & 1u << stage->layers[box->sheets.at[i].layer].layer->kind) &&
            stage->layers[box->sheets.at[i].layer].fixed != PLAN_NONE)
            return true;
    return false;
}

/* Wood of another box, from its own axes to those of the box with the heads. */
static void turn_towards(struct view *view, const struct staged_box *of, struct near_by *near)
{
    struct body *body;

    if (stage_axes_agree(of, view->box)) {
        near->solid = stage_solid_seen(of, view->box, &near->solid);
        return;
    }
    body = ARENA_NEW(view->stage->arena, struct body);
    *body = stage_body_seen(of, view->box, &near->solid);
    near->solid = body_outline(body);
    near->leans = body;
}

static void see(struct view *view, const struct staged_box *of, const struct lump *lump)
{
    struct near_by *near;

    if (lump->since == PLAN_NONE || (lump->laid_on && !is_held_down(view->stage, of, lump->side)))
        return;
    near = LIST_ADD(view->stage->arena, &view->near);
    *near = (struct near_by){
        .entity = lump->entity, .key = lump->key, .label = lump->label, .since = lump->since};
    near->solid = lump->solid;
    if (of != view->box)
        turn_towards(view, of, near);
}

/* Half of the room, seen from the box: everything on the other side of a plane. */
static void see_half(struct view *view, int axis, int64_t at, int sign, enum entity_kind entity,
                     int64_t key, size_t since)
{
    const struct staged_box room = {.box = view->box->box, .cosine = 1}; /* the room's own axes */
    struct solid half = {{-FAR_OUT, -FAR_OUT, -FAR_OUT}, {FAR_OUT, FAR_OUT, FAR_OUT}};
    int64_t from = sign > 0 ? at : -FAR_OUT;
    int64_t to = sign > 0 ? FAR_OUT : at;
    struct near_by *near = LIST_ADD(view->stage->arena, &view->near);

    assert(sign == 1 || sign == -1);
    half.low = stage_moved(half.low, axis, from + FAR_OUT);
    half.high = stage_moved(half.high, axis, to - FAR_OUT);
    *near = (struct near_by){.solid = half, .entity = entity, .key = key, .since = since};
    turn_towards(view, &room, near);
}

static void see_walls(struct view *view, size_t since)
{
    const struct stage *stage = view->stage;

    for (size_t i = 0; i < stage->model->walls.count; i++) {
        const struct wall *wall = &stage->model->walls.at[i];
        const struct facing_out *out = &stage_sides[wall->side];
        struct vector corner = out->sign > 0 ? stage->high : stage->low;

        see_half(view, out->axis, stage_along(corner, out->axis) + out->sign * wall->gap, out->sign,
                 ENTITY_wall, wall->key, since);
    }
}

/* No tool and no hand comes farther out of a box than this. */
static int64_t farthest(const struct stage *stage)
{
    int64_t longest = FIELDS_MM(1000);

    for (size_t i = 0; i < stage->model->tools.count; i++)
        if (stage->model->tools.at[i].length > longest)
            longest = stage->model->tools.at[i].length;
    return longest + FIELDS_MM(500);
}

static bool is_near(const struct view *view, const struct staged_box *other)
{
    const struct box *box = other->box;
    const struct solid whole = {{0, 0, 0}, {box->width, box->depth, box->height}};
    struct solid seen = stage_solid_seen(other, view->box, &whole);
    int64_t far = farthest(view->stage);

    for (int axis = 0; axis < AXIS_COUNT; axis++)
        if (stage_along(seen.low, axis) > stage_size(view->box->box, axis) + far ||
            stage_along(seen.high, axis) < -far)
            return false;
    return true;
}

/* What is fixed to the room stands together, whether or not it is joined. */
static bool stands_with(const struct staged_box *box, const struct staged_box *other)
{
    return other->group == box->group || (box->in_room != PLAN_NONE && other->in_room != PLAN_NONE);
}

static void look_again(struct view *view)
{
    const struct stage *stage = view->stage;
    bool on_legs = false;

    view->near.count = 0;
    for (size_t i = 0; i < stage->model->boxes.count; i++) {
        const struct staged_box *other = &stage->boxes[i];

        on_legs |= other->legs != PLAN_NONE;
        if (!stands_with(view->box, other) || !is_near(view, other))
            continue;
        for (size_t j = 0; j < other->lumps.count; j++)
            see(view, other, &other->lumps.at[j]);
    }
    if (view->box->in_room != PLAN_NONE)
        see_walls(view, view->box->in_room);
    if (stage->now != PLAN_NONE && stage->plan->steps.at[stage->now].place == PLACE_SITE &&
        !on_legs)
        see_half(view, AXIS_Z, view->box->pose ? view->box->pose->floor : 0, -1, ENTITY_none, 0,
                 PLAN_NONE);
}

struct view *reach_begin(struct arena *arena)
{
    return ARENA_NEW(arena, struct view);
}

/* Once a step and box: nothing moves while the heads of a join are driven. */
static const struct view *look_round(const struct stage *stage, const struct staged_box *box)
{
    struct view *view = stage->view;

    if (view->box == box && view->at == stage->now)
        return view;
    view->stage = stage;
    view->box = box;
    view->at = stage->now;
    look_again(view);
    return view;
}

/* ---- tools ---- */

struct tool_bar {
    int64_t length; /* behind the head, the screw included */
    int64_t radius;
};

static struct tool_bar own_tool(const struct stage *stage, int64_t kind, struct tool_bar bar)
{
    for (size_t i = 0; i < stage->model->tools.count; i++) {
        const struct tool *tool = &stage->model->tools.at[i];

        if (tool->kind == kind && tool->length > 0)
            return (struct tool_bar){tool->length, tool->radius > 0 ? tool->radius : bar.radius};
    }
    return bar;
}

#define BARS 5
#define MICRORADIANS 17453 /* in a degree, rounded down */

/* The tools that may be used where the plan chose one: that one, and those that are handier. */
static size_t bars_for(const struct stage *stage, int64_t tool, int64_t screw,
                       struct tool_bar bars[BARS])
{
    static const int64_t kinds[] = {TOOL_DRIVER, TOOL_LONG_BIT, TOOL_RIGHT_ANGLE, TOOL_STUBBY};
    const int64_t *value = stage->plan->value;
    const struct tool_bar usual[] = {
        {value[TRADE_DRIVER_INLINE], value[TRADE_DRIVER_RADIUS]},
        {value[TRADE_DRIVER_BODY] + value[TRADE_DRIVER_BIT_LONG] + value[TRADE_DRIVER_SLACK],
         value[TRADE_DRIVER_RADIUS_LONG_BIT]},
        {value[TRADE_DRIVER_RIGHT_ANGLE], value[TRADE_DRIVER_RADIUS_LONG_BIT]},
        {value[TRADE_DRIVER_STUBBY], value[TRADE_DRIVER_RADIUS_LONG_BIT]}};
    size_t count = 0;

    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        bars[count] = own_tool(stage, kinds[i], usual[i]);
        bars[count++].length += screw;
        if (kinds[i] == tool)
            break;
    }
    if (tool != TOOL_DRIVER) {
        int64_t aside = (value[TRADE_DRIVER_BIT] + screw) * value[TRADE_DRIVER_OFF_AXIS] / 1000 *
                        MICRORADIANS / 1000000;

        bars[count] = bars[0];
        bars[count++].radius -= aside;
    }
    assert(count > 0 && count <= BARS);
    return count;
}

/* ---- a bar behind a head ---- */

static int64_t gap(int64_t at, int64_t low, int64_t high)
{
    return at < low ? low - at : at > high ? at - high : 0;
}

static bool is_in_bar(const struct solid *solid, struct vector head, int axis, int sign,
                      const struct tool_bar *bar)
{
    int64_t from = stage_along(head, axis);
    int64_t low = sign > 0 ? from : from - bar->length;
    int64_t square = 0;

    if (stage_along(solid->low, axis) >= low + bar->length || stage_along(solid->high, axis) <= low)
        return false;
    for (int other = 0; other < AXIS_COUNT; other++) {
        int64_t aside = other == axis
                            ? 0
                            : gap(stage_along(head, other), stage_along(solid->low, other),
                                  stage_along(solid->high, other));
        square += aside * aside;
    }
    return square < bar->radius * bar->radius;
}

/* What leans may come into the block that the bar meets and not into the bar. */
static bool leans_into_bar(const struct near_by *near, struct vector head, int axis, int sign,
                           const struct tool_bar *bar)
{
    struct body round;

    if (!near->leans)
        return true;
    round = body_of_bar(head, axis, sign * bar->length, bar->radius);
    return bodies_meet(near->leans, &round);
}

static const struct near_by *stands_in_bar(const struct view *view, struct vector head, int axis,
                                           int sign, const struct tool_bar *bar)
{
    for (size_t i = 0; i < view->near.count; i++)
        if (is_in_bar(&view->near.at[i].solid, head, axis, sign, bar) &&
            leans_into_bar(&view->near.at[i], head, axis, sign, bar))
            return &view->near.at[i];
    return NULL;
}

/* ---- a hand ---- */

struct grasp {
    const struct view *view;
    struct vector head;
    int axis, sign; /* the tool's, away from the wood */
    int64_t length; /* of the tool */
    int64_t side;   /* it comes through */
};

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
    const struct facing_out *out = &stage_sides[grasp->side];
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
static const struct sheet *cloth_over_entry(const struct grasp *grasp, struct vector at,
                                            const struct staged_join *join)
{
    const struct facing_out *out = &stage_sides[grasp->side];
    const struct place place = {.box = grasp->view->box->box->key,
                                .side = grasp->side,
                                .u = stage_along(at, out->u),
                                .v = stage_along(at, out->v),
                                .join = join->join->key,
                                .point = PLAN_NONE,
                                .opens = true};

    return stage_shut_by(grasp->view->stage, &place);
}

struct hindrance {
    const struct near_by *wood;
    const struct sheet *cloth;
};

/* What is beside the box does not come through its side. */
static bool is_behind_side(const struct grasp *grasp, struct vector at)
{
    const struct facing_out *out = &stage_sides[grasp->side];
    const struct box *box = grasp->view->box->box;

    return stage_along(at, out->u) >= 0 && stage_along(at, out->u) < stage_size(box, out->u) &&
           stage_along(at, out->v) >= 0 && stage_along(at, out->v) < stage_size(box, out->v);
}

/* Whether a hand comes out from a place; else why not, cloth being told before wood. */
static bool comes_out(const struct grasp *grasp, struct vector at, const struct staged_join *join,
                      struct hindrance *hindrance)
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
    cloth = cloth_over_entry(grasp, at, join);
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

    return (by_first == 0 || !stands_in_block(grasp->view, &along)) &&
           (by_second == 0 || !stands_in_block(grasp->view, &across));
}

/* From a place on the tool's axis: straight out, or first aside. */
static bool comes_out_aside(const struct grasp *grasp, struct vector at,
                            const struct staged_join *join, struct hindrance *hindrance)
{
    const struct facing_out *out = &stage_sides[grasp->side];
    int64_t pace = grasp->view->stage->plan->value[TRADE_HAND_HOLE_WIDTH] / 4;

    if (comes_out(grasp, at, join, hindrance))
        return true;
    for (int64_t u = -PACES; u <= PACES; u++)
        for (int64_t v = -PACES; v <= PACES; v++) {
            struct vector aside = stage_moved(stage_moved(at, out->u, u * pace), out->v, v * pace);

            if ((fingers_come(grasp, at, out->u, u * pace, out->v, v * pace) ||
                 fingers_come(grasp, at, out->v, v * pace, out->u, u * pace)) &&
                comes_out(grasp, aside, join, hindrance))
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

static bool hand_comes(const struct grasp *grasp, const struct staged_join *join,
                       struct hindrance *hindrance)
{
    if (holds_outside(grasp))
        return true;
    for (int64_t away = LENGTH_INCH / 2; away <= grasp->length; away += LENGTH_INCH) {
        struct vector at = stage_moved(grasp->head, grasp->axis, grasp->sign * away);

        if (comes_out_aside(grasp, at, join, hindrance))
            return true;
    }
    return false;
}

/* ---- a head ---- */

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

static struct verdict wood_in_way(const struct stage *stage, enum lapse lapse,
                                  const struct near_by *near)
{
    struct verdict verdict = stage_lapse_by(stage, lapse, near->entity, near->key, near->since);

    verdict.label = near->label;
    return verdict;
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

static struct verdict bring_hand(const struct view *view, const struct staged_join *join,
                                 const struct head *head, int64_t length)
{
    const struct grasp grasp = {view,       head->at, head->axis,
                                head->sign, length,   join->junction->reach_side};
    struct hindrance hindrance = {NULL, NULL};

    if (hand_comes(&grasp, join, &hindrance))
        return stage_fine(view->stage);
    if (hindrance.cloth)
        return stage_lapse_layer(view->stage, LAPSE_CLOTH_IN_WAY, hindrance.cloth->layer);
    if (!hindrance.wood)
        return stage_lapse(view->stage, LAPSE_NO_HAND);
    return wood_in_way(view->stage, LAPSE_NO_HAND, hindrance.wood);
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
    struct verdict verdict;

    if (!join->junction->head_inside)
        return look_for_cloth(view->stage, join, point);
    verdict = look_through_side(view, join, head, length, point);
    return verdict.lapse == LAPSE_NONE ? bring_hand(view, join, head, length) : verdict;
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
        const struct near_by *near = stands_in_bar(view, head.at, head.axis, head.sign, &bars[i]);
        struct verdict verdict = near ? wood_in_way(stage, LAPSE_WOOD_IN_WAY, near)
                                      : reach_with(view, join, &head, bars[i].length, point);

        if (verdict.lapse == LAPSE_NONE)
            return verdict;
        if (first.lapse == LAPSE_NONE || first.lapse == LAPSE_WOOD_IN_WAY)
            first = first.lapse == LAPSE_NONE || !near ? verdict : first;
    }
    return first;
}

/* ---- frame screws ---- */

/* Members and screws of one box while its frame is taken apart again in thought: whatever can be
 * taken out last was put in last, and taking one thing out never shuts in another. */
struct frame_apart {
    struct view view;        /* one for each member that is still in */
    LIST_OF(size_t) members; /* of the plan, as in view.near */
    LIST_OF(size_t) screws;  /* of the plan, still in */
};

static struct frame_apart frame_begin(const struct stage *stage, const struct staged_box *box)
{
    const struct plan *plan = stage->plan;
    struct frame_apart frame = {.view = {.stage = stage, .box = box}};

    for (size_t i = 0; i < plan->members.count; i++) {
        if (plan->members.at[i].box != box->box->key)
            continue;
        *LIST_ADD(stage->arena, &frame.members) = i;
        *LIST_ADD(stage->arena, &frame.view.near) =
            (struct near_by){.solid = plan->members.at[i].solid,
                             .entity = ENTITY_box,
                             .key = box->box->key,
                             .label = plan->members.at[i].label,
                             .since = stage->now};
    }
    for (size_t i = 0; i < plan->screws.count; i++)
        if (plan->screws.at[i].use == SCREW_FRAME && plan->screws.at[i].box == box->box->key)
            *LIST_ADD(stage->arena, &frame.screws) = i;
    assert(frame.members.count == frame.view.near.count);
    return frame;
}

static const struct near_by *frame_screw_blocked(const struct frame_apart *frame, size_t index)
{
    assert(index < frame->view.stage->plan->screws.count);

    const struct plan *plan = frame->view.stage->plan;
    const struct screw *screw = &plan->screws.at[index];
    const struct near_by *first = NULL;
    struct tool_bar bars[BARS];
    size_t count =
        bars_for(frame->view.stage, TOOL_STUBBY, plan->screw_kinds.at[screw->kind].length, bars);

    for (size_t i = 0; i < count; i++) {
        const struct near_by *near =
            stands_in_bar(&frame->view, screw->at, screw->axis, -screw->sign, &bars[i]);

        if (!near)
            return NULL;
        first = first ? first : near;
    }
    return first;
}

static bool has_screws(const struct frame_apart *frame, size_t member)
{
    const struct plan *plan = frame->view.stage->plan;

    for (size_t i = 0; i < frame->screws.count; i++) {
        const struct joint *joint = &plan->joints.at[plan->screws.at[frame->screws.at[i]].of];

        if (joint->through == member || joint->into == member)
            return true;
    }
    return false;
}

static bool take_screws_out(struct frame_apart *frame)
{
    size_t kept = 0;
    size_t count = frame->screws.count;

    for (size_t i = 0; i < count; i++)
        if (frame_screw_blocked(frame, frame->screws.at[i]))
            frame->screws.at[kept++] = frame->screws.at[i];
    frame->screws.count = kept;
    return kept < count;
}

static void take_members_out(struct frame_apart *frame)
{
    size_t kept = 0;

    for (size_t i = 0; i < frame->view.near.count; i++) {
        if (!has_screws(frame, frame->members.at[i]))
            continue;
        frame->members.at[kept] = frame->members.at[i];
        frame->view.near.at[kept++] = frame->view.near.at[i];
    }
    frame->view.near.count = kept;
    frame->members.count = kept;
}

void reach_frame(struct stage *stage, const struct staged_box *box)
{
    struct frame_apart frame = frame_begin(stage, box);

    while (frame.screws.count > 0 && take_screws_out(&frame))
        take_members_out(&frame);
    for (size_t i = 0; i < frame.screws.count; i++)
        stage_lose(
            stage, REHEARSED_FRAME, ENTITY_box, box->box->key, frame.screws.at[i],
            wood_in_way(stage, LAPSE_WOOD_IN_WAY, frame_screw_blocked(&frame, frame.screws.at[i])));
}
