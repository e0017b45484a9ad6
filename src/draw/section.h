/* A face cut open square to one of its edges: wood, padding and cloth as they lie on each other. */
#ifndef DRAW_SECTION_H
#define DRAW_SECTION_H

#include "draw/drawing.h"

/*
 * The cut goes through the middle of the padding along the edge. u counts from the edge into the
 * face, v outward from the wood of the face; the picture ends some way from the edge, and, where
 * the box is deep, some way into it. What lies at the edge shows: what goes round it, where it
 * lands and is stapled. Each layer is named at the right with its thickness, which is its thickness
 * in the picture; cloth is drawn as a line. `chosen` is a layer to mark, 0 for none. The drawing
 * lies in `arena`, whose escape must be armed. An unknown box gives an empty drawing.
 */
void draw_section(struct drawing *drawing, const struct plan *plan, int64_t box, int64_t side,
                  int64_t edge, int64_t chosen, struct arena *arena);

/* Whether padding lies on a face by a layer of its own: what a section is for. */
bool draw_has_section(const struct plan *plan, int64_t box, int64_t side);

/* The edge of a face at which a section tells most: one that is stapled, the top before others. */
int64_t draw_section_edge(const struct plan *plan, int64_t box, int64_t side);

#endif
