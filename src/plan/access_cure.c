/*
 * Ways out for joins that cannot be driven. What might help is listed from what the story names,
 * the least trouble first; each is then tried on a copy of the facts, and only what lets the join
 * be driven, and leaves fewer stops than there are, is offered.
 *
 * A trial runs the passes up to this one, and all of them where that is not hopeless: there are at
 * most TRIALS of them in a plan, and none in a trial.
 */
#include "plan/access_work.h"

#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/slices.h"
#include "plan/tool.h"

#include <assert.h>
#include <inttypes.h>

#define TRIALS 24
#define OFFERED_AT_MOST 6
#define HOLES_AT_MOST 8

struct remedies {
    struct planning *planning;
    struct task *task;
    LIST_OF(struct cure_draft) list;
};

/* ---- making them ---- */

static struct cure_draft *add_remedy(struct remedies *remedies, const char *text)
{
    struct cure_draft *remedy = LIST_ADD(remedies->planning->arena, &remedies->list);

    *remedy = cure_begin(remedies->planning, text);
    return remedy;
}

/* A length as its whole millimetres, rounded down. */
static const char *millimetres(const struct remedies *remedies, int64_t length)
{
    return arena_format(remedies->planning->arena, "%" PRId64 " mm", length / LENGTH_MM);
}

static void turn_head(struct remedies *remedies)
{
    const struct task *task = remedies->task;
    bool to_b = task->join->head == HEAD_A;
    int64_t key = to_b ? task->junction->box_b : task->junction->box_a;
    const struct box *box = MODEL_FIND(remedies->planning->model, box, key);

    if (task->join->head == HEAD_FREE || !box || task->junction->box_b == 0)
        return;
    struct cure_draft *remedy = add_remedy(
        remedies, arena_format(remedies->planning->arena, "Put the heads of join %s into box %s",
                               task->join->name, box->name));
    cure_word(remedy, ENTITY_join, task->join->key, "head", to_b ? "b" : "a");
}

static void change_place(struct remedies *remedies, const struct join *join)
{
    bool to_room = join->place == PLACE_BENCH;

    if (!join_is_to_box(join))
        return;
    struct cure_draft *remedy =
        add_remedy(remedies, arena_format(remedies->planning->arena, "Make join %s %s", join->name,
                                          to_room ? "in the room" : "at the bench"));
    cure_word(remedy, ENTITY_join, join->key, "place", to_room ? "site" : "bench");
}

static void leave_out(struct remedies *remedies, const struct join *join)
{
    if (!join->optional)
        return;
    struct cure_draft *remedy = add_remedy(
        remedies, arena_format(remedies->planning->arena, "Leave out join %s", join->name));
    cure_refer(remedy, ENTITY_left_out, 0, "join", join->key);
}

static void loosen(struct remedies *remedies, int64_t facing)
{
    struct cure_draft *remedy = add_remedy(
        remedies,
        arena_format(remedies->planning->arena, "Let the %s drop in loose, after join %s",
                     access_facing_called(remedies->planning, facing), remedies->task->join->name));

    cure_word(remedy, ENTITY_facing, facing, "loose", "yes");
}

/* A shorter right-angle driver than the one at hand, as long as the room lets it be. */
static void shorten_tool(struct remedies *remedies)
{
    const struct task *task = remedies->task;

    if (task->way_count == 0)
        return;
    const struct way *way = &task->ways[0].way;
    int64_t screw = way->needed - tool_size(remedies->planning, TOOL_STUBBY).length;
    int64_t length = way->room - screw;

    if (way->manner != MANNER_NONE || length < TOOL_SHORTEST)
        return;
    const char *name = arena_format(remedies->planning->arena, "Right-angle driver of %s",
                                    millimetres(remedies, length));
    struct cure_draft *remedy = add_remedy(remedies, arena_format(remedies->planning->arena,
                                                                  "Get a right-angle driver of %s",
                                                                  millimetres(remedies, length)));
    cure_word(remedy, ENTITY_tool, 0, "name", name);
    cure_word(remedy, ENTITY_tool, 0, "kind", "right_angle");
    cure_word(remedy, ENTITY_tool, 0, "length", millimetres(remedies, length));
}

/* As far from a wall as the tool needs, in line or beside it. */
static void stand_off(struct remedies *remedies, int64_t wall)
{
    const struct way *way = &remedies->task->ways[0].way;
    const struct wall *found = MODEL_FIND(remedies->planning->model, wall, wall);
    int64_t in_line = way->room < 0 ? 0 : way->needed - way->room;
    int64_t beside = way->beside_needed - way->beside;
    int64_t gap = found->gap + length_larger(in_line, beside) + LENGTH_MM - 1;
    struct cure_draft *remedy = add_remedy(
        remedies, arena_format(remedies->planning->arena, "Let it stand %s off the %s wall",
                               millimetres(remedies, gap), words_side.at[found->side].name));

    cure_word(remedy, ENTITY_wall, wall, "gap", millimetres(remedies, gap));
}

/* ---- access holes ---- */

static int64_t between(int64_t value, int64_t least, int64_t most)
{
    return value > most ? most : value < least ? least : value;
}

static void cut_hole(struct remedies *remedies, struct cure_draft *remedy,
                     const struct panel *panel, int64_t u, int64_t v)
{
    const int64_t *value = remedies->planning->value;
    int64_t width = value[TRADE_HAND_HOLE_WIDTH];
    int64_t height = value[TRADE_HAND_HOLE_HEIGHT];
    const struct area *area = &panel->area;

    u = between(u - width / 2, area->u0, area->u1 - width);
    v = between(v - height / 2, area->v0, area->v1 - height);
    cure_refer(remedy, ENTITY_cutout, 0, "box", panel->box);
    cure_word(remedy, ENTITY_cutout, 0, "side", words_side.at[panel->side].name);
    cure_word(remedy, ENTITY_cutout, 0, "u", millimetres(remedies, u));
    cure_word(remedy, ENTITY_cutout, 0, "v", millimetres(remedies, v));
    cure_word(remedy, ENTITY_cutout, 0, "width", millimetres(remedies, width + LENGTH_MM - 1));
    cure_word(remedy, ENTITY_cutout, 0, "height", millimetres(remedies, height + LENGTH_MM - 1));
    cure_word(remedy, ENTITY_cutout, 0, "purpose", "access hole");
}

/* A hole for a hand before each head, in one panel. */
static void cut_holes(struct remedies *remedies, const struct panel *panel)
{
    struct task *task = remedies->task;
    struct planning *planning = remedies->planning;
    struct cure_draft *remedy;

    if (task->way_count == 0)
        return;
    task_look(task, &task->ways[0].way);
    if (panel->box != task->box->key || task->junction->point_count > HOLES_AT_MOST)
        return;
    remedy = add_remedy(
        remedies, arena_format(planning->arena, "Cut access holes for join %s in the %s",
                               task->join->name, access_facing_called(planning, panel->facing)));
    for (size_t i = 0; i < task->junction->point_count; i++) {
        struct vector at;
        int64_t u, v;

        if (!task_before_head(task, i, &at))
            continue;
        box_to_face(panel->side, at, &u, &v);
        if (area_holds(&panel->area, u, v))
            cut_hole(remedies, remedy, panel, u, v);
    }
}

static void cut_holes_in(struct remedies *remedies, int64_t facing)
{
    const struct plan *plan = remedies->planning->plan;
    const struct facing *found = MODEL_FIND(remedies->planning->model, facing, facing);
    struct slice panels = plan_panels_of(plan, found->box);

    for (size_t i = panels.from; i < panels.to; i++)
        if (plan->panels.at[i].facing == facing) {
            cut_holes(remedies, &plan->panels.at[i]);
            return;
        }
}

/* ---- all that might help ---- */

static const struct join *join_named(const struct remedies *remedies, const struct held *named)
{
    return named->kind == BLOCKER_JOIN ? MODEL_FIND(remedies->planning->model, join, named->item)
                                       : NULL;
}

static void list_remedies(struct remedies *remedies)
{
    const struct helds *core = &remedies->task->core;

    turn_head(remedies);
    for (size_t i = 0; i < core->list.count; i++)
        if (join_named(remedies, &core->list.at[i]))
            change_place(remedies, join_named(remedies, &core->list.at[i]));
    for (size_t i = 0; i < core->list.count; i++)
        if (core->list.at[i].kind == BLOCKER_FACING)
            loosen(remedies, core->list.at[i].item);
    for (size_t i = 0; i < core->list.count; i++)
        if (join_named(remedies, &core->list.at[i]))
            leave_out(remedies, join_named(remedies, &core->list.at[i]));
    shorten_tool(remedies);
    for (size_t i = 0; i < core->list.count; i++)
        if (core->list.at[i].kind == BLOCKER_WALL)
            stand_off(remedies, core->list.at[i].item);
    for (size_t i = 0; i < core->list.count; i++)
        if (core->list.at[i].kind == BLOCKER_FACING)
            cut_holes_in(remedies, core->list.at[i].item);
}

/* ---- trying them ---- */

static size_t count_stops(const struct plan *plan)
{
    size_t count = 0;

    for (size_t i = 0; i < plan->findings.count; i++)
        count += plan_finding_severity(&plan->findings.at[i]) == SEVERITY_STOP;
    return count;
}

/* Later passes may stop at the join as well: the rehearsal, say, for what cloth does to it. */
static bool stops_at(const struct plan *plan, int64_t join)
{
    for (size_t i = 0; i < plan->findings.count; i++) {
        const struct finding *finding = &plan->findings.at[i];

        if (finding->entity == ENTITY_join && finding->key == join &&
            plan_finding_severity(finding) == SEVERITY_STOP)
            return true;
    }
    return false;
}

static bool helps(const struct remedies *remedies, const struct cure *cure)
{
    const struct plan *tried = pass_try(remedies->planning, cure, false);
    const struct junction *junction;

    if (!tried)
        return false;
    junction = plan_junction(tried, remedies->task->join->key);
    return (junction->reachable || model_left_out(tried->facts, junction->join)) &&
           count_stops(tried) < count_stops(remedies->planning->plan) &&
           !stops_at(pass_try(remedies->planning, cure, true), junction->join);
}

static void offer(struct remedies *remedies, struct finding *finding, size_t *trials)
{
    struct cure *cures = ARENA_MANY(remedies->planning->arena, struct cure, OFFERED_AT_MOST);

    for (size_t i = 0;
         i < remedies->list.count && finding->cure_count < OFFERED_AT_MOST && *trials < TRIALS;
         i++) {
        const struct cure_draft *remedy = &remedies->list.at[i];
        struct cure cure = {
            .text = remedy->text, .edits = remedy->edits.at, .edit_count = remedy->edits.count};

        if (cure.edit_count == 0)
            continue;
        ++*trials;
        if (helps(remedies, &cure))
            cures[finding->cure_count++] = cure;
    }
    finding->cures = cures;
}

void access_add_cures(struct planning *planning, struct tasks *tasks)
{
    size_t trials = 0;

    for (size_t i = 0; i < tasks->count && !planning->plan->trial; i++) {
        struct remedies remedies = {.planning = planning, .task = &tasks->at[i]};

        if (tasks->at[i].finding == PLAN_NONE)
            continue;
        list_remedies(&remedies);
        offer(&remedies, &planning->plan->findings.at[tasks->at[i].finding], &trials);
    }
}
