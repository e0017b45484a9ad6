/*
 * All that stands near is seen from the box with the heads: its own wood, and that of every box
 * joined to it by now; once it is fixed in the room, the wood of all that is fixed there, and the
 * walls; in the room the floor under it.
 */
#include "plan/rehearse_look.h"

#include <assert.h>

#define FAR_OUT (FIELDS_ROOM)

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

struct view *look_begin(struct arena *arena)
{
    return ARENA_NEW(arena, struct view);
}

/* Once a step and box: nothing moves while the heads of a join are driven. */
const struct view *look_round(const struct stage *stage, const struct staged_box *box)
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

struct verdict look_lapse(const struct stage *stage, enum lapse lapse, const struct near_by *near)
{
    struct verdict verdict = stage_lapse_by(stage, lapse, near->entity, near->key, near->since);

    verdict.label = near->label;
    return verdict;
}
