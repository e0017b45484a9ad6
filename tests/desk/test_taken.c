/* What is taken at the bench: measures, spoiled parts, joins left out, and what can be done now. */
#include "workshop.h"

#include "plan/doable.h"
#include "plan/steps.h"
#include "plan/taken.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#define NOW "2026-11-25 09:00"

struct taking {
    struct bench bench;
    struct arena arena;
};

static int begin(void **state)
{
    static const char *const names[] = {"headboard", NULL};
    static struct taking taking;
    bench_open(&taking.bench, names);
    arena_init(&taking.arena);
    *state = &taking;
    return 0;
}

static int end(void **state)
{
    struct taking *taking = *state;
    arena_release(&taking->arena);
    bench_close(&taking->bench);
    return 0;
}

static const struct step *step_of(const struct taking *taking, const char *name)
{
    const struct step *step = plan_step(desk_plan(taking->bench.desk), name);

    if (!step)
        fail_msg("there is no step %s", name);
    return step;
}

static const struct doable *doable(struct taking *taking, int64_t minutes, int people,
                                   const char *now)
{
    const struct doable *found = NULL;
    struct doable_ask ask = {minutes * 1000, people, true, now};

    assert_int_equal(plan_doable(desk_plan(taking->bench.desk), &ask, &taking->arena, &found),
                     FAULT_NONE);
    return found;
}

static bool can_do(struct taking *taking, const struct doable *found, const char *name)
{
    for (size_t i = 0; i < found->count; i++)
        if (strcmp(desk_plan(taking->bench.desk)->steps.at[found->steps[i]].name, name) == 0)
            return true;
    return false;
}

static void measure(struct taking *taking, const char *step, const char *name, const char *text)
{
    struct desk_measure measures[] = {{name, text}};
    struct desk_done done = {NOW, 0, measures, 1};

    DONE(desk_tick_done(taking->bench.desk, step, &done, note));
}

/* ---- measures ---- */

static int64_t cut_width_of(const struct taking *taking, int64_t layer)
{
    const struct plan *plan = desk_plan(taking->bench.desk);

    for (size_t i = 0; i < plan->covers.count; i++)
        if (plan->covers.at[i].layer == layer)
            return plan->covers.at[i].cut_width;
    fail_msg("layer %d is not cut", (int)layer);
    return 0;
}

static void cloth_is_cut_to_the_box_as_it_was_built(void **state)
{
    const int64_t cover = 24; /* of box C; keys of the file */
    struct taking *taking = *state;
    int64_t members = desk_plan(taking->bench.desk)->members.at[0].length;
    int64_t width;

    tick_until(taking->bench.desk, "panel:13");
    width = cut_width_of(taking, cover);
    measure(taking, "record:3", "width", "62 3/4 in"); /* planned 63 in */
    assert_int_equal(width - cut_width_of(taking, cover), LENGTH_INCH / 4);
    assert_int_equal(desk_plan(taking->bench.desk)->members.at[0].length, members);
}

static void a_sheet_that_was_measured_counts_with_its_own_thickness(void **state)
{
    struct taking *taking = *state;

    tick_until(taking->bench.desk, "buy");
    measure(taking, "gauge", "plywood 1/2 thickness", "12 mm");
    assert_int_equal(MODEL_FIND(desk_plan(taking->bench.desk)->facts, stock, 2)->thickness,
                     12 * LENGTH_MM);
    assert_int_not_equal(MODEL_FIND(desk_model(taking->bench.desk), stock, 2)->thickness,
                         12 * LENGTH_MM);
    assert_int_equal(desk_plan(taking->bench.desk)->panels.at[0].thickness, 12 * LENGTH_MM);
}

static void a_measure_that_cannot_be_one_is_refused(void **state)
{
    struct taking *taking = *state;
    struct fault_note why = {0};
    struct desk_measure measures[] = {{"width", "20 in"}};
    struct desk_done done = {NOW, 0, measures, 1};

    tick_until(taking->bench.desk, "panel:13");
    assert_int_equal(desk_tick_done(taking->bench.desk, "record:3", &done, &why), FAULT_RANGE);
    assert_false(step_of(taking, "record:3")->ticked);
    measures[0] = (struct desk_measure){"girth", "20 in"};
    assert_int_equal(desk_tick_done(taking->bench.desk, "record:3", &done, &why), FAULT_UNKNOWN);
}

static void measures_go_with_their_tick_and_come_back_with_undo(void **state)
{
    struct taking *taking = *state;
    char label[STORE_LABEL];

    tick_until(taking->bench.desk, "panel:13");
    measure(taking, "record:3", "width", "62 3/4 in");
    assert_int_equal(desk_model(taking->bench.desk)->measures.count, 1);
    DONE(desk_untick(taking->bench.desk, "record:3", note));
    assert_int_equal(desk_model(taking->bench.desk)->measures.count, 0);
    DONE(desk_undo(taking->bench.desk, label, note));
    assert_int_equal(desk_model(taking->bench.desk)->measures.count, 1);
}

static void a_step_with_measures_is_not_older_for_them(void **state)
{
    struct taking *taking = *state;

    tick_until(taking->bench.desk, "buy");
    measure(taking, "gauge", "plywood 1/2 thickness", "12 mm");
    assert_false(step_of(taking, "gauge")->older);
}

/* ---- done to an older plan ---- */

static void a_step_done_to_an_older_plan_says_what_was_and_what_is(void **state)
{
    struct taking *taking = *state;

    tick_until(taking->bench.desk, "frame:3");
    DONE(desk_set(taking->bench.desk, ENTITY_box, 3, "width", "60 in", note));
    const struct step *step = step_of(taking, "frame:3");
    assert_true(step->older);
    assert_true(step->change_count >= 2);
    assert_memory_equal(step->changes[0], "then: ", 6);
    assert_memory_equal(step->changes[step->change_count - 1], "now: ", 5);
}

static void parts_that_were_cut_tell_by_how_much_they_are_off(void **state)
{
    struct taking *taking = *state;
    bool told = false;

    tick_until(taking->bench.desk, "cut:1");
    DONE(desk_set(taking->bench.desk, ENTITY_box, 3, "height", "58 in", note));
    const struct step *step = step_of(taking, "cut:1");
    assert_true(step->older);
    for (size_t i = 0; i < step->change_count; i++)
        told = told || strstr(step->changes[i], "was cut to") ||
               strstr(step->changes[i], "has not been cut");
    assert_true(told);
}

static void what_hangs_on_a_step_comes_off_last_first(void **state)
{
    struct taking *taking = *state;
    const struct plan *plan;
    const size_t *steps;
    size_t count = 0;

    tick_until(taking->bench.desk, "map:33");
    plan = desk_plan(taking->bench.desk);
    size_t drill = (size_t)(step_of(taking, "drill:32") - plan->steps.at);
    assert_int_equal(plan_hangs_on(plan, drill, &taking->arena, &steps, &count), FAULT_NONE);
    assert_true(count >= 1);
    for (size_t i = 0; i < count; i++) {
        assert_true(plan->steps.at[steps[i]].ticked);
        assert_true(steps[i] > drill);
        assert_true(i == 0 || steps[i] < steps[i - 1]);
    }
    assert_string_equal(plan->steps.at[steps[count - 1]].name, "map:32");
}

/* ---- spoiled ---- */

static void a_spoiled_part_is_cut_anew_in_a_step_of_its_own(void **state)
{
    struct taking *taking = *state;
    size_t parts;

    tick_until(taking->bench.desk, "cut:1");
    parts = desk_plan(taking->bench.desk)->parts.count;
    const char *part = desk_model(taking->bench.desk)->cut_parts.at[0].part;
    char label[64];
    snprintf(label, sizeof label, "%s", part);
    assert_null(plan_step(desk_plan(taking->bench.desk), "recut:1-1"));
    DONE(desk_spoil(taking->bench.desk, label, true, note));
    assert_int_equal(desk_plan(taking->bench.desk)->parts.count, parts);
    const struct step *again = step_of(taking, "recut:1-1");
    assert_true(again > step_of(taking, "cut:1"));
    assert_true(again < step_of(taking, "frame:3"));
    assert_true(again->minutes > 0);
}

static void a_spoiled_part_comes_out_of_a_rest_where_one_is_long_enough(void **state)
{
    struct taking *taking = *state;
    const struct model *model;
    size_t shortest = 0;
    bool from_rest = false;
    int64_t estimate;

    tick_until(taking->bench.desk, "cut:1");
    model = desk_model(taking->bench.desk);
    for (size_t i = 0; i < model->cut_parts.count; i++)
        if (model->cut_parts.at[i].length < model->cut_parts.at[shortest].length)
            shortest = i;
    char label[64];
    snprintf(label, sizeof label, "%s", model->cut_parts.at[shortest].part);
    estimate = desk_plan(taking->bench.desk)->cost.estimate;
    DONE(desk_spoil(taking->bench.desk, label, true, note));
    const struct plan *plan = desk_plan(taking->bench.desk);
    for (size_t i = 0; i < plan->cuttings.count; i++)
        from_rest = from_rest || plan->cuttings.at[i].source->origin == SIZE_REST ||
                    plan->cuttings.at[i].source->leftover;
    assert_true(from_rest);
    assert_int_equal(plan->cost.estimate, estimate);
}

static void what_is_cut_anew_is_done_when_it_is_ticked(void **state)
{
    struct taking *taking = *state;
    char label[64];

    tick_until(taking->bench.desk, "cut:1");
    size_t cut = desk_model(taking->bench.desk)->cut_parts.count;
    snprintf(label, sizeof label, "%s", desk_model(taking->bench.desk)->cut_parts.at[0].part);
    DONE(desk_spoil(taking->bench.desk, label, true, note));
    const struct step *rebuy = plan_step(desk_plan(taking->bench.desk), "rebuy:1");
    if (rebuy)
        DONE(desk_tick(taking->bench.desk, "rebuy:1", NOW, 0, note));
    DONE(desk_tick(taking->bench.desk, "recut:1-1", NOW, 0, note));
    assert_int_equal(desk_model(taking->bench.desk)->cut_parts.count, cut + 1);
    assert_true(step_of(taking, "recut:1-1")->ticked);
    assert_null(plan_step(desk_plan(taking->bench.desk), "recut:1-2"));
    DONE(desk_spoil(taking->bench.desk, label, true, note));
    assert_false(step_of(taking, "recut:1-2")->ticked);
}

static void only_what_was_cut_can_be_spoiled(void **state)
{
    struct taking *taking = *state;
    struct fault_note why = {0};

    assert_int_equal(desk_spoil(taking->bench.desk, "C3", true, &why), FAULT_UNKNOWN);
    tick_until(taking->bench.desk, "cut:1");
    DONE(desk_spoil(taking->bench.desk, "C3", true, note));
    assert_int_equal(desk_spoil(taking->bench.desk, "C99", true, &why), FAULT_UNKNOWN);
}

/* ---- left out ---- */

static void an_optional_join_that_is_left_out_takes_its_steps_along(void **state)
{
    struct taking *taking = *state;
    struct fault_note why = {0};
    char label[STORE_LABEL];

    assert_int_equal(desk_leave_out(taking->bench.desk, "J2", true, &why), FAULT_REFUSED);
    DONE(desk_set(taking->bench.desk, ENTITY_join, 33, "optional", "yes", note));
    DONE(desk_leave_out(taking->bench.desk, "J2", true, note));
    for (size_t i = 0; i < desk_plan(taking->bench.desk)->steps.count; i++)
        assert_int_not_equal(desk_plan(taking->bench.desk)->steps.at[i].join, 33);
    assert_int_equal(desk_leave_out(taking->bench.desk, "J2", true, &why), FAULT_REFUSED);
    DONE(desk_undo(taking->bench.desk, label, note));
    assert_non_null(plan_step(desk_plan(taking->bench.desk), "drive:33"));
}

/* ---- what can be done now ---- */

static void the_minutes_are_kept(void **state)
{
    struct taking *taking = *state;

    for (int64_t minutes = 0; minutes <= 120; minutes += 7) {
        const struct doable *found = doable(taking, minutes, 2, NOW);
        assert_true(found->minutes <= minutes * 1000);
    }
    assert_true(doable(taking, 120, 2, NOW)->count > 0);
}

static void nothing_is_cut_before_it_is_bought(void **state)
{
    struct taking *taking = *state;
    const struct doable *found;

    tick_until(taking->bench.desk, "shelf");
    found = doable(taking, 600, 2, NOW);
    assert_false(can_do(taking, found, "cut:1"));
    assert_false(can_do(taking, found, "buy"));
    assert_true(found->barred[BAR_GOODS] > 0);
    DONE(desk_tick(taking->bench.desk, "buy", NOW, 0, note));
    assert_true(can_do(taking, doable(taking, 600, 2, NOW), "cut:1"));
}

static void alone_there_is_no_dry_fit(void **state)
{
    struct taking *taking = *state;

    tick_until(taking->bench.desk, "record:5");
    assert_true(can_do(taking, doable(taking, 60, 2, "2026-12-25 09:00"), "dry:32"));
    assert_false(can_do(taking, doable(taking, 60, 1, "2026-12-25 09:00"), "dry:32"));
}

static void glue_has_to_cure_by_the_clock(void **state)
{
    struct taking *taking = *state;

    tick_until(taking->bench.desk, "pad:22"); /* at the time that tick_until gives */
    const struct tick *tick =
        &desk_model(taking->bench.desk)->ticks.at[desk_model(taking->bench.desk)->ticks.count - 1];
    char then[24];
    snprintf(then, sizeof then, "%s", tick->at);
    assert_false(can_do(taking, doable(taking, 9, 2, then), "batting:23"));
    assert_true(can_do(taking, doable(taking, 60, 2, "2027-01-25 09:00"), "batting:23"));
}

int main(void)
{
#define ON_A_BENCH(name) cmocka_unit_test_setup_teardown(name, begin, end)
    const struct CMUnitTest tests[] = {
        ON_A_BENCH(cloth_is_cut_to_the_box_as_it_was_built),
        ON_A_BENCH(a_sheet_that_was_measured_counts_with_its_own_thickness),
        ON_A_BENCH(a_measure_that_cannot_be_one_is_refused),
        ON_A_BENCH(measures_go_with_their_tick_and_come_back_with_undo),
        ON_A_BENCH(a_step_with_measures_is_not_older_for_them),
        ON_A_BENCH(a_step_done_to_an_older_plan_says_what_was_and_what_is),
        ON_A_BENCH(parts_that_were_cut_tell_by_how_much_they_are_off),
        ON_A_BENCH(what_hangs_on_a_step_comes_off_last_first),
        ON_A_BENCH(a_spoiled_part_is_cut_anew_in_a_step_of_its_own),
        ON_A_BENCH(a_spoiled_part_comes_out_of_a_rest_where_one_is_long_enough),
        ON_A_BENCH(what_is_cut_anew_is_done_when_it_is_ticked),
        ON_A_BENCH(only_what_was_cut_can_be_spoiled),
        ON_A_BENCH(an_optional_join_that_is_left_out_takes_its_steps_along),
        ON_A_BENCH(the_minutes_are_kept),
        ON_A_BENCH(nothing_is_cut_before_it_is_bought),
        ON_A_BENCH(alone_there_is_no_dry_fit),
        ON_A_BENCH(glue_has_to_cure_by_the_clock),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
