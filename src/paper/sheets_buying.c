/* What is to be bought, by aisle: with its prices, and without money. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/print.h"
#include "paper/table.h"
#include "plan/wood.h"

#include <assert.h>
#include <stdio.h>

/* ---- one line ---- */

/* The usual size that stands in for what nobody offers yet; NULL for what is not cut. */
static const struct cutting *usual_size(const struct plan *plan, const struct purchase *purchase)
{
    for (size_t i = 0; i < plan->cuttings.count && !purchase->offer; i++) {
        const struct cutting *cutting = &plan->cuttings.at[i];
        if (cutting->stock == purchase->stock && cutting->source->origin == SIZE_TO_BUY &&
            !cutting->source->offer && cutting->length)
            return cutting;
    }
    return NULL;
}

static void add_cut_size(struct text *out, const struct plan *plan, int64_t packs,
                         const struct cutting *size)
{
    text_format(out, "%lld of %s", (long long)packs, print_length(plan, size->length).at);
    if (size->width)
        text_format(out, " x %s", print_length(plan, size->width).at);
}

/* "2 x 50" of packs, "2" of single ones. */
static void add_packs(struct text *out, const struct purchase *purchase, const struct offer *offer)
{
    text_format(out, "%lld", (long long)purchase->packs);
    if (offer && offer->pack > 1)
        text_format(out, " x %lld", (long long)offer->pack);
}

void sheet_purchase_size(struct text *out, const struct plan *plan, const struct purchase *purchase)
{
    const struct offer *offer = MODEL_FIND(plan->facts, offer, purchase->offer);
    const struct cutting *usual = usual_size(plan, purchase);
    if (!plan_is_bought(purchase)) {
        text_add(out, "none");
    } else if (purchase->length) {
        text_add(out, print_roll(plan, purchase->length).at);
    } else if (usual && purchase->measure == QUANTITY_COUNT) {
        add_cut_size(out, plan, purchase->packs, usual);
    } else if (offer && offer->width) {
        add_packs(out, purchase, offer);
        text_format(out, " of %s x %s", print_length(plan, offer->length).at,
                    print_length(plan, offer->width).at);
    } else if (offer && offer->length) {
        add_packs(out, purchase, offer);
        text_format(out, " of %s",
                    purchase->measure == QUANTITY_LENGTH
                        ? print_sold(plan, purchase->stock, QUANTITY_LENGTH, offer->length).at
                        : print_length(plan, offer->length).at);
    } else {
        add_packs(out, purchase, offer);
    }
}

struct printed sheet_purchase_amount(const struct plan *plan, const struct purchase *purchase,
                                     int64_t amount)
{
    return print_sold(plan, purchase->stock, purchase->measure, amount);
}

struct printed sheet_bought(const struct plan *plan, bool by_length, int64_t bought, int64_t wanted)
{
    struct printed printed = {""};

    assert(bought >= 0 && wanted >= 0);
    if (bought > 0 && bought >= wanted)
        snprintf(printed.at, sizeof printed.at, "bought");
    else if (bought > 0 && by_length)
        snprintf(printed.at, sizeof printed.at, "%.20s bought", print_roll(plan, bought).at);
    else if (bought > 0)
        snprintf(printed.at, sizeof printed.at, "%lld bought", (long long)bought);
    return printed;
}

struct printed sheet_purchase_bought(const struct plan *plan, const struct purchase *purchase)
{
    bool by_length = purchase->length > 0;

    return sheet_bought(plan, by_length, plan_cost_line(plan, purchase)->bought,
                        by_length ? purchase->length : purchase->packs);
}

const char *sheet_purchase_name(const struct plan *plan, const struct purchase *purchase)
{
    return purchase->stock ? plan_stock_name(plan, purchase->stock) : purchase->what;
}

void sheet_purchase_words(struct text *out, const struct plan *plan,
                          const struct purchase *purchase)
{
    char name[SHEET_PURCHASE_NAME];
    struct text size;
    text_init(&size);
    sheet_purchase_size(&size, plan, purchase);
    text_format(out, "%s, %.36s", show_into(name, sizeof name, sheet_purchase_name(plan, purchase)),
                text_string(&size));
    text_release(&size);
}

/* "26.7 board feet" of the sticks of a line, as lumber yards count; "" for anything else. */
static struct printed board_feet(const struct plan *plan, const struct purchase *purchase)
{
    const struct stock *stock = MODEL_FIND(plan->facts, stock, purchase->stock);
    const struct offer *offer = MODEL_FIND(plan->facts, offer, purchase->offer);
    struct printed printed = {""};
    int64_t feet =
        stock && stock->kind == STOCK_STICK && offer
            ? stick_board_feet(stock->name, offer->length * offer->pack * purchase->packs)
            : 0;
    int64_t tenths = whole_divide_even(feet, 100);
    if (tenths)
        snprintf(printed.at, sizeof printed.at, "%lld.%lld board feet", (long long)(tenths / 10),
                 (long long)(tenths % 10));
    return printed;
}

static void name_cells(struct table *table, const struct plan *plan,
                       const struct purchase *purchase)
{
    struct text size;
    text_init(&size);
    sheet_purchase_size(&size, plan, purchase);
    table_cell(table, "%s", sheet_purchase_name(plan, purchase));
    table_cell(table, "%s", text_string(&size));
    text_release(&size);
}

static void purchase_row(struct table *table, const struct plan *plan,
                         const struct purchase *purchase)
{
    name_cells(table, plan, purchase);
    table_cell(table, "%s",
               purchase->priced           ? print_money(plan, purchase->till).at
               : plan_is_bought(purchase) ? "no price"
                                          : "");
    table_cell(table, "need %s", sheet_purchase_amount(plan, purchase, purchase->need).at);
    table_cell(table, purchase->shelf ? "%s on the shelf" : "%s",
               purchase->shelf ? sheet_purchase_amount(plan, purchase, purchase->shelf).at
                               : board_feet(plan, purchase).at);
    table_cell(table, "%s", sheet_purchase_bought(plan, purchase).at);
}

static void need_row(struct table *table, const struct plan *plan, const struct purchase *purchase)
{
    name_cells(table, plan, purchase);
    table_cell(table, "need %s", sheet_purchase_amount(plan, purchase, purchase->need).at);
}

/* A table for each aisle in which something is bought, under its name. */
static void by_aisle(struct text *out, const struct plan *plan, const char *shape,
                     void (*add_row)(struct table *, const struct plan *, const struct purchase *))
{
    for (int aisle = 0; aisle < AISLE_COUNT; aisle++) {
        struct table table;
        table_begin(&table, shape);
        for (size_t i = 0; i < plan->purchases.count; i++) {
            if (plan->purchases.at[i].aisle == aisle)
                add_row(&table, plan, &plan->purchases.at[i]);
        }
        if (table.count)
            text_format(out, " %s\n", words_aisle.at[aisle].help);
        table_end(&table, out);
    }
}

void sheet_total(struct text *out, const struct plan *plan)
{
    text_format(out, "total %s", print_money(plan, plan->cost.estimate).at);
    if (plan->cost.tax)
        text_format(out, ", of it tax %s", print_money(plan, plan->cost.tax).at);
    if (plan_unpriced(plan))
        text_format(out, ", without %zu that %s no price", plan_unpriced(plan),
                    plan_unpriced(plan) == 1 ? "has" : "have");
}

void sheet_buying(struct text *out, const struct plan *plan)
{
    if (plan->purchases.count == 0)
        return;
    text_add(out, "\nSHOPPING LIST\n");
    by_aisle(out, plan, "llrlll", purchase_row);
    sheet_ways_home(out, plan);
    text_add(out, "  ");
    sheet_total(out, plan);
    text_format(out, "; used up of it%s %s\n", plan->cost.tax ? " without tax" : "",
                print_money(plan, plan->cost.used).at);
}

void sheet_needs(struct text *out, const struct plan *plan)
{
    if (plan->purchases.count > 0)
        text_add(out, "\nMATERIALS\n");
    by_aisle(out, plan, "lll", need_row);
    sheet_ways_home(out, plan);
}
