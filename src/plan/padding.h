/*
 * The second half of resolve: how thick the layers lie on each face.
 */
#ifndef PLAN_PADDING_H
#define PLAN_PADDING_H

#include "plan/pass.h"

/* Fills the plan's paddings, six a box. Needs the poses: a layer on a joined group lies on the
 * sides of its boxes that look the same way in the room. */
void resolve_paddings(struct planning *planning);

/* ---- one layer, for whoever draws it; the plan needs its poses ---- */

/* How thick it lies: batting as it is when the cover pulls it down; 0 for cloth. */
int64_t layer_thickness(const struct plan *plan, const struct layer *layer);

/* The side of a box that it lies on, by itself or as one of a joined group; -1 where it does not.
 * A layer on both sides lies on the opposite one as well. */
int64_t layer_side_on(const struct plan *plan, const struct layer *layer, int64_t box);

/* What it covers of a side of the box. */
struct area layer_area(const struct box *box, int64_t side, const struct layer *layer);

#endif
