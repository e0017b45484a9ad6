#include "store/internal.h"

/* Extended results first: the first row that fits counts. `why` NULL: SQLite's own words. */
static const struct {
    int result;
    enum fault fault;
    const char *why;
} results[] = {
    {SQLITE_READONLY_DBMOVED, FAULT_CHANGED, "the file was moved, deleted or replaced by another"},
    {SQLITE_CONSTRAINT_FOREIGNKEY, FAULT_REFERENCE, "something that is in use would be gone"},
    {SQLITE_CANTOPEN_SYMLINK, FAULT_REFUSED, "is a symbolic link; name the file itself"},
    {SQLITE_BUSY, FAULT_LOCKED, "another program holds the file; try again when it is done"},
    {SQLITE_LOCKED, FAULT_LOCKED, "the file is in use here already"},
    {SQLITE_FULL, FAULT_FULL, "the disk is full; nothing was changed"},
    {SQLITE_NOMEM, FAULT_MEMORY, "out of memory; nothing was changed"},
    {SQLITE_CORRUPT, FAULT_DAMAGED, "the file is damaged; nothing is written to it"},
    {SQLITE_NOTADB, FAULT_DAMAGED, "the file is damaged; nothing is written to it"},
    {SQLITE_READONLY, FAULT_REFUSED, "there is no permission to write to the file"},
    {SQLITE_CONSTRAINT, FAULT_RANGE, NULL},
    {SQLITE_TOOBIG, FAULT_OVERFLOW, "too large to be stored"},
    {SQLITE_CANTOPEN, FAULT_IO, "the file, or its journal beside it, cannot be opened"},
};

enum fault store_say(const struct store *store, int result, struct fault_note *note)
{
    const char *own = store->db ? sqlite3_errmsg(store->db) : sqlite3_errstr(result);

    for (size_t i = 0; i < sizeof results / sizeof results[0]; i++)
        if (results[i].result == result || results[i].result == (result & 0xff))
            return fault_say(note, results[i].fault, "%s", results[i].why ? results[i].why : own);
    return fault_say(note, FAULT_IO, "%s (%d)", own, result);
}
