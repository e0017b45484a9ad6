/*
 * Sheets and slabs: rectangles out of rectangles by cuts from edge to edge.
 */
#ifndef CUT_SHEETS_H
#define CUT_SHEETS_H

#include "cut/layout.h"

/*
 * Cuts sheets at the least cost, then with the fewest cuts, as far as a search of limited work
 * finds it. n parts side by side take their widths and n - 1 kerfs, so four strips of 12 do not
 * come out of 48. Sizes without a price are used first. Where no size has a price, the least area
 * of stock is sought (and the cost is 0).
 *
 * The layout and all scratch memory live in `arena`, whose escape must be armed. The same job gives
 * the same layout on every machine; after a first plan of O(parts^2) at worst, work is bounded by a
 * constant number of steps. The bound counts area.
 */
void sheets_cut(const struct cut_job *job, struct arena *arena, struct cut_layout *ret_layout);

/* The search that goes on from the quick layout (search.h). */
void *sheets_begin(const struct cut_job *job, struct arena *arena, const struct cut_layout *quick);
bool sheets_step(void *state, int64_t work, int64_t *done, struct cut_layout *best);

#endif
