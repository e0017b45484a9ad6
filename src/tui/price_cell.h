/*
 * A price that is typed into the chosen line of a list: digits begin it, Enter takes it, Esc leaves
 * it. The state of a screen that has one begins with it, so that the functions of the table of
 * screens (screen.h) are the same for all of them.
 */
#ifndef TUI_PRICE_CELL_H
#define TUI_PRICE_CELL_H

#include "tui/entry.h"
#include "tui/screen.h"

struct price_cell {
    struct entry entry;
    bool typing;
    struct fault_note refusal; /* of what was typed; code NONE: none */
};

void price_cell_begin(struct price_cell *cell); /* empty */

/* What a key does: PASS where nothing is typed and it begins nothing, which digits do where
 * `may_begin`. ret_take says that the price is to be taken. */
enum reaction price_cell_key(struct price_cell *cell, int key, bool may_begin, bool *ret_take);

/* The refusal, over a row; false where there is none. */
bool price_cell_paint_refusal(const struct price_cell *cell, struct view *view, int row);

/* What was bought of a line (sheets.h), where no price says that it was paid; that it is a part
 * where there is no room to say how much. */
void price_cell_paint_bought(struct view *view, int row, int column, int width, int style,
                             const char *bought);

/* For the table: `opaque` begins with a cell. */
bool price_cell_typing(struct tui *tui, void *opaque);
enum reaction price_cell_paste(struct tui *tui, void *opaque, const char *text);

#endif
