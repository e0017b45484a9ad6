/*
 * Laying a layer out on its face: what of the face it covers, how each edge ends, what padding lies
 * there, and what the maker says of an edge by hand.
 *
 * A layer on a group lies on the faces of all its boxes as they stand in the room, in the u and v
 * of the first one's face; boxes that no join places stand side by side.
 */
#include "plan/cover.h"

#include "plan/curve.h"
#include "plan/geometry.h"
#include "plan/layers.h"
#include "plan/pose.h"

#include <assert.h>

/* The face that a layer lies on: of one box, or of all boxes of its group as they stand. */
struct ground {
    const struct box *first;
    const struct box *at[EDGE_COUNT]; /* the box that each edge belongs to */
    struct area area;                 /* in u and v of the first box's face */
    LIST_OF(struct plot) plots;       /* areas as above */
};

/* A box's face in the u and v of the first box's face; beside what there is, where poses tell
 * nothing. */
static struct area area_beside(const struct plan *plan, const struct ground *ground,
                               const struct box *box, int64_t side)
{
    const struct pose *pose = plan_pose(plan, box->key);
    const struct pose *first = plan_pose(plan, ground->first->key);
    struct area area = face_area(box, side);

    if (pose && first && pose->with == first->with && pose->turn == first->turn &&
        poses_agree(pose, first)) {
        int64_t u, v;

        box_to_face(side,
                    pose_across(pose, box, first, ground->first, face_to_box(box, side, 0, 0)), &u,
                    &v);
        return (struct area){u, v, u + area.u1, v + area.v1};
    }
    return (struct area){ground->area.u1, 0, ground->area.u1 + area.u1, area.v1};
}

static void ground_extend(struct ground *ground, const struct box *box, struct area area)
{
    struct area *all = &ground->area;

    if (area.u0 < all->u0) {
        all->u0 = area.u0;
        ground->at[EDGE_LEFT] = box;
    }
    if (area.u1 > all->u1) {
        all->u1 = area.u1;
        ground->at[EDGE_RIGHT] = box;
    }
    if (area.v0 < all->v0) {
        all->v0 = area.v0;
        ground->at[EDGE_BOTTOM] = box;
    }
    if (area.v1 > all->v1) {
        all->v1 = area.v1;
        ground->at[EDGE_TOP] = box;
    }
}

static void ground_plot(const struct planning *planning, struct ground *ground,
                        const struct box *box, struct area area)
{
    *LIST_ADD(planning->arena, &ground->plots) = (struct plot){box, area};
}

static void ground_begin(const struct planning *planning, struct ground *ground,
                         const struct box *box, int64_t side)
{
    ground->first = box;
    ground->area = face_area(box, side);
    ground_plot(planning, ground, box, ground->area);
    for (int edge = 0; edge < EDGE_COUNT; edge++)
        ground->at[edge] = box;
}

/* False when the layer lies on nothing. */
static bool ground_find(const struct planning *planning, const struct layer *layer,
                        struct ground *ground)
{
    const struct model *model = planning->model;
    const struct box *box = MODEL_FIND(model, box, layer->box);

    *ground = (struct ground){.first = NULL};
    if (box)
        ground_begin(planning, ground, box, layer->side);
    for (size_t i = 0; !box && i < model->group_boxes.count; i++) {
        const struct group_box *item = &model->group_boxes.at[i];
        const struct box *next = MODEL_FIND(model, box, item->box);

        if (item->group != layer->group || !next)
            continue;
        if (!ground->first) {
            ground_begin(planning, ground, next, layer->side);
            continue;
        }
        struct area area = area_beside(planning->plan, ground, next, layer->side);
        ground_plot(planning, ground, next, area);
        ground_extend(ground, next, area);
    }
    return ground->first != NULL;
}

static int64_t at_edge(const struct planning *planning, const struct box *box, int64_t side,
                       int64_t edge)
{
    const struct padding *padding = plan_padding(planning->plan, box->key, side);

    assert(edge >= 0 && edge < EDGE_COUNT);
    return padding ? padding->at[edge] : 0;
}

/* Padding of the side that an edge borders on, where the two meet. */
static int64_t padding_beside(const struct planning *planning, const struct box *box, int64_t side,
                              int64_t edge)
{
    int64_t beside = edge_side(side, edge);

    for (int64_t other = 0; other < EDGE_COUNT; other++)
        if (edge_side(beside, other) == side)
            return at_edge(planning, box, beside, other);
    return 0;
}

static int64_t usual_landing(const struct planning *planning, const struct spread *spread,
                             const struct brim *brim)
{
    bool on_side = !brim->inside && (brim->ending == ENDING_SIDE || brim->ending == ENDING_OPEN);

    if (on_side && spread->depth <= planning->value[TRADE_LANDING_NARROW_EDGE])
        return planning->value[TRADE_LANDING_NARROW];
    return planning->value[TRADE_LANDING];
}

static void brim_by_hand(const struct planning *planning, const struct layer *layer, int64_t edge,
                         struct brim *brim)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->layer_edges.count; i++) {
        const struct layer_edge *by_hand = &model->layer_edges.at[i];

        if (by_hand->layer != layer->key || by_hand->edge != edge)
            continue;
        brim->by_hand = by_hand->key;
        brim->by_class = by_hand->class;
        brim->pitch = by_hand->pitch;
        brim->landing = by_hand->landing > 0 ? by_hand->landing : brim->landing;
        brim->handle = by_hand->handle > 0 ? by_hand->handle : brim->handle;
    }
}

static enum trade usual_handle(const struct spread *spread)
{
    if (spread->layer->kind == LAYER_LINING)
        return TRADE_HANDLE_MUSLIN;
    return spread->stock->nature == NATURE_VINYL ? TRADE_HANDLE_VINYL : TRADE_HANDLE;
}

/* What a sewn cover is wider and higher than what it is pulled over. */
static int64_t usual_ease(const struct planning *planning, const struct spread *spread)
{
    if (spread->layer->slip)
        return planning->value[TRADE_COVER_EASE_SLIP];
    return planning
        ->value[spread->stock->nature == NATURE_VINYL ? TRADE_COVER_EASE_VINYL : TRADE_COVER_EASE];
}

static void spread_brim(const struct planning *planning, struct spread *spread,
                        const struct box *box, int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);

    struct brim *brim = &spread->brims[edge];

    if (!brim->inside) {
        brim->over = at_edge(planning, box, spread->side, edge);
        brim->beside = padding_beside(planning, box, spread->side, edge);
    }
    brim->landing = spread->layer->slip ? planning->value[TRADE_COVER_HEM]
                                        : usual_landing(planning, spread, brim);
    brim->handle = spread->layer->slip ? 0 : planning->value[usual_handle(spread)];
    brim_by_hand(planning, spread->layer, edge, brim);
}

/* What of its ground a layer covers, and which of its edges stop inside. */
static void spread_area(struct spread *spread, struct ground *ground)
{
    const struct layer *layer = spread->layer;
    int64_t width = area_width(&ground->area);
    int64_t height = area_height(&ground->area);
    int64_t u = length_smaller(layer->u, width);
    int64_t v = length_smaller(layer->v, height);

    spread->width = layer->width > 0 ? length_smaller(layer->width, width - u) : width - u;
    spread->height = layer->height > 0 ? length_smaller(layer->height, height - v) : height - v;
    for (size_t i = 0; i < ground->plots.count; i++) {
        struct area *area = &ground->plots.at[i].area;

        area->u0 -= ground->area.u0 + u;
        area->u1 -= ground->area.u0 + u;
        area->v0 -= ground->area.v0 + v;
        area->v1 -= ground->area.v0 + v;
    }
    spread->plots = ground->plots.at;
    spread->plot_count = ground->plots.count;
    spread->brims[EDGE_LEFT].inside = u > 0;
    spread->brims[EDGE_BOTTOM].inside = v > 0;
    spread->brims[EDGE_RIGHT].inside = u + spread->width < width;
    spread->brims[EDGE_TOP].inside = v + spread->height < height;
}

bool spread_outlined(const struct spread *spread)
{
    return spread->plot_count == 1 && !spread->brims[EDGE_TOP].inside &&
           curve_has(spread->box, spread->side);
}

/* Does the layer lie on the face that an outline of its box bends? */
static bool spread_is_under(const struct spread *spread)
{
    return spread->plot_count == 1 && curve_under(spread->box, spread->side);
}

bool spread_is_bent(const struct spread *spread)
{
    return spread->wide > spread->width || spread->high > spread->height;
}

/* Edges along the bend, but for one that goes on to the straight foot of the next face. */
bool spread_follows(const struct spread *spread, int64_t edge)
{
    const struct brim *brim = &spread->brims[edge];

    return edge_is_upright(edge) == (spread->high > spread->height) &&
           (brim->inside || brim->ending != ENDING_WRAP);
}

static void spread_bend(const struct model *model, struct spread *spread)
{
    const struct box *box = spread->box;
    const struct area *face = &spread->plots[0].area;

    if (side_u_axis(spread->side) == side_u_axis(box->main_side))
        spread->wide += curve_longer(model, box, -face->u0, spread->width - face->u0);
    else
        spread->high += curve_longer(model, box, -face->v0, spread->height - face->v0);
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        if (spread_follows(spread, edge))
            spread->lengths[edge] = edge_is_upright(edge) ? spread->high : spread->wide;
}

/* A layer that reaches the outline of its box follows it. */
static void spread_edges(const struct model *model, struct spread *spread)
{
    const struct box *box = spread->box;

    spread->wide = spread->width;
    spread->high = spread->height;
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        spread->lengths[edge] = spread_straight(spread, edge);
    if (spread_is_under(spread))
        spread_bend(model, spread);
    if (!spread_outlined(spread))
        return;
    spread->lengths[EDGE_TOP] =
        curve_top(model, box, spread->layer->u, spread->layer->u + spread->width);
    for (int64_t edge = EDGE_LEFT; edge <= EDGE_RIGHT; edge++)
        if (!spread->brims[edge].inside)
            spread->lengths[edge] =
                length_larger(0, curve_side(model, box, edge) - spread->layer->v);
}

/* The edges beside an outline end below it and count from the bottom as they are told; along it,
 * and on what is bent over it, a place lies as far as the outline is long up to there. */
int64_t spread_along(const struct model *model, const struct spread *spread, int64_t edge,
                     int64_t at)
{
    const struct box *box = spread->box;
    int64_t straight = spread_straight(spread, edge);
    int64_t length = spread_length(spread, edge);
    int64_t along = length_within(at, 0, straight);

    if (length == straight)
        return along;
    if (spread_is_under(spread)) {
        const struct area *face = &spread->plots[0].area;
        int64_t from = edge_is_upright(edge) ? -face->v0 : -face->u0;

        along += curve_longer(model, box, from, from + along);
    } else if (edge == EDGE_TOP) {
        along = curve_top(model, box, spread->layer->u, spread->layer->u + along);
    }
    return length_within(along, 0, length);
}

static const struct tufting *tufting_of(const struct model *model, int64_t layer)
{
    for (size_t i = 0; i < model->tuftings.count; i++)
        if (model->tuftings.at[i].layer == layer)
            return &model->tuftings.at[i];
    return NULL;
}

static int ordinal_of(const struct model *model, const struct layer *layer)
{
    int ordinal = 0;

    for (size_t i = 0; i < model->layers.count && model->layers.at[i].key <= layer->key; i++)
        if (model->layers.at[i].box == layer->box && model->layers.at[i].group == layer->group)
            ordinal++;
    return ordinal;
}

bool spread_lay(const struct planning *planning, const struct layer *layer, struct spread *spread)
{
    const struct model *model = planning->model;
    struct ground ground;

    *spread = (struct spread){.layer = layer, .side = layer->side};
    spread->stock = MODEL_FIND(model, stock, layer->stock);
    if (!spread->stock || !ground_find(planning, layer, &ground))
        return false;
    spread->box = ground.first;
    spread->ordinal = ordinal_of(model, layer);
    spread->depth = layer->boxing > 0
                        ? layer->boxing
                        : vector_along(box_size(ground.first), side_axis(layer->side));
    spread->tufting = tufting_of(model, layer->key);
    if (layer->kind == LAYER_COVER && layer->shape == SHAPE_SEWN)
        spread->ease = usual_ease(planning, spread);
    if (layer->kind == LAYER_OUTSIDE_BACK)
        spread->closing = back_closing(planning, spread);
    spread_area(spread, &ground);
    if (spread->width <= 0 || spread->height <= 0) /* it begins beside its face */
        return false;
    for (int edge = 0; edge < EDGE_COUNT; edge++) {
        spread->brims[edge].ending =
            layer->shape == SHAPE_SLAB ? ENDING_STOP : layer_ending(layer, edge);
        spread_brim(planning, spread, ground.at[edge], edge);
    }
    spread_edges(planning->model, spread);
    if (spread->tufting)
        spread->field = tuft_reckon(planning, spread);
    return true;
}
