/*
 * Which layers lie where: on which boxes and sides, how they end, and which lies over which.
 */
#ifndef PLAN_LAYERS_H
#define PLAN_LAYERS_H

#include "plan/plan.h"

/* Whether a layer lies on a box: by itself, or as one of a joined group. One that names a box lies
 * on that alone. */
bool layer_touches(const struct model *model, const struct layer *layer, int64_t box);

/* Whether some box that it lies on has wood: cushions have none. */
bool layer_lies_on_wood(const struct model *model, const struct layer *layer);

/* The first box of a layer; 0 of a group without any. */
int64_t layer_box(const struct model *model, const struct layer *layer);

/* Whether one layer lies over both boxes of a join: it is put on after the join, and lies across
 * the joint, not in it. */
bool layer_lies_across(const struct model *model, const struct layer *layer,
                       const struct junction *junction);

/* How it ends at an edge of its face (enum ending_word). */
int64_t layer_ending(const struct layer *layer, int64_t edge);

/* Whether it lies on the whole of a side of its box, not only pulled round on to it: on its own
 * side, and on the opposite one where it lies on both. */
bool layer_has_face(const struct layer *layer, int64_t side);

/* The sides that it lies on or goes round to, one bit each (1u << side). */
unsigned layer_faces(const struct layer *layer);

/* The same, and the far side where an edge is wrapped round to it. */
unsigned layer_reaches(const struct layer *layer);

/* Whether the first layer lies farther out than the second: by rank, then kind, then key. */
bool layer_is_over(const struct layer *over, const struct layer *under);

/* Whether two layers lie on the same box or group, and on one face of it. */
bool layers_share_face(const struct layer *over, const struct layer *under);

/* Whether a lining is pulled on under a cover, rather than closing a side. */
bool lining_is_under_cover(const struct model *model, const struct layer *lining);

#endif
