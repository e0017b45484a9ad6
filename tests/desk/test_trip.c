/* A shopping trip for several builds: pooled packs, shares to the cent, one edit for all. */
#include "workshop.h"

#include "dice.h"

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

struct bench {
    struct workshop_place place;
    struct desk *desk;
    struct desk_trip *trip;
    int64_t builds[3];
};

static void shop(struct bench *bench)
{
    desk_trip_free(bench->trip);
    bench->trip = NULL;
    DONE(desk_trip_begin(&bench->trip, bench->desk, bench->builds, 3, CUT_QUICK,
                         sheet_purchase_words, note));
}

static int bench_begin(void **state)
{
    static const char *const cases[] = {"headboard", "ottoman", "banquette"};
    static struct bench bench;
    bench = (struct bench){.desk = NULL};
    place_begin(&bench.place);
    bench.desk = desk_at(&bench.place);
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        desk_take_case(bench.desk, cases[i]);
        bench.builds[i] = desk_model(bench.desk)->build.key;
    }
    DONE(desk_set(bench.desk, ENTITY_workshop, 0, "tax", "7.25 %", note));
    DONE(desk_take_up(bench.desk, 0, note));
    shop(&bench);
    *state = &bench;
    return 0;
}

static int bench_end(void **state)
{
    struct bench *bench = *state;
    desk_trip_free(bench->trip);
    desk_close(bench->desk);
    assert_place_is_sound(&bench->place);
    place_end(&bench->place);
    return 0;
}

static const struct trip *trip_of(const struct bench *bench)
{
    return desk_trip_of(bench->trip);
}

/* The line of packs that all have a share in and that pooling makes cheaper. */
static size_t pooled_line(const struct bench *bench)
{
    for (size_t i = 0; i < trip_of(bench)->lines.count; i++) {
        if (trip_of(bench)->lines.at[i].saved)
            return i;
    }
    fail_msg("nothing is pooled");
    return 0;
}

static int64_t spent(struct bench *bench, int64_t build)
{
    DONE(desk_take_up(bench->desk, build, note));
    int64_t sum = desk_plan(bench->desk)->cost.spent;
    DONE(desk_take_up(bench->desk, 0, note));
    return sum;
}

/* ---- sharing ---- */

static void shares_add_up_to_what_is_shared(void **state)
{
    struct dice dice = {20261130};
    (void)state;
    for (int round = 0; round < 2000; round++) {
        int64_t weights[7];
        int64_t shares[7];
        int64_t sum = 0;
        size_t count = (size_t)dice_between(&dice, 1, 7);
        int64_t amount = dice_between(&dice, -1000000, 1000000);
        for (size_t i = 0; i < count; i++)
            weights[i] = dice_between(&dice, 0, 1) * dice_between(&dice, 0, 1000000);
        trip_share_out(amount, weights, count, shares);
        for (size_t i = 0; i < count; i++)
            sum += shares[i];
        assert_int_equal(sum, amount);
    }
}

/* A third of a dollar each: 33, 34, 33 is the rounding of 33.3, 66.7 and 100. */
static void what_cannot_be_halved_goes_to_somebody(void **state)
{
    static const int64_t weights[] = {5, 5, 5};
    static const int64_t nothing[] = {0, 0};
    int64_t shares[3];
    (void)state;
    trip_share_out(100, weights, 3, shares);
    assert_int_equal(shares[0], 33);
    assert_int_equal(shares[1], 34);
    assert_int_equal(shares[2], 33);
    trip_share_out(7, nothing, 2, shares);
    assert_int_equal(shares[0] + shares[1], 7);
}

static void a_build_without_weight_pays_nothing(void **state)
{
    static const int64_t weights[] = {0, 3, 0, 1};
    int64_t shares[4];
    (void)state;
    trip_share_out(400, weights, 4, shares);
    assert_int_equal(shares[0], 0);
    assert_int_equal(shares[1], 300);
    assert_int_equal(shares[2], 0);
    assert_int_equal(shares[3], 100);
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
    for (size_t i = 1; i < trip->lines.count; i++)
        assert_true(trip->lines.at[i - 1].aisle <= trip->lines.at[i].aisle);
}

/* Packs hold what all builds together need, and one pack less would not. */
static void packs_are_counted_over_all_builds(void **state)
{
    struct bench *bench = *state;
    const struct trip_line *line = &trip_of(bench)->lines.at[pooled_line(bench)];
    const struct model *model = trip_of(bench)->builds.at[0].model;
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

static size_t builds_with_shelf(const struct bench *bench, size_t *ret_most)
{
    size_t all = 0;
    *ret_most = 0;
    for (size_t i = 0; i < trip_of(bench)->lines.count; i++) {
        const struct trip_line *line = &trip_of(bench)->lines.at[i];
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
    struct bench *bench = *state;
    size_t most;
    size_t before = builds_with_shelf(bench, &most);
    DONE(desk_edit(bench->desk, "shelf", change_shelf, NULL, note));
    shop(bench);
    assert_true(builds_with_shelf(bench, &most) > before);
    assert_int_equal(most, 1);
}

/* ---- paying ---- */

static void a_line_is_paid_in_every_build_that_shares_it(void **state)
{
    struct bench *bench = *state;
    size_t index = pooled_line(bench);
    int64_t due = trip_of(bench)->lines.at[index].till;
    DONE(desk_trip_pay(bench->desk, bench->trip, index, DAY, NULL, note));
    shop(bench);
    const struct trip_line *line = &trip_of(bench)->lines.at[index];
    assert_true(line->paid);
    assert_int_equal(line->amount, due);
    assert_int_equal(trip_of(bench)->paid, due);
    int64_t sum = 0;
    for (size_t i = 0; i < 3; i++)
        sum += spent(bench, bench->builds[i]);
    assert_int_equal(sum, due);
}

static void what_was_really_paid_is_shared_to_the_cent(void **state)
{
    struct bench *bench = *state;
    size_t index = pooled_line(bench);
    DONE(desk_trip_pay(bench->desk, bench->trip, index, DAY, "10.01", note));
    int64_t sum = 0;
    for (size_t i = 0; i < 3; i++)
        sum += spent(bench, bench->builds[i]);
    assert_int_equal(sum, 1001);
}

static void one_undo_takes_all_shares_back(void **state)
{
    struct bench *bench = *state;
    char label[STORE_LABEL];
    DONE(desk_trip_pay(bench->desk, bench->trip, pooled_line(bench), DAY, NULL, note));
    DONE(desk_undo(bench->desk, label, note));
    assert_int_equal(strncmp(label, "paid: ", 6), 0);
    for (size_t i = 0; i < 3; i++)
        assert_int_equal(spent(bench, bench->builds[i]), 0);
}

static void a_line_is_not_paid_after_all(void **state)
{
    struct bench *bench = *state;
    size_t index = pooled_line(bench);
    DONE(desk_trip_pay(bench->desk, bench->trip, index, DAY, NULL, note));
    shop(bench);
    DONE(desk_trip_unpay(bench->desk, bench->trip, index, note));
    for (size_t i = 0; i < 3; i++)
        assert_int_equal(spent(bench, bench->builds[i]), 0);
}

static void an_amount_that_is_none_is_refused(void **state)
{
    struct bench *bench = *state;
    struct fault_note refusal = {0};
    assert_int_not_equal(desk_trip_pay(bench->desk, bench->trip, 0, DAY, "ten", &refusal),
                         FAULT_NONE);
    for (size_t i = 0; i < 3; i++)
        assert_int_equal(spent(bench, bench->builds[i]), 0);
}

/* Another program wrote since the desk read the file: nothing is written over that. */
static void a_list_that_is_stale_is_not_paid(void **state)
{
    struct bench *bench = *state;
    struct desk *other = desk_at(&bench->place);
    struct fault_note refusal = {0};
    DONE(desk_take_up(other, bench->builds[0], note));
    DONE(desk_set(other, ENTITY_build, 0, "note", "measured", note));
    desk_close(other);
    assert_int_equal(desk_trip_pay(bench->desk, bench->trip, 0, DAY, NULL, &refusal),
                     FAULT_CHANGED);
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, bench_begin, bench_end)
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(shares_add_up_to_what_is_shared),
        cmocka_unit_test(what_cannot_be_halved_goes_to_somebody),
        cmocka_unit_test(a_build_without_weight_pays_nothing),
        FACT(every_line_and_the_whole_add_up_to_the_cent),
        FACT(lines_stand_by_aisle),
        FACT(packs_are_counted_over_all_builds),
        FACT(the_shelf_serves_one_build),
        FACT(a_line_is_paid_in_every_build_that_shares_it),
        FACT(what_was_really_paid_is_shared_to_the_cent),
        FACT(one_undo_takes_all_shares_back),
        FACT(a_line_is_not_paid_after_all),
        FACT(an_amount_that_is_none_is_refused),
        FACT(a_list_that_is_stale_is_not_paid),
    };
    int failed = cmocka_run_group_tests_name("trip", tests, NULL, NULL);
    return failed ? 1 : 0;
}
