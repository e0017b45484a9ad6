/*
 * Padding: foam slabs laid edge to edge, and batting butted from widths. Neither is seamed, and
 * both may lie either way.
 */
#include "plan/cover.h"

#include "plan/curve.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/layers.h"
#include "plan/point.h"

#include <assert.h>

static const char *const foam_name = "foam";
static const char *const batting_name = "batting";

/* Padding is cut from the rectangle round the outline and trimmed along it when it lies there. */
static void trim_padding(struct planning *planning, const struct spread *spread, int faces,
                         struct cover *cover)
{
    const struct layer *layer = spread->layer;
    const struct area area = {layer->u, layer->v, layer->u + spread->width,
                              layer->v + spread->height};

    if (!spread_outlined(spread))
        return;
    cover->away = faces * curve_away(planning->model, spread->box, &area);
    cover->trimmed = faces * spread->lengths[EDGE_TOP];
}

/* ---- foam ---- */

/* Does a sewn cover lie over this foam? Then it is cut larger, to fill it. */
static bool under_sewn_cover(const struct model *model, const struct layer *foam)
{
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *over = &model->layers.at[i];

        if (over->kind == LAYER_COVER && over->shape == SHAPE_SEWN && layers_share_face(over, foam))
            return true;
    }
    return false;
}

/* The slabs on offer that cover it with the fewest pieces; the first such offer. One piece where
 * nothing with a size is on offer. */
static struct slabs slabs_on_offer(const struct model *model, int64_t stock, int64_t width,
                                   int64_t height)
{
    struct slabs best = {width, height, 1, 1};
    bool found = false;

    for (size_t i = 0; i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];
        struct slabs slabs;

        if (offer->stock != stock || offer->length <= 0 || offer->width <= 0)
            continue;
        slabs = slabs_cover(width, height, offer->length, offer->width);
        if (slabs.columns * slabs.rows > PARTS_AT_MOST)
            continue;
        if (!found || slabs.columns * slabs.rows < best.columns * best.rows)
            best = slabs;
        found = true;
    }
    return best;
}

/* A grid of pieces: whole ones, and what is left in the last column and row. */
static void add_grid(struct planning *planning, struct spread *spread, const char *name,
                     int64_t width, int64_t height, const struct slabs *slabs)
{
    assert(slabs->columns * slabs->across >= width && slabs->rows * slabs->up >= height);

    for (int64_t row = 0; row < slabs->rows; row++)
        for (int64_t column = 0; column < slabs->columns; column++)
            spread_piece(planning, spread, name, 1,
                         length_smaller(slabs->across, width - column * slabs->across),
                         length_smaller(slabs->up, height - row * slabs->up), true);
}

/* Over the finished size, to fill a sewn cover. */
static int64_t filling(const struct planning *planning, const struct spread *spread)
{
    bool soft = spread->stock->nature == NATURE_SOFT;

    if (!under_sewn_cover(planning->model, spread->layer))
        return 0;
    return planning->value[soft ? TRADE_FOAM_OVERSIZE_COVER_SOFT : TRADE_FOAM_OVERSIZE_COVER];
}

/* Wrapped foam goes down the whole side, its own thickness round the corner; one that ends at the
 * side only rolls over the board's edge instead of being cut flush. */
static int64_t rolled(const struct planning *planning, const struct spread *spread, int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);

    const struct brim *brim = &spread->brims[edge];
    int64_t thickness =
        spread->layer->thickness > 0 ? spread->layer->thickness : spread->stock->thickness;

    if (spread->layer->shape != SHAPE_WRAPPED || brim->inside)
        return 0;
    if (brim->ending == ENDING_WRAP)
        return spread->depth + thickness;
    return brim->ending == ENDING_SIDE ? planning->value[TRADE_FOAM_OVERSIZE_EDGE] : 0;
}

void cut_slab(struct planning *planning, struct spread *spread)
{
    int64_t oversize = filling(planning, spread);
    int64_t width = spread->wide + oversize + rolled(planning, spread, EDGE_LEFT) +
                    rolled(planning, spread, EDGE_RIGHT);
    int64_t height = spread->high + oversize + rolled(planning, spread, EDGE_TOP) +
                     rolled(planning, spread, EDGE_BOTTOM);
    int faces = spread->layer->both ? 2 : 1;
    struct slabs slabs = slabs_on_offer(planning->model, spread->stock->key, width, height);
    struct cover *cover;

    for (int face = 0; face < faces; face++)
        add_grid(planning, spread, foam_name, width, height, &slabs);
    cover = spread_cover(planning, spread, width, height);
    trim_padding(planning, spread, faces, cover);
    if (spread->box->frame != FRAME_CUSHION) /* loose in its cover, glued to nothing */
        spread_consume(planning, spread, STOCK_SPRAY, 0, QUANTITY_AREA,
                       spread->surface - cover->away, "spray glue");
}

/* ---- batting ---- */

/* Thickness of the foam under it where it goes round an edge. */
static int64_t foam_under(const struct planning *planning, const struct spread *spread,
                          int64_t edge)
{
    const struct layer *layer = spread->layer;
    int64_t own = layer->thickness > 0 ? layer->thickness : spread->stock->thickness;
    int64_t pulled;

    assert(edge >= 0 && edge < EDGE_COUNT);
    if (whole_share(own, planning->value[TRADE_BATTING_COMPRESS], 1000000, &pulled))
        return 0;
    return spread->brims[edge].over > pulled ? spread->brims[edge].over - pulled : 0;
}

/* How far a zone takes in the face from an edge; 0 where it leaves some of that edge free. */
static int64_t zone_depth(const struct area *zone, const struct area *face, int64_t edge)
{
    bool whole = edge_is_upright(edge) ? zone->v0 <= face->v0 && zone->v1 >= face->v1
                                       : zone->u0 <= face->u0 && zone->u1 >= face->u1;

    if (!whole || area_empty(zone))
        return 0;
    switch (edge) {
    case EDGE_LEFT:
        return zone->u0 <= face->u0 ? zone->u1 - face->u0 : 0;
    case EDGE_RIGHT:
        return zone->u1 >= face->u1 ? face->u1 - zone->u0 : 0;
    case EDGE_BOTTOM:
        return zone->v0 <= face->v0 ? zone->v1 - face->v0 : 0;
    default:
        return zone->v1 >= face->v1 ? face->v1 - zone->v0 : 0;
    }
}

/* Nothing where that would be all of the face. */
static int64_t kept_back(const struct planning *planning, const struct spread *spread, int64_t side,
                         int64_t edge)
{
    const struct plan *plan = planning->plan;
    struct area face = face_area(spread->box, side);
    int64_t across = edge_is_upright(edge) ? area_width(&face) : area_height(&face);
    int64_t kept = 0;

    assert(edge >= 0 && edge < EDGE_COUNT);
    if (spread->plot_count > 1 || spread->brims[edge].inside)
        return 0;
    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *junction = &plan->junctions.at[i];
        bool of_b = junction->box_b == spread->box->key;
        int64_t depth;

        if ((!of_b && junction->box_a != spread->box->key) || junction->box_b == 0 ||
            junction->point_count == 0 || point_side(planning, junction, of_b) != side)
            continue;
        depth = zone_depth(of_b ? &junction->zone_b : &junction->zone, &face, edge);
        if (depth > 0)
            kept = length_larger(kept, depth + planning->value[TRADE_BATTING_KEEP_BACK]);
    }
    return kept < across ? kept : 0;
}

static bool goes_round(const struct spread *spread, int64_t edge)
{
    return !brim_is_open(spread, edge);
}

int64_t batting_kept_back(const struct planning *planning, const struct spread *spread, int face,
                          int64_t edge)
{
    const struct layer *layer = spread->layer;
    bool ends = layer->both ? !goes_round(spread, edge) : spread->brims[edge].ending == ENDING_STOP;

    if (layer->kind != LAYER_BATTING || !ends)
        return 0;
    return kept_back(planning, spread, face ? side_opposite(spread->side) : spread->side, edge);
}

/*
 * What an edge of a single face adds: `wrap` goes down the side and on to the face behind (soft
 * enough to stretch over the foam's edge), `side` down the foam and the side, flush; one that stops
 * stays short of a joint.
 */
static int64_t batting_reach(const struct planning *planning, const struct spread *spread,
                             int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);

    const struct brim *brim = &spread->brims[edge];

    if (brim->inside)
        return 0;
    if (brim->ending == ENDING_WRAP)
        return spread->depth + planning->value[TRADE_BATTING_OVERWRAP];
    if (brim->ending == ENDING_SIDE)
        return spread->depth + foam_under(planning, spread, edge);
    return -batting_kept_back(planning, spread, 0, edge);
}

static int64_t kept_back_twice(const struct planning *planning, const struct spread *spread,
                               int64_t edge)
{
    return batting_kept_back(planning, spread, 0, edge) +
           batting_kept_back(planning, spread, 1, edge);
}

/* Round a box with two faces: folded over the edges where it goes round. */
static void sleeve_size(const struct planning *planning, const struct spread *spread,
                        int64_t *ret_width, int64_t *ret_height)
{
    int rounds = goes_round(spread, EDGE_LEFT) + goes_round(spread, EDGE_RIGHT);
    int ends = goes_round(spread, EDGE_TOP) + goes_round(spread, EDGE_BOTTOM);

    *ret_width = 2 * spread->width + rounds * spread->depth -
                 kept_back_twice(planning, spread, EDGE_LEFT) -
                 kept_back_twice(planning, spread, EDGE_RIGHT);
    *ret_height = spread->height + ends * spread->depth;
}

static void face_size(const struct planning *planning, const struct spread *spread,
                      int64_t *ret_width, int64_t *ret_height)
{
    *ret_width = spread->wide + batting_reach(planning, spread, EDGE_LEFT) +
                 batting_reach(planning, spread, EDGE_RIGHT);
    *ret_height = spread->high + batting_reach(planning, spread, EDGE_TOP) +
                  batting_reach(planning, spread, EDGE_BOTTOM);
}

/*
 * How batting is butted from widths. What is wider than the roll both ways is laid in whole widths.
 * A long narrow strip is cut across the roll in equal parts where these take a quarter of its
 * length at most: along the roll it would leave most of it over.
 */
static struct slabs batting_widths(int64_t width, int64_t height, int64_t roll)
{
    int64_t longer = length_larger(width, height);
    int64_t narrow = length_smaller(width, height);
    int64_t parts;
    struct slabs widths = {width, height, 1, 1};

    if (longer <= roll || longer > PARTS_AT_MOST * roll)
        return widths;
    if (narrow > roll) {
        widths.across = roll;
        widths.columns = whole_divide_up(width, roll);
        return widths;
    }
    parts = whole_divide_up(longer, roll);
    if (4 * parts * narrow > longer)
        return widths;
    if (width > height) {
        widths.columns = parts;
        widths.across = whole_divide_up(width, parts);
    } else {
        widths.rows = parts;
        widths.up = whole_divide_up(height, parts);
    }
    return widths;
}

/* Deep buttons draw the batting into their folds: a field wants more of it on all sides. */
static void tell_drawn_in(struct planning *planning, const struct spread *spread, int64_t width,
                          int64_t height)
{
    struct tuft_field field;
    int64_t wanted = planning->value[TRADE_BATTING_OVERWRAP_TUFTED];
    int64_t beyond;
    struct finding *finding;

    if (!tufts_over(planning, spread, &field))
        return;
    beyond = field.border + length_smaller(width - spread->width, height - spread->height) / 2;
    if (beyond >= wanted)
        return;
    finding = finding_add(planning, FINDING_BATTING_DRAWN, ENTITY_layer, spread->layer->key);
    argument_length(finding, 0, beyond);
    argument_length(finding, 1, wanted);
}

void cut_batting(struct planning *planning, struct spread *spread)
{
    struct cover *cover;
    struct slabs widths;
    int64_t width, height, glued;

    if (spread->layer->both)
        sleeve_size(planning, spread, &width, &height);
    else
        face_size(planning, spread, &width, &height);
    if (width <= 0 || height <= 0) {
        finding_add(planning, FINDING_LAYER_NO_ROOM, ENTITY_layer, spread->layer->key);
        return;
    }
    tell_drawn_in(planning, spread, width, height);
    widths = batting_widths(width, height, spread->stock->width);
    add_grid(planning, spread, batting_name, width, height, &widths);
    cover = spread_cover(planning, spread, width, height);
    cover->width_count = (int)(widths.columns * widths.rows);
    trim_padding(planning, spread, spread->layer->both ? 2 : 1, cover);
    if (whole_share(spread->surface - cover->away, planning->value[TRADE_SPRAY_BATTING_SHARE],
                    1000000, &glued))
        return;
    spread_consume(planning, spread, STOCK_SPRAY, 0, QUANTITY_AREA, glued, "spray glue");
}
