/*
 * A head lies on the inner surface of the member under it, and the driver stands behind it in line
 * with the screw, away from the mating face.
 *
 * 1  Room in line is the way from the head along the axis to the first member, fixed panel, or the
 *    floor; past the last of them it has no end.
 * 2  Room beside is the distance from the axis to what stands beside the tool over the length that
 *    the tool needs.
 * 3  In the room the box stands on the floor: nothing comes through its bottom, and the driver
 *    keeps clear of the floor. What is fixed to a wall or the floor has all walls round it.
 * 4  Other boxes, and walls while the box stands free, are no part of the scene: they come later,
 *    and hold the join before what sets them there (access_held.c).
 */
#include "plan/scene.h"

#include "plan/geometry.h"
#include "plan/slices.h"

#include <assert.h>

#define FAR_OUT (FIELDS_ROOM)

struct obstacle_list {
    LIST_OF(struct obstacle) obstacles;
};

/* ---- what stands there ---- */

static void add_obstacle(const struct planning *planning, struct obstacle_list *list,
                         struct solid solid, enum blocker_kind kind, int64_t item)
{
    if (!solid_empty(&solid))
        *LIST_ADD(planning->arena, &list->obstacles) = (struct obstacle){solid, kind, item};
}

/* A hole that lets a hand or at least a tool through. */
static bool is_access_hole(const struct planning *planning, const struct cutout *cutout,
                           const struct panel *panel)
{
    int64_t least = 2 * planning->value[TRADE_DRIVER_RADIUS];

    return cutout->box == panel->box && cutout->side == panel->side && cutout->width >= least &&
           cutout->height >= least;
}

/* What is left of a piece of panel beside a hole: strips left and right of it, below and above. */
static void split_round(const struct planning *planning, const struct box *box, int64_t side,
                        struct obstacle_list *list, const struct area *hole)
{
    size_t count = list->obstacles.count;

    for (size_t i = 0; i < count; i++) {
        struct obstacle *piece = &list->obstacles.at[i];
        struct area area = solid_on_side(&piece->solid, side);
        struct area cut = area_cut(&area, hole);
        struct obstacle whole = *piece;
        const struct area strips[] = {{area.u0, area.v0, cut.u0, area.v1},
                                      {cut.u1, area.v0, area.u1, area.v1},
                                      {cut.u0, area.v0, cut.u1, cut.v0},
                                      {cut.u0, cut.v1, cut.u1, area.v1}};

        if (area_empty(&cut))
            continue;
        piece->solid = (struct solid){{0}, {0}};
        for (size_t j = 0; j < sizeof strips / sizeof *strips; j++)
            if (!area_empty(&strips[j])) {
                int axis = side_axis(side);
                struct solid strip = solid_behind(box, side, &strips[j], 0, 1);

                vector_set(&strip.low, axis, vector_along(whole.solid.low, axis));
                vector_set(&strip.high, axis, vector_along(whole.solid.high, axis));
                add_obstacle(planning, list, strip, whole.kind, whole.item);
            }
    }
}

static void add_panel(const struct planning *planning, const struct box *box,
                      const struct panel *panel, struct obstacle_list *list)
{
    const struct model *model = planning->model;
    struct obstacle_list pieces = {0};

    add_obstacle(planning, &pieces, panel->solid, BLOCKER_FACING, panel->facing);
    for (size_t i = 0; i < model->cutouts.count; i++) {
        const struct cutout *cutout = &model->cutouts.at[i];
        struct area hole = {cutout->u, cutout->v, cutout->u + cutout->width,
                            cutout->v + cutout->height};

        if (is_access_hole(planning, cutout, panel))
            split_round(planning, box, panel->side, &pieces, &hole);
    }
    for (size_t i = 0; i < pieces.obstacles.count; i++)
        if (!solid_empty(&pieces.obstacles.at[i].solid))
            *LIST_ADD(planning->arena, &list->obstacles) = pieces.obstacles.at[i];
}

/* Half of the room, seen from a box that does not lean. */
static void add_wall(const struct scene *scene, const struct wall *wall, struct obstacle_list *list)
{
    const struct planning *planning = scene->planning;
    const struct pose *pose = plan_pose(planning->plan, scene->box->key);
    struct pose room = {.box = pose->box};
    struct solid half = {{-FAR_OUT, -FAR_OUT, -FAR_OUT}, {FAR_OUT, FAR_OUT, FAR_OUT}};

    vector_set(side_sign(wall->side) > 0 ? &half.low : &half.high, side_axis(wall->side),
               vicinity_wall(scene->vicinity, wall));
    half = pose_block_across(&room, scene->box, pose, scene->box, &half);
    add_obstacle(planning, list, half, BLOCKER_WALL, wall->key);
}

/* What is fixed to the room is at its place when its screws are driven, with the walls round it. */
static void add_walls(const struct scene *scene, struct obstacle_list *list)
{
    const struct model *model = scene->planning->model;
    bool in_room = scene->join->target == TARGET_WALL || scene->join->target == TARGET_FLOOR;

    for (size_t i = 0; in_room && scene->box->lean == 0 && i < model->walls.count; i++)
        add_wall(scene, &model->walls.at[i], list);
}

static struct obstacles find_obstacles(const struct scene *scene, int64_t opened)
{
    const struct planning *planning = scene->planning;
    const struct box *box = scene->box;
    struct slice members = plan_members_of(planning->plan, box->key);
    struct slice panels = plan_panels_of(planning->plan, box->key);
    struct obstacle_list list = {0};

    assert(opened == -1 || (opened >= 0 && opened < SIDE_COUNT));
    for (size_t i = members.from; i < members.to; i++)
        add_obstacle(planning, &list, planning->plan->members.at[i].solid, BLOCKER_MEMBER,
                     (int64_t)i);
    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &planning->plan->panels.at[i];

        if (!panel->loose && panel->side != opened)
            add_panel(planning, box, panel, &list);
    }
    add_walls(scene, &list);
    return (struct obstacles){list.obstacles.at, list.obstacles.count};
}

static int64_t floor_of(const struct planning *planning)
{
    int64_t floor = 0;

    assert(planning->plan->poses.count > 0);
    for (size_t i = 0; i < planning->plan->poses.count; i++) {
        int64_t z = planning->plan->poses.at[i].at.z;

        floor = i == 0 || z < floor ? z : floor;
    }
    return floor;
}

static bool has_legs(const struct model *model)
{
    for (size_t i = 0; i < model->fittings.count; i++) {
        if (model->fittings.at[i].kind == FITTING_LEG)
            return true;
    }
    return false;
}

/* A plinth under it, or under its neighbour, lifts a box less than a hand needs. */
static bool stands_on_floor(const struct planning *planning, const struct join *join,
                            int64_t raised)
{
    return join->place == PLACE_SITE && !has_legs(planning->model) &&
           raised < planning->value[TRADE_HAND_HOLE_WIDTH];
}

int64_t way_box(const struct junction *junction, bool head_in_b)
{
    return head_in_b ? junction->box_b : junction->box_a;
}

void way_open_side(struct scene *scene, int64_t side)
{
    if (scene->obstacles.at && scene->opened == side)
        return;
    scene->opened = side;
    scene->obstacles = find_obstacles(scene, side);
}

struct scene way_scene(const struct vicinity *vicinity, const struct junction *junction,
                       bool head_in_b)
{
    struct planning *planning = vicinity->planning;
    struct scene scene = {
        .planning = planning, .junction = junction, .vicinity = vicinity, .head_in_b = head_in_b};

    scene.join = MODEL_FIND(planning->model, join, junction->join);
    scene.box = MODEL_FIND(planning->model, box, way_box(junction, head_in_b));
    assert(scene.join && scene.box);
    scene.side = point_side(planning, junction, head_in_b);
    scene.axis = side_axis(scene.side);
    scene.sign = -side_sign(scene.side);
    way_open_side(&scene, -1);
    scene.raised = plan_pose(planning->plan, scene.box->key)->at.z - floor_of(planning);
    scene.on_floor = stands_on_floor(planning, scene.join, scene.raised);
    assert(scene.sign == 1 || scene.sign == -1);
    return scene;
}

/* ---- free distances ---- */

static bool holds(const struct solid *solid, int axis, int64_t at)
{
    return vector_along(solid->low, axis) <= at && at < vector_along(solid->high, axis);
}

static bool is_in_line(const struct solid *solid, int axis, struct vector at)
{
    for (int other = 0; other < AXIS_COUNT; other++) {
        if (other != axis && !holds(solid, other, vector_along(at, other)))
            return false;
    }
    return true;
}

int64_t obstacle_ahead(const struct solid *solid, struct vector at, int axis, int sign)
{
    int64_t from = vector_along(at, axis);
    int64_t low = vector_along(solid->low, axis);
    int64_t high = vector_along(solid->high, axis);
    int64_t near = sign > 0 ? low - from : from - high;
    int64_t far = sign > 0 ? high - from : from - low;

    assert(sign == 1 || sign == -1);
    assert(low <= high);
    if (!is_in_line(solid, axis, at) || far <= 0)
        return WAY_FREE;
    return near > 0 ? near : 0;
}

int64_t way_free_along(const struct scene *scene, struct vector at, int axis, int sign)
{
    int64_t least = WAY_FREE;

    for (size_t i = 0; i < scene->obstacles.count; i++)
        least =
            length_smaller(least, obstacle_ahead(&scene->obstacles.at[i].solid, at, axis, sign));
    if (scene->on_floor && axis == AXIS_Z && sign < 0)
        least = length_smaller(least, at.z + scene->raised);
    return least;
}

int64_t obstacle_beside(const struct solid *solid, struct vector at, int axis)
{
    int64_t square = 0;

    for (int other = 0; other < AXIS_COUNT; other++) {
        int64_t gap = other == axis
                          ? 0
                          : length_outside(vector_along(at, other), vector_along(solid->low, other),
                                           vector_along(solid->high, other));
        square += gap * gap;
    }
    return whole_root(square);
}

int64_t way_free_beside(const struct scene *scene, struct vector head, int64_t needed)
{
    int64_t from = vector_along(head, scene->axis);
    int64_t low = scene->sign > 0 ? from : from - needed;
    int64_t high = scene->sign > 0 ? from + needed : from;
    int64_t least = scene->on_floor && scene->axis != AXIS_Z ? head.z + scene->raised : WAY_FREE;

    for (size_t i = 0; i < scene->obstacles.count; i++) {
        const struct solid *solid = &scene->obstacles.at[i].solid;

        if (vector_along(solid->low, scene->axis) >= high ||
            vector_along(solid->high, scene->axis) <= low)
            continue;
        int64_t distance = obstacle_beside(solid, head, scene->axis);
        least = distance < least ? distance : least;
    }
    return least;
}
