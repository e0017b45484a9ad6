/* Sticks, sheets and cloth to buy. Where nothing else is said sums are done by hand. */
#include "shop.h"

#include "plan/buy.h"

#include "cut/known.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

/* ---- sticks ---- */

/* Worked example, computed by hand: wing headboard. */
static void need_headboard(struct shop *shop, int64_t stick)
{
    need_sticks(shop, stick, 6, 56);
    need_sticks(shop, stick, 3, 60);
    need_sticks(shop, stick, 2, 45.75);
    need_sticks(shop, stick, 3, 5.75);
    need_sticks(shop, stick, 6, 8.875);
}

static void headboard_buys_ten_sticks(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x3", STOCK_STICK, 2.5);

    shop_offer(shop, stick, 96, 0, 420);
    need_headboard(shop, stick);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, stick)->packs, 10);
    assert_int_equal(shop_line(shop, stick)->price, 4200);
    assert_int_equal(shop->plan->cuttings.count, 10);
    assert_int_equal(shop->plan->placements.count, 20);
}

static void headboard_buys_two_lengths_where_that_is_cheaper(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x3", STOCK_STICK, 2.5);

    shop_offer(shop, stick, 96, 0, 420);
    shop_offer(shop, stick, 120, 0, 610);
    need_headboard(shop, stick);
    shop_buy(shop);
    assert_int_equal(shop->plan->purchases.count, 2);
    assert_int_equal(shop->plan->cost.bought, 3470);
}

static void members_of_all_boxes_are_pooled(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    shop_offer(shop, stick, 96, 0, 310);
    need_sticks(shop, stick, 2, 40);
    shop->plan->members.at[0].box = 1;
    shop->plan->members.at[1].box = 2;
    shop_buy(shop);
    assert_int_equal(shop_line(shop, stick)->packs, 1);
}

static void the_shelf_is_used_before_a_stick_is_bought(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    shop_offer(shop, stick, 96, 0, 310);
    shop_leftover(shop, stick, 45, 0, 1, "");
    need_sticks(shop, stick, 3, 44);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, stick)->packs, 1);
    assert_int_equal(shop->plan->cuttings.count, 2);
}

static void a_leftover_kept_for_another_build_stays_on_the_shelf(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    shop_offer(shop, stick, 96, 0, 310);
    shop_leftover(shop, stick, 45, 0, 1, "other");
    need_sticks(shop, stick, 1, 44);
    shop_buy(shop);
    assert_int_equal(shop->plan->cuttings.at[0].source->leftover, 0);
    shop->model.leftovers.at[0].kept_for = "bench";
    shop_buy(shop);
    assert_true(shop->plan->cuttings.at[0].source->leftover != 0);
}

static void a_leftover_of_which_none_is_left_is_not_cut_from(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    shop_offer(shop, stick, 96, 0, 310);
    shop_leftover(shop, stick, 45, 0, 0, "");
    need_sticks(shop, stick, 1, 44);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, stick)->packs, 1);
    assert_int_equal(shop->plan->cuttings.at[0].source->leftover, 0);
}

/* Nothing is said for the far end by the standard values; squared too, it comes off the length. */
static void a_far_end_that_is_squared_comes_off_each_stick(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    shop_offer(shop, stick, 96, 0, 310);
    need_sticks(shop, stick, 1, 95.5);
    shop_buy(shop);
    assert_int_equal(shop_findings(shop, FINDING_NOT_SOLD), 0);
    assert_int_equal(trade_change(&shop->model, TRADE_FROM_BUILD, "stick.trim.far", "1 in", NULL),
                     FAULT_NONE);
    shop_buy(shop);
    assert_int_equal(shop_findings(shop, FINDING_NOT_SOLD), 1);
}

static void an_offer_without_a_price_is_not_taken_for_free(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    shop_offer(shop, stick, 120, 0, 0);
    shop_offer(shop, stick, 96, 0, 310);
    need_sticks(shop, stick, 1, 44);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, stick)->price, 310);
    assert_int_equal(shop_findings(shop, FINDING_NO_PRICE), 0);
}

static void sticks_without_any_price_are_counted_and_told(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    shop_offer(shop, stick, 96, 0, 0);
    need_sticks(shop, stick, 1, 44);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, stick)->packs, 1);
    assert_false(shop_line(shop, stick)->priced);
    assert_int_equal(shop_findings(shop, FINDING_NO_PRICE), 1);
}

/* What nothing is known of the price of is no cheaper than what is there. */
static void the_shelf_is_used_before_what_has_no_price(void **state)
{
    struct shop *shop = *state;
    int64_t ply = shop_stock(shop, "ply", STOCK_SHEET, 48);
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    shop_leftover(shop, ply, 31, 21, 2, "");
    shop_leftover(shop, stick, 50, 0, 2, "");
    need_pieces(shop, ply, 2, 20, 30);
    need_sticks(shop, stick, 2, 44);
    shop_buy(shop);
    assert_int_equal(shop->plan->cuttings.count, 4);
    for (size_t i = 0; i < 4; i++)
        assert_true(shop->plan->cuttings.at[i].source->leftover != 0);
    assert_int_equal(shop->plan->purchases.count, 0);
}

static void what_nobody_offers_is_bought_by_no_offer(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    need_sticks(shop, stick, 1, 44);
    shop_buy(shop);
    assert_true(shop_line(shop, stick)->packs > 0);
    assert_int_equal(shop_line(shop, stick)->offer, 0);
}

static void sticks_sold_in_bundles_are_bought_in_bundles(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    shop_offer(shop, stick, 96, 0, 1000)->pack = 4;
    need_sticks(shop, stick, 5, 90);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, stick)->packs, 2);
    assert_int_equal(shop_line(shop, stick)->price, 2000);
}

static void a_part_too_long_is_told_with_what_is_missing(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    shop_offer(shop, stick, 96, 0, 310);
    need_sticks(shop, stick, 1, 96);
    shop_buy(shop);
    assert_int_equal(shop_findings(shop, FINDING_NOT_SOLD), 1);
    /* the trim of 1/4 in; common practice, no source */
    assert_int_equal(shop->plan->findings.at[0].arguments[2].value, IN(0.25));
}

static void cleats_are_cut_from_sticks(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "1x3", STOCK_STICK, 2.5);
    struct fitting *cleat = MODEL_ADD(&shop->model, fitting);

    cleat->kind = FITTING_CLEAT;
    cleat->stock = stick;
    cleat->length = IN(40);
    cleat->count = 4;
    shop_offer(shop, stick, 96, 0, 290);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, stick)->packs, 2);
}

static void a_cleat_that_hangs_on_a_wall_has_two_halves(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "1x3", STOCK_STICK, 2.5);
    struct box *box = MODEL_ADD(&shop->model, box);
    struct join *hung = MODEL_ADD(&shop->model, join);
    struct fitting *cleat = MODEL_ADD(&shop->model, fitting);

    hung->box_a = cleat->box = box->key;
    hung->side_a = cleat->side = SIDE_BACK;
    hung->target = TARGET_WALL;
    hung->fastener = FASTENER_REST;
    cleat->kind = FITTING_CLEAT;
    cleat->name = "french cleat";
    cleat->stock = stick;
    cleat->length = IN(40);
    shop_offer(shop, stick, 96, 0, 290);
    shop_buy(shop);
    assert_int_equal(shop->plan->parts.count, 2);
    assert_int_equal(shop->plan->parts.at[0].length, IN(40));
    assert_int_equal(shop->plan->parts.at[1].length, IN(40));
    assert_string_equal(shop->plan->parts.at[1].label, "french cleat, on the wall");
}

static void a_spoiled_part_is_cut_once_more(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);
    struct cut_part *cut = MODEL_ADD(&shop->model, cut_part);

    cut->part = "m1";
    cut->spoiled = 1;
    shop_offer(shop, stick, 96, 0, 310);
    need_sticks(shop, stick, 1, 90);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, stick)->packs, 2);
}

/* A stick of 96 was cut for the first part, and leaves too little for the second. */
static void a_part_that_is_new_after_the_first_cuts_is_cut_too(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);
    struct tick *tick = MODEL_ADD(&shop->model, tick);
    struct cut_stock *from = MODEL_ADD(&shop->model, cut_stock);
    struct cut_part *cut = MODEL_ADD(&shop->model, cut_part);

    tick->step = arena_format(&shop->arena, "cut:%d", (int)stick);
    from->tick = cut->tick = tick->key;
    from->origin = ORIGIN_BOUGHT;
    from->length = IN(96);
    from->pack = 1;
    from->rest = IN(5.75);
    cut->cut_stock = from->key;
    cut->part = "m1";
    cut->length = IN(90);
    shop_offer(shop, stick, 96, 0, 310);
    need_sticks(shop, stick, 2, 90);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, stick)->packs, 2);
    assert_int_equal(shop->plan->cuttings.count, 2);
    assert_int_equal(shop->plan->placements.count, 2);
}

static void sticks_that_were_bought_count(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    shop_offer(shop, stick, 96, 0, 310);
    need_sticks(shop, stick, 1, 90);
    shop_bought(shop, stick, 96, 0, 3);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, stick)->packs, 3);
    assert_int_equal(shop_line(shop, stick)->price, 930);
}

static void a_bundle_that_was_bought_is_no_single_stick_as_well(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    shop_offer(shop, stick, 96, 0, 420);
    shop_offer(shop, stick, 96, 0, 1500)->pack = 4;
    need_sticks(shop, stick, 4, 90);
    shop_bought(shop, stick, 96, 0, 1);
    shop->model.boughts.at[0].pack = 4;
    shop_buy(shop);
    assert_int_equal(shop_line(shop, stick)->packs, 1);
    assert_int_equal(shop_line(shop, stick)->price, 1500);
}

/* Packs of the lines of a stick, by pack. */
static int64_t packs_of(const struct shop *shop, int64_t stick, int64_t pack)
{
    int64_t packs = 0;

    for (size_t i = 0; i < shop->plan->purchases.count; i++) {
        const struct purchase *line = &shop->plan->purchases.at[i];
        const struct offer *offer = MODEL_FIND(&shop->model, offer, line->offer);

        if (line->stock == stick && offer && offer->pack == pack)
            packs += line->packs;
    }
    return packs;
}

/* Of sticks that hold one part each. A bundle of 4 for 14.00 is less than four single ones of 4.20,
 * and two single ones are less than a bundle: 2 parts 8.40, 4 parts 14.00, 6 parts 22.40, and with
 * a bundle bought already its four and one single one for 5 parts. */
static void bundles_and_single_sticks_are_bought_as_costs_least(void **state)
{
    static const struct {
        int parts, bought, single, bundles;
    } cases[] = {{2, 0, 2, 0}, {3, 0, 3, 0}, {4, 0, 0, 1},
                 {6, 0, 2, 1}, {8, 0, 0, 2}, {5, 1, 1, 1}};
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    shop_offer(shop, stick, 96, 0, 420);
    shop_offer(shop, stick, 96, 0, 1400)->pack = 4;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        shop->plan->members.count = 0;
        shop->model.boughts.count = 0;
        need_sticks(shop, stick, cases[i].parts, 90);
        if (cases[i].bought) {
            shop_bought(shop, stick, 96, 0, cases[i].bought);
            shop->model.boughts.at[0].pack = 4;
        }
        shop_buy(shop);
        assert_int_equal(packs_of(shop, stick, 1), cases[i].single);
        assert_int_equal(packs_of(shop, stick, 4), cases[i].bundles);
    }
}

/* What is bought of both counts on both lines, and is all that was missing. */
static void bundles_and_single_sticks_are_each_bought_once(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);
    size_t index = model_index(&shop->model, ENTITY_stock, stick);

    shop_offer(shop, stick, 96, 0, 420);
    shop_offer(shop, stick, 96, 0, 1400)->pack = 4;
    need_sticks(shop, stick, 6, 90);
    shop_bought(shop, stick, 96, 0, 1);
    shop_bought(shop, stick, 96, 0, 2);
    shop->model.boughts.at[0].pack = 4;
    shop->model.boughts.at[1].pack = 1;
    shop_buy(shop);
    for (size_t i = 0; i < shop->plan->purchases.count; i++) {
        const struct purchase *line = &shop->plan->purchases.at[i];

        assert_int_equal(plan_cost_line(shop->plan, line)->bought, line->packs);
    }
    assert_false(stocks_short(shop->plan, &shop->arena)[index]);
    shop->model.boughts.at[1].packs = 1;
    shop_buy(shop);
    assert_true(stocks_short(shop->plan, &shop->arena)[index]);
    assert_int_equal(packs_of(shop, stick, 1), 2);
}

/* A slab of 80 x 40 is at hand. A piece of 40 x 20 would be cheaper from the smaller one. */
static void a_slab_that_was_bought_is_cut_before_a_cheaper_one_is_bought(void **state)
{
    struct shop *shop = *state;
    int64_t foam = shop_stock(shop, "foam", STOCK_FOAM, 0);

    shop_offer(shop, foam, 80, 40, 5000);
    shop_offer(shop, foam, 48, 24, 1500);
    need_pieces(shop, foam, 1, 20, 40);
    shop_bought(shop, foam, 80, 40, 1);
    shop->model.boughts.at[0].pack = 1;
    shop_buy(shop);
    assert_int_equal(shop_line(shop, foam)->packs, 1);
    assert_int_equal(shop_line(shop, foam)->price, 5000);
    assert_int_equal(shop->plan->cuttings.at[0].length, IN(80));
}

/* ---- cloth that was bought ---- */

/* Five lengths of 40 in on cloth of 54 in, one beside none: 200 in. Of 90 in bought two come out,
 * 10 in are of no use, and three are bought: 120 in, not 110. */
static void cloth_that_was_bought_is_not_made_longer(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "linen", STOCK_BATTING, 54);

    shop_stock_of(shop, cloth)->step_cut = IN(1);
    shop_offer(shop, cloth, 36, 0, 1000);
    need_pieces(shop, cloth, 5, 40, 40);
    shop_bought(shop, cloth, 90, 0, 1);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, cloth)->length, IN(210));
    assert_int_equal(shop_line(shop, cloth)->used, IN(200));
    shop_bought(shop, cloth, 120, 0, 1);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, cloth)->length, IN(210));
}

/* What is longer than the cut asks for nothing more, though it leaves less than the allowance. */
static void cloth_that_suffices_asks_for_no_more(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "linen", STOCK_CLOTH, 54);

    shop_offer(shop, cloth, 36, 0, 1000);
    need_pieces(shop, cloth, 5, 40, 40);
    shop_bought(shop, cloth, 201, 0, 1);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, cloth)->length, IN(201));
}

/* ---- layouts that are facts ---- */

static void keep_layout(struct shop *shop, const struct plan_job *job)
{
    struct layout *kept = MODEL_ADD(&shop->model, layout);
    struct text content;
    char name[17];

    snprintf(name, sizeof name, "%016" PRIx64, job->digest);
    text_init(&content);
    cut_layout_print(job->layout, &content);
    kept->job = arena_text(&shop->arena, name);
    kept->content = arena_text(&shop->arena, text_string(&content));
    text_release(&content);
}

/* Of two kinds of stick, both layouts kept: each is found again, the first as well as the last. */
static void a_layout_that_was_taken_is_cut(void **state)
{
    struct shop *shop = *state;

    for (int kind = 0; kind < 2; kind++) {
        int64_t stick = shop_stock(shop, kind ? "rail stick" : "post stick", STOCK_STICK, 0);

        shop_offer(shop, stick, 96, 0, 400);
        need_sticks(shop, stick, 3 + kind, 40);
    }
    shop_buy(shop);
    assert_int_equal(shop->plan->jobs.count, 2);
    for (size_t i = 0; i < 2; i++) {
        assert_false(shop->plan->jobs.at[i].taken);
        keep_layout(shop, &shop->plan->jobs.at[i]);
    }
    shop_buy(shop);
    for (size_t i = 0; i < 2; i++)
        assert_true(shop->plan->jobs.at[i].taken);
}

static void sticks_that_are_no_longer_needed_stay_paid(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x2", STOCK_STICK, 1.5);

    shop_offer(shop, stick, 96, 0, 310);
    shop_bought(shop, stick, 96, 0, 3);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, stick)->price, 930);
    assert_int_equal(shop_line(shop, stick)->value, 0);
}

/* ---- rolls ---- */

/* Worked example, computed by hand: 203.75 in, with 5 % 213.94 in, in steps of 9 in six yards. */
static void headboard_buys_six_yards_of_cloth(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "cover", STOCK_CLOTH, 54);

    shop_offer(shop, cloth, 36, 0, 2200);
    need_pieces(shop, cloth, 1, 54, 71.75);
    need_pieces(shop, cloth, 2, 14.25, 71.75);
    need_pieces(shop, cloth, 4, 15.875, 60.25);
    need_pieces(shop, cloth, 2, 5, 60.25);
    need_pieces(shop, cloth, 2, 16.125, 5);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, cloth)->length, IN(216));
    assert_int_equal(shop_line(shop, cloth)->price, 13200);
}

/* Worked example, computed by hand: 324 in, railroaded; 9.45 yd, so 9.50. */
static void banquette_buys_nine_and_a_half_yards(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "cover", STOCK_CLOTH, 54);
    static const double sizes[][2] = {{99.5, 33.5}, {57.5, 33.5},  {97, 31},
                                      {70, 31},     {91.5, 21.75}, {67.5, 21.75}};

    shop_offer(shop, cloth, 36, 0, 2600);
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        need_pieces(shop, cloth, 1, sizes[i][0], sizes[i][1]);
        shop->plan->pieces.at[i].across = true;
    }
    shop_buy(shop);
    assert_int_equal(shop_line(shop, cloth)->used, IN(324));
    assert_int_equal(shop_line(shop, cloth)->length, IN(342));
    assert_int_equal(shop_line(shop, cloth)->price, 24700);
}

/* Worked example, computed by hand: batting is rounded only; 242.5 in are 6.75 yd. */
static void batting_is_rounded_without_a_reserve(void **state)
{
    struct shop *shop = *state;
    int64_t batting = shop_stock(shop, "batting", STOCK_BATTING, 48);

    shop_offer(shop, batting, 36, 0, 450);
    need_pieces(shop, batting, 1, 48, 242.5);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, batting)->length, IN(243));
    assert_int_equal(shop_line(shop, batting)->price, 3038); /* 6.75 x 4.50 = 30.375 */
}

static void a_roll_has_a_least_cut(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "cover", STOCK_CLOTH, 54);

    shop_stock_of(shop, cloth)->least_cut = IN(72);
    need_pieces(shop, cloth, 1, 20, 20);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, cloth)->length, IN(72));
}

static void cloth_that_is_no_longer_needed_stays_paid(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "cover", STOCK_CLOTH, 54);

    shop_offer(shop, cloth, 36, 0, 2200);
    shop_bought(shop, cloth, 216, 0, 1);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, cloth)->length, IN(216));
    assert_int_equal(shop_line(shop, cloth)->price, 13200);
    assert_int_equal(shop_line(shop, cloth)->value, 0);
}

/* ---- cloth with a pattern ---- */

static const struct placement *placement_of(const struct shop *shop, size_t part)
{
    for (size_t i = 0; i < shop->plan->placements.count; i++)
        if (shop->plan->placements.at[i].part == part)
            return &shop->plan->placements.at[i];
    fail_msg("part %zu lies nowhere", part);
    return NULL;
}

static void pieces_of_patterned_cloth_begin_at_one_place_of_the_repeat(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "stripes", STOCK_CLOTH, 54);

    shop_stock_of(shop, cloth)->repeat_along = IN(12);
    need_pieces(shop, cloth, 2, 40, 20);
    shop_buy(shop);
    assert_int_equal(shop->plan->placements.at[1].along, IN(24));
    assert_int_equal(shop_line(shop, cloth)->used, IN(44));
}

/* Where the pattern begins on the roll shows when it lies there: one repeat more is bought, as a
 * guide for makers of curtains has it (diyideas.com, fabric repeats). */
static void a_repeat_more_is_bought(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "stripes", STOCK_CLOTH, 54);
    struct stock *stock = shop_stock_of(shop, cloth);

    stock->repeat_along = IN(27);
    stock->step_cut = IN(1);
    need_pieces(shop, cloth, 2, 54, 96);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, cloth)->used, IN(108 + 96));
    assert_int_equal(shop_line(shop, cloth)->length, IN(243)); /* 5 % on 231 are 242.55 */
}

/* Middles on one line of the pattern: 20 and 12 wide, so the second begins 4 in further in it. */
static void pieces_lie_with_their_middles_on_one_line_of_the_pattern(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "flowers", STOCK_CLOTH, 54);

    shop_stock_of(shop, cloth)->repeat_across = IN(9);
    need_pieces(shop, cloth, 1, 20, 30);
    need_pieces(shop, cloth, 1, 12, 30);
    shop_buy(shop);
    assert_int_equal(
        (placement_of(shop, 1)->across + IN(6) - placement_of(shop, 0)->across - IN(10)) % IN(9),
        0);
}

static void a_half_drop_moves_what_is_cut_beside(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "diamonds", STOCK_CLOTH, 54);
    struct stock *stock = shop_stock_of(shop, cloth);

    stock->repeat_along = IN(24);
    stock->repeat_across = IN(27);
    need_pieces(shop, cloth, 2, 27, 40);
    shop_buy(shop);
    assert_int_equal(shop_line(shop, cloth)->used, IN(40));
    stock->half_drop = 1;
    shop_buy(shop);
    assert_int_equal(shop_line(shop, cloth)->used, IN(52));
}

/* Derived: with a half-drop every other width is half a repeat further on. */
static void a_width_sewn_on_drops_where_no_repeat_across_is_known(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "diamonds", STOCK_CLOTH, 54);
    struct stock *stock = shop_stock_of(shop, cloth);

    stock->repeat_along = IN(24);
    stock->half_drop = 1;
    need_pieces(shop, cloth, 3, 27, 40);
    shop->plan->pieces.at[1].nth = 1;
    shop->plan->pieces.at[2].nth = -1;
    shop_buy(shop);
    assert_int_equal(
        (placement_of(shop, 1)->along - placement_of(shop, 0)->along + IN(96)) % IN(24), IN(12));
    assert_int_equal(
        (placement_of(shop, 2)->along - placement_of(shop, 1)->along + IN(96)) % IN(24), 0);
}

static void strips_of_patterned_cloth_may_lie_either_way(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "stripes", STOCK_CLOTH, 54);

    shop_stock_of(shop, cloth)->repeat_along = IN(12);
    need_pieces(shop, cloth, 4, 13, 5);
    for (size_t i = 0; i < 4; i++)
        shop->plan->pieces.at[i].turned_allowed = true;
    shop_buy(shop);
    assert_int_equal(shop_line(shop, cloth)->used, IN(5));
}

static void pile_is_never_turned(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "velvet", STOCK_CLOTH, 54);

    need_pieces(shop, cloth, 1, 20, 60);
    shop->plan->pieces.at[0].turned_allowed = true;
    shop_buy(shop);
    assert_true(shop->plan->parts.at[0].may_turn);
    shop_stock_of(shop, cloth)->pile = 1;
    shop_buy(shop);
    assert_false(shop->plan->parts.at[0].may_turn);
}

static void a_piece_wider_than_the_roll_is_told(void **state)
{
    struct shop *shop = *state;
    int64_t cloth = shop_stock(shop, "cover", STOCK_CLOTH, 54);

    need_pieces(shop, cloth, 1, 57, 20);
    shop_buy(shop);
    assert_int_equal(shop_findings(shop, FINDING_NOT_SOLD), 1);
    assert_int_equal(shop->plan->findings.at[0].arguments[2].value, IN(3));
}

/* ---- the whole ---- */

static void the_same_needs_give_the_same_list(void **state)
{
    struct shop *shop = *state;
    int64_t stick = shop_stock(shop, "2x3", STOCK_STICK, 2.5);
    struct placement first[20];

    shop_offer(shop, stick, 96, 0, 420);
    need_headboard(shop, stick);
    shop_buy(shop);
    assert_int_equal(shop->plan->placements.count, 20);
    memcpy(first, shop->plan->placements.at, sizeof first);
    shop_buy(shop);
    for (size_t i = 0; i < 20; i++) {
        assert_int_equal(first[i].part, shop->plan->placements.at[i].part);
        assert_int_equal(first[i].along, shop->plan->placements.at[i].along);
    }
}

static void add_vehicle(struct shop *shop, double width, double height, double length)
{
    struct passage *vehicle = MODEL_ADD(&shop->model, passage);

    vehicle->kind = PASSAGE_VEHICLE;
    vehicle->width = IN(width);
    vehicle->height = IN(height);
    vehicle->length = IN(length);
}

/* A car and a trailer, in whatever order they were entered. */
static void the_first_cut_of_a_sheet_suits_every_vehicle(void **state)
{
    struct shop *shop = *state;
    int64_t ply = shop_stock(shop, "ply", STOCK_SHEET, 48);

    shop_offer(shop, ply, 96, 48, 4500);
    need_pieces(shop, ply, 2, 20, 30);
    add_vehicle(shop, 38, 30, 72);
    add_vehicle(shop, 24, 50, 90);
    shop_buy(shop);
    assert_int_equal(shop->plan->jobs.count, 1);
    assert_int_equal(shop->plan->jobs.at[0].job->passage_length, IN(72));
    assert_int_equal(shop->plan->jobs.at[0].job->passage_width, IN(38));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        SHOP_TEST(headboard_buys_ten_sticks),
        SHOP_TEST(headboard_buys_two_lengths_where_that_is_cheaper),
        SHOP_TEST(members_of_all_boxes_are_pooled),
        SHOP_TEST(the_shelf_is_used_before_a_stick_is_bought),
        SHOP_TEST(a_leftover_kept_for_another_build_stays_on_the_shelf),
        SHOP_TEST(a_leftover_of_which_none_is_left_is_not_cut_from),
        SHOP_TEST(a_far_end_that_is_squared_comes_off_each_stick),
        SHOP_TEST(an_offer_without_a_price_is_not_taken_for_free),
        SHOP_TEST(sticks_without_any_price_are_counted_and_told),
        SHOP_TEST(the_shelf_is_used_before_what_has_no_price),
        SHOP_TEST(what_nobody_offers_is_bought_by_no_offer),
        SHOP_TEST(sticks_sold_in_bundles_are_bought_in_bundles),
        SHOP_TEST(a_part_too_long_is_told_with_what_is_missing),
        SHOP_TEST(cleats_are_cut_from_sticks),
        SHOP_TEST(a_cleat_that_hangs_on_a_wall_has_two_halves),
        SHOP_TEST(a_spoiled_part_is_cut_once_more),
        SHOP_TEST(a_part_that_is_new_after_the_first_cuts_is_cut_too),
        SHOP_TEST(sticks_that_were_bought_count),
        SHOP_TEST(a_bundle_that_was_bought_is_no_single_stick_as_well),
        SHOP_TEST(bundles_and_single_sticks_are_bought_as_costs_least),
        SHOP_TEST(bundles_and_single_sticks_are_each_bought_once),
        SHOP_TEST(a_slab_that_was_bought_is_cut_before_a_cheaper_one_is_bought),
        SHOP_TEST(cloth_that_was_bought_is_not_made_longer),
        SHOP_TEST(cloth_that_suffices_asks_for_no_more),
        SHOP_TEST(a_layout_that_was_taken_is_cut),
        SHOP_TEST(sticks_that_are_no_longer_needed_stay_paid),
        SHOP_TEST(headboard_buys_six_yards_of_cloth),
        SHOP_TEST(banquette_buys_nine_and_a_half_yards),
        SHOP_TEST(batting_is_rounded_without_a_reserve),
        SHOP_TEST(a_roll_has_a_least_cut),
        SHOP_TEST(cloth_that_is_no_longer_needed_stays_paid),
        SHOP_TEST(pieces_of_patterned_cloth_begin_at_one_place_of_the_repeat),
        SHOP_TEST(a_repeat_more_is_bought),
        SHOP_TEST(pieces_lie_with_their_middles_on_one_line_of_the_pattern),
        SHOP_TEST(a_half_drop_moves_what_is_cut_beside),
        SHOP_TEST(a_width_sewn_on_drops_where_no_repeat_across_is_known),
        SHOP_TEST(strips_of_patterned_cloth_may_lie_either_way),
        SHOP_TEST(pile_is_never_turned),
        SHOP_TEST(a_piece_wider_than_the_roll_is_told),
        SHOP_TEST(the_first_cut_of_a_sheet_suits_every_vehicle),
        SHOP_TEST(the_same_needs_give_the_same_list),
    };

    return cmocka_run_group_tests_name("buy", tests, NULL, NULL) ? 1 : 0;
}
