/*
 * The orders in which parts are tried: largest first, by one measure or another.
 */
#ifndef CUT_RANKING_H
#define CUT_RANKING_H

#include "base/arena.h"
#include "cut/layout.h"

#include <stddef.h>

/* A part with what it is ranked by: `first`, and of equals `second`. */
struct ranked {
    int64_t first, second;
    size_t part;
};

/* Sorts by both measures, the largest first; of equals the part with the lower index. */
void ranked_sort(struct ranked *ranked, size_t count);

enum part_order { BY_AREA, BY_LONG_SIDE, BY_LENGTH, BY_WIDTH, PART_ORDERS };

/*
 * Sorts `count` indices of `parts`, largest first. Parts that measure the same keep the order of
 * their indices, so that every machine sorts alike.
 */
void ranking_sort(const struct cut_piece *parts, size_t *indices, size_t count,
                  enum part_order order, struct arena *arena);

#endif
