/*
 * Each join of two boxes asks that the second moves on from the first, square to the face. Boxes
 * first take the places that they are asked to by one that has its place, as the plan sets them in
 * the room; without circles of joins that pleases all of them. Where there are circles all boxes
 * then move, a number of times, half the way to the mean of what their neighbours ask for.
 */
#include "draw/apart.h"

#include "plan/geometry.h"

#include <assert.h>
#include <math.h>

/* In circles of a dozen boxes nothing moves by a visible amount any more after these. */
#define ROUNDS 100

/* A join that holds two boxes, by their indices, and the way from the first to the second. */
struct link {
    size_t a, b;
    struct spot way;
};

struct moving {
    struct spot *ways;
    LIST_OF(struct link) links;
    size_t boxes;
    struct arena *arena;
};

static void add_link(struct moving *moving, const struct plan *plan, const struct join *join,
                     double gap)
{
    const struct pose *a = plan_pose(plan, join->box_a);
    const struct pose *b = plan_pose(plan, join->box_b);

    if (join->target != TARGET_BOX || a == b || !a || !b || !a->placed || a->with != b->with)
        return;
    struct vector normal = pose_normal(a, join->side_a);
    *LIST_ADD(moving->arena, &moving->links) = (struct link){
        (size_t)(a - plan->poses.at),
        (size_t)(b - plan->poses.at),
        {{gap * (double)normal.x / (double)POSE_ONE, gap * (double)normal.y / (double)POSE_ONE,
          gap * (double)normal.z / (double)POSE_ONE}}};
}

static void add_way(struct spot *to, const struct spot *from, const struct spot *way, int sign)
{
    for (int k = 0; k < 3; k++)
        to->at[k] += from->at[k] + sign * way->at[k];
}

/* Gives boxes a place that a join asks for from one that has its own; false when none was left. */
static bool spread_on(struct moving *moving, bool *set)
{
    bool found = false;

    for (size_t i = 0; i < moving->links.count; i++) {
        const struct link *link = &moving->links.at[i];
        if (set[link->a] == set[link->b])
            continue;
        bool onward = set[link->a];
        size_t from = onward ? link->a : link->b;
        size_t to = onward ? link->b : link->a;
        add_way(&moving->ways[to], &moving->ways[from], &link->way, onward ? 1 : -1);
        set[to] = true;
        found = true;
    }
    return found;
}

/* Half the way to the mean of what the neighbours ask for. */
static void please(struct moving *moving, struct spot *sums, int *asked)
{
    for (size_t i = 0; i < moving->boxes; i++) {
        sums[i] = (struct spot){{0, 0, 0}};
        asked[i] = 0;
    }
    for (size_t i = 0; i < moving->links.count; i++) {
        const struct link *link = &moving->links.at[i];
        add_way(&sums[link->b], &moving->ways[link->a], &link->way, 1);
        add_way(&sums[link->a], &moving->ways[link->b], &link->way, -1);
        asked[link->a]++;
        asked[link->b]++;
    }
    for (size_t i = 0; i < moving->boxes; i++) {
        for (int k = 0; k < 3 && asked[i]; k++)
            moving->ways[i].at[k] += (sums[i].at[k] / asked[i] - moving->ways[i].at[k]) / 2;
    }
}

static void move_joined(struct moving *moving, const struct plan *plan)
{
    bool *set = ARENA_MANY(moving->arena, bool, moving->boxes);
    struct spot *sums = ARENA_MANY(moving->arena, struct spot, moving->boxes);
    int *asked = ARENA_MANY(moving->arena, int, moving->boxes);

    for (size_t i = 0; i < moving->boxes; i++)
        set[i] = plan->poses.at[i].with == plan->poses.at[i].box;
    while (spread_on(moving, set))
        continue;
    for (int round = 0; round < ROUNDS; round++)
        please(moving, sums, asked);
}

/* ---- lots ---- */

/* A box that its lot is counted by. */
static bool leads(const struct plan *plan, size_t box)
{
    assert(box < plan->poses.count);
    return plan->poses.at[box].with == plan->poses.at[box].box || !plan->poses.at[box].placed;
}

struct reach {
    double low, high;
};

static struct reach reach_of_lot(const struct plan *plan, const struct spot *ways, size_t first)
{
    assert(first < plan->poses.count);

    struct reach reach = {HUGE_VAL, -HUGE_VAL};
    int64_t lot = plan->poses.at[first].with;

    for (size_t i = 0; i < plan->poses.count; i++) {
        const struct pose *pose = &plan->poses.at[i];
        if (i != first && (!pose->placed || pose->with != lot))
            continue;
        reach.low = fmin(reach.low, (double)pose->room.low.x + ways[i].at[0]);
        reach.high = fmax(reach.high, (double)pose->room.high.x + ways[i].at[0]);
    }
    return reach;
}

static void move_lot(const struct plan *plan, struct spot *ways, size_t first, double by)
{
    assert(first < plan->poses.count);
    for (size_t i = 0; i < plan->poses.count; i++) {
        if (i == first || (plan->poses.at[i].placed && plan->poses.at[first].placed &&
                           plan->poses.at[i].with == plan->poses.at[first].with))
            ways[i].at[0] += by;
    }
}

static void part_lots(const struct plan *plan, struct spot *ways, double gap)
{
    double next = 0;
    bool first = true;

    for (size_t i = 0; i < plan->poses.count; i++) {
        if (!leads(plan, i))
            continue;
        struct reach reach = reach_of_lot(plan, ways, i);
        if (!first)
            move_lot(plan, ways, i, next - reach.low);
        next = first ? reach.high + gap : next + reach.high - reach.low + gap;
        first = false;
    }
}

void apart_ways(struct spot *ways, const struct plan *plan, double gap, double joins,
                struct arena *arena)
{
    struct moving moving = {.ways = ways, .boxes = plan->poses.count, .arena = arena};

    for (size_t i = 0; i < moving.boxes; i++)
        ways[i] = (struct spot){{0, 0, 0}};
    for (size_t i = 0; i < plan->facts->joins.count && joins > 0; i++)
        add_link(&moving, plan, &plan->facts->joins.at[i], joins);
    if (moving.links.count)
        move_joined(&moving, plan);
    part_lots(plan, ways, gap);
}
