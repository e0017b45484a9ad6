/* Lines of any slope as dots, two by four in a character cell. */
#ifndef DRAW_DOTS_H
#define DRAW_DOTS_H

#include <stdbool.h>

#define DOTS_ACROSS 2
#define DOTS_DOWN 4

/* The dots of one cell: bit DOTS_ACROSS * row + column, from its top left. */
typedef unsigned char dots_mask;

/* Dots over cells; masks row after row of cells. */
struct dots {
    int rows, columns; /* of cells */
    dots_mask *masks;
};

/* A line between two dots, both within; each `every`th dot of it is set. */
void dots_line(struct dots *dots, int x0, int y0, int x1, int y1, int every);

/* A cell's dots as a character of the braille block, and as the plain one that is most like it; a
 * blank where there are none. */
unsigned dots_braille(dots_mask mask);
unsigned dots_plain(dots_mask mask);

#endif
