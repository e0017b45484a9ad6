/* A sheet of text that is longer than the screen. */
#ifndef TUI_PAGER_H
#define TUI_PAGER_H

#include "tui/actions.h"
#include "tui/view.h"

struct pager {
    int top;
    int found; /* row that is marked, counted from 1; 0: none */
    int height;
    int lines; /* as painted last */
};

void pager_paint(struct pager *pager, struct view *view, int top, int height, const char *text);

/*
 * The row, counted from 0, at which a line begins that has the words (text_has_words): the first at
 * `from` or after it, with `step` -1 the last before it; round the end of the sheet. -1 when no
 * line has them.
 */
int pager_find(const char *text, int columns, const char *words, int from, int step);

/* Marks a row and scrolls to it. */
void pager_mark(struct pager *pager, int row);

bool pager_act(struct pager *pager, enum action action);

#endif
