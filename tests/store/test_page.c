/*
 * stuffover-store(5) says what the schema says: every table and column as SQLite has them after all
 * steps, with a note each. Notes of what the maker enters are the model's own; the others stand
 * here, and a column without one fails. The program is given the folder of the pages; with
 * STUFFOVER_PAGES=write in the environment it writes the page.
 */
#include "fixture.h"
#include "kept.h"
#include "page_sentence.h"
#include "store/internal.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <sqlite3.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *page_folder;

/* ---- notes of what is no entity ---- */

static const struct note {
    const char *table, *column; /* column NULL: of the table itself */
    const char *says;
} notes[] = {
    {"history", NULL,
     "what was done, for undo and redo: one row an action, numbered without gaps; undone rows are "
     "those with the largest numbers, and the next action drops them"},
    {"history", "sequence", "number of the action, from 1 on"},
    {"history", "undone", "1 where it was taken back"},
    {"history", "build",
     "build that it was done to, 0 for the workshop alone; no foreign key, since "
     "the build may be gone"},
    {"history", "label", "what it is called where it is taken back"},
    {"history", "recorded", "seconds since 1970"},
    {"history", "changeset",
     "what SQLite's session extension recorded of it: inverted it undoes the action, and it "
     "applies "
     "only where the rows are still as the action left them"},
    {"summary", NULL,
     "a cache for the list of builds, worked out from a plan: it may be emptied at any time"},
    {"summary", "build", "the build"},
    {"summary", "digest", "of the facts, and of the engine that made the plan"},
    {"summary", "estimate", "what it is estimated to cost"},
    {"summary", "steps_done", "how many steps are ticked"},
    {"summary", "steps_total", "how many there are"},
    {"summary", "next_step", "title of the next one"},
    {"summary", "missing", "what is missing before the work can go on, in words"},
};

static const char *note_of(const char *table, const char *column)
{
    for (size_t i = 0; i < sizeof notes / sizeof *notes; i++)
        if (strcmp(notes[i].table, table) == 0 &&
            (column ? notes[i].column && strcmp(notes[i].column, column) == 0 : !notes[i].column))
            return notes[i].says;
    fail_msg("%s%s%s has no note", table, column ? "." : "", column ? column : "");
    return NULL;
}

/* ---- a column ---- */

static const char *const type_words[] = {
    [FIELD_TEXT] = "text",           [FIELD_DATE] = "a day as 2026-11-25, or empty",
    [FIELD_LENGTH] = "1/320 mm",     [FIELD_COUNT] = "a whole number",
    [FIELD_RATIO] = "1/1000000",     [FIELD_MINUTES] = "1/1000 min",
    [FIELD_ANGLE] = "1/1000 degree", [FIELD_AREA] = "mm2",
    [FIELD_VOLUME] = "mm3",          [FIELD_DENSITY] = "g/m3",
    [FIELD_AREA_MASS] = "mg/m2",     [FIELD_MONEY] = "minor units of the currency",
    [FIELD_FLAG] = "0 or 1",         [FIELD_CHOICE] = "a word",
    [FIELD_REF] = "a key",
};

static void put_field(struct text *out, const struct field *field)
{
    struct text sentence;

    text_init(&sentence);
    text_add(&sentence, type_words[field->type]);
    if (field->type == FIELD_CHOICE)
        text_format(&sentence, " of the vocabulary %s of stuffover-build(5)", field->words->name);
    else if (field->type == FIELD_REF)
        text_format(&sentence, " of %s%s", entity_of(field->target)->name,
                    field->least ? "" : ", or NULL");
    else if (field->type == FIELD_TEXT)
        text_format(&sentence, " of at most %lld characters", (long long)field->most);
    else if (field->type != FIELD_FLAG && field->type != FIELD_DATE)
        text_format(&sentence, ", %lld to %lld", (long long)field->least, (long long)field->most);
    page_sentence(out, text_string(&sentence));
    page_sentence(out, field->help);
    text_release(&sentence);
}

static void put_column(struct text *out, const struct entity *entity, const char *table,
                       const char *column, const char *type)
{
    const struct field *field = entity ? field_named(entity, column) : NULL;

    text_format(out, ".It Cm %s No %s\n", column, type);
    if (field)
        put_field(out, field);
    else if (entity && strcmp(column, "key") == 0)
        page_sentence(out, "what the row is known by, never given out again");
    else if (entity && strcmp(column, "build") == 0)
        page_sentence(out, "the build that it belongs to; deleted with it");
    else
        page_sentence(out, note_of(table, column));
}

/* ---- a table ---- */

static size_t put_columns(struct text *out, const struct entity *entity, const char *table)
{
    sqlite3_stmt *columns;
    size_t count = 0;

    assert_int_equal(sqlite3_prepare_v2(schema_db, "SELECT name, type FROM pragma_table_info(?1)",
                                        -1, &columns, NULL),
                     SQLITE_OK);
    sqlite3_bind_text(columns, 1, table, -1, SQLITE_STATIC);
    for (; sqlite3_step(columns) == SQLITE_ROW; count++)
        put_column(out, entity, table, (const char *)sqlite3_column_text(columns, 0),
                   (const char *)sqlite3_column_text(columns, 1));
    sqlite3_finalize(columns);
    return count;
}

static void put_table(struct text *out, const char *table)
{
    const struct entity *entity = entity_named(table);

    text_format(out, ".Ss %s\n", table);
    page_sentence(out, entity ? entity->help : note_of(table, NULL));
    text_add(out, ".Bl -tag -width Ds\n");
    assert_true(put_columns(out, entity, table) > 0);
    text_add(out, ".El\n");
}

/* ---- the page ---- */

static const char *const head =
    ".\\\" Written by a test from the schema; see tests/store/test_page.c.\n"
    ".Dd November 30, 2026\n"
    ".Dt STUFFOVER-STORE 5\n"
    ".Os\n"
    ".Sh NAME\n"
    ".Nm stuffover-store\n"
    ".Nd the workshop file, table by table\n"
    ".Sh DESCRIPTION\n"
    "A workshop with all its builds is one file, a database of SQLite in which every\n"
    "table is strict.\n"
    "Whoever reads it with other programs should open it for reading only: the\n"
    "program looks at a file before it writes, and leaves alone what is not as it\n"
    "made it.\n"
    ".Pp\n"
    "The file's application_id is 1937012070, and its user_version the number of the\n"
    "schema's last step.\n"
    "An older file is brought up to date when it is opened, after a copy was put\n"
    "beside it; a newer one is read and not written to.\n"
    "The journal is a rollback journal, so that a copy of the file while no program\n"
    "has it open is whole.\n"
    ".Pp\n"
    "Values are whole numbers of small units, which are named with each column.\n"
    "A reference to nothing is NULL.\n"
    "Rows of the workshop are known by their key, rows of a build by the build's key\n"
    "and their own; rows of a build are deleted with it, and nothing else cascades.\n"
    "A plan is never stored: it is worked out from these facts.\n";

static const char *const tail = ".Sh SEE ALSO\n"
                                ".Xr stuffover 1 ,\n"
                                ".Xr stuffover-build 5\n";

static size_t write_page(struct text *out)
{
    sqlite3_stmt *tables;
    size_t count = 0;

    text_add(out, head);
    text_add(out, ".Sh TABLES\n");
    assert_int_equal(sqlite3_prepare_v2(schema_db,
                                        "SELECT name FROM sqlite_schema WHERE type = 'table'"
                                        " AND name NOT LIKE 'sqlite_%' ORDER BY rowid",
                                        -1, &tables, NULL),
                     SQLITE_OK);
    for (; sqlite3_step(tables) == SQLITE_ROW; count++)
        put_table(out, (const char *)sqlite3_column_text(tables, 0));
    sqlite3_finalize(tables);
    text_add(out, tail);
    return count;
}

static void the_page_of_the_store_follows_the_schema(void **state)
{
    char path[4096];
    struct text made;

    (void)state;
    snprintf(path, sizeof path, "%s/stuffover-store.5", page_folder);
    text_init(&made);
    assert_int_equal(write_page(&made), ENTITY_COUNT + 4); /* workshop, build, and two more */
    kept_assert(path, text_string(&made), "STUFFOVER_PAGES");
    text_release(&made);
}

int main(int argc, char **argv)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_page_of_the_store_follows_the_schema),
    };

    if (argc != 2) {
        fprintf(stderr, "the folder of the pages is needed\n");
        return 2;
    }
    page_folder = argv[1];
    return cmocka_run_group_tests(tests, schema_make, schema_drop) ? 1 : 0;
}
