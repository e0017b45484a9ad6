/*
 * Why a join cannot be driven, told in a few sentences: where its heads lie, what shuts the way to
 * them, and what wants that to be there before. Of what is stuck only the smallest part is told
 * (peel_shrink), so that any one of the things named, taken away, would let the join be driven.
 */
#include "plan/access_time.h"

#include "plan/geometry.h"

#include <assert.h>
#include <string.h>

#define SENTENCES 6

/* ---- words ---- */

static void say(struct task *task, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* Says a sentence once, while there is room for it. */
static void say(struct task *task, const char *format, ...)
{
    struct arena *arena = task->planning->arena;
    va_list arguments;

    va_start(arguments, format);
    const char *sentence = arena_format_list(arena, format, arguments);
    va_end(arguments);
    for (size_t i = 0; i < task->story_count; i++)
        if (strcmp(task->story[i], sentence) == 0)
            return;
    if (!task->story)
        task->story = ARENA_MANY(arena, const char *, SENTENCES);
    if (task->story_count < SENTENCES)
        task->story[task->story_count++] = sentence;
}

static const char *box_called(const struct planning *planning, int64_t key)
{
    const struct box *box = MODEL_FIND(planning->model, box, key);

    return box ? box->name : "";
}

static const char *join_called(const struct planning *planning, int64_t key)
{
    const struct join *join = MODEL_FIND(planning->model, join, key);

    return join ? join->name : "";
}

const char *access_facing_called(const struct planning *planning, int64_t key)
{
    const struct facing *facing = MODEL_FIND(planning->model, facing, key);

    assert(facing);
    return arena_format(planning->arena, "%s %s of %s", words_side.at[facing->side].name,
                        words_facing.at[facing->kind].name, box_called(planning, facing->box));
}

static const char *layer_called(const struct planning *planning, int64_t key)
{
    const struct layer *layer = MODEL_FIND(planning->model, layer, key);
    char name[MODEL_NAME_TEXT];

    assert(layer);
    model_item_name(name, planning->model, ENTITY_layer, key);
    return arena_format(planning->arena, "%s %s", words_side.at[layer->side].name, name);
}

static const struct held *held_join_of(const struct helds *helds, int64_t join)
{
    for (size_t i = 0; i < helds->list.count; i++)
        if (helds->list.at[i].kind == BLOCKER_JOIN && helds->list.at[i].item == join)
            return &helds->list.at[i];
    return NULL;
}

/* What a join sets over some way of a task. */
static const struct held *held_join(const struct task *task, int64_t join)
{
    for (size_t i = 0; i < task->way_count; i++)
        if (held_join_of(&task->ways[i].helds, join))
            return held_join_of(&task->ways[i].helds, join);
    for (size_t i = 0; i < task->approaches.count; i++)
        if (held_join_of(&task->approaches.at[i].helds, join))
            return held_join_of(&task->approaches.at[i].helds, join);
    return NULL;
}

/* ---- where the heads are ---- */

/* The faces that some way comes through, as "its top", "its top or its back". */
static const char *faces_reached(const struct task *task)
{
    const char *text = "";
    bool told[SIDE_COUNT] = {false};

    for (size_t i = 0; i < task->way_count; i++) {
        const struct candidate *candidate = &task->ways[i];

        if (!candidate->open || told[candidate->way.reach_side])
            continue;
        told[candidate->way.reach_side] = true;
        text = arena_format(task->planning->arena, "%s%sits %s", text, *text ? " or " : "",
                            words_side.at[candidate->way.reach_side].name);
    }
    return text;
}

static void say_where(struct task *task)
{
    assert(task->way_count > 0);

    const struct candidate *first = &task->ways[0];
    const char *box = box_called(task->planning, way_box(task->junction, first->way.head_in_b));

    if (!first->way.inside)
        say(task, "The heads of join %s lie on the %s of box %s.", task->join->name,
            words_side.at[first->way.reach_side].name, box);
    else if (first->open)
        say(task, "The heads of join %s lie inside box %s; hand and driver come through %s.",
            task->join->name, box, faces_reached(task));
    else
        say(task, "The heads of join %s lie inside box %s.", task->join->name, box);
}

static void name_core(struct task *task, enum blocker_kind kind, int64_t item)
{
    for (size_t i = 0; i < task->core.list.count; i++)
        if (task->core.list.at[i].kind == kind && task->core.list.at[i].item == item)
            return;
    *LIST_ADD(task->planning->arena, &task->core.list) = (struct held){kind, item, NULL, 0};
}

/* The lines along which the boxes may come together. */
static void say_whence(struct task *task)
{
    const char *sides = "";

    for (size_t i = 0; i < task->approaches.count; i++)
        sides = arena_format(task->planning->arena, "%s%sthe %s", sides, *sides ? " or " : "",
                             words_side.at[task->approaches.at[i].from].name);
    say(task, "Box %s comes to its place beside box %s from %s.",
        box_called(task->planning, task->junction->box_b),
        box_called(task->planning, task->junction->box_a), sides);
}

void access_tell_shut_out(struct task *task)
{
    say(task, "The wood of box %s is in its way on every side.",
        box_called(task->planning, task->junction->box_a));
    say(task, "Join another box first, or make it of parts that come in one by one.");
    name_core(task, BLOCKER_JOIN, task->join->key);
}

/* ---- trapped: what the rest of the order closes ---- */

static void say_blocker(struct task *task, const struct act *act)
{
    const struct planning *planning = task->planning;

    assert(act->kind == ACT_FACING || act->kind == ACT_LAYER || held_join(task, act->key));
    if (act->kind == ACT_FACING)
        say(task, "The %s shuts that way.", access_facing_called(planning, act->key));
    else if (act->kind == ACT_LAYER)
        say(task, "The %s shuts that way.", layer_called(planning, act->key));
    else if (held_join(task, act->key)->sets == 0)
        say(task, "Join %s holds the boxes at the wall, which shuts that way.",
            join_called(planning, act->key));
    else
        say(task, "Join %s sets box %s over that way.", join_called(planning, act->key),
            box_called(planning, held_join(task, act->key)->sets));
}

static void say_blockers(const struct timeline *timeline, const struct peel *peel,
                         struct task *task)
{
    size_t index = (size_t)(task - timeline->tasks->at);
    size_t node = task->kept_out ? timeline->placed[index] : timeline_drive(index);

    assert(index < timeline->tasks->count && node != PLAN_NONE);
    for (size_t i = peel->first_way[node]; i < peel->first_way[node + 1]; i++) {
        const struct peel_way *way = &timeline->ways.at[i];

        for (size_t j = 0; j < way->blocker_count; j++) {
            size_t blocker = timeline->blockers.at[way->first_blocker + j];

            if (peel->left[blocker])
                say_blocker(task, &timeline->acts.at[blocker]);
        }
    }
}

typedef const char *called_fn(const struct planning *planning, int64_t key);

/* What holds two acts apart, by its rule: %1$s comes first, %2$s waits. */
static const struct {
    const char *rule, *sentence;
    called_fn *first, *waiting;
} edge_sentences[] = {
    {RULE_NEEDED_WOOD, "The %1$s is wood that join %2$s needs: it is fixed before.",
     access_facing_called, join_called},
    {RULE_HOLES_FIRST, "The holes of join %1$s are drilled before the %2$s goes on.", join_called,
     layer_called},
    {RULE_UNDER, "The %1$s lies under the %2$s.", layer_called, layer_called},
    {RULE_PANEL_FIRST, "The %2$s lies on the %1$s.", access_facing_called, layer_called},
    {RULE_GROUP, "The %2$s covers boxes that join %1$s puts together.", join_called, layer_called},
    {RULE_TRAPPED_EDGE,
     "The %1$s lies between the boxes of join %2$s: it is put on before they meet.", layer_called,
     join_called},
};

static void say_edge(const struct timeline *timeline, struct task *task, size_t edge)
{
    assert(edge < timeline->edges.count);

    const struct planning *planning = timeline->planning;
    const struct act *before = &timeline->acts.at[timeline->edges.at[edge].before];
    const struct act *after = &timeline->acts.at[timeline->edges.at[edge].after];

    if (before->kind == ACT_MOVE)
        say(task, "Join %s is made in the room.", join_called(planning, after->key));
    else if (after->kind == ACT_MOVE)
        say(task, "Join %s is made at the bench, before that.", join_called(planning, before->key));
    else
        for (size_t i = 0; i < sizeof edge_sentences / sizeof *edge_sentences; i++)
            if (strcmp(timeline->rules.at[edge], edge_sentences[i].rule) == 0)
                say(task, edge_sentences[i].sentence,
                    edge_sentences[i].first(planning, before->key),
                    edge_sentences[i].waiting(planning, after->key));
}

void access_tell_trapped(const struct timeline *timeline, const struct peel *peel,
                         struct task *task)
{
    for (size_t i = 0; i < timeline->acts.count; i++) {
        const struct act *act = &timeline->acts.at[i];

        if (peel->left[i] && act->kind != ACT_MOVE)
            name_core(task,
                      act->kind == ACT_FACING  ? BLOCKER_FACING
                      : act->kind == ACT_LAYER ? BLOCKER_LAYER
                                               : BLOCKER_JOIN,
                      act->key);
    }
    if (task->kept_out)
        say_whence(task);
    else
        say_where(task);
    say_blockers(timeline, peel, task);
    for (size_t i = 0; i < timeline->edges.count; i++)
        if (peel->left[timeline->edges.at[i].before] && peel->left[timeline->edges.at[i].after])
            say_edge(timeline, task, i);
}

/* ---- shut: no tool or no hand comes in, whatever the order ---- */

static const char *length_text(const struct task *task, int64_t length)
{
    char text[QUANTITY_TEXT];

    quantity_print_unit(text, QUANTITY_LENGTH, model_units(task->planning->model), length);
    return arena_text(task->planning->arena, text);
}

/* "Member C3", "The left wall" */
static const char *blocker_called(const struct task *task, const struct blocker *blocker)
{
    const struct planning *planning = task->planning;

    if (blocker->kind == BLOCKER_MEMBER)
        return arena_format(planning->arena, "Member %s",
                            planning->plan->members.at[blocker->item].label);
    return arena_format(planning->arena, "The %s wall",
                        words_side.at[MODEL_FIND(planning->model, wall, blocker->item)->side].name);
}

static bool is_beside(const struct way *way, const struct blocker *blocker)
{
    bool stands = blocker->kind == BLOCKER_MEMBER || blocker->kind == BLOCKER_WALL;

    return stands && (way->room < 0 || way->room >= way->needed) &&
           way->beside < way->beside_needed;
}

static void say_shut(struct task *task, const struct way *way, const struct blocker *blocker)
{
    if (is_beside(way, blocker))
        say(task, "%s stands %s beside them; the tool needs %s.", blocker_called(task, blocker),
            length_text(task, way->beside), length_text(task, way->beside_needed));
    else if (blocker->kind == BLOCKER_MEMBER || blocker->kind == BLOCKER_WALL)
        say(task, "%s stands %s before them; the shortest tool needs %s.",
            blocker_called(task, blocker), length_text(task, way->room),
            length_text(task, way->needed));
    else if (blocker->kind == BLOCKER_FLOOR)
        say(task, "The floor lies before them, with no room for a tool.");
    else if (blocker->kind == BLOCKER_LAYER)
        say(task, "The %s is sewn all round and cannot be opened over them.",
            layer_called(task->planning, blocker->item));
    else
        say(task, "The %s, fixed at the bench, keeps hand and driver out.",
            access_facing_called(task->planning, blocker->item));
    if (blocker->kind == BLOCKER_FACING || blocker->kind == BLOCKER_WALL)
        name_core(task, blocker->kind, blocker->item);
}

void access_tell_shut(struct task *task)
{
    for (size_t i = 0; i < task->way_count; i++) {
        const struct way *way = &task->ways[i].way;
        struct blockers shut = {0};

        way_find_shut(&task->scenes[way->head_in_b], &shut);
        if (i == 0)
            say_where(task);
        else
            say(task, "In box %s there is no way either.",
                box_called(task->planning, way_box(task->junction, way->head_in_b)));
        for (size_t j = 0; j < shut.blockers.count; j++)
            say_shut(task, way, &shut.blockers.at[j]);
    }
    name_core(task, BLOCKER_JOIN, task->join->key);
}
