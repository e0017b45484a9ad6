/*
 * The ways to the heads of one side of a join: every head is looked at for the best manner in which
 * a tool fits behind it, and a way is as good as the worst of its heads.
 */
#include "plan/way.h"

#include "plan/drape.h"
#include "plan/geometry.h"
#include "plan/layers.h"
#include "plan/slices.h"
#include "plan/tool.h"

#include <assert.h>

/* ---- tools ---- */

#define MICRORADIANS 17453 /* in a degree, rounded down */

/* How far aside the body comes when the tool is held at the slant that a screw bears. The tangent
 * is taken as the angle in radians, a little less. */
static int64_t slant(const struct planning *planning, int64_t length)
{
    return length * planning->value[TRADE_DRIVER_OFF_AXIS] / 1000 * MICRORADIANS / 1000000;
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

    return room >= size.length + screw &&
           way_free_beside(scene, head, size.length + screw) >= size.radius;
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
                              way_free_beside(scene, head, driver.length + screw), driver.radius};

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
    assert(outlook.manner == MANNER_NONE || outlook.room >= outlook.needed);
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

/* What a tool takes beside the screw when it is held as the manner has it. */
static struct tool_size size_in_manner(const struct planning *planning, enum manner manner,
                                       int64_t screw)
{
    static const int64_t kinds[] = {
        [MANNER_DRIVER] = TOOL_DRIVER,  [MANNER_LONG_BIT] = TOOL_LONG_BIT,
        [MANNER_SLANTED] = TOOL_DRIVER, [MANNER_RIGHT_ANGLE] = TOOL_RIGHT_ANGLE,
        [MANNER_STUBBY] = TOOL_STUBBY,  [MANNER_NONE] = TOOL_STUBBY};
    struct tool_size size = tool_size(planning, kinds[manner]);

    assert(manner <= MANNER_NONE);
    if (manner == MANNER_SLANTED)
        size.radius -= slant(planning, planning->value[TRADE_DRIVER_BIT] + screw);
    return size;
}

/* ---- cloth over heads on the outside ---- */

static bool has_open_edge(const struct layer *layer)
{
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++)
        if (layer_ending(layer, edge) == ENDING_OPEN)
            return true;
    return false;
}

/* The sewn cover without an open side that cannot be peeled back from a head; NULL for none. */
static const struct layer *sewn_over(const struct scene *scene, int64_t side, struct vector head)
{
    const struct model *model = scene->planning->model;
    int64_t u, v;

    box_to_face(side, head, &u, &v);
    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if (layer->shape == SHAPE_SEWN && !has_open_edge(layer) &&
            scene->join->treatment == TREATMENT_OPEN && drape_is_cloth(layer) &&
            layer_touches(model, layer, scene->box->key) &&
            drape_covers(scene->planning, layer, scene->box, side, u, v))
            return layer;
    }
    return NULL;
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

static struct screw_head find_head(const struct scene *scene, const struct faces *faces,
                                   const struct plan_point *point)
{
    struct fastening fastening;

    if (!fasten_reckon(scene->planning, scene->junction, faces, point, scene->head_in_b,
                       &fastening))
        return (struct screw_head){.there = false};
    return (struct screw_head){
        true, way_head(scene->planning, scene->junction, point, &fastening, scene->head_in_b),
        fastening.depth, screw_length(scene->planning, scene->join, &fastening)};
}

void way_see_heads(struct scene *scene, const struct faces *faces)
{
    const struct junction *junction = scene->junction;
    struct screw_head *heads =
        ARENA_MANY(scene->planning->arena, struct screw_head, junction->point_count);

    for (size_t i = 0; i < junction->point_count; i++)
        heads[i] =
            find_head(scene, faces, &scene->planning->plan->points.at[junction->first_point + i]);
    scene->heads = heads;
}

bool way_is_open(const struct scene *scene, const struct faces *faces,
                 const struct plan_point *point)
{
    struct screw_head head = find_head(scene, faces, point);

    return head.there && look(scene, head.at, head.screw).manner != MANNER_NONE;
}

struct solid way_tool_room(const struct scene *scene, const struct screw_head *head,
                           enum manner manner)
{
    struct tool_size size = size_in_manner(scene->planning, manner, head->screw);
    struct vector at = head->at;
    struct solid room = {{at.x - size.radius, at.y - size.radius, at.z - size.radius},
                         {at.x + size.radius, at.y + size.radius, at.z + size.radius}};
    int64_t from = vector_along(at, scene->axis);
    int64_t to = from + scene->sign * (size.length + head->screw);

    vector_set(&room.low, scene->axis, length_smaller(from, to));
    vector_set(&room.high, scene->axis, length_larger(from, to));
    return room;
}

/* What is seen of a join's heads from one side, with one side opened. */
struct sight {
    struct vector *heads;
    struct outlook *outlooks;
    int64_t *screws; /* their lengths */
    size_t count;
    bool inside;
};

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

static void see_head(const struct scene *scene, const struct screw_head *head, struct sight *sight)
{
    struct outlook outlook = look(scene, head->at, head->screw);
    int64_t whole = vector_along(box_size(scene->box), scene->axis);

    assert(head->there && sight->count < scene->junction->point_count);
    if (head->depth < whole)
        sight->inside = true;
    else if (sewn_over(scene, side_opposite(scene->side), head->at))
        outlook.manner = MANNER_NONE;
    sight->heads[sight->count] = head->at;
    sight->screws[sight->count] = head->screw;
    sight->outlooks[sight->count++] = outlook;
}

static struct sight see(const struct scene *scene)
{
    size_t count = scene->junction->point_count;
    struct arena *arena = scene->planning->arena;
    struct sight sight = {.heads = ARENA_MANY(arena, struct vector, count),
                          .outlooks = ARENA_MANY(arena, struct outlook, count),
                          .screws = ARENA_MANY(arena, int64_t, count)};

    assert(scene->heads);
    for (size_t i = 0; i < count; i++)
        if (scene->heads[i].there)
            see_head(scene, &scene->heads[i], &sight);
    return sight;
}

static struct way way_seen(const struct scene *scene, const struct sight *sight)
{
    struct way way = {.head_in_b = scene->head_in_b,
                      .manner = MANNER_NONE,
                      .inside = sight->inside,
                      .opened = scene->opened,
                      .reach_side = side_opposite(scene->side)};

    for (size_t i = 0; i < sight->count; i++)
        add_outlook(&way, &sight->outlooks[i]);
    return way;
}

/* The same way with a slimmer or shorter tool, where that fits at every point; false where it does
 * not. */
static bool change_tool(const struct scene *scene, const struct sight *sight, enum manner manner,
                        struct way *way)
{
    int64_t kind = manner == MANNER_STUBBY     ? TOOL_STUBBY
                   : manner == MANNER_LONG_BIT ? TOOL_LONG_BIT
                                               : TOOL_RIGHT_ANGLE;
    int64_t length = tool_size(scene->planning, kind).length;

    assert(manner == MANNER_LONG_BIT || manner == MANNER_RIGHT_ANGLE || manner == MANNER_STUBBY);
    assert(sight->count > 0 && way->points == sight->count);
    for (size_t i = 0; i < sight->count; i++)
        if (!tool_fits(scene, sight->heads[i], sight->outlooks[i].room, sight->screws[i], kind))
            return false;
    way->manner = manner;
    way->needed = length + sight->screws[0];
    return true;
}

static void add_way(const struct scene *scene, const struct sight *sight, const struct way *way,
                    struct ways *ways)
{
    *LIST_ADD(scene->planning->arena, &ways->ways) = *way;
    for (enum manner shorter = MANNER_RIGHT_ANGLE; shorter < MANNER_NONE; shorter++) {
        struct way other = *way;

        if (shorter > way->manner && change_tool(scene, sight, shorter, &other))
            *LIST_ADD(scene->planning->arena, &ways->ways) = other;
    }
}

bool way_with_long_bit(const struct scene *scene, struct way *way)
{
    struct sight sight = see(scene);

    assert(scene->opened == way->opened);
    return way->manner == MANNER_DRIVER && change_tool(scene, &sight, MANNER_LONG_BIT, way);
}

/* Of the faces that a hand can come through each gives a way; heads on the outside have one. */
static bool add_ways(const struct scene *scene, struct ways *ways, struct way *ret_shut)
{
    struct sight sight = see(scene);
    struct way way = way_seen(scene, &sight);
    bool reached = !sight.inside;

    for (size_t i = 0; sight.inside && i < SIDE_COUNT; i++) {
        struct way through = way;

        if (!way_reaches(scene, way_sides[i], sight.heads, sight.count, &through))
            continue;
        if (way.manner != MANNER_NONE)
            add_way(scene, &sight, &through, ways);
        reached = true;
    }
    if (way.manner != MANNER_NONE && !sight.inside)
        add_way(scene, &sight, &way, ways);
    *ret_shut = way;
    ret_shut->manner = MANNER_NONE;
    ret_shut->room = reached ? way.room : 0;
    return reached && way.manner != MANNER_NONE;
}

void ways_find(struct scene *scene, struct ways *ways)
{
    struct way shut, ignored;

    way_open_side(scene, -1);
    bool found = add_ways(scene, ways, &shut);
    bool may_open = scene->join->place == PLACE_BENCH && (shut.inside || !found);
    for (size_t i = 0; may_open && i < SIDE_COUNT; i++) {
        if (way_sides[i] == scene->side ||
            !plan_is_panelled(scene->planning->plan, scene->box->key, way_sides[i]))
            continue;
        way_open_side(scene, way_sides[i]);
        found |= add_ways(scene, ways, &ignored);
    }
    if (!found)
        *LIST_ADD(scene->planning->arena, &ways->ways) = shut;
    assert(ways->ways.count > 0);
}

/* ---- what shuts them ---- */

static void add_shut(const struct planning *planning, struct blockers *blockers,
                     enum blocker_kind kind, int64_t item)
{
    for (size_t i = 0; i < blockers->blockers.count; i++)
        if (blockers->blockers.at[i].kind == kind && blockers->blockers.at[i].item == item)
            return;
    *LIST_ADD(planning->arena, &blockers->blockers) = (struct blocker){kind, item, true};
}

static void add_nearest(const struct scene *scene, struct vector head, int64_t needed,
                        struct blockers *blockers)
{
    int64_t room = way_free_along(scene, head, scene->axis, scene->sign);
    bool found = false;

    for (size_t i = 0; room < needed && i < scene->obstacles.count; i++) {
        const struct obstacle *obstacle = &scene->obstacles.at[i];

        if (obstacle_ahead(&obstacle->solid, head, scene->axis, scene->sign) != room)
            continue;
        add_shut(scene->planning, blockers, obstacle->kind, obstacle->item);
        found = true;
    }
    if (room < needed && !found)
        add_shut(scene->planning, blockers, BLOCKER_FLOOR, 0);
}

/* What stands beside the tool where it is tightest. */
static void add_beside(const struct scene *scene, struct vector head, const struct outlook *outlook,
                       struct blockers *blockers)
{
    assert(outlook->room >= outlook->needed);
    for (size_t i = 0; i < scene->obstacles.count; i++) {
        const struct obstacle *obstacle = &scene->obstacles.at[i];

        if (obstacle_beside(&obstacle->solid, head, scene->axis) == outlook->beside &&
            outlook->beside < outlook->beside_needed)
            add_shut(scene->planning, blockers, obstacle->kind, obstacle->item);
    }
}

static void add_sewn(const struct scene *scene, struct vector head, struct blockers *blockers)
{
    const struct layer *layer = sewn_over(scene, side_opposite(scene->side), head);

    if (layer)
        add_shut(scene->planning, blockers, BLOCKER_LAYER, layer->key);
}

static void add_panels(const struct scene *scene, int64_t side, struct blockers *blockers)
{
    const struct plan *plan = scene->planning->plan;
    struct slice panels = plan_panels_of(plan, scene->box->key);

    assert(side >= 0 && side < SIDE_COUNT);
    for (size_t i = panels.from; i < panels.to; i++)
        if (!plan->panels.at[i].loose && plan->panels.at[i].side == side)
            add_shut(scene->planning, blockers, BLOCKER_FACING, plan->panels.at[i].facing);
}

static bool opening_helps(const struct scene *scene, int64_t side)
{
    struct scene opened = *scene;
    struct ways ways = {0};
    struct way shut;

    way_open_side(&opened, side);
    return add_ways(&opened, &ways, &shut);
}

static void add_all_panels(const struct scene *scene, struct blockers *blockers)
{
    bool helps = false;

    for (int64_t side = 0; side < SIDE_COUNT; side++) {
        if (side == scene->side ||
            !plan_is_panelled(scene->planning->plan, scene->box->key, side) ||
            !opening_helps(scene, side))
            continue;
        add_panels(scene, side, blockers);
        helps = true;
    }
    for (int64_t side = 0; side < SIDE_COUNT && !helps; side++)
        if (side != scene->side)
            add_panels(scene, side, blockers);
}

void way_find_shut(struct scene *scene, struct blockers *blockers)
{
    struct sight sight;

    way_open_side(scene, -1);
    sight = see(scene);
    for (size_t i = 0; i < sight.count; i++) {
        const struct outlook *outlook = &sight.outlooks[i];

        if (outlook->manner != MANNER_NONE)
            continue;
        add_nearest(scene, sight.heads[i], outlook->needed, blockers);
        if (outlook->room >= outlook->needed)
            add_beside(scene, sight.heads[i], outlook, blockers);
        add_sewn(scene, sight.heads[i], blockers);
    }
    if (sight.inside)
        add_all_panels(scene, blockers);
}
