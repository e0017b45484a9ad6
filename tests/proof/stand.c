#include "stand.h"

#include <assert.h>
#include <stdlib.h>

#define TRIES 40

/* Where a box stands, along the room's axes; the origin is a corner of the first. */
struct block_of {
    int64_t box;
    int64_t low[3], high[3]; /* as if it did not lean */
    bool leans;              /* to the back */
};

struct standing {
    struct work_bench *bench;
    struct dice *dice;
    stand_join *join;
    struct block_of *at;
    size_t count, most;
};

/* A face: the axis that it looks along, which way, and the axes of u and v on it. */
static const struct looks {
    int64_t side, opposite;
    int axis, sign, u, v;
} looks[] = {{SIDE_RIGHT, SIDE_LEFT, 0, +1, 1, 2},
             {SIDE_LEFT, SIDE_RIGHT, 0, -1, 1, 2},
             {SIDE_FRONT, SIDE_BACK, 1, +1, 0, 2},
             {SIDE_BACK, SIDE_FRONT, 1, -1, 0, 2},
             {SIDE_TOP, SIDE_BOTTOM, 2, +1, 0, 1}};
#define LOOKS ((int64_t)(sizeof looks / sizeof *looks))

static struct block_of block_at(const struct work_bench *bench, int64_t key, const int64_t at[3])
{
    const struct box *box = MODEL_FIND(&bench->model, box, key);
    const int64_t size[3] = {box->width, box->depth, box->height};
    struct block_of block = {.box = key, .leans = box->lean != 0};

    for (int axis = 0; axis < 3; axis++) {
        block.low[axis] = at[axis];
        block.high[axis] = at[axis] + size[axis];
    }
    return block;
}

static int64_t shared(const struct block_of *a, const struct block_of *b, int axis)
{
    int64_t low = a->low[axis] > b->low[axis] ? a->low[axis] : b->low[axis];
    int64_t high = a->high[axis] < b->high[axis] ? a->high[axis] : b->high[axis];

    return high - low;
}

/* Room for a lean of MOST_LEAN: its sine is less than a quarter. */
#define LEAST_LEAN 3
#define MOST_LEAN 12

static struct block_of with_room(const struct block_of *block)
{
    struct block_of all = *block;

    if (block->leans) {
        all.low[1] -= (block->high[2] - block->low[2]) / 4;
        all.high[2] += (block->high[1] - block->low[1]) / 4;
    }
    return all;
}

static bool overlaps_any(const struct standing *standing, const struct block_of *block)
{
    struct block_of comes = with_room(block);

    for (size_t i = 0; i < standing->count; i++) {
        struct block_of stands = with_room(&standing->at[i]);

        if (shared(&stands, &comes, 0) > 0 && shared(&stands, &comes, 1) > 0 &&
            shared(&stands, &comes, 2) > 0)
            return true;
    }
    return false;
}

/* The look of a face of a that lies on b with a hand's breadth or more each way; NULL for none. A
 * box that leans to the back shows its true face to the left and right only, and offsets to what
 * leans would be measured along edges that lean. */
static const struct looks *touching(const struct block_of *a, const struct block_of *b)
{
    for (int64_t i = 0; i < LOOKS; i++) {
        const struct looks *look = &looks[i];
        int64_t apart = look->sign > 0 ? b->low[look->axis] - a->high[look->axis]
                                       : a->low[look->axis] - b->high[look->axis];

        if (apart == 0 && !a->leans && (!b->leans || look->axis == 0) &&
            shared(a, b, look->u) >= 2 * LENGTH_INCH && shared(a, b, look->v) >= 2 * LENGTH_INCH)
            return look;
    }
    return NULL;
}

/* Flush at one end or the other, or anywhere between, by quarter inches. */
static int64_t along(struct dice *dice, int64_t low, int64_t high, int64_t size)
{
    int64_t step = LENGTH_INCH / 4;
    int64_t least = low - size + 4 * LENGTH_INCH;
    int64_t most = high - 4 * LENGTH_INCH;

    switch (dice_between(dice, 0, 3)) {
    case 0:
    case 1:
        return low;
    case 2:
        return high - size;
    default:
        return least < most ? least + step * dice_between(dice, 0, (most - least) / step) : low;
    }
}

static struct block_of put_against(const struct standing *standing, const struct block_of *a,
                                   const struct looks *look, int64_t key)
{
    struct block_of block = block_at(standing->bench, key, (const int64_t[3]){0, 0, 0});
    int64_t at[3];

    for (int axis = 0; axis < 3; axis++) {
        int64_t size = block.high[axis];

        at[axis] = axis == look->axis ? (look->sign > 0 ? a->high[axis] : a->low[axis] - size)
                   : axis == 2        ? 0 /* on the floor */
                                      : along(standing->dice, a->low[axis], a->high[axis], size);
    }
    return block_at(standing->bench, key, at);
}

static void join_faces(const struct standing *standing, const struct block_of *a,
                       const struct block_of *b, const struct looks *look)
{
    struct join *join = standing->join(standing->bench, standing->dice, a->box, b->box);

    join->side_a = look->side;
    join->side_b = look->opposite;
    join->offset_u = b->low[look->u] - a->low[look->u];
    join->offset_v = b->low[look->v] - a->low[look->v];
}

/* False when no place was found in a number of tries. */
static bool stand_next(struct standing *standing, int64_t key)
{
    for (int i = 0; i < TRIES; i++) {
        const struct block_of *a =
            &standing->at[dice_between(standing->dice, 0, (int64_t)standing->count - 1)];
        const struct looks *look = &looks[dice_between(standing->dice, 0, LOOKS - 1)];
        struct block_of block = put_against(standing, a, look, key);

        if (overlaps_any(standing, &block) || touching(a, &block) != look)
            continue;
        join_faces(standing, a, &block, look);
        standing->at[standing->count++] = block;
        return true;
    }
    return false;
}

static bool are_joined(const struct work_bench *bench, int64_t a, int64_t b)
{
    for (size_t i = 0; i < bench->model.joins.count; i++) {
        const struct join *join = &bench->model.joins.at[i];

        if ((join->box_a == a && join->box_b == b) || (join->box_a == b && join->box_b == a))
            return true;
    }
    return false;
}

/* One in three of the other pairs that touch. */
static void join_more(const struct standing *standing)
{
    for (size_t i = 0; i < standing->count; i++)
        for (size_t k = 0; k < standing->count; k++) {
            const struct block_of *a = &standing->at[i];
            const struct block_of *b = &standing->at[k];
            const struct looks *look = i == k ? NULL : touching(a, b);

            if (look && standing->bench->model.joins.count < standing->most &&
                !are_joined(standing->bench, a->box, b->box) &&
                dice_between(standing->dice, 1, 3) == 1)
                join_faces(standing, a, b, look);
        }
}

/* One frame in six. */
static void lean_back(struct work_bench *bench, struct dice *dice, int64_t key)
{
    struct box *box = model_find(&bench->model, ENTITY_box, key);

    if ((box->frame == FRAME_LADDER || box->frame == FRAME_CRATE) &&
        dice_between(dice, 1, 6) == 1) {
        box->lean_axis = AXIS_X;
        box->lean = 1000 * dice_between(dice, LEAST_LEAN, MOST_LEAN);
    }
}

void stand_all(struct work_bench *bench, struct dice *dice, size_t most, stand_join *join)
{
    size_t count = bench->model.boxes.count;
    int64_t *keys = calloc(count, sizeof *keys);
    struct standing standing = {bench, dice, join, calloc(count, sizeof(struct block_of)), 1, most};

    assert(keys && standing.at);
    for (size_t i = 0; i < count; i++)
        keys[i] = bench->model.boxes.at[i].key;
    for (size_t i = 1; i < count; i++)
        lean_back(bench, dice, keys[i]);
    standing.at[0] = block_at(bench, keys[0], (const int64_t[3]){0, 0, 0});
    for (size_t i = 1; i < count; i++)
        if (!stand_next(&standing, keys[i]))
            model_remove(&bench->model, ENTITY_box, keys[i]);
    join_more(&standing);
    free(standing.at);
    free(keys);
}
