/*
 * How the box of a join comes to its place: in a straight line, from one of the six sides of the
 * room, past whatever hangs together with the other box by then.
 */
#ifndef PLAN_SWEEP_H
#define PLAN_SWEEP_H

#include "plan/vicinity.h"

struct sweep {
    int64_t from;           /* side of the room that the second box comes from */
    bool shut;              /* the two boxes themselves are in each other's way */
    LIST_OF(int64_t) boxes; /* others that would be in the way, if they were there */
};

struct sweeps {
    struct sweep at[SIDE_COUNT]; /* the ways square to the mating face first */
    bool free; /* one of them is, whatever stands there: the others are not told */
};

/*
 * The ways of a join of two boxes. Free as well where the two hang together without the join, so
 * that no step of its own brings one to the other; where one of them leans, since nothing is known
 * then; and where they stand in each other, which is told elsewhere. O(boxes), and the wood of
 * those that lie along the way.
 */
struct sweeps sweeps_find(const struct vicinity *vicinity, const struct junction *junction);

#endif
