/*
 * Where boxes stand, and how thick layers lie on their faces.
 */
#include "carpenter.h"

#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/pose.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static int64_t board(struct carpenter *bench, const char *name, double width, double depth,
                     double height)
{
    return carpenter_box(bench, name, FRAME_BOARD,
                         (struct vector){IN(width), IN(depth), IN(height)}, 0);
}

static void assert_pose(const struct carpenter *bench, int64_t box, int turn, double x, double y,
                        double z)
{
    const struct pose *pose = plan_pose(bench->plan, box);

    assert_true(pose->placed);
    assert_int_equal(pose->turn, turn);
    assert_int_equal(pose->at.x, IN(x));
    assert_int_equal(pose->at.y, IN(y));
    assert_int_equal(pose->at.z, IN(z));
}

/* ---- poses ---- */

static void a_build_without_a_box_is_planned(void **state)
{
    struct carpenter *bench = *state;

    carpenter_plan(bench);
    assert_int_equal(bench->plan->poses.count, 0);
}

static void a_box_joined_to_the_right_stands_beside(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 40, 20, 16);
    int64_t b = board(bench, "B", 30, 20, 16);
    struct join *join = carpenter_join(bench, a, SIDE_RIGHT, b, SIDE_LEFT);

    join->offset_u = IN(2);
    join->offset_v = IN(3);
    carpenter_plan(bench);
    assert_pose(bench, a, 0, 0, 0, 0);
    assert_pose(bench, b, 0, 40, 2, 3);
}

/* The banquette's corner: B's end meets A's front, so B stands turned, 18 in wide before A. */
static void a_box_whose_end_meets_a_front_is_turned(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 84, 18, 14);
    int64_t b = board(bench, "B", 42, 18, 14);
    const struct pose *pose;
    struct vector end;

    carpenter_join(bench, a, SIDE_FRONT, b, SIDE_LEFT);
    carpenter_plan(bench);
    pose = plan_pose(bench->plan, b);
    assert_int_equal(pose->turn % 2, 1);
    assert_pose(bench, b, pose->turn, 0, 18, 0);
    end = pose_to_room(pose, carpenter_box_of(bench, b), (struct vector){0, IN(9), IN(7)});
    assert_int_equal(end.x, IN(9));
    assert_int_equal(end.y, IN(18));
}

static void a_box_on_top_keeps_the_turn(void **state)
{
    struct carpenter *bench = *state;
    int64_t a = board(bench, "A", 36, 24, 8);
    int64_t top = board(bench, "T", 36, 24, 0.75);

    carpenter_join(bench, a, SIDE_TOP, top, SIDE_BOTTOM);
    carpenter_plan(bench);
    assert_pose(bench, top, 0, 0, 0, 8);
}

/* The same join told from the other box: both stand to each other as before. */
static void a_join_places_its_first_box_from_its_second(void **state)
{
    struct carpenter *bench = *state;
    int64_t seat = board(bench, "S", 30, 18, 14);
    int64_t back = board(bench, "K", 10, 20, 40);
    struct join *join = carpenter_join(bench, back, SIDE_RIGHT, seat, SIDE_LEFT);

    join->offset_u = IN(1);
    join->offset_v = IN(5);
    carpenter_plan(bench);
    assert_pose(bench, seat, 0, 0, 0, 0);
    assert_pose(bench, back, 0, -10, -1, -5);
}

static void faces_that_cannot_meet_are_told(void **state)
{
    struct carpenter *bench = *state;

    carpenter_join(bench, board(bench, "A", 40, 20, 16), SIDE_FRONT, board(bench, "B", 30, 20, 16),
                   SIDE_TOP);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_JOIN_FACES_ASKEW), 1);
    assert_false(bench->plan->poses.at[1].placed);
}

static void a_box_that_is_joined_to_nothing_is_told(void **state)
{
    struct carpenter *bench = *state;

    board(bench, "A", 40, 20, 16);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_BOX_UNCONNECTED), 0);
    board(bench, "B", 40, 20, 16);
    carpenter_plan(bench);
    assert_int_equal(carpenter_findings(bench, FINDING_BOX_UNCONNECTED), 2);
}

/* ---- paddings ---- */

static struct layer *lay(struct carpenter *bench, int64_t box, enum layer_word kind,
                         enum shape_word shape, int64_t thickness)
{
    struct layer *layer = MODEL_ADD(&bench->model, layer);

    layer->box = box;
    layer->kind = (int64_t)kind;
    layer->shape = (int64_t)shape;
    layer->thickness = thickness;
    return layer;
}

static void assert_pad(const struct carpenter *bench, int64_t box, enum side_word side,
                       double inches)
{
    assert_int_equal(plan_padding(bench->plan, box, (int64_t)side)->pad, IN(inches));
}

/* The headboard's front: 2 in of foam and half of 1/2 in of batting. */
static void foam_and_batting_add_up_and_batting_counts_half(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = board(bench, "C", 63, 3, 56);
    const struct padding *front;

    lay(bench, box, LAYER_FOAM, SHAPE_SLAB, IN(2))->v = IN(12);
    lay(bench, box, LAYER_BATTING, SHAPE_SLAB, IN(0.5));
    carpenter_plan(bench);
    front = plan_padding(bench->plan, box, SIDE_FRONT);
    assert_int_equal(front->pad, IN(2.25));
    assert_int_equal(front->at[EDGE_TOP], IN(2.25));
    assert_int_equal(front->at[EDGE_LEFT], IN(2.25));
    assert_int_equal(front->at[EDGE_BOTTOM], IN(0.25));
    assert_false(front->covered);
    assert_pad(bench, box, SIDE_TOP, 0);
}

/* In the order of the stack, whatever the order they were entered in; cloth adds nothing. */
static void a_face_is_built_up_layer_by_layer(void **state)
{
    static const double after[] = {2, 2.25, 2.25};
    struct carpenter *bench = *state;
    int64_t box = board(bench, "C", 63, 3, 56);
    int nth = 0;

    lay(bench, box, LAYER_COVER, SHAPE_SLAB, 0)->rank = 3;
    lay(bench, box, LAYER_BATTING, SHAPE_SLAB, IN(0.5))->rank = 2;
    lay(bench, box, LAYER_FOAM, SHAPE_SLAB, IN(2))->rank = 1;
    carpenter_plan(bench);
    for (size_t i = 0; i < bench->plan->coatings.count; i++) {
        const struct coating *coating = &bench->plan->coatings.at[i];

        if (coating->side != SIDE_FRONT)
            continue;
        assert_in_range(nth, 0, 2);
        assert_int_equal(coating->after, IN(after[nth]));
        assert_int_equal(coating->layer, bench->model.layers.at[2 - nth].key);
        nth++;
    }
    assert_int_equal(nth, 3);
}

static void slabs_side_by_side_do_not_add_up(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = board(bench, "C", 63, 3, 56);

    lay(bench, box, LAYER_FOAM, SHAPE_SLAB, IN(2))->width = IN(30);
    lay(bench, box, LAYER_FOAM, SHAPE_SLAB, IN(1))->u = IN(30);
    carpenter_plan(bench);
    assert_pad(bench, box, SIDE_FRONT, 2);
    assert_int_equal(plan_padding(bench->plan, box, SIDE_FRONT)->at[EDGE_RIGHT], IN(1));
}

static void a_wrapped_layer_pads_the_sides_it_goes_round(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = board(bench, "C", 63, 3, 56);
    struct layer *batting = lay(bench, box, LAYER_BATTING, SHAPE_WRAPPED, IN(0.5));

    batting->left = ENDING_STOP;
    batting->right = ENDING_STOP;
    batting->top = ENDING_WRAP;
    batting->bottom = ENDING_STOP;
    carpenter_plan(bench);
    assert_pad(bench, box, SIDE_FRONT, 0.25);
    assert_pad(bench, box, SIDE_TOP, 0.25);
    assert_pad(bench, box, SIDE_LEFT, 0);
    assert_pad(bench, box, SIDE_BOTTOM, 0);
    assert_pad(bench, box, SIDE_BACK, 0);
}

static void a_layer_on_both_faces_pads_the_opposite_one_too(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = board(bench, "C", 63, 3, 56);

    lay(bench, box, LAYER_FOAM, SHAPE_SLAB, IN(1))->both = 1;
    carpenter_plan(bench);
    assert_pad(bench, box, SIDE_FRONT, 1);
    assert_pad(bench, box, SIDE_BACK, 1);
}

/* A sixteenth of pressed cloth for each covered face of a joint. */
static void a_cover_that_wraps_leaves_cloth_on_the_sides(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = board(bench, "C", 63, 3, 56);

    lay(bench, box, LAYER_COVER, SHAPE_WRAPPED, 0);
    carpenter_plan(bench);
    assert_true(plan_padding(bench->plan, box, SIDE_LEFT)->covered);
    assert_int_equal(plan_padding(bench->plan, box, SIDE_LEFT)->cloth, IN(0.0625));
    assert_int_equal(plan_padding(bench->plan, box, SIDE_LEFT)->pad, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WOOD_TEST(a_build_without_a_box_is_planned),
        WOOD_TEST(a_box_joined_to_the_right_stands_beside),
        WOOD_TEST(a_box_whose_end_meets_a_front_is_turned),
        WOOD_TEST(a_box_on_top_keeps_the_turn),
        WOOD_TEST(a_join_places_its_first_box_from_its_second),
        WOOD_TEST(faces_that_cannot_meet_are_told),
        WOOD_TEST(a_box_that_is_joined_to_nothing_is_told),
        WOOD_TEST(foam_and_batting_add_up_and_batting_counts_half),
        WOOD_TEST(a_face_is_built_up_layer_by_layer),
        WOOD_TEST(slabs_side_by_side_do_not_add_up),
        WOOD_TEST(a_wrapped_layer_pads_the_sides_it_goes_round),
        WOOD_TEST(a_layer_on_both_faces_pads_the_opposite_one_too),
        WOOD_TEST(a_cover_that_wraps_leaves_cloth_on_the_sides),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
