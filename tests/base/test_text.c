/* Texts that grow, and UTF-8 as the Unicode Standard defines it (table 3-7). */
#include "base/text.h"

#include "base/utf8.h"
#include "dice.h"
#include "scarce.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <locale.h>
#include <string.h>

static void an_empty_text_is_the_empty_string(void **state)
{
    struct text text;

    (void)state;
    text_init(&text);
    assert_string_equal(text_string(&text), "");
    text_add(&text, "");
    text_format(&text, "%s", "");
    assert_string_equal(text_string(&text), "");
    assert_int_equal(text.length, 0);
    assert_false(text_failed(&text));
    text_release(&text);
    text_release(NULL);
}

static void what_is_added_stands_in_order(void **state)
{
    struct text text;

    (void)state;
    text_init(&text);
    text_add(&text, "rail");
    text_add_char(&text, ' ');
    text_add_bytes(&text, "uprights", 7);
    text_format(&text, " %d x %s", 3, "cross");
    assert_string_equal(text_string(&text), "rail upright 3 x cross");
    assert_int_equal(text.length, strlen("rail upright 3 x cross"));
    text_release(&text);
}

static void a_text_grows_to_any_length(void **state)
{
    struct text text;

    (void)state;
    text_init(&text);
    for (int i = 0; i < 5000; i++)
        text_add_char(&text, (char)('a' + i % 26));
    text_format(&text, "%3000d", 1);
    assert_int_equal(text.length, 8000);
    assert_int_equal(strlen(text_string(&text)), 8000);
    for (int i = 0; i < 5000; i++)
        assert_int_equal(text_string(&text)[i], 'a' + i % 26);
    text_release(&text);
}

static void clear_empties_and_forgives(void **state)
{
    struct text text;

    (void)state;
    scarce_begin(2);
    text_init(&text);
    text_add(&text, "rail");
    text_format(&text, "%500d", 1);
    assert_true(text_failed(&text));
    text_clear(&text);
    assert_false(text_failed(&text));
    assert_string_equal(text_string(&text), "");
    text_add(&text, "post");
    assert_string_equal(text_string(&text), "post");
    text_release(&text);
    assert_int_equal(scarce_end(), 0);
}

static void write_much(struct text *text)
{
    for (int i = 0; i < 40; i++) {
        text_add(text, "a rail and an upright, ");
        text_add_char(text, '.');
        text_format(text, "%100d", i);
        text_pad(text, 20 * i);
    }
}

static void a_failed_request_is_remembered_and_leaves_a_valid_beginning(void **state)
{
    struct text whole;
    int needed;

    (void)state;
    scarce_begin(0);
    text_init(&whole);
    write_much(&whole);
    needed = scarce_requests();
    assert_false(text_failed(&whole));
    assert_true(needed >= 3);
    for (int request = 1; request <= needed; request++) {
        struct text text;

        scarce_begin(request);
        text_init(&text);
        write_much(&text);
        assert_true(text_failed(&text));
        assert_int_equal(strlen(text_string(&text)), text.length);
        assert_memory_equal(text_string(&text), text_string(&whole), text.length);
        text_release(&text);
        assert_int_equal(scarce_end(), 0);
    }
    text_release(&whole);
}

static void a_count_beyond_memory_fails_without_a_request(void **state)
{
    struct text text;

    (void)state;
    scarce_begin(0);
    text_init(&text);
    text_add_bytes(&text, "x", SIZE_MAX);
    assert_true(text_failed(&text));
    assert_int_equal(scarce_requests(), 0);
    text_release(&text);
    scarce_end();
}

static void pad_fills_the_last_line_only_and_counts_cells(void **state)
{
    struct text text;

    (void)state;
    text_init(&text);
    text_pad(&text, 2);
    assert_string_equal(text_string(&text), "  ");
    text_add(&text, "a long first line\n\xe6\x9c\xa8\xc3\xa9");
    text_pad(&text, 5);
    assert_string_equal(text_string(&text), "  a long first line\n\xe6\x9c\xa8\xc3\xa9  ");
    text_pad(&text, 5);
    text_pad(&text, 1);
    text_pad(&text, -1);
    assert_string_equal(text_string(&text), "  a long first line\n\xe6\x9c\xa8\xc3\xa9  ");
    text_release(&text);
}

static void columns_are_those_of_a_terminal(void **state)
{
    (void)state;
    assert_int_equal(text_columns(""), 0);
    assert_int_equal(text_columns("rail"), 4);
    assert_int_equal(text_columns("\xc3\xa9"), 1);         /* e with acute */
    assert_int_equal(text_columns("e\xcc\x81"), 1);        /* e and a combining acute */
    assert_int_equal(text_columns("\xe6\x9c\xa8"), 2);     /* an ideograph */
    assert_int_equal(text_columns("\xef\xbf\xbd"), 1);     /* U+FFFD */
    assert_int_equal(text_columns("\x1b"), 1);             /* has no width */
    assert_int_equal(text_columns("a\xff\xfe"), 3);        /* broken, byte by byte */
    assert_int_equal(text_columns("\xf0\x9f\xaa\x9a"), 2); /* a picture of a saw */
}

/* Bytes, code point and length; a length of 1 with U+FFFD is a broken byte. The broken ones are
 * those that table 3-7 of The Unicode Standard rules out. */
static const struct {
    const char *bytes;
    size_t left;
    unsigned code;
    int length;
} characters[] = {
    {"", 1, 0x0, 1},
    {"\x7f", 1, 0x7f, 1},
    {"\xc2\x80", 2, 0x80, 2},
    {"\xdf\xbf", 2, 0x7ff, 2},
    {"\xe0\xa0\x80", 3, 0x800, 3},
    {"\xed\x9f\xbf", 3, 0xd7ff, 3},
    {"\xee\x80\x80", 3, 0xe000, 3},
    {"\xef\xbf\xbd", 3, 0xfffd, 3},
    {"\xef\xbf\xbf", 3, 0xffff, 3},
    {"\xf0\x90\x80\x80", 4, 0x10000, 4},
    {"\xf3\xa0\x81\xbf", 4, 0xe007f, 4},
    {"\xf4\x8f\xbf\xbf", 4, 0x10ffff, 4},
    {"\x80", 1, 0xfffd, 1},             /* begins with a continuation */
    {"\xc0\x80", 2, 0xfffd, 1},         /* overlong */
    {"\xc1\xbf", 2, 0xfffd, 1},         /* overlong */
    {"\xe0\x9f\xbf", 3, 0xfffd, 1},     /* overlong */
    {"\xf0\x8f\xbf\xbf", 4, 0xfffd, 1}, /* overlong */
    {"\xed\xa0\x80", 3, 0xfffd, 1},     /* surrogate */
    {"\xed\xbf\xbf", 3, 0xfffd, 1},     /* surrogate */
    {"\xf4\x90\x80\x80", 4, 0xfffd, 1}, /* beyond U+10FFFF */
    {"\xf5\x80\x80\x80", 4, 0xfffd, 1}, /* beyond U+10FFFF */
    {"\xfe", 1, 0xfffd, 1},
    {"\xff", 1, 0xfffd, 1},
    {"\xc3", 1, 0xfffd, 1},         /* cut off */
    {"\xe2\x82\xac", 2, 0xfffd, 1}, /* cut off by `left` */
    {"\xf0\x9f\xaa\x9a", 3, 0xfffd, 1},
    {"\xe2\x82(", 3, 0xfffd, 1}, /* third byte is no continuation */
    {"\xf0\x9f\xaa(", 4, 0xfffd, 1},
};

static void one_character_is_taken_as_unicode_defines_it(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof characters / sizeof characters[0]; i++) {
        unsigned code = 1;

        assert_int_equal(utf8_next(characters[i].bytes, characters[i].left, &code),
                         characters[i].length);
        assert_int_equal(code, characters[i].code);
        assert_int_equal(utf8_valid(characters[i].bytes, characters[i].left),
                         characters[i].code != 0xfffd || characters[i].length == 3);
    }
}

static void a_string_is_valid_only_up_to_its_length(void **state)
{
    (void)state;
    assert_true(utf8_valid("a\xe2\x82\xac", 4));
    assert_false(utf8_valid("a\xe2\x82\xac", 3));
    assert_true(utf8_valid("a\xe2\x82\xac\xff", 4));
    assert_false(utf8_valid("a\xe2\x82\xac\xff", 5));
}

static void characters_are_counted_not_bytes(void **state)
{
    (void)state;
    assert_int_equal(utf8_count(""), 0);
    assert_int_equal(utf8_count("a\xe2\x82\xac\xf0\x9f\xaa\x91"), 3);
    assert_int_equal(utf8_count("\xff\xe2\x82"), 3); /* each broken byte is one */
}

static void at_the_end_there_is_no_character(void **state)
{
    unsigned code = 7;

    (void)state;
    assert_int_equal(utf8_next("a", 0, &code), 0);
    assert_int_equal(code, 7);
    assert_true(utf8_valid("\xff", 0));
}

static void every_code_point_comes_back_from_its_bytes(void **state)
{
    (void)state;
    for (unsigned code = 0; code <= 0x10ffff; code = code == 0xd7ff ? 0xe000 : code + 1) {
        unsigned back = ~code;
        char bytes[4];
        int length = utf8_put(code, bytes);

        if (utf8_next(bytes, (size_t)length, &back) != length || back != code)
            fail_msg("U+%04X came back as U+%04X", code, back);
    }
}

static void any_bytes_are_walked_through_to_the_end(void **state)
{
    struct dice dice = {3};

    (void)state;
    for (int round = 0; round < 20000; round++) {
        size_t length = (size_t)dice_between(&dice, 0, 16);
        size_t at = 0;
        char bytes[16];

        for (size_t i = 0; i < length; i++)
            bytes[i] = (char)(unsigned char)(dice_bits(&dice) | 0x80);
        while (at < length) {
            unsigned code;
            int step = utf8_next(bytes + at, length - at, &code);

            assert_in_range(step, 1, length - at);
            assert_true(code <= 0x10ffff && (code < 0xd800 || code > 0xdfff));
            at += (size_t)step;
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_empty_text_is_the_empty_string),
        cmocka_unit_test(what_is_added_stands_in_order),
        cmocka_unit_test(a_text_grows_to_any_length),
        cmocka_unit_test(clear_empties_and_forgives),
        cmocka_unit_test(a_failed_request_is_remembered_and_leaves_a_valid_beginning),
        cmocka_unit_test(a_count_beyond_memory_fails_without_a_request),
        cmocka_unit_test(pad_fills_the_last_line_only_and_counts_cells),
        cmocka_unit_test(columns_are_those_of_a_terminal),
        cmocka_unit_test(one_character_is_taken_as_unicode_defines_it),
        cmocka_unit_test(a_string_is_valid_only_up_to_its_length),
        cmocka_unit_test(characters_are_counted_not_bytes),
        cmocka_unit_test(at_the_end_there_is_no_character),
        cmocka_unit_test(every_code_point_comes_back_from_its_bytes),
        cmocka_unit_test(any_bytes_are_walked_through_to_the_end),
    };
    int failed;

    setlocale(LC_CTYPE, "C.UTF-8");
    failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
