/*
 * Where joins are screwed. For every join the mating zone is found through the poses, the runs with
 * wood on both sides are laid out in it, and points are spread on those.
 *
 * 1  What was drilled is a fact: a join with holes has these points and those given by hand, and no
 *    others; no default moves them. A join with points by hand alone has just those.
 * 2  A join that is laid on, left out or faces nothing has a zone and no points.
 * 3  Points of a join lie together in the plan's list, in order of rank.
 * 4  Distances are taken from the same two edges along a whole run, so that the maker reads one
 *    side of the rule: of two edges equally near, the left, back or bottom one.
 *
 * Which side the heads are on, and so the screw, is decided by the pass `access`.
 */
#include "plan/point.h"

#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/run.h"
#include "plan/way.h"

#include <assert.h>

/* Faces further apart than this do not meet, cloth and rounding apart. */
#define FACES_MEET (6 * LENGTH_MM)

/* One join while its points are made. */
struct work {
    struct planning *planning;
    const struct join *join;
    const struct box *a, *b; /* b NULL without a second box */
    struct junction junction;
    struct faces faces;
    struct runs runs;
    struct scene from_a, from_b; /* sides that the heads may be on; without a box where not */
};

/* ---- from box to box ---- */

struct vector point_to_b(const struct planning *planning, const struct junction *junction,
                         struct vector in_a)
{
    const struct box *a = MODEL_FIND(planning->model, box, junction->box_a);
    const struct box *b = MODEL_FIND(planning->model, box, junction->box_b);

    assert(a && b);
    return pose_to_box(plan_pose(planning->plan, b->key), b,
                       pose_to_room(plan_pose(planning->plan, a->key), a, in_a));
}

struct vector point_to_a(const struct planning *planning, const struct junction *junction,
                         struct vector in_b)
{
    const struct box *a = MODEL_FIND(planning->model, box, junction->box_a);
    const struct box *b = MODEL_FIND(planning->model, box, junction->box_b);

    assert(a && b);
    return pose_to_box(plan_pose(planning->plan, a->key), a,
                       pose_to_room(plan_pose(planning->plan, b->key), b, in_b));
}

int64_t point_side(const struct planning *planning, const struct junction *junction, bool of_b)
{
    const struct join *join = MODEL_FIND(planning->model, join, junction->join);

    assert(join);
    return of_b ? join->side_b : join->side_a;
}

void point_on_face(const struct planning *planning, const struct junction *junction,
                   const struct plan_point *point, bool of_b, int64_t *ret_u, int64_t *ret_v)
{
    if (of_b) {
        box_to_face(point_side(planning, junction, true), point->in_b, ret_u, ret_v);
    } else {
        *ret_u = point->u;
        *ret_v = point->v;
    }
}

static struct area area_between(int64_t side, struct vector p, struct vector q)
{
    int64_t u0, v0, u1, v1;

    box_to_face(side, p, &u0, &v0);
    box_to_face(side, q, &u1, &v1);
    return (struct area){u0 < u1 ? u0 : u1, v0 < v1 ? v0 : v1, u0 < u1 ? u1 : u0,
                         v0 < v1 ? v1 : v0};
}

static struct area area_to_a(const struct work *work, const struct area *on_b)
{
    int64_t side = work->join->side_b;
    struct vector low = face_to_box(work->b, side, on_b->u0, on_b->v0);
    struct vector high = face_to_box(work->b, side, on_b->u1, on_b->v1);

    return area_between(work->join->side_a, point_to_a(work->planning, &work->junction, low),
                        point_to_a(work->planning, &work->junction, high));
}

static struct area area_to_b(const struct work *work, const struct area *on_a)
{
    int64_t side = work->join->side_a;
    struct vector low = face_to_box(work->a, side, on_a->u0, on_a->v0);
    struct vector high = face_to_box(work->a, side, on_a->u1, on_a->v1);

    return area_between(work->join->side_b, point_to_b(work->planning, &work->junction, low),
                        point_to_b(work->planning, &work->junction, high));
}

/* ---- zone ---- */

static bool sides_face(const struct work *work)
{
    const struct plan *plan = work->planning->plan;
    int turn_a = plan_pose(plan, work->a->key)->turn;
    int turn_b = plan_pose(plan, work->b->key)->turn;

    int64_t looks_to = side_turned(work->join->side_a, (4 - turn_a) % 4);

    return side_turned(side_opposite(looks_to), turn_b) == work->join->side_b;
}

static int64_t gap_between(const struct work *work)
{
    int axis = side_axis(work->join->side_a);
    struct vector here = face_to_box(work->a, work->join->side_a, 0, 0);
    struct vector there =
        point_to_a(work->planning, &work->junction, face_to_box(work->b, work->join->side_b, 0, 0));
    int64_t gap = vector_along(there, axis) - vector_along(here, axis);

    return gap < 0 ? -gap : gap;
}

static void find_zone(struct work *work)
{
    struct area face = face_area(work->a, work->join->side_a);
    struct junction *junction = &work->junction;

    junction->zone = face;
    if (!work->b)
        return;
    struct area face_b = face_area(work->b, work->join->side_b);
    struct area there = area_to_a(work, &face_b);
    junction->zone = area_cut(&face, &there);
    if (!sides_face(work) || gap_between(work) > FACES_MEET || area_empty(&junction->zone)) {
        finding_add(work->planning, FINDING_JOIN_FACES_APART, ENTITY_join, work->join->key);
        junction->zone = (struct area){0};
        return;
    }
    junction->zone_b = area_to_b(work, &junction->zone);
}

/* ---- runs ---- */

static void add_wood(const struct work *work, struct patchwork *patchwork, struct area area,
                     bool end_grain)
{
    if (end_grain)
        *LIST_ADD(work->planning->arena, &patchwork->end_grain) = area;
    else
        *LIST_ADD(work->planning->arena, &patchwork->side_grain) = area;
}

static void find_runs(struct work *work)
{
    struct patchwork a = {0};
    struct patchwork b = {0};

    for (size_t i = 0; i < work->faces.a.count; i++)
        add_wood(work, &a, work->faces.a.at[i].area, work->faces.a.at[i].end_grain);
    for (size_t i = 0; work->b && i < work->faces.b.count; i++)
        add_wood(work, &b, area_to_a(work, &work->faces.b.at[i].area),
                 work->faces.b.at[i].end_grain);
    if (!work->b)
        add_wood(work, &b, work->junction.zone, false);
    struct runs all = run_find(work->planning, &work->junction.zone, &a, &b);
    work->runs = run_choose(work->planning, work->join, &work->junction.zone, &all);
    if (all.count == 0)
        finding_add(work->planning, FINDING_JOIN_NO_WOOD, ENTITY_join, work->join->key);
}

/* ---- points ---- */

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
    struct area about_b = area_to_b(work, about);
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

static struct plan_point *add_point(struct work *work, int64_t u, int64_t v,
                                    const struct area *about)
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

    add_point(work, place.u, place.v, &run->area);
}

/* ---- out of the way ---- */

/* No frame screw of the box passes near the axis. */
static bool is_clear_in(const struct work *work, int64_t box, const struct screw_axis *axis)
{
    const struct plan *plan = work->planning->plan;

    for (size_t i = 0; i < plan->screws.count; i++) {
        const struct screw *screw = &plan->screws.at[i];

        if (screw->box != box || screw->use != SCREW_FRAME)
            continue;
        struct screw_axis other = screw_axis_of(plan, screw);
        if (screw_clear(axis, &other) < work->planning->value[TRADE_CROSS_CLEAR_REJECT])
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
    if (!is_clear_in(work, work->a->key, &in_a))
        return false;
    if (!work->b)
        return true;
    struct screw_axis in_b = {point_to_b(work->planning, &work->junction, in_a.head),
                              point_to_b(work->planning, &work->junction, in_a.tip), in_a.diameter};
    return is_clear_in(work, work->b->key, &in_b);
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
    for (int64_t i = 0; i < count; i++) {
        int64_t wanted = end + whole_divide_even(between * i, count - 1);

        add_on_run(work, run, nudge(work, run, wanted, pitch / 2 - LENGTH_INCH));
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

/* ---- what was taken ---- */

static bool is_point(const struct work *work, int64_t u, int64_t v)
{
    const struct plan *plan = work->planning->plan;

    for (size_t i = work->junction.first_point; i < plan->points.count; i++) {
        if (plan->points.at[i].u == u && plan->points.at[i].v == v)
            return true;
    }
    return false;
}

static void add_taken(struct work *work, int64_t u, int64_t v, int64_t rank)
{
    struct area about = {u, v, u, v};
    struct plan_point *point = add_point(work, u, v, &about);

    point->taken = true;
    if (rank > 0)
        point->rank = (int)rank;
}

static void sort_by_rank(struct work *work)
{
    struct plan_point *at = &work->planning->plan->points.at[work->junction.first_point];

    for (size_t i = 1; i < work->junction.point_count; i++) {
        for (size_t j = i; j > 0 && at[j].rank < at[j - 1].rank; j--) {
            struct plan_point lower = at[j];

            at[j] = at[j - 1];
            at[j - 1] = lower;
        }
    }
}

/* Holes that were drilled, then points by hand; false when there are neither. */
static bool take_points(struct work *work)
{
    const struct model *model = work->planning->model;

    for (size_t i = 0; i < model->holes.count; i++) {
        const struct hole *hole = &model->holes.at[i];

        if (hole->join == work->join->key)
            add_taken(work, hole->u, hole->v, hole->rank);
    }
    for (size_t i = 0; i < model->points.count; i++) {
        const struct point *point = &model->points.at[i];

        if (point->join == work->join->key && !is_point(work, point->u, point->v))
            add_taken(work, point->u, point->v, 0);
    }
    if (work->junction.point_count == 0)
        return false;
    sort_by_rank(work);
    return true;
}

/* ---- a join ---- */

static bool is_left_out(const struct model *model, int64_t join)
{
    for (size_t i = 0; i < model->left_outs.count; i++) {
        if (model->left_outs.at[i].join == join)
            return true;
    }
    return false;
}

/* Landings are notched round a screw and so add nothing there. */
static bool is_landing(const struct work *work, const struct layer *layer, const struct box *box,
                       int64_t side, int64_t u, int64_t v)
{
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        struct landing landing = drape_landing(work->planning, layer, box, edge);
        const struct area *area = &landing.area;

        if (landing.side == side && area->u0 <= u && u < area->u1 && area->v0 <= v && v < area->v1)
            return true;
    }
    return false;
}

static bool is_under(const struct work *work, const struct layer *layer, bool of_b)
{
    const struct planning *planning = work->planning;
    const struct box *box = of_b ? work->b : work->a;
    int64_t side = of_b ? work->join->side_b : work->join->side_a;
    int64_t u, v;

    for (size_t i = 0; i < work->junction.point_count; i++) {
        const struct plan_point *point = &planning->plan->points.at[work->junction.first_point + i];

        point_on_face(planning, &work->junction, point, of_b, &u, &v);
        if (drape_covers(planning, layer, box, side, u, v) &&
            !is_landing(work, layer, box, side, u, v))
            return true;
    }
    return false;
}

static bool is_covered(const struct work *work, bool of_b)
{
    const struct model *model = work->planning->model;
    const struct box *box = of_b ? work->b : work->a;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if (drape_is_cloth(layer) && drape_is_on_box(model, layer, box->key) &&
            is_under(work, layer, of_b))
            return true;
    }
    return false;
}

/* Pressed cloth in the joint: only what lies under the points is pressed by them. */
static int64_t cloth_between(const struct work *work)
{
    int64_t per_face = work->planning->value[TRADE_JOINT_CLOTH_PER_FACE];

    if (work->join->cloth > 0)
        return work->join->cloth;
    return per_face * (is_covered(work, false) + (work->b && is_covered(work, true)));
}

static void tell_few(struct work *work)
{
    const int64_t *value = work->planning->value;
    int64_t count = (int64_t)work->junction.point_count;
    int64_t wanted = value[work->junction.length > value[TRADE_JOIN_LONG] ? TRADE_JOIN_LEAST_LONG
                                                                          : TRADE_JOIN_LEAST];
    if (work->join->count > 0)
        wanted = work->join->count;
    if (count == 0 || count >= wanted)
        return;
    struct finding *finding =
        finding_add(work->planning, FINDING_JOIN_FEW_POINTS, ENTITY_join, work->join->key);
    argument_quantity(finding, 0, QUANTITY_COUNT, count);
    argument_quantity(finding, 1, QUANTITY_COUNT, wanted);
}

static void place_points(struct work *work)
{
    work->faces = fasten_faces(work->planning, &work->junction);
    find_runs(work);
    if (!take_points(work)) {
        set_scenes(work);
        if (work->join->target == TARGET_WALL)
            fill_against_wall(work);
        else
            fill_runs(work);
        tell_few(work);
    }
    work->junction.cloth = cloth_between(work);
}

static void plan_join(struct planning *planning, const struct join *join)
{
    struct work work = {.planning = planning, .join = join};
    bool has_b = join->target == TARGET_BOX;

    work.a = MODEL_FIND(planning->model, box, join->box_a);
    work.b = has_b ? MODEL_FIND(planning->model, box, join->box_b) : NULL;
    work.junction = (struct junction){.join = join->key,
                                      .box_a = join->box_a,
                                      .box_b = work.b ? join->box_b : 0,
                                      .first_point = planning->plan->points.count,
                                      .head_box = join->box_a,
                                      .room = -1};
    if (work.a && (work.b || !has_b)) {
        find_zone(&work);
        if (join->fastener != FASTENER_REST && !area_empty(&work.junction.zone) &&
            !is_left_out(planning->model, join->key))
            place_points(&work);
    }
    *LIST_ADD(planning->arena, &planning->plan->junctions) = work.junction;
}

void pass_point(struct planning *planning)
{
    for (size_t i = 0; i < planning->model->joins.count; i++)
        plan_join(planning, &planning->model->joins.at[i]);
}
