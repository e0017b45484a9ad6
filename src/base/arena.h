/*
 * An arena: memory that is handed out piece by piece and given back all at once.
 *
 * A plan lives in one arena and dies in one call; so does a model. Pure code (the engine) arms an
 * escape before it starts, and an arena that cannot grow leaves through it, so that the engine
 * reads without a test at every allocation:
 *
 *     jmp_buf escape;
 *     arena->escape = &escape;
 *     if (setjmp(escape)) { arena->escape = NULL; return FAULT_MEMORY; }
 *
 * Without an escape arena_alloc returns NULL, for code that holds other resources (statements,
 * files) while it allocates.
 */
#ifndef BASE_ARENA_H
#define BASE_ARENA_H

#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>

struct arena_block;

struct arena {
    struct arena_block *blocks; /* newest first */
    struct arena_block *spare;  /* of the use before, in the order they were taken */
    jmp_buf *escape;            /* where to go when memory is out; NULL: return NULL */
    size_t taken;               /* bytes of the blocks in use, for the memory budget */
};

void arena_init(struct arena *arena);

/* Gives everything back and leaves the arena as after arena_init. NULL-safe. */
void arena_release(struct arena *arena);

/*
 * The same, but the arena keeps its blocks for what comes next: what is made again and again, about
 * as large each time, costs the system no new pages. What the use before had kept and this one did
 * not need goes back. NULL-safe. O(blocks).
 */
void arena_reset(struct arena *arena);

/* False where the compiler looks for stale pointers: arena_reset is arena_release there, since only
 * a block that went back is known to be gone. */
extern const bool arena_keeps_blocks;

/* Zeroed, aligned for any type. A size of 0 gives a valid pointer. On exhaustion: see above.
 * Amortised O(size). */
void *arena_alloc(struct arena *arena, size_t size);

/* The same, but with whatever lay there: for what is written before it is read. O(1). */
void *arena_raw(struct arena *arena, size_t size);

/* arena_alloc for `count` items of `size` bytes; a product that overflows counts as exhaustion. */
void *arena_array(struct arena *arena, size_t count, size_t size);

/* A copy of a text (NULL gives ""), and a formatted one. */
char *arena_text(struct arena *arena, const char *text);
char *arena_format(struct arena *arena, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
char *arena_format_list(struct arena *arena, const char *format, va_list arguments)
    __attribute__((format(printf, 2, 0)));

/*
 * Runs `work` with an escape armed; false when memory ran out in it. What it had taken by then
 * stays the arena's. An escape that was armed before is armed again afterwards.
 */
bool arena_try(struct arena *arena, void (*work)(void *context), void *context);

#define ARENA_NEW(arena, type) ((type *)arena_alloc((arena), sizeof(type)))
#define ARENA_MANY(arena, type, count) ((type *)arena_array((arena), (count), sizeof(type)))

#endif
