/* Getting about: help, places, sizes of the window, a file that another program has its hands on.
 */
#include "stage.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

static void help_names_the_keys_of_every_action(void **state)
{
    struct stage *stage = *state;
    char key[ACTION_KEY_TEXT];
    stage_press(stage, "?");
    const char *screen = stage_show(stage, 60, 120);
    for (int i = 0; i < ACTION_COUNT; i++) {
        assert_non_null(strstr(screen, action_key_name(actions[i].key, key)));
        assert_non_null(strstr(screen, actions[i].help));
    }
}

static void help_begins_with_the_screen_it_was_asked_on(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 F1");
    assert_shown(stage, "Here: order of work");
    stage_press(stage, "F1");
    assert_not_shown(stage, "Here:");
}

static void screens_do_not_pile_up_without_end(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    for (int i = 0; i < 40; i++)
        stage_press(stage, "F5 F6 F7 F8 F9 F10 F1");
    for (int i = 0; i < TUI_DEPTH; i++)
        stage_press(stage, "Esc");
    assert_shown(stage, "all builds");
}

static void esc_leads_from_any_place_to_the_build(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 F6 F7 F8 F9 F10 o b Esc");
    assert_shown(stage, "boxes, layers, joins");
}

static void a_place_that_is_open_below_is_gone_back_to(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F5 Down Down Enter b");
    assert_shown(stage, "> buying");
    stage_press(stage, "F5");
    assert_shown(stage, "> order of work");
    stage_press(stage, "Esc");
    assert_shown(stage, "boxes, layers, joins");
}

static void places_of_a_build_are_named_on_each_of_them(void **state)
{
    static const char *const keys[] = {"F5", "b", "k", "e", "m", "h", "f", "p", "t", "w"};
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
        stage_press(stage, keys[i]);
        assert_shown(stage, "o order  b buy  k cutting  e cloth  m money  f findings  h holes");
    }
    assert_null(strstr(stage_show(stage, 23, 80), "o order  b buy"));
    stage_press(stage, "Esc Enter");
    assert_not_shown(stage, "o order  b buy");
}

static void the_picture_follows_when_keys_pause(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    assert_shown(stage, "C, front right");
    driver_key(&stage->tui, KEY_GO_LAST); /* a join: its own picture, not the box's */
    assert_shown(stage, "C, front right");
    assert_true(driver_rest(&stage->tui));
    assert_not_shown(stage, "C, front right");
    assert_false(driver_rest(&stage->tui));
}

static void a_key_that_does_nothing_says_so(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F8 c");
    assert_shown(stage, "c does nothing here; ? shows the keys of this screen");
    stage_press(stage, "Left");
    assert_not_shown(stage, "does nothing here");
    stage_press(stage, "%");
    assert_shown(stage, "% does nothing here");
}

static void esc_on_the_first_screen_stays_there(void **state)
{
    struct stage *stage = *state;
    stage_press(stage, "Esc Esc Esc");
    assert_false(stage->over);
    assert_shown(stage, "all builds");
    stage_press(stage, "q");
    assert_true(stage->over);
}

static void assert_fits(const char *shown, int rows, int columns)
{
    int row = 0;

    for (const char *at = shown; *at; row++) {
        size_t length = strcspn(at, "\n");
        size_t wide = 0;

        for (size_t i = 0; i < length; i++)
            wide += ((unsigned char)at[i] & 0xC0) != 0x80; /* the first byte of a character */
        assert_true(wide <= (size_t)columns);
        at += length + (at[length] == '\n');
    }
    assert_true(row <= rows);
}

static void no_screen_is_larger_than_its_window_at_any_size(void **state)
{
    static const char *const screens[] = {
        "",   "F5", "Enter", "F6", "F7",
        "F8", "F9", "F10",   "F1", "Esc Esc Esc Esc Esc Esc Esc Enter",
        "F2"};
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    for (size_t i = 0; i < sizeof screens / sizeof *screens; i++) {
        stage_press(stage, screens[i]);
        for (int rows = 1; rows < 50; rows += 3) {
            for (int columns = 1; columns < 200; columns += 7)
                assert_fits(stage_show(stage, rows, columns), rows, columns);
        }
    }
}

static void too_small_a_window_says_what_is_needed(void **state)
{
    struct stage *stage = *state;
    assert_string_equal(stage_show(stage, 1, 50), "stuffover: 60 x 18 or more\n");
    assert_non_null(strstr(stage_show(stage, 18, 60), "all builds"));
}

static void what_another_program_wrote_shows_when_idle(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_rest(stage);
    assert_false(driver_idle(&stage->tui));
    struct desk *other = desk_at(&stage->place);
    DONE(desk_take_up_named(other, "Wing headboard", note));
    DONE(desk_set(other, ENTITY_build, 0, "name", "Guest bed", note));
    desk_close(other);
    assert_true(driver_idle(&stage->tui));
    assert_shown(stage, "Guest bed");
    stage_rest(stage);
    assert_false(driver_idle(&stage->tui));
}

static void assert_whole_copy(const struct stage *stage, const char *ending)
{
    struct workshop_place copy = stage->place;
    strncat(copy.path, ending, sizeof copy.path - strlen(copy.path) - 1);
    assert_place_is_sound(&copy);
    struct desk *desk = desk_at(&copy);
    DONE(desk_take_up_named(desk, "Wing headboard", note));
    desk_close(desk);
}

/* Deleted, and then replaced by another file. */
static void of_a_file_that_is_gone_a_copy_is_offered(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_rest(stage);
    assert_int_equal(unlink(stage->place.path), 0);
    assert_true(driver_idle(&stage->tui));
    stage_press(stage, "Down");
    assert_shown(stage, "the file was moved, deleted or replaced: Enter keeps a copy");
    stage_press(stage, "Enter");
    assert_shown(stage, "kept as /");
    assert_whole_copy(stage, ".copy");
    stage_rest(stage);
    assert_not_shown(stage, "Enter keeps a copy");
    stage_again(stage);
    stage_press(stage, "F1");
    stage_rest(stage);
    struct workshop_place other = stage->place;
    strncat(other.path, ".copy", sizeof other.path - strlen(other.path) - 1);
    assert_int_equal(rename(other.path, stage->place.path), 0);
    assert_true(driver_idle(&stage->tui));
    assert_shown(stage, "Enter keeps a copy");
    stage_press(stage, "Esc");
    assert_not_shown(stage, "kept as");
    assert_int_not_equal(access(other.path, F_OK), 0);
}

/* A copy that is there stays as it is. */
static void a_copy_gets_a_name_of_its_own(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    char path[700];
    snprintf(path, sizeof path, "%s.copy", stage->place.path);
    DONE(desk_backup(stage->desk, path, false, note));
    stage_rest(stage);
    assert_int_equal(unlink(stage->place.path), 0);
    assert_true(driver_idle(&stage->tui));
    stage_press(stage, "Enter");
    assert_shown(stage, "kept as /");
    assert_whole_copy(stage, ".copy-2");
}

static void a_hostile_name_cannot_move_the_cursor(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    DONE(desk_set(stage->desk, ENTITY_build, 0, "name",
                  "bed\u202e\xc2\x85"
                  "x",
                  note));
    assert_shown(stage, "bed\ufffd\ufffdx");
}

int main(void)
{
#define EMPTY(name) cmocka_unit_test_setup_teardown(name, stage_begin, stage_end)
#define CASES(name) cmocka_unit_test_setup_teardown(name, stage_begin_with_cases, stage_end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        EMPTY(help_names_the_keys_of_every_action),
        CASES(help_begins_with_the_screen_it_was_asked_on),
        CASES(screens_do_not_pile_up_without_end),
        CASES(esc_leads_from_any_place_to_the_build),
        CASES(a_place_that_is_open_below_is_gone_back_to),
        CASES(places_of_a_build_are_named_on_each_of_them),
        CASES(the_picture_follows_when_keys_pause),
        CASES(a_key_that_does_nothing_says_so),
        EMPTY(esc_on_the_first_screen_stays_there),
        CASES(no_screen_is_larger_than_its_window_at_any_size),
        EMPTY(too_small_a_window_says_what_is_needed),
        CASES(what_another_program_wrote_shows_when_idle),
        CASES(of_a_file_that_is_gone_a_copy_is_offered),
        CASES(a_copy_gets_a_name_of_its_own),
        CASES(a_hostile_name_cannot_move_the_cursor),
    };
    int failed = cmocka_run_group_tests_name("getting about", tests, NULL, NULL);
    return failed ? 1 : 0;
}
