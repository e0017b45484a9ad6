/* Pictures to scale of a board or a length of cloth and its parts, in plain characters. */
#ifndef PAPER_CANVAS_H
#define PAPER_CANVAS_H

#include "base/text.h"

#include <stdint.h>

#define CANVAS_COLUMNS 72 /* at most, as on paper */
#define CANVAS_ROWS 18

/* Lengths run along the columns, widths down the rows; the last line of a picture is drawn in the
 * cells after its last row and column. */
struct canvas {
    char at[CANVAS_ROWS + 1][CANVAS_COLUMNS + 2];
    int rows, columns;
    int64_t length, width; /* that it shows */
};

/* An empty picture of up to `columns`, which are no more than CANVAS_COLUMNS. Of no width: one
 * line, with a bar at its end. */
void canvas_begin(struct canvas *canvas, int columns, int64_t length, int64_t width);

/* The frame of an area within what is shown, with a label in it; NULL: none. */
void canvas_area(struct canvas *canvas, int64_t along, int64_t across, int64_t length,
                 int64_t width, const char *label);

/* On one line: a part from a bar to a bar, with a label in it. */
void canvas_part(struct canvas *canvas, int64_t along, int64_t length, const char *label);

/* Appends it, set in, without blanks at the ends of its lines. */
void canvas_print(const struct canvas *canvas, struct text *out);

#endif
