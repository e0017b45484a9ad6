/* Rows of text: the examples of RFC 4180 section 2, what spreadsheets write, and bytes by chance.
 */
#include "sample.h"

#include "exchange/csv.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

/* Reads all rows and prints them as "a|b/c|d", faults as "!line:column". */
static void print_rows(const char *bytes, size_t length, struct text *out)
{
    struct sample sample;
    struct csv csv;
    struct csv_row row;
    struct fault_note note;
    enum fault fault;

    sample_init(&sample);
    if (csv_begin(&csv, bytes, length, &note))
        text_format(out, "!%d:%d", note.line, note.column);
    else
        while (csv_next(&csv, &sample.arena, &row, &fault, &note)) {
            if (out->length)
                text_add_char(out, '/');
            if (fault)
                text_format(out, "!%d:%d", note.line, note.column);
            for (size_t i = 0; i < row.cells.count; i++)
                text_format(out, "%s%s", i ? "|" : "", row.cells.at[i].text);
        }
    sample_release(&sample);
}

static void assert_rows(const char *bytes, const char *rows)
{
    struct text out;

    text_init(&out);
    print_rows(bytes, strlen(bytes), &out);
    assert_string_equal(text_string(&out), rows);
    text_release(&out);
}

/* RFC 4180, section 2, points 1, 2, 5, 6 and 7, as they stand there. */
static void rows_are_read_as_rfc_4180_shows_them(void **state)
{
    (void)state;
    assert_rows("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "aaa|bbb|ccc/zzz|yyy|xxx");
    assert_rows("aaa,bbb,ccc\r\nzzz,yyy,xxx", "aaa|bbb|ccc/zzz|yyy|xxx");
    assert_rows("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|bbb|ccc/zzz|yyy|xxx");
    assert_rows("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|b\r\nbb|ccc/zzz|yyy|xxx");
    assert_rows("\"aaa\",\"b\"\"bb\",\"ccc\"", "aaa|b\"bb|ccc");
}

/* Point 4: blanks are part of a cell. */
static void blanks_belong_to_their_cell(void **state)
{
    (void)state;
    assert_rows(" a , b\r\n", " a | b");
}

static void lines_end_as_they_like_and_empty_ones_are_nothing(void **state)
{
    (void)state;
    assert_rows("a,b\n\n\nc,d\re,\r\n", "a|b/c|d/e|");
    assert_rows("", "");
    assert_rows("\r\n", "");
    assert_rows("\"\"", "");
}

static void the_separator_is_the_one_of_the_first_line(void **state)
{
    (void)state;
    assert_rows("\xef\xbb\xbf"
                "a;b\n1,5;2\n",
                "a|b/1,5|2");
    assert_rows("a\tb\n1,5\t2;3\n", "a|b/1,5|2;3");
    assert_rows("\";;;\",b\n1,2\n", ";;;|b/1|2");
}

static void a_row_that_cannot_be_read_is_told_with_its_place(void **state)
{
    (void)state;
    assert_rows("a,b\n1,x\"y\nc,d\n", "a|b/!2:4/c|d");
    assert_rows("a,b\n\"1\"2,3\nc,d\n", "a|b/!2:4/c|d");
    assert_rows("a,b\n1,\"\xc3\xa9\n\n2,3\n", "a|b/!2:3");
    assert_rows("a,b\nx,\xff\n", "!2:3");
    assert_rows("\xff\xfe"
                "a",
                "!1:1");
}

static void a_zero_byte_is_no_text(void **state)
{
    struct text out;

    (void)state;
    text_init(&out);
    print_rows("a\0b", 3, &out);
    assert_string_equal(text_string(&out), "!1:2");
    text_release(&out);
}

/* A line of a million cells: what it costs must not grow with the square. */
static void a_line_without_end_is_refused_once(void **state)
{
    size_t length = 4000000;
    char *bytes = malloc(length);
    struct text out;

    (void)state;
    assert_non_null(bytes);
    memset(bytes, ',', length);
    text_init(&out);
    print_rows(bytes, length, &out);
    assert_string_equal(text_string(&out), "!1:101");
    text_release(&out);
    free(bytes);
}

/* ---- out ---- */

static void assert_text(const char *text, const char *cell)
{
    struct text out;

    text_init(&out);
    csv_put_text(&out, &csv_plain, true, text);
    assert_string_equal(text_string(&out), cell);
    text_release(&out);
}

/* The letters with which a cell becomes a formula are those of OWASP, "CSV Injection" (from
 * memory). */
static void text_that_would_be_a_formula_is_guarded(void **state)
{
    (void)state;
    assert_text("=1+1", "'=1+1");
    assert_text("+1", "'+1");
    assert_text("-1", "'-1");
    assert_text("@sum", "'@sum");
    assert_text("\tx", "'\tx");
    assert_text("\rx", "\"'\rx\"");
    assert_text("'=1", "''=1");
    assert_text("'tis", "'tis");
    assert_text("a=1", "a=1");
}

static void numbers_are_not_guarded_and_take_the_styles_comma(void **state)
{
    struct text out;

    (void)state;
    text_init(&out);
    csv_put_number(&out, &csv_plain, true, "-3.20");
    csv_put_number(&out, &csv_semicolons, false, "-3.20");
    csv_put_number(&out, &csv_plain, false, "7");
    assert_string_equal(text_string(&out), "-3.20;-3,20,7");
    text_release(&out);
}

static void any_text_comes_back(void **state)
{
    static const char letters[] = "ab'=+-@\t\r\n\",; \xc3\xa9";
    const struct csv_style *styles[] = {&csv_plain, &csv_semicolons};
    struct dice dice = {4180};

    (void)state;
    for (int round = 0; round < 5000; round++) {
        const struct csv_style *style = styles[round % 2];
        struct sample sample;
        struct text out;
        struct csv csv;
        struct csv_row row;
        enum fault fault;
        char text[12] = "";
        size_t length = (size_t)dice_between(&dice, 1, 8);

        for (size_t i = 0; i < length; i++)
            text[i] = letters[dice_bits(&dice) % (sizeof letters - 3)];
        sample_init(&sample);
        text_init(&out);
        csv_put_start(&out, style);
        csv_put_text(&out, style, true, "a");
        csv_put_text(&out, style, false, "b");
        csv_put_end(&out);
        csv_put_text(&out, style, true, "\xc3\xa9");
        csv_put_text(&out, style, false, text);
        csv_put_end(&out);
        assert_int_equal(csv_begin(&csv, text_string(&out), out.length, NULL), FAULT_NONE);
        assert_true(csv_next(&csv, &sample.arena, &row, &fault, NULL));
        assert_true(csv_next(&csv, &sample.arena, &row, &fault, NULL));
        assert_int_equal(row.cells.count, 2);
        assert_string_equal(csv_unguarded(row.cells.at[1].text), text);
        assert_false(csv_next(&csv, &sample.arena, &row, &fault, NULL));
        text_release(&out);
        sample_release(&sample);
    }
}

/* Bytes in a block of just their length, so that a sanitizer sees a step beyond them. */
static void bytes_by_chance_are_rows_or_faults(void **state)
{
    static const char letters[] = "a,;\t\"\"\"\r\n\xc3\xa9\xef\xbb\xbf\xff";
    struct dice dice = {99};

    (void)state;
    for (int round = 0; round < 20000; round++) {
        size_t length = (size_t)dice_between(&dice, 0, 12);
        char *bytes = malloc(length ? length : 1);
        struct text out;

        assert_non_null(bytes);
        for (size_t i = 0; i < length; i++)
            bytes[i] = letters[dice_bits(&dice) % sizeof letters];
        text_init(&out);
        print_rows(bytes, length, &out);
        assert_false(text_failed(&out));
        text_release(&out);
        free(bytes);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rows_are_read_as_rfc_4180_shows_them),
        cmocka_unit_test(blanks_belong_to_their_cell),
        cmocka_unit_test(lines_end_as_they_like_and_empty_ones_are_nothing),
        cmocka_unit_test(the_separator_is_the_one_of_the_first_line),
        cmocka_unit_test(a_row_that_cannot_be_read_is_told_with_its_place),
        cmocka_unit_test(a_zero_byte_is_no_text),
        cmocka_unit_test(a_line_without_end_is_refused_once),
        cmocka_unit_test(text_that_would_be_a_formula_is_guarded),
        cmocka_unit_test(numbers_are_not_guarded_and_take_the_styles_comma),
        cmocka_unit_test(any_text_comes_back),
        cmocka_unit_test(bytes_by_chance_are_rows_or_faults),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
