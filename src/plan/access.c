/*
 * From which side a join is driven, with what, and what must wait for it.
 *
 * 1  Of the sides that may hold the heads the one with the better manner is taken, the first box's
 *    where they are alike; screws are added only for the side taken.
 * 2  Whatever lies over the entry of a hand, or over a head that lies outside, comes after the
 *    join; whatever lies between the faces comes before it.
 * 3  A constraint stands in the plan once.
 */
#include "plan/access.h"

#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/slices.h"
#include "plan/way.h"

#include <assert.h>
#include <string.h>

struct task {
    struct planning *planning;
    const struct join *join;
    struct junction *junction;
    struct faces faces;
    struct way way;
    const struct box *box; /* with the heads */
    struct scene scene;    /* round them */
};

/* ---- constraints ---- */

/* The constraints of a join stand together, and those of this join last. */
static bool is_told(const struct plan *plan, enum constraint_kind kind, int64_t join, int64_t item)
{
    for (size_t i = plan->constraints.count; i > 0; i--) {
        const struct constraint *constraint = &plan->constraints.at[i - 1];

        if (constraint->join != join)
            return false;
        if (constraint->kind == kind && constraint->item == item)
            return true;
    }
    return false;
}

static void constrain(const struct task *task, enum constraint_kind kind, int64_t item,
                      const char *rule)
{
    struct plan *plan = task->planning->plan;

    assert(item > 0 && strlen(rule) < sizeof plan->constraints.at->rule);
    if (is_told(plan, kind, task->join->key, item))
        return;
    struct constraint *constraint = LIST_ADD(task->planning->arena, &plan->constraints);
    constraint->kind = kind;
    constraint->join = task->join->key;
    constraint->item = item;
    memcpy(constraint->rule, rule, strlen(rule) + 1);
}

static bool waits_as_a_whole(const struct plan *plan, int64_t join, int64_t layer)
{
    for (size_t i = plan->constraints.count; i > 0; i--) {
        const struct constraint *constraint = &plan->constraints.at[i - 1];

        if (constraint->join != join)
            return false;
        if (constraint->kind == JOIN_BEFORE_LAYER && constraint->item == layer)
            return strcmp(constraint->rule, "P51") == 0;
    }
    return false;
}

/* ---- what shuts the way ---- */

/* The place on the reach side that has to stay open for a point: before the head where that lies
 * outside, at the hand's entry otherwise. */
static bool opening_for(const struct task *task, const struct plan_point *point, int64_t *ret_u,
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

static void hold_back_facings(const struct task *task, int64_t u, int64_t v)
{
    const struct plan *plan = task->planning->plan;
    struct slice panels = plan_panels_of(plan, task->box->key);

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &plan->panels.at[i];

        if (panel->side == task->way.reach_side &&
            (panel->loose || panel->side == task->way.opened) && area_holds(&panel->area, u, v))
            constrain(task, JOIN_BEFORE_FACING, panel->facing, "P51");
    }
}

/* Layers over a hollow, and flat ones over a head, wait as a whole; a cover over a head is peeled
 * back, and one that is pierced does not wait. */
static void hold_back_layers(const struct task *task, int64_t u, int64_t v)
{
    const struct model *model = task->planning->model;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];
        bool peels =
            !task->way.inside && (layer->shape == SHAPE_WRAPPED || layer->shape == SHAPE_SEWN ||
                                  layer->kind == LAYER_LINING || layer->kind == LAYER_COVER);

        if (!drape_is_cloth(layer) || !drape_is_on_box(model, layer, task->box->key) ||
            !drape_covers(task->planning, layer, task->box, task->way.reach_side, u, v))
            continue;
        if (peels && task->join->treatment == TREATMENT_PIERCED)
            continue;
        constrain(task, JOIN_BEFORE_LAYER, layer->key, peels ? "P46" : "P51");
    }
}

static void hold_back_joins(const struct task *task, int64_t u, int64_t v)
{
    const struct plan *plan = task->planning->plan;

    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *other = &plan->junctions.at[i];
        if (other == task->junction ||
            (other->box_a != task->box->key && other->box_b != task->box->key))
            continue;
        const struct join *join = MODEL_FIND(plan->facts, join, other->join);
        bool on_a = other->box_a == task->box->key && join->side_a == task->way.reach_side;
        bool on_b = other->box_b == task->box->key && join->side_b == task->way.reach_side;
        const struct area *zone = on_a ? &other->zone : &other->zone_b;

        if ((on_a || on_b) && area_holds(zone, u, v))
            constrain(task, JOIN_BEFORE_JOIN, other->join, "P50");
    }
}

static void hold_back(const struct task *task)
{
    const struct junction *junction = task->junction;
    int64_t u, v;

    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point =
            &task->planning->plan->points.at[junction->first_point + i];

        if (!opening_for(task, point, &u, &v))
            continue;
        hold_back_facings(task, u, v);
        hold_back_joins(task, u, v);
        if (!loose_panel_is_over(task, u, v))
            hold_back_layers(task, u, v);
    }
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

static void bring_forward_layers(const struct task *task, const struct box *box, bool of_b)
{
    const struct planning *planning = task->planning;

    for (size_t i = 0; i < planning->model->layers.count; i++) {
        const struct layer *layer = &planning->model->layers.at[i];

        if (!drape_is_cloth(layer) || !drape_is_on_box(planning->model, layer, box->key) ||
            waits_as_a_whole(planning->plan, task->join->key, layer->key))
            continue;
        if (lands_in_zone(task, layer, box, of_b) || lies_on_points(task, layer, box, of_b))
            constrain(task, LAYER_BEFORE_JOIN, layer->key, "P45");
    }
}

static void bring_forward_facings(const struct task *task, const struct box *box, bool of_b)
{
    const struct plan *plan = task->planning->plan;
    const struct area *zone = of_b ? &task->junction->zone_b : &task->junction->zone;
    int64_t side = point_side(task->planning, task->junction, of_b);
    struct slice panels = plan_panels_of(plan, box->key);

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &plan->panels.at[i];
        struct area common = area_cut(&panel->area, zone);

        if (panel->side == side && !panel->loose && !area_empty(&common))
            constrain(task, FACING_BEFORE_JOIN, panel->facing, "P16");
    }
}

static void bring_forward(const struct task *task)
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

/* ---- screws ---- */

static void drive(const struct task *task, size_t index, const struct fastening *fastening)
{
    struct planning *planning = task->planning;
    struct plan_point *point = &planning->plan->points.at[index];
    struct screw_choice choice = screw_choose(planning, &fastening->need);
    int64_t side = point_side(planning, task->junction, task->way.head_in_b);

    point->limit = choice.limit;
    if (task->join->fastener != FASTENER_SCREW)
        return;
    screw_choice_tell(planning, &choice, ENTITY_join, task->join->key);
    if (choice.kind == PLAN_NONE)
        return;
    struct screw screw = {
        .use = SCREW_JOIN,
        .kind = choice.kind,
        .box = task->box->key,
        .at = way_head(planning, task->junction, point, fastening, task->way.head_in_b),
        .axis = side_axis(side),
        .sign = side_sign(side),
        .bite = choice.bite,
        .end_grain = fastening->need.end_grain,
        .of = index};
    point->screw = screw_add(planning, &screw);
}

static void drive_all(const struct task *task)
{
    struct fastening fastening;

    for (size_t i = 0; i < task->junction->point_count; i++) {
        size_t index = task->junction->first_point + i;

        if (fasten_reckon(task->planning, task->junction, &task->faces,
                          &task->planning->plan->points.at[index], task->way.head_in_b, &fastening))
            drive(task, index, &fastening);
    }
}

/* ---- patch ---- */

/* Anything soft over a head on the outside is kept off it. */
static bool is_padded_over(const struct task *task, const struct plan_point *point)
{
    const struct model *model = task->planning->model;
    int64_t u, v;

    if (!opening_for(task, point, &u, &v))
        return false;
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if (layer->kind != LAYER_WELT && layer->kind != LAYER_TRIM &&
            drape_is_on_box(model, layer, task->box->key) &&
            drape_covers(task->planning, layer, task->box, task->way.reach_side, u, v))
            return true;
    }
    return false;
}

static int64_t patch_size(const struct task *task)
{
    const struct junction *junction = task->junction;

    for (size_t i = 0; !task->way.inside && i < junction->point_count; i++) {
        if (is_padded_over(task, &task->planning->plan->points.at[junction->first_point + i]))
            return task->planning->value[task->join->fastener == FASTENER_BOLT ? TRADE_PATCH_BOLT
                                                                               : TRADE_PATCH_PLAIN];
    }
    return 0;
}

/* ---- the choice ---- */

static const int64_t tool_of_manner[] = {
    [MANNER_DRIVER] = TOOL_DRIVER,    [MANNER_LONG_BIT] = TOOL_LONG_BIT,
    [MANNER_SLANTED] = TOOL_LONG_BIT, [MANNER_RIGHT_ANGLE] = TOOL_RIGHT_ANGLE,
    [MANNER_STUBBY] = TOOL_STUBBY,    [MANNER_NONE] = TOOL_DRIVER,
};

static bool is_better(const struct way *b, const struct way *a)
{
    if (a->points != b->points)
        return b->points > a->points;
    return b->manner < a->manner;
}

static void note_way(const struct task *task, const struct way *way, enum way_state state)
{
    struct plan *plan = task->planning->plan;
    struct plan_way *noted = LIST_ADD(task->planning->arena, &plan->ways);

    *noted = (struct plan_way){.join = task->join->key,
                               .head_in_b = way->head_in_b,
                               .head_box = way_box(task->junction, way->head_in_b),
                               .reach_side = way->reach_side,
                               .opened = way->opened,
                               .tool = tool_of_manner[way->manner],
                               .inside = way->inside,
                               .treatment = way->opened >= 0 ? WAY_LATER : WAY_BARE,
                               .room = way->room,
                               .room_needed = way->needed,
                               .beside = way->beside == WAY_FREE ? -1 : way->beside,
                               .beside_needed = way->beside_needed,
                               .cost = (int64_t)way->manner,
                               .state = way->manner == MANNER_NONE ? WAY_SHUT : state,
                               .first_blocker = plan->blockers.count};
}

static void choose_way(struct task *task)
{
    bool from_a = task->join->head != HEAD_B || task->junction->box_b == 0;
    bool from_b = task->join->head != HEAD_A && task->junction->box_b != 0;
    struct way ways[2];

    if (from_a)
        ways[0] = way_find(task->planning, task->junction, &task->faces, false);
    if (from_b)
        ways[1] = way_find(task->planning, task->junction, &task->faces, true);
    bool b_first = from_b && (!from_a || is_better(&ways[1], &ways[0]));
    task->way = ways[b_first];
    note_way(task, &task->way, WAY_CHOSEN);
    if (from_a && from_b)
        note_way(task, &ways[!b_first], WAY_POSSIBLE);
}

/* Points by hand, and holes of an older plan, may have none. */
static void tell_points_without_wood(const struct task *task)
{
    struct finding *finding =
        finding_add(task->planning, FINDING_JOIN_FEW_POINTS, ENTITY_join, task->join->key);

    argument_quantity(finding, 0, QUANTITY_COUNT, (int64_t)task->way.points);
    argument_quantity(finding, 1, QUANTITY_COUNT, (int64_t)task->junction->point_count);
}

static void tell_way(const struct task *task)
{
    const struct way *way = &task->way;
    bool tight = way->manner == MANNER_LONG_BIT || way->manner == MANNER_SLANTED;

    if (way->points == 0) {
        finding_add(task->planning, FINDING_JOIN_NO_WOOD, ENTITY_join, task->join->key);
        return;
    }
    if (way->points < task->junction->point_count)
        tell_points_without_wood(task);
    if (way->manner == MANNER_NONE) {
        struct finding *finding =
            finding_add(task->planning, FINDING_JOIN_UNREACHABLE, ENTITY_join, task->join->key);
        argument_length(finding, 0, way->room < 0 ? 0 : way->room);
        argument_length(finding, 1, way->needed);
    } else if (tight) {
        struct finding *finding =
            finding_add(task->planning, FINDING_JOIN_TIGHT, ENTITY_join, task->join->key);
        argument_length(finding, 0, way->beside);
        argument_length(finding, 1, way->beside_needed);
    }
}

static void write_way(const struct task *task)
{
    struct junction *junction = task->junction;
    const struct way *way = &task->way;
    int64_t side = point_side(task->planning, junction, way->head_in_b);

    junction->head_box = task->box->key;
    junction->head_inside = way->inside;
    junction->head_side = way->inside ? side : side_opposite(side);
    junction->reach_side = way->reach_side;
    junction->tool = tool_of_manner[way->manner];
    junction->room = way->room;
    junction->room_needed = way->needed;
    junction->reachable = way->manner != MANNER_NONE;
    junction->patch = patch_size(task);
}

static void plan_access(struct planning *planning, struct junction *junction)
{
    struct task task = {.planning = planning, .junction = junction};

    task.join = MODEL_FIND(planning->model, join, junction->join);
    assert(task.join);
    if (junction->point_count == 0) {
        junction->reachable = task.join->fastener == FASTENER_REST;
        return;
    }
    task.faces = fasten_faces(planning, junction);
    choose_way(&task);
    task.box = MODEL_FIND(planning->model, box, way_box(junction, task.way.head_in_b));
    assert(task.box);
    task.scene = way_scene(planning, junction, task.way.head_in_b);
    if (task.way.opened >= 0)
        way_open_side(&task.scene, task.way.opened);
    write_way(&task);
    tell_way(&task);
    drive_all(&task);
    hold_back(&task);
    bring_forward(&task);
}

void pass_access(struct planning *planning)
{
    for (size_t i = 0; i < planning->plan->junctions.count; i++)
        plan_access(planning, &planning->plan->junctions.at[i]);
}
