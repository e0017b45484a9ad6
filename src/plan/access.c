/*
 * From which side a join is driven, with what, and what must wait for it.
 *
 * 1  Of the sides that may hold the heads the one with the better manner is taken, the first box's
 *    where they are alike; screws are added only for the side taken.
 * 2  Whatever lies over the entry of a hand, or over a head that lies outside, comes after the
 *    join; whatever lies between the faces comes before it.
 * 3  A constraint stands in the plan once.
 */
#include "plan/access_work.h"

#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/layers.h"

#include <assert.h>
#include <string.h>

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

/* What the way that was chosen holds back, except by rules of the order; nothing for a join that
 * was given up. */
static void hold_back(const struct task *task, const struct helds *helds)
{
    static const enum constraint_kind kinds[] = {[BLOCKER_FACING] = JOIN_BEFORE_FACING,
                                                 [BLOCKER_LAYER] = JOIN_BEFORE_LAYER,
                                                 [BLOCKER_JOIN] = JOIN_BEFORE_JOIN};

    for (size_t i = 0; !task->given_up && i < helds->list.count; i++) {
        const struct held *held = &helds->list.at[i];
        assert(held->kind < sizeof kinds / sizeof *kinds);

        if (held->rule)
            constrain(task, kinds[held->kind], held->item, held->rule);
    }
}

static void bring_forward(const struct task *task)
{
    for (size_t i = 0; i < task->needed.list.count; i++) {
        const struct held *held = &task->needed.list.at[i];
        assert(held->kind == BLOCKER_FACING || held->kind == BLOCKER_LAYER);

        if (held->kind == BLOCKER_FACING)
            constrain(task, FACING_BEFORE_JOIN, held->item, held->rule);
        else
            constrain(task, LAYER_BEFORE_JOIN, held->item, held->rule);
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
        assert(index < task->planning->plan->points.count);

        if (fasten_reckon(task->planning, task->junction, &task->faces,
                          &task->planning->plan->points.at[index], task->way.head_in_b, &fastening))
            drive(task, index, &fastening);
    }
}

/* ---- patch ---- */

/* Anything soft over a head on the outside is kept off it. */
static bool is_padded_over(const struct task *task, size_t point)
{
    const struct model *model = task->planning->model;
    int64_t u, v;

    if (!task_opening(task, point, &u, &v))
        return false;
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if (layer->kind != LAYER_WELT && layer->kind != LAYER_TRIM &&
            layer_touches(model, layer, task->box->key) &&
            drape_covers(task->planning, layer, task->box, task->way.reach_side, u, v))
            return true;
    }
    return false;
}

static int64_t patch_size(const struct task *task)
{
    const struct junction *junction = task->junction;

    for (size_t i = 0; !task->way.inside && i < junction->point_count; i++) {
        if (is_padded_over(task, i))
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

/*
 * What a way costs. Better manner first; then the first box before the second; then the face that
 * costs least to keep open. Panels that have to wait for a join cost more than any tool.
 */
enum {
    COST_POINT_MISSING = 10000,
    COST_OPENED = 450,
    COST_MANNER = 100,
    COST_IN_B = 60,
    COST_JOINED_THERE = 20,
    COST_LAYER_THERE = 10,
    COST_SHUT = 1000000
};

static const int64_t cost_of_treatment[] = {
    [WAY_BARE] = 0, [WAY_LEFT_OPEN] = 2, [WAY_PIERCED] = 1, [WAY_LATER] = 3};

static int64_t cost_of(const struct task *task, const struct candidate *candidate)
{
    const struct way *way = &candidate->way;
    int64_t cost = (int64_t)(task->junction->point_count - way->points) * COST_POINT_MISSING +
                   (int64_t)way->manner * COST_MANNER + cost_of_treatment[candidate->treatment];

    assert(way->points <= task->junction->point_count);
    assert(way->manner <= MANNER_NONE);
    cost += way->opened >= 0 ? COST_OPENED : 0;
    cost += way->head_in_b ? COST_IN_B : 0;
    cost += way->joined_there ? COST_JOINED_THERE : 0;
    cost += way->layer_there ? COST_LAYER_THERE : 0;
    return cost + (candidate->open ? 0 : COST_SHUT);
}

static bool waits_for_bystander(const struct candidate *candidate)
{
    for (size_t i = 0; i < candidate->helds.list.count; i++)
        if (candidate->helds.list.at[i].kind == BLOCKER_JOIN)
            return true;
    return false;
}

/* Keeps the ways in order. Whether some join has to wait for this one: then a slimmer tool may do
 * without. */
static bool list_way(struct task *task, const struct way *way)
{
    struct candidate candidate = {.way = *way};
    size_t at = task->way_count++;

    task_look(task, &candidate.way);
    task_hold_back(task, &candidate);
    candidate.cost = cost_of(task, &candidate);
    for (; at > 0 && task->ways[at - 1].cost > candidate.cost; at--)
        task->ways[at] = task->ways[at - 1];
    task->ways[at] = candidate;
    return waits_for_bystander(&candidate);
}

static void list_ways(struct task *task)
{
    const struct junction *junction = task->junction;
    struct ways found = {0};

    if (task->join->head != HEAD_B || junction->box_b == 0)
        ways_find(&task->scenes[0], &found);
    if (task->join->head != HEAD_A && junction->box_b != 0)
        ways_find(&task->scenes[1], &found);
    task->ways = ARENA_MANY(task->planning->arena, struct candidate, 2 * found.ways.count);
    for (size_t i = 0; i < found.ways.count; i++) {
        struct way way = found.ways.at[i];

        if (list_way(task, &way) && way_with_long_bit(task->scene, &way))
            list_way(task, &way);
    }
    assert(task->way_count >= found.ways.count);
    assert(task->way_count <= 2 * found.ways.count);
}

/* ---- the ways in the plan ---- */

static void note_blockers(struct task *task, const struct candidate *candidate,
                          struct plan_way *noted)
{
    struct plan *plan = task->planning->plan;
    struct blockers shut = {0};

    noted->first_blocker = plan->blockers.count;
    for (size_t i = 0; i < candidate->helds.list.count; i++) {
        const struct held *held = &candidate->helds.list.at[i];

        *LIST_ADD(task->planning->arena, &plan->blockers) =
            (struct blocker){held->kind, held->item, false};
    }
    if (candidate->way.manner == MANNER_NONE)
        way_find_shut(&task->scenes[candidate->way.head_in_b], &shut);
    for (size_t i = 0; i < shut.blockers.count; i++)
        *LIST_ADD(task->planning->arena, &plan->blockers) = shut.blockers.at[i];
    noted->blocker_count = plan->blockers.count - noted->first_blocker;
}

static void note_way(struct task *task, size_t index)
{
    const struct candidate *candidate = &task->ways[index];
    const struct way *way = &candidate->way;
    struct plan_way *noted = LIST_ADD(task->planning->arena, &task->planning->plan->ways);
    bool chosen = index == task->chosen && !task->given_up;

    assert(index < task->way_count);
    *noted = (struct plan_way){.join = task->join->key,
                               .head_in_b = way->head_in_b,
                               .head_box = way_box(task->junction, way->head_in_b),
                               .reach_side = way->reach_side,
                               .opened = way->opened,
                               .tool = tool_of_manner[way->manner],
                               .inside = way->inside,
                               .treatment = candidate->treatment,
                               .room = way->room,
                               .room_needed = way->needed,
                               .beside = way->beside == WAY_FREE ? -1 : way->beside,
                               .beside_needed = way->beside_needed,
                               .cost = candidate->cost,
                               .state = !candidate->open ? WAY_SHUT
                                        : chosen         ? WAY_CHOSEN
                                                         : WAY_POSSIBLE};
    note_blockers(task, candidate, noted);
}

/* Points by hand, and holes of an older plan, may have none. */
static void tell_points_without_wood(const struct task *task)
{
    struct finding *finding =
        finding_add(task->planning, FINDING_JOIN_FEW_POINTS, ENTITY_join, task->join->key);

    argument_quantity(finding, 0, QUANTITY_COUNT, (int64_t)task->way.points);
    argument_quantity(finding, 1, QUANTITY_COUNT, (int64_t)task->junction->point_count);
}

/* The finding is the plan's last. */
static void put_story(struct task *task, struct finding *finding)
{
    assert(finding == &task->planning->plan->findings.at[task->planning->plan->findings.count - 1]);
    finding->story = task->story;
    finding->story_count = task->story_count;
    task->finding = task->planning->plan->findings.count - 1;
}

static void tell_way(struct task *task, const struct candidate *candidate)
{
    const struct way *way = &task->way;
    bool tight = way->manner == MANNER_LONG_BIT || way->manner == MANNER_SLANTED;

    if (way->points == 0) {
        finding_add(task->planning, FINDING_JOIN_NO_WOOD, ENTITY_join, task->join->key);
        return;
    }
    if (way->points < task->junction->point_count)
        tell_points_without_wood(task);
    if (!candidate->open) {
        struct finding *finding =
            finding_add(task->planning, FINDING_JOIN_UNREACHABLE, ENTITY_join, task->join->key);
        argument_length(finding, 0, way->room < 0 ? 0 : way->room);
        argument_length(finding, 1, way->needed);
        if (!task->planning->plan->trial)
            access_tell_shut(task);
        put_story(task, finding);
    } else if (task->given_up && !task->kept_out) {
        put_story(task,
                  finding_add(task->planning, FINDING_JOIN_TRAPPED, ENTITY_join, task->join->key));
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
    junction->reachable = task->ways[task->chosen].open && !task->given_up;
    junction->patch = patch_size(task);
}

/* ---- all ---- */

static void set_scene(struct task *task, bool head_in_b)
{
    struct scene *scene = &task->scenes[head_in_b];

    *scene = way_scene(task->vicinity, task->junction, head_in_b);
    way_see_heads(scene, &task->faces);
}

static void begin(const struct vicinity *vicinity, struct junction *junction, struct task *task)
{
    struct planning *planning = vicinity->planning;

    *task = (struct task){
        .planning = planning, .vicinity = vicinity, .junction = junction, .finding = PLAN_NONE};
    task->join = MODEL_FIND(planning->model, join, junction->join);
    assert(task->join);
    if (model_left_out(planning->model, junction->join))
        return;
    task_find_approaches(task);
    task_bring_forward(task);
    if (junction->point_count == 0)
        return;
    task->faces = fasten_faces(planning, junction);
    set_scene(task, false);
    if (junction->box_b != 0)
        set_scene(task, true);
    list_ways(task);
}

/* How the boxes come together; the way that was chosen for that holds back as well. */
static void finish_approach(struct task *task)
{
    if (task->kept_out || task->shut_out) {
        struct finding *finding =
            finding_add(task->planning, FINDING_BOX_KEPT_OUT, ENTITY_join, task->join->key);

        argument_text(finding, 0,
                      MODEL_FIND(task->planning->model, box, task->junction->box_b)->name);
        if (task->shut_out && !task->planning->plan->trial)
            access_tell_shut_out(task);
        put_story(task, finding);
    } else if (task->approaches.count > 0) {
        assert(task->approach < task->approaches.count);
        hold_back(task, &task->approaches.at[task->approach].helds);
    }
}

static void finish(struct task *task)
{
    const struct candidate *chosen;

    finish_approach(task);
    bring_forward(task);
    if (task->junction->point_count == 0) {
        task->junction->reachable = task->join->fastener == FASTENER_REST && !task->kept_out;
        return;
    }
    assert(task->chosen < task->way_count);
    chosen = &task->ways[task->chosen];
    for (size_t i = 0; i < task->way_count; i++)
        note_way(task, i);
    task_look(task, &chosen->way);
    write_way(task);
    tell_way(task, chosen);
    drive_all(task);
    if (chosen->open)
        hold_back(task, &chosen->helds);
}

void pass_access(struct planning *planning)
{
    struct plan *plan = planning->plan;
    struct tasks tasks = {ARENA_MANY(planning->arena, struct task, plan->junctions.count),
                          plan->junctions.count, vicinity_make(planning)};

    for (size_t i = 0; i < tasks.count; i++)
        begin(&tasks.vicinity, &plan->junctions.at[i], &tasks.at[i]);
    access_choose(planning, &tasks);
    for (size_t i = 0; i < tasks.count; i++)
        finish(&tasks.at[i]);
    access_add_cures(planning, &tasks);
}
