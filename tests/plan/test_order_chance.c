/*
 * The order of builds by chance, with the seeds below: whatever the build, nothing is done too
 * late, names are its own, and the same facts give the same order.
 */
#include "work.h"

#include "plan/findings.h"
#include "plan/rules.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

static void check_order(struct work_bench *bench, struct dice *dice)
{
    size_t *place = calloc(bench->plan->steps.count, sizeof *place);
    const char *broken;

    (void)dice;
    assert_non_null(place);
    for (size_t i = 0; i < bench->plan->steps.count; i++)
        place[i] = i;
    broken = order_breaks(bench->plan, place);
    if (broken && !work_findings(bench, FINDING_ORDER_CIRCLE))
        fail_msg("%s", broken);
    free(place);
}

static void nothing_is_done_too_late(void **state)
{
    (void)state;
    work_builds(3, check_order);
}

static void check_precedences(struct work_bench *bench, struct dice *dice)
{
    (void)dice;
    for (size_t i = 0; i < bench->plan->precedences.count; i++) {
        const struct precedence *precedence = &bench->plan->precedences.at[i];

        assert_true(precedence->before < precedence->after);
        assert_true(precedence->after < bench->plan->steps.count);
    }
}

static void every_precedence_is_honoured(void **state)
{
    (void)state;
    work_builds(5, check_precedences);
}

static void check_room(struct work_bench *bench, struct dice *dice)
{
    bool moved = false;

    (void)dice;
    for (size_t i = 0; i < bench->plan->steps.count; i++) {
        const struct step *step = &bench->plan->steps.at[i];

        moved |= step->place == PLACE_SITE;
        if (strcmp(step->name, "account") != 0)
            assert_int_equal(step->place, moved ? PLACE_SITE : PLACE_BENCH);
    }
    assert_string_equal(bench->plan->steps.at[bench->plan->steps.count - 1].name, "account");
    assert_string_equal(bench->plan->steps.at[bench->plan->steps.count - 2].name, "final");
}

/* A step that waits for nothing would be offered as the next before the wood is bought. */
static void check_held(struct work_bench *bench, struct dice *dice)
{
    const struct plan *plan = bench->plan;
    bool *held = calloc(plan->steps.count, sizeof *held);

    (void)dice;
    assert_non_null(held);
    for (size_t i = 0; i < plan->precedences.count; i++)
        if (rule_find(plan->precedences.at[i].rule)->kind != RULE_SOFT)
            held[plan->precedences.at[i].after] = true;
    for (size_t i = 0; i < plan->steps.count; i++) {
        assert_int_equal(!held[i], plan->steps.at[i].phase == 0);
        assert_int_equal(plan->steps.at[i].ready, plan->steps.at[i].phase == 0);
    }
    free(held);
}

static void only_paper_work_waits_for_nothing(void **state)
{
    (void)state;
    work_builds(37, check_held);
}

static void all_of_the_bench_stands_before_the_room(void **state)
{
    (void)state;
    work_builds(7, check_room);
}

static void check_names(struct work_bench *bench, struct dice *dice)
{
    (void)dice;
    for (size_t i = 0; i < bench->plan->steps.count; i++) {
        const struct step *step = &bench->plan->steps.at[i];

        assert_ptr_equal(plan_step(bench->plan, step->name), step);
        assert_int_equal(step_kind_of(step->name), step->kind);
        assert_true(strlen(step->title) > 0);
        assert_null(strchr(step->title, '%'));
    }
}

static void every_step_has_a_name_of_its_own(void **state)
{
    (void)state;
    work_builds(11, check_names);
}

/* The bench makes drafts. */
static void check_draft(struct work_bench *bench, struct dice *dice)
{
    struct arena arena;
    const struct plan *whole;

    (void)dice;
    arena_init(&arena);
    assert_int_equal(plan_make(&bench->model, &arena, &whole), FAULT_NONE);
    assert_memory_equal(&whole->tally, &bench->plan->tally, sizeof whole->tally);
    assert_int_equal(whole->findings.count, bench->plan->findings.count);
    assert_int_equal(whole->steps.count, bench->plan->steps.count);
    for (size_t i = 0; i < whole->steps.count; i++) {
        assert_string_equal(whole->steps.at[i].name, bench->plan->steps.at[i].name);
        assert_true(whole->steps.at[i].content == bench->plan->steps.at[i].content);
    }
    arena_release(&arena);
}

static void a_draft_has_the_order_and_the_figures_of_the_plan(void **state)
{
    (void)state;
    work_builds(13, check_draft);
}

/* Names of the steps that there were, still there after something was added. */
static void check_edit(struct work_bench *bench, struct dice *dice)
{
    size_t count = bench->plan->steps.count;
    char(*names)[sizeof bench->plan->steps.at->name] = calloc(count, sizeof *names);

    assert_non_null(names);
    for (size_t i = 0; i < count; i++)
        memcpy(names[i], bench->plan->steps.at[i].name, sizeof *names);
    if (dice_between(dice, 0, 1))
        work_layer(bench, bench->model.boxes.at[0].key, LAYER_FOAM, SIDE_TOP, 1);
    else
        work_box(bench, "NEW", FRAME_LADDER);
    work_plan(bench);
    for (size_t i = 0; i < count; i++)
        assert_true(work_has(bench, names[i]));
    free(names);
}

static void names_stay_when_something_is_added(void **state)
{
    (void)state;
    work_builds(17, check_edit);
}

/* What was on the list is there. */
static void buy_all(struct work_bench *bench)
{
    for (size_t i = 0; i < bench->plan->purchases.count; i++) {
        const struct purchase *purchase = &bench->plan->purchases.at[i];
        const struct offer *offer = MODEL_FIND(&bench->model, offer, purchase->offer);
        struct bought *bought;

        if (!purchase->stock || !purchase->packs)
            continue;
        bought = MODEL_ADD(&bench->model, bought);
        bought->tick = bench->model.ticks.at[bench->model.ticks.count - 1].key;
        bought->stock = purchase->stock;
        bought->length = purchase->length ? purchase->length : offer ? offer->length : 0;
        bought->width = offer ? offer->width : 0;
        bought->packs = purchase->packs;
    }
}

static void check_done(struct work_bench *bench, struct dice *dice)
{
    size_t done = (size_t)dice_between(dice, 0, (int64_t)bench->plan->steps.count);
    size_t ready = 0;

    for (size_t i = 0; i < done; i++) {
        work_tick(bench, bench->plan->steps.at[i].name, "");
        if (bench->plan->steps.at[i].kind == STEP_BUY)
            buy_all(bench);
    }
    work_plan(bench);
    for (size_t i = 0; i < bench->plan->steps.count; i++) {
        const struct step *step = &bench->plan->steps.at[i];

        assert_int_equal(step->ticked, i < done);
        assert_false(step->ticked && step->ready);
        ready += step->ready;
    }
    assert_true(ready > 0 || done == bench->plan->steps.count);
    if (done < bench->plan->steps.count)
        assert_true(bench->plan->steps.at[done].ready);
}

static void what_is_next_is_ready(void **state)
{
    (void)state;
    work_builds(19, check_done);
}

static void check_card(struct work_bench *bench, struct dice *dice)
{
    (void)dice;
    for (size_t i = 0; i < bench->plan->steps.count; i++) {
        const struct step *step = &bench->plan->steps.at[i];

        assert_in_range(step->action_count, 1, 7);
        assert_non_null(step->because);
        assert_non_null(step->closes);
        assert_non_null(step->caution);
        assert_null(strstr(step->caution, "omplies"));
        for (size_t j = 0; j < step->action_count; j++) {
            assert_true(strlen(step->actions[j]) > 0);
            assert_null(strchr(step->actions[j], '%'));
        }
        assert_true(strlen(step->because) > 0);
    }
}

static void every_card_says_something_and_not_too_much(void **state)
{
    (void)state;
    work_builds(23, check_card);
}

/* ---- what is needed ---- */

/* The sum of the needs of steps of one kind that read "12 screws #8 x 3 in": a count, then the
 * word, then anything (`open`) or nothing. */
static int64_t needed(const struct plan *plan, int kind, const char *word, bool open)
{
    int64_t sum = 0;

    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.at[i];

        for (size_t j = 0; step->kind == kind && j < step->need_count; j++) {
            char *rest;
            long long count = strtoll(step->needs[j].text, &rest, 10);
            size_t length = strlen(word);

            assert_true(count > 0);
            if (strncmp(rest, word, length) == 0 && (rest[length] == '\0' || open))
                sum += count;
        }
    }
    return sum;
}

static int64_t screws_used(const struct plan *plan, enum screw_use use)
{
    int64_t sum = 0;

    for (size_t i = 0; i < plan->screw_kinds.count; i++)
        sum += plan->screw_kinds.at[i].count_by_use[use];
    return sum;
}

static void check_screws(struct work_bench *bench, struct dice *dice)
{
    const struct plan *plan = bench->plan;
    int64_t joins = needed(plan, STEP_DRIVE, " screws ", true);

    (void)dice;
    assert_int_equal(needed(plan, STEP_FRAME, " screws ", true), screws_used(plan, SCREW_FRAME));
    assert_int_equal(needed(plan, STEP_PANEL, " screws ", true), screws_used(plan, SCREW_PANEL));
    joins += needed(plan, STEP_FIX, " screws ", true);
    assert_int_equal(joins, screws_used(plan, SCREW_JOIN));
    assert_int_equal(needed(plan, STEP_DRILL, " screws ", true), joins);
}

static void steps_need_the_screws_of_the_plan(void **state)
{
    (void)state;
    work_builds(29, check_screws);
}

static void check_staples(struct work_bench *bench, struct dice *dice)
{
    int64_t sum = 0;

    (void)dice;
    for (int kind = 0; kind < STEP_KINDS; kind++)
        sum += needed(bench->plan, kind, " staples", false) +
               needed(bench->plan, kind, " temporary staples", false);
    assert_int_equal(sum, bench->plan->tally.staples);
}

static void steps_need_the_staples_of_the_plan(void **state)
{
    (void)state;
    work_builds(31, check_staples);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nothing_is_done_too_late),
        cmocka_unit_test(every_precedence_is_honoured),
        cmocka_unit_test(only_paper_work_waits_for_nothing),
        cmocka_unit_test(all_of_the_bench_stands_before_the_room),
        cmocka_unit_test(every_step_has_a_name_of_its_own),
        cmocka_unit_test(a_draft_has_the_order_and_the_figures_of_the_plan),
        cmocka_unit_test(names_stay_when_something_is_added),
        cmocka_unit_test(what_is_next_is_ready),
        cmocka_unit_test(every_card_says_something_and_not_too_much),
        cmocka_unit_test(steps_need_the_screws_of_the_plan),
        cmocka_unit_test(steps_need_the_staples_of_the_plan),
    };
    int failed = cmocka_run_group_tests_name("plan order by chance", tests, NULL, NULL);

    return failed ? 1 : 0;
}
