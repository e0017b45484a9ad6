#include "plan/standing.h"

#include "plan/pose.h"

#include <assert.h>

/* From the axes of the box with the heads to those of another; false where a box has no place. */
static bool axis_between(const struct planning *planning, const struct screw *screw, int64_t box,
                         struct screw_axis *ret_axis)
{
    const struct pose *from = plan_pose(planning->plan, screw->box);
    const struct pose *to = plan_pose(planning->plan, box);
    const struct box *from_box = MODEL_FIND(planning->model, box, screw->box);
    const struct box *to_box = MODEL_FIND(planning->model, box, box);
    struct screw_axis axis = screw_axis_of(planning->plan, screw);

    if (!from || !to || !from->placed || !to->placed)
        return false;
    axis.head = pose_across(from, from_box, to, to_box, axis.head);
    axis.tip = pose_across(from, from_box, to, to_box, axis.tip);
    *ret_axis = axis;
    return true;
}

static void stand(const struct planning *planning, struct thicket *boxes, int64_t box,
                  const struct screw_axis *axis, size_t screw)
{
    thicket_add(&boxes[model_index(planning->model, ENTITY_box, box)], axis, screw);
}

/* A join's screw in the boxes beside the one that has its head. */
static void stand_beyond(const struct planning *planning, struct thicket *boxes, size_t index)
{
    assert(index < planning->plan->screws.count);

    const struct screw *screw = &planning->plan->screws.at[index];
    const struct plan_point *point = &planning->plan->points.at[screw->of];
    const struct join *join = MODEL_FIND(planning->model, join, point->join);
    const int64_t reached[] = {join->box_a, join->target == TARGET_BOX ? join->box_b : 0};

    for (size_t i = 0; i < sizeof reached / sizeof *reached; i++) {
        struct screw_axis axis;

        if (reached[i] && reached[i] != screw->box && (i == 0 || reached[i] != reached[0]) &&
            axis_between(planning, screw, reached[i], &axis))
            stand(planning, boxes, reached[i], &axis, index);
    }
}

struct thicket *standing_by_box(const struct planning *planning)
{
    const struct plan *plan = planning->plan;
    size_t count = planning->model->boxes.count + 1;
    struct thicket *boxes = ARENA_MANY(planning->arena, struct thicket, count);

    for (size_t i = 0; i < count; i++)
        boxes[i].arena = planning->arena;
    for (size_t i = 0; i < plan->screws.count; i++) {
        const struct screw *screw = &plan->screws.at[i];
        struct screw_axis axis = screw_axis_of(plan, screw);

        stand(planning, boxes, screw->box, &axis, i);
        if (screw->use == SCREW_JOIN && screw->of < plan->points.count)
            stand_beyond(planning, boxes, i);
    }
    return boxes;
}
