/*
 * A block of a box as it is seen from the box's main face, where that has an outline: as wide as
 * the block, and cut along the outline or bent over it.
 */
#ifndef DRAW_PROFILE_H
#define DRAW_PROFILE_H

#include "plan/chain.h"

/* A place of either rim; over one another where the block is cut, square to the outline where it is
 * bent. */
struct profile_place {
    struct chain_place low, high;
};

struct profile {
    LIST_OF(struct profile_place) of;
};

/* What the blocks of a box end at. */
struct crown {
    const struct box *box;
    struct chain chain; /* empty: its main face is a rectangle */
    int64_t over;       /* the thickness of the panel that is bent over the outline */
};

/* In `arena`, whose escape must be armed. */
struct crown crown_of(const struct plan *plan, const struct box *box, struct arena *arena);

/* Of a block that lies under the outline and is cut along it; two places or more, or none where
 * nothing of it is left. What ends below the panel over the outline does so all along it. */
struct profile profile_cut(const struct crown *crown, const struct solid *solid,
                           struct arena *arena);

/* Of one that lies on the side over the outline, everywhere as thick as it is there. */
struct profile profile_bent(const struct crown *crown, const struct solid *solid,
                            struct arena *arena);

#endif
