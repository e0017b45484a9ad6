/*
 * Rolls: cloth and batting, cut with shears from a fixed width.
 */
#ifndef CUT_ROLLS_H
#define CUT_ROLLS_H

#include "cut/layout.h"

/*
 * Lays parts on the least length of roll, as far as a search of limited work finds it. The one size
 * that any number can be had of is the roll (of several the widest); sizes with a limit are pieces
 * from the shelf and are filled first, with parts that need not match. At most one blank of the
 * roll is used; cost and bound are the lengths that are sold for it. Of equal costs the shorter
 * length used is better. A part that is wider than the usable width (turned too, where it may) and
 * lies on no piece of the shelf is left out. Without a roll everything that the shelf does not hold
 * is left out.
 *
 * The layout and all scratch memory live in `arena`, whose escape must be armed. The same job gives
 * the same layout on every machine; after a first plan of O(parts^3) at worst, work is bounded by a
 * constant number of steps. What bounds are known: rollbound.h.
 */
void rolls_cut(const struct cut_job *job, struct arena *arena, struct cut_layout *ret_layout);

/* The search that goes on from the quick layout (search.h). */
void *rolls_begin(const struct cut_job *job, struct arena *arena, const struct cut_layout *quick);
bool rolls_step(void *state, int64_t work, int64_t *done, struct cut_layout *best);

#endif
