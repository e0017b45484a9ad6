#include "kept.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

void file_take(struct text *out, const char *path)
{
    FILE *file = fopen(path, "rb");
    char chunk[4096];

    if (!file)
        fail_msg("%s cannot be read", path);
    for (size_t got; (got = fread(chunk, 1, sizeof chunk, file)) > 0;)
        text_add_bytes(out, chunk, got);
    assert_false(ferror(file));
    fclose(file);
}

void file_put_bytes(const char *path, const char *bytes, size_t size)
{
    FILE *file = fopen(path, "wb");

    if (!file)
        fail_msg("%s cannot be written", path);
    assert_int_equal(fwrite(bytes, 1, size, file), size);
    assert_int_equal(fclose(file), 0);
}

void file_put(const char *path, const char *string)
{
    file_put_bytes(path, string, strlen(string));
}

bool kept_is_written(const char *variable)
{
    const char *asked = getenv(variable);

    return asked && strcmp(asked, "write") == 0;
}

/* The row at `*at`, which moves to the next. */
static size_t take_row(const char **at)
{
    size_t length = strcspn(*at, "\n");

    *at += length + ((*at)[length] == '\n');
    return length;
}

/* Row by row, since cmocka cuts what is printed at once. */
static void assert_same_rows(const char *path, const char *expected, const char *made)
{
    bool same = strcmp(expected, made) == 0;

    if (!same)
        print_error("%s:\n", path);
    while (*expected || *made) {
        const char *was = expected;
        const char *is = made;
        size_t was_length = take_row(&expected);
        size_t is_length = take_row(&made);

        if (was_length != is_length || memcmp(was, is, is_length) != 0)
            print_error("-%.*s\n+%.*s\n", (int)was_length, was, (int)is_length, is);
    }
    assert_true(same);
}

void kept_assert(const char *path, const char *made, const char *variable)
{
    struct text found;

    if (kept_is_written(variable)) {
        file_put(path, made);
        return;
    }
    text_init(&found);
    file_take(&found, path);
    if (strcmp(text_string(&found), made) != 0)
        print_error("%s=write in the environment writes this file anew\n", variable);
    assert_same_rows(path, text_string(&found), made);
    text_release(&found);
}
