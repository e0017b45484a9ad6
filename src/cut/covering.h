/*
 * A lower bound on the cost of sticks that holds for any values of the parts: no stick gives more
 * value than its fullest filling, so the sticks of every plan together hold the value of all parts.
 * The cheapest sticks that do, in whole numbers, cost no more than any plan. It catches the
 * rounding of prices, which the linear relaxation cannot see.
 */
#ifndef CUT_COVERING_H
#define CUT_COVERING_H

#include "cut/knapsack.h"

/*
 * The bound for the values that `table` was filled with. Exact in whole
 * numbers; 0 when the numbers grow too large. `most` is a cost that is known to be enough: the
 * bound is never above it. O(most / common divisor of prices * sizes).
 */
int64_t covering_bound(const struct bar_task *task, const struct value_table *table, int64_t most);

#endif
