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

/* A group whose origin is the corner of the roll where cutting begins. */
#define CUT_PINNED SIZE_MAX

struct cut_piece {
    int64_t length, width;
    bool may_turn; /* may lie across; bars never turn, nor does what is matched */

    /*
     * Rolls with a pattern. Parts of one group above 0 are matched: they lie as if cut from one
     * cloth on which the near left corner of each is `along` and `across` from an origin, and then
     * moved by whole repeats (of a half-drop, by one repeat across and half of one along). Where
     * the origin comes to lie is the layout's choice but for CUT_PINNED. A part that is centred in
     * a direction has its middle there instead of its corner, half its size rounded down.
     */
    size_t group;
    int64_t along, across;
    bool centred_along, centred_across;
};

/* Stock to cut from. What lies on the shelf has a price of 0 and a limit. */
struct cut_size {
    int64_t length, width; /* a roll on offer: length 0, its usable width */
    int64_t price;         /* of one, not negative; ignored for rolls */
    int64_t limit;         /* how many there are, or CUT_ANY */
};

/* A place of the roll on offer that no part may touch: half-open both ways. */
struct cut_blemish {
    int64_t along, across;
    int64_t length, width;
};

/* Rolls: the pattern's repeats, 0 in a direction in which nothing is to match. With a half-drop,
 * which needs both, the pattern lies half a repeat (rounded down) farther along in every other
 * repeat across. */
struct cut_pattern {
    int64_t along, across;
    bool half_drop;
};

/* Rolls: what is sold for a length that is used. What may be lost `ahead` of the first part is
 * added, then `reserve` millionths, rounded up; it is not below `least`, and a multiple of `step`;
 * 0 where nothing is asked. */
struct cut_sale {
    int64_t ahead, reserve, least, step;
};

struct cut_job {
    const struct cut_piece *parts;
    size_t part_count;
    const struct cut_size *sizes;
    size_t size_count;
    int64_t kerf; /* that the saw takes between two parts, 0 for shears */
    int64_t trim; /* bars: cut off the first end; sheets: off each of the four edges; rolls: the
                     selvedge, off both edges of the roll on offer */

    /* Sheets: after the first cut every piece must pass an opening of this length and width, lying
     * either way; 0 where nothing is asked. */
    int64_t passage_length, passage_width;

    struct cut_pattern pattern;
    struct cut_sale sale;
    const struct cut_blemish *blemishes;
    size_t blemish_count;
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

/* Whether a part has to keep to the pattern. */
static inline bool piece_matched(const struct cut_job *job, const struct cut_piece *piece)
{
    return piece->group > 0 && (job->pattern.along > 0 || job->pattern.across > 0);
}

/*
 * Invariants, which verify.h checks with code of its own:
 *   1  each part lies in exactly one place or is left out
 *   2  a part is left out only when no size of which any number can be had is large enough for it,
 *      or when, on the widest roll, it does not meet the pattern together with those of its group
 *      that come before it in the job and are not left out
 *   3  parts lie inside their blank within the trim, at least a kerf apart; on sheets so that cuts
 *      from edge to edge part them
 *   4  no more blanks of a size are used than its limit, and each holds at least one part
 *   5  cost is the sum of the blanks' prices (of a roll: the length that is sold for what is
 *      taken from it) and not below the bound, which no layout of the job with as few parts left
 *      out can undercut
 *   6  strokes, where there are any, are those of the blanks in order, each from edge to edge of a
 *      piece on the saw, and free each part
 *   7  on a roll the parts stand in the order in which they are met along it; none touches a
 *      blemish, and matched parts keep to the pattern. Pieces of a roll that lie on the shelf hold
 *      no matched parts: where their pattern begins is not known
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
