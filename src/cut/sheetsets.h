/*
 * Which sheets to open together: sets of sheets, what they must hold at least, and what the
 * cheapest set that holds it costs, which is a lower bound.
 *
 * A cover gives each part a value and each size what the parts out of one sheet can be worth at
 * most: a plan's sheets must give what all parts are worth. Areas are a cover; so are products of
 * two dual feasible functions of the lengths both ways, and the count of parts of which no sheet
 * holds two. The cheapest whole set that keeps all covers is a bound: it sees that prices come in
 * steps.
 */
#ifndef CUT_SHEETSETS_H
#define CUT_SHEETSETS_H

#include "cut/sheetjob.h"

#define COVERS_MOST 10

struct sheet_covers {
    size_t count;
    int64_t need[COVERS_MOST];   /* of priced sheets; what comes free has been taken off */
    int64_t *gives[COVERS_MOST]; /* by size */
};

/* Covers for the parts marked in `counted`. O(parts * functions^2). */
void covers_make(struct sheet_covers *covers, const struct sheet_job *job, const bool *counted,
                 struct arena *arena);

/* The least price of sheets that keep all covers, where a plan costs `known`; with too many sets to
 * go through, the best price for each single cover in fractions of sheets, rounded up. */
int64_t covers_bound(const struct sheet_covers *covers, const struct sheet_job *job, int64_t known,
                     struct arena *arena);

/* Sets by number of sheets of each size that has a price; what is free is open in any case. */
struct sheet_sets {
    size_t count, room;
    size_t *counts; /* of set i and size s: counts[i * sizes + s] */
    int64_t *area;
    size_t *order, *tried; /* scratch: sizes; counts */
};

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
