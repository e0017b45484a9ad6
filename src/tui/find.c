#include "tui/find.h"

#include <ctype.h>
#include <string.h>

static const struct open_screen *searched(const struct tui *tui)
{
    return &tui->stack[tui->depth - 1];
}

static struct list_view *list_of(const struct tui *tui)
{
    const struct open_screen *top = searched(tui);
    return top->screen->list ? top->screen->list(top->state) : NULL;
}

void find_open(struct tui *tui)
{
    const struct list_view *list = list_of(tui);
    if (!list || list->count == 0) {
        tui_say(tui, "there is no list here to find something in");
        return;
    }
    tui->find.open = true;
    tui->find.from = list->chosen;
    entry_set(&tui->find.words, "");
}

/* ---- matching ---- */

/* Letters of either case, as far as they are plain ones. */
static bool begins_with(const char *at, const char *words)
{
    for (; *words; at++, words++) {
        if (tolower((unsigned char)*at) != tolower((unsigned char)*words))
            return false;
    }
    return true;
}

static bool has_words(const char *line, const char *words)
{
    for (; *line; line++) {
        if (begins_with(line, words))
            return true;
    }
    return !*words;
}

static bool line_has(struct tui *tui, int index, const char *words)
{
    const struct open_screen *top = searched(tui);
    struct text line;
    text_init(&line);
    top->screen->line(tui, top->state, index, &line);
    bool has = has_words(text_string(&line), words);
    text_release(&line);
    return has;
}

/* From a line on, it included, round the end of the list; -1 when there is none. */
static int next_line(struct tui *tui, const struct list_view *list, int from, int step)
{
    for (int i = 0; i < list->count; i++) {
        int index = ((from + i * step) % list->count + list->count) % list->count;
        if (line_has(tui, index, tui->find.words.text))
            return index;
    }
    return -1;
}

static void go_to_line(struct tui *tui, int from, int step)
{
    struct list_view *list = list_of(tui);
    int found = next_line(tui, list, from, step);
    if (found >= 0)
        list_view_choose(list, found);
    else
        tui_say(tui, "no line here has \"%s\"", tui->find.words.text);
}

/* ---- keys ---- */

void find_key(struct tui *tui, int key)
{
    struct list_view *list = list_of(tui);
    switch (key) {
    case KEY_RETURN:
        tui->find.open = false;
        return;
    case KEY_ESCAPE:
        tui->find.open = false;
        list_view_choose(list, tui->find.from);
        return;
    case KEY_ARROW_DOWN:
        go_to_line(tui, list->chosen + 1, +1);
        return;
    case KEY_ARROW_UP:
        go_to_line(tui, list->chosen + list->count - 1, -1);
        return;
    default:
        if (entry_key(&tui->find.words, key))
            go_to_line(tui, tui->find.from, +1);
    }
}

void find_paste(struct tui *tui, const char *text)
{
    entry_insert(&tui->find.words, text);
    go_to_line(tui, tui->find.from, +1);
}

/* ---- painting ---- */

#define WORDS_AT 7
#define WORDS_WIDTH 24

void find_paint(struct tui *tui, int row)
{
    int hints = WORDS_AT + WORDS_WIDTH + 2;
    const char *said =
        tui->message[0] ? tui->message : "Enter stays, Up and Down go on, Esc goes back";
    view_text(&tui->view, row, 1, WORDS_AT - 1, VIEW_STRONG, "find:");
    view_text(&tui->view, row, hints, tui->view.columns - hints,
              tui->message[0] ? VIEW_WARNING | VIEW_STRONG : VIEW_FAINT, said);
    entry_paint(&tui->find.words, &tui->view, row, WORDS_AT, WORDS_WIDTH);
}
