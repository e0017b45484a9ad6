/*
 * What a way to a join's heads holds back, and what the join needs before.
 *
 * 1  Whatever lies over the entry of a hand, or over a head that lies outside, comes after the
 *    join; whatever lies between the faces comes before it.
 * 2  Other boxes and the walls stand where driver or hand would be once some join sets them there:
 *    that join comes after this one.
 * 3  Cloth over a head on the outside is peeled back and closed after the join: it waits with its
 *    flap only. Where the join is made through it, it does not wait at all.
 */
#include "plan/access_work.h"

#include "plan/drape.h"
#include "plan/geometry.h"
#include "plan/layers.h"
#include "plan/slices.h"
#include "plan/sweep.h"

#include <assert.h>

/* ---- what is held, once each ---- */

static void hold(const struct task *task, struct helds *helds, struct held held)
{
    assert(held.kind == BLOCKER_FACING || held.kind == BLOCKER_LAYER || held.kind == BLOCKER_JOIN);

    assert(held.item > 0);
    for (size_t i = 0; i < helds->list.count; i++) {
        struct held *known = &helds->list.at[i];

        if (known->kind != held.kind || known->item != held.item)
            continue;
        known->rule = known->rule ? known->rule : held.rule;
        known->sets = known->sets ? known->sets : held.sets;
        return;
    }
    *LIST_ADD(task->planning->arena, &helds->list) = held;
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

        if (drape_is_cloth(layer) && layer_touches(model, layer, box))
            *LIST_ADD(arena, &task->around.cloth) = layer;
    }
    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *other = &plan->junctions.at[i];

        if (other != task->junction && (other->box_a == box || other->box_b == box) &&
            !model_left_out(model, other->join))
            *LIST_ADD(arena, &task->around.joined) = other;
    }
}

void task_look(struct task *task, const struct way *way)
{
    struct scene *scene = &task->scenes[way->head_in_b];

    task->way = *way;
    way_open_side(scene, way->opened);
    if (task->scene == scene)
        return;
    task->scene = scene;
    task->box = scene->box;
    look_around(task);
    assert(task->box && task->scene->opened == way->opened);
}

bool task_opening(const struct task *task, size_t point, int64_t *ret_u, int64_t *ret_v)
{
    const struct screw_head *head = &task->scene->heads[point];
    struct entry entry;

    assert(point < task->junction->point_count);
    if (!head->there)
        return false;
    if (!task->way.inside) {
        box_to_face(task->way.reach_side, head->at, ret_u, ret_v);
        return true;
    }
    if (!way_enter(task->scene, task->way.reach_side, head->at, &entry))
        return false;
    *ret_u = entry.u;
    *ret_v = entry.v;
    return true;
}

bool task_before_head(const struct task *task, size_t point, struct vector *ret_at)
{
    const struct screw_head *head = &task->scene->heads[point];

    assert(point < task->junction->point_count);
    *ret_at = head->at;
    if (head->there)
        way_step_back(task->scene, ret_at);
    return head->there;
}

/* ---- what shuts the way ---- */

/* A place on a side of the box that has to be free: where the hand comes in, where a head lies on
 * the outside, where a tool that is longer than the hollow stands out of it. */
struct opening_at {
    int64_t side, u, v;
};

static void hold_back_facings(const struct task *task, struct helds *helds,
                              const struct opening_at *at)
{
    const struct plan *plan = task->planning->plan;
    struct slice panels = plan_panels_of(plan, task->box->key);

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &plan->panels.at[i];

        if (panel->side == at->side && (panel->loose || panel->side == task->way.opened) &&
            area_holds(&panel->area, at->u, at->v))
            hold(task, helds, (struct held){BLOCKER_FACING, panel->facing, RULE_SHUT_SIDE, 0});
    }
}

static bool peels(const struct task *task, const struct layer *layer, int64_t side)
{
    bool in_line = side == side_opposite(task->scene->side);

    return in_line && (layer->shape == SHAPE_WRAPPED || layer->shape == SHAPE_SEWN ||
                       layer->kind == LAYER_LINING || layer->kind == LAYER_COVER);
}

/* Layers that the hand alone comes through, and flat ones over a head, wait as a whole; a cover
 * over a head is peeled back, and one that is pierced does not wait. */
static void hold_back_layers(const struct task *task, struct candidate *candidate,
                             const struct opening_at *at)
{
    for (size_t i = 0; i < task->around.cloth.count; i++) {
        const struct layer *layer = task->around.cloth.at[i];

        if (!drape_covers(task->planning, layer, task->box, at->side, at->u, at->v))
            continue;
        if (peels(task, layer, at->side) && !task->way.inside &&
            task->join->treatment == TREATMENT_PIERCED)
            candidate->treatment = WAY_PIERCED;
        else
            hold(task, &candidate->helds,
                 (struct held){BLOCKER_LAYER, layer->key,
                               peels(task, layer, at->side) ? RULE_FLAP : RULE_SHUT_SIDE, 0});
    }
}

static void hold_back_joins(const struct task *task, struct helds *helds,
                            const struct opening_at *at)
{
    for (size_t i = 0; i < task->around.joined.count; i++) {
        const struct junction *other = task->around.joined.at[i];
        const struct join *join = MODEL_FIND(task->planning->model, join, other->join);
        bool on_a = other->box_a == task->box->key && join->side_a == at->side;
        bool on_b = other->box_b == task->box->key && join->side_b == at->side;
        const struct area *zone = on_a ? &other->zone : &other->zone_b;

        if ((on_a || on_b) && area_holds(zone, at->u, at->v))
            hold(task, helds,
                 (struct held){BLOCKER_JOIN, other->join, RULE_LAID_OVER,
                               on_a ? other->box_b : other->box_a});
    }
}

/* ---- what comes to stand there ---- */

/* Where the hand goes on, outside the box: through the reach side, as broad as a hand with its
 * thumb aside, and a hand's length on. */
static struct solid room_of_hand(const struct task *task, int64_t u, int64_t v)
{
    const int64_t *value = task->planning->value;
    int64_t half = value[TRADE_HAND_HOLE_WIDTH] / 4;
    struct area area = {u - half, v - half, u + half, v + half};

    return solid_behind(task->box, task->way.reach_side, &area, -value[TRADE_HAND_HOLE_HEIGHT], 0);
}

struct holding {
    const struct task *task;
    struct helds *helds;
    const char *rule;
    int64_t sets;
};

static void hold_join(void *context, int64_t join)
{
    const struct holding *holding = context;

    hold(holding->task, holding->helds,
         (struct held){BLOCKER_JOIN, join, holding->rule, holding->sets});
}

/* Where tool and hand are for each head: the room behind it, and, in a hollow, that before its
 * opening. */
static struct solid *rooms_of(const struct task *task, size_t *ret_count)
{
    size_t count = task->junction->point_count;
    struct solid *rooms = ARENA_MANY(task->planning->arena, struct solid, 2 * count);
    int64_t u, v;

    *ret_count = 0;
    for (size_t i = 0; i < count; i++) {
        const struct screw_head *head = &task->scene->heads[i];

        if (head->there)
            rooms[(*ret_count)++] = way_tool_room(task->scene, head, task->way.manner);
        if (head->there && task->way.inside && task_opening(task, i, &u, &v))
            rooms[(*ret_count)++] = room_of_hand(task, u, v);
    }
    assert(*ret_count <= 2 * count);
    return rooms;
}

/* Panels that drop in loose are no part of the scene; those that tool or hand meet come later. */
static void hold_back_loose_panels(const struct task *task, struct helds *helds,
                                   const struct solid *rooms, size_t count)
{
    const struct plan *plan = task->planning->plan;
    struct slice panels = plan_panels_of(plan, task->box->key);

    for (size_t i = panels.from; i < panels.to; i++)
        for (size_t k = 0; plan->panels.at[i].loose && k < count; k++)
            if (solids_meet(&plan->panels.at[i].solid, &rooms[k]))
                hold(task, helds,
                     (struct held){BLOCKER_FACING, plan->panels.at[i].facing, RULE_SHUT_SIDE, 0});
}

/* Other boxes and the walls come to stand in the way of tool and hand with some join, that waits.
 */
static void hold_back_bystanders(const struct task *task, struct helds *helds)
{
    struct holding holding = {task, helds, RULE_LAID_OVER, 0};
    size_t count;
    const struct solid *rooms = rooms_of(task, &count);
    struct bystanders bystanders =
        vicinity_look(task->vicinity, task->junction, task->box, rooms, count);

    hold_back_loose_panels(task, helds, rooms, count);
    for (size_t i = 0; i < bystanders.boxes.count; i++) {
        holding.sets = bystanders.boxes.at[i];
        vicinity_joins_to(task->vicinity, task->junction, holding.sets, hold_join, &holding);
    }
    holding.sets = 0;
    if (bystanders.wall && task->join->target == TARGET_BOX)
        vicinity_joins_at_wall(task->vicinity, task->junction, hold_join, &holding);
}

/* A back or dust cover on the face that a hand comes through is put on after the join, wherever on
 * that face it lies: the rules of the order want it so. */
static void hold_back_closers(const struct task *task, struct helds *helds)
{
    for (size_t i = 0; task->way.inside && i < task->around.cloth.count; i++) {
        const struct layer *layer = task->around.cloth.at[i];

        if ((layer->kind == LAYER_OUTSIDE_BACK || layer->kind == LAYER_DUST_COVER) &&
            layer->side == task->way.reach_side)
            hold(task, helds, (struct held){BLOCKER_LAYER, layer->key, NULL, 0});
    }
}

/* ---- what it comes to ---- */

static enum way_treatment treatment_of(const struct candidate *candidate)
{
    enum way_treatment treatment = candidate->treatment;

    for (size_t i = 0; i < candidate->helds.list.count; i++) {
        const struct held *held = &candidate->helds.list.at[i];
        enum way_treatment own = held_is_flap(held) ? WAY_LEFT_OPEN : WAY_LATER;

        treatment = own > treatment ? own : treatment;
    }
    return treatment;
}

static void hold_back_at(const struct task *task, struct candidate *candidate,
                         const struct opening_at *at)
{
    hold_back_facings(task, &candidate->helds, at);
    hold_back_joins(task, &candidate->helds, at);
    hold_back_layers(task, candidate, at);
}

/* Where a tool stands out of the hollow, straight behind the head; false where it does not. */
static bool stands_out(const struct task *task, const struct screw_head *head,
                       struct opening_at *ret_at)
{
    struct solid room = way_tool_room(task->scene, head, task->way.manner);
    int axis = task->scene->axis;
    bool out = task->scene->sign > 0
                   ? vector_along(room.high, axis) > vector_along(box_size(task->box), axis)
                   : vector_along(room.low, axis) < 0;

    assert(head->there);
    ret_at->side = side_opposite(task->scene->side);
    box_to_face(ret_at->side, head->at, &ret_at->u, &ret_at->v);
    return task->way.inside && out;
}

void task_hold_back(struct task *task, struct candidate *candidate)
{
    const struct junction *junction = task->junction;
    struct opening_at at = {.side = task->way.reach_side};

    assert(task->scene && task->box);
    for (size_t i = 0; i < junction->point_count; i++) {
        struct opening_at out;

        if (!task_opening(task, i, &at.u, &at.v))
            continue;
        hold_back_at(task, candidate, &at);
        if (stands_out(task, &task->scene->heads[i], &out))
            hold_back_at(task, candidate, &out);
    }
    hold_back_bystanders(task, &candidate->helds);
    hold_back_closers(task, &candidate->helds);
    candidate->treatment = treatment_of(candidate);
    candidate->open = candidate->way.manner != MANNER_NONE;
}

/* ---- how the boxes come together ---- */

static void add_approach(struct task *task, const struct sweep *sweep)
{
    struct approach *approach = LIST_ADD(task->planning->arena, &task->approaches);
    struct holding holding = {task, &approach->helds, RULE_STRAIGHT_IN, 0};

    assert(!sweep->shut);
    approach->from = sweep->from;
    for (size_t i = 0; i < sweep->boxes.count; i++) {
        holding.sets = sweep->boxes.at[i];
        vicinity_joins_to(task->vicinity, task->junction, holding.sets, hold_join, &holding);
    }
}

void task_find_approaches(struct task *task)
{
    struct sweeps sweeps = sweeps_find(task->vicinity, task->junction);

    for (size_t i = 0; i < SIDE_COUNT && !sweeps.free; i++)
        if (!sweeps.at[i].shut)
            add_approach(task, &sweeps.at[i]);
    task->shut_out = !sweeps.free && task->approaches.count == 0;
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

        if (!layer_touches(planning->model, layer, box->key) ||
            (!drape_is_cloth(layer) && layer->kind != LAYER_BATTING) ||
            layer_lies_across(planning->model, layer, task->junction))
            continue;
        if (lands_in_zone(task, layer, box, of_b) || lies_on_points(task, layer, box, of_b))
            hold(task, &task->needed,
                 (struct held){BLOCKER_LAYER, layer->key, RULE_TRAPPED_EDGE, 0});
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
            hold(task, &task->needed,
                 (struct held){BLOCKER_FACING, panel->facing, RULE_NEEDED_WOOD, 0});
    }
}

void task_bring_forward(struct task *task)
{
    const struct model *model = task->planning->model;
    const struct box *a = MODEL_FIND(model, box, task->junction->box_a);
    const struct box *b = MODEL_FIND(model, box, task->junction->box_b);

    assert(a && (b || task->junction->box_b == 0));
    bring_forward_layers(task, a, false);
    if (b)
        bring_forward_layers(task, b, true);
    if (task->junction->point_count == 0)
        return;
    bring_forward_facings(task, a, false);
    if (b)
        bring_forward_facings(task, b, true);
}
