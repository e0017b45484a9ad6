/* Files that were cut, changed by chance or made to hurt, and memory that runs out. */
#include "sample.h"

#include "exchange/exchange.h"

#include "scarce.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

/* Notes must have a place in the file and a reason. */
struct witness {
    size_t length;
    size_t told;
    bool placed;
};

static void check_note(void *context, const struct fault_note *note)
{
    struct witness *witness = context;

    witness->told++;
    if (note->line < 1 || note->column < 1 || !note->why[0] ||
        (size_t)note->column > witness->length + 1)
        witness->placed = false;
}

/* Bytes in a block of just their length, so that a sanitizer sees a step beyond them. Whatever the
 * outcome, it must be whole: a fault and its notes, or a model that is right. */
static enum fault take(const char *bytes, size_t length)
{
    char *copy = malloc(length ? length : 1);
    struct witness witness = {length, 0, true};
    struct sample sample;
    enum fault fault;

    assert_non_null(copy);
    memcpy(copy, bytes, length);
    sample_init(&sample);
    fault = exchange_build_in(copy, length, &sample.model, check_note, &witness);
    assert_true(witness.placed);
    assert_int_equal(witness.told > 0, fault != FAULT_NONE);
    sample.model.build.key = fault == FAULT_NONE;
    assert_int_equal(model_check(&sample.model, NULL, NULL), 0);
    if (fault)
        assert_int_equal(sample.model.workshop.next_key, 1);
    exchange_kind_of(copy, length, NULL);
    sample_release(&sample);
    free(copy);
    return fault;
}

static void make_file(struct text *file, int most)
{
    struct dice dice = {7};
    struct sample sample;

    sample_init(&sample);
    text_init(file);
    sample_by_chance(&sample.model, &dice, most);
    exchange_build_out(file, &sample.model);
    sample_release(&sample);
}

static void a_file_cut_at_any_byte_is_refused(void **state)
{
    struct text file;

    (void)state;
    make_file(&file, 1);
    assert_int_equal(take(text_string(&file), file.length), FAULT_NONE);
    assert_int_equal(take(text_string(&file), file.length - 1), FAULT_NONE); /* the last newline */
    for (size_t length = 0; length < file.length - 1; length++)
        assert_int_equal(take(text_string(&file), length), FAULT_SYNTAX);
    text_release(&file);
}

static void change_by_chance(struct dice *dice, char *bytes, size_t length)
{
    static const char letters[] = "{}[]\",:\\0123456789.-+eEtfnu \n\x80\xff";

    for (int64_t left = dice_between(dice, 1, 4); left > 0; left--) {
        size_t at = dice_bits(dice) % length;
        size_t from = dice_bits(dice) % length;

        if (dice_bits(dice) % 2)
            bytes[at] = letters[dice_bits(dice) % sizeof letters];
        else
            memmove(bytes + at, bytes + from,
                    (size_t)dice_between(dice, 1, 8) % (length - (at > from ? at : from)));
    }
}

static void a_file_changed_by_chance_is_taken_whole_or_refused(void **state)
{
    struct dice dice = {11};
    struct text file;
    char *bytes;
    int refused = 0;

    (void)state;
    make_file(&file, 2);
    bytes = malloc(file.length);
    assert_non_null(bytes);
    for (int round = 0; round < 2000; round++) {
        memcpy(bytes, text_string(&file), file.length);
        change_by_chance(&dice, bytes, file.length);
        refused += take(bytes, file.length) != FAULT_NONE;
    }
    assert_in_range(refused, 1000, 1999);
    free(bytes);
    text_release(&file);
}

/* Whole values changed for others keep the JSON good and so reach behind the parser. */
static void values_changed_by_chance_are_taken_whole_or_refused(void **state)
{
    static const char *const values[] = {"null",
                                         "true",
                                         "-1",
                                         "0",
                                         "99999999999999",
                                         "1e3",
                                         "\"\"",
                                         "\"x\"",
                                         "[]",
                                         "{}",
                                         "[[{}]]",
                                         "\"\\ud83d\\ude00\"",
                                         "0.000000001",
                                         "\"9223372036854775807 mm\"",
                                         "\"-3 in\""};
    struct dice dice = {13};
    struct text file;
    struct text changed;
    int refused = 0;

    (void)state;
    make_file(&file, 2);
    text_init(&changed);
    for (int round = 0; round < 2000; round++) {
        const char *all = text_string(&file);
        const char *at = strchr(all + dice_bits(&dice) % (file.length / 2), ':');
        size_t tail;

        assert_non_null(at);
        tail = strcspn(at, ",}");
        text_clear(&changed);
        text_add_bytes(&changed, all, (size_t)(at + 1 - all));
        text_add(&changed, values[dice_bits(&dice) % (sizeof values / sizeof values[0])]);
        text_add(&changed, at + tail);
        refused += take(text_string(&changed), changed.length) != FAULT_NONE;
    }
    assert_in_range(refused, 1000, 1999);
    text_release(&changed);
    text_release(&file);
}

static void repeat(struct text *text, const char *piece, int count)
{
    while (count-- > 0)
        text_add(text, piece);
}

static void nesting_without_end_is_refused(void **state)
{
    struct text file;

    (void)state;
    text_init(&file);
    repeat(&file, "[", 1000000);
    assert_int_equal(take(text_string(&file), file.length), FAULT_SYNTAX);
    text_clear(&file);
    repeat(&file, "{\"a\":", 100000);
    assert_int_equal(take(text_string(&file), file.length), FAULT_SYNTAX);
    text_release(&file);
}

static void nesting_as_deep_as_goes_is_walked(void **state)
{
    struct text file;

    (void)state;
    text_init(&file);
    text_add(&file, "{\"format\": 1, \"kind\": \"build\", \"build\": {\"name\": \"B\", \"note\": ");
    repeat(&file, "[", 2000);
    repeat(&file, "]", 2000);
    text_add(&file, "}}");
    assert_int_equal(take(text_string(&file), file.length), FAULT_TYPE);
    text_release(&file);
}

static void a_file_that_is_too_large_is_refused(void **state)
{
    size_t length = ((size_t)16 << 20) + 1;
    char *bytes = malloc(length);
    struct fault_note note;

    (void)state;
    assert_non_null(bytes);
    memset(bytes, ' ', length);
    assert_int_equal(exchange_kind_of(bytes, length, &note), EXCHANGE_NEITHER);
    assert_int_equal(note.code, FAULT_REFUSED);
    free(bytes);
}

/* 40,000 boxes with falling keys: n squared would take minutes under a sanitizer. */
static void many_items_in_a_bad_order_are_read(void **state)
{
    struct sample sample;
    struct text file;

    (void)state;
    sample_init(&sample);
    text_init(&file);
    text_add(&file,
             "{\"format\": 1, \"kind\": \"build\", \"build\": {\"name\": \"B\"}, \"boxes\": [");
    for (int key = 40000; key > 0; key--)
        text_format(&file, "{\"key\":%d,\"name\":\"%d\",\"width\":9,\"depth\":9,\"height\":9}%s",
                    key, key, key > 1 ? "," : "]}");
    assert_int_equal(exchange_build_in(text_string(&file), file.length, &sample.model, NULL, NULL),
                     FAULT_NONE);
    assert_int_equal(sample.model.boxes.count, 40000);
    assert_int_equal(sample.model.boxes.at[39999].key, 40000);
    text_release(&file);
    sample_release(&sample);
}

static void without_memory_the_model_stays_as_it_was(void **state)
{
    struct text file;
    bool failed = true;

    (void)state;
    make_file(&file, 1);
    for (int request = 1; failed; request++) {
        struct sample sample;
        enum fault fault;
        size_t stocks;

        scarce_begin(0);
        sample_init(&sample);
        scarce_begin(request);
        fault = exchange_build_in(text_string(&file), file.length, &sample.model, NULL, NULL);
        stocks = sample.model.stocks.count;
        failed = scarce_failed();
        sample_release(&sample);
        assert_int_equal(scarce_end(), 0);
        assert_int_equal(fault, failed ? FAULT_MEMORY : FAULT_NONE);
        assert_int_equal(stocks, failed ? 0 : 1);
    }
    text_release(&file);
}

static void a_lack_of_memory_is_told(void **state)
{
    static const char file[] = "{\"kind\": \"build\"}";
    struct told told = {.count = 0};
    struct fault_note note = {0};
    struct sample sample;

    (void)state;
    sample_init(&sample);
    scarce_begin(1);
    assert_int_equal(exchange_build_in(file, sizeof file - 1, &sample.model, told_note, &told),
                     FAULT_MEMORY);
    assert_int_equal(scarce_end(), 0);
    assert_int_equal(told.count, 1);
    assert_int_equal(told.notes[0].code, FAULT_MEMORY);
    for (int request = 1; request <= 2; request++) {
        scarce_begin(request);
        assert_int_equal(exchange_kind_of(file, sizeof file - 1, &note), EXCHANGE_NEITHER);
        assert_int_equal(scarce_end(), 0);
        assert_int_equal(note.code, FAULT_MEMORY);
    }
    sample_release(&sample);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_file_cut_at_any_byte_is_refused),
        cmocka_unit_test(a_file_changed_by_chance_is_taken_whole_or_refused),
        cmocka_unit_test(values_changed_by_chance_are_taken_whole_or_refused),
        cmocka_unit_test(nesting_without_end_is_refused),
        cmocka_unit_test(nesting_as_deep_as_goes_is_walked),
        cmocka_unit_test(a_file_that_is_too_large_is_refused),
        cmocka_unit_test(many_items_in_a_bad_order_are_read),
        cmocka_unit_test(without_memory_the_model_stays_as_it_was),
        cmocka_unit_test(a_lack_of_memory_is_told),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
