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
 * Readable for whom the umask lets read. Where the name is taken, the file is replaced, or else it
 * is FAULT_DUPLICATE, whoever took it when. FAULT_FULL, FAULT_IO with the reason; no temporary file
 * is left.
 */
enum fault deliver_file(const char *path, const void *bytes, size_t count, bool replace,
                        struct fault_note *note);

/* The last of these steps alone: gives a file that is written and synced its name. On a fault it
 * still has the temporary one. */
enum fault deliver_name(const char *temporary, const char *path, bool replace,
                        struct fault_note *note);

/* Makes what happened to names in the folder of `path` last. File systems that cannot are
 * forgiven. */
enum fault deliver_sync_folder(const char *path, struct fault_note *note);

#endif
