/* A tufting field on its face. */
#ifndef DRAW_FIELD_H
#define DRAW_FIELD_H

#include "draw/drawing.h"

/*
 * The face with the members behind it, every button, and the pleats between them; figures of border
 * and pitch at the right. A button whose hole meets a member is marked as in its way. The drawing
 * lies in `arena`, whose escape must be armed; it is empty where the layer is not tufted, or lies
 * on no box of its own.
 */
void draw_field(struct drawing *drawing, const struct plan *plan, int64_t layer,
                struct arena *arena);

/* Whether a layer has a field that is drawn. */
bool draw_has_field(const struct plan *plan, int64_t layer);

#endif
