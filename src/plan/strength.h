/*
 * Strength as guidance, never engineering advice: how far what is sat on bends, what joins hold
 * when somebody leans on them, whether a wide bed has a leg in its middle, and what tips a tall
 * piece.
 *
 * Formula strength.strip: a panel is looked at as a strip `strength.strip` wide between supports,
 * with a person, `strength.load`, in its middle (beam.bend); it may bend by its span over
 * `strength.deflection`, L/180 (International Building Code, table 1604.3, for what carries no
 * ceiling). Members under it likewise, each with the whole person.
 * Formula strength.slat: a slat carries that person's share of its pitch in a strip
 * `strength.strip` wide, in its middle (beam.bend), and bends by its span over `slat.deflection` at
 * the most. Common practice, no source.
 * Formula strength.tip (derived): a level push at the top that tips a piece is its weight times
 * half its depth, over its height.
 */
#ifndef PLAN_STRENGTH_H
#define PLAN_STRENGTH_H

#include "plan/plan.h"

/* A panel or a member with a person on it. */
struct strength_span {
    int64_t box;
    size_t panel;  /* PLAN_NONE of a member */
    size_t member; /* PLAN_NONE of a panel */
    int64_t span;  /* clear, between supports */
    int64_t good;  /* of a panel, the trade's span for its use; 0 of a member */
    int64_t bend;  /* bending and shear */
    int64_t shear; /* of it, shear */
    int64_t most;  /* that is good */
};

/* What is sat on, or carries a mattress: panels and then members, in their order. In the arena,
 * whose escape is armed. O(panels + members^2 of a box). */
struct strength_spans {
    LIST_OF(struct strength_span) of;
};
struct strength_spans strength_spans(const struct plan *plan, struct arena *arena);

/* Bend of a plywood strip with a person in its middle. */
int64_t strength_strip(const struct plan *plan, int64_t thickness, int64_t span);

/*
 * A bed's box: one with a panel that carries a mattress. Where its narrower way is over
 * `bed.beam.width` it wants a rail along its middle, with legs at most `bed.leg.pitch` apart: how
 * many, between its ends. Common practice, no source.
 */
struct strength_bed {
    int64_t box;
    int64_t width; /* the narrower way */
    int64_t legs;  /* wanted */
    int64_t has;   /* legs and uprights to the floor in the middle third */
};
bool strength_bed(const struct plan *plan, const struct box *box, struct strength_bed *ret_bed);

/* What stands as one and nothing holds to a wall, the floor or a given object. */
struct strength_tip {
    int64_t box; /* the first of it */
    int64_t mass;
    int64_t depth, height;
    int64_t push; /* at its top, that tips it; in mg */
};
bool strength_tip(const struct plan *plan, const struct box *first, struct strength_tip *ret_tip);

#endif
