/*
 * What sheets must hold at least, told in values of parts.
 *
 * A cover gives each part a value and each size what the parts out of one sheet can be worth at
 * most: a plan's sheets must give what all parts are worth. Areas are a cover; so are products of
 * two dual feasible functions of the lengths both ways, and the count of parts of which no sheet
 * holds two.
 */
#ifndef CUT_SHEETCOVERS_H
#define CUT_SHEETCOVERS_H

#include "cut/sheetjob.h"

#define COVERS_MOST 10

struct sheet_covers {
    size_t count;
    int64_t need[COVERS_MOST];   /* of priced sheets; what comes free has been taken off */
    int64_t *gives[COVERS_MOST]; /* by size */
};

/* Covers for the parts marked in `counted`, in the arena. O(parts * functions^2). */
void covers_make(struct sheet_covers *covers, const struct sheet_job *job, const bool *counted,
                 struct arena *arena);

#endif
