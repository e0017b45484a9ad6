/*
 * Boxes by chance that stand: each is put against a face of one that stands already, none in
 * another, and only faces that touch are joined.
 */
#ifndef STAND_H
#define STAND_H

#include "work.h"

/* Makes the join of two boxes; sides and offsets are filled in afterwards. */
typedef struct join *stand_join(struct work_bench *bench, struct dice *dice, int64_t a, int64_t b);

/* Gives the boxes of a build that have no joins yet their places, by joins; no more than `most`. */
void stand_all(struct work_bench *bench, struct dice *dice, size_t most, stand_join *join);

#endif
