/*
 * A layer's outline on its face is bounded by four edges, and each edge ends in one of the ways of
 * the vocabulary `ending`. Round an edge the layer covers
 *
 *     wrap    the whole side there, and a strip as wide as the landing on the face behind
 *     side    a strip of the side, next to the edge; a layer on both faces has one from each
 *     open    the same: the open side of a sewn cover
 *     sewn    the side as deep as the boxing is
 *     stop    nothing
 *
 * along the length of the edge. Slabs and flat pieces stay on their face whatever their ends say.
 */
#include "plan/drape.h"

#include "plan/geometry.h"
#include "plan/layers.h"
#include "plan/padding.h"

#include <assert.h>

bool drape_is_cloth(const struct layer *layer)
{
    return !layer->slip && (layer->kind == LAYER_COVER || layer->kind == LAYER_LINING ||
                            layer->kind == LAYER_OUTSIDE_BACK || layer->kind == LAYER_DUST_COVER);
}

struct area drape_face(const struct layer *layer, const struct box *box)
{
    return layer_area(box, layer->side, layer);
}

static int64_t ending_of(const struct layer *layer, int64_t edge)
{
    if (layer->shape != SHAPE_WRAPPED && layer->shape != SHAPE_SEWN)
        return ENDING_STOP;
    return layer_ending(layer, edge);
}

static int64_t landing_width(const struct planning *planning, const struct layer *layer,
                             int64_t edge)
{
    for (size_t i = 0; i < planning->model->layer_edges.count; i++) {
        const struct layer_edge *by_hand = &planning->model->layer_edges.at[i];

        if (by_hand->layer == layer->key && by_hand->edge == edge && by_hand->landing > 0)
            return by_hand->landing;
    }
    return planning->value[TRADE_LANDING];
}

/* The outline of a solid that hangs over an edge: the layer's extent along it, between two depths
 * from the layer's face. */
static struct solid round_edge_between(const struct layer *layer, const struct box *box,
                                       int64_t edge, int64_t from, int64_t to)
{
    struct area face = face_area(box, layer->side);
    struct area outline = drape_face(layer, box);

    assert(0 <= from && from <= to);
    if (edge_is_upright(edge))
        outline = (struct area){face.u0, outline.v0, face.u1, outline.v1};
    else
        outline = (struct area){outline.u0, face.v0, outline.u1, face.v1};
    return solid_behind(box, layer->side, &outline, from, to);
}

static struct solid round_edge(const struct layer *layer, const struct box *box, int64_t edge,
                               int64_t depth)
{
    return round_edge_between(layer, box, edge, 0, depth);
}

static int64_t thickness_of(const struct box *box, int64_t side)
{
    return vector_along(box_size(box), side_axis(side));
}

/* A strip along one edge of an outline, inside it. */
static struct area strip_inside(struct area outline, int64_t edge, int64_t width)
{
    if (edge == EDGE_LEFT && outline.u0 + width < outline.u1)
        outline.u1 = outline.u0 + width;
    else if (edge == EDGE_RIGHT && outline.u1 - width > outline.u0)
        outline.u0 = outline.u1 - width;
    else if (edge == EDGE_BOTTOM && outline.v0 + width < outline.v1)
        outline.v1 = outline.v0 + width;
    else if (edge == EDGE_TOP && outline.v1 - width > outline.v0)
        outline.v0 = outline.v1 - width;
    return outline;
}

/* The edge of the layer's outline lies on the edge of the face, so that the layer can go round. */
static bool reaches_edge(const struct layer *layer, const struct box *box, int64_t edge)
{
    struct area face = face_area(box, layer->side);
    struct area outline = drape_face(layer, box);

    return edge == EDGE_LEFT     ? outline.u0 == face.u0
           : edge == EDGE_RIGHT  ? outline.u1 == face.u1
           : edge == EDGE_BOTTOM ? outline.v0 == face.v0
                                 : outline.v1 == face.v1;
}

static int64_t depth_round_edge(const struct planning *planning, const struct layer *layer,
                                const struct box *box, int64_t edge)
{
    int64_t whole = thickness_of(box, layer->side);
    int64_t depth = 0;

    switch (ending_of(layer, edge)) {
    case ENDING_WRAP:
        return whole;
    case ENDING_SEWN:
        depth = layer->boxing > 0 ? layer->boxing : whole;
        break;
    case ENDING_SIDE:
    case ENDING_OPEN:
        depth = landing_width(planning, layer, edge);
        break;
    default:
        break;
    }
    return depth < whole ? depth : whole;
}

static void area_add(struct area area, struct area areas[DRAPE_AREAS], size_t *count)
{
    if (!area_empty(&area)) {
        assert(*count < DRAPE_AREAS);
        areas[(*count)++] = area;
    }
}

/* The strip from the opposite face, where the two do not meet anyway. */
static void add_far_strip(const struct layer *layer, const struct box *box, int64_t edge,
                          int64_t depth, struct area areas[DRAPE_AREAS], size_t *count)
{
    int64_t whole = thickness_of(box, layer->side);
    struct solid round = round_edge_between(layer, box, edge, whole - depth, whole);

    if (depth < whole)
        area_add(solid_on_side(&round, edge_side(layer->side, edge)), areas, count);
}

size_t drape_on_side(const struct planning *planning, const struct layer *layer,
                     const struct box *box, int64_t side, struct area areas[DRAPE_AREAS])
{
    bool own = layer_has_face(layer, side);
    size_t count = 0;

    assert(side >= 0 && side < SIDE_COUNT);
    if (own) {
        area_add(drape_face(layer, box), areas, &count);
        return count;
    }
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        int64_t depth = depth_round_edge(planning, layer, box, edge);
        struct solid round = round_edge(layer, box, edge, depth);

        if (depth == 0 || !reaches_edge(layer, box, edge))
            continue;
        if (edge_side(layer->side, edge) == side) {
            area_add(solid_on_side(&round, side), areas, &count);
            if (layer->both)
                add_far_strip(layer, box, edge, depth, areas, &count);
        } else if (side == side_opposite(layer->side) && ending_of(layer, edge) == ENDING_WRAP) {
            area_add(drape_landing(planning, layer, box, edge).area, areas, &count);
        }
    }
    return count;
}

bool drape_covers(const struct planning *planning, const struct layer *layer, const struct box *box,
                  int64_t side, int64_t u, int64_t v)
{
    struct area areas[DRAPE_AREAS];
    size_t count = drape_on_side(planning, layer, box, side, areas);

    for (size_t i = 0; i < count; i++) {
        if (area_holds(&areas[i], u, v))
            return true;
    }
    return false;
}

/* The face of `box` that an edge lands on when the layer goes round to the face behind: the same
 * edge of the opposite face, whose u and v run alike. */
static struct landing landing_behind(const struct layer *layer, const struct box *box, int64_t edge,
                                     int64_t width)
{
    struct solid round = round_edge(layer, box, edge, thickness_of(box, layer->side));
    int64_t behind = side_opposite(layer->side);

    return (struct landing){behind, strip_inside(solid_on_side(&round, behind), edge, width)};
}

static struct landing landing_on_side(const struct layer *layer, const struct box *box,
                                      int64_t edge, int64_t width)
{
    int64_t whole = thickness_of(box, layer->side);
    struct solid round = round_edge(layer, box, edge, width < whole ? width : whole);
    int64_t side = edge_side(layer->side, edge);

    return (struct landing){side, solid_on_side(&round, side)};
}

static struct area strip_outside(struct area outline, int64_t edge, int64_t width)
{
    if (edge == EDGE_LEFT)
        return (struct area){outline.u0 - width, outline.v0, outline.u0, outline.v1};
    if (edge == EDGE_RIGHT)
        return (struct area){outline.u1, outline.v0, outline.u1 + width, outline.v1};
    if (edge == EDGE_BOTTOM)
        return (struct area){outline.u0, outline.v0 - width, outline.u1, outline.v0};
    return (struct area){outline.u0, outline.v1, outline.u1, outline.v1 + width};
}

/* A pulled cover that ends inside its face lands beside its outline, turned under what comes to
 * stand there; all else that stays on its face is stapled along the inside of its outline. */
static struct landing landing_on_face(const struct layer *layer, const struct box *box,
                                      int64_t edge, int64_t width)
{
    bool pulled = layer->shape == SHAPE_WRAPPED && !reaches_edge(layer, box, edge);
    struct area outline = drape_face(layer, box);
    struct area face = face_area(box, layer->side);
    struct area strip =
        pulled ? strip_outside(outline, edge, width) : strip_inside(outline, edge, width);

    return (struct landing){layer->side, area_cut(&strip, &face)};
}

struct landing drape_landing(const struct planning *planning, const struct layer *layer,
                             const struct box *box, int64_t edge)
{
    int64_t width = landing_width(planning, layer, edge);
    int64_t ending = reaches_edge(layer, box, edge) ? ending_of(layer, edge) : ENDING_STOP;

    switch (ending) {
    case ENDING_WRAP:
        return landing_behind(layer, box, edge, width);
    case ENDING_SIDE:
    case ENDING_OPEN:
        return landing_on_side(layer, box, edge, width);
    case ENDING_SEWN:
        return (struct landing){layer->side, {0}};
    default:
        return landing_on_face(layer, box, edge, width);
    }
}
