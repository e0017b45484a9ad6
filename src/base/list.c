#include "base/list.h"

#include <assert.h>
#include <stdint.h>
#include <string.h>

#define ROOM_LEAST ((size_t)8)

static unsigned char *element(const struct list *list, size_t index, size_t size)
{
    return (unsigned char *)list->at + index * size;
}

/* The old elements stay behind in the arena: together they are never larger than the new. Room that
 * is never used is never touched either. */
static bool grow(struct arena *arena, struct list *list, size_t room, size_t size)
{
    void *at;

    assert(size > 0 && room > list->count);
    at = arena_raw(arena, room > SIZE_MAX / size ? SIZE_MAX : room * size);
    if (!at)
        return false;
    if (list->count > 0)
        memcpy(at, list->at, list->count * size);
    list->at = at;
    list->room = room;
    return true;
}

bool list_reserve(struct arena *arena, struct list *list, size_t size)
{
    assert(list->count <= list->room && size > 0);
    if (list->count == list->room &&
        !grow(arena, list, list->room ? list->room * 2 : ROOM_LEAST, size))
        return false;
    memset(element(list, list->count, size), 0, size);
    return true;
}

bool list_make_room(struct arena *arena, struct list *list, size_t count, size_t size)
{
    return count <= list->room || grow(arena, list, count, size);
}

void list_remove(struct list *list, size_t index, size_t size)
{
    assert(index < list->count);
    list->count--;
    memmove(element(list, index, size), element(list, index + 1, size),
            (list->count - index) * size);
}
