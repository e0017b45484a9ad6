/*
 * Is it ours, and is it whole? The header is read through SQLite's own handle of the file: opening
 * it a second time and closing that would drop the locks that this process holds.
 */
#include "store/internal.h"

#include <string.h>

/* Where the header of a SQLite file says what (sqlite.org, "Database File Format", 1.3). */
enum {
    HEADER_SIZE = 100,
    HEADER_PAGE_SIZE = 16, /* two bytes; 1 stands for 65536 */
    HEADER_FORMAT = 18,    /* 2 in WAL mode */
    HEADER_VERSION = 60,
    HEADER_APPLICATION = 68
};

static int64_t big_endian(const unsigned char *at)
{
    return (int64_t)at[0] << 24 | (int64_t)at[1] << 16 | (int64_t)at[2] << 8 | (int64_t)at[3];
}

static enum fault read_header(struct store *store, unsigned char header[HEADER_SIZE],
                              int64_t *ret_size, struct fault_note *note)
{
    sqlite3_file *file = NULL;
    sqlite3_int64 size = 0;
    int result = sqlite3_file_control(store->db, "main", SQLITE_FCNTL_FILE_POINTER, &file);

    if (result == SQLITE_OK)
        result = file->pMethods->xFileSize(file, &size);
    if (result == SQLITE_OK && size == 0)
        return fault_say(note, FAULT_FOREIGN, "the file is empty");
    if (result == SQLITE_OK && size < HEADER_SIZE)
        return fault_say(note, FAULT_FOREIGN, "is not a workshop file of this program");
    if (result == SQLITE_OK)
        result = file->pMethods->xRead(file, header, HEADER_SIZE, 0);
    if (result != SQLITE_OK)
        return store_say(store, result, note);
    *ret_size = size;
    return FAULT_NONE;
}

enum fault check_header(struct store *store, int newest, struct fault_note *note)
{
    unsigned char header[HEADER_SIZE];
    int64_t version;
    int64_t size;
    enum fault fault = read_header(store, header, &size, note);

    if (fault)
        return fault;
    if (memcmp(header, "SQLite format 3", 16) != 0 ||
        big_endian(header + HEADER_APPLICATION) != STORE_APPLICATION)
        return fault_say(note, FAULT_FOREIGN, "is not a workshop file of this program");
    version = big_endian(header + HEADER_VERSION);
    if (version == 0)
        return fault_say(note, FAULT_DAMAGED, "the file says no version");
    if (version > newest)
        store->read_only = FAULT_NEWER;
    return FAULT_NONE;
}

/* SQLite takes a last page that was cut short for a whole one. */
enum fault check_size(struct store *store, struct fault_note *note)
{
    unsigned char header[HEADER_SIZE];
    int64_t size = 0;
    enum fault fault = read_header(store, header, &size, note);
    int64_t page_size;

    if (fault || header[HEADER_FORMAT] == 2)
        return fault;
    page_size = (int64_t)header[HEADER_PAGE_SIZE] << 8 | (int64_t)header[HEADER_PAGE_SIZE + 1];
    if (page_size == 1)
        page_size = 65536;
    return page_size > 0 && size % page_size == 0
               ? FAULT_NONE
               : fault_say(note, FAULT_DAMAGED, "the end of the file is missing");
}

#define SCHEMA                                                                  \
    "SELECT type || ' ' || name || ' ' || tbl_name || ' ' || coalesce(sql, '')" \
    " FROM sqlite_schema ORDER BY type, name"

/* Walks both schemas side by side to the end or to the first difference. */
static int compare(sqlite3_stmt *ours, sqlite3_stmt *theirs, bool *ret_same)
{
    int our_step;
    int their_step;

    do {
        our_step = sqlite3_step(ours);
        their_step = sqlite3_step(theirs);
        if (our_step != SQLITE_ROW && our_step != SQLITE_DONE)
            return our_step;
        if (their_step != SQLITE_ROW && their_step != SQLITE_DONE)
            return their_step;
        *ret_same = our_step == their_step;
        if (*ret_same && our_step == SQLITE_ROW) {
            const char *our_text = (const char *)sqlite3_column_text(ours, 0);
            const char *their_text = (const char *)sqlite3_column_text(theirs, 0);

            if (!our_text || !their_text)
                return SQLITE_NOMEM;
            *ret_same = strcmp(our_text, their_text) == 0;
        }
    } while (*ret_same && our_step == SQLITE_ROW);
    return SQLITE_OK;
}

/* What this program would make of an empty file, up to a version. */
static int make_expected(const struct store_options *options, int64_t version, sqlite3 **ret_db)
{
    int result = sqlite3_open_v2(
        ":memory:", ret_db, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_NOMUTEX, NULL);

    if (result == SQLITE_OK)
        result = sqlite3_exec(*ret_db, "BEGIN", NULL, NULL, NULL);
    for (int64_t i = 0; i < version && result == SQLITE_OK; i++)
        result = sqlite3_exec(*ret_db, options->steps[i], NULL, NULL, NULL);
    return result;
}

bool schema_is_known(const struct store_options *options, int64_t version)
{
    return options->steps == store_steps && version == store_step_count && store_schema[0].told;
}

/* The file's schema beside the rows known since this program was built, which costs nothing. Where
 * they differ, another version of SQLite may have written them in its own way: then
 * compare_with_made asks the one in use. */
static int compare_with_known(sqlite3_stmt *theirs, bool *ret_same)
{
    const struct schema_row *row = store_schema;
    int step;

    *ret_same = true;
    while (*ret_same && (step = sqlite3_step(theirs)) == SQLITE_ROW) {
        const char *text = (const char *)sqlite3_column_text(theirs, 0);

        if (!text)
            return SQLITE_NOMEM;
        *ret_same = row->told && strcmp(text, row->told) == 0;
        row += *ret_same;
    }
    if (*ret_same && step != SQLITE_DONE)
        return step;
    *ret_same = *ret_same && !row->told;
    return sqlite3_reset(theirs);
}

static int compare_with_made(const struct store_options *options, int64_t version,
                             sqlite3_stmt *theirs, bool *ret_same)
{
    sqlite3 *expected = NULL;
    sqlite3_stmt *ours = NULL;
    int result = make_expected(options, version, &expected);

    if (result == SQLITE_OK)
        result = sqlite3_prepare_v2(expected, SCHEMA, -1, &ours, NULL);
    if (result == SQLITE_OK)
        result = compare(ours, theirs, ret_same);
    sqlite3_finalize(ours);
    sqlite3_close(expected);
    return result;
}

enum fault check_schema(struct store *store, const struct store_options *options,
                        struct fault_note *note)
{
    sqlite3_stmt *theirs = NULL;
    int64_t version = 0;
    bool same = false;
    int result;
    enum fault fault = store_ask_whole(store, "PRAGMA user_version", &version, note);

    if (fault)
        return fault;
    result = sqlite3_prepare_v2(store->db, SCHEMA, -1, &theirs, NULL);
    if (result == SQLITE_OK && schema_is_known(options, version))
        result = compare_with_known(theirs, &same);
    if (result == SQLITE_OK && !same)
        result = compare_with_made(options, version, theirs, &same);
    if (result != SQLITE_OK)
        fault = store_say(store, result, note);
    else if (!same)
        fault = fault_say(note, FAULT_FOREIGN,
                          "holds tables, triggers or views that are not this program's");
    sqlite3_finalize(theirs);
    return fault;
}

/* A damaged index or page is found here; a byte changed inside a text cannot be. */
static enum fault check_with(struct store *store, const char *sql, struct fault_note *note)
{
    int64_t good = 0;
    int64_t dangling = 0;
    enum fault fault = store_ask_whole(store, sql, &good, note);

    if (!fault && !good)
        fault = fault_say(note, FAULT_DAMAGED, "the file is damaged");
    if (!fault)
        fault = store_ask_whole(store, "SELECT EXISTS (SELECT 1 FROM pragma_foreign_key_check)",
                                &dangling, note);
    if (!fault && dangling)
        fault = fault_say(note, FAULT_DAMAGED, "rows of the file refer to rows that are gone");
    return fault;
}

enum fault check_content(struct store *store, struct fault_note *note)
{
    return check_with(store, "SELECT quick_check = 'ok' FROM pragma_quick_check(1)", note);
}

enum fault store_look_through(struct store *store, struct fault_note *note)
{
    return check_with(store, "SELECT integrity_check = 'ok' FROM pragma_integrity_check(1)", note);
}

enum fault store_check(struct store *store, struct fault_note *note)
{
    enum fault fault = store->is_checked ? FAULT_NONE : check_content(store, note);

    if (!fault)
        store->is_checked = true;
    if (fault == FAULT_DAMAGED)
        store->read_only = FAULT_DAMAGED;
    return fault;
}
