/*
 * How tables lie on a page. Widths of characters are those of a terminal: a Chinese character is
 * two cells wide, a combining accent none.
 */
#include "paper/table.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <locale.h>

static void assert_page(struct table *table, const char *page)
{
    struct text out;

    text_init(&out);
    table_end(table, &out);
    assert_string_equal(text_string(&out), page);
    text_release(&out);
}

static void fill(struct table *table, const char *shape, const char *const *cells, size_t count)
{
    table_begin(table, shape);
    for (size_t i = 0; i < count; i++)
        table_cell(table, "%s", cells[i]);
}

#define FILL(table, shape, cells) fill((table), (shape), (cells), sizeof(cells) / sizeof *(cells))

static void columns_are_as_wide_as_their_widest_cell(void **state)
{
    static const char *const cells[] = {"rail", "C1", "x", "upright", "C12", "y"};
    struct table table;

    (void)state;
    FILL(&table, "lll", cells);
    assert_page(&table, "  rail     C1   x\n"
                        "  upright  C12  y\n");
}

static void numbers_are_set_to_the_right(void **state)
{
    static const char *const cells[] = {"a", "1", "b", "100", "c", "22"};
    struct table table;

    (void)state;
    FILL(&table, "lr", cells);
    assert_page(&table, "  a    1\n"
                        "  b  100\n"
                        "  c   22\n");
}

static void first_column_may_be_set_to_the_right(void **state)
{
    static const char *const cells[] = {"1", "one", "10", "ten"};
    struct table table;

    (void)state;
    FILL(&table, "rl", cells);
    assert_page(&table, "   1  one\n"
                        "  10  ten\n");
}

/* An a with dots takes two bytes of UTF-8 (RFC 3629), the 27th and 28th here. */
static void names_are_cut_between_characters(void **state)
{
    struct table table;

    (void)state;
    table_begin(&table, "ll");
    table_name(&table, 28, "abcdefghijklmnopqrstuvwxyz\xc3\xa4z");
    table_name(&table, 27, "abcdefghijklmnopqrstuvwxyz\xc3\xa4z");
    assert_page(&table, "  abcdefghijklmnopqrstuvwxyz\xc3\xa4  abcdefghijklmnopqrstuvwxyz\n");
}

static void a_row_of_headings_has_one_for_each_column(void **state)
{
    static const char *const heads[] = {"", "wide"};
    struct table table;

    (void)state;
    table_begin(&table, "lr");
    table_heads(&table, heads);
    table_cell(&table, "%s", "door");
    table_cell(&table, "%d", 81);
    assert_page(&table, "        wide\n"
                        "  door    81\n");
}

static void wide_and_combining_characters_count_their_cells(void **state)
{
    static const char *const cells[] = {"\xe5\xb8\x83", "a", "abc", "b", "e\xcc\x81", "c"};
    struct table table;

    (void)state;
    FILL(&table, "ll", cells);
    assert_page(&table, "  \xe5\xb8\x83   a\n"
                        "  abc  b\n"
                        "  e\xcc\x81    c\n");
}

static void empty_cells_leave_their_room(void **state)
{
    static const char *const cells[] = {"a", "", "x", "b", "22", "y", "", "3", "z"};
    struct table table;

    (void)state;
    FILL(&table, "lrl", cells);
    assert_page(&table, "  a      x\n"
                        "  b  22  y\n"
                        "      3  z\n");
}

static void lines_end_without_blanks(void **state)
{
    static const char *const cells[] = {"a", "long", "b", "", "", ""};
    struct table table;

    (void)state;
    FILL(&table, "ll", cells);
    assert_page(&table, "  a  long\n"
                        "  b\n"
                        "\n");
}

static void table_without_rows_is_nothing(void **state)
{
    struct table table;

    (void)state;
    table_begin(&table, "lr");
    assert_page(&table, "");
}

static void cells_are_filtered_before_they_are_measured(void **state)
{
    static const char *const cells[] = {"a\033[2J", "b", "c\nd", "e", "x\xff", "y"};
    struct table table;

    (void)state;
    FILL(&table, "ll", cells);
    assert_page(&table, "  a\xef\xbf\xbd[2J  b\n"
                        "  c\xef\xbf\xbd"
                        "d    e\n"
                        "  x\xef\xbf\xbd     y\n");
}

static void count_of_nothing_is_an_empty_cell(void **state)
{
    struct table table;

    (void)state;
    table_begin(&table, "ll");
    table_cell(&table, "%d", 1);
    table_count(&table, 12, "to hold");
    table_cell(&table, "%d", 2);
    table_count(&table, 0, "to hold");
    assert_page(&table, "  1  12 to hold\n"
                        "  2\n");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(columns_are_as_wide_as_their_widest_cell),
        cmocka_unit_test(numbers_are_set_to_the_right),
        cmocka_unit_test(first_column_may_be_set_to_the_right),
        cmocka_unit_test(names_are_cut_between_characters),
        cmocka_unit_test(a_row_of_headings_has_one_for_each_column),
        cmocka_unit_test(wide_and_combining_characters_count_their_cells),
        cmocka_unit_test(empty_cells_leave_their_room),
        cmocka_unit_test(lines_end_without_blanks),
        cmocka_unit_test(table_without_rows_is_nothing),
        cmocka_unit_test(cells_are_filtered_before_they_are_measured),
        cmocka_unit_test(count_of_nothing_is_an_empty_cell),
    };
    int failed;

    if (!setlocale(LC_CTYPE, "C.UTF-8"))
        return 1;
    failed = cmocka_run_group_tests_name("paper table", tests, NULL, NULL);
    return failed ? 1 : 0;
}
