/*
 * Members by hand that end short of their neighbours, on the wing headboard: its rails, uprights
 * and blocks by hand touch what they are screwed to while sticks are 1-1/2 in thick (worked
 * example, computed by hand: 56 frame screws).
 */
#include "work.h"

#include "plan/check.h"
#include "plan/cure.h"
#include "plan/findings.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#define FRAME_SCREWS 56

static void make_sticks(struct work_bench *bench, double thickness)
{
    for (size_t i = 0; i < bench->model.stocks.count; i++)
        if (bench->model.stocks.at[i].kind == STOCK_STICK)
            bench->model.stocks.at[i].thickness = IN(thickness);
    work_plan(bench);
}

static size_t frame_screws(const struct work_bench *bench)
{
    size_t count = 0;

    for (size_t i = 0; i < bench->plan->screws.count; i++)
        count += bench->plan->screws.at[i].use == SCREW_FRAME;
    return count;
}

static const struct finding *told_of(const struct work_bench *bench, int64_t box)
{
    for (size_t i = 0; i < bench->plan->findings.count; i++)
        if (bench->plan->findings.at[i].kind == FINDING_MEMBER_SHORT &&
            bench->plan->findings.at[i].key == box)
            return &bench->plan->findings.at[i];
    return NULL;
}

static void members_that_touch_are_not_told(void **state)
{
    struct work_bench *bench = *state;

    assert_int_equal(frame_screws(bench), FRAME_SCREWS);
    assert_int_equal(work_findings(bench, FINDING_MEMBER_SHORT), 0);
}

/* C has six by hand, each wing one. */
static void sticks_thinner_than_planned_are_told_box_by_box(void **state)
{
    static const struct {
        int64_t box; /* keys of the file */
        const char *which;
    } told[] = {{3, "C5 and 5 more"}, {4, "L5"}, {5, "R5"}};
    struct work_bench *bench = *state;

    make_sticks(bench, 1.4375);
    assert_true(frame_screws(bench) < FRAME_SCREWS);
    assert_int_equal(work_findings(bench, FINDING_MEMBER_SHORT), 3);
    for (size_t i = 0; i < sizeof told / sizeof *told; i++) {
        const struct finding *finding = told_of(bench, told[i].box);

        assert_non_null(finding);
        assert_string_equal(finding->arguments[0].text, told[i].which);
        assert_int_equal(finding->arguments[1].value, IN(0.0625));
    }
}

static void fitted_in_between_every_member_has_its_screws_again(void **state)
{
    struct work_bench *bench = *state;

    make_sticks(bench, 1.4375);
    for (int64_t box = 3; box <= 5; box++)
        assert_int_equal(cure_apply(&bench->model, &told_of(bench, box)->cures[0], NULL),
                         FAULT_NONE);
    work_plan(bench);
    assert_int_equal(work_findings(bench, FINDING_MEMBER_SHORT), 0);
    assert_int_equal(frame_screws(bench), FRAME_SCREWS);
}

/* Half an inch is a way round, not a stick that was sold thicker. */
static void a_member_that_stands_well_off_is_meant_to(void **state)
{
    struct work_bench *bench = *state;

    make_sticks(bench, 1.25);
    assert_true(work_findings(bench, FINDING_MEMBER_SHORT) > 0);
    make_sticks(bench, 1);
    assert_int_equal(work_findings(bench, FINDING_MEMBER_SHORT), 0);
}

/* ---- a rail between two uprights, placed by hand ---- */

struct between {
    struct arena arena;
    struct model model;
    struct plan plan;
    struct member *rail;
};

static void add_upright(struct between *between, int64_t from)
{
    *LIST_ADD(&between->arena, &between->plan.members) =
        (struct plan_member){.box = between->model.boxes.at[0].key,
                             .axis = AXIS_Z,
                             .label = "upright",
                             .solid = {{from, 0, 0}, {from + IN(1.5), IN(2.5), IN(40)}}};
}

/* The uprights leave 40 in, from 1-1/2 on. */
static void place_rail(struct between *between, int64_t from, int64_t to)
{
    *between = (struct between){.plan.facts = &between->model};
    arena_init(&between->arena);
    model_init(&between->model, &between->arena);
    MODEL_ADD(&between->model, box);
    between->rail = MODEL_ADD(&between->model, member);
    between->rail->x = from;
    between->rail->length = to - from;
    add_upright(between, 0);
    add_upright(between, IN(41.5));
    *LIST_ADD(&between->arena, &between->plan.members) =
        (struct plan_member){.box = between->model.boxes.at[0].key,
                             .by_hand = between->rail->key,
                             .axis = AXIS_X,
                             .label = "rail",
                             .solid = {{from, 0, IN(10)}, {to, IN(2.5), IN(11.5)}}};
}

/* What is told of it; NULL where nothing is. */
static const struct finding *check_rail(struct between *between)
{
    struct planning planning = {.model = &between->model,
                                .plan = &between->plan,
                                .arena = &between->arena,
                                .value = between->plan.value};

    check_members(&planning);
    assert_true(between->plan.findings.count <= 1);
    return between->plan.findings.count ? &between->plan.findings.at[0] : NULL;
}

static void only_the_end_that_is_short_is_moved(void **state)
{
    struct between between;
    const struct finding *finding;

    (void)state;
    place_rail(&between, IN(1.5), IN(41.375));
    finding = check_rail(&between);
    assert_non_null(finding);
    assert_int_equal(finding->cures[0].edit_count, 1);
    assert_string_equal(finding->cures[0].edits[0].field, "length");
    assert_int_equal(cure_apply(&between.model, &finding->cures[0], NULL), FAULT_NONE);
    assert_int_equal(between.rail->length, IN(40));
    arena_release(&between.arena);
}

static void a_length_that_is_left_open_stays_so(void **state)
{
    struct between between;
    const struct finding *finding;

    (void)state;
    place_rail(&between, IN(1.625), IN(41.5));
    between.rail->length = 0;
    finding = check_rail(&between);
    assert_non_null(finding);
    assert_int_equal(finding->cures[0].edit_count, 1);
    assert_int_equal(cure_apply(&between.model, &finding->cures[0], NULL), FAULT_NONE);
    assert_int_equal(between.rail->x, IN(1.5));
    arena_release(&between.arena);
}

/* An upright more stands an eighth behind the one that it touches. */
static void an_end_that_touches_is_not_short_of_what_stands_behind(void **state)
{
    struct between between;

    (void)state;
    place_rail(&between, IN(1.5), IN(41.5));
    add_upright(&between, IN(41.625));
    assert_null(check_rail(&between));
    arena_release(&between.arena);
}

int main(void)
{
#define MEMBER_TEST(name) cmocka_unit_test_setup_teardown(name, work_begin_headboard, work_finish)
    const struct CMUnitTest tests[] = {
        MEMBER_TEST(members_that_touch_are_not_told),
        MEMBER_TEST(sticks_thinner_than_planned_are_told_box_by_box),
        MEMBER_TEST(fitted_in_between_every_member_has_its_screws_again),
        MEMBER_TEST(a_member_that_stands_well_off_is_meant_to),
        cmocka_unit_test(only_the_end_that_is_short_is_moved),
        cmocka_unit_test(a_length_that_is_left_open_stays_so),
        cmocka_unit_test(an_end_that_touches_is_not_short_of_what_stands_behind),
    };
    int failed = cmocka_run_group_tests_name("members by hand", tests, NULL, NULL);

    return failed ? 1 : 0;
}
