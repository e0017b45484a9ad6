#include "shop.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static void add_extra(struct shop *shop, int64_t price, enum aisle_word aisle)
{
    struct extra *extra = MODEL_ADD(&shop->model, extra);

    extra->what = "something";
    extra->price = price;
    extra->aisle = (int64_t)aisle;
}

static struct spend *add_spend(struct shop *shop, int64_t amount, enum aisle_word aisle)
{
    struct spend *spend = MODEL_ADD(&shop->model, spend);

    spend->what = "paid";
    spend->amount = amount;
    spend->aisle = (int64_t)aisle;
    return spend;
}

static void half_a_pack_used_is_half_its_price(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 100, 641);
    need_screws(shop, screw, 50);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.bought, 641);
    assert_int_equal(shop->plan->cost.used, 320); /* 320.5, half to even */
}

static void tax_is_rounded_half_to_even_on_the_whole(void **state)
{
    struct shop *shop = *state;

    shop->model.workshop.tax = 50000; /* 5 % */
    add_extra(shop, 10, AISLE_LUMBER);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.tax, 0); /* 0.5 */
    assert_int_equal(shop->plan->cost.estimate, 10);
    add_extra(shop, 20, AISLE_TRIM);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.tax, 2); /* 1.5 */
    assert_int_equal(shop->plan->cost.estimate, 32);
}

/* Three lines of 10 with 5 %: each would be 10 or 11 by itself, together they are 32 (31.5 half to
 * even); lines and aisles add up to that. */
static void lines_with_their_tax_add_up_to_the_estimate(void **state)
{
    struct shop *shop = *state;
    int64_t lines = 0;
    int64_t aisles = 0;

    shop->model.workshop.tax = 50000;
    for (int i = 0; i < 3; i++)
        add_extra(shop, 10, i ? AISLE_TRIM : AISLE_LUMBER);
    shop_buy(shop);
    for (size_t i = 0; i < shop->plan->purchases.count; i++)
        lines += shop->plan->purchases.at[i].till;
    for (int aisle = 0; aisle < AISLE_COUNT; aisle++)
        aisles += shop->plan->cost.by_aisle[aisle];
    assert_int_equal(shop->plan->cost.estimate, 32);
    assert_int_equal(lines, 32);
    assert_int_equal(aisles, 32);
    assert_int_equal(shop->plan->cost.by_aisle[AISLE_LUMBER], 10);
}

static void the_forecast_without_spend_is_the_estimate(void **state)
{
    struct shop *shop = *state;

    shop->model.workshop.tax = 72500;
    for (int aisle = 0; aisle < AISLE_COUNT; aisle++)
        add_extra(shop, 333 + aisle, (enum aisle_word)aisle);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.forecast, shop->plan->cost.estimate);
}

static void the_forecast_takes_the_larger_aisle_by_aisle(void **state)
{
    struct shop *shop = *state;

    shop->model.build.budget = 5000;
    add_extra(shop, 1000, AISLE_LUMBER);
    add_extra(shop, 2000, AISLE_CLOTH);
    add_spend(shop, 1500, AISLE_LUMBER);
    add_spend(shop, 500, AISLE_CLOTH);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.spent, 2000);
    assert_int_equal(shop->plan->cost.spent_by_aisle[AISLE_LUMBER], 1500);
    assert_int_equal(shop->plan->cost.forecast, 3500);
    assert_int_equal(shop->plan->cost.left, 1500);
}

static void spend_for_a_stock_counts_in_its_aisle(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 100, 640);
    need_screws(shop, screw, 50);
    add_spend(shop, 640, AISLE_LUMBER)->stock = screw;
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.spent_by_aisle[AISLE_FASTENERS], 640);
    assert_int_equal(shop->plan->cost.forecast, 640);
}

static void money_given_back_lessens_what_was_spent(void **state)
{
    struct shop *shop = *state;

    add_spend(shop, 1500, AISLE_LUMBER);
    add_spend(shop, -300, AISLE_LUMBER);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.spent, 1200);
}

/* Prices are counts of the smallest coin; how many digits it has changes no sum. */
static void sums_are_the_same_whatever_the_coin(void **state)
{
    struct shop *shop = *state;

    shop->model.workshop.tax = 100000;
    add_extra(shop, 12345, AISLE_LUMBER);
    for (int64_t digits = 0; digits <= 3; digits += 3) {
        shop->model.workshop.digits = digits;
        shop_buy(shop);
        assert_int_equal(shop->plan->cost.tax, 1234); /* 1234.5 */
        assert_int_equal(shop->plan->cost.estimate, 13579);
    }
}

/* A yen has no smaller coin: a third of a length is rounded once, to whole yen. */
static void a_length_of_cloth_is_rounded_once(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "cover", STOCK_CLOTH, 54);

    shop->model.workshop.digits = 0;
    shop_stock_of(shop, cloth)->step_cut = IN(1);
    shop_offer(shop, cloth, 36, 0, 1000);
    need_pieces(shop, cloth, 1, 50, 10);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, cloth)->length, IN(11));
    assert_int_equal(shop_line(shop, cloth)->price, 306); /* 305.6 */
}

static void a_price_too_large_to_hold_is_no_price(void **state)
{
    struct shop *shop = *state;

    add_extra(shop, INT64_MAX / 2, AISLE_LUMBER);
    shop->model.extras.at[0].count = 3;
    shop_buy(shop);
    assert_false(shop->plan->purchases.at[0].priced);
    assert_int_equal(shop->plan->cost.bought, 0);
}

#define SHOP_TEST(name) cmocka_unit_test_setup_teardown(name, shop_begin, shop_end)

int main(void)
{
    const struct CMUnitTest tests[] = {
        SHOP_TEST(half_a_pack_used_is_half_its_price),
        SHOP_TEST(tax_is_rounded_half_to_even_on_the_whole),
        SHOP_TEST(lines_with_their_tax_add_up_to_the_estimate),
        SHOP_TEST(the_forecast_without_spend_is_the_estimate),
        SHOP_TEST(the_forecast_takes_the_larger_aisle_by_aisle),
        SHOP_TEST(spend_for_a_stock_counts_in_its_aisle),
        SHOP_TEST(money_given_back_lessens_what_was_spent),
        SHOP_TEST(sums_are_the_same_whatever_the_coin),
        SHOP_TEST(a_length_of_cloth_is_rounded_once),
        SHOP_TEST(a_price_too_large_to_hold_is_no_price),
    };

    return cmocka_run_group_tests_name("cost", tests, NULL, NULL) ? 1 : 0;
}
