/*
 * The studs of a wall, as far as the maker has told where they are.
 */
#ifndef PLAN_STUDS_H
#define PLAN_STUDS_H

#include "plan/pass.h"

struct studs {
    bool known; /* a wall stands there, and where its studs are is known */
    LIST_OF(int64_t) at;
};

/* The middles of the studs of the wall that a side of a box looks to, as u on that side from `from`
 * to `to`, both included, in the order of the wall's. In the arena. */
struct studs studs_behind(const struct planning *planning, const struct box *box, int64_t side,
                          int64_t from, int64_t to);

#endif
