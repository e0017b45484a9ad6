/* `stuffover stock`: prices, what was paid before, and the shelf. */
#include "cli/commands.h"

#include "base/show.h"
#include "cli/report_put.h"
#include "desk/clock.h"
#include "desk/stock.h"
#include "model/offer.h"
#include "paper/sheets.h"

#include <stdlib.h>

static const struct stock *stock_named(const struct cli *cli)
{
    const struct model *model = desk_model(cli->desk);
    return MODEL_FIND(model, stock, model_key_named(model, ENTITY_stock, cli->operands[0]));
}

/* Counted among those of a stock, from 1; 0 for what is no number. */
static size_t read_number(const char *text)
{
    char *end;
    unsigned long number = strtoul(text, &end, 10);
    return *text >= '0' && *text <= '9' && *end == '\0' ? (size_t)number : 0;
}

static int64_t offer_numbered(const struct model *model, int64_t stock, size_t number)
{
    for (size_t i = 0; i < model->offers.count; i++) {
        if (model->offers.at[i].stock == stock && number-- == 1)
            return model->offers.at[i].key;
    }
    return 0;
}

static int64_t leftover_numbered(const struct model *model, int64_t stock, size_t number)
{
    for (size_t i = 0; i < model->leftovers.count; i++) {
        if (model->leftovers.at[i].stock == stock && number-- == 1)
            return model->leftovers.at[i].key;
    }
    return 0;
}

/* ---- as JSON ---- */

static void put_shelf_length(struct json *json, const struct model *model, const char *key,
                             int64_t length)
{
    enum units units = model->workshop.units == UNITS_WORD_MM ? UNITS_MM : UNITS_INCH;
    json_put_key(json, key);
    json_put_quantity(json, QUANTITY_LENGTH, units, length);
}

static void put_price(struct json *json, const struct model *model, const char *key, int64_t money)
{
    json_put_key(json, key);
    json_put_money(json, model_currency(model), money);
}

static void put_offers(struct json *json, const struct model *model, int64_t stock)
{
    put_array(json, "offers");
    for (size_t i = 0; i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];
        if (offer->stock != stock)
            continue;
        json_put_object(json, JSON_LINE);
        put_shelf_length(json, model, "length", offer->length);
        put_shelf_length(json, model, "width", offer->width);
        put_whole(json, "pack", offer->pack);
        put_price(json, model, "price", offer->price);
        put_text(json, "taxed", words_taxed.at[offer->taxed].name);
        json_put_key(json, "tax");
        json_put_quantity(json, QUANTITY_RATIO, UNITS_MM, offer_tax(model, offer));
        put_text(json, "supplier", offer_supplier(model, offer));
        put_text(json, "dated", offer->dated);
        json_put_close(json);
    }
    json_put_close(json);
}

static void put_history(struct json *json, const struct model *model, int64_t stock)
{
    put_array(json, "history");
    for (size_t i = 0; i < model->past_prices.count; i++) {
        const struct past_price *past = &model->past_prices.at[i];
        if (past->stock != stock)
            continue;
        json_put_object(json, JSON_LINE);
        put_shelf_length(json, model, "length", past->length);
        put_shelf_length(json, model, "width", past->width);
        put_whole(json, "pack", past->pack);
        put_price(json, model, "price", past->price);
        put_text(json, "supplier", past->supplier);
        put_text(json, "dated", past->dated);
        json_put_close(json);
    }
    json_put_close(json);
}

static void put_shelf(struct json *json, const struct model *model, int64_t stock)
{
    put_array(json, "shelf");
    for (size_t i = 0; i < model->leftovers.count; i++) {
        const struct leftover *left = &model->leftovers.at[i];
        if (left->stock != stock)
            continue;
        json_put_object(json, JSON_LINE);
        put_shelf_length(json, model, "length", left->length);
        put_shelf_length(json, model, "width", left->width);
        put_whole(json, "count", left->count);
        put_text(json, "place", left->place);
        put_text(json, "from_build", left->from_build);
        put_text(json, "kept_for", left->kept_for);
        put_price(json, model, "value", leftover_value(model, left));
        json_put_close(json);
    }
    json_put_close(json);
}

static void put_paid(struct json *json, const struct model *model, const struct paid_before *paid,
                     size_t count)
{
    put_array(json, "paid");
    for (size_t i = 0; i < count; i++) {
        json_put_object(json, JSON_LINE);
        put_text(json, "dated", paid[i].dated);
        put_text(json, "what", paid[i].what);
        put_price(json, model, "amount", paid[i].amount);
        put_whole(json, "count", paid[i].count);
        put_text(json, "supplier", paid[i].supplier);
        put_text(json, "build", paid[i].build);
        json_put_close(json);
    }
    json_put_close(json);
}

static void put_stock(struct json *json, const struct model *model, const struct stock *stock)
{
    put_text(json, "name", stock->name);
    put_text(json, "kind", words_stock.at[stock->kind].name);
    put_text(json, "lot", stock->lot);
    put_text(json, "supplier", stock->supplier);
    put_offers(json, model, stock->key);
    put_history(json, model, stock->key);
    put_shelf(json, model, stock->key);
}

/* ---- views ---- */

static void show_all(struct cli *cli)
{
    const struct model *model = desk_model(cli->desk);
    struct json json;
    if (!cli->json) {
        sheet_stocks(&cli->out, model);
        sheet_shelf(&cli->out, model);
        return;
    }
    report_open(&json, &cli->out);
    put_array(&json, "stocks");
    for (size_t i = 0; i < model->stocks.count; i++) {
        json_put_object(&json, JSON_LINES);
        put_stock(&json, model, &model->stocks.at[i]);
        json_put_close(&json);
    }
    json_put_close(&json);
    report_close(&json);
}

/* How a price is entered, where there is none. */
static void tell_missing(struct cli *cli, const struct stock *stock)
{
    const struct model *model = desk_model(cli->desk);
    size_t number = 0;
    for (size_t i = 0; i < model->offers.count; i++) {
        if (model->offers.at[i].stock != stock->key)
            continue;
        number++;
        if (model->offers.at[i].price)
            continue;
        text_format(&cli->out, "  no price for %zu: stuffover stock \"", number);
        show_text(&cli->out, stock->name);
        text_format(&cli->out, "\" %zu PRICE\n", number);
    }
    if (number)
        return;
    text_add(&cli->out, "\n  nobody has it yet: stuffover stock \"");
    show_text(&cli->out, stock->name);
    text_add(&cli->out, "\" 1 PRICE\n");
}

static void show_paid(struct cli *cli, const struct stock *stock, const struct paid_before *paid,
                      size_t count)
{
    const struct model *model = desk_model(cli->desk);
    struct json json;
    if (!cli->json) {
        sheet_stock(&cli->out, model, stock, paid, count);
        tell_missing(cli, stock);
        return;
    }
    report_open(&json, &cli->out);
    put_stock(&json, model, stock);
    put_paid(&json, model, paid, count);
    report_close(&json);
}

static enum fault show_one(struct cli *cli, const struct stock *stock, struct fault_note *note)
{
    const struct paid_before *paid = NULL;
    size_t count = 0;
    struct arena arena;
    arena_init(&arena);
    enum fault fault = desk_paid_before(cli->desk, stock->key, &arena, &paid, &count, note);
    if (!fault)
        show_paid(cli, stock, paid, count);
    arena_release(&arena);
    return fault;
}

/* ---- changes ---- */

/* The first price of a stock makes its first offer. */
static enum fault set_price(struct cli *cli, const struct stock *stock, struct fault_note *note)
{
    char today[CLOCK_TEXT];
    const struct model *model = desk_model(cli->desk);
    size_t number = read_number(cli->operands[1]);
    const struct desk_price price = {.offer = offer_numbered(model, stock->key, number),
                                     .price = cli->operands[2],
                                     .dated = cli->date ? cli->date : clock_today(today),
                                     .supplier = cli->supplier,
                                     .stock = stock->key};
    if (!price.offer && (number != 1 || offer_numbered(model, stock->key, 1)))
        return fault_say(note, FAULT_UNKNOWN, "%s has no offer %s", stock->name, cli->operands[1]);
    return desk_set_price(cli->desk, &price, note);
}

/* Counts pieces of the shelf, or keeps them for a build. */
static enum fault change_left(struct cli *cli, const struct stock *stock, struct fault_note *note)
{
    int64_t left = leftover_numbered(desk_model(cli->desk), stock->key, read_number(cli->left));
    if (!left)
        return fault_say(note, FAULT_UNKNOWN, "of %s there is no %s on the shelf", stock->name,
                         cli->left);
    if (!cli->build && !cli->counted)
        return fault_say(note, FAULT_USAGE, "--left needs --count or --build");
    int64_t build;
    enum fault fault =
        cli->build && *cli->build ? command_build_key(cli, cli->build, &build, note) : FAULT_NONE;
    if (!fault && cli->counted)
        fault = desk_set(cli->desk, ENTITY_leftover, left, "count", cli->counted, note);
    if (!fault && cli->build)
        fault = desk_set(cli->desk, ENTITY_leftover, left, "kept_for", cli->build, note);
    return fault;
}

static enum fault change_stock(struct cli *cli, const struct stock *stock, struct fault_note *note)
{
    if (cli->count == 2)
        return fault_say(note, FAULT_USAGE, "an offer's number wants a price behind it");
    if (cli->count == 3 && cli->left)
        return fault_say(note, FAULT_USAGE, "a price is an offer's, --left the shelf's");
    if (cli->left)
        return change_left(cli, stock, note);
    return cli->count == 3 ? set_price(cli, stock, note) : FAULT_NONE;
}

enum fault command_stock(struct cli *cli, struct fault_note *note)
{
    if (cli->count == 0) {
        show_all(cli);
        return FAULT_NONE;
    }
    const struct stock *stock = stock_named(cli);
    if (!stock)
        return fault_say(note, FAULT_UNKNOWN, "there is no stock \"%s\"", cli->operands[0]);
    enum fault fault = change_stock(cli, stock, note);
    /* A change puts another model in force. */
    return fault ? fault : show_one(cli, stock_named(cli), note);
}
