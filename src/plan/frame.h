/*
 * Within pass frame: one box while it is being framed, and the parts of the pass.
 */
#ifndef PLAN_FRAME_H
#define PLAN_FRAME_H

#include "plan/thicket.h"
#include "plan/wood.h"

struct framing {
    struct planning *planning;
    const struct box *box;
    struct section section; /* of the box's stick */
    struct solid space;     /* for the frame */
    int normal;             /* enum axis_word */
    bool turned_round;      /* an image, framed as its twin */
    int lies;           /* axis that has changed places with y meanwhile; AXIS_Y where none has */
    size_t first;       /* of the box's members; the last ones of the plan */
    size_t first_screw; /* of its joints; likewise */
    struct thicket driven; /* those driven so far */
};

/* Adds a member of the box's own stick. Its label and length follow. */
void framing_add(struct framing *framing, int64_t kind, int64_t axis, const struct solid *solid);

/* The member that was added last. */
struct plan_member *framing_last(struct framing *framing);

/* Tells that the box has too little room along an axis; true when it does. */
bool framing_too_small(struct framing *framing, int axis, int64_t least);

/* The widest clear gap that is good behind a panel; a seat under thin foam is carried more closely.
 */
int64_t panel_span(const struct planning *planning, const struct panel *panel);

/* The span that the panels on a side of the box allow over an area of it; INT64_MAX without panels
 * there, 0 where a panel is too thin for its use. */
int64_t framing_span(const struct framing *framing, int64_t side, const struct area *area);

/* The outline of a ladder, and the supports under seams and spans (frame_ladder.c). */
void frame_ladder(struct framing *framing);

/* Two ladders, front and back, and crosses between (frame_crate.c). */
void frame_crate(struct framing *framing);

/* A crate whose outline is not on its front or back: framed while it lies on its back or is turned
 * by a quarter (frame_laid.c). */
void frame_laid(struct framing *framing);

/* The axis that changes places with y for that; AXIS_Y for any other box. */
int frame_lies(const struct box *box);

/* The side that a side is then, and back. */
int64_t side_laid(int64_t side, int with);

/* Members by hand, after those of ours (frame_hand.c). */
void frame_by_hand(struct framing *framing);

/* Joints between the members of the box, with their screws (joints.c). */
void frame_joints(struct framing *framing);

/* Gives the members their turns (frame_order.c). */
void frame_order(struct framing *framing);

/* Tells of seams and spans that the members do not carry (bearing.c). */
void frame_bearings(struct planning *planning);

#endif
