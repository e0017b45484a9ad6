/*
 * Bare patches and slits.
 *
 * 1  Padding over the heads of a join is cut away round each of them, so that no batting winds
 * round the bit and the head is found again. 2  Cloth over the heads is slit where the join says
 * that it is pierced; otherwise its edge stays open until the join is driven. 3  Cloth that lies in
 * the mating zone is slit at each point, for the screw has to pass it. Padding is held back from
 * the zone as a whole and needs no patch there. 4  Padding over an access hole is cut away over it:
 * hand and tool come through until the join is driven, and again when it comes apart.
 */
#include "plan/cover.h"

#include "plan/drape.h"
#include "plan/geometry.h"
#include "plan/layers.h"
#include "plan/point.h"

#include <assert.h>

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

    if (!box || !layer_touches(planning->model, layer, box_key))
        return;
    for (size_t i = 0; i < junction->point_count; i++) {
        size_t index = junction->first_point + i;
        const struct plan_point *point = &plan->points.at[index];
        int64_t u, v;

        box_to_face(side, box_key == junction->box_b ? point->in_b : point->in_a, &u, &v);
        if (drape_covers(planning, layer, box, side, u, v))
            *LIST_ADD(planning->arena, &plan->patches) = (struct patch){
                layer->key, index, box_key, side, u, v, diameter_of(planning, junction), slit};
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

/* ---- access holes ---- */

static int64_t off(int64_t at, int64_t begin, int64_t extent)
{
    int64_t middle = begin + extent / 2;

    return at < middle ? middle - at : at - middle;
}

/* The hole nearest to a place on a side of the box with the heads, of those that a tool goes
 * through; NULL when there is none. */
static const struct cutout *hole_near(const struct planning *planning,
                                      const struct junction *junction, int64_t side, int64_t u,
                                      int64_t v)
{
    int64_t least = 2 * planning->value[TRADE_DRIVER_RADIUS];
    const struct cutout *best = NULL;
    int64_t nearest = INT64_MAX;

    for (size_t i = 0; i < planning->model->cutouts.count; i++) {
        const struct cutout *hole = &planning->model->cutouts.at[i];
        int64_t away = off(u, hole->u, hole->width) + off(v, hole->v, hole->height);

        if (hole->box != junction->head_box || hole->side != side || hole->width < least ||
            hole->height < least || away >= nearest)
            continue;
        nearest = away;
        best = hole;
    }
    return best;
}

/* A hole for a hand is kept bare whole; of a slot what lies before the head. */
static struct patch patch_over(const struct cutout *hole, int64_t u, int64_t v)
{
    int64_t narrow = length_smaller(hole->width, hole->height);
    int64_t wide = length_larger(hole->width, hole->height);
    int64_t half = (wide <= 2 * narrow ? wide : narrow) / 2;
    int64_t in_u = length_smaller(half, hole->width / 2);
    int64_t in_v = length_smaller(half, hole->height / 2);

    return (struct patch){.box = hole->box,
                          .side = hole->side,
                          .u = length_within(u, hole->u + in_u, hole->u + hole->width - in_u),
                          .v = length_within(v, hole->v + in_v, hole->v + hole->height - in_v),
                          .diameter = 2 * half};
}

static bool is_kept_bare(const struct plan *plan, size_t from, const struct patch *patch)
{
    for (size_t i = from; i < plan->patches.count; i++)
        if (plan->patches.at[i].u == patch->u && plan->patches.at[i].v == patch->v)
            return true;
    return false;
}

static void patch_holes_on(struct planning *planning, const struct layer *layer,
                           const struct junction *junction, int64_t side)
{
    struct plan *plan = planning->plan;
    const struct box *box = MODEL_FIND(planning->model, box, junction->head_box);
    size_t from = plan->patches.count;

    assert(box);
    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point = &plan->points.at[junction->first_point + i];
        const struct cutout *hole;
        struct patch patch;
        int64_t u, v;

        box_to_face(side, box->key == junction->box_b ? point->in_b : point->in_a, &u, &v);
        hole = hole_near(planning, junction, side, u, v);
        if (!hole)
            return;
        patch = patch_over(hole, u, v);
        patch.layer = layer->key;
        patch.point = junction->first_point + i;
        if (drape_covers(planning, layer, box, patch.side, patch.u, patch.v) &&
            !is_kept_bare(plan, from, &patch))
            *LIST_ADD(planning->arena, &plan->patches) = patch;
    }
}

/* On the side that a hand comes through, and straight behind the heads, where a long tool stands
 * out. */
static void patch_holes(struct planning *planning, const struct layer *layer,
                        const struct junction *junction)
{
    int64_t behind =
        side_opposite(point_side(planning, junction, junction->head_box == junction->box_b));

    if (!junction->head_inside || !is_padding(layer) ||
        !layer_touches(planning->model, layer, junction->head_box))
        return;
    patch_holes_on(planning, layer, junction, junction->reach_side);
    if (behind != junction->reach_side)
        patch_holes_on(planning, layer, junction, behind);
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
        patch_holes(planning, spread->layer, junction);
        slit_zone(planning, spread->layer, junction, false);
        if (junction->box_b != 0)
            slit_zone(planning, spread->layer, junction, true);
    }
}
