/*
 * Convex bodies that may lean, for the rehearsal alone.
 *
 * A body is a corner and up to BODY_EDGES edges that start there: all places that are reached by
 * going some way along each. A block has three edges, a block that is drawn along a line has four,
 * and a round bar is a prism with half as many edges round as its section has sides. Places are in
 * lengths (1/320 mm) along the axes of whoever looks.
 */
#ifndef PLAN_REHEARSE_BODY_H
#define PLAN_REHEARSE_BODY_H

#include "plan/plan.h"

#include <stdbool.h>

#define BODY_ROUND 12 /* edges round a bar: its section has 24 sides */
#define BODY_EDGES (BODY_ROUND + 1)

struct place3 {
    double along[3]; /* by axis */
};

struct body {
    struct place3 corner;
    struct place3 edges[BODY_EDGES];
    int count;
};

struct body body_of_block(const struct solid *solid);

/* A bar from a place along an axis for a length (not 0, of either sign). Its section is inscribed:
 * nowhere is it thicker than the round bar, and by less than 1 % of the radius thinner. */
struct body body_of_bar(struct vector from, int axis, int64_t length, int64_t radius);

/* The body with all places that it passes when it is moved by so much along an axis. It must have
 * room for one more edge. */
struct body body_drawn(const struct body *body, int axis, int64_t by);

/* The smallest block round the body, to the nearest whole length. */
struct solid body_outline(const struct body *body);

/* The block that has two places as opposite corners, to the nearest whole length. */
struct solid body_between(const struct place3 *a, const struct place3 *b);

/* Whether two bodies share more than their skins: the depth to which one is in the other is more
 * than BODY_SLACK in every direction in which they could be parted. */
#define BODY_SLACK (FIELDS_MM(1) / 20)
bool bodies_meet(const struct body *a, const struct body *b);

#endif
