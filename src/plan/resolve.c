/*
 * Where each box stands in the room.
 *
 * The first box stands at the room's corner, unturned; every join of two boxes whose one box has a
 * place gives the other one its own, until no join does. Joins are walked in the order of their
 * keys, so the outcome depends on the facts alone.
 *
 * 1  A turn is about z only. Upright faces that meet leave one turn; top on bottom keeps the turn.
 * 2  A join whose two boxes have places already must agree with them; where it does not, the join
 *    is told and the places stay.
 */
#include "plan/padding.h"

#include "plan/findings.h"
#include "plan/geometry.h"

#include <assert.h>

static struct pose *pose_of(struct plan *plan, int64_t box)
{
    for (size_t i = 0; i < plan->poses.count; i++)
        if (plan->poses.at[i].box == box)
            return &plan->poses.at[i];
    return NULL;
}

static struct vector size_turned(const struct box *box, int turn)
{
    struct vector size = box_size(box);

    return turn % 2 ? (struct vector){size.y, size.x, size.z} : size;
}

/* The turn of box b in the axes of box a that makes the two faces look at each other; -1 when none
 * does. */
static int turn_between(const struct join *join)
{
    int64_t towards = side_opposite(join->side_a);

    for (int turn = 0; turn < 4; turn++)
        if (side_turned(towards, turn) == join->side_b)
            return turn;
    return -1;
}

/* Box b as it stands when box a has the pose given. */
static struct pose pose_beside(const struct join *join, const struct pose *a,
                               const struct box *box_a, const struct box *box_b, int turn)
{
    struct vector size = size_turned(box_b, turn);
    int axis = side_axis(join->side_a);
    struct vector low = {0};
    struct vector high;
    struct vector one;
    struct vector other;

    vector_set(&low, side_u_axis(join->side_a), join->offset_u);
    vector_set(&low, side_v_axis(join->side_a), join->offset_v);
    vector_set(&low, axis,
               side_sign(join->side_a) > 0 ? vector_along(box_size(box_a), axis)
                                           : -vector_along(size, axis));
    high = (struct vector){low.x + size.x, low.y + size.y, low.z + size.z};
    one = pose_to_room(a, box_a, low);
    other = pose_to_room(a, box_a, high);
    return (struct pose){box_b->key,
                         (a->turn + turn) % 4,
                         {length_smaller(one.x, other.x), length_smaller(one.y, other.y), one.z},
                         true};
}

/* Box a as it has to stand so that box b has the pose given. */
static struct pose pose_before(const struct join *join, const struct pose *b,
                               const struct box *box_a, const struct box *box_b, int turn)
{
    struct pose a = {box_a->key, (b->turn + 4 - turn) % 4, {0, 0, 0}, true};
    struct pose from_corner = pose_beside(join, &a, box_a, box_b, turn);

    assert(from_corner.turn == b->turn);
    a.at = (struct vector){b->at.x - from_corner.at.x, b->at.y - from_corner.at.y,
                           b->at.z - from_corner.at.z};
    return a;
}

static bool same_place(const struct pose *a, const struct pose *b)
{
    return a->turn == b->turn && a->at.x == b->at.x && a->at.y == b->at.y && a->at.z == b->at.z;
}

static bool joins_two_boxes(const struct join *join)
{
    return join->target == TARGET_BOX && join->box_b && join->box_b != join->box_a;
}

/* Gives one of the two boxes its place from the other's; true when it did. */
static bool place_by_join(struct planning *planning, const struct join *join)
{
    struct pose *a = pose_of(planning->plan, join->box_a);
    struct pose *b = pose_of(planning->plan, join->box_b);
    const struct box *box_a = MODEL_FIND(planning->model, box, join->box_a);
    const struct box *box_b = MODEL_FIND(planning->model, box, join->box_b);
    int turn = turn_between(join);

    if (turn < 0 || !a || !b || a->placed == b->placed)
        return false;
    if (a->placed)
        *b = pose_beside(join, a, box_a, box_b, turn);
    else
        *a = pose_before(join, b, box_a, box_b, turn);
    return true;
}

static void place_boxes(struct planning *planning)
{
    const struct model *model = planning->model;
    bool more = model->boxes.count > 0;

    for (size_t i = 0; i < model->boxes.count; i++)
        LIST_ADD(planning->arena, &planning->plan->poses)->box = model->boxes.at[i].key;
    if (more)
        planning->plan->poses.at[0].placed = true;
    while (more) {
        more = false;
        for (size_t i = 0; i < model->joins.count; i++)
            if (joins_two_boxes(&model->joins.at[i]))
                more |= place_by_join(planning, &model->joins.at[i]);
    }
}

static bool agrees(const struct planning *planning, const struct join *join)
{
    const struct pose *a = plan_pose(planning->plan, join->box_a);
    const struct pose *b = plan_pose(planning->plan, join->box_b);
    int turn = turn_between(join);
    struct pose wanted;

    if (turn < 0)
        return false;
    if (!a->placed)
        return true;
    wanted = pose_beside(join, a, MODEL_FIND(planning->model, box, join->box_a),
                         MODEL_FIND(planning->model, box, join->box_b), turn);
    return same_place(&wanted, b);
}

static void tell_contradictions(struct planning *planning)
{
    for (size_t i = 0; i < planning->model->joins.count; i++) {
        const struct join *join = &planning->model->joins.at[i];

        if (joins_two_boxes(join) && !agrees(planning, join))
            finding_add(planning, FINDING_JOIN_FACES_APART, ENTITY_join, join->key);
    }
}

static bool is_joined(const struct model *model, int64_t box)
{
    for (size_t i = 0; i < model->joins.count; i++)
        if (model->joins.at[i].box_a == box || model->joins.at[i].box_b == box)
            return true;
    return false;
}

static void tell_unconnected(struct planning *planning)
{
    const struct model *model = planning->model;

    if (model->boxes.count == 0)
        finding_add(planning, FINDING_NOTHING_TO_MAKE, ENTITY_build, model->build.key);
    if (model->boxes.count < 2)
        return;
    for (size_t i = 0; i < model->boxes.count; i++)
        if (!is_joined(model, model->boxes.at[i].key))
            finding_add(planning, FINDING_BOX_UNCONNECTED, ENTITY_box, model->boxes.at[i].key);
}

void pass_resolve(struct planning *planning)
{
    place_boxes(planning);
    tell_contradictions(planning);
    tell_unconnected(planning);
    resolve_paddings(planning);
    assert(planning->plan->poses.count == planning->model->boxes.count);
    assert(planning->plan->paddings.count == planning->model->boxes.count * SIDE_COUNT);
}
