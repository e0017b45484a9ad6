/*
 * The shopping list, for the trip: Space says that what is open of a line was paid at its price and
 * goes on, digits begin what was really paid. Either writes a spend down that leaves nothing of the
 * line to pay; the money screen shows it, and Space takes it back.
 */
#include "desk/clock.h"
#include "desk/spend.h"
#include "paper/print.h"
#include "paper/sheets.h"
#include "tui/list.h"
#include "tui/price_cell.h"
#include "tui/screen.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>

struct buying_state {
    struct price_cell cell; /* first: price_cell.h */
    struct list_view list;
};

/* ---- the lines ---- */

/* By aisle, as the shop has them; NULL past the last. */
static const struct purchase *line_at(const struct plan *plan, int index)
{
    for (int aisle = 0; aisle < AISLE_COUNT; aisle++) {
        for (size_t i = 0; i < plan->purchases.count; i++) {
            if (plan->purchases.at[i].aisle == aisle && index-- == 0)
                return &plan->purchases.at[i];
        }
    }
    return NULL;
}

/* "2x3 stud, 10 of 96": what a spend for the line says. */
struct line_words {
    char at[121];
};

static struct line_words words_of(const struct plan *plan, const struct purchase *line)
{
    struct line_words words;
    struct text text;
    text_init(&text);
    sheet_purchase_words(&text, plan, line);
    snprintf(words.at, sizeof words.at, "%s", text_string(&text));
    text_release(&text);
    return words;
}

static bool says(const struct plan *plan, const struct spend *spend, const struct purchase *line)
{
    struct line_words words = words_of(plan, line);
    return spend->stock == line->stock && strcmp(spend->what, words.at) == 0;
}

/* The last spend that was written down for just this line, where it is paid; NULL for none. */
static const struct spend *spend_for(const struct plan *plan, const struct purchase *line)
{
    const struct model *model = plan->facts;
    for (size_t i = plan_cost_line(plan, line)->settled ? model->spends.count : 0; i > 0; i--) {
        if (says(plan, &model->spends.at[i - 1], line))
            return &model->spends.at[i - 1];
    }
    return NULL;
}

/* "[x]" paid, "[-]" a part of it, or for another list than this. */
static const char *mark_of(const struct plan *plan, const struct purchase *line)
{
    if (spend_for(plan, line))
        return "[x]";
    return plan_cost_line(plan, line)->entered ? "[-]" : "[ ]";
}

static bool is_on_list(const struct plan *plan, const struct spend *spend)
{
    for (size_t i = 0; i < plan->purchases.count; i++) {
        if (says(plan, spend, &plan->purchases.at[i]))
            return true;
    }
    return false;
}

/* A spend for the stock of a line that no line of this plan says any more: the list has changed
 * since it was paid. */
static const struct spend *paid_before(const struct plan *plan, const struct purchase *line)
{
    const struct model *model = plan->facts;
    for (size_t i = 0; line->stock && i < model->spends.count; i++) {
        const struct spend *spend = &model->spends.at[i];
        if (spend->stock == line->stock && !is_on_list(plan, spend))
            return spend;
    }
    return NULL;
}

/* ---- painting ---- */

/* Where the columns begin; figures are MONEY_WIDTH wide and end in one column. */
#define MONEY_WIDTH 11
#define AISLE_AT 80

struct columns {
    int size, price, paid;
};

static struct columns columns_for(const struct tui *tui)
{
    return tui->view.columns < 80 ? (struct columns){24, 37, 48} : (struct columns){32, 50, 63};
}

static void paint_line(struct tui *tui, struct buying_state *state, int index, int row)
{
    const struct plan *plan = tui_plan(tui);
    const struct purchase *line = line_at(plan, index);
    bool chosen = index == state->list.chosen;
    int style = chosen ? VIEW_CHOSEN : VIEW_PLAIN;
    struct columns at = columns_for(tui);
    struct text size;
    assert(line); /* of the list, which has the plan's lines */
    const struct cost_line *cost = plan_cost_line(plan, line);
    text_init(&size);
    sheet_purchase_size(&size, plan, line);
    view_row(&tui->view, row, 0, tui->view.columns, style, "");
    view_text(&tui->view, row, 1, 3, style, mark_of(plan, line));
    view_text(&tui->view, row, 5, at.size - 6, style | VIEW_STRONG,
              sheet_purchase_name(plan, line));
    view_text(&tui->view, row, at.size, at.price - at.size, style, text_string(&size));
    view_right(&tui->view, row, at.price, MONEY_WIDTH, style,
               line->priced           ? print_money(plan, line->till).at
               : plan_is_bought(line) ? "no price"
                                      : "on shelf");
    if (chosen && state->cell.typing)
        entry_paint(&state->cell.entry, &tui->view, row, at.paid + 1, MONEY_WIDTH);
    else if (cost->entered)
        view_right(&tui->view, row, at.paid, MONEY_WIDTH, style, print_money(plan, cost->paid).at);
    else
        price_cell_paint_bought(&tui->view, row, at.paid, MONEY_WIDTH, style,
                                sheet_purchase_bought(plan, line).at);
    if (chosen && !state->cell.typing)
        view_cursor(&tui->view, row, 1);
    if (tui->view.columns >= 100)
        view_text(&tui->view, row, AISLE_AT, tui->view.columns - AISLE_AT - 1, style,
                  words_aisle.at[line->aisle].help);
    text_release(&size);
}

static void paint_foot(struct tui *tui, const struct buying_state *state, int row)
{
    const struct plan *plan = tui_plan(tui);
    const struct purchase *line = line_at(plan, state->list.chosen);
    struct text foot;
    assert(line); /* as it is painted, one is chosen */
    const struct spend *before = paid_before(plan, line);
    const struct cost_line *cost = plan_cost_line(plan, line);
    text_init(&foot);
    text_format(&foot, "%s: need %s", words_aisle.at[line->aisle].help,
                sheet_purchase_amount(plan, line, line->need).at);
    if (line->shelf)
        text_format(&foot, ", %s on the shelf", sheet_purchase_amount(plan, line, line->shelf).at);
    if (cost->bought)
        text_format(&foot, ", %s", sheet_purchase_bought(plan, line).at);
    if (before)
        text_format(&foot, "; paid before: %s for %s", print_money(plan, before->amount).at,
                    before->what);
    if (cost->entered && cost->rest)
        text_format(&foot, "; %s still to pay", print_money(plan, cost->rest).at);
    view_level(&tui->view, row, 0, tui->view.columns);
    if (!price_cell_paint_refusal(&state->cell, &tui->view, row + 1))
        view_text(&tui->view, row + 1, 1, tui->view.columns - 2, VIEW_PLAIN, text_string(&foot));
    text_clear(&foot);
    sheet_total(&foot, plan);
    text_format(&foot, "; paid so far %s", print_money(plan, plan->cost.spent).at);
    view_text(&tui->view, row + 2, 1, tui->view.columns - 2, VIEW_PLAIN, text_string(&foot));
    text_release(&foot);
}

static void buying_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct buying_state *state = opaque;
    struct columns at = columns_for(tui);
    list_view_resize(&state->list, (int)tui_plan(tui)->purchases.count);
    if (state->list.count == 0) {
        view_text(&tui->view, top, 1, tui->view.columns - 2, VIEW_PLAIN,
                  "Nothing has to be bought yet. Esc goes back.");
        return;
    }
    list_view_fit(&state->list, top + 1, height - 4);
    view_text(&tui->view, top, 5, 40, VIEW_FAINT, "SHOPPING LIST");
    view_right(&tui->view, top, at.price, MONEY_WIDTH, VIEW_FAINT, "price");
    view_right(&tui->view, top, at.paid, MONEY_WIDTH, VIEW_FAINT, "paid");
    for (int i = 0; i < list_view_shown(&state->list); i++)
        paint_line(tui, state, state->list.top + i, top + 1 + i);
    paint_foot(tui, state, top + height - 3);
}

/* ---- paying ---- */

struct payment {
    int64_t spend; /* that is changed; 0 for a new one */
    const struct purchase *line;
    const char *what;
    int64_t amount;
    int64_t count;     /* of packs; 0: it settles the line */
    const char *typed; /* the amount as typed; NULL: as it stands */
};

static enum fault read_into(struct model *draft, struct spend *spend, const char *name,
                            const char *text, struct fault_note *note)
{
    return field_read(field_named(entity_of(ENTITY_spend), name), draft, spend, text, note);
}

static enum fault change_payment(struct model *draft, void *context, struct fault_note *note)
{
    const struct payment *payment = context;
    char today[CLOCK_TEXT];
    struct spend *spend = model_find(draft, ENTITY_spend, payment->spend);
    enum fault fault = FAULT_NONE;
    if (!spend) {
        spend = MODEL_ADD(draft, spend);
        spend->stock = payment->line->stock;
        desk_spend_size(spend, draft, payment->line);
        spend->amount = payment->amount;
        spend->count = payment->count;
        spend->settles = payment->count == 0;
        fault = read_into(draft, spend, "dated", clock_today(today), note);
        if (!fault)
            fault = read_into(draft, spend, "what", payment->what, note);
    }
    if (!fault && payment->typed)
        fault = read_into(draft, spend, "amount", payment->typed, note);
    return fault;
}

/* Packs that no spend says it was for. */
static int64_t packs_open(const struct purchase *line, const struct cost_line *cost)
{
    int64_t open = line->packs - cost->packs;
    return line->length || open < 0 ? 0 : open;
}

/* `typed` NULL: at its price. */
static enum fault pay(struct tui *tui, const struct purchase *line, const char *typed,
                      struct fault_note *note)
{
    const struct spend *spend = spend_for(tui_plan(tui), line);
    const struct cost_line *cost = plan_cost_line(tui_plan(tui), line);
    struct line_words words = words_of(tui_plan(tui), line);
    struct payment payment = {.spend = spend ? spend->key : 0,
                              .line = line,
                              .what = words.at,
                              .amount = cost->entered ? cost->rest : line->till,
                              .count = packs_open(line, cost),
                              .typed = typed};
    char label[STORE_LABEL];
    snprintf(label, sizeof label, "paid: %.60s", words.at);
    return desk_edit(tui->desk, label, change_payment, &payment, note);
}

/* Space: what is open was paid at its price, and on to the next line; or not paid after all. What
 * was paid on top of an older list that settled the line only the maker knows. */
static enum reaction toggle(struct tui *tui, struct buying_state *state)
{
    const struct purchase *line = line_at(tui_plan(tui), state->list.chosen);
    struct fault_note note = {0};
    enum fault fault;
    assert(line); /* buying_act fits the list to the plan first */
    const struct spend *spend = spend_for(tui_plan(tui), line);
    if (!spend && (!line->priced || plan_cost_line(tui_plan(tui), line)->settled)) {
        price_cell_begin(&state->cell);
        return REACT_TAKEN;
    }
    fault = spend ? desk_delete(tui->desk, ENTITY_spend, spend->key, &note)
                  : pay(tui, line, NULL, &note);
    if (fault)
        tui_warn(tui, &note);
    else if (spend)
        tui_say(tui, "not paid after all; %s brings it back", tui_key(tui, ACTION_UNDO).at);
    else
        list_view_act(&state->list, ACTION_DOWN);
    return REACT_TAKEN;
}

static enum reaction buying_act(struct tui *tui, void *opaque, enum action action)
{
    struct buying_state *state = opaque;
    list_view_resize(&state->list, (int)tui_plan(tui)->purchases.count);
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    if (state->list.chosen < 0)
        return REACT_PASS;
    if (action == ACTION_TICK)
        return toggle(tui, state);
    if (action == ACTION_ENTER) {
        price_cell_begin(&state->cell);
        return REACT_TAKEN;
    }
    return REACT_PASS;
}

static enum reaction take_price(struct tui *tui, struct buying_state *state)
{
    const struct purchase *line = line_at(tui_plan(tui), state->list.chosen);
    if (!line || !pay(tui, line, state->cell.entry.text, &state->cell.refusal)) {
        state->cell.typing = false;
        list_view_act(&state->list, ACTION_DOWN);
    }
    return REACT_TAKEN;
}

static enum reaction buying_key(struct tui *tui, void *opaque, int key)
{
    struct buying_state *state = opaque;
    bool take;
    enum reaction reaction = price_cell_key(&state->cell, key, state->list.chosen >= 0, &take);
    return take ? take_price(tui, state) : reaction;
}

static struct list_view *buying_list(void *opaque)
{
    return &((struct buying_state *)opaque)->list;
}

static void buying_line(struct tui *tui, void *opaque, int index, struct text *out)
{
    const struct plan *plan = tui_plan(tui);
    const struct purchase *line = line_at(plan, index);
    (void)opaque;
    assert(line); /* `index` is of the list, which has the plan's lines */
    const struct cost_line *cost = plan_cost_line(plan, line);
    text_format(out, "%s %s", mark_of(plan, line), words_of(plan, line).at);
    if (line->priced)
        text_format(out, "  %s", print_money(plan, line->till).at);
    if (cost->entered)
        text_format(out, "  paid %s", print_money(plan, cost->paid).at);
}

const struct screen screen_buying = {
    .name = "buying",
    .size = sizeof(struct buying_state),
    .place = true,
    .paint = buying_paint,
    .act = buying_act,
    .typing = price_cell_typing,
    .key = buying_key,
    .paste = price_cell_paste,
    .list = buying_list,
    .line = buying_line,
    .shown = SHOWS(ENTER) | SHOWS(TICK) | SHOWS(LEAVE) | SHOWS(UNDO) | SHOWS(MONEY) |
             SHOWS(CUTTING) | SHOWS(STEPS),
    .words = {{ACTION_ENTER, "price paid"}},
    .typing_hint = "Enter takes what was paid, Esc leaves it as it was",
};
