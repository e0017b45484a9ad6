/* What an offer cost before stays, with its day, whichever way its price was changed. */
#include "desk/ledger.h"
#include "desk/stock.h"
#include "exchange/exchange.h"
#include "workshop.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static int begin(void **state)
{
    static const char *const names[] = {"workshop", "banquette", NULL};
    return bench_begin(state, names);
}

/* The first offer with a price and a day. */
static const struct offer *some_offer(const struct bench *bench)
{
    const struct model *model = desk_model(bench->desk);
    for (size_t i = 0; i < model->offers.count; i++) {
        if (model->offers.at[i].price && *model->offers.at[i].dated)
            return &model->offers.at[i];
    }
    fail_msg("the demo has no dated price");
    return NULL;
}

static size_t kept(const struct bench *bench)
{
    return desk_model(bench->desk)->past_prices.count;
}

static const struct past_price *last(const struct bench *bench)
{
    assert_true(kept(bench) > 0);
    return &desk_model(bench->desk)->past_prices.at[kept(bench) - 1];
}

static void a_new_price_keeps_the_old_one_with_its_day(void **state)
{
    struct bench *bench = *state;
    const struct offer offer = *some_offer(bench);
    const struct desk_price price = {.offer = offer.key, .price = "97.31", .dated = "2026-11-30"};
    char dated[12];
    size_t before = kept(bench);
    snprintf(dated, sizeof dated, "%s", offer.dated);
    DONE(desk_set_price(bench->desk, &price, note));
    assert_int_equal(kept(bench), before + 1);
    assert_int_equal(last(bench)->price, offer.price);
    assert_int_equal(last(bench)->stock, offer.stock);
    assert_int_equal(last(bench)->length, offer.length);
    assert_string_equal(last(bench)->dated, dated);
}

static void one_undo_takes_price_and_memory_back(void **state)
{
    struct bench *bench = *state;
    int64_t key = some_offer(bench)->key;
    int64_t cost = some_offer(bench)->price;
    char label[STORE_LABEL];
    DONE(desk_set(bench->desk, ENTITY_offer, key, "price", "97.31", note));
    assert_int_equal(kept(bench), 1);
    DONE(desk_undo(bench->desk, label, note));
    assert_int_equal(kept(bench), 0);
    assert_int_equal(some_offer(bench)->price, cost);
}

static void a_price_set_to_what_it_was_is_no_change(void **state)
{
    struct bench *bench = *state;
    int64_t key = some_offer(bench)->key;
    DONE(desk_set(bench->desk, ENTITY_offer, key, "note", "seen in passing", note));
    assert_int_equal(kept(bench), 0);
    DONE(desk_set(bench->desk, ENTITY_offer, key, "price", "1.00", note));
    DONE(desk_set(bench->desk, ENTITY_offer, key, "price", "2.00", note));
    assert_int_equal(kept(bench), 2);
    DONE(desk_set(bench->desk, ENTITY_offer, key, "price", "1.00", note));
    DONE(desk_set(bench->desk, ENTITY_offer, key, "price", "2.00", note));
    assert_int_equal(kept(bench), 3); /* 1.00 of that day is there already */
}

/* A table of prices, and a workshop's file that brings its offers anew. */
static void tables_and_files_keep_old_prices_too(void **state)
{
    static const char table[] = "stock,length,price,dated\n2x2 stick,96 in,9.99,2026-11-30\n";
    struct bench *bench = *state;
    struct text file;
    size_t changed;
    const char *at;
    text_init(&file);
    DONE(desk_ledger_in(bench->desk, LEDGER_PRICES, table, strlen(table), NULL, NULL, &changed,
                        note));
    assert_int_equal(kept(bench), 1);
    size_t before = kept(bench);
    exchange_shop_out(&file, desk_model(bench->desk));
    at = strstr(text_string(&file), "\"price\": \"9.99\"");
    assert_non_null(at);
    file.at[at - file.at + (ptrdiff_t)strlen("\"price\": \"9.9")] = '8';
    DONE(desk_import(bench->desk, text_string(&file), file.length, NULL, NULL, note));
    assert_int_equal(kept(bench), before + 1);
    assert_int_equal(last(bench)->price, 999);
    text_release(&file);
}

int main(void)
{
#define CASE(name) cmocka_unit_test_setup_teardown(name, begin, bench_end)
    const struct CMUnitTest tests[] = {
        CASE(a_new_price_keeps_the_old_one_with_its_day),
        CASE(one_undo_takes_price_and_memory_back),
        CASE(a_price_set_to_what_it_was_is_no_change),
        CASE(tables_and_files_keep_old_prices_too),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
