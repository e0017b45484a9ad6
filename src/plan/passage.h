/*
 * Ways through a house: does a block of a given size pass a door, a hall, a corner? All lengths in
 * 1/320 mm; a height or width of 0 is one that nobody measured and anything passes.
 */
#ifndef PLAN_PASSAGE_H
#define PLAN_PASSAGE_H

#include "plan/plan.h"

/*
 * Formula way.door: a straight opening, with `margin` to spare in each direction: the
 * two smaller sides pass upright or lying, or turned in the opening (the condition for a rectangle
 * inside a rectangle; derived from the corners touching all four sides).
 */
bool passage_straight(struct vector size, int64_t width, int64_t height, int64_t margin);

/* Formula way.corner: the longest board of no thickness that turns level between halls of two
 * widths: (p^(2/3) + q^(2/3))^(3/2), exact to a hundred-thousandth. Widths up to 20 m. */
int64_t passage_corner_length(int64_t p, int64_t q);

/*
 * A corner of two halls: carried level on its longest side with its thinnest side across, where the
 * longest is at most passage_corner_length less twice the thickness and the margin; or stood on end
 * where the diagonal of the two larger sides clears the ceiling.
 */
bool passage_corner(struct vector size, int64_t p, int64_t q, int64_t height, int64_t margin);
bool passage_corner_level(struct vector size, int64_t p, int64_t q, int64_t height, int64_t margin);

/*
 * A stair, formula way.stair (derived): up the flight with its longest side along the slope,
 * through its width by its plumb head-room times `slope` (1/1000000); and, where the landing is
 * measured, round it as round the corner of two halls, under the same head-room.
 */
bool passage_stair(struct vector size, int64_t width, int64_t headroom, int64_t landing,
                   int64_t slope, int64_t margin);

/*
 * A lift, formula way.lift (derived): through its door, and then in a car as wide and high as that
 * and `depth` deep: lying, on end, or tilted in the plane of depth and height with one side across.
 */
bool passage_lift(struct vector size, int64_t width, int64_t height, int64_t depth, int64_t margin);

/* A vehicle: through its opening, with its longest side along the floor where that is measured. */
bool passage_vehicle(struct vector size, int64_t width, int64_t height, int64_t floor,
                     int64_t margin);

#endif
