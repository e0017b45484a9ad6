/* A shopping trip for several builds: pooled packs, shares to the cent, one edit for all. */
#include "shopping.h"

#include "dice.h"

#include "desk/spend.h"
#include "desk/trip.h"
#include "paper/sheets.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define DAY "2026-11-25"

static int begin(void **state)
{
    static const char *const names[] = {"headboard", "ottoman", "banquette", NULL};
    static struct shopping shopping;
    bench_open(&shopping.bench, names);
    DONE(desk_set(shopping.bench.desk, ENTITY_workshop, 0, "tax", "7.25 %", note));
    DONE(desk_take_up(shopping.bench.desk, 0, note));
    shopping_begin(&shopping);
    *state = &shopping;
    return 0;
}

/* The line of packs that all have a share in and that pooling makes cheaper. */
static size_t pooled_line(const struct shopping *shopping)
{
    for (size_t i = 0; i < trip_of(shopping)->lines.count; i++) {
        if (trip_of(shopping)->lines.at[i].saved)
            return i;
    }
    fail_msg("nothing is pooled");
    return 0;
}

static int64_t spent(struct shopping *shopping, int64_t build)
{
    DONE(desk_take_up(shopping->bench.desk, build, note));
    int64_t sum = desk_plan(shopping->bench.desk)->cost.spent;
    DONE(desk_take_up(shopping->bench.desk, 0, note));
    return sum;
}

/* ---- the list ---- */

static void every_line_and_the_whole_add_up_to_the_cent(void **state)
{
    const struct trip *trip = trip_of(*state);
    int64_t lines = 0;
    int64_t price = 0;
    for (size_t i = 0; i < trip->lines.count; i++) {
        int64_t shares = 0;
        for (size_t k = 0; k < trip->lines.at[i].shares.count; k++)
            shares += trip->lines.at[i].shares.at[k].till;
        assert_int_equal(shares, trip->lines.at[i].till);
        lines += trip->lines.at[i].till;
        price += trip->lines.at[i].price;
    }
    assert_int_equal(lines, trip->till);
    /* 7.25 % on the whole, rounded once. */
    int64_t tax = trip->till - price;
    assert_true(llabs(tax * 10000 - price * 725) <= 5000);
}

static void lines_stand_by_aisle(void **state)
{
    const struct trip *trip = trip_of(*state);
    assert_true(trip->lines.count > 1);
    for (size_t i = 1; i < trip->lines.count; i++)
        assert_true(trip->lines.at[i - 1].aisle <= trip->lines.at[i].aisle);
}

/* Packs hold what all builds together need, and one pack less would not. */
static void packs_are_counted_over_all_builds(void **state)
{
    struct shopping *shopping = *state;
    const struct trip_line *line = &trip_of(shopping)->lines.at[pooled_line(shopping)];
    const struct model *model = trip_of(shopping)->builds.at[0].model;
    int64_t holds = MODEL_FIND(model, offer, line->offer)->pack;
    int64_t need = 0;
    int64_t apart = 0;
    for (size_t i = 0; i < line->shares.count; i++) {
        need += line->shares.at[i].purchase->need - line->shares.at[i].purchase->shelf;
        apart += line->shares.at[i].purchase->packs;
    }
    assert_true(line->packs * holds >= need);
    assert_true((line->packs - 1) * holds < need);
    assert_int_equal(line->packs + line->saved, apart);
}

static size_t builds_with_shelf(const struct shopping *shopping, size_t *ret_most)
{
    size_t all = 0;
    *ret_most = 0;
    for (size_t i = 0; i < trip_of(shopping)->lines.count; i++) {
        const struct trip_line *line = &trip_of(shopping)->lines.at[i];
        size_t builds = 0;
        for (size_t k = 0; k < line->shares.count; k++)
            builds += line->shares.at[k].purchase->shelf > 0;
        *ret_most = builds > *ret_most ? builds : *ret_most;
        all += builds;
    }
    return all;
}

static enum fault change_shelf(struct model *draft, void *context, struct fault_note *note)
{
    (void)context;
    (void)note;
    for (size_t i = 0; i < draft->stocks.count; i++) {
        struct leftover *leftover = MODEL_ADD(draft, leftover);
        leftover->stock = draft->stocks.at[i].key;
        leftover->length = 90 * LENGTH_INCH;
        leftover->width = 40 * LENGTH_INCH;
        leftover->count = 3;
    }
    return FAULT_NONE;
}

/* What lies on the shelf once is not taken off twice, or too little would be bought. */
static void the_shelf_serves_one_build(void **state)
{
    struct shopping *shopping = *state;
    size_t most;
    size_t before = builds_with_shelf(shopping, &most);
    DONE(desk_edit(shopping->bench.desk, "shelf", change_shelf, NULL, note));
    shopping_begin(shopping);
    assert_true(builds_with_shelf(shopping, &most) > before);
    assert_int_equal(most, 1);
}

/* ---- paying ---- */

static void a_line_is_paid_in_every_build_that_shares_it(void **state)
{
    struct shopping *shopping = *state;
    size_t index = pooled_line(shopping);
    int64_t due = trip_of(shopping)->lines.at[index].till;
    DONE(desk_trip_pay(shopping->bench.desk, shopping->trip, index, DAY, NULL, note));
    shopping_begin(shopping);
    const struct trip_line *line = &trip_of(shopping)->lines.at[index];
    assert_true(line->paid);
    assert_int_equal(line->amount, due);
    assert_int_equal(trip_of(shopping)->paid, due);
    int64_t sum = 0;
    for (size_t i = 0; i < 3; i++)
        sum += spent(shopping, shopping->bench.builds[i]);
    assert_int_equal(sum, due);
}

static void what_was_really_paid_is_shared_to_the_cent(void **state)
{
    struct shopping *shopping = *state;
    size_t index = pooled_line(shopping);
    DONE(desk_trip_pay(shopping->bench.desk, shopping->trip, index, DAY, "10.01", note));
    int64_t sum = 0;
    for (size_t i = 0; i < 3; i++)
        sum += spent(shopping, shopping->bench.builds[i]);
    assert_int_equal(sum, 1001);
}

/* A line with a share of the first build, and goods of the workshop's stock. */
static size_t line_of_first(const struct shopping *shopping)
{
    for (size_t i = 0; i < trip_of(shopping)->lines.count; i++) {
        const struct trip_line *line = &trip_of(shopping)->lines.at[i];
        if (line->stock && line->shares.at[0].build == 0 && line->shares.at[0].till > 100)
            return i;
    }
    fail_msg("the first build buys nothing");
    return 0;
}

/* A dollar of it paid by hand: the till takes the rest, and what is taken back is the rest alone.
 */
static void the_till_takes_what_is_left_of_a_part_paid_by_hand(void **state)
{
    struct shopping *shopping = *state;
    int64_t build = shopping->bench.builds[0];
    const struct trip_line *line = &trip_of(shopping)->lines.at[line_of_first(shopping)];
    int64_t stock = line->stock;
    struct spend_part part = {.build = build, .weight = 1};
    const struct desk_spend dollar = {
        .amount = "1.00",
        .what = "part of it",
        .dated = DAY,
        .stock = MODEL_FIND(trip_of(shopping)->builds.at[0].model, stock, stock)->name};
    DONE(desk_spend(shopping->bench.desk, &dollar, &part, 1, note));
    shopping_begin(shopping);
    size_t index = line_of_first(shopping);
    line = &trip_of(shopping)->lines.at[index];
    assert_int_equal(line->stock, stock);
    int64_t till = line->till;
    assert_false(line->paid);
    assert_int_equal(line->amount, 100);
    DONE(desk_trip_pay(shopping->bench.desk, shopping->trip, index, DAY, NULL, note));
    shopping_begin(shopping);
    line = &trip_of(shopping)->lines.at[index];
    assert_true(line->paid);
    assert_int_equal(line->amount, till);
    DONE(desk_trip_unpay(shopping->bench.desk, shopping->trip, index, note));
    shopping_begin(shopping);
    assert_int_equal(trip_of(shopping)->lines.at[index].amount, 100);
    assert_int_equal(spent(shopping, build), 100);
    assert_int_equal(
        desk_trip_unpay(shopping->bench.desk, shopping->trip, index, &(struct fault_note){0}),
        FAULT_REFUSED);
}

static void one_undo_takes_all_shares_back(void **state)
{
    struct shopping *shopping = *state;
    char label[STORE_LABEL];
    DONE(desk_trip_pay(shopping->bench.desk, shopping->trip, pooled_line(shopping), DAY, NULL,
                       note));
    DONE(desk_undo(shopping->bench.desk, label, note));
    assert_int_equal(strncmp(label, "paid: ", 6), 0);
    for (size_t i = 0; i < 3; i++)
        assert_int_equal(spent(shopping, shopping->bench.builds[i]), 0);
}

static void a_line_is_not_paid_after_all(void **state)
{
    struct shopping *shopping = *state;
    size_t index = pooled_line(shopping);
    DONE(desk_trip_pay(shopping->bench.desk, shopping->trip, index, DAY, NULL, note));
    shopping_begin(shopping);
    DONE(desk_trip_unpay(shopping->bench.desk, shopping->trip, index, note));
    for (size_t i = 0; i < 3; i++)
        assert_int_equal(spent(shopping, shopping->bench.builds[i]), 0);
}

static void an_amount_that_is_none_is_refused(void **state)
{
    struct shopping *shopping = *state;
    struct fault_note refusal = {0};
    assert_int_not_equal(
        desk_trip_pay(shopping->bench.desk, shopping->trip, 0, DAY, "ten", &refusal), FAULT_NONE);
    for (size_t i = 0; i < 3; i++)
        assert_int_equal(spent(shopping, shopping->bench.builds[i]), 0);
}

/* Another program wrote since the desk read the file: nothing is written over that. */
static void a_list_that_is_stale_is_not_paid(void **state)
{
    struct shopping *shopping = *state;
    struct desk *other = desk_at(&shopping->bench.place);
    struct fault_note refusal = {0};
    DONE(desk_take_up(other, shopping->bench.builds[0], note));
    DONE(desk_set(other, ENTITY_build, 0, "note", "measured", note));
    desk_close(other);
    assert_int_equal(desk_trip_pay(shopping->bench.desk, shopping->trip, 0, DAY, NULL, &refusal),
                     FAULT_CHANGED);
}

/* ---- delivery ---- */

/* One supplier has all of it: what he asks, and from which sum on nothing. */
struct charge {
    int64_t delivery, free_from;
};

static enum fault change_supplier(struct model *draft, void *context, struct fault_note *note)
{
    const struct charge *charge = context;
    struct supplier *supplier = MODEL_ADD(draft, supplier);
    (void)note;
    supplier->name = "Yard";
    supplier->delivery = charge->delivery;
    supplier->free_from = charge->free_from;
    for (size_t i = 0; i < draft->stocks.count; i++)
        draft->stocks.at[i].supplier = "Yard";
    return FAULT_NONE;
}

static void brought(struct shopping *shopping, int64_t delivery, int64_t free_from)
{
    struct charge charge = {delivery, free_from};
    DONE(desk_edit(shopping->bench.desk, "supplier", change_supplier, &charge, note));
    shopping_begin(shopping);
}

static const struct trip_line *delivery_of(const struct trip *trip)
{
    const struct trip_line *found = NULL;
    for (size_t i = 0; i < trip->lines.count; i++) {
        if (!trip->lines.at[i].supplier)
            continue;
        assert_null(found);
        found = &trip->lines.at[i];
    }
    return found;
}

/* Three builds by themselves pay it three times; who has more brought pays more of the one. */
static void one_order_is_brought_once_and_shared_by_use(void **state)
{
    struct shopping *shopping = *state;
    brought(shopping, 2500, 0);
    const struct trip *trip = trip_of(shopping);
    const struct trip_line *line = delivery_of(trip);
    int64_t sum = 0;
    int64_t apart = 0;
    assert_non_null(line);
    assert_int_equal(line->price, 2500);
    assert_int_equal(line->shares.count, 3);
    for (size_t i = 0; i < 3; i++) {
        sum += line->shares.at[i].till;
        apart += line->shares.at[i].purchase->price;
        for (size_t k = 0; k < 3; k++) {
            const struct trip_share *a = &line->shares.at[i];
            const struct trip_share *b = &line->shares.at[k];
            assert_false(a->weight < b->weight && a->till > b->till);
        }
    }
    assert_int_equal(sum, line->till);
    assert_int_equal(apart, 3 * 2500);
    every_line_and_the_whole_add_up_to_the_cent(state);
}

/* Enough together, though no build has enough alone. */
static void what_is_enough_together_is_brought_for_nothing(void **state)
{
    struct shopping *shopping = *state;
    brought(shopping, 2500, 100000);
    const struct trip *trip = trip_of(shopping);
    assert_null(delivery_of(trip));
    for (size_t i = 0; i < 3; i++) {
        const struct plan *plan = trip->builds.at[i].plan;
        assert_int_equal(plan->purchases.at[plan->purchases.count - 1].price, 2500);
    }
    every_line_and_the_whole_add_up_to_the_cent(state);
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, shopping_end)
    const struct CMUnitTest tests[] = {
        FACT(every_line_and_the_whole_add_up_to_the_cent),
        FACT(lines_stand_by_aisle),
        FACT(one_order_is_brought_once_and_shared_by_use),
        FACT(what_is_enough_together_is_brought_for_nothing),
        FACT(packs_are_counted_over_all_builds),
        FACT(the_shelf_serves_one_build),
        FACT(a_line_is_paid_in_every_build_that_shares_it),
        FACT(what_was_really_paid_is_shared_to_the_cent),
        FACT(the_till_takes_what_is_left_of_a_part_paid_by_hand),
        FACT(one_undo_takes_all_shares_back),
        FACT(a_line_is_not_paid_after_all),
        FACT(an_amount_that_is_none_is_refused),
        FACT(a_list_that_is_stale_is_not_paid),
    };
    int failed = cmocka_run_group_tests_name("trip", tests, NULL, NULL);
    return failed ? 1 : 0;
}
