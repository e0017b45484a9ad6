/*
 * Flat pieces: linings and dust covers, with their edges folded in. A cut size is the outer size
 * and, on each side, the fold less the inset (common practice, no source); a piece that the maker
 * closes raw has no fold. Outside backs: cover_back.c.
 */
#include "plan/cover.h"

#include "model/words.h"

void cut_flat(struct planning *planning, struct spread *spread)
{
    bool dust = spread->layer->kind == LAYER_DUST_COVER;
    int64_t folded = spread->layer->closing == CLOSING_RAW
                         ? 0
                         : planning->value[dust ? TRADE_DUST_FOLD : TRADE_LINING_FOLD];
    int64_t fold = 2 * (folded - planning->value[TRADE_DUST_INSET]);
    int64_t width = spread->wide + fold;
    int64_t height = spread->high + fold;

    if (spread->layer->kind == LAYER_OUTSIDE_BACK)
        cut_back(planning, spread);
    else if (width > 0 && height > 0)
        cut_cloth(planning, spread, words_layer.at[spread->layer->kind].name, width, height);
}
