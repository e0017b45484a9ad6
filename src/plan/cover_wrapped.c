/*
 * Wrapped: one piece pulled round the edges of a face, each side by its own ending (common
 * practice, no source):
 *
 *     wrap   padding on the side + depth of the side + padding on the face + landing + handle
 *     side   padding on the face + landing + handle: it lands on the side
 *     stop   nothing
 *
 * An edge that stops inside the face lands there and goes round nothing. A tufting field measures
 * its border on the padded face, so that what lies on the sides is in it already.
 */
#include "plan/cover.h"

#include "plan/findings.h"

#include "model/words.h"

#include <assert.h>

static int64_t reach(const struct spread *spread, int64_t edge)
{
    assert(edge >= 0 && edge < EDGE_COUNT);

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

#define A_SHIM (LENGTH_INCH / 8)

/* One piece over thick foam lies in heavy folds where two sides meet. */
static void tell_boxing(struct planning *planning, const struct spread *spread)
{
    int64_t foam = foam_depth(planning->model, spread->layer);
    int64_t from = planning->value[TRADE_BOXING_FROM];
    bool folds = false;
    struct finding *finding;

    for (int64_t edge = EDGE_LEFT; edge <= EDGE_RIGHT; edge++)
        for (int64_t other = EDGE_TOP; other <= EDGE_BOTTOM; other++)
            folds |= reach(spread, edge) > 0 && reach(spread, other) > 0;
    if (spread->layer->kind != LAYER_COVER || spread->tufting || !folds || foam <= from + A_SHIM)
        return;
    finding = finding_add(planning, FINDING_BOXING_WANTED, ENTITY_layer, spread->layer->key);
    argument_length(finding, 0, foam);
    argument_length(finding, 1, from);
}

void cut_wrapped(struct planning *planning, struct spread *spread)
{
    const struct layer *layer = spread->layer;
    int64_t width = spread->wide + reach(spread, EDGE_LEFT) + reach(spread, EDGE_RIGHT) +
                    tuft_extra(spread, true);
    int64_t height = spread->high + reach(spread, EDGE_TOP) + reach(spread, EDGE_BOTTOM) +
                     tuft_extra(spread, false);

    tell_boxing(planning, spread);
    tuft_lay(planning, spread);
    cut_on_face(planning, spread, words_layer.at[layer->kind].name, width, height,
                &(struct reach){reach(spread, EDGE_LEFT), reach(spread, EDGE_BOTTOM)});
    tuft_consume(planning, spread);
}
