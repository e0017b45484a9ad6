/*
 * What is known of the holes of a join beside their places: what is bored how deep, and how far the
 * work on them is. Hole maps on paper, as JSON and on the screen say the same.
 */
#ifndef PLAN_HOLE_H
#define PLAN_HOLE_H

#include "plan/plan.h"

/* Depths are from the surface that the bit goes in at. */
struct bore {
    const struct screw_kind *kind; /* NULL where no screw was found, or a bolt goes through */
    int64_t clearance_depth;       /* through the wood on the head's side */
    int64_t pilot_depth;           /* in the receiving wood */
};

struct bore hole_bore(const struct plan *plan, const struct plan_point *point);

/* Ticked steps, as columns of the hole map. */
struct hole_work {
    bool drilled, tried, located, found, driven;
};

/* A point that was there before, or that a tick took, is drilled whatever is ticked now. */
struct hole_work hole_work(const struct plan *plan, const struct plan_point *point);

/* An end of a join: a box, its mating face, and whether the heads lie there. Heads that lie on the
 * outside of the box are seen on the face behind, where the same sides give the same distances. */
struct join_end {
    int64_t box, side;
    bool of_b; /* the box is the join's second */
    bool heads;
    int64_t seen; /* face that is looked at: that of the heads, else the mating one */
};

/* False for the second end of a join to a wall, the floor or a given object. */
bool hole_end(const struct plan *plan, const struct junction *junction, bool of_b,
              struct join_end *ret_end);

/* The two distances on that end. */
const struct from_edge *hole_edges(const struct plan_point *point, bool of_b);

/* Whether a whole layer, or a run of one of its edges, is stapled only after a join. A run of a
 * layer that waits whole is none of these. */
bool hole_keeps_off(const struct plan *plan, int64_t layer, int64_t join);
bool hole_opening(const struct plan *plan, const struct interval *interval, int64_t join);

/* A part of an edge, from its left or bottom end. */
struct edge_part {
    int64_t edge; /* enum edge_word; EDGE_LOOP where it is not known which */
    int64_t from, to;
};

/* Where an interval lies: a loop round a whole face (cover_fix.c) falls into parts of its four
 * edges, `nth` counts them from 0 to 3; of any other edge the first is the interval itself. False
 * where there is no such part. */
bool hole_part(const struct plan *plan, const struct interval *interval, int nth,
               struct edge_part *ret_part);

#endif
