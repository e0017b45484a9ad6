/*
 * Which layers lie where, and which lie over which.
 */
#include "plan/layers.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* Two boxes of three are one group. */
static struct model grouped(struct group_box boxes[2])
{
    struct model model = {0};

    boxes[0] = (struct group_box){.key = 1, .group = 7, .box = 1};
    boxes[1] = (struct group_box){.key = 2, .group = 7, .box = 2};
    model.group_boxes.at = boxes;
    model.group_boxes.count = 2;
    return model;
}

static void a_layer_lies_on_its_box_or_on_those_of_its_group(void **state)
{
    struct group_box boxes[2];
    struct model model = grouped(boxes);
    const struct layer alone = {.key = 1, .box = 3};
    const struct layer over_both = {.key = 2, .group = 7};

    (void)state;
    assert_true(layer_touches(&model, &alone, 3));
    assert_false(layer_touches(&model, &alone, 1));
    assert_true(layer_touches(&model, &over_both, 1));
    assert_true(layer_touches(&model, &over_both, 2));
    assert_false(layer_touches(&model, &over_both, 3));
    assert_int_equal(layer_box(&model, &alone), 3);
    assert_int_equal(layer_box(&model, &over_both), 1);
}

/* A join to a wall or the floor has no second box: no layer lies on that. */
static void no_layer_lies_on_the_room(void **state)
{
    struct group_box boxes[2];
    struct model model = grouped(boxes);
    const struct layer over_both = {.key = 2, .group = 7};
    const struct junction to_wall = {.box_a = 1, .box_b = 0};
    const struct junction between = {.box_a = 1, .box_b = 2};

    (void)state;
    assert_false(layer_touches(&model, &over_both, 0));
    assert_false(layer_lies_across(&model, &over_both, &to_wall));
    assert_true(layer_lies_across(&model, &over_both, &between));
}

static void layers_are_stacked_by_rank_then_kind_then_age(void **state)
{
    const struct layer foam = {.key = 9, .kind = LAYER_FOAM, .rank = 1};
    const struct layer batting = {.key = 8, .kind = LAYER_BATTING, .rank = 1};
    const struct layer later = {.key = 10, .kind = LAYER_BATTING, .rank = 1};
    const struct layer outermost = {.key = 1, .kind = LAYER_FOAM, .rank = 2};

    (void)state;
    assert_true(layer_is_over(&batting, &foam));
    assert_false(layer_is_over(&foam, &batting));
    assert_true(layer_is_over(&later, &batting));
    assert_true(layer_is_over(&outermost, &later));
}

static void cloth_goes_round_to_the_sides_where_it_does_not_stop(void **state)
{
    const struct layer cover = {.side = SIDE_TOP,
                                .shape = SHAPE_WRAPPED,
                                .left = ENDING_WRAP,
                                .right = ENDING_SIDE,
                                .top = ENDING_STOP,
                                .bottom = ENDING_STOP};
    struct layer flat = cover;

    (void)state;
    flat.shape = SHAPE_FLAT;
    assert_int_equal(layer_faces(&cover), 1u << SIDE_TOP | 1u << SIDE_LEFT | 1u << SIDE_RIGHT);
    assert_int_equal(layer_reaches(&cover), layer_faces(&cover) | 1u << SIDE_BOTTOM);
    assert_int_equal(layer_faces(&flat), 1u << SIDE_TOP);
    assert_int_equal(layer_reaches(&flat), 1u << SIDE_TOP);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_layer_lies_on_its_box_or_on_those_of_its_group),
        cmocka_unit_test(no_layer_lies_on_the_room),
        cmocka_unit_test(layers_are_stacked_by_rank_then_kind_then_age),
        cmocka_unit_test(cloth_goes_round_to_the_sides_where_it_does_not_stop),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
