/*
 * Figures of a lid: gaps for hinges and fingers, the stays that hold it, the air it lets in.
 *
 *     gap at a hinge     the cloth of both parts, pressed, and a bit
 *     turning weight     weight x depth / 2: stays hold it, and not much more
 *
 * Weights are finished weights, padding counted; the lid is the box that is hung.
 */
#include "plan/card.h"

#include "plan/geometry.h"
#include "plan/lid.h"

/* From the hinges to the edge that is lifted. */
static int64_t reach_of(const struct carding *carding, const struct box *box)
{
    const struct fitting *hinge = lid_hinge(carding->planning->model, box->key);

    return hinge && side_axis(lid_turns_at(hinge)) == AXIS_X ? box->width : box->depth;
}

/* Of the lid about its hinges, in newton millimetres: mg x mm / 2, by standard gravity. */
static int64_t turning(const struct carding *carding)
{
    const struct box *box = MODEL_FIND(carding->planning->model, box, carding->step->box);
    const struct load *load = plan_load(carding->planning->plan, carding->step->box);
    int64_t moment = 0;

    if (box && load)
        (void)whole_share(load->mass, reach_of(carding, box) / 2, LENGTH_MM, &moment);
    (void)whole_share(moment, 980665, INT64_C(100000000000), &moment);
    return moment;
}

/* "42 to 50 lb-in", "4.7 to 5.7 N m". */
static const char *stays_figure(const struct carding *carding)
{
    const int64_t *value = carding->planning->value;
    bool inch = model_units(carding->planning->model) == UNITS_INCH;
    int64_t least = turning(carding), most = least;

    (void)whole_share(least, value[TRADE_LID_STAY_MOST], 1000000, &most);
    (void)whole_share(least, value[TRADE_LID_STAY_LEAST], 1000000, &least);
    if (least <= 0)
        return "";
    /* 1 lb-in is 112.985 N mm */
    if (inch)
        return arena_format(carding->planning->arena, "%.0f to %.0f lb-in", (double)least / 112.985,
                            (double)most / 112.985);
    return arena_format(carding->planning->arena, "%.1f to %.1f N m", (double)least / 1000,
                        (double)most / 1000);
}

const char *card_lid_figure(const struct carding *carding, char letter)
{
    const int64_t *value = carding->planning->value;

    switch (letter) {
    case 'i':
        return card_length(carding, lid_hinge_gap(carding->planning, carding->step->box));
    case 'a':
        return card_length(carding, value[TRADE_LID_GAP]);
    case 'j':
        return stays_figure(carding);
    default:
        return lid_area_said(carding->planning, value[TRADE_LID_VENT]);
    }
}
