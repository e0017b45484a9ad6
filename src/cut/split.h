/*
 * Cutting rectangles from edge to edge: the free areas that earlier cuts have left, and the rule
 * by which a part takes one of them. Used by sheets and rolls; measures carry a kerf already (see
 * sheets.c).
 */
#ifndef CUT_SPLIT_H
#define CUT_SPLIT_H

#include "cut/layout.h"

struct free_area {
    size_t blank;
    int64_t along, across;
    int64_t length, width;
};

struct free_areas {
    LIST_OF(struct free_area) areas; /* in no order; none empty */
    int64_t steps;                   /* areas looked at so far: the measure of work */
};

/* What makes one area fit better than another, and which way the rest is split in two. */
enum fit_rule { FIT_AREA, FIT_SHORT_SIDE, FIT_LONG_SIDE, FIT_RULES };
enum split_rule { SPLIT_WIDE_ALONG, SPLIT_WIDE_ACROSS, SPLIT_LARGE, SPLIT_EVEN, SPLIT_RULES };

/* Adds an area; an empty one is left out. */
void areas_open(struct free_areas *free, struct arena *arena, struct free_area area);

/*
 * Places a part of this length and width, turned where that is allowed and fits better, into the
 * area that fits best (of equals the first) and splits what is left of it. False when no area is
 * large enough. ret_place->part is left alone. O(areas).
 */
bool areas_place(struct free_areas *free, struct arena *arena, const struct cut_piece *part,
                 enum fit_rule fit, enum split_rule split, size_t *ret_blank,
                 struct cut_place *ret_place);

#endif
