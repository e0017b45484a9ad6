/* The file of settings: what a line may say, what is told of the others, and what it changes. */
#include "kept.h"
#include "stage.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cmocka.h>

static struct settings read_lines(const char *lines)
{
    struct settings settings;
    settings_standard(&settings);
    settings_parse(&settings, lines, strlen(lines));
    return settings;
}

static void assert_complaint(const struct settings *settings, int index, int line, const char *why)
{
    assert_true(index < settings->complaint_count);
    assert_int_equal(settings->complaints[index].line, line);
    if (!strstr(settings->complaints[index].why, why))
        fail_msg("\"%s\" does not say \"%s\"", settings->complaints[index].why, why);
}

static enum action action_at(const struct settings *settings, int key)
{
    return keymap_action(&settings->keys, key);
}

/* ---- lines that hold ---- */

static void a_line_gives_an_action_its_keys(void **state)
{
    (void)state;
    struct settings settings =
        read_lines("# mine\n\nkey note N\n  key order F5 O\tctrl-r # both\r\nset mouse on");
    assert_int_equal(settings.complaint_count, 0);
    assert_int_equal(action_at(&settings, KEY_F1 + 4), ACTION_STEPS);
    assert_int_equal(action_at(&settings, 'O'), ACTION_STEPS);
    assert_int_equal(action_at(&settings, KEY_CONTROL('R')), ACTION_STEPS);
    assert_int_equal(action_at(&settings, 'o'), ACTION_NONE);
    assert_int_equal(keymap_hint(&settings.keys, ACTION_STEPS), 'O');
    assert_true(settings.mouse);
}

static void two_actions_can_change_their_keys(void **state)
{
    (void)state;
    struct settings settings = read_lines("key undo r F11\nkey redo u F12\n");
    assert_int_equal(settings.complaint_count, 0);
    assert_int_equal(action_at(&settings, 'r'), ACTION_UNDO);
    assert_int_equal(action_at(&settings, 'u'), ACTION_REDO);
}

static void letters_of_any_script_are_keys(void **state)
{
    (void)state;
    struct settings settings = read_lines("key money \u043c F7\n");
    assert_int_equal(settings.complaint_count, 0);
    assert_int_equal(action_at(&settings, 0x43c), ACTION_MONEY);
}

static void enter_and_escape_keep_their_meaning(void **state)
{
    (void)state;
    struct settings settings = read_lines("key enter J\nkey back z\n");
    assert_int_equal(settings.complaint_count, 0);
    assert_int_equal(action_at(&settings, 'J'), ACTION_ENTER);
    assert_int_equal(action_at(&settings, KEY_RETURN), ACTION_ENTER);
    assert_int_equal(action_at(&settings, 'z'), ACTION_LEAVE);
    assert_int_equal(action_at(&settings, KEY_ESCAPE), ACTION_LEAVE);
}

/* ---- lines that do not ---- */

static void a_line_with_a_fault_is_told_and_the_others_hold(void **state)
{
    static const struct {
        const char *line;
        const char *why;
    } lines[] = {{"key fly F5", "fly is no action"},
                 {"key", "nothing is no action"},
                 {"key order", "order gets no key"},
                 {"key order F13", "no key is called F13"},
                 {"key order Enter", "always enters"},
                 {"key order 7", "begins a figure"},
                 {"key order Ctrl-Z", "the terminal keeps it"},
                 {"bind order F5", "begins with key or set"},
                 {"set mouse", "what can be set"},
                 {"set colour on", "what can be set"}};
    (void)state;
    for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
        char file[200];
        snprintf(file, sizeof file, "\n%s\nkey buy Z F6\n", lines[i].line);
        struct settings settings = read_lines(file);
        assert_int_equal(settings.complaint_count, 1);
        assert_complaint(&settings, 0, 2, lines[i].why);
        assert_int_equal(action_at(&settings, 'Z'), ACTION_BUYING);
        assert_int_equal(action_at(&settings, 'o'), ACTION_STEPS);
    }
}

static void two_lines_that_want_one_key_are_told_of(void **state)
{
    (void)state;
    struct settings settings = read_lines("key order F5 z\nkey money F7 z\nkey order F5\n");
    assert_int_equal(settings.complaint_count, 2);
    assert_complaint(&settings, 0, 2, "z is taken by line 1");
    assert_complaint(&settings, 1, 3, "order has its keys from line 1");
    assert_int_equal(action_at(&settings, 'z'), ACTION_STEPS);
    assert_int_equal(action_at(&settings, 'm'), ACTION_MONEY);
}

static void a_standard_key_gives_way_and_that_is_told(void **state)
{
    (void)state;
    struct settings settings = read_lines("key money o F7\n");
    assert_int_equal(settings.complaint_count, 1);
    assert_complaint(&settings, 0, 1, "o is no key of order any more");
    assert_int_equal(action_at(&settings, 'o'), ACTION_MONEY);
    assert_int_equal(action_at(&settings, KEY_F1 + 4), ACTION_STEPS);
    assert_int_equal(keymap_hint(&settings.keys, ACTION_STEPS), KEY_F1 + 4);
}

static void no_action_loses_its_last_key(void **state)
{
    (void)state;
    struct settings settings = read_lines("key money Down\n");
    assert_int_equal(settings.complaint_count, 1);
    assert_complaint(&settings, 0, 1, "Down is all that down has");
    assert_int_equal(action_at(&settings, KEY_ARROW_DOWN), ACTION_DOWN);
    assert_int_equal(action_at(&settings, 'm'), ACTION_MONEY);
}

/* Whatever lines say: every action has a key, and no key has two. */
static void assert_whole(const struct settings *settings)
{
    for (int i = 0; i < ACTION_COUNT; i++) {
        int count = keymap_count(&settings->keys, (enum action)i);
        assert_true(count > 0);
        for (int k = 0; k < count; k++)
            assert_int_equal(action_at(settings, settings->keys.keys[i][k]), i);
    }
}

static void lines_that_push_each_other_out_leave_all_with_keys(void **state)
{
    (void)state;
    struct settings settings = read_lines("key up Down\nkey down Left\nkey left Right\n"
                                          "key right Up\nkey first Space\nkey tick End\n");
    assert_whole(&settings);
    settings = read_lines("key order F6 b\nkey buy F7 m\nkey money F8 f\n");
    assert_whole(&settings);
}

/* ---- a file that is none ---- */

static void bytes_that_are_no_text_do_nothing(void **state)
{
    static const char bytes[] = "key order \033[2J F5\nkey \0money z\n\xff\xfe\n";
    struct settings settings;
    (void)state;
    settings_standard(&settings);
    settings_parse(&settings, bytes, sizeof bytes - 1);
    assert_int_equal(settings.complaint_count, 3);
    assert_complaint(&settings, 0, 1, "no plain text");
    assert_complaint(&settings, 2, 3, "no plain text");
    assert_whole(&settings);
}

static void a_file_without_end_is_left_out(void **state)
{
    struct settings settings;
    size_t length = SETTINGS_MOST + 1;
    char *bytes = malloc(length);
    (void)state;
    assert_non_null(bytes);
    memset(bytes, '\n', length);
    settings_standard(&settings);
    settings_parse(&settings, bytes, length);
    assert_complaint(&settings, 0, 0, "too long");
    memset(bytes, 'k', length);
    settings_standard(&settings);
    settings_parse(&settings, bytes, SETTINGS_MOST);
    assert_complaint(&settings, 0, 1, "too long");
    free(bytes);
}

/* More are counted than are kept. */
static void thousands_of_complaints_are_counted(void **state)
{
    struct text text;
    (void)state;
    text_init(&text);
    for (int i = 0; i < 3000; i++)
        text_add(&text, "nonsense\n");
    struct settings settings = read_lines(text_string(&text));
    assert_int_equal(settings.complaint_count, 3000);
    assert_complaint(&settings, SETTINGS_COMPLAINTS - 1, SETTINGS_COMPLAINTS, "begins with");
    text_release(&text);
}

/* ---- the file's place ---- */

static void the_file_lies_in_the_folder_of_settings(void **state)
{
    struct stage *stage = *state;
    struct settings settings;
    char folder[600];
    char path[700];
    snprintf(folder, sizeof folder, "%s/stuffover", stage->place.folder);
    snprintf(path, sizeof path, "%s/terminal.conf", folder);
    setenv("XDG_CONFIG_HOME", stage->place.folder, 1);
    settings_standard(&settings);
    settings_read(&settings);
    assert_int_equal(settings.complaint_count, 0);
    assert_string_equal(settings.path, path);
    assert_int_equal(mkdir(folder, 0700), 0);
    file_put(path, "set mouse on\n");
    settings_read(&settings);
    assert_true(settings.mouse);
    unlink(path);
    assert_int_equal(mkfifo(path, 0600), 0);
    settings_standard(&settings);
    settings_read(&settings);
    assert_complaint(&settings, 0, 0, "no file that can be read");
    unlink(path);
    rmdir(folder);
    unsetenv("XDG_CONFIG_HOME");
}

/* ---- what the screens say ---- */

static void hints_help_and_messages_name_the_keys_that_work(void **state)
{
    struct stage *stage = *state;
    stage->tui.settings = read_lines("key order O F5\nkey undo U F11\nkey fly z\n");
    stage_take_up(stage, "Wing headboard");
    assert_shown(stage, "O order");
    stage_press(stage, "d");
    assert_shown(stage, "deleted; U brings it back");
    stage_press(stage, "U O");
    assert_shown(stage, "order of work");
    stage_press(stage, "F1 / 'order of work'");
    assert_shown(stage, "O        F5");
    stage_press(stage, "Enter End");
    assert_shown(stage, "line 3: fly is no action");
}

int main(void)
{
#define CASES(name) cmocka_unit_test_setup_teardown(name, stage_begin_with_cases, stage_end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_line_gives_an_action_its_keys),
        cmocka_unit_test(two_actions_can_change_their_keys),
        cmocka_unit_test(letters_of_any_script_are_keys),
        cmocka_unit_test(enter_and_escape_keep_their_meaning),
        cmocka_unit_test(a_line_with_a_fault_is_told_and_the_others_hold),
        cmocka_unit_test(two_lines_that_want_one_key_are_told_of),
        cmocka_unit_test(a_standard_key_gives_way_and_that_is_told),
        cmocka_unit_test(no_action_loses_its_last_key),
        cmocka_unit_test(lines_that_push_each_other_out_leave_all_with_keys),
        cmocka_unit_test(bytes_that_are_no_text_do_nothing),
        cmocka_unit_test(a_file_without_end_is_left_out),
        cmocka_unit_test(thousands_of_complaints_are_counted),
        CASES(the_file_lies_in_the_folder_of_settings),
        CASES(hints_help_and_messages_name_the_keys_that_work),
    };
    int failed = cmocka_run_group_tests_name("settings", tests, NULL, NULL);
    return failed ? 1 : 0;
}
