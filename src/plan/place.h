/*
 * What the files of the point pass share: one join while its points are made.
 */
#ifndef PLAN_PLACE_H
#define PLAN_PLACE_H

#include "plan/point.h"
#include "plan/run.h"
#include "plan/way.h"

struct axes {
    struct screw_axis *at;
    size_t count;
};

struct work {
    struct planning *planning;
    const struct join *join;
    const struct box *a, *b; /* b NULL without a second box */
    struct junction junction;
    struct faces faces;
    struct runs runs;
    struct scene from_a, from_b;    /* sides that the heads may be on; without a box where not */
    struct axes screws_a, screws_b; /* of the frames */
};

/* ---- mating.c ---- */

/* An area on one mating face as it lies on the other. */
struct area place_area_to_a(const struct work *work, const struct area *on_b);
struct area place_area_to_b(const struct work *work, const struct area *on_a);

/* Finds the mating zone on both faces, or tells that they do not meet and leaves it empty. */
void place_zone(struct work *work);

/* ---- place.c ---- */

/*
 * Adds a point with the next rank, its wood and its distances from two edges of each face. `about`
 * is what these edges are chosen by: a whole run, or the place itself as an empty area. The point
 * is stale after the next one.
 */
struct plan_point *place_add(struct work *work, int64_t u, int64_t v, const struct area *about);

/* Adds the points of all runs; of a wall's join those at studs, where the wall has any. */
void place_rows(struct work *work);

#endif
