/*
 * Blocks in the room that may lean, and how deep two of them stand in each other.
 */
#ifndef PLAN_BLOCK_H
#define PLAN_BLOCK_H

#include "plan/plan.h"

struct block {
    struct vector twice_middle; /* in the room */
    struct vector axes[3];      /* of length POSE_ONE */
    struct vector size;         /* along its own axes */
};

/* A block of a box, and one along the room's axes. */
struct block block_of_box(const struct pose *pose, const struct box *box,
                          const struct solid *solid);
struct block block_in_room(const struct solid *solid);

/* How far one has to be moved until they only touch, at least; 0 when they do not share anything.
 * What is within rounding of a lean (2/320 mm) is nothing. */
int64_t blocks_depth(const struct block *a, const struct block *b);

#endif
