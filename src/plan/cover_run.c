/*
 * Runs along edges: welt, and trim (cover_trim.c). A run lies along every edge of its layer that
 * does not stop.
 *
 * Welt is cut as straight strips across the roll, all of one length, so that they fit into what
 * other pieces leave over; round a curve from a piece of cloth at 45 degrees.
 */
#include "plan/cover.h"

#include "plan/cover_sums.h"
#include "plan/geometry.h"

#include <assert.h>

bool runs_along(const struct spread *spread, int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);
    return spread->brims[edge].ending != ENDING_STOP;
}

int64_t spread_run(const struct spread *spread, int *ret_corners)
{
    int64_t length = 0;
    int corners = 0;

    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        int64_t beside[2];

        if (!runs_along(spread, edge))
            continue;
        length += spread_length(spread, edge);
        edge_neighbours(edge, beside);
        if (edge_is_upright(edge))
            corners += runs_along(spread, beside[0]) + runs_along(spread, beside[1]);
    }
    *ret_corners = corners;
    return length;
}

/* ---- welt ---- */

/* The workshop's cord of that thickness; 0 without one. */
static int64_t cord_of(const struct model *model, int64_t diameter)
{
    for (size_t i = 0; i < model->stocks.count; i++)
        if (model->stocks.at[i].kind == STOCK_CORD && model->stocks.at[i].diameter == diameter)
            return model->stocks.at[i].key;
    return 0;
}

/* Round an arch or a shoulder only cloth on the bias lies flat. */
static bool is_on_bias(const struct spread *spread)
{
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        if (runs_along(spread, edge) && edge_is_curved(spread, edge))
            return true;
    return false;
}

/* Straight strips, all of one length. */
static void cut_straight(struct planning *planning, struct spread *spread, int64_t length,
                         int64_t strip)
{
    int64_t roll = spread->stock->width * PARTS_AT_MOST >= length ? spread->stock->width : length;
    int64_t strips = welt_strips(length, roll);

    spread_piece(planning, spread, "welt strip", (int)strips, whole_divide_up(length, strips),
                 strip, true);
    spread_cover(planning, spread, length, strip)->width_count = (int)strips;
    sew_welt(planning, spread, strips, strip, length);
}

/* A square of cloth, or the whole width where that is too narrow, to be cut at 45 degrees. */
static void cut_bias(struct planning *planning, struct spread *spread, int64_t length,
                     int64_t strip)
{
    int64_t share = planning->value[TRADE_BIAS_EFFICIENCY];
    int64_t step = planning->value[TRADE_WELT_STEP];
    int64_t roll = spread->stock->width;
    int64_t least = bias_side(planning->value[TRADE_BIAS_SHORTEST], step);
    int64_t square = length_larger(bias_square(length, strip, share, step), least);
    bool narrow = roll > 0 && square > roll;
    struct cover *cover;

    spread_piece(planning, spread, "welt on the bias", 1, narrow ? roll : square,
                 narrow ? bias_roll(length, strip, share, roll, step) : square, true);
    cover = spread_cover(planning, spread, length, strip);
    cover->bias = true;
    cover->width_count = (int)whole_divide_up(length, bias_longest(narrow ? roll : square));
    sew_welt(planning, spread, cover->width_count, strip, length);
}

static void cut_welt(struct planning *planning, struct spread *spread, int64_t run, int corners)
{
    const int64_t *value = planning->value;
    int64_t cord = spread->layer->thickness > 0 ? spread->layer->thickness : value[TRADE_WELT_CORD];
    int64_t length = run + value[TRADE_WELT_JOIN] + corners * value[TRADE_WELT_CORNER];
    int cords = spread->layer->doubled ? 2 : 1;
    int64_t strip = welt_strip(cords * cord, value[TRADE_SEAM_ALLOWANCE], value[TRADE_WELT_STEP],
                               cords > 1 ? value[TRADE_WELT_DOUBLE] : 0);

    if (is_on_bias(spread))
        cut_bias(planning, spread, length, strip);
    else
        cut_straight(planning, spread, length, strip);
    spread_consume(planning, spread, STOCK_CORD, cord_of(planning->model, cord), QUANTITY_LENGTH,
                   cords * length, "welt cord");
}

/* ---- all ---- */

void cut_run(struct planning *planning, struct spread *spread)
{
    int corners;
    int64_t run = spread_run(spread, &corners);

    if (run <= 0)
        return;
    if (spread->stock->kind == STOCK_CLOTH)
        cut_welt(planning, spread, run, corners);
    else
        cut_trim(planning, spread, run, corners);
}
