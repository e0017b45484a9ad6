/*
 * The rules of the wood, one at a time.
 */
#include "carpenter.h"

#include "plan/findings.h"
#include "plan/rows.h"
#include "plan/screws.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>
#include <stdlib.h>

/* A ladder 3 in deep of 2x3, faced in front with half-inch ply. */
static int64_t faced_ladder(struct carpenter *bench, double width, double height, enum use_word use)
{
    int64_t box = carpenter_box(bench, "C", FRAME_LADDER,
                                (struct vector){IN(width), IN(3), IN(height)}, bench->stick_2x3);

    carpenter_face(bench, box, SIDE_FRONT, bench->sheet_1_2)->use = (int64_t)use;
    return box;
}

/* The same with two facings, one above the other. */
static int64_t twice_faced_ladder(struct carpenter *bench, double width, double height,
                                  enum use_word use)
{
    int64_t box = faced_ladder(bench, width, height, use);
    struct facing *upper;

    bench->model.facings.at[bench->model.facings.count - 1].height = IN(height) / 2;
    upper = carpenter_face(bench, box, SIDE_FRONT, bench->sheet_1_2);
    upper->use = (int64_t)use;
    upper->v = IN(height) / 2;
    return box;
}

/* Common practice, no source: half a pitch. Both rows are 38 in between their corner screws: 6
 * screws 7.6 in apart. */
static void screws_across_a_seam_stand_between_each_other(void **state)
{
    struct carpenter *bench = *state;
    int64_t below[8], above[8];
    size_t low = 0, high = 0;

    twice_faced_ladder(bench, 40, 32, USE_COVERING);
    carpenter_plan(bench);
    for (size_t i = 0; i < bench->plan->screws.count; i++) {
        const struct screw *screw = &bench->plan->screws.at[i];

        if (screw->use != SCREW_PANEL || screw->at.z < IN(15) || screw->at.z >= IN(17))
            continue;
        if (screw->at.z < IN(16))
            below[low++ % 8] = screw->at.x;
        else
            above[high++ % 8] = screw->at.x;
    }
    assert_int_equal(low, 6);
    assert_int_equal(high, 6);
    assert_int_equal(above[0], below[0]);
    assert_int_equal(above[5], below[5]);
    for (size_t i = 1; i < 5; i++)
        assert_in_range(above[i] - below[i], IN(3.8) - IN(0.25), IN(3.8) + IN(0.25));
}

/* No seam, no shift: the rows at both edges have their screws above each other. */
static void screws_along_an_edge_without_a_seam_are_not_set_off(void **state)
{
    struct carpenter *bench = *state;
    int64_t low[8] = {0}, high[8] = {0};
    size_t lows = 0, highs = 0;

    faced_ladder(bench, 40, 16, USE_COVERING);
    carpenter_plan(bench);
    for (size_t i = 0; i < bench->plan->screws.count; i++) {
        const struct screw *screw = &bench->plan->screws.at[i];

        if (screw->use == SCREW_PANEL && screw->at.z < IN(1.5))
            low[lows++ % 8] = screw->at.x;
        if (screw->use == SCREW_PANEL && screw->at.z > IN(14.5))
            high[highs++ % 8] = screw->at.x;
    }
    assert_int_equal(lows, 6);
    assert_int_equal(highs, 6);
    assert_memory_equal(low, high, sizeof low);
}

/* A crate wider than a sheet: its front, top and bottom each have a seam. */
static void a_crate_has_wood_under_every_seam(void **state)
{
    struct carpenter *bench = *state;
    static const enum side_word sides[] = {SIDE_FRONT, SIDE_TOP, SIDE_BOTTOM};

    for (int through = 0; through < THROUGH_COUNT; through++)
        for (int set = 0; set < SET_COUNT; set++) {
            int64_t key = carpenter_box(bench, through ? (set ? "A" : "B") : (set ? "C" : "D"),
                                        FRAME_CRATE, (struct vector){IN(110), IN(20), IN(16)},
                                        set ? bench->stick_2x3 : bench->stick_2x2);

            carpenter_box_of(bench, key)->through = through;
            carpenter_box_of(bench, key)->stick_set = set;
            for (size_t i = 0; i < sizeof sides / sizeof *sides; i++)
                carpenter_face(bench, key, sides[i], bench->sheet_1_2)->use = USE_STRUCTURE;
        }
    carpenter_plan(bench);
    assert_int_equal(bench->plan->panels.count, 4 * 2 * 3);
    assert_int_equal(carpenter_findings(bench, FINDING_SEAM_BEARING), 0);
    assert_int_equal(carpenter_findings(bench, FINDING_SCREWS_MEET), 0);
    assert_int_equal(carpenter_findings(bench, FINDING_SCREWS_NEAR), 0);
    assert_int_equal(carpenter_findings(bench, FINDING_PANEL_SPAN), 0);
}

/* ---- panels ---- */

static void a_facing_larger_than_every_sheet_is_cut_into_equal_strips(void **state)
{
    struct carpenter *bench = *state;

    faced_ladder(bench, 90, 60, USE_COVERING);
    carpenter_plan(bench);
    assert_int_equal(bench->plan->panels.count, 2);
    assert_int_equal(bench->plan->panels.at[0].area.u1, IN(45));
    assert_int_equal(bench->plan->panels.at[1].area.u0, IN(45));
    assert_int_equal(carpenter_findings(bench, FINDING_PANEL_TOO_LARGE), 0);
}

static void a_facing_that_a_rest_on_the_shelf_gives_stays_whole(void **state)
{
    struct carpenter *bench = *state;
    struct leftover *rest = MODEL_ADD(&bench->model, leftover);

    rest->stock = bench->sheet_1_2;
    rest->length = IN(92);
    rest->width = IN(60);
    rest->count = 1;
    faced_ladder(bench, 90, 60, USE_COVERING);
    carpenter_plan(bench);
    assert_int_equal(bench->plan->panels.count, 1);
    assert_int_equal(carpenter_findings(bench, FINDING_PANEL_TOO_LARGE), 0);
}

static void a_facing_that_no_sheet_can_give_is_told(void **state)
{
    struct carpenter *bench = *state;

    for (size_t i = 0; i < bench->model.offers.count; i++) {
        bench->model.offers.at[i].length = IN(3);
        bench->model.offers.at[i].width = IN(3);
    }
    faced_ladder(bench, 90, 60, USE_COVERING);
    carpenter_plan(bench);
    assert_int_equal(bench->plan->panels.count, 1);
    assert_int_equal(carpenter_findings(bench, FINDING_PANEL_TOO_LARGE), 1);
}

static void side_facings_stand_between_front_and_back_and_under_the_top(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = carpenter_box(bench, "A", FRAME_CRATE, (struct vector){IN(40), IN(20), IN(16)},
                                bench->stick_2x2);
    const struct panel *panels;

    carpenter_face(bench, box, SIDE_FRONT, bench->sheet_1_2);
    carpenter_face(bench, box, SIDE_RIGHT, bench->sheet_1_2);
    carpenter_face(bench, box, SIDE_TOP, bench->sheet_3_4);
    carpenter_plan(bench);
    panels = bench->plan->panels.at;
    assert_solid(&panels[0].solid, (struct vector){0, IN(19.5), 0},
                 (struct vector){IN(40), IN(20), IN(15.25)});
    assert_solid(&panels[1].solid, (struct vector){IN(39.5), 0, 0},
                 (struct vector){IN(40), IN(19.5), IN(15.25)});
    assert_solid(&panels[2].solid, (struct vector){0, 0, IN(15.25)},
                 (struct vector){IN(40), IN(20), IN(16)});
}

static void a_loose_facing_lies_outside_and_takes_no_screws(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = carpenter_box(bench, "A", FRAME_CRATE, (struct vector){IN(40), IN(20), IN(16)},
                                bench->stick_2x2);

    carpenter_face(bench, box, SIDE_TOP, bench->sheet_3_4)->loose = 1;
    carpenter_plan(bench);
    assert_solid(&bench->plan->panels.at[0].solid, (struct vector){0, 0, IN(16)},
                 (struct vector){IN(40), IN(20), IN(16.75)});
    assert_int_equal(carpenter_screws(bench, box, SCREW_PANEL), 0);
}

/* ---- supports ---- */

static int supports_of(const struct carpenter *bench)
{
    int count = 0;

    for (size_t i = 0; i < bench->plan->members.count; i++)
        count += bench->plan->members.at[i].kind == MEMBER_SUPPORT;
    return count;
}

/* How far two screws that run the same way are clear of each other, beside each other at some place
 * of their length; INT64_MAX where none is beside the other. */
static double clear_beside(const struct plan *plan, const struct screw *a, const struct screw *b)
{
    const struct screw_kind *of_a = &plan->screw_kinds.at[a->kind];
    const struct screw_kind *of_b = &plan->screw_kinds.at[b->kind];
    double gap = (double)llabs(a->at.y - b->at.y);

    if (gap > (double)(of_a->length + of_b->length))
        return (double)INT64_MAX;
    return hypot((double)(a->at.x - b->at.x), (double)(a->at.z - b->at.z)) -
           (double)(of_a->diameter + of_b->diameter) / 2;
}

static bool run_against(const struct screw *a, const struct screw *b)
{
    return a->use == SCREW_FRAME && b->use == SCREW_FRAME && a->axis == AXIS_Y &&
           b->axis == AXIS_Y && a->sign != b->sign;
}

/* Three eighths between screws are common practice, no source. How many pass nearer than an inch.
 */
static int assert_they_pass(const struct plan *plan)
{
    int pass = 0;

    for (size_t i = 0; i < plan->screws.count; i++)
        for (size_t k = 0; k < i; k++)
            if (run_against(&plan->screws.at[i], &plan->screws.at[k])) {
                double clear = clear_beside(plan, &plan->screws.at[i], &plan->screws.at[k]);

                assert_true(clear >= (double)IN(3 / 8.0));
                pass += clear < (double)IN(1);
            }
    return pass;
}

/* A crate as narrow as an arm: its crosses are shorter than what screws bite from both ends. */
static void screws_of_both_ends_pass_each_other_in_a_short_cross(void **state)
{
    static const enum side_word faces[] = {SIDE_FRONT, SIDE_LEFT, SIDE_RIGHT, SIDE_BACK};
    struct carpenter *bench = *state;
    int64_t box = carpenter_box(bench, "A", FRAME_CRATE, (struct vector){IN(30), IN(6), IN(24)},
                                bench->stick_2x2);

    for (size_t i = 0; i < sizeof faces / sizeof *faces; i++)
        carpenter_face(bench, box, faces[i], bench->sheet_1_2);
    for (double depth = 6; depth <= 10; depth += 0.5) {
        int pass;

        carpenter_box_of(bench, box)->depth = IN(depth);
        carpenter_plan(bench);
        assert_int_equal(carpenter_findings(bench, FINDING_SCREWS_MEET), 0);
        pass = assert_they_pass(bench->plan);
        assert_true(pass > 0 || depth > 7);
    }
}

/* Sheets are sold by a size that they fall short of, by a sixteenth at most: common practice, no
 * source. */
static void a_sheet_spans_by_the_size_it_is_sold_as(void **state)
{
    const struct {
        double sold;
        enum trade span, thinner;
    } rows[] = {{3 / 4.0, TRADE_SPAN_BACK_3_4, TRADE_SPAN_BACK_5_8},
                {5 / 8.0, TRADE_SPAN_BACK_5_8, TRADE_SPAN_BACK_1_2},
                {1 / 2.0, TRADE_SPAN_BACK_1_2, TRADE_SPAN_BACK_3_8},
                {3 / 8.0, TRADE_SPAN_BACK_3_8, TRADE_SPAN_BACK_1_4}};
    int64_t value[TRADE_COUNT];

    (void)state;
    for (int i = 0; i < TRADE_COUNT; i++)
        value[i] = trade_values[i].standard[UNITS_INCH];
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        int64_t thinnest = IN(rows[i].sold) - IN(1 / 16.0);

        assert_int_equal(span_allowed(value, USE_BACK, IN(rows[i].sold)), value[rows[i].span]);
        assert_int_equal(span_allowed(value, USE_BACK, thinnest), value[rows[i].span]);
        assert_int_equal(span_allowed(value, USE_BACK, thinnest - 1), value[rows[i].thinner]);
    }
    assert_int_equal(span_allowed(value, USE_BACK, IN(1 / 8.0)), 0);
}

/* 60 in clear between stiles, half-inch ply that is leaned on spans 20: two uprights leave 19. */
static void uprights_divide_what_a_panel_cannot_span(void **state)
{
    struct carpenter *bench = *state;

    faced_ladder(bench, 63, 48, USE_BACK);
    carpenter_plan(bench);
    assert_int_equal(supports_of(bench), 2);
    assert_int_equal(carpenter_labelled(bench, "C5")->solid.low.x, IN(20.5));
    assert_int_equal(carpenter_labelled(bench, "C6")->solid.low.x, IN(41));
    assert_int_equal(carpenter_findings(bench, FINDING_PANEL_SPAN), 0);
}

static void a_low_frame_needs_no_support(void **state)
{
    struct carpenter *bench = *state;

    faced_ladder(bench, 63, 20, USE_BACK);
    carpenter_plan(bench);
    assert_int_equal(supports_of(bench), 0);
    assert_int_equal(carpenter_findings(bench, FINDING_PANEL_SPAN), 0);
}

static void supports_by_hand_that_stand_too_far_apart_are_told(void **state)
{
    struct carpenter *bench = *state;

    carpenter_box_of(bench, faced_ladder(bench, 63, 48, USE_BACK))->supports = MAKING_HAND;
    carpenter_plan(bench);
    assert_int_equal(supports_of(bench), 0);
    assert_int_equal(carpenter_findings(bench, FINDING_PANEL_SPAN), 1);
}

static void a_level_seam_gets_a_rail(void **state)
{
    struct carpenter *bench = *state;
    const struct plan_member *rail;

    twice_faced_ladder(bench, 63, 56, USE_COVERING);
    carpenter_plan(bench);
    rail = carpenter_labelled(bench, "C5");
    assert_int_equal(rail->axis, AXIS_X);
    assert_int_equal(rail->solid.low.z, IN(27.25));
    assert_int_equal(carpenter_findings(bench, FINDING_SEAM_BEARING), 0);
}

/* Uprights on both sides of a rail stand at least 2 in apart, so that their screws clear. */
static void uprights_above_and_below_a_rail_are_set_off(void **state)
{
    struct carpenter *bench = *state;
    const struct plan *plan;
    int pairs = 0;

    twice_faced_ladder(bench, 63, 80, USE_BACK);
    carpenter_plan(bench);
    plan = bench->plan;
    assert_true(supports_of(bench) > 3);
    for (size_t i = 0; i < plan->members.count; i++)
        for (size_t k = 0; k < i; k++) {
            const struct solid *above = &plan->members.at[i].solid;
            const struct solid *below = &plan->members.at[k].solid;
            bool both = plan->members.at[i].kind == MEMBER_SUPPORT &&
                        plan->members.at[k].kind == MEMBER_SUPPORT &&
                        plan->members.at[i].axis == AXIS_Z && plan->members.at[k].axis == AXIS_Z;

            if (!both || above->low.z <= below->high.z)
                continue;
            assert_true(above->low.x - below->low.x >= IN(2) ||
                        below->low.x - above->low.x >= IN(2));
            pairs++;
        }
    assert_true(pairs > 3);
    assert_int_equal(carpenter_findings(bench, FINDING_SCREWS_MEET), 0);
}

/* ---- frames ---- */

static void rails_run_through_when_they_are_said_to(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = faced_ladder(bench, 40, 20, USE_COVERING);

    carpenter_box_of(bench, box)->through = THROUGH_RAILS;
    carpenter_plan(bench);
    assert_int_equal(carpenter_labelled(bench, "C1")->length, IN(17));
    assert_int_equal(carpenter_labelled(bench, "C3")->length, IN(40));
}

static void a_stick_set_flat_shows_its_wide_side(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = carpenter_box(bench, "C", FRAME_LADDER, (struct vector){IN(40), IN(1.5), IN(20)},
                                bench->stick_2x3);

    carpenter_box_of(bench, box)->stick_set = SET_FLAT;
    carpenter_plan(bench);
    assert_solid(&carpenter_labelled(bench, "C1")->solid, (struct vector){0, 0, 0},
                 (struct vector){IN(2.5), IN(1.5), IN(20)});
}

static void a_member_by_hand_reaches_what_it_runs_against(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = faced_ladder(bench, 40, 20, USE_COVERING);

    carpenter_box_of(bench, box)->supports = MAKING_HAND;
    carpenter_member(bench, box, MEMBER_UPRIGHT, AXIS_Z, (struct vector){IN(20), 0, IN(10)}, 0);
    carpenter_member(bench, box, MEMBER_RAIL, AXIS_X, (struct vector){0, 0, IN(10)}, 0)->name =
        "shelf";
    carpenter_plan(bench);
    assert_int_equal(carpenter_labelled(bench, "shelf")->length, IN(37));
    assert_int_equal(carpenter_labelled(bench, "C6")->solid.low.z, IN(11.5));
    assert_int_equal(carpenter_labelled(bench, "C6")->length, IN(7));
}

static void a_frame_without_a_stick_is_told(void **state)
{
    struct carpenter *bench = *state;

    carpenter_box(bench, "C", FRAME_LADDER, (struct vector){IN(40), IN(3), IN(20)}, 0);
    carpenter_plan(bench);
    assert_int_equal(bench->plan->members.count, 0);
    assert_int_equal(carpenter_findings(bench, FINDING_BOX_WITHOUT_STICK), 1);
}

static void a_box_with_too_little_room_for_its_sticks_is_told(void **state)
{
    struct carpenter *bench = *state;

    carpenter_box(bench, "C", FRAME_LADDER, (struct vector){IN(40), IN(2), IN(20)},
                  bench->stick_2x3);
    carpenter_plan(bench);
    assert_int_equal(bench->plan->members.count, 0);
    assert_int_equal(carpenter_findings(bench, FINDING_BOX_TOO_SMALL), 1);
}

/* 38 mm through and 38 mm of bite in end grain: 76, so 80; 12 mm of ply and 18 of bite: 30. */
static void metric_boxes_take_metric_screws(void **state)
{
    struct carpenter *bench = *state;
    int64_t stick = carpenter_stock(bench, "38x63", STOCK_STICK, MM(38), MM(63));
    int64_t sheet = carpenter_stock(bench, "12 mm", STOCK_SHEET, MM(12), 0);
    int64_t box =
        carpenter_box(bench, "C", FRAME_LADDER, (struct vector){MM(900), MM(75), MM(500)}, stick);

    bench->model.build.units = UNITS_MM;
    for (size_t i = bench->model.stocks.count; i-- > 0;)
        if (bench->model.stocks.at[i].kind == STOCK_SCREW)
            model_remove(&bench->model, ENTITY_stock, bench->model.stocks.at[i].key);
    carpenter_face(bench, box, SIDE_FRONT, sheet);
    carpenter_plan(bench);
    assert_true(carpenter_screws(bench, box, SCREW_FRAME) > 0);
    assert_screws_called(bench, SCREW_FRAME, "4 x 80 mm");
    assert_screws_called(bench, SCREW_PANEL, "4 x 30 mm");
    assert_int_equal(carpenter_findings(bench, FINDING_SCREW_NOT_IN_STOCK), 2);
}

/* ---- rows ---- */

/* R3 of the worked examples: n = max(2, ceil((L - 2e)/p) + 1). */
static void a_row_has_the_count_of_the_run_formula(void **state)
{
    static const struct {
        double length, pitch;
        int64_t count;
    } rows[] = {{63, 8, 9}, {48, 8, 7}, {48, 12, 5}, {31.5, 8, 5},   {56, 8, 8},
                {36, 6, 7}, {23, 6, 5}, {84, 6, 15}, {14.25, 12, 3}, {2, 6, 2}};

    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        assert_int_equal(row_count(IN(rows[i].length), IN(1), IN(rows[i].pitch)), rows[i].count);
}

/* As few as the least of the trade value panel.edge.pitch.face, 20 mm. */
static void a_pitch_on_the_way_to_another_is_no_row_of_a_thousand_screws(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = carpenter_box(bench, "C", FRAME_LADDER, (struct vector){IN(36), IN(3), IN(20)},
                                bench->stick_2x3);
    int64_t facing = carpenter_face(bench, box, SIDE_FRONT, bench->sheet_1_2)->key;
    int64_t screws;

    bench->model.facings.at[0].pitch = MM(20);
    carpenter_plan(bench);
    screws = carpenter_panel_screws(bench, facing);
    bench->model.facings.at[0].pitch = MM(1);
    carpenter_plan(bench);
    assert_true(screws > 100);
    assert_int_equal(carpenter_panel_screws(bench, facing), screws);
}

/* What is typed on the way to a strip of 6 in: of the sliver that lies on a rail and the ends of
 * two uprights, 36 in long, the rail takes ceil(34 / 8) + 1 screws and the uprights none. */
static void a_panel_narrower_than_a_screw_stands_off_its_edge_has_one_row(void **state)
{
    struct carpenter *bench = *state;
    int64_t box = carpenter_box(bench, "C", FRAME_LADDER, (struct vector){IN(36), IN(3), IN(20)},
                                bench->stick_2x3);
    int64_t facing = carpenter_face(bench, box, SIDE_FRONT, bench->sheet_1_2)->key;
    const int64_t heights[] = {1, MM(1), IN(0.25)};

    for (size_t i = 0; i < sizeof heights / sizeof *heights; i++) {
        bench->model.facings.at[0].height = heights[i];
        carpenter_plan(bench);
        assert_int_equal(carpenter_panel_screws(bench, facing), 6);
    }
    bench->model.facings.at[0].height = IN(6);
    carpenter_plan(bench);
    assert_true(carpenter_panel_screws(bench, facing) > 6);
}

static void a_row_is_even_from_end_to_end(void **state)
{
    static const struct row row = {.from = 0, .to = IN(56), .end = IN(1), .count = 8};

    (void)state;
    assert_int_equal(row_place(&row, 0), IN(1));
    assert_int_equal(row_place(&row, 7), IN(55));
    for (int64_t i = 1; i < 8; i++)
        assert_in_range(row_place(&row, i) - row_place(&row, i - 1), IN(54) / 7 - 1,
                        IN(54) / 7 + 1);
}

/* ---- the choice of a screw: lengths sold are 1-1/4 and 3 in ---- */

static struct screw_choice choose(struct carpenter *bench, struct screw_need need)
{
    struct plan plan = {.facts = &bench->model};
    struct planning planning = {&bench->model, &plan, &bench->made, NULL, plan.value, NULL};

    trade_resolve(&bench->model, plan.value);
    bench->made.escape = &bench->escape;
    if (setjmp(bench->escape))
        fail_msg("memory is out");
    return screw_choose(&planning, &need);
}

static void the_shortest_length_with_the_wanted_bite_is_chosen(void **state)
{
    struct carpenter *bench = *state;
    struct screw_choice choice;

    carpenter_screw(bench, 8, IN(2));
    choice = choose(bench, (struct screw_need){.gauge = 8, .passed = IN(1), .receiving = IN(4)});
    assert_int_equal(choice.fit, SCREW_FIT_GOOD);
    assert_int_equal(choice.bite, IN(1));
    assert_int_equal(choice.need, IN(2));
    assert_int_equal(choice.limit, IN(4.875));
}

static void the_least_bite_does_where_the_wanted_one_would_come_through(void **state)
{
    struct screw_choice choice =
        choose(*state, (struct screw_need){.gauge = 8, .passed = IN(0.5), .receiving = IN(1.5)});

    assert_int_equal(choice.fit, SCREW_FIT_GOOD);
    assert_int_equal(choice.bite, IN(0.75));
}

/* The ottoman's top from below: 1-1/2 and 1/2 of bite in 3/4, limit 2-1/8. */
static void a_short_bite_is_taken_and_told(void **state)
{
    struct carpenter *bench = *state;
    struct screw_choice choice;

    carpenter_screw(bench, 8, IN(2));
    choice =
        choose(bench, (struct screw_need){.gauge = 8, .passed = IN(1.5), .receiving = IN(0.75)});
    assert_int_equal(choice.fit, SCREW_FIT_SHORT);
    assert_int_equal(choice.bite, IN(0.5));
    assert_int_equal(choice.limit, IN(2.125));
}

static void no_screw_is_chosen_that_comes_through(void **state)
{
    struct screw_choice choice =
        choose(*state, (struct screw_need){.gauge = 8, .passed = IN(1.5), .receiving = IN(1.5)});

    assert_int_equal(choice.fit, SCREW_FIT_NONE);
    assert_true(choice.kind == PLAN_NONE);
}

static void a_gauge_that_is_not_in_stock_takes_the_usual_lengths(void **state)
{
    struct screw_choice choice =
        choose(*state, (struct screw_need){.gauge = 10, .passed = IN(2.125), .receiving = IN(2.5)});

    assert_int_equal(choice.fit, SCREW_FIT_GOOD);
    assert_int_equal(choice.bite, IN(1.375));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WOOD_TEST(screws_along_an_edge_without_a_seam_are_not_set_off),
        WOOD_TEST(a_crate_has_wood_under_every_seam),
        WOOD_TEST(screws_across_a_seam_stand_between_each_other),
        WOOD_TEST(a_facing_larger_than_every_sheet_is_cut_into_equal_strips),
        WOOD_TEST(a_facing_that_a_rest_on_the_shelf_gives_stays_whole),
        WOOD_TEST(a_facing_that_no_sheet_can_give_is_told),
        WOOD_TEST(side_facings_stand_between_front_and_back_and_under_the_top),
        WOOD_TEST(a_loose_facing_lies_outside_and_takes_no_screws),
        WOOD_TEST(screws_of_both_ends_pass_each_other_in_a_short_cross),
        cmocka_unit_test(a_sheet_spans_by_the_size_it_is_sold_as),
        WOOD_TEST(uprights_divide_what_a_panel_cannot_span),
        WOOD_TEST(a_low_frame_needs_no_support),
        WOOD_TEST(supports_by_hand_that_stand_too_far_apart_are_told),
        WOOD_TEST(a_level_seam_gets_a_rail),
        WOOD_TEST(uprights_above_and_below_a_rail_are_set_off),
        WOOD_TEST(rails_run_through_when_they_are_said_to),
        WOOD_TEST(a_stick_set_flat_shows_its_wide_side),
        WOOD_TEST(a_member_by_hand_reaches_what_it_runs_against),
        WOOD_TEST(a_frame_without_a_stick_is_told),
        WOOD_TEST(a_box_with_too_little_room_for_its_sticks_is_told),
        WOOD_TEST(metric_boxes_take_metric_screws),
        WOOD_TEST(a_row_has_the_count_of_the_run_formula),
        WOOD_TEST(a_panel_narrower_than_a_screw_stands_off_its_edge_has_one_row),
        WOOD_TEST(a_pitch_on_the_way_to_another_is_no_row_of_a_thousand_screws),
        WOOD_TEST(a_row_is_even_from_end_to_end),
        WOOD_TEST(the_shortest_length_with_the_wanted_bite_is_chosen),
        WOOD_TEST(the_least_bite_does_where_the_wanted_one_would_come_through),
        WOOD_TEST(a_short_bite_is_taken_and_told),
        WOOD_TEST(no_screw_is_chosen_that_comes_through),
        WOOD_TEST(a_gauge_that_is_not_in_stock_takes_the_usual_lengths),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
