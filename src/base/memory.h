/*
 * The one door to the heap. A test can replace the source and fail the n-th request.
 */
#ifndef BASE_MEMORY_H
#define BASE_MEMORY_H

#include <stddef.h>

struct memory_source {
    void *(*resize)(void *block, size_t size); /* as realloc; NULL when there is none left */
    void (*release)(void *block);              /* as free */
};

/* Makes `source` the one in use (NULL: the C library's) and returns the one before. Not for use
 * while blocks are out. */
const struct memory_source *memory_use(const struct memory_source *source);

/* As realloc and free, from the source in use. memory_resize(NULL, n) allocates; a size of 0 is
 * treated as 1. */
void *memory_resize(void *block, size_t size);
void memory_release(void *block);

#endif
