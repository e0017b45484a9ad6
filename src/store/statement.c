/*
 * Statements are prepared at their first use and kept until the store is closed. Each use binds
 * all parameters, runs, and resets at once, so that no read lock outlives the call.
 */
#include "store/internal.h"

#include "base/text.h"
#include "base/utf8.h"

#include <assert.h>
#include <string.h>

static const char *const texts[STATEMENT_COUNT] = {
#define STATEMENT_TEXT(name, sql) [STATEMENT_##name] = (sql),
    STATEMENTS(STATEMENT_TEXT)
#undef STATEMENT_TEXT
};

enum fault store_prepare(struct store *store, const char *sql, sqlite3_stmt **slot,
                         struct fault_note *note)
{
    int result;

    if (*slot)
        return FAULT_NONE;
    result = sqlite3_prepare_v3(store->db, sql, -1, SQLITE_PREPARE_PERSISTENT, slot, NULL);
    return result == SQLITE_OK ? FAULT_NONE : store_say(store, result, note);
}

enum fault store_statement(struct store *store, enum statement which, sqlite3_stmt **ret_statement,
                           struct fault_note *note)
{
    enum fault fault;

    assert(which < STATEMENT_COUNT);
    fault = store_prepare(store, texts[which], &store->statements[which], note);

    if (!fault)
        *ret_statement = store->statements[which];
    return fault;
}

struct binder binder_start(sqlite3_stmt *statement)
{
    assert(!sqlite3_stmt_busy(statement)); /* its last user reset it */
    return (struct binder){.statement = statement, .result = SQLITE_OK};
}

static void keep(struct binder *binder, int result)
{
    if (binder->result == SQLITE_OK)
        binder->result = result;
}

void bind_whole(struct binder *binder, int64_t value)
{
    keep(binder, sqlite3_bind_int64(binder->statement, ++binder->count, value));
}

void bind_reference(struct binder *binder, int64_t key)
{
    if (key != 0)
        bind_whole(binder, key);
    else
        keep(binder, sqlite3_bind_null(binder->statement, ++binder->count));
}

void bind_string(struct binder *binder, const char *string)
{
    assert(string);
    keep(binder, sqlite3_bind_text(binder->statement, ++binder->count, string, -1, SQLITE_STATIC));
}

void bind_bytes(struct binder *binder, const void *bytes, int size)
{
    assert(bytes && size > 0); /* SQLite would make NULL of nothing */
    keep(binder, sqlite3_bind_blob(binder->statement, ++binder->count, bytes, size, SQLITE_STATIC));
}

enum fault binder_run(struct store *store, struct binder *binder, struct fault_note *note)
{
    int result = binder->result;
    enum fault fault = FAULT_NONE;

    assert(binder->count == sqlite3_bind_parameter_count(binder->statement));
    if (result == SQLITE_OK)
        result = sqlite3_step(binder->statement);
    if (result != SQLITE_DONE)
        fault = store_say(store, result, note);
    sqlite3_reset(binder->statement);
    sqlite3_clear_bindings(binder->statement);
    return fault;
}

enum fault binder_finds(struct store *store, struct binder *binder, bool *ret_found,
                        struct fault_note *note)
{
    enum fault fault = binder->result == SQLITE_OK
                           ? store_step(store, binder->statement, ret_found, note)
                           : store_say(store, binder->result, note);

    assert(binder->count == sqlite3_bind_parameter_count(binder->statement));
    sqlite3_reset(binder->statement);
    sqlite3_clear_bindings(binder->statement);
    return fault;
}

enum fault store_run(struct store *store, enum statement which, struct fault_note *note)
{
    sqlite3_stmt *statement;
    enum fault fault = store_statement(store, which, &statement, note);
    struct binder none;

    if (fault)
        return fault;
    none = binder_start(statement);
    return binder_run(store, &none, note);
}

enum fault store_step(struct store *store, sqlite3_stmt *statement, bool *ret_row,
                      struct fault_note *note)
{
    int result = sqlite3_step(statement);

    if (result != SQLITE_ROW && result != SQLITE_DONE)
        return store_say(store, result, note);
    *ret_row = result == SQLITE_ROW;
    return FAULT_NONE;
}

enum fault store_read_word(const struct store *store, const struct words *words, const char *called,
                           const char *word, int64_t *ret_value, struct fault_note *note)
{
    int value = words_find(words, word);

    if (value < 0)
        return fault_say(note, store->read_only == FAULT_NEWER ? FAULT_NEWER : FAULT_DAMAGED,
                         "%s \"%s\" is not known to this version", called, word);
    *ret_value = value;
    return FAULT_NONE;
}

enum fault column_string(sqlite3_stmt *statement, int column, const char **ret_string,
                         struct fault_note *note)
{
    const char *string;
    size_t length;

    assert(column >= 0 && column < sqlite3_column_count(statement));
    if (sqlite3_column_type(statement, column) != SQLITE_TEXT)
        return fault_say(note, FAULT_DAMAGED, "%s is no text",
                         sqlite3_column_name(statement, column));
    string = (const char *)sqlite3_column_text(statement, column);
    if (!string)
        return fault_say_plain(note, FAULT_MEMORY);
    length = (size_t)sqlite3_column_bytes(statement, column);
    if (strlen(string) != length || !utf8_valid(string, length))
        return fault_say(note, FAULT_DAMAGED, "%s holds bytes that are no text",
                         sqlite3_column_name(statement, column));
    *ret_string = string;
    return FAULT_NONE;
}

enum fault store_ask_whole(struct store *store, const char *sql, int64_t *ret_value,
                           struct fault_note *note)
{
    sqlite3_stmt *statement = NULL;
    int result = sqlite3_prepare_v2(store->db, sql, -1, &statement, NULL);
    enum fault fault = FAULT_NONE;

    if (result == SQLITE_OK)
        result = sqlite3_step(statement);
    if (result == SQLITE_ROW)
        *ret_value = sqlite3_column_int64(statement, 0);
    else
        fault = store_say(store, result, note);
    sqlite3_finalize(statement);
    return fault;
}

enum fault store_execute(struct store *store, const char *sql, struct fault_note *note)
{
    int result = sqlite3_exec(store->db, sql, NULL, NULL, NULL);

    return result == SQLITE_OK ? FAULT_NONE : store_say(store, result, note);
}
