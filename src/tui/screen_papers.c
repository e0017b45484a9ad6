/*
 * Papers into a file: Space picks those that are printed, Enter asks where to. A file that is there
 * is replaced by another key than the one that asked for it. What is cut from what is searched
 * first, which the maker may cut short.
 */
#include "desk/clock.h"
#include "paper/press.h"
#include "tui/entry.h"
#include "tui/list.h"
#include "tui/screen.h"

#include <stdio.h>
#include <string.h>

#define PAPERS_MOST 24
#define NAME_COLUMN 6
#define HELP_COLUMN 26

struct papers_state {
    struct list_view list; /* the papers, and money last */
    bool picked[PAPERS_MOST];
    bool unpriced;
    struct entry file;
    bool typing;
    bool taken;             /* the file is there, and was asked about */
    bool waiting;           /* until the search for less waste has ended; then it is printed */
    char told[SEARCH_TEXT]; /* how far it was when it was painted */
};

static int paper_count(void)
{
    int count = 0;

    while (papers[count].name)
        count++;
    return count;
}

/* The build's name as one of a file; templates are many pages and picked when they are wanted. */
static void papers_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct papers_state *state = opaque;
    char name[ENTRY_TEXT];

    (void)target;
    snprintf(name, sizeof name, "%.200s.pdf", tui_model(tui)->build.name);
    for (char *at = name; *at; at++)
        *at = *at == '/' ? '-' : *at;
    entry_set(&state->file, name);
    for (int i = 0; i < paper_count() && i < PAPERS_MOST; i++)
        state->picked[i] = strcmp(papers[i].name, "template") != 0;
}

/* ---- painting ---- */

static void paint_line(struct tui *tui, struct papers_state *state, int index, int row)
{
    bool money = index == paper_count();
    bool on = money ? !state->unpriced : state->picked[index];
    int style = index == state->list.chosen && !state->typing ? VIEW_CHOSEN : VIEW_PLAIN;

    view_row(&tui->view, row, 0, tui->view.columns, style, "");
    view_text(&tui->view, row, 1, 4, style, on ? "[x]" : "[ ]");
    view_text(&tui->view, row, NAME_COLUMN, HELP_COLUMN - NAME_COLUMN - 1, style,
              money ? "with money" : papers[index].title);
    view_text(&tui->view, row, HELP_COLUMN, tui->view.columns - HELP_COLUMN - 1, style,
              money ? "prices and sums on the papers that have them" : papers[index].help);
    if (index == state->list.chosen && !state->typing)
        view_cursor(&tui->view, row, 1);
}

static void paint_waiting(struct tui *tui, struct papers_state *state, int row)
{
    tui_search_text(tui, state->told);
    view_text(&tui->view, row, 1, tui->view.columns - 2, VIEW_STRONG, state->told);
    view_format(&tui->view, row + 1, 1, VIEW_PLAIN,
                "Then it is printed; %s prints at once, %s not at all.",
                tui_key(tui, ACTION_ENTER).at, tui_key(tui, ACTION_LEAVE).at);
}

static void papers_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct papers_state *state = opaque;

    list_view_resize(&state->list, paper_count() + 1);
    list_view_fit(&state->list, top, height - (state->waiting ? 3 : 2));
    for (int i = 0; i < list_view_shown(&state->list); i++)
        paint_line(tui, state, state->list.top + i, top + i);
    if (state->waiting) {
        paint_waiting(tui, state, top + height - 2);
        return;
    }
    view_text(&tui->view, top + height - 1, 1, 4, VIEW_STRONG, "to");
    if (state->typing)
        entry_paint(&state->file, &tui->view, top + height - 1, NAME_COLUMN,
                    tui->view.columns - NAME_COLUMN - 1);
    else
        view_text(&tui->view, top + height - 1, NAME_COLUMN, tui->view.columns - NAME_COLUMN - 1,
                  VIEW_PLAIN, state->file.text);
}

/* ---- printing ---- */

/* The names of what is picked, with commas between. */
static void add_picked(const struct papers_state *state, struct text *out)
{
    for (int i = 0; i < paper_count() && i < PAPERS_MOST; i++) {
        if (state->picked[i])
            text_format(out, "%s%s", out->length ? "," : "", papers[i].name);
    }
}

static void say_printed(struct tui *tui, const struct papers_state *state,
                        const struct pressed *pressed)
{
    if (pressed->unknown_glyphs)
        tui_say(tui, "%s: %zu pages; %ld characters stand in no typeface here", state->file.text,
                pressed->pages, pressed->unknown_glyphs);
    else if (pressed->pages)
        tui_say(tui, "%s: %zu pages", state->file.text, pressed->pages);
    else
        tui_say(tui, "%s is written", state->file.text);
}

static enum reaction print(struct tui *tui, struct papers_state *state, bool replace)
{
    struct text picked;
    char today[CLOCK_TEXT];
    struct pressed pressed;
    struct fault_note note = {0};

    state->taken = state->waiting = false;
    text_init(&picked);
    add_picked(state, &picked);
    const struct press press = {.papers = text_string(&picked),
                                .path = state->file.text,
                                .replace = replace,
                                .unpriced = state->unpriced,
                                .date = clock_today(today)};
    enum fault fault = press_file(&press, desk_told_plan(tui->desk), &pressed, &note);
    text_release(&picked);
    if (!fault) {
        say_printed(tui, state, &pressed);
        return REACT_LEAVE;
    }
    state->taken = fault == FAULT_DUPLICATE;
    if (state->taken)
        tui_say(tui, "%s is there already: Space replaces it, Enter takes another name",
                state->file.text);
    else
        tui_warn(tui, &note);
    return REACT_TAKEN;
}

/* Papers show how it is cut, so the search goes first. */
static enum reaction begin_printing(struct tui *tui, struct papers_state *state)
{
    state->waiting = desk_search_state(tui->desk).on;
    return state->waiting ? REACT_TAKEN : print(tui, state, false);
}

static enum reaction papers_idle(struct tui *tui, void *opaque)
{
    struct papers_state *state = opaque;
    char text[SEARCH_TEXT];

    if (!state->waiting)
        return REACT_PASS;
    if (!desk_search_state(tui->desk).on)
        return REACT_TAKEN | print(tui, state, false);
    tui_search_text(tui, text);
    return strcmp(text, state->told) == 0 ? REACT_PASS : REACT_TAKEN;
}

/* ---- keys ---- */

static bool papers_typing(struct tui *tui, void *opaque)
{
    (void)tui;
    return ((struct papers_state *)opaque)->typing;
}

static enum reaction papers_key(struct tui *tui, void *opaque, int key)
{
    struct papers_state *state = opaque;

    if (!state->typing)
        return REACT_PASS;
    if (key != KEY_ESCAPE && key != KEY_RETURN) {
        entry_key(&state->file, key);
        return REACT_TAKEN;
    }
    state->typing = false;
    return key == KEY_RETURN ? begin_printing(tui, state) : REACT_TAKEN;
}

static enum reaction papers_paste(struct tui *tui, void *opaque, const char *text)
{
    (void)tui;
    entry_insert(&((struct papers_state *)opaque)->file, text);
    return REACT_TAKEN;
}

static bool is_move(enum action action)
{
    return action <= ACTION_LEAF_DOWN;
}

static enum reaction papers_act(struct tui *tui, void *opaque, enum action action)
{
    struct papers_state *state = opaque;

    list_view_resize(&state->list, paper_count() + 1);
    if (state->waiting && action == ACTION_ENTER)
        return print(tui, state, false);
    if (state->waiting && !is_move(action)) {
        state->waiting = false;
        tui_say(tui, "nothing was printed");
        return action == ACTION_LEAVE ? REACT_TAKEN : REACT_PASS;
    }
    if (state->taken && action == ACTION_TICK)
        return print(tui, state, true);
    state->taken = false;
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    if (action == ACTION_ENTER) {
        state->typing = true;
        return REACT_TAKEN;
    }
    if (action != ACTION_TICK || state->list.chosen < 0)
        return REACT_PASS;
    if (state->list.chosen == paper_count())
        state->unpriced = !state->unpriced;
    else
        state->picked[state->list.chosen] = !state->picked[state->list.chosen];
    return REACT_TAKEN;
}

static struct list_view *papers_list(void *opaque)
{
    return &((struct papers_state *)opaque)->list;
}

static void papers_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    (void)tui;
    (void)opaque;
    text_add(out, index == paper_count() ? "with money" : papers[index].title);
}

const struct screen screen_papers = {
    .name = "papers",
    .size = sizeof(struct papers_state),
    .place = true,
    .open = papers_open,
    .paint = papers_paint,
    .act = papers_act,
    .idle = papers_idle,
    .typing = papers_typing,
    .key = papers_key,
    .paste = papers_paste,
    .list = papers_list,
    .line = papers_line,
    .shown = SHOWS(TICK) | SHOWS(ENTER) | SHOWS(FIND) | SHOWS(LEAVE),
    .words = {{ACTION_ENTER, "print"}},
    .typing_hint = "Enter prints, Esc does not; the ending is .pdf, .svg or .txt",
};
