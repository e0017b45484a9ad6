/* One line of text being typed: UTF-8, with a cursor that stands between characters. */
#ifndef TUI_ENTRY_H
#define TUI_ENTRY_H

#include "tui/view.h"

#include <stdbool.h>

#define ENTRY_TEXT 512

struct entry {
    char text[ENTRY_TEXT];
    int length;
    int cursor;   /* bytes before it */
    bool offered; /* the first character typed or pasted replaces the whole */
};

/* Takes a text, cut where it is too long, with the cursor at its end. An offered one stands there
 * to be taken as it is, changed, or typed over. */
void entry_set(struct entry *entry, const char *text);
void entry_offer(struct entry *entry, const char *text);

/* Puts text in at the cursor: what is typed or pasted. Control characters become blanks. */
void entry_insert(struct entry *entry, const char *text);

/* Characters, Backspace, Delete, arrows, Home, End, Ctrl-U; false for every other key. */
bool entry_key(struct entry *entry, int key);

/* Paints it so that the cursor shows, and sets the view's cursor. */
void entry_paint(const struct entry *entry, struct view *view, int row, int column, int width);

#endif
