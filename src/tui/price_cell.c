#include "tui/price_cell.h"

void price_cell_begin(struct price_cell *cell)
{
    entry_set(&cell->entry, "");
    cell->typing = true;
    cell->refusal.code = FAULT_NONE;
}

enum reaction price_cell_key(struct price_cell *cell, int key, bool may_begin, bool *ret_take)
{
    *ret_take = false;
    if (!cell->typing) {
        if (key < '0' || key > '9' || !may_begin)
            return REACT_PASS;
        price_cell_begin(cell);
    }
    if (key == KEY_RETURN || key == KEY_TAB)
        *ret_take = true;
    else if (key == KEY_ESCAPE)
        cell->typing = false;
    else
        entry_key(&cell->entry, key);
    return REACT_TAKEN;
}

bool price_cell_paint_refusal(const struct price_cell *cell, struct view *view, int row)
{
    if (!cell->typing || !cell->refusal.code)
        return false;
    view_text(view, row, 1, view->columns - 2, VIEW_WARNING | VIEW_STRONG, cell->refusal.why);
    return true;
}

void price_cell_paint_bought(struct view *view, int row, int column, int width, int style,
                             const char *bought)
{
    view_right(view, row, column, width, style,
               text_columns(bought) <= width ? bought : "part bought");
}

bool price_cell_typing(struct tui *tui, void *opaque)
{
    (void)tui;
    return ((const struct price_cell *)opaque)->typing;
}

enum reaction price_cell_paste(struct tui *tui, void *opaque, const char *text)
{
    (void)tui;
    entry_insert(&((struct price_cell *)opaque)->entry, text);
    return REACT_TAKEN;
}
