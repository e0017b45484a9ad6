/* What goes out comes in again, to the byte. */
#include "sample.h"

#include "exchange/exchange.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <string.h>

typedef void out_fn(struct text *out, const struct model *model);
typedef enum fault in_fn(const char *bytes, size_t length, struct model *model,
                         model_fault_fn *tell, void *context);

/* Takes a file into an empty workshop and puts it out again. */
static void assert_returns(const struct text *file, out_fn *out, in_fn *in)
{
    struct sample fresh;
    struct text again;

    sample_init(&fresh);
    text_init(&again);
    assert_int_equal(in(text_string(file), file->length, &fresh.model, told_aloud, NULL),
                     FAULT_NONE);
    fresh.model.build.key = in == exchange_build_in;
    assert_int_equal(model_check(&fresh.model, told_aloud, NULL), 0);
    out(&again, &fresh.model);
    assert_string_equal(text_string(&again), text_string(file));
    text_release(&again);
    sample_release(&fresh);
}

static void assert_round(unsigned seed, enum units units, out_fn *out, in_fn *in)
{
    struct dice dice = {seed};
    struct sample sample;
    struct text file;

    sample_init(&sample);
    text_init(&file);
    sample_by_chance(&sample.model, &dice, 8);
    sample.model.build.units = units;
    sample.model.workshop.units = units;
    sample.model.build.key = 1;
    assert_int_equal(model_check(&sample.model, told_aloud, NULL), 0);
    out(&file, &sample.model);
    assert_false(text_failed(&file));
    assert_returns(&file, out, in);
    text_release(&file);
    sample_release(&sample);
}

static void a_small_build_is_written_as_expected(void **state)
{
    struct sample sample;
    struct text file;

    (void)state;
    sample_init(&sample);
    text_init(&file);
    sample_small(&sample.model);
    exchange_build_out(&file, &sample.model);
    assert_string_equal(text_string(&file), sample_small_file);
    assert_returns(&file, exchange_build_out, exchange_build_in);
    text_release(&file);
    sample_release(&sample);
}

static void builds_by_chance_return_to_the_byte_in_inches(void **state)
{
    (void)state;
    for (unsigned seed = 1; seed <= 60; seed++)
        assert_round(seed, UNITS_INCH, exchange_build_out, exchange_build_in);
}

static void builds_by_chance_return_to_the_byte_in_millimetres(void **state)
{
    (void)state;
    for (unsigned seed = 101; seed <= 160; seed++)
        assert_round(seed, UNITS_MM, exchange_build_out, exchange_build_in);
}

static void workshops_by_chance_return_to_the_byte_in_both_units(void **state)
{
    (void)state;
    for (unsigned seed = 201; seed <= 300; seed++)
        assert_round(seed, seed % 2 ? UNITS_INCH : UNITS_MM, exchange_shop_out, exchange_shop_in);
}

/* The order of the top keys says nothing: the same file backwards, one line an object. */
static void a_file_reads_in_any_order(void **state)
{
    static const char file[] =
        "{\"faces\":[{\"seen\":\"wall\",\"side\":\"back\",\"box\":3,\"key\":4}],"
        "\"boxes\":[{\"stick\":\"2x4\",\"height\":\"5.540625 \\u006dm\",\"depth\":2.0,\"width\":1,"
        "\"name\":\"C\",\"key\":3}],"
        "\"offers\":[{\"price\":\"4.60\",\"length\":\"8 ft\",\"stock\":\"2x4\"}],"
        "\"stocks\":[{\"width\":3.5,\"thickness\":\"38.1 mm\",\"name\":\"2x4\"}],"
        "\"build\":{\"next_key\":5,\"due\":\"2026-11-25\",\"name\":\"Bench\"},"
        "\"kind\":\"build\",\"format\":1}";
    struct sample sample;
    struct text again;

    (void)state;
    sample_init(&sample);
    text_init(&again);
    assert_int_equal(exchange_build_in(file, strlen(file), &sample.model, told_aloud, NULL),
                     FAULT_NONE);
    exchange_build_out(&again, &sample.model);
    assert_string_equal(text_string(&again), sample_small_file);
    text_release(&again);
    sample_release(&sample);
}

static void the_kind_of_a_file_is_told(void **state)
{
    static const struct {
        const char *file;
        enum exchange_kind kind;
        const char *why;
    } rows[] = {
        {"{\"kind\": \"build\"}", EXCHANGE_BUILD, ""},
        {"{\"x\": [1], \"kind\": \"work\\u0073hop\"}", EXCHANGE_WORKSHOP, ""},
        {"{\n \"kind\": \"plan\"}", EXCHANGE_NEITHER,
         "kind: line 2, column 10: \"build\" or \"workshop\" is expected"},
        {"{}", EXCHANGE_NEITHER, "kind: line 1, column 1: \"build\" or \"workshop\" is expected"},
        {"[]", EXCHANGE_NEITHER, "line 1, column 1: a file of this program is an object"},
        {"{", EXCHANGE_NEITHER, "line 1, column 1: string or '}' expected near end of file"},
    };

    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct fault_note note = {0};
        char why[400] = "";

        assert_int_equal(exchange_kind_of(rows[i].file, strlen(rows[i].file), &note), rows[i].kind);
        if (note.code)
            fault_print(why, sizeof why, &note);
        assert_string_equal(why, rows[i].why);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_small_build_is_written_as_expected),
        cmocka_unit_test(builds_by_chance_return_to_the_byte_in_inches),
        cmocka_unit_test(builds_by_chance_return_to_the_byte_in_millimetres),
        cmocka_unit_test(workshops_by_chance_return_to_the_byte_in_both_units),
        cmocka_unit_test(a_file_reads_in_any_order),
        cmocka_unit_test(the_kind_of_a_file_is_told),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
