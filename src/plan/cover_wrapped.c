/*
 * Wrapped: one piece pulled round the edges of a face, each side by its own ending (TRADE 2.7):
 *
 *     wrap   padding on the side + depth of the side + padding on the face + landing + handle
 *     side   padding on the face + landing + handle: it lands on the side
 *     stop   nothing
 *
 * An edge that stops inside the face lands there and goes round nothing. A tufting field measures
 * its border on the padded face, so that what lies on the sides is in it already.
 */
#include "plan/cover.h"

#include "model/words.h"

static int64_t reach(const struct spread *spread, int64_t edge)
{
    const struct brim *brim = &spread->brims[edge];
    int64_t held = brim->landing + brim->handle;

    if (brim->ending == ENDING_STOP)
        return 0;
    if (brim->inside)
        return held;
    if (brim->ending == ENDING_WRAP)
        return (spread->tufting ? 0 : brim->beside) + spread->depth + brim->over + held;
    return brim->over + held;
}

void cut_wrapped(struct planning *planning, struct spread *spread)
{
    const struct layer *layer = spread->layer;
    int64_t width = spread->width + reach(spread, EDGE_LEFT) + reach(spread, EDGE_RIGHT) +
                    tuft_extra(planning, spread, true);
    int64_t height = spread->height + reach(spread, EDGE_TOP) + reach(spread, EDGE_BOTTOM) +
                     tuft_extra(planning, spread, false);

    tuft_lay(planning, spread);
    cut_on_face(planning, spread, words_layer.at[layer->kind].name, width, height,
                &(struct reach){reach(spread, EDGE_LEFT), reach(spread, EDGE_BOTTOM)});
    tuft_consume(planning, spread);
}
