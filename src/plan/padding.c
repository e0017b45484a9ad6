/*
 * The build-up of layers on each face.
 *
 * Every layer leaves coats: an area of a face and a thickness. A slab leaves one, on its own face;
 * a wrapped or sewn layer leaves one on each side that it goes round as well. How thick a face is
 * padded at a place is the sum of the coats over it, and the places where that can be largest are
 * the near corners of the coats.
 */
#include "plan/padding.h"

#include "plan/geometry.h"
#include "plan/layers.h"

#include <assert.h>

struct coat {
    const struct layer *layer;
    struct area area;
    int64_t thickness; /* 0 for cloth */
    int64_t pressed;   /* under somebody */
    bool cloth;
};

struct coats {
    LIST_OF(struct coat) of;
};

/* ---- what a layer leaves ---- */

static bool is_cloth(const struct layer *layer)
{
    return layer->kind == LAYER_COVER || layer->kind == LAYER_LINING ||
           layer->kind == LAYER_OUTSIDE_BACK || layer->kind == LAYER_DUST_COVER;
}

static bool leaves_coat(const struct layer *layer)
{
    bool pads = layer->kind == LAYER_FOAM || layer->kind == LAYER_BATTING;

    return layer->shape != SHAPE_RUN && (pads || is_cloth(layer));
}

int64_t layer_thickness(const struct plan *plan, const struct layer *layer)
{
    const struct stock *stock = MODEL_FIND(plan->facts, stock, layer->stock);
    int64_t thickness = layer->thickness;
    int64_t pulled;

    if (is_cloth(layer))
        return 0;
    if (!thickness && stock)
        thickness = stock->thickness ? stock->thickness : stock->thickness_sold;
    if (layer->kind == LAYER_FOAM)
        return thickness;
    if (!thickness)
        thickness = plan->value[TRADE_BATTING_LOFT];
    if (whole_share(thickness, plan->value[TRADE_BATTING_COMPRESS], 1000000, &pulled))
        return thickness;
    return pulled;
}

struct area layer_area(const struct box *box, int64_t side, const struct layer *layer)
{
    struct area face = face_area(box, side);

    return area_given(&face, layer->u, layer->v, layer->width, layer->height);
}

static bool reaches_edge(const struct area *area, const struct area *face, int64_t edge)
{
    const bool reached[EDGE_COUNT] = {[EDGE_LEFT] = area->u0 <= face->u0,
                                      [EDGE_RIGHT] = area->u1 >= face->u1,
                                      [EDGE_TOP] = area->v1 >= face->v1,
                                      [EDGE_BOTTOM] = area->v0 <= face->v0};

    assert(edge >= 0 && edge < EDGE_COUNT);
    return reached[edge];
}

/* How far round an edge the layer lies on the side there: all of it, a landing, nothing. */
static int64_t depth_round(const struct planning *planning, const struct box *box,
                           const struct layer *layer, int64_t side, int64_t edge)
{
    int64_t whole = vector_along(box_size(box), side_axis(side));

    if (layer->shape == SHAPE_WRAPPED && layer_ending(layer, edge) == ENDING_WRAP)
        return whole;
    if (layer->kind == LAYER_FOAM && layer_ending(layer, edge) == ENDING_SIDE)
        return 0; /* it only rolls over the edge */
    if (layer->shape == SHAPE_WRAPPED && layer_ending(layer, edge) == ENDING_SIDE)
        return length_smaller(whole, planning->value[TRADE_LANDING]);
    if (layer->shape == SHAPE_SEWN && layer_ending(layer, edge) == ENDING_SEWN)
        return length_smaller(whole, layer->boxing ? layer->boxing : whole);
    return 0;
}

/* Foam gives where somebody sits, more than where he leans. */
static int64_t coat_pressed(const struct planning *planning, const struct layer *layer)
{
    int64_t thickness = layer_thickness(planning->plan, layer);
    bool seat = layer->side == SIDE_TOP;
    int64_t pressed;

    if (layer->kind != LAYER_FOAM ||
        whole_share(thickness,
                    planning->value[seat ? TRADE_FOAM_COMPRESS_SEAT : TRADE_FOAM_COMPRESS_BACK],
                    1000000, &pressed))
        return thickness;
    return pressed;
}

static void add_coat(struct planning *planning, struct coats *coats, const struct area *area,
                     const struct layer *layer)
{
    if (!area_empty(area))
        *LIST_ADD(planning->arena, &coats->of) =
            (struct coat){layer, *area, layer_thickness(planning->plan, layer),
                          coat_pressed(planning, layer), is_cloth(layer)};
}

/* A layer that lies on `side` of the box; `coats` has one list a side. */
static void coat_box(struct planning *planning, const struct box *box, int64_t side,
                     const struct layer *layer, struct coats coats[SIDE_COUNT])
{
    assert(side >= 0 && side < SIDE_COUNT);

    struct area face = face_area(box, side);
    struct area area = layer_area(box, side, layer);

    add_coat(planning, &coats[side], &area, layer);
    if (area_empty(&area))
        return;
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        int64_t depth = depth_round(planning, box, layer, side, edge);
        struct solid band = solid_behind(box, side, &area, 0, depth);
        int64_t beside = edge_side(side, edge);
        struct area round = solid_on_side(&band, beside);

        if (depth && reaches_edge(&area, &face, edge))
            add_coat(planning, &coats[beside], &round, layer);
    }
}

/* ---- which layers lie on a box ---- */

static int64_t first_in_group(const struct model *model, int64_t group)
{
    int64_t first = 0;

    for (size_t i = 0; i < model->group_boxes.count; i++) {
        const struct group_box *in = &model->group_boxes.at[i];

        if (in->group == group && (!first || in->box < first))
            first = in->box;
    }
    return first;
}

/* The side of a grouped box that looks where the layer's side of the group's first box looks. */
static int64_t side_in_group(const struct plan *plan, const struct layer *layer, int64_t box)
{
    const struct pose *first = plan_pose(plan, first_in_group(plan->facts, layer->group));
    const struct pose *pose = plan_pose(plan, box);

    assert(first && pose);
    return side_turned(layer->side, (pose->turn - first->turn + 4) % 4);
}

int64_t layer_side_on(const struct plan *plan, const struct layer *layer, int64_t box)
{
    if (!layer_touches(plan->facts, layer, box))
        return -1;
    return layer->box ? layer->side : side_in_group(plan, layer, box);
}

/* What goes round the edges of a layer with two faces is one piece: it counts once, from the first
 * of them. */
static void coat_by_layer(struct planning *planning, const struct box *box,
                          const struct layer *layer, struct coats coats[SIDE_COUNT])
{
    int64_t side = leaves_coat(layer) ? layer_side_on(planning->plan, layer, box->key) : -1;

    if (side < 0 || (layer->kind == LAYER_FOAM && box->frame == FRAME_CUSHION))
        return; /* the foam of a cushion fills its box, and adds nothing to it */
    coat_box(planning, box, side, layer, coats);
    if (layer->both) {
        int64_t behind = side_opposite(side);
        struct area area = layer_area(box, behind, layer);

        add_coat(planning, &coats[behind], &area, layer);
    }
}

/* ---- sums ---- */

static int64_t thickness_at(const struct coats *coats, int64_t u, int64_t v, bool pressed)
{
    int64_t sum = 0;

    for (size_t i = 0; i < coats->of.count; i++) {
        if (area_holds(&coats->of.at[i].area, u, v))
            sum += pressed ? coats->of.at[i].pressed : coats->of.at[i].thickness;
    }
    return sum;
}

/* The thickest place within an area. */
static int64_t thickest(const struct coats *coats, const struct area *within, bool pressed)
{
    int64_t most = 0;

    for (size_t i = 0; i < coats->of.count; i++)
        for (size_t k = 0; k < coats->of.count; k++) {
            int64_t u = length_larger(coats->of.at[i].area.u0, within->u0);
            int64_t v = length_larger(coats->of.at[k].area.v0, within->v0);

            if (u < within->u1 && v < within->v1)
                most = length_larger(most, thickness_at(coats, u, v, pressed));
        }
    return most;
}

/* The line of a face along an edge, one count wide. */
static struct area edge_line(const struct area *face, int64_t edge)
{
    struct area line = *face;

    if (edge == EDGE_LEFT)
        line.u1 = line.u0 + 1;
    else if (edge == EDGE_RIGHT)
        line.u0 = line.u1 - 1;
    else if (edge == EDGE_TOP)
        line.v0 = line.v1 - 1;
    else
        line.v1 = line.v0 + 1;
    return line;
}

static void sum_face(struct planning *planning, const struct box *box, int64_t side,
                     const struct coats *coats)
{
    struct padding *padding = LIST_ADD(planning->arena, &planning->plan->paddings);
    struct area face = face_area(box, side);

    padding->box = box->key;
    padding->side = side;
    padding->pad = thickest(coats, &face, false);
    padding->pressed = thickest(coats, &face, true);
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        struct area line = edge_line(&face, edge);

        padding->at[edge] = thickest(coats, &line, false);
        assert(padding->at[edge] <= padding->pad);
    }
    for (size_t i = 0; i < coats->of.count; i++)
        padding->covered |= coats->of.at[i].cloth;
    if (padding->covered)
        padding->cloth = planning->value[TRADE_JOINT_CLOTH_PER_FACE];
}

/* The next coat outward from one in the order of the stack; NULL after the last. */
static const struct coat *next_coat(const struct coats *coats, const struct coat *from)
{
    const struct coat *next = NULL;

    for (size_t i = 0; i < coats->of.count; i++) {
        const struct coat *coat = &coats->of.at[i];
        bool outward = !from || coat->layer->rank > from->layer->rank ||
                       (coat->layer->rank == from->layer->rank && coat > from);

        if (outward && (!next || coat->layer->rank < next->layer->rank))
            next = coat;
    }
    return next;
}

/* How thick the face is after each layer. */
static void build_up(struct planning *planning, const struct box *box, int64_t side,
                     const struct coats *coats)
{
    struct area face = face_area(box, side);
    struct coats laid = {0};

    for (const struct coat *coat = next_coat(coats, NULL); coat; coat = next_coat(coats, coat)) {
        *LIST_ADD(planning->arena, &laid.of) = *coat;
        *LIST_ADD(planning->arena, &planning->plan->coatings) = (struct coating){
            box->key, side, coat->layer->key, coat->thickness, thickest(&laid, &face, false)};
    }
    assert(laid.of.count == coats->of.count);
}

void resolve_paddings(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->boxes.count; i++) {
        const struct box *box = &model->boxes.at[i];
        struct coats coats[SIDE_COUNT] = {0};

        for (size_t k = 0; k < model->layers.count; k++)
            coat_by_layer(planning, box, &model->layers.at[k], coats);
        for (int64_t side = 0; side < SIDE_COUNT; side++) {
            sum_face(planning, box, side, &coats[side]);
            build_up(planning, box, side, &coats[side]);
        }
    }
}
