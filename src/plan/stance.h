/*
 * How boxes stand to each other and to the floor: what resolve and clash share.
 */
#ifndef PLAN_STANCE_H
#define PLAN_STANCE_H

#include "plan/pass.h"

/* Whether a join attaches two boxes of the build to each other. */
bool stance_joins_boxes(const struct join *join);

/* How the second box of such a join stands when the first one stands where it does; false when
 * their faces can never look at each other. */
bool stance_wanted(const struct planning *planning, const struct join *join,
                   struct pose *ret_wanted);

/* What a given object takes up in the room: its place counts from the left, back, bottom corner of
 * all boxes that stand as one with the first. O(boxes). */
struct solid stance_object(const struct plan *plan, const struct object *object);

/* The smallest block along the room's axes round all boxes; nothing without any. O(boxes). */
struct solid stance_whole_piece(const struct plan *plan);

/* Whether two places are the same but for the rounding of a lean. */
bool stance_same_place(const struct pose *a, const struct pose *b);

/* Finds the floor under every box, and tells joins that contradict each other, boxes that are
 * joined to nothing, and those that do not stand on the floor they are joined to. */
void stance_find(struct planning *planning);

#endif
