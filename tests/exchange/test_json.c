/* The writer, byte by byte. */
#include "exchange/json.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static int begin(void **state)
{
    static struct text out;

    text_init(&out);
    *state = &out;
    return 0;
}

static int end(void **state)
{
    text_release(*state);
    return 0;
}

static void members_stand_each_on_a_line_or_all_on_one(void **state)
{
    struct text *out = *state;
    struct json json;

    json_put_start(&json, out);
    json_put_object(&json, JSON_LINES);
    json_put_key(&json, "a");
    json_put_whole(&json, -7);
    json_put_key(&json, "list");
    json_put_array(&json, JSON_LINES);
    json_put_object(&json, JSON_LINE);
    json_put_key(&json, "b");
    json_put_bool(&json, true);
    json_put_key(&json, "c");
    json_put_array(&json, JSON_LINES);
    json_put_null(&json);
    json_put_bool(&json, false);
    json_put_close(&json);
    json_put_close(&json);
    json_put_whole(&json, INT64_MIN);
    json_put_close(&json);
    json_put_close(&json);
    json_put_end(&json);
    assert_string_equal(text_string(out), "{\n"
                                          "  \"a\": -7,\n"
                                          "  \"list\": [\n"
                                          "    {\"b\": true, \"c\": [null, false]},\n"
                                          "    -9223372036854775808\n"
                                          "  ]\n"
                                          "}\n");
}

static void empty_containers_take_no_line(void **state)
{
    struct text *out = *state;
    struct json json;

    json_put_start(&json, out);
    json_put_array(&json, JSON_LINES);
    json_put_object(&json, JSON_LINES);
    json_put_close(&json);
    json_put_array(&json, JSON_LINE);
    json_put_close(&json);
    json_put_close(&json);
    json_put_end(&json);
    assert_string_equal(text_string(out), "[\n  {},\n  []\n]\n");
}

static void texts_are_escaped_and_made_whole(void **state)
{
    static const struct {
        const char *string;
        const char *expected;
    } rows[] = {
        {"", "\"\"\n"},
        {"a\"b\\c/d", "\"a\\\"b\\\\c/d\"\n"},
        {"one\ntwo\tthree\r", "\"one\\ntwo\\tthree\\u000d\"\n"},
        {"\x01\x1f\x7f", "\"\\u0001\\u001f\x7f\"\n"},
        {"\xc3\xa9\xf0\x9f\x9b\x8b", "\"\xc3\xa9\xf0\x9f\x9b\x8b\"\n"},
        {"a\xff\xc3", "\"a\xef\xbf\xbd\xef\xbf\xbd\"\n"},
        {NULL, "null\n"},
    };
    struct text *out = *state;
    struct json json;

    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        text_clear(out);
        json_put_start(&json, out);
        json_put_string(&json, rows[i].string);
        json_put_end(&json);
        assert_string_equal(text_string(out), rows[i].expected);
    }
}

static void quantities_are_texts_and_counts_are_numbers(void **state)
{
    struct text *out = *state;
    struct currency currency = {"USD", 2};
    struct json json;

    json_put_start(&json, out);
    json_put_array(&json, JSON_LINE);
    json_put_quantity(&json, QUANTITY_LENGTH, UNITS_INCH, 63 * LENGTH_INCH);
    json_put_quantity(&json, QUANTITY_LENGTH, UNITS_INCH, 153 * LENGTH_INCH / 2);
    json_put_quantity(&json, QUANTITY_LENGTH, UNITS_INCH, 813);
    json_put_quantity(&json, QUANTITY_LENGTH, UNITS_MM, 19 * LENGTH_MM);
    json_put_quantity(&json, QUANTITY_DENSITY, UNITS_INCH, 28500);
    json_put_quantity(&json, QUANTITY_COUNT, UNITS_MM, 12);
    json_put_money(&json, currency, 41260);
    json_put_decimal(&json, 1250, 2);
    json_put_close(&json);
    json_put_end(&json);
    assert_string_equal(text_string(out),
                        "[\"63 in\", \"76-1/2 in\", \"2.540625 mm\", \"19 mm\", \"28.5 kg/m3\", "
                        "12, \"412.60\", 12.50]\n");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(members_stand_each_on_a_line_or_all_on_one, begin, end),
        cmocka_unit_test_setup_teardown(empty_containers_take_no_line, begin, end),
        cmocka_unit_test_setup_teardown(texts_are_escaped_and_made_whole, begin, end),
        cmocka_unit_test_setup_teardown(quantities_are_texts_and_counts_are_numbers, begin, end),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
