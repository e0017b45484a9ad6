#include "plan/route.h"

#include "plan/geometry.h"
#include "plan/passage.h"

#include <assert.h>

#define STEP (LENGTH_MM / 10)

/* ---- what is carried ---- */

bool route_holds(const struct join *join)
{
    return join->target == TARGET_BOX && join->fastener != FASTENER_REST && join->box_b != 0;
}

static size_t *each_alone(const struct plan *plan, struct arena *arena)
{
    size_t count = plan->facts->boxes.count;
    size_t *first = ARENA_MANY(arena, size_t, count);

    for (size_t i = 0; i < count; i++)
        first[i] = i;
    return first;
}

void route_put_together(const struct plan *plan, size_t *first, const struct join *join)
{
    size_t count = plan->facts->boxes.count;
    size_t a = model_index(plan->facts, ENTITY_box, join->box_a);
    size_t b = model_index(plan->facts, ENTITY_box, join->box_b);
    size_t kept, gone;

    if (a == count || b == count)
        return;
    kept = first[a] < first[b] ? first[a] : first[b];
    gone = first[a] < first[b] ? first[b] : first[a];
    for (size_t i = 0; i < count; i++)
        if (first[i] == gone)
            first[i] = kept;
    assert(first[a] == first[b]);
}

size_t *route_carried(const struct plan *plan, struct arena *arena)
{
    size_t *first = each_alone(plan, arena);

    for (size_t i = 0; i < plan->facts->joins.count; i++) {
        const struct join *join = &plan->facts->joins.at[i];

        if (route_holds(join) && join->place == PLACE_BENCH)
            route_put_together(plan, first, join);
    }
    return first;
}

static int64_t pad_of(const struct plan *plan, int64_t box, int64_t side)
{
    const struct padding *padding = plan_padding(plan, box, side);

    return padding ? padding->pad : 0;
}

/* The box with its padding, in its own axes. */
static struct solid padded(const struct plan *plan, const struct box *box)
{
    return (struct solid){{-pad_of(plan, box->key, SIDE_LEFT), -pad_of(plan, box->key, SIDE_BACK),
                           -pad_of(plan, box->key, SIDE_BOTTOM)},
                          {box->width + pad_of(plan, box->key, SIDE_RIGHT),
                           box->depth + pad_of(plan, box->key, SIDE_FRONT),
                           box->height + pad_of(plan, box->key, SIDE_TOP)}};
}

/* In the axes of the first box that is carried: what leans is carried as it lies best. */
static struct solid solid_for_carrying(const struct plan *plan, const struct box *first,
                                       const struct box *box)
{
    struct solid solid = padded(plan, box);

    return pose_block_across(plan_pose(plan, box->key), box, plan_pose(plan, first->key), first,
                             &solid);
}

struct vector route_size(const struct plan *plan, const size_t *first, size_t index)
{
    assert(index < plan->facts->boxes.count && first[index] == index);

    const struct model *model = plan->facts;
    const struct box *box = &model->boxes.at[index];
    struct solid whole = padded(plan, box);

    for (size_t i = index + 1; i < model->boxes.count; i++) {
        struct solid solid;

        if (first[i] != index)
            continue;
        solid = solid_for_carrying(plan, box, &model->boxes.at[i]);
        whole = solid_round(&whole, &solid);
    }
    return (struct vector){solid_size(&whole, AXIS_X), solid_size(&whole, AXIS_Y),
                           solid_size(&whole, AXIS_Z)};
}

/* ---- how it passes ---- */

static const char *const way_words[ROUTE_WAYS] = {
    [ROUTE_STRAIGHT] = "straight through",
    [ROUTE_TILTED] = "tilted in the opening",
    [ROUTE_ROUND] = "level round the corner",
    [ROUTE_ON_END] = "stood on end round it",
    [ROUTE_NOT] = "does not pass",
};

const char *route_way_words(enum route_way way)
{
    assert(way < ROUTE_WAYS);

    return way_words[way];
}

static bool has_corner(const struct passage *passage)
{
    return (passage->kind == PASSAGE_HALL || passage->kind == PASSAGE_STAIR) &&
           passage->length > 0 && passage->width > 0;
}

bool route_passes(const struct plan *plan, const struct passage *passage, struct vector size,
                  int64_t margin)
{
    switch (passage->kind) {
    case PASSAGE_STAIR:
        return passage_stair(size, passage->width, passage->height, passage->length,
                             plan->value[TRADE_STAIR_SLOPE], margin);
    case PASSAGE_LIFT:
        return passage_lift(size, passage->width, passage->height, passage->length, margin);
    case PASSAGE_VEHICLE:
        return passage_vehicle(size, passage->width, passage->height, passage->length, margin);
    default:
        return has_corner(passage)
                   ? passage_corner(size, passage->width, passage->length, passage->height, margin)
                   : passage_straight(size, passage->width, passage->height, margin);
    }
}

/* Upright or lying, without turning it in the opening. */
static bool stands_in(const struct passage *passage, struct vector size, int64_t margin)
{
    int64_t longest = length_larger(size.x, length_larger(size.y, size.z));
    int64_t thinnest = length_smaller(size.x, length_smaller(size.y, size.z));
    int64_t middle = size.x + size.y + size.z - longest - thinnest;
    int64_t wide = length_smaller(passage->width, passage->height);
    int64_t high = length_larger(passage->width, passage->height);

    return (wide == 0 || thinnest + margin <= wide) && (high == 0 || middle + margin <= high);
}

enum route_way route_way(const struct plan *plan, const struct passage *passage, struct vector size)
{
    int64_t margin = plan->value[TRADE_DOOR_MARGIN];

    if (!route_passes(plan, passage, size, margin))
        return ROUTE_NOT;
    if (has_corner(passage))
        return passage_corner_level(size, passage->width, passage->length, passage->height, margin)
                   ? ROUTE_ROUND
                   : ROUTE_ON_END;
    return stands_in(passage, size, margin) ? ROUTE_STRAIGHT : ROUTE_TILTED;
}

int64_t route_spare(const struct plan *plan, const struct passage *passage, struct vector size)
{
    int64_t low = -ROUTE_SPARE / STEP; /* taken to pass */
    int64_t high = ROUTE_SPARE / STEP; /* taken not to */

    if (route_passes(plan, passage, size, high * STEP))
        return ROUTE_SPARE;
    while (high - low > 1) {
        int64_t middle = low + (high - low) / 2;

        if (route_passes(plan, passage, size, middle * STEP))
            low = middle;
        else
            high = middle;
    }
    return low * STEP;
}

/* ---- all of it ---- */

struct routing {
    const struct plan *plan;
    struct arena *arena;
    struct route route;
};

static void add_thing(struct routing *routing, enum route_thing thing, const size_t *first,
                      size_t index, int64_t join)
{
    assert(index < routing->plan->facts->boxes.count);

    const struct plan *plan = routing->plan;
    struct route_line line = {.thing = thing,
                              .box = plan->facts->boxes.at[index].key,
                              .join = join,
                              .size = route_size(plan, first, index)};

    for (size_t i = 0; i < plan->facts->boxes.count; i++)
        line.boxes += first[i] == index;
    for (size_t i = 0; i < plan->facts->passages.count; i++) {
        const struct passage *passage = &plan->facts->passages.at[i];

        line.passage = passage->key;
        line.way = route_way(plan, passage, line.size);
        line.spare = route_spare(plan, passage, line.size);
        *LIST_ADD(routing->arena, &routing->route.lines) = line;
    }
}

static void add_groups(struct routing *routing, const size_t *first)
{
    const struct model *model = routing->plan->facts;

    for (size_t i = 0; i < model->boxes.count; i++) {
        bool several = false;

        for (size_t k = i + 1; k < model->boxes.count; k++)
            several |= first[k] == i;
        if (first[i] == i && several)
            add_thing(routing, ROUTE_GROUP, first, i, 0);
    }
}

/* With one join of the room made at the bench, and with all of them. */
static void add_site_joins(struct routing *routing)
{
    const struct model *model = routing->plan->facts;
    size_t *whole = route_carried(routing->plan, routing->arena);
    size_t boxes = 0;

    for (size_t i = 0; i < model->joins.count; i++) {
        const struct join *join = &model->joins.at[i];
        size_t *first;

        if (!route_holds(join) || join->place == PLACE_BENCH)
            continue;
        first = route_carried(routing->plan, routing->arena);
        route_put_together(routing->plan, first, join);
        route_put_together(routing->plan, whole, join);
        add_thing(routing, ROUTE_JOINED, first, first[model_index(model, ENTITY_box, join->box_a)],
                  join->key);
        boxes++;
    }
    if (boxes > 1)
        add_thing(routing, ROUTE_WHOLE, whole, whole[0], 0);
}

struct route route_make(const struct plan *plan, struct arena *arena)
{
    struct routing routing = {.plan = plan, .arena = arena};
    const size_t *alone = each_alone(plan, arena);

    for (size_t i = 0; i < plan->facts->boxes.count; i++)
        add_thing(&routing, ROUTE_BOX, alone, i, 0);
    add_groups(&routing, route_carried(plan, arena));
    add_site_joins(&routing);
    return routing.route;
}

int64_t route_site_minutes(const struct plan *plan, int64_t join)
{
    const struct junction *junction = plan_junction(plan, join);
    int64_t points = junction ? (int64_t)junction->point_count : 0;

    return plan->value[TRADE_MINUTES_OFFER] +
           points * (plan->value[TRADE_MINUTES_FIND_HOLE] + plan->value[TRADE_MINUTES_JOIN_SCREW]);
}
