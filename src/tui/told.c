#include "tui/told.h"

#include "base/show.h"

const char *told_text(struct told *told, struct tui *tui, void *context)
{
    struct fault_note note = {0};
    if (!told->made)
        text_init(&told->text);
    if (!told->made || told->serial != desk_serial(tui->desk)) {
        text_clear(&told->text);
        if (told->make(tui, context, &told->text, &note)) {
            text_clear(&told->text);
            show_text(&told->text, note.why);
            text_add_char(&told->text, '\n');
        }
        told->made = true;
        told->serial = desk_serial(tui->desk);
    }
    const char *sheet = text_string(&told->text);
    return *sheet == '\n' ? sheet + 1 : sheet;
}

void told_release(struct told *told)
{
    if (told->made)
        text_release(&told->text);
}

/* ---- for the table of screens ---- */

void told_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct told *told = opaque;
    pager_paint(&told->pager, &tui->view, top, height, told_text(told, tui, opaque));
}

enum reaction told_act(struct tui *tui, void *opaque, enum action action)
{
    struct told *told = opaque;
    (void)tui;
    return pager_act(&told->pager, action) ? REACT_TAKEN : REACT_PASS;
}

void told_close(void *opaque)
{
    told_release(opaque);
}

struct pager *told_pager(void *opaque)
{
    return &((struct told *)opaque)->pager;
}

void told_sheet(struct tui *tui, void *opaque, struct text *out)
{
    text_add(out, told_text(opaque, tui, opaque));
}
