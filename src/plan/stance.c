/*
 * Whether the places that the joins gave can be: joins against each other, boxes against the floor.
 *
 * 1  Joins contradict each other only round a circle of them. The one that gave no place is told,
 *    with those of the way round that did.
 * 2  The floor lies under the lowest box that is joined to it; without such a join, under the
 *    lowest box that does not lean, since a box that leans may be meant to reach lower than it can.
 */
#include "plan/stance.h"

#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/pose.h"
#include "plan/stance_cure.h"

#include <assert.h>

/* Places that differ by less are the same: a lean rounds. */
#define SAME_PLACE 2

/* ---- the way round ---- */

static const struct join *join_that_placed(const struct plan *plan, const struct pose *pose)
{
    return MODEL_FIND(plan->facts, join, pose->by);
}

static int64_t box_before(const struct join *join, int64_t box)
{
    return join->box_a == box ? join->box_b : join->box_a;
}

static size_t steps_to_first(const struct plan *plan, int64_t box)
{
    const struct pose *pose = plan_pose(plan, box);
    size_t steps = 0;

    while (pose->by) {
        pose = plan_pose(plan, box_before(join_that_placed(plan, pose), pose->box));
        steps++;
        assert(steps <= plan->poses.count);
    }
    return steps;
}

/* Adds the join that placed the box to the names, and gives the box it was placed from. */
static int64_t step_back(const struct planning *planning, int64_t box, const char **names)
{
    const struct pose *pose = plan_pose(planning->plan, box);
    const struct join *join = join_that_placed(planning->plan, pose);

    *names = arena_format(planning->arena, "%s%s%s", **names ? *names : "", **names ? ", " : "",
                          join->name);
    return box_before(join, box);
}

/* "J1, J2": the joins through which two boxes were placed from the one that both go back to. */
static const char *way_round(const struct planning *planning, int64_t a, int64_t b)
{
    size_t steps_a = steps_to_first(planning->plan, a);
    size_t steps_b = steps_to_first(planning->plan, b);
    const char *names = "";

    while (a != b) {
        if (steps_a >= steps_b) {
            a = step_back(planning, a, &names);
            steps_a--;
        } else {
            b = step_back(planning, b, &names);
            steps_b--;
        }
    }
    return names;
}

/* ---- contradictions ---- */

static int64_t apart(const struct vector *a, const struct vector *b)
{
    return vector_length((struct vector){a->x - b->x, a->y - b->y, a->z - b->z});
}

bool stance_same_place(const struct pose *a, const struct pose *b)
{
    return apart(&a->at, &b->at) < SAME_PLACE;
}

static int64_t least_askew(const struct join *join, const struct box *a, const struct box *b)
{
    struct pose pose_a = pose_begin(a, 0);
    int64_t least = INT64_MAX;

    for (int turn = 0; turn < 4; turn++) {
        struct pose pose_b = pose_begin(b, turn);

        least = length_smaller(least, pose_askew(&pose_a, join->side_a, &pose_b, join->side_b));
    }
    return least;
}

static void tell_never(struct planning *planning, const struct join *join)
{
    const struct box *a = MODEL_FIND(planning->model, box, join->box_a);
    const struct box *b = MODEL_FIND(planning->model, box, join->box_b);
    struct finding *finding =
        finding_add(planning, FINDING_JOIN_FACES_ASKEW, ENTITY_join, join->key);

    argument_quantity(finding, 0, QUANTITY_ANGLE, least_askew(join, a, b));
    stance_cure_faces(planning, join, finding);
}

static void tell_contradiction(struct planning *planning, const struct join *join,
                               const struct pose *wanted)
{
    const struct pose *stands = plan_pose(planning->plan, join->box_b);
    const struct box *box = MODEL_FIND(planning->model, box, join->box_b);
    const char *way = way_round(planning, join->box_a, join->box_b);
    struct finding *finding;

    assert(stands && box);
    if (wanted->turn != stands->turn) {
        finding = finding_add(planning, FINDING_JOIN_TURNS, ENTITY_join, join->key);
        stance_cure_faces(planning, join, finding);
    } else if (!stance_same_place(wanted, stands)) {
        finding = finding_add(planning, FINDING_JOIN_CONTRADICTS, ENTITY_join, join->key);
        argument_length(finding, 2, apart(&wanted->at, &stands->at));
        stance_cure_contradiction(planning, join, wanted, finding);
    } else {
        return;
    }
    argument_text(finding, 0, box->name);
    argument_text(finding, 1, way);
}

static void tell_contradictions(struct planning *planning)
{
    for (size_t i = 0; i < planning->model->joins.count; i++) {
        const struct join *join = &planning->model->joins.at[i];
        struct pose wanted;

        if (!stance_joins_boxes(join))
            continue;
        if (!stance_wanted(planning, join, &wanted))
            tell_never(planning, join);
        else
            tell_contradiction(planning, join, &wanted);
    }
}

/* ---- boxes by themselves ---- */

static void tell_unconnected(struct planning *planning)
{
    const struct model *model = planning->model;
    bool *joined = ARENA_MANY(planning->arena, bool, model->boxes.count + 1);

    if (model->boxes.count == 0)
        finding_add(planning, FINDING_NOTHING_TO_MAKE, ENTITY_build, model->build.key);
    for (size_t i = 0; i < model->joins.count; i++) {
        joined[model_index(model, ENTITY_box, model->joins.at[i].box_a)] = true;
        if (model->joins.at[i].box_b)
            joined[model_index(model, ENTITY_box, model->joins.at[i].box_b)] = true;
    }
    for (size_t i = 0; model->boxes.count > 1 && i < model->boxes.count; i++)
        if (!joined[i])
            finding_add(planning, FINDING_BOX_UNCONNECTED, ENTITY_box, model->boxes.at[i].key);
}

/* ---- the floor ---- */

/* How well a box tells where the floor is; the lowest of those with the best grade does. */
enum grade { GRADE_LEANS, GRADE_STANDS, GRADE_JOINED };

struct ground {
    enum grade grade;
    int64_t z;
    bool found;
};

static void lower(struct ground *ground, enum grade grade, int64_t z)
{
    bool better = !ground->found || grade > ground->grade;

    if (better || (grade == ground->grade && z < ground->z))
        *ground = (struct ground){grade, z, true};
}

static void find_floor(struct planning *planning)
{
    const struct model *model = planning->model;
    struct pose *poses = planning->plan->poses.at;
    size_t count = model->boxes.count;
    struct ground *grounds = ARENA_MANY(planning->arena, struct ground, count + 1);

    for (size_t i = 0; i < count; i++)
        lower(&grounds[model_index(model, ENTITY_box, poses[i].with)],
              poses[i].lean ? GRADE_LEANS : GRADE_STANDS, poses[i].room.low.z);
    for (size_t i = 0; i < model->joins.count; i++) {
        const struct join *join = &model->joins.at[i];
        const struct pose *pose = &poses[model_index(model, ENTITY_box, join->box_a)];

        if (join->target == TARGET_FLOOR)
            lower(&grounds[model_index(model, ENTITY_box, pose->with)], GRADE_JOINED,
                  pose->room.low.z);
    }
    for (size_t i = 0; i < count; i++) {
        const struct ground *ground = &grounds[model_index(model, ENTITY_box, poses[i].with)];

        assert(ground->found);
        poses[i].floor = ground->z;
    }
}

static void tell_below_floor(struct planning *planning, const struct pose *pose)
{
    int64_t depth = pose->floor - pose->room.low.z;
    struct finding *finding;

    if (depth < SAME_PLACE)
        return;
    finding = finding_add(planning, FINDING_BOX_BELOW_FLOOR, ENTITY_box, pose->box);
    argument_length(finding, 0, depth);
    stance_cure_height(planning, pose->box, depth, finding);
}

static void tell_off_floor(struct planning *planning, const struct join *join)
{
    const struct pose *pose = plan_pose(planning->plan, join->box_a);
    int64_t height = pose->room.low.z - pose->floor;
    struct finding *finding;

    if (join->target != TARGET_FLOOR || height < SAME_PLACE)
        return;
    finding = finding_add(planning, FINDING_JOIN_OFF_FLOOR, ENTITY_join, join->key);
    argument_length(finding, 0, height);
    stance_cure_height(planning, join->box_a, -height, finding);
}

static void tell_heights(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->boxes.count; i++)
        tell_below_floor(planning, &planning->plan->poses.at[i]);
    for (size_t i = 0; i < model->joins.count; i++)
        tell_off_floor(planning, &model->joins.at[i]);
}

struct solid stance_whole_piece(const struct plan *plan)
{
    struct solid whole = {{0, 0, 0}, {0, 0, 0}};

    if (plan->poses.count > 0)
        whole = plan->poses.at[0].room;
    for (size_t i = 1; i < plan->poses.count; i++)
        whole = solid_round(&whole, &plan->poses.at[i].room);
    return whole;
}

static struct vector corner_of_piece(const struct plan *plan)
{
    struct vector corner = {0, 0, 0};
    const struct pose *first;

    if (plan->poses.count == 0)
        return corner;
    first = &plan->poses.at[0];
    corner = (struct vector){first->room.low.x, first->room.low.y, first->floor};
    for (size_t i = 1; i < plan->poses.count; i++) {
        const struct pose *pose = &plan->poses.at[i];

        if (pose->with != first->with)
            continue;
        corner.x = length_smaller(corner.x, pose->room.low.x);
        corner.y = length_smaller(corner.y, pose->room.low.y);
    }
    return corner;
}

struct solid stance_object(const struct plan *plan, const struct object *object)
{
    struct vector corner = corner_of_piece(plan);
    struct vector low = {corner.x + object->x, corner.y + object->y, corner.z + object->z};

    return (struct solid){low,
                          {low.x + object->width, low.y + object->depth, low.z + object->height}};
}

void stance_find(struct planning *planning)
{
    find_floor(planning);
    tell_contradictions(planning);
    tell_unconnected(planning);
    tell_heights(planning);
}
