/*
 * What was forgotten to close. An upholstered box without a panel below wants a dust cover when it
 * stands on legs or its underside is seen; one that is open behind wants an outside back when that
 * side is in plain view.
 */
#include "plan/check.h"

#include "plan/cures.h"
#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/layers.h"

static bool is_upholstered(const struct model *model, int64_t box)
{
    for (size_t i = 0; i < model->layers.count; i++)
        if (model->layers.at[i].kind == LAYER_COVER &&
            layer_touches(model, &model->layers.at[i], box))
            return true;
    return false;
}

/* Has the frame a hollow behind this side, rather than the narrow edges of its members? */
static bool is_hollow(const struct box *box, int64_t side)
{
    return box->frame == FRAME_CRATE ||
           (box->frame == FRAME_LADDER && side_axis(side) == side_axis(box->main_side));
}

static bool is_closed(const struct planning *planning, const struct box *box, int64_t side)
{
    const struct model *model = planning->model;
    struct area face = face_area(box, side);

    for (size_t i = 0; i < model->facings.count; i++)
        if (model->facings.at[i].box == box->key && model->facings.at[i].side == side)
            return true;
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if (drape_is_cloth(layer) && layer_touches(model, layer, box->key) &&
            drape_covers(planning, layer, box, side, face.u1 / 2, face.v1 / 2))
            return true;
    }
    return false;
}

static bool stands_on_legs(const struct model *model, int64_t box)
{
    for (size_t i = 0; i < model->fittings.count; i++) {
        const struct fitting *fitting = &model->fittings.at[i];

        if (fitting->box == box && (fitting->kind == FITTING_LEG || fitting->kind == FITTING_GLIDE))
            return true;
    }
    return false;
}

static bool wants_closing(const struct planning *planning, const struct box *box, int64_t side)
{
    int64_t seen = check_seen(planning, box->key, side);

    if (side == SIDE_BOTTOM)
        return seen != SEEN_NEVER || stands_on_legs(planning->model, box->key);
    return seen == SEEN_SEEN;
}

struct closing {
    int64_t side;
    enum finding_kind kind;
    enum layer_word layer;
    const char *cure;
};

static const struct closing closings[] = {
    {SIDE_BOTTOM, FINDING_UNDERSIDE_OPEN, LAYER_DUST_COVER, "Close it with a dust cover"},
    {SIDE_BACK, FINDING_BACK_OPEN, LAYER_OUTSIDE_BACK, "Close it with an outside back"},
};

static void tell(struct planning *planning, const struct box *box, const struct closing *closing)
{
    struct finding *finding = finding_add(planning, closing->kind, ENTITY_box, box->key);
    struct cure_draft cure = cure_begin(planning, closing->cure);
    int64_t stock = check_thin_cloth(planning->model);

    if (!stock)
        return;
    cure_refer(&cure, ENTITY_layer, 0, "box", box->key);
    cure_word(&cure, ENTITY_layer, 0, "kind", words_layer.at[closing->layer].name);
    cure_word(&cure, ENTITY_layer, 0, "shape", words_shape.at[SHAPE_FLAT].name);
    cure_word(&cure, ENTITY_layer, 0, "side", words_side.at[closing->side].name);
    cure_refer(&cure, ENTITY_layer, 0, "stock", stock);
    cure_offer(&cure, finding);
}

void check_closing(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->boxes.count; i++) {
        const struct box *box = &model->boxes.at[i];

        if (!is_upholstered(model, box->key))
            continue;
        for (size_t k = 0; k < sizeof closings / sizeof *closings; k++)
            if (is_hollow(box, closings[k].side) &&
                wants_closing(planning, box, closings[k].side) &&
                !is_closed(planning, box, closings[k].side))
                tell(planning, box, &closings[k]);
    }
}
