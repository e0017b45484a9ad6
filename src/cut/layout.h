/*
 * What the cutting methods share: the job that is given, the layout that comes back.
 *
 * The floor `cut` may use only `base`; `plan` and what stands above it may use `cut`. Nothing here
 * knows furniture: parts and stock are plain lengths in 1/320 mm.
 *
 * Axes: `along` runs down the length of a stick, a sheet or a roll from the end where cutting
 * begins, `across` over its width from the left. A part that is not turned lies with its length
 * along. Bars have no width: all widths and `across` are 0.
 */
#ifndef CUT_LAYOUT_H
#define CUT_LAYOUT_H

#include "base/list.h"

#include <stdbool.h>
#include <stdint.h>

/* The largest length or width of a part or of stock: sums of areas of thousands stay in int64. */
#define CUT_LENGTH_MAX (INT64_C(1) << 25)

#define CUT_ANY INT64_C(-1) /* as many as are wanted can be had */

struct cut_piece {
    int64_t length, width;
    bool may_turn; /* may lie across; bars never turn */
};

/* Stock to cut from. What lies on the shelf has a price of 0 and a limit. */
struct cut_size {
    int64_t length, width; /* a roll on offer: length 0, its usable width */
    int64_t price;         /* of one, not negative; ignored for rolls */
    int64_t limit;         /* how many there are, or CUT_ANY */
};

struct cut_job {
    const struct cut_piece *parts;
    size_t part_count;
    const struct cut_size *sizes;
    size_t size_count;
    int64_t kerf; /* that the saw takes between two parts, 0 for shears */
    int64_t trim; /* bars: cut off the first end; sheets: off each of the four edges */

    /* Sheets: after the first cut every piece must pass an opening of this length and width, lying
     * either way; 0 where nothing is asked. */
    int64_t passage_length, passage_width;
};

struct cut_place {
    size_t part;           /* index into the job's parts */
    int64_t along, across; /* its near left corner */
    bool turned;
};

/* One stick, sheet or roll with what is cut from it: places[first] to places[first + count). */
struct cut_blank {
    size_t size; /* index into the job's sizes */
    size_t first, count;
    int64_t used;              /* from its beginning to the far end of the farthest part */
    int64_t rest, rest_across; /* largest piece left that reaches over the whole width or the whole
                                  length, kerf taken off; bars: across 0; 0 on a roll */
};

/* A cut of the saw through one blank: the sequence that parts a sheet, each cut from edge to edge
 * of what lies on the saw by then. */
struct cut_stroke {
    size_t blank;
    bool across;      /* runs over the width, at `at` along; else down the length, at `at` across */
    int64_t at;       /* where the kerf begins */
    int64_t from, to; /* the other way: from edge to edge */
    int64_t fence;    /* setting: from the edge of what is cut to the saw */
};

/*
 * Invariants, which verify.h checks with code of its own:
 *   1  each part lies in exactly one place or is left out
 *   2  a part is left out only when no size of which any number can be had is large enough for it
 *   3  parts lie inside their blank within the trim, at least a kerf apart; on sheets so that cuts
 *      from edge to edge part them
 *   4  no more blanks of a size are used than its limit, and each holds at least one part
 *   5  cost is the sum of the blanks' prices (of a roll: the length taken from it) and not below
 *      the bound, which no layout of the job with as few parts left out can undercut
 *   6  strokes, where there are any, are those of the blanks in order, each from edge to edge of a
 *      piece on the saw, and free each part
 */
struct cut_layout {
    LIST_OF(struct cut_blank) blanks;
    LIST_OF(struct cut_place) places;
    LIST_OF(size_t) left_out;           /* rising */
    LIST_OF(struct cut_stroke) strokes; /* sheets: blank by blank, in the order they are made */
    int64_t cost;
    int64_t bound;
    int64_t fences; /* sheets: times that the fence is set */
    size_t stuck;   /* sheets of which a piece does not pass the opening after their first cut */
};

/* No layout of the job is cheaper. */
static inline bool layout_proven(const struct cut_layout *layout)
{
    return layout->cost == layout->bound;
}

#endif
