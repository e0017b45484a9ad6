/*
 * Hidden lines of blocks that may lean, as an eye far away sees them. Knows no furniture: a brick
 * is a corner and three edges in the eye's own axes.
 */
#ifndef DRAW_HIDDEN_H
#define DRAW_HIDDEN_H

#include "base/list.h"

#include <stdbool.h>

/* To the right, up, and towards the eye. */
struct spot {
    double at[3];
};

/* All places that are reached from the corner by going some way along each edge. The edges stand
 * at right angles, or nearly; an edge of no length makes it a sheet, which hides nothing. */
struct brick {
    struct spot corner;
    struct spot edges[3];
    bool chosen; /* its faces are hatched, and its hidden edges are told as well */
};

enum stroke_kind {
    STROKE_EDGE,   /* part of an edge that is seen */
    STROKE_BEHIND, /* part of a chosen brick's edge that is not */
    STROKE_HATCH   /* on a chosen brick's face */
};

struct stroke {
    enum stroke_kind kind;
    size_t brick;
    struct spot from, to;
};

struct strokes {
    LIST_OF(struct stroke) of;
};

/* What is as near to a brick's skin as this does not hide it: bricks that touch, and places that
 * were rounded, are no bricks in one another. */
#define HIDDEN_SLACK 16.0

/*
 * The strokes of all bricks, brick by brick, in `arena`, whose escape must be armed. Hatching
 * slopes, `hatch` apart (measured along either axis); 0 for none. Bricks that stand in one another
 * hide each other's edges rightly; where their faces cut no line is drawn. O(n log n) for bricks
 * spread out over the picture, O(n^2) where all are over one another.
 */
void hidden_strokes(struct strokes *strokes, const struct brick *bricks, size_t count, double hatch,
                    struct arena *arena);

#endif
