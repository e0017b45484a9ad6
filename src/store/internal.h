/*
 * What the files of this floor share. Only they and the tests of this floor include it.
 *
 * Invariants of a store:
 *   1  statements are prepared at their first use, kept, and finalised at close; none stays open
 *      (every user resets it, so that no lock outlives a call)
 *   2  depth counts nested transactions; opened_at names the function that began the outermost
 *   3  a write happens only after store_write_begin: never to a read-only or an unchecked file, and
 *      never over a change that the caller has not seen
 */
#ifndef STORE_INTERNAL_H
#define STORE_INTERNAL_H

#include "store/store.h"

#include <sqlite3.h>

#define STORE_APPLICATION 1937012070 /* "stuf"; the same in schema/001.sql */
#define STORE_PATIENCE 2000          /* ms that another program may hold the file */

/* Statements without a table of their own: name, SQL. */
/* clang-format off: one statement a line reads as the table that it is */
#define STATEMENTS(S)                                                                         \
    S(BEGIN, "BEGIN")                                                                         \
    S(BEGIN_WRITE, "BEGIN IMMEDIATE")                                                         \
    S(COMMIT, "COMMIT")                                                                       \
    S(ROLLBACK, "ROLLBACK")                                                                   \
    S(DATA_VERSION, "PRAGMA data_version")                                                    \
    S(BUILD_KEYS, "SELECT key FROM build ORDER BY key")                                       \
    S(BACKUP, "VACUUM INTO ?1")                                                               \
    S(BUILDS, "SELECT b.key, b.name, b.state, b.units, b.due, b.budget,"                      \
              " (SELECT coalesce(sum(amount), 0) FROM spend WHERE build = b.key),"            \
              " s.digest, s.estimate, s.steps_done, s.steps_total, s.next_step, s.missing"    \
              " FROM build b LEFT JOIN summary s ON s.build = b.key ORDER BY b.key")          \
    S(NAMESAKE, "SELECT 1 FROM build WHERE name = ?1 AND key <> ?2 LIMIT 1")                  \
    S(SUMMARY_PUT,                                                                            \
      "INSERT INTO summary SELECT ?1, ?2, ?3, ?4, ?5, ?6, ?7"                                 \
      " WHERE EXISTS (SELECT 1 FROM build WHERE key = ?1)"                                    \
      " ON CONFLICT (build) DO UPDATE SET digest = ?2, estimate = ?3, steps_done = ?4,"       \
      " steps_total = ?5, next_step = ?6, missing = ?7 WHERE (digest, estimate, steps_done,"  \
      " steps_total, next_step, missing) IS NOT (?2, ?3, ?4, ?5, ?6, ?7)")                    \
    S(DROP_UNDONE, "DELETE FROM history WHERE undone = 1")                                    \
    S(RECORD,                                                                                 \
      "INSERT INTO history SELECT coalesce(max(sequence), 0) + 1, 0, ?1, ?2, unixepoch(), ?3" \
      " FROM history")                                                                        \
    S(TRIM, "DELETE FROM history WHERE sequence <= (SELECT max(sequence) FROM history) - ?1") \
    S(NEXT_UNDO, "SELECT sequence, label, build, changeset FROM history"                      \
                 " WHERE undone = 0 ORDER BY sequence DESC LIMIT 1")                          \
    S(NEXT_REDO, "SELECT sequence, label, build, changeset FROM history"                      \
                 " WHERE undone = 1 ORDER BY sequence LIMIT 1")                               \
    S(MARK, "UPDATE history SET undone = ?2 WHERE sequence = ?1")
/* clang-format on */

enum statement {
#define STATEMENT_ENUM(name, sql) STATEMENT_##name,
    STATEMENTS(STATEMENT_ENUM)
#undef STATEMENT_ENUM
        STATEMENT_COUNT
};

/* What is done with the rows of an entity's table; see row.c. */
enum row_verb { ROW_SELECT, ROW_INSERT, ROW_UPDATE, ROW_DELETE, ROW_VERBS };

struct store {
    sqlite3 *db;
    char *path;
    const char *vfs;      /* NULL: the system's */
    enum fault read_only; /* FAULT_NONE, NEWER, REFUSED or DAMAGED */
    bool is_checked;      /* looked through for damage */
    int patience;         /* ms */
    int64_t seen;         /* data_version of what the caller knows */
    int depth;
    const char *opened_at;
    sqlite3_session *session; /* records the open action */
    sqlite3_stmt *statements[STATEMENT_COUNT];
    sqlite3_stmt *rows[ENTITY_build + 1][ROW_VERBS];
};

/* How a store is opened; a test gives its own. */
struct store_options {
    const char *vfs;          /* NULL: the system's */
    int patience;             /* ms that another program may hold the file */
    const char *const *steps; /* SQL that leads from version i to i + 1 */
    int step_count;           /* the version that this program makes */
    bool damaged;             /* only read what can be read, whatever is damaged */
};

extern const char *const store_steps[]; /* from schema/, by embed.py */
extern const int store_step_count;

/*
 * What all steps lead to, in the order of check_schema, up to a row of NULL. Running them takes as
 * long as all else at opening together, since each column added makes SQLite read the schema anew.
 * No rows where they could not be worked out when the program was built.
 */
struct schema_row {
    const char *told; /* "table box box CREATE TABLE box (..." */
    const char *sql;  /* within it; "" of what SQLite makes by itself */
};
extern const struct schema_row store_schema[];

/* Whether a version is the one whose rows those are. */
bool schema_is_known(const struct store_options *options, int64_t version);

enum fault store_open_with(struct store **ret_store, const char *path,
                           const struct store_options *options, struct fault_note *note);

/* ---- fault.c ---- */

/* The fault for a result of SQLite that is not the one that was hoped for, said in the maker's
 * words. `store` is the one whose connection gave it. */
enum fault store_say(const struct store *store, int result, struct fault_note *note);

/* ---- statement.c ---- */

enum fault store_statement(struct store *store, enum statement which, sqlite3_stmt **ret_statement,
                           struct fault_note *note);

/* Prepares into `*slot` unless it is prepared already. */
enum fault store_prepare(struct store *store, const char *sql, sqlite3_stmt **slot,
                         struct fault_note *note);

/* Binds parameters one after the other; the first failure is kept and found by binder_run. */
struct binder {
    sqlite3_stmt *statement;
    int count;
    int result;
};

/* For a statement that nobody is stepping through. */
struct binder binder_start(sqlite3_stmt *statement);
void bind_whole(struct binder *binder, int64_t value);
void bind_reference(struct binder *binder, int64_t key); /* 0 is NULL */

/* Not copied: they must outlive the run. There is at least one byte. */
void bind_string(struct binder *binder, const char *string);
void bind_bytes(struct binder *binder, const void *bytes, int size);

/* Runs a statement that gives no rows, and lets go of its parameters. */
enum fault binder_run(struct store *store, struct binder *binder, struct fault_note *note);

/* Whether a query gives a row, and lets go of its parameters. */
enum fault binder_finds(struct store *store, struct binder *binder, bool *ret_found,
                        struct fault_note *note);

/* Runs a statement without parameters and rows. */
enum fault store_run(struct store *store, enum statement which, struct fault_note *note);

/* One step of a query: whether it came to a row. The caller resets the statement when done. */
enum fault store_step(struct store *store, sqlite3_stmt *statement, bool *ret_row,
                      struct fault_note *note);

/* Text of a row; FAULT_DAMAGED when it is no text, no UTF-8 or holds a NUL. It lives until the next
 * step. */
enum fault column_string(sqlite3_stmt *statement, int column, const char **ret_string,
                         struct fault_note *note);

/* The value of a word, which `called` names in the note. A word that is not known was written by a
 * newer version, which is NEWER, or by nobody, which is DAMAGED. */
enum fault store_read_word(const struct store *store, const struct words *words, const char *called,
                           const char *word, int64_t *ret_value, struct fault_note *note);

/* The first column of the first row of a query that is asked once, as at opening. */
enum fault store_ask_whole(struct store *store, const char *sql, int64_t *ret_value,
                           struct fault_note *note);

/* A script or a PRAGMA. */
enum fault store_execute(struct store *store, const char *sql, struct fault_note *note);

/* ---- transaction.c ---- */

/* Begins a transaction, or nests in the open one. `where` is __func__. */
enum fault store_begin(struct store *store, const char *where, struct fault_note *note);

/* Ends what store_begin or store_write_begin began: the outermost commits when `fault` is
 * FAULT_NONE, else takes back. Returns `fault`, or why it could not be committed. */
enum fault store_end(struct store *store, enum fault fault, struct fault_note *note);

/* The same for a write: takes the file's write lock at once. Faults: what store_read_only says,
 * DAMAGED, CHANGED. */
enum fault store_write_begin(struct store *store, const char *where, struct fault_note *note);

/* A write that becomes an action of the history: begins it and starts recording; ends it, and
 * records what was done. */
enum fault store_action_begin(struct store *store, const char *where, struct fault_note *note);
enum fault store_action_end(struct store *store, enum fault fault, int64_t build, const char *label,
                            struct fault_note *note);

/* Forgets what was recorded, if anything was. */
void store_stop_recording(struct store *store);

/* A number that changes when another connection writes to the file. */
enum fault store_data_version(struct store *store, int64_t *ret_version, struct fault_note *note);

/* ---- load.c ---- */

/* As store_peek; with `lost`, rows that cannot be read are left out and counted there. */
enum fault load_rows(struct store *store, int64_t build, struct model *model, struct arena *arena,
                     size_t *lost, struct fault_note *note);

/* ---- row.c ---- */

/* Whether the entity's rows belong to a build and have two key columns. */
bool row_is_of_build(const struct entity *entity);

/* The statement of an entity's table. SELECT gives the key and then the fields, in key order. */
enum fault row_statement(struct store *store, const struct entity *entity, enum row_verb verb,
                         sqlite3_stmt **ret_statement, struct fault_note *note);

/* Inserts, updates or deletes the row of an item. `build` counts where the row is of a build. */
enum fault row_write(struct store *store, const struct entity *entity, enum row_verb verb,
                     int64_t build, const void *item, struct fault_note *note);

/* ---- opening, by file; open.c says in which order ---- */

/*
 * check.c. The first asks the header's bytes: FOREIGN for what is not ours, DAMAGED without a
 * version; a version above `newest` makes the store read-only (NEWER). The second compares the
 * schema word by word with this program's of that version: FOREIGN where it differs. The third
 * looks through rows and references: DAMAGED. The last asks whether the end of the file is missing
 * (DAMAGED), after a first read, which takes back what an interrupted write left.
 */
enum fault check_header(struct store *store, int newest, struct fault_note *note);
enum fault check_schema(struct store *store, const struct store_options *options,
                        struct fault_note *note);
enum fault check_content(struct store *store, struct fault_note *note);
enum fault check_size(struct store *store, struct fault_note *note);

/* create.c. Makes a file with a standard workshop at `path`, whole or not at all. A file that is
 * there by then is kept, and is no fault. */
enum fault create_file(const char *path, const struct store_options *options,
                       struct fault_note *note);

/* migrate.c. Brings an older file up to date, after a backup; every step that was done is kept
 * when a later one fails. */
enum fault migrate(struct store *store, const struct store_options *options,
                   struct fault_note *note);

/* open.c. Connects a store to a file, hardened against what the file may hold; nothing of it is
 * read yet. On a fault store->db still has to be closed. Then the settings that need a first read.
 */
enum fault connect_file(struct store *store, const char *path, const struct store_options *options,
                        struct fault_note *note);
enum fault settle_connection(struct store *store, struct fault_note *note);

/* ---- uses.c ---- */

/* REFERENCE, and names a build that uses what the open transaction is about to delete. */
enum fault say_still_used(struct store *store, struct fault_note *note);

#endif
