/*
 * Lids: boxes that hang on hinges over another one. Asked by the card and by the check.
 *
 * Formula lid.stay: stays hold the turning weight of the finished lid, weight x depth / 2, and up
 * to `lid.stay.most` of it (card_lid.c). A lid is the box that its hinges are entered for. Hinges
 * on its underside stand along the back.
 */
#ifndef PLAN_LID_H
#define PLAN_LID_H

#include "plan/pass.h"

/* Hinges of the box, NULL where it is no lid. */
const struct fitting *lid_hinge(const struct model *model, int64_t box);

/* The side of the lid that it turns about: back, front, left or right. */
int64_t lid_turns_at(const struct fitting *hinge);

/* The join by which a lid, or whatever else is laid on, rests on another box; NULL without one. */
const struct join *lid_rest(const struct model *model, int64_t lid);

/* The box that it lies on, by a join that only lays it down; NULL where it lies on none. */
const struct box *lid_chest(const struct model *model, int64_t lid);

/* From bare wood to bare wood at the hinges: the cloth of the lid, that of what it shuts (as much
 * again where nobody entered it), and `lid.hinge.gap`.
 * Formula lid.hinge. */
int64_t lid_hinge_gap(const struct planning *planning, int64_t lid);

/* An area in the measure of gaps, square inches or centimetres, which that of foam and panels is
 * too large for: "2.0 in2". In the plan's arena. */
const char *lid_area_said(const struct planning *planning, int64_t area);

#endif
