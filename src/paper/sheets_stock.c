/* Stock with its prices, and the shelf. Lengths are in the workshop's unit. */
#include "paper/sheets.h"

#include "base/show.h"
#include "model/offer.h"
#include "paper/print.h"
#include "paper/table.h"

#include <string.h>

/* In the unit of the workshop. */
static struct printed quantity_in(const struct model *model, enum quantity quantity, int64_t value)
{
    struct printed printed;
    enum units units = model->workshop.units == UNITS_WORD_MM ? UNITS_MM : UNITS_INCH;
    quantity_print_unit(printed.at, quantity, units, value);
    return printed;
}

static void size_words(struct text *out, const struct model *model, int64_t length, int64_t width)
{
    if (length)
        text_add(out, quantity_in(model, QUANTITY_LENGTH, length).at);
    if (length && width)
        text_add(out, " x ");
    if (width)
        text_add(out, quantity_in(model, QUANTITY_LENGTH, width).at);
}

void sheet_offer_words(struct text *out, const struct model *model, const struct offer *offer)
{
    size_t before = out->length;
    size_words(out, model, offer->length, offer->width);
    if (offer->volume)
        text_format(out, "%s%s", out->length > before ? ", " : "",
                    quantity_in(model, QUANTITY_VOLUME, offer->volume).at);
    if (offer->pack > 1 || out->length == before)
        text_format(out, "%s%lld in a pack", out->length > before ? ", " : "",
                    (long long)offer->pack);
}

/* ---- the list ---- */

static int64_t on_shelf(const struct model *model, int64_t stock)
{
    int64_t count = 0;
    for (size_t i = 0; i < model->leftovers.count; i++)
        count += model->leftovers.at[i].stock == stock ? model->leftovers.at[i].count : 0;
    return count;
}

/* A row for an offer, or for a stock that nobody offers (NULL); the first one names the stock. */
static void stock_row(struct table *table, const struct model *model, const struct stock *stock,
                      const struct offer *offer, bool first)
{
    struct text words;
    text_init(&words);
    if (offer)
        sheet_offer_words(&words, model, offer);
    table_cell(table, "%s", first ? stock->name : "");
    table_cell(table, "%s", text_string(&words));
    table_cell(table, "%s",
               offer && offer->price ? print_money_in(model, offer->price).at : "no price");
    table_cell(table, "%s", offer ? offer->dated : "");
    table_count(table, first ? on_shelf(model, stock->key) : 0, "left");
    text_release(&words);
}

static void stock_rows(struct table *table, const struct model *model, const struct stock *stock)
{
    bool first = true;
    for (size_t i = 0; i < model->offers.count; i++) {
        if (model->offers.at[i].stock != stock->key)
            continue;
        stock_row(table, model, stock, &model->offers.at[i], first);
        first = false;
    }
    if (first)
        stock_row(table, model, stock, NULL, true);
}

void sheet_stocks(struct text *out, const struct model *model)
{
    text_add(out, "\nSTOCK\n");
    for (int kind = 0; kind < STOCK_COUNT; kind++) {
        struct table table;
        table_begin(&table, "llrll");
        for (size_t i = 0; i < model->stocks.count; i++) {
            if (model->stocks.at[i].kind == kind)
                stock_rows(&table, model, &model->stocks.at[i]);
        }
        if (table.count)
            text_format(out, " %s\n", words_stock.at[kind].help);
        table_end(&table, out);
    }
}

/* ---- the shelf ---- */

static void left_row(struct table *table, const struct model *model, const struct leftover *left,
                     size_t number)
{
    struct text size;
    text_init(&size);
    size_words(&size, model, left->length, left->width);
    table_cell(table, "%zu", number);
    table_cell(table, "%lld", (long long)left->count);
    table_cell(table, "%s", text_string(&size));
    table_cell(table, "%s", left->place);
    table_cell(table, "%s%s", *left->kept_for ? "kept for " : "", left->kept_for);
    table_cell(table, "%s%s", *left->from_build ? "from " : "", left->from_build);
    table_cell(table, "%s", print_money_in(model, leftover_value(model, left)).at);
    text_release(&size);
}

/* The pieces of a stock, numbered by their order among its own; entries of which nothing is left
 * keep their number. */
static int64_t shelf_of_stock(struct text *out, const struct model *model,
                              const struct stock *stock)
{
    struct table table;
    int64_t value = 0;
    size_t number = 0;
    table_begin(&table, "rrllllr");
    for (size_t i = 0; i < model->leftovers.count; i++) {
        const struct leftover *left = &model->leftovers.at[i];
        if (left->stock != stock->key)
            continue;
        number++;
        if (left->count == 0)
            continue;
        left_row(&table, model, left, number);
        value += leftover_value(model, left);
    }
    if (table.count) {
        text_add(out, " ");
        show_text(out, stock->name);
        if (*stock->lot) {
            text_add(out, ", lot ");
            show_text(out, stock->lot);
        }
        text_add(out, "\n");
    }
    table_end(&table, out);
    return value;
}

void sheet_shelf(struct text *out, const struct model *model)
{
    int64_t value = 0;
    text_add(out, "\nON THE SHELF\n");
    for (int kind = 0; kind < STOCK_COUNT; kind++) {
        for (size_t i = 0; i < model->stocks.count; i++) {
            if (model->stocks.at[i].kind == kind)
                value += shelf_of_stock(out, model, &model->stocks.at[i]);
        }
    }
    text_format(out, "  worth %s without tax, by what is cheapest to buy\n",
                print_money_in(model, value).at);
}

/* ---- one ---- */

void sheet_offer_tax(struct text *out, const struct offer *offer)
{
    char rate[QUANTITY_TEXT];
    if (offer->taxed == TAXED_ADDED && offer->tax == 0)
        return;
    if (offer->taxed == TAXED_FREE || offer->tax == 0)
        text_add(out, offer->taxed == TAXED_FREE ? "no tax" : "with tax");
    else
        text_format(out, "%s %s tax", offer->taxed == TAXED_ADDED ? "and" : "with",
                    quantity_print_unit(rate, QUANTITY_RATIO, UNITS_MM, offer->tax));
}

static void one_offers(struct text *out, const struct model *model, const struct stock *stock)
{
    struct table table;
    size_t number = 0;
    table_begin(&table, "rlrllll");
    for (size_t i = 0; i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];
        struct text words;
        if (offer->stock != stock->key)
            continue;
        text_init(&words);
        sheet_offer_words(&words, model, offer);
        table_cell(&table, "%zu", ++number);
        table_cell(&table, "%s", text_string(&words));
        table_cell(&table, "%s",
                   offer->price ? print_money_in(model, offer->price).at : "no price");
        table_cell(&table, "%s", offer->dated);
        table_cell(&table, "%s", offer_supplier(model, offer));
        text_clear(&words);
        sheet_offer_tax(&words, offer);
        table_cell(&table, "%s", text_string(&words));
        table_cell(&table, "%s", offer->note);
        text_release(&words);
    }
    if (number)
        text_add(out, "\nPRICES\n");
    table_end(&table, out);
}

/* The newest first. */
static void past_rows(struct text *out, const struct model *model, const struct stock *stock)
{
    struct table table;
    bool any = false;
    table_begin(&table, "lrll");
    for (size_t i = model->past_prices.count; i-- > 0;) {
        const struct past_price *past = &model->past_prices.at[i];
        const struct offer offer = {.length = past->length,
                                    .width = past->width,
                                    .pack = past->pack,
                                    .volume = past->volume};
        struct text words;
        if (past->stock != stock->key)
            continue;
        text_init(&words);
        sheet_offer_words(&words, model, &offer);
        table_cell(&table, "%s", text_string(&words));
        table_cell(&table, "%s", print_money_in(model, past->price).at);
        table_cell(&table, "%s", past->dated);
        table_cell(&table, "%s", past->supplier);
        text_release(&words);
        any = true;
    }
    if (any)
        text_add(out, "\nPRICES BEFORE\n");
    table_end(&table, out);
}

static void paid_row(struct table *table, const struct model *model, const struct paid_before *paid)
{
    table_cell(table, "%s", paid->dated);
    table_cell(table, "%s", paid->what);
    table_cell(table, "%s", print_money_in(model, paid->amount).at);
    if (paid->count > 0)
        table_cell(table, "%s each",
                   print_money_in(model, whole_divide_even(paid->amount, paid->count)).at);
    else
        table_cell(table, "%s", "");
    table_cell(table, "%s", paid->supplier);
    table_cell(table, "%s", *paid->build ? paid->build : "for the shelf");
}

void sheet_stock_before(struct text *out, const struct model *model, const struct stock *stock,
                        const struct paid_before *paid, size_t count)
{
    struct table table;
    past_rows(out, model, stock);
    if (on_shelf(model, stock->key)) {
        text_add(out, "\nON THE SHELF\n");
        shelf_of_stock(out, model, stock);
    }
    if (count)
        text_add(out, "\nPAID BEFORE (tax included)\n");
    table_begin(&table, "llrrll");
    for (size_t i = 0; i < count; i++)
        paid_row(&table, model, &paid[i]);
    table_end(&table, out);
}

void sheet_stock(struct text *out, const struct model *model, const struct stock *stock,
                 const struct paid_before *paid, size_t count)
{
    text_add(out, "\n");
    show_text(out, stock->name);
    text_format(out, ", %s\n", words_stock.at[stock->kind].help);
    one_offers(out, model, stock);
    sheet_stock_before(out, model, stock, paid, count);
}
