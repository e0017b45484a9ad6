/* What is wrong with a file, where, and in which words. */
#include "sample.h"

#include "exchange/exchange.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

/* A file, and all that is told of it. */
struct refusal {
    const char *file;
    const char *told;
};

typedef enum fault in_fn(const char *bytes, size_t length, struct model *model,
                         model_fault_fn *tell, void *context);

static void assert_refused(in_fn *in, const char *file, size_t length, const char *expected)
{
    struct sample sample;
    struct told told = {.count = 0};
    struct text before;
    struct text after;
    struct text printed;
    enum fault fault;

    sample_init(&sample);
    text_init(&before);
    text_init(&after);
    text_init(&printed);
    MODEL_ADD(&sample.model, stock)->name = "oak";
    exchange_shop_out(&before, &sample.model);
    fault = in(file, length, &sample.model, told_note, &told);
    told_print(&told, &printed);
    assert_string_equal(text_string(&printed), expected);
    assert_int_equal(fault, told.notes[0].code);
    exchange_shop_out(&after, &sample.model);
    assert_string_equal(text_string(&after), text_string(&before));
    assert_int_equal(sample.model.build.next_key, 1);
    text_release(&before);
    text_release(&after);
    text_release(&printed);
    sample_release(&sample);
}

static void assert_all_refused(in_fn *in, const struct refusal *rows, size_t count)
{
    for (size_t i = 0; i < count; i++)
        assert_refused(in, rows[i].file, strlen(rows[i].file), rows[i].told);
}

#define COUNT(rows) (sizeof(rows) / sizeof(rows)[0])

static void bad_json_is_refused_with_line_and_column(void **state)
{
    static const struct refusal rows[] = {
        {"", "1:1 SYNTAX : unexpected token near end of file\n"},
        {"{\"format\": 1,\n \"kind\": build}", "2:14 SYNTAX : invalid token near 'build'\n"},
        {"{\"a\": 1} x", "1:10 SYNTAX : end of file expected near 'x'\n"},
        {"{\"a\": 1,}", "1:9 SYNTAX : string or '}' expected near '}'\n"},
        {"{\"a\": \"\\ud800\"}", "1:14 SYNTAX : invalid Unicode '\\uD800' near '\"\\ud800\"'\n"},
        {"{\"a\": \"x\\u0000\"}", "1:15 SYNTAX : a text with a NUL in it is not taken\n"},
        {"{\"a\": \"\xff\"}", "1:7 SYNTAX : unable to decode byte 0xff near '\"'\n"},
        {"{\"\xc3\xa9\": 1e999}", "1:11 SYNTAX : the number is too large\n"},
        {"[9223372036854775808]", "1:20 SYNTAX : the number is too large\n"},
        {"[NaN]", "1:4 SYNTAX : invalid token near 'NaN'\n"},
        {"[01]", "1:2 SYNTAX : invalid token near '0'\n"},
        {"\xef\xbb\xbf{}", "1:1 SYNTAX : invalid token near '\xef\xbf\xbd'\n"},
    };

    (void)state;
    assert_all_refused(exchange_build_in, rows, COUNT(rows));
}

static void a_nul_in_the_text_is_refused(void **state)
{
    static const char file[] = "{\"kind\": \"bu\0ild\"}";

    (void)state;
    assert_refused(exchange_build_in, file, sizeof file - 1,
                   "1:12 SYNTAX : control character 0x0 near '\"bu'\n");
}

static void a_file_of_another_kind_or_format_is_refused(void **state)
{
    static const struct refusal rows[] = {
        {"[]", "1:1 TYPE : an object is expected, not a list\n"},
        {"{}", "1:1 MISSING format: \"format\" is needed here: the number of the format, 1\n"
               "1:1 MISSING kind: \"kind\" is needed here: what the file holds\n"},
        {"{\"format\": 2,\n\"kind\": \"workshop\"}",
         "1:12 NEWER format: format 2 is newer than this program, which reads 1\n"
         "2:9 UNKNOWN kind: \"build\" is expected here, not \"workshop\"\n"},
        {"{\"format\": 0, \"kind\": \"build\"}",
         "1:12 RANGE format: there is no format 0; this program reads 1\n"},
        {"{\"format\": \"1\", \"kind\": 1}",
         "1:12 TYPE format: the number of the format, 1, is expected, not a text\n"
         "1:25 TYPE kind: \"build\" is expected here\n"},
        {"{\"format\": 1, \"kind\": \"build\"}",
         "1:1 MISSING build: \"build\" is needed here: the object with its own fields\n"},
        {"{\"format\": 1, \"kind\": \"build\", \"build\": []}",
         "1:41 TYPE build: an object is expected, not a list\n"},
    };

    (void)state;
    assert_all_refused(exchange_build_in, rows, COUNT(rows));
}

/* Files that are right but for one thing. */
#define BUILD(rest) "{\"format\": 1, \"kind\": \"build\",\n\"build\": {\"name\": \"B\"},\n" rest "}"
#define BOX "\"key\": 3, \"name\": \"C\", \"width\": \"9 in\", \"depth\": 2, \"height\": 3"

static void keys_that_are_unknown_or_twice_are_refused(void **state)
{
    static const struct refusal rows[] = {
        {BUILD("\"boxs\": []"),
         "3:1 UNKNOWN boxs: \"boxs\" is not a key of the file; is \"boxes\" meant?\n"},
        {BUILD("\"tools\": []"), "3:1 UNKNOWN tools: \"tools\" is not a key of the file\n"},
        {BUILD("\"boxes\": [], \"boxes\": []"),
         "3:14 DUPLICATE boxes: \"boxes\" stands here twice\n"},
        {BUILD("\"boxes\": [{" BOX ", \"widht\": 4}]"),
         "3:77 UNKNOWN boxes[0].widht: \"widht\" is not a key of boxes; is \"width\" meant?\n"},
        {BUILD("\"boxes\": [{" BOX ", \"color\": 4}]"),
         "3:77 UNKNOWN boxes[0].color: \"color\" is not a key of boxes\n"},
        {BUILD("\"boxes\": [{" BOX ", \"width\": 4}]"),
         "3:77 DUPLICATE boxes[0].width: \"width\" stands here twice\n"},
        {BUILD("\"boxes\": [{" BOX ", \"key\": 4}]"),
         "3:77 DUPLICATE boxes[0].key: \"key\" stands here twice\n"},
        {BUILD("\"stocks\": [{\"name\": \"a\", \"key\": 4}]"),
         "3:26 UNKNOWN stocks[0].key: \"key\" is not a key of stocks\n"},
    };

    (void)state;
    assert_all_refused(exchange_build_in, rows, COUNT(rows));
}

static void values_of_a_wrong_type_are_refused(void **state)
{
    static const struct refusal rows[] = {
        {BUILD("\"boxes\": {}"), "3:10 TYPE boxes: a list is expected, not an object\n"},
        {BUILD("\"boxes\": [null, 3]"),
         "3:11 TYPE boxes[0]: an object is expected, not null\n"
         "3:17 TYPE boxes[1]: an object is expected, not a whole number\n"},
        {BUILD("\"boxes\": [{" BOX ", \"rise\": true}]"),
         "3:85 TYPE boxes[0].rise: a quantity, as a text with its unit or as a number, is "
         "expected, not true\n"},
        {BUILD("\"boxes\": [{" BOX ", \"rise\": 1e2}]"),
         "3:85 SYNTAX boxes[0].rise: the number is to be written without an exponent\n"},
        {BUILD("\"boxes\": [{" BOX ", \"frame\": 1}]"),
         "3:86 TYPE boxes[0].frame: a word as a text is expected, not a whole number\n"},
        {BUILD("\"boxes\": [{" BOX ", \"note\": null}]"),
         "3:85 TYPE boxes[0].note: a text is expected, not null\n"},
        {BUILD("\"boxes\": [{" BOX ", \"stick\": 1}]"),
         "3:86 TYPE boxes[0].stick: the name of a stock is expected, not a whole number\n"},
        {BUILD("\"boxes\": [{" BOX ", \"mirror_of\": \"C\"}]"),
         "3:90 TYPE boxes[0].mirror_of: a key of \"boxes\" is expected, not a text\n"},
        {BUILD("\"extras\": [{\"key\": 1, \"what\": \"wax\", \"count\": 1.5}]"),
         "3:47 TYPE extras[0].count: a whole number is expected, not a decimal\n"},
        {BUILD("\"extras\": [{\"key\": 1, \"what\": \"wax\", \"count\": \"1\"}]"),
         "3:47 TYPE extras[0].count: a whole number is expected, not a text\n"},
        {BUILD("\"extras\": [{\"key\": 1, \"what\": \"wax\", \"price\": 4.5}]"),
         "3:47 TYPE extras[0].price: an amount as a text (\"412.60\") is expected, not a "
         "decimal\n"},
        {BUILD("\"spends\": [{\"key\": 1, \"what\": \"wax\", \"dated\": 2026}]"),
         "3:47 TYPE spends[0].dated: a date as a text (\"2026-11-25\") is expected, not a whole "
         "number\n"},
        {BUILD("\"points\": [{\"key\": 1, \"join\": [1], \"existing\": 1}]"),
         "3:31 TYPE points[0].join: a key of \"joins\" is expected, not a list\n"
         "3:48 TYPE points[0].existing: true or false is expected, not a whole number\n"},
    };

    (void)state;
    assert_all_refused(exchange_build_in, rows, COUNT(rows));
}

static void values_out_of_range_are_refused(void **state)
{
    static const struct refusal rows[] = {
        {BUILD("\"boxes\": [{" BOX ", \"rise\": \"120 in\"}]"),
         "3:85 RANGE boxes[0].rise: rise must be from 0 in to 118 in\n"},
        {BUILD("\"boxes\": [{" BOX ", \"rise\": \"12 kg\"}]"),
         "3:85 UNIT boxes[0].rise: a length is in inches (in), ft, yd, mm, cm or m\n"},
        {BUILD("\"boxes\": [{" BOX ", \"rise\": \"12 in 3\"}]"),
         "3:85 SYNTAX boxes[0].rise: a second number does not fit here: a unit or a fraction is "
         "missing\n"},
        {BUILD("\"boxes\": [{" BOX ", \"rise\": \"2 km\"}]"),
         "3:85 UNIT boxes[0].rise: a length is in inches (in), ft, yd, mm, cm or m\n"},
        {BUILD("\"boxes\": [{" BOX ", \"rise\": 9223372036854775807}]"),
         "3:85 OVERFLOW boxes[0].rise: the number is too large\n"},
        {BUILD("\"boxes\": [{\"key\": 1, \"name\": \"123456789012345678901\", \"width\": 9, "
               "\"depth\": 9, \"height\": 9}]"),
         "3:30 RANGE boxes[0].name: the text has 21 characters, and at most 20 fit\n"},
        {BUILD("\"boxes\": [{\"key\": 1, \"name\": \"\", \"width\": 9, \"depth\": 9}]"),
         "3:11 MISSING boxes[0].height: \"height\" is needed here: outer size, bottom to top\n"
         "3:30 MISSING boxes[0].name: the text must not be empty\n"},
        {BUILD("\"extras\": [{\"key\": 1, \"what\": \"wax\", \"price\": \"4.505\"}]"),
         "3:47 SYNTAX extras[0].price: no more than 2 digits fit after the point\n"},
        {BUILD("\"extras\": [{\"key\": 1, \"what\": \"wax\", \"count\": -1}]"),
         "3:47 RANGE extras[0].count: count must be from 0 to 1000000\n"},
        {BUILD("\"spends\": [{\"key\": 1, \"what\": \"wax\", \"dated\": \"2026-02-29\"}]"),
         "3:47 SYNTAX spends[0].dated: that month has no such day\n"},
        {BUILD("\"groups\": [{\"key\": 0, \"name\": \"g\"}, {\"key\": 1000000000000000, "
               "\"name\": \"g\"}, {\"name\": \"g\"}, {\"key\": \"1\", \"name\": \"g\"}]"),
         "3:20 RANGE groups[0].key: a key is a whole number from 1 to 999999999999999\n"
         "3:45 RANGE groups[1].key: a key is a whole number from 1 to 999999999999999\n"
         "3:77 MISSING groups[2].key: \"key\" is needed here: a whole number that no other item of "
         "the build has\n"
         "3:100 TYPE groups[3].key: a key, a whole number, is expected, not a text\n"},
        {"{\"format\": 1, \"kind\": \"build\", \"build\": {\"name\": \"B\", \"next_key\": 7},"
         "\"groups\": [{\"key\": 7, \"name\": \"g\"}]}",
         "1:67 RANGE build.next_key: the next key must be larger than every key, so at least 8\n"},
    };

    (void)state;
    assert_all_refused(exchange_build_in, rows, COUNT(rows));
}

static void words_and_trade_values_that_are_not_known_are_refused(void **state)
{
    static const struct refusal rows[] = {
        {BUILD("\"boxes\": [{" BOX ", \"frame\": \"lader\"}]"),
         "3:86 UNKNOWN boxes[0].frame: \"lader\" is not one of ladder, crate, board, cushion\n"},
        {BUILD("\"build_values\": [{\"key\": 1, \"name\": \"join.pich\", \"value\": \"1\"}]"),
         "3:37 UNKNOWN build_values[0].name: no trade value is called \"join.pich\"\n"},
        {BUILD("\"build_values\": [{\"key\": 1, \"name\": \"join.pitch\", \"value\": \"1 kg\"}]"),
         "3:60 UNIT build_values[0].value: a length is in inches (in), ft, yd, mm, cm or m\n"},
    };

    (void)state;
    assert_all_refused(exchange_build_in, rows, COUNT(rows));
}

static void references_to_nothing_are_refused(void **state)
{
    static const struct refusal rows[] = {
        {BUILD("\"boxes\": [{" BOX ", \"stick\": \"2x4\"}]"),
         "3:86 REFERENCE boxes[0].stick: no stock is called \"2x4\", in this file or in the "
         "workshop\n"},
        {BUILD("\"boxes\": [{" BOX ", \"mirror_of\": 4}]"),
         "3:90 REFERENCE boxes[0].mirror_of: no box in this file has the key 4\n"},
        {BUILD("\"boxes\": [{" BOX "}], \"joins\": [{\"key\": 4, \"name\": \"j\", \"box_a\": 4}]"),
         "3:122 REFERENCE joins[0].box_a: no box in this file has the key 4\n"},
        {BUILD("\"faces\": [{\"key\": 1, \"box\": 0}]"),
         "3:29 REFERENCE faces[0].box: no box in this file has the key 0\n"},
        {BUILD("\"faces\": [{\"key\": 1}]"),
         "3:11 MISSING faces[0].box: \"box\" is needed here: box\n"},
        {BUILD("\"offers\": [{\"stock\": \"2x4\"}]"),
         "3:22 REFERENCE offers[0].stock: no stock is called \"2x4\", in this file or in the "
         "workshop\n"},
        {"{\"format\": 1, \"kind\": \"build\", \"build\": {\"name\": \"B\", \"set\": \"bed\"}}",
         "1:62 REFERENCE build.set: no set is called \"bed\", in this file or in the workshop\n"},
    };

    (void)state;
    assert_all_refused(exchange_build_in, rows, COUNT(rows));
}

static void keys_and_names_given_twice_are_refused(void **state)
{
    static const struct refusal rows[] = {
        {BUILD("\"boxes\": [{" BOX "},\n{" BOX "}]"),
         "4:9 DUPLICATE boxes[1].key: another item of this build has the key 3\n"
         "4:20 DUPLICATE boxes[1].name: another of \"boxes\" is called \"C\"\n"},
        {BUILD("\"boxes\": [{" BOX "}],\n\"groups\": [{\"key\": 3, \"name\": \"g\"}]"),
         "4:20 DUPLICATE groups[0].key: another item of this build has the key 3\n"},
        {BUILD("\"stocks\": [{\"name\": \"a\"}, {\"name\": \"b\"}, {\"name\": \"a\"}]"),
         "3:51 DUPLICATE stocks[2].name: another of \"stocks\" is called \"a\"\n"},
        {BUILD("\"build_values\": [{\"key\": 1, \"name\": \"join.pitch\", \"value\": \"8 in\"}, "
               "{\"key\": 2, \"name\": \"join.pitch\", \"value\": \"9 in\"}]"),
         "3:88 DUPLICATE build_values[1].name: another of \"build_values\" is called "
         "\"join.pitch\"\n"},
    };

    (void)state;
    assert_all_refused(exchange_build_in, rows, COUNT(rows));
}

static void every_fault_of_a_file_is_told_in_its_order(void **state)
{
    static const char file[] = "{\n"
                               "  \"boxes\": [\n"
                               "    {\"key\": 1, \"name\": \"A\", \"width\": \"0 in\"},\n"
                               "    {\"key\": 1, \"frame\": \"x\", \"stick\": \"y\"}\n"
                               "  ],\n"
                               "  \"faces\": [{\"key\": 2, \"box\": 9, \"sode\": 1}],\n"
                               "  \"format\": 1, \"kind\": \"build\",\n"
                               "  \"build\": {\"due\": \"soon\", \"units\": \"ell\"}\n"
                               "}\n";

    (void)state;
    assert_refused(
        exchange_build_in, file, strlen(file),
        "3:5 MISSING boxes[0].depth: \"depth\" is needed here: outer size, back to front\n"
        "3:5 MISSING boxes[0].height: \"height\" is needed here: outer size, bottom to top\n"
        "3:38 RANGE boxes[0].width: width must be from 7/16 in to 236 in\n"
        "4:5 MISSING boxes[1].name: \"name\" is needed here: letter or short name, written on "
        "every part\n"
        "4:5 MISSING boxes[1].width: \"width\" is needed here: outer size of frame and panels, "
        "left to right\n"
        "4:5 MISSING boxes[1].depth: \"depth\" is needed here: outer size, back to front\n"
        "4:5 MISSING boxes[1].height: \"height\" is needed here: outer size, bottom to top\n"
        "4:13 DUPLICATE boxes[1].key: another item of this build has the key 1\n"
        "4:25 UNKNOWN boxes[1].frame: \"x\" is not one of ladder, crate, board, cushion\n"
        "4:39 REFERENCE boxes[1].stick: no stock is called \"y\", in this file or in the workshop\n"
        "6:31 REFERENCE faces[0].box: no box in this file has the key 9\n"
        "6:34 UNKNOWN faces[0].sode: \"sode\" is not a key of faces; is \"side\" meant?\n"
        "8:12 MISSING build.name: \"name\" is needed here: name of the build\n"
        "8:20 SYNTAX build.due: a date is written year-month-day, as 2026-11-25\n"
        "8:37 UNKNOWN build.units: \"ell\" is not one of inch, mm\n");
}

static void a_workshop_file_is_judged_alike(void **state)
{
    static const struct refusal rows[] = {
        {"{\"format\": 1, \"kind\": \"build\"}",
         "1:23 UNKNOWN kind: \"workshop\" is expected here, not \"build\"\n"},
        {"{\"format\": 1, \"kind\": \"workshop\", \"boxes\": []}",
         "1:1 MISSING workshop: \"workshop\" is needed here: the object with its own fields\n"
         "1:35 UNKNOWN boxes: \"boxes\" is not a key of the file\n"},
        {"{\"format\": 1, \"kind\": \"workshop\", \"workshop\": {\"name\": \"W\", "
         "\"currency\": \"EUR\"}}",
         "1:73 REFUSED workshop.currency: the file is in EUR with 2 digits, and the prices here "
         "are in USD with 2\n"},
        {"{\"format\": 1, \"kind\": \"workshop\", \"workshop\": {\"name\": \"W\", "
         "\"currency\": \"USD\", \"next_key\": 4},\n"
         "\"leftovers\": [{\"stock\": \"elm\"}],\n\"offers\": [{\"stock\": \"oak\", "
         "\"length\": \"x\"}]}",
         "1:80 UNKNOWN workshop.next_key: \"next_key\" is not a key of workshop\n"
         "2:25 REFERENCE leftovers[0].stock: no stock is called \"elm\", in this file or in the "
         "workshop\n"
         "3:39 SYNTAX offers[0].length: \"x\" does not fit here\n"},
    };

    (void)state;
    assert_all_refused(exchange_shop_in, rows, COUNT(rows));
}

/* 1,200 boxes that are no objects. */
static void beyond_a_thousand_faults_only_their_number_is_told(void **state)
{
    struct sample sample;
    struct told *told = calloc(1, sizeof *told);
    struct text file;

    (void)state;
    assert_non_null(told);
    sample_init(&sample);
    text_init(&file);
    text_add(&file, BUILD("\"boxes\": [0"));
    file.length--;
    for (int i = 1; i < 1200; i++)
        text_add(&file, ",0");
    text_add(&file, "]}");
    assert_int_equal(
        exchange_build_in(text_string(&file), file.length, &sample.model, told_note, told),
        FAULT_TYPE);
    assert_int_equal(told->count, 1001);
    text_release(&file);
    sample_release(&sample);
    free(told);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bad_json_is_refused_with_line_and_column),
        cmocka_unit_test(a_nul_in_the_text_is_refused),
        cmocka_unit_test(a_file_of_another_kind_or_format_is_refused),
        cmocka_unit_test(keys_that_are_unknown_or_twice_are_refused),
        cmocka_unit_test(values_of_a_wrong_type_are_refused),
        cmocka_unit_test(values_out_of_range_are_refused),
        cmocka_unit_test(words_and_trade_values_that_are_not_known_are_refused),
        cmocka_unit_test(references_to_nothing_are_refused),
        cmocka_unit_test(keys_and_names_given_twice_are_refused),
        cmocka_unit_test(every_fault_of_a_file_is_told_in_its_order),
        cmocka_unit_test(a_workshop_file_is_judged_alike),
        cmocka_unit_test(beyond_a_thousand_faults_only_their_number_is_told),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
