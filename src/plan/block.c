/*
 * Separating axes: two blocks are clear of each other when the middles lie further apart, along
 * some direction, than half of both reaches. Of two blocks only their six face normals and the nine
 * directions square to an edge of each can be such a direction. Where none is, the least of what is
 * missing tells how deep they stand in each other.
 */
#include "plan/block.h"

#include "plan/geometry.h"
#include "plan/pose.h"

#include <assert.h>
#include <stdlib.h>

#define WITHIN_ROUNDING 2

struct block block_of_box(const struct pose *pose, const struct box *box, const struct solid *solid)
{
    struct vector low = pose_to_room(pose, box, solid->low);
    struct vector high = pose_to_room(pose, box, solid->high);

    return (struct block){
        {low.x + high.x, low.y + high.y, low.z + high.z},
        {pose_axis(pose, AXIS_X), pose_axis(pose, AXIS_Y), pose_axis(pose, AXIS_Z)},
        {solid_size(solid, AXIS_X), solid_size(solid, AXIS_Y), solid_size(solid, AXIS_Z)}};
}

struct block block_in_room(const struct solid *solid)
{
    return (struct block){
        {solid->low.x + solid->high.x, solid->low.y + solid->high.y, solid->low.z + solid->high.z},
        {{POSE_ONE, 0, 0}, {0, POSE_ONE, 0}, {0, 0, POSE_ONE}},
        {solid_size(solid, AXIS_X), solid_size(solid, AXIS_Y), solid_size(solid, AXIS_Z)}};
}

static int64_t share(int64_t value, int64_t by, int64_t of)
{
    int64_t result = 0;
    enum fault fault = whole_share(value, by, of, &result);

    assert(fault == FAULT_NONE); /* lengths in a room times a part of one */
    (void)fault;
    return result;
}

static int64_t along(struct vector at, struct vector direction)
{
    return share(at.x, direction.x, POSE_ONE) + share(at.y, direction.y, POSE_ONE) +
           share(at.z, direction.z, POSE_ONE);
}

static int64_t reach(const struct block *block, struct vector direction)
{
    int64_t sum = 0;

    for (int axis = 0; axis < AXIS_COUNT; axis++)
        sum += share(vector_along(block->size, axis), llabs(along(block->axes[axis], direction)),
                     POSE_ONE);
    return sum;
}

/* Half of what the reaches have over twice the distance, per length of the direction. */
static int64_t depth_along(const struct block *a, const struct block *b, struct vector direction,
                           int64_t length)
{
    struct vector between = {a->twice_middle.x - b->twice_middle.x,
                             a->twice_middle.y - b->twice_middle.y,
                             a->twice_middle.z - b->twice_middle.z};
    int64_t over = reach(a, direction) + reach(b, direction) - llabs(along(between, direction));

    return share(over, POSE_ONE, length) / 2;
}

static struct vector square_to(struct vector a, struct vector b)
{
    return (struct vector){
        share(a.y, b.z, POSE_ONE) - share(a.z, b.y, POSE_ONE),
        share(a.z, b.x, POSE_ONE) - share(a.x, b.z, POSE_ONE),
        share(a.x, b.y, POSE_ONE) - share(a.y, b.x, POSE_ONE),
    };
}

/* By the nine directions that are square to an edge of each; edges that run alike give none. */
static int64_t depth_by_edges(const struct block *a, const struct block *b, int64_t least)
{
    for (int edge = 0; edge < AXIS_COUNT * AXIS_COUNT && least > WITHIN_ROUNDING; edge++) {
        struct vector direction = square_to(a->axes[edge / AXIS_COUNT], b->axes[edge % AXIS_COUNT]);
        int64_t length = vector_length(direction);

        if (length > POSE_ONE / 10000)
            least = length_smaller(least, depth_along(a, b, direction, length));
    }
    return least;
}

int64_t blocks_depth(const struct block *a, const struct block *b)
{
    int64_t least = INT64_MAX;

    for (int axis = 0; axis < AXIS_COUNT && least > 0; axis++) {
        least = length_smaller(least, depth_along(a, b, a->axes[axis], POSE_ONE));
        least = length_smaller(least, depth_along(a, b, b->axes[axis], POSE_ONE));
    }
    least = depth_by_edges(a, b, least);
    return least > WITHIN_ROUNDING ? least : 0;
}
