/*
 * Slices: a roll is cut across in thought as often as wanted. Each slice meets parts that lie
 * beside each other; a part is met by as many slices as its length says. How long a roll must be
 * when only that counts is the least sum of slices (the bar relaxation: Scheithauer, "LP-based
 * bounds for the container and multi-container loading problem", 1999).
 */
#ifndef CUT_ROLLSLICES_H
#define CUT_ROLLSLICES_H

#include "base/arena.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* How a part may lie in a slice: `size` of the room, in `share` slices. With a `repeat` it begins
 * only at `at` and whole repeats farther, at which it has to end within the room. */
struct slice_way {
    size_t kind;
    int64_t size, share;
    int64_t at, repeat;
    bool turned, dropped; /* the caller's */
    int64_t value;        /* in whole numbers: see slices_solve */
};

struct slice_kind {
    size_t name;             /* the caller's */
    int64_t count;           /* no slice meets more */
    double wanted;           /* parts for which the values shall show most; mostly `count` */
    size_t first, way_count; /* ways, one after another */
};

/* Buffers that every solution uses again. */
struct slice_scratch {
    double *inverse, *level, *dual, *entering, *direction; /* of the linear program, by rows */
    size_t *tied, *loose;                                  /* by ways */
    int64_t *left, *now, *most, *values;
};

struct slices {
    int64_t room;
    struct slice_kind *kinds;
    size_t kind_count;
    struct slice_way *ways;
    size_t way_count;
    int64_t worth; /* the most that values of one slice make up */
    int64_t work;  /* done so far, in units of search.h */
    struct slice_scratch scratch;
};

/* Without kinds and ways, with memory for so many of them. */
struct slices slices_begin(size_t kinds, size_t ways, struct arena *arena);

/*
 * A number of slices that is never too large, rounded up. Leaves in the ways values, and in `worth`
 * the most that those in one slice add up to, that show it: `count` times the least of value times
 * share, over all kinds, is more than worth times one slice less. Floating point proposes the
 * values, those by which the wanted parts need most; whole numbers judge them. Each way fits the
 * room. 0, and `worth` 0, where nothing is shown with `limit` of work.
 */
int64_t slices_solve(struct slices *slices, int64_t limit);

/* What one part of a kind is worth in all its slices, in the way in which that is least. */
int64_t slices_kind_worth(const struct slices *slices, const struct slice_kind *kind);

/*
 * Looks at the parts from their other side, after slices_solve left a `worth`: what a way is worth
 * becomes its share, SLICES_WHOLE at most for those in one slice, and its share becomes its size
 * of `room`. Who does not need more than SLICES_WHOLE slices then, solved anew, may fit; who does
 * cannot: while parts lie beside each other each can be given lanes for as much as it is worth, and
 * on one lane parts lie one after another (bounds of this kind: Belov, Kartak, Rohling and
 * Scheithauer, International Transactions in Operational Research 16, 2009). Kinds that are worth
 * nothing in some way are left aside. False where a kind has no way left that is not longer than
 * the room: then they do not fit it either.
 */
#define SLICES_WHOLE (INT64_C(1) << 20)

bool slices_turn(struct slices *slices, int64_t room);

#endif
