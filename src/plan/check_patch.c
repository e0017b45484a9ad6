/*
 * Bare patches and slits by how their face is seen.
 *
 * 1  A slit lies inside the mating zone, where the other box hides it, or on a face that is never
 *    seen.
 * 2  A patch in padding shows as a hollow through the cover, unless a lining is pulled over it, the
 *    padding is no thicker than cloth bridges, or the face is not in plain view.
 */
#include "plan/check.h"

#include "plan/cures.h"
#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/layers.h"
#include "plan/point.h"

/* What a layer's patches at one join have in common. */
struct showing {
    int64_t layer, join;
    int64_t side;
    int64_t box;
    int64_t count;
    int64_t diameter;
    bool slit;
};

static bool in_zone(const struct planning *planning, const struct junction *junction,
                    const struct patch *patch, int64_t box)
{
    for (int of_b = 0; of_b <= (junction->box_b != 0); of_b++) {
        const struct area *zone = of_b ? &junction->zone_b : &junction->zone;

        if ((of_b ? junction->box_b : junction->box_a) == box &&
            point_side(planning, junction, of_b) == patch->side &&
            area_holds(zone, patch->u, patch->v))
            return true;
    }
    return false;
}

static bool is_lined(const struct planning *planning, const struct layer *padding, int64_t box_key,
                     const struct patch *patch)
{
    const struct model *model = planning->model;
    const struct box *box = MODEL_FIND(model, box, box_key);

    for (size_t i = 0; box && i < model->layers.count; i++) {
        const struct layer *over = &model->layers.at[i];

        if (over->kind == LAYER_LINING && over->rank > padding->rank &&
            layer_touches(model, over, box_key) &&
            drape_covers(planning, over, box, patch->side, patch->u, patch->v))
            return true;
    }
    return false;
}

static int64_t thickness_of(const struct planning *planning, const struct layer *layer)
{
    const struct stock *stock = MODEL_FIND(planning->model, stock, layer->stock);

    return layer->thickness > 0 ? layer->thickness : stock ? stock->thickness : 0;
}

static bool shows(const struct planning *planning, const struct patch *patch,
                  const struct junction *junction, int64_t box)
{
    const struct layer *layer = MODEL_FIND(planning->model, layer, patch->layer);
    int64_t seen = check_seen(planning, box, patch->side);

    if (!layer || seen == SEEN_NEVER || in_zone(planning, junction, patch, box))
        return false;
    if (patch->slit)
        return true;
    return seen == SEEN_SEEN && !is_lined(planning, layer, box, patch) &&
           thickness_of(planning, layer) >= planning->value[TRADE_BATTING_LOFT];
}

static void offer_flap(struct planning *planning, const struct showing *showing,
                       struct finding *finding)
{
    struct cure_draft cure = cure_begin(planning, "Leave the cloth open for the screws instead");

    cure_word(&cure, ENTITY_join, showing->join, "treatment",
              words_treatment.at[TREATMENT_OPEN].name);
    cure_offer(&cure, finding);
}

/* A lining of the thinnest cloth there is, under the cover. */
static void offer_lining(struct planning *planning, const struct showing *showing,
                         struct finding *finding)
{
    const struct layer *padding = MODEL_FIND(planning->model, layer, showing->layer);
    int64_t stock = check_thin_cloth(planning->model);
    struct cure_draft cure = cure_begin(planning, "Pull a lining over it, under the cover");

    if (!stock || !padding)
        return;
    cure_refer(&cure, ENTITY_layer, 0, "box", showing->box);
    cure_word(&cure, ENTITY_layer, 0, "kind", words_layer.at[LAYER_LINING].name);
    cure_word(&cure, ENTITY_layer, 0, "shape", words_shape.at[SHAPE_FLAT].name);
    cure_word(&cure, ENTITY_layer, 0, "side", words_side.at[showing->side].name);
    cure_refer(&cure, ENTITY_layer, 0, "stock", stock);
    cure_count(&cure, ENTITY_layer, 0, "rank", padding->rank + 1);
    cure_offer(&cure, finding);
}

static void tell(struct planning *planning, const struct showing *showing)
{
    const struct join *join = MODEL_FIND(planning->model, join, showing->join);
    struct finding *finding;

    if (showing->count == 0)
        return;
    finding = finding_add(planning, showing->slit ? FINDING_SLIT_SHOWS : FINDING_PATCH_SHOWS,
                          ENTITY_layer, showing->layer);
    argument_quantity(finding, 0, QUANTITY_COUNT, showing->count);
    argument_text(finding, 1, join ? join->name : "");
    argument_text(finding, 2, words_side.at[showing->side].name);
    argument_length(finding, 3, showing->diameter);
    if (showing->slit)
        offer_flap(planning, showing, finding);
    else
        offer_lining(planning, showing, finding);
}

/* Patches of a layer at a join stand together in the plan. */
void check_patches(struct planning *planning)
{
    const struct plan *plan = planning->plan;
    const struct junction *junction = NULL;
    struct showing showing = {0};

    for (size_t i = 0; i < plan->patches.count; i++) {
        const struct patch *patch = &plan->patches.at[i];
        int64_t join = plan->points.at[patch->point].join;

        if (!junction || junction->join != join)
            junction = plan_junction(plan, join);
        if (!junction || !shows(planning, patch, junction, patch->box))
            continue;
        if (patch->layer != showing.layer || join != showing.join || patch->slit != showing.slit) {
            tell(planning, &showing);
            showing = (struct showing){patch->layer,    join,       patch->side, patch->box, 0,
                                       patch->diameter, patch->slit};
        }
        showing.count++;
    }
    tell(planning, &showing);
}
