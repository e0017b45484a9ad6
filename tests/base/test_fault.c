/* Faults as values: words, exit codes by convention, notes that are safe to show. */
#include "base/fault.h"
#include "base/utf8.h"

#include "base/text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

static void every_fault_has_words_and_an_exit_code_of_the_conventions(void **state)
{
    (void)state;
    for (int code = 0; code < FAULT_COUNT; code++) {
        assert_true(strlen(fault_words((enum fault)code)) > 0);
        assert_in_range(fault_exit_code((enum fault)code), code == FAULT_NONE ? 0 : 1, 5);
    }
    assert_int_equal(fault_exit_code(FAULT_NONE), 0);
    assert_int_equal(fault_exit_code(FAULT_SYNTAX), 1);
    assert_int_equal(fault_exit_code(FAULT_USAGE), 2);
    assert_int_equal(fault_exit_code(FAULT_TERMINAL), 3);
    assert_int_equal(fault_exit_code(FAULT_NEWER), 4);
    assert_int_equal(fault_exit_code(FAULT_LOCKED), 5);
}

static void say_fills_the_note_and_clears_the_old_place(void **state)
{
    struct fault_note note = {.line = 9, .column = 9, .path = "old", .why = "old"};

    (void)state;
    assert_int_equal(fault_say_column(&note, FAULT_RANGE, 4, "%d is too %s", 12, "wide"),
                     FAULT_RANGE);
    assert_int_equal(note.code, FAULT_RANGE);
    assert_int_equal(note.line, 0);
    assert_int_equal(note.column, 4);
    assert_string_equal(note.path, "");
    assert_string_equal(note.why, "12 is too wide");
}

static void a_note_may_be_left_out(void **state)
{
    (void)state;
    assert_int_equal(fault_say_column(NULL, FAULT_UNIT, 1, "%s", "x"), FAULT_UNIT);
    assert_int_equal(fault_at(NULL, "%s", "x"), FAULT_NONE);
}

static void at_names_the_field_and_keeps_the_rest(void **state)
{
    struct fault_note note;

    (void)state;
    fault_say_column(&note, FAULT_RANGE, 4, "too wide");
    assert_int_equal(fault_at(&note, "boxes[%d].width", 2), FAULT_RANGE);
    assert_string_equal(note.path, "boxes[2].width");
    assert_string_equal(note.why, "too wide");
    assert_int_equal(note.column, 4);
}

static void a_long_reason_is_cut_at_a_characters_edge(void **state)
{
    struct fault_note note;

    (void)state;
    for (size_t lead = 0; lead < 4; lead++) {
        char why[600] = "abc";

        for (size_t i = lead; i + 3 < sizeof why; i += 3)
            memcpy(why + i, "\xe2\x82\xac", 4);
        fault_say(&note, FAULT_SYNTAX, "%s", why);
        assert_true(utf8_valid(note.why, strlen(note.why)));
        assert_in_range(strlen(note.why), sizeof note.why - 4, sizeof note.why - 1);
        assert_memory_equal(note.why, why, strlen(note.why));
    }
}

static void a_reason_and_a_path_are_safe_to_show(void **state)
{
    struct fault_note note;

    (void)state;
    fault_say(&note, FAULT_SYNTAX, "\"%s\" does not fit", "\033[2J");
    fault_at(&note, "name\n%s", "\xff");
    assert_string_equal(note.why, "\"\xef\xbf\xbd[2J\" does not fit");
    assert_string_equal(note.path, "name\xef\xbf\xbd\xef\xbf\xbd");
}

static void print_gives_the_parts_that_are_known(void **state)
{
    static const struct {
        struct fault_note note;
        const char *printed;
    } rows[] = {
        {{.code = FAULT_SYNTAX, .line = 3, .column = 7, .path = "boxes[2].width", .why = "no"},
         "boxes[2].width: line 3, column 7: no"},
        {{.code = FAULT_SYNTAX, .line = 3, .path = "a", .why = "no"}, "a: line 3: no"},
        {{.code = FAULT_SYNTAX, .column = 7, .why = "no"}, "column 7: no"},
        {{.code = FAULT_SYNTAX, .path = "a", .why = "no"}, "a: no"},
        {{.code = FAULT_MEMORY}, "out of memory"},
    };
    char buffer[400];

    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        int length = fault_print(buffer, sizeof buffer, &rows[i].note);

        assert_string_equal(buffer, rows[i].printed);
        assert_int_equal(length, strlen(rows[i].printed));
    }
}

static void print_into_little_room_says_how_much_it_needs(void **state)
{
    struct fault_note note = {.code = FAULT_RANGE, .why = "too wide"};
    char buffer[4];

    (void)state;
    assert_int_equal(fault_print(buffer, sizeof buffer, &note), 8);
    assert_string_equal(buffer, "too");
    assert_int_equal(fault_print(NULL, 0, &note), 8);
}

static void bug_says_where_on_standard_error_and_aborts(void **state)
{
    char said[200] = "";
    FILE *reader;
    pid_t child;
    int ends[2];
    int status;

    (void)state;
    assert_int_equal(pipe(ends), 0);
    child = fork();
    if (child == 0) {
        dup2(ends[1], STDERR_FILENO);
        BUG("two rails in one place");
    }
    assert_true(child > 0);
    close(ends[1]);
    reader = fdopen(ends[0], "r");
    assert_non_null(reader);
    assert_non_null(fgets(said, sizeof said, reader));
    fclose(reader);
    assert_int_equal(waitpid(child, &status, 0), child);
    assert_true(WIFSIGNALED(status) && WTERMSIG(status) == SIGABRT);
    assert_non_null(strstr(said, "test_fault.c:"));
    assert_non_null(strstr(said, "two rails in one place"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_fault_has_words_and_an_exit_code_of_the_conventions),
        cmocka_unit_test(say_fills_the_note_and_clears_the_old_place),
        cmocka_unit_test(a_note_may_be_left_out),
        cmocka_unit_test(at_names_the_field_and_keeps_the_rest),
        cmocka_unit_test(a_long_reason_is_cut_at_a_characters_edge),
        cmocka_unit_test(a_reason_and_a_path_are_safe_to_show),
        cmocka_unit_test(print_gives_the_parts_that_are_known),
        cmocka_unit_test(print_into_little_room_says_how_much_it_needs),
        cmocka_unit_test(bug_says_where_on_standard_error_and_aborts),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
