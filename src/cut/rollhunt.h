/*
 * A search for an order of parts that gives a shorter layout of a roll: the target is set below the
 * best length, and as little as can be is left without a place before it (by area), until nothing
 * is. What is accepted for now may be worse than what was there, but not than a while ago (late
 * acceptance).
 */
#ifndef CUT_ROLLHUNT_H
#define CUT_ROLLHUNT_H

#include "cut/rollpack.h"

#define ROLL_LATE 8

enum roll_way { ROLL_SKYLINE, ROLL_NOOKS, ROLL_WAYS };

struct roll_hunt {
    const struct roll_job *job;
    enum roll_way way;
    struct roll_pack pack;
    struct roll_order now;
    int64_t target;          /* what is tried to be reached */
    int64_t late[ROLL_LATE]; /* area left over in the rounds before */
    size_t turn;             /* rounds so far */
    int64_t idle;            /* rounds since less was left over than ever before this target */
    int64_t least;
    uint64_t dice; /* state of the numbers by chance */
};

/* For a job of at least one part. */
void roll_hunt_init(struct roll_hunt *hunt, const struct roll_job *job, enum roll_way way,
                    struct arena *arena, uint64_t seed);

/* Begins anew from an order, with this target. */
void roll_hunt_aim(struct roll_hunt *hunt, const struct roll_order *from, int64_t target);

/* One round. True when all parts lie before the target: then pack holds where. */
bool roll_hunt_round(struct roll_hunt *hunt);

#endif
