/*
 * A list with one selected line. It stands still while the selection moves in what shows, and turns
 * by a page when the selection leaves it, with one line of the page before: a list that creeps line
 * by line is sent anew at every key, which a slow line makes the maker wait for.
 */
#ifndef TUI_LIST_H
#define TUI_LIST_H

#include "tui/actions.h"

#include <stdbool.h>

struct list_view {
    int count;
    int chosen; /* -1 when there is none */
    int top;    /* first line that shows */
    int row;    /* of the screen where they begin, and */
    int height; /* how many show, as painted last */
};

/* Takes a new count; the selection stays where it can. */
void list_view_resize(struct list_view *list, int count);

/* Takes a place on the screen, and turns the page where the selection would not show. */
void list_view_fit(struct list_view *list, int row, int height);

/* How many lines show: lines `top` and following, in rows `row` and following. */
int list_view_shown(const struct list_view *list);

void list_view_choose(struct list_view *list, int index);

/* Moves the selection; false when the action is none that moves. */
bool list_view_act(struct list_view *list, enum action action);

#endif
