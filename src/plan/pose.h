/*
 * Poses: from a box's own axes to the room's and back, and from box to box. A box leans first,
 * about its own lean_axis through its origin's corner, is then turned by quarter turns, and last
 * moved.
 *
 * A lean of more than 0 takes the top to the back (about x), the top to the right (about y), or the
 * front to the right (about z).
 *
 * Lengths in 1/320 mm, angles in 1/1000 degree. All is whole-number arithmetic: the same bytes with
 * every compiler. Where nothing leans no function here rounds.
 */
#ifndef PLAN_POSE_H
#define PLAN_POSE_H

#include "plan/plan.h"

/* Cosines, sines and the parts of a normal are counts of this. */
#define POSE_ONE (INT64_C(1) << 30)

/* Sine and cosine of an angle of -90 to 90 degrees, to 1/POSE_ONE. */
int64_t angle_sine(int64_t angle);
int64_t angle_cosine(int64_t angle);

/* A pose at the room's corner with the lean of its box. */
struct pose pose_begin(const struct box *box, int turn);

/* Moves the pose so that the place `at` of box b lies where `from` of box a does. */
void pose_lay(struct pose *pose, const struct box *b, struct vector at, const struct pose *pose_a,
              const struct box *a, struct vector from);

/* Moves the pose by as much as lies between two other poses: from `now` to `wanted`. */
void pose_shift(struct pose *pose, const struct pose *now, const struct pose *wanted);

/* From a box's axes to the room's and back; a lean rounds to the nearest whole length. */
struct vector pose_to_room(const struct pose *pose, const struct box *box, struct vector at);
struct vector pose_to_box(const struct pose *pose, const struct box *box, struct vector at);

/* From one box's axes to another's: rounded once, so that boxes with one lean lose nothing. */
struct vector pose_across(const struct pose *from, const struct box *from_box,
                          const struct pose *to, const struct box *to_box, struct vector at);

/* The outward normal of a side of the box in the room, of length POSE_ONE; of an axis, the one
 * towards larger coordinates. */
struct vector pose_normal(const struct pose *pose, int64_t side);
struct vector pose_axis(const struct pose *pose, int axis);

/* The angle between two faces that should look at each other, 0 to 180 degrees: 0 when they do. */
int64_t pose_askew(const struct pose *a, int64_t side_a, const struct pose *b, int64_t side_b);

/* Whether the axes of one box run along those of the other: no lean lies between them. */
bool poses_agree(const struct pose *a, const struct pose *b);

/* The smallest block along the room's axes round a block of the box. */
struct solid pose_block(const struct pose *pose, const struct box *box, const struct solid *solid);

/* The same along the axes of another box. */
struct solid pose_block_across(const struct pose *from, const struct box *from_box,
                               const struct pose *to, const struct box *to_box,
                               const struct solid *solid);

#endif
