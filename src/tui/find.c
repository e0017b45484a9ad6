#include "tui/find.h"

#include <assert.h>
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

static struct pager *pager_of(const struct tui *tui)
{
    const struct open_screen *top = searched(tui);
    return top->screen->pager ? top->screen->pager(top->state) : NULL;
}

void find_open(struct tui *tui)
{
    const struct list_view *list = list_of(tui);
    const struct pager *pager = pager_of(tui);
    if (!pager && (!list || list->count == 0)) {
        tui_say(tui, "there is nothing here to find something in");
        return;
    }
    tui->find.open = true;
    tui->find.from = list ? list->chosen : pager->top;
    entry_set(&tui->find.words, "");
}

/* ---- looking ---- */

static bool line_has(struct tui *tui, int index, const char *words)
{
    const struct open_screen *top = searched(tui);
    struct text line;
    text_init(&line);
    top->screen->line(tui, top->state, index, &line);
    bool has = text_has_words(text_string(&line), line.length, words);
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

static bool find_in_list(struct tui *tui, struct list_view *list, int from, int step)
{
    int found = next_line(tui, list, step < 0 ? from + list->count - 1 : from, step);
    if (found >= 0)
        list_view_choose(list, found);
    return found >= 0;
}

static bool find_in_sheet(struct tui *tui, struct pager *pager, int from, int step)
{
    const struct open_screen *top = searched(tui);
    struct text sheet;
    text_init(&sheet);
    top->screen->sheet(tui, top->state, &sheet);
    int found =
        pager_find(text_string(&sheet), tui->view.columns, tui->find.words.text, from, step);
    text_release(&sheet);
    assert(pager); /* find_open asks for a list or a sheet */
    pager->found = 0;
    if (found >= 0)
        pager_mark(pager, found);
    return found >= 0;
}

/* The first place at `from` or after it, or (`step` -1) the last before it. */
static void look(struct tui *tui, int from, int step)
{
    struct list_view *list = list_of(tui);
    bool found =
        list ? find_in_list(tui, list, from, step) : find_in_sheet(tui, pager_of(tui), from, step);
    if (!found)
        tui_say(tui, "no line here has \"%s\"", tui->find.words.text);
}

/* The line that was found last, or where it began. */
static int here(const struct tui *tui)
{
    const struct list_view *list = list_of(tui);
    if (list)
        return list->chosen;
    const struct pager *pager = pager_of(tui);
    assert(pager);
    return pager->found ? pager->found - 1 : tui->find.from - 1;
}

static void go_back(struct tui *tui)
{
    struct pager *pager = pager_of(tui);
    if (list_of(tui)) {
        list_view_choose(list_of(tui), tui->find.from);
        return;
    }
    assert(pager);
    pager->top = tui->find.from;
    pager->found = 0;
}

/* ---- keys ---- */

void find_key(struct tui *tui, int key)
{
    switch (key) {
    case KEY_RETURN:
        tui->find.open = false;
        return;
    case KEY_ESCAPE:
        tui->find.open = false;
        go_back(tui);
        return;
    case KEY_ARROW_DOWN:
        look(tui, here(tui) + 1, +1);
        return;
    case KEY_ARROW_UP:
        look(tui, here(tui), -1);
        return;
    default:
        if (entry_key(&tui->find.words, key))
            look(tui, tui->find.from, +1);
    }
}

void find_paste(struct tui *tui, const char *text)
{
    entry_insert(&tui->find.words, text);
    look(tui, tui->find.from, +1);
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
