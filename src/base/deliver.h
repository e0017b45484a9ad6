/*
 * Files that appear whole or not at all: the bytes go to a temporary file beside the name, are
 * synced, and take the name in one step. A full disk leaves what was there.
 */
#ifndef BASE_DELIVER_H
#define BASE_DELIVER_H

#include "base/fault.h"

#include <stdbool.h>
#include <stddef.h>

/*
 * Writes `count` bytes to the file at `path`; whom the umask lets read may read it. A file that
 * has the name already is replaced; without `replace` it is kept, and that is FAULT_DUPLICATE.
 * Other faults: FULL, IO, with the reason. After a fault no temporary file is left, and the name
 * stands for what it stood for (but where only syncing the folder failed: then for the new file).
 */
enum fault deliver_file(const char *path, const void *bytes, size_t count, bool replace,
                        struct fault_note *note);

/* The last step alone: gives its name to a file that is written and synced. On a fault the file
 * still has the temporary name. */
enum fault deliver_name(const char *temporary, const char *path, bool replace,
                        struct fault_note *note);

/* Syncs the folder of `path`, so that a new name survives a power cut. A file system that cannot
 * do that is no fault. */
enum fault deliver_sync_folder(const char *path, struct fault_note *note);

#endif
