/*
 * Every formula that a header of the engine names stands in the table of formulas, and every one of
 * the table in a header and on the manual page, with its source, range and doubt. The root of the
 * checkout is the argument.
 */
#include "plan/formulas.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <ctype.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "law.h"
#include "tree.h"

static const struct {
    const char *key, *formula, *source, *range, *doubt;
} formulas[] = {
#define FORMULA_ROW(key, formula, source, range, doubt) {key, formula, source, range, doubt},
    FORMULAS(FORMULA_ROW)
#undef FORMULA_ROW
};

#define COUNT (sizeof formulas / sizeof *formulas)

static const char *root;
static bool named[COUNT];
static char unknown[64];

/* "formula way.door: ...": a word with a point in it. */
static void note(const char *word)
{
    size_t length = strspn(word, "abcdefghijklmnopqrstuvwxyz_.");

    while (length > 0 && word[length - 1] == '.')
        length--;
    if (!memchr(word, '.', length))
        return;
    for (size_t i = 0; i < COUNT; i++)
        if (strlen(formulas[i].key) == length && strncmp(formulas[i].key, word, length) == 0) {
            named[i] = true;
            return;
        }
    snprintf(unknown, sizeof unknown, "%.*s", (int)length, word);
}

static void look(struct complaints *found, const char *path, const char *text)
{
    (void)found;
    if (strcmp(path, "formulas.h") == 0 || !strstr(path, ".h"))
        return;
    for (const char *at = strstr(text, "ormula "); at; at = strstr(at + 7, "ormula "))
        note(at + 7);
}

static void headers_and_table_name_the_same_formulas(void **state)
{
    struct complaints found = {0};
    struct tree_check walk = {.check = look, .found = &found};

    (void)state;
    assert_true(tree_each_source(root, "src/plan", &walk));
    if (unknown[0])
        fail_msg("a header names the formula %s, the table does not", unknown);
    for (size_t i = 0; i < COUNT; i++)
        if (!named[i])
            fail_msg("no header names the formula %s", formulas[i].key);
}

static void every_formula_has_source_range_and_doubt(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT; i++) {
        assert_true(strlen(formulas[i].formula) > 10);
        assert_true(strlen(formulas[i].source) >= 7);
        assert_true(strlen(formulas[i].range) > 5);
        assert_true(strlen(formulas[i].doubt) >= 4);
    }
}

static char *page_text(void)
{
    char path[4096];
    char *text;

    snprintf(path, sizeof path, "%s/man/stuffover-trade.7", root);
    text = tree_text(path);
    assert_non_null(text);
    return text;
}

static void the_page_has_every_formula(void **state)
{
    char *text = page_text();
    char line[128];

    (void)state;
    for (size_t i = 0; i < COUNT; i++) {
        snprintf(line, sizeof line, ".It Em %s\n", formulas[i].key);
        if (!strstr(text, line))
            fail_msg("stuffover-trade(7) lacks %s", formulas[i].key);
    }
    free(text);
}

int main(int argc, char **argv)
{
    if (argc != 2) {
        fprintf(stderr, "usage: %s CHECKOUT\n", argv[0]);
        return 2;
    }
    root = argv[1];
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(headers_and_table_name_the_same_formulas),
        cmocka_unit_test(every_formula_has_source_range_and_doubt),
        cmocka_unit_test(the_page_has_every_formula),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
