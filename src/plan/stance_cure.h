/*
 * Ways out where boxes do not stand as their joins want them: joins set off otherwise, faces
 * exchanged, boxes leaned like their neighbours. All are on trial (cures.h), so that each of these
 * may offer what only might help.
 */
#ifndef PLAN_STANCE_CURE_H
#define PLAN_STANCE_CURE_H

#include "plan/plan.h"

struct planning;

/* Second boxes that the join wants elsewhere: it gives way, or one of its boxes is moved. */
void stance_cure_contradiction(struct planning *planning, const struct join *join,
                               const struct pose *wanted, struct finding *finding);

/* Faces that turn a box otherwise, or can never look at each other: other faces. */
void stance_cure_faces(struct planning *planning, const struct join *join, struct finding *finding);

/* Faces that look past each other by an angle: one box leans as the other does. */
void stance_cure_lean(struct planning *planning, const struct join *join, struct finding *finding);

/* Faces that miss each other in their plane: the second box is moved by so much along the first
 * face's u and v. */
void stance_cure_miss(struct planning *planning, const struct join *join, int64_t by_u,
                      int64_t by_v, struct finding *finding);

/* A box that stands too low by so much; too high where that is negative. */
void stance_cure_height(struct planning *planning, int64_t box, int64_t too_low,
                        struct finding *finding);

#endif
