#include "tui/told.h"

#include "base/show.h"

const char *told_text(struct told *told, struct tui *tui, told_fn *make, void *context)
{
    struct fault_note note = {0};
    if (!told->made)
        text_init(&told->text);
    if (!told->made || told->serial != desk_serial(tui->desk)) {
        text_clear(&told->text);
        if (make(tui, context, &told->text, &note)) {
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
