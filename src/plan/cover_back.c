/*
 * Outside backs, at levels that differ in looks, minutes and price:
 *
 *     raw     cut to the edge less the inset, stapled all round, its edge raw
 *     row     folded in, one row of staples all round
 *     blind   top tacked under a card strip, sides in metal strips, bottom stapled underneath
 *             or, where its stapled edges are folded: its sides folded in, a row of staples each
 *
 * Which one is the maker's word, else how the face is seen: never, toward a wall, in plain view
 * (common practice, no source). Points of a strip bruise pile: its sides are stitched by hand
 * instead.
 *
 * 1  All ways of a back stand in the plan, one of them chosen: pieces and staples are those
 *    of that one, and what it uses up is bought.
 * 2  A way's lengths add up to what is fixed: all round, or top, sides and bottom.
 */
#include "plan/cover.h"

#include "plan/check.h"
#include "plan/cover_sums.h"
#include "plan/geometry.h"

#include "model/words.h"

#include <assert.h>

int64_t back_closing(const struct planning *planning, const struct spread *spread)
{
    static const int64_t by_seen[SEEN_COUNT] = {
        [SEEN_SEEN] = CLOSING_BLIND, [SEEN_WALL] = CLOSING_ROW, [SEEN_NEVER] = CLOSING_RAW};

    if (spread->layer->closing != CLOSING_AUTO)
        return spread->layer->closing;
    return by_seen[check_seen(planning, spread->box->key, spread->side)];
}

bool back_is_stapled(const struct spread *spread)
{
    return spread->closing == CLOSING_BLIND && spread->layer->finish == FINISH_FOLDED;
}

/* ---- one way ---- */

/* Its left and its right edge, each shorter by so much. */
static int64_t both_sides(const struct spread *spread, int64_t less)
{
    return length_larger(0, spread_length(spread, EDGE_LEFT) - less) +
           length_larger(0, spread_length(spread, EDGE_RIGHT) - less);
}

/* What an edge that is folded in adds: it lies a little inside. */
static int64_t folded_in(const struct planning *planning)
{
    return planning->value[TRADE_LINING_FOLD] - planning->value[TRADE_DUST_INSET];
}

static void lay_round(const struct planning *planning, const struct spread *spread,
                      struct back_way *way)
{
    int64_t round = both_sides(spread, 0) + spread_length(spread, EDGE_TOP) +
                    spread_length(spread, EDGE_BOTTOM);
    int64_t more = 2 * folded_in(planning);

    if (way->closing == CLOSING_ROW) {
        way->row = round;
    } else {
        more = -2 * planning->value[TRADE_DUST_INSET];
        way->raw = round;
    }
    way->width = spread->width + more;
    way->height = spread->height + more;
    way->staples = staples_loop(round, planning->value[TRADE_STAPLE_BOTTOM_PITCH]);
}

/* Strips end before the corners; stitches do not. */
static void lay_blind(const struct planning *planning, const struct spread *spread,
                      struct back_way *way)
{
    const int64_t *value = planning->value;
    const struct brim *bottom = &spread->brims[EDGE_BOTTOM];
    int64_t top = spread_length(spread, EDGE_TOP);

    way->width = spread->width + 2 * (way->stapled ? folded_in(planning) : value[TRADE_BACK_SIDE]);
    way->height = spread->height + value[TRADE_BACK_TOP] + bottom->landing + bottom->handle;
    way->card = top;
    way->under = spread->width;
    if (way->stapled)
        way->row = both_sides(spread, 0);
    else if (spread->stock->pile)
        way->stitched = both_sides(spread, 0);
    else
        way->strip = both_sides(spread, 2 * value[TRADE_NAIL_STRIP_LESS]);
    way->staples = staples_open(top, value[TRADE_STAPLE_BLIND_PITCH]) +
                   staples_open(top, value[TRADE_STAPLE_CARD_PITCH]) +
                   staples_open(spread->width, value[TRADE_STAPLE_BOTTOM_PITCH]);
    for (int64_t edge = EDGE_LEFT; edge <= EDGE_RIGHT && way->stapled; edge++)
        way->staples += staples_open(spread_length(spread, edge), value[TRADE_STAPLE_BOTTOM_PITCH]);
}

static int64_t minutes_of(const struct planning *planning, const struct back_way *way)
{
    const struct {
        enum trade value;
        int64_t length;
    } terms[] = {
        {TRADE_MINUTES_DUST_COVER, way->raw},       {TRADE_MINUTES_LINING, way->row},
        {TRADE_MINUTES_BLIND_TOP, way->card},       {TRADE_MINUTES_BLIND_SIDE, way->strip},
        {TRADE_MINUTES_SLIP_STITCH, way->stitched}, {TRADE_MINUTES_BLIND_BOTTOM, way->under},
    };
    int64_t sum = 0;
    int64_t skilled;

    for (size_t i = 0; i < sizeof terms / sizeof *terms; i++) {
        int64_t minutes = 0;

        (void)whole_share(planning->value[terms[i].value], terms[i].length, 1000 * LENGTH_MM,
                          &minutes);
        sum += minutes;
    }
    if (whole_share(sum, planning->model->workshop.skill, 1000000, &skilled))
        return sum;
    return skilled;
}

static const struct back_way *add_way(struct planning *planning, const struct spread *spread,
                                      int64_t closing, bool stapled)
{
    struct back_way *way = LIST_ADD(planning->arena, &planning->plan->back_ways);

    way->layer = spread->layer->key;
    way->box = spread->box->key;
    way->closing = closing;
    way->stapled = stapled;
    way->chosen = closing == spread->closing && stapled == back_is_stapled(spread);
    if (closing == CLOSING_BLIND)
        lay_blind(planning, spread, way);
    else
        lay_round(planning, spread, way);
    way->leg = staple_leg(planning, spread, spread->side);
    way->minutes = minutes_of(planning, way);
    return way;
}

/* ---- the one that is taken ---- */

static void consume_strips(struct planning *planning, const struct spread *spread,
                           const struct back_way *way)
{
    const struct model *model = planning->model;

    spread_consume(planning, spread, STOCK_STRIP, model_stock_of(model, STOCK_STRIP, NATURE_CARD),
                   QUANTITY_LENGTH, way->card, "card strip");
    spread_consume(planning, spread, STOCK_STRIP,
                   model_stock_of(model, STOCK_STRIP, NATURE_TACK_STRIP), QUANTITY_LENGTH,
                   way->strip, "tack strip");
    if (way->stitched > 0)
        sew_by_hand(planning, spread, "sides to the frame, slip stitch by hand", 2,
                    way->stitched / 2);
}

void cut_back(struct planning *planning, struct spread *spread)
{
    for (int64_t level = CLOSING_RAW; level <= CLOSING_BLIND + 1; level++) {
        bool stapled = level > CLOSING_BLIND;
        const struct back_way *way =
            add_way(planning, spread, stapled ? CLOSING_BLIND : level, stapled);

        if (!way->chosen || way->width <= 0 || way->height <= 0)
            continue;
        cut_cloth(planning, spread, words_layer.at[spread->layer->kind].name, way->width,
                  way->height);
        consume_strips(planning, spread, way);
    }
}
