/*
 * Ways through a house: does a block of a given size pass a door, a hall, a corner? All lengths in
 * 1/320 mm; a height or width of 0 is one that nobody measured and anything passes.
 */
#ifndef PLAN_PASSAGE_H
#define PLAN_PASSAGE_H

#include "plan/plan.h"

/*
 * A straight opening, with `margin` to spare in each direction (TRADE 2.12): the two smaller sides
 * pass upright or lying, or turned in the opening (the condition for a rectangle inside a
 * rectangle; derived from the corners touching all four sides).
 */
bool passage_straight(struct vector size, int64_t width, int64_t height, int64_t margin);

/* Longest board of no thickness that turns level between halls of two widths: (p^(2/3) +
 * q^(2/3))^(3/2), exact to a hundred-thousandth. Widths up to 20 m. */
int64_t passage_corner_length(int64_t p, int64_t q);

/*
 * A corner of two halls: carried level on its longest side with its thinnest side across, where the
 * longest is at most passage_corner_length less twice the thickness and the margin; or stood on end
 * where the diagonal of the two larger sides clears the ceiling.
 */
bool passage_corner(struct vector size, int64_t p, int64_t q, int64_t height, int64_t margin);

#endif
