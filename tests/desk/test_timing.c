/* The clock at the bench: what is on it, where it goes, and the pace that comes of it. */
#include "workshop.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#define MINUTE INT64_C(1000)

static int begin(void **state)
{
    static const char *const names[] = {"headboard", NULL};
    return bench_begin(state, names);
}

static const struct step *step_of(const struct bench *bench, const char *name)
{
    const struct step *step = plan_step(desk_plan(bench->desk), name);
    assert_non_null(step);
    return step;
}

static int64_t minutes_ticked(const struct bench *bench, const char *step)
{
    const struct model *model = desk_model(bench->desk);
    for (size_t i = 0; i < model->ticks.count; i++) {
        if (strcmp(model->ticks.at[i].step, step) == 0)
            return model->ticks.at[i].minutes;
    }
    fail_msg("%s is not ticked", step);
    return 0;
}

static const struct pace *pace_of(const struct bench *bench, const char *kind)
{
    const struct model *model = desk_model(bench->desk);
    for (size_t i = 0; i < model->paces.count; i++) {
        if (strcmp(model->paces.at[i].name, kind) == 0)
            return &model->paces.at[i];
    }
    return NULL;
}

/* ---- the clock ---- */

static void the_clock_goes_on_where_it_stood(void **state)
{
    struct bench *bench = *state;
    DONE(desk_clock(bench->desk, "decide", "2026-11-25 09:00", note));
    assert_int_equal(desk_timed(bench->desk, "decide", "2026-11-25 09:10"), 10 * MINUTE);
    DONE(desk_clock(bench->desk, "decide", "2026-11-25 09:12", note));
    assert_int_equal(desk_timed(bench->desk, "decide", "2026-11-25 18:00"), 12 * MINUTE);
    DONE(desk_clock(bench->desk, "decide", "2026-11-26 23:55", note));
    assert_int_equal(desk_timed(bench->desk, "decide", "2026-11-27 00:05"), 22 * MINUTE);
}

static void it_runs_for_one_step_at_a_time(void **state)
{
    struct bench *bench = *state;
    DONE(desk_clock(bench->desk, "decide", "2026-11-25 09:00", note));
    DONE(desk_clock(bench->desk, "route", "2026-11-25 09:20", note));
    assert_string_equal(desk_timing(bench->desk, "decide")->began, "");
    assert_int_equal(desk_timed(bench->desk, "decide", "2026-11-25 10:00"), 20 * MINUTE);
    assert_int_equal(desk_timed(bench->desk, "route", "2026-11-25 10:00"), 40 * MINUTE);
}

static void a_clock_set_back_counts_nothing(void **state)
{
    struct bench *bench = *state;
    DONE(desk_clock(bench->desk, "decide", "2026-11-25 09:00", note));
    assert_int_equal(desk_timed(bench->desk, "decide", "2026-11-25 08:00"), 0);
    assert_int_equal(desk_timed(bench->desk, "decide", "when it rains"), 0);
}

static void a_step_that_is_not_there_or_done_has_no_clock(void **state)
{
    struct bench *bench = *state;
    struct fault_note refusal;
    assert_int_equal(desk_clock(bench->desk, "fly", "2026-11-25 09:00", &refusal), FAULT_UNKNOWN);
    DONE(desk_tick(bench->desk, "decide", "2026-11-25 09:00", 0, note));
    assert_int_equal(desk_clock(bench->desk, "decide", "2026-11-25 09:00", &refusal),
                     FAULT_REFUSED);
}

static void starting_is_one_edit_that_undo_takes_back(void **state)
{
    struct bench *bench = *state;
    char label[STORE_LABEL];
    DONE(desk_clock(bench->desk, "decide", "2026-11-25 09:00", note));
    DONE(desk_undo(bench->desk, label, note));
    assert_non_null(strstr(label, "clock started"));
    assert_null(desk_timing(bench->desk, "decide"));
}

/* ---- the tick ---- */

static void a_tick_takes_what_is_on_the_clock(void **state)
{
    struct bench *bench = *state;
    DONE(desk_clock(bench->desk, "decide", "2026-11-25 09:00", note));
    DONE(desk_tick(bench->desk, "decide", "2026-11-25 09:25", 0, note));
    assert_int_equal(minutes_ticked(bench, "decide"), 25 * MINUTE);
    assert_null(desk_timing(bench->desk, "decide"));
}

static void minutes_that_are_given_count_before_the_clock(void **state)
{
    struct bench *bench = *state;
    DONE(desk_clock(bench->desk, "decide", "2026-11-25 09:00", note));
    DONE(desk_tick(bench->desk, "decide", "2026-11-25 09:25", 7 * MINUTE, note));
    assert_int_equal(minutes_ticked(bench, "decide"), 7 * MINUTE);
}

/* ---- the pace ---- */

/* 30 usual minutes at skill 1 stand beside what was timed: u usual ones that took 2 u make
 * (2 u + 30) / (u + 30). */
static void steps_of_a_kind_are_planned_at_the_pace_that_shows(void **state)
{
    struct bench *bench = *state;
    tick_until(bench->desk, "label");
    int64_t usual = step_of(bench, "frame:3")->usual;
    int64_t other = step_of(bench, "frame:4")->minutes;
    assert_true(usual > 0);
    DONE(desk_tick(bench->desk, "frame:3", "2026-11-25 12:00", 2 * usual, note));
    int64_t expected = 0;
    assert_int_equal(whole_share(other, 2 * usual + 30 * MINUTE, usual + 30 * MINUTE, &expected),
                     FAULT_NONE);
    int64_t planned = step_of(bench, "frame:4")->minutes;
    assert_true(planned >= expected - 1 && planned <= expected + 1);
    assert_int_equal(pace_of(bench, "frame")->count, 1);
}

static void taking_a_tick_back_takes_its_pace_back(void **state)
{
    struct bench *bench = *state;
    int64_t before = step_of(bench, "route")->minutes;
    DONE(desk_tick(bench->desk, "decide", "2026-11-25 09:25", 7 * MINUTE, note));
    assert_non_null(pace_of(bench, "decide"));
    DONE(desk_untick(bench->desk, "decide", note));
    assert_null(pace_of(bench, "decide"));
    assert_int_equal(step_of(bench, "route")->minutes, before);
}

static void a_tick_without_minutes_teaches_nothing(void **state)
{
    struct bench *bench = *state;
    DONE(desk_tick(bench->desk, "decide", "2026-11-25 09:25", 0, note));
    assert_int_equal(desk_model(bench->desk)->paces.count, 0);
}

static void the_pace_is_the_workshops_and_holds_in_the_next_build(void **state)
{
    struct bench *bench = *state;
    int64_t usual = step_of(bench, "decide")->usual;
    DONE(desk_tick(bench->desk, "decide", "2026-11-25 09:25", 4 * usual, note));
    desk_take_case(bench->desk, "ottoman");
    assert_true(step_of(bench, "decide")->minutes > usual);
    assert_int_equal(step_of(bench, "decide")->usual, usual);
}

/* A step is not done to an older plan because the maker became faster. */
static void another_pace_changes_no_step_that_is_done(void **state)
{
    struct bench *bench = *state;
    tick_until(bench->desk, "label");
    DONE(desk_tick(bench->desk, "frame:3", "2026-11-25 12:00", 300 * MINUTE, note));
    DONE(desk_tick(bench->desk, "frame:4", "2026-11-25 14:00", 0, note));
    assert_false(step_of(bench, "frame:3")->older);
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, bench_end)
    const struct CMUnitTest tests[] = {
        FACT(the_clock_goes_on_where_it_stood),
        FACT(it_runs_for_one_step_at_a_time),
        FACT(a_clock_set_back_counts_nothing),
        FACT(a_step_that_is_not_there_or_done_has_no_clock),
        FACT(starting_is_one_edit_that_undo_takes_back),
        FACT(a_tick_takes_what_is_on_the_clock),
        FACT(minutes_that_are_given_count_before_the_clock),
        FACT(steps_of_a_kind_are_planned_at_the_pace_that_shows),
        FACT(taking_a_tick_back_takes_its_pace_back),
        FACT(a_tick_without_minutes_teaches_nothing),
        FACT(the_pace_is_the_workshops_and_holds_in_the_next_build),
        FACT(another_pace_changes_no_step_that_is_done),
    };
    int failed = cmocka_run_group_tests_name("timing", tests, NULL, NULL);
    return failed ? 1 : 0;
}
