/*
 * Larger builds by chance than the order tests make: up to twelve boxes of every frame, up to
 * thirty joins, every shape and ending of layers, openings, treatments, linings, fittings, walls;
 * and what to do with one that fails: throw away what it can do without.
 */
#ifndef CHANCE_H
#define CHANCE_H

#include "work.h"

/* Makes the build of a seed and plans it. The model passes model_check. */
void chance_build(struct work_bench *bench, uint64_t seed);

/* What is wrong with a planned build; NULL when nothing is. The sentence stays good until the next
 * call. */
typedef const char *chance_check(struct work_bench *bench);

/*
 * Looks at builds of many seeds. Where one fails its items are taken out one by one as long as it
 * still fails; then the seed, what is left of the build and what is wrong are printed and the test
 * fails.
 */
void chance_check_all(uint64_t first_seed, size_t count, chance_check *check);

/* How many seeds: `usual`, an eighth of them under the sanitizers, or `most` when STUFFOVER_LONG is
 * set. With STUFFOVER_SEED only that one seed is looked at, however many there are. */
size_t chance_count(size_t usual, size_t most);

#endif
