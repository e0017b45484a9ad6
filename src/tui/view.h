/*
 * What is on the screen, as cells. Screens paint here and know nothing of the terminal, so that a
 * test reads what a maker sees as text; terminal.c carries the cells over, and curses sends only
 * what changed.
 */
#ifndef TUI_VIEW_H
#define TUI_VIEW_H

#include "base/arena.h"

#include <stdbool.h>
#include <stddef.h>

/* Attributes, to be added up. None of them is the only sign of anything. */
enum view_style {
    VIEW_PLAIN = 0,
    VIEW_STRONG = 1,
    VIEW_FAINT = 2,
    VIEW_CHOSEN = 4, /* the selected row: reverse video */
    VIEW_WARNING = 8
};

struct view_cell {
    unsigned code; /* 0: right half of a wide character */
    unsigned char style;
};

struct view {
    int rows, columns;
    struct view_cell *cells;
    int cursor_row, cursor_column;
    bool lines;  /* box-drawing characters can be shown */
    bool failed; /* memory ran out: nothing is shown */
    size_t room; /* of cells */
};

/* What the mouse did, and where. */
enum pointer_kind { POINTER_PRESS, POINTER_WHEEL_UP, POINTER_WHEEL_DOWN };

struct pointer {
    enum pointer_kind kind;
    int row, column;
};

#define VIEW_LEAST_ROWS 18
#define VIEW_LEAST_COLUMNS 60

void view_init(struct view *view);
void view_release(struct view *view);

/* Takes a size, from 1 by 1, and blanks all cells. */
void view_begin(struct view *view, int rows, int columns);

/*
 * Writes a text from a cell on, cut at `width` cells and at the right border; people's text is
 * filtered (show.h). Outside of the view nothing is written. Returns the cells that were taken.
 */
int view_text(struct view *view, int row, int column, int width, int style, const char *text);

/* The same to the right border, formatted as by printf. */
void view_format(struct view *view, int row, int column, int style, const char *format, ...)
    __attribute__((format(printf, 5, 6)));

/* As view_text, and gives the rest of the width the style. */
void view_row(struct view *view, int row, int column, int width, int style, const char *text);

/* The same with the text at the right end of the width: figures under each other. */
void view_right(struct view *view, int row, int column, int width, int style, const char *text);

/*
 * How many bytes of a line of text fit into `width` cells, broken between words where it can be; at
 * least one character. `*ret_next` is where the rest begins, its blanks skipped.
 */
size_t view_break(const char *text, int width, const char **ret_next);

/* Writes a text over at most `rows` rows, broken between words and at ends of lines. Returns the
 * rows taken. */
int view_wrapped(struct view *view, int row, int column, int width, int rows, int style,
                 const char *text);

void view_cell_put(struct view *view, int row, int column, unsigned code, int style);

/* A level and an upright line. */
void view_level(struct view *view, int row, int column, int width);
void view_upright(struct view *view, int row, int column, int height);

/* Where the terminal's cursor stands when all is painted: on what has the focus. */
void view_cursor(struct view *view, int row, int column);

/* The rows as text, without blanks at their ends; for tests. The text is the arena's. */
const char *view_as_text(const struct view *view, struct arena *arena);

#endif
