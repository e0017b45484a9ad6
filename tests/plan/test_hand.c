/*
 * What the rehearsal sees round a head, and whether a tool and a hand come to it: scenes of a few
 * blocks, each of which one can check on squared paper. Sizes are the trade values' own defaults: a
 * hand hole of 4 by 6 in, so a hand of 2 in, and an arm of 22 in.
 */
#include "../base/inch.h"
#include "plan/rehearse_bar.h"
#include "plan/rehearse_hand.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#define BLOCK(x0, y0, z0, x1, y1, z1) \
    ((struct solid){{IN(x0), IN(y0), IN(z0)}, {IN(x1), IN(y1), IN(z1)}})

enum { HEADS, OTHER, BOXES };

/* Two boxes that stand in the same place, joined, with nothing in them yet. */
struct bench {
    struct arena arena;
    struct plan plan;
    struct model model;
    struct stage stage;
    struct box boxes[BOXES];
    struct pose poses[BOXES];
    struct staged_box staged[BOXES];
    struct join join;
    struct junction junction;
    struct staged_join staged_join;
    struct view view;
};

static void bench_begin(struct bench *bench)
{
    *bench = (struct bench){.junction.reach_side = SIDE_BACK};
    arena_init(&bench->arena);
    bench->plan.value[TRADE_HAND_HOLE_WIDTH] = IN(4);
    bench->plan.value[TRADE_HAND_HOLE_HEIGHT] = IN(6);
    bench->plan.value[TRADE_ARM_REACH] = IN(22);
    for (int i = 0; i < BOXES; i++) {
        bench->boxes[i] =
            (struct box){.key = i + 1, .width = IN(40), .depth = IN(40), .height = IN(40)};
        bench->poses[i] = (struct pose){.box = i + 1, .placed = true};
        bench->staged[i] = (struct staged_box){.box = &bench->boxes[i],
                                               .pose = &bench->poses[i],
                                               .cosine = 1,
                                               .in_room = PLAN_NONE,
                                               .legs = PLAN_NONE};
        *LIST_ADD(&bench->arena, &bench->model.boxes) = bench->boxes[i];
    }
    bench->stage = (struct stage){.plan = &bench->plan,
                                  .model = &bench->model,
                                  .arena = &bench->arena,
                                  .boxes = bench->staged,
                                  .view = look_begin(&bench->arena),
                                  .now = PLAN_NONE};
    bench->staged_join = (struct staged_join){.join = &bench->join, .junction = &bench->junction};
    bench->view = (struct view){.stage = &bench->stage, .box = &bench->staged[HEADS]};
}

static void bench_end(struct bench *bench)
{
    arena_release(&bench->arena);
}

static void put(struct bench *bench, struct solid solid)
{
    *LIST_ADD(&bench->arena, &bench->view.near) =
        (struct near_by){.solid = solid, .entity = ENTITY_box, .key = 1, .since = PLAN_NONE};
}

static void put_lump(struct bench *bench, int box, struct solid solid)
{
    *LIST_ADD(&bench->arena, &bench->staged[box].lumps) =
        (struct lump){.solid = solid, .entity = ENTITY_box, .key = box + 1, .side = -1, .since = 0};
}

/* A tool of a length that stands up from a head. */
static enum lapse brought(const struct bench *bench, double x, double y, double z, double length)
{
    const struct grasp grasp = {.view = &bench->view,
                                .join = &bench->staged_join,
                                .head = {IN(x), IN(y), IN(z)},
                                .axis = AXIS_Z,
                                .sign = 1,
                                .length = IN(length)};

    return hand_brought(&grasp).lapse;
}

/* ---- a bar ---- */

/* A corner 3 by 4 in off the axis is 5 in off it (Euclid I.47). */
static void a_bar_is_blocked_by_what_is_nearer_to_its_axis_than_its_radius(void **state)
{
    struct bench bench;
    struct tool_bar bar = {IN(10), IN(5)};

    (void)state;
    bench_begin(&bench);
    put(&bench, BLOCK(23, 24, 0, 30, 30, 40));
    assert_null(bar_blocked(&bench.view, (struct vector){IN(20), IN(20), IN(8)}, AXIS_Z, 1, &bar));
    bar.radius++;
    assert_ptr_equal(
        bar_blocked(&bench.view, (struct vector){IN(20), IN(20), IN(8)}, AXIS_Z, 1, &bar),
        &bench.view.near.at[0]);
    bench_end(&bench);
}

static void a_bar_goes_from_the_head_as_far_as_it_is_long(void **state)
{
    const struct vector head = {IN(20), IN(20), IN(20)};
    struct tool_bar bar = {IN(10), IN(1)};
    struct bench bench;

    (void)state;
    bench_begin(&bench);
    put(&bench, BLOCK(0, 0, 0, 40, 40, 10));
    put(&bench, BLOCK(0, 0, 30, 40, 40, 40));
    assert_null(bar_blocked(&bench.view, head, AXIS_Z, 1, &bar));
    assert_null(bar_blocked(&bench.view, head, AXIS_Z, -1, &bar));
    bar.length++;
    assert_ptr_equal(bar_blocked(&bench.view, head, AXIS_Z, 1, &bar), &bench.view.near.at[1]);
    assert_ptr_equal(bar_blocked(&bench.view, head, AXIS_Z, -1, &bar), &bench.view.near.at[0]);
    bench_end(&bench);
}

/* ---- a hand ---- */

static void a_hand_comes_straight_out_where_nothing_stands(void **state)
{
    struct bench bench;

    (void)state;
    bench_begin(&bench);
    assert_int_equal(brought(&bench, 20, 10, 4, 8), LAPSE_NONE);
    bench_end(&bench);
}

static void an_arm_reaches_no_farther_than_it_is_long(void **state)
{
    struct bench bench;

    (void)state;
    bench_begin(&bench);
    assert_int_equal(brought(&bench, 20, 22, 4, 8), LAPSE_NONE);
    assert_int_equal(brought(&bench, 20, 22.5, 4, 8), LAPSE_NO_HAND);
    bench_end(&bench);
}

/* A plate before the head, and a cheek on either side of the way to it: fingers that went through a
 * cheek would find the way out free beyond it. */
static void fingers_do_not_go_through_what_stands_beside_them(void **state)
{
    struct bench bench;

    (void)state;
    bench_begin(&bench);
    put(&bench, BLOCK(18, 2, 0, 22, 3, 40));
    put(&bench, BLOCK(17.5, 0, 0, 18, 40, 40));
    put(&bench, BLOCK(22, 0, 0, 22.5, 40, 40));
    assert_int_equal(brought(&bench, 20, 10, 4, 8), LAPSE_NO_HAND);
    bench_end(&bench);
}

static void fingers_go_round_a_plate_to_the_side_that_is_free(void **state)
{
    for (int side = 0; side < 2; side++) {
        struct bench bench;

        (void)state;
        bench_begin(&bench);
        put(&bench, BLOCK(18, 2, 0, 22, 3, 40));
        put(&bench, side ? BLOCK(17.5, 0, 0, 18, 40, 40) : BLOCK(22, 0, 0, 22.5, 40, 40));
        assert_int_equal(brought(&bench, 20, 10, 4, 8), LAPSE_NONE);
        bench_end(&bench);
    }
}

/* A tool of 40 in from a head 4 in below the top of the box, whose open side is shut: it is held
 * where it ends, 2 in of it, from that side of it where nothing stands. */
static void a_long_tool_is_held_outside_from_any_side_of_its_end(void **state)
{
    const struct solid standing[] = {
        BLOCK(-40, -40, 60, 20, 80, 90), /* all on one side of the axis, in turn */
        BLOCK(20, -40, 60, 80, 80, 90),
        BLOCK(-40, -40, 60, 80, 10, 90),
        BLOCK(-40, 10, 60, 80, 80, 90),
    };

    for (size_t i = 0; i < sizeof standing / sizeof *standing; i++) {
        struct bench bench;

        (void)state;
        bench_begin(&bench);
        put(&bench, BLOCK(0, 0, 0, 40, 1, 40));
        put(&bench, standing[i]);
        assert_int_equal(brought(&bench, 20, 10, 36, 40), LAPSE_NONE);
        put(&bench, standing[i ^ 1]);
        assert_int_equal(brought(&bench, 20, 10, 36, 40), LAPSE_NO_HAND);
        bench_end(&bench);
    }
}

/* ---- a look round ---- */

static void all_wood_of_a_joined_box_is_seen(void **state)
{
    struct bench bench;

    (void)state;
    bench_begin(&bench);
    put_lump(&bench, HEADS, BLOCK(0, 0, 0, 2, 2, 40));
    put_lump(&bench, OTHER, BLOCK(4, 0, 0, 6, 2, 40));
    put_lump(&bench, OTHER, BLOCK(8, 0, 0, 10, 2, 40));
    const struct view *view = look_round(&bench.stage, &bench.staged[HEADS]);
    assert_int_equal(view->near.count, 3);
    assert_int_equal(view->near.at[1].solid.low.x, IN(4));
    assert_int_equal(view->near.at[2].solid.low.x, IN(8));
    bench_end(&bench);
}

static void wood_of_a_box_that_is_not_joined_yet_is_not_seen(void **state)
{
    struct bench bench;

    (void)state;
    bench_begin(&bench);
    put_lump(&bench, OTHER, BLOCK(4, 0, 0, 6, 2, 40));
    bench.staged[OTHER].group = 1;
    assert_int_equal(look_round(&bench.stage, &bench.staged[HEADS])->near.count, 0);
    bench_end(&bench);
}

/* A loose seat's base: lifted off, but where cloth over it is fixed. */
static void what_lies_by_its_own_weight_is_in_the_way_under_fixed_cloth_alone(void **state)
{
    static const struct {
        enum side_word side;
        bool own;
        enum layer_word kind;
        size_t fixed, seen;
    } rows[] = {
        {SIDE_TOP, true, LAYER_COVER, 3, 1},
        {SIDE_FRONT, true, LAYER_COVER, 3, 0},
        {SIDE_TOP, false, LAYER_COVER, 3, 0}, /* comes over from the side */
        {SIDE_TOP, true, LAYER_FOAM, 3, 0},
        {SIDE_TOP, true, LAYER_COVER, PLAN_NONE, 0}, /* only laid on */
    };

    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const struct layer layer = {.kind = (int64_t)rows[i].kind};
        struct staged_layer staged = {.layer = &layer, .fixed = rows[i].fixed};
        struct bench bench;

        bench_begin(&bench);
        bench.stage.layers = &staged;
        put_lump(&bench, HEADS, BLOCK(0, 0, 39, 40, 40, 40));
        bench.staged[HEADS].lumps.at[0].laid_on = true;
        bench.staged[HEADS].lumps.at[0].side = SIDE_TOP;
        *LIST_ADD(&bench.arena, &bench.staged[HEADS].sheets) =
            (struct sheet){.side = rows[i].side, .own = rows[i].own};
        assert_int_equal(look_round(&bench.stage, &bench.staged[HEADS])->near.count, rows[i].seen);
        bench_end(&bench);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_bar_is_blocked_by_what_is_nearer_to_its_axis_than_its_radius),
        cmocka_unit_test(a_bar_goes_from_the_head_as_far_as_it_is_long),
        cmocka_unit_test(a_hand_comes_straight_out_where_nothing_stands),
        cmocka_unit_test(an_arm_reaches_no_farther_than_it_is_long),
        cmocka_unit_test(fingers_do_not_go_through_what_stands_beside_them),
        cmocka_unit_test(fingers_go_round_a_plate_to_the_side_that_is_free),
        cmocka_unit_test(a_long_tool_is_held_outside_from_any_side_of_its_end),
        cmocka_unit_test(all_wood_of_a_joined_box_is_seen),
        cmocka_unit_test(wood_of_a_box_that_is_not_joined_yet_is_not_seen),
        cmocka_unit_test(what_lies_by_its_own_weight_is_in_the_way_under_fixed_cloth_alone),
    };
    int failed = cmocka_run_group_tests_name("hands", tests, NULL, NULL);

    return failed ? 1 : 0;
}
