/*
 * Wood is compared as blocks along the room's axes where nothing leans, else as blocks that lean. A
 * driver counts as a bar with square corners: a little more than it takes.
 *
 * Joins make a graph of boxes, with the room as one more end. Whatever hangs together with the
 * boxes of a join without it may stand there when they come together; to keep a box away it is
 * enough, and needed, that of each chain that leads to it some join is not made yet. The last of
 * each chain is taken: the joins of that box itself.
 */
#include "plan/vicinity.h"

#include "plan/block.h"
#include "plan/geometry.h"
#include "plan/slices.h"
#include "plan/stance.h"

#include <assert.h>

/* ---- the graph ---- */

static size_t room_of(const struct vicinity *vicinity)
{
    return vicinity->planning->model->boxes.count;
}

static void add_tie(struct vicinity *vicinity, const struct join *join)
{
    const struct model *model = vicinity->planning->model;
    size_t from = model_index(model, ENTITY_box, join->box_a);
    size_t to = join->target == TARGET_BOX ? model_index(model, ENTITY_box, join->box_b)
                                           : room_of(vicinity);
    bool to_room = join->target == TARGET_WALL || join->target == TARGET_FLOOR;

    if (from == room_of(vicinity) || (to == room_of(vicinity) && !to_room) ||
        model_left_out(model, join->key))
        return;
    *LIST_ADD(vicinity->planning->arena, &vicinity->ties) = (struct tie){join->key, from, to};
}

static void sort_by_ends(struct vicinity *vicinity)
{
    size_t ends = room_of(vicinity) + 1;
    size_t *next = ARENA_MANY(vicinity->planning->arena, size_t, ends);

    vicinity->first = ARENA_MANY(vicinity->planning->arena, size_t, ends + 1);
    vicinity->of = ARENA_MANY(vicinity->planning->arena, size_t, 2 * vicinity->ties.count);
    for (size_t i = 0; i < vicinity->ties.count; i++) {
        vicinity->first[vicinity->ties.at[i].from + 1]++;
        vicinity->first[vicinity->ties.at[i].to + 1]++;
    }
    for (size_t i = 0; i < ends; i++) {
        vicinity->first[i + 1] += vicinity->first[i];
        next[i] = vicinity->first[i];
    }
    for (size_t i = 0; i < vicinity->ties.count; i++) {
        vicinity->of[next[vicinity->ties.at[i].from]++] = i;
        vicinity->of[next[vicinity->ties.at[i].to]++] = i;
    }
    assert(vicinity->first[ends] == 2 * vicinity->ties.count);
}

struct vicinity vicinity_make(struct planning *planning)
{
    struct vicinity vicinity = {.planning = planning};

    for (size_t i = 0; i < planning->model->joins.count; i++)
        add_tie(&vicinity, &planning->model->joins.at[i]);
    sort_by_ends(&vicinity);
    vicinity.whole = stance_whole_piece(planning->plan);
    vicinity.walk = ARENA_NEW(planning->arena, struct vicinity_walk);
    vicinity.walk->reached = ARENA_MANY(planning->arena, size_t, room_of(&vicinity) + 1);
    vicinity.walk->waiting = ARENA_MANY(planning->arena, size_t, room_of(&vicinity) + 1);
    vicinity.wood = ARENA_MANY(planning->arena, struct standing_wood, planning->model->boxes.count);
    return vicinity;
}

/* ---- what stands there ---- */

static void add_wood(const struct planning *planning, struct standing_wood *wood,
                     const struct box *box, const struct solid *solid)
{
    const struct pose *pose = plan_pose(planning->plan, box->key);

    *LIST_ADD(planning->arena, &wood->room) = pose_block(pose, box, solid);
    *LIST_ADD(planning->arena, &wood->own) = *solid;
}

/* Loose panels are lifted off. */
const struct standing_wood *vicinity_wood(const struct vicinity *vicinity, size_t index)
{
    assert(index < vicinity->planning->model->boxes.count);

    const struct planning *planning = vicinity->planning;
    const struct plan *plan = planning->plan;
    const struct box *box = &planning->model->boxes.at[index];
    struct standing_wood *wood = &vicinity->wood[index];
    struct slice members = plan_members_of(plan, box->key);
    struct slice panels = plan_panels_of(plan, box->key);

    if (wood->known)
        return wood;
    wood->known = true;
    for (size_t i = members.from; i < members.to; i++)
        add_wood(planning, wood, box, &plan->members.at[i].solid);
    for (size_t i = panels.from; i < panels.to; i++)
        if (!plan->panels.at[i].loose)
            add_wood(planning, wood, box, &plan->panels.at[i].solid);
    return wood;
}

/* The block that is looked at: as it lies in its box, and as the room has it. */
struct region {
    const struct pose *pose;
    const struct box *box;
    const struct solid *own;
    struct solid room;
};

static bool leaning_block_meets(const struct region *region, const struct pose *pose,
                                const struct box *box, const struct solid *solid)
{
    struct block looked_at = block_of_box(region->pose, region->box, region->own);
    struct block standing = block_of_box(pose, box, solid);

    return blocks_depth(&standing, &looked_at) > 0;
}

static bool stands_in(const struct vicinity *vicinity, const struct region *region, size_t index)
{
    assert(index < vicinity->planning->model->boxes.count);

    const struct box *box = &vicinity->planning->model->boxes.at[index];
    const struct pose *pose = &vicinity->planning->plan->poses.at[index];
    const struct standing_wood *wood;

    if (!solids_meet(&pose->room, &region->room))
        return false;
    wood = vicinity_wood(vicinity, index);
    for (size_t i = 0; i < wood->room.count; i++) {
        if (!solids_meet(&wood->room.at[i], &region->room))
            continue;
        if (region->pose->lean == 0 && pose->lean == 0)
            return true;
        if (leaning_block_meets(region, pose, box, &wood->own.at[i]))
            return true;
    }
    return false;
}

int64_t vicinity_wall(const struct vicinity *vicinity, const struct wall *wall)
{
    int axis = side_axis(wall->side);

    return side_sign(wall->side) > 0 ? vector_along(vicinity->whole.high, axis) + wall->gap
                                     : vector_along(vicinity->whole.low, axis) - wall->gap;
}

static bool wall_stands_in(const struct vicinity *vicinity, const struct region *region)
{
    const struct model *model = vicinity->planning->model;

    for (size_t i = 0; i < model->walls.count; i++) {
        const struct wall *wall = &model->walls.at[i];
        int axis = side_axis(wall->side);
        int64_t at = vicinity_wall(vicinity, wall);

        if (side_sign(wall->side) > 0 ? vector_along(region->room.high, axis) > at
                                      : vector_along(region->room.low, axis) < at)
            return true;
    }
    return false;
}

static bool stands_in_some(const struct vicinity *vicinity, const struct region *regions,
                           size_t count, size_t index)
{
    for (size_t i = 0; i < count; i++)
        if (stands_in(vicinity, &regions[i], index))
            return true;
    return false;
}

struct bystanders vicinity_look(const struct vicinity *vicinity, const struct junction *junction,
                                const struct box *box, const struct solid *blocks, size_t count)
{
    const struct model *model = vicinity->planning->model;
    const struct plan *plan = vicinity->planning->plan;
    const struct pose *pose = plan_pose(plan, box->key);
    struct region *regions = ARENA_MANY(vicinity->planning->arena, struct region, count);
    struct bystanders bystanders = {0};
    struct solid all = {{0}, {0}};

    for (size_t i = 0; i < count; i++) {
        regions[i] = (struct region){pose, box, &blocks[i], pose_block(pose, box, &blocks[i])};
        all = i == 0 ? regions[i].room : solid_round(&all, &regions[i].room);
        bystanders.wall = bystanders.wall || wall_stands_in(vicinity, &regions[i]);
    }
    for (size_t i = 0; i < model->boxes.count; i++) {
        int64_t other = model->boxes.at[i].key;

        if (other != junction->box_a && other != junction->box_b &&
            solids_meet(&plan->poses.at[i].room, &all) &&
            stands_in_some(vicinity, regions, count, i))
            *LIST_ADD(vicinity->planning->arena, &bystanders.boxes) = other;
    }
    return bystanders;
}

/* ---- what sets it there ---- */

static void reach(struct vicinity_walk *walk, size_t end)
{
    if (walk->reached[end] == walk->round)
        return;
    walk->reached[end] = walk->round;
    walk->waiting[walk->count++] = end;
}

static bool was_reached(const struct vicinity *vicinity, size_t end)
{
    return vicinity->walk->reached[end] == vicinity->walk->round;
}

static size_t other_end(const struct tie *tie, size_t end)
{
    return tie->from == end ? tie->to : tie->from;
}

/* From what was reached, along all ties but one join's, and not past the end `without`. */
static void go_on(const struct vicinity *vicinity, int64_t but, size_t without)
{
    struct vicinity_walk *walk = vicinity->walk;

    while (walk->count > 0) {
        size_t end = walk->waiting[--walk->count];

        for (size_t i = vicinity->first[end]; i < vicinity->first[end + 1]; i++) {
            const struct tie *tie = &vicinity->ties.at[vicinity->of[i]];
            size_t other = other_end(tie, end);

            if (tie->join != but && other != without)
                reach(walk, other);
        }
    }
}

/* From both ends of a join. */
static void walk_from(const struct vicinity *vicinity, const struct junction *junction,
                      size_t without)
{
    const struct model *model = vicinity->planning->model;
    struct vicinity_walk *walk = vicinity->walk;

    assert(walk->count == 0);
    walk->round++;
    reach(walk, model_index(model, ENTITY_box, junction->box_a));
    reach(walk,
          junction->box_b ? model_index(model, ENTITY_box, junction->box_b) : room_of(vicinity));
    go_on(vicinity, junction->join, without);
}

bool vicinity_hang(const struct vicinity *vicinity, const struct junction *junction,
                   enum hanging *hanging)
{
    const struct model *model = vicinity->planning->model;
    struct vicinity_walk *walk = vicinity->walk;
    const int64_t ends[] = {junction->box_a, junction->box_b};

    for (size_t i = 0; i < room_of(vicinity); i++)
        hanging[i] = HANGS_ON_NEITHER;
    for (size_t of_b = 0; of_b < 2; of_b++) {
        walk->round++;
        reach(walk, model_index(model, ENTITY_box, ends[of_b]));
        go_on(vicinity, junction->join, SIZE_MAX);
        for (size_t i = 0; i < room_of(vicinity); i++) {
            if (was_reached(vicinity, i) && hanging[i] == HANGS_ON_A)
                return false;
            if (was_reached(vicinity, i))
                hanging[i] = of_b ? HANGS_ON_B : HANGS_ON_A;
        }
    }
    return true;
}

void vicinity_joins_to(const struct vicinity *vicinity, const struct junction *junction,
                       int64_t box, vicinity_fn *each, void *context)
{
    size_t end = model_index(vicinity->planning->model, ENTITY_box, box);

    walk_from(vicinity, junction, end);
    assert(!was_reached(vicinity, end));
    for (size_t i = vicinity->first[end]; i < vicinity->first[end + 1]; i++) {
        const struct tie *tie = &vicinity->ties.at[vicinity->of[i]];

        if (was_reached(vicinity, other_end(tie, end)))
            each(context, tie->join);
    }
}

void vicinity_joins_at_wall(const struct vicinity *vicinity, const struct junction *junction,
                            vicinity_fn *each, void *context)
{
    size_t room = room_of(vicinity);

    walk_from(vicinity, junction, room);
    for (size_t i = vicinity->first[room]; i < vicinity->first[room + 1]; i++) {
        const struct tie *tie = &vicinity->ties.at[vicinity->of[i]];

        if (tie->join != junction->join && was_reached(vicinity, other_end(tie, room)))
            each(context, tie->join);
    }
}
