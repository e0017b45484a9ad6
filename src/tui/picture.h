/* Pictures beside a list or a form: a face, or the way to a head. */
#ifndef TUI_PICTURE_H
#define TUI_PICTURE_H

#include "tui/screen.h"

#define PICTURE_LEAST_ROWS 8

/* From a row and column on, to the right border. */
struct picture_place {
    int top, left, height;
    bool turns; /* whether Left and Right show its other faces: then it says so */
};

/* Paints a face of a box as a plan has it, with a line that says which it is and what its signs
 * mean; nothing where there is too little room. */
void picture_paint(struct tui *tui, const struct plan *plan, int64_t box, int64_t side,
                   struct picture_place place);

/* The face that the head of a point (an index) is seen on, with the point marked. */
void picture_paint_point(struct tui *tui, const struct plan *plan, size_t point,
                         struct picture_place place);

/* The corridor of a point's head (draw_corridor). */
void picture_paint_corridor(struct tui *tui, const struct plan *plan, size_t point,
                            struct picture_place place);

#endif
