/*
 * Runs: the strips of a mating zone that have wood on both sides, and those of them that take a
 * row of points.
 */
#ifndef PLAN_RUN_H
#define PLAN_RUN_H

#include "plan/pass.h"

/* Wood on one side of a zone, as an area on face a. */
struct patchwork {
    LIST_OF(struct area) side_grain;
    LIST_OF(struct area) end_grain;
};

struct run {
    struct area area; /* on face a */
    bool along_u;     /* its longer way */
};

struct runs {
    struct run *at; /* rows along u first, each kind from low to high */
    size_t count;
};

int64_t run_length(const struct run *run);

/* First point from the end of a run: the join's own, else the trade value for its length. */
int64_t run_end(const struct planning *planning, const struct join *join, const struct run *run);

/*
 * All maximal strips of `zone` with wood of both; where there is none in side grain on both sides,
 * those with end grain on one. O(n^3) in the pieces of wood, which are few.
 */
struct runs run_find(const struct planning *planning, const struct area *zone,
                     const struct patchwork *a, const struct patchwork *b);

/*
 * Those that take points: along u and along v the outermost two that are at least half as long as
 * the zone is that way and take two end distances; without any, the outermost two that take two end
 * distances; without any, the longest.
 */
struct runs run_choose(const struct planning *planning, const struct join *join,
                       const struct area *zone, const struct runs *runs);

#endif
