#include "plan/hidden.h"

#include "plan/geometry.h"
#include "plan/pose.h"
#include "plan/stance.h"

/* The mattress hides a face that shows no more than this beside it: the wings stand there. */
#define SHOWS_BESIDE (3 * LENGTH_INCH)

/* The same for one mattress. */
static int64_t hidden_behind(const struct planning *planning, const struct box *box, int64_t side,
                             const struct object *mattress)
{
    const struct pose *pose = plan_pose(planning->plan, box->key);
    struct solid lies = stance_object(planning->plan, mattress);
    struct area face = face_area(box, side);
    int64_t left, right, low, high;

    if (!pose || !pose->placed || pose->lean != 0 || side_axis(side) == AXIS_Z ||
        side_turned(side, (4 - pose->turn) % 4) != SIDE_FRONT)
        return 0;
    box_to_face(side, pose_to_box(pose, box, lies.low), &left, &low);
    box_to_face(side, pose_to_box(pose, box, lies.high), &right, &high);
    if (length_smaller(left, right) > SHOWS_BESIDE ||
        length_larger(left, right) < face.u1 - SHOWS_BESIDE || low > 0)
        return 0;
    return high - planning->value[TRADE_HIDDEN_DEPTH];
}

int64_t hidden_height(const struct planning *planning, const struct box *box, int64_t side)
{
    const struct model *model = planning->model;
    int64_t height = 0;

    for (size_t i = 0; i < model->objects.count; i++)
        if (model->objects.at[i].kind == OBJECT_MATTRESS)
            height =
                length_larger(height, hidden_behind(planning, box, side, &model->objects.at[i]));
    return height;
}
