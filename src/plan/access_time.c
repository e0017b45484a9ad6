/*
 * Which of the ways each join is driven, looked at over all joins and in time.
 *
 * The acts are a part of the steps of the order pass, those that can shut a head in or wait for
 * one; what comes before all of them anyway (cutting, framing, panels that no join holds back)
 * cannot close a circle and is left out, and so are flaps, trim and fittings, which nothing waits
 * for. The edges are the hard rules between these acts, as rules.c links them and order_wait.c adds
 * them:
 *
 *     P16   a panel that the screws need comes before the dry fit
 *     P17   the dry fit before the joining; dry and final fit are two epochs of a join
 *     P18   the holes before foam, batting, lining or cover on either box
 *     P26   a layer before the one that lies over it
 *     S14   a panel before the layers on its face
 *     S11   a layer over several boxes after the joins between them
 *     P45   what is stapled or lies between the faces before they meet
 *     P58   what is joined at the bench before the move, what is joined in the room after it
 *
 * A join whose boxes may be kept apart by others has one more act, that they have come together:
 * its ways are the straight lines along which they do (sweep.h).
 *
 * The ways are those that access_held.c found; a blocker of one is the layer or facing that it
 * holds back, or the setting down of the box that another join lays over it. Peeling then says
 * whether all joins can be driven, and chooses. Where they cannot, the smallest part that is stuck
 * is told, one join of it is given up, and the rest goes on.
 */
#include "plan/access_time.h"

#include "plan/geometry.h"
#include "plan/layers.h"

#include <assert.h>
#include <string.h>

#define TOLD_AT_MOST 16 /* stories of one plan; further joins are given up without */

/* ---- nodes ---- */

static void add_act(struct timeline *timeline, enum act_kind kind, size_t task, int64_t key)
{
    *LIST_ADD(timeline->planning->arena, &timeline->acts) = (struct act){kind, task, key};
}

static void add_acts(struct timeline *timeline)
{
    const struct model *model = timeline->planning->model;

    for (size_t i = 0; i < timeline->tasks->count; i++)
        for (enum act_kind kind = ACT_DRY; kind <= ACT_DRIVE; kind++)
            add_act(timeline, kind, i, timeline->tasks->at[i].join->key);
    timeline->first_facing = timeline->acts.count;
    for (size_t i = 0; i < model->facings.count; i++)
        add_act(timeline, ACT_FACING, SIZE_MAX, model->facings.at[i].key);
    timeline->first_layer = timeline->acts.count;
    for (size_t i = 0; i < model->layers.count; i++)
        add_act(timeline, ACT_LAYER, SIZE_MAX, model->layers.at[i].key);
    timeline->move = timeline->acts.count;
    add_act(timeline, ACT_MOVE, SIZE_MAX, 0);
    timeline->placed = ARENA_MANY(timeline->planning->arena, size_t, timeline->tasks->count);
    for (size_t i = 0; i < timeline->tasks->count; i++) {
        const struct task *task = &timeline->tasks->at[i];

        timeline->placed[i] = task->approaches.count > 0 ? timeline->acts.count : PLAN_NONE;
        if (task->approaches.count > 0)
            add_act(timeline, ACT_PLACED, i, task->join->key);
    }
    assert(timeline->first_facing == 3 * timeline->tasks->count);
}

static size_t node_of_facing(const struct timeline *timeline, int64_t key)
{
    size_t index = model_index(timeline->planning->model, ENTITY_facing, key);

    assert(index < timeline->planning->model->facings.count);
    return timeline->first_facing + index;
}

static size_t node_of_layer(const struct timeline *timeline, int64_t key)
{
    size_t index = model_index(timeline->planning->model, ENTITY_layer, key);

    assert(index < timeline->planning->model->layers.count);
    return timeline->first_layer + index;
}

/* Junctions stand in the order of their joins' keys. */
static size_t task_of(const struct timeline *timeline, int64_t join)
{
    size_t low = 0;
    size_t high = timeline->tasks->count;

    while (low < high) {
        size_t middle = low + (high - low) / 2;

        if (timeline->tasks->at[middle].join->key < join)
            low = middle + 1;
        else
            high = middle;
    }
    assert(low < timeline->tasks->count && timeline->tasks->at[low].join->key == join);
    return low;
}

/* ---- edges ---- */

static void add_edge(struct timeline *timeline, size_t before, size_t after, const char *rule)
{
    struct arena *arena = timeline->planning->arena;

    assert(before < timeline->acts.count && after < timeline->acts.count);
    *LIST_ADD(arena, &timeline->rules) = rule;
    *LIST_ADD(arena, &timeline->edges) = (struct peel_edge){before, after};
}

/* What goes on a box while it is still open: not what closes it, and no decoration. */
static bool is_padding_or_cover(const struct model *model, const struct layer *layer)
{
    return layer->kind == LAYER_FOAM || layer->kind == LAYER_BATTING ||
           layer->kind == LAYER_COVER ||
           (layer->kind == LAYER_LINING && lining_is_under_cover(model, layer));
}

/* What is laid on at the bench is lifted off for the move; what is screwed there stays together. */
static void add_join_edges(struct timeline *timeline, size_t index)
{
    assert(index < timeline->tasks->count);

    const struct task *task = &timeline->tasks->at[index];

    add_edge(timeline, timeline_dry(index), timeline_offer(index), RULE_TRIED_DRY);
    add_edge(timeline, timeline_offer(index), timeline_drive(index), RULE_HELD_TOGETHER);
    if (timeline->placed[index] != PLAN_NONE)
        add_edge(timeline, timeline_drive(index), timeline->placed[index], RULE_STRAIGHT_IN);
    if (join_is_in_room(task->join))
        add_edge(timeline, timeline->move, timeline_offer(index), RULE_MOVE);
    else if (task->join->fastener != FASTENER_REST)
        add_edge(timeline, timeline_drive(index), timeline->move, RULE_MOVE);
}

static void add_needed_edges(struct timeline *timeline, size_t index)
{
    assert(index < timeline->tasks->count);

    const struct task *task = &timeline->tasks->at[index];

    for (size_t i = 0; i < task->needed.list.count; i++) {
        const struct held *held = &task->needed.list.at[i];

        if (held->kind == BLOCKER_FACING)
            add_edge(timeline, node_of_facing(timeline, held->item), timeline_dry(index),
                     RULE_NEEDED_WOOD);
        else
            add_edge(timeline, node_of_layer(timeline, held->item), timeline_offer(index),
                     RULE_TRAPPED_EDGE);
    }
}

/* ---- what touches what: layers and joins of each box ---- */

struct by_box {
    size_t *first; /* of each box of the model */
    size_t *item;
};

static void each_layer_of_boxes(const struct model *model, size_t *count, struct by_box *put)
{
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        for (size_t j = 0; j < (layer->group ? model->group_boxes.count : 1); j++) {
            int64_t key = layer->group ? model->group_boxes.at[j].box : layer->box;
            size_t box = model_index(model, ENTITY_box, key);

            if ((layer->group && model->group_boxes.at[j].group != layer->group) ||
                box == model->boxes.count)
                continue;
            if (put)
                put->item[put->first[box + 1]++] = i;
            else
                count[box + 2]++;
        }
    }
}

static struct by_box layers_by_box(const struct planning *planning)
{
    const struct model *model = planning->model;
    size_t boxes = model->boxes.count;
    struct by_box by_box = {.first = ARENA_MANY(planning->arena, size_t, boxes + 2)};

    each_layer_of_boxes(model, by_box.first, NULL);
    for (size_t i = 2; i < boxes + 2; i++)
        by_box.first[i] += by_box.first[i - 1];
    by_box.item = ARENA_MANY(planning->arena, size_t, by_box.first[boxes + 1]);
    each_layer_of_boxes(model, NULL, &by_box);
    assert(by_box.first[boxes] == by_box.first[boxes + 1]);
    return by_box;
}

static void add_hole_edges(struct timeline *timeline, const struct by_box *layers, size_t index,
                           int64_t box)
{
    assert(index < timeline->tasks->count);

    const struct model *model = timeline->planning->model;
    const struct task *task = &timeline->tasks->at[index];
    size_t at = model_index(model, ENTITY_box, box);

    if (task->join->fastener == FASTENER_REST || at == model->boxes.count)
        return;
    for (size_t i = layers->first[at]; i < layers->first[at + 1]; i++)
        if (is_padding_or_cover(model, &model->layers.at[layers->item[i]]))
            add_edge(timeline, timeline_dry(index), timeline->first_layer + layers->item[i],
                     RULE_HOLES_FIRST);
}

static void add_group_edges(struct timeline *timeline, const struct by_box *layers, size_t index)
{
    assert(index < timeline->tasks->count);

    const struct model *model = timeline->planning->model;
    const struct join *join = timeline->tasks->at[index].join;
    size_t at = model_index(model, ENTITY_box, join->box_a);

    if (join->target != TARGET_BOX || at == model->boxes.count)
        return;
    for (size_t i = layers->first[at]; i < layers->first[at + 1]; i++) {
        const struct layer *layer = &model->layers.at[layers->item[i]];

        if (layer->group && layer->kind != LAYER_LINING && layer->kind != LAYER_DUST_COVER &&
            layer->kind != LAYER_WELT && layer->kind != LAYER_TRIM &&
            layer_touches(model, layer, join->box_b))
            add_edge(timeline, timeline_drive(index), timeline->first_layer + layers->item[i],
                     RULE_GROUP);
    }
}

/* What closes a face lies on the padding that is wrapped round to it. */
static bool closes(const struct model *model, const struct layer *layer)
{
    return layer->kind == LAYER_OUTSIDE_BACK ||
           (layer->kind == LAYER_LINING && !lining_is_under_cover(model, layer));
}

static bool is_padding(const struct layer *layer)
{
    return layer->kind == LAYER_FOAM || layer->kind == LAYER_BATTING;
}

/* Foam on foam, batting on batting, and each kind before those that come after it. */
static bool goes_under(const struct model *model, const struct layer *under,
                       const struct layer *over)
{
    bool alike = under->kind == over->kind && is_padding(under);
    bool goes_on = is_padding_or_cover(model, over) ? is_padding_or_cover(model, under)
                                                    : closes(model, over) && is_padding(under);

    return under != over && goes_on && (alike || under->kind < over->kind) &&
           layer_is_over(over, under) && (layer_faces(over) & layer_reaches(under));
}

static void add_layer_edges(struct timeline *timeline, const struct by_box *layers, size_t box)
{
    const struct model *model = timeline->planning->model;

    assert(box < model->boxes.count);
    for (size_t i = layers->first[box]; i < layers->first[box + 1]; i++)
        for (size_t j = layers->first[box]; j < layers->first[box + 1]; j++) {
            const struct layer *under = &model->layers.at[layers->item[i]];
            const struct layer *over = &model->layers.at[layers->item[j]];

            if (goes_under(model, under, over))
                add_edge(timeline, timeline->first_layer + layers->item[i],
                         timeline->first_layer + layers->item[j], RULE_UNDER);
        }
}

static void add_facing_edges(struct timeline *timeline, const struct by_box *layers, size_t index)
{
    const struct model *model = timeline->planning->model;
    const struct facing *facing = &model->facings.at[index];
    size_t box = model_index(model, ENTITY_box, facing->box);

    assert(box < model->boxes.count);
    for (size_t i = layers->first[box]; i < layers->first[box + 1]; i++) {
        const struct layer *layer = &model->layers.at[layers->item[i]];

        if (layer_has_face(layer, facing->side) &&
            (is_padding_or_cover(model, layer) || closes(model, layer)))
            add_edge(timeline, timeline->first_facing + index,
                     timeline->first_layer + layers->item[i], RULE_PANEL_FIRST);
    }
}

/* ---- ways ---- */

static void add_blocker(struct timeline *timeline, const struct held *held)
{
    size_t node = held->kind == BLOCKER_FACING  ? node_of_facing(timeline, held->item)
                  : held->kind == BLOCKER_LAYER ? node_of_layer(timeline, held->item)
                                                : timeline_offer(task_of(timeline, held->item));

    *LIST_ADD(timeline->planning->arena, &timeline->blockers) = node;
}

static void add_ways(struct timeline *timeline, size_t index)
{
    assert(index < timeline->tasks->count);

    const struct task *task = &timeline->tasks->at[index];

    for (size_t i = 0; i < task->way_count; i++) {
        const struct candidate *candidate = &task->ways[i];
        size_t first = timeline->blockers.count;

        if (!candidate->open)
            continue;
        for (size_t j = 0; j < candidate->helds.list.count; j++)
            if (!held_is_flap(&candidate->helds.list.at[j])) /* the way under it stays free */
                add_blocker(timeline, &candidate->helds.list.at[j]);
        *LIST_ADD(timeline->planning->arena, &timeline->ways) =
            (struct peel_way){timeline_drive(index), first, timeline->blockers.count - first};
        *LIST_ADD(timeline->planning->arena, &timeline->way_of) = i;
    }
}

static void add_approaches(struct timeline *timeline, size_t index)
{
    assert(index < timeline->tasks->count);

    const struct task *task = &timeline->tasks->at[index];

    for (size_t i = 0; i < task->approaches.count; i++) {
        const struct helds *helds = &task->approaches.at[i].helds;
        size_t first = timeline->blockers.count;

        for (size_t j = 0; j < helds->list.count; j++)
            add_blocker(timeline, &helds->list.at[j]);
        *LIST_ADD(timeline->planning->arena, &timeline->ways) =
            (struct peel_way){timeline->placed[index], first, timeline->blockers.count - first};
        *LIST_ADD(timeline->planning->arena, &timeline->way_of) = i;
    }
}

struct timeline timeline_make(struct planning *planning, struct tasks *tasks)
{
    const struct model *model = planning->model;
    struct timeline timeline = {.planning = planning, .tasks = tasks};
    struct by_box layers = layers_by_box(planning);

    add_acts(&timeline);
    for (size_t i = 0; i < tasks->count; i++) {
        if (model_left_out(model, tasks->at[i].join->key))
            continue;
        add_join_edges(&timeline, i);
        add_needed_edges(&timeline, i);
        add_hole_edges(&timeline, &layers, i, tasks->at[i].join->box_a);
        if (tasks->at[i].join->target == TARGET_BOX)
            add_hole_edges(&timeline, &layers, i, tasks->at[i].join->box_b);
        add_group_edges(&timeline, &layers, i);
        add_ways(&timeline, i);
    }
    for (size_t i = 0; i < tasks->count; i++)
        if (!model_left_out(model, tasks->at[i].join->key))
            add_approaches(&timeline, i);
    for (size_t i = 0; i < model->boxes.count; i++)
        add_layer_edges(&timeline, &layers, i);
    for (size_t i = 0; i < model->facings.count; i++)
        add_facing_edges(&timeline, &layers, i);
    assert(timeline.edges.count == timeline.rules.count);
    assert(timeline.ways.count == timeline.way_of.count);
    return timeline;
}

/* ---- the choice ---- */

static struct peel peel_of(const struct timeline *timeline)
{
    const struct peel_problem problem = {.node_count = timeline->acts.count,
                                         .edges = timeline->edges.at,
                                         .edge_count = timeline->edges.count,
                                         .ways = timeline->ways.at,
                                         .way_count = timeline->ways.count,
                                         .blockers = timeline->blockers.at,
                                         .blocker_count = timeline->blockers.count};

    return peel_make(&problem, timeline->planning->arena);
}

/* An entity is a join with all its acts, a facing or a layer; the move always stays. */
static size_t *entities_of(const struct timeline *timeline)
{
    size_t *entity = ARENA_MANY(timeline->planning->arena, size_t, timeline->acts.count);

    for (size_t i = 0; i < timeline->acts.count; i++) {
        const struct act *act = &timeline->acts.at[i];

        entity[i] = act->kind == ACT_MOVE ? SIZE_MAX : act->kind <= ACT_PLACED ? act->task * 3 : i;
    }
    return entity;
}

/* An act with ways, all of them shut by what is stuck as well. */
static bool is_shut_in(const struct peel *peel, size_t node)
{
    return node != PLAN_NONE && peel->left[node] &&
           peel->first_way[node] < peel->first_way[node + 1] && peel->open[node] == 0;
}

/* Of the joins that are stuck the one that the rest closes in. An optional one before others.
 * PLAN_NONE when the rules alone close a circle. */
static size_t join_to_give_up(const struct timeline *timeline, const struct peel *peel)
{
    size_t found = PLAN_NONE;

    for (size_t i = 0; i < timeline->tasks->count; i++) {
        if (!is_shut_in(peel, timeline_drive(i)) && !is_shut_in(peel, timeline->placed[i]))
            continue;
        if (found == PLAN_NONE ||
            (timeline->tasks->at[i].join->optional && !timeline->tasks->at[found].join->optional))
            found = i;
    }
    return found;
}

/* Rules that close a circle without any way are told by the order of steps, whose rules they are;
 * here the first act of the circle is left out. */
static void leave_out_first(const struct peel *peel, bool *gone)
{
    for (size_t i = 0; i < peel->problem.node_count; i++)
        if (peel->left[i]) {
            gone[i] = true;
            return;
        }
}

static void give_up(struct timeline *timeline, struct peel *peel, bool *gone, size_t told)
{
    const size_t *entity = entities_of(timeline);
    size_t task;

    peel_shrink(peel, entity, timeline->acts.count);
    task = join_to_give_up(timeline, peel);
    if (task == PLAN_NONE) {
        leave_out_first(peel, gone);
        return;
    }
    timeline->tasks->at[task].given_up = true;
    timeline->tasks->at[task].kept_out = !is_shut_in(peel, timeline_drive(task));
    gone[timeline_drive(task)] = true;
    if (timeline->placed[task] != PLAN_NONE)
        gone[timeline->placed[task]] = true;
    if (told < TOLD_AT_MOST && !timeline->planning->plan->trial)
        access_tell_trapped(timeline, peel, &timeline->tasks->at[task]);
}

/* Gives joins up until the rest goes. Each round takes one act out, so there are no more rounds
 * than acts. */
static void make_feasible(struct timeline *timeline, struct peel *peel)
{
    size_t count = timeline->acts.count;
    bool *gone = ARENA_MANY(timeline->planning->arena, bool, count);

    for (size_t told = 0; peel_run(peel) > 0; told++) {
        assert(told < count); /* each round took an act out */
        give_up(timeline, peel, gone, told);
        memcpy(peel->gone, gone, count * sizeof *gone);
    }
}

void access_choose(struct planning *planning, struct tasks *tasks)
{
    struct timeline timeline = timeline_make(planning, tasks);
    struct peel peel = peel_of(&timeline);
    size_t *chosen = ARENA_MANY(planning->arena, size_t, timeline.acts.count);

    make_feasible(&timeline, &peel);
    peel_choose(&peel, chosen);
    for (size_t i = 0; i < tasks->count; i++) {
        struct task *task = &tasks->at[i];
        size_t way = chosen[timeline_drive(i)];

        if (way != SIZE_MAX)
            task->chosen = timeline.way_of.at[way];
        assert(task->chosen < task->way_count || task->way_count == 0);
        if (timeline.placed[i] != PLAN_NONE && chosen[timeline.placed[i]] != SIZE_MAX)
            task->approach = timeline.way_of.at[chosen[timeline.placed[i]]];
    }
}
