/* Where values stand, and what may have been meant. */
#include "sample.h"

#include "exchange/near.h"
#include "exchange/source.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

/* The whole walk of a text, a value a line: kind, place, key's place, path, content. */
static void print_values(const struct source *source, struct text *out)
{
    char path[120];

    for (size_t i = 0; i < source->values.count; i++) {
        const struct source_value *value = &source->values.at[i];

        text_format(out, "%c %d:%d", "nftwdsao"[value->kind], value -> place.line,
                    value->place.column);
        if (value->key_length > 0)
            text_format(out, " %s@%d:%d", source_key(source, value), value->key_place.line,
                        value->key_place.column);
        text_format(out, " [%s]", source_path(source, value, path, sizeof path));
        if (value->kind == SOURCE_STRING)
            text_format(out, " %s", source_string(source, value));
        else if (value->kind < SOURCE_STRING)
            text_format(out, " %s", source_token(source, value));
        text_add(out, "\n");
    }
}

static void every_value_has_its_place_and_path(void **state)
{
    static const char bytes[] =
        "\t{\"a\" : [1, -2.5e1,\r\n  {\"b\":\"\xc3\xa9\\\"]\\u00e9\"}, []],\n"
        "\"\xc3\xa9\":true , \"x\\n\" :null,\"y\":{\"z\":false}}";
    struct sample sample;
    struct source source;
    struct text out;

    (void)state;
    sample_init(&sample);
    text_init(&out);
    assert_int_equal(source_read(&source, &sample.arena, bytes, sizeof bytes - 1, NULL), 0);
    print_values(&source, &out);
    assert_string_equal(text_string(&out), "o 1:2 []\n"
                                           "a 1:9 a@1:3 [a]\n"
                                           "w 1:10 [a[0]] 1\n"
                                           "d 1:13 [a[1]] -2.5e1\n"
                                           "o 2:3 [a[2]]\n"
                                           "s 2:8 b@2:4 [a[2].b] \xc3\xa9\"]\xc3\xa9\n"
                                           "a 2:23 [a[3]]\n"
                                           "t 3:5 \xc3\xa9@3:1 [\xc3\xa9] true\n"
                                           "n 3:19 x\n@3:12 [x\\n] null\n"
                                           "o 3:28 y@3:24 [y]\n"
                                           "f 3:33 z@3:29 [y.z] false\n");
    text_release(&out);
    sample_release(&sample);
}

static void a_single_value_is_a_text_too(void **state)
{
    static const char *const texts[] = {"1", " -0.5 ", "\"a\"", "null", "[]", "{}"};
    static const enum source_kind kinds[] = {SOURCE_WHOLE, SOURCE_DECIMAL, SOURCE_STRING,
                                             SOURCE_NULL,  SOURCE_ARRAY,   SOURCE_OBJECT};
    struct sample sample;
    struct source source;

    (void)state;
    sample_init(&sample);
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        assert_int_equal(source_read(&source, &sample.arena, texts[i], strlen(texts[i]), NULL), 0);
        assert_int_equal(source.values.count, 1);
        assert_int_equal(source.values.at[0].kind, kinds[i]);
        assert_null(source_first(&source, source.values.at));
    }
    sample_release(&sample);
}

static void members_follow_one_another(void **state)
{
    static const char bytes[] = "[[1, [2]], 3, {\"a\": 4}, 5]";
    static const uint32_t indices[] = {0, 1, 2, 3};
    const struct source_value *member;
    struct sample sample;
    struct source source;
    size_t count = 0;

    (void)state;
    sample_init(&sample);
    assert_int_equal(source_read(&source, &sample.arena, bytes, sizeof bytes - 1, NULL), 0);
    for (member = source_first(&source, source.values.at); member;
         member = source_next(&source, member)) {
        assert_in_range(count, 0, 3);
        assert_int_equal(member->index, indices[count++]);
    }
    assert_int_equal(count, 4);
    sample_release(&sample);
}

static void a_path_that_is_too_long_loses_its_front(void **state)
{
    static const char bytes[] = "{\"abc\": {\"d\xc3\xa9\xc3\xa9\": [7]}}";
    static const struct {
        size_t size;
        const char *path;
    } rows[] = {{13, "abc.d\xc3\xa9\xc3\xa9[0]"},
                {12, "...d\xc3\xa9\xc3\xa9[0]"},
                {10, "...\xc3\xa9[0]"},
                {8, "...[0]"}};
    struct sample sample;
    struct source source;
    char path[120];

    (void)state;
    sample_init(&sample);
    assert_int_equal(source_read(&source, &sample.arena, bytes, sizeof bytes - 1, NULL), 0);
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        assert_string_equal(source_path(&source, &source.values.at[3], path, rows[i].size),
                            rows[i].path);
    sample_release(&sample);
}

static void the_nearest_word_within_two_letters_is_found(void **state)
{
    static const char *const words[] = {"width", "depth", "height", "name", "u", "both"};
    static const struct {
        const char *typed;
        const char *found;
    } rows[] = {
        {"widht", "width"},
        {"with", "width"},
        {"depths", "depth"},
        {"heigt", "height"},
        {"hieghts", "height"},
        {"nmae", "name"},
        {"nam", "name"},
        {"nxmx", NULL},
        {"v", "u"},
        {"colour", NULL},
        {"", "u"},
        {"boths", "both"},
        {"widthheightdepthwidthheightdepthx", NULL},
    };

    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const char *found = near_word(rows[i].typed, words, sizeof words / sizeof words[0]);

        if (rows[i].found)
            assert_string_equal(found ? found : "nothing", rows[i].found);
        else
            assert_null(found);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_value_has_its_place_and_path),
        cmocka_unit_test(a_single_value_is_a_text_too),
        cmocka_unit_test(members_follow_one_another),
        cmocka_unit_test(a_path_that_is_too_long_loses_its_front),
        cmocka_unit_test(the_nearest_word_within_two_letters_is_found),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
