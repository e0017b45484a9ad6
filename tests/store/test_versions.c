/*
 * Stores as older versions of the program made them, in versions/: opened, they are brought up to
 * date with every fact in them, beside a copy of what they were.
 */
#include "fixture.h"

#include "model/trade.h"
#include "store/internal.h"

#include <sqlite3.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const char *samples; /* their folder */

static sqlite3 *connect(const char *path)
{
    sqlite3 *db = NULL;

    assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
    return db;
}

static void run(sqlite3 *db, const char *sql)
{
    char *error = NULL;

    if (sqlite3_exec(db, sql, NULL, NULL, &error) != SQLITE_OK)
        fail_msg("%s", error);
}

/* A file as a version made it. */
static void lay(const struct place *place, int version)
{
    char path[PATH_MAX];
    unsigned char *rows;
    size_t size;
    char *sql;
    sqlite3 *db = connect(place->path);

    snprintf(path, sizeof path, "%s/%d.sql", samples, version);
    read_file(path, &rows, &size);
    sql = malloc(size + 1);
    assert_non_null(sql);
    memcpy(sql, rows, size);
    sql[size] = '\0';
    run(db, "BEGIN");
    for (int step = 0; step < version; step++)
        run(db, store_steps[step]);
    run(db, sql);
    run(db, "COMMIT");
    sqlite3_close(db);
    free(sql);
    free(rows);
}

static sqlite3_stmt *prepare(sqlite3 *db, const char *sql)
{
    sqlite3_stmt *statement = NULL;

    if (sqlite3_prepare_v2(db, sql, -1, &statement, NULL) != SQLITE_OK)
        fail_msg("%s: %s", sql, sqlite3_errmsg(db));
    return statement;
}

/* Columns that an old table and the new one of its name have both, as SQL; but for the next key,
 * which may have grown. */
static char *shared_columns(sqlite3 *db, const char *table)
{
    sqlite3_stmt *statement =
        prepare(db, "SELECT group_concat('\"' || old.name || '\"')"
                    " FROM pragma_table_info(?1, 'before') AS old"
                    " JOIN pragma_table_info(?1, 'main') AS new ON new.name = old.name"
                    " WHERE old.name <> 'next_key'");
    char *columns;

    sqlite3_bind_text(statement, 1, table, -1, SQLITE_STATIC);
    assert_int_equal(sqlite3_step(statement), SQLITE_ROW);
    columns = sqlite3_mprintf("%s", sqlite3_column_text(statement, 0));
    sqlite3_finalize(statement);
    return columns;
}

/* Rows that are no more as they were; of trade values those alone that the program still has. */
static void compare_rows(sqlite3 *db, const char *table)
{
    bool values = strcmp(table, "shop_value") == 0 || strcmp(table, "build_value") == 0;
    char *columns = shared_columns(db, table);
    char *sql = sqlite3_mprintf("SELECT %s FROM (SELECT %s FROM before.\"%w\""
                                " EXCEPT SELECT %s FROM main.\"%w\")",
                                values ? "name" : "1", columns, table, columns, table);
    sqlite3_stmt *statement = prepare(db, sql);

    while (sqlite3_step(statement) == SQLITE_ROW)
        if (!values || trade_find((const char *)sqlite3_column_text(statement, 0)) >= 0)
            fail_msg("a row of %s is lost", table);
    sqlite3_finalize(statement);
    sqlite3_free(sql);
    sqlite3_free(columns);
}

static int compare_tables(const char *before, const char *now)
{
    sqlite3 *db = connect(now);
    char *attach = sqlite3_mprintf("ATTACH %Q AS before", before);
    sqlite3_stmt *tables;
    int count = 0;

    run(db, attach);
    tables = prepare(db, "SELECT name FROM before.sqlite_schema"
                         " WHERE type = 'table' AND name NOT IN ('history', 'summary')");
    for (; sqlite3_step(tables) == SQLITE_ROW; count++)
        compare_rows(db, (const char *)sqlite3_column_text(tables, 0));
    sqlite3_finalize(tables);
    sqlite3_free(attach);
    sqlite3_close(db);
    return count;
}

static void each_older_version_is_brought_up_to_date_with_every_fact(void **state)
{
    (void)state;
    for (int version = 1; version < store_step_count; version++) {
        struct place place;
        struct store *store;
        char before[PATH_MAX + 32];

        place_make(&place);
        lay(&place, version);
        store = open_store(place.path);
        assert_int_equal(store_read_only(store), FAULT_NONE);
        store_close(store);
        snprintf(before, sizeof before, "%s.before-%d", place.path, store_step_count);
        assert_int_equal(ask_sql(place.path, "PRAGMA user_version"), store_step_count);
        assert_int_equal(ask_sql(before, "PRAGMA user_version"), version);
        assert_in_range(compare_tables(before, place.path), 35, 100);
        place_remove(&place);
    }
}

/* The flaw that a stock of version 3 had. */
static void the_one_flaw_of_a_roll_becomes_the_first_of_many(void **state)
{
    struct place place;
    char before[PATH_MAX + 32];

    (void)state;
    place_make(&place);
    lay(&place, 3);
    store_close(open_store(place.path));
    snprintf(before, sizeof before, "%s.before-%d", place.path, store_step_count);
    assert_int_equal(ask_sql(place.path, "SELECT count(*) FROM flaw"), 3);
    assert_int_equal(ask_sql(place.path, "SELECT sum(along + length) FROM flaw"),
                     ask_sql(before, "SELECT sum(flaw + flaw_length) FROM stock"));
    assert_int_equal(
        ask_sql(place.path, "SELECT count(*) FROM flaw, workshop WHERE flaw.key >= next_key"), 0);
    place_remove(&place);
}

/* A spend of version 5 paid for all of its line; where it said for how many, that tells now. */
static void a_spend_that_counts_nothing_goes_on_settling_its_line(void **state)
{
    struct place place;

    (void)state;
    place_make(&place);
    lay(&place, 5);
    run_sql(place.path, "UPDATE spend SET count = 0 WHERE key % 2 = 0");
    store_close(open_store(place.path));
    assert_int_equal(ask_sql(place.path, "SELECT count(*) FROM spend"), 6);
    assert_int_equal(ask_sql(place.path, "SELECT count(*) FROM spend WHERE settles"), 2);
    assert_int_equal(ask_sql(place.path, "SELECT count(*) FROM spend WHERE settles = (count > 0)"),
                     0);
    place_remove(&place);
}

int main(int argc, char **argv)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_older_version_is_brought_up_to_date_with_every_fact),
        cmocka_unit_test(a_spend_that_counts_nothing_goes_on_settling_its_line),
        cmocka_unit_test(the_one_flaw_of_a_roll_becomes_the_first_of_many),
    };

    if (argc != 2)
        return 2;
    samples = argv[1];
    return cmocka_run_group_tests(tests, NULL, NULL) ? 1 : 0;
}
