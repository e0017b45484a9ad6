/* Trade values: what the engine works with, changed for the build that is open, else the workshop.
 */
#include "tui/entry.h"
#include "tui/list.h"
#include "tui/screen.h"

#include <stdio.h>

struct trade_state {
    struct list_view list;
    bool typing;
    bool fresh;
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

static void paint_value(struct tui *tui, struct trade_state *state, enum trade trade, int row)
{
    static const char *const origins[] = {"", "workshop", "build"};
    bool chosen = (int)trade == state->list.chosen;
    int style = chosen ? VIEW_CHOSEN : VIEW_PLAIN;
    char text[QUANTITY_TEXT];
    value_text(tui, trade, text);
    view_row(&tui->view, row, 0, tui->view.columns, style, "");
    view_text(&tui->view, row, 1, 26, style, trade_values[trade].key);
    view_text(&tui->view, row, 28, 14, style | VIEW_STRONG, text);
    view_text(&tui->view, row, 43, 8, style, origins[trade_origin_of(tui_model(tui), trade)]);
    view_text(&tui->view, row, 52, tui->view.columns - 53, style, trade_values[trade].help);
    if (chosen && state->typing)
        entry_paint(&state->entry, &tui->view, row, 28, 14);
    else if (chosen)
        view_cursor(&tui->view, row, 1);
}

static void trade_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct trade_state *state = opaque;
    list_view_fit(&state->list, top, height - 3);
    for (int i = 0; i < state->list.height && state->list.top + i < state->list.count; i++)
        paint_value(tui, state, (enum trade)(state->list.top + i), top + i);
    const struct trade_value *value = &trade_values[state->list.chosen];
    enum units units = model_units(tui_model(tui));
    char least[QUANTITY_TEXT];
    char most[QUANTITY_TEXT];
    char standard[QUANTITY_TEXT];
    struct text line;
    text_init(&line);
    text_format(&line, "standard %s, from %s to %s; source: %s",
                quantity_print_unit(standard, value->quantity, units, value->standard[units]),
                quantity_print_unit(least, value->quantity, units, value->least),
                quantity_print_unit(most, value->quantity, units, value->most), value->source);
    view_level(&tui->view, top + height - 3, 0, tui->view.columns);
    view_text(&tui->view, top + height - 2, 1, tui->view.columns - 2, VIEW_PLAIN, value->help);
    if (state->typing && state->refusal.code)
        view_text(&tui->view, top + height - 1, 1, tui->view.columns - 2,
                  VIEW_WARNING | VIEW_STRONG, state->refusal.why);
    else
        view_text(&tui->view, top + height - 1, 1, tui->view.columns - 2, VIEW_FAINT,
                  text_string(&line));
    text_release(&line);
}

static enum trade_origin where_to(const struct tui *tui)
{
    return tui_model(tui)->build.key ? TRADE_FROM_BUILD : TRADE_FROM_WORKSHOP;
}

static void begin_typing(struct tui *tui, struct trade_state *state)
{
    char text[QUANTITY_TEXT];
    value_text(tui, (enum trade)state->list.chosen, text);
    entry_set(&state->entry, text);
    state->typing = state->fresh = true;
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
    if (state->fresh && key >= KEY_SPACE && key < KEY_FIRST_SPECIAL)
        entry_set(&state->entry, "");
    state->fresh = false;
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

static enum reaction trade_act(struct tui *tui, void *opaque, enum action action)
{
    struct trade_state *state = opaque;
    struct fault_note note = {0};
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    if (action == ACTION_ENTER) {
        begin_typing(tui, state);
        return REACT_TAKEN;
    }
    if (action == ACTION_REMOVE) {
        if (desk_trade(tui->desk, where_to(tui), trade_values[state->list.chosen].key, "", &note))
            tui_warn(tui, &note);
        else
            tui_say(tui, "back to what holds without it");
        return REACT_TAKEN;
    }
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
    text_format(out, "%s  %s  %s", trade_values[index].key, text, trade_values[index].help);
}

const struct screen screen_trade = {
    .name = "trade values",
    .size = sizeof(struct trade_state),
    .open = trade_open,
    .paint = trade_paint,
    .act = trade_act,
    .typing = trade_typing,
    .key = trade_key,
    .paste = trade_paste,
    .list = trade_list,
    .line = trade_line,
    .shown = SHOWS(ENTER) | SHOWS(REMOVE) | SHOWS(LEAVE) | SHOWS(UNDO),
    .words = {{ACTION_ENTER, "change"}},
    .typing_hint = "Enter takes it, Esc leaves it as it was",
};
