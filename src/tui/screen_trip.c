/*
 * A shopping trip for several builds: one list by aisle. Space says that a line was paid at its
 * price and goes on, digits begin what was really paid in all; either writes each build's share
 * down as a spend of its own, and Space takes them back. Below the list stands whose the chosen
 * line is.
 */
#include "desk/clock.h"
#include "desk/trip.h"
#include "paper/print.h"
#include "paper/sheets.h"
#include "tui/list.h"
#include "tui/price_cell.h"
#include "tui/screen.h"
#include "tui/trolley.h"

#include <stdio.h>

struct trip_state {
    struct price_cell cell; /* first: price_cell.h */
    struct list_view list;
    struct trolley trolley;
    struct desk_trip *trip; /* NULL: could not be made */
    unsigned serial;        /* of the desk that it was made from */
};

/* Made anew whenever the file is another one than it was made from. */
static const struct trip *trip_of(struct tui *tui, struct trip_state *state)
{
    struct fault_note note = {0};
    if (state->trip && state->serial == desk_serial(tui->desk))
        return desk_trip_of(state->trip);
    desk_trip_free(state->trip);
    state->trip = NULL;
    if (desk_trip_begin(&state->trip, tui->desk, state->trolley.builds, state->trolley.count,
                        CUT_QUICK, sheet_purchase_words, &note)) {
        tui_warn(tui, &note);
        return NULL;
    }
    state->serial = desk_serial(tui->desk);
    list_view_resize(&state->list, (int)desk_trip_of(state->trip)->lines.count);
    return desk_trip_of(state->trip);
}

static void trip_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct trip_state *state = opaque;
    (void)target;
    trolley_fill(&state->trolley, tui);
    list_view_choose(&state->list, 0);
    trip_of(tui, state);
    list_view_choose(&state->list, 0);
}

static void trip_close(void *opaque)
{
    desk_trip_free(((struct trip_state *)opaque)->trip);
}

/* ---- painting ---- */

#define MONEY_WIDTH 11

static const struct plan *any_plan(const struct trip *trip)
{
    return trip->builds.at[0].plan;
}

static void paint_line(struct tui *tui, struct trip_state *state, const struct trip *trip,
                       int index, int row)
{
    const struct trip_line *line = &trip->lines.at[index];
    bool chosen = index == state->list.chosen;
    int style = chosen ? VIEW_CHOSEN : VIEW_PLAIN;
    int price = tui->view.columns - 2 * MONEY_WIDTH - 3;
    struct text words;
    text_init(&words);
    sheet_trip_words(&words, trip, line);
    view_row(&tui->view, row, 0, tui->view.columns, style, "");
    view_text(&tui->view, row, 1, 3, style, line->paid ? "[x]" : line->amount ? "[-]" : "[ ]");
    view_text(&tui->view, row, 5, price - 6, style | VIEW_STRONG, text_string(&words));
    text_release(&words);
    view_right(&tui->view, row, price, MONEY_WIDTH, style,
               line->priced ? print_money(any_plan(trip), line->till).at : "no price");
    if (chosen && state->cell.typing)
        entry_paint(&state->cell.entry, &tui->view, row, price + MONEY_WIDTH + 2, MONEY_WIDTH);
    else if (line->amount)
        view_right(&tui->view, row, price + MONEY_WIDTH + 1, MONEY_WIDTH, style,
                   print_money(any_plan(trip), line->amount).at);
    else
        price_cell_paint_bought(&tui->view, row, price + MONEY_WIDTH + 1, MONEY_WIDTH, style,
                                sheet_trip_bought(trip, line).at);
    if (chosen && !state->cell.typing)
        view_cursor(&tui->view, row, 1);
}

/* "Lumber: Bench 12.60, Bed 8.40; 1 pack fewer than apart; 2 bought" */
static void add_shares(const struct trip *trip, const struct trip_line *line, struct text *out)
{
    text_format(out, "%s: ", words_aisle.at[line->aisle].help);
    sheet_trip_shares(out, trip, line);
    if (line->bought)
        text_format(out, "; %s", sheet_trip_bought(trip, line).at);
}

static void paint_foot(struct tui *tui, const struct trip_state *state, const struct trip *trip,
                       int row)
{
    struct text foot;
    text_init(&foot);
    view_level(&tui->view, row, 0, tui->view.columns);
    add_shares(trip, &trip->lines.at[state->list.chosen], &foot);
    if (!price_cell_paint_refusal(&state->cell, &tui->view, row + 1))
        view_text(&tui->view, row + 1, 1, tui->view.columns - 2, VIEW_PLAIN, text_string(&foot));
    text_clear(&foot);
    text_format(&foot, "%zu builds, total with tax %s; paid line by line %s", trip->builds.count,
                print_money(any_plan(trip), trip->till).at,
                print_money(any_plan(trip), trip->paid).at);
    if (trip->apart > trip->till)
        text_format(&foot, "; apart %s more",
                    print_money(any_plan(trip), trip->apart - trip->till).at);
    view_text(&tui->view, row + 2, 1, tui->view.columns - 2, VIEW_PLAIN, text_string(&foot));
    text_release(&foot);
}

static void trip_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct trip_state *state = opaque;
    const struct trip *trip = trip_of(tui, state);
    int price = tui->view.columns - 2 * MONEY_WIDTH - 3;
    if (!trip || trip->lines.count == 0) {
        view_text(&tui->view, top, 1, tui->view.columns - 2, VIEW_PLAIN,
                  "Nothing has to be bought for these builds. Esc goes back.");
        return;
    }
    list_view_resize(&state->list, (int)trip->lines.count);
    list_view_fit(&state->list, top + 1, height - 4);
    view_text(&tui->view, top, 5, 40, VIEW_FAINT, "TROLLEY");
    view_right(&tui->view, top, price, MONEY_WIDTH, VIEW_FAINT, "price");
    view_right(&tui->view, top, price + MONEY_WIDTH + 1, MONEY_WIDTH, VIEW_FAINT, "paid");
    for (int i = 0; i < list_view_shown(&state->list); i++)
        paint_line(tui, state, trip, state->list.top + i, top + 1 + i);
    paint_foot(tui, state, trip, top + height - 3);
}

/* ---- paying ---- */

static enum reaction toggle(struct tui *tui, struct trip_state *state, const struct trip *trip)
{
    const struct trip_line *line = &trip->lines.at[state->list.chosen];
    bool paid = line->paid;
    char today[CLOCK_TEXT];
    struct fault_note note = {0};
    size_t index = (size_t)state->list.chosen;
    if (!paid && !line->priced) {
        price_cell_begin(&state->cell);
        return REACT_TAKEN;
    }
    enum fault fault =
        paid ? desk_trip_unpay(tui->desk, state->trip, index, &note)
             : desk_trip_pay(tui->desk, state->trip, index, clock_today(today), NULL, &note);
    if (fault)
        tui_warn(tui, &note);
    else if (paid)
        tui_say(tui, "not paid after all; %s brings it back", tui_key(tui, ACTION_UNDO).at);
    else
        list_view_act(&state->list, ACTION_DOWN);
    return REACT_TAKEN;
}

static enum reaction trip_act(struct tui *tui, void *opaque, enum action action)
{
    struct trip_state *state = opaque;
    const struct trip *trip = trip_of(tui, state);
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    if (action == ACTION_CUTTING) {
        tui_open(tui, &screen_together, NULL);
        return REACT_TAKEN;
    }
    if (!trip || state->list.chosen < 0)
        return REACT_PASS;
    if (action == ACTION_TICK)
        return toggle(tui, state, trip);
    if (action == ACTION_ENTER && !trip->lines.at[state->list.chosen].paid) {
        price_cell_begin(&state->cell);
        return REACT_TAKEN;
    }
    return REACT_PASS;
}

static enum reaction take_price(struct tui *tui, struct trip_state *state)
{
    char today[CLOCK_TEXT];
    const struct trip *trip = trip_of(tui, state);
    if (!trip || state->list.chosen < 0 ||
        !desk_trip_pay(tui->desk, state->trip, (size_t)state->list.chosen, clock_today(today),
                       state->cell.entry.text, &state->cell.refusal)) {
        state->cell.typing = false;
        list_view_act(&state->list, ACTION_DOWN);
    }
    return REACT_TAKEN;
}

static enum reaction trip_key(struct tui *tui, void *opaque, int key)
{
    struct trip_state *state = opaque;
    const struct trip *trip = trip_of(tui, state);
    bool may_begin = trip && state->list.chosen >= 0 && !trip->lines.at[state->list.chosen].paid;
    bool take;
    enum reaction reaction = price_cell_key(&state->cell, key, may_begin, &take);
    return take ? take_price(tui, state) : reaction;
}

static struct list_view *trip_list(void *opaque)
{
    return &((struct trip_state *)opaque)->list;
}

static void trip_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    const struct trip *trip = trip_of(tui, opaque);
    if (!trip || (size_t)index >= trip->lines.count)
        return;
    const struct trip_line *line = &trip->lines.at[index];
    text_add(out, line->paid ? "[x] " : line->amount ? "[-] " : "[ ] ");
    sheet_trip_words(out, trip, line);
    text_format(out, "  %s  ", print_money(any_plan(trip), line->till).at);
    add_shares(trip, line, out);
}

const struct screen screen_trip = {
    .name = "trolley",
    .size = sizeof(struct trip_state),
    .open = trip_open,
    .close = trip_close,
    .paint = trip_paint,
    .act = trip_act,
    .typing = price_cell_typing,
    .key = trip_key,
    .paste = price_cell_paste,
    .list = trip_list,
    .line = trip_line,
    .shown =
        SHOWS(ENTER) | SHOWS(TICK) | SHOWS(LEAVE) | SHOWS(CUTTING) | SHOWS(UNDO) | SHOWS(LIST_OUT),
    .words = {{ACTION_ENTER, "price paid"}, {ACTION_TICK, "paid"}},
    .typing_hint = "Enter takes what was paid in all, Esc leaves it as it was",
};
