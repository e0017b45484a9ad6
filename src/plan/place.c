/*
 * Points on runs: spread evenly, and each moved aside as little as possible where no tool fits
 * behind its head or a frame screw passes.
 *
 * 1  Distances are taken from the same two edges along a whole run, so that the maker reads one
 *    side of the rule: of two edges equally near, the left, back or bottom one.
 * 2  Points of a run stay in order and at least `along.min` apart: none moves by more than half of
 *    what the pitch has over it.
 * 3  Against a wall with known studs there is a point at each stud, and nowhere else.
 */
#include "plan/place.h"

#include "plan/geometry.h"
#include "plan/screws.h"
#include "plan/slices.h"

#include <assert.h>

/* ---- one point ---- */

/* The two edges that distances on a face are taken from, for places about a middle. */
static void choose_edges(const struct area *face, int64_t twice_u, int64_t twice_v,
                         struct from_edge edges[2])
{
    edges[0].edge = twice_u <= area_width(face) ? EDGE_LEFT : EDGE_RIGHT;
    edges[1].edge = twice_v <= area_height(face) ? EDGE_BOTTOM : EDGE_TOP;
}

static void measure_edges(const struct area *face, int64_t u, int64_t v, struct from_edge edges[2])
{
    edges[0].distance = edges[0].edge == EDGE_LEFT ? u : face->u1 - u;
    edges[1].distance = edges[1].edge == EDGE_BOTTOM ? v : face->v1 - v;
}

/* `about` is what the edges are chosen by: a whole run, or the place itself as an empty area. */
static void measure(const struct work *work, const struct area *about, struct plan_point *point)
{
    struct area face = face_area(work->a, work->join->side_a);
    int64_t u, v;

    choose_edges(&face, about->u0 + about->u1, about->v0 + about->v1, point->edges);
    measure_edges(&face, point->u, point->v, point->edges);
    if (!work->b)
        return;
    struct area face_b = face_area(work->b, work->join->side_b);
    struct area about_b = place_area_to_b(work, about);
    choose_edges(&face_b, about_b.u0 + about_b.u1, about_b.v0 + about_b.v1, point->edges_b);
    box_to_face(work->join->side_b, point->in_b, &u, &v);
    measure_edges(&face_b, u, v, point->edges_b);
}

static size_t member_of(const struct backing *wood)
{
    return wood ? wood->member : PLAN_NONE;
}

static struct plan_point locate(const struct work *work, int64_t u, int64_t v)
{
    struct plan_point point = {.join = work->join->key,
                               .u = u,
                               .v = v,
                               .in_a = face_to_box(work->a, work->join->side_a, u, v),
                               .screw = PLAN_NONE,
                               .member_a = member_of(backing_at(&work->faces.a, u, v)),
                               .member_b = PLAN_NONE};
    int64_t u_b, v_b;

    if (!work->b)
        return point;
    point.in_b = point_to_b(work->planning, &work->junction, point.in_a);
    box_to_face(work->join->side_b, point.in_b, &u_b, &v_b);
    point.member_b = member_of(backing_at(&work->faces.b, u_b, v_b));
    return point;
}

struct plan_point *place_add(struct work *work, int64_t u, int64_t v, const struct area *about)
{
    struct planning *planning = work->planning;
    struct plan_point *point = LIST_ADD(planning->arena, &planning->plan->points);

    *point = locate(work, u, v);
    point->rank = (int)++work->junction.point_count;
    measure(work, about, point);
    return point;
}

static struct plan_point locate_on_run(const struct work *work, const struct run *run,
                                       int64_t along)
{
    int64_t middle = whole_divide_even(
        run->along_u ? run->area.v0 + run->area.v1 : run->area.u0 + run->area.u1, 2);

    return run->along_u ? locate(work, run->area.u0 + along, middle)
                        : locate(work, middle, run->area.v0 + along);
}

static void add_on_run(struct work *work, const struct run *run, int64_t along)
{
    struct plan_point place = locate_on_run(work, run, along);

    place_add(work, place.u, place.v, &run->area);
}

/* ---- out of the way ---- */

struct axis_list {
    LIST_OF(struct screw_axis) axes;
};

static struct axes frame_screws(const struct work *work, int64_t box)
{
    const struct plan *plan = work->planning->plan;
    struct slice screws = plan_frame_screws_of(plan, box);
    struct axis_list list = {0};

    for (size_t i = screws.from; i < screws.to; i++)
        *LIST_ADD(work->planning->arena, &list.axes) = screw_axis_of(plan, &plan->screws.at[i]);
    return (struct axes){list.axes.at, list.axes.count};
}

/* No frame screw of the box passes near the axis. */
static bool is_clear_of(const struct work *work, const struct axes *screws,
                        const struct screw_axis *axis)
{
    for (size_t i = 0; i < screws->count; i++) {
        if (!screw_clears(axis, &screws->at[i], work->planning->value[TRADE_CROSS_CLEAR_REJECT]))
            return false;
    }
    return true;
}

/* The axis reaches from the far side of one wood to that of the other: the screw lies within. */
static bool is_clear(const struct work *work, const struct plan_point *point)
{
    int axis = side_axis(work->join->side_a);
    struct fastening fastening;
    struct screw_axis in_a = {point->in_a, point->in_a,
                              screw_gauge_diameter(work->planning->value[TRADE_SCREW_GAUGE_JOIN])};
    int64_t here = vector_along(point->in_a, axis);
    int sign = side_sign(work->join->side_a);

    if (!fasten_reckon(work->planning, &work->junction, &work->faces, point, false, &fastening))
        return true;
    vector_set(&in_a.head, axis, here - sign * fastening.depth);
    vector_set(&in_a.tip, axis, here + sign * fastening.need.receiving);
    if (!is_clear_of(work, &work->screws_a, &in_a))
        return false;
    if (!work->b)
        return true;
    struct screw_axis in_b = {point_to_b(work->planning, &work->junction, in_a.head),
                              point_to_b(work->planning, &work->junction, in_a.tip), in_a.diameter};
    return is_clear_of(work, &work->screws_b, &in_b);
}

static bool is_open(const struct work *work, const struct plan_point *point)
{
    return (work->from_a.box && way_is_open(&work->from_a, &work->faces, point)) ||
           (work->from_b.box && way_is_open(&work->from_b, &work->faces, point));
}

/* The place nearest to the wanted one where a head can be driven and no frame screw is met, on the
 * marking grid counted from there and at most `most` away; the wanted one when there is none. */
static int64_t nudge(const struct work *work, const struct run *run, int64_t wanted, int64_t most)
{
    int64_t grid = work->planning->value[TRADE_MARK_GRID];
    int64_t end = work->planning->value[TRADE_ALONG_MIN];

    for (int64_t step = 0; step * grid <= most; step++) {
        for (int sign = 1; sign >= -1; sign -= 2) {
            int64_t along = wanted + sign * step * grid;

            if (along < end || along > run_length(run) - end)
                continue;
            struct plan_point place = locate_on_run(work, run, along);
            if (is_open(work, &place) && is_clear(work, &place))
                return along;
        }
    }
    return wanted;
}

static void set_scenes(struct work *work)
{
    work->screws_a = frame_screws(work, work->a->key);
    if (work->b)
        work->screws_b = frame_screws(work, work->b->key);
    if (work->join->head != HEAD_B)
        work->from_a = way_scene(work->planning, &work->junction, false);
    if (work->b && work->join->head != HEAD_A)
        work->from_b = way_scene(work->planning, &work->junction, true);
}

/* ---- points on runs ---- */

static int64_t pitch_wanted(const struct work *work)
{
    return work->join->pitch > 0 ? work->join->pitch : work->planning->value[TRADE_JOIN_PITCH];
}

static int64_t least_wanted(const struct work *work, const struct run *run)
{
    const int64_t *value = work->planning->value;

    return value[run_length(run) > value[TRADE_JOIN_LONG] ? TRADE_JOIN_LEAST_LONG
                                                          : TRADE_JOIN_LEAST];
}

/* Points on a run (TRADE 2.2: n = max(least, ceil((L - 2e) / p) + 1)), no closer than the least
 * distance along the grain. */
static int64_t count_on_run(const struct work *work, const struct run *run)
{
    int64_t between = run_length(run) - 2 * run_end(work->planning, work->join, run);
    int64_t count = work->join->count;

    if (between < 0)
        return 1;
    if (count == 0) {
        int64_t least = least_wanted(work, run);

        count = whole_divide_up(between, pitch_wanted(work)) + 1;
        count = count < least ? least : count;
    }
    int64_t most = between / work->planning->value[TRADE_ALONG_MIN] + 1;
    return count < most ? count : most;
}

static void fill_run(struct work *work, const struct run *run)
{
    int64_t count = count_on_run(work, run);
    int64_t end = run_end(work->planning, work->join, run);
    int64_t between = run_length(run) - 2 * end;

    assert(count >= 1);
    if (count == 1) {
        int64_t middle = whole_divide_even(run_length(run), 2);

        add_on_run(work, run, nudge(work, run, middle, middle));
        return;
    }
    int64_t pitch = whole_divide_even(between, count - 1);
    int64_t most = (pitch - work->planning->value[TRADE_ALONG_MIN]) / 2;
    for (int64_t i = 0; i < count; i++) {
        int64_t wanted = end + whole_divide_even(between * i, count - 1);

        add_on_run(work, run, nudge(work, run, wanted, most));
    }
    if (work->junction.pitch == 0)
        work->junction.pitch = pitch;
}

/* ---- studs of a wall ---- */

static const struct wall *wall_behind(const struct work *work)
{
    const struct planning *planning = work->planning;
    int turn = plan_pose(planning->plan, work->a->key)->turn;
    int64_t side = side_turned(work->join->side_a, (4 - turn) % 4);

    for (size_t i = 0; i < planning->model->walls.count; i++) {
        const struct wall *wall = &planning->model->walls.at[i];

        if (wall->side == side && wall->stud_pitch > 0)
            return wall;
    }
    return NULL;
}

/* The piece's left end or back in the room, where a wall's studs are counted from. */
static int64_t start_of_piece(const struct planning *planning, int axis)
{
    int64_t start = 0;

    for (size_t i = 0; i < planning->plan->poses.count; i++) {
        int64_t at = vector_along(planning->plan->poses.at[i].at, axis);

        start = i == 0 || at < start ? at : start;
    }
    return start;
}

/* The topmost run along u: what stands against a wall is held at its top. */
static const struct run *top_run(const struct work *work)
{
    const struct run *best = NULL;

    for (size_t i = 0; i < work->runs.count; i++) {
        const struct run *run = &work->runs.at[i];

        if (run->along_u && (!best || run->area.v0 > best->area.v0))
            best = run;
    }
    return best ? best : work->runs.count > 0 ? &work->runs.at[0] : NULL;
}

static void add_at_studs(struct work *work, const struct run *run, const struct wall *wall)
{
    const struct pose *pose = plan_pose(work->planning->plan, work->a->key);
    int axis = side_axis(wall->side) == AXIS_Y ? AXIS_X : AXIS_Y;
    int64_t keep = work->planning->value[TRADE_ALONG_MIN];
    int64_t start = start_of_piece(work->planning, axis);
    struct vector room = pose_to_room(pose, work->a, (struct vector){0, 0, 0});
    int64_t u, v;

    for (int64_t at = wall->first_stud; at <= FIELDS_ROOM; at += wall->stud_pitch) {
        vector_set(&room, axis, start + at);
        box_to_face(work->join->side_a, pose_to_box(pose, work->a, room), &u, &v);
        if (u >= run->area.u0 + keep && u <= run->area.u1 - keep)
            add_on_run(work, run, u - run->area.u0);
    }
}

static void fill_against_wall(struct work *work)
{
    const struct wall *wall = wall_behind(work);
    const struct run *run = top_run(work);

    if (!run)
        return;
    if (wall && run->along_u)
        add_at_studs(work, run, wall);
    else
        fill_run(work, run);
    work->junction.length = run_length(run);
}

static void fill_runs(struct work *work)
{
    for (size_t i = 0; i < work->runs.count; i++) {
        fill_run(work, &work->runs.at[i]);
        if (run_length(&work->runs.at[i]) > work->junction.length)
            work->junction.length = run_length(&work->runs.at[i]);
    }
}

void place_rows(struct work *work)
{
    set_scenes(work);
    if (work->join->target == TARGET_WALL)
        fill_against_wall(work);
    else
        fill_runs(work);
}
