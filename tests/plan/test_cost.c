/* What a build costs, what was paid, what is still to come. All sums are done by hand. */
#include "dice.h"
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

static void settle(struct spend *spend, int64_t stock)
{
    spend->stock = stock;
    spend->settles = true;
}

static void count(struct spend *spend, int64_t stock, int64_t packs)
{
    spend->stock = stock;
    spend->count = packs;
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
        aisles += shop->plan->cost.by_aisle[aisle].estimate;
    assert_int_equal(shop->plan->cost.estimate, 32);
    assert_int_equal(lines, 32);
    assert_int_equal(aisles, 32);
    assert_int_equal(shop->plan->cost.by_aisle[AISLE_LUMBER].estimate, 10);
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
    assert_int_equal(shop->plan->cost.by_aisle[AISLE_LUMBER].paid, 1500);
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
    assert_int_equal(shop->plan->cost.by_aisle[AISLE_FASTENERS].paid, 640);
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

/* ---- line by line ---- */

static const struct cost_line *line_of(const struct shop *shop, int64_t stock)
{
    for (size_t i = 0; i < shop->plan->cost.lines.count; i++) {
        const struct cost_line *line = &shop->plan->cost.lines.at[i];

        if (line->purchase != PLAN_NONE && shop->plan->purchases.at[line->purchase].stock == stock)
            return line;
    }
    fail_msg("the list has no such stock");
    return NULL;
}

/* What was cheaper at the till makes the whole cheaper; what was dearer, dearer. */
static void a_line_that_was_paid_has_cost_what_was_paid(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 100, 640);
    need_screws(shop, screw, 50);
    add_extra(shop, 1000, AISLE_FASTENERS);
    settle(add_spend(shop, 540, AISLE_FASTENERS), screw);
    shop_buy(shop);
    assert_true(line_of(shop, screw)->settled);
    assert_int_equal(line_of(shop, screw)->forecast - line_of(shop, screw)->estimate, -100);
    assert_int_equal(shop->plan->cost.forecast, 1540);
    add_spend(shop, 200, AISLE_FASTENERS)->stock = screw;
    shop_buy(shop);
    assert_int_equal(line_of(shop, screw)->forecast, 740);
    assert_int_equal(shop->plan->cost.forecast, 1740);
}

/* Half a line paid: the other half is still to come, until a spend settles the line. */
static void the_rest_of_a_line_paid_in_part_stays_in_the_forecast(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 100, 640);
    need_screws(shop, screw, 50);
    add_spend(shop, 300, AISLE_FASTENERS)->stock = screw;
    shop_buy(shop);
    assert_true(line_of(shop, screw)->entered);
    assert_false(line_of(shop, screw)->settled);
    assert_int_equal(line_of(shop, screw)->rest, 340);
    assert_int_equal(shop->plan->cost.forecast, 640);
    add_spend(shop, 400, AISLE_FASTENERS)->stock = screw;
    shop_buy(shop);
    assert_true(line_of(shop, screw)->settled);
    assert_int_equal(shop->plan->cost.forecast, 700);
    shop->model.spends.count = 1;
    settle(add_spend(shop, 0, AISLE_FASTENERS), screw);
    shop_buy(shop);
    assert_true(line_of(shop, screw)->settled);
    assert_int_equal(shop->plan->cost.forecast, 300);
}

/* Eight packs of 500 to buy. Three for 1200, at a lower price: five are still to be paid. All
 * eight: nothing is, whatever they came to. One given back is to be bought again. */
static void packs_that_a_spend_counts_are_paid_whatever_they_cost(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 10, 500);
    need_screws(shop, screw, 70);
    count(add_spend(shop, 1200, AISLE_FASTENERS), screw, 3);
    shop_buy(shop);
    assert_int_equal(line_of(shop, screw)->packs, 3);
    assert_int_equal(line_of(shop, screw)->rest, 2500);
    assert_int_equal(shop->plan->cost.forecast, 3700);
    count(add_spend(shop, 2000, AISLE_FASTENERS), screw, 5);
    shop_buy(shop);
    assert_true(line_of(shop, screw)->settled);
    assert_int_equal(shop->plan->cost.forecast, 3200);
    count(add_spend(shop, -400, AISLE_FASTENERS), screw, 1);
    shop_buy(shop);
    assert_int_equal(line_of(shop, screw)->rest, 500);
    assert_int_equal(shop->plan->cost.forecast, 3300);
}

/* Money given back without a count was for the price, and brings nothing back to pay. */
static void a_price_lowered_afterwards_leaves_its_line_paid(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 100, 640);
    need_screws(shop, screw, 50);
    add_spend(shop, 640, AISLE_FASTENERS)->stock = screw;
    add_spend(shop, -140, AISLE_FASTENERS)->stock = screw;
    shop_buy(shop);
    assert_true(line_of(shop, screw)->settled);
    assert_int_equal(shop->plan->cost.forecast, 500);
}

/* By a tick six of eight packs of 500 were brought home, and four of them paid for: two are owed,
 * and two more to come. */
static void of_what_was_bought_only_the_unpaid_part_is_owed(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 10, 500);
    need_screws(shop, screw, 70);
    shop_bought(shop, screw, 0, 0, 6);
    count(add_spend(shop, 1800, AISLE_FASTENERS), screw, 4);
    shop_buy(shop);
    assert_int_equal(line_of(shop, screw)->rest, 2000);
    assert_int_equal(shop->plan->cost.committed, 1000);
    assert_int_equal(shop->plan->cost.forecast, 3800);
}

/* Fifty loose screws were brought home before anybody had a price: one box of a hundred, not fifty
 * boxes. The same of six boxes of ten, once the shop sells them by twenty. */
static void what_was_bought_is_counted_in_pieces(void **state)
{
    static const struct {
        int64_t packs, pack, lines_packs;
    } bought[] = {{50, 1, 1}, {6, 10, 1}, {3, 100, 3}, {150, 1, 2}, {2, 0, 2}};

    for (size_t i = 0; i < sizeof bought / sizeof *bought; i++) {
        struct shop *shop = *state;
        int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

        shop_pack(shop, screw, 100, 640);
        need_screws(shop, screw, 50);
        shop_bought(shop, screw, 0, 0, bought[i].packs);
        shop->model.boughts.at[i].pack = bought[i].pack;
        shop_buy(shop);
        const struct purchase *purchase = &shop->plan->purchases.at[line_of(shop, screw)->purchase];
        assert_int_equal(purchase->packs, bought[i].lines_packs);
        assert_int_equal(line_of(shop, screw)->committed, 640 * bought[i].lines_packs);
    }
}

static const struct cost_line *only_line(const struct shop *shop)
{
    assert_int_equal(shop->plan->purchases.count, 1);
    return plan_cost_line(shop->plan, &shop->plan->purchases.at[0]);
}

/* A zip that the workshop has no stock of: what was paid for it says that it is there. */
static void what_is_no_stock_is_bought_when_it_is_paid(void **state)
{
    struct shop *shop = *state;
    struct spend *spend;

    need_consumable(shop, 0, STOCK_OTHER, QUANTITY_COUNT, 2, "zip, 19 in");
    shop_buy(shop);
    assert_int_equal(only_line(shop)->bought, 0);
    spend = add_spend(shop, 450, AISLE_HARDWARE);
    spend->what = "zip, 19 in";
    spend->count = 1;
    shop_buy(shop);
    assert_int_equal(only_line(shop)->bought, 1);
    spend->count = 0;
    shop_buy(shop);
    assert_int_equal(only_line(shop)->bought, 2);
    assert_int_equal(only_line(shop)->committed, 0);
    spend->what = "needles";
    shop_buy(shop);
    assert_int_equal(only_line(shop)->bought, 0);
}

/* Of 30.00 for something special 10.00 were paid: it is not in the house yet. */
static void a_part_paid_for_what_is_no_stock_does_not_buy_it(void **state)
{
    struct shop *shop = *state;
    struct spend *spend;

    add_extra(shop, 3000, AISLE_HARDWARE);
    spend = add_spend(shop, 1000, AISLE_HARDWARE);
    spend->what = "something";
    shop_buy(shop);
    assert_int_equal(only_line(shop)->bought, 0);
    assert_int_equal(only_line(shop)->rest, 2000);
    spend->amount = 3000;
    shop_buy(shop);
    assert_int_equal(only_line(shop)->bought, 1);
    assert_int_equal(only_line(shop)->committed, 0);
}

/* Nothing more is to come for a build that is finished. */
static void a_finished_build_has_cost_what_was_paid(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 100, 640);
    need_screws(shop, screw, 50);
    add_extra(shop, 1000, AISLE_TRIM);
    add_spend(shop, 300, AISLE_FASTENERS)->stock = screw;
    shop->model.build.state = STATE_FINISHED;
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.forecast, 300);
    assert_int_equal(line_of(shop, screw)->rest, 0);
}

/* Of two packs the one that the spend names. */
static void a_spend_belongs_to_the_pack_that_it_names(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);
    struct spend *spend;

    shop_pack(shop, screw, 100, 900);
    shop_pack(shop, screw, 20, 250);
    need_screws(shop, screw, 105);
    spend = add_spend(shop, 240, AISLE_FASTENERS);
    settle(spend, screw);
    spend->pack = 20;
    shop_buy(shop);
    assert_int_equal(shop->plan->purchases.count, 2);
    for (size_t i = 0; i < shop->plan->cost.lines.count; i++) {
        const struct cost_line *line = &shop->plan->cost.lines.at[i];

        if (line->purchase != PLAN_NONE)
            assert_int_equal(line->paid, line->estimate < 900 ? 240 : 0);
    }
    assert_int_equal(shop->plan->cost.forecast, 900 + 240);
}

/* Two sizes of one stock: a spend that names none goes to the first, what is given back of it to
 * the same. */
static void money_given_back_goes_to_the_line_that_was_paid(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 100, 900);
    shop_pack(shop, screw, 20, 250);
    need_screws(shop, screw, 105);
    settle(add_spend(shop, 800, AISLE_FASTENERS), screw);
    add_spend(shop, -100, AISLE_FASTENERS)->stock = screw;
    shop_buy(shop);
    assert_int_equal(shop->plan->purchases.count, 2);
    for (size_t i = 0; i < shop->plan->cost.lines.count; i++) {
        const struct cost_line *line = &shop->plan->cost.lines.at[i];

        if (line->purchase != PLAN_NONE)
            assert_int_equal(line->paid, line->estimate == 900 ? 700 : 0);
    }
    assert_int_equal(shop->plan->cost.forecast, 700 + 250);
}

/* What was paid by hand for nothing on the list stands for lines that nobody paid. */
static void money_on_no_list_raises_the_forecast_by_what_is_over(void **state)
{
    struct shop *shop = *state;

    add_extra(shop, 1000, AISLE_TRIM);
    add_spend(shop, 700, AISLE_TRIM);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.forecast, 1000);
    add_spend(shop, 500, AISLE_TRIM);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.forecast, 1200);
}

/* Bought by a ticked step, six of eight packs, is three quarters of the line; owed until it is
 * paid, by the line's own spend or by one for nothing on the list. */
static void what_was_bought_is_owed_until_it_is_paid(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 10, 500);
    need_screws(shop, screw, 70);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, screw)->packs, 8);
    shop_bought(shop, screw, 0, 0, 6);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.committed, 3000);
    add_spend(shop, 1200, AISLE_FASTENERS);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.committed, 1800);
    add_spend(shop, 3900, AISLE_FASTENERS)->stock = screw;
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.committed, 0);
}

/* By chance: every figure adds up over the lines, over the aisles, and to the whole. */
static void every_figure_adds_up_by_line_and_by_aisle(void **state)
{
    struct shop *shop = *state;
    struct dice dice = {31};
    int64_t screws[4];

    shop->model.workshop.tax = 72500;
    for (int i = 0; i < 4; i++) {
        screws[i] = shop_stock(shop, i % 2 ? "long" : "short", STOCK_SCREW, 0);
        shop_pack(shop, screws[i], 25, dice_between(&dice, 1, 999))->taxed = i % TAXED_COUNT;
        need_screws(shop, screws[i], 10 + 20 * i);
    }
    for (int round = 0; round < 60; round++) {
        struct spend *spend = add_spend(shop, dice_between(&dice, -500, 900),
                                        (enum aisle_word)dice_between(&dice, 0, AISLE_COUNT - 1));
        const struct cost *cost = &shop->plan->cost;
        struct cost_sum lines = {0}, aisles = {0};

        if (dice_between(&dice, 0, 2) == 0)
            spend->stock = screws[dice_between(&dice, 0, 3)];
        spend->settles = dice_between(&dice, 0, 9) == 0;
        spend->count = dice_between(&dice, 0, 1);
        add_extra(shop, dice_between(&dice, 0, 400),
                  (enum aisle_word)dice_between(&dice, 0, AISLE_COUNT - 1));
        if (round % 7 == 0)
            shop_bought(shop, screws[round % 4], 0, 0, 1);
        shop_buy(shop);
        cost = &shop->plan->cost;
        for (size_t i = 0; i < cost->lines.count; i++) {
            assert_in_range(cost->lines.at[i].rest, 0, cost->lines.at[i].estimate);
            assert_in_range(cost->lines.at[i].committed, 0, cost->lines.at[i].rest);
            if (cost->lines.at[i].purchase != PLAN_NONE)
                assert_int_equal(cost->lines.at[i].forecast,
                                 cost->lines.at[i].paid + cost->lines.at[i].rest);
            lines.estimate += cost->lines.at[i].estimate;
            lines.committed += cost->lines.at[i].committed;
            lines.paid += cost->lines.at[i].paid;
            lines.forecast += cost->lines.at[i].forecast;
        }
        for (int aisle = 0; aisle < AISLE_COUNT; aisle++) {
            aisles.estimate += cost->by_aisle[aisle].estimate;
            aisles.committed += cost->by_aisle[aisle].committed;
            aisles.paid += cost->by_aisle[aisle].paid;
            aisles.forecast += cost->by_aisle[aisle].forecast;
        }
        assert_memory_equal(&lines, &aisles, sizeof lines);
        assert_int_equal(lines.estimate, cost->estimate);
        assert_int_equal(lines.committed, cost->committed);
        assert_int_equal(lines.paid, cost->spent);
        assert_int_equal(lines.forecast, cost->forecast);
        assert_int_equal(cost->bought + cost->tax, cost->estimate);
    }
}

/* ---- delivery ---- */

static struct supplier *add_supplier(struct shop *shop, int64_t delivery, int64_t free_from)
{
    struct supplier *supplier = MODEL_ADD(&shop->model, supplier);

    supplier->name = "Yard";
    supplier->note = "";
    supplier->delivery = delivery;
    supplier->free_from = free_from;
    return supplier;
}

static void one_order_is_brought_once_however_many_lines_it_has(void **state)
{
    struct shop *shop = *state;
    int64_t nail = shop_stock(shop, "nails", STOCK_SCREW, 0);
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 100, 640)->supplier = "Yard";
    shop_stock_of(shop, nail)->supplier = "Yard";
    shop_pack(shop, nail, 100, 360);
    need_screws(shop, screw, 50);
    need_screws(shop, nail, 50);
    add_supplier(shop, 2500, 0);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.estimate, 640 + 360 + 2500);
    assert_int_equal(shop->plan->purchases.count, 3);
}

/* 6.40 and 3.60 are on the list, 25.00 for bringing them: owed with the first that is bought. */
static void bringing_an_order_is_owed_once_something_of_it_is_bought(void **state)
{
    struct shop *shop = *state;
    int64_t nail = shop_stock(shop, "nails", STOCK_SCREW, 0);
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 100, 640)->supplier = "Yard";
    shop_pack(shop, nail, 100, 360)->supplier = "Elsewhere";
    need_screws(shop, screw, 50);
    need_screws(shop, nail, 50);
    add_supplier(shop, 2500, 0);
    shop_bought(shop, nail, 0, 0, 1);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.committed, 360);
    shop_bought(shop, screw, 0, 0, 1);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.committed, 360 + 640 + 2500);
    add_spend(shop, 2500, AISLE_HARDWARE)->what = "delivery, Yard";
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.committed, 360 + 640);
}

static void an_order_for_enough_is_brought_for_nothing(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);
    struct supplier *yard = add_supplier(shop, 2500, 641);

    shop_pack(shop, screw, 100, 640)->supplier = "Yard";
    need_screws(shop, screw, 50);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.estimate, 640 + 2500);
    yard->free_from = 640;
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.estimate, 640);
}

static void who_sells_nothing_of_it_brings_nothing(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 100, 640)->supplier = "Elsewhere";
    need_screws(shop, screw, 50);
    add_supplier(shop, 2500, 0);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.estimate, 640);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        SHOP_TEST(half_a_pack_used_is_half_its_price),
        SHOP_TEST(tax_is_rounded_half_to_even_on_the_whole),
        SHOP_TEST(lines_with_their_tax_add_up_to_the_estimate),
        SHOP_TEST(the_forecast_without_spend_is_the_estimate),
        SHOP_TEST(a_line_that_was_paid_has_cost_what_was_paid),
        SHOP_TEST(the_rest_of_a_line_paid_in_part_stays_in_the_forecast),
        SHOP_TEST(packs_that_a_spend_counts_are_paid_whatever_they_cost),
        SHOP_TEST(a_price_lowered_afterwards_leaves_its_line_paid),
        SHOP_TEST(of_what_was_bought_only_the_unpaid_part_is_owed),
        SHOP_TEST(what_was_bought_is_counted_in_pieces),
        SHOP_TEST(what_is_no_stock_is_bought_when_it_is_paid),
        SHOP_TEST(a_part_paid_for_what_is_no_stock_does_not_buy_it),
        SHOP_TEST(a_finished_build_has_cost_what_was_paid),
        SHOP_TEST(a_spend_belongs_to_the_pack_that_it_names),
        SHOP_TEST(money_given_back_goes_to_the_line_that_was_paid),
        SHOP_TEST(money_on_no_list_raises_the_forecast_by_what_is_over),
        SHOP_TEST(what_was_bought_is_owed_until_it_is_paid),
        SHOP_TEST(every_figure_adds_up_by_line_and_by_aisle),
        SHOP_TEST(one_order_is_brought_once_however_many_lines_it_has),
        SHOP_TEST(bringing_an_order_is_owed_once_something_of_it_is_bought),
        SHOP_TEST(an_order_for_enough_is_brought_for_nothing),
        SHOP_TEST(who_sells_nothing_of_it_brings_nothing),
        SHOP_TEST(the_forecast_takes_the_larger_aisle_by_aisle),
        SHOP_TEST(spend_for_a_stock_counts_in_its_aisle),
        SHOP_TEST(money_given_back_lessens_what_was_spent),
        SHOP_TEST(sums_are_the_same_whatever_the_coin),
        SHOP_TEST(a_length_of_cloth_is_rounded_once),
        SHOP_TEST(a_price_too_large_to_hold_is_no_price),
    };

    return cmocka_run_group_tests_name("cost", tests, NULL, NULL) ? 1 : 0;
}
