/*
 * Within pass fix: the screws that stand in each box, and whether they keep clear of each other.
 */
#ifndef PLAN_STANDING_H
#define PLAN_STANDING_H

#include "plan/thicket.h"

/*
 * By box, in the order of the model's, every screw of the plan so far; one of a join in each box
 * that it goes through, in the axes of that box. One more at the end for screws of no box. In the
 * arena.
 */
struct thicket *standing_by_box(const struct planning *planning);

/* fittings.c: whether a fitting is a cleat by which its box is laid on a wall: its other half is
 * screwed to that. */
bool fitting_hangs_on_wall(const struct model *model, const struct fitting *fitting);

/* fittings.c: adds the screws of fittings that say how many each takes, and stands them. */
void fit_fittings(struct planning *planning, struct thicket *standing);

/* clear.c: tells which screws pass each other too closely; of those placed by hand, each. */
void check_clear(struct planning *planning, const struct thicket *standing);

/* bolt.c: the bolts of joins that are bolted, stood in both boxes. */
void fit_bolts(struct planning *planning, struct thicket *standing);

/* grain.c: tells where screws of frames and joins stand too near to ends, edges and each other. */
void check_grain(struct planning *planning);

#endif
