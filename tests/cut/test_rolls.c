/*
 * Cloth off a roll: worked examples, patterns by published guides, published strips, tiny jobs
 * against everything that there is.
 */
#include "brute_rolls.h"
#include "dice.h"
#include "saw.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static struct cut_layout lay(const struct parts *parts, int64_t width)
{
    const struct cut_size roll = {0, width, 0, ANY};
    struct cut_job job = {
        .parts = parts->at, .part_count = parts->count, .sizes = &roll, .size_count = 1};

    return saw(CUT_ROLLS, &job, &saw_arena);
}

/* Worked example, computed by hand: wing headboard. Its pieces are 10,509 in2, so less than 194.6
 * in of 54 is never enough. */
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
    assert_true(layout.bound >= IN(194.6));
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
    layout = saw(CUT_ROLLS, &job, &saw_arena);
    assert_int_equal(blanks_of(&layout, 1), 1);
    assert_int_equal(blanks_of(&layout, 0), 1);
    assert_int_equal(layout.cost, 45);
}

/* ---- cloth with a pattern ---- */

struct cloth {
    struct parts parts;
    struct cut_size roll;
    struct cut_job job;
};

static struct cloth cloth_of(int64_t width, struct cut_pattern pattern)
{
    return (struct cloth){.roll = {0, width, 0, ANY}, .job = {.pattern = pattern}};
}

static void add_matched(struct cloth *cloth, size_t count, struct cut_piece piece)
{
    for (size_t i = 0; i < count; i++)
        cloth->parts.at[cloth->parts.count++] = piece;
}

static struct cut_layout lay_cloth(struct cloth *cloth)
{
    cloth->job.parts = cloth->parts.at;
    cloth->job.part_count = cloth->parts.count;
    cloth->job.sizes = &cloth->roll;
    cloth->job.size_count = 1;
    return saw(CUT_ROLLS, &cloth->job, &saw_arena);
}

static const struct cut_place *place_of(const struct cut_layout *layout, size_t part)
{
    for (size_t i = 0; i < layout->places.count; i++)
        if (layout->places.at[i].part == part)
            return &layout->places.at[i];
    fail_msg("part %zu has no place", part);
    return NULL;
}

/* A guide for makers of curtains (diyideas.com, fabric repeats): 96 in by a repeat of 27 in are cut
 * as four repeats, 108 in. Three drops of the whole width end 96 in from where the third begins. */
static void drops_begin_at_whole_repeats(void **state)
{
    struct cloth cloth = cloth_of(IN(54), (struct cut_pattern){.along = IN(27)});
    struct cut_layout layout;

    (void)state;
    add_matched(&cloth, 3, (struct cut_piece){.length = IN(96), .width = IN(54), .group = 1});
    layout = lay_cloth(&cloth);
    assert_int_equal(layout.cost, IN(2 * 108 + 96));
    assert_true(layout_proven(&layout));
}

/* A firm's guide for draperies (drpinc.net, measuring for draperies): four widths of 114 in by a
 * repeat of 11 in take eleven repeats each. */
static void widths_by_a_repeat_of_eleven_take_eleven_each(void **state)
{
    struct cloth cloth = cloth_of(IN(54), (struct cut_pattern){.along = IN(11)});
    struct cut_layout layout;

    (void)state;
    add_matched(&cloth, 4, (struct cut_piece){.length = IN(114), .width = IN(54), .group = 1});
    layout = lay_cloth(&cloth);
    assert_int_equal(layout.cost, IN(3 * 121 + 114));
    assert_true(layout_proven(&layout));
}

/* By the definition: one repeat across goes with half a repeat along. */
static void a_half_drop_moves_the_piece_beside_by_half_a_repeat(void **state)
{
    struct cloth cloth = cloth_of(54, (struct cut_pattern){24, 27, false});
    struct cut_layout straight, dropped;

    (void)state;
    add_matched(&cloth, 2, (struct cut_piece){.length = 40, .width = 27, .group = 1});
    straight = lay_cloth(&cloth);
    cloth.job.pattern.half_drop = true;
    dropped = lay_cloth(&cloth);
    assert_int_equal(straight.cost, 40);
    assert_int_equal(dropped.cost, 52);
    assert_true(layout_proven(&straight));
}

/* Sewn to the right of a width of 30, whose seam takes 1 of each: its pattern goes on 28 further.
 */
static void a_side_goes_on_in_the_pattern_of_the_middle(void **state)
{
    struct cloth cloth = cloth_of(40, (struct cut_pattern){0, 20, false});
    struct cut_layout layout;

    (void)state;
    add_matched(&cloth, 1, (struct cut_piece){.length = 40, .width = 30, .group = 1});
    add_matched(&cloth, 1, (struct cut_piece){.length = 40, .width = 10, .group = 1, .across = 28});
    layout = lay_cloth(&cloth);
    assert_int_equal(layout.cost, 80);
    assert_int_equal((place_of(&layout, 1)->across - place_of(&layout, 0)->across - 28) % 20, 0);
}

static void a_centred_motif_lies_in_the_middle(void **state)
{
    struct cloth cloth = cloth_of(54, (struct cut_pattern){30, 18, false});
    const struct cut_piece motif = {.length = 20,
                                    .width = 12,
                                    .group = CUT_PINNED,
                                    .along = 15,
                                    .across = 9,
                                    .centred_along = true,
                                    .centred_across = true};
    struct cut_layout layout;

    (void)state;
    add_matched(&cloth, 4, motif);
    layout = lay_cloth(&cloth);
    assert_int_equal(layout.cost, 30 + 25);
    for (size_t i = 0; i < 4; i++) {
        assert_int_equal((place_of(&layout, i)->along + 10) % 30, 15);
        assert_int_equal((place_of(&layout, i)->across + 6) % 18, 9);
    }
}

static void a_piece_that_meets_the_pattern_nowhere_is_left_out(void **state)
{
    struct cloth cloth = cloth_of(54, (struct cut_pattern){0, 60, false});
    struct cut_layout layout;

    (void)state;
    add_matched(&cloth, 1,
                (struct cut_piece){.length = 20, .width = 50, .group = CUT_PINNED, .across = 5});
    add_matched(&cloth, 2, (struct cut_piece){.length = 20, .width = 50, .group = 1});
    cloth.parts.at[2].across = 9;
    layout = lay_cloth(&cloth);
    assert_int_equal(layout.left_out.count, 2);
    assert_int_equal(layout.left_out.at[0], 0);
    assert_int_equal(layout.left_out.at[1], 2);
}

static void a_matched_piece_is_not_railroaded(void **state)
{
    struct cloth cloth = cloth_of(54, (struct cut_pattern){.along = 10});

    (void)state;
    add_matched(&cloth, 1,
                (struct cut_piece){.length = 50, .width = 10, .may_turn = true, .group = 1});
    assert_int_equal(lay_cloth(&cloth).cost, 50);
    cloth.parts.at[0].group = 0;
    assert_int_equal(lay_cloth(&cloth).cost, 10);
}

static void pieces_keep_off_a_flaw(void **state)
{
    const struct cut_blemish flaw = {.along = 30, .across = 0, .length = 4, .width = 54};
    struct cloth cloth = cloth_of(54, (struct cut_pattern){0});
    struct cut_layout layout;

    (void)state;
    add_matched(&cloth, 3, (struct cut_piece){.length = 20, .width = 54});
    cloth.job.blemishes = &flaw;
    cloth.job.blemish_count = 1;
    layout = lay_cloth(&cloth);
    assert_int_equal(layout.cost, 74);
    assert_int_equal(layout.places.at[1].along, 34);
}

static void the_selvedge_stays_bare(void **state)
{
    struct cloth cloth = cloth_of(56, (struct cut_pattern){0});
    struct cut_layout layout;

    (void)state;
    add_matched(&cloth, 2, (struct cut_piece){.length = 20, .width = 27});
    cloth.job.trim = 1;
    layout = lay_cloth(&cloth);
    assert_int_equal(layout.cost, 20);
    assert_int_equal(layout.places.at[0].across, 1);
    assert_int_equal(layout.places.at[1].across, 28);
}

/* ---- what is sold ---- */

/* Worked example, computed by hand: the cloth of the wing headboard, 5 % more, by quarter yards. */
static void headboard_cloth_is_sold_as_six_yards(void **state)
{
    struct cloth cloth = cloth_of(IN(54), (struct cut_pattern){0});
    struct cut_layout layout;

    (void)state;
    parts_add(&cloth.parts, 1, IN(71.75), IN(54), false);
    parts_add(&cloth.parts, 2, IN(71.75), IN(14.25), false);
    parts_add(&cloth.parts, 4, IN(60.25), IN(15.875), false);
    parts_add(&cloth.parts, 2, IN(60.25), IN(5), false);
    parts_add(&cloth.parts, 2, IN(5), IN(16.125), false);
    cloth.job.sale = (struct cut_sale){.reserve = 50000, .step = IN(9)};
    layout = lay_cloth(&cloth);
    assert_int_equal(layout.cost, IN(6 * 36));
}

static void a_search_aims_at_the_next_length_that_is_sold(void **state)
{
    struct cloth cloth = cloth_of(100, (struct cut_pattern){0});
    struct cut_layout layout;

    (void)state;
    parts_add(&cloth.parts, 1, 41, 100, false);
    cloth.job.sale = (struct cut_sale){.least = 30, .step = 20};
    layout = lay_cloth(&cloth);
    assert_int_equal(layout.cost, 60);
    assert_int_equal(layout.bound, 60);
    cloth.job.sale = (struct cut_sale){.least = 70};
    assert_int_equal(lay_cloth(&cloth).cost, 70);
}

/* ---- published sets ---- */

struct published {
    const char *name;
    int64_t width, length; /* the optimum */
    int count;
    struct {
        int16_t width, length;
    } parts[60];
};

static const struct published published[] = {
    /* Bengtsson, Packing rectangular pieces, The Computer Journal 25 (1982); optimum 84 */
    {"BENG3", 25, 84, 60, {{6, 8},  {4, 11}, {3, 10}, {7, 4},  {6, 12}, {6, 11}, {8, 12}, {6, 3},
                           {3, 4},  {8, 3},  {1, 9},  {3, 1},  {6, 8},  {3, 11}, {1, 11}, {8, 9},
                           {1, 9},  {5, 11}, {7, 1},  {8, 7},  {3, 10}, {8, 2},  {3, 8},  {3, 7},
                           {4, 8},  {7, 2},  {7, 12}, {2, 1},  {8, 3},  {1, 1},  {7, 12}, {4, 3},
                           {4, 8},  {5, 11}, {6, 5},  {8, 8},  {1, 4},  {3, 10}, {7, 12}, {3, 12},
                           {7, 10}, {4, 5},  {2, 3},  {7, 7},  {8, 11}, {5, 10}, {7, 4},  {4, 5},
                           {3, 2},  {3, 3},  {3, 8},  {4, 11}, {1, 8},  {7, 8},  {5, 6},  {5, 8},
                           {8, 4},  {8, 8},  {2, 7},  {2, 6}}},
    /* Hopper and Turton, EJOR 128 (2001): parted from a rectangle, so nothing is wasted */
    {"C1-P1",
     20,
     20,
     16,
     {{2, 12},
      {7, 12},
      {8, 6},
      {3, 6},
      {3, 5},
      {5, 5},
      {3, 12},
      {3, 7},
      {5, 7},
      {2, 6},
      {3, 2},
      {4, 2},
      {3, 4},
      {4, 4},
      {9, 2},
      {11, 2}}},
    {"C2-P1", 40, 15, 25, {{11, 3}, {13, 3}, {9, 2},  {7, 2},  {9, 3},  {7, 3}, {11, 2},
                           {13, 2}, {11, 4}, {13, 4}, {3, 5},  {11, 2}, {2, 2}, {11, 3},
                           {2, 3},  {5, 4},  {6, 4},  {12, 2}, {1, 2},  {3, 5}, {13, 5},
                           {12, 4}, {1, 4},  {5, 2},  {6, 2}}},
    /* Burke, Kendall and Whitwell, Operations Research 52 (2004): likewise */
    {"N1",
     40,
     40,
     10,
     {{7, 6}, {40, 16}, {5, 20}, {24, 24}, {7, 4}, {4, 4}, {7, 8}, {4, 20}, {5, 4}, {7, 6}}},
};

static void published_jobs_reach_their_optimum(void **state)
{
    struct arena own = {0};

    (void)state;
    for (size_t i = 0; i < sizeof published / sizeof *published; i++) {
        const struct published *of = &published[i];
        struct cloth cloth = cloth_of(of->width, (struct cut_pattern){0});
        struct cut_layout layout;

        for (int k = 0; k < of->count; k++)
            parts_add(&cloth.parts, 1, of->parts[k].length, of->parts[k].width, false);
        cloth.job.parts = cloth.parts.at;
        cloth.job.part_count = cloth.parts.count;
        cloth.job.sizes = &cloth.roll;
        cloth.job.size_count = 1;
        layout = saw_on(CUT_ROLLS, &cloth.job, 3000000000, 20000000, &own);
        if (layout.cost != of->length || layout.bound != of->length)
            fail_msg("%s: %lld, at least %lld, not %lld", of->name, (long long)layout.cost,
                     (long long)layout.bound, (long long)of->length);
        arena_release(&own);
    }
}

static void a_search_that_goes_on_is_never_worse(void **state)
{
    struct arena own = {0};
    struct dice dice = {31};
    struct parts parts;
    struct cut_size sizes[MOST_SIZES];
    int better = 0;

    (void)state;
    for (int i = 0; i < 20; i++) {
        struct cut_job job = job_by_chance(CUT_ROLLS, &dice, &parts, sizes);
        struct cut_layout quick = saw(CUT_ROLLS, &job, &own);
        struct cut_layout longer = saw_on(CUT_ROLLS, &job, 10000000, 1000000, &own);

        assert_true(longer.cost <= quick.cost);
        assert_true(longer.bound <= longer.cost || longer.left_out.count > 0);
        better += longer.cost < quick.cost;
        arena_release(&own);
    }
    assert_true(better > 0);
}

/* ---- against everything that there is ---- */

/* Returns whether the job was one that takes all its parts. */
static bool check_tiny(struct dice *dice, int *proven)
{
    struct arena own = {0};
    struct parts parts;
    struct cut_size roll;
    struct cut_blemish blemish;
    struct cut_job job = brute_job(dice, parts.at, &roll, &blemish);
    struct cut_layout layout = saw_on(CUT_ROLLS, &job, 2000000, 1000000, &own);
    bool all = layout.left_out.count == 0;
    int64_t least = brute_length(&job, all ? layout.cost : BRUTE_ROLL_LENGTH);

    if (all) {
        assert_int_equal(layout.cost, least);
        assert_true(layout.bound <= least);
        *proven += layout_proven(&layout);
    } else {
        assert_int_equal(least, -1);
    }
    arena_release(&own);
    return all;
}

static void tiny_jobs_take_the_least_that_there_is(void **state)
{
    struct dice dice = {7};
    int whole = 0, proven = 0;

    (void)state;
    for (int i = 0; i < 50; i++)
        whole += check_tiny(&dice, &proven);
    assert_true(whole > 40);
    assert_true(proven > whole / 3);
}

/* ---- what changes nothing ---- */

static struct cut_layout lay_on(const struct cut_job *job, struct arena *own)
{
    return saw_on(CUT_ROLLS, job, 1000000, 1000000, own);
}

static void shuffle(struct dice *dice, struct parts *parts)
{
    for (size_t i = parts->count; i > 1; i--) {
        size_t other = (size_t)dice_between(dice, 0, (int64_t)i - 1);
        struct cut_piece kept = parts->at[i - 1];

        parts->at[i - 1] = parts->at[other];
        parts->at[other] = kept;
    }
}

static void enlarge(struct cut_job *job, struct parts *parts, struct cut_size *roll,
                    struct cut_blemish *blemish)
{
    for (size_t i = 0; i < parts->count; i++) {
        parts->at[i].length *= 6;
        parts->at[i].width *= 6;
        parts->at[i].along *= 6;
        parts->at[i].across *= 6;
    }
    roll->width *= 6;
    job->pattern.along *= 6;
    job->pattern.across *= 6;
    *blemish = (struct cut_blemish){6 * blemish->along, 6 * blemish->across, 6 * blemish->length,
                                    6 * blemish->width};
}

static bool any_centred(const struct parts *parts)
{
    for (size_t i = 0; i < parts->count; i++)
        if (parts->at[i].centred_along || parts->at[i].centred_across)
            return true;
    return false;
}

/* Of proven jobs: parts in another order take as long a roll, all measures times six take six times
 * as long (but for halves that were rounded), and a wider roll never takes more. */
static void proven_jobs_stay_what_they_are(void **state)
{
    struct dice dice = {12};
    int seen = 0;

    (void)state;
    for (int i = 0; i < 150; i++) {
        struct arena own = {0};
        struct parts parts;
        struct cut_size roll;
        struct cut_blemish blemish;
        struct cut_job job = brute_job(&dice, parts.at, &roll, &blemish);
        struct cut_layout first = lay_on(&job, &own), other;

        parts.count = job.part_count;

        if (first.left_out.count == 0 && layout_proven(&first)) {
            shuffle(&dice, &parts);
            other = lay_on(&job, &own);
            assert_int_equal(other.cost, first.cost);
            roll.width++;
            other = lay_on(&job, &own);
            assert_true(other.bound <= first.cost);
            assert_true(!layout_proven(&other) || other.cost <= first.cost);
            roll.width--;
            enlarge(&job, &parts, &roll, &blemish);
            other = lay_on(&job, &own);
            assert_true(any_centred(&parts) || other.cost == 6 * first.cost);
            seen++;
        }
        arena_release(&own);
    }
    assert_true(seen > 75);
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
        cmocka_unit_test(drops_begin_at_whole_repeats),
        cmocka_unit_test(widths_by_a_repeat_of_eleven_take_eleven_each),
        cmocka_unit_test(a_half_drop_moves_the_piece_beside_by_half_a_repeat),
        cmocka_unit_test(a_side_goes_on_in_the_pattern_of_the_middle),
        cmocka_unit_test(a_centred_motif_lies_in_the_middle),
        cmocka_unit_test(a_piece_that_meets_the_pattern_nowhere_is_left_out),
        cmocka_unit_test(a_matched_piece_is_not_railroaded),
        cmocka_unit_test(pieces_keep_off_a_flaw),
        cmocka_unit_test(the_selvedge_stays_bare),
        cmocka_unit_test(headboard_cloth_is_sold_as_six_yards),
        cmocka_unit_test(a_search_aims_at_the_next_length_that_is_sold),
        cmocka_unit_test(published_jobs_reach_their_optimum),
        cmocka_unit_test(a_search_that_goes_on_is_never_worse),
        cmocka_unit_test(tiny_jobs_take_the_least_that_there_is),
        cmocka_unit_test(proven_jobs_stay_what_they_are),
        cmocka_unit_test(jobs_by_chance_are_laid_soundly),
        cmocka_unit_test(the_same_job_gives_the_same_layout),
    };

    return cmocka_run_group_tests_name("rolls", tests, saw_arena_open, saw_arena_close) ? 1 : 0;
}
