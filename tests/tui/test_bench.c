/* At the bench: ticking, the step card, the clock, spend, findings, trade values, the workshop. */
#include "stage.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* ---- order of work ---- */

static void the_order_begins_at_the_first_step_that_can_be_done(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 Space Space Esc F5 Enter");
    assert_shown(stage, "Step 3 of");
}

static void space_ticks_and_goes_on(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 Space");
    assert_int_equal(desk_model(stage->desk)->ticks.count, 1);
    assert_string_equal(desk_model(stage->desk)->ticks.at[0].at, "2026-11-25 09:00");
    assert_shown(stage, "[x]   1");
}

static void space_on_a_ticked_step_takes_the_tick_back(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 Space Up Space");
    assert_int_equal(desk_model(stage->desk)->ticks.count, 0);
    assert_shown(stage, "the tick is taken back");
}

static void a_step_that_has_to_wait_says_so(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 End Space");
    assert_int_equal(desk_model(stage->desk)->ticks.count, 0);
    assert_true(stage->tui.message_warns);
}

static void one_step_goes_to_the_next_and_back(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 Enter");
    assert_shown(stage, "Step 1 of");
    stage_press(stage, "Left");
    assert_shown(stage, "Step 1 of");
    stage_press(stage, "Right Right Left");
    assert_shown(stage, "Step 2 of");
}

static void a_step_is_ticked_where_it_stands_large(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 Enter Space");
    assert_int_equal(desk_model(stage->desk)->ticks.count, 1);
}

static int chosen_step(struct stage *stage)
{
    stage_press(stage, "Enter");
    int number = 0;
    const char *at = strstr(stage_show(stage, 24, 80), "Step ");
    assert_non_null(at);
    assert_int_equal(sscanf(at, "Step %d of", &number), 1);
    stage_press(stage, "Esc");
    return number;
}

/* Else the next Space would tick the one below it. */
static void a_tick_that_is_taken_back_is_chosen_again(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 Space Space Space");
    assert_int_equal(chosen_step(stage), 4);
    stage_press(stage, "u u");
    assert_int_equal(chosen_step(stage), 2);
    stage_press(stage, "Space Down u");
    assert_int_equal(chosen_step(stage), 2);
}

static void a_step_that_is_ticked_ahead_of_another_says_so(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 Space");
    assert_not_shown(stage, "ahead of");
    stage_press(stage, "u Down Down Space");
    assert_shown(stage, "done, ahead of: Fix sizes");
}

static void what_a_step_closes_stands_there_before_it_is_ticked(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    const struct plan *plan = desk_plan(stage->desk);
    size_t closing = 0;
    while (closing < plan->steps.count && !*plan->steps.at[closing].closes)
        closing++;
    assert_true(closing < plan->steps.count);
    stage_press(stage, "F5 Enter");
    for (size_t i = 0; i < closing; i++)
        stage_press(stage, "Right");
    assert_shown(stage, plan->steps.at[closing].title);
    assert_shown(stage, "loses");
}

/* The clock of these pages stands at 1795597200, which is 09:00. */
static void the_clock_runs_from_one_key_to_the_tick(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 i");
    assert_shown(stage, "the clock runs: Fix sizes");
    assert_shown(stage, "clock since 09:00");
    assert_shown(stage, "[~]>  1");
    setenv("SOURCE_DATE_EPOCH", "1795598400", 1); /* 20 minutes on */
    stage_press(stage, "Space");
    assert_shown(stage, "done in 20 min");
    assert_not_shown(stage, "clock since");
    assert_int_equal(desk_model(stage->desk)->ticks.at[0].minutes, 20000);
    stage_press(stage, "w");
    stage_show(stage, 24, 80); /* how many lines there are is known when they are painted */
    stage_press(stage, "End");
    assert_shown(stage, "pace  decide: 20 min");
}

static void the_clock_is_stopped_with_the_same_key(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 Enter i");
    setenv("SOURCE_DATE_EPOCH", "1795597500", 1);
    stage_press(stage, "i");
    assert_shown(stage, "the clock stands at 5 min");
    stage_press(stage, "Space i");
    assert_shown(stage, "is ticked already");
}

static void measures_are_entered_before_the_tick(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5");
    tick_until(stage->desk, "buy");
    stage_press(stage, "Esc F5 Space");
    assert_shown(stage, "by the plan");
    stage_press(stage, "Down Down Enter '12mm' Enter Space");
    assert_int_equal(desk_model(stage->desk)->measures.count, 1);
    assert_shown(stage, "done, with 1 measure");
    stage_press(stage, "u");
    assert_int_equal(desk_model(stage->desk)->measures.count, 0);
}

static void esc_leaves_measures_and_step_as_they_were(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5");
    tick_until(stage->desk, "buy");
    size_t ticks = desk_model(stage->desk)->ticks.count;
    stage_press(stage, "Esc F5 Space Enter '12mm' Enter Esc");
    assert_int_equal(desk_model(stage->desk)->ticks.count, ticks);
}

static void what_can_be_done_now_follows_the_minutes(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 n");
    assert_shown(stage, "In 40 min");
    assert_shown(stage, "Fix sizes");
    stage_press(stage, "Left Left Left");
    assert_shown(stage, "In 10 min, alone: 0 steps");
    stage_press(stage, "Right Right n");
    assert_shown(stage, "In 30 min, two people: 1 steps");
    stage_press(stage, "Enter");
    assert_shown(stage, "Step 1 of");
}

/* A part of another size now is not needed as it was cut; it is again when the size is taken back.
 */
static void a_part_that_changed_is_told_among_those_that_were_cut(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 s");
    tick_until(stage->desk, "cut:1");
    stage_press(stage, "Down");
    assert_not_shown(stage, "not needed");
    DONE(desk_set(stage->desk, ENTITY_box, 3, "height", "50 in", note));
    stage_press(stage, "Down");
    assert_shown(stage, "not needed");
    stage_press(stage, "u");
    assert_not_shown(stage, "not needed");
}

static void a_part_is_spoiled_and_taken_back(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 s");
    assert_shown(stage, "Nothing is cut yet");
    tick_until(stage->desk, "cut:1");
    stage_press(stage, "Space");
    assert_shown(stage, "spoiled");
    assert_int_equal(desk_model(stage->desk)->cut_parts.at[0].spoiled, 1);
    stage_press(stage, "Space");
    assert_int_equal(desk_model(stage->desk)->cut_parts.at[0].spoiled, 0);
}

static void a_join_that_is_needed_is_not_left_out(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5");
    tick_until(stage->desk, "record:5");
    stage_press(stage, "Esc F5 l");
    assert_true(stage->tui.message_warns);
    assert_int_equal(desk_model(stage->desk)->left_outs.count, 0);
}

/* ---- money ---- */

static void a_spend_is_written_down_with_today(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F7 F2 Enter '61.35' Enter");
    const struct model *model = desk_model(stage->desk);
    assert_int_equal(model->spends.count, 1);
    assert_int_equal(model->spends.at[0].amount, 6135);
    assert_string_equal(model->spends.at[0].dated, "2026-11-25");
    stage_press(stage, "Esc");
    assert_shown(stage, "61.35");
}

static void a_spend_is_deleted_and_comes_back(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F7 F2 Enter '61.35' Enter Esc Del");
    assert_int_equal(desk_model(stage->desk)->spends.count, 0);
    stage_press(stage, "F11");
    assert_int_equal(desk_model(stage->desk)->spends.count, 1);
}

/* ---- findings ---- */

static void a_finding_leads_to_what_it_is_about(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F8 Enter");
    assert_shown(stage, "join: J1");
}

/* ---- trade values ---- */

static void a_trade_value_is_changed_for_the_build(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F9 Enter '3/16' Enter");
    assert_int_equal(desk_model(stage->desk)->build_values.count, 1);
    assert_shown(stage, "3/16 in");
    stage_press(stage, "Del");
    assert_int_equal(desk_model(stage->desk)->build_values.count, 0);
}

static void a_trade_value_is_changed_for_the_workshop_where_no_build_is_open(void **state)
{
    struct stage *stage = *state;
    stage_press(stage, "F9 '3/16' Enter");
    assert_int_equal(desk_model(stage->desk)->shop_values.count, 1);
}

static void a_trade_value_that_is_refused_stays(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F9 Enter '9 lb' Enter");
    assert_shown(stage, "9 lb");
    assert_shown(stage, "a length is in");
    stage_press(stage, "Esc");
    assert_not_shown(stage, "9 lb");
}

/* ---- workshop ---- */

static void trade_values_are_leafed_through_by_groups(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F9 Right Right Down Down");
    assert_shown(stage, "panels and what carries them, 3 of");
    stage_press(stage, "Left");
    assert_shown(stage, "panels and what carries them, 1 of");
    stage_press(stage, "Left Left Left Left");
    assert_shown(stage, "sticks, sheets and what they weigh, 1 of");
    stage_press(stage, "End Right");
    assert_shown(stage, "what minutes are multiplied by");
}

static void a_value_that_is_standard_stays_so(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F9 Del");
    assert_shown(stage, "it is the standard value already");
    stage_press(stage, "'3/16' Enter Home Del");
    assert_shown(stage, "back to 1/8 in; u takes that back");
}

static void stock_is_told_with_what_the_build_buys_of_it(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F10");
    assert_shown(stage, "Workshop  Workshop");
    stage_press(stage, "Down");
    assert_shown(stage, "96 in for 4.20");
    assert_shown(stage, "Wing headboard buys");
}

static void stock_is_added_with_an_offer(void **state)
{
    struct stage *stage = *state;
    size_t stocks = desk_model(stage->desk)->stocks.count;
    size_t offers = desk_model(stage->desk)->offers.count;
    stage_press(stage, "F10 F2 Enter Esc End F2 Down Enter");
    assert_int_equal(desk_model(stage->desk)->stocks.count, stocks + 1);
    assert_int_equal(desk_model(stage->desk)->offers.count, offers + 1);
}

static void screens_of_a_build_ask_for_one(void **state)
{
    static const char *const keys[] = {"F5", "F6", "F7", "F8"};
    struct stage *stage = *state;
    stage_press(stage, "w");
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
        stage_press(stage, keys[i]);
        assert_shown(stage, "choose a build first: Esc leads to the list");
    }
}

int main(void)
{
#define CASES(name) cmocka_unit_test_setup_teardown(name, stage_begin_with_cases, stage_end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        CASES(the_order_begins_at_the_first_step_that_can_be_done),
        CASES(space_ticks_and_goes_on),
        CASES(space_on_a_ticked_step_takes_the_tick_back),
        CASES(a_step_that_has_to_wait_says_so),
        CASES(one_step_goes_to_the_next_and_back),
        CASES(a_step_is_ticked_where_it_stands_large),
        CASES(a_tick_that_is_taken_back_is_chosen_again),
        CASES(a_step_that_is_ticked_ahead_of_another_says_so),
        CASES(what_a_step_closes_stands_there_before_it_is_ticked),
        CASES(the_clock_runs_from_one_key_to_the_tick),
        CASES(the_clock_is_stopped_with_the_same_key),
        CASES(measures_are_entered_before_the_tick),
        CASES(esc_leaves_measures_and_step_as_they_were),
        CASES(what_can_be_done_now_follows_the_minutes),
        CASES(a_part_is_spoiled_and_taken_back),
        CASES(a_part_that_changed_is_told_among_those_that_were_cut),
        CASES(a_join_that_is_needed_is_not_left_out),
        CASES(a_spend_is_written_down_with_today),
        CASES(a_spend_is_deleted_and_comes_back),
        CASES(a_finding_leads_to_what_it_is_about),
        CASES(a_trade_value_is_changed_for_the_build),
        CASES(a_trade_value_is_changed_for_the_workshop_where_no_build_is_open),
        CASES(a_trade_value_that_is_refused_stays),
        CASES(trade_values_are_leafed_through_by_groups),
        CASES(a_value_that_is_standard_stays_so),
        CASES(stock_is_told_with_what_the_build_buys_of_it),
        CASES(stock_is_added_with_an_offer),
        CASES(screens_of_a_build_ask_for_one),
    };
    int failed = cmocka_run_group_tests_name("bench", tests, NULL, NULL);
    return failed ? 1 : 0;
}
