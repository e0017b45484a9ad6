/*
 * The keys, from the table of actions; those that this screen's hint line names stand first. Enter
 * does what the chosen line says, on the screen that was asked about.
 */
#include "tui/hints.h"
#include "tui/list.h"
#include "tui/screen.h"

#include <string.h>

/* A line without an action is only read. */
struct help_line {
    enum action action;
    int line; /* of the settings; 0 for none */
    const char *words;
};

static const char *const closing[] = {
    "In a field",
    "  Enter or a digit begins, Enter or Tab takes it, Esc leaves it as it was.",
    "  Ctrl-U rubs out what stands before the cursor.",
    "  Left and right go through words and names; their first letters will do.",
    "  76 1/2, 6'4-1/2\", 1.94m, 194 cm are lengths; without a unit, the build's.",
    "In the bottom line",
    "  412.60+ is a cost without what has no price yet: see the shopping list.",
    "Cautions",
    "  The figures are estimates for furniture at home, not engineering; local rules",
    "  and licensed trades come first. Measure the built box before cloth is cut.",
};

#define CLOSING ((int)(sizeof closing / sizeof *closing))
#define LINES (ACTION_COUNT + 2 + CLOSING + 1 + SETTINGS_COMPLAINTS)

struct help_state {
    struct list_view list;
    const struct screen *about;
    struct help_line lines[LINES];
    int count;
};

static void add_line(struct help_state *state, enum action action, const char *words)
{
    state->lines[state->count++] = (struct help_line){action, 0, words};
}

static void add_actions(struct help_state *state, action_set shown, bool those)
{
    for (int i = 0; i < ACTION_COUNT; i++) {
        if (((shown & UINT64_C(1) << i) != 0) == those)
            add_line(state, (enum action)i, actions[i].help);
    }
}

/* What is wrong with the settings, as far as it was kept. */
static void add_complaints(struct help_state *state, const struct settings *settings)
{
    if (settings->complaint_count)
        add_line(state, ACTION_NONE, "Settings");
    for (int i = 0; i < settings->complaint_count && i < SETTINGS_COMPLAINTS; i++) {
        const struct complaint *complaint = &settings->complaints[i];
        state->lines[state->count++] =
            (struct help_line){ACTION_NONE, complaint->line, complaint->why};
    }
}

static void help_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct help_state *state = opaque;
    (void)target;
    state->about = tui->depth > 1 ? tui->stack[tui->depth - 2].screen : NULL;
    action_set shown = state->about ? hints_shown(tui, &tui->stack[tui->depth - 2]) : 0;
    add_line(state, ACTION_NONE, "Here");
    add_actions(state, shown, true);
    add_line(state, ACTION_NONE, "Everywhere");
    add_actions(state, shown, false);
    for (int i = 0; i < CLOSING; i++)
        add_line(state, ACTION_NONE, closing[i]);
    add_complaints(state, &tui->settings);
    list_view_resize(&state->list, state->count);
    list_view_choose(&state->list, 1);
}

/* ---- painting ---- */

/* "F2       a" */
static void add_keys(const struct tui *tui, enum action action, struct text *out)
{
    char name[ACTION_KEY_TEXT];
    const struct keymap *keys = &tui->settings.keys;
    int count = keymap_count(keys, action);
    for (int i = 0; i < count; i++)
        text_format(out, i + 1 < count ? "%-8s " : "%s",
                    action_key_name(keys->keys[action][i], name));
}

/* "  F2       a          add something here" */
static void say_line(const struct tui *tui, const struct help_state *state, int index,
                     struct text *out)
{
    const struct help_line *line = &state->lines[index];
    struct text keys;
    if (line->action == ACTION_NONE) {
        if (line->line)
            text_format(out, "  line %d: ", line->line);
        text_add(out, line->words);
        if (index == 0 && state->about)
            text_format(out, ": %s", state->about->name);
        return;
    }
    text_init(&keys);
    add_keys(tui, line->action, &keys);
    text_format(out, "  %-19s %s", text_string(&keys), line->words);
    text_release(&keys);
}

static void paint_line(struct tui *tui, const struct help_state *state, int index, int row)
{
    bool chosen = index == state->list.chosen;
    struct text line;
    text_init(&line);
    say_line(tui, state, index, &line);
    view_row(&tui->view, row, 0, tui->view.columns, chosen ? VIEW_CHOSEN : VIEW_PLAIN,
             text_string(&line));
    if (chosen)
        view_cursor(&tui->view, row, 0);
    text_release(&line);
}

static void help_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct help_state *state = opaque;
    list_view_fit(&state->list, top, height);
    for (int i = 0; i < list_view_shown(&state->list); i++)
        paint_line(tui, state, state->list.top + i, top + i);
}

/* ---- acting ---- */

/* This screen gives way to the one it is about, which is told what to do. */
static enum reaction run(struct tui *tui, enum action action)
{
    enum reaction reaction;
    tui_close_top(tui);
    reaction = tui_act(tui, action);
    return reaction == REACT_PASS ? REACT_TAKEN : reaction;
}

static enum reaction help_act(struct tui *tui, void *opaque, enum action action)
{
    struct help_state *state = opaque;
    enum action chosen = state->lines[state->list.chosen].action;
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    if (action == ACTION_ENTER && chosen != ACTION_NONE && chosen != ACTION_HELP)
        return run(tui, chosen);
    return action == ACTION_HELP || action == ACTION_ENTER ? REACT_LEAVE : REACT_PASS;
}

static struct list_view *help_list(void *opaque)
{
    return &((struct help_state *)opaque)->list;
}

/* With the word that the hint line has for it, which people remember. */
static void help_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    const struct help_state *state = opaque;
    enum action action = state->lines[index].action;
    say_line(tui, state, index, out);
    if (action != ACTION_NONE)
        text_format(out, " %s", actions[action].label);
}

const struct screen screen_help = {
    .name = "keys",
    .size = sizeof(struct help_state),
    .open = help_open,
    .paint = help_paint,
    .act = help_act,
    .list = help_list,
    .line = help_line,
    .shown = SHOWS(ENTER) | SHOWS(FIND) | SHOWS(LEAVE),
    .words = {{ACTION_ENTER, "do it"}},
};
