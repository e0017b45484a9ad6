/* Hole maps, and estimate beside spend: sheets as the commands print them. */
#include "paper/print.h"
#include "paper/sheets.h"
#include "tui/list.h"
#include "tui/pager.h"
#include "tui/screen.h"

#include <stdio.h>

/* A sheet without the blank line that keeps it from the one before where both are printed. */
static const char *sheet_alone(const struct text *text)
{
    const char *sheet = text_string(text);
    return *sheet == '\n' ? sheet + 1 : sheet;
}

/* ---- hole maps ---- */

static struct pager *map_pager(void *opaque)
{
    return opaque;
}

static void map_sheet(struct tui *tui, void *opaque, struct text *out)
{
    struct text text;
    (void)opaque;
    text_init(&text);
    sheet_map(&text, tui_plan(tui));
    text_add(out, text.length ? sheet_alone(&text) : "No join of this build has holes yet.\n");
    text_release(&text);
}

static void map_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct text text;
    text_init(&text);
    map_sheet(tui, opaque, &text);
    pager_paint(opaque, &tui->view, top, height, text_string(&text));
    text_release(&text);
}

static enum reaction map_act(struct tui *tui, void *opaque, enum action action)
{
    (void)tui;
    return pager_act(opaque, action) ? REACT_TAKEN : REACT_PASS;
}

const struct screen screen_map = {
    .name = "hole maps",
    .size = sizeof(struct pager),
    .place = true,
    .paint = map_paint,
    .act = map_act,
    .pager = map_pager,
    .sheet = map_sheet,
    .shown = SHOWS(LEAVE) | SHOWS(FIND) | SHOWS(STEPS),
};

/* ---- money ---- */

struct money_state {
    struct list_view list; /* of spends */
};

static const struct spend *spend_at(const struct tui *tui, int index)
{
    return &tui_model(tui)->spends.at[index];
}

static void paint_spend(struct tui *tui, const struct spend *spend, int row, bool chosen)
{
    int style = chosen ? VIEW_CHOSEN : VIEW_PLAIN;
    view_row(&tui->view, row, 0, tui->view.columns, style, "");
    view_text(&tui->view, row, 2, 11, style, spend->dated);
    view_text(&tui->view, row, 14, 12, style, print_money(tui_plan(tui), spend->amount).at);
    view_text(&tui->view, row, 27, 30, style, spend->what);
    view_text(&tui->view, row, 58, tui->view.columns - 59, style, spend->supplier);
    if (chosen)
        view_cursor(&tui->view, row, 2);
}

static void money_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct money_state *state = opaque;
    struct text text;
    struct pager pager = {0};
    text_init(&text);
    sheet_money(&text, tui_plan(tui));
    int table = height > 24 ? 16 : height / 2 + 2;
    pager_paint(&pager, &tui->view, top, table, sheet_alone(&text));
    text_release(&text);
    view_level(&tui->view, top + table, 0, tui->view.columns);
    list_view_resize(&state->list, (int)tui_model(tui)->spends.count);
    list_view_fit(&state->list, top + table + 1, height - table - 1);
    for (int i = 0; i < list_view_shown(&state->list); i++)
        paint_spend(tui, spend_at(tui, state->list.top + i), top + table + 1 + i,
                    state->list.top + i == state->list.chosen);
    if (state->list.count == 0)
        view_format(&tui->view, top + table + 1, 2, VIEW_PLAIN,
                    "Nothing was paid yet. Press %s to write a spend down.",
                    tui_key(tui, ACTION_ADD).at);
}

static enum reaction money_act(struct tui *tui, void *opaque, enum action action)
{
    struct money_state *state = opaque;
    list_view_resize(&state->list, (int)tui_model(tui)->spends.count);
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    if (action == ACTION_ADD) {
        tui_add_item(tui, ENTITY_spend, 0);
        return REACT_TAKEN;
    }
    if (state->list.chosen < 0)
        return REACT_PASS;
    int64_t key = spend_at(tui, state->list.chosen)->key;
    if (action == ACTION_ENTER) {
        tui_open(tui, &screen_form, &(struct target){ENTITY_spend, key, NULL, NULL});
        return REACT_TAKEN;
    }
    if (action == ACTION_REMOVE) {
        tui_delete_item(tui, ENTITY_spend, key);
        return REACT_TAKEN;
    }
    return REACT_PASS;
}

static struct list_view *money_list(void *opaque)
{
    return &((struct money_state *)opaque)->list;
}

static void money_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    const struct spend *spend = spend_at(tui, index);
    (void)opaque;
    text_format(out, "%s  %s  %s  %s", spend->dated, print_money(tui_plan(tui), spend->amount).at,
                spend->what, spend->supplier);
}

const struct screen screen_money = {
    .name = "money",
    .size = sizeof(struct money_state),
    .place = true,
    .paint = money_paint,
    .act = money_act,
    .list = money_list,
    .line = money_line,
    .shown = SHOWS(ADD) | SHOWS(ENTER) | SHOWS(REMOVE) | SHOWS(LEAVE) | SHOWS(BUYING) | SHOWS(UNDO),
};
