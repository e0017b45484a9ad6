#include "disk.h"

#include <sqlite3.h>

#include <stdlib.h>
#include <string.h>

enum { SECTOR = 512 };

/* A write or a truncation that the disk has not seen yet. */
struct pending {
    struct pending *next;
    sqlite3_int64 offset;
    int size; /* of bytes; -1: truncate to offset */
    unsigned char bytes[];
};

struct disk_file {
    sqlite3_file base;
    sqlite3_file *real;
    struct disk_file *next;
    struct pending *first;
    struct pending **last;
    sqlite3_int64 size; /* as SQLite sees it */
};

static struct {
    sqlite3_vfs vfs;
    sqlite3_vfs *real;
    struct disk_file *files;
    enum disk_fault fault;
    long at;
    long operations;
    bool is_dead;
    uint64_t seed;
} disk;

static int roll(int sides)
{
    disk.seed = disk.seed * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
    return (int)((disk.seed >> 33) % (uint64_t)sides);
}

/* ---- what is pending ---- */

static void perform(struct disk_file *file, const struct pending *pending, int size)
{
    if (pending->size < 0)
        file->real->pMethods->xTruncate(file->real, pending->offset);
    else
        file->real->pMethods->xWrite(file->real, pending->bytes, size, pending->offset);
}

static void drop(struct disk_file *file)
{
    while (file->first) {
        struct pending *pending = file->first;

        file->first = pending->next;
        free(pending);
    }
    file->last = &file->first;
}

static void flush(struct disk_file *file)
{
    for (const struct pending *pending = file->first; pending; pending = pending->next)
        perform(file, pending, pending->size);
    drop(file);
}

/* Half arrives whole, a tenth torn, the rest never. */
static void lose_some(struct disk_file *file)
{
    for (const struct pending *pending = file->first; pending; pending = pending->next) {
        int fate = roll(10);

        if (fate < 5)
            perform(file, pending, pending->size);
        else if (fate < 6 && pending->size > SECTOR)
            perform(file, pending, SECTOR * (1 + roll(pending->size / SECTOR)));
    }
    drop(file);
}

static int add(struct disk_file *file, sqlite3_int64 offset, const void *bytes, int size)
{
    struct pending *pending = malloc(sizeof *pending + (size > 0 ? (size_t)size : 0));

    if (!pending)
        return SQLITE_IOERR_NOMEM;
    *pending = (struct pending){.offset = offset, .size = size};
    if (size > 0)
        memcpy(pending->bytes, bytes, (size_t)size);
    *file->last = pending;
    file->last = &pending->next;
    return SQLITE_OK;
}

/* ---- faults ---- */

/* Whether the operation that comes now is the one, or after the one from which on all are. */
static bool is_struck(void)
{
    bool for_good = disk.fault == DISK_BROKEN || disk.fault == DISK_STUFFED;

    disk.operations++;
    return disk.fault != DISK_WELL &&
           (disk.operations == disk.at || (for_good && disk.operations > disk.at));
}

static int operate(bool is_write, int error)
{
    if (disk.is_dead)
        return error;
    if (!is_struck())
        return SQLITE_OK;
    if (disk.fault == DISK_FULL || disk.fault == DISK_STUFFED)
        return is_write ? SQLITE_FULL : SQLITE_OK;
    if (disk.fault == DISK_CRASH) {
        for (struct disk_file *file = disk.files; file; file = file->next)
            lose_some(file);
        disk.is_dead = true;
    }
    return error;
}

void disk_arm(enum disk_fault fault, long at, uint64_t seed)
{
    disk.fault = fault;
    disk.at = at;
    disk.operations = 0;
    disk.seed = seed;
}

void disk_heal(void)
{
    disk.fault = DISK_WELL;
    disk.is_dead = false;
}

long disk_operations(void)
{
    return disk.operations;
}

/* ---- the methods of a file ---- */

static int file_close(sqlite3_file *base)
{
    struct disk_file *file = (struct disk_file *)base;
    struct disk_file **link = &disk.files;

    if (disk.is_dead)
        drop(file);
    else
        flush(file);
    while (*link != file)
        link = &(*link)->next;
    *link = file->next;
    int result = file->real->pMethods->xClose(file->real);
    free(file->real);
    return result;
}

/* Lays what is pending over what was read. */
static void overlay(const struct disk_file *file, unsigned char *bytes, int size,
                    sqlite3_int64 offset)
{
    for (const struct pending *pending = file->first; pending; pending = pending->next) {
        bool is_cut = pending->size < 0;
        sqlite3_int64 from = pending->offset > offset ? pending->offset : offset;
        sqlite3_int64 end = offset + size;

        if (!is_cut && pending->offset + pending->size < end)
            end = pending->offset + pending->size;
        if (from >= end)
            continue;
        if (is_cut)
            memset(bytes + (from - offset), 0, (size_t)(end - from));
        else
            memcpy(bytes + (from - offset), pending->bytes + (from - pending->offset),
                   (size_t)(end - from));
    }
}

static int file_read(sqlite3_file *base, void *bytes, int size, sqlite3_int64 offset)
{
    struct disk_file *file = (struct disk_file *)base;

    if (disk.is_dead)
        return SQLITE_IOERR_READ;
    int result = file->real->pMethods->xRead(file->real, bytes, size, offset);
    if (!file->first || (result != SQLITE_OK && result != SQLITE_IOERR_SHORT_READ))
        return result;
    overlay(file, bytes, size, offset);
    return offset + size <= file->size ? SQLITE_OK : SQLITE_IOERR_SHORT_READ;
}

static int file_write(sqlite3_file *base, const void *bytes, int size, sqlite3_int64 offset)
{
    struct disk_file *file = (struct disk_file *)base;
    int result = operate(true, SQLITE_IOERR_WRITE);

    if (result == SQLITE_OK)
        result = add(file, offset, bytes, size);
    if (result == SQLITE_OK && offset + size > file->size)
        file->size = offset + size;
    return result;
}

static int file_truncate(sqlite3_file *base, sqlite3_int64 size)
{
    struct disk_file *file = (struct disk_file *)base;
    int result = operate(false, SQLITE_IOERR_TRUNCATE);

    if (result == SQLITE_OK)
        result = add(file, size, NULL, -1);
    if (result == SQLITE_OK)
        file->size = size;
    return result;
}

static int file_sync(sqlite3_file *base, int flags)
{
    int result = operate(false, SQLITE_IOERR_FSYNC);

    (void)flags;
    if (result == SQLITE_OK)
        flush((struct disk_file *)base);
    return result;
}

static int file_size(sqlite3_file *base, sqlite3_int64 *ret_size)
{
    if (disk.is_dead)
        return SQLITE_IOERR_FSTAT;
    *ret_size = ((struct disk_file *)base)->size;
    return SQLITE_OK;
}

static int file_lock(sqlite3_file *base, int level)
{
    struct disk_file *file = (struct disk_file *)base;

    if (disk.is_dead)
        return SQLITE_IOERR_LOCK;
    int result = file->real->pMethods->xLock(file->real, level);
    if (result == SQLITE_OK && !file->first)
        result = file->real->pMethods->xFileSize(file->real, &file->size);
    return result;
}

static int file_unlock(sqlite3_file *base, int level)
{
    struct disk_file *file = (struct disk_file *)base;

    return file->real->pMethods->xUnlock(file->real, level);
}

static int file_is_reserved(sqlite3_file *base, int *ret_reserved)
{
    struct disk_file *file = (struct disk_file *)base;

    return file->real->pMethods->xCheckReservedLock(file->real, ret_reserved);
}

/* Hints on the size would write behind our back. */
static int file_control(sqlite3_file *base, int operation, void *argument)
{
    struct disk_file *file = (struct disk_file *)base;

    if (operation == SQLITE_FCNTL_SIZE_HINT || operation == SQLITE_FCNTL_CHUNK_SIZE)
        return SQLITE_OK;
    return file->real->pMethods->xFileControl(file->real, operation, argument);
}

static int file_sector_size(sqlite3_file *base)
{
    (void)base;
    return SECTOR;
}

/* None: not even that a power cut leaves neighbouring bytes alone. */
static int file_characteristics(sqlite3_file *base)
{
    (void)base;
    return 0;
}

static const sqlite3_io_methods file_methods = {
    .iVersion = 1,
    .xClose = file_close,
    .xRead = file_read,
    .xWrite = file_write,
    .xTruncate = file_truncate,
    .xSync = file_sync,
    .xFileSize = file_size,
    .xLock = file_lock,
    .xUnlock = file_unlock,
    .xCheckReservedLock = file_is_reserved,
    .xFileControl = file_control,
    .xSectorSize = file_sector_size,
    .xDeviceCharacteristics = file_characteristics,
};

/* ---- the methods of the disk ---- */

static int disk_open(sqlite3_vfs *vfs, sqlite3_filename name, sqlite3_file *base, int flags,
                     int *ret_flags)
{
    struct disk_file *file = (struct disk_file *)base;

    (void)vfs;
    *file = (struct disk_file){.last = &file->first};
    if (operate(false, SQLITE_CANTOPEN) != SQLITE_OK)
        return SQLITE_CANTOPEN;
    file->real = calloc(1, (size_t)disk.real->szOsFile);
    if (!file->real)
        return SQLITE_NOMEM;
    int result = disk.real->xOpen(disk.real, name, file->real, flags, ret_flags);
    if (result == SQLITE_OK)
        result = file->real->pMethods->xFileSize(file->real, &file->size);
    if (result != SQLITE_OK) {
        free(file->real);
        return result;
    }
    file->base.pMethods = &file_methods;
    file->next = disk.files;
    disk.files = file;
    return SQLITE_OK;
}

static int disk_delete(sqlite3_vfs *vfs, const char *name, int sync)
{
    int result = operate(false, SQLITE_IOERR_DELETE);

    (void)vfs;
    return result == SQLITE_OK ? disk.real->xDelete(disk.real, name, sync) : result;
}

static int disk_access(sqlite3_vfs *vfs, const char *name, int flags, int *ret_found)
{
    (void)vfs;
    if (disk.is_dead)
        return SQLITE_IOERR_ACCESS;
    return disk.real->xAccess(disk.real, name, flags, ret_found);
}

/* What is left is the system's own: its functions want its own VFS as their first argument. */
static int disk_full_path(sqlite3_vfs *vfs, const char *name, int size, char *path)
{
    (void)vfs;
    return disk.real->xFullPathname(disk.real, name, size, path);
}

static int disk_random(sqlite3_vfs *vfs, int size, char *bytes)
{
    (void)vfs;
    return disk.real->xRandomness(disk.real, size, bytes);
}

static int disk_sleep(sqlite3_vfs *vfs, int microseconds)
{
    (void)vfs;
    return disk.real->xSleep(disk.real, microseconds);
}

static int disk_time(sqlite3_vfs *vfs, sqlite3_int64 *ret_time)
{
    (void)vfs;
    return disk.real->xCurrentTimeInt64(disk.real, ret_time);
}

static int disk_last_error(sqlite3_vfs *vfs, int size, char *text)
{
    (void)vfs;
    return disk.real->xGetLastError(disk.real, size, text);
}

void disk_register(void)
{
    disk.real = sqlite3_vfs_find(NULL);
    disk.vfs = (sqlite3_vfs){
        .iVersion = 2,
        .szOsFile = sizeof(struct disk_file),
        .mxPathname = disk.real->mxPathname,
        .zName = DISK_VFS,
        .xOpen = disk_open,
        .xDelete = disk_delete,
        .xAccess = disk_access,
        .xFullPathname = disk_full_path,
        .xRandomness = disk_random,
        .xSleep = disk_sleep,
        .xGetLastError = disk_last_error,
        .xCurrentTimeInt64 = disk_time,
    };
    sqlite3_vfs_register(&disk.vfs, 0);
}
