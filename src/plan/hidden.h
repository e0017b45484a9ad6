/*
 * What a mattress hides.
 */
#ifndef PLAN_HIDDEN_H
#define PLAN_HIDDEN_H

#include "plan/pass.h"

/*
 * How far up a face the mattresses that stand before it hide it, less `hidden.depth`: below that
 * nobody sees a seam, nor what cloth it is. 0 or less where none does, and where more than a hand's
 * width of the face shows beside it.
 */
int64_t hidden_height(const struct planning *planning, const struct box *box, int64_t side);

#endif
