#include "cut/rollhunt.h"

#include <string.h>

#define MOVE_ODDS 4    /* one round in so many moves a part instead of changing two */
#define TURN_ODDS 4    /* one in so many says how a part is to lie, where one may turn */
#define SIDE_ODDS 16   /* and one in so many to which side it goes */
#define ORIGIN_ODDS 8  /* and one in so many where a group has its origin */
#define PATIENCE 10000 /* rounds in vain until the order is shaken */
#define SHAKES 8       /* changes when it is */

void roll_hunt_init(struct roll_hunt *hunt, const struct roll_job *job, enum roll_way way,
                    struct arena *arena, uint64_t seed)
{
    *hunt = (struct roll_hunt){.job = job, .way = way, .dice = seed};
    roll_pack_init(&hunt->pack, job, arena);
    roll_order_init(&hunt->now, job, arena);
}

static bool pack(struct roll_hunt *hunt, int64_t limit)
{
    return hunt->way == ROLL_SKYLINE
               ? roll_pack_skyline(&hunt->pack, &hunt->now, hunt->target, limit)
               : roll_pack_nooks(&hunt->pack, &hunt->now, hunt->target, limit);
}

static void forget(struct roll_hunt *hunt, int64_t missing)
{
    hunt->idle = 0;
    hunt->least = missing;
    for (size_t i = 0; i < ROLL_LATE; i++)
        hunt->late[i] = missing;
}

void roll_hunt_aim(struct roll_hunt *hunt, const struct roll_order *from, int64_t target)
{
    roll_order_copy(hunt->job, from, &hunt->now);
    hunt->target = target;
    (void)pack(hunt, INT64_MAX);
    forget(hunt, hunt->pack.missing);
}

/* The next number by chance below `limit`: an xorshift generator (Marsaglia, 2003). */
static size_t by_chance(struct roll_hunt *hunt, size_t limit)
{
    hunt->dice ^= hunt->dice << 13;
    hunt->dice ^= hunt->dice >> 7;
    hunt->dice ^= hunt->dice << 17;
    return (size_t)((hunt->dice >> 33) % limit);
}

/* ---- changes, each of which can be undone ---- */

struct change {
    enum { SWAP, MOVE, LIE, SIDE, ORIGIN } kind;
    size_t from, to; /* places in the order; LIE, SIDE: a part; ORIGIN: a group */
    uint8_t lie;
    struct roll_origin origin;
};

static void swap_two(struct roll_order *order, size_t a, size_t b)
{
    int32_t kept = order->at[a];

    order->at[a] = order->at[b];
    order->at[b] = kept;
}

static void move_one(struct roll_order *order, size_t from, size_t to)
{
    int32_t kept = order->at[from];

    if (from < to)
        memmove(&order->at[from], &order->at[from + 1], (to - from) * sizeof *order->at);
    else
        memmove(&order->at[to + 1], &order->at[to], (from - to) * sizeof *order->at);
    order->at[to] = kept;
}

/* The origin with which a part of the group begins beyond what another part ends at now, and at an
 * edge of the roll or beside it; or none, so that its first part says. */
static struct roll_origin origin_by_chance(struct roll_hunt *hunt, const struct roll_part *part)
{
    size_t beside = by_chance(hunt, hunt->job->count);
    const struct roll_spot *spot = &hunt->pack.spots[beside];
    const struct roll_part *other = &hunt->job->parts[beside];
    struct roll_origin origin = {.along = -part->along, .across = -part->across};

    if (spot->placed && by_chance(hunt, 3) > 0)
        origin.along += spot->along + (spot->turned ? other->width : other->length);
    if (spot->placed && by_chance(hunt, 2) > 0)
        origin.across += spot->across + (spot->turned ? other->length : other->width);
    origin.known =
        by_chance(hunt, 3) > 0 && roll_origin_serves(hunt->job, part->group, origin.across);
    return origin;
}

static struct change change_by_chance(struct roll_hunt *hunt)
{
    size_t count = hunt->job->count;
    struct change change = {.from = by_chance(hunt, count), .to = by_chance(hunt, count)};
    const struct roll_part *part = &hunt->job->parts[change.from];

    if (by_chance(hunt, MOVE_ODDS) == 0)
        change.kind = MOVE;
    if (part->may_turn && by_chance(hunt, TURN_ODDS) == 0) {
        change.kind = LIE;
        change.lie = (uint8_t)by_chance(hunt, ROLL_LIES);
    }
    if (hunt->way == ROLL_NOOKS && by_chance(hunt, SIDE_ODDS) == 0)
        change.kind = SIDE;
    if (part->group != ROLL_NO_GROUP && by_chance(hunt, ORIGIN_ODDS) == 0) {
        change.kind = ORIGIN;
        change.origin = origin_by_chance(hunt, part);
        change.from = part->group;
    }
    return change;
}

/* Makes a change into the one that takes it back. */
static void make(struct roll_hunt *hunt, struct change *change)
{
    struct roll_origin origin;
    uint8_t lie;

    switch (change->kind) {
    case SWAP:
        swap_two(&hunt->now, change->from, change->to);
        break;
    case MOVE:
        move_one(&hunt->now, change->from, change->to);
        *change = (struct change){.kind = MOVE, .from = change->to, .to = change->from};
        break;
    case LIE:
        lie = hunt->now.lie[change->from];
        hunt->now.lie[change->from] = change->lie;
        change->lie = lie;
        break;
    case SIDE:
        hunt->now.right[change->from] = !hunt->now.right[change->from];
        break;
    case ORIGIN:
        origin = hunt->now.origins[change->from];
        hunt->now.origins[change->from] = change->origin;
        change->origin = origin;
        break;
    }
}

static void shake(struct roll_hunt *hunt)
{
    for (int i = 0; i < SHAKES; i++) {
        struct change change = change_by_chance(hunt);

        make(hunt, &change);
    }
    (void)pack(hunt, INT64_MAX);
    forget(hunt, hunt->pack.missing);
}

bool roll_hunt_round(struct roll_hunt *hunt)
{
    int64_t *late = &hunt->late[hunt->turn++ % ROLL_LATE];
    struct change change = change_by_chance(hunt);
    int64_t limit = *late;

    if (hunt->idle++ > PATIENCE)
        shake(hunt);
    make(hunt, &change);
    if (!pack(hunt, limit)) {
        make(hunt, &change);
        return false;
    }
    *late = hunt->pack.missing;
    if (hunt->pack.missing < hunt->least) {
        hunt->least = hunt->pack.missing;
        hunt->idle = 0;
    }
    return hunt->pack.missing == 0;
}
