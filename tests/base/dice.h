/*
 * Numbers by chance that are the same on every machine and in every run: splitmix64, from a seed.
 */
#ifndef DICE_H
#define DICE_H

#include <stdint.h>

struct dice {
    uint64_t state; /* the seed to begin with */
};

uint64_t dice_bits(struct dice *dice);

/* From least to most, both included. */
int64_t dice_between(struct dice *dice, int64_t least, int64_t most);

/* A number of any size: as many small ones as large ones, of both signs. */
int64_t dice_any_size(struct dice *dice);

#endif
