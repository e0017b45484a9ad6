/* What a file becomes in a workshop that is in use. */
#include "sample.h"

#include "exchange/exchange.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

static int begin(void **state)
{
    static struct sample sample;

    sample_init(&sample);
    *state = &sample.model;
    return 0;
}

static int end(void **state)
{
    struct model *model = *state;

    arena_release(model->arena);
    return 0;
}

static void take_build(struct model *model, const char *file)
{
    assert_int_equal(exchange_build_in(file, strlen(file), model, told_aloud, NULL), FAULT_NONE);
    model->build.key = 1;
    assert_int_equal(model_check(model, told_aloud, NULL), 0);
    model->build.key = 0;
}

static void take_shop(struct model *model, const char *file)
{
    assert_int_equal(exchange_shop_in(file, strlen(file), model, told_aloud, NULL), FAULT_NONE);
    assert_int_equal(model_check(model, told_aloud, NULL), 0);
}

static void assert_shop(const struct model *model, const char *expected)
{
    struct text out;

    text_init(&out);
    exchange_shop_out(&out, model);
    assert_string_equal(text_string(&out), expected);
    text_release(&out);
}

static void a_build_brings_its_stock_to_a_workshop_without_it(void **state)
{
    struct model *model = *state;

    MODEL_ADD(model, stock)->name = "oak";
    take_build(model, sample_small_file);
    assert_int_equal(model->stocks.count, 2);
    assert_string_equal(model->stocks.at[1].name, "2x4");
    assert_int_equal(model->offers.count, 1);
    assert_int_equal(model->offers.at[0].stock, model->stocks.at[1].key);
    assert_int_equal(model->boxes.at[0].stick, model->stocks.at[1].key);
    assert_int_equal(model->boxes.at[0].key, 3);
    assert_int_equal(model->build.next_key, 5);
}

static void a_stock_of_the_same_name_is_used_as_it_is(void **state)
{
    struct model *model = *state;
    struct stock *stock;
    struct offer *offer;

    MODEL_ADD(model, stock)->name = "oak";
    stock = MODEL_ADD(model, stock);
    stock->name = "2x4";
    stock->thickness = LENGTH_INCH;
    offer = MODEL_ADD(model, offer);
    offer->stock = 2;
    offer->price = 999;
    take_build(model, sample_small_file);
    assert_int_equal(model->stocks.count, 2);
    assert_int_equal(model->stocks.at[1].thickness, LENGTH_INCH);
    assert_int_equal(model->offers.count, 1);
    assert_int_equal(model->offers.at[0].price, 999);
    assert_int_equal(model->boxes.at[0].stick, 2);
    assert_int_equal(model->workshop.next_key, 4);
}

/* A file made by hand: the next key is worked out, and units of the build hold for all of it. */
static void a_file_by_hand_needs_only_what_is_not_standard(void **state)
{
    static const char file[] =
        "{\"format\": 1, \"kind\": \"build\", \"build\": {\"name\": \"B\", \"units\": \"mm\"},"
        "\"boxes\": [{\"key\": 12, \"name\": \"A\", \"width\": 400.5, \"depth\": \"90\","
        "\"height\": \"20 in\"}],"
        "\"build_values\": [{\"key\": 2, \"name\": \"join.pitch\", \"value\": \"150\"}]}";
    struct model *model = *state;

    take_build(model, file);
    assert_int_equal(model->build.next_key, 13);
    assert_int_equal(model->boxes.at[0].width, 4005 * LENGTH_MM / 10);
    assert_int_equal(model->boxes.at[0].depth, 90 * LENGTH_MM);
    assert_int_equal(model->boxes.at[0].height, 20 * LENGTH_INCH);
    assert_string_equal(model->build_values.at[0].value, "150 mm");
}

static void references_may_point_forward(void **state)
{
    static const char file[] =
        "{\"format\": 1, \"kind\": \"build\", \"build\": {\"name\": \"B\"},"
        "\"joins\": [{\"key\": 1, \"name\": \"j\", \"box_a\": 9, \"box_b\": 8}], \"boxes\": ["
        "{\"key\": 9, \"name\": \"A\", \"width\": 9, \"depth\": 9, \"height\": 9, "
        "\"mirror_of\": 8},"
        "{\"key\": 8, \"name\": \"B\", \"width\": 9, \"depth\": 9, \"height\": 9}]}";
    struct model *model = *state;

    take_build(model, file);
    assert_int_equal(model->boxes.at[0].key, 8);
    assert_int_equal(model->boxes.at[1].mirror_of, 8);
    assert_int_equal(model->joins.at[0].box_a, 9);
}

static void an_optional_reference_may_be_given_as_none(void **state)
{
    static const char file[] =
        "{\"format\": 1, \"kind\": \"build\", \"build\": {\"name\": \"B\", \"set\": \"\"},"
        "\"boxes\": [{\"key\": 9, \"name\": \"A\", \"width\": 9, \"depth\": 9, \"height\": 9, "
        "\"mirror_of\": 0}]}";
    struct model *model = *state;

    take_build(model, file);
    assert_int_equal(model->build.set, 0);
    assert_int_equal(model->boxes.at[0].mirror_of, 0);
}

#define SHOP(name, rest)                                                                         \
    "{\n"                                                                                        \
    "  \"format\": 1,\n"                                                                         \
    "  \"kind\": \"workshop\",\n"                                                                \
    "  \"workshop\": {\"name\": \"" name "\", \"currency\": \"USD\", \"units\": \"mm\"},\n" rest \
    ""                                                                                           \
    "}\n"

static const char shop_file[] =
    SHOP("Barn", "  \"tools\": [\n"
                 "    {\"name\": \"gun\", \"kind\": \"air_gun\"}\n"
                 "  ],\n"
                 "  \"stocks\": [\n"
                 "    {\"name\": \"oak\", \"thickness\": \"20 mm\"},\n"
                 "    {\"name\": \"elm\"}\n"
                 "  ],\n"
                 "  \"offers\": [\n"
                 "    {\"stock\": \"oak\", \"length\": \"2000 mm\", \"price\": \"5.00\"},\n"
                 "    {\"stock\": \"elm\", \"length\": \"2000 mm\", \"price\": \"4.00\"}\n"
                 "  ],\n"
                 "  \"leftovers\": [\n"
                 "    {\"stock\": \"elm\", \"length\": \"300 mm\"},\n"
                 "    {\"stock\": \"elm\", \"length\": \"300 mm\"}\n"
                 "  ],\n"
                 "  \"shop_values\": [\n"
                 "    {\"name\": \"join.pitch\", \"value\": \"150 mm\"}\n"
                 "  ],\n"
                 "  \"shop_spends\": [\n"
                 "    {\"dated\": \"2026-11-25\", \"amount\": \"3.20\", \"what\": \"nails\", "
                 "\"count\": 2}\n"
                 "  ]\n");

static void the_same_workshop_file_twice_changes_nothing(void **state)
{
    struct model *model = *state;
    int64_t next_key;

    take_shop(model, shop_file);
    assert_shop(model, shop_file);
    next_key = model->workshop.next_key;
    take_shop(model, shop_file);
    assert_shop(model, shop_file);
    assert_int_equal(model->workshop.next_key, next_key);
    assert_int_equal(model->offers.at[0].key, 5);
}

static void a_workshop_file_replaces_by_name_and_adds_the_rest(void **state)
{
    static const char newer[] =
        SHOP("Loft", "  \"stocks\": [\n"
                     "    {\"name\": \"ash\"},\n"
                     "    {\"name\": \"oak\", \"thickness\": \"22 mm\"}\n"
                     "  ],\n"
                     "  \"offers\": [\n"
                     "    {\"stock\": \"oak\", \"length\": \"3000 mm\", \"price\": \"7.00\"}\n"
                     "  ],\n"
                     "  \"leftovers\": [\n"
                     "    {\"stock\": \"elm\", \"length\": \"300 mm\"},\n"
                     "    {\"stock\": \"oak\", \"length\": \"310 mm\"}\n"
                     "  ],\n"
                     "  \"shop_values\": [\n"
                     "    {\"name\": \"join.pitch\", \"value\": \"160 mm\"}\n"
                     "  ]\n");
    static const char merged[] =
        SHOP("Loft", "  \"tools\": [\n"
                     "    {\"name\": \"gun\", \"kind\": \"air_gun\"}\n"
                     "  ],\n"
                     "  \"stocks\": [\n"
                     "    {\"name\": \"oak\", \"thickness\": \"22 mm\"},\n"
                     "    {\"name\": \"elm\"},\n"
                     "    {\"name\": \"ash\"}\n"
                     "  ],\n"
                     "  \"offers\": [\n"
                     "    {\"stock\": \"elm\", \"length\": \"2000 mm\", \"price\": \"4.00\"},\n"
                     "    {\"stock\": \"oak\", \"length\": \"3000 mm\", \"price\": \"7.00\"}\n"
                     "  ],\n"
                     "  \"leftovers\": [\n"
                     "    {\"stock\": \"elm\", \"length\": \"300 mm\"},\n"
                     "    {\"stock\": \"elm\", \"length\": \"300 mm\"},\n"
                     "    {\"stock\": \"oak\", \"length\": \"310 mm\"}\n"
                     "  ],\n"
                     "  \"shop_values\": [\n"
                     "    {\"name\": \"join.pitch\", \"value\": \"160 mm\"}\n"
                     "  ],\n"
                     "  \"shop_spends\": [\n"
                     "    {\"dated\": \"2026-11-25\", \"amount\": \"3.20\", \"what\": \"nails\", "
                     "\"count\": 2}\n"
                     "  ]\n");
    struct model *model = *state;

    take_shop(model, shop_file);
    take_shop(model, newer);
    assert_shop(model, merged);
    assert_string_equal(MODEL_FIND(model, stock, 2)->name, "oak");
}

static void a_build_in_the_model_stays_when_a_workshop_comes_in(void **state)
{
    struct model *model = *state;
    struct text out;

    text_init(&out);
    sample_small(model);
    take_shop(model, "{\"format\": 1, \"kind\": \"workshop\", \"workshop\": {\"name\": \"W\", "
                     "\"currency\": \"USD\", \"units\": \"mm\"}, "
                     "\"stocks\": [{\"name\": \"elm\"}]}");
    exchange_build_out(&out, model);
    assert_string_equal(text_string(&out), sample_small_file);
    assert_int_equal(model->stocks.count, 3);
    text_release(&out);
}

static void an_unused_workshop_takes_another_currency(void **state)
{
    struct model *model = *state;

    take_shop(model, "{\"format\": 1, \"kind\": \"workshop\", \"workshop\": {\"name\": \"W\", "
                     "\"currency\": \"BHD\", \"digits\": 3}, \"stocks\": [{\"name\": \"elm\"}], "
                     "\"offers\": [{\"stock\": \"elm\", \"price\": \"1.234\"}]}");
    assert_int_equal(model->offers.at[0].price, 1234);
}

int main(void)
{
#define TEST(name) cmocka_unit_test_setup_teardown(name, begin, end)
    const struct CMUnitTest tests[] = {
        TEST(a_build_brings_its_stock_to_a_workshop_without_it),
        TEST(a_stock_of_the_same_name_is_used_as_it_is),
        TEST(a_file_by_hand_needs_only_what_is_not_standard),
        TEST(references_may_point_forward),
        TEST(an_optional_reference_may_be_given_as_none),
        TEST(the_same_workshop_file_twice_changes_nothing),
        TEST(a_workshop_file_replaces_by_name_and_adds_the_rest),
        TEST(a_build_in_the_model_stays_when_a_workshop_comes_in),
        TEST(an_unused_workshop_takes_another_currency),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
