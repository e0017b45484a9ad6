/* Undo and redo lead through every state there was, also after leaving the program. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <string.h>

#include "fixture.h"

enum { ACTIONS = 40 };

struct trail {
    struct place place;
    struct store *store;
    struct arena arena;
    struct dice dice;
    int64_t builds[ACTIONS];
    size_t build_count;
    uint64_t states[ACTIONS + 1];
    int length; /* of the trail: states[length] is where it ends */
};

static void reopen(struct trail *trail)
{
    store_close(trail->store);
    trail->store = open_store(trail->place.path);
}

/* What can be undone is part of state_digest; the content alone is compared here. */
static uint64_t content(struct store *store)
{
    struct arena arena;
    struct store_build *builds;
    size_t count;
    struct model model;
    uint64_t digest = 0;

    arena_make(&arena);
    assert_int_equal(store_load(store, 0, &model, &arena, NULL), FAULT_NONE);
    digest = model_digest(&model);
    assert_int_equal(store_builds(store, &arena, &builds, &count, NULL), FAULT_NONE);
    for (size_t i = 0; i < count; i++) {
        assert_int_equal(store_peek(store, builds[i].key, &model, &arena, NULL), FAULT_NONE);
        digest = digest * 31 + model_digest(&model);
    }
    arena_release(&arena);
    return digest;
}

static void act_new(struct trail *trail)
{
    struct model before;
    struct model after;
    enum fault fault;

    assert_int_equal(store_load(trail->store, 0, &before, &trail->arena, NULL), FAULT_NONE);
    model_copy(&after, &before, &trail->arena);
    after.build.name =
        arena_format(&trail->arena, "Bench %lld", (long long)after.workshop.next_key);
    edit_at_random(&after, &trail->dice, 60);
    fault = store_save(trail->store, &before, &after, "New build", NULL);
    if (fault == FAULT_REFERENCE) /* another build uses stock that was deleted */
        return;
    assert_int_equal(fault, FAULT_NONE);
    trail->builds[trail->build_count++] = after.build.key;
}

static void act_edit(struct trail *trail, size_t which)
{
    struct model before;
    struct model after;
    enum fault fault;

    assert_int_equal(store_load(trail->store, trail->builds[which], &before, &trail->arena, NULL),
                     FAULT_NONE);
    model_copy(&after, &before, &trail->arena);
    edit_at_random(&after, &trail->dice, 8);
    fault = store_save(trail->store, &before, &after, "Edit", NULL);
    assert_true(fault == FAULT_NONE || fault == FAULT_REFERENCE);
}

static void act_delete(struct trail *trail, size_t which)
{
    assert_int_equal(store_delete_build(trail->store, trail->builds[which], "Delete build", NULL),
                     FAULT_NONE);
    trail->builds[which] = trail->builds[--trail->build_count];
}

static void act(struct trail *trail)
{
    int64_t what = dice_between(&trail->dice, 0, 9);
    size_t which = trail->build_count
                       ? (size_t)dice_between(&trail->dice, 0, (int64_t)trail->build_count - 1)
                       : 0;

    if (trail->build_count == 0 || what == 0)
        act_new(trail);
    else if (what == 1)
        act_delete(trail, which);
    else
        act_edit(trail, which);
}

static void walk(struct trail *trail, uint64_t seed)
{
    *trail = (struct trail){.dice = {seed}};
    place_make(&trail->place);
    arena_make(&trail->arena);
    trail->store = open_store(trail->place.path);
    trail->states[0] = content(trail->store);
    for (int i = 0; i < ACTIONS; i++) {
        act(trail);
        uint64_t now = content(trail->store);
        if (now != trail->states[trail->length])
            trail->states[++trail->length] = now;
    }
    assert_true(trail->length > ACTIONS / 2);
}

static void leave(struct trail *trail)
{
    store_close(trail->store);
    arena_release(&trail->arena);
    place_remove(&trail->place);
}

static void go_back_and_forth(struct trail *trail, bool reopening)
{
    struct fault_note note = {0};
    char label[STORE_LABEL];
    int64_t build;

    for (int i = trail->length; i > 0; i--) {
        assert_int_equal(store_undo(trail->store, label, &build, NULL), FAULT_NONE);
        assert_true(content(trail->store) == trail->states[i - 1]);
        if (reopening && i % 5 == 0)
            reopen(trail);
    }
    assert_int_equal(store_undo(trail->store, label, &build, &note), FAULT_MISSING);
    assert_string_equal(note.why, "there is nothing to undo");
    assert_int_equal(note.column, 0);
    for (int i = 0; i < trail->length; i++) {
        assert_int_equal(store_redo(trail->store, label, &build, NULL), FAULT_NONE);
        assert_true(content(trail->store) == trail->states[i + 1]);
        if (reopening && i % 5 == 0)
            reopen(trail);
    }
    assert_int_equal(store_redo(trail->store, label, &build, NULL), FAULT_MISSING);
}

static void every_earlier_state_comes_back_and_every_later_one_again(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= 4; seed++) {
        struct trail trail;

        walk(&trail, seed);
        go_back_and_forth(&trail, false);
        go_back_and_forth(&trail, false);
        leave(&trail);
    }
}

static void undo_outlives_the_program(void **state)
{
    (void)state;
    for (uint64_t seed = 11; seed <= 13; seed++) {
        struct trail trail;

        walk(&trail, seed);
        reopen(&trail);
        go_back_and_forth(&trail, true);
        leave(&trail);
    }
}

/* A store with one build of one action, which is loaded. */
static void begin(struct trail *trail, struct model *model)
{
    *trail = (struct trail){.dice = {1}};
    place_make(&trail->place);
    arena_make(&trail->arena);
    trail->store = open_store(trail->place.path);
    act_new(trail);
    assert_int_equal(store_load(trail->store, trail->builds[0], model, &trail->arena, NULL),
                     FAULT_NONE);
}

static void set_budget(struct trail *trail, struct model *model, int64_t budget, const char *label)
{
    struct model before;

    model_copy(&before, model, &trail->arena);
    model->build.budget = budget;
    assert_int_equal(store_save(trail->store, &before, model, label, NULL), FAULT_NONE);
}

static void labels_and_builds_are_told(void **state)
{
    (void)state;
    struct trail trail;
    struct model model;
    char label[STORE_LABEL] = "untouched";
    int64_t build = -1;

    begin(&trail, &model);
    set_budget(&trail, &model, 1, "Budget \xc3\xa9 1");
    assert_int_equal(store_redo_label(trail.store, label, NULL), FAULT_MISSING);
    assert_string_equal(label, "untouched");
    assert_int_equal(store_undo_label(trail.store, label, NULL), FAULT_NONE);
    assert_string_equal(label, "Budget \xc3\xa9 1");
    assert_int_equal(store_undo(trail.store, label, &build, NULL), FAULT_NONE);
    assert_string_equal(label, "Budget \xc3\xa9 1");
    assert_int_equal(build, trail.builds[0]);
    assert_int_equal(store_undo_label(trail.store, label, NULL), FAULT_NONE);
    assert_string_equal(label, "New build");
    assert_int_equal(store_redo_label(trail.store, label, NULL), FAULT_NONE);
    assert_string_equal(label, "Budget \xc3\xa9 1");
    leave(&trail);
}

static void a_long_label_is_cut_at_a_character(void **state)
{
    (void)state;
    struct trail trail;
    struct model model;
    char label[STORE_LABEL];
    char longer[3 * STORE_LABEL + 1] = "";

    begin(&trail, &model);
    for (int i = 0; i < STORE_LABEL; i++)
        strncat(longer, "\xe2\x82\xac", 4);
    set_budget(&trail, &model, 1, longer);
    assert_int_equal(store_undo_label(trail.store, label, NULL), FAULT_NONE);
    assert_true(strlen(label) > STORE_LABEL - 5 && strlen(label) % 3 == 0);
    leave(&trail);
}

static void a_new_action_drops_what_was_undone(void **state)
{
    (void)state;
    struct trail trail;
    struct model model;
    char label[STORE_LABEL];
    int64_t build;

    begin(&trail, &model);
    int64_t before = model.build.budget;
    set_budget(&trail, &model, 1, "One");
    set_budget(&trail, &model, 2, "Two");
    assert_int_equal(store_undo(trail.store, label, &build, NULL), FAULT_NONE);
    assert_int_equal(store_undo(trail.store, label, &build, NULL), FAULT_NONE);
    assert_int_equal(store_load(trail.store, build, &model, &trail.arena, NULL), FAULT_NONE);
    assert_int_equal(model.build.budget, before);
    set_budget(&trail, &model, 3, "Three");
    assert_int_equal(store_redo(trail.store, label, &build, NULL), FAULT_MISSING);
    assert_int_equal(ask_sql(trail.place.path, "SELECT max(sequence) FROM history"), 2);
    leave(&trail);
}

static void the_newest_thousand_actions_are_kept(void **state)
{
    (void)state;
    struct trail trail;
    struct model model;

    begin(&trail, &model);
    run_sql(trail.place.path,
            "WITH RECURSIVE n (i) AS (SELECT 2 UNION ALL SELECT i + 1 FROM n WHERE i < 1500)"
            " INSERT INTO history SELECT i, 0, 0, 'Old', 0, x'' FROM n");
    assert_int_equal(store_load(trail.store, trail.builds[0], &model, &trail.arena, NULL),
                     FAULT_NONE);
    set_budget(&trail, &model, 1, "New");
    assert_int_equal(ask_sql(trail.place.path, "SELECT count(*) FROM history"), STORE_HISTORY);
    assert_int_equal(ask_sql(trail.place.path, "SELECT max(sequence) FROM history"), 1501);
    leave(&trail);
}

/* The other program changes the row behind the history's back. */
static void expect_conflict(struct trail *trail, const char *sql)
{
    char label[STORE_LABEL] = "untouched";
    int64_t build = -1;
    struct model model;
    struct fault_note note;

    run_sql(trail->place.path, sql);
    assert_int_equal(store_load(trail->store, 0, &model, &trail->arena, NULL), FAULT_NONE);
    uint64_t before = file_digest(trail->place.path);
    assert_int_equal(store_undo(trail->store, label, &build, &note), FAULT_CHANGED);
    assert_string_equal(note.why, "another program changed what this action had done");
    assert_string_equal(label, "untouched");
    assert_int_equal(build, -1);
    assert_int_equal(file_digest(trail->place.path), before);
}

static void what_was_changed_since_is_not_undone(void **state)
{
    (void)state;
    struct trail trail;
    struct model model;

    begin(&trail, &model);
    set_budget(&trail, &model, 500, "Budget");
    expect_conflict(&trail, "UPDATE build SET budget = 501");
    leave(&trail);
}

static void what_was_deleted_since_is_not_undone(void **state)
{
    (void)state;
    struct trail trail;
    struct model model;

    begin(&trail, &model);
    set_budget(&trail, &model, 500, "Budget");
    expect_conflict(&trail, "PRAGMA foreign_keys = ON; DELETE FROM build");
    leave(&trail);
}

static void what_others_came_to_need_is_not_undone(void **state)
{
    (void)state;
    struct trail trail;
    struct model model;

    begin(&trail, &model);
    struct model before;
    model_copy(&before, &model, &trail.arena);
    struct set *set = MODEL_ADD(&model, set);
    set->name = "Bed";
    assert_int_equal(store_save(trail.store, &before, &model, "Set", NULL), FAULT_NONE);
    expect_conflict(&trail, "UPDATE build SET \"set\" = (SELECT max(key) FROM \"set\")");
    leave(&trail);
}

static void a_mangled_changeset_is_refused(void **state)
{
    (void)state;
    struct trail trail;
    struct model model;
    char label[STORE_LABEL];
    int64_t build;

    begin(&trail, &model);
    run_sql(trail.place.path, "UPDATE history SET changeset = x'540001ff00'");
    assert_int_equal(store_load(trail.store, 0, &model, &trail.arena, NULL), FAULT_NONE);
    uint64_t before = content(trail.store);
    assert_int_not_equal(store_undo(trail.store, label, &build, NULL), FAULT_NONE);
    assert_true(content(trail.store) == before);
    leave(&trail);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_earlier_state_comes_back_and_every_later_one_again),
        cmocka_unit_test(undo_outlives_the_program),
        cmocka_unit_test(labels_and_builds_are_told),
        cmocka_unit_test(a_long_label_is_cut_at_a_character),
        cmocka_unit_test(a_new_action_drops_what_was_undone),
        cmocka_unit_test(the_newest_thousand_actions_are_kept),
        cmocka_unit_test(what_was_changed_since_is_not_undone),
        cmocka_unit_test(what_was_deleted_since_is_not_undone),
        cmocka_unit_test(what_others_came_to_need_is_not_undone),
        cmocka_unit_test(a_mangled_changeset_is_refused),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
