/* A box is put beside another: where the plan then has the two. */
#include "workshop.h"

#include "plan/findings.h"
#include "plan/geometry.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

struct pair {
    struct bench bench;
    int64_t small, large;
};

static enum fault change_boxes(struct model *draft, void *context, struct fault_note *note)
{
    static const int64_t sizes[2][3] = {{20, 10, 30}, {60, 25, 40}};
    struct pair *pair = context;
    (void)note;
    draft->build.name = "Two";
    for (int i = 0; i < 2; i++) {
        struct box *box = MODEL_ADD(draft, box);
        box->name = i ? "B" : "A";
        box->width = sizes[i][0] * LENGTH_INCH;
        box->depth = sizes[i][1] * LENGTH_INCH;
        box->height = sizes[i][2] * LENGTH_INCH;
        *(i ? &pair->large : &pair->small) = box->key;
    }
    return FAULT_NONE;
}

static int begin(void **state)
{
    static const char *const nothing[] = {NULL};
    static struct pair pair;
    bench_open(&pair.bench, nothing);
    DONE(desk_new_build(pair.bench.desk, "two boxes", change_boxes, &pair, note));
    *state = &pair;
    return 0;
}

static int end(void **state)
{
    struct pair *pair = *state;
    bench_close(&pair->bench);
    return 0;
}

static struct solid block_of(const struct pair *pair, int64_t key)
{
    const struct plan *plan = desk_plan(pair->bench.desk);
    const struct box *box = MODEL_FIND(plan->facts, box, key);
    const struct solid whole = {{0, 0, 0}, box_size(box)};
    return pose_block(plan_pose(plan, key), box, &whole);
}

static void put(struct pair *pair, int64_t side, enum desk_flush u, enum desk_flush v)
{
    const struct desk_beside beside = {pair->small, pair->large, side, u, v};
    DONE(desk_put_beside(pair->bench.desk, &beside, note));
}

/* The low and high ends of both along an axis agree with what was asked for. */
static void assert_flush(const struct pair *pair, int axis, enum desk_flush flush)
{
    struct solid small = block_of(pair, pair->small);
    struct solid large = block_of(pair, pair->large);
    int64_t before = vector_along(small.low, axis) - vector_along(large.low, axis);
    int64_t behind = vector_along(large.high, axis) - vector_along(small.high, axis);
    if (flush == FLUSH_BEGIN)
        assert_int_equal(before, 0);
    else if (flush == FLUSH_END)
        assert_int_equal(behind, 0);
    else
        assert_int_equal(before, behind);
}

static void assert_touches(const struct pair *pair, int64_t side)
{
    struct solid small = block_of(pair, pair->small);
    struct solid large = block_of(pair, pair->large);
    int axis = side_axis(side);
    if (side_sign(side) > 0)
        assert_int_equal(vector_along(small.low, axis), vector_along(large.high, axis));
    else
        assert_int_equal(vector_along(small.high, axis), vector_along(large.low, axis));
}

static void every_side_and_every_edge_is_where_it_was_asked_for(void **state)
{
    struct pair *pair = *state;
    for (int64_t side = 0; side < SIDE_COUNT; side++) {
        for (int u = FLUSH_BEGIN; u <= FLUSH_END; u++) {
            for (int v = FLUSH_BEGIN; v <= FLUSH_END; v++) {
                put(pair, side, (enum desk_flush)u, (enum desk_flush)v);
                assert_touches(pair, side);
                assert_flush(pair, side_u_axis(side), (enum desk_flush)u);
                assert_flush(pair, side_v_axis(side), (enum desk_flush)v);
            }
        }
    }
    assert_int_equal(desk_model(pair->bench.desk)->joins.count, 1);
}

/* The join that is there keeps its order, its name and its screws. */
static void a_join_the_other_way_round_is_moved(void **state)
{
    struct pair *pair = *state;
    const struct desk_beside other = {pair->large, pair->small, SIDE_RIGHT, FLUSH_BEGIN,
                                      FLUSH_BEGIN};
    DONE(desk_put_beside(pair->bench.desk, &other, note));
    int64_t key = desk_model(pair->bench.desk)->joins.at[0].key;
    DONE(desk_set(pair->bench.desk, ENTITY_join, key, "count", "3", note));
    for (int64_t side = 0; side < SIDE_COUNT; side++) {
        put(pair, side, FLUSH_END, FLUSH_MIDDLE);
        assert_touches(pair, side);
        assert_flush(pair, side_u_axis(side), FLUSH_END);
        assert_flush(pair, side_v_axis(side), FLUSH_MIDDLE);
    }
    assert_int_equal(desk_model(pair->bench.desk)->joins.count, 1);
    assert_int_equal(desk_model(pair->bench.desk)->joins.at[0].key, key);
    assert_int_equal(desk_model(pair->bench.desk)->joins.at[0].count, 3);
}

/* Screws find no wood in a cushion. */
static void a_cushion_rests_where_it_is_put(void **state)
{
    struct pair *pair = *state;

    DONE(desk_set(pair->bench.desk, ENTITY_box, pair->small, "frame", "cushion", note));
    put(pair, SIDE_TOP, FLUSH_MIDDLE, FLUSH_END);
    assert_touches(pair, SIDE_TOP);
    assert_int_equal(desk_model(pair->bench.desk)->joins.at[0].fastener, FASTENER_REST);
    for (size_t i = 0; i < desk_plan(pair->bench.desk)->findings.count; i++)
        assert_int_not_equal(desk_plan(pair->bench.desk)->findings.at[i].kind,
                             FINDING_JOIN_NO_WOOD);
}

static void a_box_is_not_put_beside_itself(void **state)
{
    struct pair *pair = *state;
    struct fault_note refusal;
    const struct desk_beside beside = {pair->small, pair->small, SIDE_LEFT, FLUSH_BEGIN,
                                       FLUSH_BEGIN};
    assert_int_equal(desk_put_beside(pair->bench.desk, &beside, &refusal), FAULT_UNKNOWN);
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, end)
    const struct CMUnitTest tests[] = {
        FACT(every_side_and_every_edge_is_where_it_was_asked_for),
        FACT(a_join_the_other_way_round_is_moved),
        FACT(a_cushion_rests_where_it_is_put),
        FACT(a_box_is_not_put_beside_itself),
    };
    int failed = cmocka_run_group_tests_name("beside", tests, NULL, NULL);
    return failed ? 1 : 0;
}
