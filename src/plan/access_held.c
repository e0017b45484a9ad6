/*
 * What a way to a join's heads holds back, and what the join needs before.
 *
 * 1  Whatever lies over the entry of a hand, or over a head that lies outside, comes after the
 *    join; whatever lies between the faces comes before it.
 * 2  Cloth over a head on the outside is peeled back and closed after the join: it waits with its
 *    flap only. Where the join is made through it, it does not wait at all.
 */
#include "plan/access_work.h"

#include "plan/drape.h"
#include "plan/geometry.h"
#include "plan/slices.h"

#include <assert.h>

/* ---- what is held, once each ---- */

static void hold(const struct task *task, struct helds *helds, struct held held)
{
    assert(held.item > 0);
    for (size_t i = 0; i < helds->list.count; i++) {
        struct held *known = &helds->list.at[i];

        if (known->kind != held.kind || known->item != held.item)
            continue;
        known->rule = known->rule ? known->rule : held.rule;
        return;
    }
    *LIST_ADD(task->planning->arena, &helds->list) = held;
}

bool task_left_out(const struct model *model, int64_t join)
{
    for (size_t i = 0; i < model->left_outs.count; i++)
        if (model->left_outs.at[i].join == join)
            return true;
    return false;
}

static void look_around(struct task *task)
{
    const struct model *model = task->planning->model;
    const struct plan *plan = task->planning->plan;
    struct arena *arena = task->planning->arena;
    int64_t box = task->box->key;

    task->around = (struct around){0};
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if (drape_is_cloth(layer) && drape_is_on_box(model, layer, box))
            *LIST_ADD(arena, &task->around.cloth) = layer;
    }
    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *other = &plan->junctions.at[i];

        if (other != task->junction && (other->box_a == box || other->box_b == box) &&
            !task_left_out(model, other->join))
            *LIST_ADD(arena, &task->around.joined) = other;
    }
}

void task_look(struct task *task, const struct way *way)
{
    struct planning *planning = task->planning;
    bool same = task->box && task->way.head_in_b == way->head_in_b;

    if (same && task->way.opened == way->opened) {
        task->way = *way;
        return;
    }
    task->way = *way;
    task->box = MODEL_FIND(planning->model, box, way_box(task->junction, way->head_in_b));
    assert(task->box);
    task->scene = way_scene(planning, task->junction, way->head_in_b);
    if (way->opened >= 0)
        way_open_side(&task->scene, way->opened);
    if (!same)
        look_around(task);
}

bool task_opening(const struct task *task, const struct plan_point *point, int64_t *ret_u,
                  int64_t *ret_v)
{
    struct fastening fastening;
    struct entry entry;

    if (!fasten_reckon(task->planning, task->junction, &task->faces, point, task->way.head_in_b,
                       &fastening))
        return false;
    struct vector head =
        way_head(task->planning, task->junction, point, &fastening, task->way.head_in_b);
    if (!task->way.inside) {
        box_to_face(task->way.reach_side, head, ret_u, ret_v);
        return true;
    }
    if (!way_enter(&task->scene, task->way.reach_side, head, &entry))
        return false;
    *ret_u = entry.u;
    *ret_v = entry.v;
    return true;
}

bool task_before_head(const struct task *task, const struct plan_point *point,
                      struct vector *ret_at)
{
    struct fastening fastening;

    if (!fasten_reckon(task->planning, task->junction, &task->faces, point, task->way.head_in_b,
                       &fastening))
        return false;
    *ret_at = way_head(task->planning, task->junction, point, &fastening, task->way.head_in_b);
    way_step_back(&task->scene, ret_at);
    return true;
}

/* ---- what shuts the way ---- */

static bool loose_panel_is_over(const struct task *task, int64_t u, int64_t v)
{
    const struct plan *plan = task->planning->plan;
    struct slice panels = plan_panels_of(plan, task->box->key);

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &plan->panels.at[i];

        if (panel->side == task->way.reach_side && panel->loose && area_holds(&panel->area, u, v))
            return true;
    }
    return false;
}

static void hold_back_facings(const struct task *task, struct helds *helds, int64_t u, int64_t v)
{
    const struct plan *plan = task->planning->plan;
    struct slice panels = plan_panels_of(plan, task->box->key);

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &plan->panels.at[i];

        if (panel->side == task->way.reach_side &&
            (panel->loose || panel->side == task->way.opened) && area_holds(&panel->area, u, v))
            hold(task, helds, (struct held){BLOCKER_FACING, panel->facing, "P51"});
    }
}

static bool peels(const struct task *task, const struct layer *layer)
{
    return !task->way.inside && (layer->shape == SHAPE_WRAPPED || layer->shape == SHAPE_SEWN ||
                                 layer->kind == LAYER_LINING || layer->kind == LAYER_COVER);
}

/* Layers over a hollow, and flat ones over a head, wait as a whole; a cover over a head is peeled
 * back, and one that is pierced does not wait. */
static void hold_back_layers(const struct task *task, struct candidate *candidate, int64_t u,
                             int64_t v)
{
    for (size_t i = 0; i < task->around.cloth.count; i++) {
        const struct layer *layer = task->around.cloth.at[i];

        if (!drape_covers(task->planning, layer, task->box, task->way.reach_side, u, v))
            continue;
        if (peels(task, layer) && task->join->treatment == TREATMENT_PIERCED)
            candidate->treatment = WAY_PIERCED;
        else
            hold(task, &candidate->helds,
                 (struct held){BLOCKER_LAYER, layer->key, peels(task, layer) ? "P46" : "P51"});
    }
}

static void hold_back_joins(const struct task *task, struct helds *helds, int64_t u, int64_t v)
{
    for (size_t i = 0; i < task->around.joined.count; i++) {
        const struct junction *other = task->around.joined.at[i];
        const struct join *join = MODEL_FIND(task->planning->model, join, other->join);
        bool on_a = other->box_a == task->box->key && join->side_a == task->way.reach_side;
        bool on_b = other->box_b == task->box->key && join->side_b == task->way.reach_side;
        const struct area *zone = on_a ? &other->zone : &other->zone_b;

        if ((on_a || on_b) && area_holds(zone, u, v))
            hold(task, helds, (struct held){BLOCKER_JOIN, other->join, "P50"});
    }
}

/* A back or dust cover on the face that a hand comes through is put on after the join, wherever on
 * that face it lies: the rules of the order want it so. */
static void hold_back_closers(const struct task *task, struct helds *helds)
{
    for (size_t i = 0; task->way.inside && i < task->around.cloth.count; i++) {
        const struct layer *layer = task->around.cloth.at[i];

        if ((layer->kind == LAYER_OUTSIDE_BACK || layer->kind == LAYER_DUST_COVER) &&
            layer->side == task->way.reach_side)
            hold(task, helds, (struct held){BLOCKER_LAYER, layer->key, NULL});
    }
}

/* ---- what it comes to ---- */

static enum way_treatment treatment_of(const struct candidate *candidate)
{
    enum way_treatment treatment = candidate->treatment;

    for (size_t i = 0; i < candidate->helds.list.count; i++) {
        const struct held *held = &candidate->helds.list.at[i];
        bool peeled = held->rule && held->rule[2] == '6'; /* P46 */
        enum way_treatment own = peeled ? WAY_LEFT_OPEN : WAY_LATER;

        treatment = own > treatment ? own : treatment;
    }
    return treatment;
}

void task_hold_back(struct task *task, struct candidate *candidate)
{
    const struct junction *junction = task->junction;
    int64_t u, v;

    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point =
            &task->planning->plan->points.at[junction->first_point + i];

        if (!task_opening(task, point, &u, &v))
            continue;
        hold_back_facings(task, &candidate->helds, u, v);
        hold_back_joins(task, &candidate->helds, u, v);
        if (!loose_panel_is_over(task, u, v))
            hold_back_layers(task, candidate, u, v);
    }
    hold_back_closers(task, &candidate->helds);
    candidate->treatment = treatment_of(candidate);
    candidate->open = candidate->way.manner != MANNER_NONE;
}

/* ---- what lies between the faces ---- */

static bool lands_in_zone(const struct task *task, const struct layer *layer, const struct box *box,
                          bool of_b)
{
    const struct area *zone = of_b ? &task->junction->zone_b : &task->junction->zone;
    int64_t side = point_side(task->planning, task->junction, of_b);

    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        struct landing landing = drape_landing(task->planning, layer, box, edge);
        struct area common = area_cut(&landing.area, zone);

        if (landing.side == side && !area_empty(&common))
            return true;
    }
    return false;
}

static bool lies_on_points(const struct task *task, const struct layer *layer,
                           const struct box *box, bool of_b)
{
    int64_t side = point_side(task->planning, task->junction, of_b);
    int64_t u, v;

    for (size_t i = 0; i < task->junction->point_count; i++) {
        const struct plan_point *point =
            &task->planning->plan->points.at[task->junction->first_point + i];

        point_on_face(task->planning, task->junction, point, of_b, &u, &v);
        if (drape_covers(task->planning, layer, box, side, u, v))
            return true;
    }
    return false;
}

static void bring_forward_layers(struct task *task, const struct box *box, bool of_b)
{
    const struct planning *planning = task->planning;

    for (size_t i = 0; i < planning->model->layers.count; i++) {
        const struct layer *layer = &planning->model->layers.at[i];

        if (!drape_is_cloth(layer) || !drape_is_on_box(planning->model, layer, box->key))
            continue;
        if (lands_in_zone(task, layer, box, of_b) || lies_on_points(task, layer, box, of_b))
            hold(task, &task->needed, (struct held){BLOCKER_LAYER, layer->key, "P45"});
    }
}

static void bring_forward_facings(struct task *task, const struct box *box, bool of_b)
{
    const struct plan *plan = task->planning->plan;
    const struct area *zone = of_b ? &task->junction->zone_b : &task->junction->zone;
    int64_t side = point_side(task->planning, task->junction, of_b);
    struct slice panels = plan_panels_of(plan, box->key);

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &plan->panels.at[i];
        struct area common = area_cut(&panel->area, zone);

        if (panel->side == side && !panel->loose && !area_empty(&common))
            hold(task, &task->needed, (struct held){BLOCKER_FACING, panel->facing, "P16"});
    }
}

void task_bring_forward(struct task *task)
{
    const struct model *model = task->planning->model;
    const struct box *a = MODEL_FIND(model, box, task->junction->box_a);
    const struct box *b = MODEL_FIND(model, box, task->junction->box_b);

    bring_forward_layers(task, a, false);
    bring_forward_facings(task, a, false);
    if (b) {
        bring_forward_layers(task, b, true);
        bring_forward_facings(task, b, true);
    }
}
