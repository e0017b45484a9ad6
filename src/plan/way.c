/*
 * A head lies on the inner surface of the member under it, and the driver stands behind it in line
 * with the screw, away from the mating face.
 *
 * 1  Room in line is the way from the head along the axis to the first member, fixed panel, or the
 *    floor; past the last of them it has no end.
 * 2  Room beside is the distance from the axis to what stands beside the tool over the length that
 *    the tool needs.
 * 3  In the room the box stands on the floor: nothing comes through its bottom, and the driver
 *    keeps clear of the floor.
 */
#include "plan/way.h"

#include "plan/drape.h"
#include "plan/geometry.h"
#include "plan/slices.h"

#include <assert.h>

struct solid_list {
    LIST_OF(struct solid) solids;
};

/* ---- the scene ---- */

static struct obstacles find_obstacles(const struct planning *planning, int64_t box, int64_t opened)
{
    struct slice members = plan_members_of(planning->plan, box);
    struct slice panels = plan_panels_of(planning->plan, box);
    struct solid_list list = {0};

    for (size_t i = members.from; i < members.to; i++)
        *LIST_ADD(planning->arena, &list.solids) = planning->plan->members.at[i].solid;
    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &planning->plan->panels.at[i];

        if (!panel->loose && panel->side != opened)
            *LIST_ADD(planning->arena, &list.solids) = panel->solid;
    }
    return (struct obstacles){list.solids.at, list.solids.count};
}

static int64_t floor_of(const struct planning *planning)
{
    int64_t floor = 0;

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

static bool stands_on_floor(const struct planning *planning, const struct join *join, int64_t box)
{
    return join->place == PLACE_SITE && !has_legs(planning->model) &&
           plan_pose(planning->plan, box)->at.z == floor_of(planning);
}

int64_t way_box(const struct junction *junction, bool head_in_b)
{
    return head_in_b ? junction->box_b : junction->box_a;
}

void way_open_side(struct scene *scene, int64_t side)
{
    scene->opened = side;
    scene->obstacles = find_obstacles(scene->planning, scene->box->key, side);
}

struct scene way_scene(struct planning *planning, const struct junction *junction, bool head_in_b)
{
    struct scene scene = {.planning = planning, .junction = junction, .head_in_b = head_in_b};

    scene.join = MODEL_FIND(planning->model, join, junction->join);
    scene.box = MODEL_FIND(planning->model, box, way_box(junction, head_in_b));
    assert(scene.join && scene.box);
    scene.side = point_side(planning, junction, head_in_b);
    scene.axis = side_axis(scene.side);
    scene.sign = -side_sign(scene.side);
    way_open_side(&scene, -1);
    scene.on_floor = stands_on_floor(planning, scene.join, scene.box->key);
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

/* From `at` along an axis to a solid; WAY_FREE when it lies behind or aside. A solid around `at` is
 * 0 away. */
static int64_t distance_along(const struct solid *solid, struct vector at, int axis, int sign)
{
    int64_t from = vector_along(at, axis);
    int64_t low = vector_along(solid->low, axis);
    int64_t high = vector_along(solid->high, axis);
    int64_t near = sign > 0 ? low - from : from - high;
    int64_t far = sign > 0 ? high - from : from - low;

    if (!is_in_line(solid, axis, at) || far <= 0)
        return WAY_FREE;
    return near > 0 ? near : 0;
}

int64_t way_free_along(const struct scene *scene, struct vector at, int axis, int sign)
{
    int64_t least = WAY_FREE;

    for (size_t i = 0; i < scene->obstacles.count; i++) {
        int64_t distance = distance_along(&scene->obstacles.at[i], at, axis, sign);

        least = distance < least ? distance : least;
    }
    if (scene->on_floor && axis == AXIS_Z && sign < 0 && at.z < least)
        least = at.z;
    return least;
}

static int64_t gap_to(int64_t at, int64_t low, int64_t high)
{
    return at < low ? low - at : at > high ? at - high : 0;
}

/* Across the axis, from it to a solid. */
static int64_t distance_beside(const struct solid *solid, struct vector at, int axis)
{
    int64_t square = 0;

    for (int other = 0; other < AXIS_COUNT; other++) {
        int64_t gap = other == axis
                          ? 0
                          : gap_to(vector_along(at, other), vector_along(solid->low, other),
                                   vector_along(solid->high, other));
        square += gap * gap;
    }
    return whole_root(square);
}

static int64_t beside(const struct scene *scene, struct vector head, int64_t needed)
{
    int64_t from = vector_along(head, scene->axis);
    int64_t low = scene->sign > 0 ? from : from - needed;
    int64_t high = scene->sign > 0 ? from + needed : from;
    int64_t least = scene->on_floor && scene->axis != AXIS_Z ? head.z : WAY_FREE;

    for (size_t i = 0; i < scene->obstacles.count; i++) {
        const struct solid *solid = &scene->obstacles.at[i];

        if (vector_along(solid->low, scene->axis) >= high ||
            vector_along(solid->high, scene->axis) <= low)
            continue;
        int64_t distance = distance_beside(solid, head, scene->axis);
        least = distance < least ? distance : least;
    }
    return least;
}

/* ---- tools ---- */

struct tool_size {
    int64_t length; /* beside the screw */
    int64_t radius;
};

/* The workshop's own tool where it is measured, else the trade's. */
static struct tool_size tool_size(const struct planning *planning, int64_t kind)
{
    const int64_t *value = planning->value;
    struct tool_size size = {value[TRADE_DRIVER_INLINE], value[TRADE_DRIVER_RADIUS]};

    if (kind == TOOL_LONG_BIT)
        size = (struct tool_size){value[TRADE_DRIVER_BODY] + value[TRADE_DRIVER_BIT_LONG] +
                                      value[TRADE_DRIVER_SLACK],
                                  value[TRADE_DRIVER_RADIUS_LONG_BIT]};
    else if (kind == TOOL_RIGHT_ANGLE)
        size = (struct tool_size){value[TRADE_DRIVER_RIGHT_ANGLE],
                                  value[TRADE_DRIVER_RADIUS_LONG_BIT]};
    else if (kind == TOOL_STUBBY)
        size = (struct tool_size){value[TRADE_DRIVER_STUBBY], value[TRADE_DRIVER_RADIUS_LONG_BIT]};
    for (size_t i = 0; i < planning->model->tools.count; i++) {
        const struct tool *tool = &planning->model->tools.at[i];

        if (tool->kind != kind || tool->length == 0)
            continue;
        size.length = tool->length;
        size.radius = tool->radius > 0 ? tool->radius : size.radius;
        break;
    }
    return size;
}

/* How far aside the body comes when the tool is held at the slant that a screw bears. The tangent
 * is taken as the angle in radians, a little less. */
static int64_t slant(const struct planning *planning, int64_t length)
{
    return length * planning->value[TRADE_DRIVER_OFF_AXIS] / 1000 * 17453 / 1000000;
}

/* ---- one point ---- */

struct outlook {
    enum manner manner;
    int64_t room, needed; /* WAY_FREE: no end */
    int64_t beside, beside_needed;
};

static bool tool_fits(const struct scene *scene, struct vector head, int64_t room, int64_t screw,
                      int64_t kind)
{
    struct tool_size size = tool_size(scene->planning, kind);

    return room >= size.length + screw && beside(scene, head, size.length + screw) >= size.radius;
}

static enum manner manner_beside(const struct scene *scene, struct vector head, int64_t room,
                                 int64_t screw, const struct outlook *outlook)
{
    int64_t lean = slant(scene->planning, scene->planning->value[TRADE_DRIVER_BIT] + screw);

    if (outlook->beside >= outlook->beside_needed)
        return MANNER_DRIVER;
    if (tool_fits(scene, head, room, screw, TOOL_LONG_BIT))
        return MANNER_LONG_BIT;
    if (outlook->beside + lean >= outlook->beside_needed)
        return MANNER_SLANTED;
    return MANNER_NONE;
}

static struct outlook look(const struct scene *scene, struct vector head, int64_t screw)
{
    struct tool_size driver = tool_size(scene->planning, TOOL_DRIVER);
    int64_t room = way_free_along(scene, head, scene->axis, scene->sign);
    struct outlook outlook = {MANNER_NONE, room, driver.length + screw,
                              beside(scene, head, driver.length + screw), driver.radius};

    if (room >= outlook.needed)
        outlook.manner = manner_beside(scene, head, room, screw, &outlook);
    if (outlook.manner != MANNER_NONE)
        return outlook;
    outlook.needed = tool_size(scene->planning, TOOL_RIGHT_ANGLE).length + screw;
    if (tool_fits(scene, head, room, screw, TOOL_RIGHT_ANGLE))
        outlook.manner = MANNER_RIGHT_ANGLE;
    if (outlook.manner != MANNER_NONE)
        return outlook;
    outlook.needed = tool_size(scene->planning, TOOL_STUBBY).length + screw;
    if (tool_fits(scene, head, room, screw, TOOL_STUBBY))
        outlook.manner = MANNER_STUBBY;
    return outlook;
}

struct vector way_head(const struct planning *planning, const struct junction *junction,
                       const struct plan_point *point, const struct fastening *fastening,
                       bool head_in_b)
{
    int64_t side = point_side(planning, junction, head_in_b);
    struct vector head = head_in_b ? point->in_b : point->in_a;
    int axis = side_axis(side);

    vector_set(&head, axis, vector_along(head, axis) - side_sign(side) * fastening->depth);
    return head;
}

/* ---- cloth over heads on the outside ---- */

/* A sewn cover without an open side cannot be peeled back from a head. */
static bool is_sewn_in(const struct scene *scene, int64_t side, struct vector head)
{
    const struct model *model = scene->planning->model;
    int64_t u, v;

    box_to_face(side, head, &u, &v);
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];
        bool opens = layer->left == ENDING_OPEN || layer->right == ENDING_OPEN ||
                     layer->top == ENDING_OPEN || layer->bottom == ENDING_OPEN;

        if (layer->shape == SHAPE_SEWN && !opens && scene->join->treatment == TREATMENT_OPEN &&
            drape_is_cloth(layer) && drape_is_on_box(model, layer, scene->box->key) &&
            drape_covers(scene->planning, layer, scene->box, side, u, v))
            return true;
    }
    return false;
}

/* ---- the way ---- */

static int64_t screw_length(struct planning *planning, const struct join *join,
                            const struct fastening *fastening)
{
    const struct screw_need *need = &fastening->need;

    if (join->fastener == FASTENER_BOLT)
        return need->passed + need->cloth + need->receiving + planning->value[TRADE_BOLT_BEYOND];
    struct screw_choice choice = screw_choose(planning, need);
    return choice.kind == PLAN_NONE ? choice.need
                                    : planning->plan->screw_kinds.at[choice.kind].length;
}

bool way_is_open(const struct scene *scene, const struct faces *faces,
                 const struct plan_point *point)
{
    struct fastening fastening;

    if (!fasten_reckon(scene->planning, scene->junction, faces, point, scene->head_in_b,
                       &fastening))
        return false;
    struct vector head =
        way_head(scene->planning, scene->junction, point, &fastening, scene->head_in_b);
    return look(scene, head, screw_length(scene->planning, scene->join, &fastening)).manner !=
           MANNER_NONE;
}

/* The tightest figures of two outlooks and the worse manner. */
static void add_outlook(struct way *way, const struct outlook *outlook)
{
    bool first = way->points == 0;
    int64_t spare = outlook->room == WAY_FREE ? WAY_FREE : outlook->room - outlook->needed;
    int64_t spare_before = way->room < 0 ? WAY_FREE : way->room - way->needed;

    if (first || spare < spare_before) {
        way->room = outlook->room == WAY_FREE ? -1 : outlook->room;
        way->needed = outlook->needed;
    }
    if (first || outlook->beside < way->beside) {
        way->beside = outlook->beside;
        way->beside_needed = outlook->beside_needed;
    }
    way->manner = first || outlook->manner > way->manner ? outlook->manner : way->manner;
    way->points++;
}

static void add_way_point(const struct scene *scene, const struct faces *faces,
                          const struct plan_point *point, struct way *way, struct vector *heads)
{
    struct fastening fastening;

    if (!fasten_reckon(scene->planning, scene->junction, faces, point, way->head_in_b, &fastening))
        return;
    struct vector head =
        way_head(scene->planning, scene->junction, point, &fastening, way->head_in_b);
    struct outlook outlook =
        look(scene, head, screw_length(scene->planning, scene->join, &fastening));
    int64_t opposite = side_opposite(scene->side);
    int64_t whole = vector_along(box_size(scene->box), scene->axis);

    if (fastening.depth < whole)
        way->inside = true;
    else if (is_sewn_in(scene, opposite, head))
        outlook.manner = MANNER_NONE;
    heads[way->points] = head;
    add_outlook(way, &outlook);
}

static struct way find_in(const struct scene *scene, const struct faces *faces)
{
    const struct junction *junction = scene->junction;
    const struct plan *plan = scene->planning->plan;
    struct vector *heads = ARENA_MANY(scene->planning->arena, struct vector, junction->point_count);
    struct way way = {.head_in_b = scene->head_in_b,
                      .manner = MANNER_NONE,
                      .opened = scene->opened,
                      .reach_side = side_opposite(scene->side)};

    for (size_t i = 0; i < junction->point_count; i++)
        add_way_point(scene, faces, &plan->points.at[junction->first_point + i], &way, heads);
    if (way.inside && !way_reach_side(scene, heads, way.points, &way.reach_side)) {
        way.manner = MANNER_NONE;
        way.room = 0;
    }
    assert(way.points <= junction->point_count);
    return way;
}

struct way way_find(struct planning *planning, const struct junction *junction,
                    const struct faces *faces, bool head_in_b)
{
    if (way_box(junction, head_in_b) == 0)
        return (struct way){.head_in_b = head_in_b, .manner = MANNER_NONE, .opened = -1};
    struct scene scene = way_scene(planning, junction, head_in_b);
    struct way way = find_in(&scene, faces);

    for (size_t i = 0; i < SIDE_COUNT && scene.join->place == PLACE_BENCH; i++) {
        if (way.manner != MANNER_NONE || way_sides[i] == scene.side)
            continue;
        way_open_side(&scene, way_sides[i]);
        struct way opened = find_in(&scene, faces);
        if (opened.manner != MANNER_NONE)
            way = opened;
    }
    return way;
}
