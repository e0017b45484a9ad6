/*
 * All stock by kind, each with its sizes, prices and what of it lies on the shelf; Enter tells all
 * of one, with what it cost before. Digits are a price: of its one offer, or its first.
 */
#include "desk/clock.h"
#include "desk/stock.h"
#include "paper/sheets.h"
#include "tui/list.h"
#include "tui/price_cell.h"
#include "tui/screen.h"

struct stock_state {
    struct price_cell cell; /* first: price_cell.h */
    struct list_view list;  /* of stocks, in order of keys */
};

static const struct stock *stock_at(const struct tui *tui, int index)
{
    return &tui_model(tui)->stocks.at[index];
}

static void stock_fit(struct tui *tui, struct stock_state *state)
{
    list_view_resize(&state->list, (int)tui_model(tui)->stocks.count);
}

static void stock_open(struct tui *tui, void *opaque, const struct target *target)
{
    struct stock_state *state = opaque;
    stock_fit(tui, state);
    list_view_choose(&state->list, 0);
    for (int i = 0; target->kind == ENTITY_stock && i < state->list.count; i++) {
        if (stock_at(tui, i)->key == target->key)
            list_view_choose(&state->list, i);
    }
}

/* "96 in 3.90, 120 in 5.50 (before 5.10)" */
static void put_offers(struct text *out, const struct model *model, const struct stock *stock)
{
    size_t before = out->length;
    for (size_t i = 0; i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];
        char money[MONEY_TEXT];
        if (offer->stock != stock->key)
            continue;
        text_add(out, out->length > before ? ", " : "");
        sheet_offer_words(out, model, offer);
        text_format(out, " %s",
                    offer->price ? money_print(money, model_currency(model), offer->price)
                                 : "no price");
    }
    if (out->length == before)
        text_add(out, "nobody has it");
}

static int64_t pieces_left(const struct model *model, int64_t stock, int64_t *ret_value)
{
    int64_t count = 0;
    *ret_value = 0;
    for (size_t i = 0; i < model->leftovers.count; i++) {
        const struct leftover *left = &model->leftovers.at[i];
        if (left->stock != stock)
            continue;
        count += left->count;
        (void)whole_add(*ret_value, leftover_value(model, left), ret_value);
    }
    return count;
}

/* "2 left, worth 3.25" */
static void put_left(struct text *out, const struct model *model, const struct stock *stock)
{
    int64_t value;
    int64_t count = pieces_left(model, stock->key, &value);
    char money[MONEY_TEXT];
    if (count)
        text_format(out, "%lld left, worth %s", (long long)count,
                    money_print(money, model_currency(model), value));
}

/* Where the columns begin, and what a price that is typed takes of the second. */
#define OFFERS_AT 26
#define PRICE_WIDTH 14

static void paint_stock(struct tui *tui, const struct stock *stock, int row, bool chosen)
{
    int style = chosen ? VIEW_CHOSEN : VIEW_PLAIN;
    int left = tui->view.columns - 24;
    struct text words;
    text_init(&words);
    view_row(&tui->view, row, 0, tui->view.columns, style, "");
    view_text(&tui->view, row, 1, 24, style | VIEW_STRONG, stock->name);
    put_offers(&words, tui_model(tui), stock);
    view_text(&tui->view, row, OFFERS_AT, left - OFFERS_AT - 1, style, text_string(&words));
    text_clear(&words);
    put_left(&words, tui_model(tui), stock);
    view_text(&tui->view, row, left, 23, style, text_string(&words));
    text_release(&words);
    if (chosen)
        view_cursor(&tui->view, row, 1);
}

/* Over the offers of the chosen line: the price being typed, and why it is not taken. */
static void paint_typed(struct tui *tui, const struct stock_state *state, int row)
{
    int after = OFFERS_AT + PRICE_WIDTH + 2;
    view_row(&tui->view, row, OFFERS_AT, tui->view.columns - OFFERS_AT, VIEW_PLAIN, "");
    if (state->cell.refusal.code)
        view_text(&tui->view, row, after, tui->view.columns - after - 1, VIEW_WARNING | VIEW_STRONG,
                  state->cell.refusal.why);
    entry_paint(&state->cell.entry, &tui->view, row, OFFERS_AT, PRICE_WIDTH);
}

static void stock_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct stock_state *state = opaque;
    stock_fit(tui, state);
    list_view_fit(&state->list, top, height);
    for (int i = 0; i < list_view_shown(&state->list); i++) {
        bool chosen = state->list.top + i == state->list.chosen;
        paint_stock(tui, stock_at(tui, state->list.top + i), top + i, chosen);
        if (chosen && state->cell.typing)
            paint_typed(tui, state, top + i);
    }
    if (state->list.count == 0)
        view_format(&tui->view, top, 1, VIEW_PLAIN,
                    "Nothing can be bought yet. %s is the workshop, where stock is added.",
                    tui_key(tui, ACTION_SHOP).at);
}

static enum reaction stock_act(struct tui *tui, void *opaque, enum action action)
{
    struct stock_state *state = opaque;
    stock_fit(tui, state);
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    if (action != ACTION_ENTER || state->list.chosen < 0)
        return REACT_PASS;
    const struct target target = {ENTITY_stock, stock_at(tui, state->list.chosen)->key, NULL, NULL};
    tui_open(tui, &screen_prices, &target);
    return REACT_TAKEN;
}

/* ---- a price ---- */

/* The offer that a price is typed for: its only one, 0 for its first; false where it has several.
 */
static bool only_offer(const struct model *model, int64_t stock, int64_t *ret_offer)
{
    int64_t only = 0;
    for (size_t i = 0; i < model->offers.count; i++) {
        if (model->offers.at[i].stock != stock)
            continue;
        if (only)
            return false;
        only = model->offers.at[i].key;
    }
    *ret_offer = only;
    return true;
}

static void take_price(struct tui *tui, struct stock_state *state)
{
    char today[CLOCK_TEXT];
    struct desk_price price = {.price = state->cell.entry.text, .dated = clock_today(today)};
    state->cell.typing = false;
    if (state->list.chosen < 0)
        return;
    price.stock = stock_at(tui, state->list.chosen)->key;
    if (!only_offer(tui_model(tui), price.stock, &price.offer))
        return;
    state->cell.typing = desk_set_price(tui->desk, &price, &state->cell.refusal) != FAULT_NONE;
    if (!state->cell.typing)
        list_view_act(&state->list, ACTION_DOWN);
}

static enum reaction stock_key(struct tui *tui, void *opaque, int key)
{
    struct stock_state *state = opaque;
    int64_t offer;
    bool take;
    const struct stock *stock = state->list.chosen >= 0 ? stock_at(tui, state->list.chosen) : NULL;
    bool may_begin = stock && only_offer(tui_model(tui), stock->key, &offer);
    enum reaction reaction = price_cell_key(&state->cell, key, may_begin, &take);
    if (take)
        take_price(tui, state);
    if (reaction == REACT_PASS && stock && !may_begin && key >= '0' && key <= '9') {
        tui_say(tui, "%s comes in several sizes: %s shows them, each with its price", stock->name,
                tui_key(tui, ACTION_ENTER).at);
        return REACT_TAKEN;
    }
    return reaction;
}

/* ---- the list ---- */

static struct list_view *stock_list(void *opaque)
{
    return &((struct stock_state *)opaque)->list;
}

static void stock_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    const struct stock *stock = stock_at(tui, index);
    (void)opaque;
    text_format(out, "%s  ", stock->name);
    put_offers(out, tui_model(tui), stock);
    text_add(out, "  ");
    put_left(out, tui_model(tui), stock);
}

const struct screen screen_stock = {
    .name = "stock and shelf",
    .size = sizeof(struct stock_state),
    .open = stock_open,
    .paint = stock_paint,
    .act = stock_act,
    .typing = price_cell_typing,
    .key = stock_key,
    .paste = price_cell_paste,
    .list = stock_list,
    .line = stock_line,
    .shown =
        SHOWS(ENTER) | SHOWS(LEAVE) | SHOWS(FIND) | SHOWS(SHOP) | SHOWS(ACCOUNT) | SHOWS(LIST_OUT),
    .words = {{ACTION_ENTER, "all of it"}},
    .typing_hint = "Enter takes the price; 9.50/100 is a pack of 100; Esc leaves it as it was",
};
