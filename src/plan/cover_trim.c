/*
 * Trim: nailheads, strips of heads, gimp.
 *
 * Nails stand line by line: the pitch of each is divided so that whole spaces fill it, with a nail
 * at both ends, and lines that meet share the nail on their corner. A strip of heads (a strip with
 * the diameter of its heads) is held by one real nail in so many.
 *
 * A line of heads can be made in three ways, which differ in looks, minutes and money: nails apart,
 * nails that touch, a strip. All three stand in the plan with what they take; the one that the
 * layer's stock and pitches say is chosen, and nails and lines are those of that one.
 */
#include "plan/cover.h"

#include "plan/cover_sums.h"
#include "plan/geometry.h"

#include <assert.h>

static int64_t head_pitch(const struct planning *planning, const struct stock *stock)
{
    int64_t head =
        stock && stock->diameter > 0 ? stock->diameter : planning->value[TRADE_NAIL_DIAMETER];
    int64_t pitch;

    if (whole_share(head, planning->value[TRADE_NAIL_PITCH_TOUCHING], 1000000, &pitch))
        return head;
    return pitch;
}

/* By hand, else spaced; never closer than the heads are wide. */
static int64_t nail_pitch(const struct planning *planning, const struct spread *spread,
                          int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);

    int64_t by_hand = spread->brims[edge].pitch;
    int64_t pitch = by_hand > 0 ? by_hand : planning->value[TRADE_NAIL_PITCH_SPACED];

    return length_larger(pitch, head_pitch(planning, spread->stock));
}

/* Corners of a level line whose nail stands in the upright one beside it already. */
static int64_t shared_corners(const struct spread *spread, int64_t edge)
{
    return edge_is_upright(edge) ? 0
                                 : runs_along(spread, EDGE_LEFT) + runs_along(spread, EDGE_RIGHT);
}

static bool is_strip_of_heads(const struct stock *stock)
{
    return stock->kind == STOCK_STRIP && stock->diameter > 0;
}

/* ---- lines ---- */

static struct nail_line strip_line(const struct planning *planning, const struct spread *spread,
                                   int64_t edge, const struct stock *strip)
{
    struct nail_line line = {.length = spread_length(spread, edge)};

    line.heads = whole_divide_up(line.length, head_pitch(planning, strip));
    line.nails = strip_nails(line.heads, planning->value[TRADE_NAIL_STRIP_REAL_EVERY]);
    return line;
}

static struct nail_line pitched_line(const struct planning *planning, const struct spread *spread,
                                     int64_t edge, int64_t pitch)
{
    struct nail_line line = {.length = spread_length(spread, edge)};

    line.from_edge = planning->value[TRADE_NAIL_EDGE];
    line.spaces = nail_spaces(line.length, pitch);
    line.nails = line.spaces + 1 - shared_corners(spread, edge);
    return line;
}

static void cut_nails(struct planning *planning, const struct spread *spread)
{
    bool strip = is_strip_of_heads(spread->stock);
    int64_t nails = 0;

    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        struct nail_line line;

        if (!runs_along(spread, edge))
            continue;
        line = strip ? strip_line(planning, spread, edge, spread->stock)
                     : pitched_line(planning, spread, edge, nail_pitch(planning, spread, edge));
        line.layer = spread->layer->key;
        line.box = spread->box->key;
        line.edge = edge;
        *LIST_ADD(planning->arena, &planning->plan->nail_lines) = line;
        nails += line.nails;
    }
    spread_consume(planning, spread, STOCK_NAIL, strip ? 0 : spread->stock->key, QUANTITY_COUNT,
                   nails, strip ? "nails for the strip" : "nails");
}

/* ---- ways ---- */

static const struct stock *first_nails(const struct model *model)
{
    for (size_t i = 0; i < model->stocks.count; i++)
        if (model->stocks.at[i].kind == STOCK_NAIL)
            return &model->stocks.at[i];
    return NULL;
}

static const struct stock *first_strip(const struct model *model)
{
    for (size_t i = 0; i < model->stocks.count; i++)
        if (is_strip_of_heads(&model->stocks.at[i]))
            return &model->stocks.at[i];
    return NULL;
}

/* The way that the layer is made in. */
static enum trim_made made_as(const struct planning *planning, const struct spread *spread)
{
    if (is_strip_of_heads(spread->stock))
        return TRIM_STRIP;
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        if (runs_along(spread, edge) &&
            nail_pitch(planning, spread, edge) > head_pitch(planning, spread->stock))
            return TRIM_SPACED;
    return TRIM_TOUCHING;
}

/* Of the way in force the pitches are the layer's own. */
static int64_t pitch_so(const struct planning *planning, const struct spread *spread, int64_t edge,
                        const struct trim_way *way, const struct stock *nails)
{
    if (way->chosen)
        return nail_pitch(planning, spread, edge);
    return way->made == TRIM_TOUCHING ? head_pitch(planning, nails)
                                      : length_larger(planning->value[TRADE_NAIL_PITCH_SPACED],
                                                      head_pitch(planning, nails));
}

static int64_t minutes_of(const struct planning *planning, const struct trim_way *way)
{
    int64_t minutes = way->nails * planning->value[TRADE_MINUTES_NAIL];
    int64_t strip = 0;
    int64_t skilled;

    (void)whole_share(planning->value[TRADE_MINUTES_NAIL_STRIP], way->strip, 1000 * LENGTH_MM,
                      &strip);
    minutes += strip;
    if (whole_share(minutes, planning->model->workshop.skill, 1000000, &skilled))
        return minutes;
    return skilled;
}

static void add_way(struct planning *planning, const struct spread *spread, enum trim_made made)
{
    const struct model *model = planning->model;
    bool own_strip = is_strip_of_heads(spread->stock);
    const struct stock *strip = own_strip ? spread->stock : first_strip(model);
    const struct stock *nails = own_strip ? first_nails(model) : spread->stock;
    struct trim_way *way = LIST_ADD(planning->arena, &planning->plan->trim_ways);

    way->layer = spread->layer->key;
    way->box = spread->box->key;
    way->made = made;
    way->chosen = made == made_as(planning, spread);
    way->nail_stock = nails ? nails->key : 0;
    way->strip_stock = made == TRIM_STRIP && strip ? strip->key : 0;
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        struct nail_line line;

        if (!runs_along(spread, edge))
            continue;
        line = made == TRIM_STRIP ? strip_line(planning, spread, edge, strip)
                                  : pitched_line(planning, spread, edge,
                                                 pitch_so(planning, spread, edge, way, nails));
        way->nails += line.nails;
        way->heads += made == TRIM_STRIP ? line.heads : line.nails;
        way->strip += made == TRIM_STRIP ? line.length : 0;
    }
    way->minutes = minutes_of(planning, way);
}

/* ---- all ---- */

void cut_trim(struct planning *planning, struct spread *spread, int64_t run, int corners)
{
    const int64_t *value = planning->value;
    bool heads = is_strip_of_heads(spread->stock);
    int64_t gimp = run + value[TRADE_GIMP_EXTRA] + corners * value[TRADE_GIMP_CORNER];

    if (heads || spread->stock->kind == STOCK_NAIL) {
        cut_nails(planning, spread);
        for (int made = 0; made < TRIMS_MADE; made++)
            add_way(planning, spread, (enum trim_made)made);
    }
    if (spread->stock->kind != STOCK_NAIL)
        spread_consume(planning, spread, spread->stock->kind, spread->stock->key, QUANTITY_LENGTH,
                       heads ? run : gimp, "trim");
    spread_cover(planning, spread, run, 0);
}

const char *plan_trim_word(enum trim_made made)
{
    static const char *const words[TRIMS_MADE] = {
        [TRIM_SPACED] = "nails apart",
        [TRIM_TOUCHING] = "nails that touch",
        [TRIM_STRIP] = "strip of heads",
    };

    return words[made];
}
