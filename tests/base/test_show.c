/* What people wrote, made safe for a terminal: which characters stay is Unicode's to say. */
#include "base/show.h"

#include "base/utf8.h"
#include "dice.h"
#include "scarce.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#define BOX "\xef\xbf\xbd"

static const struct {
    const char *given;
    const char *shown;
} rows[] = {
    {"", ""},
    {"rail 2 x 4", "rail 2 x 4"},
    {"caf\xc3\xa9 \xe6\x9c\xa8 \xf0\x9f\xaa\x9a", "caf\xc3\xa9 \xe6\x9c\xa8 \xf0\x9f\xaa\x9a"},
    {"e\xcc\x81", "e\xcc\x81"}, /* combining marks stay */
    {"a\tb\rc\ad\033[31m", "a" BOX "b" BOX "c" BOX "d" BOX "[31m"},
    {"\x7f", BOX},                             /* DEL */
    {"\xc2\x80\xc2\x9b\xc2\x9f", BOX BOX BOX}, /* C1, with the one-byte CSI */
    {"\xc2\xa0", "\xc2\xa0"},                  /* no-break space is no control */
    {"\xe2\x80\xae"
     "abc\xe2\x80\xac",
     BOX "abc" BOX},                                       /* override and its end */
    {"\xe2\x81\xa6x\xe2\x81\xa9", BOX "x" BOX},            /* isolate and its end */
    {"\xe2\x80\x8b\xe2\x80\x8c\xe2\x80\x8d", BOX BOX BOX}, /* zero-width */
    {"\xe2\x80\x8e\xe2\x80\x8f\xd8\x9c", BOX BOX BOX},     /* direction marks */
    {"\xe2\x80\xa8\xe2\x80\xa9", BOX BOX},                 /* line and paragraph separators */
    {"\xef\xbb\xbf", BOX},                                 /* byte order mark */
    {"\xf3\xa0\x80\x81", BOX},                             /* tag */
    {"\xef\xbf\xbe\xef\xbf\xbf", BOX BOX},                 /* U+FFFE, U+FFFF */
    {"\xef\xb7\x90\xef\xb7\xaf", BOX BOX},                 /* U+FDD0, U+FDEF */
    {"\xf0\x9f\xbf\xbe", BOX},                             /* U+1FFFE */
    {"\xf4\x8f\xbf\xbf", BOX},                             /* U+10FFFF */
    {BOX, BOX},                                            /* stays what it is */
    {"a\xff"
     "b",
     "a" BOX "b"},                 /* broken */
    {"\xc0\xaf", BOX BOX},         /* overlong slash */
    {"\xed\xa0\x80", BOX BOX BOX}, /* surrogate */
    {"\xe2\x82", BOX BOX},         /* cut off */
};

static void each_character_stays_or_becomes_the_replacement(void **state)
{
    struct text text;

    (void)state;
    text_init(&text);
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char buffer[64];

        text_clear(&text);
        show_text(&text, rows[i].given);
        assert_string_equal(text_string(&text), rows[i].shown);
        assert_string_equal(show_into(buffer, sizeof buffer, rows[i].given), rows[i].shown);
    }
    text_release(&text);
}

static void a_newline_stays_only_in_lines(void **state)
{
    struct text text;

    (void)state;
    text_init(&text);
    show_lines(&text, "a\nb\r\n\x1b");
    assert_string_equal(text_string(&text), "a\nb" BOX "\n" BOX);
    text_clear(&text);
    show_text(&text, "a\nb");
    assert_string_equal(text_string(&text), "a" BOX "b");
    text_release(&text);
}

static void nothing_shows_nothing(void **state)
{
    struct text text;
    char buffer[4] = "abc";

    (void)state;
    text_init(&text);
    show_text(&text, NULL);
    show_lines(&text, NULL);
    assert_string_equal(text_string(&text), "");
    assert_string_equal(show_into(buffer, sizeof buffer, NULL), "");
    text_release(&text);
}

static void a_buffer_is_cut_at_a_characters_edge(void **state)
{
    char buffer[8];

    (void)state;
    assert_string_equal(show_into(buffer, 1, "abc"), "");
    assert_string_equal(show_into(buffer, 4, "abc"), "abc");
    assert_string_equal(show_into(buffer, 4, "abcd"), "abc");
    assert_string_equal(show_into(buffer, 4, "ab\xc3\xa9"), "ab");
    assert_string_equal(show_into(buffer, 5, "ab\xc3\xa9"), "ab\xc3\xa9");
    assert_string_equal(show_into(buffer, 3, "\x01"), "");
    assert_string_equal(show_into(buffer, 4, "\x01z"), BOX);
}

/* Counted from the definition: 32 C0, 33 DEL and C1, 66 non-characters, 2048 surrogates; the rest
 * are the format characters of the table in show.c. */
static void unsafe_code_points_are_few_and_counted(void **state)
{
    const int formats = 1 + 1 + 5 + 7 + 16 + 1 + 3 + 4 + 8 + 128;
    int unsafe = 0;

    (void)state;
    for (unsigned code = 0; code <= 0x10ffff; code++)
        unsafe += !show_is_safe(code);
    assert_int_equal(unsafe, 32 + 33 + 66 + 2048 + formats);
    assert_false(show_is_safe(0x110000));
    assert_false(show_is_safe(~0u));
}

static void what_was_shown_once_shows_the_same_again(void **state)
{
    struct dice dice = {4};

    (void)state;
    for (int round = 0; round < 20000; round++) {
        char given[24];
        char once[96];
        char twice[96];
        size_t length = (size_t)dice_between(&dice, 0, sizeof given - 1);

        for (size_t i = 0; i < length; i++)
            given[i] = (char)(unsigned char)dice_between(&dice, i % 3 ? 0x80 : 1, 0xff);
        given[length] = '\0';
        show_into(once, sizeof once, given);
        assert_true(utf8_valid(once, strlen(once)));
        assert_string_equal(show_into(twice, sizeof twice, once), once);
    }
}

static void a_failed_request_is_remembered_by_the_text(void **state)
{
    struct text text;

    (void)state;
    scarce_begin(1);
    text_init(&text);
    show_text(&text, "rail");
    assert_true(text_failed(&text));
    assert_string_equal(text_string(&text), "");
    text_release(&text);
    assert_int_equal(scarce_end(), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_character_stays_or_becomes_the_replacement),
        cmocka_unit_test(a_newline_stays_only_in_lines),
        cmocka_unit_test(nothing_shows_nothing),
        cmocka_unit_test(a_buffer_is_cut_at_a_characters_edge),
        cmocka_unit_test(unsafe_code_points_are_few_and_counted),
        cmocka_unit_test(what_was_shown_once_shows_the_same_again),
        cmocka_unit_test(a_failed_request_is_remembered_by_the_text),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
