/*
 * Ways out of findings on the screen. They are given to the findings by hand here, so that the
 * screen is held whatever the engine offers.
 */
#include "stage.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#define INCH(x) ((int64_t)((x)*8128.0))
#define CENTRE 3 /* key of box C in the headboard's file */

static const struct cure_edit wider[] = {{ENTITY_box, CENTRE, "width", "80 in"}};
static const struct cure_edit renamed[] = {{ENTITY_box, CENTRE, "name", "Centre"}};
static const struct cure_edit wrong[] = {{ENTITY_box, CENTRE, "width", "two cows"}};

static const struct cure cures[] = {{"Make box C wider", wider, 1, false},
                                    {"Give box C a longer name", renamed, 1, false},
                                    {"Make box C as wide as two cows", wrong, 1, false}};

static const char *story[] = {"The heads of J1 lie in the bay of C.",
                              "The bay is as wide as box C leaves it."};

/* The headboard with a story and three ways out of its first finding, on its findings screen. */
static void open_findings(struct stage *stage)
{
    stage_take_up(stage, "Wing headboard");
    struct finding *finding = &desk_told_plan(stage->desk)->findings.at[0];
    finding->cures = cures;
    finding->cure_count = sizeof cures / sizeof *cures;
    finding->story = story;
    finding->story_count = sizeof story / sizeof *story;
    stage_press(stage, "F8");
}

static int64_t width_of_centre(const struct stage *stage)
{
    return MODEL_FIND(desk_model(stage->desk), box, CENTRE)->width;
}

static void story_and_ways_out_stand_under_the_chosen_finding(void **state)
{
    struct stage *stage = *state;
    open_findings(stage);
    assert_shown(stage, "The heads of J1 lie in the bay of C.");
    assert_shown(stage, "  1  Make box C wider");
    assert_shown(stage, "  3  Make box C as wide");
    stage_press(stage, "Down");
    assert_not_shown(stage, "Make box C wider");
}

static void way_out_that_is_taken_up_shows_what_it_changes(void **state)
{
    struct stage *stage = *state;
    open_findings(stage);
    assert_shown(stage, "cost 415.40+ ");
    stage_press(stage, "Right");
    assert_shown(stage, "> 1  Make box C wider");
    assert_shown(stage, "(+");
    assert_shown(stage, "Enter take it");
    assert_int_equal(width_of_centre(stage), INCH(63));
}

static void escape_leaves_it(void **state)
{
    struct stage *stage = *state;
    open_findings(stage);
    stage_press(stage, "Right Esc");
    assert_not_shown(stage, "> 1");
    assert_not_shown(stage, "(+");
    assert_shown(stage, "> findings");
    assert_int_equal(width_of_centre(stage), INCH(63));
    assert_null(stage->tui.preview);
    stage_press(stage, "Esc");
    assert_not_shown(stage, "> findings");
}

static void enter_takes_it_as_one_edit(void **state)
{
    struct stage *stage = *state;
    char label[STORE_LABEL];
    open_findings(stage);
    stage_press(stage, "Right Enter");
    assert_shown(stage, "done: Make box C wider; u takes it back");
    assert_int_equal(width_of_centre(stage), INCH(80));
    desk_undo_label(stage->desk, label);
    assert_string_equal(label, "Make box C wider");
    stage_press(stage, "u");
    assert_int_equal(width_of_centre(stage), INCH(63));
}

static void arrows_go_through_the_ways_out(void **state)
{
    struct stage *stage = *state;
    open_findings(stage);
    stage_press(stage, "Right Right");
    assert_shown(stage, "> 2  Give box C a longer name");
    assert_not_shown(stage, "(+");
    stage_press(stage, "Left");
    assert_shown(stage, "> 1");
    stage_press(stage, "Left");
    assert_not_shown(stage, "> 1");
    stage_press(stage, "Right Right Right Right");
    assert_shown(stage, "> 3");
}

static void way_out_that_is_refused_says_why_and_changes_nothing(void **state)
{
    struct stage *stage = *state;
    open_findings(stage);
    stage_press(stage, "Right Right Right");
    assert_shown(stage, "two cows");
    assert_null(stage->tui.preview);
    stage_press(stage, "Enter");
    assert_int_equal(width_of_centre(stage), INCH(63));
    assert_not_shown(stage, "done:");
}

static void finding_without_a_way_out_says_so(void **state)
{
    struct stage *stage = *state;
    open_findings(stage);
    struct finding *finding = &desk_told_plan(stage->desk)->findings.at[1];
    finding->cure_count = 0;
    stage_press(stage, "Down Right");
    assert_shown(stage, "no way out is known");
}

/* Leaving the program while one is taken up leaves the build as it was. */
static void other_keys_put_it_down(void **state)
{
    static const char *const keys[] = {"F5", "q", "x", "Down"};
    struct stage *stage = *state;
    open_findings(stage);
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
        stage_press(stage, "Right");
        stage_press(stage, keys[i]);
        assert_null(stage->tui.preview);
        assert_shown(stage, "> findings");
        assert_false(stage->over);
    }
    stage_again(stage);
    stage_take_up(stage, "Wing headboard");
    assert_int_equal(width_of_centre(stage), INCH(63));
}

int main(void)
{
#define CASES(name) cmocka_unit_test_setup_teardown(name, stage_begin_with_cases, stage_end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        CASES(story_and_ways_out_stand_under_the_chosen_finding),
        CASES(way_out_that_is_taken_up_shows_what_it_changes),
        CASES(escape_leaves_it),
        CASES(enter_takes_it_as_one_edit),
        CASES(arrows_go_through_the_ways_out),
        CASES(way_out_that_is_refused_says_why_and_changes_nothing),
        CASES(finding_without_a_way_out_says_so),
        CASES(other_keys_put_it_down),
    };
    int failed = cmocka_run_group_tests_name("cures", tests, NULL, NULL);
    return failed ? 1 : 0;
}
