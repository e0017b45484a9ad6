/* What was paid by hand: for a build, for the shelf, and split over several. */
#include "desk/spend.h"

#include "dice.h"
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
    static const char *const names[] = {"headboard", "ottoman", "banquette", NULL};
    return bench_begin(state, names);
}

/* What a build (0: the shelf) was charged for a thing, and the tax in it. */
static void charged(struct bench *bench, int64_t build, const char *what, int64_t *ret_amount,
                    int64_t *ret_tax)
{
    const struct model *model;
    DONE(desk_take_up(bench->desk, build, note));
    model = desk_model(bench->desk);
    *ret_amount = *ret_tax = 0;
    for (size_t i = 0; build && i < model->spends.count; i++) {
        if (strcmp(model->spends.at[i].what, what) == 0) {
            *ret_amount += model->spends.at[i].amount;
            *ret_tax += model->spends.at[i].tax;
        }
    }
    for (size_t i = 0; !build && i < model->shop_spends.count; i++) {
        if (strcmp(model->shop_spends.at[i].what, what) == 0) {
            *ret_amount += model->shop_spends.at[i].amount;
            *ret_tax += model->shop_spends.at[i].tax;
        }
    }
}

static void one_spend_over_three_builds_is_one_edit(void **state)
{
    struct bench *bench = *state;
    struct spend_part parts[] = {
        {bench->builds[0], 1, 0}, {bench->builds[1], 1, 0}, {bench->builds[2], 1, 0}};
    const struct desk_spend spend = {
        .amount = "100.00", .what = "glue", .dated = "2026-11-30", .tax = "6.76"};
    static const int64_t amounts[] = {3334, 3333, 3333};
    static const int64_t taxes[] = {226, 225, 225};
    char label[STORE_LABEL];
    DONE(desk_spend(bench->desk, &spend, parts, 3, note));
    for (size_t i = 0; i < 3; i++) {
        int64_t amount, tax;
        charged(bench, bench->builds[i], "glue", &amount, &tax);
        assert_int_equal(amount, amounts[i]);
        assert_int_equal(parts[i].amount, amounts[i]);
        assert_int_equal(tax, taxes[i]);
    }
    DONE(desk_undo(bench->desk, label, note));
    assert_string_equal(label, "spend: glue");
    for (size_t i = 0; i < 3; i++) {
        int64_t amount, tax;
        charged(bench, bench->builds[i], "glue", &amount, &tax);
        assert_int_equal(amount, 0);
    }
}

static void the_shelf_takes_a_part_like_a_build(void **state)
{
    struct bench *bench = *state;
    struct spend_part parts[] = {{bench->builds[1], 3, 0}, {0, 1, 0}};
    const struct desk_spend spend = {.amount = "10.01", .what = "wax", .dated = "2026-11-30"};
    int64_t amount, tax;
    DONE(desk_spend(bench->desk, &spend, parts, 2, note));
    charged(bench, bench->builds[1], "wax", &amount, &tax);
    assert_int_equal(amount, 751); /* 750.75 */
    charged(bench, 0, "wax", &amount, &tax);
    assert_int_equal(amount, 250);
}

static void what_cannot_be_read_is_written_nowhere(void **state)
{
    struct bench *bench = *state;
    struct spend_part parts[] = {{bench->builds[0], 1, 0}, {bench->builds[1], 1, 0}};
    const struct desk_spend spend = {
        .amount = "10.00", .what = "wax", .dated = "2026-11-30", .tax = "a tenth"};
    struct fault_note note = {0};
    int64_t amount, tax;
    assert_int_equal(desk_spend(bench->desk, &spend, parts, 2, &note), FAULT_SYNTAX);
    assert_string_equal(note.path, "tax");
    charged(bench, bench->builds[0], "wax", &amount, &tax);
    assert_int_equal(amount, 0);
}

/* By chance, refunds among them: amounts and taxes add up over the builds. */
static void splitting_creates_and_loses_nothing(void **state)
{
    struct bench *bench = *state;
    struct dice dice = {12};
    for (int round = 0; round < 20; round++) {
        struct spend_part parts[4] = {{0}};
        int64_t amount = dice_between(&dice, -99999, 99999);
        int64_t tax = amount / 11;
        int64_t sum = 0, sum_of_tax = 0;
        size_t count = (size_t)dice_between(&dice, 1, 4);
        char typed[2][MONEY_TEXT];
        char what[16];
        const struct currency currency = model_currency(desk_model(bench->desk));
        const struct desk_spend spend = {.amount = money_print(typed[0], currency, amount),
                                         .tax = money_print(typed[1], currency, tax),
                                         .what = what,
                                         .dated = "2026-11-30"};
        snprintf(what, sizeof what, "round %d", round);
        for (size_t i = 0; i < count; i++) {
            parts[i].build = i < 3 ? bench->builds[i] : 0;
            parts[i].weight = dice_between(&dice, 1, 9);
        }
        DONE(desk_spend(bench->desk, &spend, parts, count, note));
        for (size_t i = 0; i < 4; i++) {
            int64_t own, own_tax;
            charged(bench, i < 3 ? bench->builds[i] : 0, what, &own, &own_tax);
            sum += own;
            sum_of_tax += own_tax;
        }
        assert_int_equal(sum, amount);
        assert_int_equal(sum_of_tax, tax);
    }
}

int main(void)
{
#define CASE(name) cmocka_unit_test_setup_teardown(name, begin, bench_end)
    const struct CMUnitTest tests[] = {
        CASE(one_spend_over_three_builds_is_one_edit),
        CASE(the_shelf_takes_a_part_like_a_build),
        CASE(what_cannot_be_read_is_written_nowhere),
        CASE(splitting_creates_and_loses_nothing),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
