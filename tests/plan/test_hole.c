/* What is known of holes beside their places: open edges, work done on them, what meets their way.
 */
#include "work.h"

#include "plan/hole.h"
#include "plan/meeting.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* ---- loops in parts ---- */

static size_t hole_loops;

/* However a loop falls into edges, no part is lost and none reaches over its edge. */
static void check_parts(struct work_bench *bench, struct dice *dice)
{
    const struct plan *plan = bench->plan;

    (void)dice;
    for (size_t i = 0; i < plan->intervals.count; i++) {
        const struct interval *interval = &plan->intervals.at[i];
        int64_t sum = 0;

        if (interval->from == interval->to) /* cords of a tufting field have no length */
            continue;
        for (int nth = 0; nth < EDGE_COUNT; nth++) {
            struct edge_part part;

            if (!hole_part(plan, interval, nth, &part))
                continue;
            assert_true(part.from >= 0 && part.from < part.to);
            sum += part.to - part.from;
            hole_loops += plan->edges.at[interval->edge].edge == EDGE_LOOP && part.edge >= 0;
        }
        assert_int_equal(sum, interval->to - interval->from);
    }
}

static void parts_of_a_loop_add_up_to_it(void **state)
{
    (void)state;
    hole_loops = 0;
    work_builds(161, check_parts);
    assert_true(hole_loops > 20);
}

/* The back lining of the headboard's centre, 63 by 56: a loop from the bottom's left end. */
static void a_loop_goes_up_the_right_and_back_along_the_top(void **state)
{
    static const struct {
        double from, to;
        int nth;
        int64_t edge;
        double part_from, part_to;
    } rows[] = {
        {10, 20, 0, EDGE_BOTTOM, 10, 20},      {60, 70, 0, EDGE_BOTTOM, 60, 63},
        {60, 70, 1, EDGE_RIGHT, 0, 7},         {120, 130, 2, EDGE_TOP, 63 - 11, 63 - 1},
        {185, 195, 3, EDGE_LEFT, 56 - 13, 53},
    };
    struct work_bench bench;

    (void)state;
    work_case(&bench, "headboard");
    size_t loop = PLAN_NONE;
    for (size_t i = 0; i < bench.plan->edges.count; i++) {
        const struct edge *edge = &bench.plan->edges.at[i];

        if (edge->edge == EDGE_LOOP && edge->length == 2 * (63 + 56) * LENGTH_INCH)
            loop = i;
    }
    assert_true(loop != PLAN_NONE);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct interval interval = {.edge = loop,
                                    .from = (int64_t)(rows[i].from * 8128),
                                    .to = (int64_t)(rows[i].to * 8128)};
        struct edge_part part;

        assert_true(hole_part(bench.plan, &interval, rows[i].nth, &part));
        assert_int_equal(part.edge, rows[i].edge);
        assert_int_equal(part.from, (int64_t)(rows[i].part_from * 8128));
        assert_int_equal(part.to, (int64_t)(rows[i].part_to * 8128));
    }
    work_end(&bench);
}

/* ---- work ---- */

static void columns_follow_the_ticks(void **state)
{
    struct work_bench bench;

    (void)state;
    work_case(&bench, "headboard");
    int64_t join = model_key_named(&bench.model, ENTITY_join, "J1");
    const struct junction *junction = plan_junction(bench.plan, join);
    const struct plan_point *point = &bench.plan->points.at[junction->first_point];
    struct hole_work work = hole_work(bench.plan, point);
    assert_false(work.drilled || work.tried || work.located || work.found || work.driven);

    const char *const ticks[] = {"drill", "locate", "drive"};
    for (size_t i = 0; i < sizeof ticks / sizeof *ticks; i++) {
        struct tick *tick = MODEL_ADD(&bench.model, tick);

        tick->step = arena_format(bench.model.arena, "%s:%lld", ticks[i], (long long)join);
    }
    work_plan(&bench);
    point = &bench.plan->points.at[plan_junction(bench.plan, join)->first_point];
    work = hole_work(bench.plan, point);
    assert_true(work.drilled && work.tried && work.located && work.driven);
    assert_false(work.found);
    work_end(&bench);
}

/* A place by hand is a fact, and still to be drilled; a hole that was there before is none to
 * drill. */
static void place_by_hand_is_not_drilled_and_a_hole_that_is_there_is(void **state)
{
    struct work_bench bench;

    (void)state;
    work_case(&bench, "headboard");
    int64_t join = model_key_named(&bench.model, ENTITY_join, "J1");
    for (int i = 0; i < 2; i++) {
        struct point *point = MODEL_ADD(&bench.model, point);

        point->join = join;
        point->u = IN(0.75);
        point->v = IN(10 + 20 * i);
        point->existing = i;
    }
    work_plan(&bench);
    const struct plan_point *points =
        &bench.plan->points.at[plan_junction(bench.plan, join)->first_point];
    assert_true(points[0].taken && points[1].taken);
    assert_false(hole_work(bench.plan, &points[0]).drilled);
    assert_true(hole_work(bench.plan, &points[1]).drilled);
    work_end(&bench);
}

/* ---- meetings ---- */

struct gathering {
    struct meetings meetings;
    const struct plan *plan;
    int64_t join;
    struct arena *arena;
};

static void gather(void *context)
{
    struct gathering *gathering = context;

    meetings_make(&gathering->meetings, gathering->plan, gathering->join, gathering->arena);
}

static bool is_met(const struct meetings *meetings, enum blocker_kind kind, int64_t item)
{
    size_t found = 0;

    for (size_t i = 0; i < meetings->of.count; i++)
        found += meetings->of.at[i].kind == kind && meetings->of.at[i].item == item;
    assert_true(found <= 1);
    return found == 1;
}

static size_t things_met;

/* What must wait for a join is on its list, once, after its screws or closed after them. */
static void check_meetings(struct work_bench *bench, struct dice *dice)
{
    const struct plan *plan = bench->plan;
    struct arena arena;

    (void)dice;
    arena_init(&arena);
    for (size_t i = 0; i < plan->constraints.count; i++) {
        const struct constraint *constraint = &plan->constraints.at[i];
        struct gathering gathering = {.plan = plan, .join = constraint->join, .arena = &arena};

        if (constraint->kind != JOIN_BEFORE_LAYER && constraint->kind != JOIN_BEFORE_FACING)
            continue;
        assert_true(arena_try(&arena, gather, &gathering));
        assert_true(is_met(&gathering.meetings,
                           constraint->kind == JOIN_BEFORE_LAYER ? BLOCKER_LAYER : BLOCKER_FACING,
                           constraint->item));
        things_met++;
        for (size_t k = 1; k < gathering.meetings.of.count; k++)
            assert_true(gathering.meetings.of.at[k - 1].placed <=
                        gathering.meetings.of.at[k].placed);
    }
    arena_release(&arena);
}

static void whatever_waits_for_a_join_is_told_once(void **state)
{
    (void)state;
    things_met = 0;
    work_builds(162, check_meetings);
    assert_true(things_met > 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(place_by_hand_is_not_drilled_and_a_hole_that_is_there_is),
        cmocka_unit_test(parts_of_a_loop_add_up_to_it),
        cmocka_unit_test(a_loop_goes_up_the_right_and_back_along_the_top),
        cmocka_unit_test(columns_follow_the_ticks),
        cmocka_unit_test(whatever_waits_for_a_join_is_told_once),
    };
    int failed = cmocka_run_group_tests_name("plan hole", tests, NULL, NULL);
    return failed ? 1 : 0;
}
