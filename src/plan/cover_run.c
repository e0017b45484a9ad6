/*
 * Runs along edges: welt, nailheads, gimp. A run lies along every edge of its layer that does not
 * stop.
 *
 * Welt is cut as straight strips across the roll, all of one length, so that they fit into what
 * other pieces leave over.
 */
#include "plan/cover.h"

#include "base/quantity.h"

#include <assert.h>

static bool runs_along(const struct spread *spread, int64_t edge)
{
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
        if (edge_upright(edge))
            corners += runs_along(spread, beside[0]) + runs_along(spread, beside[1]);
    }
    *ret_corners = corners;
    return length;
}

static void cut_welt(struct planning *planning, struct spread *spread, int64_t run, int corners)
{
    const int64_t *value = planning->value;
    int64_t cord = spread->layer->thickness > 0 ? spread->layer->thickness : value[TRADE_WELT_CORD];
    int64_t step = model_units(planning->model) == UNITS_INCH ? LENGTH_INCH / 8 : LENGTH_MM;
    int64_t length = run + value[TRADE_WELT_JOIN] + corners * value[TRADE_WELT_CORNER];
    int64_t strip = welt_strip(cord, value[TRADE_SEAM_ALLOWANCE], step);
    int64_t roll = spread->stock->width * PARTS_AT_MOST >= length ? spread->stock->width : length;
    int64_t strips = welt_strips(length, roll);

    spread_piece(planning, spread, "welt strip", (int)strips, whole_divide_up(length, strips),
                 strip, true);
    spread_cover(planning, spread, length, strip)->widths = (int)strips;
    spread_consume(planning, spread, STOCK_CORD, 0, QUANTITY_LENGTH, length, "welt cord");
}

/* Nails on open lines stand at both ends, on a closed one every nail is in front of a gap. */
static int64_t nail_count(const struct planning *planning, const struct spread *spread)
{
    int64_t pitch = planning->value[TRADE_NAIL_PITCH_SPACED];
    int corners;
    int64_t run = spread_run(spread, &corners);
    int64_t nails = 0;

    if (corners == EDGE_COUNT)
        return whole_divide_even(run, pitch);
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        if (runs_along(spread, edge))
            nails += whole_divide_even(spread_length(spread, edge), pitch) + 1;
    return nails - corners;
}

static void cut_trim(struct planning *planning, struct spread *spread, int64_t run, int corners)
{
    const int64_t *value = planning->value;
    int64_t gimp = run + value[TRADE_GIMP_EXTRA] + corners * value[TRADE_GIMP_CORNER];

    if (spread->stock->kind == STOCK_NAIL)
        spread_consume(planning, spread, STOCK_NAIL, spread->stock->key, QUANTITY_COUNT,
                       nail_count(planning, spread), "nails");
    else
        spread_consume(planning, spread, spread->stock->kind, spread->stock->key, QUANTITY_LENGTH,
                       gimp, "trim");
    spread_cover(planning, spread, run, 0);
}

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
