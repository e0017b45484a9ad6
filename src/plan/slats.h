/*
 * Slats: the sticks at the top of a frame on which a mattress lies where no panel carries it.
 */
#ifndef PLAN_SLATS_H
#define PLAN_SLATS_H

#include "plan/plan.h"

/* Members of one box side by side under a mattress, the outer rails among them. */
struct slats {
    int64_t box;
    int axis;      /* along which they run, in the box */
    size_t count;  /* three at least: two are a frame */
    int64_t gap;   /* the widest between two that follow each other */
    int64_t width; /* of the narrowest between the outer two, level */
    int64_t thin;  /* of the thinnest between them, upright */
};

/* Whether a member is one of them. O(objects). */
bool slats_has(const struct plan *plan, const struct slats *slats,
               const struct plan_member *member);

/*
 * The slats of a box; false where it has none, or a panel that carries. They run along the axis
 * along which most members under the mattress do. O(objects + members^2 of the box).
 */
bool slats_of(const struct plan *plan, const struct box *box, struct slats *ret_slats);

#endif
