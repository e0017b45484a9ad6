/*
 * Every paper, and every sheet of text, of every build that is shipped or worked out by hand, in
 * both units: none promises that a rule is kept or that nobody is hurt.
 */
#include "promise.h"
#include "work.h"

#include "paper/papers.h"
#include "paper/sheets.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

static const char *const names[] = {"banquette",
                                    "headboard",
                                    "ottoman",
                                    "open-wing",
                                    "seat-first",
                                    "../../demo/banquette",
                                    "../../demo/headboard",
                                    "../../demo/stool",
                                    "../../demo/corner"};

static void assert_no_promise(const char *build, const char *paper, const struct text *text)
{
    const char *promise = promise_in(text_string(text));

    if (promise)
        fail_msg("%s of %s says \"%s\"", paper, build, promise);
}

static size_t look_through_papers(const char *build, const struct plan *plan)
{
    size_t letters = 0;

    for (const struct paper *paper = papers; paper->name; paper++) {
        struct text text;

        text_init(&text);
        paper_as_text(&text, plan, paper, true);
        assert_no_promise(build, paper->name, &text);
        letters += strlen(text_string(&text));
        text_release(&text);
    }
    return letters;
}

static void look_through_sheets(const char *build, const struct plan *plan)
{
    static void (*const sheets[])(struct text *, const struct plan *) = {
        sheet_weights, sheet_lifts, sheet_route, sheet_strength, sheet_findings, sheet_cautions};

    for (size_t i = 0; i < sizeof sheets / sizeof *sheets; i++) {
        struct text text;

        text_init(&text);
        sheets[i](&text, plan);
        assert_no_promise(build, "a sheet", &text);
        text_release(&text);
    }
}

static void no_paper_of_any_build_promises_anything(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        for (int units = 0; units < 2; units++) {
            struct work_bench bench;

            work_case(&bench, names[i]);
            bench.model.build.units = units ? UNITS_WORD_MM : UNITS_WORD_INCH;
            work_plan(&bench);
            assert_true(look_through_papers(names[i], bench.plan) > 5000);
            look_through_sheets(names[i], bench.plan);
            work_end(&bench);
        }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(no_paper_of_any_build_promises_anything)};
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
