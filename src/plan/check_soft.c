/*
 * Materials that let a maker down.
 *
 * 1  Foam that is sat on is crushed in months when it is too light, and shows its joints.
 * 2  A hand gun does not drive staples home in hardwood.
 * 3  Nail strips bruise pile: an outside back of it is stitched on by hand.
 * 4  A strip of heads looks uneven on a soft edge, where single nails follow it.
 * 5  A zip stands in a sewn seam; where the maker put it no cover may have one.
 * 6  Welt of cord is bought ready, with its lip; who means the cord inside has no cloth for it.
 */
#include "plan/check.h"

#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/layers.h"

#include <assert.h>

/* ---- foam ---- */

/* Foam on the top of a cushion, or of a box whose facing there is a seat. */
static bool is_sat_on(const struct model *model, const struct layer *foam)
{
    const struct box *box = MODEL_FIND(model, box, foam->box);

    if (foam->kind != LAYER_FOAM || foam->side != SIDE_TOP || !box)
        return false;
    for (size_t i = 0; i < model->facings.count; i++)
        if (model->facings.at[i].box == box->key && model->facings.at[i].side == SIDE_TOP &&
            model->facings.at[i].use == USE_SEAT)
            return true;
    return box->frame == FRAME_CUSHION;
}

static void check_density(struct planning *planning, const struct layer *foam)
{
    const struct stock *stock = MODEL_FIND(planning->model, stock, foam->stock);
    int64_t least = planning->value[TRADE_FOAM_DENSITY_SEAT_LEAST];
    struct finding *finding;

    if (!stock || stock->density == 0 || stock->density >= least)
        return;
    finding = finding_add(planning, FINDING_FOAM_LIGHT, ENTITY_layer, foam->key);
    argument_quantity(finding, 0, QUANTITY_DENSITY, stock->density);
    argument_quantity(finding, 1, QUANTITY_DENSITY, least);
}

/* The first slab ends where the first joint is. */
static void check_joints(struct planning *planning, const struct layer *foam)
{
    const struct plan *plan = planning->plan;
    const struct piece *first = NULL;
    const struct cover *whole = NULL;
    int64_t slabs = 0;
    bool beside;
    struct finding *finding;

    for (size_t i = 0; i < plan->covers.count; i++)
        if (plan->covers.at[i].layer == foam->key)
            whole = &plan->covers.at[i];
    for (size_t i = 0; i < plan->pieces.count; i++)
        if (plan->pieces.at[i].layer == foam->key) {
            first = first ? first : &plan->pieces.at[i];
            slabs++;
        }
    if (!whole || slabs < 2)
        return;
    beside = first->width < whole->cut_width;
    finding = finding_add(planning, FINDING_FOAM_JOINED, ENTITY_layer, foam->key);
    argument_quantity(finding, 0, QUANTITY_COUNT, slabs);
    argument_length(finding, 1, beside ? first->width : first->height);
    argument_text(finding, 2,
                  words_side.at[edge_side(foam->side, beside ? EDGE_LEFT : EDGE_BOTTOM)].name);
}

/* ---- staples ---- */

static bool has_only_a_hand_gun(const struct model *model)
{
    bool hand = false;

    for (size_t i = 0; i < model->tools.count; i++) {
        if (model->tools.at[i].kind == TOOL_AIR_GUN)
            return false;
        hand |= model->tools.at[i].kind == TOOL_HAND_GUN;
    }
    return hand;
}

static bool is_stapled(const struct plan *plan, int64_t box)
{
    for (size_t i = 0; i < plan->edges.count; i++)
        if (plan->edges.at[i].box == box && plan->edges.at[i].staples > 0)
            return true;
    return false;
}

static void check_gun(struct planning *planning, const struct box *box)
{
    const struct stock *stick = MODEL_FIND(planning->model, stock, box->stick);

    if (stick && stick->wood == WOOD_HARD && is_stapled(planning->plan, box->key))
        argument_length(finding_add(planning, FINDING_HAND_GUN, ENTITY_box, box->key), 0,
                        planning->value[TRADE_STAPLE_BITE_HARD]);
}

/* ---- pile ---- */

static void check_pile(struct planning *planning, const struct layer *layer)
{
    const struct stock *stock = MODEL_FIND(planning->model, stock, layer->stock);

    if (layer->kind == LAYER_OUTSIDE_BACK && stock && stock->pile)
        finding_add(planning, FINDING_PILE_BRUISED, ENTITY_layer, layer->key);
}

/* ---- strips ---- */

/* Padding at the softest edge that the trim runs along. */
static int64_t padding_under(const struct planning *planning, const struct layer *trim,
                             const struct trim_way *way)
{
    const struct padding *padding = plan_padding(planning->plan, way->box, trim->side);
    int64_t most = 0;

    for (int64_t edge = 0; padding && edge < EDGE_COUNT; edge++)
        if (layer_ending(trim, edge) != ENDING_STOP)
            most = length_larger(most, padding->at[edge]);
    return most;
}

static void check_strip(struct planning *planning, const struct trim_way *strip)
{
    const struct layer *trim = MODEL_FIND(planning->model, layer, strip->layer);
    const struct trim_way *touching = strip - TRIM_STRIP + TRIM_TOUCHING;
    int64_t padding = padding_under(planning, trim, strip);
    struct finding *finding;

    if (!strip->chosen || padding <= planning->value[TRADE_BATTING_LOFT])
        return;
    assert(touching->layer == strip->layer && touching->made == TRIM_TOUCHING);
    finding = finding_add(planning, FINDING_STRIP_ON_SOFT, ENTITY_layer, strip->layer);
    argument_length(finding, 0, padding);
    argument_quantity(finding, 1, QUANTITY_COUNT, touching->nails);
    argument_quantity(finding, 2, QUANTITY_COUNT, strip->nails);
}

/* ---- zips ---- */

static void check_zip(struct planning *planning, const struct fitting *zip)
{
    const struct plan *plan = planning->plan;

    for (size_t i = 0; i < plan->seams.count; i++)
        if (plan->seams.at[i].fitting == zip->key && plan->seams.at[i].zip > 0)
            return;
    argument_text(finding_add(planning, FINDING_ZIP_NOWHERE, ENTITY_box, zip->box), 0,
                  words_side.at[zip->side].name);
}

/* ---- welt ---- */

/* The cloth of a cover of the same box; 0 where it has none. */
static int64_t cloth_beside(const struct model *model, const struct layer *welt)
{
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *cover = &model->layers.at[i];

        if (cover->kind == LAYER_COVER && cover->box == welt->box && cover->group == welt->group)
            return cover->stock;
    }
    return 0;
}

static void check_welt(struct planning *planning, const struct layer *welt)
{
    const struct model *model = planning->model;
    const struct stock *stock = MODEL_FIND(model, stock, welt->stock);
    const struct stock *cloth = MODEL_FIND(model, stock, cloth_beside(model, welt));
    struct finding *finding;
    struct cure_draft cure;

    if (welt->kind != LAYER_WELT || !stock || stock->kind != STOCK_CORD)
        return;
    finding = finding_add(planning, FINDING_WELT_BOUGHT, ENTITY_layer, welt->key);
    argument_text(finding, 0, stock->name);
    if (!cloth || cloth->kind != STOCK_CLOTH)
        return;
    cure = cure_begin(planning, arena_format(planning->arena, "Cut it from %s", cloth->name));
    cure_refer(&cure, ENTITY_layer, welt->key, "stock", cloth->key);
    cure_offer(&cure, finding);
}

/* ---- all ---- */

void check_soft(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if (is_sat_on(model, layer)) {
            check_density(planning, layer);
            check_joints(planning, layer);
        }
        check_pile(planning, layer);
        check_welt(planning, layer);
    }
    for (size_t i = 0; i < planning->plan->trim_ways.count; i++)
        if (planning->plan->trim_ways.at[i].made == TRIM_STRIP)
            check_strip(planning, &planning->plan->trim_ways.at[i]);
    for (size_t i = 0; i < model->fittings.count; i++)
        if (model->fittings.at[i].kind == FITTING_ZIP)
            check_zip(planning, &model->fittings.at[i]);
    for (size_t i = 0; has_only_a_hand_gun(model) && i < model->boxes.count; i++)
        check_gun(planning, &model->boxes.at[i]);
}
