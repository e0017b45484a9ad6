/* The mouse on lines and sheets, and what is copied into the terminal's clipboard. */
#include "stage.h"

#include "tui/copyout.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static const struct open_screen *top_of(const struct stage *stage)
{
    return &stage->tui.stack[stage->tui.depth - 1];
}

static const struct list_view *list_of(const struct stage *stage)
{
    return top_of(stage)->screen->list(top_of(stage)->state);
}

static void point(struct stage *stage, enum pointer_kind kind, int row)
{
    const struct pointer pointer = {kind, row, 3};
    stage_show(stage, 24, 80);
    assert_int_equal(driver_pointer(&stage->tui, &pointer), REACT_TAKEN);
}

/* ---- the mouse ---- */

static void a_press_chooses_and_a_second_one_opens(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "o");
    point(stage, POINTER_PRESS, 7);
    assert_int_equal(list_of(stage)->chosen, 6);
    point(stage, POINTER_PRESS, 1);
    assert_int_equal(list_of(stage)->chosen, 0);
    point(stage, POINTER_PRESS, 1);
    assert_shown(stage, "Step 1 of");
}

static void a_press_beside_the_lines_does_nothing(void **state)
{
    static const int rows[] = {0, 22, 23, 1000, -1};
    struct stage *stage = *state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        point(stage, POINTER_PRESS, rows[i]);
    assert_int_equal(list_of(stage)->chosen, 0);
    assert_shown(stage, "all builds");
}

static void the_wheel_moves_by_three_lines(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "o Home");
    point(stage, POINTER_WHEEL_DOWN, 5);
    assert_int_equal(list_of(stage)->chosen, 3);
    point(stage, POINTER_WHEEL_UP, 5);
    assert_int_equal(list_of(stage)->chosen, 0);
    stage_press(stage, "h");
    point(stage, POINTER_WHEEL_DOWN, 5);
    assert_int_equal(top_of(stage)->screen->pager(top_of(stage)->state)->top, 3);
}

static void what_is_being_typed_is_left_alone(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "Enter Down Down Enter '8'");
    point(stage, POINTER_PRESS, 2);
    point(stage, POINTER_WHEEL_DOWN, 2);
    assert_int_equal(list_of(stage)->chosen, 2);
    stage_press(stage, "'0' Enter");
    assert_shown(stage, "80 in");
}

static void a_key_gives_the_mouse_to_the_terminal_and_back(void **state)
{
    struct stage *stage = *state;
    assert_false(stage->tui.settings.mouse);
    stage_press(stage, "M");
    assert_true(stage->tui.settings.mouse);
    assert_shown(stage, "a second click opens");
    stage_press(stage, "Ctrl-G");
    assert_false(stage->tui.settings.mouse);
}

/* ---- the clipboard ---- */

static void assert_sequence(const char *text, const char *expected)
{
    struct text sequence;
    text_init(&sequence);
    copy_sequence(&sequence, text);
    assert_string_equal(text_string(&sequence), expected);
    text_release(&sequence);
}

/* The vectors of RFC 4648, section 10. */
static void the_clipboard_is_told_in_base64(void **state)
{
    (void)state;
    assert_sequence("f", "\033]52;c;Zg==\a");
    assert_sequence("fo", "\033]52;c;Zm8=\a");
    assert_sequence("foo", "\033]52;c;Zm9v\a");
    assert_sequence("foob", "\033]52;c;Zm9vYg==\a");
    assert_sequence("fooba", "\033]52;c;Zm9vYmE=\a");
    assert_sequence("foobar", "\033]52;c;Zm9vYmFy\a");
}

/* A name with an escape sequence in it does not reach the clipboard as one: the escape becomes
 * U+FFFD, whose UTF-8 is EF BF BD. */
static void what_could_do_harm_elsewhere_is_not_copied(void **state)
{
    (void)state;
    assert_sequence("\033", "\033]52;c;77+9\a");
}

static void a_line_and_a_list_are_copied_out(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "b y");
    assert_non_null(strstr(text_string(&stage->tui.outgoing), "2x3 stud"));
    assert_null(strstr(text_string(&stage->tui.outgoing), "Plywood"));
    assert_shown(stage, "1 line is in the terminal's clipboard");
    stage_press(stage, "Y");
    assert_non_null(strstr(text_string(&stage->tui.outgoing), "2x3 stud"));
    assert_non_null(strstr(text_string(&stage->tui.outgoing), "Plywood"));
}

static void a_sheet_is_copied_whole(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "h y");
    assert_non_null(strstr(text_string(&stage->tui.outgoing), "J1"));
    stage_press(stage, "Esc o Enter y");
    assert_non_null(strstr(text_string(&stage->tui.outgoing), "Step 1 of"));
}

/* Every list and sheet has lines: else there would be a screen that nothing is copied from. A
 * picture has none. */
static void every_screen_can_be_copied_out(void **state)
{
    static const struct screen *const screens[] = {
#define SCREEN_ROW(name) &screen_##name,
        SCREENS(SCREEN_ROW)
#undef SCREEN_ROW
    };
    (void)state;
    for (size_t i = 0; i < sizeof screens / sizeof *screens; i++) {
        assert_true(screens[i] == &screen_picture || (screens[i]->list && screens[i]->line) ||
                    (screens[i]->pager && screens[i]->sheet));
    }
}

static void nothing_is_said_to_be_nothing(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "m y");
    assert_int_equal(stage->tui.outgoing.length, 0);
    assert_shown(stage, "nothing here to copy out");
}

int main(void)
{
#define CASES(name) cmocka_unit_test_setup_teardown(name, stage_begin_with_cases, stage_end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        CASES(a_press_chooses_and_a_second_one_opens),
        CASES(a_press_beside_the_lines_does_nothing),
        CASES(the_wheel_moves_by_three_lines),
        CASES(what_is_being_typed_is_left_alone),
        CASES(a_key_gives_the_mouse_to_the_terminal_and_back),
        cmocka_unit_test(the_clipboard_is_told_in_base64),
        cmocka_unit_test(what_could_do_harm_elsewhere_is_not_copied),
        CASES(a_line_and_a_list_are_copied_out),
        CASES(a_sheet_is_copied_whole),
        cmocka_unit_test(every_screen_can_be_copied_out),
        CASES(nothing_is_said_to_be_nothing),
    };
    int failed = cmocka_run_group_tests_name("pointer", tests, NULL, NULL);
    return failed ? 1 : 0;
}
