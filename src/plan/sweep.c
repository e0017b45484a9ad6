/*
 * The second box is moved in thought, with what hangs on it: a block that moves along an axis meets
 * another when that lies before it, as far as it may come, and not beside it. Only the two boxes
 * and what hangs on either is compared with the other one: things that hang on both sides meet as
 * well, and are left to the rehearsal.
 */
#include "plan/sweep.h"

#include "plan/geometry.h"

#include <assert.h>

/* One box that comes, and one that stays. */
struct passing {
    const struct vicinity *vicinity;
    size_t comes, stays;
    int64_t from; /* side of the room */
};

static struct solid drawn_out(const struct solid *solid, int64_t side)
{
    struct solid drawn = *solid;

    vector_set(side_sign(side) > 0 ? &drawn.high : &drawn.low, side_axis(side),
               side_sign(side) * 2 * FIELDS_ROOM);
    return drawn;
}

static bool wood_meets(const struct passing *passing, bool moved)
{
    const struct standing_wood *comes = vicinity_wood(passing->vicinity, passing->comes);
    const struct standing_wood *stays = vicinity_wood(passing->vicinity, passing->stays);

    for (size_t i = 0; i < comes->room.count; i++) {
        struct solid swept =
            moved ? drawn_out(&comes->room.at[i], passing->from) : comes->room.at[i];

        for (size_t k = 0; k < stays->room.count; k++)
            if (solids_meet(&swept, &stays->room.at[k]))
                return true;
    }
    return false;
}

static bool is_in_the_way(const struct passing *passing)
{
    const struct pose *poses = passing->vicinity->planning->plan->poses.at;
    struct solid swept = drawn_out(&poses[passing->comes].room, passing->from);

    return solids_meet(&swept, &poses[passing->stays].room) && wood_meets(passing, true);
}

/* What hangs on one of the two boxes, against the other one. */
static void look_along(const struct vicinity *vicinity, const enum hanging *hanging, size_t a,
                       size_t b, struct sweep *sweep)
{
    const struct plan *plan = vicinity->planning->plan;

    for (size_t i = 0; i < plan->poses.count; i++) {
        struct passing passing = {vicinity, hanging[i] == HANGS_ON_A ? b : i,
                                  hanging[i] == HANGS_ON_A ? i : a, sweep->from};

        if (i == a || i == b || hanging[i] == HANGS_ON_NEITHER || plan->poses.at[i].lean != 0 ||
            !is_in_the_way(&passing))
            continue;
        *LIST_ADD(vicinity->planning->arena, &sweep->boxes) = plan->poses.at[i].box;
    }
}

/* The side of the room that a mating face of the first box looks to. */
static int64_t side_in_room(const struct vicinity *vicinity, const struct junction *junction)
{
    const struct join *join = MODEL_FIND(vicinity->planning->model, join, junction->join);
    struct vector normal =
        pose_normal(plan_pose(vicinity->planning->plan, junction->box_a), join->side_a);
    int64_t found = SIDE_FRONT;

    for (int64_t side = 0; side < SIDE_COUNT; side++)
        if (side_sign(side) * vector_along(normal, side_axis(side)) == POSE_ONE)
            found = side;
    return found;
}

struct sweeps sweeps_find(const struct vicinity *vicinity, const struct junction *junction)
{
    const struct planning *planning = vicinity->planning;
    struct sweeps sweeps = {.free = true};
    size_t a = model_index(planning->model, ENTITY_box, junction->box_a);
    size_t b = model_index(planning->model, ENTITY_box, junction->box_b);
    enum hanging *hanging = ARENA_MANY(planning->arena, enum hanging, planning->model->boxes.count);
    int64_t first;

    if (junction->box_b == 0 || planning->plan->poses.at[a].lean != 0 ||
        planning->plan->poses.at[b].lean != 0 || !vicinity_hang(vicinity, junction, hanging) ||
        wood_meets(&(struct passing){vicinity, b, a, 0}, false))
        return sweeps;
    first = side_in_room(vicinity, junction);
    sweeps.free = false;
    for (int64_t i = 0; i < SIDE_COUNT && !sweeps.free; i++) {
        struct sweep *sweep = &sweeps.at[i];

        sweep->from = i == 0 ? first : i <= first ? i - 1 : i;
        sweep->shut = is_in_the_way(&(struct passing){vicinity, b, a, sweep->from});
        if (!sweep->shut)
            look_along(vicinity, hanging, a, b, sweep);
        sweeps.free = !sweep->shut && sweep->boxes.count == 0;
    }
    return sweeps;
}
