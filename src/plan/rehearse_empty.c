/*
 * The empty stage: all wood is known by its place, none of it is there yet; all cloth is known by
 * what it will cover, none of it is laid. Steps only set `since`.
 */
#include "plan/rehearse_look.h"

#include <assert.h>
#include <math.h>

/* ---- where cloth will lie ---- */

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
    stage->view = look_begin(arena);
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
