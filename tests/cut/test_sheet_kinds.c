/* The least price of sheets by sets of parts, against going through everything: jobs of up to 20
 * parts of few kinds through the search, and small jobs with offcuts as they are. */
#include "brute.h"
#include "brute_kinds.h"
#include "dice.h"
#include "saw.h"

#include "cut/kinds.h"
#include "cut/search.h"
#include "cut/strokes.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>

#define PARTS 20

static int rounds(int usual)
{
    return getenv("STUFFOVER_LONG") ? 25 * usual : usual;
}

/* ---- many parts ---- */

/* Panels in half inches, out of a whole, a half and a quarter sheet of plywood. */
static void draw(struct dice *dice, struct parts *parts, struct cut_size *sizes)
{
    int64_t kinds = dice_between(dice, 3, 4);

    parts->count = 0;
    for (int64_t kind = 0; kind < kinds; kind++) {
        int64_t count = dice_between(dice, 2, kinds == 3 ? 7 : 5);
        int64_t left = PARTS - (int64_t)parts->count;

        parts_add(parts, (size_t)(count < left ? count : left),
                  dice_between(dice, 20, 120) * IN(0.5), dice_between(dice, 10, 48) * IN(0.5),
                  dice_between(dice, 0, 1));
    }
    sizes[0] = (struct cut_size){IN(96), IN(48), dice_between(dice, 4800, 5200), ANY};
    sizes[1] = (struct cut_size){IN(48), IN(48), dice_between(dice, 2500, 3200), ANY};
    sizes[2] = (struct cut_size){IN(48), IN(24), dice_between(dice, 1400, 2000), ANY};
}

static void jobs_of_few_kinds_cost_what_the_best_of_all_patterns_costs(void **state)
{
    struct dice dice = {43};
    struct parts parts;
    struct cut_size sizes[3];
    int closed = 0;

    (void)state;
    for (int i = 0; i < rounds(20); i++) {
        struct cut_job job = {.sizes = sizes, .size_count = 3, .kerf = IN(0.125)};
        struct arena arena = {0};
        struct cut_layout layout;
        int64_t cost;

        draw(&dice, &parts, sizes);
        job.parts = parts.at;
        job.part_count = parts.count;
        if (!brute_kinds_cost(&job, &cost))
            continue;
        layout = saw_on(CUT_SHEETS, &job, CUT_SLICE, CUT_SLICE / 4, &arena);
        if (!layout_proven(&layout))
            layout = saw_on(CUT_SHEETS, &job, cut_allowed(CUT_GOOD), CUT_SLICE, &arena);
        assert_int_equal(layout.cost, cost);
        assert_int_equal(layout.bound, cost);
        arena_release(&arena);
        closed++;
    }
    assert_in_range(closed, rounds(20) * 9 / 10, rounds(20));
}

/* ---- offcuts ---- */

static void draw_small(struct dice *dice, struct parts *parts, struct cut_size *sizes)
{
    int64_t count = dice_between(dice, 1, BRUTE_PARTS);

    parts->count = 0;
    while ((int64_t)parts->count < count)
        parts_add(parts, 1, dice_between(dice, 2, 30), dice_between(dice, 2, 20),
                  dice_between(dice, 0, 1));
    sizes[0] = (struct cut_size){dice_between(dice, 25, 45), dice_between(dice, 15, 35),
                                 dice_between(dice, 5, 30), ANY};
    for (int i = 1; i < 3; i++)
        sizes[i] = (struct cut_size){dice_between(dice, 10, 40), dice_between(dice, 5, 30),
                                     dice_between(dice, 0, 1) * dice_between(dice, 1, 20),
                                     dice_between(dice, 1, 2)};
}

/* The price, and the layout of a plan at that price. */
static int64_t least_price(const struct cut_job *job, struct arena *arena,
                           struct cut_layout *ret_layout)
{
    struct sheet_job made;
    struct kinds *kinds;
    struct trees trees;
    struct strokes strokes;
    int64_t work = 0;
    jmp_buf escape;

    arena->escape = &escape;
    if (setjmp(escape))
        fail_msg("memory is out");
    sheetjob_make(job, arena, &made);
    kinds = kinds_begin(&made, arena);
    if (!kinds)
        return INT64_MAX;
    while (kinds_step(kinds, 1000, &work) == KINDS_GOING_ON)
        ;
    trees_init(&trees, arena, job->part_count, 2 * job->part_count + 4);
    strokes_init(&strokes, &made, arena, &trees);
    if (kinds_price(kinds) < INT64_MAX)
        kinds_lay(kinds, &trees);
    strokes_lay_out(&strokes, &trees, ret_layout);
    arena->escape = NULL;
    return kinds_price(kinds);
}

static void offcuts_are_used_as_the_best_of_all_patterns_does(void **state)
{
    struct dice dice = {44};
    struct parts parts;
    struct cut_size sizes[3];
    int taken = 0;

    (void)state;
    for (int i = 0; i < rounds(150); i++) {
        struct arena arena = {0};
        struct cut_layout layout = {0};
        struct cut_job job = {.parts = parts.at, .sizes = sizes, .size_count = 3};
        int64_t cost;

        draw_small(&dice, &parts, sizes);
        job.part_count = parts.count;
        job.kerf = dice_between(&dice, 0, 2);
        cost = brute_cost(&job);
        assert_int_equal(least_price(&job, &arena, &layout), cost);
        if (cost < INT64_MAX) {
            assert_int_equal(flaw_of(CUT_SHEETS, &job, &layout), CUT_FLAW_NONE);
            assert_int_equal(layout.left_out.count, 0);
            assert_int_equal(layout.cost, cost);
            taken++;
        }
        arena_release(&arena);
    }
    assert_in_range(taken, rounds(150) / 2, rounds(150) - 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(offcuts_are_used_as_the_best_of_all_patterns_does),
        cmocka_unit_test(jobs_of_few_kinds_cost_what_the_best_of_all_patterns_costs)};

    return cmocka_run_group_tests_name("sheet kinds", tests, NULL, NULL) ? 1 : 0;
}
