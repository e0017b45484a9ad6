/*
 * What is bought by the pack, with its reserve. Where nothing else is said sums are done by hand.
 */
#include "shop.h"

#include "dice.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* Worked examples, computed by hand: what is driven, and what is bought with its reserve. */
static void screws_have_five_in_a_hundred_over_and_at_least_two(void **state)
{
    static const int64_t counts[][2] = {{56, 59}, {126, 133}, {70, 74}, {114, 120},
                                        {18, 20}, {48, 51},   {16, 18}, {12, 14}};
    struct shop *shop = *state;

    for (size_t i = 0; i < sizeof counts / sizeof *counts; i++) {
        int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

        shop_pack(shop, screw, 50, 780);
        need_screws(shop, screw, counts[i][0]);
        shop_buy(shop);
        assert_int_equal(shop_line(shop, screw)->need, counts[i][1]);
        assert_int_equal(shop_line(shop, screw)->packs, (counts[i][1] + 49) / 50);
    }
}

/* Worked example, computed by hand: wing headboard; the temporary staples count. */
static void staples_of_905_are_996_and_one_box(void **state)
{
    struct shop *shop = *state;
    int64_t staple = shop_stock(shop, "staples", STOCK_STAPLE, 0);

    shop_pack(shop, staple, 1000, 360);
    need_staples(shop, IN(0.375), 821, 40);
    need_staples(shop, IN(0.375), 0, 44);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, staple)->used, 905);
    assert_int_equal(shop_line(shop, staple)->need, 996);
    assert_int_equal(shop_line(shop, staple)->packs, 1);
}

/* Worked example, computed by hand: a loop counted as four runs gives 924, and a second box. */
static void staples_of_924_are_1017_and_two_boxes(void **state)
{
    struct shop *shop = *state;
    int64_t staple = shop_stock(shop, "staples", STOCK_STAPLE, 0);

    shop_pack(shop, staple, 1000, 360);
    need_staples(shop, IN(0.375), 924, 0);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, staple)->need, 1017);
    assert_int_equal(shop_line(shop, staple)->packs, 2);
}

static void the_offer_that_costs_least_in_all_is_taken(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 50, 500);
    shop_pack(shop, screw, 200, 1400);
    need_screws(shop, screw, 100);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, screw)->price, 1400); /* 105 in three packs are 15.00 */
    shop->plan->screw_kinds.at[0].count = 40;
    shop_buy(shop);
    assert_int_equal(shop_line(shop, screw)->price, 500);
}

/* Lines of a stock; the shop list's packs are told apart by their price. */
static int64_t packs_at(const struct shop *shop, int64_t stock, int64_t price)
{
    int64_t packs = 0;

    for (size_t i = 0; i < shop->plan->purchases.count; i++) {
        const struct purchase *line = &shop->plan->purchases.at[i];

        if (line->stock == stock && line->packs > 0 && line->price == price * line->packs)
            packs += line->packs;
    }
    return packs;
}

/* 235 screws are 247: a large pack and a small one at 19.00, two large 28.00, five small 25.00. */
static void packs_of_two_offers_are_taken_together_where_that_costs_less(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 50, 500);
    shop_pack(shop, screw, 200, 1400);
    need_screws(shop, screw, 235);
    shop_buy(shop);
    assert_int_equal(shop->plan->purchases.count, 2);
    assert_int_equal(packs_at(shop, screw, 500), 1);
    assert_int_equal(packs_at(shop, screw, 1400), 1);
    assert_int_equal(shop->plan->cost.bought, 1900);
    assert_int_equal(shop->plan->purchases.at[0].need + shop->plan->purchases.at[1].need, 247);
    assert_int_equal(shop->plan->purchases.at[0].used + shop->plan->purchases.at[1].used, 235);
}

/* The least by going through every number of packs of each offer. */
static int64_t least_price(int64_t amount, const int64_t packs[3], const int64_t prices[3])
{
    int64_t least = INT64_MAX;

    for (int64_t a = 0; a <= amount / packs[0] + 1; a++)
        for (int64_t b = 0; b <= amount / packs[1] + 1; b++)
            for (int64_t c = 0; c <= amount / packs[2] + 1; c++) {
                int64_t price = a * prices[0] + b * prices[1] + c * prices[2];

                if (a * packs[0] + b * packs[1] + c * packs[2] >= amount && price < least)
                    least = price;
            }
    return least;
}

static void packs_by_chance_cost_the_least_there_is(void **state)
{
    struct shop *shop = *state;
    struct dice dice = {7};
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    for (int i = 0; i < 3; i++)
        shop_pack(shop, screw, 1, 1);
    need_screws(shop, screw, 1);
    for (int round = 0; round < 500; round++) {
        int64_t packs[3], prices[3], needed = 0;

        for (int i = 0; i < 3; i++) {
            shop->model.offers.at[i].pack = packs[i] = dice_between(&dice, 10, 120);
            shop->model.offers.at[i].price = prices[i] = dice_between(&dice, 1, 900);
        }
        shop->plan->screw_kinds.at[0].count = dice_between(&dice, 1, 400);
        shop_buy(shop);
        for (size_t i = 0; i < shop->plan->purchases.count; i++)
            needed += shop->plan->purchases.at[i].need;
        assert_int_equal(shop->plan->cost.bought, least_price(needed, packs, prices));
        assert_true(shop->plan->cost.used <= shop->plan->cost.bought);
    }
}

/* Common practice, no source: a reserve that is bought and not driven is stock. */
static void a_reserve_beyond_the_shelf_uses_up_nothing(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 50, 780);
    shop_leftover(shop, screw, 0, 0, 102, "");
    need_screws(shop, screw, 100); /* 105 with the reserve */
    shop_buy(shop);
    assert_int_equal(shop_line(shop, screw)->price, 780);
    assert_int_equal(shop_line(shop, screw)->value, 0);
}

static void an_offer_without_a_price_is_not_taken_for_free(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 50, 0);
    shop_pack(shop, screw, 50, 780);
    need_screws(shop, screw, 10);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, screw)->price, 780);
}

static void screws_on_the_shelf_are_not_bought(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 50, 780);
    shop_leftover(shop, screw, 0, 0, 60, "");
    need_screws(shop, screw, 100);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, screw)->shelf, 60);
    assert_int_equal(shop_line(shop, screw)->packs, 1);
    shop->model.leftovers.at[0].count = 105;
    shop_buy(shop);
    assert_int_equal(shop_line(shop, screw)->packs, 0);
    assert_int_equal(shop->plan->cost.bought, 0);
}

static void stock_without_an_offer_is_told_once(void **state)
{
    struct shop *shop = *state;
    int64_t staple = shop_stock(shop, "staples", STOCK_STAPLE, 0);

    need_staples(shop, IN(0.375), 100, 0);
    shop_buy(shop);
    assert_false(shop_line(shop, staple)->priced);
    assert_int_equal(shop_findings(shop, FINDING_NO_PRICE), 1);
}

/* Worked example, computed by hand: 19.25 ft2 of foam and a quarter of 45.88 ft2 of batting. */
static void spray_covers_twenty_square_feet_a_can(void **state)
{
    struct shop *shop = *state;
    int64_t spray = shop_stock(shop, "spray glue", STOCK_SPRAY, 0);

    shop_pack(shop, spray, 1, 1350);
    need_consumable(shop, 0, STOCK_SPRAY, QUANTITY_AREA, INT64_C(1788384), "spray glue");
    need_consumable(shop, 0, STOCK_SPRAY, QUANTITY_AREA, INT64_C(1065598), "spray glue");
    shop_buy(shop);
    assert_int_equal(shop_line(shop, spray)->packs, 2);
    assert_int_equal(shop_line(shop, spray)->price, 2700);
}

/* Worked example, computed by hand: 22 buttons are 24, a pack; 188 nails are 198. */
static void buttons_and_nails_have_a_reserve(void **state)
{
    struct shop *shop = *state;
    int64_t button = shop_stock(shop, "buttons", STOCK_BUTTON, 0);
    int64_t nail = shop_stock(shop, "nails", STOCK_NAIL, 0);

    shop_pack(shop, button, 24, 1040);
    shop_pack(shop, nail, 100, 920);
    need_consumable(shop, button, STOCK_BUTTON, QUANTITY_COUNT, 22, "buttons");
    need_consumable(shop, nail, STOCK_NAIL, QUANTITY_COUNT, 188, "nailheads");
    shop_buy(shop);
    assert_int_equal(shop_line(shop, button)->need, 24);
    assert_int_equal(shop_line(shop, button)->packs, 1);
    assert_int_equal(shop_line(shop, nail)->need, 198);
    assert_int_equal(shop_line(shop, nail)->packs, 2);
}

/* Worked example, computed by hand: 528 in of cord off a spool of 20 yd. */
static void cord_is_bought_by_the_spool(void **state)
{
    struct shop *shop = *state;
    int64_t cord = shop_stock(shop, "tufting cord", STOCK_CORD, 0);

    shop_offer(shop, cord, 720, 0, 490);
    need_consumable(shop, cord, STOCK_CORD, QUANTITY_LENGTH, IN(528), "tufting cord");
    shop_buy(shop);
    assert_int_equal(shop_line(shop, cord)->packs, 1);
    assert_int_equal(shop_line(shop, cord)->price, 490);
}

/* Common practice, no source: 3 ml, 0.1 oz in inch work, in each joint. */
static void glue_is_counted_by_the_joint(void **state)
{
    struct shop *shop = *state;
    int64_t glue = shop_stock(shop, "glue", STOCK_GLUE, 0);

    shop_offer(shop, glue, 0, 0, 480)->volume = 236588; /* 8 oz */
    for (int i = 0; i < 81; i++)
        (void)LIST_ADD(&shop->arena, &shop->plan->joints);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, glue)->packs, 2);
    shop->plan->joints.count = 79;
    shop_buy(shop);
    assert_int_equal(shop_line(shop, glue)->packs, 1);
}

/* A panel of 1 m x 0.5 m: 3 m of edge. */
static void add_glued_panel(struct shop *shop, int64_t frame)
{
    struct box *box = MODEL_ADD(&shop->model, box);
    struct facing *facing = MODEL_ADD(&shop->model, facing);
    struct panel *panel = LIST_ADD(&shop->arena, &shop->plan->panels);

    box->frame = frame;
    facing->box = box->key;
    facing->glued = 1;
    panel->box = box->key;
    panel->facing = facing->key;
    panel->width = 1000 * LENGTH_MM;
    panel->height = 500 * LENGTH_MM;
}

/* Common practice, no source: 0.3 oz, 8 ml, a metre. A can of what three metres take, and panels of
 * which each asks for another can, or for none. */
static void glue_is_counted_by_the_edge_of_panels_on_a_frame(void **state)
{
    struct shop *shop = *state;
    int64_t glue = shop_stock(shop, "glue", STOCK_GLUE, 0);

    shop_offer(shop, glue, 0, 0, 480)->volume = 3 * INT64_C(8872); /* 0.9 oz */
    add_glued_panel(shop, FRAME_CRATE);
    add_glued_panel(shop, FRAME_LADDER);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, glue)->packs, 2);
    add_glued_panel(shop, FRAME_BOARD); /* the panel is the box */
    shop_buy(shop);
    assert_int_equal(shop_line(shop, glue)->packs, 2);
    shop->plan->panels.at[0].loose = true; /* a lid, or a seat that is dropped on */
    shop_buy(shop);
    assert_int_equal(shop_line(shop, glue)->packs, 1);
    shop->model.facings.at[1].glued = 0;
    shop_buy(shop);
    assert_int_equal(shop->plan->purchases.count, 0);
}

static void fittings_of_one_stock_are_pooled(void **state)
{
    struct shop *shop = *state;
    int64_t leg = shop_stock(shop, "legs", STOCK_HARDWARE, 0);

    shop_pack(shop, leg, 4, 1920);
    for (int i = 0; i < 2; i++) {
        struct fitting *fitting = MODEL_ADD(&shop->model, fitting);

        fitting->kind = FITTING_LEG;
        fitting->stock = leg;
        fitting->count = 2;
    }
    shop_buy(shop);
    assert_int_equal(shop_line(shop, leg)->used, 4);
    assert_int_equal(shop_line(shop, leg)->packs, 1);
}

static void an_extra_comes_with_its_price_and_aisle(void **state)
{
    struct shop *shop = *state;
    struct extra *extra = MODEL_ADD(&shop->model, extra);

    extra->what = "tin of wax";
    extra->count = 2;
    extra->price = 650;
    extra->aisle = AISLE_HARDWARE;
    shop_buy(shop);
    assert_int_equal(shop->plan->purchases.at[0].price, 1300);
    assert_int_equal(shop->plan->cost.by_aisle[AISLE_HARDWARE].estimate, 1300);
    shop->model.extras.at[0].price = 0;
    shop_buy(shop);
    assert_false(shop->plan->purchases.at[0].priced);
    assert_int_equal(shop_findings(shop, FINDING_NO_PRICE), 1);
}

static void packs_that_were_bought_count(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 50, 780);
    need_screws(shop, screw, 10);
    shop_bought(shop, screw, 0, 0, 3);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, screw)->packs, 3);
}

/* What a tick of the buying takes: each line, as it stands. */
static void buy_the_list(struct shop *shop)
{
    for (size_t i = 0; i < shop->plan->purchases.count; i++) {
        const struct purchase *line = &shop->plan->purchases.at[i];

        shop_bought(shop, line->stock, 0, 0, line->packs);
    }
}

static void what_was_bought_in_two_packs_and_as_an_extra_is_counted_once(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);
    struct extra *extra = MODEL_ADD(&shop->model, extra);

    extra->what = "spare screws";
    extra->stock = screw;
    extra->count = 1;
    shop_pack(shop, screw, 50, 500);
    shop_pack(shop, screw, 200, 1400);
    need_screws(shop, screw, 235);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.bought, 2400);
    buy_the_list(shop);
    shop_buy(shop);
    assert_int_equal(shop->plan->cost.bought, 2400);
    assert_int_equal(shop->plan->purchases.count, 3);
}

static void packs_that_are_no_longer_needed_stay_paid(void **state)
{
    struct shop *shop = *state;
    int64_t screw = shop_stock(shop, "screws", STOCK_SCREW, 0);

    shop_pack(shop, screw, 50, 780);
    shop_bought(shop, screw, 0, 0, 1);
    shop_bought(shop, screw, 0, 0, 2);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, screw)->packs, 3);
    assert_int_equal(shop_line(shop, screw)->price, 2340);
    assert_int_equal(shop_line(shop, screw)->value, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        SHOP_TEST(screws_have_five_in_a_hundred_over_and_at_least_two),
        SHOP_TEST(staples_of_905_are_996_and_one_box),
        SHOP_TEST(staples_of_924_are_1017_and_two_boxes),
        SHOP_TEST(the_offer_that_costs_least_in_all_is_taken),
        SHOP_TEST(packs_of_two_offers_are_taken_together_where_that_costs_less),
        SHOP_TEST(packs_by_chance_cost_the_least_there_is),
        SHOP_TEST(a_reserve_beyond_the_shelf_uses_up_nothing),
        SHOP_TEST(an_offer_without_a_price_is_not_taken_for_free),
        SHOP_TEST(screws_on_the_shelf_are_not_bought),
        SHOP_TEST(stock_without_an_offer_is_told_once),
        SHOP_TEST(spray_covers_twenty_square_feet_a_can),
        SHOP_TEST(buttons_and_nails_have_a_reserve),
        SHOP_TEST(cord_is_bought_by_the_spool),
        SHOP_TEST(glue_is_counted_by_the_joint),
        SHOP_TEST(glue_is_counted_by_the_edge_of_panels_on_a_frame),
        SHOP_TEST(fittings_of_one_stock_are_pooled),
        SHOP_TEST(an_extra_comes_with_its_price_and_aisle),
        SHOP_TEST(packs_that_were_bought_count),
        SHOP_TEST(what_was_bought_in_two_packs_and_as_an_extra_is_counted_once),
        SHOP_TEST(packs_that_are_no_longer_needed_stay_paid),
    };

    return cmocka_run_group_tests_name("buy packs", tests, NULL, NULL) ? 1 : 0;
}
