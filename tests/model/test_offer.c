/* What offers cost with and without tax. */
#include "model/offer.h"

#include "dice.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#define WHOLE 1000000

static struct model shop_with(int64_t tax)
{
    struct model model = {.workshop = {.tax = tax}};
    return model;
}

/* Value added tax of 19 % (the German rate since 2007): 11.90 with it is 10.00 without. */
static void a_price_with_tax_in_it_is_less_without(void **state)
{
    struct model model = shop_with(190000);
    const struct offer offer = {.price = 1190, .taxed = TAXED_INCLUDED, .supplier = ""};
    struct till till = {.model = &model};
    (void)state;
    assert_int_equal(offer_price(&model, &offer), 1000);
    assert_int_equal(till_line(&till, &offer, 3 * 1000, 3 * 1190), 3570);
}

/* 3 x 9.99 is 29.97, though without tax each is 8.39 (8.395 half to even is 8.40, times 3 25.20).
 */
static void a_line_with_tax_in_it_is_paid_as_it_stands(void **state)
{
    struct model model = shop_with(190000);
    const struct offer offer = {.price = 999, .taxed = TAXED_INCLUDED, .supplier = ""};
    struct till till = {.model = &model};
    (void)state;
    assert_int_equal(till_line(&till, &offer, 3 * offer_price(&model, &offer), 3 * 999), 2997);
}

static void an_offer_has_its_own_rate_or_none(void **state)
{
    struct model model = shop_with(72500);
    const struct offer own = {.price = 1000, .tax = 100000, .supplier = ""};
    const struct offer usual = {.price = 1000, .supplier = ""};
    const struct offer none = {.price = 1000, .taxed = TAXED_FREE, .tax = 100000, .supplier = ""};
    struct till till = {.model = &model};
    (void)state;
    assert_int_equal(offer_tax(&model, &own), 100000);
    assert_int_equal(offer_tax(&model, &usual), 72500);
    assert_int_equal(offer_tax(&model, &none), 0);
    assert_int_equal(offer_tax(&model, NULL), 72500);
    assert_int_equal(till_line(&till, &own, 1000, 1000), 1100);
    assert_int_equal(till_line(&till, &none, 1000, 1000), 1000);
    assert_int_equal(till_line(&till, &usual, 1000, 1000), 1072); /* 72.5, half to even */
    assert_int_equal(till_line(&till, &usual, 1000, 1000), 1073); /* 145 of both */
}

/* Rounded half to even by division alone: another way than the till's, which carries what is left.
 */
static int64_t half_even(int64_t sum)
{
    int64_t tax = sum / WHOLE;
    int64_t twice = 2 * (sum % WHOLE);
    return tax + (twice > WHOLE || (twice == WHOLE && tax % 2 == 1));
}

/* However many lines of however many rates: the tax on top is that of the exact sum, rounded once.
 */
static void tax_of_many_lines_is_rounded_once(void **state)
{
    struct dice dice = {7};
    (void)state;
    for (int round = 0; round < 3000; round++) {
        struct model model = shop_with(2500 * dice_between(&dice, 0, 100));
        struct till till = {.model = &model};
        int64_t exact = 0, paid = 0, prices = 0, stated = 0;
        for (int64_t line = dice_between(&dice, 1, 30); line > 0; line--) {
            const struct offer offer = {.price = dice_between(&dice, 1, 30000),
                                        .taxed = dice_between(&dice, 0, TAXED_COUNT - 1),
                                        .tax = dice_between(&dice, 0, 1) *
                                               dice_between(&dice, 1, WHOLE),
                                        .supplier = ""};
            int64_t price = offer_price(&model, &offer);
            paid += till_line(&till, &offer, price, offer.price);
            if (offer.taxed == TAXED_INCLUDED) {
                stated += offer.price;
                continue;
            }
            prices += price;
            exact += price * offer_tax(&model, &offer);
        }
        assert_int_equal(paid, stated + prices + half_even(exact));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_price_with_tax_in_it_is_less_without),
        cmocka_unit_test(a_line_with_tax_in_it_is_paid_as_it_stands),
        cmocka_unit_test(an_offer_has_its_own_rate_or_none),
        cmocka_unit_test(tax_of_many_lines_is_rounded_once),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
