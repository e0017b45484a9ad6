/*
 * What the cards of loose things say: foam and batting of a cushion are glued and stapled to
 * nothing, and its cover is filled and closed; a cover that slips on and off is pulled over.
 */
#include "plan/card.h"

/* Common practice of the trade, no source. */
static const struct card_words foam_words = {
    {"Lay it into the sewn cover on the table: larger than that, it fills it",
     "Break hard edges with a knife; slabs beside each other are glued edge to edge",
     "Cut it to the outline of the sewn cover, %T, its edge square",
     "Slit it along the lines of the channels: %c"},
    NULL,
    NULL,
    NULL,
};

static const struct card_words batting_words = {
    {"Wrap it round the foam, a light spray holds it", "Butt its ends where they are not sat on",
     "Trim the corners so that nothing lies double"},
    NULL,
    NULL,
    "spray glue is flammable and its vapour harms: fresh air, no flame or spark, read the can",
};

static const struct card_words filled_words = {
    {"Turn it right side out, push the corners out with a blunt stick",
     "Fold the pad along its middle, push it to the far end, let it open there",
     "Fill the corners with scraps of batting; seams lie along the edges",
     "Middle of a motif %y above the middle of the face", "Close it: the zip, or small stitches"},
    NULL,
    NULL,
    NULL,
};

static const struct card_words slipped_words = {
    {"Pull it over from its closed side; corners first, then smooth it down",
     "Seams lie along the edges, the hem level all round",
     "Middle of a motif %y above the middle of the face"},
    NULL,
    NULL,
    NULL,
};

const struct card_words *card_loose_words(const struct planning *planning, const struct step *step)
{
    const struct layer *layer = MODEL_FIND(planning->model, layer, step->layer);
    const struct box *box = MODEL_FIND(planning->model, box, layer ? layer->box : 0);
    bool loose = box && box->frame == FRAME_CUSHION;

    if (loose && step->kind == STEP_PAD)
        return &foam_words;
    if (loose && step->kind == STEP_BATTING)
        return &batting_words;
    if (loose && step->kind == STEP_COVER)
        return &filled_words;
    return layer && layer->slip && step->kind == STEP_COVER ? &slipped_words : NULL;
}
