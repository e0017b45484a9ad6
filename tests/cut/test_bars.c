/* Sticks: the worked examples, computed by hand, and jobs by chance against the verifier. */
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
                            .kerf = IN(0.125),
                            .trim = IN(0.25)};
}

/* Sticks of the worked example "wing headboard". */
static void add_headboard(struct parts *parts)
{
    parts_add(parts, 6, IN(56), 0, false);
    parts_add(parts, 3, IN(60), 0, false);
    parts_add(parts, 2, IN(45.75), 0, false);
    parts_add(parts, 3, IN(5.75), 0, false);
    parts_add(parts, 6, IN(8.875), 0, false);
}

/* Worked example, computed by hand: wing headboard. */
static void headboard_takes_ten_sticks(void **state)
{
    const struct cut_size sizes[] = {{IN(96), 0, 420, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job;
    struct cut_layout layout;

    (void)state;
    add_headboard(&parts);
    job = job_of(&parts, sizes, 1);
    layout = saw(CUT_BARS, &job, &saw_arena);
    assert_int_equal(layout.blanks.count, 10);
    assert_int_equal(layout.cost, 4200);
    assert_int_equal(layout.bound, 3780); /* nine parts longer than half a stick */
}

/* Worked example, computed by hand: the least is five of 120 and one of 96. */
static void headboard_is_cheaper_from_two_lengths(void **state)
{
    const struct cut_size sizes[] = {{IN(96), 0, 420, ANY}, {IN(120), 0, 610, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job;
    struct cut_layout layout;

    (void)state;
    add_headboard(&parts);
    job = job_of(&parts, sizes, 2);
    layout = saw(CUT_BARS, &job, &saw_arena);
    assert_int_equal(layout.cost, 3470);
    assert_int_equal(blanks_of(&layout, 0), 1);
    assert_int_equal(blanks_of(&layout, 1), 5);
}

/* Worked example, computed by hand: three sticks must come out to the last 1/64 in. */
static void banquette_finds_the_exact_fits(void **state)
{
    const struct cut_size sizes[] = {{IN(96), 0, 310, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job;
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 4, IN(84), 0, false);
    parts_add(&parts, 4, IN(42), 0, false);
    parts_add(&parts, 20, IN(11.25), 0, false);
    parts_add(&parts, 15, IN(14.5), 0, false);
    job = job_of(&parts, sizes, 1);
    layout = saw(CUT_BARS, &job, &saw_arena);
    assert_int_equal(layout.blanks.count, 10);
    assert_int_equal(layout.bound, 3100);
}

/* Worked example, computed by hand: tufted ottoman. */
static void ottoman_takes_three_sticks(void **state)
{
    const struct cut_size sizes[] = {{IN(96), 0, 310, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job;
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 4, IN(35), 0, false);
    parts_add(&parts, 5, IN(20), 0, false);
    parts_add(&parts, 4, IN(5), 0, false);
    job = job_of(&parts, sizes, 1);
    layout = saw(CUT_BARS, &job, &saw_arena);
    assert_int_equal(layout.blanks.count, 3);
}

static void leftovers_are_used_before_a_stick_is_bought(void **state)
{
    const struct cut_size sizes[] = {{100, 0, 50, ANY}, {42, 0, 0, 2}};
    struct parts parts = {.count = 0};
    struct cut_job job = {.parts = parts.at, .part_count = 3, .sizes = sizes, .size_count = 2};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 3, 40, 0, false);
    layout = saw(CUT_BARS, &job, &saw_arena);
    assert_int_equal(blanks_of(&layout, 1), 2);
    assert_int_equal(layout.cost, 50);
}

/* Stubs that squaring an end uses up: they hold nothing, and ask for nothing either. */
static void stubs_shorter_than_their_trim_leave_the_bound_alone(void **state)
{
    const struct cut_size sizes[] = {{100, 0, 50, ANY}, {4, 0, 0, 40}};
    struct parts parts = {.count = 0};
    struct cut_job job = {
        .parts = parts.at, .part_count = 1, .sizes = sizes, .size_count = 2, .kerf = 3, .trim = 12};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 1, 80, 0, false);
    layout = saw(CUT_BARS, &job, &saw_arena);
    assert_int_equal(layout.cost, 50);
    assert_int_equal(layout.bound, 50);
    layout = saw_on(CUT_BARS, &job, INT64_C(1) << 24, INT64_C(1) << 24, &saw_arena);
    assert_int_equal(layout.cost, 50);
    assert_int_equal(layout.bound, 50);
}

static void a_part_longer_than_every_stick_is_left_out(void **state)
{
    const struct cut_size sizes[] = {{100, 0, 50, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job = {
        .parts = parts.at, .part_count = 2, .sizes = sizes, .size_count = 1, .kerf = 3, .trim = 6};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 1, 95, 0, false);
    parts_add(&parts, 1, 94, 0, false);
    layout = saw(CUT_BARS, &job, &saw_arena);
    assert_int_equal(layout.left_out.count, 1);
    assert_int_equal(layout.left_out.at[0], 0);
    assert_int_equal(layout.blanks.count, 1);
}

static void parts_need_one_kerf_less_than_there_are_parts(void **state)
{
    const struct cut_size sizes[] = {{96, 0, 1, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job = {
        .parts = parts.at, .part_count = 3, .sizes = sizes, .size_count = 1, .kerf = 3};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 3, 30, 0, false);
    layout = saw(CUT_BARS, &job, &saw_arena);
    assert_int_equal(layout.blanks.count, 1);
    assert_int_equal(layout.blanks.at[0].used, 96);
    assert_int_equal(layout.blanks.at[0].rest, 0);
}

/* Without a kerf it is the classical problem: four of 25 fill 100. */
static void no_kerf_is_the_classical_problem(void **state)
{
    const struct cut_size sizes[] = {{100, 0, 1, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job = {.parts = parts.at, .part_count = 8, .sizes = sizes, .size_count = 1};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 8, 25, 0, false);
    layout = saw(CUT_BARS, &job, &saw_arena);
    assert_int_equal(layout.blanks.count, 2);
    job.kerf = 1;
    layout = saw(CUT_BARS, &job, &saw_arena);
    assert_int_equal(layout.blanks.count, 3);
}

static void sticks_without_a_price_are_chosen_by_length(void **state)
{
    const struct cut_size sizes[] = {{100, 0, 0, ANY}, {60, 0, 0, ANY}};
    struct parts parts = {.count = 0};
    struct cut_job job = {.parts = parts.at, .part_count = 1, .sizes = sizes, .size_count = 2};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 1, 55, 0, false);
    layout = saw(CUT_BARS, &job, &saw_arena);
    assert_int_equal(blanks_of(&layout, 1), 1);
    assert_int_equal(layout.cost, 0);
}

static void an_empty_job_gives_an_empty_layout(void **state)
{
    struct cut_job job = {0};
    struct cut_layout layout;

    (void)state;
    layout = saw(CUT_BARS, &job, &saw_arena);
    assert_int_equal(layout.blanks.count + layout.left_out.count, 0);
    assert_int_equal(layout.cost, 0);
}

static void jobs_by_chance_are_cut_soundly(void **state)
{
    (void)state;
    chance_is_cut_soundly(CUT_BARS, 1);
}

static void the_same_job_gives_the_same_layout(void **state)
{
    (void)state;
    twice_is_the_same(CUT_BARS, 2);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(headboard_takes_ten_sticks),
        cmocka_unit_test(headboard_is_cheaper_from_two_lengths),
        cmocka_unit_test(banquette_finds_the_exact_fits),
        cmocka_unit_test(ottoman_takes_three_sticks),
        cmocka_unit_test(leftovers_are_used_before_a_stick_is_bought),
        cmocka_unit_test(stubs_shorter_than_their_trim_leave_the_bound_alone),
        cmocka_unit_test(a_part_longer_than_every_stick_is_left_out),
        cmocka_unit_test(parts_need_one_kerf_less_than_there_are_parts),
        cmocka_unit_test(no_kerf_is_the_classical_problem),
        cmocka_unit_test(sticks_without_a_price_are_chosen_by_length),
        cmocka_unit_test(an_empty_job_gives_an_empty_layout),
        cmocka_unit_test(jobs_by_chance_are_cut_soundly),
        cmocka_unit_test(the_same_job_gives_the_same_layout),
    };

    return cmocka_run_group_tests_name("bars", tests, saw_arena_open, saw_arena_close) ? 1 : 0;
}
