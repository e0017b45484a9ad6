/* How far boxes are moved apart along their joins, for a picture of the piece taken apart. */
#ifndef DRAW_APART_H
#define DRAW_APART_H

#include "draw/hidden.h"
#include "plan/plan.h"

/*
 * One way for each box of the model, in its order, along the room's axes and in lengths. Boxes that
 * no join holds together stand in lots, which the plan puts at one place: they are set beside each
 * other, `gap` apart, whatever `joins` is. Joined boxes move `joins` apart, square to the faces
 * that meet; where joins go round in a circle and cannot all have that, they share it.
 * In `arena`, whose escape must be armed.
 */
void apart_ways(struct spot *ways, const struct plan *plan, double gap, double joins,
                struct arena *arena);

#endif
