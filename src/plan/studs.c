/*
 * Against a wall with known studs there is a point at each stud that the topmost run passes, on the
 * marking grid, as near to the stud's middle as it can be, and nowhere else.
 */
#include "plan/studs.h"
#include "plan/place.h"

#include "plan/geometry.h"
#include "plan/stance.h"

static const struct wall *wall_behind(const struct planning *planning, const struct pose *pose,
                                      int64_t face)
{
    int64_t side = side_turned(face, (4 - pose->turn) % 4);

    for (size_t i = 0; i < planning->model->walls.count; i++) {
        const struct wall *wall = &planning->model->walls.at[i];

        if (wall->side == side && wall->stud_pitch > 0)
            return wall;
    }
    return NULL;
}

struct studs studs_behind(const struct planning *planning, const struct box *box, int64_t side,
                          int64_t from, int64_t to)
{
    const struct pose *pose = plan_pose(planning->plan, box->key);
    const struct wall *wall = wall_behind(planning, pose, side);
    struct studs studs = {.known = wall != NULL};
    struct vector room = pose_to_room(pose, box, (struct vector){0, 0, 0});
    int64_t u, v;

    if (!wall)
        return studs;
    int axis = side_axis(wall->side) == AXIS_Y ? AXIS_X : AXIS_Y;
    struct solid piece = stance_whole_piece(planning->plan);
    int64_t start = vector_along(piece.low, axis); /* studs are counted from its left end or back */
    for (int64_t at = wall->first_stud; at <= FIELDS_ROOM; at += wall->stud_pitch) {
        vector_set(&room, axis, start + at);
        box_to_face(side, pose_to_box(pose, box, room), &u, &v);
        if (u >= from && u <= to)
            *LIST_ADD(planning->arena, &studs.at) = u;
    }
    return studs;
}

/* The topmost run along u: what stands against a wall is held at its top. */
static const struct run *top_run(const struct placing *placing)
{
    const struct run *best = NULL;

    for (size_t i = 0; i < placing->runs.count; i++) {
        const struct run *run = &placing->runs.at[i];

        if (run->along_u && (!best || run->area.v0 > best->area.v0))
            best = run;
    }
    return best ? best : placing->runs.count > 0 ? &placing->runs.at[0] : NULL;
}

/* A screw off the middle of a stud by more than this may miss its wood: studs are 1-1/2 in and
 * their marks are no better than 1/4 in. Common practice, no source. */
#define OFF_STUD (LENGTH_INCH / 2)

static void add_at_studs(struct placing *placing, const struct run *run, const struct studs *studs)
{
    struct lattice lattice = lattice_on(placing, run);

    for (size_t i = 0; i < studs->at.count; i++)
        lattice_add(&lattice, lattice_near(&lattice, studs->at.at[i] - run->area.u0, OFF_STUD));
}

static void stand_all(struct placing *placing)
{
    for (size_t i = 0; i < placing->junction.point_count; i++)
        place_stand(placing,
                    &placing->planning->plan->points.at[placing->junction.first_point + i]);
}

void place_against_wall(struct placing *placing)
{
    const struct run *run = top_run(placing);
    int64_t keep = placing->planning->value[TRADE_ALONG_MIN];

    if (!run)
        return;
    placing->junction.length = run_length(run);
    struct studs studs = studs_behind(placing->planning, placing->a, placing->join->side_a,
                                      run->area.u0 + keep, run->area.u1 - keep);
    if (studs.known && run->along_u) {
        add_at_studs(placing, run, &studs);
        stand_all(placing);
    } else {
        spread_on_run(placing, run);
    }
}
