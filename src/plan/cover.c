/*
 * The cover pass: soft goods, layer by layer in the order of their keys.
 *
 * A layer is laid out on its face once (struct spread); cutting and stapling both read that, so
 * that a piece is as long as the rows that hold it need. Each shape cuts by its own file.
 *
 * 1  Every layer that lies on some box gives one line among covers and at least one piece, except a
 *    run, which may only use something up.
 * 2  A piece reaches from where it is held to the landing and the handle on every open edge.
 * 3  Intervals of a stapled edge leave no gap and sum to its staples (cover_rows.c).
 */
#include "plan/cover.h"

#include "plan/curve.h"
#include "plan/geometry.h"
#include "plan/taken.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>

/* ---- edges ---- */

void edge_neighbours(int64_t edge, int64_t ret_edges[2])
{
    ret_edges[0] = edge_is_upright(edge) ? EDGE_BOTTOM : EDGE_LEFT;
    ret_edges[1] = edge_is_upright(edge) ? EDGE_TOP : EDGE_RIGHT;
}

bool edge_is_curved(const struct spread *spread, int64_t edge)
{
    const struct box *box = spread->box;

    if (spread_is_bent(spread)) /* what ends on the bent face itself lies flat there */
        return spread_follows(spread, edge) && !spread->brims[edge].inside &&
               curve_bends(box, box->main_side);
    return edge == EDGE_TOP && spread_outlined(spread) && curve_bends(box, spread->side);
}

int64_t spread_bent(const struct spread *spread, bool level, int64_t at)
{
    int64_t extent = level ? spread->height : spread->width;
    int64_t longer = level ? spread->high - extent : spread->wide - extent;

    if (longer == 0 || at <= 0)
        return at;
    return at >= extent ? at + longer : at + whole_divide_even(longer * at, extent);
}

int64_t spread_straight(const struct spread *spread, int64_t edge)
{
    return edge_is_upright(edge) ? spread->height : spread->width;
}

int64_t spread_length(const struct spread *spread, int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);
    return spread->lengths[edge];
}

int64_t spread_landing(const struct spread *spread, int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);

    const struct brim *brim = &spread->brims[edge];

    if (brim->inside || spread->layer->shape == SHAPE_FLAT || spread->layer->shape == SHAPE_SLAB)
        return spread->side;
    if (spread->layer->shape != SHAPE_SEWN && brim->ending == ENDING_WRAP)
        return side_opposite(spread->side);
    if (spread->layer->shape == SHAPE_SEWN && brim->ending == ENDING_SEWN)
        return side_opposite(spread->side); /* where the boxing's far edge lands */
    return edge_side(spread->side, edge);
}

bool brim_is_open(const struct spread *spread, int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);

    int64_t ending = spread->brims[edge].ending;

    if (spread->layer->shape == SHAPE_SEWN)
        return ending != ENDING_SEWN && ending != ENDING_STOP;
    if (spread->layer->kind == LAYER_BATTING && spread->layer->both)
        return ending == ENDING_STOP || ending == ENDING_OPEN;
    return ending != ENDING_STOP;
}

bool brim_is_sewn(const struct spread *spread, int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);
    return spread->brims[edge].ending == ENDING_SEWN;
}

/* ---- what cutting adds ---- */

static int64_t square_millimetres(int64_t width, int64_t height)
{
    return whole_divide_even(width * height, LENGTH_MM * LENGTH_MM);
}

/* "C-L3a": box, layer on it, piece of it. A long name is cut at a whole character. */
static void piece_label(char *label, size_t size, const struct spread *spread)
{
    const char *name = spread->box->name;
    int fits = (int)strlen(name);
    int nth = spread->pieces;

    while (fits > 10 || (fits > 0 && ((unsigned char)name[fits] & 0xc0) == 0x80))
        fits--;
    if (nth < 26)
        snprintf(label, size, "%.*s-L%d%c", fits, name, spread->ordinal, 'a' + nth);
    else
        snprintf(label, size, "%.*s-L%d.%d", fits, name, spread->ordinal, nth + 1);
}

void spread_piece(struct planning *planning, struct spread *spread, const char *name, int count,
                  int64_t width, int64_t height, bool turns)
{
    assert(width > 0 && height > 0);
    for (int i = 0; i < count; i++) {
        struct piece *piece = LIST_ADD(planning->arena, &planning->plan->pieces);

        piece_label(piece->label, sizeof piece->label, spread);
        snprintf(piece->name, sizeof piece->name, "%s", name);
        piece->layer = spread->layer->key;
        piece->box = spread->box->key;
        piece->stock = spread->stock->key;
        piece->width = width;
        piece->height = height;
        piece->turned_allowed = turns;
        spread->pieces++;
        spread->surface += square_millimetres(width, height);
    }
}

struct cover *spread_cover(struct planning *planning, const struct spread *spread, int64_t width,
                           int64_t height)
{
    struct cover *cover = LIST_ADD(planning->arena, &planning->plan->covers);

    cover->layer = spread->layer->key;
    cover->box = spread->box->key;
    cover->cut_width = width;
    cover->cut_height = height;
    cover->width_count = 1;
    return cover;
}

void spread_consume(struct planning *planning, const struct spread *spread, int64_t kind,
                    int64_t stock, enum quantity measure, int64_t amount, const char *what)
{
    if (amount <= 0)
        return;
    struct consumable *used = LIST_ADD(planning->arena, &planning->plan->consumables);
    *used = (struct consumable){
        spread->layer->key, spread->box->key, kind, stock, measure, amount, what};
}

/* ---- the pass ---- */

static void cut_by_shape(struct planning *planning, struct spread *spread)
{
    static void (*const by_shape[SHAPE_COUNT])(struct planning *, struct spread *) = {
        [SHAPE_SLAB] = cut_flat, [SHAPE_WRAPPED] = cut_wrapped, [SHAPE_SEWN] = cut_sewn,
        [SHAPE_FLAT] = cut_flat, [SHAPE_RUN] = cut_run,
    };

    assert(spread->layer->shape >= 0 && spread->layer->shape < SHAPE_COUNT);
    if (spread->layer->kind == LAYER_OUTSIDE_BACK)
        cut_back(planning, spread);
    else if (spread->layer->kind == LAYER_FOAM)
        cut_slab(planning, spread);
    else if (spread->layer->kind == LAYER_BATTING)
        cut_batting(planning, spread);
    else if (spread->layer->kind == LAYER_WELT || spread->layer->kind == LAYER_TRIM)
        cut_run(planning, spread);
    else
        by_shape[spread->layer->shape](planning, spread);
}

static void consume_thread(struct planning *planning, const struct spread *spread,
                           struct cover *cover, size_t first_seam)
{
    const struct model *model = planning->model;

    cover->thread = sewing_thread(planning, first_seam, false);
    spread_consume(planning, spread, STOCK_CORD, model_stock_of(model, STOCK_CORD, NATURE_THREAD),
                   QUANTITY_LENGTH, cover->thread, "thread");
    spread_consume(planning, spread, STOCK_CORD,
                   model_stock_of(model, STOCK_CORD, NATURE_STITCHING), QUANTITY_LENGTH,
                   sewing_thread(planning, first_seam, true), "thread for stitches by hand");
}

static void cut_layer(struct planning *planning, struct spread *spread)
{
    size_t line = planning->plan->covers.count;
    size_t seams = planning->plan->seams.count;

    cut_by_shape(planning, spread);
    if (planning->plan->covers.count == line)
        return;
    planning->plan->covers.at[line].area = spread->surface;
    consume_thread(planning, spread, &planning->plan->covers.at[line], seams);
}

static void drop(struct list *list)
{
    *list = (struct list){NULL, 0, 0};
}

/* What would be cut if every box had come out as planned; nothing of it is told. */
static const struct plan *cut_as_planned(const struct planning *planned)
{
    struct planning planning = *planned;
    struct plan *plan = ARENA_NEW(planned->arena, struct plan);

    *plan = *planned->plan;
    drop(&plan->covers.any);
    drop(&plan->pieces.any);
    drop(&plan->tufts.any);
    drop(&plan->seams.any);
    drop(&plan->nail_lines.any);
    drop(&plan->trim_ways.any);
    drop(&plan->consumables.any);
    drop(&plan->edges.any);
    drop(&plan->intervals.any);
    drop(&plan->findings.any);
    planning.plan = plan;
    for (size_t i = 0; i < planning.model->layers.count; i++) {
        struct spread spread;

        if (!spread_lay(&planning, &planning.model->layers.at[i], &spread))
            continue;
        wood_gather(&planning, &spread);
        cut_layer(&planning, &spread);
    }
    return plan;
}

/* Cloth and padding fit the boxes as they were built, not as they were planned (rule P15). */
void pass_cover(struct planning *planned)
{
    struct planning built = *planned;
    struct planning *planning = &built;
    const struct model *model = model_as_built(planned);
    const struct plan *as_planned = model == planned->model ? NULL : cut_as_planned(planned);

    built.model = model;
    curve_outlines(planning);
    for (size_t i = 0; i < model->layers.count; i++) {
        size_t first = planning->plan->pieces.count;
        struct spread spread;

        if (!spread_lay(planning, &model->layers.at[i], &spread))
            continue;
        wood_gather(planning, &spread);
        cut_layer(planning, &spread);
        if (as_planned)
            tell_short_pieces(planning, &spread, as_planned, first);
        staple_layer(planning, &spread);
        patch_layer(planning, &spread);
    }
    web_openings(planning);
}
