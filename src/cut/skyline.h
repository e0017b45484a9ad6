/*
 * The far edge of what already lies on a roll, and the place where one more part ends soonest.
 */
#ifndef CUT_SKYLINE_H
#define CUT_SKYLINE_H

#include "cut/layout.h"

struct ledge {
    int64_t across, width; /* where on the roll's width */
    int64_t along;         /* how far down it is taken */
};

/* Ledges cover the width without gaps, from the left; neighbours differ in `along`. */
struct skyline {
    LIST_OF(struct ledge) ledges;
    LIST_OF(struct ledge) before; /* scratch */
    int64_t steps;                /* ledges looked at so far: the measure of work */
};

/* An empty roll of this width (above 0). Steps go on counting. */
void skyline_clear(struct skyline *skyline, struct arena *arena, int64_t width);

/*
 * Lays a part where its far end comes soonest, turned where that is allowed and better; of equals
 * where it shuts in the least roll, then farthest left. Parts are laid against ledges' ends, and
 * what is shut in before them stays empty. False when the part is wider than the roll.
 * ret_place->part is left alone. O(ledges^2).
 */
bool skyline_place(struct skyline *skyline, struct arena *arena, const struct cut_piece *part,
                   struct cut_place *ret_place);

#endif
