/*
 * Views on their way through curses, and keys on their way back, without a terminal: views go to a
 * file and are read back cell by cell, keys come from a pipe.
 */
#include "stage.h"
#include "tui/terminal.h"

#include <curses.h>

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

struct line {
    struct view view;
    struct terminal *terminal;
    FILE *out, *in;
    int keyboard; /* where keys are written for `in`; -1 when it was closed */
};

static int begin(void **state)
{
    struct line *line = calloc(1, sizeof *line);
    assert_non_null(line);
    setenv("LINES", "24", 1);
    setenv("COLUMNS", "80", 1);
    view_init(&line->view);
    line->out = tmpfile();
    int ends[2];
    assert_int_equal(pipe(ends), 0);
    line->in = fdopen(ends[0], "r");
    line->keyboard = ends[1];
    assert_non_null(line->out);
    assert_non_null(line->in);
    DONE(terminal_open_on(&line->terminal, "xterm-256color", line->out, line->in, note));
    *state = line;
    return 0;
}

static int end(void **state)
{
    struct line *line = *state;
    terminal_close(line->terminal);
    view_release(&line->view);
    fclose(line->out);
    fclose(line->in);
    if (line->keyboard >= 0)
        close(line->keyboard);
    free(line);
    return 0;
}

static long sent(struct line *line)
{
    fflush(line->out);
    return (long)lseek(fileno(line->out), 0, SEEK_END);
}

static void show(struct line *line, const char *text, int style)
{
    view_begin(&line->view, 24, 80);
    view_text(&line->view, 3, 5, 40, style, text);
    view_cursor(&line->view, 3, 7);
    terminal_show(line->terminal, &line->view);
}

static cchar_t cell_at(int row, int column)
{
    cchar_t cells[2];
    assert_int_not_equal(mvin_wchnstr(row, column, cells, 1), ERR);
    return cells[0];
}

static void the_size_is_that_of_the_terminal(void **state)
{
    struct line *line = *state;
    int rows, columns;
    terminal_size(line->terminal, &rows, &columns);
    assert_int_equal(rows, 24);
    assert_int_equal(columns, 80);
}

static void cells_arrive_as_they_are(void **state)
{
    show(*state, "gr\u00e9 \u6728 \u2502", VIEW_PLAIN);
    assert_int_equal(cell_at(3, 5).chars[0], 'g');
    assert_int_equal(cell_at(3, 7).chars[0], 0xe9);
    assert_int_equal(cell_at(3, 9).chars[0], 0x6728);
    assert_int_equal(cell_at(3, 12).chars[0], 0x2502);
}

static void styles_are_attributes(void **state)
{
    show(*state, "a", VIEW_CHOSEN | VIEW_STRONG);
    assert_true(cell_at(3, 5).attr & A_REVERSE);
    assert_true(cell_at(3, 5).attr & A_BOLD);
    assert_false(cell_at(3, 6).attr & A_REVERSE);
}

/* With a colour a warning has it; without, it is underlined. The words are the same. */
static void without_colours_a_warning_is_underlined(void **state)
{
    struct line *line = *state;
    short pair = 0;
    attr_t attributes;
    wchar_t code[CCHARW_MAX];
    show(line, "careful", VIEW_WARNING);
    cchar_t coloured = cell_at(3, 5);
    getcchar(&coloured, code, &attributes, &pair, NULL);
    assert_int_equal(pair, 1);
    terminal_close(line->terminal);
    setenv("NO_COLOR", "1", 1);
    DONE(terminal_open_on(&line->terminal, "xterm-256color", line->out, line->in, note));
    unsetenv("NO_COLOR");
    show(line, "careful", VIEW_WARNING);
    cchar_t plain = cell_at(3, 5);
    getcchar(&plain, code, &attributes, &pair, NULL);
    assert_int_equal(pair, 0);
    assert_true(attributes & A_UNDERLINE);
    assert_int_equal(code[0], 'c');
}

static void the_mouse_comes_with_its_place(void **state)
{
    struct line *line = *state;
    struct event event;
    terminal_read_mouse(line->terminal, true);
    static const char twice[] = "\033[<0;12;5M\033[<0;12;5m\033[<0;12;5M\033[<0;12;5m";
    assert_int_equal(write(line->keyboard, twice, sizeof twice - 1), sizeof twice - 1);
    for (int i = 0; i < 2; i++) {
        terminal_wait(line->terminal, 0, &event);
        assert_int_equal(event.kind, EVENT_POINTER);
        assert_int_equal(event.pointer.kind, POINTER_PRESS);
        assert_int_equal(event.pointer.row, 4);
        assert_int_equal(event.pointer.column, 11);
    }
    terminal_wait(line->terminal, 0, &event);
    assert_int_equal(event.kind, EVENT_IDLE);
    terminal_read_mouse(line->terminal, false);
}

static void the_cursor_stands_on_what_has_the_focus(void **state)
{
    int row, column;
    show(*state, "focus", VIEW_PLAIN);
    getyx(stdscr, row, column);
    assert_int_equal(row, 3);
    assert_int_equal(column, 7);
}

static void the_last_cell_of_the_screen_can_be_written(void **state)
{
    struct line *line = *state;
    view_begin(&line->view, 24, 80);
    view_cell_put(&line->view, 23, 79, 'z', VIEW_PLAIN);
    terminal_show(line->terminal, &line->view);
    assert_int_equal(cell_at(23, 79).chars[0], 'z');
    assert_int_equal(cell_at(0, 0).chars[0], ' ');
}

static void a_view_of_another_size_is_clipped(void **state)
{
    struct line *line = *state;
    view_begin(&line->view, 60, 200);
    view_row(&line->view, 0, 0, 200, VIEW_PLAIN, "wide");
    view_text(&line->view, 40, 100, 20, VIEW_PLAIN, "outside");
    terminal_show(line->terminal, &line->view);
    assert_int_equal(cell_at(0, 0).chars[0], 'w');
    assert_int_equal(cell_at(1, 0).chars[0], ' ');
}

static void what_has_not_changed_is_not_sent(void **state)
{
    struct line *line = *state;
    show(line, "a step", VIEW_PLAIN);
    long before = sent(line);
    show(line, "a step", VIEW_PLAIN);
    assert_int_equal(sent(line), before);
}

/* The design allows 300 bytes for moving the selection by a line. */
static void moving_the_selection_sends_little(void **state)
{
    struct line *line = *state;
    void *on_stage = NULL;
    assert_int_equal(stage_begin_with_cases(&on_stage), 0);
    struct stage *stage = on_stage;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "F5");
    driver_paint(&stage->tui, 24, 80);
    terminal_show(line->terminal, &stage->tui.view);
    stage_press(stage, "Down");
    driver_paint(&stage->tui, 24, 80);
    long before = sent(line);
    terminal_show(line->terminal, &stage->tui.view);
    assert_true(sent(line) > before);
    assert_true(sent(line) - before <= 300);
    stage_end(&on_stage);
}

static void a_terminal_that_cannot_move_its_cursor_is_refused(void **state)
{
    struct line *line = *state;
    struct terminal *terminal = NULL;
    struct fault_note note = {0};
    assert_int_equal(terminal_open_on(&terminal, "dumb", line->out, line->in, &note),
                     FAULT_TERMINAL);
    assert_null(terminal);
    assert_non_null(strstr(note.why, "cannot move its cursor"));
}

/* ---- keys ---- */

static struct event come(struct line *line, const char *bytes)
{
    struct event event;
    assert_int_equal(write(line->keyboard, bytes, strlen(bytes)), strlen(bytes));
    terminal_wait(line->terminal, 0, &event);
    return event;
}

static void keys_have_one_code_each(void **state)
{
    static const struct {
        const char *bytes;
        int key;
    } keys[] = {{"\033OB", KEY_ARROW_DOWN},
                {"\033[3~", KEY_DELETE_ITEM},
                {"\033[15~", 0},
                {"\r", KEY_RETURN},
                {"\n", KEY_RETURN},
                {"\177", KEY_RUB_OUT},
                {"\t", KEY_TAB},
                {" ", KEY_SPACE},
                {"\u00e9", 0xe9},
                {"\u6728", 0x6728}};
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
        struct event event = come(*state, keys[i].bytes);
        assert_int_equal(event.kind, EVENT_KEY);
        assert_int_equal(event.key, keys[i].key ? keys[i].key : KEY_F1 + 4);
    }
}

static void a_sequence_that_nobody_knows_is_no_key(void **state)
{
    struct event event = come(*state, "\033[999~\033[1;5Qx");
    assert_int_equal(event.kind, EVENT_KEY);
    assert_int_equal(event.key, 'x');
}

/* The line is slow: ESC is taken for the key, and what follows must not be taken for letters. */
static void the_rest_of_a_torn_sequence_is_no_letter(void **state)
{
    struct event event = come(*state, "\033");
    assert_int_equal(event.kind, EVENT_KEY);
    assert_int_equal(event.key, KEY_ESCAPE);
    event = come(*state, "[B");
    assert_int_equal(event.kind, EVENT_IDLE);
    event = come(*state, "b");
    assert_int_equal(event.key, 'b');
}

static void a_paste_is_one_text(void **state)
{
    struct event event = come(*state, "\033[200~q\nu \u6728\033[A\033[201~d");
    assert_int_equal(event.kind, EVENT_PASTE);
    assert_string_equal(event.text, "q\nu \u6728\033[A");
    assert_int_equal(come(*state, "").key, 'd');
}

/* The end mark never came: the text is given rather than swallow every key from then on. */
static void a_paste_without_end_is_given_after_a_while(void **state)
{
    struct event event = come(*state, "\033[200~12 in");
    assert_int_equal(event.kind, EVENT_PASTE);
    assert_string_equal(event.text, "12 in");
    assert_int_equal(come(*state, "q").kind, EVENT_KEY);
}

static void a_line_that_was_closed_is_the_end(void **state)
{
    struct line *line = *state;
    struct event event;
    assert_int_equal(come(line, "x").kind, EVENT_KEY);
    close(line->keyboard);
    line->keyboard = -1;
    terminal_wait(line->terminal, 0, &event);
    assert_int_equal(event.kind, EVENT_END);
    assert_int_equal(event.signal, 0);
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        FACT(the_size_is_that_of_the_terminal),
        FACT(cells_arrive_as_they_are),
        FACT(styles_are_attributes),
        FACT(without_colours_a_warning_is_underlined),
        FACT(the_mouse_comes_with_its_place),
        FACT(the_cursor_stands_on_what_has_the_focus),
        FACT(the_last_cell_of_the_screen_can_be_written),
        FACT(a_view_of_another_size_is_clipped),
        FACT(what_has_not_changed_is_not_sent),
        FACT(moving_the_selection_sends_little),
        FACT(a_terminal_that_cannot_move_its_cursor_is_refused),
        FACT(keys_have_one_code_each),
        FACT(a_sequence_that_nobody_knows_is_no_key),
        FACT(the_rest_of_a_torn_sequence_is_no_letter),
        FACT(a_paste_is_one_text),
        FACT(a_paste_without_end_is_given_after_a_while),
        FACT(a_line_that_was_closed_is_the_end),
    };
    int failed = cmocka_run_group_tests_name("terminal", tests, NULL, NULL);
    return failed ? 1 : 0;
}
