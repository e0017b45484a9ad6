/*
 * A lower bound on the cost of sticks that holds for any values of the parts: no stick gives more
 * value than its fullest filling, so the sticks of every plan together hold the value of all parts.
 * The cheapest sticks that do, in whole numbers, cost no more than any plan. It catches the
 * rounding of prices, which the linear relaxation cannot see.
 */
#ifndef CUT_COVERING_H
#define CUT_COVERING_H

#include "cut/knapsack.h"

/* How much value sticks of a given price hold at most. */
struct covering {
    int64_t *held; /* by price in coins, 0 to steps; NULL: nothing can be said */
    int64_t coin;  /* the prices' greatest common divisor */
    int64_t steps;
};

/*
 * For prices up to `most`, by the values that `table` was filled with. Where the numbers grow too
 * large nothing can be said, and `held` is NULL. O(most / coin * sizes). The memory is the task's
 * arena's.
 */
struct covering covering_make(const struct bar_task *task, const struct value_table *table,
                              int64_t most);

/* The most value that sticks hold which cost no more than this; INT64_MAX where nothing can be
 * said. */
int64_t covering_holds(const struct covering *covering, int64_t price);

/* The least price of sticks that hold so much value, but no more than `most`; 0 where nothing can
 * be said. */
int64_t covering_bound(const struct covering *covering, int64_t value, int64_t most);

#endif
