#include "tui/copyout.h"

#include "base/show.h"

#include <string.h>

/* ---- what is copied ---- */

static void add_line(struct tui *tui, const struct open_screen *top, int index)
{
    top->screen->line(tui, top->state, index, &tui->outgoing);
    text_add_char(&tui->outgoing, '\n');
}

static void add_list(struct tui *tui, const struct open_screen *top, bool all)
{
    const struct list_view *list = top->screen->list(top->state);
    for (int i = 0; i < list->count; i++) {
        if (all || i == list->chosen)
            add_line(tui, top, i);
    }
}

static void add_sheet(struct tui *tui, const struct open_screen *top)
{
    top->screen->sheet(tui, top->state, &tui->outgoing);
}

static int count_lines(const char *text)
{
    int lines = 0;
    for (; *text; text++)
        lines += *text == '\n';
    return lines;
}

void copy_out(struct tui *tui, bool all)
{
    const struct open_screen *top = &tui->stack[tui->depth - 1];
    text_clear(&tui->outgoing);
    if (top->screen->list)
        add_list(tui, top, all);
    else if (top->screen->pager)
        add_sheet(tui, top);
    int lines = count_lines(text_string(&tui->outgoing));
    if (text_failed(&tui->outgoing) || tui->outgoing.length > COPY_MOST) {
        text_clear(&tui->outgoing);
        tui_say(tui, "%d lines are too much for the terminal's clipboard", lines);
    } else if (lines == 0) {
        tui_say(tui, "there is nothing here to copy out");
    } else {
        tui_say(tui, "%d %s in the terminal's clipboard", lines,
                lines == 1 ? "line is" : "lines are");
    }
}

/* ---- how it is told ---- */

/* Four signs for three bytes, with "=" for what is missing at the end (RFC 4648, section 4). */
static void add_base64(struct text *out, const char *bytes, size_t count)
{
    static const char signs[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    for (size_t i = 0; i < count; i += 3) {
        unsigned long group = 0;
        for (size_t k = 0; k < 3; k++)
            group = group << 8 | (i + k < count ? (unsigned char)bytes[i + k] : 0);
        for (size_t k = 0; k < 4; k++) {
            bool is_there = i + k <= count;
            text_add_char(out, is_there ? signs[group >> (18 - 6 * k) & 63] : '=');
        }
    }
}

void copy_sequence(struct text *out, const char *text)
{
    struct text safe;
    text_init(&safe);
    show_lines(&safe, text);
    text_add(out, "\033]52;c;");
    add_base64(out, text_string(&safe), safe.length);
    text_add(out, "\a");
    text_release(&safe);
}
