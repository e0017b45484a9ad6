/*
 * A JSON text that was read, with the place where each value stands, so that a fault can name line,
 * column and path. Nothing here knows furniture.
 */
#ifndef EXCHANGE_SOURCE_H
#define EXCHANGE_SOURCE_H

#include "base/arena.h"
#include "base/fault.h"
#include "base/list.h"

#include <stddef.h>
#include <stdint.h>

/* The longest text that is taken in. */
#define SOURCE_MOST ((size_t)16 << 20)

enum source_kind {
    SOURCE_NULL,
    SOURCE_FALSE,
    SOURCE_TRUE,
    SOURCE_WHOLE, /* a number without point and exponent */
    SOURCE_DECIMAL,
    SOURCE_STRING,
    SOURCE_ARRAY,
    SOURCE_OBJECT
};

struct source_place {
    int line;   /* from 1 */
    int column; /* in characters, from 1 */
};

/* Values stand in the order of the text; 0 as an index means none, since the first is the root. */
struct source_value {
    enum source_kind kind;
    uint32_t at; /* its bytes: at, length; of a string with its quotes; containers: length 0 */
    uint32_t length;
    struct source_place place;
    uint32_t key_at; /* its key, as the bytes of a string; length 0 in an array */
    uint32_t key_length;
    struct source_place key_place;
    uint32_t parent;
    uint32_t first; /* of its members */
    uint32_t next;  /* member of the same container */
    uint32_t index; /* which member it is, from 0 */
};

struct source {
    const char *bytes; /* not owned */
    size_t length;
    struct arena *arena;
    LIST_OF(struct source_value) values; /* the root is the first */
};

/*
 * Reads `bytes`, which stay the caller's and must outlast the source; the values lie in the arena,
 * which has an escape armed. Faults: SYNTAX with the line and column where reading stopped (also
 * for broken UTF-8, a NUL, a number that no machine holds, more nesting than 2048), REFUSED for a
 * text over SOURCE_MOST, MEMORY. O(length). Like source_string and source_key it must not run in
 * two threads at once: the library that reads JSON has one allocator for all.
 */
enum fault source_read(struct source *source, struct arena *arena, const char *bytes, size_t length,
                       struct fault_note *note);

/* The first member and the one after a member; NULL when there is none. */
const struct source_value *source_first(const struct source *source,
                                        const struct source_value *container);
const struct source_value *source_next(const struct source *source,
                                       const struct source_value *member);

/* The characters of a string, or of a value's key, in the source's arena. */
const char *source_string(const struct source *source, const struct source_value *value);
const char *source_key(const struct source *source, const struct source_value *value);

/* The bytes of a number, true, false or null, in the source's arena. */
const char *source_token(const struct source *source, const struct source_value *value);

/* "boxes[2].width", members counted from 0; "" for the root. Cut with "..." in front where it is
 * longer than `size`. Returns buffer. */
char *source_path(const struct source *source, const struct source_value *value, char *buffer,
                  size_t size);

/* "a text", "a list": what a value is, for people. */
const char *source_kind_words(enum source_kind kind);

#endif
