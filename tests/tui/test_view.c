/* Cells: clipping, people's text, wide characters, lines broken between words. */
#include "base/text.h"
#include "tui/view.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

struct page {
    struct view view;
    struct arena arena;
};

static int begin(void **state)
{
    static struct page page;
    view_init(&page.view);
    arena_init(&page.arena);
    view_begin(&page.view, 3, 12);
    *state = &page;
    return 0;
}

static int end(void **state)
{
    struct page *page = *state;
    view_release(&page->view);
    arena_release(&page->arena);
    return 0;
}

struct reading {
    struct page *page;
    const char *text;
};

static void run_read(void *context)
{
    struct reading *reading = context;
    reading->text = view_as_text(&reading->page->view, &reading->page->arena);
}

static void assert_page(struct page *page, const char *expected)
{
    struct reading reading = {page, NULL};
    assert_true(arena_try(&page->arena, run_read, &reading));
    assert_string_equal(reading.text, expected);
}

static void text_is_cut_at_its_width_and_at_the_border(void **state)
{
    struct page *page = *state;
    assert_int_equal(view_text(&page->view, 0, 1, 4, VIEW_PLAIN, "plywood"), 4);
    assert_int_equal(view_text(&page->view, 1, 9, 40, VIEW_PLAIN, "plywood"), 3);
    assert_page(page, " plyw\n         ply\n\n");
}

static void nothing_is_written_outside(void **state)
{
    struct page *page = *state;
    view_text(&page->view, -1, 0, 12, VIEW_PLAIN, "above");
    view_text(&page->view, 3, 0, 12, VIEW_PLAIN, "below");
    view_text(&page->view, 0, 12, 12, VIEW_PLAIN, "beside");
    view_row(&page->view, 7, 0, 12, VIEW_CHOSEN, "far below");
    view_level(&page->view, 9, -4, 40);
    view_upright(&page->view, -4, 40, 40);
    assert_page(page, "\n\n\n");
}

static void a_wide_character_is_not_cut_in_two(void **state)
{
    struct page *page = *state;
    assert_int_equal(view_text(&page->view, 0, 0, 3, VIEW_PLAIN, "\u6728\u6728"), 2);
    assert_int_equal(view_text(&page->view, 1, 0, 4, VIEW_PLAIN, "\u6728\u6728"), 4);
    assert_page(page, "\u6728\n\u6728\u6728\n\n");
}

static void control_characters_do_nothing_but_show(void **state)
{
    struct page *page = *state;
    view_text(&page->view, 0, 0, 12, VIEW_PLAIN, "a\033[2Jb\u202e");
    assert_page(page, "a\ufffd[2Jb\ufffd\n\n\n");
}

static void a_row_has_its_style_to_the_end(void **state)
{
    struct page *page = *state;
    view_row(&page->view, 1, 2, 6, VIEW_CHOSEN, "ab");
    const struct view_cell *row = &page->view.cells[12];
    assert_int_equal(row[1].style, VIEW_PLAIN);
    assert_int_equal(row[2].style, VIEW_CHOSEN);
    assert_int_equal(row[7].style, VIEW_CHOSEN);
    assert_int_equal(row[8].style, VIEW_PLAIN);
}

static void lines_break_between_words(void **state)
{
    struct page *page = *state;
    int rows = view_wrapped(&page->view, 0, 0, 12, 3, VIEW_PLAIN, "ease and clean box A");
    assert_int_equal(rows, 2);
    assert_page(page, "ease and\nclean box A\n\n");
}

static void lines_end_where_they_end(void **state)
{
    struct page *page = *state;
    assert_int_equal(view_wrapped(&page->view, 0, 0, 12, 3, VIEW_PLAIN, "one\n\ntwo\nthree"), 3);
    assert_page(page, "one\n\ntwo\n");
}

static void a_word_longer_than_the_line_is_cut(void **state)
{
    struct page *page = *state;
    view_wrapped(&page->view, 0, 0, 5, 3, VIEW_PLAIN, "abcdefgh ij");
    assert_page(page, "abcde\nfgh\nij\n");
}

static void every_break_takes_at_least_a_character(void **state)
{
    const char *next;
    (void)state;
    assert_int_equal(view_break("\u6728", 1, &next), 3);
    assert_int_equal(view_break("", 5, &next), 0);
    assert_int_equal(view_break("abc", 0, &next), 1);
}

static void the_cursor_stays_inside(void **state)
{
    struct page *page = *state;
    view_cursor(&page->view, 30, 300);
    assert_int_equal(page->view.cursor_row, 2);
    assert_int_equal(page->view.cursor_column, 11);
}

static void a_view_grows_and_shrinks(void **state)
{
    struct page *page = *state;
    view_begin(&page->view, 300, 500);
    view_text(&page->view, 299, 495, 10, VIEW_PLAIN, "corner");
    view_begin(&page->view, 1, 1);
    view_text(&page->view, 0, 0, 10, VIEW_PLAIN, "corner");
    assert_page(page, "c\n");
    view_begin(&page->view, 0, -3);
    assert_int_equal(page->view.rows, 1);
    assert_int_equal(page->view.columns, 1);
}

static void plain_lines_where_there_are_no_others(void **state)
{
    struct page *page = *state;
    page->view.lines = false;
    view_level(&page->view, 0, 0, 3);
    view_upright(&page->view, 1, 0, 2);
    assert_page(page, "---\n|\n|\n");
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        FACT(text_is_cut_at_its_width_and_at_the_border),
        FACT(nothing_is_written_outside),
        FACT(a_wide_character_is_not_cut_in_two),
        FACT(control_characters_do_nothing_but_show),
        FACT(a_row_has_its_style_to_the_end),
        FACT(lines_break_between_words),
        FACT(lines_end_where_they_end),
        FACT(a_word_longer_than_the_line_is_cut),
        FACT(every_break_takes_at_least_a_character),
        FACT(the_cursor_stays_inside),
        FACT(a_view_grows_and_shrinks),
        FACT(plain_lines_where_there_are_no_others),
    };
    int failed = cmocka_run_group_tests_name("view", tests, NULL, NULL);
    return failed ? 1 : 0;
}
