/*
 * One stock: its offers as a list in which a new price is typed, and under it what prices were and
 * what was paid before, and what lies on the shelf.
 */
#include "base/show.h"
#include "desk/clock.h"
#include "desk/stock.h"
#include "model/offer.h"
#include "paper/sheets.h"
#include "tui/list.h"
#include "tui/price_cell.h"
#include "tui/told.h"

#include <assert.h>

struct prices_state {
    struct price_cell cell; /* first: price_cell.h */
    struct told told;
    struct list_view list; /* of the offers, in order of keys */
    int64_t stock;
};

/* ---- the offers ---- */

static const struct offer *offer_at(const struct tui *tui, const struct prices_state *state,
                                    int index)
{
    const struct model *model = tui_model(tui);
    for (size_t i = 0; i < model->offers.count; i++) {
        if (model->offers.at[i].stock == state->stock && index-- == 0)
            return &model->offers.at[i];
    }
    return NULL;
}

static void fit_list(const struct tui *tui, struct prices_state *state)
{
    int count = 0;
    while (offer_at(tui, state, count))
        count++;
    list_view_resize(&state->list, count);
}

/* ---- painting ---- */

#define PRICE_AT 26
#define PRICE_WIDTH 12
#define DATED_AT 40
#define SUPPLIER_AT 52

static void put_price(struct text *out, const struct model *model, const struct offer *offer)
{
    char money[MONEY_TEXT];
    text_add(out,
             offer->price ? money_print(money, model_currency(model), offer->price) : "no price");
}

static void paint_offer(struct tui *tui, struct prices_state *state, int index, int row)
{
    const struct model *model = tui_model(tui);
    const struct offer *offer = offer_at(tui, state, index);
    bool chosen = index == state->list.chosen;
    int style = chosen ? VIEW_CHOSEN : VIEW_PLAIN;
    struct text words;
    assert(offer); /* the list has as many lines as there are offers */
    text_init(&words);
    view_row(&tui->view, row, 0, tui->view.columns, style, "");
    sheet_offer_words(&words, model, offer);
    view_text(&tui->view, row, 1, PRICE_AT - 2, style | VIEW_STRONG, text_string(&words));
    text_clear(&words);
    put_price(&words, model, offer);
    if (chosen && state->cell.typing)
        entry_paint(&state->cell.entry, &tui->view, row, PRICE_AT, PRICE_WIDTH);
    else
        view_right(&tui->view, row, PRICE_AT, PRICE_WIDTH, style, text_string(&words));
    text_clear(&words);
    sheet_offer_tax(&words, offer);
    view_text(&tui->view, row, DATED_AT, SUPPLIER_AT - DATED_AT, style, offer->dated);
    text_format(&words, "%s%s", words.length && *offer_supplier(model, offer) ? ", " : "",
                offer_supplier(model, offer));
    view_text(&tui->view, row, SUPPLIER_AT, tui->view.columns - SUPPLIER_AT - 1, style,
              text_string(&words));
    if (chosen && !state->cell.typing)
        view_cursor(&tui->view, row, 1);
    text_release(&words);
}

static enum fault prices_make(struct tui *tui, void *context, struct text *out,
                              struct fault_note *note)
{
    const struct prices_state *state = context;
    const struct stock *stock = MODEL_FIND(tui_model(tui), stock, state->stock);
    const struct paid_before *paid = NULL;
    size_t count = 0;
    struct arena arena;
    if (!stock)
        return fault_say(note, FAULT_UNKNOWN, "This stock is not there any more.");
    arena_init(&arena);
    enum fault fault = desk_paid_before(tui->desk, stock->key, &arena, &paid, &count, note);
    if (!fault)
        sheet_stock_before(out, tui_model(tui), stock, paid, count);
    arena_release(&arena);
    return fault;
}

static void prices_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct prices_state *state = opaque;
    state->told.make = prices_make;
    state->stock = target->key;
    fit_list(tui, state);
    list_view_choose(&state->list, 0);
}

static void paint_head(struct tui *tui, const struct prices_state *state, int row)
{
    const struct stock *stock = MODEL_FIND(tui_model(tui), stock, state->stock);
    struct text head;
    if (!stock)
        return;
    text_init(&head);
    show_text(&head, stock->name);
    text_format(&head, ", %s", words_stock.at[stock->kind].help);
    view_text(&tui->view, row, 1, tui->view.columns - 2, VIEW_STRONG, text_string(&head));
    text_release(&head);
}

static void prices_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct prices_state *state = opaque;
    fit_list(tui, state);
    int most = height / 2 - 2;
    int shown = state->list.count > most ? most : state->list.count;
    int below = top + 1 + (shown ? shown : 1);
    pager_paint(&state->told.pager, &tui->view, below + 1, top + height - below - 1,
                told_text(&state->told, tui, state));
    paint_head(tui, state, top);
    list_view_fit(&state->list, top + 1, shown);
    for (int i = 0; i < list_view_shown(&state->list); i++)
        paint_offer(tui, state, state->list.top + i, top + 1 + i);
    if (state->list.count == 0)
        view_format(&tui->view, top + 1, 1, VIEW_PLAIN,
                    "Nobody has it yet. Press %s to add a size and its price.",
                    tui_key(tui, ACTION_ADD).at);
    view_level(&tui->view, below, 0, tui->view.columns);
    price_cell_paint_refusal(&state->cell, &tui->view, below);
}

/* ---- changes ---- */

static enum reaction prices_act(struct tui *tui, void *opaque, enum action action)
{
    struct prices_state *state = opaque;
    fit_list(tui, state);
    if (action == ACTION_LEAF_UP || action == ACTION_LEAF_DOWN)
        return pager_act(&state->told.pager, action) ? REACT_TAKEN : REACT_PASS;
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    const struct offer *offer = offer_at(tui, state, state->list.chosen);
    if (action == ACTION_ADD)
        tui_add_item(tui, ENTITY_offer, state->stock);
    else if (action == ACTION_ENTER && offer)
        price_cell_begin(&state->cell);
    else if (action == ACTION_REMOVE && offer)
        tui_delete_item(tui, ENTITY_offer, offer->key);
    else
        return REACT_PASS;
    return REACT_TAKEN;
}

static enum reaction take_price(struct tui *tui, struct prices_state *state)
{
    char today[CLOCK_TEXT];
    const struct offer *offer = offer_at(tui, state, state->list.chosen);
    const struct desk_price price = {.offer = offer ? offer->key : 0,
                                     .price = state->cell.entry.text,
                                     .dated = clock_today(today)};
    if (!desk_set_price(tui->desk, &price, &state->cell.refusal)) {
        state->cell.typing = false;
        list_view_act(&state->list, ACTION_DOWN);
    }
    return REACT_TAKEN;
}

static enum reaction prices_key(struct tui *tui, void *opaque, int key)
{
    struct prices_state *state = opaque;
    fit_list(tui, state);
    bool may_begin = offer_at(tui, state, state->list.chosen);
    bool take;
    enum reaction reaction = price_cell_key(&state->cell, key, may_begin, &take);
    return take ? take_price(tui, state) : reaction;
}

static void prices_close(void *opaque)
{
    told_release(&((struct prices_state *)opaque)->told);
}

static struct list_view *prices_list(void *opaque)
{
    return &((struct prices_state *)opaque)->list;
}

static void prices_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    const struct offer *offer = offer_at(tui, opaque, index);
    assert(offer); /* `index` is of the list */
    sheet_offer_words(out, tui_model(tui), offer);
    text_add(out, "  ");
    put_price(out, tui_model(tui), offer);
    text_format(out, "  %s", offer->dated);
}

const struct screen screen_prices = {
    .name = "prices of one stock",
    .size = sizeof(struct prices_state),
    .open = prices_open,
    .close = prices_close,
    .paint = prices_paint,
    .act = prices_act,
    .typing = price_cell_typing,
    .key = prices_key,
    .paste = price_cell_paste,
    .list = prices_list,
    .line = prices_line,
    .shown =
        SHOWS(ENTER) | SHOWS(ADD) | SHOWS(REMOVE) | SHOWS(LEAVE) | SHOWS(UNDO) | SHOWS(LIST_OUT),
    .words = {{ACTION_ENTER, "new price"}, {ACTION_ADD, "add an offer"}},
    .typing_hint = "Enter takes the price, of today; Esc leaves it as it was",
};
