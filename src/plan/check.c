#include "plan/check.h"

#include "plan/geometry.h"
#include "plan/point.h"

#include <assert.h>

/* A join takes in nearly all of a face when no more than this shows beside it. */
#define SHOWS_BESIDE (3 * LENGTH_INCH / 2)

int64_t check_side(const struct planning *planning, int64_t box, int64_t room_side)
{
    const struct pose *pose = plan_pose(planning->plan, box);

    return pose ? side_turned(room_side, pose->turn) : room_side;
}

struct solid check_in_room(const struct planning *planning, const struct box *box)
{
    const struct pose *pose = plan_pose(planning->plan, box->key);

    assert(pose);
    return pose->room;
}

int64_t check_behind(const struct solid *solid, const struct solid *whole, int64_t room_side)
{
    int axis = side_axis(room_side);

    return side_sign(room_side) > 0
               ? vector_along(whole->high, axis) - vector_along(solid->high, axis)
               : vector_along(solid->low, axis) - vector_along(whole->low, axis);
}

/* Is the face shut in by a join, but for a strip beside it? */
static bool is_joined_over(const struct planning *planning, const struct box *box, int64_t side)
{
    const struct plan *plan = planning->plan;
    struct area face = face_area(box, side);

    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *junction = &plan->junctions.at[i];
        bool of_b = junction->box_b == box->key;
        const struct area *zone = of_b ? &junction->zone_b : &junction->zone;

        if ((!of_b && junction->box_a != box->key) ||
            point_side(planning, junction, of_b) != side || junction->box_b == 0)
            continue;
        if (area_width(zone) >= area_width(&face) - SHOWS_BESIDE &&
            area_height(zone) >= area_height(&face) - SHOWS_BESIDE)
            return true;
    }
    return false;
}

static bool looks_to_wall(const struct planning *planning, int64_t box, int64_t side)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->walls.count; i++)
        if (check_side(planning, box, model->walls.at[i].side) == side)
            return true;
    return false;
}

int64_t check_seen(const struct planning *planning, int64_t box, int64_t side)
{
    const struct model *model = planning->model;
    const struct box *found = MODEL_FIND(model, box, box);

    for (size_t i = 0; i < model->faces.count; i++)
        if (model->faces.at[i].box == box && model->faces.at[i].side == side)
            return model->faces.at[i].seen;
    if (side == SIDE_BOTTOM || (found && is_joined_over(planning, found, side)))
        return SEEN_NEVER;
    return looks_to_wall(planning, box, side) ? SEEN_WALL : SEEN_SEEN;
}

int64_t check_thin_cloth(const struct model *model)
{
    const struct stock *thinnest = NULL;

    for (size_t i = 0; i < model->stocks.count; i++) {
        const struct stock *stock = &model->stocks.at[i];

        if (stock->kind == STOCK_CLOTH && (!thinnest || stock->thickness < thinnest->thickness))
            thinnest = stock;
    }
    return thinnest ? thinnest->key : 0;
}
