/* Finding a line as its words are typed, and the keys that are done from their list. */
#include "stage.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static const struct list_view *list_on_top(const struct stage *stage)
{
    const struct open_screen *top = &stage->tui.stack[stage->tui.depth - 1];
    return top->screen->list(top->state);
}

/* The title of the step that is chosen in the order of work. */
static const char *chosen_step(const struct stage *stage)
{
    return desk_plan(stage->desk)->steps.at[list_on_top(stage)->chosen].title;
}

static void words_go_to_the_first_line_that_has_them(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "o / 'drill join'");
    assert_non_null(strstr(chosen_step(stage), "Drill join"));
    assert_shown(stage, "find: drill join");
    assert_shown(stage, "Enter stays");
}

static void each_letter_looks_again_from_where_it_began(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "o Home / l");
    const char *first = chosen_step(stage);
    assert_true(strchr(first, 'l') || strchr(first, 'L'));
    stage_press(stage, "'ook over'");
    assert_string_equal(chosen_step(stage), "Look over the bare wood of box L");
    stage_press(stage,
                "Backspace Backspace Backspace Backspace Backspace Backspace Backspace Backspace");
    assert_string_equal(chosen_step(stage), first);
}

static void down_and_up_go_through_the_lines_that_have_the_words(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "o Home / 'frame box'");
    assert_string_equal(chosen_step(stage), "Frame box C");
    stage_press(stage, "Down");
    assert_string_equal(chosen_step(stage), "Frame box L");
    stage_press(stage, "Down Down");
    assert_string_equal(chosen_step(stage), "Frame box C");
    stage_press(stage, "Up");
    assert_string_equal(chosen_step(stage), "Frame box R");
}

static void enter_stays_and_escape_goes_back(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "o End / 'frame' Enter");
    assert_string_equal(chosen_step(stage), "Frame box C");
    stage_press(stage, "End");
    int last = list_on_top(stage)->chosen;
    stage_press(stage, "/ 'frame' Esc");
    assert_int_equal(list_on_top(stage)->chosen, last);
    assert_not_shown(stage, "find:");
}

static void keys_are_letters_while_words_are_typed(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "o / q Space");
    assert_false(stage->over);
    assert_int_equal(desk_model(stage->desk)->ticks.count, 0);
}

static void words_that_no_line_has_are_told(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "o");
    int before = list_on_top(stage)->chosen;
    stage_press(stage, "/ 'zebra'");
    assert_shown(stage, "no line here has \"zebra\"");
    assert_int_equal(list_on_top(stage)->chosen, before);
}

static void what_is_pasted_is_found(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "o /");
    driver_paste(&stage->tui, "Frame box R");
    assert_string_equal(chosen_step(stage), "Frame box R");
}

/* Builds, an outline, the workshop, trade values, findings, what can be added, fields, spend. */
static void every_list_can_be_searched(void **state)
{
    static const struct {
        const char *keys, *shown;
    } lists[] = {
        {"/ 'headboard'", "find: headboard"},   {"w / 'foam'", "find: foam"},
        {"t / 'overwrap'", "batting.overwrap"}, {"Enter / 'lining'", "lining"},
        {"Enter f / 'widths'", "find: widths"}, {"Enter a / 'tufting'", "tufting"},
        {"Enter Enter / 'height'", "height"},
    };
    struct stage *stage = *state;
    for (size_t i = 0; i < sizeof lists / sizeof *lists; i++) {
        stage_press(stage, "Esc Esc Esc Esc Home");
        stage_press(stage, lists[i].keys);
        assert_shown(stage, lists[i].shown);
        assert_not_shown(stage, "no line here has");
        stage_press(stage, "Esc");
    }
}

static void where_there_is_nothing_to_find_it_is_said(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "m /");
    assert_shown(stage, "there is nothing here to find something in");
    assert_false(stage->tui.find.open);
}

/* ---- the list of keys ---- */

static void a_key_is_found_by_what_it_does_and_done(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "? / 'shopping' Enter Enter");
    assert_shown(stage, "SHOPPING LIST");
    stage_press(stage, "Esc");
    assert_shown(stage, "boxes, layers, joins");
}

static void a_key_is_found_by_the_word_of_its_hint(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "? / 'money' Enter Enter");
    assert_shown(stage, "> money");
}

static void what_is_done_from_the_keys_is_done_on_the_screen_below(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "o ? / 'tick the step' Enter Enter");
    assert_int_equal(desk_model(stage->desk)->ticks.count, 1);
    assert_shown(stage, "order of work");
}

static void a_heading_among_the_keys_does_nothing_but_close_them(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "? Home Enter");
    assert_shown(stage, "boxes, layers, joins");
}

/* The line of the sheet that is marked, counted from the top of the screen; -1 for none. */
static int marked_row(struct stage *stage)
{
    const struct open_screen *top = &stage->tui.stack[stage->tui.depth - 1];
    const struct pager *pager = top->screen->pager(top->state);
    stage_show(stage, 24, 80);
    return pager->found ? pager->found - 1 - pager->top : -1;
}

static void words_are_found_inside_a_sheet(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "h");
    stage_show(stage, 24, 80);
    stage_press(stage, "/ 'spacer'");
    int row = marked_row(stage);
    assert_true(row >= 0 && row < 21);
    const char *screen = stage_show(stage, 24, 80);
    for (int i = 0; i < row + 1; i++)
        screen = strchr(screen, '\n') + 1;
    assert_int_equal(strncmp(screen, "  spacer", 8), 0);
    stage_press(stage, "Enter");
    assert_true(marked_row(stage) >= 0);
    stage_press(stage, "Up");
    assert_int_equal(marked_row(stage), -1);
}

static void in_a_sheet_down_goes_on_and_esc_goes_back(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "h");
    stage_show(stage, 24, 80);
    stage_press(stage, "/ 'hole'");
    int first = marked_row(stage);
    stage_press(stage, "Down");
    assert_int_not_equal(marked_row(stage), first);
    stage_press(stage, "Up");
    assert_int_equal(marked_row(stage), first);
    stage_press(stage, "Esc");
    assert_int_equal(marked_row(stage), -1);
    assert_shown(stage, "hole maps");
}

static void what_no_line_of_a_sheet_has_is_said(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "o Enter / 'zebra'");
    assert_shown(stage, "no line here has \"zebra\"");
    assert_int_equal(marked_row(stage), -1);
}

#define WITH_CASES(test) cmocka_unit_test_setup_teardown(test, stage_begin_with_cases, stage_end)

int main(void)
{
    const struct CMUnitTest tests[] = {
        WITH_CASES(words_go_to_the_first_line_that_has_them),
        WITH_CASES(each_letter_looks_again_from_where_it_began),
        WITH_CASES(down_and_up_go_through_the_lines_that_have_the_words),
        WITH_CASES(enter_stays_and_escape_goes_back),
        WITH_CASES(keys_are_letters_while_words_are_typed),
        WITH_CASES(words_that_no_line_has_are_told),
        WITH_CASES(what_is_pasted_is_found),
        WITH_CASES(every_list_can_be_searched),
        WITH_CASES(where_there_is_nothing_to_find_it_is_said),
        WITH_CASES(a_key_is_found_by_what_it_does_and_done),
        WITH_CASES(a_key_is_found_by_the_word_of_its_hint),
        WITH_CASES(what_is_done_from_the_keys_is_done_on_the_screen_below),
        WITH_CASES(a_heading_among_the_keys_does_nothing_but_close_them),
        WITH_CASES(words_are_found_inside_a_sheet),
        WITH_CASES(in_a_sheet_down_goes_on_and_esc_goes_back),
        WITH_CASES(what_no_line_of_a_sheet_has_is_said),
    };
    setlocale(LC_ALL, "C.UTF-8");
    return cmocka_run_group_tests_name("finding", tests, NULL, NULL) ? 1 : 0;
}
