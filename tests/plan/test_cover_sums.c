/* The sums of covers, by themselves: widths, slabs, welt, buttons, staples. */
#include "../base/inch.h"
#include "plan/cover_sums.h"

#include "base/quantity.h"
#include "dice.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>

/* ---- widths: trade and consumer articles on curtains, which share the ceiling ---- */

struct example {
    double cut, usable;
    int widths;
    const char *source;
};

static void widths_agree_with_published_examples(void **state)
{
    static const struct example examples[] = {
        {63 * 3, 54, 4, "drpinc.net, measuring for draperies: 3.5 is 4"},
        {65 * 2.25, 54, 3, "homesteady.com how-7849834: 2.708 is 3"},
        {84 * 2.5 + 15, 54, 5, "ehow.co.uk how_6326063: 4.17 is 5"},
        {70 * 2, 54, 3, "living.thebump.com, drapery yardage: 3"},
    };

    (void)state;
    for (size_t i = 0; i < sizeof examples / sizeof *examples; i++) {
        const struct example *example = &examples[i];
        int widths = widths_least(IN(example->cut), IN(example->usable), 0);

        if (widths != example->widths)
            fail_msg("%s: %d", example->source, widths);
    }
}

static void drops_add_up_as_published(void **state)
{
    (void)state;
    /* drpinc.net: 4 widths of 114 in are 456 in */
    assert_int_equal(widths_least(IN(189), IN(54), 0) * 114, 456);
    /* homesteady.com how-7849834: 3 widths of 80 + 16 in are 8 yd */
    assert_int_equal(widths_least(IN(146.25), IN(54), 0) * (80 + 16), 8 * 36);
    /* ehow.co.uk how_6326063: 5 widths of 78 + 10 in are 440 in */
    assert_int_equal(widths_least(IN(225), IN(54), 0) * (78 + 10), 440);
}

static void a_piece_as_wide_as_the_cloth_has_no_seam(void **state)
{
    struct widths widths = widths_split(IN(54), IN(54), IN(0.5), IN(4), 0);

    (void)state;
    assert_int_equal(widths.count, 1);
    assert_int_equal(widths.centre, IN(54));
    assert_int_equal(widths.side, 0);
    assert_int_equal(widths.seam, 0);
}

/* Worked example, computed by hand: a headboard of 63 in. */
static void two_widths_are_a_centre_and_two_sides_from_one_drop(void **state)
{
    struct widths widths = widths_split(IN(80.5), IN(54), IN(0.5), IN(4), 0);

    (void)state;
    assert_int_equal(widths.count, 2);
    assert_int_equal(widths.centre, IN(54));
    assert_int_equal(widths.side, IN(14.25));
    assert_int_equal(widths.seam, IN(26.5));
}

static void narrow_sides_are_widened_from_the_centre(void **state)
{
    struct widths widths = widths_split(IN(55), IN(54), IN(0.5), IN(4), 0);

    (void)state;
    assert_int_equal(widths.side, IN(4));
    assert_int_equal(widths.centre, IN(49)); /* 49 + 2 x 4 - 4 x 1/2 = 55 */
    assert_int_equal(widths.seam, IN(24));
}

static void matched_seams_leave_a_centre_of_whole_repeats(void **state)
{
    struct widths widths = widths_split(IN(80.5), IN(54), IN(0.5), IN(4), IN(12));

    (void)state;
    assert_int_equal((widths.centre - IN(1)) % IN(12), 0);
    assert_int_equal(widths.centre, IN(49));
    assert_int_equal(widths.side, IN(16.75)); /* 49 + 2 x 16.75 - 2 = 80.5 */
}

static int64_t sewn_width(const struct widths *widths, int64_t allowance)
{
    int seams = widths->side > 0 ? 2 + 2 * widths->inner : 0;

    return widths->centre + 2 * widths->inner * widths->full + 2 * widths->side -
           2 * allowance * seams;
}

static void widths_sew_up_to_the_cut_width(void **state)
{
    struct dice dice = {7};

    (void)state;
    for (int i = 0; i < 5000; i++) {
        int64_t cut = dice_between(&dice, 1, IN(400));
        int64_t usable = dice_between(&dice, IN(27), IN(118));
        int64_t repeat = dice_between(&dice, 0, 1) ? dice_between(&dice, IN(1), IN(27)) : 0;
        struct widths widths = widths_split(cut, usable, IN(0.5), IN(4), repeat);
        int64_t over = sewn_width(&widths, IN(0.5)) - cut;

        assert_in_range(over, 0, 1); /* half a count for each of two equal sides */
        assert_true(widths.centre <= usable && widths.side <= usable);
        assert_true(widths.side == 0 || widths.side >= IN(4));
    }
}

static void a_wider_cloth_never_needs_more_widths(void **state)
{
    struct dice dice = {11};

    (void)state;
    for (int i = 0; i < 5000; i++) {
        int64_t cut = dice_between(&dice, 1, IN(400));
        int64_t usable = dice_between(&dice, IN(27), IN(100));
        int64_t wider = usable + dice_between(&dice, 0, IN(30));

        assert_true(widths_split(cut, wider, IN(0.5), IN(4), 0).count <=
                    widths_split(cut, usable, IN(0.5), IN(4), 0).count);
        assert_true(widths_least(cut, wider, IN(0.5)) <= widths_least(cut, usable, IN(0.5)));
    }
}

static void a_split_takes_no_more_than_one_width_over_the_least(void **state)
{
    struct dice dice = {13};

    (void)state;
    for (int i = 0; i < 5000; i++) {
        int64_t cut = dice_between(&dice, 1, IN(400));
        int64_t usable = dice_between(&dice, IN(27), IN(118));
        int least = widths_least(cut, usable, IN(0.5));
        int count = widths_split(cut, usable, IN(0.5), IN(4), 0).count;

        assert_in_range(count, least, least + 1);
    }
}

/* ---- slabs ---- */

/* Worked example, computed by hand: 63 x 44 from 24 x 72 is 63 x 24 and 63 x 20. */
static void foam_is_laid_in_the_fewest_slabs(void **state)
{
    struct slabs slabs = slabs_cover(IN(63), IN(44), IN(72), IN(24));

    (void)state;
    assert_int_equal(slabs.columns, 1);
    assert_int_equal(slabs.rows, 2);
    assert_int_equal(slabs.up, IN(24));
}

static void a_slab_may_stand_upright(void **state)
{
    struct slabs slabs = slabs_cover(IN(20), IN(70), IN(72), IN(24));

    (void)state;
    assert_int_equal(slabs.columns * slabs.rows, 1);
    assert_int_equal(slabs.up, IN(72));
}

/* ---- welt ---- */

/* Strip widths as the trade cuts them: common practice, no source; 5/32 also
 * upholsteryresource.com node 103. */
static void welt_strips_are_pi_cords_and_two_seams_wide(void **state)
{
    static const struct {
        double cord, strip;
    } inch[] = {{5 / 32.0, 1.5}, {0.25, 1.875}, {0.375, 2.25}, {0.5, 2.625}};
    static const int metric[][2] = {{4, 39}, {6, 45}, {10, 58}, {12, 64}};

    (void)state;
    for (size_t i = 0; i < sizeof inch / sizeof *inch; i++)
        assert_int_equal(welt_strip(IN(inch[i].cord), IN(0.5), LENGTH_INCH / 8, 0),
                         IN(inch[i].strip));
    for (size_t i = 0; i < sizeof metric / sizeof *metric; i++)
        assert_int_equal(welt_strip(metric[i][0] * LENGTH_MM, 13 * LENGTH_MM, LENGTH_MM, 0),
                         metric[i][1] * LENGTH_MM);
}

/* forum.upholster.com topic 10184: 950 in of 54 in cloth are 18 strips, 27 in of roll at 1-1/2. */
static void welt_length_is_cut_from_whole_strips(void **state)
{
    (void)state;
    assert_int_equal(welt_strips(IN(950), IN(54)), 18);
    assert_int_equal(welt_strips(IN(950), IN(54)) * IN(1.5), IN(27));
}

/* ---- tufting: worked example, computed by hand ---- */

static void diamonds_and_squares_count_their_buttons(void **state)
{
    (void)state;
    assert_int_equal(tuft_buttons(4, 2, true), 22);
    assert_int_equal(tuft_buttons(4, 2, false), 15);
    assert_int_equal(tuft_buttons(1, 1, true), 4);
}

/* ---- staples ---- */

static void open_rows_have_a_staple_at_both_ends(void **state)
{
    (void)state;
    assert_int_equal(staples_open(IN(56), IN(1)), 57);
    assert_int_equal(staples_open(IN(56), IN(1.5)), 39);
    assert_int_equal(staples_loop(IN(238), IN(4)), 60);
    assert_int_equal(staples_loop(IN(238), IN(2)), 119);
    assert_int_equal(staples_open(0, IN(1)), 0);
}

static void intervals_share_all_staples_of_their_row(void **state)
{
    struct dice dice = {17};

    (void)state;
    for (int i = 0; i < 5000; i++) {
        int64_t length = dice_between(&dice, 1, IN(300));
        int64_t pitch = dice_between(&dice, IN(0.25), IN(8));
        bool loop = dice_between(&dice, 0, 1);
        int64_t count = loop ? staples_loop(length, pitch) : staples_open(length, pitch);
        int64_t sum = 0;

        for (int64_t from = 0, to; from < length; from = to) {
            to = dice_between(&dice, from + 1, length);
            sum += staples_between(count, length, loop, from, to);
        }
        assert_int_equal(sum, count);
    }
}

static void a_leg_is_the_next_that_is_sold(void **state)
{
    static const int64_t legs[] = {8 * LENGTH_MM, 10 * LENGTH_MM, 12 * LENGTH_MM};

    (void)state;
    assert_int_equal(leg_from(legs, 3, 9 * LENGTH_MM), 10 * LENGTH_MM);
    assert_int_equal(leg_from(legs, 3, 10 * LENGTH_MM), 10 * LENGTH_MM);
    assert_int_equal(leg_from(legs, 3, 14 * LENGTH_MM), 12 * LENGTH_MM);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(widths_agree_with_published_examples),
        cmocka_unit_test(drops_add_up_as_published),
        cmocka_unit_test(a_piece_as_wide_as_the_cloth_has_no_seam),
        cmocka_unit_test(two_widths_are_a_centre_and_two_sides_from_one_drop),
        cmocka_unit_test(narrow_sides_are_widened_from_the_centre),
        cmocka_unit_test(matched_seams_leave_a_centre_of_whole_repeats),
        cmocka_unit_test(widths_sew_up_to_the_cut_width),
        cmocka_unit_test(a_wider_cloth_never_needs_more_widths),
        cmocka_unit_test(a_split_takes_no_more_than_one_width_over_the_least),
        cmocka_unit_test(foam_is_laid_in_the_fewest_slabs),
        cmocka_unit_test(a_slab_may_stand_upright),
        cmocka_unit_test(welt_strips_are_pi_cords_and_two_seams_wide),
        cmocka_unit_test(welt_length_is_cut_from_whole_strips),
        cmocka_unit_test(diamonds_and_squares_count_their_buttons),
        cmocka_unit_test(open_rows_have_a_staple_at_both_ends),
        cmocka_unit_test(intervals_share_all_staples_of_their_row),
        cmocka_unit_test(a_leg_is_the_next_that_is_sold),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
