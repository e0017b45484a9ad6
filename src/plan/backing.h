/*
 * The wood behind a face: what a screw through that face passes or bites into. Members that touch
 * the face, or a panel fixed on it; a board's own panel counts as wood.
 */
#ifndef PLAN_BACKING_H
#define PLAN_BACKING_H

#include "plan/pass.h"

struct backing {
    struct area area;  /* on the face */
    int64_t near, far; /* depth at which the wood begins (behind the panel) and ends */
    size_t member;     /* PLAN_NONE: the board's own panel */
    bool end_grain;    /* its grain runs into the face */
    bool glued;        /* the panel in front of it, where there is one */
};

struct backings {
    int64_t box, side;
    struct backing *at;
    size_t count;
};

/* In the arena, in order of members; O(members x panels) of the whole plan. */
struct backings backing_find(const struct planning *planning, int64_t box, int64_t side);

/* The wood behind one place: side grain before end grain, then the deepest. NULL when there is
 * none. */
const struct backing *backing_at(const struct backings *backings, int64_t u, int64_t v);

/* How deep behind a face a solid begins and ends. */
int64_t backing_near(const struct box *box, int64_t side, const struct solid *solid);
int64_t backing_far(const struct box *box, int64_t side, const struct solid *solid);

/* Whether wood that ends so deep behind a side reaches the box's other face, and that is padded,
 * covered or sat on: there a screw's tip keeps a wider margin. */
bool backing_ends_soft(const struct planning *planning, int64_t box, int64_t side, int64_t far);

/* A panel that is fixed on its box and no part of the frame itself. */
bool backing_is_skin(const struct planning *planning, const struct panel *panel);

#endif
