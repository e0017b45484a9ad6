/* Sides, edges, poses and screws: small cases that one can check on squared paper. */
#include "plan/geometry.h"
#include "plan/pose.h"
#include "plan/screws.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static const struct box box = {.key = 1, .width = 100, .depth = 40, .height = 60};

static void assert_vector(struct vector vector, int64_t x, int64_t y, int64_t z)
{
    assert_int_equal(vector.x, x);
    assert_int_equal(vector.y, y);
    assert_int_equal(vector.z, z);
}

static void a_side_and_its_opposite_share_an_axis(void **state)
{
    (void)state;
    for (int64_t side = 0; side < SIDE_COUNT; side++) {
        int64_t opposite = side_opposite(side);

        assert_int_equal(side_axis(opposite), side_axis(side));
        assert_int_equal(side_sign(opposite), -side_sign(side));
        assert_int_equal(side_opposite(opposite), side);
        assert_int_equal(side_axis(side) + side_u_axis(side) + side_v_axis(side),
                         AXIS_X + AXIS_Y + AXIS_Z);
    }
}

static void edges_border_on_the_sides_they_name(void **state)
{
    (void)state;
    assert_int_equal(edge_side(SIDE_FRONT, EDGE_TOP), SIDE_TOP);
    assert_int_equal(edge_side(SIDE_BACK, EDGE_LEFT), SIDE_LEFT);
    assert_int_equal(edge_side(SIDE_LEFT, EDGE_LEFT), SIDE_BACK);
    assert_int_equal(edge_side(SIDE_RIGHT, EDGE_RIGHT), SIDE_FRONT);
    assert_int_equal(edge_side(SIDE_TOP, EDGE_TOP), SIDE_FRONT);
    assert_int_equal(edge_side(SIDE_BOTTOM, EDGE_BOTTOM), SIDE_BACK);
    assert_int_equal(edge_length(&box, SIDE_LEFT, EDGE_TOP), 40);
    assert_int_equal(edge_length(&box, SIDE_LEFT, EDGE_LEFT), 60);
}

static void an_edge_lies_across_from_its_opposite(void **state)
{
    (void)state;
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        int64_t opposite = edge_opposite(edge);

        assert_true(opposite != edge);
        assert_int_equal(edge_opposite(opposite), edge);
        assert_int_equal(edge_is_upright(opposite), edge_is_upright(edge));
        assert_int_equal(edge_side(SIDE_FRONT, opposite),
                         side_opposite(edge_side(SIDE_FRONT, edge)));
    }
}

static void lengths_are_drawn_in_and_measured_from_an_interval(void **state)
{
    (void)state;
    assert_int_equal(length_within(-4, 0, 9), 0);
    assert_int_equal(length_within(4, 0, 9), 4);
    assert_int_equal(length_within(14, 0, 9), 9);
    assert_int_equal(length_outside(-4, 0, 9), 4);
    assert_int_equal(length_outside(4, 0, 9), 0);
    assert_int_equal(length_outside(14, 0, 9), 5);
    assert_int_equal(vector_length((struct vector){-3, 4, 12}), 13);
}

static void a_place_on_a_face_comes_back_from_the_box(void **state)
{
    (void)state;
    for (int64_t side = 0; side < SIDE_COUNT; side++) {
        int64_t u;
        int64_t v;

        box_to_face(side, face_to_box(&box, side, 7, 11), &u, &v);
        assert_int_equal(u, 7);
        assert_int_equal(v, 11);
    }
    assert_vector(face_to_box(&box, SIDE_FRONT, 7, 11), 7, 40, 11);
    assert_vector(face_to_box(&box, SIDE_LEFT, 7, 11), 0, 7, 11);
    assert_vector(face_to_box(&box, SIDE_TOP, 7, 11), 7, 11, 60);
}

static void a_slab_lies_behind_its_face(void **state)
{
    static const struct area area = {1, 2, 30, 20};
    struct solid front = solid_behind(&box, SIDE_FRONT, &area, 0, 5);
    struct solid left = solid_behind(&box, SIDE_LEFT, &area, 2, 5);
    struct area back = solid_on_side(&front, SIDE_FRONT);

    (void)state;
    assert_vector(front.low, 1, 35, 2);
    assert_vector(front.high, 30, 40, 20);
    assert_vector(left.low, 2, 1, 2);
    assert_vector(left.high, 5, 30, 20);
    assert_memory_equal(&back, &area, sizeof area);
}

static void solids_that_touch_do_not_meet(void **state)
{
    static const struct solid a = {{0, 0, 0}, {10, 10, 10}};
    static const struct solid beside = {{10, 0, 0}, {20, 10, 10}};
    static const struct solid inside = {{9, 9, 9}, {20, 20, 20}};

    (void)state;
    assert_false(solids_meet(&a, &beside));
    assert_true(solids_meet(&a, &inside));
}

/* A turn to the left, seen from above with the front below: the front comes to look right. */
static void a_turn_to_the_left_takes_the_front_to_the_right(void **state)
{
    static const struct pose turned = {.box = 1, .turn = 1, .at = {0, 0, 0}, .placed = true};

    (void)state;
    assert_int_equal(side_turned(SIDE_RIGHT, 1), SIDE_FRONT);
    assert_int_equal(side_turned(SIDE_BACK, 1), SIDE_RIGHT);
    assert_int_equal(side_turned(SIDE_FRONT, 2), SIDE_BACK);
    assert_int_equal(side_turned(SIDE_TOP, 3), SIDE_TOP);
    assert_vector(pose_to_room(&turned, &box, (struct vector){50, 40, 30}), 40, 50, 30);
    assert_vector(pose_to_room(&turned, &box, (struct vector){100, 20, 30}), 20, 0, 30);
}

static void poses_lead_back_to_the_box(void **state)
{
    (void)state;
    for (int turn = 0; turn < 4; turn++) {
        struct pose pose = {.box = 1, .turn = turn, .at = {500, -300, 20}, .placed = true};
        struct vector room = pose_to_room(&pose, &box, (struct vector){13, 17, 19});

        assert_vector(pose_to_box(&pose, &box, room), 13, 17, 19);
    }
}

/* The outline of a turned box lies from its place on, and a side's middle where side_turned says.
 */
static void a_pose_and_a_turned_side_agree(void **state)
{
    (void)state;
    for (int turn = 0; turn < 4; turn++) {
        struct pose pose = {.box = 1, .turn = turn, .at = {0, 0, 0}, .placed = true};
        int64_t width = turn % 2 ? box.depth : box.width;
        int64_t right = side_turned(SIDE_RIGHT, turn);
        struct area face = face_area(&box, right);
        struct vector middle = face_to_box(&box, right, face.u1 / 2, face.v1 / 2);

        assert_int_equal(pose_to_room(&pose, &box, middle).x, width);
    }
}

/* ---- screws ---- */

static void crossing_screws_are_as_far_apart_as_their_axes_less_half_of_each(void **state)
{
    static const struct screw_axis along = {{0, 0, 0}, {100, 0, 0}, 10};
    static const struct screw_axis over = {{50, -20, 30}, {50, 20, 30}, 6};

    (void)state;
    assert_int_equal(screw_clear(&along, &over), 30 - 8);
    assert_int_equal(screw_clear(&over, &along), 30 - 8);
}

static void screws_end_to_end_are_measured_at_their_ends(void **state)
{
    static const struct screw_axis one = {{0, 0, 0}, {100, 0, 0}, 10};
    static const struct screw_axis other = {{103, 4, 0}, {200, 4, 0}, 10};
    static const struct screw_axis backwards = {{200, 4, 0}, {103, 4, 0}, 10};

    (void)state;
    assert_int_equal(screw_clear(&one, &other), 5 - 10);
    assert_int_equal(screw_clear(&one, &backwards), 5 - 10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_side_and_its_opposite_share_an_axis),
        cmocka_unit_test(edges_border_on_the_sides_they_name),
        cmocka_unit_test(an_edge_lies_across_from_its_opposite),
        cmocka_unit_test(lengths_are_drawn_in_and_measured_from_an_interval),
        cmocka_unit_test(a_place_on_a_face_comes_back_from_the_box),
        cmocka_unit_test(a_slab_lies_behind_its_face),
        cmocka_unit_test(solids_that_touch_do_not_meet),
        cmocka_unit_test(a_turn_to_the_left_takes_the_front_to_the_right),
        cmocka_unit_test(poses_lead_back_to_the_box),
        cmocka_unit_test(a_pose_and_a_turned_side_agree),
        cmocka_unit_test(crossing_screws_are_as_far_apart_as_their_axes_less_half_of_each),
        cmocka_unit_test(screws_end_to_end_are_measured_at_their_ends),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
