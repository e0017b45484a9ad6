/*
 * What has to rest between two steps: glue that cures, spray that grabs, batting that comes up off
 * its roll. One table, by the kinds of the two steps; the time is a trade value. A rest is no work:
 * it is in no step's minutes, and the order puts other work into it where there is some.
 */
#ifndef PLAN_RESTS_H
#define PLAN_RESTS_H

#include "plan/plan.h"

struct rest {
    int before, after; /* kinds of steps */
    enum trade value;
    const char *what; /* rests: "the glue cures" */
};

/* The longest rest between two kinds of steps by the trade values that hold; NULL for none. */
const struct rest *rest_between(int before, int after, const int64_t *value);

/*
 * Minutes (1/1000) from one tick's time to another, "2026-11-25 14:05" both; INT64_MAX where one of
 * them is no such time: then nobody knows, and nothing is held back.
 */
int64_t rest_since(const char *then, const char *now);

#endif
