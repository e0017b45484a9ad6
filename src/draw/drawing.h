/*
 * Pictures of a plan, in 1/320 mm: a list of marks, the same for screen and paper. A picture knows
 * neither cells nor points; whoever shows it scales it.
 */
#ifndef DRAW_DRAWING_H
#define DRAW_DRAWING_H

#include "plan/plan.h"

/*
 * What a mark stands for; later ones are drawn over earlier ones. Up to MARK_HATCH a mark is a line
 * of any slope, from u0, v0 to u1, v1; after it an area, whose u0 <= u1 and v0 <= v1.
 */
enum mark_kind {
    MARK_EDGE,       /* edge of a body that is seen */
    MARK_BEHIND,     /* hidden edge of what is selected */
    MARK_PLEAT,      /* from button to button of a tufting field */
    MARK_HATCH,      /* on the faces of what is selected */
    MARK_FACE,       /* outline of the face */
    MARK_PANEL,      /* outline of a panel */
    MARK_MEMBER,     /* outline of a member behind */
    MARK_SEAM,       /* where a panel ends within the face: a line */
    MARK_CLOTH_SEAM, /* where the cover is sewn from widths: a line */
    MARK_PADDING,    /* where a slab or layer stops short of the edge: a line */
    MARK_WEB,        /* a strip of webbing: a line */
    MARK_LIMIT,      /* where what is selected ends on the face: a line */
    MARK_OPEN,       /* run of edge left open: a line */
    MARK_DRIVER,     /* room that driver and hand take behind a head */
    MARK_BLOCKER,    /* what stands in that room */
    MARK_PATCH,      /* patch kept bare round a head: its bounding square */
    MARK_CUT_WOOD,   /* in a section: a member, a panel, then the layers */
    MARK_CUT_PANEL,
    MARK_CUT_FOAM,
    MARK_CUT_BATTING,
    MARK_CUT_LINING, /* and any other plain cloth */
    MARK_CUT_COVER,
    MARK_CUT_CHOSEN, /* the layer that is looked at */
    MARK_CUT_STAPLE, /* a staple's leg: a line */
    MARK_SCREW,      /* a screw's length: a line */
    MARK_BUTTON,     /* of a tufting field */
    MARK_TIP,        /* centre of a join's hole on the side that the screw bites in, or its tip */
    MARK_POINT,      /* centre of a hole on the side of its head, or the head */
    MARK_CHOSEN,     /* the point that is looked at */
    MARK_KINDS
};

struct mark {
    enum mark_kind kind;
    struct area area; /* of a point or a tip: empty, at u0, v0 */
};

/* Words in a picture: at a place, or in the column at its right, at the place's height. */
struct label {
    int64_t u, v;
    bool aside;
    const char *text; /* safe to show */
};

/* v runs up, as on the face. */
struct drawing {
    struct area bounds; /* nothing lies outside */
    LIST_OF(struct mark) marks;
    LIST_OF(struct label) labels; /* what matters most first */
};

/* The last rank that a layer can have (model/fields.h): layers are drawn rank by rank. */
#define LAYER_RANK_MOST 100

static inline bool mark_is_line(enum mark_kind kind)
{
    return kind <= MARK_HATCH;
}

/*
 * A face of a box: members, panels, webbing, padding, patches and points of joins on it, seams of
 * the cover, runs of edge that stay open; of layers on a joined group what lies on this box. A main
 * face with an outline, and the one opposite, show that in place of the rectangle round it. The
 * drawing lies in `arena`, whose escape must be armed. An unknown box gives an empty drawing.
 */
void draw_face(struct drawing *drawing, const struct plan *plan, int64_t box, int64_t side,
               struct arena *arena);

/* Adds where a layer, facing or cutout of this face ends, for the one that is selected; nothing for
 * other items. Goes on from a drawing of the face. */
void draw_face_limit(struct drawing *drawing, const struct plan *plan, int64_t side,
                     enum entity_kind kind, int64_t key, struct arena *arena);

/*
 * The corridor of a point's head, cut open along the screw: u runs along the screw from its tip to
 * the far end of the driver, v across it, up where the screw lies level. Wood and panels of the box
 * with the heads and the wood that the screw bites in; what meets the driver is
 * marked. A point without a screw gives an empty drawing.
 */
void draw_corridor(struct drawing *drawing, const struct plan *plan, size_t point,
                   struct arena *arena);

/* The side of the box with the heads that is up in a corridor's picture (enum side_word). */
int64_t draw_corridor_up(const struct plan *plan, size_t point);

/* A word of a vocabulary as a label: "dust cover". */
const char *drawing_word(const char *word, struct arena *arena);

/* Whether a drawing has a mark of a kind: for its legend. */
bool drawing_has(const struct drawing *drawing, enum mark_kind kind);

#endif
