#include "golden.h"

#include "base/text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static void golden_path(char path[1024], const char *name)
{
    snprintf(path, 1024, "%s/%s.txt", GOLDEN_FOLDER, name);
}

static bool is_to_be_written(void)
{
    const char *asked = getenv("STUFFOVER_GOLDEN");
    return asked && strcmp(asked, "write") == 0;
}

static void write_golden(const char *path, const char *screen)
{
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    assert_true(fputs(screen, file) >= 0);
    assert_int_equal(fclose(file), 0);
}

static void read_golden(const char *path, struct text *ret_text)
{
    char chunk[4096];
    FILE *file = fopen(path, "rb");
    if (!file)
        fail_msg("%s is not there: STUFFOVER_GOLDEN=write makes it", path);
    for (size_t got; (got = fread(chunk, 1, sizeof chunk, file)) > 0;)
        text_add_bytes(ret_text, chunk, got);
    fclose(file);
}

/* The row at `*at`, which moves to the next. */
static size_t take_row(const char **at)
{
    size_t length = strcspn(*at, "\n");
    *at += length + ((*at)[length] == '\n');
    return length;
}

/* Row by row, since cmocka cuts what is printed at once. */
static void assert_same_rows(const char *name, const char *expected, const char *shown)
{
    bool same = strcmp(expected, shown) == 0;
    if (!same)
        print_error("%s:\n", name);
    while (*expected || *shown) {
        const char *was = expected;
        const char *is = shown;
        size_t was_length = take_row(&expected);
        size_t is_length = take_row(&shown);
        if (was_length != is_length || memcmp(was, is, is_length) != 0)
            print_error("-%.*s\n+%.*s\n", (int)was_length, was, (int)is_length, is);
    }
    assert_true(same);
}

void assert_golden(const char *name, const char *screen)
{
    char path[1024];
    struct text expected;
    golden_path(path, name);
    if (is_to_be_written()) {
        write_golden(path, screen);
        return;
    }
    text_init(&expected);
    read_golden(path, &expected);
    assert_same_rows(name, text_string(&expected), screen);
    text_release(&expected);
}
