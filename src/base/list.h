/*
 * A growing array in an arena.
 *
 *     LIST_OF(struct member) members = { 0 };
 *     struct member *rail = LIST_ADD(arena, &members);
 *
 * Every list has the layout of `struct list`: code that handles all kinds alike uses its member
 * `any`.
 */
#ifndef BASE_LIST_H
#define BASE_LIST_H

#include "base/arena.h"

#include <stdbool.h>
#include <stddef.h>

struct list {
    void *at;
    size_t count;
    size_t room;
};

#define LIST_OF(type)     \
    union {               \
        struct list any;  \
        struct {          \
            type *at;     \
            size_t count; \
            size_t room;  \
        };                \
    }

/*
 * Appends one zeroed element and gives its address; pointers into the list are stale after it. The
 * arena needs an armed escape: use list_reserve first where it has none.
 */
#define LIST_ADD(arena, list) \
    (list_reserve((arena), &(list)->any, sizeof *(list)->at), &(list)->at[(list)->count++])

/* Makes room for one more element of `size` bytes, zeroed. False when memory is out and the arena
 * has no escape. */
bool list_reserve(struct arena *arena, struct list *list, size_t size);

/* Makes room for `count` elements in all, where that is known before: nothing is left behind by
 * growing. False as above. */
bool list_make_room(struct arena *arena, struct list *list, size_t count, size_t size);

/* Takes the element at `index` out; the rest moves down. `size` is that of an element. */
void list_remove(struct list *list, size_t index, size_t size);

#endif
