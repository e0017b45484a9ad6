/*
 * Pictures of a plan, in 1/320 mm: a list of marks, the same for screen and paper. A picture knows
 * neither cells nor points; whoever shows it scales it.
 */
#ifndef DRAW_DRAWING_H
#define DRAW_DRAWING_H

#include "plan/plan.h"

/* What a mark stands for; later ones are drawn over earlier ones. */
enum mark_kind {
    MARK_FACE,    /* outline of the face */
    MARK_PANEL,   /* outline of a panel: its inner lines are seams */
    MARK_MEMBER,  /* outline of a member behind */
    MARK_PADDING, /* where a slab or layer stops short of the edge: a line */
    MARK_OPEN,    /* run of edge left open: a line */
    MARK_PATCH,   /* patch kept bare round a head: its bounding square */
    MARK_POINT    /* centre of a join's hole, where the boxes meet and where its head goes in */
};

struct mark {
    enum mark_kind kind;
    struct area area; /* of a point: empty, at u0, v0 */
};

/* v runs up, as on the face. */
struct drawing {
    struct area bounds;
    LIST_OF(struct mark) marks;
};

/*
 * A face of a box: members, panels, padding, patches and points of joins on it, runs of edge that
 * stay open. The drawing lies in `arena`, whose escape must be armed. An unknown box gives an empty
 * drawing.
 */
void draw_face(struct drawing *drawing, const struct plan *plan, int64_t box, int64_t side,
               struct arena *arena);

#endif
