/* Where the words of a picture go, so that none covers another or runs out of the picture. */
#ifndef DRAW_LABEL_H
#define DRAW_LABEL_H

#include "draw/drawing.h"

/* In cells of text, whatever their size is: a screen's, or a line of print by a letter's width. */
struct label_place {
    int row, column; /* before: the cell of its place; after: its first cell */
    int width;       /* given */
    bool shown;      /* there was room */
};

/* The field of cells. Labels aside begin at `margin` and run to `columns`, the others end before
 * `margin`. */
struct label_field {
    int rows, columns, margin;
};

/*
 * Places the labels, the first before the others. One at a place is centred on it, or moved as
 * little as it must; it keeps a cell free from the next on its row. Those aside stand one to a
 * row, in the order of their heights, as near to them as they can. What finds no room is not shown.
 */
void labels_place(struct label_place *places, const struct label *labels, size_t count,
                  struct label_field field);

#endif
