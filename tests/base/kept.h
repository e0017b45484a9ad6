/* Whole files for tests, and files of the tree that are kept beside what the program makes. */
#ifndef KEPT_H
#define KEPT_H

#include "base/text.h"

/* Adds the bytes of a file; one that cannot be read fails the test. */
void file_take(struct text *out, const char *path);

/* Write a file anew; what cannot be written fails the test. */
void file_put(const char *path, const char *string);
void file_put_bytes(const char *path, const char *bytes, size_t size);

/*
 * The file says what was made, row by row, or the test fails and prints the rows that differ. Where
 * the variable of the environment says "write" the file is written instead.
 */
void kept_assert(const char *path, const char *made, const char *variable);

/* Whether the variable says so. */
bool kept_is_written(const char *variable);

#endif
