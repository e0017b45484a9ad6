/*
 * Bare patches and slits.
 *
 * 1  Padding over the heads of a join is cut away round each of them, so that no batting winds
 * round the bit and the head is found again. 2  Cloth over the heads is slit where the join says
 * that it is pierced; otherwise its edge stays open until the join is driven. 3  Cloth that lies in
 * the mating zone is slit at each point, for the screw has to pass it. Padding is held back from
 * the zone as a whole and needs no patch there.
 */
#include "plan/cover.h"

#include "plan/drape.h"
#include "plan/geometry.h"
#include "plan/order.h"
#include "plan/point.h"

static bool is_padding(const struct layer *layer)
{
    return layer->kind == LAYER_FOAM || layer->kind == LAYER_BATTING;
}

static int64_t diameter_of(const struct planning *planning, const struct junction *junction)
{
    return junction->patch > 0 ? junction->patch : planning->value[TRADE_PATCH_PLAIN];
}

static void add_patches(struct planning *planning, const struct layer *layer,
                        const struct junction *junction, int64_t box_key, int64_t side, bool slit)
{
    struct plan *plan = planning->plan;
    const struct box *box = MODEL_FIND(planning->model, box, box_key);

    if (!box || !drape_is_on_box(planning->model, layer, box_key))
        return;
    for (size_t i = 0; i < junction->point_count; i++) {
        size_t index = junction->first_point + i;
        const struct plan_point *point = &plan->points.at[index];
        int64_t u, v;

        box_to_face(side, box_key == junction->box_b ? point->in_b : point->in_a, &u, &v);
        if (drape_covers(planning, layer, box, side, u, v))
            *LIST_ADD(planning->arena, &plan->patches) = (struct patch){
                layer->key, index, side, u, v, diameter_of(planning, junction), slit};
    }
}

/* Heads that are seen from outside, with something on their face. */
static void patch_heads(struct planning *planning, const struct layer *layer,
                        const struct junction *junction, const struct join *join)
{
    bool pierced = join->treatment == TREATMENT_PIERCED;

    if (junction->head_inside || junction->patch == 0)
        return;
    if (is_padding(layer))
        add_patches(planning, layer, junction, junction->head_box, junction->head_side, false);
    else if (pierced)
        add_patches(planning, layer, junction, junction->head_box, junction->head_side, true);
}

static void slit_zone(struct planning *planning, const struct layer *layer,
                      const struct junction *junction, bool of_b)
{
    int64_t box = of_b ? junction->box_b : junction->box_a;
    int64_t side = point_side(planning, junction, of_b);

    if (!is_padding(layer) && !layer_lies_across(planning->model, layer, junction))
        add_patches(planning, layer, junction, box, side, true);
}

/* Asked first, for most joins are of other boxes. */
static bool touches(const struct layer *layer, const struct junction *junction)
{
    return layer->group != 0 || layer->box == junction->box_a || layer->box == junction->box_b;
}

void patch_layer(struct planning *planning, const struct spread *spread)
{
    const struct plan *plan = planning->plan;

    if (spread->layer->shape == SHAPE_RUN)
        return;
    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *junction = &plan->junctions.at[i];
        const struct join *join;

        if (!touches(spread->layer, junction))
            continue;
        join = MODEL_FIND(planning->model, join, junction->join);
        if (!join || join->fastener == FASTENER_REST)
            continue;
        patch_heads(planning, spread->layer, junction, join);
        slit_zone(planning, spread->layer, junction, false);
        if (junction->box_b != 0)
            slit_zone(planning, spread->layer, junction, true);
    }
}
