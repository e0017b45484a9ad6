/*
 * Blocks in a list, the newest first; memory is taken from the front block.
 *
 *  1. Only the front block is filled up; what is left in the others is given up.
 *  2. Blocks grow with the arena, up to a limit, so that their number stays small at both ends.
 *  3. A piece larger than half a block gets a block of its own behind the front one, so that it
 *     does not cost the room left there.
 *  4. used <= room in each block, and `used` is a multiple of the alignment.
 *  5. A spare block is used where one of its size is wanted, never for much less: the same use
 *     again finds each block where it needs it.
 */
#include "base/arena.h"

#include "base/memory.h"

#include <assert.h>
#include <stdalign.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#define BLOCK_LEAST ((size_t)4096)
#define BLOCK_MOST ((size_t)256 * 1024)
#define ALIGNMENT alignof(max_align_t)

struct arena_block {
    struct arena_block *next;
    size_t room;
    size_t used;
    alignas(max_align_t) unsigned char bytes[];
};

#if defined(__SANITIZE_ADDRESS__)
const bool arena_keeps_blocks = false;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
const bool arena_keeps_blocks = false;
#else
const bool arena_keeps_blocks = true;
#endif
#else
const bool arena_keeps_blocks = true;
#endif

void arena_init(struct arena *arena)
{
    *arena = (struct arena){0};
}

static void release_all(struct arena_block *block)
{
    while (block) {
        struct arena_block *next = block->next;

        memory_release(block);
        block = next;
    }
}

void arena_release(struct arena *arena)
{
    if (!arena)
        return;
    release_all(arena->blocks);
    release_all(arena->spare);
    arena_init(arena);
}

void arena_reset(struct arena *arena)
{
    struct arena_block *spare = NULL;

    if (!arena || !arena_keeps_blocks) {
        arena_release(arena);
        return;
    }
    while (arena->blocks) {
        struct arena_block *block = arena->blocks;

        arena->blocks = block->next;
        block->next = spare;
        spare = block;
    }
    release_all(arena->spare);
    arena_init(arena);
    arena->spare = spare;
}

static void *give_up(const struct arena *arena)
{
    if (arena->escape)
        longjmp(*arena->escape, 1);
    return NULL;
}

/* A spare block of at least `room`, taken out of their list; NULL when none is near it. */
static struct arena_block *take_spare(struct arena *arena, size_t room)
{
    for (struct arena_block **link = &arena->spare; *link; link = &(*link)->next) {
        struct arena_block *block = *link;

        if (block->room >= room && block->room / 2 <= room) {
            *link = block->next;
            return block;
        }
    }
    return NULL;
}

static struct arena_block *new_block(struct arena *arena, size_t room)
{
    struct arena_block *block = take_spare(arena, room);

    if (!block) {
        block = memory_resize(NULL, sizeof *block + room);
        if (!block)
            return NULL;
        block->room = room;
    }
    block->used = 0;
    return block;
}

static struct arena_block *add_block(struct arena *arena, size_t room, bool in_front)
{
    struct arena_block *block = new_block(arena, room);
    struct arena_block **link = &arena->blocks;

    if (!block)
        return NULL;
    if (!in_front && *link)
        link = &(*link)->next;
    block->next = *link;
    *link = block;
    arena->taken += sizeof *block + block->room;
    return block;
}

/* A block with at least `size` bytes left; NULL when memory is out. */
static struct arena_block *find_block(struct arena *arena, size_t size)
{
    struct arena_block *front = arena->blocks;
    size_t room = arena->taken;

    if (front && front->room - front->used >= size)
        return front;
    if (room < BLOCK_LEAST)
        room = BLOCK_LEAST;
    if (room > BLOCK_MOST)
        room = BLOCK_MOST;
    return size > room / 2 ? add_block(arena, size, false) : add_block(arena, room, true);
}

void *arena_raw(struct arena *arena, size_t size)
{
    size_t whole = (size + ALIGNMENT - 1) / ALIGNMENT * ALIGNMENT;
    struct arena_block *block;
    void *piece;

    if (size > PTRDIFF_MAX / 2)
        return give_up(arena);
    if (whole == 0)
        whole = ALIGNMENT;
    block = find_block(arena, whole);
    if (!block)
        return give_up(arena);
    assert(block->room - block->used >= whole);
    piece = block->bytes + block->used;
    block->used += whole;
    assert(block->used % ALIGNMENT == 0);
    return piece;
}

void *arena_alloc(struct arena *arena, size_t size)
{
    void *piece = arena_raw(arena, size);

    return piece ? memset(piece, 0, size) : NULL;
}

void *arena_array(struct arena *arena, size_t count, size_t size)
{
    if (size > 0 && count > SIZE_MAX / size)
        return give_up(arena);
    return arena_alloc(arena, count * size);
}

char *arena_text(struct arena *arena, const char *text)
{
    size_t length = text ? strlen(text) : 0;
    char *copy = arena_alloc(arena, length + 1);

    if (copy && text)
        memcpy(copy, text, length + 1);
    return copy;
}

char *arena_format_list(struct arena *arena, const char *format, va_list arguments)
{
    va_list again;
    char *text;
    int length;

    va_copy(again, arguments);
    length = vsnprintf(NULL, 0, format, again);
    va_end(again);
    if (length < 0)
        return give_up(arena);
    text = arena_alloc(arena, (size_t)length + 1);
    if (text)
        vsnprintf(text, (size_t)length + 1, format, arguments);
    return text;
}

/* The escape is taken only after va_end, which C asks for before the function is left. */
char *arena_format(struct arena *arena, const char *format, ...)
{
    jmp_buf *escape = arena->escape;
    va_list arguments;
    char *text;

    arena->escape = NULL;
    va_start(arguments, format);
    text = arena_format_list(arena, format, arguments);
    va_end(arguments);
    arena->escape = escape;
    return text ? text : give_up(arena);
}

bool arena_try(struct arena *arena, void (*work)(void *context), void *context)
{
    jmp_buf escape;
    jmp_buf *before = arena->escape;

    if (setjmp(escape)) {
        arena->escape = before;
        return false;
    }
    arena->escape = &escape;
    work(context);
    arena->escape = before;
    return true;
}
