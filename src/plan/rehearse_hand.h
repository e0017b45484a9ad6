/*
 * A hand that brings a tool to a head, for the rehearsal alone: a block half as wide as a hand
 * hole, that comes in through the side which the plan chose for the join.
 */
#ifndef PLAN_REHEARSE_HAND_H
#define PLAN_REHEARSE_HAND_H

#include "plan/rehearse_look.h"

struct grasp {
    const struct view *view;
    const struct staged_join *join; /* whose openings may be held aside, through its reach side */
    struct vector head;
    int axis, sign; /* the tool's, away from the wood */
    int64_t length; /* of the tool */
};

/* Whether a hand holds the tool, from inside the box or round its end outside. Else what keeps it
 * out, cloth being told before wood. */
struct verdict hand_brought(const struct grasp *grasp);

#endif
