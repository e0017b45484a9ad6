/*
 * Trade values: what the engine works with, changed for the build that is open, else for the
 * workshop. Words come first, since nobody knows a key by heart; Left and Right go through the
 * groups of the table.
 */
#include "tui/entry.h"
#include "tui/list.h"
#include "tui/screen.h"

#include <stdio.h>

struct trade_state {
    struct list_view list;
    bool typing;
    struct entry entry;
    struct fault_note refusal;
};

static void trade_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct trade_state *state = opaque;
    (void)tui;
    (void)target;
    list_view_resize(&state->list, TRADE_COUNT);
    list_view_choose(&state->list, 0);
}

static void value_text(const struct tui *tui, enum trade trade, char text[QUANTITY_TEXT])
{
    quantity_print_unit(text, trade_values[trade].quantity, model_units(tui_model(tui)),
                        trade_of(tui_model(tui), trade));
}

/* Where the columns are; the keys of the values show where there is room for them. */
struct columns {
    int words, value, origin, key;
};

enum { VALUE_WIDTH = 15, ORIGIN_WIDTH = 9, KEY_WIDTH = 28, WIDE = 110 };

static struct columns columns_of(const struct tui *tui)
{
    int key = tui->view.columns >= WIDE ? KEY_WIDTH : 0;
    int value = tui->view.columns - key - ORIGIN_WIDTH - VALUE_WIDTH;
    return (struct columns){value - 2, value, value + VALUE_WIDTH,
                            key ? tui->view.columns - key : 0};
}

static void paint_value(struct tui *tui, struct trade_state *state, enum trade trade, int row)
{
    static const char *const origins[] = {"", "workshop", "build"};
    struct columns at = columns_of(tui);
    bool chosen = (int)trade == state->list.chosen;
    int style = chosen ? VIEW_CHOSEN : VIEW_PLAIN;
    char text[QUANTITY_TEXT];
    value_text(tui, trade, text);
    view_row(&tui->view, row, 0, tui->view.columns, style, "");
    view_text(&tui->view, row, 1, at.words, style, trade_values[trade].help);
    view_text(&tui->view, row, at.value, VALUE_WIDTH - 1, style | VIEW_STRONG, text);
    view_text(&tui->view, row, at.origin, ORIGIN_WIDTH - 1, style,
              origins[trade_origin_of(tui_model(tui), trade)]);
    if (at.key)
        view_text(&tui->view, row, at.key, KEY_WIDTH - 1, style, trade_values[trade].key);
    if (chosen && state->typing)
        entry_paint(&state->entry, &tui->view, row, at.value, VALUE_WIDTH - 1);
    else if (chosen)
        view_cursor(&tui->view, row, 1);
}

/* "screws and bolts, 3 of 31   Left, Right: other groups" */
static void paint_group(struct tui *tui, const struct trade_state *state, int row)
{
    enum trade chosen = (enum trade)state->list.chosen;
    int group = trade_group_of(chosen);
    view_format(&tui->view, row, 1, VIEW_STRONG, "%s, %d of %d", trade_groups[group].title,
                (int)chosen - (int)trade_group_first(group) + 1, trade_groups[group].count);
    view_text(&tui->view, row, columns_of(tui).value - 1, tui->view.columns, VIEW_FAINT,
              "Left, Right other groups");
}

/* "standard 1/4 in, from 0 in to 4 in; common practice, no source" */
static void add_range(const struct tui *tui, const struct trade_value *value, struct text *out)
{
    enum units units = model_units(tui_model(tui));
    struct quantity_limits limits =
        quantity_print_limits(value->quantity, units, value->least, value->most);
    char standard[QUANTITY_TEXT];
    text_format(out, "standard %s, from %s to %s; %s",
                quantity_print_unit(standard, value->quantity, units, value->standard[units]),
                limits.least, limits.most, value->source);
}

static void paint_details(struct tui *tui, const struct trade_state *state, int row)
{
    const struct trade_value *value = &trade_values[state->list.chosen];
    int columns = tui->view.columns;
    struct text line;
    text_init(&line);
    view_level(&tui->view, row, 0, columns);
    text_format(&line, "%s: %s", value->key, value->help);
    view_text(&tui->view, row + 1, 1, columns - 2, VIEW_PLAIN, text_string(&line));
    text_clear(&line);
    add_range(tui, value, &line);
    if (state->typing && state->refusal.code)
        view_text(&tui->view, row + 2, 1, columns - 2, VIEW_WARNING | VIEW_STRONG,
                  state->refusal.why);
    else
        view_text(&tui->view, row + 2, 1, columns - 2, VIEW_FAINT, text_string(&line));
    text_release(&line);
}

static void trade_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct trade_state *state = opaque;
    list_view_fit(&state->list, top + 1, height - 4);
    paint_group(tui, state, top);
    for (int i = 0; i < list_view_shown(&state->list); i++)
        paint_value(tui, state, (enum trade)(state->list.top + i), state->list.row + i);
    paint_details(tui, state, top + height - 3);
}

static enum trade_origin where_to(const struct tui *tui)
{
    return tui_model(tui)->build.key ? TRADE_FROM_BUILD : TRADE_FROM_WORKSHOP;
}

static void begin_typing(struct tui *tui, struct trade_state *state)
{
    char text[QUANTITY_TEXT];
    value_text(tui, (enum trade)state->list.chosen, text);
    entry_offer(&state->entry, text);
    state->typing = true;
    state->refusal.code = FAULT_NONE;
}

static enum reaction trade_key(struct tui *tui, void *opaque, int key)
{
    struct trade_state *state = opaque;
    if (!state->typing) {
        if (key < '0' || key > '9')
            return REACT_PASS;
        begin_typing(tui, state);
    }
    if (key == KEY_ESCAPE) {
        state->typing = false;
        return REACT_TAKEN;
    }
    if (key == KEY_RETURN || key == KEY_TAB) {
        if (!desk_trade(tui->desk, where_to(tui), trade_values[state->list.chosen].key,
                        state->entry.text, &state->refusal))
            state->typing = false;
        return REACT_TAKEN;
    }
    entry_key(&state->entry, key);
    return REACT_TAKEN;
}

static enum reaction trade_paste(struct tui *tui, void *opaque, const char *text)
{
    (void)tui;
    entry_insert(&((struct trade_state *)opaque)->entry, text);
    return REACT_TAKEN;
}

static bool trade_typing(struct tui *tui, void *opaque)
{
    (void)tui;
    return ((struct trade_state *)opaque)->typing;
}

/* Back to the beginning of a group first, then to the one before. */
static void leaf_groups(struct trade_state *state, bool on)
{
    int group = trade_group_of((enum trade)state->list.chosen);
    bool inside = state->list.chosen > (int)trade_group_first(group);
    if (on && group + 1 < trade_group_count)
        group++;
    else if (!on && !inside && group > 0)
        group--;
    else if (on)
        return;
    list_view_choose(&state->list, (int)trade_group_first(group));
    state->list.top = state->list.chosen;
}

static enum reaction give_back(struct tui *tui, const struct trade_state *state)
{
    const struct trade_value *value = &trade_values[state->list.chosen];
    struct fault_note note = {0};
    char text[QUANTITY_TEXT];
    if (trade_origin_of(tui_model(tui), (enum trade)state->list.chosen) == TRADE_FROM_STANDARD)
        tui_say(tui, "it is the standard value already");
    else if (desk_trade(tui->desk, where_to(tui), value->key, "", &note))
        tui_warn(tui, &note);
    else {
        value_text(tui, (enum trade)state->list.chosen, text);
        tui_say(tui, "back to %s; %s takes that back", text, tui_key(tui, ACTION_UNDO).at);
    }
    return REACT_TAKEN;
}

static enum reaction trade_act(struct tui *tui, void *opaque, enum action action)
{
    struct trade_state *state = opaque;
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    if (action == ACTION_ENTER) {
        begin_typing(tui, state);
        return REACT_TAKEN;
    }
    if (action == ACTION_LEFT || action == ACTION_RIGHT) {
        leaf_groups(state, action == ACTION_RIGHT);
        return REACT_TAKEN;
    }
    if (action == ACTION_REMOVE)
        return give_back(tui, state);
    return REACT_PASS;
}

static struct list_view *trade_list(void *opaque)
{
    return &((struct trade_state *)opaque)->list;
}

static void trade_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    char text[QUANTITY_TEXT];
    (void)opaque;
    value_text(tui, (enum trade)index, text);
    text_format(out, "%s  %s  %s", trade_values[index].help, text, trade_values[index].key);
}

const struct screen screen_trade = {
    .name = "trade values",
    .size = sizeof(struct trade_state),
    .place = true,
    .open = trade_open,
    .paint = trade_paint,
    .act = trade_act,
    .typing = trade_typing,
    .key = trade_key,
    .paste = trade_paste,
    .list = trade_list,
    .line = trade_line,
    .shown = SHOWS(ENTER) | SHOWS(REMOVE) | SHOWS(LEAVE) | SHOWS(UNDO),
    .words = {{ACTION_ENTER, "change"}, {ACTION_REMOVE, "standard"}},
    .typing_hint = "Enter takes it, Esc leaves it as it was",
};
