/*
 * The second half of resolve: how thick the layers lie on each face.
 */
#ifndef PLAN_PADDING_H
#define PLAN_PADDING_H

#include "plan/pass.h"

/* Fills the plan's paddings, six a box. Needs the poses: a layer on a joined group lies on the
 * sides of its boxes that look the same way in the room. */
void resolve_paddings(struct planning *planning);

#endif
