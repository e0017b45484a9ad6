/*
 * What the card of a closing step says of its edges: how they are fixed, from the plainest to the
 * one that shows nothing.
 */
#include "plan/card.h"

static const struct layer_counted *counts_of(const struct carding *carding)
{
    return counted_layer(carding->planning, &carding->counted, carding->step->layer);
}

/* "every 1 in, leg 3/8 in"; what the row of another layer holds has no pitch. */
static const char *spacing(const struct carding *carding)
{
    const struct edge *row = counts_of(carding)->rows;

    if (!row)
        return "with the layer over it";
    return arena_format(carding->planning->arena, "every %s, leg %s",
                        card_length(carding, row->pitch), card_length(carding, row->leg));
}

static void put_round(struct carding *carding, const char *edge)
{
    card_say(carding,
             arena_format(carding->planning->arena, "%s, from the middle of each side outwards, %s",
                          edge, spacing(carding)));
}

static void put_blind(struct carding *carding, const struct back_way *way)
{
    const int64_t *value = carding->planning->value;
    struct arena *arena = carding->planning->arena;

    card_say(carding, arena_format(arena, "Top: face down, every %s; card strip over it, every %s",
                                   card_length(carding, value[TRADE_STAPLE_BLIND_PITCH]),
                                   card_length(carding, value[TRADE_STAPLE_CARD_PITCH])));
    card_say(carding, "Fold it down over a sheet of batting, pull it even");
    if (way->stapled)
        card_say(carding, arena_format(arena, "Sides: fold them in, staple every %s, leg %s",
                                       card_length(carding, value[TRADE_STAPLE_BOTTOM_PITCH]),
                                       card_length(carding, way->leg)));
    else if (way->stitched > 0)
        card_say(carding, "Sides: turn them in, slip stitch by hand: points would bruise the pile");
    else
        card_say(carding,
                 arena_format(arena, "Sides: hang each in its strip, %s short of both ends",
                              card_length(carding, value[TRADE_NAIL_STRIP_LESS])));
    card_say(carding, arena_format(arena, "Bottom: staple underneath, every %s, leg %s",
                                   card_length(carding, value[TRADE_STAPLE_BOTTOM_PITCH]),
                                   card_length(carding, way->leg)));
}

void card_back(struct carding *carding)
{
    const struct back_way *way = counts_of(carding)->back;
    bool raw = way ? way->closing == CLOSING_RAW : counts_of(carding)->raw;

    if (raw)
        put_round(carding, "Edge raw, cut straight");
    else if (!way || way->closing == CLOSING_ROW)
        put_round(carding, "Edge folded in");
    else
        put_blind(carding, way);
}

void card_need_back(struct carding *carding)
{
    const struct back_way *way = counts_of(carding)->back;

    if (!way)
        return;
    card_need_length(carding, way->card, "card strip");
    card_need_length(carding, way->strip, "tack strip");
}
