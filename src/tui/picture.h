/* Pictures beside a list or a form, or alone on the screen. */
#ifndef TUI_PICTURE_H
#define TUI_PICTURE_H

#include "tui/screen.h"

#define PICTURE_LEAST_ROWS 8

/* From a row and column on, to the right border. */
struct picture_place {
    int top, left, height;
    const char *hint; /* under it; NULL for none */
};

/* How an item is looked at. */
enum picture_view {
    PICTURE_STANDARD,    /* as its kind is best shown */
    PICTURE_BOX,         /* its box, or the boxes of a join, from a corner */
    PICTURE_BOX_APART,   /* the same taken apart */
    PICTURE_FACE,        /* a face of its box */
    PICTURE_SECTION,     /* the face cut open at an edge */
    PICTURE_FIELD,       /* the tufting field on it */
    PICTURE_PIECE,       /* the piece, with the item marked */
    PICTURE_PIECE_APART, /* its boxes apart */
    PICTURE_VIEWS
};

/* After so many turns every view is as it was: of six faces, of four corners or edges. */
#define PICTURE_TURNS 12

struct picture_ask {
    enum entity_kind kind;
    int64_t key;
    int64_t box, side; /* that it is on; 0 for none */
    enum picture_view view;
    int turned; /* faces or corners on from where it is seen best */
};

/* The view that is shown, never PICTURE_STANDARD; and the next one round, which is
 * PICTURE_STANDARD where it is the item's own. */
enum picture_view picture_view_of(const struct plan *plan, const struct picture_ask *ask);
enum picture_view picture_next_view(const struct plan *plan, const struct picture_ask *ask);

/* Paints an item as it is asked for, with a line that says what it is and what its signs mean;
 * nothing where there is too little room. */
void picture_paint_item(struct tui *tui, const struct plan *plan, const struct picture_ask *ask,
                        struct picture_place place);

/* The face that the head of a point (an index) is seen on, with the point marked. */
void picture_paint_point(struct tui *tui, const struct plan *plan, size_t point,
                         struct picture_place place);

/* The corridor of a point's head (draw_corridor). */
void picture_paint_corridor(struct tui *tui, const struct plan *plan, size_t point,
                            struct picture_place place);

#endif
