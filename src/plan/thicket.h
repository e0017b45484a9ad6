/*
 * The screws and bolts that stand in one box, found by where they are: a grid of cells, each of
 * which knows the screws that pass through it, so that only neighbours are compared.
 */
#ifndef PLAN_THICKET_H
#define PLAN_THICKET_H

#include "plan/screws.h"

struct thicket_screw {
    struct screw_axis axis; /* in the axes of the box */
    size_t screw;           /* into the plan's screws; PLAN_NONE for a bolt, and for one that is
                               only thought of */
    size_t bolt;            /* into the plan's bolts; PLAN_NONE for a screw */
};

struct thicket_link {
    size_t screw; /* into `screws` */
    size_t next;  /* into `links`; PLAN_NONE at the end */
};

/* All zero is an empty one; everything lies in the arena. */
struct thicket {
    struct arena *arena;
    LIST_OF(struct thicket_screw) screws;
    LIST_OF(struct thicket_link) links;
    size_t *cells; /* first link by hash of the cell */
    size_t cell_count;
    int64_t thickest;
};

/* O(1) on average: a screw is no longer than a few cells. */
void thicket_add(struct thicket *thicket, const struct screw_axis *axis, size_t screw);
void thicket_add_bolt(struct thicket *thicket, const struct screw_axis *axis, size_t bolt);

/*
 * The smaller of `enough` and how far the axis is clear of the nearest screw, surface to surface;
 * negative where they cut into each other. `but`, an index into `screws`, is left out; PLAN_NONE
 * leaves out none. *ret_nearest, which may be NULL, is set where one is nearer than `enough`: of
 * those equally near the first. O(screws nearby).
 */
int64_t thicket_clear(const struct thicket *thicket, const struct screw_axis *axis, int64_t enough,
                      size_t but, size_t *ret_nearest);

#endif
