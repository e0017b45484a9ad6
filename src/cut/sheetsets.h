/*
 * Which sheets to open together: sets of sheets, and what the cheapest set that keeps all covers
 * (sheetcovers.h) costs. That is a lower bound, and a better one than any cover alone: it sees that
 * prices come in steps.
 */
#ifndef CUT_SHEETSETS_H
#define CUT_SHEETSETS_H

#include "cut/sheetcovers.h"

/* The least price of sheets that keep all covers; no more than `known`, which is what some plan
 * costs. With too many sets to go through, the dearest single cover, in fractions of sheets and
 * rounded up. */
int64_t covers_bound(const struct sheet_covers *covers, const struct sheet_job *job, int64_t known,
                     struct arena *arena);

/* Sets by number of sheets of each size that has a price; what is free is open in any case. */
struct sheet_sets {
    size_t count, room;
    size_t *counts; /* of set i and size s: counts[i * sizes + s] */
    int64_t *area;
    size_t *order, *tried; /* scratch: sizes; counts */
};

/* With room for so many sets. The memory is the arena's. */
void sets_init(struct sheet_sets *sets, const struct sheet_job *job, size_t room,
               struct arena *arena);

/*
 * The sets that cost less than `below`, keep the covers, and to which no sheet can be added for
 * less than `below`: each cheaper set lies inside one of them. Those of large area first, as many
 * as there is room for. `best` are the counts of a plan that costs `below`: where there are too
 * many sets to go through, those a step away from it are taken too.
 */
void sets_find(struct sheet_sets *sets, const struct sheet_covers *covers,
               const struct sheet_job *job, int64_t below, const size_t *best);

/* Adds a set by hand, in place of the last one where there is no room. */
void sets_add(struct sheet_sets *sets, const struct sheet_job *job, const size_t *counts);

#endif
