/*
 * Outlines of a main face that are not straight on all sides: arch, shoulder, slope, and through
 * points. The panel is cut out of the rectangle round it, and so is cloth; the frame of a ladder
 * ends below it (frame_crown.c).
 *
 *     arch       a part of a circle from side to side, `rise` high in the middle
 *     shoulder   a quarter round of the radius `rise` at both ends, straight between
 *     slope      straight from the full height at the left to `rise` less at the right
 *     points     straight from point to point, the highest of them over each place
 *
 * Lengths along a curve are those of a chain of chords that differ from it by no more than the
 * rounding does.
 */
#ifndef PLAN_CURVE_H
#define PLAN_CURVE_H

#include "plan/pass.h"

/* Has the box an outline other than a rectangle, on this side? The face behind the main one has the
 * same. */
bool curve_has(const struct box *box, int64_t side);

/* Bends it, so that cloth has to be eased round it? Not a slope. */
bool curve_bends(const struct box *box, int64_t side);

/* Is it the side over the upper edge of a main face that has an outline? What lies there is bent
 * over it, or slopes. Places along it are the main face's own. */
bool curve_under(const struct box *box, int64_t side);

/* How much longer that is along the outline than from end to end, between two places. */
int64_t curve_longer(const struct model *model, const struct box *box, int64_t from, int64_t to);

/* The radius that what lies over the outline is bent to where it is bent most; 0 where that is
 * nowhere, or an outline by points. */
int64_t curve_radius(const struct box *box);

/* Height of the outline over a place u of the main face, from its bottom. */
int64_t curve_height(const struct model *model, const struct box *box, int64_t u);

/* The lowest place of the outline; the face's height for a rectangle. */
int64_t curve_lowest(const struct model *model, const struct box *box);

/* Length of an edge of the main face along the outline; of the top one between two places. */
int64_t curve_top(const struct model *model, const struct box *box, int64_t from, int64_t to);
int64_t curve_side(const struct model *model, const struct box *box, int64_t edge);

/* What of an area of such a face lies beyond the outline and is cut away, in square millimetres. */
int64_t curve_away(const struct model *model, const struct box *box, const struct area *area);

/* Fills the plan's list of outlines. */
void curve_outlines(struct planning *planning);

#endif
