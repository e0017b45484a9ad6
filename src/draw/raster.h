/*
 * A drawing in character cells. Lines that meet in a cell are joined: each cell remembers in which
 * of the four directions lines leave it, and the character follows from that.
 */
#ifndef DRAW_RASTER_H
#define DRAW_RASTER_H

#include "draw/drawing.h"

/* Characters to draw with: lines of the box-drawing block, or plain ones. */
enum raster_style { RASTER_LINES, RASTER_PLAIN };

struct raster {
    int rows, columns;
    unsigned *cells; /* code points, row after row from the top; a blank is ' ' */
};

/*
 * Draws as large as fits into the rows and columns, a cell counting as twice as high as wide, set
 * at the top left. The cells lie in `arena`, whose escape must be armed. What is no outline is
 * filled with its sign. Less than 3 by 3 cells, or an empty drawing, gives blanks.
 */
void raster_draw(struct raster *raster, const struct drawing *drawing, int rows, int columns,
                 enum raster_style style, struct arena *arena);

/* The character that a kind of mark is filled with, of every terminal's; 0 for an outline. */
unsigned raster_sign(enum mark_kind kind);

#endif
