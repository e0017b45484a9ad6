#include "cut/ranking.h"

#include <assert.h>
#include <stdlib.h>

static int largest_first(const void *a, const void *b)
{
    const struct ranked *left = a, *right = b;

    if (left->first != right->first)
        return left->first < right->first ? 1 : -1;
    if (left->second != right->second)
        return left->second < right->second ? 1 : -1;
    return left->part < right->part ? -1 : left->part > right->part;
}

void ranked_sort(struct ranked *ranked, size_t count)
{
    if (count > 1)
        qsort(ranked, count, sizeof *ranked, largest_first);
}

static struct ranked rank_of(const struct cut_piece *part, size_t index, enum part_order order)
{
    int64_t longer = part->length > part->width ? part->length : part->width;
    int64_t shorter = part->length > part->width ? part->width : part->length;

    switch (order) {
    case BY_AREA:
        return (struct ranked){part->length * part->width, longer, index};
    case BY_LONG_SIDE:
        return (struct ranked){longer, shorter, index};
    case BY_LENGTH:
        return (struct ranked){part->length, part->width, index};
    default:
        return (struct ranked){part->width, part->length, index};
    }
}

void ranking_sort(const struct cut_piece *parts, size_t *indices, size_t count,
                  enum part_order order, struct arena *arena)
{
    struct ranked *ranked = ARENA_MANY(arena, struct ranked, count);

    assert(order < PART_ORDERS);
    for (size_t i = 0; i < count; i++)
        ranked[i] = rank_of(&parts[indices[i]], indices[i], order);
    ranked_sort(ranked, count);
    for (size_t i = 0; i < count; i++)
        indices[i] = ranked[i].part;
}
