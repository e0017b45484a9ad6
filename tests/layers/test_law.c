/* The laws on small made-up sources, and then on the tree itself, whose root is the argument. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <string.h>

#include "law.h"
#include "tree.h"

static const char *root;

static int floors_found(const char *path, const char *text)
{
    struct complaints found = {0};
    law_check_floors(&found, path, text);
    return found.count;
}

static int lines_found(const char *text)
{
    struct complaints found = {0};
    law_check_lines(&found, "plan/made_up.c", text);
    return found.count;
}

static void an_include_that_climbs_is_caught(void **state)
{
    (void)state;
    assert_int_equal(floors_found("base/text.c", "#include \"model/box.h\"\n"), 1);
    assert_int_equal(floors_found("plan/frame.c", "\n # include  \"desk/desk.h\"\n"), 1);
    assert_int_equal(floors_found("plan/frame.c", "#include <store/store.h>\n"), 1);
    assert_int_equal(floors_found("plan/deep/frame.c", "#include \"store/store.h\"\n"), 1);
}

static void an_include_that_goes_down_is_free(void **state)
{
    (void)state;
    assert_int_equal(floors_found("plan/frame.c", "#include \"base/list.h\"\n"), 0);
    assert_int_equal(floors_found("plan/frame.c", "#include \"plan/panel.h\"\n"), 0);
    assert_int_equal(floors_found("plan/frame.c", "#include <stdlib.h>\n"), 0);
    assert_int_equal(floors_found("main.c", "#include \"tui/tui.h\"\n#include \"cli/cli.h\"\n"), 0);
}

static void neighbours_on_one_level_stay_apart(void **state)
{
    (void)state;
    assert_int_equal(floors_found("cut/bars.c", "#include \"model/stock.h\"\n"), 1);
    assert_int_equal(floors_found("model/stock.c", "#include \"cut/bars.h\"\n"), 1);
    assert_int_equal(floors_found("store/store.c", "#include \"exchange/json.h\"\n"), 1);
    assert_int_equal(floors_found("cli/list.c", "#include \"tui/screen.h\"\n"), 1);
}

static void the_store_knows_no_plan(void **state)
{
    (void)state;
    assert_int_equal(floors_found("store/store.c", "#include \"plan/plan.h\"\n"), 1);
    assert_int_equal(floors_found("draw/iso.c", "#include \"plan/plan.h\"\n"), 0);
}

static void a_comment_is_no_include(void **state)
{
    (void)state;
    assert_int_equal(floors_found("base/text.c", "// #include \"model/box.h\"\n"), 0);
    assert_int_equal(floors_found("base/text.c", "/*\n#include \"model/box.h\"\n*/\n"), 0);
    assert_int_equal(floors_found("base/text.c", "/* \" */\n#include \"model/box.h\"\n"), 1);
    assert_int_equal(floors_found("base/text.c", "char s[] = \"/*\";\n#include \"cut/a.h\"\n"), 1);
}

static void a_quoted_include_names_a_floor(void **state)
{
    (void)state;
    assert_int_equal(floors_found("plan/frame.c", "#include \"../base/list.h\"\n"), 1);
    assert_int_equal(floors_found("plan/frame.c", "#include \"attic/list.h\"\n"), 1);
    assert_int_equal(floors_found("store/schema.c", "#include \"schema_text.h\"\n"), 0);
}

static void a_library_header_stays_on_its_floor(void **state)
{
    (void)state;
    static const char *const headers[][2] = {
        {"sqlite3.h", "store/a.c"},   {"curses.h", "tui/a.c"},
        {"panel.h", "tui/a.c"},       {"ncursesw/curses.h", "tui/a.c"},
        {"term.h", "tui/a.c"},        {"jansson.h", "exchange/a.c"},
        {"cairo-pdf.h", "paper/a.c"}, {"pango/pangocairo.h", "paper/a.c"},
    };
    for (size_t i = 0; i < sizeof headers / sizeof headers[0]; i++) {
        char line[80];
        snprintf(line, sizeof line, "#include <%s>\n", headers[i][0]);
        assert_int_equal(floors_found(headers[i][1], line), 0);
        assert_int_equal(floors_found("desk/a.c", line), 1);
        assert_int_equal(floors_found("main.c", line), 1);
    }
    assert_int_equal(floors_found("cli/a.c", "#include <termios.h>\n"), 0);
}

static void the_engine_has_no_clock(void **state)
{
    (void)state;
    assert_int_equal(floors_found("plan/order.c", "#include <time.h>\n"), 1);
    assert_int_equal(floors_found("base/text.c", "#include <sys/time.h>\n"), 1);
    assert_int_equal(floors_found("plan/order.c", "long now = time(NULL);\n"), 1);
    assert_int_equal(floors_found("desk/desk.c", "#include <time.h>\n"), 0);
}

static void the_engine_calls_nothing_that_prints_or_exits(void **state)
{
    (void)state;
    assert_int_equal(floors_found("model/box.c", "printf (\"box\");\n"), 1);
    assert_int_equal(floors_found("cut/bars.c", "fprintf(stderr, \"bar\");\n"), 1);
    assert_int_equal(floors_found("base/list.c", "if (full) exit(1);\n"), 1);
    assert_int_equal(floors_found("plan/order.c", "const char *home = getenv(\"HOME\");\n"), 1);
}

static void a_name_that_only_looks_like_a_call_is_free(void **state)
{
    (void)state;
    assert_int_equal(floors_found("model/box.c", "snprintf(a, 2, \"%d\", 1);\n"), 0);
    assert_int_equal(floors_found("model/box.c", "char s[] = \"printf(x)\"; /* exit(1) */\n"), 0);
    assert_int_equal(floors_found("model/box.c", "__attribute__((format(printf, 1, 2)))\n"), 0);
    assert_int_equal(floors_found("model/box.c", "char q = '\"'; char r = '\"'; exit(1);\n"), 1);
}

static void only_the_edge_prints(void **state)
{
    (void)state;
    assert_int_equal(floors_found("paper/text.c", "puts(\"sheet\");\n"), 1);
    assert_int_equal(floors_found("exchange/csv.c", "fprintf(file, \"row\");\n"), 0);
    assert_int_equal(floors_found("cli/list.c", "printf(\"row\"); exit(2);\n"), 0);
}

static void fault_bug_alone_may_write_before_it_aborts(void **state)
{
    (void)state;
    assert_int_equal(floors_found("base/fault.c", "fprintf(stderr, \"bug\");\n"), 0);
    assert_int_equal(floors_found("base/fault.c", "exit(1);\n"), 1);
}

static void a_complaint_names_file_line_and_reason(void **state)
{
    (void)state;
    struct complaints found = {0};
    law_check_floors(&found, "base/text.c", "\n\n#include \"plan/plan.h\"\n");
    assert_string_equal(found.text, "base/text.c:3: base may not include plan\n");
}

static void complaints_beyond_the_room_are_still_counted(void **state)
{
    (void)state;
    struct complaints found = {0};
    for (int i = 0; i < 1000; i++)
        law_complain(&found, "base/text.c", i, "a made-up complaint");
    assert_int_equal(found.count, 1000);
    assert_true(found.used < sizeof found.text);
    assert_int_equal(found.text[found.used - 1], '\n');
    assert_int_equal(strlen(found.text), found.used);
}

static void a_line_has_at_most_a_hundred_characters(void **state)
{
    (void)state;
    char line[102] = {0};
    memset(line, 'x', 100);
    line[100] = '\n';
    assert_int_equal(lines_found(line), 0);
    memcpy(line, "\xc3\xa9", 2); /* two bytes, one character: 99 in all */
    assert_int_equal(lines_found(line), 0);
    memcpy(line, "xx", 2);
    memcpy(line + 99, "xx", 2);
    assert_int_equal(lines_found(line), 2); /* too long, and no newline */
}

static void a_table_set_by_hand_may_be_wider(void **state)
{
    (void)state;
    char text[256];
    snprintf(text, sizeof text, "/* clang-format off */\n%0120d\n/* clang-format on */\n", 1);
    assert_int_equal(lines_found(text), 0);
    snprintf(text, sizeof text, "/* clang-format on */\n%0120d\n", 1);
    assert_int_equal(lines_found(text), 1);
}

static void a_line_holds_no_tab_and_no_blank_at_its_end(void **state)
{
    (void)state;
    assert_int_equal(lines_found("int a;\n\nint b;\n"), 0);
    assert_int_equal(lines_found("\tint a;\n"), 1);
    assert_int_equal(lines_found("int a; \n"), 1);
    assert_int_equal(lines_found("int a;\r\n"), 1);
    assert_int_equal(lines_found("int a;"), 1);
}

static void work_is_not_put_off(void **state)
{
    (void)state;
    assert_int_equal(lines_found("/* TO"
                                 "DO: the other half */\n"),
                     1);
    assert_int_equal(lines_found("char name[] = \"XXXXXX\"; int TO"
                                 "DOS;\n"),
                     0);
}

static void the_top_of_the_tree_holds_what_is_named(void **state)
{
    (void)state;
    struct complaints found = {0};
    static const char *const fine[] = {".", "..", ".git", "build", "build-clang", "src", "LICENSE"};
    for (size_t i = 0; i < sizeof fine / sizeof fine[0]; i++)
        law_check_top(&found, fine[i]);
    assert_int_equal(found.count, 0);
    law_check_top(&found, "notes.txt");
    law_check_top(&found, "srcs");
    assert_int_equal(found.count, 2);
}

/* Fails with every complaint; the folder must be there and hold a source, or nothing was proved. */
static void hold(const char *folder, void (*check)(struct complaints *, const char *, const char *))
{
    struct complaints found = {0};
    struct tree_check walk = {.check = check, .found = &found};
    assert_true(tree_each_source(root, folder, &walk));
    assert_true(walk.files > 0);
    if (found.count > 0)
        fail_msg("%d in %s:\n%s", found.count, folder, found.text);
}

static void no_file_of_src_breaks_the_layer_law(void **state)
{
    (void)state;
    hold("src", law_check_floors);
}

static void every_line_of_src_and_tests_is_tidy(void **state)
{
    (void)state;
    hold("src", law_check_lines);
    hold("tests", law_check_lines);
}

static void the_checkout_keeps_its_top_tidy(void **state)
{
    (void)state;
    struct complaints found = {0};
    assert_true(tree_check_top(root, &found));
    if (found.count > 0)
        fail_msg("%s", found.text);
}

int main(int argc, char **argv)
{
    if (argc != 2) {
        fprintf(stderr, "usage: %s CHECKOUT\n", argv[0]);
        return 2;
    }
    root = argv[1];
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_include_that_climbs_is_caught),
        cmocka_unit_test(an_include_that_goes_down_is_free),
        cmocka_unit_test(neighbours_on_one_level_stay_apart),
        cmocka_unit_test(the_store_knows_no_plan),
        cmocka_unit_test(a_comment_is_no_include),
        cmocka_unit_test(a_quoted_include_names_a_floor),
        cmocka_unit_test(a_library_header_stays_on_its_floor),
        cmocka_unit_test(the_engine_has_no_clock),
        cmocka_unit_test(the_engine_calls_nothing_that_prints_or_exits),
        cmocka_unit_test(a_name_that_only_looks_like_a_call_is_free),
        cmocka_unit_test(only_the_edge_prints),
        cmocka_unit_test(fault_bug_alone_may_write_before_it_aborts),
        cmocka_unit_test(a_complaint_names_file_line_and_reason),
        cmocka_unit_test(complaints_beyond_the_room_are_still_counted),
        cmocka_unit_test(a_line_has_at_most_a_hundred_characters),
        cmocka_unit_test(a_table_set_by_hand_may_be_wider),
        cmocka_unit_test(a_line_holds_no_tab_and_no_blank_at_its_end),
        cmocka_unit_test(work_is_not_put_off),
        cmocka_unit_test(the_top_of_the_tree_holds_what_is_named),
        cmocka_unit_test(no_file_of_src_breaks_the_layer_law),
        cmocka_unit_test(every_line_of_src_and_tests_is_tidy),
        cmocka_unit_test(the_checkout_keeps_its_top_tidy),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
