/*
 * The empty stage: all wood is known by its place, none of it is there yet; all cloth is known by
 * what it will cover, none of it is laid. Steps only set `since`.
 *
 * Geometry is kept small here on purpose: blocks and areas along the axes of their box, and quarter
 * turns from one box to another through the room.
 */
#include "plan/rehearse_stage.h"

#include <assert.h>
#include <math.h>

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

/* ---- where cloth will lie ---- */

bool stage_areas_meet(const struct area *a, const struct area *b)
{
    return a->u0 < b->u1 && b->u0 < a->u1 && a->v0 < b->v1 && b->v0 < a->v1;
}

static struct area whole_face(const struct box *box, int64_t side)
{
    assert(side >= 0 && side < SIDE_COUNT);
    return (struct area){0, 0, stage_size(box, stage_sides[side].u),
                         stage_size(box, stage_sides[side].v)};
}

static struct area outline_of(const struct layer *layer, const struct box *box)
{
    struct area face = whole_face(box, layer->side);
    struct area area = {layer->u, layer->v, face.u1, face.v1};

    if (layer->width > 0 && layer->u + layer->width < area.u1)
        area.u1 = layer->u + layer->width;
    if (layer->height > 0 && layer->v + layer->height < area.v1)
        area.v1 = layer->v + layer->height;
    return area;
}

static bool at_rim(const struct area *outline, const struct area *face, int64_t edge)
{
    const bool at[EDGE_COUNT] = {[EDGE_LEFT] = outline->u0 == face->u0,
                                 [EDGE_RIGHT] = outline->u1 == face->u1,
                                 [EDGE_BOTTOM] = outline->v0 == face->v0,
                                 [EDGE_TOP] = outline->v1 == face->v1};

    assert(edge >= 0 && edge < EDGE_COUNT);
    return at[edge];
}

/* A strip of an area along one of its edges, inside it. */
static struct area rim(struct area area, int64_t edge, int64_t width)
{
    if (edge == EDGE_LEFT && area.u0 + width < area.u1)
        area.u1 = area.u0 + width;
    else if (edge == EDGE_RIGHT && area.u1 - width > area.u0)
        area.u0 = area.u1 - width;
    else if (edge == EDGE_BOTTOM && area.v0 + width < area.v1)
        area.v1 = area.v0 + width;
    else if (edge == EDGE_TOP && area.v1 - width > area.v0)
        area.v0 = area.v1 - width;
    return area;
}

/* The side that an edge of a side borders on: the one whose normal runs along u or v there. */
static int64_t beyond_edge(int64_t side, int64_t edge)
{
    assert(side >= 0 && side < SIDE_COUNT);

    bool along_u = edge == EDGE_LEFT || edge == EDGE_RIGHT;
    int axis = along_u ? stage_sides[side].u : stage_sides[side].v;
    int sign = edge == EDGE_RIGHT || edge == EDGE_TOP ? +1 : -1;

    for (int64_t other = 0; other < SIDE_COUNT; other++)
        if (stage_sides[other].axis == axis && stage_sides[other].sign == sign)
            return other;
    return side;
}

/* What goes round an edge lies on the side beyond it: as far along it as the outline, and from the
 * depth `from` to `to` behind the face. */
static struct area round_edge(const struct box *box, int64_t side, const struct area *outline,
                              int64_t edge, int64_t from, int64_t to)
{
    assert(side >= 0 && side < SIDE_COUNT);

    const struct facing_out *face = &stage_sides[side];
    const struct facing_out *beyond = &stage_sides[beyond_edge(side, edge)];
    bool along_u = edge == EDGE_LEFT || edge == EDGE_RIGHT;
    int64_t run[2] = {along_u ? outline->v0 : outline->u0, along_u ? outline->v1 : outline->u1};
    int64_t whole = stage_size(box, face->axis);
    int64_t deep[2] = {face->sign > 0 ? whole - to : from, face->sign > 0 ? whole - from : to};

    if (beyond->u == face->axis)
        return (struct area){deep[0], run[0], deep[1], run[1]};
    return (struct area){run[0], deep[0], run[1], deep[1]};
}

struct hem {
    const struct layer *layer;
    const struct box *box;
    struct area outline;
    int64_t edge, ending;
    int64_t landing, whole;
};

static int64_t landing_of(const struct stage *stage, int64_t layer, int64_t edge)
{
    for (size_t i = 0; i < stage->model->layer_edges.count; i++) {
        const struct layer_edge *given = &stage->model->layer_edges.at[i];

        if (given->layer == layer && given->edge == edge && given->landing > 0)
            return given->landing;
    }
    return stage->plan->value[TRADE_LANDING];
}

static int64_t ending_of(const struct layer *layer, int64_t edge)
{
    const int64_t endings[EDGE_COUNT] = {[EDGE_LEFT] = layer->left,
                                         [EDGE_RIGHT] = layer->right,
                                         [EDGE_TOP] = layer->top,
                                         [EDGE_BOTTOM] = layer->bottom};
    bool goes_round = layer->shape == SHAPE_WRAPPED || layer->shape == SHAPE_SEWN;

    assert(edge >= 0 && edge < EDGE_COUNT);
    return goes_round ? endings[edge] : ENDING_STOP;
}

static void add_sheet(struct stage *stage, struct staged_box *box, const struct sheet *sheet)
{
    if (sheet->area.u0 < sheet->area.u1 && sheet->area.v0 < sheet->area.v1)
        *LIST_ADD(stage->arena, &box->sheets) = *sheet;
}

static int64_t depth_of_hem(const struct hem *hem)
{
    int64_t depth = hem->ending == ENDING_WRAP   ? hem->whole
                    : hem->ending == ENDING_SEWN ? hem->layer->boxing
                    : hem->ending == ENDING_STOP ? 0
                                                 : hem->landing;

    if (hem->ending == ENDING_SEWN && depth == 0)
        depth = hem->whole;
    return depth < hem->whole ? depth : hem->whole;
}

static void add_hem(struct stage *stage, struct staged_box *box, size_t layer,
                    const struct hem *hem)
{
    int64_t side = hem->layer->side;
    int64_t depth = depth_of_hem(hem);
    bool lands = hem->ending == ENDING_SIDE || hem->ending == ENDING_OPEN;
    struct sheet sheet = {.layer = layer, .side = beyond_edge(side, hem->edge), .landing = lands};

    if (depth == 0)
        return;
    sheet.area = round_edge(hem->box, side, &hem->outline, hem->edge, 0, depth);
    add_sheet(stage, box, &sheet);
    if (hem->layer->both && depth < hem->whole) {
        sheet.area =
            round_edge(hem->box, side, &hem->outline, hem->edge, hem->whole - depth, hem->whole);
        add_sheet(stage, box, &sheet);
    }
    if (hem->ending == ENDING_WRAP && !hem->layer->both) {
        sheet.side = stage_opposite(side);
        sheet.area = rim(hem->outline, hem->edge, hem->landing);
        sheet.landing = true;
        add_sheet(stage, box, &sheet);
    }
}

static void lay_out(struct stage *stage, struct staged_box *box, size_t index)
{
    assert(index < stage->model->layers.count);

    const struct layer *layer = &stage->model->layers.at[index];
    struct area face = whole_face(box->box, layer->side);
    struct hem hem = {.layer = layer, .box = box->box, .outline = outline_of(layer, box->box)};
    struct sheet sheet = {.layer = index, .side = layer->side, .area = hem.outline, .own = true};

    if (layer->kind == LAYER_WELT || layer->kind == LAYER_TRIM || layer->shape == SHAPE_RUN)
        return;
    add_sheet(stage, box, &sheet);
    if (layer->both) {
        sheet.side = stage_opposite(layer->side);
        add_sheet(stage, box, &sheet);
    }
    hem.whole = stage_size(box->box, stage_sides[layer->side].axis);
    for (hem.edge = 0; hem.edge < EDGE_COUNT; hem.edge++) {
        hem.ending = ending_of(layer, hem.edge);
        hem.landing = landing_of(stage, layer->key, hem.edge);
        if (at_rim(&hem.outline, &face, hem.edge))
            add_hem(stage, box, index, &hem);
    }
}

static void lay_out_all(struct stage *stage)
{
    const struct model *model = stage->model;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];
        struct staged_box *box = stage_box(stage, layer->box);

        if (box)
            lay_out(stage, box, i);
        for (size_t j = 0; layer->group && j < model->group_boxes.count; j++) {
            box = stage_box(stage, model->group_boxes.at[j].box);
            if (model->group_boxes.at[j].group == layer->group && box)
                lay_out(stage, box, i);
        }
    }
}

/* ---- where wood will stand ---- */

static void set_along(struct vector *at, int axis, int64_t value)
{
    *(axis == AXIS_X ? &at->x : axis == AXIS_Y ? &at->y : &at->z) = value;
}

static void bring_panel(struct stage *stage, struct staged_box *box, const struct lump *lump,
                        size_t next);

static bool reaches_into(const struct lump *lump, int axis, int64_t from, int64_t to)
{
    return stage_along(lump->solid.low, axis) < to && from < stage_along(lump->solid.high, axis);
}

/* What of a piece lies before and behind a stretch of an axis goes on by itself; what lies in the
 * stretch is left. */
static void part(struct stage *stage, struct staged_box *box, struct lump *lump, int axis,
                 int64_t from, int64_t to, size_t next)
{
    struct lump piece = *lump;

    if (from > stage_along(lump->solid.low, axis)) {
        set_along(&piece.solid.high, axis, from);
        bring_panel(stage, box, &piece, next);
        set_along(&lump->solid.low, axis, from);
    }
    piece = *lump;
    if (to < stage_along(lump->solid.high, axis)) {
        set_along(&piece.solid.low, axis, to);
        bring_panel(stage, box, &piece, next);
        set_along(&lump->solid.high, axis, to);
    }
}

/* A panel, or a piece of one, without the holes that are cut in it, from cut-out `next` on. */
static void bring_panel(struct stage *stage, struct staged_box *box, const struct lump *lump,
                        size_t next)
{
    const struct model *model = stage->model;

    for (; next < model->cutouts.count; next++) {
        const struct cutout *hole = &model->cutouts.at[next];
        const struct facing_out *out = &stage_sides[hole->side];
        struct lump middle = *lump;

        if (hole->box != box->box->key || hole->side != lump->side ||
            !reaches_into(lump, out->u, hole->u, hole->u + hole->width) ||
            !reaches_into(lump, out->v, hole->v, hole->v + hole->height))
            continue;
        part(stage, box, &middle, out->u, hole->u, hole->u + hole->width, next + 1);
        part(stage, box, &middle, out->v, hole->v, hole->v + hole->height, next + 1);
        return;
    }
    *LIST_ADD(stage->arena, &box->lumps) = *lump;
}

static void bring_wood(struct stage *stage)
{
    const struct plan *plan = stage->plan;

    for (size_t i = 0; i < plan->members.count; i++) {
        const struct plan_member *member = &plan->members.at[i];
        struct staged_box *box = stage_box(stage, member->box);

        if (box)
            *LIST_ADD(stage->arena, &box->lumps) = (struct lump){
                member->solid, ENTITY_box, member->box, member->label, -1, false, PLAN_NONE};
    }
    for (size_t i = 0; i < plan->panels.count; i++) {
        const struct panel *panel = &plan->panels.at[i];
        struct staged_box *box = stage_box(stage, panel->box);

        if (box)
            bring_panel(stage, box,
                        &(struct lump){panel->solid, ENTITY_facing, panel->facing, panel->label,
                                       panel->side, panel->loose, PLAN_NONE},
                        0);
    }
}

/* ---- the empty stage ---- */

static size_t *nothing_yet(struct stage *stage, size_t count)
{
    size_t *since = ARENA_MANY(stage->arena, size_t, count + 1);

    for (size_t i = 0; i <= count; i++)
        since[i] = PLAN_NONE;
    return since;
}

static const struct pose *pose_of(const struct plan *plan, int64_t box)
{
    for (size_t i = 0; i < plan->poses.count; i++)
        if (plan->poses.at[i].box == box)
            return &plan->poses.at[i];
    return NULL;
}

static double radians(int64_t thousandths_of_a_degree)
{
    return (double)thousandths_of_a_degree / 1000 * acos(-1) / 180;
}

static void begin_boxes(struct stage *stage)
{
    const struct model *model = stage->model;

    stage->boxes = ARENA_MANY(stage->arena, struct staged_box, model->boxes.count + 1);
    for (size_t i = 0; i < model->boxes.count; i++) {
        struct staged_box *box = &stage->boxes[i];

        box->box = &model->boxes.at[i];
        box->pose = pose_of(stage->plan, box->box->key);
        box->sine = sin(radians(box->box->lean));
        box->cosine = cos(radians(box->box->lean));
        box->group = i;
        box->framed = box->in_room = box->legs = box->nuts = box->dust = box->hung = PLAN_NONE;
    }
}

static const struct junction *junction_of(const struct plan *plan, int64_t join)
{
    for (size_t i = 0; i < plan->junctions.count; i++)
        if (plan->junctions.at[i].join == join)
            return &plan->junctions.at[i];
    return NULL;
}

static void begin_joins(struct stage *stage)
{
    const struct model *model = stage->model;

    stage->joins = ARENA_MANY(stage->arena, struct staged_join, model->joins.count + 1);
    for (size_t i = 0; i < model->joins.count; i++) {
        struct staged_join *join = &stage->joins[i];

        join->join = &model->joins.at[i];
        join->junction = junction_of(stage->plan, join->join->key);
        join->dry = join->drilled = join->nuts = join->mapped = join->patched = join->located =
            PLAN_NONE;
        join->found = join->offered = join->driven = PLAN_NONE;
        for (size_t j = 0; j < model->left_outs.count; j++)
            join->left_out |= model->left_outs.at[j].join == join->join->key;
    }
}

static void begin_layers(struct stage *stage)
{
    const struct model *model = stage->model;

    stage->layers = ARENA_MANY(stage->arena, struct staged_layer, model->layers.count + 1);
    for (size_t i = 0; i < model->layers.count; i++) {
        struct staged_layer *layer = &stage->layers[i];

        layer->layer = &model->layers.at[i];
        layer->laid = layer->fixed = layer->holed = PLAN_NONE;
    }
    for (size_t i = 0; i < stage->plan->steps.count; i++) {
        const struct step *step = &stage->plan->steps.at[i];
        struct staged_layer *layer = stage_layer(stage, step->layer);

        if (step->kind == STEP_SEW && layer)
            layer->to_be_sewn = true;
    }
}

/* Intervals that have a step of their own. */
static void begin_edges(struct stage *stage)
{
    const struct plan *plan = stage->plan;

    stage->held = ARENA_MANY(stage->arena, enum held, plan->intervals.count + 1);
    stage->held_since = nothing_yet(stage, plan->intervals.count);
    stage->flap_wanted = ARENA_MANY(stage->arena, bool, plan->intervals.count + 1);
    for (size_t i = 0; i < plan->intervals.count; i++) {
        const struct interval *interval = &plan->intervals.at[i];
        int64_t layer = plan->edges.at[interval->edge].layer;

        for (size_t j = 0; interval->pass != STAPLED_AT_BENCH && j < plan->steps.count; j++)
            stage->flap_wanted[i] |= plan->steps.at[j].kind == STEP_FLAP &&
                                     plan->steps.at[j].layer == layer &&
                                     plan->steps.at[j].join == interval->join;
    }
}

static struct solid seen_in_room(const struct staged_box *box)
{
    const struct staged_box room = {.box = box->box, .cosine = 1}; /* no pose: the room's axes */
    struct solid whole = {{0, 0, 0}, {box->box->width, box->box->depth, box->box->height}};

    return stage_solid_seen(box, &room, &whole);
}

static void measure_room(struct stage *stage)
{
    for (size_t i = 0; i < stage->model->boxes.count; i++) {
        struct solid seen = seen_in_room(&stage->boxes[i]);

        if (i == 0) {
            stage->low = seen.low;
            stage->high = seen.high;
        }
        for (int axis = 0; axis < AXIS_COUNT; axis++) {
            int64_t low = stage_along(seen.low, axis) - stage_along(stage->low, axis);
            int64_t high = stage_along(seen.high, axis) - stage_along(stage->high, axis);

            stage->low = stage_moved(stage->low, axis, low < 0 ? low : 0);
            stage->high = stage_moved(stage->high, axis, high > 0 ? high : 0);
        }
    }
}

void stage_empty(struct stage *stage, const struct plan *plan, struct arena *arena)
{
    *stage = (struct stage){.plan = plan, .model = plan->facts, .arena = arena, .now = PLAN_NONE};
    stage->bought = stage->labelled = stage->moved = stage->set = stage->marked = PLAN_NONE;
    stage->pushed = PLAN_NONE;
    stage->result = ARENA_NEW(arena, struct rehearsal);
    stage->done = nothing_yet(stage, plan->steps.count);
    for (size_t i = 0; i < plan->steps.count; i++) {
        stage->moves |= plan->steps.at[i].kind == STEP_MOVE;
        stage->marks |= plan->steps.at[i].kind == STEP_MARK;
    }
    stage->view = reach_begin(arena);
    begin_boxes(stage);
    begin_joins(stage);
    begin_layers(stage);
    begin_edges(stage);
    stage->stocks = nothing_yet(stage, plan->facts->stocks.count);
    stage->facings = nothing_yet(stage, plan->facts->facings.count);
    bring_wood(stage);
    lay_out_all(stage);
    measure_room(stage);
}

/* ---- what lies over a place ---- */

bool stage_is_outer(const struct layer *outer, const struct layer *inner)
{
    if (outer->rank != inner->rank)
        return outer->rank > inner->rank;
    return outer->kind != inner->kind ? outer->kind > inner->kind : outer->key > inner->key;
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
