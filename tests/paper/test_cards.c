/*
 * Every card of every build that is shipped or worked out by hand, in both units: it says something
 * and not too much, why it comes now, and fits its paper.
 */
#include "work.h"

#include "paper/lines.h"
#include "paper/sheets.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const char *const names[] = {"banquette",
                                    "headboard",
                                    "ottoman",
                                    "open-wing",
                                    "../../demo/banquette",
                                    "../../demo/headboard",
                                    "../../demo/stool",
                                    "../../demo/corner"};

#define NAMES (sizeof names / sizeof *names)
#define ACTIONS_MOST 7 /* more do not fit a card that is read with glue on the fingers */

typedef void check_fn(const struct plan *plan, const struct step *step);

static void each_card(check_fn *check)
{
    for (size_t i = 0; i < NAMES; i++)
        for (int units = 0; units < 2; units++) {
            struct work_bench bench;

            work_case(&bench, names[i]);
            bench.model.build.units = units ? UNITS_WORD_MM : UNITS_WORD_INCH;
            work_plan(&bench);
            assert_true(bench.plan->steps.count > 30);
            for (size_t k = 0; k < bench.plan->steps.count; k++)
                check(bench.plan, &bench.plan->steps.at[k]);
            work_end(&bench);
        }
}

static void check_size(const struct plan *plan, const struct step *step)
{
    (void)plan;
    assert_in_range(step->action_count, 1, ACTIONS_MOST);
    for (size_t i = 0; i < step->action_count; i++)
        assert_true(strlen(step->actions[i]) > 5);
}

static void no_card_is_empty_or_says_more_than_seven_things(void **state)
{
    (void)state;
    each_card(check_size);
}

static void check_reason(const struct plan *plan, const struct step *step)
{
    (void)plan;
    if (strlen(step->because) < 10)
        fail_msg("%s: no reason", step->name);
}

static void every_card_says_why_it_comes_now(void **state)
{
    (void)state;
    each_card(check_reason);
}

static void check_lines(const struct plan *plan, const struct step *step)
{
    struct text out;
    char *line;

    text_init(&out);
    sheet_step(&out, plan, step);
    assert_false(text_failed(&out));
    char *whole = strdup(text_string(&out));
    assert_non_null(whole);
    text_release(&out);
    for (line = whole; *line;) {
        char *end = line + strcspn(line, "\n");
        bool last = !*end;

        *end = '\0';
        if (text_columns(line) > SHEET_COLUMNS)
            fail_msg("%s: too long: %s", step->name, line);
        line = last ? end : end + 1;
    }
    free(whole);
}

static void no_line_of_a_card_is_longer_than_its_paper(void **state)
{
    (void)state;
    each_card(check_lines);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_card_is_empty_or_says_more_than_seven_things),
        cmocka_unit_test(every_card_says_why_it_comes_now),
        cmocka_unit_test(no_line_of_a_card_is_longer_than_its_paper),
    };
    int failed;

    if (!setlocale(LC_CTYPE, "C.UTF-8"))
        return 1;
    failed = cmocka_run_group_tests_name("paper cards", tests, NULL, NULL);
    return failed ? 1 : 0;
}
