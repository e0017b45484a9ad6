/* Files that are not what they seem: told apart, and never written to. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "fixture.h"
#include "sanitized.h"
#include "store/internal.h"

/* Opens the file, which must give this fault and stay as it is to the byte. */
static void expect_refused(const struct place *place, enum fault fault)
{
    struct store *store = NULL;
    struct fault_note note = {.code = FAULT_NONE};
    uint64_t digest = file_digest(place->path);
    int files = place_files(place);

    enum fault found = store_open(&store, place->path, &note);
    if (found != fault)
        fail_msg("%s: %s", fault_words(found), note.why);
    assert_null(store);
    assert_int_equal(note.code, fault);
    assert_true(note.why[0] != '\0' && note.path[0] != '\0' && note.column == 0);
    assert_int_equal(file_digest(place->path), digest);
    assert_int_equal(place_files(place), files);
}

/* A file in the place of a store. */
static void refuse_bytes(const void *bytes, size_t size, enum fault fault)
{
    struct place place;

    place_make(&place);
    write_file(place.path, bytes, size);
    expect_refused(&place, fault);
    place_remove(&place);
}

static void an_empty_file_is_foreign(void **state)
{
    (void)state;
    refuse_bytes("", 0, FAULT_FOREIGN);
}

static void a_text_is_foreign(void **state)
{
    (void)state;
    char text[5000];

    memset(text, 'x', sizeof text);
    refuse_bytes("dear diary\n", 11, FAULT_FOREIGN);
    refuse_bytes(text, sizeof text, FAULT_FOREIGN);
    refuse_bytes("SQLite format 3", 16, FAULT_FOREIGN);
}

static void another_programs_database_is_foreign(void **state)
{
    (void)state;
    struct place place;

    place_make(&place);
    run_sql(place.path, "CREATE TABLE note (body TEXT); PRAGMA user_version = 1");
    expect_refused(&place, FAULT_FOREIGN);
    place_remove(&place);
}

static void another_programs_wal_database_is_foreign_and_stays_wal(void **state)
{
    (void)state;
    struct place place;

    place_make(&place);
    run_sql(place.path, "PRAGMA journal_mode = WAL; CREATE TABLE note (body TEXT)");
    expect_refused(&place, FAULT_FOREIGN);
    place_remove(&place);
}

static void a_folder_is_foreign(void **state)
{
    (void)state;
    struct place place;
    struct store *store = NULL;

    place_make(&place);
    assert_int_equal(store_open(&store, place.folder, NULL), FAULT_FOREIGN);
    place_remove(&place);
}

/* Opening a pipe would wait for ever, and a device has no end. */
static void what_is_no_plain_file_is_foreign(void **state)
{
    static const char *const devices[] = {"/dev/null", "/dev/zero", "/dev/full"};
    (void)state;
    struct place place;
    struct store *store = NULL;

    place_make(&place);
    assert_int_equal(mkfifo(place.path, 0600), 0);
    assert_int_equal(store_open(&store, place.path, NULL), FAULT_FOREIGN);
    assert_int_equal(store_open_damaged(&store, place.path, NULL), FAULT_FOREIGN);
    for (size_t i = 0; i < sizeof devices / sizeof devices[0]; i++)
        assert_int_equal(store_open(&store, devices[i], NULL), FAULT_FOREIGN);
    place_remove(&place);
}

/* Bytes 28 to 31 of the header count the pages, 36 to 39 those that are free (SQLite, file format
 * 1.3). */
static void claims_of_terabytes_are_damage(void **state)
{
    static const size_t claims[] = {28, 36};
    (void)state;
    struct place place;
    unsigned char *bytes;
    size_t size;

    place_with_store(&place);
    read_file(place.path, &bytes, &size);
    for (size_t i = 0; i < sizeof claims / sizeof claims[0]; i++) {
        unsigned char was[4];

        memcpy(was, bytes + claims[i], sizeof was);
        memcpy(bytes + claims[i], "\x7f\xff\xff\xfe", sizeof was);
        refuse_bytes(bytes, size, FAULT_DAMAGED);
        memcpy(bytes + claims[i], was, sizeof was);
    }
    free(bytes);
    place_remove(&place);
}

static void a_folder_that_is_not_there_is_said(void **state)
{
    (void)state;
    struct place place;
    struct store *store = NULL;
    struct fault_note note;
    char path[PATH_MAX + 64];

    place_make(&place);
    snprintf(path, sizeof path, "%s/nowhere/workshop", place.folder);
    assert_int_equal(store_open(&store, path, &note), FAULT_IO);
    assert_non_null(strstr(note.why, "folder"));
    assert_int_equal(note.column, 0);
    place_remove(&place);
}

static void a_symbolic_link_is_refused(void **state)
{
    (void)state;
    struct place place;
    struct store *store = NULL;
    char link_path[PATH_MAX + 16];

    place_with_store(&place);
    snprintf(link_path, sizeof link_path, "%s.link", place.path);
    assert_int_equal(symlink(place.path, link_path), 0);
    assert_int_equal(store_open(&store, link_path, NULL), FAULT_REFUSED);
    assert_null(store);
    place_remove(&place);
}

static void a_link_among_the_folders_is_followed(void **state)
{
    (void)state;
    struct place place;
    char link_path[PATH_MAX + 16];
    char path[PATH_MAX + 64];

    place_with_store(&place);
    snprintf(link_path, sizeof link_path, "%s.link", place.folder);
    assert_int_equal(symlink(place.folder, link_path), 0);
    snprintf(path, sizeof path, "%s/workshop.stuffover", link_path);
    struct store *store = open_store(path);
    assert_null(strstr(store_path(store), ".link/"));
    store_close(store);
    unlink(link_path);
    place_remove(&place);
}

static void refuse_changed(const char *sql, enum fault fault)
{
    struct place place;

    place_with_store(&place);
    run_sql(place.path, sql);
    expect_refused(&place, fault);
    place_remove(&place);
}

static void a_file_with_a_trigger_is_foreign(void **state)
{
    (void)state;
    refuse_changed("CREATE TRIGGER evil AFTER INSERT ON box BEGIN DELETE FROM box; END",
                   FAULT_FOREIGN);
    refuse_changed("CREATE TRIGGER build AFTER UPDATE ON workshop BEGIN DELETE FROM build; END",
                   FAULT_FOREIGN);
}

static void a_file_with_a_view_for_a_table_is_foreign(void **state)
{
    (void)state;
    refuse_changed("CREATE VIEW more AS SELECT * FROM box", FAULT_FOREIGN);
    refuse_changed("ALTER TABLE tool RENAME TO tools; CREATE VIEW tool AS SELECT * FROM tools",
                   FAULT_FOREIGN);
}

static void a_file_with_a_table_or_an_index_more_or_less_is_foreign(void **state)
{
    (void)state;
    refuse_changed("CREATE TABLE extra_table (x)", FAULT_FOREIGN);
    refuse_changed("CREATE INDEX fast ON box (name)", FAULT_FOREIGN);
    refuse_changed("DROP TABLE left_out", FAULT_FOREIGN);
    refuse_changed("ALTER TABLE tool ADD COLUMN more INTEGER", FAULT_FOREIGN);
}

static void a_file_without_a_version_is_damaged(void **state)
{
    (void)state;
    refuse_changed("PRAGMA user_version = 0", FAULT_DAMAGED);
}

static void a_reference_to_nothing_is_damage(void **state)
{
    (void)state;
    refuse_changed("PRAGMA foreign_keys = OFF; DELETE FROM stock", FAULT_DAMAGED);
}

static void a_value_against_its_check_is_damage(void **state)
{
    (void)state;
    refuse_changed("PRAGMA ignore_check_constraints = ON; UPDATE box SET frame = 'sofa'",
                   FAULT_DAMAGED);
}

static void a_truncated_file_is_damaged_wherever_it_ends(void **state)
{
    (void)state;
    struct place place;
    unsigned char *bytes;
    size_t size;

    place_with_store(&place);
    read_file(place.path, &bytes, &size);
    for (size_t left = 4096; left < size; left += 4096 * 7)
        refuse_bytes(bytes, left, FAULT_DAMAGED);
    refuse_bytes(bytes, size - 100, FAULT_DAMAGED);
    refuse_bytes(bytes, 1000, FAULT_DAMAGED);
    free(bytes);
    place_remove(&place);
}

/* Whatever it gives. */
static void read_all(struct store *store)
{
    struct arena arena;
    struct model model;
    struct store_build *builds = NULL;
    size_t count = 0;
    char label[STORE_LABEL];

    arena_make(&arena);
    store_builds(store, &arena, &builds, &count, NULL);
    for (size_t i = 0; i < count; i++)
        store_load(store, builds[i].key, &model, &arena, NULL);
    store_undo_label(store, label, NULL);
    arena_release(&arena);
}

/* The heads of pages closely, what is in them here and there. */
#define APART_IN_HEAD UNLESS_SANITIZED(7, 13)
#define APART UNLESS_SANITIZED(509, 2039)

/* A flipped bit in a text is nobody's to find; but nothing crashes, and nothing is written. */
static void a_flipped_bit_is_never_written_to(void **state)
{
    (void)state;
    struct place place;
    unsigned char *bytes;
    size_t size;
    int refused = 0;

    place_with_store(&place);
    read_file(place.path, &bytes, &size);
    for (size_t at = 0; at < size; at += at % 4096 < 48 ? APART_IN_HEAD : APART) {
        struct store *store = NULL;

        bytes[at] ^= (unsigned char)(1u << (at % 8));
        write_file(place.path, bytes, size);
        uint64_t digest = file_digest(place.path);
        if (store_open(&store, place.path, NULL))
            refused++;
        else
            read_all(store);
        store_close(store);
        assert_true(file_digest(place.path) == digest);
        bytes[at] ^= (unsigned char)(1u << (at % 8));
    }
    assert_true(refused > 10);
    free(bytes);
    place_remove(&place);
}

static void a_broken_page_is_damage(void **state)
{
    (void)state;
    struct place place;
    unsigned char *bytes;
    size_t size;

    place_with_store(&place);
    read_file(place.path, &bytes, &size);
    for (size_t page = 0; page + 4096 <= size; page += 4096 * 5) {
        unsigned char *header = bytes + page + (page == 0 ? 100 : 0);
        unsigned char kind = header[0];

        header[0] = 7;
        refuse_bytes(bytes, size, FAULT_DAMAGED);
        header[0] = kind;
    }
    free(bytes);
    place_remove(&place);
}

/* Above a megabyte the whole is looked through before the first write. */
static void make_large(const struct place *place)
{
    run_sql(place->path,
            "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 30)"
            " INSERT INTO layout SELECT (SELECT min(key) FROM build), 1000 + i, 'job',"
            " hex(randomblob(30000)), NULL FROM n;"
            "UPDATE build SET next_key = 2000");
}

static int64_t first_build(struct store *store, struct arena *arena)
{
    struct store_build *builds;
    size_t count;

    assert_int_equal(store_builds(store, arena, &builds, &count, NULL), FAULT_NONE);
    assert_true(count > 0);
    return builds[0].key;
}

static void a_large_damaged_file_is_read_but_never_written_to(void **state)
{
    (void)state;
    struct place place;
    struct arena arena;
    struct model before;
    struct model after;
    struct fault_note note;
    const struct store_summary summary = {.digest = 1, .next_step = "", .missing = ""};

    place_with_store(&place);
    make_large(&place);
    run_sql(place.path, "PRAGMA foreign_keys = OFF; DELETE FROM stock");
    uint64_t digest = file_digest(place.path);
    struct store *store = open_store(place.path);
    arena_make(&arena);
    assert_int_equal(store_load(store, 0, &before, &arena, NULL), FAULT_NONE);
    model_copy(&after, &before, &arena);
    after.workshop.name = "Shed";
    assert_int_equal(store_summary_put(store, first_build(store, &arena), &summary, NULL),
                     FAULT_NONE);
    assert_true(file_digest(place.path) == digest);
    assert_int_equal(store_save(store, &before, &after, "Name", &note), FAULT_DAMAGED);
    assert_int_equal(store_read_only(store), FAULT_DAMAGED);
    assert_int_equal(store_save(store, &before, &after, "Name", &note), FAULT_DAMAGED);
    assert_non_null(strstr(note.why, "damaged"));
    store_close(store);
    assert_true(file_digest(place.path) == digest);
    arena_release(&arena);
    place_remove(&place);
}

/* What is copied is looked through, and here the copy is as bad as the file. */
static void a_large_damaged_file_is_not_backed_up_as_whole(void **state)
{
    (void)state;
    struct place place;
    struct fault_note note;
    char copy[PATH_MAX + 16];

    place_with_store(&place);
    make_large(&place);
    run_sql(place.path, "PRAGMA foreign_keys = OFF; DELETE FROM stock");
    snprintf(copy, sizeof copy, "%s.copy", place.path);
    struct store *store = open_store(place.path);
    assert_int_equal(store_backup(store, copy, true, &note), FAULT_DAMAGED);
    assert_string_equal(note.path, "the copy");
    store_close(store);
    assert_int_equal(place_files(&place), 1);
    place_remove(&place);
}

static void a_large_whole_file_is_written_to(void **state)
{
    (void)state;
    struct place place;
    struct arena arena;
    struct model before;
    struct model after;

    place_with_store(&place);
    make_large(&place);
    struct store *store = open_store(place.path);
    arena_make(&arena);
    assert_int_equal(store_load(store, 0, &before, &arena, NULL), FAULT_NONE);
    model_copy(&after, &before, &arena);
    after.workshop.name = "Shed";
    assert_int_equal(store_save(store, &before, &after, "Name", NULL), FAULT_NONE);
    store_close(store);
    arena_release(&arena);
    place_remove(&place);
}

/* What SQLite's documentation asks for where files come from others ("Defense Against The Dark
 * Arts"), but for what only a build of the library can say. */
static void nothing_that_a_file_holds_is_run(void **state)
{
    static const struct {
        int option, value;
    } rows[] = {
        {SQLITE_DBCONFIG_DEFENSIVE, 1},       {SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0},
        {SQLITE_DBCONFIG_ENABLE_TRIGGER, 0},  {SQLITE_DBCONFIG_ENABLE_VIEW, 0},
        {SQLITE_DBCONFIG_WRITABLE_SCHEMA, 0}, {SQLITE_DBCONFIG_ENABLE_LOAD_EXTENSION, 0},
    };
    struct place place;
    struct store *store;

    (void)state;
    place_with_store(&place);
    store = open_store(place.path);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        int value = -1;

        assert_int_equal(sqlite3_db_config(store->db, rows[i].option, -1, &value), SQLITE_OK);
        assert_int_equal(value, rows[i].value);
    }
    store_close(store);
    place_remove(&place);
}

static void a_newer_file_is_read_and_not_written_to(void **state)
{
    (void)state;
    struct place place;
    struct arena arena;
    struct model before;
    struct model after;
    struct fault_note note;
    char label[STORE_LABEL];
    int64_t build;

    place_with_store(&place);
    run_sql(place.path, "ALTER TABLE workshop ADD COLUMN motto TEXT NOT NULL DEFAULT 'slow';"
                        "CREATE TABLE later (key INTEGER PRIMARY KEY) STRICT;"
                        "PRAGMA user_version = 99");
    uint64_t digest = file_digest(place.path);
    struct store *store = open_store(place.path);
    arena_make(&arena);
    assert_int_equal(store_read_only(store), FAULT_NEWER);
    assert_int_equal(store_load(store, 0, &before, &arena, NULL), FAULT_NONE);
    model_copy(&after, &before, &arena);
    after.workshop.name = "Shed";
    const struct store_summary summary = {.digest = 1, .next_step = "", .missing = ""};
    assert_int_equal(store_save(store, &before, &after, "Name", &note), FAULT_NEWER);
    assert_non_null(strstr(note.why, "newer version"));
    assert_int_equal(store_undo(store, label, &build, NULL), FAULT_NEWER);
    assert_int_equal(store_delete_build(store, 1, "Delete", NULL), FAULT_NEWER);
    assert_int_equal(store_summary_put(store, first_build(store, &arena), &summary, NULL),
                     FAULT_NONE);
    store_close(store);
    assert_true(file_digest(place.path) == digest);
    arena_release(&arena);
    place_remove(&place);
}

/* A file of a newer version, whose workshop has another schema and holds what this one cannot
 * read, is refused with the fault and a word of why. */
static void refuse_newer(const char *schema, const char *content, enum fault fault, const char *why)
{
    struct place place;
    struct arena arena;
    struct model model;
    struct fault_note note;
    char sql[256];

    place_with_store(&place);
    snprintf(sql, sizeof sql,
             "PRAGMA writable_schema = ON;"
             "UPDATE sqlite_schema SET sql = replace(sql, %s) WHERE name = 'workshop';"
             "PRAGMA user_version = 99",
             schema);
    run_sql(place.path, sql);
    run_sql(place.path, content);
    struct store *store = open_store(place.path);
    arena_make(&arena);
    assert_int_equal(store_load(store, 0, &model, &arena, &note), fault);
    assert_string_equal(note.path, "workshop");
    assert_non_null(strstr(note.why, why));
    store_close(store);
    arena_release(&arena);
    place_remove(&place);
}

static void a_word_of_a_newer_version_is_said_to_be_newer(void **state)
{
    (void)state;
    refuse_newer("'''inch''', '''cubit'''", "UPDATE workshop SET units = 'cubit'", FAULT_NEWER,
                 "cubit");
}

/* Only in a newer file can a number be missing: what this version made says that it cannot. */
static void a_number_that_is_missing_is_damage(void **state)
{
    (void)state;
    refuse_newer("'NOT NULL', ''", "UPDATE workshop SET next_key = NULL", FAULT_DAMAGED,
                 "next_key");
}

static void our_file_in_wal_mode_is_switched_back(void **state)
{
    (void)state;
    struct place place;
    unsigned char *bytes;
    size_t size;

    place_with_store(&place);
    struct store *store = open_store(place.path);
    uint64_t before = state_digest(store);
    store_close(store);
    run_sql(place.path, "PRAGMA journal_mode = WAL");
    store = open_store(place.path);
    assert_true(state_digest(store) == before);
    read_file(place.path, &bytes, &size);
    assert_int_equal(bytes[18], 1);
    free(bytes);
    assert_int_equal(place_files(&place), 1);
    store_close(store);
    place_remove(&place);
}

/* Nobody but the last to leave can switch it back. */
static void our_file_in_wal_mode_waits_until_the_other_program_leaves(void **state)
{
    const struct store_options options = {.steps = store_steps, .step_count = store_step_count};
    struct place place;
    struct store *store = NULL;
    sqlite3 *other;

    (void)state;
    place_with_store(&place);
    assert_int_equal(sqlite3_open(place.path, &other), SQLITE_OK);
    assert_int_equal(sqlite3_exec(other, "PRAGMA journal_mode = WAL; SELECT count(*) FROM build",
                                  NULL, NULL, NULL),
                     SQLITE_OK);
    assert_int_equal(store_open_with(&store, place.path, &options, NULL), FAULT_LOCKED);
    assert_int_equal(sqlite3_close(other), SQLITE_OK);
    assert_int_equal(store_open_with(&store, place.path, &options, NULL), FAULT_NONE);
    store_close(store);
    place_remove(&place);
}

/* Adds half a page to the end of a file. */
static void add_half_a_page(const char *path)
{
    static const char half[2048];
    FILE *file = fopen(path, "ab");

    assert_non_null(file);
    assert_int_equal(fwrite(half, 1, sizeof half, file), sizeof half);
    assert_int_equal(fclose(file), 0);
}

/* A power cut while the log is brought into the file: what it did not get whole is in the log. */
static void our_file_in_wal_mode_may_end_in_half_a_page(void **state)
{
    static const char *const ends[] = {"", "-wal"};
    struct place place, after_cut;
    sqlite3 *other;

    (void)state;
    place_with_store(&place);
    place_make(&after_cut);
    assert_int_equal(sqlite3_open(place.path, &other), SQLITE_OK);
    assert_int_equal(sqlite3_exec(other,
                                  "PRAGMA journal_mode = WAL; PRAGMA wal_autocheckpoint = 0;"
                                  "UPDATE workshop SET name = 'Shed'",
                                  NULL, NULL, NULL),
                     SQLITE_OK);
    for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++) {
        char from[PATH_MAX + 8], to[PATH_MAX + 8];
        unsigned char *bytes;
        size_t size;

        snprintf(from, sizeof from, "%s%s", place.path, ends[i]);
        snprintf(to, sizeof to, "%s%s", after_cut.path, ends[i]);
        read_file(from, &bytes, &size);
        write_file(to, bytes, size);
        free(bytes);
    }
    assert_int_equal(sqlite3_close(other), SQLITE_OK);
    add_half_a_page(after_cut.path);
    store_close(open_store(after_cut.path));
    assert_int_equal(ask_sql(after_cut.path, "SELECT name = 'Shed' FROM workshop"), 1);
    place_remove(&after_cut);
    place_remove(&place);
}

static void a_file_without_its_workshop_is_damaged(void **state)
{
    (void)state;
    struct place place;
    struct arena arena;
    struct model model;
    struct fault_note note;

    place_with_store(&place);
    run_sql(place.path, "DELETE FROM workshop");
    struct store *store = open_store(place.path);
    arena_make(&arena);
    assert_int_equal(store_load(store, 0, &model, &arena, &note), FAULT_DAMAGED);
    assert_string_equal(note.why, "the workshop is missing in the file");
    assert_int_equal(note.column, 0);
    store_close(store);
    arena_release(&arena);
    place_remove(&place);
}

static void expect_read_only(mode_t folder, mode_t file)
{
    struct place place;
    struct arena arena;
    struct model model;
    struct fault_note note = {.code = FAULT_NONE};
    uid_t user = geteuid();

    place_with_store(&place);
    /* The superuser may do everything, so another user asks; 65534 is nobody by convention. */
    if (user == 0)
        assert_int_equal(chown(place.path, 65534, 65534), 0);
    if (user == 0)
        assert_int_equal(chown(place.folder, 65534, 65534), 0);
    assert_int_equal(chmod(place.path, file), 0);
    assert_int_equal(chmod(place.folder, folder), 0);
    if (user == 0)
        assert_int_equal(seteuid(65534), 0);
    struct store *store = NULL;
    enum fault fault = store_open(&store, place.path, NULL);
    enum fault why = store ? store_read_only(store) : FAULT_NONE;
    arena_make(&arena);
    enum fault loaded = store ? store_load(store, 0, &model, &arena, NULL) : FAULT_MISSING;
    enum fault saved = loaded ? loaded : store_save(store, &model, &model, "Nothing", &note);
    store_close(store);
    if (user == 0)
        assert_int_equal(seteuid(0), 0);
    assert_int_equal(chmod(place.folder, 0700), 0);
    assert_int_equal(fault, FAULT_NONE);
    assert_int_equal(why, FAULT_REFUSED);
    assert_int_equal(loaded, FAULT_NONE);
    assert_int_equal(saved, FAULT_REFUSED);
    assert_non_null(strstr(note.why, "permission"));
    arena_release(&arena);
    place_remove(&place);
}

static void without_permission_the_file_is_read_only(void **state)
{
    (void)state;
    expect_read_only(0555, 0600);
    expect_read_only(0700, 0400);
}

static void a_text_that_is_no_utf8_is_damage_at_loading(void **state)
{
    (void)state;
    static const char *const broken[] = {"x'ff41'", "x'410042'"};

    for (size_t i = 0; i < sizeof broken / sizeof broken[0]; i++) {
        struct place place;
        struct arena arena;
        struct model model;
        char sql[128];

        place_with_store(&place);
        snprintf(sql, sizeof sql, "UPDATE workshop SET name = CAST(%s AS TEXT)", broken[i]);
        run_sql(place.path, sql);
        struct store *store = open_store(place.path);
        arena_make(&arena);
        assert_int_equal(store_load(store, 0, &model, &arena, NULL), FAULT_DAMAGED);
        store_close(store);
        arena_release(&arena);
        place_remove(&place);
    }
}

static void a_text_of_an_item_that_is_no_utf8_is_damage_too(void **state)
{
    (void)state;
    struct place place;
    struct arena arena;
    struct model model;
    struct fault_note note;

    place_with_store(&place);
    run_sql(place.path, "UPDATE stock SET note = CAST(x'ff41' AS TEXT)"
                        " WHERE key = (SELECT min(key) FROM stock)");
    struct store *store = open_store(place.path);
    arena_make(&arena);
    assert_int_equal(store_load(store, 0, &model, &arena, &note), FAULT_DAMAGED);
    assert_non_null(strstr(note.path, "stock"));
    run_sql(place.path, "UPDATE workshop SET tax = 50000"); /* no statement keeps the file locked */
    store_close(store);
    arena_release(&arena);
    place_remove(&place);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_empty_file_is_foreign),
        cmocka_unit_test(a_text_is_foreign),
        cmocka_unit_test(another_programs_database_is_foreign),
        cmocka_unit_test(another_programs_wal_database_is_foreign_and_stays_wal),
        cmocka_unit_test(a_folder_is_foreign),
        cmocka_unit_test(what_is_no_plain_file_is_foreign),
        cmocka_unit_test(claims_of_terabytes_are_damage),
        cmocka_unit_test(a_folder_that_is_not_there_is_said),
        cmocka_unit_test(a_symbolic_link_is_refused),
        cmocka_unit_test(a_link_among_the_folders_is_followed),
        cmocka_unit_test(a_file_with_a_trigger_is_foreign),
        cmocka_unit_test(a_file_with_a_view_for_a_table_is_foreign),
        cmocka_unit_test(a_file_with_a_table_or_an_index_more_or_less_is_foreign),
        cmocka_unit_test(a_file_without_a_version_is_damaged),
        cmocka_unit_test(a_reference_to_nothing_is_damage),
        cmocka_unit_test(a_value_against_its_check_is_damage),
        cmocka_unit_test(a_truncated_file_is_damaged_wherever_it_ends),
        cmocka_unit_test(a_flipped_bit_is_never_written_to),
        cmocka_unit_test(a_broken_page_is_damage),
        cmocka_unit_test(a_large_damaged_file_is_read_but_never_written_to),
        cmocka_unit_test(a_large_damaged_file_is_not_backed_up_as_whole),
        cmocka_unit_test(a_large_whole_file_is_written_to),
        cmocka_unit_test(nothing_that_a_file_holds_is_run),
        cmocka_unit_test(a_newer_file_is_read_and_not_written_to),
        cmocka_unit_test(a_word_of_a_newer_version_is_said_to_be_newer),
        cmocka_unit_test(a_number_that_is_missing_is_damage),
        cmocka_unit_test(our_file_in_wal_mode_is_switched_back),
        cmocka_unit_test(our_file_in_wal_mode_may_end_in_half_a_page),
        cmocka_unit_test(our_file_in_wal_mode_waits_until_the_other_program_leaves),
        cmocka_unit_test(a_file_without_its_workshop_is_damaged),
        cmocka_unit_test(without_permission_the_file_is_read_only),
        cmocka_unit_test(a_text_that_is_no_utf8_is_damage_at_loading),
        cmocka_unit_test(a_text_of_an_item_that_is_no_utf8_is_damage_too),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
