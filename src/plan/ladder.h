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

/* Adds a place; one that is there already is left out. */
void ladder_place(struct ladder *ladder, struct places *places, int64_t place);

/* A place for an upright, set off from those that end at the other side of its rail: to the right
 * of the nearest, or to the left. */
int64_t ladder_stagger(const struct ladder *ladder, const struct places *below, int64_t u,
                       bool left);

/* How far that sets it off. */
int64_t ladder_set_off(const struct planning *planning, int64_t show);

/* Where panels of one face meet: upright seams that reach into a band, or all level ones
 * (frame_ladder.c). */
struct places ladder_seams(struct ladder *ladder, const struct area *band, bool upright);

/* The span that the panels on both sides allow over an area (frame_ladder.c). */
int64_t ladder_span(const struct ladder *ladder, const struct area *band);

/* Where a frame ends that would end at `top` of its main face, with `least` of room above `floor`:
 * at the lowest place of an outline that is no rectangle, where it has room under that
 * (frame_crown.c). Tells where it has not. */
int64_t crown_floor(struct framing *framing, int64_t floor, int64_t top, int64_t least);

/* Of the outline over a place of the plane, less what a panel over the frame takes; an image is
 * framed as its twin (frame_crown.c). */
int64_t crown_height(const struct framing *framing, int64_t u);

/* Cuts the upright that was added last on the slant, between two heights (frame_crown.c). */
void crown_slant(struct ladder *ladder, int64_t left, int64_t right);

/* Blocks behind the curved edge of a panel between `posts`, which are in order, by their left
 * sides; none without a panel (frame_edge.c). */
void crown_back_edge(struct ladder *ladder, const struct area *crown, const struct places *posts);

/* What rises above the top rail then (frame_crown.c). */
void crown_add(struct ladder *ladder);

/* The same on both ladders of a crate, and crosses from post to post. The space of `framing` is the
 * whole one. */
struct crown_crate {
    struct framing *framing;
    int64_t show, deep;       /* what its uprights show, and how deep a ladder is */
    int64_t cross_x, cross_z; /* of a cross */
    int64_t floor;            /* where its ladders end */
};
void crown_add_to_crate(const struct crown_crate *crate);

#endif
