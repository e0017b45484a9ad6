/* Items looked at, added, changed, copied and deleted by commands, as the forms of the terminal do.
 */
#include "shell.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#define RUN(...) shell_run(shell, __VA_ARGS__, NULL)

static struct shell *with_bench(void **state)
{
    struct shell *shell = *state;

    assert_int_equal(RUN("new", "storage-bench", "Bench")->code, 0);
    return shell;
}

static void kinds_and_items_are_told_field_by_field(void **state)
{
    struct shell *shell = with_bench(state);

    assert_int_equal(RUN("items", "Bench")->code, 0);
    assert_int_equal(RUN("items", "Bench", "layer edge")->code, 0); /* as screens call them */
    assert_int_equal(RUN("items", "Bench", "layer_edge")->code, 0);
    assert_int_equal(RUN("items", "Bench")->code, 0);
    assert_says(shell->answer.out, "box ");
    assert_says(shell->answer.out, "layer ");
    assert_int_equal(
        RUN("add", "Bench", "box", "name=Q", "width=40 in", "depth=3 in", "height=20 in")->code, 0);
    assert_int_equal(RUN("items", "Bench", "box", "Q")->code, 0);
    assert_says(shell->answer.out, "name=Q");
    assert_says(shell->answer.out, "width=40 in");
    assert_int_equal(RUN("items", "Bench", "box", "Q", "--json")->code, 0);
    assert_says(shell->answer.out, "\"width\": \"40 in\"");
}

/* What is printed is what is taken. */
static void an_item_is_changed_and_changed_back(void **state)
{
    struct shell *shell = with_bench(state);

    RUN("add", "Bench", "box", "name=Q", "width=40 in", "depth=3 in", "height=20 in");
    assert_int_equal(RUN("change", "Bench", "box", "Q", "width=42 in", "note=wider")->code, 0);
    RUN("items", "Bench", "box", "Q");
    assert_says(shell->answer.out, "width=42 in");
    assert_says(shell->answer.out, "note=wider");
    assert_int_equal(RUN("undo")->code, 0);
    assert_says(shell->answer.out, "taken back: width, note of Q");
    RUN("items", "Bench", "box", "Q");
    assert_says(shell->answer.out, "width=40 in");
}

static void the_build_itself_needs_no_item(void **state)
{
    struct shell *shell = with_bench(state);

    assert_int_equal(RUN("change", "Bench", "build", "note=for the hall")->code, 0);
    assert_int_equal(RUN("items", "Bench", "build")->code, 0);
    assert_says(shell->answer.out, "note=for the hall");
    assert_int_equal(RUN("change", "-", "workshop", "name=Shed")->code, 0);
    assert_int_equal(RUN("export")->code, 0);
    assert_says(shell->answer.out, "Shed");
}

static void an_item_is_copied_and_deleted_with_what_hangs_on_it(void **state)
{
    struct shell *shell = with_bench(state);

    RUN("add", "Bench", "box", "name=Q", "width=40 in", "depth=3 in", "height=20 in");
    assert_int_equal(
        RUN("add", "Bench", "layer", "box=Q", "kind=batting", "shape=flat", "stock=Batting 1/2 in")
            ->code,
        0);
    assert_int_equal(RUN("copy", "Bench", "box", "Q")->code, 0);
    RUN("items", "Bench", "layer");
    assert_says(shell->answer.out, "box=Q\n");
    assert_says(shell->answer.out, "box=Q 2\n");
    assert_int_equal(RUN("delete", "Bench", "box", "Q")->code, 0);
    assert_int_not_equal(RUN("items", "Bench", "box", "Q")->code, 0);
    RUN("items", "Bench", "layer");
    assert_null(strstr(shell->answer.out, "box=Q\n"));
    assert_says(shell->answer.out, "box=Q 2\n");
}

static void a_box_is_put_beside_another(void **state)
{
    struct shell *shell = with_bench(state);

    RUN("add", "Bench", "box", "name=Q", "width=40 in", "depth=3 in", "height=20 in");
    RUN("add", "Bench", "box", "name=R", "width=10 in", "depth=3 in", "height=20 in");
    assert_int_equal(RUN("put", "Bench", "R", "left", "Q", "begin", "end")->code, 0);
    assert_int_equal(RUN("items", "Bench", "join")->code, 0);
    assert_says(shell->answer.out, "box_b=R");
    assert_int_not_equal(RUN("put", "Bench", "R", "inside", "Q")->code, 0);
    assert_int_not_equal(RUN("put", "Bench", "R", "left", "Q", "somewhere")->code, 0);
}

static void what_is_wrong_is_refused_with_its_reason(void **state)
{
    struct shell *shell = with_bench(state);

    assert_int_not_equal(RUN("add", "Bench", "box", "name=Q", "frame=chest")->code, 0);
    assert_says(shell->answer.error, "frame: one of these is expected: ladder");
    assert_int_not_equal(RUN("add", "Bench", "shelf-board", "name=Q")->code, 0);
    assert_says(shell->answer.error, "no kind of item");
    assert_int_not_equal(RUN("add", "Bench", "box", "colour=red")->code, 0);
    assert_says(shell->answer.error, "no field \"colour\"");
    assert_int_not_equal(RUN("add", "Bench", "box", "red")->code, 0);
    assert_says(shell->answer.error, "is not FIELD=VALUE");
    assert_int_not_equal(RUN("change", "Bench", "box", "99", "width=4")->code, 0);
    assert_says(shell->answer.error, "there is no box \"99\"");
    assert_int_not_equal(RUN("add", "-", "box", "name=Q")->code, 0);
}

/* Which field, of what, in the maker's words: no place in a list, and no column that was typed. */
static void what_is_still_missing_is_named_as_the_maker_names_it(void **state)
{
    struct shell *shell = with_bench(state);

    assert_int_equal(RUN("add", "Bench", "layer", "box=B", "kind=foam")->code, 1);
    assert_string_equal(shell->answer.error, "stuffover: stock of foam of B: a stock is needed\n");
    assert_int_equal(RUN("add", "Bench", "box", "name=Q", "width=40 in")->code, 1);
    assert_says(shell->answer.error, "stuffover: depth of Q: depth must be from");
}

static void a_whole_build_is_deleted(void **state)
{
    struct shell *shell = with_bench(state);

    assert_int_equal(RUN("delete", "Bench")->code, 0);
    RUN("list");
    assert_null(strstr(shell->answer.out, "Bench"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        IN_A_SHELL(kinds_and_items_are_told_field_by_field),
        IN_A_SHELL(an_item_is_changed_and_changed_back),
        IN_A_SHELL(the_build_itself_needs_no_item),
        IN_A_SHELL(an_item_is_copied_and_deleted_with_what_hangs_on_it),
        IN_A_SHELL(a_box_is_put_beside_another),
        IN_A_SHELL(what_is_wrong_is_refused_with_its_reason),
        IN_A_SHELL(what_is_still_missing_is_named_as_the_maker_names_it),
        IN_A_SHELL(a_whole_build_is_deleted),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
