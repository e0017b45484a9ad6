/*
 * The mirror image of a box, left for right along its own x, and of all that hangs on it.
 *
 * A box beside its image has the same outer size; faces keep their v, members their y and z, layers
 * their order. Along x everything is counted from the other end.
 */
#ifndef PLAN_MIRROR_H
#define PLAN_MIRROR_H

#include "plan/plan.h"

/* The side that a side becomes when the axis is turned round, and the edge of a face. */
int64_t mirror_side(int64_t side, int axis);
int64_t mirror_edge(int64_t side, int64_t edge, int axis);

/* The image of a box's own fields, in place. A slope by points keeps its points, mirrored. */
void mirror_box(struct box *box);

/* The kinds of items that hang on a box and have an image; the last one is ENTITY_none. Those of a
 * layer come after the layers. */
extern const enum entity_kind mirror_kinds[];

/* The box that an item of these kinds hangs on, itself or by its layer; 0 for none. */
int64_t mirror_box_of(const struct model *model, enum entity_kind kind, const void *item);

/*
 * Gives `image`, a copy of `item` with its own key and references, the places and sides of the
 * mirror image. `item` hangs on `box` and is one of the plan's facts: what a member by hand
 * measures is the plan's.
 */
void mirror_item(const struct plan *plan, const struct box *box, enum entity_kind kind,
                 const void *item, void *image);

/* Whether a box is laid out as the image of its twin: of two that name each other the later one. */
bool mirror_is_image(const struct model *model, const struct box *box);

/* A block and a panel of a box, turned round in place along the box's x. Twice is as before. */
void mirror_solid(const struct box *box, struct solid *solid);
void mirror_panel(const struct box *box, struct panel *panel);

/* The other box of a pair: the one that it is the image of, else the first that is its image; 0
 * when there is none. */
int64_t mirror_twin(const struct model *model, int64_t box);

/*
 * The image of a join of box `of` when its image is `twin`: what it is joined to is joined by its
 * own twin where it has one, else by its own other end along `axis` (AXIS_X or AXIS_Y of that box).
 * `image` is a copy of `join`. False when both ends would be one box, or an end is not of this
 * build.
 */
bool mirror_join(const struct model *model, const struct join *join, int64_t of, int64_t twin,
                 int axis, struct join *image);

/* The axis of the box at the other end of a join that runs along the room's x. */
int mirror_axis(const struct plan *plan, const struct join *join, int64_t of);

#endif
