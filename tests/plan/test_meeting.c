/*
 * What is told to meet the way to a join's heads, of plans whose lists are filled by hand.
 */
#include "plan/meeting.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#define JOIN 5
#define LINING 21
#define COVER 22

struct bench {
    struct arena arena;
    struct model model;
    struct plan plan;
    struct meetings meetings;
};

/* The cover goes on in step 0, the lining in step 1. */
static int begin(void **state)
{
    static struct bench bench;

    bench = (struct bench){.plan.facts = &bench.model};
    arena_init(&bench.arena);
    *LIST_ADD(&bench.arena, &bench.plan.steps) = (struct step){.kind = STEP_COVER, .layer = COVER};
    *LIST_ADD(&bench.arena, &bench.plan.steps) =
        (struct step){.kind = STEP_LINING, .layer = LINING};
    *state = &bench;
    return 0;
}

static int end(void **state)
{
    struct bench *bench = *state;

    arena_release(&bench->arena);
    return 0;
}

static void add_way(struct bench *bench, int64_t join, enum way_state way, int64_t layer)
{
    *LIST_ADD(&bench->arena, &bench->plan.ways) =
        (struct plan_way){.join = join,
                          .state = way,
                          .first_blocker = bench->plan.blockers.count,
                          .blocker_count = 1};
    *LIST_ADD(&bench->arena, &bench->plan.blockers) =
        (struct blocker){.kind = BLOCKER_LAYER, .item = layer};
}

static size_t gather(struct bench *bench)
{
    meetings_make(&bench->meetings, &bench->plan, JOIN, &bench->arena);
    return bench->meetings.of.count;
}

static void what_meets_the_chosen_way_is_told(void **state)
{
    struct bench *bench = *state;

    add_way(bench, JOIN, WAY_CHOSEN, LINING);
    assert_int_equal(gather(bench), 1);
    assert_int_equal(bench->meetings.of.at[0].item, LINING);
    assert_int_equal(bench->meetings.of.at[0].placed, 1);
}

static void what_meets_a_way_that_is_not_taken_is_not_told(void **state)
{
    struct bench *bench = *state;

    add_way(bench, JOIN, WAY_POSSIBLE, LINING);
    add_way(bench, JOIN, WAY_SHUT, LINING);
    add_way(bench, JOIN + 1, WAY_CHOSEN, LINING);
    assert_int_equal(gather(bench), 0);
}

static void what_meets_the_way_and_waits_for_the_join_is_told_once(void **state)
{
    struct bench *bench = *state;

    add_way(bench, JOIN, WAY_CHOSEN, LINING);
    *LIST_ADD(&bench->arena, &bench->plan.constraints) =
        (struct constraint){.kind = JOIN_BEFORE_LAYER, .join = JOIN, .item = LINING};
    assert_int_equal(gather(bench), 1);
}

static void what_is_told_stands_in_the_order_of_work(void **state)
{
    struct bench *bench = *state;

    add_way(bench, JOIN, WAY_CHOSEN, LINING);
    add_way(bench, JOIN, WAY_CHOSEN, COVER);
    assert_int_equal(gather(bench), 2);
    assert_int_equal(bench->meetings.of.at[0].item, COVER);
    assert_int_equal(bench->meetings.of.at[1].item, LINING);
}

static void what_is_left_open_for_the_join_tells_when_it_is_closed(void **state)
{
    struct bench *bench = *state;

    add_way(bench, JOIN, WAY_CHOSEN, LINING);
    *LIST_ADD(&bench->arena, &bench->plan.steps) = (struct step){.kind = STEP_DRIVE, .join = JOIN};
    *LIST_ADD(&bench->arena, &bench->plan.steps) =
        (struct step){.kind = STEP_FLAP, .layer = LINING, .join = JOIN};
    gather(bench);
    assert_int_equal(bench->meetings.of.at[0].closed, 3);
    assert_int_equal(meeting_drive_step(&bench->plan, JOIN), 2);
}

int main(void)
{
#define MEETING_TEST(name) cmocka_unit_test_setup_teardown(name, begin, end)
    const struct CMUnitTest tests[] = {
        MEETING_TEST(what_meets_the_chosen_way_is_told),
        MEETING_TEST(what_meets_a_way_that_is_not_taken_is_not_told),
        MEETING_TEST(what_meets_the_way_and_waits_for_the_join_is_told_once),
        MEETING_TEST(what_is_told_stands_in_the_order_of_work),
        MEETING_TEST(what_is_left_open_for_the_join_tells_when_it_is_closed),
    };
    int failed = cmocka_run_group_tests_name("meetings", tests, NULL, NULL);

    return failed ? 1 : 0;
}
