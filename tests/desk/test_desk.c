/* One open workshop: builds are taken up, edited, ticked, undone, and seen by another program. */
#include "workshop.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>

static int begin(void **state)
{
    static const char *const names[] = {NULL};
    return bench_begin(state, names);
}

static int64_t box_named(const struct desk *desk, const char *name)
{
    return model_key_named(desk_model(desk), ENTITY_box, name);
}

static const struct box *box_of(const struct desk *desk, const char *name)
{
    return MODEL_FIND(desk_model(desk), box, box_named(desk, name));
}

/* ---- taking up ---- */

static void desk_begins_with_an_empty_workshop(void **state)
{
    struct bench *bench = *state;
    const struct store_build *builds;
    size_t count = 9;
    DONE(desk_builds(bench->desk, &builds, &count, note));
    assert_int_equal(count, 0);
    assert_int_equal(desk_model(bench->desk)->build.key, 0);
    assert_int_equal(desk_plan(bench->desk)->members.count, 0);
}

static void desk_takes_an_imported_build_up_and_plans_it(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    assert_string_equal(desk_model(bench->desk)->build.name, "Wing headboard");
    assert_int_equal(desk_plan(bench->desk)->facts->boxes.count, 3);
    assert_true(desk_plan(bench->desk)->members.count > 0);
}

static void desk_keeps_a_summary_of_each_build(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    int64_t estimate = desk_plan(bench->desk)->cost.estimate;
    int64_t steps = desk_plan(bench->desk)->tally.steps;
    DONE(desk_take_up(bench->desk, 0, note));
    const struct store_build *builds;
    size_t count;
    DONE(desk_builds(bench->desk, &builds, &count, note));
    assert_int_equal(count, 1);
    assert_int_equal(builds[0].summary.estimate, estimate);
    assert_int_equal(builds[0].summary.steps_total, steps);
    assert_true(estimate > 0 && steps > 0);
}

static void assert_missing(struct bench *bench, const char *begins)
{
    const struct store_build *builds;
    size_t count;
    DONE(desk_builds(bench->desk, &builds, &count, note));
    if (!*begins)
        assert_string_equal(builds[0].summary.missing, "");
    else if (strncmp(builds[0].summary.missing, begins, strlen(begins)) != 0)
        fail_msg("\"%s\" does not begin with \"%s\"", builds[0].summary.missing, begins);
}

/* Before the shop, after it, with a box whose stick is not known, and without a box. */
static void the_list_says_what_is_missing_before_a_build_can_go_on(void **state)
{
    struct bench *bench = *state;
    char label[STORE_LABEL];
    desk_take_case(bench->desk, "headboard");
    assert_missing(bench, "12 to buy: ");
    tick_until(bench->desk, "buy");
    assert_missing(bench, "");
    DONE(desk_set(bench->desk, ENTITY_box, box_named(bench->desk, "C"), "stick", "", note));
    assert_missing(bench, "3 stops: C names no stick");
    DONE(desk_undo(bench->desk, label, note));
    for (const char *name = "CLR"; *name; name++) {
        const char box[] = {*name, '\0'};
        DONE(desk_delete(bench->desk, ENTITY_box, box_named(bench->desk, box), note));
    }
    assert_missing(bench, "no box yet");
}

static size_t count_cures(const struct plan *plan)
{
    size_t count = 0;
    for (size_t i = 0; i < plan->findings.count; i++)
        count += plan->findings.at[i].cure_count;
    return count;
}

static void ways_out_are_made_when_they_are_asked_for(void **state)
{
    struct bench *bench = *state;
    desk_take_demo(bench->desk, "workshop");
    desk_take_demo(bench->desk, "banquette");
    DONE(desk_set(bench->desk, ENTITY_build, 0, "budget", "1.00", note));
    const struct plan *plan = desk_plan(bench->desk);
    const struct plan *told = desk_told_plan(bench->desk);
    assert_true(count_cures(told) > count_cures(plan));
    assert_ptr_equal(desk_told_plan(bench->desk), told);
    assert_int_equal(told->cost.estimate, plan->cost.estimate);
    assert_int_equal(told->findings.count, plan->findings.count);
    DONE(desk_set(bench->desk, ENTITY_build, 0, "budget", "2.00", note));
    assert_int_equal(desk_told_plan(bench->desk)->facts->build.budget, 200);
}

static void desk_knows_no_build_of_another_name(void **state)
{
    struct bench *bench = *state;
    struct fault_note refused;
    assert_int_equal(desk_take_up_named(bench->desk, "Armoire", &refused), FAULT_UNKNOWN);
    assert_non_null(strstr(refused.why, "Armoire"));
}

static void desk_tells_every_fault_of_a_file_and_takes_nothing(void **state)
{
    struct bench *bench = *state;
    static const char file[] = "{\"format\": 1, \"kind\": \"build\", \"build\": {\"name\": \"A\"},"
                               "\"boxes\": [{\"key\": 1, \"name\": \"B\", \"width\": \"x\","
                               "\"depth\": \"1 in\", \"height\": \"1 in\", \"colour\": 3}]}";
    struct fault_note refused;
    assert_int_not_equal(desk_import(bench->desk, file, sizeof file - 1, NULL, NULL, &refused), 0);
    assert_int_equal(desk_model(bench->desk)->build.key, 0);
    char label[STORE_LABEL];
    desk_undo_label(bench->desk, label);
    assert_string_equal(label, "");
}

/* ---- edits ---- */

static void desk_refuses_a_value_with_its_reason_and_changes_nothing(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    struct fault_note refused;
    unsigned serial = desk_serial(bench->desk);
    assert_int_equal(
        desk_set(bench->desk, ENTITY_box, box_named(bench->desk, "C"), "width", "6 3/5", &refused),
        FAULT_SYNTAX);
    assert_true(refused.column > 0 && refused.why[0]);
    assert_int_equal(box_of(bench->desk, "C")->width, 63 * LENGTH_INCH);
    assert_int_equal(desk_serial(bench->desk), serial);
}

static enum fault widen(struct model *draft, void *context, struct fault_note *note)
{
    (void)note;
    int64_t key = model_key_named(draft, ENTITY_box, "C");
    ((struct box *)model_find(draft, ENTITY_box, key))->width = *(int64_t *)context;
    return FAULT_NONE;
}

static void desk_previews_a_draft_and_forgets_it(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    int64_t wide = 70 * LENGTH_INCH;
    const struct plan *preview = NULL;
    DONE(desk_change(bench->desk, widen, &wide, note));
    DONE(desk_preview(bench->desk, &preview, note));
    assert_int_equal(preview->facts->boxes.at[0].width, wide);
    assert_true(preview->tally.staples > desk_plan(bench->desk)->tally.staples);
    desk_abandon(bench->desk);
    assert_int_equal(box_of(bench->desk, "C")->width, 63 * LENGTH_INCH);
    struct fault_note refused;
    assert_int_equal(desk_preview(bench->desk, &preview, &refused), FAULT_MISSING);
}

static void desk_refuses_a_draft_with_a_value_out_of_range(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    int64_t width = -1;
    struct fault_note refused;
    assert_int_equal(desk_edit(bench->desk, "bad", widen, &width, &refused), FAULT_RANGE);
    assert_non_null(strstr(refused.path, "width"));
    assert_int_equal(box_of(bench->desk, "C")->width, 63 * LENGTH_INCH);
}

static enum fault frame_from_nothing(struct model *draft, void *context, struct fault_note *note)
{
    (void)context;
    (void)note;
    int64_t key = model_key_named(draft, ENTITY_box, "C");
    ((struct box *)model_find(draft, ENTITY_box, key))->stick = 9999;
    return FAULT_NONE;
}

static void desk_refuses_a_draft_that_breaks_a_reference(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    int64_t stick = box_of(bench->desk, "C")->stick;
    struct fault_note refused;
    assert_int_not_equal(desk_edit(bench->desk, "bad", frame_from_nothing, NULL, &refused),
                         FAULT_NONE);
    assert_non_null(strstr(refused.path, "stick"));
    assert_int_equal(box_of(bench->desk, "C")->stick, stick);
}

static void desk_undoes_twenty_edits_leaves_and_redoes_them(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    for (int i = 1; i <= 20; i++) {
        char width[16];
        snprintf(width, sizeof width, "%d", 63 + i);
        DONE(desk_set(bench->desk, ENTITY_box, box_named(bench->desk, "C"), "width", width, note));
    }
    char label[STORE_LABEL];
    for (int i = 19; i >= 0; i--) {
        DONE(desk_undo(bench->desk, label, note));
        assert_string_equal(label, "width of C");
        assert_int_equal(box_of(bench->desk, "C")->width, (63 + i) * LENGTH_INCH);
    }
    desk_close(bench->desk);
    bench->desk = desk_at(&bench->place);
    for (int i = 1; i <= 20; i++) {
        DONE(desk_redo(bench->desk, label, note));
        assert_int_equal(box_of(bench->desk, "C")->width, (63 + i) * LENGTH_INCH);
    }
    struct fault_note refused;
    assert_int_equal(desk_redo(bench->desk, label, &refused), FAULT_MISSING);
}

static void desk_deletes_a_box_with_what_hangs_on_it_and_brings_it_back(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    size_t layers = desk_model(bench->desk)->layers.count;
    DONE(desk_delete(bench->desk, ENTITY_box, box_named(bench->desk, "L"), note));
    assert_int_equal(desk_model(bench->desk)->boxes.count, 2);
    assert_true(desk_model(bench->desk)->layers.count < layers);
    char label[STORE_LABEL];
    DONE(desk_undo(bench->desk, label, note));
    assert_string_equal(label, "delete L");
    assert_int_equal(desk_model(bench->desk)->boxes.count, 3);
    assert_int_equal(desk_model(bench->desk)->layers.count, layers);
}

static void desk_deletes_a_build_and_brings_it_back(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "ottoman");
    int64_t key = desk_model(bench->desk)->build.key;
    DONE(desk_delete_build(bench->desk, key, note));
    assert_int_equal(desk_model(bench->desk)->build.key, 0);
    char label[STORE_LABEL];
    DONE(desk_undo(bench->desk, label, note));
    assert_string_equal(label, "delete build Tufted ottoman");
    assert_int_equal(desk_model(bench->desk)->build.key, key);
}

/* ---- trade values ---- */

static void desk_lets_a_build_have_its_own_trade_value(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    int64_t staples = desk_plan(bench->desk)->tally.staples;
    DONE(desk_trade(bench->desk, TRADE_FROM_WORKSHOP, "staple.cover.pitch", "2 in", note));
    int64_t fewer = desk_plan(bench->desk)->tally.staples;
    assert_true(fewer < staples);
    DONE(desk_trade(bench->desk, TRADE_FROM_BUILD, "staple.cover.pitch", "1 in", note));
    assert_int_equal(desk_plan(bench->desk)->tally.staples, staples);
    DONE(desk_trade(bench->desk, TRADE_FROM_BUILD, "staple.cover.pitch", "", note));
    assert_int_equal(desk_plan(bench->desk)->tally.staples, fewer);
}

/* ---- ticks ---- */

static int64_t hole_height(const struct desk *desk, const char *join, size_t index)
{
    const struct plan *plan = desk_plan(desk);
    const struct junction *junction =
        plan_junction(plan, model_key_named(desk_model(desk), ENTITY_join, join));
    assert_non_null(junction);
    assert_true(index < junction->point_count);
    return plan->points.at[junction->first_point + index].v;
}

static void desk_leaves_drilled_holes_where_they_are(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    char drill[32];
    snprintf(drill, sizeof drill, "drill:%lld",
             (long long)model_key_named(desk_model(bench->desk), ENTITY_join, "J1"));
    tick_until(bench->desk, drill);
    assert_true(desk_model(bench->desk)->holes.count >= 6);
    DONE(desk_trade(bench->desk, TRADE_FROM_BUILD, "join.pitch", "20 in", note));
    assert_int_equal(hole_height(bench->desk, "J1", 1), 13 * LENGTH_INCH);
}

static void desk_moves_holes_that_are_not_drilled(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    DONE(desk_trade(bench->desk, TRADE_FROM_BUILD, "join.pitch", "20 in", note));
    assert_true(hole_height(bench->desk, "J1", 1) > 13 * LENGTH_INCH);
}

static void desk_takes_the_facts_back_with_the_tick(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    tick_until(bench->desk, "buy");
    assert_true(desk_model(bench->desk)->boughts.count > 0);
    DONE(desk_untick(bench->desk, "buy", note));
    assert_int_equal(desk_model(bench->desk)->boughts.count, 0);
    char label[STORE_LABEL];
    DONE(desk_undo(bench->desk, label, note));
    assert_true(desk_model(bench->desk)->boughts.count > 0);
}

/* A step that is done to today's plan says the same afterwards, whatever it took as a fact. */
static void desk_does_not_call_a_fresh_tick_older(void **state)
{
    struct bench *bench = *state;
    static const char *const names[] = {"ottoman", "headboard", "banquette"};
    for (size_t k = 0; k < sizeof names / sizeof *names; k++) {
        desk_take_case(bench->desk, names[k]);
        tick_until(bench->desk, "account");
        const struct plan *plan = desk_plan(bench->desk);
        for (size_t i = 0; i < plan->steps.count; i++) {
            if (plan->steps.at[i].older)
                fail_msg("%s: %s", names[k], plan->steps.at[i].name);
        }
        assert_int_equal(plan->tally.steps_done, plan->tally.steps);
    }
}

static void ticks_say_whether_a_build_is_made_or_finished(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "ottoman");
    assert_true(desk_model(bench->desk)->build.state < STATE_MAKING);
    tick_until(bench->desk, "buy");
    assert_int_equal(desk_model(bench->desk)->build.state, STATE_MAKING);
    tick_until(bench->desk, "account");
    assert_int_equal(desk_model(bench->desk)->build.state, STATE_FINISHED);
    DONE(desk_untick(bench->desk, "account", note));
    assert_int_equal(desk_model(bench->desk)->build.state, STATE_MAKING);
}

static void desk_refuses_a_step_before_its_hold_point(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    struct fault_note refused;
    const struct plan *plan = desk_plan(bench->desk);
    const char *last = plan->steps.at[plan->steps.count - 1].name;
    assert_int_equal(desk_tick(bench->desk, last, "", 0, &refused), FAULT_REFUSED);
    assert_int_equal(desk_model(bench->desk)->ticks.count, 0);
}

static void desk_refuses_to_take_back_what_a_ticked_step_needs(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    char drill[32];
    char dry[32];
    long long join = (long long)model_key_named(desk_model(bench->desk), ENTITY_join, "J1");
    snprintf(drill, sizeof drill, "drill:%lld", join);
    snprintf(dry, sizeof dry, "dry:%lld", join);
    tick_until(bench->desk, drill);
    struct fault_note refused;
    assert_int_equal(desk_untick(bench->desk, dry, &refused), FAULT_REFUSED);
    assert_int_equal(desk_tick(bench->desk, drill, "", 0, &refused), FAULT_REFUSED);
}

/* ---- another program ---- */

static void desk_sees_what_another_program_wrote(void **state)
{
    struct bench *bench = *state;
    desk_take_case(bench->desk, "headboard");
    pid_t child = fork();
    if (child == 0) {
        struct desk *other = NULL;
        int failed = desk_open(&other, bench->place.path, NULL) ||
                     desk_take_up_named(other, "Wing headboard", NULL) ||
                     desk_set(other, ENTITY_box, box_named(other, "C"), "height", "50", NULL);
        desk_close(other);
        _exit(failed);
    }
    int status;
    assert_int_equal(waitpid(child, &status, 0), child);
    assert_int_equal(status, 0);
    struct fault_note refused;
    assert_int_equal(
        desk_set(bench->desk, ENTITY_box, box_named(bench->desk, "C"), "width", "70", &refused),
        FAULT_CHANGED);
    bool changed = false;
    DONE(desk_refresh(bench->desk, &changed, note));
    assert_true(changed);
    assert_int_equal(box_of(bench->desk, "C")->height, 50 * LENGTH_INCH);
    assert_int_equal(box_of(bench->desk, "C")->width, 63 * LENGTH_INCH);
    DONE(desk_refresh(bench->desk, &changed, note));
    assert_false(changed);
}

#define ON_A_BENCH(test) cmocka_unit_test_setup_teardown(test, begin, bench_end)

int main(void)
{
    const struct CMUnitTest tests[] = {
        ON_A_BENCH(desk_begins_with_an_empty_workshop),
        ON_A_BENCH(desk_takes_an_imported_build_up_and_plans_it),
        ON_A_BENCH(desk_keeps_a_summary_of_each_build),
        ON_A_BENCH(the_list_says_what_is_missing_before_a_build_can_go_on),
        ON_A_BENCH(ways_out_are_made_when_they_are_asked_for),
        ON_A_BENCH(desk_knows_no_build_of_another_name),
        ON_A_BENCH(desk_tells_every_fault_of_a_file_and_takes_nothing),
        ON_A_BENCH(desk_refuses_a_value_with_its_reason_and_changes_nothing),
        ON_A_BENCH(desk_previews_a_draft_and_forgets_it),
        ON_A_BENCH(desk_refuses_a_draft_with_a_value_out_of_range),
        ON_A_BENCH(desk_refuses_a_draft_that_breaks_a_reference),
        ON_A_BENCH(desk_undoes_twenty_edits_leaves_and_redoes_them),
        ON_A_BENCH(desk_deletes_a_box_with_what_hangs_on_it_and_brings_it_back),
        ON_A_BENCH(desk_deletes_a_build_and_brings_it_back),
        ON_A_BENCH(desk_lets_a_build_have_its_own_trade_value),
        ON_A_BENCH(desk_leaves_drilled_holes_where_they_are),
        ON_A_BENCH(desk_moves_holes_that_are_not_drilled),
        ON_A_BENCH(desk_takes_the_facts_back_with_the_tick),
        ON_A_BENCH(desk_does_not_call_a_fresh_tick_older),
        ON_A_BENCH(ticks_say_whether_a_build_is_made_or_finished),
        ON_A_BENCH(desk_refuses_a_step_before_its_hold_point),
        ON_A_BENCH(desk_refuses_to_take_back_what_a_ticked_step_needs),
        ON_A_BENCH(desk_sees_what_another_program_wrote),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
