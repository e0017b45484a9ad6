/*
 * A new file is made whole under a temporary name beside its own and then linked to it: a name
 * never stands for half a file, and a file that another program made meanwhile is kept.
 */
#include "store/internal.h"

#include "base/deliver.h"

#include <assert.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* The standard workshop has no text of its own, so making it takes no memory of the arena. */
static enum fault write_workshop(struct store *store, struct fault_note *note)
{
    struct arena none;
    struct model model;

    arena_init(&none);
    model_init(&model, &none);
    assert(none.taken == 0);
    return row_write(store, entity_of(ENTITY_workshop), ROW_INSERT, 0, &model.workshop, note);
}

/* Tables first: an index is on one. The pragmas are those of the steps. */
static enum fault make_known(struct store *store, struct fault_note *note)
{
    char pragmas[120];
    enum fault fault = FAULT_NONE;

    for (int index = 0; index < 2; index++)
        for (const struct schema_row *row = store_schema; row->told && !fault; row++)
            if (*row->sql && (strncmp(row->told, "table", 5) != 0) == index)
                fault = store_execute(store, row->sql, note);
    snprintf(pragmas, sizeof pragmas, "PRAGMA application_id = %ld; PRAGMA user_version = %d",
             (long)STORE_APPLICATION, store_step_count);
    return fault ? fault : store_execute(store, pragmas, note);
}

static enum fault make_tables(struct store *store, const struct store_options *options,
                              struct fault_note *note)
{
    enum fault fault = FAULT_NONE;

    if (schema_is_known(options, options->step_count))
        return make_known(store, note);
    for (int i = 0; i < options->step_count && !fault; i++)
        fault = store_execute(store, options->steps[i], note);
    return fault;
}

static enum fault fill(struct store *store, const struct store_options *options,
                       struct fault_note *note)
{
    enum fault fault = store_begin(store, __func__, note);

    if (fault)
        return fault;
    fault = make_tables(store, options, note);
    if (!fault)
        fault = write_workshop(store, note);
    return store_end(store, fault, note);
}

/* A file that another program made meanwhile keeps the name: that is no fault. */
static enum fault give_name(const char *temporary, const char *path, struct fault_note *note)
{
    enum fault fault = deliver_name(temporary, path, false, note);

    if (fault && fault != FAULT_DUPLICATE)
        return fault;
    return deliver_sync_folder(path, note);
}

enum fault create_file(const char *path, const struct store_options *options,
                       struct fault_note *note)
{
    char temporary[PATH_MAX + 16];
    char journal[PATH_MAX + 32]; /* stays behind where SQLite could not delete it */
    struct store store = {.is_checked = true};
    enum fault fault;
    int file;

    snprintf(temporary, sizeof temporary, "%s.new-XXXXXX", path);
    file = mkstemp(temporary);
    if (file < 0)
        return fault_say(note, FAULT_IO, "cannot be made: %s", strerror(errno));
    close(file);
    snprintf(journal, sizeof journal, "%s-journal", temporary);
    fault = connect_file(&store, temporary, options, note);
    if (!fault)
        fault = settle_connection(&store, note);
    if (!fault)
        fault = fill(&store, options, note);
    for (int i = 0; i < STATEMENT_COUNT; i++)
        sqlite3_finalize(store.statements[i]);
    sqlite3_finalize(store.rows[ENTITY_workshop][ROW_INSERT]);
    sqlite3_close(store.db);
    if (!fault)
        fault = give_name(temporary, path, note);
    unlink(temporary);
    unlink(journal);
    return fault;
}
