/*
 * What was cut out of stock goes back into it: parts are made by cutting whole stock through, the
 * kerf taken each time, so a plan that costs just that stock is known without a search. No bound
 * may be above it. (That parts come out exactly is where bounds go wrong: a limit that is one off
 * shows nowhere else. The idea is that of the perfect packings by which rectangle packing is
 * tested; no instance is taken from anywhere.)
 */
#include "dice.h"
#include "saw.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>

#define DEEPEST 4
#define WORK 300000
#define PRICE 700

/* Cuts a piece through where chance has it, and what comes of it again; measures are few, so that
 * halves, thirds and equal parts are often among them. */
static void cut_through(struct dice *dice, struct parts *parts, const struct cut_job *job,
                        enum cut_way way, const int64_t size[2], int depth)
{
    int along = way == CUT_BARS ? 0 : (int)dice_between(dice, 0, 1);
    int64_t most = size[along] - job->kerf - 1;
    int64_t near[2] = {size[0], size[1]}, far[2] = {size[0], size[1]};

    if (depth == 0 || most < 1 || dice_between(dice, 0, 5) == 0) {
        parts_add(parts, 1, size[0], size[1], way != CUT_BARS && dice_between(dice, 0, 1));
        return;
    }
    near[along] = dice_between(dice, 1, most);
    far[along] = size[along] - job->kerf - near[along];
    cut_through(dice, parts, job, way, near, depth - 1);
    cut_through(dice, parts, job, way, far, depth - 1);
}

/* A job of parts out of so many pieces of stock, and what these cost. */
static int64_t make_job(struct dice *dice, enum cut_way way, struct parts *parts,
                        struct cut_size *stock, struct cut_job *job)
{
    int64_t scale = dice_between(dice, 0, 2) == 0 ? 64 : 1;
    int64_t size[2] = {dice_between(dice, 4, 60) * scale,
                       way == CUT_BARS ? 0 : dice_between(dice, 4, 60) * scale};
    int64_t pieces = way == CUT_ROLLS ? 1 : dice_between(dice, 1, 3);

    *stock = way == CUT_ROLLS ? (struct cut_size){0, size[1], 0, ANY}
                              : (struct cut_size){size[0], size[1], PRICE, ANY};
    *job = (struct cut_job){.parts = parts->at,
                            .sizes = stock,
                            .size_count = 1,
                            .kerf = way == CUT_ROLLS ? 0 : dice_between(dice, 0, 1)};
    parts->count = 0;
    for (int64_t i = 0; i < pieces; i++)
        cut_through(dice, parts, job, way, size, (int)dice_between(dice, 1, DEEPEST));
    if (parts->count > 1 && dice_between(dice, 0, 1)) /* the last is lost, and its area with it */
        parts->count--;
    job->part_count = parts->count;
    return way == CUT_ROLLS ? size[0] : pieces * PRICE;
}

static void no_bound_is_above_what_they_came_from(enum cut_way way, int jobs)
{
    struct dice dice = {83};
    int found = 0;

    if (getenv("STUFFOVER_LONG"))
        jobs *= 20;
    for (int i = 0; i < jobs; i++) {
        static struct parts parts;
        struct arena arena;
        struct cut_size stock;
        struct cut_job job;
        struct cut_layout layout;
        int64_t cost = make_job(&dice, way, &parts, &stock, &job);

        arena_init(&arena);
        layout = saw_on(way, &job, i % 2 ? WORK : 0, WORK, &arena);
        if (layout.bound > cost)
            fail_msg("job %d: at least %lld, though it came from %lld", i, (long long)layout.bound,
                     (long long)cost);
        found += layout.cost <= cost;
        arena_release(&arena);
    }
    print_message("%d of %d put together again\n", found, jobs);
    assert_true(found > jobs / 2);
}

static void no_bound_of_sticks_is_above_what_was_cut_up(void **state)
{
    (void)state;
    no_bound_is_above_what_they_came_from(CUT_BARS, 400);
}

static void no_bound_of_sheets_is_above_what_was_cut_up(void **state)
{
    (void)state;
    no_bound_is_above_what_they_came_from(CUT_SHEETS, 150);
}

static void no_bound_of_rolls_is_above_what_was_cut_up(void **state)
{
    (void)state;
    no_bound_is_above_what_they_came_from(CUT_ROLLS, 300);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_bound_of_sticks_is_above_what_was_cut_up),
        cmocka_unit_test(no_bound_of_sheets_is_above_what_was_cut_up),
        cmocka_unit_test(no_bound_of_rolls_is_above_what_was_cut_up),
    };

    return cmocka_run_group_tests_name("put together again", tests, NULL, NULL) ? 1 : 0;
}
