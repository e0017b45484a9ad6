/* Cutting for a trip: what several builds cut from one stock, laid out together where that is
 * cheaper. Only for trip.c. */
#ifndef DESK_TRIP_CUT_H
#define DESK_TRIP_CUT_H

#include "desk/trip.h"

/* How much of a build's lines of a stock is paid. */
enum trip_paid { TRIP_NOTHING_PAID, TRIP_ALL_PAID, TRIP_SOME_PAID };

/* What a build's purchases of a stock come to, and how much of it the build uses. */
struct trip_user {
    size_t build; /* index into the trip's builds */
    const struct plan_job *job;
    int64_t use;   /* length of stick with the kerf, or mm2 of sheet or cloth */
    int64_t price; /* of its own purchases of the stock */
    enum trip_paid paid;
};

typedef enum trip_paid trip_paid_fn(const void *context, size_t build, int64_t stock);

/* In the arena, whose escape is armed. */
struct trip_cutter {
    struct arena *arena;
    struct trip *trip;
    enum cut_effort effort;
    trip_paid_fn *paid;
    const void *context;
};

/* Fills trip->cuts. */
void trip_cut_together(const struct trip_cutter *cutter);

/* The cut that holds what a build cuts from a stock; NULL for none. */
const struct trip_cut *trip_cut_of(const struct trip *trip, size_t build, int64_t stock);

#endif
