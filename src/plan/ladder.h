/* Within pass frame: a ladder while it is being framed. */
#ifndef PLAN_LADDER_H
#define PLAN_LADDER_H

#include "plan/frame.h"

struct ladder {
    struct framing *framing;
    int along, up;     /* enum axis_word */
    int64_t show;      /* what a stick shows in the plane */
    struct area field; /* the plane: u along, v up; without the crown */
};

/* An upright with its left side at u, from v0 to v1 (frame_ladder.c). */
void ladder_upright(struct ladder *ladder, int64_t kind, int64_t u, int64_t v0, int64_t v1);

/* Places in order. */
struct places {
    LIST_OF(int64_t) of;
};

/* Where panels of one face meet: upright seams that reach into a band, or all level ones
 * (frame_ladder.c). */
struct places ladder_seams(struct ladder *ladder, const struct area *band, bool upright);

/* The span that the panels on both sides allow over an area (frame_ladder.c). */
int64_t ladder_span(const struct ladder *ladder, const struct area *band);

/* Under an outline that is no rectangle: lowers the top of the field to the lowest place of the
 * outline, where a ladder has room under it (frame_crown.c). */
void crown_lower(struct ladder *ladder);

/* What rises above the top rail then (frame_crown.c). */
void crown_add(struct ladder *ladder);

#endif
