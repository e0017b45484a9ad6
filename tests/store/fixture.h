/*
 * What the tests of the store share: a folder of their own, models made at random from the entity
 * tables, and digests that tell whether two states are the same. Everything fails the test rather
 * than return an error.
 */
#ifndef STORE_FIXTURE_H
#define STORE_FIXTURE_H

#include "dice.h"
#include "store/store.h"

#include <limits.h>
#include <stdint.h>

/* A new empty folder, and the path of a store in it that is not there yet. */
struct place {
    char folder[PATH_MAX - 64];
    char path[PATH_MAX];
};
void place_make(struct place *place);
void place_remove(struct place *place); /* with every file in it */
int place_files(const struct place *place);

/* An arena with an escape, which the model's functions ask for; memory does not run out here. */
void arena_make(struct arena *arena);

struct store *open_store(const char *path);

/* Opens a file as the next version would, whose step is the last one, on a file system of SQLite's
 * (NULL: the usual one). */
enum fault open_as_next(struct store **ret_store, const char *path, const char *vfs,
                        const char *step, struct fault_note *note);

/* An open store, its workshop as the file has it, and as it is to be saved. */
struct table {
    struct place place;
    struct store *store;
    struct arena arena;
    struct model before;
    struct model after;
};
void table_lay(struct table *table, struct store *store); /* a store in the table's place */
void table_clear(struct table *table);                    /* with all that lies in the place */

/* For the set-up and tear-down of a group of tests: the schema's tables, empty, in memory. */
extern struct sqlite3 *schema_db;
int schema_make(void **state);
int schema_drop(void **state);

/* Changes a model at random: adds, changes and removes up to `count` items of every floor of it;
 * what comes out passes model_check but for unique names. */
void edit_at_random(struct model *model, struct dice *dice, int count);

/* A workshop with some of everything and a build, by the dice; build.key is 0. */
void furnish(struct model *model, struct arena *arena, struct dice *dice);

/* The same for the same content. state_digest takes in the workshop, all builds, and what can be
 * undone and redone next. */
uint64_t model_digest(const struct model *model);
uint64_t state_digest(struct store *store);
uint64_t file_digest(const char *path);

/* Makes a store with two builds, a few actions old and one of them undone. */
void make_store(const char *path, struct dice *dice);
void place_with_store(struct place *place); /* a new folder with such a one */

void read_file(const char *path, unsigned char **ret_bytes, size_t *ret_size); /* free() it */
void write_file(const char *path, const void *bytes, size_t size);

/* Runs SQL on a file as another program would. */
void run_sql(const char *path, const char *sql);
int64_t ask_sql(const char *path, const char *sql);

#endif
