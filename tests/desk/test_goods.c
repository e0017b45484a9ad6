/*
 * What was bought and not used as it was meant to be: a layout of other parts cuts it first, and
 * only what is missing beyond it is told to be bought. The sums are made by hand beside each check.
 */
#include "../base/inch.h"
#include "paper/sheets.h"
#include "rails.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

/* Of the only line of the rails. */
static int64_t told_as_bought(const struct rails *rails)
{
    const struct plan *plan = rails_plan(rails);
    const struct purchase *line = NULL;
    for (size_t i = 0; i < plan->purchases.count; i++) {
        if (plan->purchases.at[i].stock != rails->stock)
            continue;
        assert_null(line);
        line = &plan->purchases.at[i];
    }
    assert_non_null(line);
    return plan_cost_line(plan, line)->bought;
}

static const struct plan_job *job_of(const struct rails *rails)
{
    assert_int_equal(rails_plan(rails)->jobs.count, 1);
    return &rails_plan(rails)->jobs.at[0];
}

/* ---- parts that changed ---- */

/* Without the purchase both parts of 70 in would come out of one stick of 144 in for 5.00: with the
 * 1/4 in that squares the end and a cut of 1/8 in they take 140-3/8. */
static void other_parts_are_cut_from_what_was_bought(void **state)
{
    struct rails *rails = *state;
    assert_int_equal(rails_plan(rails)->cost.bought, 800);
    assert_int_equal(told_as_bought(rails), 0);
    tick_until(rails->bench.desk, "buy");
    assert_int_equal(told_as_bought(rails), 2);
    rails_set(rails, "2", "70");
    assert_int_equal(rails_listed(rails, IN(96)), 2);
    assert_int_equal(rails_listed(rails, IN(144)), 0);
    assert_int_equal(rails_plan(rails)->cost.bought, 800);
    assert_int_equal(job_of(rails)->layout->cost, 0);
    assert_false(rails_missing(rails));
}

/* Two of 70 in come out of the sticks at hand. The third is cheapest from one of 96 in for 4.00;
 * bought anew, one of 144 and one of 96 in would be 9.00, beside the 8.00 spent. */
static void only_what_is_missing_is_told_to_be_bought(void **state)
{
    struct rails *rails = *state;
    tick_until(rails->bench.desk, "buy");
    rails_set(rails, "3", "70");
    assert_int_equal(rails_listed(rails, IN(96)), 3);
    assert_int_equal(rails_listed(rails, IN(144)), 0);
    assert_int_equal(rails_plan(rails)->cost.bought, 1200);
    assert_int_equal(job_of(rails)->layout->cost, 400);
    assert_int_equal(told_as_bought(rails), 2);
    assert_true(rails_missing(rails));
}

/* When the missing one is bought as well, nothing is, and the layout is the one it was bought by.
 */
static void what_was_missing_is_bought_once(void **state)
{
    struct rails *rails = *state;
    tick_until(rails->bench.desk, "buy");
    rails_set(rails, "3", "70");
    rails_tick(rails, "rebuy");
    assert_false(rails_missing(rails));
    assert_int_equal(rails_plan(rails)->cost.bought, 1200);
    assert_true(job_of(rails)->taken);
    assert_int_equal(job_of(rails)->layout->cost, 1200);
}

/* Taking the purchase back leaves the cheapest for the parts of today: 5.00. */
static void a_purchase_that_is_taken_back_is_no_longer_cut_from(void **state)
{
    struct rails *rails = *state;
    tick_until(rails->bench.desk, "buy");
    rails_set(rails, "2", "70");
    DONE(desk_untick(rails->bench.desk, "buy", note));
    assert_int_equal(rails_listed(rails, IN(96)), 0);
    assert_int_equal(rails_listed(rails, IN(144)), 1);
    assert_int_equal(rails_plan(rails)->cost.bought, 500);
}

/* The saw sheet says of which sticks that is so; the price is that of the third. */
static void the_sheet_tells_what_is_in_the_house(void **state)
{
    struct rails *rails = *state;
    struct text out;
    size_t told = 0;
    tick_until(rails->bench.desk, "buy");
    rails_set(rails, "3", "70");
    text_init(&out);
    sheet_cutting(&out, rails_plan(rails));
    assert_non_null(strstr(text_string(&out), "4.00 beside what was bought"));
    assert_null(strstr(text_string(&out), "from the shelf"));
    for (const char *at = text_string(&out); (at = strstr(at, "bought already")); at++)
        told++;
    assert_int_equal(told, 2);
    text_release(&out);
}

/* ---- prices that changed ---- */

/* At 2.00 for 144 in nobody would buy two of 96 in; but they are bought. */
static void what_was_bought_is_cut_so_whatever_shops_ask_now(void **state)
{
    struct rails *rails = *state;
    struct desk *desk = rails->bench.desk;
    tick_until(desk, "buy");
    for (size_t i = 0; i < desk_model(desk)->offers.count; i++) {
        const struct offer *offer = &desk_model(desk)->offers.at[i];
        if (offer->stock == rails->stock && offer->length == IN(144))
            DONE(desk_set(desk, ENTITY_offer, offer->key, "price", "2.00", note));
    }
    assert_true(job_of(rails)->taken);
    assert_int_equal(rails_listed(rails, IN(96)), 2);
    assert_int_equal(rails_listed(rails, IN(144)), 0);
    assert_false(rails_missing(rails));
}

/* A length that shops have no more is cut all the same; its price is what was paid for it. */
static void what_no_shop_has_any_more_is_cut_from(void **state)
{
    struct rails *rails = *state;
    struct desk *desk = rails->bench.desk;
    tick_until(desk, "buy");
    for (size_t i = desk_model(desk)->offers.count; i-- > 0;) {
        const struct offer *offer = &desk_model(desk)->offers.at[i];
        if (offer->stock == rails->stock && offer->length == IN(96))
            DONE(desk_delete(desk, ENTITY_offer, offer->key, note));
    }
    assert_int_equal(job_of(rails)->layout->blanks.count, 2);
    assert_int_equal(job_of(rails)->layout->cost, 0);
    assert_int_equal(rails_listed(rails, IN(144)), 0);
}

/* ---- sticks held against crooked ones ---- */

/* Of two straight ones half as many more are bought: three. A third part wants a third straight
 * one, and 1.5 times 3 are five: two more. */
static void what_is_held_against_crooked_ones_is_not_cut(void **state)
{
    struct rails *rails = *state;
    struct desk *desk = rails->bench.desk;
    DONE(desk_trade(desk, TRADE_FROM_BUILD, "stick.reserve", "50 %", note));
    assert_int_equal(rails_listed(rails, IN(96)), 3);
    tick_until(desk, "buy");
    rails_set(rails, "3", "90");
    assert_int_equal(rails_listed(rails, IN(96)), 5);
    assert_int_equal(rails_plan(rails)->cost.bought, 2000);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        RAILS_TEST(other_parts_are_cut_from_what_was_bought),
        RAILS_TEST(only_what_is_missing_is_told_to_be_bought),
        RAILS_TEST(what_was_missing_is_bought_once),
        RAILS_TEST(a_purchase_that_is_taken_back_is_no_longer_cut_from),
        RAILS_TEST(the_sheet_tells_what_is_in_the_house),
        RAILS_TEST(what_was_bought_is_cut_so_whatever_shops_ask_now),
        RAILS_TEST(what_no_shop_has_any_more_is_cut_from),
        RAILS_TEST(what_is_held_against_crooked_ones_is_not_cut),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
