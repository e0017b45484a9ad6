/* A new build from a starter piece: which, its name, its units, and at most five sizes. */
#include "desk/starters.h"
#include "tui/entry.h"
#include "tui/list.h"
#include "tui/screen.h"

#include <stdio.h>
#include <string.h>

enum { ROW_NAME, ROW_UNITS, ROW_SIZES, ROWS_MOST = ROW_SIZES + STARTER_QUESTIONS };

#define ANSWER_COLUMN 40

struct new_state {
    struct list_view pieces;
    const struct starter *starter; /* NULL while it is being chosen */
    int row;                       /* question being answered */
    char name[ENTRY_TEXT];
    enum units units;
    int64_t sizes[STARTER_QUESTIONS];
    struct entry entry;
    struct fault_note refusal;
};

static int piece_count(void)
{
    int count = 0;
    while (starters[count].name)
        count++;
    return count;
}

static int row_count(const struct new_state *state)
{
    int rows = ROW_SIZES;
    while (rows < ROWS_MOST && state->starter->questions[rows - ROW_SIZES].key)
        rows++;
    return rows;
}

static void new_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct new_state *state = opaque;
    (void)target;
    state->units = (enum units)tui_model(tui)->workshop.units;
    list_view_resize(&state->pieces, piece_count());
    list_view_choose(&state->pieces, 0);
}

/* ---- answers ---- */

static void answer_text(const struct new_state *state, int row, char text[ENTRY_TEXT])
{
    char size[QUANTITY_TEXT];
    if (row == ROW_NAME) {
        snprintf(text, ENTRY_TEXT, "%s", state->name);
    } else if (row == ROW_UNITS) {
        snprintf(text, ENTRY_TEXT, "%s", words_units.at[state->units].name);
    } else {
        const struct starter_question *question = &state->starter->questions[row - ROW_SIZES];
        int64_t chosen = state->sizes[row - ROW_SIZES];
        quantity_print_unit(size, QUANTITY_LENGTH, state->units,
                            chosen ? chosen : question->standard[state->units]);
        snprintf(text, ENTRY_TEXT, "%s", size);
    }
}

static void ask(struct new_state *state, int row)
{
    char text[ENTRY_TEXT];
    state->row = row;
    state->refusal.code = FAULT_NONE;
    answer_text(state, row, text);
    entry_offer(&state->entry, text);
}

static enum fault take_size(struct new_state *state)
{
    const struct starter_question *question = &state->starter->questions[state->row - ROW_SIZES];
    int64_t size = 0;
    enum fault fault =
        quantity_parse(QUANTITY_LENGTH, state->units, state->entry.text, &size, &state->refusal);
    if (!fault)
        fault = starter_check_size(question, state->units, size, &state->refusal);
    if (fault)
        return fault;
    state->sizes[state->row - ROW_SIZES] = size;
    return FAULT_NONE;
}

/* By its first letters; -1 for neither. */
static int units_meant(const char *typed)
{
    for (size_t i = 0; *typed && i < words_units.count; i++) {
        if (strncmp(words_units.at[i].name, typed, strlen(typed)) == 0)
            return (int)i;
    }
    return -1;
}

static enum fault take_answer(struct new_state *state)
{
    int word;
    if (state->row >= ROW_SIZES)
        return take_size(state);
    if (state->row == ROW_UNITS) {
        word = units_meant(state->entry.text);
        if (word < 0)
            return fault_say(&state->refusal, FAULT_UNKNOWN, "it is inch or mm");
        state->units = (enum units)word;
        return FAULT_NONE;
    }
    if (!state->entry.length)
        return fault_say(&state->refusal, FAULT_MISSING, "the build needs a name");
    memcpy(state->name, state->entry.text, sizeof state->name);
    return FAULT_NONE;
}

/* ---- making ---- */

static enum fault change_new(struct model *draft, void *context, struct fault_note *note)
{
    const struct new_state *state = context;
    draft->build.units = (int64_t)state->units;
    return starter_make(state->starter, draft, state->name, state->sizes, note);
}

static enum reaction make(struct tui *tui, struct new_state *state)
{
    char label[STORE_LABEL];
    snprintf(label, sizeof label, "new build %.60s", state->name);
    if (desk_new_build(tui->desk, label, change_new, state, &state->refusal))
        return REACT_TAKEN;
    tui_close_top(tui);
    tui_open(tui, &screen_outline, NULL);
    tui_say(tui, "made; Enter changes the selected line, %s shows the keys",
            tui_key(tui, ACTION_HELP).at);
    return REACT_TAKEN;
}

/* ---- screen ---- */

static void paint_pieces(struct tui *tui, struct new_state *state, int top, int height)
{
    list_view_fit(&state->pieces, top, height);
    for (int i = 0; i < list_view_shown(&state->pieces); i++) {
        int index = state->pieces.top + i;
        int style = index == state->pieces.chosen ? VIEW_CHOSEN : VIEW_PLAIN;
        view_row(&tui->view, top + i, 0, tui->view.columns, style, "");
        view_text(&tui->view, top + i, 1, 20, style | VIEW_STRONG, starters[index].title);
        view_text(&tui->view, top + i, 22, tui->view.columns - 23, style, starters[index].help);
        if (index == state->pieces.chosen)
            view_cursor(&tui->view, top + i, 1);
    }
}

static const char *question_text(const struct new_state *state, int row)
{
    if (row == ROW_NAME)
        return "Name of the build";
    if (row == ROW_UNITS)
        return "Units, inch or mm";
    return state->starter->questions[row - ROW_SIZES].text;
}

/* Where the answer is measured, and what hangs on it. */
static const char *question_why(const struct new_state *state)
{
    if (state->row == ROW_NAME)
        return "It stands on every paper and label, and can be changed later.";
    if (state->row == ROW_UNITS)
        return "In which the workshop measures. Any field takes either: 48 in, 4 ft, 1200 mm.";
    return state->starter->questions[state->row - ROW_SIZES].why;
}

static void new_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct new_state *state = opaque;
    char text[ENTRY_TEXT];
    int width = tui->view.columns - ANSWER_COLUMN - 1;
    if (!state->starter) {
        paint_pieces(tui, state, top, height);
        return;
    }
    view_text(&tui->view, top, 1, tui->view.columns - 2, VIEW_STRONG, state->starter->title);
    for (int row = 0; row < row_count(state); row++) {
        view_text(&tui->view, top + 2 + row, 1, 38, row == state->row ? VIEW_STRONG : VIEW_PLAIN,
                  question_text(state, row));
        answer_text(state, row, text);
        if (row == state->row)
            entry_paint(&state->entry, &tui->view, top + 2 + row, ANSWER_COLUMN, width);
        else
            view_text(&tui->view, top + 2 + row, ANSWER_COLUMN, width, VIEW_PLAIN, text);
    }
    int below = top + 3 + row_count(state);
    if (state->refusal.code)
        view_text(&tui->view, below, 1, tui->view.columns - 2, VIEW_WARNING | VIEW_STRONG,
                  state->refusal.why);
    else
        below += view_wrapped(&tui->view, below, 1, tui->view.columns - 2, 3, VIEW_PLAIN,
                              question_why(state));
    if (!state->refusal.code)
        view_text(&tui->view, below + 1, 1, tui->view.columns - 2, VIEW_FAINT,
                  "Enter takes each answer; after the last the build is made.");
}

static bool new_typing(struct tui *tui, void *opaque)
{
    (void)tui;
    return ((struct new_state *)opaque)->starter != NULL;
}

static enum reaction new_key(struct tui *tui, void *opaque, int key)
{
    struct new_state *state = opaque;
    if (!state->starter)
        return REACT_PASS;
    if (key == KEY_ESCAPE)
        return REACT_LEAVE;
    if (key == KEY_ARROW_UP || key == KEY_BACK_TAB) {
        ask(state, state->row > 0 ? state->row - 1 : 0);
        return REACT_TAKEN;
    }
    if (state->row == ROW_UNITS && (key == KEY_ARROW_LEFT || key == KEY_ARROW_RIGHT)) {
        state->units = state->units == UNITS_INCH ? UNITS_MM : UNITS_INCH;
        ask(state, ROW_UNITS);
        return REACT_TAKEN;
    }
    if (key == KEY_RETURN || key == KEY_TAB || key == KEY_ARROW_DOWN) {
        if (take_answer(state))
            return REACT_TAKEN;
        if (state->row + 1 < row_count(state))
            ask(state, state->row + 1);
        else if (key == KEY_RETURN)
            return make(tui, state);
        return REACT_TAKEN;
    }
    entry_key(&state->entry, key);
    return REACT_TAKEN;
}

static enum reaction new_paste(struct tui *tui, void *opaque, const char *text)
{
    struct new_state *state = opaque;
    (void)tui;
    entry_insert(&state->entry, text);
    return REACT_TAKEN;
}

static bool is_taken(const struct store_build *builds, size_t count, const char *name)
{
    for (size_t i = 0; i < count; i++) {
        if (strcmp(builds[i].name, name) == 0)
            return true;
    }
    return false;
}

/* The piece's title, with a number where a build is called so already. */
static void propose_name(struct tui *tui, struct new_state *state)
{
    const struct store_build *builds = NULL;
    size_t count = 0;
    (void)desk_builds(tui->desk, &builds, &count, NULL);
    snprintf(state->name, sizeof state->name, "%s", state->starter->title);
    for (int i = 2; is_taken(builds, count, state->name); i++)
        snprintf(state->name, sizeof state->name, "%s %d", state->starter->title, i);
}

static enum reaction new_act(struct tui *tui, void *opaque, enum action action)
{
    struct new_state *state = opaque;
    if (list_view_act(&state->pieces, action))
        return REACT_TAKEN;
    if (action != ACTION_ENTER)
        return REACT_PASS;
    state->starter = &starters[state->pieces.chosen];
    propose_name(tui, state);
    ask(state, ROW_NAME);
    return REACT_TAKEN;
}

static struct list_view *new_list(void *opaque)
{
    return &((struct new_state *)opaque)->pieces;
}

static void new_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    (void)tui;
    (void)opaque;
    text_format(out, "%s  %s", starters[index].title, starters[index].help);
}

const struct screen screen_new = {
    .name = "new build",
    .size = sizeof(struct new_state),
    .open = new_open,
    .paint = new_paint,
    .act = new_act,
    .typing = new_typing,
    .key = new_key,
    .paste = new_paste,
    .list = new_list,
    .line = new_line,
    .shown = SHOWS(ENTER) | SHOWS(LEAVE),
    .words = {{ACTION_ENTER, "take"}},
    .typing_hint = "Enter takes the answer, Up goes back, Esc leaves without a build",
};
