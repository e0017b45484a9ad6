/*
 * A lower bound from what blanks hold: shared by sticks and sheets.
 */
#ifndef CUT_BOUND_H
#define CUT_BOUND_H

#include "cut/layout.h"

/*
 * The least price of any blanks that together hold `total`, where one blank of size i holds at most
 * contents[i], nothing where that is negative: what the shelf holds comes free, the rest costs the
 * best price a unit, rounded up; with one size on offer, whole blanks. Exact in integers as long as
 * total * price fits in int64; beyond that the bound is 0, which is always true.
 */
int64_t bound_by_content(const struct cut_job *job, const int64_t *contents, int64_t total);

#endif
