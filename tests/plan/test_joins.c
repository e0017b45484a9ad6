/* Where joins are screwed, held against the worked examples, which were computed by hand. */
#include "joined.h"
#include "plan/cure.h"
#include "plan/findings.h"

#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <setjmp.h>

#include <cmocka.h>

static void wing_headboard_is_joined_with_six_screws_ten_inches_apart(void **state)
{
    static const double height[] = {3, 13, 23, 33, 43, 53};
    struct joined piece;
    int64_t join = joined_headboard(&piece);

    (void)state;
    assert_int_equal(joined_junction(&piece, join)->point_count, 6);
    assert_int_equal(joined_junction(&piece, join)->pitch, IN(10));
    for (size_t i = 0; i < 6; i++) {
        const struct plan_point *point = joined_point(&piece, join, i);

        assert_int_equal(point->in_a.z, IN(height[i]));
        assert_int_equal(point->in_a.y, IN(0.75));
        assert_int_equal(point->in_b.y, IN(0.75));
        assert_int_equal(point->rank, i + 1);
    }
    joined_end(&piece);
}

static void wing_headboard_takes_number_ten_by_three_with_the_bite_in_ply_and_stile(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    const struct plan_point *point = joined_point(&piece, join, 0);

    (void)state;
    assert_int_equal(joined_screw(&piece, join, 0)->gauge, 10);
    assert_int_equal(joined_screw(&piece, join, 0)->length, IN(3));
    assert_int_equal(piece.plan->screws.at[point->screw].bite, IN(1.375));
    assert_int_equal(point->limit, IN(4.5));
    assert_int_equal(joined_junction(&piece, join)->cloth, IN(0.125));
    joined_end(&piece);
}

static void whole_row_is_measured_from_the_same_two_edges(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);

    (void)state;
    for (size_t i = 0; i < 6; i++) {
        const struct plan_point *point = joined_point(&piece, join, i);

        assert_int_equal(point->edges[0].edge, EDGE_LEFT); /* the back, on an end */
        assert_int_equal(point->edges[0].distance, IN(0.75));
        assert_int_equal(point->edges[1].edge, EDGE_BOTTOM);
        assert_int_equal(point->edges[1].distance, point->in_a.z);
        assert_int_equal(point->edges_b[1].edge, EDGE_BOTTOM);
    }
    joined_end(&piece);
}

static void ottoman_top_takes_sixteen_screws_that_bite_half_an_inch(void **state)
{
    struct joined piece;
    int64_t join = joined_ottoman(&piece);

    (void)state;
    assert_int_equal(joined_junction(&piece, join)->point_count, 16);
    for (size_t i = 0; i < 16; i++) {
        const struct plan_point *point = joined_point(&piece, join, i);

        assert_int_equal(piece.plan->screws.at[point->screw].bite, IN(0.5));
        assert_int_equal(point->limit, IN(2.0625)); /* 1-1/2 and 3/4, less 3/16 under the cover */
    }
    assert_int_equal(joined_findings(&piece, FINDING_SCREW_SHORT_BITE), 1);
    assert_int_equal(joined_argument(&piece, FINDING_SCREW_SHORT_BITE, 0), IN(0.5));
    joined_end(&piece);
}

static void head_is_not_put_where_a_post_stands_under_the_rail(void **state)
{
    struct joined piece;
    int64_t join = joined_ottoman(&piece);

    (void)state;
    for (size_t i = 0; i < 16; i++) {
        struct vector at = joined_point(&piece, join, i)->in_a;
        bool over_post_x = (at.x >= IN(2) && at.x < IN(3.5)) || (at.x >= IN(32.5) && at.x < IN(34));

        assert_false(over_post_x);
    }
    joined_end(&piece);
}

static void banquette_is_joined_top_and_bottom_with_three_screws_each(void **state)
{
    static const double along[] = {3.5, 8.75, 14};
    struct joined piece;
    int64_t join = joined_banquette(&piece);

    (void)state;
    assert_int_equal(joined_junction(&piece, join)->point_count, 6);
    for (size_t i = 0; i < 6; i++) {
        const struct plan_point *point = joined_point(&piece, join, i);

        assert_int_equal(point->in_b.x, IN(along[i % 3]));
        assert_int_equal(point->in_b.z, i < 3 ? IN(0.75) : IN(13.5));
        assert_int_equal(point->in_b.y, IN(18));
        assert_int_equal(point->limit, IN(3.375));
        assert_int_equal(joined_screw(&piece, join, i)->length, IN(3));
    }
    joined_end(&piece);
}

static void open_wing_takes_a_longer_screw_that_just_stays_inside(void **state)
{
    struct joined piece;
    struct open_wing open = joined_open_wing(&piece);
    const struct plan_point *point = joined_point(&piece, open.join, 0);

    (void)state;
    assert_int_equal(joined_junction(&piece, open.join)->point_count, 6);
    assert_int_equal(point->in_b.y, IN(1.25));
    assert_int_equal(joined_screw(&piece, open.join, 0)->length, IN(3.5));
    assert_int_equal(point->limit, IN(3.5));
    assert_int_equal(piece.plan->screws.at[point->screw].bite, IN(1.375));
    joined_end(&piece);
}

/* ---- what was taken ---- */

static void drill(struct joined *piece, int64_t join)
{
    struct tick *tick = MODEL_ADD(&piece->model, tick);
    int64_t key = tick->key;
    size_t count = joined_junction(piece, join)->point_count;

    for (size_t i = 0; i < count; i++) {
        const struct plan_point *point = joined_point(piece, join, i);
        struct hole *hole = MODEL_ADD(&piece->model, hole);

        hole->tick = key;
        hole->join = join;
        hole->rank = point->rank;
        hole->u = point->u;
        hole->v = point->v;
    }
}

static void drilled_hole_stays_when_the_pitch_changes(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);

    (void)state;
    drill(&piece, join);
    assert_int_equal(trade_change(&piece.model, TRADE_FROM_BUILD, "join.pitch", "6", NULL),
                     FAULT_NONE);
    joined_plan(&piece);
    assert_int_equal(joined_junction(&piece, join)->point_count, 6);
    for (size_t i = 0; i < 6; i++) {
        assert_int_equal(joined_point(&piece, join, i)->v, IN(3) + (int64_t)i * IN(10));
        assert_true(joined_point(&piece, join, i)->taken);
    }
    joined_end(&piece);
}

/* Drilled from the top down, and so written down in that order. */
static void drilled_holes_keep_the_ranks_they_are_marked_with(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);

    (void)state;
    drill(&piece, join);
    for (size_t i = 0; i < 6; i++)
        piece.model.holes.at[i].v = IN(53) - (int64_t)i * IN(10);
    for (size_t i = 0; i < 6; i++)
        piece.model.holes.at[i].rank = 6 - (int64_t)i;
    joined_plan(&piece);
    for (size_t i = 0; i < 6; i++) {
        assert_int_equal(joined_point(&piece, join, i)->rank, i + 1);
        assert_int_equal(joined_point(&piece, join, i)->v, IN(3) + (int64_t)i * IN(10));
    }
    joined_end(&piece);
}

static void closer_pitch_gives_more_points_where_nothing_is_drilled(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);

    (void)state;
    assert_int_equal(trade_change(&piece.model, TRADE_FROM_BUILD, "join.pitch", "6", NULL),
                     FAULT_NONE);
    joined_plan(&piece);
    assert_int_equal(joined_junction(&piece, join)->point_count, 10);
    joined_end(&piece);
}

static void points_by_hand_are_the_only_ones(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    struct point *point = MODEL_ADD(&piece.model, point);

    (void)state;
    point->join = join;
    point->u = IN(1);
    point->v = IN(30);
    joined_plan(&piece);
    assert_int_equal(joined_junction(&piece, join)->point_count, 1);
    assert_int_equal(joined_point(&piece, join, 0)->v, IN(30));
    assert_true(joined_point(&piece, join, 0)->taken);
    joined_end(&piece);
}

/* Where the first screw of the headboard's join would be, 3 in up: taken by a later join first, by
 * hand or by a hole that is drilled. */
static void points_keep_clear_of_what_a_later_join_has_there(void **state)
{
    for (int drilled = 0; drilled < 2; drilled++) {
        struct joined piece;
        int64_t join = joined_headboard(&piece);
        struct join first = *MODEL_FIND(&piece.model, join, join);
        int64_t later =
            joined_join(&piece, first.box_a, first.side_a, first.box_b, first.side_b)->key;

        (void)state;
        if (drilled) {
            struct hole *hole = MODEL_ADD(&piece.model, hole);

            *hole = (struct hole){.key = hole->key,
                                  .tick = MODEL_ADD(&piece.model, tick)->key,
                                  .join = later,
                                  .rank = 1,
                                  .u = IN(0.75),
                                  .v = IN(3)};
        } else {
            joined_hole(&piece, later, 0.75, 3);
        }
        joined_plan(&piece);
        assert_int_equal(joined_junction(&piece, later)->point_count, 1);
        assert_int_equal(joined_point(&piece, later, 0)->in_a.z, IN(3));
        assert_true(joined_point(&piece, join, 0)->in_a.z > IN(3.25));
        joined_end(&piece);
    }
}

static void join_that_was_left_out_has_no_points(void **state)
{
    struct joined piece;
    int64_t join = joined_headboard(&piece);
    struct left_out *left_out = MODEL_ADD(&piece.model, left_out);

    (void)state;
    left_out->join = join;
    joined_plan(&piece);
    assert_int_equal(joined_junction(&piece, join)->point_count, 0);
    joined_end(&piece);
}

/* ---- wall ---- */

static void wall_join_stands_on_the_studs(void **state)
{
    struct joined piece;
    struct wall *wall;
    struct join *join;

    (void)state;
    joined_start(&piece, 1.5);
    int64_t box = joined_box(&piece, FRAME_CRATE, 84, 18, 14.25)->key;
    wall = MODEL_ADD(&piece.model, wall);
    wall->side = SIDE_BACK;
    wall->first_stud = IN(10);
    wall->stud_pitch = IN(16);
    join = joined_join(&piece, box, SIDE_BACK, 0, SIDE_FRONT);
    join->target = TARGET_WALL;
    int64_t key = join->key;
    joined_plan(&piece);
    assert_int_equal(joined_junction(&piece, key)->point_count, 5);
    for (size_t i = 0; i < 5; i++) {
        assert_int_equal(joined_point(&piece, key, i)->u, IN(10) + (int64_t)i * IN(16));
        assert_int_equal(joined_point(&piece, key, i)->v, IN(13.5));
        assert_true(joined_point(&piece, key, i)->member_b == PLAN_NONE);
    }
    joined_end(&piece);
}

static void a_cushion_that_is_screwed_on_may_rest(void **state)
{
    struct joined piece;

    (void)state;
    joined_start(&piece, 1.5);
    int64_t a = joined_box(&piece, FRAME_CRATE, 40, 20, 14)->key;
    int64_t b = joined_box(&piece, FRAME_CUSHION, 40, 20, 4)->key;
    joined_join(&piece, a, SIDE_TOP, b, SIDE_BOTTOM);
    joined_plan(&piece);
    assert_int_equal(joined_findings(&piece, FINDING_JOIN_NO_WOOD), 1);
    const struct finding *finding = joined_finding(&piece, FINDING_JOIN_NO_WOOD);
    assert_int_equal(finding->cure_count, 1);
    assert_int_equal(cure_apply(&piece.model, &finding->cures[0], NULL), FAULT_NONE);
    joined_plan(&piece);
    assert_int_equal(joined_findings(&piece, FINDING_JOIN_NO_WOOD), 0);
    joined_end(&piece);
}

static void join_without_wood_on_both_sides_is_told(void **state)
{
    struct joined piece;

    (void)state;
    joined_start(&piece, 1.5);
    int64_t a = joined_box(&piece, FRAME_LADDER, 60, 1.5, 60)->key;
    int64_t b = joined_box(&piece, FRAME_LADDER, 20, 1.5, 20)->key;
    struct join *join = joined_join(&piece, a, SIDE_FRONT, b, SIDE_BACK);
    join->offset_u = join->offset_v = IN(20);
    joined_plan(&piece);
    assert_int_equal(joined_findings(&piece, FINDING_JOIN_NO_WOOD), 1);
    joined_end(&piece);
}

/* A rail half an inch behind the front, as if a panel lay before it; the panel is on the back. */
static void wood_behind_a_panel_of_another_face_takes_no_screw(void **state)
{
    struct joined piece;

    (void)state;
    for (enum side_word side = SIDE_FRONT; side <= SIDE_BACK; side++) {
        joined_start(&piece, 1.5);
        struct box *box = joined_box(&piece, FRAME_LADDER, 60, 3, 60);
        box->supports = MAKING_HAND;
        int64_t a = box->key;
        int64_t b = joined_box(&piece, FRAME_LADDER, 20, 1.5, 20)->key;
        struct member *rail = MODEL_ADD(&piece.model, member);
        rail->box = a;
        rail->kind = MEMBER_RAIL;
        rail->axis = AXIS_X;
        rail->y = side == SIDE_FRONT ? IN(1) : IN(0.5); /* before a panel on the back */
        rail->z = IN(20);
        joined_facing(&piece, a, side, piece.sheet);
        struct join *join = joined_join(&piece, a, SIDE_FRONT, b, SIDE_BACK);
        join->offset_u = join->offset_v = IN(20);
        joined_plan(&piece);
        assert_int_equal(joined_findings(&piece, FINDING_JOIN_NO_WOOD), side == SIDE_BACK);
        joined_end(&piece);
    }
}

static void faces_that_do_not_overlap_are_told(void **state)
{
    struct joined piece;

    (void)state;
    joined_start(&piece, 1.5);
    int64_t a = joined_box(&piece, FRAME_LADDER, 20, 1.5, 20)->key;
    int64_t b = joined_box(&piece, FRAME_LADDER, 20, 1.5, 20)->key;
    struct join *join = joined_join(&piece, a, SIDE_FRONT, b, SIDE_BACK);
    join->offset_u = IN(30);
    int64_t key = join->key;
    joined_plan(&piece);
    assert_int_equal(joined_findings(&piece, FINDING_JOIN_FACES_PAST), 1);
    assert_int_equal(joined_junction(&piece, key)->point_count, 0);
    joined_end(&piece);
}

static void join_too_short_for_two_points_takes_one_and_is_told(void **state)
{
    struct joined piece;

    (void)state;
    joined_start(&piece, 1.5);
    int64_t a = joined_box(&piece, FRAME_LADDER, 20, 1.5, 20)->key;
    int64_t b = joined_box(&piece, FRAME_LADDER, 20, 1.5, 20)->key;
    struct join *join = joined_join(&piece, a, SIDE_RIGHT, b, SIDE_LEFT);
    join->offset_v = IN(17); /* 3 in of the stiles meet */
    int64_t key = join->key;
    joined_plan(&piece);
    assert_int_equal(joined_junction(&piece, key)->point_count, 1);
    assert_int_equal(joined_argument(&piece, FINDING_JOIN_FEW_POINTS, 1), 2);
    joined_end(&piece);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(wing_headboard_is_joined_with_six_screws_ten_inches_apart),
        cmocka_unit_test(wing_headboard_takes_number_ten_by_three_with_the_bite_in_ply_and_stile),
        cmocka_unit_test(whole_row_is_measured_from_the_same_two_edges),
        cmocka_unit_test(ottoman_top_takes_sixteen_screws_that_bite_half_an_inch),
        cmocka_unit_test(head_is_not_put_where_a_post_stands_under_the_rail),
        cmocka_unit_test(banquette_is_joined_top_and_bottom_with_three_screws_each),
        cmocka_unit_test(open_wing_takes_a_longer_screw_that_just_stays_inside),
        cmocka_unit_test(drilled_hole_stays_when_the_pitch_changes),
        cmocka_unit_test(drilled_holes_keep_the_ranks_they_are_marked_with),
        cmocka_unit_test(closer_pitch_gives_more_points_where_nothing_is_drilled),
        cmocka_unit_test(points_by_hand_are_the_only_ones),
        cmocka_unit_test(points_keep_clear_of_what_a_later_join_has_there),
        cmocka_unit_test(join_that_was_left_out_has_no_points),
        cmocka_unit_test(wall_join_stands_on_the_studs),
        cmocka_unit_test(a_cushion_that_is_screwed_on_may_rest),
        cmocka_unit_test(join_without_wood_on_both_sides_is_told),
        cmocka_unit_test(wood_behind_a_panel_of_another_face_takes_no_screw),
        cmocka_unit_test(faces_that_do_not_overlap_are_told),
        cmocka_unit_test(join_too_short_for_two_points_takes_one_and_is_told),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
