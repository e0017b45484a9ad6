/*
 * Where each box stands in the room.
 *
 * The first box stands at the room's corner, unturned; every join of two boxes whose one box has a
 * place gives the other one its own, until no join does. What is left begins anew with its first
 * box. From a box its joins are walked in the order of their keys, and boxes in the order in which
 * they got their places, so the outcome depends on the facts alone. O(boxes + joins).
 *
 * 1  A box leans as its own facts say, whatever it is joined to: a join turns it by quarters and
 *    moves it, no more. Upright faces that meet leave one turn; top on bottom keeps the turn.
 * 2  The corner of the second box that begins it on the first box's face, as it would stand if it
 *    did not lean, lies at the join's offsets, measured along the first box's own edges.
 * 3  A place that was given stays. Joins that want another one are told in `stance`.
 */
#include "plan/padding.h"

#include "plan/geometry.h"
#include "plan/pose.h"
#include "plan/stance.h"

#include <assert.h>

/* Faces that are more askew than this were never meant to look at each other. */
#define ASKEW_MOST 45000

/* ---- one join ---- */

static struct vector size_turned(const struct box *box, int turn)
{
    struct vector size = box_size(box);

    return turn % 2 ? (struct vector){size.y, size.x, size.z} : size;
}

/* The turn of box b in the axes of box a that makes the two faces look at each other, or nearly; -1
 * when none does. */
static int turn_between(const struct join *join, const struct box *box_a, const struct box *box_b)
{
    struct pose a = pose_begin(box_a, 0);
    int64_t least = ASKEW_MOST + 1;
    int best = -1;

    for (int turn = 0; turn < 4; turn++) {
        struct pose b = pose_begin(box_b, turn);
        int64_t askew = pose_askew(&a, join->side_a, &b, join->side_b);

        if (askew < least) {
            least = askew;
            best = turn;
        }
    }
    return best;
}

/* Where box b begins in the axes of box a. */
static struct vector begin_of_b(const struct join *join, const struct box *box_a,
                                const struct box *box_b, int turn)
{
    int axis = side_axis(join->side_a);
    struct vector low = {0};

    vector_set(&low, side_u_axis(join->side_a), join->offset_u);
    vector_set(&low, side_v_axis(join->side_a), join->offset_v);
    vector_set(&low, axis,
               side_sign(join->side_a) > 0 ? vector_along(box_size(box_a), axis)
                                           : -vector_along(size_turned(box_b, turn), axis));
    return low;
}

/* The corner of a box, in its own axes, that is the low one when it is turned and does not lean. */
static struct vector corner_that_begins(const struct box *box, int turn)
{
    struct pose upright = {.turn = turn};

    return pose_to_box(&upright, box, (struct vector){0, 0, 0});
}

/* Box b as it stands when box a has the pose given. */
static struct pose pose_beside(const struct join *join, const struct pose *a,
                               const struct box *box_a, const struct box *box_b, int turn)
{
    struct pose b = pose_begin(box_b, (a->turn + turn) % 4);

    pose_lay(&b, box_b, corner_that_begins(box_b, turn), a, box_a,
             begin_of_b(join, box_a, box_b, turn));
    return b;
}

/* Box a as it has to stand so that box b has the pose given. */
static struct pose pose_before(const struct join *join, const struct pose *b,
                               const struct box *box_a, const struct box *box_b, int turn)
{
    struct pose a = pose_begin(box_a, (b->turn + 4 - turn) % 4);
    struct pose from_corner = pose_beside(join, &a, box_a, box_b, turn);

    assert(from_corner.turn == b->turn);
    pose_shift(&a, &from_corner, b);
    return a;
}

bool stance_wanted(const struct planning *planning, const struct join *join,
                   struct pose *ret_wanted)
{
    const struct pose *a = plan_pose(planning->plan, join->box_a);
    const struct box *box_a = MODEL_FIND(planning->model, box, join->box_a);
    const struct box *box_b = MODEL_FIND(planning->model, box, join->box_b);
    int turn = turn_between(join, box_a, box_b);

    if (turn < 0)
        return false;
    *ret_wanted = pose_beside(join, a, box_a, box_b, turn);
    return true;
}

/* ---- from box to box ---- */

/* The joins of every box, in the order of their keys: those of box i lie at from[i] to from[i + 1].
 */
struct ends {
    size_t *from;
    size_t *joins;
};

bool stance_joins_boxes(const struct join *join)
{
    return join->target == TARGET_BOX && join->box_b && join->box_b != join->box_a;
}

static void count_ends(const struct model *model, size_t *from)
{
    for (size_t i = 0; i < model->joins.count; i++) {
        const struct join *join = &model->joins.at[i];

        if (!stance_joins_boxes(join))
            continue;
        from[model_index(model, ENTITY_box, join->box_a) + 1]++;
        from[model_index(model, ENTITY_box, join->box_b) + 1]++;
    }
    for (size_t i = 0; i < model->boxes.count; i++)
        from[i + 1] += from[i];
}

static struct ends find_ends(const struct planning *planning)
{
    const struct model *model = planning->model;
    size_t count = model->boxes.count;
    struct ends ends = {ARENA_MANY(planning->arena, size_t, count + 1),
                        ARENA_MANY(planning->arena, size_t, 2 * model->joins.count + 1)};
    size_t *next = ARENA_MANY(planning->arena, size_t, count + 1);

    count_ends(model, ends.from);
    for (size_t i = 0; i < count; i++)
        next[i] = ends.from[i];
    for (size_t i = 0; i < model->joins.count; i++) {
        const struct join *join = &model->joins.at[i];

        if (!stance_joins_boxes(join))
            continue;
        ends.joins[next[model_index(model, ENTITY_box, join->box_a)]++] = i;
        ends.joins[next[model_index(model, ENTITY_box, join->box_b)]++] = i;
    }
    assert(ends.from[count] <= 2 * model->joins.count);
    return ends;
}

struct walk {
    struct planning *planning;
    struct ends ends;
    size_t *queue;
    size_t queued;
};

/* The box at the other end of a join gets its place, unless it has one or the faces cannot meet. */
static void place_by_join(struct walk *walk, const struct join *join, size_t from)
{
    assert(from < walk->planning->plan->poses.count);

    const struct model *model = walk->planning->model;
    struct pose *poses = walk->planning->plan->poses.at;
    size_t index_a = model_index(model, ENTITY_box, join->box_a);
    size_t index_b = model_index(model, ENTITY_box, join->box_b);
    size_t to = index_a == from ? index_b : index_a;
    const struct box *box_a = &model->boxes.at[index_a];
    const struct box *box_b = &model->boxes.at[index_b];
    int turn = turn_between(join, box_a, box_b);

    assert(index_a == from || index_b == from);
    if (turn < 0 || poses[to].placed)
        return;
    poses[to] = to == index_b ? pose_beside(join, &poses[from], box_a, box_b, turn)
                              : pose_before(join, &poses[from], box_a, box_b, turn);
    poses[to].by = join->key;
    poses[to].with = poses[from].with;
    walk->queue[walk->queued++] = to;
}

static void walk_from(struct walk *walk, size_t first)
{
    const struct model *model = walk->planning->model;
    struct pose *poses = walk->planning->plan->poses.at;

    assert(first < model->boxes.count);
    poses[first] = pose_begin(&model->boxes.at[first], 0);
    poses[first].with = poses[first].box;
    walk->queued = 0;
    walk->queue[walk->queued++] = first;
    for (size_t done = 0; done < walk->queued; done++) {
        size_t box = walk->queue[done];
        assert(poses[box].placed && poses[box].with == poses[first].box);

        for (size_t i = walk->ends.from[box]; i < walk->ends.from[box + 1]; i++)
            place_by_join(walk, &model->joins.at[walk->ends.joins[i]], box);
    }
    if (walk->queued == 1 && first > 0)
        poses[first].placed = false;
}

static void place_boxes(struct planning *planning)
{
    const struct model *model = planning->model;
    struct walk walk = {planning, find_ends(planning),
                        ARENA_MANY(planning->arena, size_t, model->boxes.count + 1), 0};

    for (size_t i = 0; i < model->boxes.count; i++)
        LIST_ADD(planning->arena, &planning->plan->poses)->box = model->boxes.at[i].key;
    for (size_t i = 0; i < model->boxes.count; i++)
        if (planning->plan->poses.at[i].with == 0)
            walk_from(&walk, i);
}

/* ---- what follows from the places ---- */

static void find_room(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->boxes.count; i++) {
        struct pose *pose = &planning->plan->poses.at[i];
        struct solid whole = {{0, 0, 0}, box_size(&model->boxes.at[i])};

        pose->room = pose_block(pose, &model->boxes.at[i], &whole);
    }
}

void pass_resolve(struct planning *planning)
{
    place_boxes(planning);
    find_room(planning);
    stance_find(planning);
    resolve_paddings(planning);
    assert(planning->plan->poses.count == planning->model->boxes.count);
    assert(planning->plan->paddings.count == planning->model->boxes.count * SIDE_COUNT);
}
