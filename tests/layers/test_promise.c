/*
 * No screen, paper, page or message promises that a piece keeps to a rule or that nobody is hurt by
 * it. Looks for the words in the sources, the manual pages, the README, and the screens and sheets
 * as they are shown, in the checkout whose root is the argument. Papers of all builds are looked
 * through where they are made, in tests/paper.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "law.h"
#include "promise.h"
#include "tree.h"

static const char *root;
static char found_promise[256];

static void look(struct complaints *found, const char *path, const char *text)
{
    const char *promise = promise_in(text);

    (void)found;
    if (promise)
        snprintf(found_promise, sizeof found_promise, "%s says \"%s\"", path, promise);
}

static void look_in_file(const char *name)
{
    char path[4096];
    char *text;

    snprintf(path, sizeof path, "%s/%s", root, name);
    text = tree_text(path);
    assert_non_null(text);
    look(NULL, name, text);
    free(text);
}

static void a_promise_is_noticed(void **state)
{
    (void)state;
    assert_non_null(promise_in("This seat Complies with the rule"));
    assert_non_null(promise_in("the lid is\nFireproof"));
    assert_null(promise_in("check your local rule and a licensed person"));
}

static void nothing_promises_safety_or_that_a_rule_is_kept(void **state)
{
    static const char *const files[] = {"README.md",
                                        "man/stuffover.1",
                                        "man/stuffover-build.5",
                                        "man/stuffover-store.5",
                                        "man/stuffover-terminal.5",
                                        "man/stuffover-trade.7"};
    struct complaints found = {0};
    struct tree_check walk = {.check = look, .found = &found};

    (void)state;
    assert_true(tree_each_source(root, "src", &walk));
    assert_true(walk.files > 100);
    for (size_t i = 0; i < sizeof files / sizeof *files; i++)
        look_in_file(files[i]);
    if (found_promise[0])
        fail_msg("%s", found_promise);
}

/* The golden texts: what really stands on each screen, and on each sheet of the worked examples. */
static void nothing_that_is_shown_promises_it_either(void **state)
{
    static const char *const folders[] = {"tests/screens", "tests/paper"};
    struct complaints found = {0};
    struct tree_check walk = {.check = look, .found = &found, .ending = ".txt"};

    (void)state;
    for (size_t i = 0; i < sizeof folders / sizeof *folders; i++) {
        walk.files = 0;
        assert_true(tree_each_source(root, folders[i], &walk));
        assert_true(walk.files > 20);
    }
    if (found_promise[0])
        fail_msg("%s", found_promise);
}

int main(int argc, char **argv)
{
    if (argc != 2) {
        fprintf(stderr, "usage: %s CHECKOUT\n", argv[0]);
        return 2;
    }
    root = argv[1];
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_promise_is_noticed),
        cmocka_unit_test(nothing_promises_safety_or_that_a_rule_is_kept),
        cmocka_unit_test(nothing_that_is_shown_promises_it_either),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
