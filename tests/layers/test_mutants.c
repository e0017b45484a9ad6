/*
 * Every line that tests/mutants.txt has a reason for stands in its file as it says: a reason for
 * what is no more there would be believed of nothing. The root of the checkout is the argument.
 */
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

static const char *root;

/* In place: lines without blanks round them, and one for each run of blanks in them. */
static void flatten(char *text)
{
    char *to = text;

    for (const char *at = text; *at; at++) {
        if (*at != '\n' && isspace((unsigned char)*at)) {
            if (to > text && to[-1] != '\n' && to[-1] != ' ')
                *to++ = ' ';
            continue;
        }
        if (*at == '\n' && to > text && to[-1] == ' ')
            to--;
        *to++ = *at;
    }
    *to = '\0';
}

static char *text_of(const char *name)
{
    char path[1000];

    snprintf(path, sizeof path, "%s/%s", root, name);
    return tree_text(path);
}

static bool has_line(const char *file, const char *line)
{
    size_t length = strlen(line);
    char *text = text_of(file);
    bool found = false;

    if (!text)
        return false;
    flatten(text);
    for (const char *at = strstr(text, line); at && !found; at = strstr(at + 1, line))
        found = (at == text || at[-1] == '\n') && (at[length] == '\n' || !at[length]);
    free(text);
    return found;
}

static void every_reason_is_of_a_line_that_is_there(void **state)
{
    struct complaints found = {0};
    const char *file = "";
    char *text = text_of("tests/mutants.txt");
    int number = 0, reasons = 0;

    (void)state;
    assert_non_null(text);
    for (char *at = text, *end; *at; at = end) {
        number++;
        end = at + strcspn(at, "\n");
        if (*end)
            *end++ = '\0';
        reasons += strncmp(at, "reason ", 7) == 0;
        if (strncmp(at, "file ", 5) == 0)
            file = at + 5;
        else if (strncmp(at, "was ", 4) == 0 && !has_line(file, at + 4))
            law_complain(&found, "tests/mutants.txt", number, "%s has no such line", file);
    }
    free(text);
    assert_true(reasons > 0);
    if (found.count > 0)
        fail_msg("%d:\n%s", found.count, found.text);
}

static void blanks_round_and_in_a_line_do_not_count(void **state)
{
    char text[] = "  a  =\tb ;\n\n\tif (c)  \n";

    (void)state;
    flatten(text);
    assert_string_equal(text, "a = b ;\n\nif (c)\n");
}

int main(int argc, char **argv)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(blanks_round_and_in_a_line_do_not_count),
        cmocka_unit_test(every_reason_is_of_a_line_that_is_there),
    };

    if (argc != 2) {
        fprintf(stderr, "usage: %s CHECKOUT\n", argv[0]);
        return 2;
    }
    root = argv[1];
    return cmocka_run_group_tests_name("mutants", tests, NULL, NULL) ? 1 : 0;
}
