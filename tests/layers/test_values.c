/*
 * Every trade value is read by the engine: one that changes nothing would be a lie to the maker who
 * sets it. Looks for the enum's names in the sources of the checkout, whose root is the argument;
 * the table itself does not count, nor does a comment.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <ctype.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

#include "law.h"
#include "tree.h"

enum { VALUES = 600, NAME = 64 };

static const char *root;

static struct {
    char name[NAME];
    bool read;
} values[VALUES];
static size_t value_count;

static bool is_name(char c)
{
    return isalnum((unsigned char)c) || c == '_';
}

/* ---- the table ---- */

/* "    V(KERF, "kerf", ...": the first word in the brackets. */
static void note_names(struct complaints *found, const char *path, const char *text)
{
    (void)found;
    if (strcmp(path, "values.h") != 0)
        return;
    for (const char *at = strstr(text, " V("); at; at = strstr(at + 3, " V(")) {
        size_t length = strspn(at + 3, "ABCDEFGHIJKLMNOPQRSTUVWXYZ_0123456789");

        if (at[3 + length] != ',' || length >= NAME)
            continue;
        assert_true(value_count < VALUES);
        memcpy(values[value_count].name, at + 3, length);
        values[value_count++].name[length] = '\0';
    }
}

/* ---- what is read ---- */

/* A name as it stands, or the beginning that a macro puts a number to: TRADE_SPAN_SEAT_##name. */
static bool is_meant(const char *word, size_t length, bool pasted, const char *name)
{
    if (strncmp(word, name, length) != 0)
        return false;
    return pasted ? isdigit((unsigned char)name[length]) : name[length] == '\0';
}

static void note_word(const char *word, size_t length, bool pasted)
{
    for (size_t i = 0; i < value_count; i++)
        values[i].read |= is_meant(word, length, pasted, values[i].name);
}

/* From here to the end of a comment that begins here; `at` itself where none does. */
static const char *past_comment(const char *at)
{
    const char *end;

    if (strncmp(at, "/*", 2) != 0)
        return at;
    end = strstr(at + 2, "*/");
    return end ? end + 2 : at + strlen(at);
}

static void note_reads(struct complaints *found, const char *path, const char *text)
{
    (void)found;
    (void)path;
    for (const char *at = text; *at;) {
        const char *next = past_comment(at);
        size_t length;

        if (next != at) {
            at = next;
            continue;
        }
        if (strncmp(at, "TRADE_", 6) != 0 || (at > text && is_name(at[-1]))) {
            at++;
            continue;
        }
        for (length = 6; is_name(at[length]);)
            length++;
        note_word(at + 6, length - 6, strncmp(at + length, "##", 2) == 0);
        at += length;
    }
}

static void walk(const char *folder, void (*check)(struct complaints *, const char *, const char *))
{
    struct complaints found = {0};
    struct tree_check walk = {.check = check, .found = &found};

    assert_true(tree_each_source(root, folder, &walk));
    assert_true(walk.files > 0);
    assert_int_equal(found.count, 0);
}

/* ---- facts ---- */

static void forget(void)
{
    value_count = 0;
    memset(values, 0, sizeof values);
}

static size_t unread(void)
{
    size_t count = 0;

    for (size_t i = 0; i < value_count; i++)
        count += !values[i].read;
    return count;
}

static void a_value_that_stands_in_a_comment_only_is_not_read(void **state)
{
    (void)state;
    forget();
    note_names(NULL, "values.h", "    V(KERF, \"kerf\", LENGTH)\n    V(KERF_FAR, \"kerf.far\")\n");
    assert_int_equal(value_count, 2);
    note_reads(NULL, "a.c", "/* TRADE_KERF */ x = MY_TRADE_KERF;");
    assert_int_equal(unread(), 2);
    note_reads(NULL, "a.c", "x = value[TRADE_KERF_FAR];");
    assert_int_equal(unread(), 1);
    note_reads(NULL, "a.c", "x = value[TRADE_KERF];");
    assert_int_equal(unread(), 0);
}

static void a_name_that_a_macro_ends_is_read(void **state)
{
    (void)state;
    forget();
    note_names(NULL, "values.h", " V(SPAN_1_2, 1)\n V(SPAN_MOST_1_2, 1)\n");
    note_reads(NULL, "a.c", "#define ROW(name) TRADE_SPAN_##name");
    assert_int_equal(unread(), 1); /* MOST is another row's */
}

static void every_trade_value_is_read(void **state)
{
    char names[4096] = "";
    size_t used = 0;

    (void)state;
    forget();
    walk("src/model", note_names);
    assert_true(value_count > 200);
    walk("src", note_reads);
    for (size_t i = 0; i < value_count; i++)
        if (!values[i].read && used + NAME < sizeof names)
            used += (size_t)snprintf(names + used, sizeof names - used, " %s", values[i].name);
    if (unread() > 0)
        fail_msg("%zu trade values change nothing:%s", unread(), names);
}

int main(int argc, char **argv)
{
    if (argc != 2) {
        fprintf(stderr, "usage: %s CHECKOUT\n", argv[0]);
        return 2;
    }
    root = argv[1];
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_value_that_stands_in_a_comment_only_is_not_read),
        cmocka_unit_test(a_name_that_a_macro_ends_is_read),
        cmocka_unit_test(every_trade_value_is_read),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
