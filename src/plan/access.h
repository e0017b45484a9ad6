/*
 * What the access pass tells about the edges of layers: which are shut in by a join, and which must
 * stay loose until its screws are driven.
 *
 * The constraints it adds to the plan, each once:
 *
 *     JOIN_BEFORE_LAYER   P51  the whole layer shuts the way: an outside back, a dust cover, a flat
 *                              lining, whatever lies over the open face of a hollow
 *                         P46  only its flap does: the layer is put on before, the runs of its
 *                              edges that access_edge_runs gives are stapled after
 *     LAYER_BEFORE_JOIN   P45  an edge of it is stapled inside the mating zone, or the cloth passes
 *                              through the joint
 *     JOIN_BEFORE_FACING  P51  a panel that lies or is fixed over the way
 *     FACING_BEFORE_JOIN  P16  a panel that the screws pass or bite into
 *     JOIN_BEFORE_JOIN    P50  the other join sets a box over the way, or holds it at the wall
 *                         S24  the other join sets a box where one of this join comes along
 */
#ifndef PLAN_ACCESS_H
#define PLAN_ACCESS_H

#include "plan/pass.h"

/* Part of an edge of a layer: from its left or bottom end, half-open; what is not named is free. */
struct edge_run {
    int64_t from, to;
    int64_t class; /* CLASS_TRAPPED, CLASS_OPENING or CLASS_SITE */
    int64_t join;
};

struct edge_runs {
    struct edge_run *at; /* in order, not overlapping */
    size_t count;
};

/*
 * The class of an edge: trapped where its landing lies in a mating zone; an opening, or
 * site for a join in the room, round each head that the layer lies over, `open.per_screw` and the
 * distance of the head from the edge wide, runs with less than `open.merge` between them put
 * together; the whole edge where the layer as a whole must wait. A sewn cover opens at its open
 * edges, any other layer at the edge nearest to the heads.
 */
struct edge_runs access_edge_runs(const struct planning *planning, const struct layer *layer,
                                  const struct box *box, int64_t edge);

#endif
