/* What suppliers ask for bringing the goods of a trip: one order for all builds. Only for trip.c.
 */
#ifndef DESK_TRIP_BRING_H
#define DESK_TRIP_BRING_H

#include "desk/trip.h"

/*
 * Each supplier's line becomes one charge for what the trip has from him, shared by what each build
 * has of that; it goes where the whole is enough to be brought for nothing. A line that some builds
 * have paid and others not stays as the builds have it. Comes when packs are pooled, before the
 * money. In the arena, whose escape is armed.
 */
void trip_bring_together(struct arena *arena, struct trip *trip);

#endif
