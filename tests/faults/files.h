/*
 * The program's own calls on files, each of which can fail on command: open, mkstemp, write, fsync,
 * fchmod, close, link and rename of whatever is linked with files_wrapped (tests/faults/meson.build
 * has the linker call these instead). Removing a file always goes well.
 */
#ifndef FAULTS_FILES_H
#define FAULTS_FILES_H

#include <stdbool.h>

/* From now on the `at`-th call (from 1) fails with the error, or with `for_good` all from it on. */
void files_arm(int at, int error, bool for_good);
void files_heal(void);

/* Since files_arm. */
int files_calls(void);

#endif
