/*
 * Where a layer lies: on its own face, and on the faces round the edges that it is pulled or sewn
 * over. What lies on a face decides how much cloth a joint takes in, which heads are under a cover,
 * and what shuts the way to them.
 */
#ifndef PLAN_DRAPE_H
#define PLAN_DRAPE_H

#include "plan/pass.h"

/* Cover, lining, outside back, dust cover: what is stapled or sewn. Foam, batting, welt and trim
 * are not, nor is a cover that slips on and off: it is taken off for a driver. */
bool drape_is_cloth(const struct layer *layer);

/* The outline of a layer on its own face of `box`, cut to the face. */
struct area drape_face(const struct layer *layer, const struct box *box);

/*
 * All that the layer covers of one side of a box, its landings included, as at most `DRAPE_AREAS`
 * areas; how many.
 */
#define DRAPE_AREAS 5
size_t drape_on_side(const struct planning *planning, const struct layer *layer,
                     const struct box *box, int64_t side, struct area areas[DRAPE_AREAS]);

/* One of these areas holds the place u, v. */
bool drape_covers(const struct planning *planning, const struct layer *layer, const struct box *box,
                  int64_t side, int64_t u, int64_t v);

/* The strip that takes the staples of an edge: the side it lies on and its outline there. Empty for
 * an edge that is sewn. */
struct landing {
    int64_t side;
    struct area area;
};
struct landing drape_landing(const struct planning *planning, const struct layer *layer,
                             const struct box *box, int64_t edge);

#endif
