#include "plan/lid.h"

#include "plan/geometry.h"
#include "plan/padding.h"

const struct fitting *lid_hinge(const struct model *model, int64_t box)
{
    for (size_t i = 0; i < model->fittings.count; i++)
        if (model->fittings.at[i].box == box && model->fittings.at[i].kind == FITTING_HINGE)
            return &model->fittings.at[i];
    return NULL;
}

int64_t lid_turns_at(const struct fitting *hinge)
{
    return side_axis(hinge->side) == AXIS_Z ? SIDE_BACK : hinge->side;
}

const struct join *lid_rest(const struct model *model, int64_t lid)
{
    for (size_t i = 0; i < model->joins.count; i++) {
        const struct join *join = &model->joins.at[i];

        if (join->fastener == FASTENER_REST && join->target == TARGET_BOX &&
            ((join->box_b == lid && join->side_b == SIDE_BOTTOM) ||
             (join->box_a == lid && join->side_a == SIDE_BOTTOM)))
            return join;
    }
    return NULL;
}

const struct box *lid_chest(const struct model *model, int64_t lid)
{
    const struct join *rest = lid_rest(model, lid);

    if (!rest)
        return NULL;
    return MODEL_FIND(model, box, rest->box_a == lid ? rest->box_b : rest->box_a);
}

/* The thickest cover of a box, one layer of it; 0 where it has none. */
static int64_t cloth_on(const struct planning *planning, int64_t box)
{
    const struct model *model = planning->model;
    int64_t most = 0;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];
        const struct stock *stock = MODEL_FIND(model, stock, layer->stock);

        if (layer->kind == LAYER_COVER && stock && layer_side_on(planning->plan, layer, box) >= 0)
            most = length_larger(most, stock->thickness ? stock->thickness
                                                        : planning->value[TRADE_CLOTH_THICKNESS]);
    }
    return most;
}

int64_t lid_hinge_gap(const struct planning *planning, int64_t lid)
{
    const struct box *chest = lid_chest(planning->model, lid);
    int64_t cloth = cloth_on(planning, lid);

    return cloth + (chest ? cloth_on(planning, chest->key) : cloth) +
           planning->value[TRADE_LID_HINGE_GAP];
}

const char *lid_area_said(const struct planning *planning, int64_t area)
{
    bool inch = model_units(planning->model) == UNITS_INCH;

    return arena_format(planning->arena, "%.1f %s", (double)area / (inch ? 645.16 : 100),
                        inch ? "in2" : "cm2");
}
