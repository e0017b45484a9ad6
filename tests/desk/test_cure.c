/* Cures taken as one edit of the desk. */
#include "workshop.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static int begin(void **state)
{
    static const char *const names[] = {"headboard", NULL};
    return bench_begin(state, names);
}

static enum fault take(struct bench *bench, const struct cure_edit *edits, size_t count,
                       struct fault_note *note)
{
    struct cure cure = {.text = "Try it otherwise", .edits = edits, .edit_count = count};
    struct desk_cure change = {&cure};

    return desk_edit(bench->desk, cure.text, desk_cure_change, &change, note);
}

static const struct join *join_named(const struct bench *bench, const char *name)
{
    const struct model *model = desk_model(bench->desk);

    return MODEL_FIND(model, join, model_key_named(model, ENTITY_join, name));
}

static void cure_sets_fields_of_several_items_in_one_edit(void **state)
{
    struct bench *bench = *state;
    char label[STORE_LABEL];
    const struct cure_edit edits[] = {{ENTITY_join, join_named(bench, "J1")->key, "head", "b"},
                                      {ENTITY_join, join_named(bench, "J2")->key, "head", "b"}};

    DONE(take(bench, edits, 2, note));
    assert_int_equal(join_named(bench, "J1")->head, HEAD_B);
    assert_int_equal(join_named(bench, "J2")->head, HEAD_B);
    DONE(desk_undo(bench->desk, label, note));
    assert_string_equal(label, "Try it otherwise");
    assert_int_equal(join_named(bench, "J1")->head, HEAD_A);
    assert_int_equal(join_named(bench, "J2")->head, HEAD_A);
}

static void cure_fills_one_new_item_with_lines_that_follow_each_other(void **state)
{
    struct bench *bench = *state;
    size_t before = desk_model(bench->desk)->tools.count;
    const struct cure_edit edits[] = {{ENTITY_tool, 0, "name", "Elbow driver"},
                                      {ENTITY_tool, 0, "kind", "right_angle"},
                                      {ENTITY_tool, 0, "length", "3 in"}};

    DONE(take(bench, edits, 3, note));
    assert_int_equal(desk_model(bench->desk)->tools.count, before + 1);
    const struct tool *tool = &desk_model(bench->desk)->tools.at[before];
    assert_string_equal(tool->name, "Elbow driver");
    assert_int_equal(tool->kind, TOOL_RIGHT_ANGLE);
}

static void cure_makes_two_new_items_of_one_kind_when_another_line_lies_between(void **state)
{
    struct bench *bench = *state;
    int64_t join = join_named(bench, "J1")->key;
    size_t before = desk_model(bench->desk)->tools.count;
    const struct cure_edit edits[] = {{ENTITY_tool, 0, "name", "One"},
                                      {ENTITY_join, join, "head", "b"},
                                      {ENTITY_tool, 0, "name", "Other"}};

    DONE(take(bench, edits, 3, note));
    assert_int_equal(desk_model(bench->desk)->tools.count, before + 2);
}

static void cure_begins_the_next_new_item_where_a_field_comes_again(void **state)
{
    struct bench *bench = *state;
    size_t before = desk_model(bench->desk)->tools.count;
    const struct cure_edit edits[] = {{ENTITY_tool, 0, "name", "One"},
                                      {ENTITY_tool, 0, "kind", "stubby"},
                                      {ENTITY_tool, 0, "name", "Other"},
                                      {ENTITY_tool, 0, "kind", "right_angle"}};

    DONE(take(bench, edits, 4, note));
    assert_int_equal(desk_model(bench->desk)->tools.count, before + 2);
    assert_string_equal(desk_model(bench->desk)->tools.at[before].name, "One");
    assert_int_equal(desk_model(bench->desk)->tools.at[before].kind, TOOL_STUBBY);
    assert_string_equal(desk_model(bench->desk)->tools.at[before + 1].name, "Other");
    assert_int_equal(desk_model(bench->desk)->tools.at[before + 1].kind, TOOL_RIGHT_ANGLE);
}

static void cure_without_a_field_deletes(void **state)
{
    struct bench *bench = *state;
    const struct cure_edit edit = {ENTITY_join, join_named(bench, "J2")->key, NULL, NULL};

    DONE(take(bench, &edit, 1, note));
    assert_null(join_named(bench, "J2"));
}

static void cure_that_cannot_be_read_leaves_all_as_it_was(void **state)
{
    struct bench *bench = *state;
    struct fault_note note = {0};
    const struct cure_edit edits[] = {{ENTITY_join, join_named(bench, "J1")->key, "head", "b"},
                                      {ENTITY_join, join_named(bench, "J1")->key, "pitch", "wide"}};

    assert_int_not_equal(take(bench, edits, 2, &note), FAULT_NONE);
    assert_true(strlen(note.why) > 0);
    assert_int_equal(join_named(bench, "J1")->head, HEAD_A);
}

static void cure_of_an_item_that_has_gone_is_unknown(void **state)
{
    struct bench *bench = *state;
    struct fault_note note = {0};
    const struct cure_edit gone = {ENTITY_join, 999, "head", "b"};
    const struct cure_edit no_field = {ENTITY_join, join_named(bench, "J1")->key, "hat", "b"};

    assert_int_equal(take(bench, &gone, 1, &note), FAULT_UNKNOWN);
    assert_int_equal(take(bench, &no_field, 1, &note), FAULT_UNKNOWN);
}

static void cure_that_no_finding_offers_is_unknown(void **state)
{
    struct bench *bench = *state;
    struct fault_note note = {0};

    assert_int_equal(desk_cure(bench->desk, 999, 0, &note), FAULT_UNKNOWN);
    assert_int_equal(desk_cure(bench->desk, 0, 999, &note), FAULT_UNKNOWN);
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, begin, bench_end)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(cure_sets_fields_of_several_items_in_one_edit),
        TEST(cure_fills_one_new_item_with_lines_that_follow_each_other),
        TEST(cure_makes_two_new_items_of_one_kind_when_another_line_lies_between),
        TEST(cure_begins_the_next_new_item_where_a_field_comes_again),
        TEST(cure_without_a_field_deletes),
        TEST(cure_that_cannot_be_read_leaves_all_as_it_was),
        TEST(cure_of_an_item_that_has_gone_is_unknown),
        TEST(cure_that_no_finding_offers_is_unknown),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
