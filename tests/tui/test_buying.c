/* A shopping trip: lines are paid at their price or at another, and taken back; and prices. */
#include "stage.h"

#include "desk/spend.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static void go(struct stage *stage, const char *keys)
{
    stage_go(stage, "b");
    stage_press(stage, keys);
}

static const struct model *model_of(const struct stage *stage)
{
    return desk_model(stage->desk);
}

static void space_pays_a_line_at_its_price_and_goes_on(void **state)
{
    struct stage *stage = *state;
    go(stage, "Space");
    assert_int_equal(model_of(stage)->spends.count, 1);
    const struct spend *spend = &model_of(stage)->spends.at[0];
    assert_int_equal(spend->amount, 4200);
    assert_string_equal(spend->what, "2x3 stud, 10 of 96");
    assert_string_equal(spend->dated, "2026-11-25");
    assert_true(spend->stock != 0);
    assert_shown(stage, "[x] 2x3 stud");
    assert_shown(stage, "paid so far 42.00");
    stage_press(stage, "Space");
    assert_shown(stage, "paid so far 118.00");
}

static enum fault sell_longer_studs(struct model *draft, void *context, struct fault_note *note)
{
    struct offer *offer = MODEL_ADD(draft, offer);

    (void)note;
    offer->stock = *(const int64_t *)context;
    offer->length = 120 * LENGTH_INCH;
    offer->price = 560;
    return FAULT_NONE;
}

/* Studs of 96 and of 120 in stand on the list, one line each. */
static void a_payment_is_for_the_size_that_it_was_made_on(void **state)
{
    struct stage *stage = *state;
    struct fault_note note = {0};
    int64_t stock;
    go(stage, "");
    stock = desk_plan(stage->desk)->purchases.at[0].stock;
    assert_int_equal(desk_edit(stage->desk, "longer", sell_longer_studs, &stock, &note),
                     FAULT_NONE);
    stage_press(stage, "Home Down Space");
    assert_int_equal(model_of(stage)->spends.count, 1);
    assert_int_equal(desk_plan(stage->desk)->purchases.at[1].stock, stock);
    stage_press(stage, "Home");
    assert_shown(stage, "[ ] 2x3 stud");
    assert_shown(stage, "[x] 2x3 stud");
    assert_not_shown(stage, "[-] 2x3 stud");
}

static void space_on_a_paid_line_takes_it_back(void **state)
{
    struct stage *stage = *state;
    go(stage, "Space Up Space");
    assert_int_equal(model_of(stage)->spends.count, 0);
    assert_shown(stage, "[ ] 2x3 stud");
    stage_press(stage, "u");
    assert_int_equal(model_of(stage)->spends.count, 1);
}

static void digits_say_what_was_really_paid(void **state)
{
    struct stage *stage = *state;
    go(stage, "'39.50' Enter");
    assert_int_equal(model_of(stage)->spends.at[0].amount, 3950);
    assert_shown(stage, "39.50");
    stage_press(stage, "Up Enter '41' Enter");
    assert_int_equal(model_of(stage)->spends.count, 1);
    assert_int_equal(model_of(stage)->spends.at[0].amount, 4100);
}

static void a_price_that_is_none_is_refused_beside_the_list(void **state)
{
    struct stage *stage = *state;
    go(stage, "Enter 'much' Enter");
    assert_int_equal(model_of(stage)->spends.count, 0);
    assert_true(strstr(stage_show(stage, 24, 80), "much") != NULL);
    stage_press(stage, "Esc Space");
    assert_int_equal(model_of(stage)->spends.count, 1);
}

/* Ten sticks were paid and the build takes fewer now: Space asks what is paid on top. */
static void what_was_paid_for_an_older_list_is_not_paid_again(void **state)
{
    struct stage *stage = *state;
    struct fault_note note = {0};
    go(stage, "Space");
    int64_t box = desk_model(stage->desk)->boxes.at[0].key;
    assert_int_equal(desk_set(stage->desk, ENTITY_box, box, "height", "30", &note), FAULT_NONE);
    stage_press(stage, "Home");
    assert_shown(stage, "[-] 2x3 stud");
    assert_shown(stage, "paid before: 42.00 for 2x3 stud, 10 of 96");
    stage_press(stage, "Space '8.40' Enter");
    assert_int_equal(model_of(stage)->spends.count, 2);
    assert_int_equal(desk_plan(stage->desk)->cost.spent, 5040);
}

/* Four of ten sticks were paid by hand: Space pays for the other six, and is taken back alone. */
static void space_pays_what_is_open_of_a_line(void **state)
{
    struct stage *stage = *state;
    struct fault_note note = {0};
    const char *headboard = "Wing headboard";
    struct spend_part part = {.weight = 1};
    const struct desk_spend four = {.amount = "15.00",
                                    .what = "sticks",
                                    .dated = "2026-11-20",
                                    .stock = "2x3 stud",
                                    .count = "4"};
    stage_take_up(stage, headboard);
    part.build = model_of(stage)->build.key;
    assert_int_equal(desk_spend(stage->desk, &four, &part, 1, &note), FAULT_NONE);
    go(stage, "");
    assert_shown(stage,
                 "[-] 2x3 stud                   10 of 96                42.00        15.00");
    assert_shown(stage, "25.20 still to pay");
    stage_press(stage, "Space");
    assert_shown(stage,
                 "[x] 2x3 stud                   10 of 96                42.00        40.20");
    assert_int_equal(model_of(stage)->spends.at[1].amount, 2520);
    assert_int_equal(model_of(stage)->spends.at[1].count, 6);
    stage_press(stage, "Up Space");
    assert_int_equal(model_of(stage)->spends.count, 1);
    stage_press(stage, "'0' Enter");
    assert_shown(stage,
                 "[x] 2x3 stud                   10 of 96                42.00        15.00");
}

/* What stands in the house is told, paid or not, and how much of it where a box has grown since. */
static void what_was_bought_is_told_on_the_list_and_on_a_trip(void **state)
{
    struct stage *stage = *state;
    struct fault_note note = {0};
    int64_t box;
    stage_take_up(stage, "Wing headboard");
    tick_until(stage->desk, "buy");
    go(stage, "");
    assert_shown(stage,
                 "[ ] 2x3 stud                   10 of 96                42.00       bought");
    box = desk_model(stage->desk)->boxes.at[0].key;
    assert_int_equal(desk_set(stage->desk, ENTITY_box, box, "height", "60", &note), FAULT_NONE);
    go(stage, "");
    assert_shown(stage, "3 of 96 x 48           114.00     2 bought");
    assert_shown(stage, "6.75 yd                 30.38  part bought");
    stage_press(stage, "Esc Esc Esc Esc Space g Down");
    assert_shown(stage, "TROLLEY");
    assert_shown(stage,
                 "Plywood 1/2, 3 of 96 x 48                              114.00    2 bought");
    assert_shown(stage, "Wing headboard 114.00; 2 bought");
}

/* Thirteen lines, of which two cost something else and one has no price: no more than thirty keys.
 */
static void a_trip_of_thirteen_lines_takes_thirty_keys_at_most(void **state)
{
    static const char *const keys[] = {"Space", "Space", "Space", "Space", "4",     ".", "8", "0",
                                       "Enter", "Space", "Space", "Space", "Space", "2", "0", "8",
                                       "Enter", "3",     "Enter", "Space", "Space"};
    struct stage *stage = *state;
    go(stage, "");
    const struct plan *plan = desk_plan(stage->desk);
    assert_int_equal(plan->purchases.count, 13);
    assert_true(sizeof keys / sizeof *keys <= 30);
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
        stage_press(stage, keys[i]);
    assert_int_equal(model_of(stage)->spends.count, 13);
    int64_t sum = 0;
    for (size_t i = 0; i < model_of(stage)->spends.count; i++)
        sum += model_of(stage)->spends.at[i].amount;
    assert_int_equal(desk_plan(stage->desk)->cost.spent, sum);
    int64_t last = model_of(stage)->spends.at[12].amount;
    stage_press(stage, "F11");
    assert_int_equal(model_of(stage)->spends.count, 12);
    assert_int_equal(desk_plan(stage->desk)->cost.spent, sum - last);
    stage_press(stage, "F12");
    assert_int_equal(desk_plan(stage->desk)->cost.spent, sum);
    stage_press(stage, "m");
    assert_shown(stage, "415.40        612.00    612.00  +196.60");
}

static void tax_is_on_what_is_paid_at_the_till(void **state)
{
    struct stage *stage = *state;
    struct fault_note note = {0};
    stage_take_up(stage, "Wing headboard");
    assert_int_equal(desk_set(stage->desk, ENTITY_workshop, 0, "tax", "10 %", &note), FAULT_NONE);
    stage_press(stage, "b Space");
    assert_int_equal(model_of(stage)->spends.at[0].amount, 4620);
}

/* ---- the prices of one stock ---- */

static const struct offer *first_offer(const struct stage *stage)
{
    const struct model *model = model_of(stage);
    for (size_t i = 0; i < model->offers.count; i++) {
        if (model->offers.at[i].stock == model->stocks.at[0].key)
            return &model->offers.at[i];
    }
    fail_msg("the first stock has no price");
    return NULL;
}

static void a_new_price_is_typed_where_the_old_one_stands(void **state)
{
    struct stage *stage = *state;
    stage_press(stage, "S Enter");
    assert_shown(stage, "4.20");
    stage_press(stage, "'4.65' Enter");
    assert_int_equal(first_offer(stage)->price, 465);
    assert_string_equal(first_offer(stage)->dated, "2026-11-25");
    assert_shown(stage, "PRICES BEFORE");
    stage_press(stage, "Enter 'dear' Enter");
    assert_int_equal(first_offer(stage)->price, 465);
    assert_true(strstr(stage_show(stage, 24, 80), "dear") != NULL);
    stage_press(stage, "Esc u");
    assert_int_equal(first_offer(stage)->price, 420);
}

static void a_size_more_is_added_to_the_stock_that_is_shown(void **state)
{
    struct stage *stage = *state;
    size_t before = model_of(stage)->offers.count;
    stage_press(stage, "S Enter d");
    assert_int_equal(model_of(stage)->offers.count, before - 1);
    assert_shown(stage, "Nobody has it yet. Press a to add a size and its price.");
    stage_press(stage, "a");
    assert_int_equal(model_of(stage)->offers.count, before);
    assert_int_equal(first_offer(stage)->stock, model_of(stage)->stocks.at[0].key);
    stage_press(stage, "Esc '5' Enter");
    assert_int_equal(first_offer(stage)->price, 500);
}

/* The ottoman and the banquette. */
static void what_is_cut_together_is_taken_and_given_back_with_space(void **state)
{
    struct stage *stage = *state;
    stage_press(stage, "Down Space Space g k");
    assert_not_shown(stage, "as it was taken");
    stage_press(stage, "Space");
    assert_shown(stage, "taken: this is what these builds cut, as long as nothing changes");
    assert_shown(stage, "as it was taken");
    stage_press(stage, "Space");
    assert_shown(stage, "given back");
    assert_not_shown(stage, "as it was taken");
}

#define WITH_CASES(test) cmocka_unit_test_setup_teardown(test, stage_begin_with_cases, stage_end)

int main(void)
{
    const struct CMUnitTest tests[] = {
        WITH_CASES(space_pays_a_line_at_its_price_and_goes_on),
        WITH_CASES(a_payment_is_for_the_size_that_it_was_made_on),
        WITH_CASES(space_on_a_paid_line_takes_it_back),
        WITH_CASES(digits_say_what_was_really_paid),
        WITH_CASES(a_price_that_is_none_is_refused_beside_the_list),
        WITH_CASES(what_was_paid_for_an_older_list_is_not_paid_again),
        WITH_CASES(space_pays_what_is_open_of_a_line),
        WITH_CASES(what_was_bought_is_told_on_the_list_and_on_a_trip),
        WITH_CASES(a_trip_of_thirteen_lines_takes_thirty_keys_at_most),
        WITH_CASES(tax_is_on_what_is_paid_at_the_till),
        WITH_CASES(a_new_price_is_typed_where_the_old_one_stands),
        WITH_CASES(a_size_more_is_added_to_the_stock_that_is_shown),
        WITH_CASES(what_is_cut_together_is_taken_and_given_back_with_space),
    };
    setlocale(LC_ALL, "C.UTF-8");
    return cmocka_run_group_tests_name("a shopping trip", tests, NULL, NULL) ? 1 : 0;
}
