/* What holds for every join: small pieces by chance, from fixed seeds. */
#include "dice.h"
#include "joined.h"
#include "plan/geometry.h"

#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <setjmp.h>

#include <cmocka.h>

#include <stdlib.h>

#define PIECES 150

static const int64_t sides[] = {SIDE_FRONT, SIDE_BACK, SIDE_LEFT, SIDE_RIGHT};

/* Two boxes with some facings, joined on upright faces. */
static int64_t make(struct joined *piece, uint64_t seed)
{
    struct dice dice = {seed};
    int64_t boxes[2];

    joined_start(piece, 1.5);
    for (int i = 0; i < 2; i++) {
        struct box *box =
            joined_box(piece, dice_between(&dice, FRAME_LADDER, FRAME_CRATE),
                       (double)dice_between(&dice, 10, 70), (double)dice_between(&dice, 8, 30),
                       (double)dice_between(&dice, 10, 60));
        boxes[i] = box->key;
        box->main_side = SIDE_FRONT;
        box->through = dice_between(&dice, 0, 1);
        if (dice_between(&dice, 0, 1))
            joined_facing(piece, boxes[i], sides[dice_between(&dice, 0, 3)], piece->sheet)->glued =
                dice_between(&dice, 0, 1);
    }
    struct join *join = joined_join(piece, boxes[0], sides[dice_between(&dice, 0, 3)], boxes[1],
                                    sides[dice_between(&dice, 0, 3)]);
    join->offset_u = dice_between(&dice, 0, 1) * dice_between(&dice, -5, 20) * LENGTH_INCH;
    join->offset_v = dice_between(&dice, 0, 2) ? 0 : dice_between(&dice, -5, 20) * LENGTH_INCH;
    join->place = dice_between(&dice, 0, 1);
    int64_t key = join->key;
    joined_plan(piece);
    return key;
}

typedef void check_fn(struct joined *piece, int64_t join);

static void check_all(check_fn *check)
{
    for (uint64_t seed = 1; seed <= PIECES; seed++) {
        struct joined piece;
        int64_t join = make(&piece, seed);

        check(&piece, join);
        joined_end(&piece);
    }
}

static void check_zone(struct joined *piece, int64_t join)
{
    const struct junction *junction = joined_junction(piece, join);

    assert_int_equal(area_width(&junction->zone) * area_height(&junction->zone),
                     area_width(&junction->zone_b) * area_height(&junction->zone_b));
    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point = joined_point(piece, join, i);

        assert_in_range(point->u, junction->zone.u0, junction->zone.u1 - 1);
        assert_in_range(point->v, junction->zone.v0, junction->zone.v1 - 1);
    }
}

static void every_point_lies_in_the_mating_zone(void **state)
{
    (void)state;
    check_all(check_zone);
}

static void check_edges(struct joined *piece, int64_t join)
{
    const struct junction *junction = joined_junction(piece, join);
    const struct join *entry = MODEL_FIND(&piece->model, join, join);
    struct area face = face_area(MODEL_FIND(&piece->model, box, junction->box_a), entry->side_a);

    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point = joined_point(piece, join, i);
        int64_t u = point->edges[0].distance;
        int64_t v = point->edges[1].distance;

        assert_int_equal(point->edges[0].edge == EDGE_LEFT ? u : face.u1 - u, point->u);
        assert_int_equal(point->edges[1].edge == EDGE_BOTTOM ? v : face.v1 - v, point->v);
    }
}

static void two_edge_distances_find_every_point_again(void **state)
{
    (void)state;
    check_all(check_edges);
}

static void check_inside(struct joined *piece, int64_t join)
{
    const struct junction *junction = joined_junction(piece, join);

    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point = joined_point(piece, join, i);

        if (point->screw == PLAN_NONE)
            continue;
        assert_true(joined_screw(piece, join, i)->length <= point->limit);
        assert_true(piece->plan->screws.at[point->screw].bite > 0);
    }
}

static void no_tip_comes_out_of_the_wood(void **state)
{
    (void)state;
    check_all(check_inside);
}

static void check_apart(struct joined *piece, int64_t join)
{
    size_t count = joined_junction(piece, join)->point_count;

    for (size_t i = 0; i < count; i++) {
        for (size_t j = i + 1; j < count; j++) {
            const struct plan_point *a = joined_point(piece, join, i);
            const struct plan_point *b = joined_point(piece, join, j);

            assert_true(a->u != b->u || a->v != b->v);
        }
    }
}

static void no_two_points_share_a_place(void **state)
{
    (void)state;
    check_all(check_apart);
}

static void check_drilled(struct joined *piece, int64_t join)
{
    size_t count = joined_junction(piece, join)->point_count;
    int64_t tick = MODEL_ADD(&piece->model, tick)->key;
    int64_t *places = calloc(2 * count + 1, sizeof *places);

    assert_non_null(places);
    for (size_t i = 0; i < count; i++) {
        const struct plan_point *point = joined_point(piece, join, i);
        struct hole *hole = MODEL_ADD(&piece->model, hole);

        hole->tick = tick;
        hole->join = join;
        hole->rank = point->rank;
        hole->u = places[2 * i] = point->u;
        hole->v = places[2 * i + 1] = point->v;
    }
    trade_change(&piece->model, TRADE_FROM_BUILD, "join.pitch", "5", NULL);
    trade_change(&piece->model, TRADE_FROM_BUILD, "join.end", "4", NULL);
    joined_plan(piece);
    for (size_t i = 0; i < count; i++) {
        assert_int_equal(joined_point(piece, join, i)->u, places[2 * i]);
        assert_int_equal(joined_point(piece, join, i)->v, places[2 * i + 1]);
    }
    free(places);
}

static void no_default_moves_a_drilled_hole(void **state)
{
    (void)state;
    check_all(check_drilled);
}

static void check_reached(struct joined *piece, int64_t join)
{
    const struct junction *junction = joined_junction(piece, join);

    if (junction->reachable && junction->room >= 0)
        assert_true(junction->room >= junction->room_needed);
}

static void reachable_heads_have_the_room_that_the_tool_needs(void **state)
{
    (void)state;
    check_all(check_reached);
}

/* The checks above would hold for joins without points. */
static void many_pieces_by_chance_have_points_and_a_way(void **state)
{
    int with_points = 0;
    int with_a_way = 0;

    (void)state;
    for (uint64_t seed = 1; seed <= PIECES; seed++) {
        struct joined piece;
        const struct junction *junction = joined_junction(&piece, make(&piece, seed));

        with_points += junction->point_count > 0;
        with_a_way += junction->point_count > 0 && junction->reachable;
        joined_end(&piece);
    }
    assert_true(3 * with_points > PIECES);
    assert_true(4 * with_a_way > PIECES);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_point_lies_in_the_mating_zone),
        cmocka_unit_test(two_edge_distances_find_every_point_again),
        cmocka_unit_test(no_tip_comes_out_of_the_wood),
        cmocka_unit_test(no_two_points_share_a_place),
        cmocka_unit_test(no_default_moves_a_drilled_hole),
        cmocka_unit_test(reachable_heads_have_the_room_that_the_tool_needs),
        cmocka_unit_test(many_pieces_by_chance_have_points_and_a_way),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
