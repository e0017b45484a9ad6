/* Where nothing else is said, figures are of worked examples that were computed by hand. */
#include "soft.h"

#include "plan/findings.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* ---- rows ---- */

struct centre {
    int64_t batting, cover, lining;
};

static struct centre add_centre(struct soft *soft)
{
    struct centre centre;
    int64_t box = soft_box(soft, "C", 63, 3, 56);

    centre.batting = soft_layer(soft, box, LAYER_BATTING, SHAPE_WRAPPED, SIDE_FRONT, soft->batting);
    soft_endings(soft, centre.batting, ENDING_STOP, ENDING_STOP, ENDING_WRAP, ENDING_STOP);
    centre.cover = soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);
    centre.lining = soft_layer(soft, box, LAYER_LINING, SHAPE_FLAT, SIDE_BACK, soft->lining);
    return centre;
}

static void a_cover_landed_all_round_is_one_loop_with_four_corners(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);
    const struct edge *edge;

    soft_plan(soft);
    edge = soft_edge(soft, centre.cover, 0);
    assert_null(soft_edge(soft, centre.cover, 1));
    assert_int_equal(edge->edge, EDGE_LOOP);
    assert_int_equal(edge->landing_side, SIDE_BACK);
    assert_int_equal(edge->length, IN(238));
    assert_int_equal(edge->corners, 16);
    assert_int_equal(edge->staples, 238 + 16);
    assert_int_equal(edge->temporary, 40);
}

static void batting_and_back_lining_are_loops_of_their_own_pitch(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);

    soft_plan(soft);
    assert_int_equal(soft_staples(soft, centre.batting), 60);
    assert_int_equal(soft_staples(soft, centre.lining), 119);
    assert_int_equal(soft_edge(soft, centre.lining, 0)->landing_side, SIDE_BACK);
    assert_int_equal(soft_temporary(soft, centre.lining), 0);
}

static void a_sleeve_has_rows_at_its_back_round_its_bottom_and_at_its_boxing(void **state)
{
    struct soft *soft = *state;
    int64_t batting;
    int64_t cover = soft_wing(soft, "L", SIDE_RIGHT, &batting);

    soft_plan(soft);
    assert_int_equal(soft_edge(soft, cover, 0)->staples, 57);
    assert_int_equal(soft_edge(soft, cover, 1)->staples, 57);
    assert_int_equal(soft_edge(soft, cover, 2)->staples, 5);
    assert_int_equal(soft_edge(soft, cover, 3)->length, IN(27.25));
    assert_int_equal(soft_edge(soft, cover, 3)->staples, 29 + 8);
    assert_null(soft_edge(soft, cover, 4));
    assert_int_equal(soft_staples(soft, cover), 156);
    assert_int_equal(soft_temporary(soft, cover), 22);
}

static void sleeve_batting_has_no_corners_and_no_boxing(void **state)
{
    struct soft *soft = *state;
    int64_t batting;

    soft_wing(soft, "L", SIDE_RIGHT, &batting);
    soft_plan(soft);
    assert_int_equal(soft_staples(soft, batting), 15 + 15 + 8);
}

static void a_headboard_with_two_wings_takes_905_staples(void **state)
{
    struct soft *soft = *state;
    int64_t batting;

    add_centre(soft);
    soft_wing(soft, "L", SIDE_RIGHT, &batting);
    soft_wing(soft, "R", SIDE_LEFT, &batting);
    soft_plan(soft);
    assert_int_equal(soft->plan->tally.staples, 905);
}

static void seats_and_backs_are_loops(void **state)
{
    struct soft *soft = *state;
    static const struct {
        double width;
        int64_t cover, temporary;
    } seats[] = {{84, 220, 34}, {42, 136, 20}};

    for (int i = 0; i < 2; i++) {
        int64_t box = soft_box(soft, i ? "SB" : "SA", seats[i].width, 18, 0.75);
        int64_t cover = soft_upholster(soft, box, SIDE_TOP, soft->foam3);

        soft_plan(soft);
        assert_int_equal(soft_staples(soft, cover), seats[i].cover);
        assert_int_equal(soft_temporary(soft, cover), seats[i].temporary);
    }
}

/* An apron over the front from u on and round the end: the batting and the cover. */
static int64_t add_apron(struct soft *soft, double width, double u, int64_t *ret_batting)
{
    int64_t box = soft_box(soft, "A", width, 18, 14.25);
    int64_t batting =
        soft_layer(soft, box, LAYER_BATTING, SHAPE_WRAPPED, SIDE_FRONT, soft->batting);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);

    soft_endings(soft, batting, ENDING_STOP, ENDING_WRAP, ENDING_STOP, ENDING_STOP);
    soft_endings(soft, cover, ENDING_SIDE, ENDING_WRAP, ENDING_SIDE, ENDING_SIDE);
    soft_layer_of(soft, batting)->u = IN(u);
    soft_layer_of(soft, cover)->u = IN(u);
    *ret_batting = batting;
    return cover;
}

static void an_apron_has_long_rows_that_go_on_round_the_end(void **state)
{
    struct soft *soft = *state;
    int64_t batting;
    int64_t cover = add_apron(soft, 84, 18, &batting);

    soft_plan(soft);
    assert_int_equal(soft_staples(soft, cover), 85 + 85 + 16 + 16);
    assert_int_equal(soft_temporary(soft, cover), 30);
    assert_int_equal(soft_staples(soft, batting), 44);
}

static void a_whole_apron_is_held_the_same_way(void **state)
{
    struct soft *soft = *state;
    int64_t batting;
    int64_t cover = add_apron(soft, 42, 0, &batting);

    soft_plan(soft);
    assert_int_equal(soft_staples(soft, cover), 61 + 61 + 32);
    assert_int_equal(soft_temporary(soft, cover), 22);
    assert_int_equal(soft_staples(soft, batting), 32);
}

/* The whole banquette of the worked example, with its bare frames of 84 and 42: covers 742, aprons
 * 356, batting 246, to hold 165. */
static void a_banquette_takes_1509_staples(void **state)
{
    struct soft *soft = *state;
    static const struct {
        double width, depth, height;
        enum side_word side;
    } pads[] = {{84, 18, 0.75, SIDE_TOP},
                {42, 18, 0.75, SIDE_TOP},
                {84, 0.5, 18, SIDE_FRONT},
                {57, 0.5, 18, SIDE_FRONT}};
    int64_t covers[6], batting;
    int64_t held = 0, temporary = 0;

    for (int i = 0; i < 4; i++)
        covers[i] =
            soft_upholster(soft, soft_box(soft, "S", pads[i].width, pads[i].depth, pads[i].height),
                           pads[i].side, soft->foam3);
    covers[4] = add_apron(soft, 84, 18, &batting);
    covers[5] = add_apron(soft, 42, 0, &batting);
    soft_plan(soft);
    for (int i = 0; i < 6; i++) {
        held += soft_staples(soft, covers[i]);
        temporary += soft_temporary(soft, covers[i]);
    }
    assert_int_equal(held, 742 + 356);
    assert_int_equal(temporary, 165);
    for (size_t i = 0; i < soft->model.layers.count; i++)
        if (soft->model.layers.at[i].kind == LAYER_BATTING)
            held += soft_staples(soft, soft->model.layers.at[i].key);
    assert_int_equal(held, 742 + 356 + 246);
    assert_int_equal(soft->plan->tally.staples, 1509);
}

static void cords_of_buttons_are_stapled_three_times_each(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "T", 36, 24, 0.75);
    int64_t cover = soft_upholster(soft, box, SIDE_TOP, soft->foam4);
    struct tufting *tufting = MODEL_ADD(&soft->model, tufting);

    tufting->layer = cover;
    tufting->across = 4;
    tufting->down = 2;
    soft_plan(soft);
    assert_int_equal(soft_edge(soft, cover, 0)->staples, 136);
    assert_int_equal(soft_edge(soft, cover, 1)->edge, EDGE_CORDS);
    assert_int_equal(soft_edge(soft, cover, 1)->staples, 66);
    assert_int_equal(soft_temporary(soft, cover), 20);
}

static void a_band_is_two_loops_and_is_basted_once(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "B", 36, 24, 8);
    int64_t batting =
        soft_layer(soft, box, LAYER_BATTING, SHAPE_WRAPPED, SIDE_FRONT, soft->batting);
    int64_t band = soft_layer(soft, box, LAYER_COVER, SHAPE_SEWN, SIDE_FRONT, soft->cloth);

    soft_layer_of(soft, batting)->both = 1;
    soft_layer_of(soft, band)->both = 1;
    soft_endings(soft, batting, ENDING_WRAP, ENDING_WRAP, ENDING_STOP, ENDING_STOP);
    soft_endings(soft, band, ENDING_SEWN, ENDING_SEWN, ENDING_OPEN, ENDING_OPEN);
    soft_plan(soft);
    assert_int_equal(soft_staples(soft, band), 120 + 120);
    assert_int_equal(soft_temporary(soft, band), 20);
    assert_int_equal(soft_staples(soft, batting), 30);
}

static void welt_and_dust_cover_are_loops(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "B", 36, 24, 8);
    int64_t welt = soft_layer(soft, box, LAYER_WELT, SHAPE_RUN, SIDE_TOP, soft->cloth);
    int64_t dust = soft_layer(soft, box, LAYER_DUST_COVER, SHAPE_FLAT, SIDE_BOTTOM, soft->lining);

    soft_plan(soft);
    assert_int_equal(soft_staples(soft, welt), 122);
    assert_int_equal(soft_staples(soft, dust), 80);
}

/* Common practice, no source: blind row at 3 in under card at 3/4 in, bottom at 1 in. */
static void an_outside_back_has_a_blind_row_under_its_card_strip(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "K", 40, 4, 30);
    int64_t back = soft_layer(soft, box, LAYER_OUTSIDE_BACK, SHAPE_FLAT, SIDE_BACK, soft->cloth);

    soft_plan(soft);
    assert_int_equal(soft_edge(soft, back, 0)->staples, 15 + 55);
    assert_int_equal(soft_edge(soft, back, 1)->staples, 41);
}

static void a_curved_top_is_stapled_twice_as_close(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);
    struct box *box = model_find(&soft->model, ENTITY_box, soft_layer_of(soft, centre.cover)->box);

    box->outline = OUTLINE_ARCH;
    soft_plan(soft);
    for (int i = 0; i < 4; i++) {
        const struct edge *edge = soft_edge(soft, centre.cover, i);

        assert_non_null(edge);
        assert_int_equal(edge->pitch, IN(edge->edge == EDGE_TOP ? 0.5 : 1));
    }
}

/* ---- intervals ---- */

static const struct interval *interval_of(const struct soft *soft, const struct edge *edge,
                                          size_t nth)
{
    assert_true(nth < edge->interval_count);
    return &soft->plan->intervals.at[edge->first_interval + nth];
}

static void a_free_edge_is_one_interval_at_the_bench(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);
    const struct edge *edge;

    soft_plan(soft);
    edge = soft_edge(soft, centre.cover, 0);
    assert_int_equal(edge->interval_count, 1);
    assert_int_equal(interval_of(soft, edge, 0)->class, CLASS_FREE);
    assert_int_equal(interval_of(soft, edge, 0)->pass, STAPLED_AT_BENCH);
    assert_int_equal(interval_of(soft, edge, 0)->staples, edge->staples);
}

/* Open wing: a lining under the cover, fixed on three sides, its rear closed in the room: 39. */
static void an_edge_of_its_own_class_is_an_open_row(void **state)
{
    struct soft *soft = *state;
    int64_t batting;
    int64_t cover = soft_wing(soft, "W", SIDE_LEFT, &batting);
    int64_t lining = soft_layer(soft, soft_layer_of(soft, cover)->box, LAYER_LINING, SHAPE_FLAT,
                                SIDE_LEFT, soft->lining);
    const struct edge *rear;

    soft_edge_class(soft, lining, EDGE_LEFT, CLASS_SITE);
    soft_plan(soft);
    rear = soft_edge(soft, lining, 0);
    assert_int_equal(rear->edge, EDGE_LEFT);
    assert_int_equal(rear->staples, 39);
    assert_int_equal(rear->interval_count, 1);
    assert_int_equal(interval_of(soft, rear, 0)->pass, STAPLED_IN_ROOM);
    assert_int_equal(interval_of(soft, soft_edge(soft, lining, 1), 0)->pass, STAPLED_AT_BENCH);
}

static void ends_of_boxing_stay_loose_with_the_flaps_they_hang_out_of(void **state)
{
    struct soft *soft = *state;
    int64_t batting;
    int64_t cover = soft_wing(soft, "L", SIDE_RIGHT, &batting);
    const struct edge *boxing;

    soft_edge_class(soft, cover, EDGE_LEFT, CLASS_SITE);
    soft_plan(soft);
    boxing = soft_edge(soft, cover, 2);
    assert_int_equal(boxing->staples, 5);
    assert_int_equal(boxing->interval_count, 1);
    assert_int_equal(interval_of(soft, boxing, 0)->pass, STAPLED_IN_ROOM);
}

static void add_opening(struct soft *soft, int64_t layer, enum edge_word edge, double begin,
                        double length)
{
    struct opening *opening = MODEL_ADD(&soft->model, opening);

    opening->layer = layer;
    opening->edge = (int64_t)edge;
    opening->begin = IN(begin);
    opening->length = IN(length);
}

static void an_opening_splits_the_loop_and_waits_for_its_join(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);
    const struct edge *edge;

    add_opening(soft, centre.cover, EDGE_RIGHT, 10, 8);
    soft_plan(soft);
    edge = soft_edge(soft, centre.cover, 0);
    assert_int_equal(edge->interval_count, 3);
    assert_int_equal(interval_of(soft, edge, 1)->from, IN(63 + 10));
    assert_int_equal(interval_of(soft, edge, 1)->to, IN(63 + 18));
    assert_int_equal(interval_of(soft, edge, 1)->class, CLASS_OPENING);
    assert_int_equal(interval_of(soft, edge, 1)->pass, STAPLED_AFTER_JOIN);
    assert_int_equal(interval_of(soft, edge, 1)->staples, 8);
    assert_int_equal(edge->staples, 254);
}

/* The loop passes the left edge downwards, from 63 + 56 + 63 on. */
static void an_opening_counts_from_its_edges_lower_end(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);
    const struct edge *edge;

    add_opening(soft, centre.cover, EDGE_LEFT, 10, 8);
    soft_plan(soft);
    edge = soft_edge(soft, centre.cover, 0);
    assert_int_equal(interval_of(soft, edge, 1)->from, IN(182 + 56 - 18));
    assert_int_equal(interval_of(soft, edge, 1)->to, IN(182 + 56 - 10));
}

static void openings_that_overlap_are_one_flap(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);
    const struct edge *edge;

    add_opening(soft, centre.cover, EDGE_RIGHT, 20, 8);
    add_opening(soft, centre.cover, EDGE_RIGHT, 10, 12);
    add_opening(soft, centre.cover, EDGE_RIGHT, 5, 40);
    soft_plan(soft);
    edge = soft_edge(soft, centre.cover, 0);
    assert_int_equal(edge->interval_count, 3);
    assert_int_equal(interval_of(soft, edge, 1)->from, IN(63 + 5));
    assert_int_equal(interval_of(soft, edge, 1)->to, IN(63 + 45));
}

static void an_opening_of_a_site_join_is_closed_in_the_room(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);
    struct join *join = MODEL_ADD(&soft->model, join);
    int64_t key = join->key;

    join->name = "J";
    join->box_a = soft_layer_of(soft, centre.cover)->box;
    join->side_a = SIDE_BACK;
    join->target = TARGET_WALL;
    join->place = PLACE_SITE;
    add_opening(soft, centre.cover, EDGE_TOP, 10, 8);
    soft->model.openings.at[0].join = key;
    soft_plan(soft);
    assert_int_equal(interval_of(soft, soft_edge(soft, centre.cover, 0), 1)->pass, STAPLED_IN_ROOM);
    assert_int_equal(interval_of(soft, soft_edge(soft, centre.cover, 0), 1)->join, key);
}

/* ---- legs: common practice, no source ---- */

/* Common practice, no source: 3/4 in apart and half an inch deep in plywood's edge. 120 / .75; .04
 * + .5 is 9/16. */
static void the_edge_of_a_board_takes_closer_and_longer_staples(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "P", 36, 0.5, 24);
    int64_t cover = soft_layer(soft, box, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT, soft->cloth);

    soft_endings(soft, cover, ENDING_SIDE, ENDING_SIDE, ENDING_SIDE, ENDING_SIDE);
    soft_plan(soft);
    assert_int_equal(soft_edge(soft, cover, EDGE_LEFT)->pitch, IN(0.75));
    assert_int_equal(soft_edge(soft, cover, EDGE_LEFT)->leg, IN(0.5625));
    soft_endings(soft, cover, ENDING_WRAP, ENDING_WRAP, ENDING_WRAP, ENDING_WRAP);
    soft_plan(soft);
    assert_int_equal(soft_edge(soft, cover, 0)->pitch, IN(1));
    assert_int_equal(soft_edge(soft, cover, 0)->leg, IN(0.375));
}

static void legs_hold_cover_batting_lining_by_three_eighths(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);

    soft_plan(soft);
    assert_int_equal(soft_edge(soft, centre.cover, 0)->leg, IN(0.375));
    assert_int_equal(soft_edge(soft, centre.batting, 0)->leg, IN(0.375));
    assert_int_equal(soft_edge(soft, centre.lining, 0)->leg, IN(0.375));
}

static void welt_takes_a_longer_leg(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "B", 36, 24, 8);
    int64_t welt = soft_layer(soft, box, LAYER_WELT, SHAPE_RUN, SIDE_TOP, soft->cloth);

    soft_plan(soft);
    assert_int_equal(soft_edge(soft, welt, 0)->leg, IN(0.5));
}

static void a_build_in_millimetres_takes_legs_of_whole_millimetres(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);

    soft->model.build.units = UNITS_MM;
    soft_plan(soft);
    assert_int_equal(soft_edge(soft, centre.cover, 0)->leg, 10 * LENGTH_MM);
}

static void two_lengths_on_hand_give_the_shorter_that_holds(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);
    static const double lengths[] = {0.5, 0.25, 0.375};

    for (int i = 0; i < 3; i++) {
        struct stock *staples = MODEL_ADD(&soft->model, stock);

        staples->name = i == 0 ? "long" : i == 1 ? "short" : "middling";
        staples->kind = STOCK_STAPLE;
        staples->length = IN(lengths[i]);
    }
    soft_plan(soft);
    assert_int_equal(soft_edge(soft, centre.cover, 0)->leg, IN(0.375));
}

static void legs_come_from_the_workshops_own_staples(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);
    struct stock *staples = MODEL_ADD(&soft->model, stock);

    staples->name = "staples";
    staples->kind = STOCK_STAPLE;
    staples->length = IN(0.5);
    soft_plan(soft);
    assert_int_equal(soft_edge(soft, centre.cover, 0)->leg, IN(0.5));
}

/* A shop that sells many kinds: the one leg that holds is the last of twenty. */
static void the_leg_that_holds_is_found_among_many_kinds_of_staples(void **state)
{
    struct soft *soft = *state;
    struct centre centre = add_centre(soft);

    for (int i = 0; i < 20; i++) {
        struct stock *staple = MODEL_ADD(&soft->model, stock);

        staple->kind = STOCK_STAPLE;
        staple->length = i < 19 ? IN(1) + i : IN(0.375);
    }
    soft_plan(soft);
    assert_int_equal(soft_edge(soft, centre.cover, 0)->leg, IN(0.375));
}

static void add_board(struct soft *soft, int64_t box, double thickness)
{
    struct stock *sheet = MODEL_ADD(&soft->model, stock);
    int64_t key = sheet->key;
    struct facing *facing = MODEL_ADD(&soft->model, facing);

    sheet = model_find(&soft->model, ENTITY_stock, key);
    sheet->name = "sheet";
    sheet->kind = STOCK_SHEET;
    sheet->thickness = IN(thickness);
    facing->box = box;
    facing->side = SIDE_TOP;
    facing->stock = key;
    ((struct box *)model_find(&soft->model, ENTITY_box, box))->main_side = SIDE_TOP;
}

static void a_thin_board_lets_staples_come_through(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "T", 36, 24, 0.25);

    soft_upholster(soft, box, SIDE_TOP, soft->foam2);
    add_board(soft, box, 0.25);
    soft_plan(soft);
    assert_true(soft_findings(soft, FINDING_LANDING_THIN) > 0);
}

static void a_thick_board_holds_them(void **state)
{
    struct soft *soft = *state;
    int64_t box = soft_box(soft, "T", 36, 24, 0.75);

    soft_upholster(soft, box, SIDE_TOP, soft->foam2);
    add_board(soft, box, 0.75);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_LANDING_THIN), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        SOFT_TEST(a_cover_landed_all_round_is_one_loop_with_four_corners),
        SOFT_TEST(batting_and_back_lining_are_loops_of_their_own_pitch),
        SOFT_TEST(a_sleeve_has_rows_at_its_back_round_its_bottom_and_at_its_boxing),
        SOFT_TEST(sleeve_batting_has_no_corners_and_no_boxing),
        SOFT_TEST(a_headboard_with_two_wings_takes_905_staples),
        SOFT_TEST(seats_and_backs_are_loops),
        SOFT_TEST(an_apron_has_long_rows_that_go_on_round_the_end),
        SOFT_TEST(a_whole_apron_is_held_the_same_way),
        SOFT_TEST(a_banquette_takes_1509_staples),
        SOFT_TEST(cords_of_buttons_are_stapled_three_times_each),
        SOFT_TEST(a_band_is_two_loops_and_is_basted_once),
        SOFT_TEST(welt_and_dust_cover_are_loops),
        SOFT_TEST(an_outside_back_has_a_blind_row_under_its_card_strip),
        SOFT_TEST(a_curved_top_is_stapled_twice_as_close),
        SOFT_TEST(a_free_edge_is_one_interval_at_the_bench),
        SOFT_TEST(an_edge_of_its_own_class_is_an_open_row),
        SOFT_TEST(ends_of_boxing_stay_loose_with_the_flaps_they_hang_out_of),
        SOFT_TEST(an_opening_splits_the_loop_and_waits_for_its_join),
        SOFT_TEST(an_opening_counts_from_its_edges_lower_end),
        SOFT_TEST(openings_that_overlap_are_one_flap),
        SOFT_TEST(an_opening_of_a_site_join_is_closed_in_the_room),
        SOFT_TEST(the_edge_of_a_board_takes_closer_and_longer_staples),
        SOFT_TEST(legs_hold_cover_batting_lining_by_three_eighths),
        SOFT_TEST(welt_takes_a_longer_leg),
        SOFT_TEST(a_build_in_millimetres_takes_legs_of_whole_millimetres),
        SOFT_TEST(two_lengths_on_hand_give_the_shorter_that_holds),
        SOFT_TEST(legs_come_from_the_workshops_own_staples),
        SOFT_TEST(the_leg_that_holds_is_found_among_many_kinds_of_staples),
        SOFT_TEST(a_thin_board_lets_staples_come_through),
        SOFT_TEST(a_thick_board_holds_them),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
