/*
 * Parts that nearly fit beside each other: their measures alone would, the kerfs between them are
 * too much. Four strips of 12 in need 48-3/8.
 */
#ifndef CUT_SHORTFALL_H
#define CUT_SHORTFALL_H

#include "cut/layout.h"

struct sheet_shortfall {
    size_t part;   /* the first of the parts, which are alike in this measure */
    size_t number; /* of them beside each other, 2 or more */
    size_t size;   /* of sheet; index into the job's sizes */
    bool across;   /* beside each other over the sheet's width; else down its length */
    int64_t has;   /* what the sheet measures within its trim */
    int64_t needs; /* what they take, kerfs included: more than `has` */
};

struct sheet_shortfalls {
    LIST_OF(struct sheet_shortfall) list;
};

/*
 * Lists every number of parts with one measure that takes no more than a sheet alone and more with
 * its kerfs, by part, then size, then way; the measures are those of parts as they may lie, and of
 * parts alike only the first is named. Figures only: whether it matters depends on the plan. The
 * list lives in `arena`, whose escape must be armed. O(parts^2 + parts * sizes).
 */
void sheets_shortfalls(const struct cut_job *job, struct arena *arena,
                       struct sheet_shortfalls *ret_found);

#endif
