/*
 * A search for a better layout that can go on: begun with the quick layout, it takes as much work
 * as it is given, a bit at a time, and always has its best layout at hand.
 *
 *     struct cut_search *search = cut_begin(CUT_BARS, &job, arena);
 *     while (nobody_types() && cut_step(search, CUT_SLICE))
 *         ;
 *     layout = cut_best(search);
 *
 * Work is counted, never timed: the same job and the same sum of work give the same layout on every
 * machine. A unit is about a nanosecond of one core of an ordinary machine.
 */
#ifndef CUT_SEARCH_H
#define CUT_SEARCH_H

#include "cut/verify.h"

enum cut_effort { CUT_QUICK, CUT_GOOD, CUT_BEST, CUT_EFFORTS };

#define CUT_SLICE INT64_C(20000000) /* work that is not felt between two keys: about 20 ms */

struct cut_search;

/*
 * Begins with the quick layout (at most some 5 ms on jobs of a bench). The job must outlive the
 * search; all memory comes from `arena`, whose escape must be armed here and in cut_step. Releasing
 * the arena ends the search.
 */
struct cut_search *cut_begin(enum cut_way way, const struct cut_job *job, struct arena *arena);

/* Goes on for about this much work. False when nothing more can come of it: the best layout is
 * proven, or every method has run its course. */
bool cut_step(struct cut_search *search, int64_t work);

/* The best layout so far; the search's own, until the next step. */
const struct cut_layout *cut_best(const struct cut_search *search);

/* Work done so far, and what an effort allows in all. */
int64_t cut_done(const struct cut_search *search);
int64_t cut_allowed(enum cut_effort effort);

/* From begin to end with the work of an effort. The layout lives in `arena`. */
void cut_search_all(enum cut_way way, const struct cut_job *job, enum cut_effort effort,
                    struct arena *arena, struct cut_layout *ret_layout);

#endif
