/*
 * Packing a mix of sticks out of all the fillings that may stand in it, where these are few: branch
 * and bound over how often each is cut.
 */
#ifndef CUT_BARS_POOL_H
#define CUT_BARS_POOL_H

#include "cut/bars_exact.h"

struct bar_pool;

/* For a task with a limit on every size. */
struct bar_pool *bar_pool_begin(const struct bar_task *task);

/*
 * Sets out for sticks of at most `limits`, each cut by one of the fillings in `fillings`, that hold
 * the parts in `counts` (or more), with about `work` at the most. The fillings must stay until it
 * is over.
 */
void bar_pool_set_out(struct bar_pool *pool, const struct bar_plan *fillings, const int64_t *counts,
                      const int64_t *limits, int64_t work);

/*
 * Goes on for about `slice` of work; GOES_ON when it is not over. FOUND: the sticks are added to
 * `plan`. NONE: there are none, every branch was given up by values of the parts that were checked
 * in whole numbers. UNDECIDED: the work was not enough. What it did is added to *done.
 */
enum bar_outcome bar_pool_go_on(struct bar_pool *pool, int64_t slice, struct bar_plan *plan,
                                int64_t *done);

#endif
