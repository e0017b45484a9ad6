/*
 * The orders in which parts are tried: largest first, by one measure or another.
 */
#ifndef RANKING_H
#define RANKING_H

#include "base/arena.h"
#include "cut/layout.h"

#include <stddef.h>

enum part_order { BY_AREA, BY_LONG_SIDE, BY_LENGTH, BY_WIDTH, PART_ORDERS };

/*
 * Sorts `count` indices of `parts`, largest first. Parts that measure the same keep the order of
 * their indices, so that every machine sorts alike.
 */
void ranking_sort(const struct cut_piece *parts, size_t *indices, size_t count,
                  enum part_order order, struct arena *arena);

#endif
