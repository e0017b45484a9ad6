/* What is saved is what is loaded, and nothing else is written. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

#include "fixture.h"

/* A new store with its workshop loaded. */
static void lay(struct table *table)
{
    place_make(&table->place);
    table_lay(table, open_store(table->place.path));
}

static void save(struct table *table, const char *label)
{
    struct fault_note note = {.why = ""};

    if (store_save(table->store, &table->before, &table->after, label, &note))
        fail_msg("%s: %s: %s", label, note.path, note.why);
    model_copy(&table->before, &table->after, &table->arena);
}

static void furnish_table(struct table *table, uint64_t seed)
{
    struct dice dice = {seed};

    lay(table);
    furnish(&table->after, &table->arena, &dice);
    save(table, "New build");
}

static void a_new_file_holds_a_standard_workshop_and_no_build(void **state)
{
    (void)state;
    struct table table;
    struct model standard;
    struct store_build *builds = NULL;
    size_t count = 99;

    lay(&table);
    model_init(&standard, &table.arena);
    assert_int_equal(model_digest(&table.before), model_digest(&standard));
    assert_int_equal(store_builds(table.store, &table.arena, &builds, &count, NULL), FAULT_NONE);
    assert_int_equal(count, 0);
    assert_int_equal(store_read_only(table.store), FAULT_NONE);
    table_clear(&table);
}

static void a_new_file_is_for_its_owner_alone_and_leaves_nothing_beside_it(void **state)
{
    (void)state;
    struct table table;
    struct stat about;

    lay(&table);
    assert_int_equal(stat(table.place.path, &about), 0);
    assert_int_equal(about.st_mode & 0777, 0600);
    assert_int_equal(place_files(&table.place), 1);
    table_clear(&table);
}

static void a_random_model_comes_back_whole(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= 20; seed++) {
        struct table table;
        struct model loaded;

        furnish_table(&table, seed);
        store_close(table.store);
        table.store = open_store(table.place.path);
        assert_int_equal(
            store_load(table.store, table.after.build.key, &loaded, &table.arena, NULL),
            FAULT_NONE);
        assert_int_equal(model_digest(&loaded), model_digest(&table.after));
        table_clear(&table);
    }
}

static void random_edits_come_back_whole(void **state)
{
    (void)state;
    struct table table;
    struct dice dice = {77};

    furnish_table(&table, 5);
    for (int i = 0; i < 100; i++) {
        struct model loaded;

        edit_at_random(&table.after, &dice, 6);
        save(&table, "Edit");
        assert_int_equal(
            store_load(table.store, table.after.build.key, &loaded, &table.arena, NULL),
            FAULT_NONE);
        assert_int_equal(model_digest(&loaded), model_digest(&table.after));
    }
    table_clear(&table);
}

static void a_new_build_gets_a_key_of_the_workshop(void **state)
{
    (void)state;
    struct table table;

    lay(&table);
    int64_t next = table.before.workshop.next_key;
    table.after.build.name = "Bench";
    save(&table, "New build");
    assert_int_equal(table.after.build.key, next);
    assert_int_equal(table.after.workshop.next_key, next + 1);
    table.after.build.key = 0;
    table.after.build.name = "Copy";
    save(&table, "Copy build");
    assert_int_equal(table.after.build.key, next + 1);
    table_clear(&table);
}

static void the_key_of_a_deleted_build_is_not_given_again(void **state)
{
    (void)state;
    struct table table;

    lay(&table);
    table.after.build.name = "Bench";
    save(&table, "New build");
    int64_t gone = table.after.build.key;
    assert_int_equal(store_delete_build(table.store, gone, "Delete", NULL), FAULT_NONE);
    table.after.build.key = 0;
    save(&table, "New build");
    assert_true(table.after.build.key > gone);
    table_clear(&table);
}

static void a_model_without_a_build_changes_the_workshop_alone(void **state)
{
    (void)state;
    struct table table;
    struct store_build *builds = NULL;
    size_t count = 99;

    lay(&table);
    table.after.workshop.name = "Shed";
    save(&table, "Name the workshop");
    assert_int_equal(store_builds(table.store, &table.arena, &builds, &count, NULL), FAULT_NONE);
    assert_int_equal(count, 0);
    assert_int_equal(table.after.build.key, 0);
    table_clear(&table);
}

static void saving_no_difference_writes_nothing(void **state)
{
    (void)state;
    struct table table;

    furnish_table(&table, 3);
    uint64_t digest = file_digest(table.place.path);
    save(&table, "Nothing");
    assert_int_equal(file_digest(table.place.path), digest);
    table_clear(&table);
}

/* The changeset of one length is far smaller than that of a row, and names one table. */
static void an_edit_records_only_what_it_changed(void **state)
{
    (void)state;
    struct table table;

    furnish_table(&table, 4);
    int64_t all = ask_sql(table.place.path, "SELECT length(changeset) FROM history");
    table.after.boxes.at[1].width += 320;
    save(&table, "Wider");
    int64_t one = ask_sql(table.place.path, "SELECT length(changeset) FROM history"
                                            " ORDER BY sequence DESC LIMIT 1");
    assert_int_equal(ask_sql(table.place.path, "SELECT count(*) FROM history"), 2);
    assert_in_range(one, 20, 120);
    assert_true(all > 20 * one);
    table_clear(&table);
}

static void other_builds_are_left_alone(void **state)
{
    (void)state;
    struct table table;
    struct model first;

    furnish_table(&table, 6);
    int64_t key = table.after.build.key;
    assert_int_equal(store_peek(table.store, key, &first, &table.arena, NULL), FAULT_NONE);
    table.after.build.key = 0;
    table.after.build.name = "Second";
    save(&table, "Copy");
    for (int kind = 0; kind < ENTITY_COUNT; kind++)
        if (!entity_of((enum entity_kind)kind)->in_shop)
            while (model_count(&table.after, (enum entity_kind)kind) > 0)
                model_remove(&table.after, (enum entity_kind)kind,
                             item_key(model_at(&table.after, (enum entity_kind)kind, 0)));
    table.after.build.note = "empty";
    save(&table, "Empty the second");
    struct model again;
    assert_int_equal(store_peek(table.store, key, &again, &table.arena, NULL), FAULT_NONE);
    assert_int_equal(again.boxes.count, first.boxes.count);
    first.workshop.next_key = again.workshop.next_key;
    assert_int_equal(model_digest(&again), model_digest(&first));
    table_clear(&table);
}

static void no_two_builds_get_one_name(void **state)
{
    (void)state;
    struct table table;
    struct model second;
    struct fault_note note = {.why = ""};

    lay(&table);
    table.after.build.name = "Bench";
    save(&table, "New build");
    assert_int_equal(store_load(table.store, 0, &second, &table.arena, NULL), FAULT_NONE);
    struct model workshop = second;
    second.build.name = "Bench";
    assert_int_equal(store_save(table.store, &workshop, &second, "New build", &note),
                     FAULT_DUPLICATE);
    assert_string_equal(note.path, "build.name");
    assert_int_equal(second.build.key, 0);
    assert_int_equal(ask_sql(table.place.path, "SELECT count(*) FROM build"), 1);

    second.build.name = "Stool";
    assert_int_equal(store_save(table.store, &workshop, &second, "New build", NULL), FAULT_NONE);
    workshop = second;
    second.build.name = "Bench";
    assert_int_equal(store_save(table.store, &workshop, &second, "Name", NULL), FAULT_DUPLICATE);
    assert_int_equal(ask_sql(table.place.path, "SELECT count(DISTINCT name) FROM build"), 2);

    /* The first build of a new workshop is not free of it either. */
    workshop = table.after;
    assert_int_equal(workshop.build.key, 1);
    table.after.build.name = "Stool";
    assert_int_equal(store_save(table.store, &workshop, &table.after, "Name", NULL),
                     FAULT_DUPLICATE);
    table_clear(&table);
}

static void stock_in_use_elsewhere_is_not_deleted_and_the_build_is_named(void **state)
{
    (void)state;
    struct table table;
    struct fault_note note;

    lay(&table);
    struct stock *stock = MODEL_ADD(&table.after, stock);
    stock->name = "Stud";
    int64_t key = stock->key;
    save(&table, "Stock");
    table.after.build.name = "Corner banquette";
    struct extra *extra = MODEL_ADD(&table.after, extra);
    extra->what = "Spare";
    extra->stock = key;
    save(&table, "New build");
    assert_int_equal(store_load(table.store, 0, &table.before, &table.arena, NULL), FAULT_NONE);
    model_copy(&table.after, &table.before, &table.arena);
    model_remove(&table.after, ENTITY_stock, key);
    uint64_t state_before = state_digest(table.store);
    assert_int_equal(store_save(table.store, &table.before, &table.after, "Delete", &note),
                     FAULT_REFERENCE);
    assert_string_equal(note.why, "the build \"Corner banquette\" still uses this stock");
    assert_int_equal(note.column, 0);
    assert_int_equal(state_digest(table.store), state_before);
    table_clear(&table);
}

static void what_is_out_of_range_is_refused_and_the_model_keeps_its_key(void **state)
{
    (void)state;
    struct table table;
    struct fault_note note;

    lay(&table);
    uint64_t digest = file_digest(table.place.path);
    int64_t next = table.after.workshop.next_key;
    table.after.build.name = "Bench";
    table.after.build.budget = -1;
    assert_int_equal(store_save(table.store, &table.before, &table.after, "New", &note),
                     FAULT_RANGE);
    assert_string_equal(note.path, "build");
    assert_int_equal(table.after.build.key, 0);
    assert_int_equal(table.after.workshop.next_key, next);
    table.after.build.budget = 0;
    table.after.build.state = 99;
    assert_int_equal(store_save(table.store, &table.before, &table.after, "New", &note),
                     FAULT_RANGE);
    assert_int_equal(file_digest(table.place.path), digest);
    table_clear(&table);
}

/* The model that is said to be in the file is not. */
static void a_row_that_is_not_there_is_neither_changed_nor_deleted(void **state)
{
    (void)state;
    struct table table;
    struct fault_note note;

    for (int deleted = 0; deleted <= 1; deleted++) {
        lay(&table);
        struct stock *stock = MODEL_ADD(&table.before, stock);
        stock->name = "Stud";
        int64_t key = stock->key;
        model_copy(&table.after, &table.before, &table.arena);
        if (deleted)
            model_remove(&table.after, ENTITY_stock, key);
        else
            ((struct stock *)model_find(&table.after, ENTITY_stock, key))->name = "Batten";
        uint64_t digest = file_digest(table.place.path);
        assert_int_equal(store_save(table.store, &table.before, &table.after, "Edit", &note),
                         FAULT_CHANGED);
        assert_string_equal(note.why, "a stock is not in the file any more");
        assert_int_equal(note.column, 0);
        assert_int_equal(file_digest(table.place.path), digest);
        table_clear(&table);
    }
}

static void a_build_that_is_not_there_is_missing(void **state)
{
    (void)state;
    struct table table;
    struct model untouched = {.arena = NULL};

    lay(&table);
    assert_int_equal(store_load(table.store, 42, &untouched, &table.arena, NULL), FAULT_MISSING);
    assert_null(untouched.arena);
    assert_int_equal(store_delete_build(table.store, 42, "Delete", NULL), FAULT_MISSING);
    table_clear(&table);
}

static void the_list_of_builds_sums_what_was_spent(void **state)
{
    (void)state;
    struct table table;
    struct store_build *builds;
    size_t count;

    lay(&table);
    table.after.build.name = "Bench";
    table.after.build.state = STATE_MAKING;
    table.after.build.units = UNITS_MM;
    table.after.build.due = "2026-12-24";
    table.after.build.budget = 40000;
    for (int i = 1; i <= 3; i++) {
        struct spend *spend = MODEL_ADD(&table.after, spend);
        spend->dated = "2026-11-25";
        spend->what = "Studs";
        spend->amount = i * 1000;
    }
    save(&table, "New build");
    assert_int_equal(store_builds(table.store, &table.arena, &builds, &count, NULL), FAULT_NONE);
    assert_int_equal(count, 1);
    assert_int_equal(builds->key, table.after.build.key);
    assert_string_equal(builds->name, "Bench");
    assert_int_equal(builds->state, STATE_MAKING);
    assert_int_equal(builds->units, UNITS_MM);
    assert_string_equal(builds->due, "2026-12-24");
    assert_int_equal(builds->budget, 40000);
    assert_int_equal(builds->spend, 6000);
    assert_int_equal(builds->summary.digest, 0);
    assert_string_equal(builds->summary.next_step, "");
    table_clear(&table);
}

static const struct store_summary summary = {.digest = UINT64_C(0xfedcba9876543210),
                                             .estimate = 41260,
                                             .steps_done = 3,
                                             .steps_total = 57,
                                             .next_step = "Cut the rails",
                                             .missing = "2 to buy"};

static void a_summary_is_kept_outside_the_history(void **state)
{
    (void)state;
    struct table table;
    struct store_build *builds;
    size_t count;
    char label[STORE_LABEL];

    furnish_table(&table, 8);
    assert_int_equal(store_summary_put(table.store, table.after.build.key, &summary, NULL),
                     FAULT_NONE);
    assert_int_equal(store_builds(table.store, &table.arena, &builds, &count, NULL), FAULT_NONE);
    assert_true(builds->summary.digest == summary.digest);
    assert_int_equal(builds->summary.estimate, 41260);
    assert_int_equal(builds->summary.steps_done, 3);
    assert_int_equal(builds->summary.steps_total, 57);
    assert_string_equal(builds->summary.next_step, "Cut the rails");
    assert_string_equal(builds->summary.missing, "2 to buy");
    assert_int_equal(store_undo_label(table.store, label, NULL), FAULT_NONE);
    assert_string_equal(label, "New build");
    table_clear(&table);
}

static void the_same_summary_again_writes_nothing(void **state)
{
    (void)state;
    struct table table;

    furnish_table(&table, 8);
    assert_int_equal(store_summary_put(table.store, table.after.build.key, &summary, NULL),
                     FAULT_NONE);
    uint64_t digest = file_digest(table.place.path);
    assert_int_equal(store_summary_put(table.store, table.after.build.key, &summary, NULL),
                     FAULT_NONE);
    assert_int_equal(store_summary_put(table.store, 4711, &summary, NULL), FAULT_NONE);
    assert_int_equal(file_digest(table.place.path), digest);
    table_clear(&table);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_new_file_holds_a_standard_workshop_and_no_build),
        cmocka_unit_test(a_new_file_is_for_its_owner_alone_and_leaves_nothing_beside_it),
        cmocka_unit_test(a_random_model_comes_back_whole),
        cmocka_unit_test(random_edits_come_back_whole),
        cmocka_unit_test(a_new_build_gets_a_key_of_the_workshop),
        cmocka_unit_test(the_key_of_a_deleted_build_is_not_given_again),
        cmocka_unit_test(a_model_without_a_build_changes_the_workshop_alone),
        cmocka_unit_test(saving_no_difference_writes_nothing),
        cmocka_unit_test(an_edit_records_only_what_it_changed),
        cmocka_unit_test(other_builds_are_left_alone),
        cmocka_unit_test(no_two_builds_get_one_name),
        cmocka_unit_test(stock_in_use_elsewhere_is_not_deleted_and_the_build_is_named),
        cmocka_unit_test(what_is_out_of_range_is_refused_and_the_model_keeps_its_key),
        cmocka_unit_test(a_row_that_is_not_there_is_neither_changed_nor_deleted),
        cmocka_unit_test(a_build_that_is_not_there_is_missing),
        cmocka_unit_test(the_list_of_builds_sums_what_was_spent),
        cmocka_unit_test(a_summary_is_kept_outside_the_history),
        cmocka_unit_test(the_same_summary_again_writes_nothing),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
