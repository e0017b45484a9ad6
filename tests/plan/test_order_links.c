/*
 * The order of work against its own table of rules: each link holds between all steps that it
 * relates, on the worked examples and on builds by chance, as a checker sees it that shares no code
 * with the engine. And what an order must not hang on: sizes, and in what order things were added.
 */
#include "work.h"

#include "plan/findings.h"
#include "plan/rules.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

static const char *const examples[] = {"headboard", "ottoman", "banquette"};

#define EXAMPLES (sizeof examples / sizeof *examples)

static void assert_unbroken(const struct plan *plan)
{
    size_t *place = places_as_planned(plan);
    const char *broken = links_broken(plan, place);

    if (broken)
        fail_msg("%s", broken);
    if (links_groundless(plan))
        fail_msg("%s for nothing", links_groundless(plan));
    free(place);
}

/* ---- the examples ---- */

static void examples_honour_every_link(void **state)
{
    struct work_bench bench;

    (void)state;
    for (size_t i = 0; i < EXAMPLES; i++) {
        work_case(&bench, examples[i]);
        assert_unbroken(bench.plan);
        work_end(&bench);
    }
}

/* The checker sees what it should: every precedence that is turned round in a copy of the order. */
static void checker_notices_each_precedence_turned_round(void **state)
{
    struct work_bench bench;

    (void)state;
    work_case(&bench, "headboard");
    size_t *place = places_as_planned(bench.plan);

    for (size_t i = 0; i < bench.plan->precedences.count; i++) {
        size_t before = bench.plan->precedences.at[i].before;
        size_t after = bench.plan->precedences.at[i].after;

        place[before] = after;
        place[after] = before;
        assert_non_null(links_broken(bench.plan, place));
        place[before] = before;
        place[after] = after;
    }
    free(place);
    work_end(&bench);
}

/* ---- by chance ---- */

static void check_links(struct work_bench *bench, struct dice *dice)
{
    (void)dice;
    assert_unbroken(bench->plan);
}

static void builds_honour_every_link(void **state)
{
    (void)state;
    work_builds(101, check_links);
}

/* Only what went wrong at the bench brings them; no build by chance has that. */
static bool is_done_again(int kind)
{
    return kind == STEP_RECUT || kind == STEP_REBUY;
}

/* The first link that no build has used yet; link_count for none. */
static size_t first_unused(const bool *used)
{
    size_t link = 0;

    while (link < link_count &&
           (used[link] || is_done_again(links[link].before) || is_done_again(links[link].after)))
        link++;
    return link;
}

/* A link that no build ever uses would be held by nobody. */
static void every_link_is_used_by_some_build(void **state)
{
    struct dice dice = {101};
    bool *used = calloc(link_count, sizeof *used);
    size_t unused = 0;

    (void)state;
    assert_non_null(used);
    for (int i = 0; i < WORK_BUILDS && unused < link_count; i++) {
        struct work_bench bench;

        work_begin(&bench);
        work_chance(&bench, &dice);
        work_plan(&bench);
        for (size_t link = 0; link < link_count; link++)
            used[link] = used[link] || link_is_used(bench.plan, link);
        unused = first_unused(used);
        work_end(&bench);
    }
    if (unused < link_count)
        fail_msg("%s: no build has %s and %s", links[unused].rule,
                 step_kinds[links[unused].before].word, step_kinds[links[unused].after].word);
    free(used);
}

/* ---- the room ---- */

static size_t last_of(const struct plan *plan, int kind, int64_t join)
{
    size_t last = PLAN_NONE;

    for (size_t i = 0; i < plan->steps.count; i++)
        if (plan->steps.at[i].kind == kind && plan->steps.at[i].join == join)
            last = i;
    return last;
}

static void check_site_join(const struct work_bench *bench, const struct join *join)
{
    const struct plan *plan = bench->plan;
    size_t drive = last_of(plan, STEP_DRIVE, join->key);

    if (drive == PLAN_NONE)
        return;
    assert_int_equal(plan->steps.at[drive].place, PLACE_SITE);
    assert_true(drive > work_at(bench, "move"));
    for (size_t i = 0; i < plan->steps.count; i++)
        if (plan->steps.at[i].kind == STEP_FLAP && plan->steps.at[i].join == join->key) {
            assert_true(i > drive);
            assert_int_equal(plan->steps.at[i].place, PLACE_SITE);
        }
}

static void check_site_joins(struct work_bench *bench, struct dice *dice)
{
    (void)dice;
    if (work_findings(bench, FINDING_ORDER_CIRCLE))
        return;
    for (size_t i = 0; i < bench->model.joins.count; i++)
        if (bench->model.joins.at[i].place == PLACE_SITE)
            check_site_join(bench, &bench->model.joins.at[i]);
}

static void site_joins_are_driven_after_the_move_and_their_flaps_closed_after_them(void **state)
{
    (void)state;
    work_builds(103, check_site_joins);
}

/* ---- sums ---- */

static void check_minutes(struct work_bench *bench, struct dice *dice)
{
    int64_t sum = 0;

    (void)dice;
    for (size_t i = 0; i < bench->plan->steps.count; i++) {
        assert_true(bench->plan->steps.at[i].minutes >= 0);
        sum += bench->plan->steps.at[i].minutes;
    }
    assert_int_equal(bench->plan->tally.minutes, sum);
}

static void minutes_of_the_build_are_the_sum_of_its_steps(void **state)
{
    (void)state;
    work_builds(107, check_minutes);
}

static void check_sessions(struct work_bench *bench, struct dice *dice)
{
    int64_t used = 0;
    int session = 1;

    (void)dice;
    for (size_t i = 0; i < bench->plan->steps.count; i++) {
        const struct step *step = &bench->plan->steps.at[i];

        if (step->place == PLACE_SITE) {
            assert_int_equal(step->session, 0);
            continue;
        }
        assert_in_range(step->session, session, session + 1);
        used = step->session == session ? used + step->minutes : step->minutes;
        session = step->session;
        assert_true(used <= bench->model.workshop.session || used == step->minutes);
    }
}

static void sessions_are_never_longer_than_the_workshops_unless_one_step_is(void **state)
{
    (void)state;
    work_builds(109, check_sessions);
}

static const struct step *same_step(const struct plan *plan, const struct step *step)
{
    const struct step *found = plan_step(plan, step->name);

    assert_non_null(found);
    return found;
}

/* Skill multiplies every step; a helper takes the factor off those that want two. */
static void check_factors(struct work_bench *bench, struct dice *dice)
{
    struct arena arena;
    const struct plan *alone;
    int64_t factor = bench->plan->value[TRADE_FACTOR_ALONE];

    (void)dice;
    bench->model.workshop.skill = 1000000;
    bench->model.workshop.helper = 1;
    work_plan(bench);
    bench->model.workshop.helper = 0;
    bench->model.workshop.skill = 2000000;
    arena_init(&arena);
    assert_int_equal(plan_make_draft(&bench->model, NULL, &arena, &alone), FAULT_NONE);
    for (size_t i = 0; i < bench->plan->steps.count; i++) {
        const struct step *helped = &bench->plan->steps.at[i];
        int64_t minutes = same_step(alone, helped)->minutes;
        int64_t wanted = 2 * helped->minutes;

        if (helped->people > 1)
            wanted = wanted * factor / 1000000;
        assert_true(minutes >= wanted - 1 && minutes <= wanted + 1);
    }
    arena_release(&arena);
}

static void skill_multiplies_and_a_helper_spares_the_factor(void **state)
{
    (void)state;
    work_builds(113, check_factors);
}

/* ---- what the names hang on ---- */

static void check_sizes(struct work_bench *bench, struct dice *dice)
{
    struct arena arena;
    const struct plan *before;

    assert_int_equal((arena_init(&arena), plan_make_draft(&bench->model, NULL, &arena, &before)),
                     FAULT_NONE);
    for (size_t i = 0; i < bench->model.boxes.count; i++)
        bench->model.boxes.at[i].height += LENGTH_INCH / 8 * dice_between(dice, 1, 7);
    work_plan(bench);
    for (size_t i = 0; i < before->steps.count; i++) {
        int kind = before->steps.at[i].kind;

        /* corners and flaps come and go with the cloth, and seams with its width */
        if (kind != STEP_FLAP && kind != STEP_SLIT && kind != STEP_SEW && kind != STEP_CORNER)
            assert_string_equal(same_step(bench->plan, &before->steps.at[i])->name,
                                before->steps.at[i].name);
    }
    arena_release(&arena);
}

static void names_stay_when_sizes_change(void **state)
{
    (void)state;
    work_builds(127, check_sizes);
}

static void check_box_added(struct work_bench *bench, struct dice *dice)
{
    struct arena arena;
    const struct plan *before;
    int64_t box;

    (void)dice;
    arena_init(&arena);
    assert_int_equal(plan_make_draft(&bench->model, NULL, &arena, &before), FAULT_NONE);
    box = work_box(bench, "NEW", FRAME_LADDER);
    work_facing(bench, box, SIDE_FRONT);
    work_plan(bench);
    for (size_t i = 0; i < before->steps.count; i++)
        same_step(bench->plan, &before->steps.at[i]);
    for (size_t i = 0; i < bench->plan->steps.count; i++) {
        const struct step *step = &bench->plan->steps.at[i];

        if (step->box == box)
            assert_null(plan_step(before, step->name));
        else if (step_kinds[step->kind].scope != SCOPE_BUILD &&
                 step_kinds[step->kind].scope != SCOPE_STOCK)
            assert_non_null(plan_step(before, step->name));
    }
    arena_release(&arena);
}

static void added_box_adds_names_of_its_own_and_no_other(void **state)
{
    (void)state;
    work_builds(131, check_box_added);
}

/* ---- the same facts, the same plan ---- */

static void assert_same_plan(const struct plan *plan, const struct plan *other)
{
    struct text left;
    struct text right;

    text_init(&left);
    text_init(&right);
    work_dump(plan, &left);
    work_dump(other, &right);
    assert_false(text_failed(&left) || text_failed(&right));
    assert_string_equal(text_string(&left), text_string(&right));
    text_release(&left);
    text_release(&right);
}

static void check_again(struct work_bench *bench, struct dice *dice)
{
    struct arena arena;
    const struct plan *again;

    (void)dice;
    arena_init(&arena);
    assert_int_equal(plan_make_draft(&bench->model, NULL, &arena, &again), FAULT_NONE);
    assert_same_plan(bench->plan, again);
    arena_release(&arena);
}

static void same_facts_give_the_same_plan(void **state)
{
    (void)state;
    work_builds(137, check_again);
}

struct item {
    enum entity_kind kind;
    const void *at;
};

/* Everything in the lists of a model, in an order by chance; *ret_count of them. */
static struct item *shuffled(struct work_bench *bench, struct dice *dice, size_t *ret_count)
{
    struct item *items;
    size_t count = 0;

    for (int kind = 0; kind < ENTITY_COUNT; kind++)
        count += model_count(&bench->model, (enum entity_kind)kind);
    items = calloc(count, sizeof *items);
    assert_non_null(items);
    for (int kind = 0, at = 0; kind < ENTITY_COUNT; kind++)
        for (size_t i = 0; i < model_count(&bench->model, (enum entity_kind)kind); i++)
            items[at++] = (struct item){(enum entity_kind)kind,
                                        model_at(&bench->model, (enum entity_kind)kind, i)};
    for (size_t i = count; i > 1; i--) {
        size_t other = (size_t)dice_between(dice, 0, (int64_t)i - 1);
        struct item swap = items[i - 1];

        items[i - 1] = items[other];
        items[other] = swap;
    }
    *ret_count = count;
    return items;
}

/* The same facts under the same keys, entered in another order. */
static void enter(struct work_bench *bench, const struct item *items, size_t count)
{
    struct model model;

    model_init(&model, &bench->facts);
    for (size_t i = 0; i < count; i++)
        memcpy(model_add_keyed(&model, items[i].kind, item_key(items[i].at)), items[i].at,
               entity_of(items[i].kind)->size);
    model.workshop = bench->model.workshop;
    model.build = bench->model.build;
    bench->model = model;
}

static void check_shuffled(struct work_bench *bench, struct dice *dice)
{
    struct arena arena;
    const struct plan *plan;
    struct model before = bench->model;
    size_t count;
    struct item *items = shuffled(bench, dice, &count);

    arena_init(&arena);
    enter(bench, items, count);
    assert_int_equal(plan_make_draft(&bench->model, NULL, &arena, &plan), FAULT_NONE);
    assert_same_plan(bench->plan, plan);
    arena_release(&arena);
    bench->model = before;
    free(items);
}

static void order_of_adding_changes_nothing(void **state)
{
    (void)state;
    work_builds(139, check_shuffled);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(examples_honour_every_link),
        cmocka_unit_test(checker_notices_each_precedence_turned_round),
        cmocka_unit_test(builds_honour_every_link),
        cmocka_unit_test(every_link_is_used_by_some_build),
        cmocka_unit_test(site_joins_are_driven_after_the_move_and_their_flaps_closed_after_them),
        cmocka_unit_test(minutes_of_the_build_are_the_sum_of_its_steps),
        cmocka_unit_test(sessions_are_never_longer_than_the_workshops_unless_one_step_is),
        cmocka_unit_test(skill_multiplies_and_a_helper_spares_the_factor),
        cmocka_unit_test(names_stay_when_sizes_change),
        cmocka_unit_test(added_box_adds_names_of_its_own_and_no_other),
        cmocka_unit_test(same_facts_give_the_same_plan),
        cmocka_unit_test(order_of_adding_changes_nothing),
    };
    int failed = cmocka_run_group_tests_name("plan order and its links", tests, NULL, NULL);

    return failed ? 1 : 0;
}
