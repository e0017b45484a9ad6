/*
 * A disk that fails on command: a VFS of SQLite, named "disk", over the system's.
 *
 * What is written to a file stays in memory until the file is synced or closed, as on a real
 * machine. A crash lets a random half of that reach the disk, some writes torn at 512 bytes; after
 * it nothing works until disk_heal. Deleting a file is immediate. Nothing is truly synced: the
 * machine under the test does not crash.
 */
#ifndef FAULTS_DISK_H
#define FAULTS_DISK_H

#include <stdbool.h>
#include <stdint.h>

#define DISK_VFS "disk"

enum disk_fault {
    DISK_WELL,
    DISK_ERROR,   /* one operation fails */
    DISK_BROKEN,  /* from one operation on all fail */
    DISK_FULL,    /* one write finds no room; other operations go well */
    DISK_STUFFED, /* from one on no write finds room */
    DISK_CRASH
};

void disk_register(void);

/* From now on, counts openings, writes, syncs, truncations and deletions; the `at`-th (from 1)
 * fails. */
void disk_arm(enum disk_fault fault, long at, uint64_t seed);
void disk_heal(void);

/* Since disk_arm. */
long disk_operations(void);

#endif
