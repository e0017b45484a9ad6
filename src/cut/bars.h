/*
 * Sticks: many lengths out of several stock lengths.
 */
#ifndef CUT_BARS_H
#define CUT_BARS_H

#include "cut/layout.h"

/*
 * Cuts sticks at the least cost, then from the fewest, then with the largest single leftover, as
 * far as a search of limited work finds it. After the trim, n parts take their lengths and n - 1
 * kerfs. Sizes without a price are used first. Where no size has a price, the least length of stock
 * is sought (and the cost is 0).
 *
 * The layout and all scratch memory live in `arena`, whose escape must be armed. The same job gives
 * the same layout on every machine; work is O(parts log parts) and then bounded by a constant
 * number of search steps beside the building of each plan. The bound counts length and parts longer
 * than half of the longest stick.
 */
void bars_cut(const struct cut_job *job, struct arena *arena, struct cut_layout *ret_layout);

/* The search that goes on from the quick layout (search.h). */
void *bars_begin(const struct cut_job *job, struct arena *arena, const struct cut_layout *quick);
bool bars_step(void *state, int64_t work, int64_t *done, struct cut_layout *best);

#endif
