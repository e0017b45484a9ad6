/* A shopping trip for the first three builds of a bench. */
#ifndef TEST_SHOPPING_H
#define TEST_SHOPPING_H

#include "workshop.h"

#include "desk/trip.h"

struct shopping {
    struct bench bench;
    struct desk_trip *trip; /* NULL before the first */
};

/* Begins the trip, or begins it anew. */
void shopping_begin(struct shopping *shopping);
int shopping_end(void **state); /* cmocka's teardown, of bench and trip */

const struct trip *trip_of(const struct shopping *shopping);

#endif
