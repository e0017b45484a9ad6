/*
 * Boxes that lean, and what is told of boxes that cannot stand as their joins want them.
 */
#include "carpenter.h"

#include "base/text.h"
#include "dice.h"
#include "plan/block.h"
#include "plan/check.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/pose.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>

#include <math.h>
#include <string.h>

#define DEGREES(degrees) ((int64_t)((degrees)*1000))

static int64_t board(struct carpenter *bench, const char *name, double width, double depth,
                     double height)
{
    return carpenter_box(bench, name, FRAME_BOARD,
                         (struct vector){IN(width), IN(depth), IN(height)}, 0);
}

static struct join *join_named(struct carpenter *bench, const char *name, int64_t a,
                               enum side_word side_a, int64_t b, enum side_word side_b)
{
    struct join *join = carpenter_join(bench, a, side_a, b, side_b);

    join->name = name;
    return join;
}

static void lean(struct carpenter *bench, int64_t box, enum axis_word axis, double degrees)
{
    carpenter_box_of(bench, box)->lean_axis = (int64_t)axis;
    carpenter_box_of(bench, box)->lean = DEGREES(degrees);
}

static void assert_near(int64_t value, double wanted, double most)
{
    if (fabs((double)value - wanted) > most)
        fail_msg("%lld is not %.3f", (long long)value, wanted);
}

/* ---- angles ---- */

static void sines_are_those_of_the_library(void **state)
{
    (void)state;
    for (int64_t angle = -90000; angle <= 90000; angle += 137) {
        double radians = (double)angle * acos(-1) / 180000;

        assert_near(angle_sine(angle), sin(radians) * (double)POSE_ONE, 16);
        assert_near(angle_cosine(angle), cos(radians) * (double)POSE_ONE, 16);
    }
    assert_int_equal(angle_sine(0), 0);
    assert_int_equal(angle_cosine(0), POSE_ONE);
}

static void a_lean_takes_the_top_to_the_back_or_to_the_right(void **state)
{
    struct box box = {.key = 1, .width = 1000, .depth = 1000, .height = 1000, .lean = 30000};
    struct vector top = {0, 0, 1000};
    struct pose pose;

    (void)state;
    pose = pose_begin(&box, 0);
    assert_int_equal(pose_to_room(&pose, &box, top).y, -500);
    assert_int_equal(pose_to_room(&pose, &box, top).z, 866);
    box.lean_axis = AXIS_Y;
    pose = pose_begin(&box, 0);
    assert_int_equal(pose_to_room(&pose, &box, top).x, 500);
    box.lean_axis = AXIS_Z;
    pose = pose_begin(&box, 0);
    assert_int_equal(pose_to_room(&pose, &box, (struct vector){0, 1000, 0}).x, 500);
}

static void places_come_back_from_a_box_that_leans(void **state)
{
    struct dice dice = {41};

    (void)state;
    for (int round = 0; round < 2000; round++) {
        struct box box = {.key = 1,
                          .width = dice_between(&dice, 1, 1920000),
                          .depth = dice_between(&dice, 1, 1920000),
                          .height = dice_between(&dice, 1, 1920000),
                          .lean_axis = dice_between(&dice, 0, 2),
                          .lean = dice_between(&dice, -45000, 45000)};
        struct pose a = pose_begin(&box, (int)dice_between(&dice, 0, 3));
        struct pose b = pose_begin(&box, a.turn);
        struct vector at = {dice_between(&dice, 0, box.width), dice_between(&dice, 0, box.depth),
                            dice_between(&dice, 0, box.height)};
        struct vector from = {box.width, 0, dice_between(&dice, 0, box.height)};

        pose_lay(&b, &box, (struct vector){0, 0, 0}, &a, &box, from);
        struct vector there = pose_across(&a, &box, &b, &box, at);
        assert_int_equal(there.x, at.x - from.x);
        assert_int_equal(there.y, at.y - from.y);
        assert_int_equal(there.z, at.z - from.z);
    }
}

/* ---- joins to what leans ---- */

/* The back leans by 10 degrees; its right end meets the wing's left side, which stands upright. */
static void a_wing_stands_upright_beside_a_back_that_leans(void **state)
{
    struct carpenter *bench = *state;
    int64_t back = board(bench, "B", 40, 3, 30);
    int64_t wing = board(bench, "W", 3, 12, 30);
    const struct pose *pose;

    lean(bench, back, AXIS_X, 10);
    carpenter_join(bench, back, SIDE_RIGHT, wing, SIDE_LEFT)->offset_v = IN(5);
    carpenter_plan(bench);
    pose = plan_pose(bench->plan, wing);
    assert_true(pose->placed);
    assert_int_equal(pose->lean, 0);
    assert_int_equal(pose->at.x, IN(40));
    assert_near(pose->at.y, -5 * 8128 * sin(acos(-1) / 18), 1);
    assert_near(pose->at.z, 5 * 8128 * cos(acos(-1) / 18), 1);
    assert_int_equal(carpenter_findings(bench, FINDING_JOIN_FACES_ASKEW), 0);
    assert_int_not_equal(plan_junction(bench->plan, bench->model.joins.at[0].key)->zone.u1, 0);
}

static void two_boxes_with_one_lean_meet_to_the_last_length(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = carpenter_box(bench, "A", FRAME_LADDER, (struct vector){IN(40), IN(3), IN(30)},
                              bench->stick_2x2);
    int64_t b = carpenter_box(bench, "B", FRAME_LADDER, (struct vector){IN(30), IN(3), IN(30)},
                              bench->stick_2x2);
    const struct plan_point *point;

    lean(bench, a, AXIS_X, 7.3);
    lean(bench, b, AXIS_X, 7.3);
    carpenter_join(bench, a, SIDE_RIGHT, b, SIDE_LEFT);
    carpenter_plan(bench);
    assert_true(bench->plan->points.count > 1);
    for (size_t i = 0; i < bench->plan->points.count; i++) {
        point = &bench->plan->points.at[i];
        assert_int_equal(point->in_b.x, 0);
        assert_int_equal(point->in_b.y, point->in_a.y);
        assert_int_equal(point->in_b.z, point->in_a.z);
    }
}

static void a_leaning_end_still_finds_wood_in_an_upright_one(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = carpenter_box(bench, "A", FRAME_LADDER, (struct vector){IN(40), IN(1.5), IN(30)},
                              bench->stick_2x2);
    int64_t b = carpenter_box(bench, "B", FRAME_LADDER, (struct vector){IN(30), IN(1.5), IN(30)},
                              bench->stick_2x2);

    lean(bench, a, AXIS_X, 5);
    carpenter_join(bench, a, SIDE_RIGHT, b, SIDE_LEFT);
    carpenter_plan(bench);
    assert_true(bench->plan->points.count > 0);
    for (size_t i = 0; i < bench->plan->points.count; i++) {
        const struct plan_point *point = &bench->plan->points.at[i];

        assert_near(point->in_b.x, 0, 1);
        assert_in_range(point->in_b.y, 0, IN(1.5));
        assert_int_not_equal(point->member_b, PLAN_NONE);
    }
}

static void faces_askew_are_told_by_how_much(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 40, 3, 30);
    int64_t b = board(bench, "B", 40, 3, 30);

    lean(bench, b, AXIS_X, 8);
    join_named(bench, "J", a, SIDE_FRONT, b, SIDE_BACK);
    carpenter_plan(bench);
    assert_true(plan_pose(bench->plan, b)->placed);
    assert_told(bench, FINDING_JOIN_FACES_ASKEW,
                "the faces of join J do not look at each other: 8 deg askew");
    lean(bench, a, AXIS_X, 8);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_JOIN_FACES_ASKEW), 0);
}

static void what_leans_takes_up_more_of_the_room(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 40, 3, 30);
    const struct solid *room;

    lean(bench, a, AXIS_X, 30);
    carpenter_plan(bench);
    room = &plan_pose(bench->plan, a)->room;
    assert_int_equal(solid_size(room, AXIS_X), IN(40));
    assert_near(solid_size(room, AXIS_Y), 15 * 8128 + 3 * 8128 * cos(acos(-1) / 6), 2);
    assert_near(solid_size(room, AXIS_Z), 1.5 * 8128 + 30 * 8128 * cos(acos(-1) / 6), 2);
}

/* Its four upper corners lie elsewhere than two that are opposite say. */
static void checks_see_all_of_what_leans(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 40, 3, 30);
    struct plan plan;
    struct planning planning = {.plan = &plan};
    struct solid seen;

    lean(bench, a, AXIS_X, 30);
    carpenter_plan(bench);
    plan = *bench->plan;
    seen = check_in_room(&planning, carpenter_box_of(bench, a));
    assert_memory_equal(&seen, &plan_pose(&plan, a)->room, sizeof seen);
}

/* ---- contradictions ---- */

static void joins_round_a_circle_are_told_with_the_way_and_the_distance(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 40, 20, 16);
    int64_t b = board(bench, "B", 30, 20, 16);
    int64_t c = board(bench, "C", 20, 20, 16);

    join_named(bench, "J1", a, SIDE_RIGHT, b, SIDE_LEFT);
    join_named(bench, "J2", b, SIDE_RIGHT, c, SIDE_LEFT);
    join_named(bench, "J3", c, SIDE_TOP, a, SIDE_BOTTOM);
    bench->model.joins.at[2].side_a = SIDE_LEFT;
    bench->model.joins.at[2].side_b = SIDE_RIGHT;
    bench->model.joins.at[2].offset_v = IN(1);
    carpenter_plan(bench);
    assert_told(bench, FINDING_JOIN_CONTRADICTS,
                "join J2 wants C to stand 30-1/64 in from where J1, J3 put it");
}

static void joins_that_agree_are_not_told(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 40, 20, 16);
    int64_t b = board(bench, "B", 30, 20, 16);

    carpenter_join(bench, a, SIDE_RIGHT, b, SIDE_LEFT);
    carpenter_join(bench, b, SIDE_LEFT, a, SIDE_RIGHT);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_JOIN_CONTRADICTS), 0);
    bench->model.joins.at[1].offset_v = IN(1);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_JOIN_CONTRADICTS), 1);
    assert_int_equal(plan_pose(bench->plan, b)->at.z, 0);
}

static void a_join_that_wants_a_box_turned_is_told(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 40, 20, 16);
    int64_t b = board(bench, "B", 20, 20, 16);

    join_named(bench, "J1", a, SIDE_RIGHT, b, SIDE_LEFT);
    join_named(bench, "J2", a, SIDE_RIGHT, b, SIDE_FRONT);
    carpenter_plan(bench);
    assert_told(bench, FINDING_JOIN_TURNS, "join J2 wants B turned otherwise than J1 turn it");
}

static void faces_that_miss_each_other_are_told_by_how_much(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 40, 20, 16);
    int64_t b = board(bench, "B", 20, 20, 16);

    join_named(bench, "J1", a, SIDE_RIGHT, b, SIDE_LEFT)->offset_u = IN(25);
    carpenter_plan(bench);
    assert_told(bench, FINDING_JOIN_FACES_PAST, "the faces of join J1 miss each other by 5 in");
}

/* ---- overlap ---- */

static void boxes_in_each_other_are_told_and_touching_ones_are_not(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 40, 20, 16);
    int64_t b = board(bench, "B", 20, 20, 16);
    int64_t c = board(bench, "C", 20, 20, 16);

    join_named(bench, "J1", a, SIDE_RIGHT, b, SIDE_LEFT);
    join_named(bench, "J2", a, SIDE_TOP, c, SIDE_BOTTOM)->offset_u = IN(20);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_BOXES_OVERLAP), 0);
    bench->model.joins.at[0].offset_v = IN(1);
    bench->model.joins.at[1].offset_u = IN(30);
    carpenter_plan(bench);
    assert_told(bench, FINDING_BOXES_OVERLAP, "B and C stand in each other by 1 in");
}

static void a_box_in_the_hollow_of_another_is_no_overlap(void **state)
{
    struct carpenter *bench = *state;
    int64_t crate = carpenter_box(bench, "A", FRAME_CRATE, (struct vector){IN(40), IN(20), IN(20)},
                                  bench->stick_2x2);
    int64_t in = carpenter_box(bench, "B", FRAME_BOARD, (struct vector){IN(10), IN(6), IN(6)}, 0);
    struct join *join = carpenter_join(bench, crate, SIDE_TOP, in, SIDE_BOTTOM);

    join->offset_u = IN(4);
    join->offset_v = IN(6);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_BOXES_OVERLAP), 0);
    carpenter_box_of(bench, in)->height = IN(16);
    bench->model.joins.at[0].side_a = SIDE_BOTTOM;
    bench->model.joins.at[0].side_b = SIDE_TOP;
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_BOXES_OVERLAP), 0);
}

/* Two boards side by side: the second one leans to the first, and 30 in of it at 10 degrees come
 * 5.2 in over. */
static void a_box_that_leans_into_its_neighbour_is_told(void **state)
{
    struct carpenter *bench = *state;
    int64_t seat = board(bench, "A", 40, 20, 16);
    int64_t b = board(bench, "B", 3, 20, 30);

    join_named(bench, "J1", seat, SIDE_RIGHT, b, SIDE_LEFT);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_BOXES_OVERLAP), 0);
    lean(bench, b, AXIS_Y, -10);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_BOXES_OVERLAP), 1);
    lean(bench, b, AXIS_Y, 10);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_BOXES_OVERLAP), 0);
}

/* Two blocks whose room blocks overlap but that only a slanting plane parts. */
static void separating_axes_find_the_plane_between_blocks_that_lean(void **state)
{
    struct box box = {.key = 1, .width = 10000, .depth = 1000, .height = 10000, .lean = 45000};
    struct solid whole = {{0, 0, 0}, {10000, 1000, 10000}};
    struct solid corner = {{0, -9000, 0}, {10000, -6000, 3000}};
    struct pose pose = pose_begin(&box, 0);
    struct solid room = pose_block(&pose, &box, &whole);
    struct block leaning = block_of_box(&pose, &box, &whole);
    struct block upright = block_in_room(&corner);

    (void)state;
    assert_true(solids_meet(&room, &corner));
    assert_int_equal(blocks_depth(&leaning, &upright), 0);
    corner.high.y = -2000;
    upright = block_in_room(&corner);
    assert_near(blocks_depth(&leaning, &upright), 1000 * sqrt(0.5), 2);
}

static void overlaps_of_blocks_are_those_that_points_find(void **state)
{
    struct dice dice = {41};
    int met = 0;

    (void)state;
    for (int round = 0; round < 400; round++) {
        struct box a = {.key = 1, .width = 3000, .depth = 2000, .height = 4000};
        struct box b = {.key = 2, .width = 2500, .depth = 2500, .height = 1500};
        struct pose pose_a, pose_b;
        bool common = false;

        a.lean_axis = dice_between(&dice, 0, 2);
        b.lean_axis = dice_between(&dice, 0, 2);
        a.lean = dice_between(&dice, -45000, 45000);
        b.lean = dice_between(&dice, -45000, 45000);
        pose_a = pose_begin(&a, (int)dice_between(&dice, 0, 3));
        pose_b = pose_begin(&b, (int)dice_between(&dice, 0, 3));
        pose_b.at =
            (struct vector){dice_between(&dice, -4000, 4000), dice_between(&dice, -4000, 4000),
                            dice_between(&dice, -4000, 4000)};
        for (int64_t x = 50; x < a.width; x += 100)
            for (int64_t y = 50; y < a.depth; y += 100)
                for (int64_t z = 50; z < a.height; z += 100) {
                    struct vector in =
                        pose_across(&pose_a, &a, &pose_b, &b, (struct vector){x, y, z});

                    common |= in.x > 0 && in.x < b.width && in.y > 0 && in.y < b.depth &&
                              in.z > 0 && in.z < b.height;
                }
        struct solid whole_a = {{0, 0, 0}, box_size(&a)};
        struct solid whole_b = {{0, 0, 0}, box_size(&b)};
        struct block block_a = block_of_box(&pose_a, &a, &whole_a);
        struct block block_b = block_of_box(&pose_b, &b, &whole_b);
        int64_t depth = blocks_depth(&block_a, &block_b);

        assert_int_equal(depth, blocks_depth(&block_b, &block_a));
        if (common)
            assert_true(depth > 0);
        if (depth > 200)
            assert_true(common);
        met += common;
    }
    assert_in_range(met, 40, 360);
}

static void a_given_object_that_a_box_stands_in_is_told(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 40, 20, 16);
    int64_t left = board(bench, "L", 10, 20, 16);
    struct object *object = MODEL_ADD(&bench->model, object);

    carpenter_join(bench, a, SIDE_LEFT, left, SIDE_RIGHT);
    *object = (struct object){.key = object->key,
                              .kind = OBJECT_TABLE,
                              .name = "of the kitchen",
                              .x = IN(50),
                              .width = IN(30),
                              .depth = IN(30),
                              .height = IN(30)};
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_OBJECT_IN_BOX), 0);
    bench->model.objects.at[0].x = IN(48);
    carpenter_plan(bench);
    assert_told(bench, FINDING_OBJECT_IN_BOX, "A stands in the table of the kitchen by 2 in");
}

/* ---- the floor ---- */

static void a_box_below_the_floor_is_told(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 40, 20, 16);
    int64_t b = board(bench, "B", 20, 20, 16);
    struct join *floor;

    join_named(bench, "J1", a, SIDE_RIGHT, b, SIDE_LEFT)->offset_v = -IN(2);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_BOX_BELOW_FLOOR), 0);
    floor = join_named(bench, "F", a, SIDE_BOTTOM, 0, SIDE_FRONT);
    floor->target = TARGET_FLOOR;
    carpenter_plan(bench);
    assert_told(bench, FINDING_BOX_BELOW_FLOOR, "B reaches 2 in below the floor");
    bench->model.joins.at[0].offset_v = IN(3);
    floor = join_named(bench, "G", b, SIDE_BOTTOM, 0, SIDE_FRONT);
    floor->target = TARGET_FLOOR;
    carpenter_plan(bench);
    assert_told(bench, FINDING_JOIN_OFF_FLOOR,
                "join G is to the floor, and its box stands 3 in above it");
}

static void a_box_that_leans_through_the_floor_is_told(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 40, 20, 16);
    int64_t b = board(bench, "B", 3, 20, 30);

    join_named(bench, "J1", a, SIDE_RIGHT, b, SIDE_LEFT);
    lean(bench, b, AXIS_X, -6);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_BOX_BELOW_FLOOR), 1);
    lean(bench, b, AXIS_X, 6);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_BOX_BELOW_FLOOR), 0);
}

static void a_box_whose_join_is_left_out_floats(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 40, 20, 16);
    int64_t b = board(bench, "B", 20, 20, 10);
    struct left_out *left_out;

    join_named(bench, "J1", a, SIDE_RIGHT, b, SIDE_LEFT)->offset_v = IN(6);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_BOX_FLOATS), 0);
    left_out = MODEL_ADD(&bench->model, left_out);
    left_out->join = bench->model.joins.at[0].key;
    carpenter_plan(bench);
    assert_told(bench, FINDING_BOX_FLOATS,
                "B hangs 6 in above the floor: nothing that stands holds it");
    join_named(bench, "W", b, SIDE_BACK, 0, SIDE_FRONT)->target = TARGET_WALL;
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_BOX_FLOATS), 0);
}

static void boxes_that_no_join_reaches_stand_as_their_own_joins_want(void **state)
{
    struct carpenter *bench = *state;
    int64_t b, c;

    board(bench, "A", 40, 20, 16);
    b = board(bench, "B", 20, 20, 16);
    c = board(bench, "C", 20, 20, 16);
    carpenter_join(bench, b, SIDE_RIGHT, c, SIDE_LEFT);
    carpenter_plan(bench);
    assert_int_equal(plan_pose(bench->plan, c)->with, b);
    assert_int_equal(plan_pose(bench->plan, c)->at.x, IN(20));
    assert_int_equal(carpenter_findings(bench, FINDING_BOXES_OVERLAP), 0);
}

/* ---- the way into the room ---- */

static void a_box_that_leans_is_carried_straight(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 40, 3, 70);
    struct passage *door = MODEL_ADD(&bench->model, passage);

    door->width = IN(42);
    door->height = IN(74);
    lean(bench, a, AXIS_Z, 45);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_TOO_BIG_FOR_WAY), 0);
    assert_int_equal(plan_load(bench->plan, a)->finished.x, IN(40));
}

static void a_build_without_a_box_says_so(void **state)
{
    struct carpenter *bench = *state;

    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_NOTHING_TO_MAKE), 1);
    board(bench, "A", 20, 0.75, 30);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_NOTHING_TO_MAKE), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(sines_are_those_of_the_library),
        cmocka_unit_test(a_lean_takes_the_top_to_the_back_or_to_the_right),
        cmocka_unit_test(places_come_back_from_a_box_that_leans),
        WOOD_TEST(a_wing_stands_upright_beside_a_back_that_leans),
        WOOD_TEST(two_boxes_with_one_lean_meet_to_the_last_length),
        WOOD_TEST(a_leaning_end_still_finds_wood_in_an_upright_one),
        WOOD_TEST(faces_askew_are_told_by_how_much),
        WOOD_TEST(what_leans_takes_up_more_of_the_room),
        WOOD_TEST(checks_see_all_of_what_leans),
        WOOD_TEST(joins_round_a_circle_are_told_with_the_way_and_the_distance),
        WOOD_TEST(joins_that_agree_are_not_told),
        WOOD_TEST(a_join_that_wants_a_box_turned_is_told),
        WOOD_TEST(faces_that_miss_each_other_are_told_by_how_much),
        WOOD_TEST(boxes_in_each_other_are_told_and_touching_ones_are_not),
        WOOD_TEST(a_box_in_the_hollow_of_another_is_no_overlap),
        WOOD_TEST(a_box_that_leans_into_its_neighbour_is_told),
        cmocka_unit_test(separating_axes_find_the_plane_between_blocks_that_lean),
        cmocka_unit_test(overlaps_of_blocks_are_those_that_points_find),
        WOOD_TEST(a_given_object_that_a_box_stands_in_is_told),
        WOOD_TEST(a_box_below_the_floor_is_told),
        WOOD_TEST(a_box_that_leans_through_the_floor_is_told),
        WOOD_TEST(a_box_whose_join_is_left_out_floats),
        WOOD_TEST(boxes_that_no_join_reaches_stand_as_their_own_joins_want),
        WOOD_TEST(a_build_without_a_box_says_so),
        WOOD_TEST(a_box_that_leans_is_carried_straight),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
