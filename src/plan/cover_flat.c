/*
 * Flat: linings and dust covers with their edges folded in: outer size - inset + fold, on each side
 * (TRADE 2.7); a lining that is left raw by the maker's word, its closing, without
 * the fold. Outside backs are
 * cover_back.c's.
 */
#include "plan/cover.h"

#include "model/words.h"

void cut_flat(struct planning *planning, struct spread *spread)
{
    bool dust = spread->layer->kind == LAYER_DUST_COVER;
    int64_t folded = !dust && spread->layer->closing == CLOSING_RAW
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
