/* Tables taken in at the desk: one edit over several builds, or nothing at all. */
#include "workshop.h"

#include "desk/ledger.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static int begin(void **state)
{
    static const char *const names[] = {"headboard", "ottoman", NULL};
    return bench_begin(state, names);
}

static size_t told;

static void count_told(void *context, const struct fault_note *note)
{
    (void)context;
    assert_true(note->line > 0);
    told++;
}

static enum fault take(struct bench *bench, enum ledger_kind kind, const char *table,
                       size_t *ret_changed)
{
    struct fault_note note;
    told = 0;
    return desk_ledger_in(bench->desk, kind, table, strlen(table), count_told, NULL, ret_changed,
                          &note);
}

static int64_t spent(struct bench *bench, int64_t build)
{
    DONE(desk_take_up(bench->desk, build, note));
    return desk_plan(bench->desk)->cost.spent;
}

static void undo(struct bench *bench)
{
    char label[STORE_LABEL];
    DONE(desk_undo(bench->desk, label, note));
}

static const char spends[] = "build;dated;amount;what\r\n"
                             "Wing headboard;2026-11-02;12,50;staples\r\n"
                             "Tufted ottoman;2026-11-03;7,00;glue\r\n"
                             "Wing headboard;2026-11-05;-2,50;staples taken back\r\n"
                             ";2026-11-05;3,10;pencils\r\n";

static void spend_of_several_builds_is_one_edit(void **state)
{
    struct bench *bench = *state;
    size_t changed;
    assert_int_equal(take(bench, LEDGER_SPEND, spends, &changed), FAULT_NONE);
    assert_int_equal(changed, 4);
    assert_int_equal(spent(bench, bench->builds[0]), 1000);
    assert_int_equal(spent(bench, bench->builds[1]), 700);
    assert_int_equal(desk_model(bench->desk)->shop_spends.at[0].amount, 310);
    undo(bench);
    assert_int_equal(spent(bench, bench->builds[0]), 0);
    assert_int_equal(spent(bench, bench->builds[1]), 0);
    assert_int_equal(desk_model(bench->desk)->shop_spends.count, 0);
}

static void spend_that_was_taken_in_is_not_taken_in_again(void **state)
{
    struct bench *bench = *state;
    size_t changed;
    assert_int_equal(take(bench, LEDGER_SPEND, spends, &changed), FAULT_NONE);
    assert_int_equal(take(bench, LEDGER_SPEND, spends, &changed), FAULT_NONE);
    assert_int_equal(changed, 0);
    assert_int_equal(spent(bench, bench->builds[0]), 1000);
}

static void one_wrong_line_keeps_all_the_others_out(void **state)
{
    struct bench *bench = *state;
    size_t changed;
    assert_int_equal(take(bench, LEDGER_SPEND,
                          "build,dated,amount,what\n"
                          "Wing headboard,2026-11-02,12.50,staples\n"
                          "Tufted ottoman,2026-11-03,many,glue\n"
                          "Nobody,2026-11-03,1.00,glue\n",
                          &changed),
                     FAULT_SYNTAX);
    assert_int_equal(told, 2);
    assert_int_equal(spent(bench, bench->builds[0]), 0);
}

static void prices_change_the_plan_and_one_undo_gives_them_back(void **state)
{
    struct bench *bench = *state;
    struct text table;
    size_t changed;
    text_init(&table);
    DONE(desk_take_up(bench->desk, bench->builds[1], note));
    int64_t before = desk_plan(bench->desk)->cost.estimate;
    text_add(&table, "stock,length,width,pack,price\n");
    for (size_t i = 0; i < desk_model(bench->desk)->offers.count; i++) {
        const struct offer *offer = &desk_model(bench->desk)->offers.at[i];
        char length[QUANTITY_TEXT];
        char width[QUANTITY_TEXT];
        text_format(&table, "%s,%s,%s,%lld,%lld\n",
                    MODEL_FIND(desk_model(bench->desk), stock, offer->stock)->name,
                    quantity_print_exact(length, QUANTITY_LENGTH, UNITS_MM, offer->length),
                    quantity_print_exact(width, QUANTITY_LENGTH, UNITS_MM, offer->width),
                    (long long)offer->pack, (long long)offer->price);
    }
    size_t offers = desk_model(bench->desk)->offers.count;
    assert_int_equal(take(bench, LEDGER_PRICES, text_string(&table), &changed), FAULT_NONE);
    assert_true(changed > 0);
    assert_int_equal(desk_model(bench->desk)->offers.count, offers);
    /* A length of roll is rounded to the cent once a line, and that cent counts a hundred now. */
    int64_t off = desk_plan(bench->desk)->cost.estimate - before * 100;
    assert_true(llabs(off) <= 50 * (int64_t)desk_plan(bench->desk)->purchases.count);
    undo(bench);
    assert_int_equal(desk_plan(bench->desk)->cost.estimate, before);
    text_release(&table);
}

static void what_goes_out_of_the_workshop_changes_nothing_when_it_comes_in(void **state)
{
    struct bench *bench = *state;
    size_t changed;
    assert_int_equal(take(bench, LEDGER_SPEND, spends, &changed), FAULT_NONE);
    for (int kind = 0; kind < LEDGER_KINDS; kind++) {
        struct text table;
        text_init(&table);
        DONE(
            desk_ledger_out(bench->desk, (enum ledger_kind)kind, 0, &csv_semicolons, &table, note));
        assert_int_equal(take(bench, (enum ledger_kind)kind, text_string(&table), &changed),
                         FAULT_NONE);
        assert_int_equal(changed, 0);
        text_release(&table);
    }
}

/* Sums of a table are the sums of the plan: a spreadsheet adds up to the same money. */
static void a_build_has_its_own_spend_alone(void **state)
{
    struct bench *bench = *state;
    struct text table;
    size_t changed;
    text_init(&table);
    assert_int_equal(take(bench, LEDGER_SPEND, spends, &changed), FAULT_NONE);
    DONE(desk_ledger_out(bench->desk, LEDGER_SPEND, bench->builds[0], &csv_plain, &table, note));
    assert_string_equal(text_string(&table),
                        "build,dated,amount,tax,what,count,stock,aisle,supplier,note,length,width,"
                        "pack,settles\r\n"
                        "Wing headboard,2026-11-02,12.50,0.00,staples,,,lumber,,,,,,\r\n"
                        "Wing headboard,2026-11-05,-2.50,0.00,staples taken back,,,lumber,,,,,,"
                        "\r\n");
    text_release(&table);
}

int main(void)
{
#define CASE(name) cmocka_unit_test_setup_teardown(name, begin, bench_end)
    const struct CMUnitTest tests[] = {
        CASE(spend_of_several_builds_is_one_edit),
        CASE(spend_that_was_taken_in_is_not_taken_in_again),
        CASE(one_wrong_line_keeps_all_the_others_out),
        CASE(prices_change_the_plan_and_one_undo_gives_them_back),
        CASE(what_goes_out_of_the_workshop_changes_nothing_when_it_comes_in),
        CASE(a_build_has_its_own_spend_alone),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
