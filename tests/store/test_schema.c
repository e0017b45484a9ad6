/* The hand-written schema says the same as the entity tables. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <sqlite3.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "fixture.h"
#include "store/internal.h"

/* The first column of a query's rows, joined by blanks; free() it. */
static char *ask(const char *format, const char *name)
{
    char sql[256];
    struct text answer;
    sqlite3_stmt *statement;

    snprintf(sql, sizeof sql, format, name);
    assert_int_equal(sqlite3_prepare_v2(schema_db, sql, -1, &statement, NULL), SQLITE_OK);
    text_init(&answer);
    while (sqlite3_step(statement) == SQLITE_ROW)
        text_format(&answer, "%s ", (const char *)sqlite3_column_text(statement, 0));
    sqlite3_finalize(statement);
    char *copy = strdup(text_string(&answer));
    text_release(&answer);
    assert_non_null(copy);
    return copy;
}

static void each_entity(void (*check)(const struct entity *))
{
    check(entity_of(ENTITY_workshop));
    check(entity_of(ENTITY_build));
    for (int kind = 0; kind < ENTITY_COUNT; kind++)
        check(entity_of((enum entity_kind)kind));
}

static void expect(const char *what, const struct entity *entity, char *found, const char *expected)
{
    if (strcmp(found, expected) != 0)
        fail_msg("%s of %s: \"%s\", expected \"%s\"", what, entity->name, found, expected);
    free(found);
}

static void check_columns(const struct entity *entity)
{
    struct text expected;

    text_init(&expected);
    text_add(&expected, row_is_of_build(entity) ? "build key " : "key ");
    for (size_t i = 0; i < entity->field_count; i++)
        text_format(&expected, "%s ", entity->fields[i].name);
    expect("columns", entity, ask("SELECT name FROM pragma_table_info('%s')", entity->name),
           text_string(&expected));
    text_release(&expected);
}

static void a_table_has_the_columns_of_its_entity_in_order(void **state)
{
    (void)state;
    each_entity(check_columns);
}

static void check_types(const struct entity *entity)
{
    struct text expected;

    text_init(&expected);
    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];
        bool is_text = field_is_text(field) || field->type == FIELD_CHOICE;
        bool may_be_null = field->type == FIELD_REF && field->least == 0;

        text_format(&expected, "%s%d ", is_text ? "TEXT" : "INTEGER", may_be_null ? 0 : 1);
    }
    expect("types", entity,
           ask("SELECT type || \"notnull\" FROM pragma_table_info('%s')"
               " WHERE NOT (pk OR name IN ('build', 'key'))",
               entity->name),
           text_string(&expected));
    text_release(&expected);
}

static void a_column_has_the_type_of_its_field(void **state)
{
    (void)state;
    each_entity(check_types);
}

static void check_keys(const struct entity *entity)
{
    expect("key", entity,
           ask("SELECT name FROM pragma_table_info('%s') WHERE pk ORDER BY pk", entity->name),
           row_is_of_build(entity) ? "build key " : "key ");
}

static void rows_are_known_by_their_keys(void **state)
{
    (void)state;
    each_entity(check_keys);
}

/* "box>box.key/NO ACTION " by column, with the row's own build first. */
static void check_references(const struct entity *entity)
{
    struct text expected;

    text_init(&expected);
    if (row_is_of_build(entity))
        text_add(&expected, "build>build.key/CASCADE ");
    for (size_t i = 0; i < entity->field_count; i++)
        if (entity->fields[i].type == FIELD_REF)
            text_format(&expected, "%s>%s.key/NO ACTION ", entity->fields[i].name,
                        entity_of(entity->fields[i].target)->name);
    expect("references", entity,
           ask("SELECT f.\"from\" || '>' || f.\"table\" || '.' || f.\"to\" || '/' || f.on_delete"
               " FROM (SELECT '%s' AS name) t, pragma_foreign_key_list(t.name) f,"
               " pragma_table_info(t.name) c"
               " WHERE c.name = f.\"from\" AND f.\"to\" = 'key' ORDER BY c.cid",
               entity->name),
           text_string(&expected));
    text_release(&expected);
}

static void a_reference_points_where_its_field_does(void **state)
{
    (void)state;
    each_entity(check_references);
}

/* The column's CHECK as it has to stand in the schema. */
static void write_check(struct text *check, const struct field *field)
{
    long long least = (long long)field->least;
    long long most = (long long)field->most;

    if (field->type == FIELD_TEXT && least > 0 && least < most)
        text_format(check, " BETWEEN %lld AND %lld)", least, most);
    else if (field->type == FIELD_TEXT)
        text_format(check, least == most ? " = %lld)" : " <= %lld)", most);
    else if (field->type == FIELD_DATE)
        text_add(check, least > 0 ? " = 10)" : " IN (0, 10))");
    else if (field->type == FIELD_FLAG)
        text_add(check, " IN (0, 1))");
    else if (field->type != FIELD_CHOICE)
        text_format(check, " BETWEEN %lld AND %lld)", least, most);
    if (field->type != FIELD_CHOICE)
        return;
    text_add(check, " IN (");
    for (size_t i = 0; i < field->words->count; i++)
        text_format(check, "%s'%s'", i > 0 ? ", " : "", field->words->at[i].name);
    text_add(check, "))");
}

/* Takes line breaks and what indents the lines after them out. */
static void join_lines(char *sql)
{
    char *to = sql;

    for (const char *from = sql; *from; from++) {
        if (*from != '\n') {
            *to++ = *from;
            continue;
        }
        from += strspn(from, "\n ");
        from--;
        if (to > sql && to[-1] != '(')
            *to++ = ' ';
    }
    *to = '\0';
}

static void check_checks(const struct entity *entity)
{
    char *sql = ask("SELECT sql FROM sqlite_schema WHERE name = '%s'", entity->name);

    join_lines(sql);
    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];
        struct text bare;
        struct text quoted;

        if (field->type == FIELD_REF)
            continue;
        text_init(&bare);
        text_init(&quoted);
        text_format(&bare, field_is_text(field) ? "CHECK (length(%s)" : "CHECK (%s", field->name);
        text_format(&quoted, field_is_text(field) ? "CHECK (length(\"%s\")" : "CHECK (\"%s\"",
                    field->name);
        write_check(&bare, field);
        write_check(&quoted, field);
        if (!strstr(sql, text_string(&bare)) && !strstr(sql, text_string(&quoted)))
            fail_msg("%s does not say: %s", entity->name, text_string(&bare));
        text_release(&bare);
        text_release(&quoted);
    }
    free(sql);
}

static void a_check_says_the_range_and_the_words_of_its_field(void **state)
{
    (void)state;
    each_entity(check_checks);
}

static void there_is_no_table_besides(void **state)
{
    (void)state;
    char *count = ask("SELECT count(*) FROM sqlite_schema WHERE sql IS NOT NULL"
                      " AND name NOT IN ('history', 'summary')%s",
                      "");
    assert_int_equal(strtol(count, NULL, 10), ENTITY_COUNT + 2);
    free(count);
}

static void every_table_is_strict(void **state)
{
    (void)state;
    char *loose = ask("SELECT name FROM pragma_table_list WHERE schema = 'main'"
                      " AND NOT strict AND name NOT LIKE 'sqlite_%%'%s",
                      "");
    assert_string_equal(loose, "");
    free(loose);
}

static void the_file_says_what_it_is(void **state)
{
    (void)state;
    char *application = ask("PRAGMA application_id%s", "");
    char *version = ask("PRAGMA user_version%s", "");
    assert_int_equal(strtol(application, NULL, 10), STORE_APPLICATION);
    assert_int_equal(strtol(version, NULL, 10), store_step_count);
    free(application);
    free(version);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_table_has_the_columns_of_its_entity_in_order),
        cmocka_unit_test(a_column_has_the_type_of_its_field),
        cmocka_unit_test(rows_are_known_by_their_keys),
        cmocka_unit_test(a_reference_points_where_its_field_does),
        cmocka_unit_test(a_check_says_the_range_and_the_words_of_its_field),
        cmocka_unit_test(there_is_no_table_besides),
        cmocka_unit_test(every_table_is_strict),
        cmocka_unit_test(the_file_says_what_it_is),
    };
    int failed = cmocka_run_group_tests(tests, schema_make, schema_drop);
    return failed ? 1 : 0;
}
