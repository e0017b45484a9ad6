/* Two hundred priced jobs, cut here and by a general solver of whole-number programs: the costs are
 * the same wherever it finishes. */
#include "dice.h"
#include "oracle.h"
#include "sanitized.h"
#include "saw.h"

#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#define JOBS UNLESS_SANITIZED(200, 40)
#define WORK INT64_C(1000000000)

static char folder[256];

static void draw(struct dice *dice, struct parts *parts, struct cut_size *sizes)
{
    static const int64_t feet[] = {8, 10, 12};

    for (size_t i = 0; i < 3; i++)
        sizes[i] = (struct cut_size){.length = feet[i] * 12 * LENGTH_INCH,
                                     .price = feet[i] * 45 + dice_between(dice, 0, 90),
                                     .limit = ANY};
    parts->count = 0;
    while (parts->count < 20)
        parts_add(parts,
                  (size_t)dice_between(
                      dice, 1, 20 - (int64_t)parts->count < 5 ? 20 - (int64_t)parts->count : 5),
                  dice_between(dice, 8 * 20, 8 * 80) * IN(0.125), 0, false);
}

static void costs_are_those_of_a_whole_number_program(void **state)
{
    struct arena arena = {0};
    struct dice dice = {200};
    struct parts parts;
    struct cut_size sizes[3];
    int closed = 0, proven = 0;

    (void)state;
    for (int n = 0; n < JOBS; n++) {
        int64_t cost;

        draw(&dice, &parts, sizes);
        struct cut_job job = {.parts = parts.at,
                              .part_count = parts.count,
                              .sizes = sizes,
                              .size_count = 3,
                              .kerf = IN(0.125),
                              .trim = IN(0.25)};
        struct cut_layout layout = saw_on(CUT_BARS, &job, WORK, CUT_SLICE, &arena);
        proven += layout_proven(&layout);
        if (oracle_cost(&job, folder, &cost)) {
            assert_int_equal(layout.cost, cost);
            assert_true(layout.bound <= cost);
            closed++;
        }
        arena_release(&arena);
    }
    print_message("%d of %d closed by the program, %d proven here\n", closed, JOBS, proven);
    assert_true(closed > JOBS / 2);
    assert_true(proven > JOBS * 9 / 10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(costs_are_those_of_a_whole_number_program)};
    const char *root = getenv("TMPDIR");
    int failed;

    if (!oracle_is_there())
        return 77;
    snprintf(folder, sizeof folder, "%s/stuffover-cut-XXXXXX", root && *root ? root : P_tmpdir);
    if (!mkdtemp(folder))
        return 1;
    failed = cmocka_run_group_tests(tests, NULL, NULL);
    rmdir(folder);
    return failed ? 1 : 0;
}
