/* Sheets at once, without a search: worked examples, computed by hand, and jobs by chance. */
#include "saw.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static struct cut_job job_of(const struct parts *parts, const struct cut_size *sizes,
                             size_t size_count)
{
    return (struct cut_job){.parts = parts->at,
                            .part_count = parts->count,
                            .sizes = sizes,
                            .size_count = size_count,
                            .kerf = IN(0.125)};
}

/* Worked example, computed by hand: wing headboard. */
static void headboard_takes_two_sheets(void **state)
{
    const struct cut_size sizes[] = {{IN(96), IN(48), 3800, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job;
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 1, IN(63), IN(48), true);
    parts_add(&parts, 2, IN(31.5), IN(8), true);
    parts_add(&parts, 4, IN(56), IN(11.875), true);
    job = job_of(&parts, sizes, 1);
    layout = saw(CUT_SHEETS, &job, &saw_arena);
    assert_int_equal(layout.blanks.count, 2);
    assert_int_equal(layout.bound, 7600);
}

/* Worked example, computed by hand: a quarter sheet fails by 1/4 in, half a sheet does. */
static void ottoman_skins_take_half_a_sheet(void **state)
{
    const struct cut_size sizes[] = {
        {IN(96), IN(48), 3800, ANY}, {IN(48), IN(48), 2100, ANY}, {IN(48), IN(24), 1200, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job;
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 2, IN(36), IN(8), true);
    parts_add(&parts, 2, IN(23), IN(8), true);
    job = job_of(&parts, sizes, 3);
    layout = saw(CUT_SHEETS, &job, &saw_arena);
    assert_int_equal(blanks_of(&layout, 1), 1);
    assert_int_equal(layout.cost, 2100);
}

/* Worked example, computed by hand: a full sheet, and a half one for the last back. */
static void banquette_skins_take_a_sheet_and_a_half(void **state)
{
    const struct cut_size sizes[] = {{IN(96), IN(48), 3800, ANY}, {IN(96), IN(24), 2200, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job;
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 1, IN(84), IN(14.25), true);
    parts_add(&parts, 1, IN(42), IN(14.25), true);
    parts_add(&parts, 2, IN(17.5), IN(14.25), true);
    parts_add(&parts, 1, IN(84), IN(18), true);
    parts_add(&parts, 1, IN(57), IN(18), true);
    job = job_of(&parts, sizes, 2);
    layout = saw(CUT_SHEETS, &job, &saw_arena);
    assert_int_equal(layout.cost, 6000);
    assert_int_equal(blanks_of(&layout, 0), 1);
    assert_int_equal(blanks_of(&layout, 1), 1);
}

/* Common practice, no source: every saw takes its kerf three times. */
static void four_strips_of_12_do_not_come_out_of_48(void **state)
{
    const struct cut_size sizes[] = {{IN(96), IN(48), 3800, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job;
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 4, IN(56), IN(12), false);
    job = job_of(&parts, sizes, 1);
    layout = saw(CUT_SHEETS, &job, &saw_arena);
    assert_int_equal(layout.blanks.count, 2);
    job.kerf = 0;
    layout = saw(CUT_SHEETS, &job, &saw_arena);
    assert_int_equal(layout.blanks.count, 1);
}

static void grain_keeps_a_part_from_being_turned(void **state)
{
    const struct cut_size sizes[] = {{100, 50, 1, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job = {.parts = parts.at, .part_count = 1, .sizes = sizes, .size_count = 1};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 1, 40, 90, false);
    layout = saw(CUT_SHEETS, &job, &saw_arena);
    assert_int_equal(layout.left_out.count, 1);
    parts.at[0].may_turn = true;
    layout = saw(CUT_SHEETS, &job, &saw_arena);
    assert_int_equal(layout.left_out.count, 0);
    assert_true(layout.places.at[0].turned);
}

static void leftovers_are_used_before_a_sheet_is_bought(void **state)
{
    const struct cut_size sizes[] = {{100, 50, 10, ANY}, {60, 30, 0, 1}};
    struct parts parts = {.count = 0};
    struct cut_job job = {
        .parts = parts.at, .part_count = 1, .sizes = sizes, .size_count = 2, .kerf = 3};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 1, 60, 30, false);
    layout = saw(CUT_SHEETS, &job, &saw_arena);
    assert_int_equal(blanks_of(&layout, 1), 1);
    assert_int_equal(layout.cost, 0);
}

static void the_trim_comes_off_all_four_edges(void **state)
{
    const struct cut_size sizes[] = {{100, 50, 10, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job = {
        .parts = parts.at, .part_count = 1, .sizes = sizes, .size_count = 1, .kerf = 3, .trim = 5};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 1, 90, 40, false);
    layout = saw(CUT_SHEETS, &job, &saw_arena);
    assert_int_equal(layout.places.at[0].along, 5);
    assert_int_equal(layout.places.at[0].across, 5);
    parts.at[0].width = 41;
    layout = saw(CUT_SHEETS, &job, &saw_arena);
    assert_int_equal(layout.left_out.count, 1);
}

/* Of parts that are more than half as wide as the sheet none lies beside another: 25 of 4 in one
 * after the other are a hundred inches and 24 cuts, two sheets of 96, though their areas are two
 * thirds of one. */
static void parts_too_wide_to_lie_two_abreast_take_their_whole_length(void **state)
{
    const struct cut_size sizes[] = {{IN(96), IN(48), 3800, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job;
    struct cut_layout layout;

    (void)state;
    for (int i = 0; i < 25; i++)
        parts_add(&parts, 1, IN(4), IN(25) + i * IN(0.5), false);
    job = job_of(&parts, sizes, 1);
    layout = saw(CUT_SHEETS, &job, &saw_arena);
    assert_int_equal(layout.bound, 7600);
    assert_int_equal(layout.cost, 7600);
}

static void an_empty_job_gives_an_empty_layout(void **state)
{
    struct cut_job job = {0};
    struct cut_layout layout;

    (void)state;
    layout = saw(CUT_SHEETS, &job, &saw_arena);
    assert_int_equal(layout.blanks.count + layout.left_out.count, 0);
}

static void jobs_by_chance_are_cut_soundly(void **state)
{
    (void)state;
    chance_is_cut_soundly(CUT_SHEETS, 3);
}

static void the_same_job_gives_the_same_layout(void **state)
{
    (void)state;
    twice_is_the_same(CUT_SHEETS, 4);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(headboard_takes_two_sheets),
        cmocka_unit_test(ottoman_skins_take_half_a_sheet),
        cmocka_unit_test(banquette_skins_take_a_sheet_and_a_half),
        cmocka_unit_test(four_strips_of_12_do_not_come_out_of_48),
        cmocka_unit_test(grain_keeps_a_part_from_being_turned),
        cmocka_unit_test(leftovers_are_used_before_a_sheet_is_bought),
        cmocka_unit_test(the_trim_comes_off_all_four_edges),
        cmocka_unit_test(parts_too_wide_to_lie_two_abreast_take_their_whole_length),
        cmocka_unit_test(an_empty_job_gives_an_empty_layout),
        cmocka_unit_test(jobs_by_chance_are_cut_soundly),
        cmocka_unit_test(the_same_job_gives_the_same_layout),
    };

    return cmocka_run_group_tests_name("sheets", tests, saw_arena_open, saw_arena_close) ? 1 : 0;
}
