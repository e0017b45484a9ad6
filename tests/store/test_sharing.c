/* Two programs on one file, files that move, copies, and files of older versions. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <sqlite3.h>

#include <poll.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "fixture.h"
#include "store/internal.h"

static struct store *open_impatient(const char *path)
{
    const struct store_options options = {
        .patience = 1, .steps = store_steps, .step_count = store_step_count};
    struct store *store = NULL;

    assert_int_equal(store_open_with(&store, path, &options, NULL), FAULT_NONE);
    return store;
}

/* A workshop that another program may hold, with a new name to be saved. */
static void lay(struct table *table)
{
    struct dice dice = {7};

    place_make(&table->place);
    make_store(table->place.path, &dice);
    table_lay(table, open_impatient(table->place.path));
    table->after.workshop.name = "Shed";
}

static enum fault save(struct table *table)
{
    return store_save(table->store, &table->before, &table->after, "Name", NULL);
}

/* The other program's connection, in the middle of a transaction. */
static sqlite3 *hold(const char *path, const char *sql)
{
    sqlite3 *db;

    assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
    assert_int_equal(sqlite3_exec(db, sql, NULL, NULL, NULL), SQLITE_OK);
    return db;
}

static void own_writes_are_no_change(void **state)
{
    (void)state;
    struct table table;

    lay(&table);
    assert_false(store_changed(table.store));
    assert_int_equal(save(&table), FAULT_NONE);
    assert_false(store_changed(table.store));
    table_clear(&table);
}

static void a_write_of_another_program_is_noticed_and_not_overwritten(void **state)
{
    (void)state;
    struct table table;
    char label[STORE_LABEL];
    int64_t build;

    lay(&table);
    run_sql(table.place.path, "UPDATE workshop SET tax = 50000");
    assert_true(store_changed(table.store));
    uint64_t digest = file_digest(table.place.path);
    assert_int_equal(save(&table), FAULT_CHANGED);
    assert_int_equal(store_delete_build(table.store, 1, "Delete", NULL), FAULT_CHANGED);
    assert_int_equal(store_undo(table.store, label, &build, NULL), FAULT_CHANGED);
    assert_int_equal(store_redo(table.store, label, &build, NULL), FAULT_CHANGED);
    assert_true(file_digest(table.place.path) == digest);
    assert_true(store_changed(table.store));
    table_clear(&table);
}

static void loading_again_makes_it_writable_again(void **state)
{
    (void)state;
    struct table table;

    lay(&table);
    run_sql(table.place.path, "UPDATE workshop SET tax = 50000");
    assert_int_equal(store_load(table.store, 0, &table.before, &table.arena, NULL), FAULT_NONE);
    assert_int_equal(table.before.workshop.tax, 50000);
    assert_false(store_changed(table.store));
    model_copy(&table.after, &table.before, &table.arena);
    table.after.workshop.name = "Shed";
    assert_int_equal(save(&table), FAULT_NONE);
    table_clear(&table);
}

static void peeking_does_not_hide_a_change(void **state)
{
    (void)state;
    struct table table;
    struct model beside;

    lay(&table);
    run_sql(table.place.path, "UPDATE workshop SET tax = 50000");
    assert_int_equal(store_peek(table.store, 0, &beside, &table.arena, NULL), FAULT_NONE);
    assert_int_equal(beside.workshop.tax, 50000);
    assert_true(store_changed(table.store));
    assert_int_equal(save(&table), FAULT_CHANGED);
    table_clear(&table);
}

static void two_stores_take_turns_and_share_the_history(void **state)
{
    (void)state;
    struct table table;
    char label[STORE_LABEL];
    int64_t build;
    struct model model;

    lay(&table);
    struct store *other = open_impatient(table.place.path);
    assert_int_equal(save(&table), FAULT_NONE);
    assert_true(store_changed(other));
    assert_int_equal(store_load(other, 0, &model, &table.arena, NULL), FAULT_NONE);
    assert_string_equal(model.workshop.name, "Shed");
    assert_int_equal(store_undo(other, label, &build, NULL), FAULT_NONE);
    assert_string_equal(label, "Name");
    assert_true(store_changed(table.store));
    store_close(other);
    table_clear(&table);
}

static void a_summary_already_there_wakes_nobody(void **state)
{
    (void)state;
    struct table table;
    const struct store_summary summary = {.digest = 5, .next_step = "Cut", .missing = ""};

    lay(&table);
    int64_t build = ask_sql(table.place.path, "SELECT min(key) FROM build");
    struct store *other = open_impatient(table.place.path);
    assert_int_equal(store_summary_put(table.store, build, &summary, NULL), FAULT_NONE);
    assert_int_equal(ask_sql(table.place.path, "SELECT count(*) FROM summary"), 1);
    assert_int_equal(store_load(other, 0, &table.before, &table.arena, NULL), FAULT_NONE);
    assert_int_equal(store_summary_put(table.store, build, &summary, NULL), FAULT_NONE);
    assert_false(store_changed(other));
    store_close(other);
    table_clear(&table);
}

static void a_file_that_is_being_written_is_locked(void **state)
{
    (void)state;
    struct table table;
    struct model model;
    const struct store_summary summary = {.digest = 5, .next_step = "Cut", .missing = ""};

    lay(&table);
    sqlite3 *other = hold(table.place.path, "BEGIN EXCLUSIVE");
    assert_int_equal(save(&table), FAULT_LOCKED);
    assert_int_equal(store_load(table.store, 0, &model, &table.arena, NULL), FAULT_LOCKED);
    assert_int_equal(store_summary_put(table.store, 1, &summary, NULL), FAULT_NONE);
    struct store *second = NULL;
    const struct store_options options = {
        .patience = 1, .steps = store_steps, .step_count = store_step_count};
    assert_int_equal(store_open_with(&second, table.place.path, &options, NULL), FAULT_LOCKED);
    assert_null(second);
    sqlite3_close(other);
    assert_int_equal(save(&table), FAULT_NONE);
    table_clear(&table);
}

static void a_reader_that_lingers_makes_a_commit_fail_whole(void **state)
{
    (void)state;
    struct table table;

    lay(&table);
    uint64_t before = state_digest(table.store);
    sqlite3 *other = hold(table.place.path, "BEGIN; SELECT count(*) FROM box");
    assert_int_equal(save(&table), FAULT_LOCKED);
    sqlite3_close(other);
    assert_true(state_digest(table.store) == before);
    assert_int_equal(save(&table), FAULT_NONE);
    table_clear(&table);
}

static void a_file_replaced_by_renaming_is_noticed_and_not_written_to(void **state)
{
    (void)state;
    struct table table;
    char copy[PATH_MAX + 16];
    char rescue[PATH_MAX + 16];

    lay(&table);
    snprintf(copy, sizeof copy, "%s.copy", table.place.path);
    snprintf(rescue, sizeof rescue, "%s.rescue", table.place.path);
    assert_int_equal(store_backup(table.store, copy, true, NULL), FAULT_NONE);
    assert_false(store_moved(table.store));
    assert_int_equal(rename(copy, table.place.path), 0);
    uint64_t digest = file_digest(table.place.path);
    assert_true(store_moved(table.store));
    assert_int_equal(save(&table), FAULT_CHANGED);
    assert_true(file_digest(table.place.path) == digest);
    uint64_t content = state_digest(table.store);
    assert_int_equal(store_backup(table.store, rescue, true, NULL), FAULT_NONE);
    struct store *rescued = open_store(rescue);
    assert_true(state_digest(rescued) == content);
    store_close(rescued);
    table_clear(&table);
}

static void a_deleted_file_is_noticed(void **state)
{
    (void)state;
    struct table table;

    lay(&table);
    assert_int_equal(unlink(table.place.path), 0);
    assert_true(store_moved(table.store));
    assert_int_equal(save(&table), FAULT_CHANGED);
    table_clear(&table);
}

static void a_backup_holds_the_same_with_its_history_and_is_private(void **state)
{
    (void)state;
    struct table table;
    char copy[PATH_MAX + 16];
    struct stat about;

    lay(&table);
    snprintf(copy, sizeof copy, "%s.copy", table.place.path);
    write_file(copy, "old", 3);
    assert_int_equal(store_backup(table.store, copy, true, NULL), FAULT_NONE);
    assert_int_equal(place_files(&table.place), 2);
    assert_int_equal(stat(copy, &about), 0);
    assert_int_equal(about.st_mode & 0777, 0600);
    struct store *second = open_store(copy);
    assert_true(state_digest(second) == state_digest(table.store));
    store_close(second);
    table_clear(&table);
}

static void a_backup_takes_the_place_of_a_file_only_where_it_may(void **state)
{
    struct table table;
    char copy[PATH_MAX + 16];

    (void)state;
    lay(&table);
    snprintf(copy, sizeof copy, "%s.copy", table.place.path);
    write_file(copy, "mine", 4);
    assert_int_equal(store_backup(table.store, copy, false, NULL), FAULT_DUPLICATE);
    assert_int_equal(place_files(&table.place), 2);
    assert_int_equal(store_backup(table.store, copy, true, NULL), FAULT_NONE);
    assert_int_equal(place_files(&table.place), 2);
    store_close(open_store(copy));
    table_clear(&table);
}

static void a_backup_into_no_folder_leaves_nothing(void **state)
{
    (void)state;
    struct table table;
    char copy[PATH_MAX + 16];

    lay(&table);
    snprintf(copy, sizeof copy, "%s/nowhere/copy", table.place.folder);
    assert_int_equal(store_backup(table.store, copy, true, NULL), FAULT_IO);
    assert_int_equal(place_files(&table.place), 1);
    table_clear(&table);
}

static void a_plain_copy_of_the_open_file_is_whole(void **state)
{
    (void)state;
    struct table table;
    unsigned char *bytes;
    size_t size;
    char copy[PATH_MAX + 16];

    lay(&table);
    assert_int_equal(save(&table), FAULT_NONE);
    snprintf(copy, sizeof copy, "%s.copy", table.place.path);
    read_file(table.place.path, &bytes, &size);
    write_file(copy, bytes, size);
    free(bytes);
    struct store *second = open_store(copy);
    assert_true(state_digest(second) == state_digest(table.store));
    store_close(second);
    table_clear(&table);
}

/* ---- many programs at once ---- */

enum { WRITERS = 8 };

/* Box 0 counts all edits, in two of its figures; box 1 + w those of writer w. */
static void count_edit(struct model *model, int writer)
{
    model->boxes.at[0].width++;
    model->boxes.at[0].height++;
    model->boxes.at[1 + writer].width++;
}

/* One try to make one edit, from what the file says now. */
static enum fault edit_once(struct store *store, int64_t build, int writer)
{
    struct arena arena;
    struct model before;
    struct model after;

    arena_make(&arena);
    enum fault fault = store_load(store, build, &before, &arena, NULL);
    if (!fault) {
        model_copy(&after, &before, &arena);
        count_edit(&after, writer);
        fault = store_save(store, &before, &after, "Count", NULL);
    }
    arena_release(&arena);
    return fault;
}

/* A program of its own; its exit status is 0 when each of its edits was taken. */
static int write_edits(const char *path, int64_t build, int writer, int edits)
{
    struct store *store = NULL;
    enum fault fault = FAULT_LOCKED;

    while (fault == FAULT_LOCKED)
        fault = store_open(&store, path, NULL);
    while (!fault && edits > 0) {
        fault = edit_once(store, build, writer);
        edits -= fault == FAULT_NONE;
        if (fault == FAULT_CHANGED || fault == FAULT_LOCKED)
            fault = FAULT_NONE;
    }
    store_close(store);
    return fault != FAULT_NONE;
}

/* A build with a box for all writers and one for each. */
static int64_t make_counters(const char *path)
{
    struct store *store = open_store(path);
    struct arena arena;
    struct model before;
    struct model after;

    arena_make(&arena);
    assert_int_equal(store_load(store, 0, &before, &arena, NULL), FAULT_NONE);
    model_copy(&after, &before, &arena);
    after.build.name = "Counters";
    for (int i = 0; i <= WRITERS; i++) {
        struct box *box = MODEL_ADD(&after, box);

        box->name = arena_format(&arena, "B%d", i);
        box->width = box->depth = box->height = LENGTH_INCH * 10;
    }
    assert_int_equal(store_save(store, &before, &after, "New build", NULL), FAULT_NONE);
    int64_t build = after.build.key;
    arena_release(&arena);
    store_close(store);
    return build;
}

static void all_write(const char *path, int64_t build, int edits)
{
    pid_t writers[WRITERS];
    int status;

    for (int i = 0; i < WRITERS; i++) {
        writers[i] = fork();
        assert_true(writers[i] >= 0);
        if (writers[i] == 0)
            _exit(write_edits(path, build, i, edits));
    }
    for (int i = 0; i < WRITERS; i++) {
        assert_int_equal(waitpid(writers[i], &status, 0), writers[i]);
        assert_int_equal(status, 0);
    }
}

/* STUFFOVER_LONG: a thousand edits each. */
static void of_eight_programs_writing_at_once_no_edit_is_lost_or_torn(void **state)
{
    (void)state;
    int edits = getenv("STUFFOVER_LONG") ? 1000 : 20;
    struct place place;
    struct arena arena;
    struct model start;
    struct model end;

    place_make(&place);
    arena_make(&arena);
    int64_t build = make_counters(place.path);
    struct store *store = open_store(place.path);
    assert_int_equal(store_load(store, build, &start, &arena, NULL), FAULT_NONE);
    store_close(store);
    all_write(place.path, build, edits);
    store = open_store(place.path);
    assert_int_equal(store_look_through(store, NULL), FAULT_NONE);
    assert_int_equal(store_load(store, build, &end, &arena, NULL), FAULT_NONE);
    store_close(store);
    const struct box *was = start.boxes.at;
    const struct box *is = end.boxes.at;
    assert_int_equal(is[0].width - was[0].width, WRITERS * edits);
    assert_int_equal(is[0].height - was[0].height, WRITERS * edits);
    for (int i = 1; i <= WRITERS; i++)
        assert_int_equal(is[i].width - was[i].width, edits);
    int64_t actions = ask_sql(place.path, "SELECT count(*) FROM history");
    assert_int_equal(actions,
                     1 + WRITERS * edits > STORE_HISTORY ? STORE_HISTORY : 1 + WRITERS * edits);
    arena_release(&arena);
    place_remove(&place);
}

/* The other program holds the file for a while, of which the first does not know. */
static void a_file_that_is_given_free_in_time_is_written_to(void **state)
{
    (void)state;
    struct table table;
    int held[2];
    int status;
    char byte;

    lay(&table);
    store_close(table.store);
    assert_int_equal(pipe(held), 0);
    pid_t other = fork();
    if (other == 0) {
        sqlite3 *db = hold(table.place.path, "BEGIN EXCLUSIVE");
        bool told = write(held[1], "h", 1) == 1;
        poll(NULL, 0, 100); /* patience is by the clock, so only the clock can try it */
        sqlite3_close(db);
        _exit(!told);
    }
    assert_int_equal(read(held[0], &byte, 1), 1);
    table.store = open_store(table.place.path);
    assert_int_equal(store_load(table.store, 0, &table.before, &table.arena, NULL), FAULT_NONE);
    assert_int_equal(save(&table), FAULT_NONE);
    assert_int_equal(waitpid(other, &status, 0), other);
    assert_int_equal(status, 0);
    close(held[0]);
    close(held[1]);
    table_clear(&table);
}

/* ---- older versions: a made-up step after the last ---- */

static const char *const good_step =
    "ALTER TABLE workshop ADD COLUMN motto TEXT NOT NULL DEFAULT 'slow';"
    "CREATE TABLE later (key INTEGER NOT NULL PRIMARY KEY) STRICT";

static void an_older_file_is_backed_up_and_brought_up_to_date(void **state)
{
    (void)state;
    struct table table;
    char backup[PATH_MAX + 32];

    lay(&table);
    uint64_t content = state_digest(table.store);
    store_close(table.store);
    assert_int_equal(open_as_next(&table.store, table.place.path, NULL, good_step, NULL),
                     FAULT_NONE);
    assert_int_equal(store_read_only(table.store), FAULT_NONE);
    assert_true(state_digest(table.store) == content);
    assert_int_equal(ask_sql(table.place.path, "PRAGMA user_version"), store_step_count + 1);
    assert_int_equal(ask_sql(table.place.path, "SELECT count(*) FROM later"), 0);
    snprintf(backup, sizeof backup, "%s.before-%d", table.place.path, store_step_count + 1);
    struct store *old = open_store(backup);
    assert_true(state_digest(old) == content);
    store_close(old);
    store_close(table.store);
    assert_int_equal(open_as_next(&table.store, table.place.path, NULL, good_step, NULL),
                     FAULT_NONE);
    assert_int_equal(place_files(&table.place), 2);
    table_clear(&table);
}

static void a_step_that_fails_leaves_the_old_file(void **state)
{
    (void)state;
    struct table table;
    struct store *none = NULL;

    lay(&table);
    uint64_t content = state_digest(table.store);
    store_close(table.store);
    assert_int_not_equal(open_as_next(&none, table.place.path, NULL,
                                      "CREATE TABLE later (key INTEGER PRIMARY KEY) STRICT;"
                                      "DELETE FROM build; INSERT INTO nowhere VALUES (1)",
                                      NULL),
                         FAULT_NONE);
    assert_null(none);
    assert_int_equal(ask_sql(table.place.path, "PRAGMA user_version"), store_step_count);
    table.store = open_store(table.place.path);
    assert_true(state_digest(table.store) == content);
    table_clear(&table);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(own_writes_are_no_change),
        cmocka_unit_test(a_write_of_another_program_is_noticed_and_not_overwritten),
        cmocka_unit_test(loading_again_makes_it_writable_again),
        cmocka_unit_test(peeking_does_not_hide_a_change),
        cmocka_unit_test(two_stores_take_turns_and_share_the_history),
        cmocka_unit_test(a_summary_already_there_wakes_nobody),
        cmocka_unit_test(a_file_that_is_being_written_is_locked),
        cmocka_unit_test(a_reader_that_lingers_makes_a_commit_fail_whole),
        cmocka_unit_test(a_file_replaced_by_renaming_is_noticed_and_not_written_to),
        cmocka_unit_test(a_deleted_file_is_noticed),
        cmocka_unit_test(a_backup_holds_the_same_with_its_history_and_is_private),
        cmocka_unit_test(a_backup_takes_the_place_of_a_file_only_where_it_may),
        cmocka_unit_test(a_backup_into_no_folder_leaves_nothing),
        cmocka_unit_test(a_plain_copy_of_the_open_file_is_whole),
        cmocka_unit_test(of_eight_programs_writing_at_once_no_edit_is_lost_or_torn),
        cmocka_unit_test(a_file_that_is_given_free_in_time_is_written_to),
        cmocka_unit_test(an_older_file_is_backed_up_and_brought_up_to_date),
        cmocka_unit_test(a_step_that_fails_leaves_the_old_file),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
