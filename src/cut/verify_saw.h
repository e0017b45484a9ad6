/*
 * The part of the check that follows the saw: one sheet after the other is cut by its strokes.
 */
#ifndef CUT_VERIFY_SAW_H
#define CUT_VERIFY_SAW_H

#include "cut/layout.h"

/* What the strokes of a layout come to. */
struct saw_check {
    bool sound; /* in order of blanks, each from edge to edge of one piece, all parts freed whole */
    int64_t fences; /* times that the fence is set */
    size_t stuck;   /* sheets with a piece that does not pass the opening after the first stroke */
};

/* Cuts all sheets. Indices in the layout must have been checked. O(strokes * pieces) a sheet. */
struct saw_check saw_check(const struct cut_job *job, const struct cut_layout *layout,
                           struct arena *arena);

#endif
