/*
 * Flat: linings and dust covers with their edges folded in, and outside backs.
 *
 *     lining, dust cover   outer size - inset + fold, on each side (TRADE 2.7)
 *     outside back         a bit at the top, nail strips at the sides, landing and handle below
 */
#include "plan/cover.h"

#include "model/words.h"

static void cut_back(struct planning *planning, struct spread *spread)
{
    const struct brim *bottom = &spread->brims[EDGE_BOTTOM];
    int64_t strip = 2 * (spread->height - 2 * planning->value[TRADE_NAIL_STRIP_LESS]);
    int64_t width = spread->width + 2 * planning->value[TRADE_BACK_SIDE];
    int64_t height =
        spread->height + planning->value[TRADE_BACK_TOP] + bottom->landing + bottom->handle;

    cut_cloth(planning, spread, words_layer.at[spread->layer->kind].name, width, height);
    spread_consume(planning, spread, STOCK_STRIP, 0, QUANTITY_LENGTH, spread->width, "card strip");
    spread_consume(planning, spread, STOCK_STRIP, 0, QUANTITY_LENGTH, strip, "nail strip");
}

void cut_flat(struct planning *planning, struct spread *spread)
{
    int64_t fold = 2 * (planning->value[TRADE_DUST_FOLD] - planning->value[TRADE_DUST_INSET]);
    int64_t width = spread->width + fold;
    int64_t height = spread->height + fold;

    if (spread->layer->kind == LAYER_OUTSIDE_BACK)
        cut_back(planning, spread);
    else if (width > 0 && height > 0)
        cut_cloth(planning, spread, words_layer.at[spread->layer->kind].name, width, height);
}
