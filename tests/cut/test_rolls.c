#include "dice.h"
#include "saw.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static struct arena arena;

static int open_arena(void **state)
{
    (void)state;
    arena_init(&arena);
    return 0;
}

static int close_arena(void **state)
{
    (void)state;
    arena_release(&arena);
    return 0;
}

static struct cut_layout lay(const struct parts *parts, int64_t width)
{
    const struct cut_size roll = {0, width, 0, ANY};
    struct cut_job job = {
        .parts = parts->at, .part_count = parts->count, .sizes = &roll, .size_count = 1};

    return saw(CUT_ROLLS, &job, &arena);
}

/* Worked example, computed by hand: wing headboard. The bound by area is what is proved. */
static void headboard_cloth_takes_at_most_203_75(void **state)
{
    struct parts parts = {.count = 0};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 1, IN(71.75), IN(54), false);
    parts_add(&parts, 2, IN(71.75), IN(14.25), false);
    parts_add(&parts, 4, IN(60.25), IN(15.875), false);
    parts_add(&parts, 2, IN(60.25), IN(5), false);
    parts_add(&parts, 2, IN(5), IN(16.125), false);
    layout = lay(&parts, IN(54));
    assert_true(layout.cost <= IN(203.75));
}

/* Worked example, computed by hand: all four large pieces are wider than half the roll, so 324 is
 * the least. */
static void banquette_cloth_takes_324(void **state)
{
    struct parts parts = {.count = 0};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 1, IN(99.5), IN(33.5), false);
    parts_add(&parts, 1, IN(57.5), IN(33.5), false);
    parts_add(&parts, 1, IN(97), IN(31), false);
    parts_add(&parts, 1, IN(70), IN(31), false);
    parts_add(&parts, 1, IN(91.5), IN(21.75), false);
    parts_add(&parts, 1, IN(67.5), IN(21.75), false);
    layout = lay(&parts, IN(54));
    assert_int_equal(layout.cost, IN(324));
    assert_int_equal(layout.bound, IN(324));
}

/* Worked example, computed by hand: tufted ottoman. */
static void ottoman_cloth_takes_127_5(void **state)
{
    struct parts parts = {.count = 0};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 1, IN(65.5), IN(48.5), false);
    parts_add(&parts, 2, IN(62), IN(14.5), false);
    layout = lay(&parts, IN(54));
    assert_int_equal(layout.cost, IN(127.5));
}

/* Worked example, computed by hand: batting of the wing headboard off a roll of 48. */
static void headboard_batting_takes_at_most_179_5(void **state)
{
    struct parts parts = {.count = 0};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 1, IN(60), IN(48), true);
    parts_add(&parts, 1, IN(60), IN(15), true);
    parts_add(&parts, 2, IN(59.5), IN(23.75), true);
    layout = lay(&parts, IN(48));
    assert_true(layout.cost <= IN(179.5));
}

static void a_piece_wider_than_the_roll_is_left_out(void **state)
{
    struct parts parts = {.count = 0};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 1, 80, 101, false);
    parts_add(&parts, 1, 80, 100, false);
    layout = lay(&parts, 100);
    assert_int_equal(layout.left_out.count, 1);
    assert_int_equal(layout.left_out.at[0], 0);
    assert_int_equal(layout.cost, 80);
}

static void a_wide_piece_that_may_turn_is_turned(void **state)
{
    struct parts parts = {.count = 0};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 1, 80, 101, true);
    layout = lay(&parts, 100);
    assert_int_equal(layout.left_out.count, 0);
    assert_true(layout.places.at[0].turned);
    assert_int_equal(layout.cost, 101);
}

static void pieces_of_cloth_on_the_shelf_come_first(void **state)
{
    const struct cut_size sizes[] = {{0, 100, 0, ANY}, {50, 60, 0, 1}};
    struct parts parts = {.count = 0};
    struct cut_job job = {.parts = parts.at, .part_count = 2, .sizes = sizes, .size_count = 2};
    struct cut_layout layout;

    (void)state;
    parts_add(&parts, 2, 45, 55, false);
    layout = saw(CUT_ROLLS, &job, &arena);
    assert_int_equal(blanks_of(&layout, 1), 1);
    assert_int_equal(blanks_of(&layout, 0), 1);
    assert_int_equal(layout.cost, 45);
}

static void a_search_that_goes_on_is_never_worse(void **state)
{
    struct arena own = {0};
    struct dice dice = {31};
    struct parts parts;
    struct cut_size sizes[MOST_SIZES];
    int better = 0;

    (void)state;
    for (int i = 0; i < 40; i++) {
        struct cut_job job = job_by_chance(CUT_ROLLS, &dice, &parts, sizes);
        struct cut_layout quick = saw(CUT_ROLLS, &job, &own);
        struct cut_layout longer = saw_on(CUT_ROLLS, &job, 30000000, 1000000, &own);

        assert_true(longer.cost <= quick.cost);
        assert_true(longer.bound <= longer.cost || longer.left_out.count > 0);
        better += longer.cost < quick.cost;
        arena_release(&own);
    }
    assert_true(better > 0);
}

static void jobs_by_chance_are_laid_soundly(void **state)
{
    (void)state;
    chance_is_cut_soundly(CUT_ROLLS, 5);
}

static void the_same_job_gives_the_same_layout(void **state)
{
    (void)state;
    twice_is_the_same(CUT_ROLLS, 6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(headboard_cloth_takes_at_most_203_75),
        cmocka_unit_test(banquette_cloth_takes_324),
        cmocka_unit_test(ottoman_cloth_takes_127_5),
        cmocka_unit_test(headboard_batting_takes_at_most_179_5),
        cmocka_unit_test(a_piece_wider_than_the_roll_is_left_out),
        cmocka_unit_test(a_wide_piece_that_may_turn_is_turned),
        cmocka_unit_test(pieces_of_cloth_on_the_shelf_come_first),
        cmocka_unit_test(a_search_that_goes_on_is_never_worse),
        cmocka_unit_test(jobs_by_chance_are_laid_soundly),
        cmocka_unit_test(the_same_job_gives_the_same_layout),
    };

    return cmocka_run_group_tests_name("rolls", tests, open_arena, close_arena) ? 1 : 0;
}
