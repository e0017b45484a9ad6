/* A sheet of text that is longer than the screen. */
#ifndef TUI_PAGER_H
#define TUI_PAGER_H

#include "tui/actions.h"
#include "tui/view.h"

struct pager {
    int top;
    int height;
    int lines; /* as painted last */
};

void pager_paint(struct pager *pager, struct view *view, int top, int height, const char *text);
bool pager_act(struct pager *pager, enum action action);

#endif
