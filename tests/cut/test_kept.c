/*
 * What comes of jobs as makers have them is kept in kept.txt, so that no change makes it worse
 * or slower unseen: a search that loses its way still lays out soundly. Written anew with
 * STUFFOVER_GOLDEN=write; a cost or work that rises, or a bound that falls, has to be worth it.
 */
#include "drawn.h"
#include "kept.h"
#include "saw.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#define WORK INT64_C(20000000)

/* Costs are prices, of cloth the length that is sold; work is in thousands of units. */
static void add_row(struct text *out, const char *name, enum cut_way way, const struct cut_job *job)
{
    const struct cut_layout *best;
    struct cut_search *search;
    struct arena arena;
    jmp_buf escape;

    arena_init(&arena);
    arena.escape = &escape;
    assert_int_equal(setjmp(escape), 0);
    search = cut_begin(way, job, &arena);
    text_format(out, "%s, %zu pieces: %ld at once, ", name, job->part_count,
                (long)cut_best(search)->cost);
    while (cut_done(search) < WORK && cut_step(search, CUT_SLICE))
        ;
    best = cut_best(search);
    assert_int_equal(flaw_of(way, job, best), CUT_FLAW_NONE);
    text_format(out, "then %ld of %zu, no less than %ld, by work of %ld\n", (long)best->cost,
                best->blanks.count, (long)best->bound, (long)(cut_done(search) / 1000));
    arena_release(&arena);
}

static void add_sticks(struct text *out)
{
    static struct drawn drawn;
    struct dice dice = {61};

    for (size_t pieces = 12; pieces <= 160; pieces += pieces / 3) {
        draw_sticks(&drawn, &dice, pieces, 3 + pieces / 50, 4 + (int64_t)pieces / 40);
        add_row(out, "sticks", CUT_BARS, &drawn.job);
    }
}

static void add_sheets(struct text *out)
{
    static struct drawn drawn;
    struct dice dice = {62};

    for (size_t pieces = 6; pieces <= 30; pieces++) {
        draw_sheets(&drawn, &dice, pieces);
        add_row(out, "sheets", CUT_SHEETS, &drawn.job);
    }
}

static void add_cloth(struct text *out)
{
    static struct drawn drawn;
    struct dice dice = {63};

    for (int n = 0; n < 4 * CLOTHS; n++) {
        draw_cloth(&drawn, &dice, (enum cloth)(n % CLOTHS), n % 2 != 0);
        add_row(out, cloth_names[n % CLOTHS], CUT_ROLLS, &drawn.job);
    }
}

static void layouts_are_as_good_as_they_were(void **state)
{
    struct text made;

    (void)state;
    text_init(&made);
    add_sticks(&made);
    add_sheets(&made);
    add_cloth(&made);
    assert_false(text_failed(&made));
    kept_assert(KEPT_FILE, text_string(&made), "STUFFOVER_GOLDEN");
    text_release(&made);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(layouts_are_as_good_as_they_were),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
