/*
 * Hidden lines of bodies that may lean, as an eye far away sees them. Knows no furniture: a body is
 * a flat band that is moved along a way, in the eye's own axes.
 */
#ifndef DRAW_HIDDEN_H
#define DRAW_HIDDEN_H

#include "base/list.h"

#include <stdbool.h>

/* To the right, up, and towards the eye. */
struct spot {
    double at[3];
};

/* A place along a band: where its lower and its upper rim pass. Rims turn at a corner; between two
 * stations without one the band is round, and only the contour of it shows. */
struct station {
    struct spot low, high;
    bool low_corner, high_corner;
};

/*
 * A band between two rims, two stations or more, flat and nowhere turned inside out; and all places
 * that are reached from it by going some way along `way`, which stands on it square, or nearly. Two
 * stations may have one place of a rim in common. The first and the last station are corners. A
 * body without thickness is a sheet, which hides nothing.
 */
struct body {
    const struct station *stations;
    size_t count;
    struct spot way;
    bool chosen; /* its faces are hatched, and its hidden edges are told as well */
};

enum stroke_kind {
    STROKE_EDGE,   /* part of an edge that is seen */
    STROKE_BEHIND, /* part of a chosen body's edge that is not */
    STROKE_HATCH   /* on a chosen body's face */
};

struct stroke {
    enum stroke_kind kind;
    size_t body;
    struct spot from, to;
};

struct strokes {
    LIST_OF(struct stroke) of;
};

/* What is as near to a body's skin as this does not hide it: bodies that touch, and places that
 * were rounded, are no bodies in one another. */
#define HIDDEN_SLACK 16.0

/*
 * The strokes of all bodies, body by body, in `arena`, whose escape must be armed. Hatching slopes,
 * `hatch` apart (measured along either axis); 0 for none. Bodies that stand in one another hide
 * each other's edges rightly; where their faces cut no line is drawn. O(n log n) for bodies spread
 * out over the picture, O(n^2) where all are over one another.
 */
void hidden_strokes(struct strokes *strokes, const struct body *bodies, size_t count, double hatch,
                    struct arena *arena);

#endif
