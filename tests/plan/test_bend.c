/*
 * Panels that are bent over an arch. Radii are those of a circle through both ends and the top, by
 * hand: (w^2 / 4 + r^2) / 2 r; least radii are the table of the American Plywood Association, as
 * printed in Concrete Construction: 1/4 in 24 across its grain and 60 along it, 1/2 in 72 and 144,
 * 3/4 in 144 and 240.
 */
#include "soft.h"

#include "model/trade.h"
#include "plan/cure.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/steps.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include <math.h>

/* A crate 16 in deep with a sheet bent over its top; sheets come 48 x 96. The key of the sheet. */
static int64_t add_arch(struct soft *soft, double width, double rise, double thickness)
{
    int64_t key = soft_box(soft, "H", width, 16, 30);
    struct box *box = model_find(&soft->model, ENTITY_box, key);
    int64_t stick = soft_wood(soft, STOCK_STICK, 1.5, 2.5);
    int64_t sheet = soft_wood(soft, STOCK_SHEET, thickness, 0);
    struct facing *top = MODEL_ADD(&soft->model, facing);

    box->stick = stick;
    box->outline = OUTLINE_ARCH;
    box->rise = IN(rise);
    box->frame = FRAME_CRATE;
    top->box = key;
    top->side = SIDE_TOP;
    top->stock = sheet;
    return sheet;
}

static const struct part *top_part(const struct soft *soft)
{
    for (size_t i = 0; i < soft->plan->parts.count; i++) {
        const struct part *part = &soft->plan->parts.at[i];

        if (part->panel != PLAN_NONE && soft->plan->panels.at[part->panel].side == SIDE_TOP)
            return part;
    }
    fail_msg("no panel is cut");
    return NULL;
}

/* 48 wide, 12 high: a radius of 30. */
static void a_sheet_too_thick_for_its_bend_is_told(void **state)
{
    struct soft *soft = *state;
    const struct finding *finding;

    add_arch(soft, 48, 12, 0.5);
    soft_plan(soft);
    finding = soft_finding(soft, FINDING_PANEL_BENT);
    assert_non_null(finding);
    assert_string_equal(finding->arguments[0].text, "top");
    assert_int_equal(finding->arguments[1].value, IN(0.5));
    assert_in_range(finding->arguments[2].value, IN(30) - 1, IN(30) + 1);
    assert_int_equal(finding->arguments[3].value, IN(72));
    assert_int_equal(finding->cure_count, 0);
    assert_true(soft_says(soft, STEP_PANEL, "first kerf its inside"));
}

/* 40 wide, 8 high: a radius of 29, and 2 x 29 asin(20 / 29) = 44.12 along it. Bent across its
 * grain, that lies along the crate's 16 in of depth. */
static void a_sheet_that_bends_across_its_grain_is_cut_so(void **state)
{
    struct soft *soft = *state;

    add_arch(soft, 40, 8, 0.25);
    soft_plan(soft);
    assert_null(soft_finding(soft, FINDING_PANEL_BENT));
    assert_null(soft_finding(soft, FINDING_PANEL_BENT_ALONG));
    assert_int_equal(top_part(soft)->length, IN(16));
    assert_in_range(top_part(soft)->width, IN(44.1), IN(44.14));
    assert_false(top_part(soft)->may_turn);
    assert_true(soft_says(soft, STEP_PANEL, "its grain across the bend"));
}

static size_t top_panels(const struct soft *soft)
{
    size_t count = 0;

    for (size_t i = 0; i < soft->plan->panels.count; i++)
        count += soft->plan->panels.at[i].side == SIDE_TOP;
    return count;
}

/* Wood from front to back whose middle lies under a place, over the top rail. */
static bool has_cross_at(const struct soft *soft, double inches)
{
    for (size_t i = 0; i < soft->plan->members.count; i++) {
        const struct plan_member *member = &soft->plan->members.at[i];

        if (member->kind == MEMBER_CROSS && member->solid.low.z > IN(20) &&
            (member->solid.low.x + member->solid.high.x) / 2 == IN(inches))
            return true;
    }
    return false;
}

/* 48 wide, 12 high: 2 x 30 asin(24 / 30) = 55.64 along it, and no sheet is as wide. Two halves are
 * cut, and meet on a cross in the middle. */
static void a_sheet_that_is_too_narrow_to_bend_across_its_grain_is_divided(void **state)
{
    struct soft *soft = *state;

    add_arch(soft, 48, 12, 0.25);
    soft_plan(soft);
    assert_null(soft_finding(soft, FINDING_PANEL_BENT_ALONG));
    assert_null(soft_finding(soft, FINDING_PANEL_BENT));
    assert_int_equal(top_panels(soft), 2);
    assert_int_equal(top_part(soft)->length, IN(16));
    assert_in_range(top_part(soft)->width, IN(27.81), IN(27.83));
    assert_false(top_part(soft)->may_turn);
    assert_true(has_cross_at(soft, 24));
}

/* Strips of 4 in: a dozen of them would not do. */
static void strips_that_are_too_narrow_however_it_is_divided_are_told(void **state)
{
    struct soft *soft = *state;
    const struct finding *finding;

    struct offer *offer;
    int64_t sheet = add_arch(soft, 48, 12, 0.25);

    offer = MODEL_ADD(&soft->model, offer);
    offer->stock = sheet;
    offer->length = IN(96);
    offer->width = IN(4);
    soft_plan(soft);
    finding = soft_finding(soft, FINDING_PANEL_BENT_ALONG);
    assert_non_null(finding);
    assert_int_equal(finding->arguments[3].value, IN(60));
    assert_null(soft_finding(soft, FINDING_PANEL_BENT));
}

/* ---- points ---- */

static void add_point(struct soft *soft, double u, double v)
{
    struct outline_point *point = MODEL_ADD(&soft->model, outline_point);

    point->box = soft->model.boxes.at[0].key;
    point->rank = (int64_t)soft->model.outline_points.count;
    point->u = IN(u);
    point->v = IN(v);
}

/* And the two corners at the bottom. */
static void close_points(struct soft *soft)
{
    add_point(soft, 48, 0);
    add_point(soft, 0, 0);
    soft->model.boxes.at[0].outline = OUTLINE_POINTS;
}

/* The arch of 48 by 12, its circle of 30 round (24, 0), by points 13.3 degrees from each other. */
static void points_on_a_circle_are_bent_to_its_radius(void **state)
{
    struct soft *soft = *state;
    const struct finding *finding;

    add_arch(soft, 48, 12, 0.5);
    for (int i = 0; i <= 8; i++) {
        double angle = asin(0.8) * (i - 4) / 4;
        add_point(soft, 24 + 30 * sin(angle), 30 * cos(angle));
    }
    close_points(soft);
    soft_plan(soft);
    finding = soft_finding(soft, FINDING_PANEL_BENT);
    assert_non_null(finding);
    assert_in_range(finding->arguments[2].value, IN(29.98), IN(30.02));
    assert_int_equal(finding->arguments[3].value, IN(72));
    assert_int_equal(top_panels(soft), 1);
}

/* Up 10 over 24 and down again: 26 each way, for 10, 24 and 26 make a right angle. No sheet goes
 * over that, and none is bent. */
static void a_corner_of_points_ends_a_panel(void **state)
{
    struct soft *soft = *state;

    add_arch(soft, 48, 0, 0.75);
    add_point(soft, 0, 20);
    add_point(soft, 24, 30);
    add_point(soft, 48, 20);
    close_points(soft);
    soft_plan(soft);
    assert_null(soft_finding(soft, FINDING_PANEL_BENT));
    assert_null(soft_finding(soft, FINDING_PANEL_BENT_ALONG));
    assert_int_equal(top_panels(soft), 2);
    assert_in_range(top_part(soft)->length, IN(26) - 2, IN(26) + 2);
    assert_true(has_cross_at(soft, 24));
    assert_true(soft_says(soft, STEP_PANEL, "half the angle"));
    assert_false(soft_says(soft, STEP_PANEL, "Bend it"));
}

/* Down 1 in 12 through every point. */
static void points_in_one_line_bend_nothing(void **state)
{
    struct soft *soft = *state;

    add_arch(soft, 48, 0, 0.75);
    for (int i = 0; i <= 8; i++)
        add_point(soft, 6 * i, 30 - 0.5 * i);
    close_points(soft);
    soft_plan(soft);
    assert_null(soft_finding(soft, FINDING_PANEL_BENT));
    assert_int_equal(top_panels(soft), 1);
}

/* 60 wide, 3 high: a radius of 151.5. */
static void a_flat_arch_lets_the_sheet_lie_either_way(void **state)
{
    struct soft *soft = *state;

    add_arch(soft, 60, 3, 0.5);
    soft_plan(soft);
    assert_null(soft_finding(soft, FINDING_PANEL_BENT));
    assert_null(soft_finding(soft, FINDING_PANEL_BENT_ALONG));
    assert_true(top_part(soft)->may_turn);
    assert_in_range(top_part(soft)->length, IN(60), IN(61));
}

/* A radius of 29, and bending ply that wants no more than 10; or stiff stuff that wants 30. */
static void the_least_radius_is_the_makers_own(void **state)
{
    struct soft *soft = *state;

    add_arch(soft, 40, 8, 0.25);
    assert_int_equal(trade_change(&soft->model, TRADE_FROM_BUILD, "bend.along.1_4", "10 in", NULL),
                     FAULT_NONE);
    soft_plan(soft);
    assert_true(top_part(soft)->may_turn);
    assert_int_equal(trade_change(&soft->model, TRADE_FROM_BUILD, "bend.across.1_4", "30 in", NULL),
                     FAULT_NONE);
    soft_plan(soft);
    assert_non_null(soft_finding(soft, FINDING_PANEL_BENT));
    assert_int_equal(soft_finding(soft, FINDING_PANEL_BENT)->arguments[3].value, IN(30));
}

/* Shoulders are quarter rounds of their rise. */
static void shoulders_are_bent_to_their_own_radius(void **state)
{
    struct soft *soft = *state;

    add_arch(soft, 48, 8, 0.25);
    soft->model.boxes.at[0].outline = OUTLINE_SHOULDER;
    soft_plan(soft);
    assert_non_null(soft_finding(soft, FINDING_PANEL_BENT));
    assert_int_equal(soft_finding(soft, FINDING_PANEL_BENT)->arguments[2].value, IN(8));
    assert_int_equal(soft_finding(soft, FINDING_PANEL_BENT)->arguments[3].value, IN(24));
}

static void another_sheet_that_bends_is_offered(void **state)
{
    struct soft *soft = *state;
    const struct finding *finding;
    int64_t thin;

    add_arch(soft, 40, 8, 0.5);
    thin = soft_wood(soft, STOCK_SHEET, 0.25, 0);
    soft_wood(soft, STOCK_SHEET, 0.125, 0);
    soft_plan(soft);
    finding = soft_finding(soft, FINDING_PANEL_BENT);
    assert_non_null(finding);
    assert_int_equal(finding->cure_count, 1);
    assert_int_equal(cure_apply(&soft->model, &finding->cures[0], NULL), FAULT_NONE);
    assert_int_equal(soft->model.facings.at[0].stock, thin);
    soft_plan(soft);
    assert_null(soft_finding(soft, FINDING_PANEL_BENT));
}

static void what_lies_flat_is_bent_nowhere(void **state)
{
    struct soft *soft = *state;

    add_arch(soft, 48, 12, 0.75);
    soft->model.boxes.at[0].outline = OUTLINE_RECTANGLE;
    soft_plan(soft);
    assert_null(soft_finding(soft, FINDING_PANEL_BENT));
    assert_null(soft_finding(soft, FINDING_PANEL_BENT_ALONG));
    soft->model.boxes.at[0].outline = OUTLINE_ARCH;
    soft->model.facings.at[0].side = SIDE_FRONT;
    soft_plan(soft);
    assert_null(soft_finding(soft, FINDING_PANEL_BENT));
    assert_null(soft_finding(soft, FINDING_PANEL_BENT_ALONG));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        SOFT_TEST(a_sheet_too_thick_for_its_bend_is_told),
        SOFT_TEST(a_sheet_that_bends_across_its_grain_is_cut_so),
        SOFT_TEST(a_sheet_that_is_too_narrow_to_bend_across_its_grain_is_divided),
        SOFT_TEST(strips_that_are_too_narrow_however_it_is_divided_are_told),
        SOFT_TEST(points_on_a_circle_are_bent_to_its_radius),
        SOFT_TEST(a_corner_of_points_ends_a_panel),
        SOFT_TEST(points_in_one_line_bend_nothing),
        SOFT_TEST(a_flat_arch_lets_the_sheet_lie_either_way),
        SOFT_TEST(the_least_radius_is_the_makers_own),
        SOFT_TEST(shoulders_are_bent_to_their_own_radius),
        SOFT_TEST(another_sheet_that_bends_is_offered),
        SOFT_TEST(what_lies_flat_is_bent_nowhere),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
