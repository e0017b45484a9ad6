/* Layouts at the desk: found while nobody types, taken, given back. */
#include "workshop.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static int begin(void **state)
{
    static const char *const names[] = {"headboard", NULL};
    return bench_begin(state, names);
}

/* The first job of a plan that cuts sticks. */
static const struct plan_job *stick_job(const struct desk *desk)
{
    const struct plan *plan = desk_plan(desk);
    for (size_t i = 0; i < plan->jobs.count; i++)
        if (plan->jobs.at[i].way == CUT_BARS)
            return &plan->jobs.at[i];
    fail_msg("no sticks are cut");
    return NULL;
}

static void every_job_names_its_parts_and_cuttings(void **state)
{
    const struct bench *bench = *state;
    const struct plan *plan = desk_plan(bench->desk);
    size_t parts = 0;
    assert_true(plan->jobs.count >= 3);
    for (size_t i = 0; i < plan->jobs.count; i++) {
        const struct plan_job *job = &plan->jobs.at[i];
        parts += job->job->part_count;
        for (size_t k = 0; k < job->job->part_count; k++)
            assert_int_equal(plan->parts.at[job->first_part + k].stock, job->stock);
        assert_int_equal(plan->cuttings.at[job->first_cutting].stock, job->stock);
        assert_int_equal(cut_digest(job->way, job->job), job->digest);
    }
    assert_int_equal(parts, plan->parts.count);
}

/* Worked example, computed by hand: ten sticks of 96 in, which no other layout betters. */
static void a_search_between_keys_proves_the_sticks(void **state)
{
    const struct bench *bench = *state;
    int turns = 0;
    assert_int_equal(stick_job(bench->desk)->layout->blanks.count, 10);
    while (desk_improve(bench->desk, CUT_SLICE) && turns < 20000)
        turns++;
    assert_true(turns > 0);
    assert_true(layout_proven(stick_job(bench->desk)->layout));
    assert_int_equal(stick_job(bench->desk)->layout->blanks.count, 10);
    assert_false(desk_improve(bench->desk, CUT_SLICE));
}

static void nothing_is_searched_while_a_draft_is_open(void **state)
{
    const struct bench *bench = *state;
    struct desk_field field = {ENTITY_build, 0, "note", "being written"};
    DONE(desk_change(bench->desk, desk_field_change, &field, note));
    assert_false(desk_improve(bench->desk, CUT_SLICE));
    desk_abandon(bench->desk);
    assert_true(desk_improve(bench->desk, CUT_SLICE));
}

static void a_search_says_how_far_it_is(void **state)
{
    const struct bench *bench = *state;
    struct desk_search before = desk_search_state(bench->desk);
    struct desk_search now = before;
    assert_true(before.on && !before.longer);
    assert_int_equal(before.job, 1);
    assert_true(before.jobs >= 3);
    assert_int_equal(before.percent, 0);
    for (int turns = 0; desk_improve(bench->desk, CUT_SLICE) && turns < 20000; turns++) {
        now = desk_search_state(bench->desk);
        assert_true(!now.on || now.job > before.job ||
                    (now.job == before.job && now.percent >= before.percent));
        assert_true(now.percent >= 0 && now.percent <= 100);
        before = now;
    }
    assert_false(desk_search_state(bench->desk).on);
}

/* What it had found by then is in the plan, and what is searched unasked is gone on with. */
static void a_longer_search_stops_where_it_is_told_to(void **state)
{
    const struct bench *bench = *state;
    int64_t quick = desk_plan(bench->desk)->cost.estimate;
    assert_true(desk_search_longer(bench->desk));
    assert_true(desk_search_state(bench->desk).longer);
    assert_true(desk_improve(bench->desk, CUT_SLICE));
    assert_true(desk_search_state(bench->desk).longer);
    DONE(desk_search_stop(bench->desk, note));
    assert_true(desk_plan(bench->desk)->cost.estimate <= quick);
    assert_true(desk_search_state(bench->desk).on);
    assert_false(desk_search_state(bench->desk).longer);
}

static void a_search_does_not_go_on_longer_for_another_build(void **state)
{
    const struct bench *bench = *state;
    int64_t build = desk_model(bench->desk)->build.key;
    assert_true(desk_search_longer(bench->desk));
    DONE(desk_take_up(bench->desk, 0, note));
    DONE(desk_take_up(bench->desk, build, note));
    assert_false(desk_search_state(bench->desk).longer);
}

static void a_preview_is_compared_with_quick_layouts(void **state)
{
    const struct bench *bench = *state;
    int64_t quick = desk_plan(bench->desk)->cost.estimate;
    DONE(desk_cut(bench->desk, CUT_GOOD, note));
    assert_int_equal(desk_quick_plan(bench->desk)->cost.estimate, quick);
    assert_true(desk_plan(bench->desk)->cost.estimate <= quick);
}

static void layouts_that_are_taken_are_facts_until_they_are_given_back(void **state)
{
    const struct bench *bench = *state;
    char label[STORE_LABEL];
    DONE(desk_cut(bench->desk, CUT_GOOD, note));
    int64_t cost = stick_job(bench->desk)->layout->cost;
    DONE(desk_take_layouts(bench->desk, note));
    assert_true(stick_job(bench->desk)->taken);
    assert_int_equal(stick_job(bench->desk)->layout->cost, cost);
    assert_int_equal(desk_model(bench->desk)->layouts.count, desk_plan(bench->desk)->jobs.count);
    DONE(desk_undo(bench->desk, label, note));
    assert_false(stick_job(bench->desk)->taken);
    DONE(desk_redo(bench->desk, label, note));
    assert_true(stick_job(bench->desk)->taken);
    DONE(desk_leave_layouts(bench->desk, note));
    assert_int_equal(desk_model(bench->desk)->layouts.count, 0);
    assert_int_equal(desk_leave_layouts(bench->desk, NULL), FAULT_REFUSED);
}

static void a_taken_layout_of_another_job_is_left_aside(void **state)
{
    const struct bench *bench = *state;
    const struct plan_job *job;
    int64_t box = desk_model(bench->desk)->boxes.at[0].key;
    DONE(desk_take_layouts(bench->desk, note));
    DONE(desk_set(bench->desk, ENTITY_box, box, "height", "50 in", note));
    job = stick_job(bench->desk);
    assert_false(job->taken);
    assert_true(job->layout->blanks.count > 0);
}

static enum fault spoil(struct model *draft, void *context, struct fault_note *note)
{
    (void)note;
    for (size_t i = 0; i < draft->layouts.count; i++)
        draft->layouts.at[i].content = arena_text(draft->arena, context);
    return FAULT_NONE;
}

static void a_taken_layout_that_is_not_sound_is_left_aside(void **state)
{
    static const char *const contents[] = {
        "b 0 1 1 0\np 0 0 0 0\n", "p 0 0 0 0\n", "b 99 1 1 0\n",
        "nothing of the kind",    "b",           "b 0 1 1 0\np 99999999999999999999 0 0 0\n"};
    const struct bench *bench = *state;
    int64_t cost = desk_plan(bench->desk)->cost.estimate;
    DONE(desk_take_layouts(bench->desk, note));
    for (size_t i = 0; i < sizeof contents / sizeof *contents; i++) {
        char content[80];
        snprintf(content, sizeof content, "%s", contents[i]);
        DONE(desk_edit(bench->desk, "spoil", spoil, content, note));
        assert_false(stick_job(bench->desk)->taken);
        assert_int_equal(desk_plan(bench->desk)->cost.estimate, cost);
    }
}

static int64_t shelf_count(const struct desk *desk)
{
    int64_t count = 0;
    for (size_t i = 0; i < desk_model(desk)->leftovers.count; i++)
        count += *desk_model(desk)->leftovers.at[i].from_step
                     ? desk_model(desk)->leftovers.at[i].count
                     : 0;
    return count;
}

/* Sticks from 8 in on are worth keeping (common practice, no source); the headboard's ten leave
 * rests of 39-5/8 in from the six that take one part of 56 in. */
static void a_ticked_cut_puts_its_rests_on_the_shelf(void **state)
{
    const struct bench *bench = *state;
    char step[40];
    int64_t before = desk_plan(bench->desk)->cost.estimate;
    snprintf(step, sizeof step, "cut:%d", (int)stick_job(bench->desk)->stock);
    tick_until(bench->desk, step);
    assert_true(shelf_count(bench->desk) >= 6);
    assert_int_equal(desk_plan(bench->desk)->cost.estimate, before);
    for (size_t i = 0; i < desk_model(bench->desk)->leftovers.count; i++)
        assert_true(desk_model(bench->desk)->leftovers.at[i].length >= 8 * LENGTH_INCH);
    DONE(desk_untick(bench->desk, step, note));
    assert_int_equal(shelf_count(bench->desk), 0);
}

/* A better layout that is found when the goods are in the house would only have more bought. */
static void what_is_bought_is_cut_as_it_was_laid_out(void **state)
{
    const struct bench *bench = *state;
    assert_true(desk_search_state(bench->desk).on);
    tick_until(bench->desk, "buy");
    const struct plan *plan = desk_plan(bench->desk);
    assert_true(plan->jobs.count > 0);
    for (size_t i = 0; i < plan->jobs.count; i++)
        assert_int_equal(plan->jobs.at[i].taken, plan->jobs.at[i].layout->blanks.count > 0);
    assert_false(desk_search_state(bench->desk).on);
    DONE(desk_untick(bench->desk, "buy", note));
    assert_int_equal(desk_model(bench->desk)->layouts.count, 0);
    assert_true(desk_search_state(bench->desk).on);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(every_job_names_its_parts_and_cuttings, begin, bench_end),
        cmocka_unit_test_setup_teardown(a_search_between_keys_proves_the_sticks, begin, bench_end),
        cmocka_unit_test_setup_teardown(nothing_is_searched_while_a_draft_is_open, begin,
                                        bench_end),
        cmocka_unit_test_setup_teardown(a_search_says_how_far_it_is, begin, bench_end),
        cmocka_unit_test_setup_teardown(a_longer_search_stops_where_it_is_told_to, begin,
                                        bench_end),
        cmocka_unit_test_setup_teardown(a_search_does_not_go_on_longer_for_another_build, begin,
                                        bench_end),
        cmocka_unit_test_setup_teardown(a_preview_is_compared_with_quick_layouts, begin, bench_end),
        cmocka_unit_test_setup_teardown(layouts_that_are_taken_are_facts_until_they_are_given_back,
                                        begin, bench_end),
        cmocka_unit_test_setup_teardown(a_taken_layout_of_another_job_is_left_aside, begin,
                                        bench_end),
        cmocka_unit_test_setup_teardown(a_ticked_cut_puts_its_rests_on_the_shelf, begin, bench_end),
        cmocka_unit_test_setup_teardown(a_taken_layout_that_is_not_sound_is_left_aside, begin,
                                        bench_end),
        cmocka_unit_test_setup_teardown(what_is_bought_is_cut_as_it_was_laid_out, begin, bench_end),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
