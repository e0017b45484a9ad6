/*
 * A drawing in character cells. Lines that meet in a cell are joined: each cell remembers in which
 * of the four directions lines leave it, and the character follows from that. A drawing with lines
 * of any slope is drawn in dots instead, two by four in a cell.
 */
#ifndef DRAW_RASTER_H
#define DRAW_RASTER_H

#include "draw/drawing.h"
#include "draw/label.h"

/* Characters to draw with: lines of the box-drawing block and dots of the braille block, or plain
 * ones. */
enum raster_style { RASTER_LINES, RASTER_PLAIN };

struct raster {
    int rows, columns;
    unsigned *cells; /* code points, row after row from the top; a blank is ' ', the right half of a
                        wide character 0 */
    bool *strong;    /* cells with what the picture is about */
    const struct label_place *places; /* one a label of the drawing; NULL where all are blanks */
};

/*
 * Draws as large as fits into the rows and columns, a cell counting as twice as high as wide, set
 * at the top left; labels aside take columns at the right. The cells lie in `arena`, whose escape
 * must be armed. What is no outline is filled with its sign. Less than 3 by 3 cells, or an empty
 * drawing, gives blanks.
 */
void raster_draw(struct raster *raster, const struct drawing *drawing, int rows, int columns,
                 enum raster_style style, struct arena *arena);

/* The character that a kind of mark is filled with, of every terminal's; 0 for an outline. */
unsigned raster_sign(enum mark_kind kind);

/* Appends what the signs of the drawing mean: " @ this o head". Where a line may end too early
 * what explains itself comes last. */
void raster_legend(struct text *out, const struct drawing *drawing, enum raster_style style);

#endif
