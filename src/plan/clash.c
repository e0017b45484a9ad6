/*
 * Boxes that stand in each other or in what is there already, and boxes that hang in the air.
 *
 * Outlines are swept along the room's longest way in the order of where they begin; what has ended
 * before the next one begins is dropped, so that only neighbours are compared: O(n log n) and the
 * pairs that lie beside each other.
 *
 * 1  Two boxes overlap when wood of the one stands in wood of the other. A box in the hollow of
 *    another one does not; a box whose wood is not known counts as whole. Touching is fine.
 * 2  What is told is how far one would have to be moved to be clear of the other's outline.
 * 3  A box stands on the floor, on whatever it is joined to there, or on a box that does, through a
 *    join whose faces meet and that is not left out.
 */
#include "plan/pass.h"

#include "plan/block.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/pose.h"
#include "plan/slices.h"
#include "plan/stance.h"

#include <assert.h>
#include <stdlib.h>

/* A box this much above the floor still stands on it: glides, rounding. */
#define ON_FLOOR (6 * LENGTH_MM)

/* One outline of the sweep: of a box, or of a given object. */
struct outline {
    int64_t box; /* 0: an object */
    int64_t key;
    int64_t with; /* that it has a place beside */
    struct solid room;
    struct block block;
};

struct clash_sweep {
    struct planning *planning;
    int axis;
    LIST_OF(struct outline) outlines;
};

/* ---- wood ---- */

struct wood_list {
    LIST_OF(struct block) blocks;
};

static struct wood_list wood_of(const struct planning *planning, const struct outline *outline)
{
    const struct plan *plan = planning->plan;
    const struct pose *pose = plan_pose(plan, outline->box);
    const struct box *box = MODEL_FIND(planning->model, box, outline->box);
    struct slice members = plan_members_of(plan, outline->box);
    struct slice panels = plan_panels_of(plan, outline->box);
    struct wood_list wood = {0};

    for (size_t i = members.from; i < members.to; i++)
        *LIST_ADD(planning->arena, &wood.blocks) =
            block_of_box(pose, box, &plan->members.at[i].solid);
    for (size_t i = panels.from; i < panels.to; i++)
        *LIST_ADD(planning->arena, &wood.blocks) =
            block_of_box(pose, box, &plan->panels.at[i].solid);
    if (wood.blocks.count == 0)
        *LIST_ADD(planning->arena, &wood.blocks) = outline->block;
    return wood;
}

static bool wood_meets(const struct planning *planning, const struct outline *a,
                       const struct outline *b)
{
    struct wood_list of_a = wood_of(planning, a);
    struct wood_list of_b = wood_of(planning, b);

    for (size_t i = 0; i < of_a.blocks.count; i++)
        for (size_t k = 0; k < of_b.blocks.count; k++)
            if (blocks_depth(&of_a.blocks.at[i], &of_b.blocks.at[k]) > 0)
                return true;
    return false;
}

/* ---- pairs ---- */

/* A socket behind a box that has a hole cut for anything is taken to lie in it. */
static bool is_cut_out(const struct planning *planning, const struct outline *box,
                       const struct outline *object)
{
    const struct object *given = MODEL_FIND(planning->model, object, object->key);

    if (object->box || given->kind != OBJECT_SOCKET)
        return false;
    for (size_t i = 0; i < planning->model->cutouts.count; i++)
        if (planning->model->cutouts.at[i].box == box->box)
            return true;
    return false;
}

/* "C"; "mattress queen" */
static const char *name_of(const struct planning *planning, const struct outline *outline)
{
    const struct object *object;

    if (outline->box)
        return MODEL_FIND(planning->model, box, outline->box)->name;
    object = MODEL_FIND(planning->model, object, outline->key);
    assert(object);
    return arena_format(planning->arena, "%s%s%s", words_object.at[object->kind].name,
                        *object->name ? " " : "", object->name);
}

static void tell_overlap(struct planning *planning, const struct outline *a,
                         const struct outline *b, int64_t depth)
{
    enum finding_kind kind = b->box ? FINDING_BOXES_OVERLAP : FINDING_OBJECT_IN_BOX;
    struct finding *finding = finding_add(planning, kind, ENTITY_box, a->key);

    argument_text(finding, 0, name_of(planning, b));
    argument_length(finding, 1, depth);
}

static void compare_pair(struct planning *planning, const struct outline *a,
                         const struct outline *b)
{
    bool swapped = !a->box || (b->box && b->box < a->box);
    const struct outline *first = swapped ? b : a;
    const struct outline *second = swapped ? a : b;
    int64_t depth;

    if (!first->box || first->with != second->with || !solids_meet(&a->room, &b->room))
        return;
    depth = blocks_depth(&a->block, &b->block);
    if (depth > 0 && !is_cut_out(planning, first, second) && wood_meets(planning, first, second))
        tell_overlap(planning, first, second, depth);
}

/* ---- the sweep ---- */

static void add_boxes(struct clash_sweep *sweep)
{
    const struct planning *planning = sweep->planning;

    for (size_t i = 0; i < planning->model->boxes.count; i++) {
        const struct box *box = &planning->model->boxes.at[i];
        const struct pose *pose = &planning->plan->poses.at[i];
        struct solid whole = {{0, 0, 0}, box_size(box)};

        *LIST_ADD(planning->arena, &sweep->outlines) = (struct outline){
            box->key, box->key, pose->with, pose->room, block_of_box(pose, box, &whole)};
    }
}

static void add_objects(struct clash_sweep *sweep)
{
    const struct planning *planning = sweep->planning;

    for (size_t i = 0; i < planning->model->objects.count; i++) {
        const struct object *object = &planning->model->objects.at[i];
        struct solid solid = stance_object(planning->plan, object);

        if (!solid_empty(&solid))
            *LIST_ADD(planning->arena, &sweep->outlines) = (struct outline){
                0, object->key, planning->plan->poses.at[0].with, solid, block_in_room(&solid)};
    }
}

/* The axis along which the outlines lie furthest apart. */
static int longest_axis(const struct clash_sweep *sweep)
{
    int64_t longest = -1;
    int best = AXIS_X;

    for (int axis = 0; axis < AXIS_COUNT; axis++) {
        int64_t low = INT64_MAX;
        int64_t high = INT64_MIN;

        for (size_t i = 0; i < sweep->outlines.count; i++) {
            int64_t at = vector_along(sweep->outlines.at[i].room.low, axis);

            low = length_smaller(low, at);
            high = length_larger(high, at);
        }
        if (high - low > longest) {
            longest = high - low;
            best = axis;
        }
    }
    return best;
}

struct beginning {
    int64_t at;
    size_t outline;
};

static int compare_beginnings(const void *left, const void *right)
{
    const struct beginning *a = left;
    const struct beginning *b = right;

    if (a->at != b->at)
        return a->at < b->at ? -1 : 1;
    return (a->outline > b->outline) - (a->outline < b->outline);
}

/* Drops from those under way whatever has ended. */
static size_t keep_under_way(const struct clash_sweep *sweep, size_t *under_way, size_t count,
                             int64_t at)
{
    size_t kept = 0;

    for (size_t i = 0; i < count; i++)
        if (vector_along(sweep->outlines.at[under_way[i]].room.high, sweep->axis) > at)
            under_way[kept++] = under_way[i];
    return kept;
}

static void run_sweep(struct clash_sweep *sweep)
{
    size_t count = sweep->outlines.count;
    struct beginning *beginnings = ARENA_MANY(sweep->planning->arena, struct beginning, count);
    size_t *under_way = ARENA_MANY(sweep->planning->arena, size_t, count);
    size_t ways = 0;

    sweep->axis = longest_axis(sweep);
    for (size_t i = 0; i < count; i++)
        beginnings[i] =
            (struct beginning){vector_along(sweep->outlines.at[i].room.low, sweep->axis), i};
    qsort(beginnings, count, sizeof *beginnings, compare_beginnings);
    for (size_t i = 0; i < count; i++) {
        ways = keep_under_way(sweep, under_way, ways, beginnings[i].at);
        for (size_t k = 0; k < ways; k++)
            compare_pair(sweep->planning, &sweep->outlines.at[under_way[k]],
                         &sweep->outlines.at[beginnings[i].outline]);
        under_way[ways++] = beginnings[i].outline;
        assert(ways <= count);
    }
}

static void find_overlaps(struct planning *planning)
{
    struct clash_sweep sweep = {.planning = planning};

    add_boxes(&sweep);
    add_objects(&sweep);
    run_sweep(&sweep);
}

/* ---- what floats ---- */

/* Boxes that hang together, each with the index of one of them: the root of its tree. */
static size_t root_of(size_t *parents, size_t box)
{
    while (parents[box] != box) {
        parents[box] = parents[parents[box]];
        box = parents[box];
    }
    return box;
}

static void hang_together(const struct planning *planning, size_t *parents)
{
    const struct model *model = planning->model;

    assert(planning->plan->junctions.count == model->joins.count);
    for (size_t i = 0; i < model->joins.count; i++) {
        const struct join *join = &model->joins.at[i];

        if (!stance_joins_boxes(join) || area_empty(&planning->plan->junctions.at[i].zone) ||
            model_left_out(model, join->key))
            continue;
        parents[root_of(parents, model_index(model, ENTITY_box, join->box_a))] =
            root_of(parents, model_index(model, ENTITY_box, join->box_b));
    }
}

static void tell_floating(struct planning *planning, const size_t *parents, const bool *stands)
{
    for (size_t i = 0; i < planning->model->boxes.count; i++) {
        const struct pose *pose = &planning->plan->poses.at[i];

        if (!stands[parents[i]])
            argument_length(finding_add(planning, FINDING_BOX_FLOATS, ENTITY_box, pose->box), 0,
                            pose->room.low.z - pose->floor);
    }
}

static void find_floating(struct planning *planning)
{
    const struct model *model = planning->model;
    size_t count = model->boxes.count;
    size_t *parents = ARENA_MANY(planning->arena, size_t, count);
    bool *stands = ARENA_MANY(planning->arena, bool, count);

    for (size_t i = 0; i < count; i++)
        parents[i] = i;
    hang_together(planning, parents);
    for (size_t i = 0; i < count; i++) {
        const struct pose *pose = &planning->plan->poses.at[i];

        parents[i] = root_of(parents, i);
        stands[parents[i]] |= pose->room.low.z - pose->floor <= ON_FLOOR;
    }
    for (size_t i = 0; i < model->joins.count; i++)
        if (model->joins.at[i].target != TARGET_BOX &&
            !model_left_out(model, model->joins.at[i].key))
            stands[parents[model_index(model, ENTITY_box, model->joins.at[i].box_a)]] = true;
    tell_floating(planning, parents, stands);
}

void pass_clash(struct planning *planning)
{
    if (planning->model->boxes.count == 0)
        return;
    find_overlaps(planning);
    find_floating(planning);
}
