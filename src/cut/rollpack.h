/*
 * Parts laid on a roll in an order, in one of two ways, as far as a given length goes.
 */
#ifndef CUT_ROLLPACK_H
#define CUT_ROLLPACK_H

#include "cut/rolljob.h"

/* How a part that may turn lies: as suits it, or one way by the order's word. */
enum roll_lie { LIE_EITHER, LIE_STRAIGHT, LIE_TURNED, ROLL_LIES };

struct roll_order {
    int32_t *at;  /* indices of all parts */
    uint8_t *lie; /* enum roll_lie, by part */
    bool *right;  /* nooks: of places as soon the part takes the one farthest right, by part */
    struct roll_origin *origins; /* by group: where it lies; not known: where its first part says.
                                    That of the pinned group is not looked at. */
};

struct roll_spot {
    int64_t along, across;
    bool placed, turned;
};

struct roll_ledge {
    int64_t across, width; /* where on the roll's width */
    int64_t along;         /* how far down it is taken */
};

struct roll_pack {
    const struct roll_job *job;
    struct roll_spot *spots; /* by part */
    int64_t missing;         /* area of the parts that found no place */
    int64_t length;          /* far end of the farthest part that did */
    int64_t work;            /* done so far, in units of search.h */

    /* Scratch. */
    int32_t *next; /* skyline: by place in the order, the next one whose part is not laid yet */
    struct roll_ledge *ledges;
    size_t ledge_count;
    struct roll_rect *lying; /* nooks: by `near` */
    size_t lying_count;
    int64_t *trials; /* nooks: places across that are worth trying */
    struct roll_origin *origins;
};

/* An order in which parts come as the job lists them, each as suits it. All memory is the arena's.
 */
void roll_order_init(struct roll_order *order, const struct roll_job *job, struct arena *arena);
void roll_order_copy(const struct roll_job *job, const struct roll_order *from,
                     struct roll_order *to);

/* All memory is the arena's. */
void roll_pack_init(struct roll_pack *pack, const struct roll_job *job, struct arena *arena);

/*
 * Both lay what fits before `target` and set spots, missing and length; they stop, with the rest
 * undone, as soon as missing is sure to be more than `limit`, and then return false.
 *
 * By the skyline, for plain jobs: the nearest ledge takes the part that fits it and its walls best,
 * of equals the first of the order; what no part fits is shut in. O(parts) a part.
 *
 * By nooks, for any job: each part in turn goes where it begins soonest, of equals farthest left or
 * right, holes between parts included. The first part of a group that the order gives no origin
 * sets it. O(parts^2) a part.
 */
bool roll_pack_skyline(struct roll_pack *pack, const struct roll_order *order, int64_t target,
                       int64_t limit);
bool roll_pack_nooks(struct roll_pack *pack, const struct roll_order *order, int64_t target,
                     int64_t limit);

#endif
