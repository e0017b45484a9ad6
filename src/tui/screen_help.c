/* The keys, from the table of actions; those that this screen's hint line names stand first. */
#include "tui/pager.h"
#include "tui/screen.h"

#include <string.h>

struct help_state {
    struct pager pager;
    const struct screen *about;
};

static void help_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct help_state *state = opaque;
    (void)target;
    state->about = tui->depth > 1 ? tui->stack[tui->depth - 2].screen : NULL;
}

static void add_action(struct text *text, const struct action_entry *entry)
{
    char first[ACTION_KEY_TEXT];
    char other[ACTION_KEY_TEXT];
    text_format(text, "  %-8s %-10s %s\n", action_key_name(entry->key, first),
                entry->other == KEY_NONE_YET ? "" : action_key_name(entry->other, other),
                entry->help);
}

static void add_actions(struct text *text, unsigned long shown, bool those)
{
    for (int i = 0; i < ACTION_COUNT; i++) {
        if (((shown & 1ul << i) != 0) == those)
            add_action(text, &actions[i]);
    }
}

static void help_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct help_state *state = opaque;
    struct text text;
    unsigned long shown = state->about ? state->about->shown : 0;
    text_init(&text);
    text_format(&text, "Here: %s\n", state->about ? state->about->name : "");
    add_actions(&text, shown, true);
    text_add(&text, "Everywhere\n");
    add_actions(&text, shown, false);
    text_add(&text,
             "In a field\n"
             "  Enter or a digit begins, Enter or Tab takes it, Esc leaves it as it was.\n"
             "  Ctrl-U rubs out what stands before the cursor.\n"
             "  Left and right go through words and names; their first letters will do.\n"
             "  76 1/2, 6'4-1/2\", 1.94m, 194 cm are lengths; without a unit the build's counts.\n"
             "Cautions\n"
             "  The figures are estimates for furniture at home, not engineering; local rules\n"
             "  and licensed trades come first. Measure the built box before cloth is cut.\n");
    pager_paint(&state->pager, &tui->view, top, height, text_string(&text));
    text_release(&text);
}

static enum reaction help_act(struct tui *tui, void *opaque, enum action action)
{
    struct help_state *state = opaque;
    (void)tui;
    if (pager_act(&state->pager, action))
        return REACT_TAKEN;
    return action == ACTION_HELP || action == ACTION_ENTER ? REACT_LEAVE : REACT_PASS;
}

const struct screen screen_help = {
    .name = "keys",
    .size = sizeof(struct help_state),
    .open = help_open,
    .paint = help_paint,
    .act = help_act,
    .shown = SHOWS(LEAVE),
};
