/* A list with a selection, a line being typed, a sheet that is longer than the screen. */
#include "base/text.h"
#include "base/utf8.h"
#include "tui/entry.h"
#include "tui/list.h"
#include "tui/pager.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

/* ---- list ---- */

static void a_list_begins_at_its_first_line(void **state)
{
    struct list_view list = {0};
    (void)state;
    list_view_resize(&list, 5);
    assert_int_equal(list.chosen, 0);
}

static void an_empty_list_has_nothing_selected(void **state)
{
    struct list_view list = {0};
    (void)state;
    list_view_resize(&list, 0);
    assert_int_equal(list.chosen, -1);
    list_view_fit(&list, 1, 10);
    for (int action = 0; action < ACTION_COUNT; action++)
        list_view_act(&list, (enum action)action);
    assert_int_equal(list.chosen, -1);
    list_view_resize(&list, 3);
    assert_int_equal(list.chosen, 0);
}

static void the_selection_stays_where_it_can_when_lines_go(void **state)
{
    struct list_view list = {0};
    (void)state;
    list_view_resize(&list, 10);
    list_view_choose(&list, 7);
    list_view_resize(&list, 9);
    assert_int_equal(list.chosen, 7);
    list_view_resize(&list, 4);
    assert_int_equal(list.chosen, 3);
}

static int top_with(struct list_view *list, int chosen)
{
    list_view_choose(list, chosen);
    list_view_fit(list, 1, 10);
    return list->top;
}

static void a_list_turns_a_page_with_one_line_of_the_last_and_stands_still_within_it(void **state)
{
    struct list_view list = {0};
    (void)state;
    list_view_resize(&list, 100);
    assert_int_equal(top_with(&list, 9), 0);
    assert_int_equal(top_with(&list, 10), 9); /* 9 to 18 show */
    assert_int_equal(top_with(&list, 18), 9);
    assert_int_equal(top_with(&list, 9), 9);
    assert_int_equal(top_with(&list, 8), 0); /* 0 to 9 */
    assert_int_equal(top_with(&list, 50), 49);
    assert_int_equal(top_with(&list, 48), 40);
    assert_int_equal(top_with(&list, 99), 90);
}

static void a_list_of_one_or_two_rows_shows_the_selection(void **state)
{
    struct list_view list = {0};
    (void)state;
    list_view_resize(&list, 100);
    for (int height = 1; height <= 2; height++) {
        for (int i = 0; i < 200; i++) {
            list_view_choose(&list, (i * 37) % 100);
            list_view_fit(&list, 1, height);
            assert_in_range(list.chosen, list.top, list.top + height - 1);
        }
    }
}

static void a_taller_screen_leaves_no_gap_below_the_last_line(void **state)
{
    struct list_view list = {0};
    (void)state;
    list_view_resize(&list, 20);
    list_view_choose(&list, 19);
    list_view_fit(&list, 1, 5);
    assert_int_equal(list.top, 15);
    list_view_fit(&list, 1, 12);
    assert_int_equal(list.top, 8);
    list_view_fit(&list, 1, 40);
    assert_int_equal(list.top, 0);
}

static void every_key_that_moves_moves(void **state)
{
    static const struct {
        enum action action;
        int chosen;
    } moves[] = {{ACTION_DOWN, 1}, {ACTION_LEAF_DOWN, 10}, {ACTION_UP, 9},    {ACTION_LEAF_UP, 0},
                 {ACTION_UP, 0},   {ACTION_LAST, 29},      {ACTION_DOWN, 29}, {ACTION_FIRST, 0}};
    struct list_view list = {0};
    (void)state;
    list_view_resize(&list, 30);
    list_view_fit(&list, 1, 10);
    for (size_t i = 0; i < sizeof moves / sizeof *moves; i++) {
        assert_true(list_view_act(&list, moves[i].action));
        assert_int_equal(list.chosen, moves[i].chosen);
    }
    assert_false(list_view_act(&list, ACTION_ENTER));
}

/* ---- entry ---- */

static void type(struct entry *entry, const char *text)
{
    unsigned code;
    while (*text) {
        text += utf8_next(text, strlen(text), &code);
        assert_true(entry_key(entry, (int)code));
    }
}

static void what_is_typed_stands_there(void **state)
{
    struct entry entry;
    (void)state;
    entry_set(&entry, "");
    type(&entry, "76 1/2\"");
    assert_string_equal(entry.text, "76 1/2\"");
}

static void control_u_rubs_out_all_before_the_cursor(void **state)
{
    struct entry entry;

    (void)state;
    entry_set(&entry, "84 in");
    entry_key(&entry, KEY_ARROW_LEFT);
    entry_key(&entry, KEY_ARROW_LEFT);
    assert_true(entry_key(&entry, KEY_CONTROL_U));
    assert_string_equal(entry.text, "in");
    type(&entry, "48 ");
    assert_string_equal(entry.text, "48 in");
}

static void arrows_go_by_characters_not_by_bytes(void **state)
{
    struct entry entry;
    (void)state;
    entry_set(&entry, "gré");
    entry_key(&entry, KEY_ARROW_LEFT);
    type(&entry, "t");
    assert_string_equal(entry.text, "grté");
    entry_key(&entry, KEY_ARROW_RIGHT);
    entry_key(&entry, KEY_RUB_OUT);
    assert_string_equal(entry.text, "grt");
}

static void delete_takes_what_is_after_the_cursor(void **state)
{
    struct entry entry;
    (void)state;
    entry_set(&entry, "ésprit");
    entry_key(&entry, KEY_GO_FIRST);
    entry_key(&entry, KEY_DELETE_ITEM);
    assert_string_equal(entry.text, "sprit");
    entry_key(&entry, KEY_GO_LAST);
    entry_key(&entry, KEY_DELETE_ITEM);
    assert_string_equal(entry.text, "sprit");
}

static void nothing_happens_at_the_ends(void **state)
{
    struct entry entry;
    (void)state;
    entry_set(&entry, "");
    assert_true(entry_key(&entry, KEY_RUB_OUT));
    assert_true(entry_key(&entry, KEY_ARROW_LEFT));
    assert_true(entry_key(&entry, KEY_ARROW_RIGHT));
    assert_string_equal(entry.text, "");
}

static void keys_without_a_character_are_not_taken(void **state)
{
    struct entry entry;
    (void)state;
    entry_set(&entry, "12");
    assert_false(entry_key(&entry, KEY_F1));
    assert_false(entry_key(&entry, KEY_RETURN));
    assert_false(entry_key(&entry, 3));
    assert_string_equal(entry.text, "12");
}

static void pasted_lines_become_one(void **state)
{
    struct entry entry;
    (void)state;
    entry_set(&entry, "");
    entry_insert(&entry, "moss\r\nweave\t2");
    assert_string_equal(entry.text, "moss  weave 2");
}

static void what_cannot_be_shown_is_left_out(void **state)
{
    struct entry entry;
    (void)state;
    entry_set(&entry, "");
    entry_insert(&entry, "a\u202eb\u200bc\xff");
    assert_string_equal(entry.text, "abc");
}

static void a_text_without_end_is_cut_at_a_character(void **state)
{
    struct entry entry;
    (void)state;
    entry_set(&entry, "");
    for (int i = 0; i < ENTRY_TEXT; i++)
        entry_insert(&entry, "\u00e9");
    assert_true(entry.length < ENTRY_TEXT);
    assert_true(utf8_valid(entry.text, (size_t)entry.length));
}

static void a_long_text_shows_where_the_cursor_is(void **state)
{
    struct view view;
    struct entry entry;
    (void)state;
    view_init(&view);
    view_begin(&view, 1, 20);
    entry_set(&entry, "the quick brown fox jumps");
    entry_paint(&entry, &view, 0, 2, 8);
    assert_int_equal(view.cursor_column, 9);
    assert_int_equal(view.cells[8].code, 's');
    entry_key(&entry, KEY_GO_FIRST);
    entry_paint(&entry, &view, 0, 2, 8);
    assert_int_equal(view.cursor_column, 2);
    assert_int_equal(view.cells[2].code, 't');
    view_release(&view);
}

/* ---- pager ---- */

static void a_sheet_scrolls_no_further_than_its_end(void **state)
{
    struct view view;
    struct pager pager = {0};
    (void)state;
    view_init(&view);
    view_begin(&view, 4, 20);
    pager_act(&pager, ACTION_LAST);
    pager_paint(&pager, &view, 0, 4, " 1\n 2\n 3\n 4\n 5\n 6\n");
    pager_act(&pager, ACTION_LAST);
    pager_act(&pager, ACTION_DOWN);
    view_begin(&view, 4, 20);
    pager_paint(&pager, &view, 0, 4, " 1\n 2\n 3\n 4\n 5\n 6\n");
    assert_int_equal(pager.top, 2);
    assert_int_equal(view.cells[1].code, '3');
    assert_true(pager_act(&pager, ACTION_LEAF_UP));
    pager_paint(&pager, &view, 0, 4, " 1\n 2\n 3\n 4\n 5\n 6\n");
    assert_int_equal(pager.top, 0);
    assert_false(pager_act(&pager, ACTION_TICK));
    view_release(&view);
}

static void a_line_too_long_goes_on_in_the_next_row(void **state)
{
    struct view view;
    struct pager pager = {0};
    (void)state;
    view_init(&view);
    view_begin(&view, 4, 14);
    pager_paint(&pager, &view, 0, 4, "clamp the boxes well\n");
    assert_int_equal(pager.lines, 2);
    assert_int_equal(view.cells[0].code, 'c');
    assert_int_equal(view.cells[14 + 4].code, 'b');
    view_release(&view);
}

int main(void)
{
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_list_begins_at_its_first_line),
        cmocka_unit_test(an_empty_list_has_nothing_selected),
        cmocka_unit_test(the_selection_stays_where_it_can_when_lines_go),
        cmocka_unit_test(a_list_turns_a_page_with_one_line_of_the_last_and_stands_still_within_it),
        cmocka_unit_test(a_list_of_one_or_two_rows_shows_the_selection),
        cmocka_unit_test(a_taller_screen_leaves_no_gap_below_the_last_line),
        cmocka_unit_test(every_key_that_moves_moves),
        cmocka_unit_test(what_is_typed_stands_there),
        cmocka_unit_test(control_u_rubs_out_all_before_the_cursor),
        cmocka_unit_test(arrows_go_by_characters_not_by_bytes),
        cmocka_unit_test(delete_takes_what_is_after_the_cursor),
        cmocka_unit_test(nothing_happens_at_the_ends),
        cmocka_unit_test(keys_without_a_character_are_not_taken),
        cmocka_unit_test(pasted_lines_become_one),
        cmocka_unit_test(what_cannot_be_shown_is_left_out),
        cmocka_unit_test(a_text_without_end_is_cut_at_a_character),
        cmocka_unit_test(a_long_text_shows_where_the_cursor_is),
        cmocka_unit_test(a_sheet_scrolls_no_further_than_its_end),
        cmocka_unit_test(a_line_too_long_goes_on_in_the_next_row),
    };
    int failed = cmocka_run_group_tests_name("widgets", tests, NULL, NULL);
    return failed ? 1 : 0;
}
