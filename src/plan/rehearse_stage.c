/*
 * What stands and lies where by now. Geometry is kept small here on purpose: blocks and areas along
 * the axes of their box, and quarter turns from one box to another through the room.
 */
#include "plan/rehearse_stage.h"

#include <assert.h>

const struct facing_out stage_sides[SIDE_COUNT] = {
    [SIDE_FRONT] = {AXIS_Y, +1, AXIS_X, AXIS_Z}, [SIDE_BACK] = {AXIS_Y, -1, AXIS_X, AXIS_Z},
    [SIDE_LEFT] = {AXIS_X, -1, AXIS_Y, AXIS_Z},  [SIDE_RIGHT] = {AXIS_X, +1, AXIS_Y, AXIS_Z},
    [SIDE_TOP] = {AXIS_Z, +1, AXIS_X, AXIS_Y},   [SIDE_BOTTOM] = {AXIS_Z, -1, AXIS_X, AXIS_Y},
};

/* ---- looking things up ---- */

size_t stage_box_index(const struct stage *stage, int64_t box)
{
    return model_index(stage->model, ENTITY_box, box);
}

struct staged_box *stage_box(const struct stage *stage, int64_t box)
{
    size_t index = stage_box_index(stage, box);

    return index < stage->model->boxes.count ? &stage->boxes[index] : NULL;
}

struct staged_layer *stage_layer(const struct stage *stage, int64_t layer)
{
    size_t index = model_index(stage->model, ENTITY_layer, layer);

    return index < stage->model->layers.count ? &stage->layers[index] : NULL;
}

struct staged_join *stage_join(const struct stage *stage, int64_t join)
{
    size_t index = model_index(stage->model, ENTITY_join, join);

    return index < stage->model->joins.count ? &stage->joins[index] : NULL;
}

int64_t stage_opposite(int64_t side)
{
    static const int64_t opposite[SIDE_COUNT] = {
        [SIDE_FRONT] = SIDE_BACK, [SIDE_BACK] = SIDE_FRONT, [SIDE_LEFT] = SIDE_RIGHT,
        [SIDE_RIGHT] = SIDE_LEFT, [SIDE_TOP] = SIDE_BOTTOM, [SIDE_BOTTOM] = SIDE_TOP,
    };

    assert(side >= 0 && side < SIDE_COUNT);
    return opposite[side];
}

int64_t stage_size(const struct box *box, int axis)
{
    return axis == AXIS_X ? box->width : axis == AXIS_Y ? box->depth : box->height;
}

/* ---- from box to box ---- */

/* About each axis, a lean takes what is high on `from` towards higher `to`. */
static const struct tipping {
    int from, to, sign;
} tippings[AXIS_COUNT] = {[AXIS_X] = {AXIS_Z, AXIS_Y, -1},
                          [AXIS_Y] = {AXIS_Z, AXIS_X, +1},
                          [AXIS_Z] = {AXIS_Y, AXIS_X, +1}};

/* In the axes of the room, but from the box's own corner; `back` takes the lean away again. */
static struct place3 tipped(const struct staged_box *box, struct place3 at, bool back)
{
    const struct tipping *tipping = &tippings[box->box->lean_axis];

    if (box->sine == 0)
        return at;

    double sine = tipping->sign * (back ? -box->sine : box->sine);
    double high = at.along[tipping->from];
    double aside = at.along[tipping->to];

    at.along[tipping->from] = high * box->cosine - aside * sine;
    at.along[tipping->to] = aside * box->cosine + high * sine;
    return at;
}

static struct place3 turned_once(struct place3 at, double width)
{
    return (struct place3){{at.along[AXIS_Y], width - at.along[AXIS_X], at.along[AXIS_Z]}};
}

/* From so many quarter turns to more; each brings the low corner of the outline to the origin. */
static struct place3 turned(const struct staged_box *box, struct place3 at, int from, int to)
{
    for (int turn = from; turn < to; turn++)
        at = turned_once(at, (double)(turn % 2 ? box->box->depth : box->box->width));
    return at;
}

static struct place3 moved(const struct staged_box *box, struct place3 at, int sign)
{
    const struct pose *pose = box->pose;

    for (int axis = 0; axis < AXIS_COUNT; axis++)
        at.along[axis] += sign * ((double)stage_along(pose->at, axis) +
                                  (double)stage_along(pose->rest, axis) / POSE_REST_PARTS);
    return at;
}

static struct place3 to_room(const struct staged_box *box, struct vector at)
{
    struct place3 place = {{(double)at.x, (double)at.y, (double)at.z}};

    if (!box->pose)
        return place;
    return moved(box, turned(box, tipped(box, place, false), 0, box->pose->turn), +1);
}

static struct place3 from_room(const struct staged_box *box, struct place3 room)
{
    if (!box->pose)
        return room;
    return tipped(box, turned(box, moved(box, room, -1), box->pose->turn, 4), true);
}

static struct place3 seen_from(const struct staged_box *from, const struct staged_box *to,
                               struct vector at)
{
    return from_room(to, to_room(from, at));
}

bool stage_axes_agree(const struct staged_box *a, const struct staged_box *b)
{
    if (a->sine == 0 && b->sine == 0)
        return true;
    return a->pose && b->pose && a->box->lean_axis == b->box->lean_axis &&
           a->box->lean == b->box->lean && a->pose->turn == b->pose->turn;
}

struct body stage_body_seen(const struct staged_box *from, const struct staged_box *to,
                            const struct solid *solid)
{
    struct body body = {.corner = seen_from(from, to, solid->low), .count = AXIS_COUNT};

    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        int64_t size = stage_along(solid->high, axis) - stage_along(solid->low, axis);

        body.edges[axis] = seen_from(from, to, stage_moved(solid->low, axis, size));
        for (int other = 0; other < AXIS_COUNT; other++)
            body.edges[axis].along[other] -= body.corner.along[other];
    }
    return body;
}

/* Opposite corners say all where the axes agree. */
struct solid stage_solid_seen(const struct staged_box *from, const struct staged_box *to,
                              const struct solid *solid)
{
    struct place3 low, high;
    struct body body;

    if (!stage_axes_agree(from, to)) {
        body = stage_body_seen(from, to, solid);
        return body_outline(&body);
    }
    low = seen_from(from, to, solid->low);
    high = seen_from(from, to, solid->high);
    return body_between(&low, &high);
}

/* ---- what lies over a place ---- */

bool stage_is_outer(const struct layer *outer, const struct layer *inner)
{
    if (outer->rank != inner->rank)
        return outer->rank > inner->rank;
    return outer->kind != inner->kind ? outer->kind > inner->kind : outer->key > inner->key;
}

bool stage_areas_meet(const struct area *a, const struct area *b)
{
    return a->u0 < b->u1 && b->u0 < a->u1 && a->v0 < b->v1 && b->v0 < a->v1;
}

static bool area_has(const struct area *area, int64_t u, int64_t v)
{
    return area->u0 <= u && u < area->u1 && area->v0 <= v && v < area->v1;
}

const struct sheet *stage_over(const struct stage *stage, int64_t box, int64_t side, int64_t u,
                               int64_t v, unsigned kinds)
{
    const struct staged_box *on = stage_box(stage, box);
    const struct sheet *found = NULL;

    for (size_t i = 0; on && i < on->sheets.count; i++) {
        const struct sheet *sheet = &on->sheets.at[i];
        const struct staged_layer *layer = &stage->layers[sheet->layer];

        if (sheet->side != side || layer->laid == PLAN_NONE ||
            !(kinds & 1u << layer->layer->kind) || !area_has(&sheet->area, u, v))
            continue;
        if (!found || stage_is_outer(layer->layer, stage->layers[found->layer].layer))
            found = sheet;
    }
    return found;
}

const struct staged_join *stage_joined_over(const struct stage *stage, int64_t box, int64_t side,
                                            const struct area *area)
{
    for (size_t i = 0; i < stage->model->joins.count; i++) {
        const struct staged_join *join = &stage->joins[i];

        if (join->offered == PLAN_NONE || !join->junction || join->join->fastener == FASTENER_REST)
            continue;
        if (join->join->box_a == box && join->join->side_a == side &&
            stage_areas_meet(&join->junction->zone, area))
            return join;
        if (join->join->target == TARGET_BOX && join->join->box_b == box &&
            join->join->side_b == side && stage_areas_meet(&join->junction->zone_b, area))
            return join;
    }
    return NULL;
}

/* The layer is slit at a point, on the side where that is asked, by now. */
static bool slit_at(const struct stage *stage, size_t layer, int64_t side, size_t point)
{
    assert(layer < stage->model->layers.count);
    for (size_t i = 0; i < stage->plan->patches.count; i++) {
        const struct patch *patch = &stage->plan->patches.at[i];

        if (patch->slit && patch->point == point && patch->side == side &&
            patch->layer == stage->layers[layer].layer->key)
            return stage->layers[layer].slit;
    }
    return false;
}

/* An interval of the layer is left open for the join. One opening may serve several joins that lie
 * side by side and bears the name of one of them. */
static bool held_open(const struct stage *stage, size_t layer, int64_t join)
{
    assert(layer < stage->model->layers.count);

    const struct plan *plan = stage->plan;
    bool own = false;
    bool open = false;
    bool own_open = false;

    for (size_t i = 0; i < plan->intervals.count; i++) {
        const struct interval *interval = &plan->intervals.at[i];

        if (plan->edges.at[interval->edge].layer != stage->layers[layer].layer->key ||
            interval->pass == STAPLED_AT_BENCH)
            continue;
        bool is_open = stage->held[i] < HELD_STAPLED;
        own |= interval->join == join;
        own_open |= interval->join == join && is_open;
        open |= is_open;
    }
    return own ? own_open : open;
}

const struct sheet *stage_shut_by(const struct stage *stage, const struct place *place)
{
    const struct staged_box *box = stage_box(stage, place->box);

    for (size_t i = 0; box && i < box->sheets.count; i++) {
        const struct sheet *sheet = &box->sheets.at[i];
        const struct staged_layer *layer = &stage->layers[sheet->layer];

        if (sheet->side != place->side || layer->laid == PLAN_NONE ||
            !(STAGE_CLOTH & 1u << layer->layer->kind) ||
            !area_has(&sheet->area, place->u, place->v) ||
            slit_at(stage, sheet->layer, place->side, place->point) ||
            (place->opens && held_open(stage, sheet->layer, place->join)))
            continue;
        return sheet;
    }
    return NULL;
}

/* The way that a side of a box looks in the room. */
static struct place3 outward(const struct staged_box *box, int64_t side)
{
    assert(side >= 0 && side < SIDE_COUNT);

    struct vector foot = {0, 0, 0};
    struct place3 from = to_room(box, foot);
    struct place3 to =
        to_room(box, stage_moved(foot, stage_sides[side].axis, stage_sides[side].sign));

    for (int axis = 0; axis < AXIS_COUNT; axis++)
        to.along[axis] -= from.along[axis];
    return to;
}

/* The side of the piece that a side of a box looks at, or most nearly. */
static int64_t looks_at(const struct staged_box *box, int64_t side)
{
    struct place3 normal = outward(box, side);
    int64_t best = 0;

    for (int64_t other = 1; other < SIDE_COUNT; other++)
        if (stage_sides[other].sign * normal.along[stage_sides[other].axis] >
            stage_sides[best].sign * normal.along[stage_sides[best].axis])
            best = other;
    return best;
}

/* How far the middle of a side of a box is from a side of the piece. */
static int64_t behind(const struct stage *stage, const struct staged_box *box, int64_t side,
                      int64_t of_piece)
{
    assert(side >= 0 && side < SIDE_COUNT);
    assert(of_piece >= 0 && of_piece < SIDE_COUNT);

    const struct facing_out *out = &stage_sides[of_piece];
    struct vector at = {box->box->width / 2, box->box->depth / 2, box->box->height / 2};
    int axis = stage_sides[side].axis;
    int64_t size = stage_size(box->box, axis);
    int64_t far = stage_along(out->sign > 0 ? stage->high : stage->low, out->axis);
    double here;

    at = stage_moved(at, axis, (stage_sides[side].sign > 0 ? size : 0) - size / 2);
    here = to_room(box, at).along[out->axis];
    return (int64_t)(out->sign > 0 ? (double)far - here : here - (double)far);
}

int64_t stage_wall_at(const struct stage *stage, const struct staged_box *box, int64_t side)
{
    int64_t looks = looks_at(box, side);

    for (size_t i = 0; stage->pushed != PLAN_NONE && i < stage->model->walls.count; i++) {
        const struct wall *wall = &stage->model->walls.at[i];

        if (wall->side == looks &&
            wall->gap + behind(stage, box, side, looks) < stage->plan->value[TRADE_HAND_HOLE_WIDTH])
            return wall->key;
    }
    return 0;
}

/* ---- places of a point ---- */

static struct spot spot_on(int64_t box, int64_t side, struct vector at, bool head)
{
    assert(side >= 0 && side < SIDE_COUNT);
    return (struct spot){box, side, stage_along(at, stage_sides[side].u),
                         stage_along(at, stage_sides[side].v), head};
}

size_t stage_spots(const struct stage *stage, const struct staged_join *join, size_t point,
                   struct spot spots[STAGE_SPOTS])
{
    assert(point < stage->plan->points.count);

    const struct junction *junction = join->junction;
    const struct plan_point *at = &stage->plan->points.at[point];
    size_t count = 0;

    spots[count++] = spot_on(junction->box_a, join->join->side_a, at->in_a, false);
    if (junction->box_b)
        spots[count++] = spot_on(junction->box_b, join->join->side_b, at->in_b, false);
    if (!junction->head_inside && junction->head_box)
        spots[count++] = spot_on(junction->head_box, junction->head_side,
                                 junction->head_box == junction->box_b ? at->in_b : at->in_a, true);
    assert(count <= STAGE_SPOTS);
    return count;
}

/* ---- verdicts ---- */

struct verdict stage_fine(const struct stage *stage)
{
    return (struct verdict){.step = stage->now, .entity = ENTITY_none, .since = PLAN_NONE};
}

struct verdict stage_lapse(const struct stage *stage, enum lapse lapse)
{
    return stage_lapse_by(stage, lapse, ENTITY_none, 0, PLAN_NONE);
}

struct verdict stage_lapse_by(const struct stage *stage, enum lapse lapse, enum entity_kind entity,
                              int64_t key, size_t since)
{
    return (struct verdict){
        .lapse = lapse, .step = stage->now, .entity = entity, .key = key, .since = since};
}

struct verdict stage_lapse_layer(const struct stage *stage, enum lapse lapse, size_t layer)
{
    assert(layer < stage->model->layers.count);
    return stage_lapse_by(stage, lapse, ENTITY_layer, stage->layers[layer].layer->key,
                          stage->layers[layer].laid);
}

void stage_lose(struct stage *stage, enum rehearsed_kind kind, enum entity_kind entity, int64_t key,
                size_t index, struct verdict verdict)
{
    *LIST_ADD(stage->arena, &stage->result->things) =
        (struct rehearsed_thing){kind, entity, key, index, verdict};
}
