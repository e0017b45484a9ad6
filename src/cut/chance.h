/*
 * Numbers by chance that are the same on every machine, from a state that the caller keeps
 * (Marsaglia, "Xorshift RNGs", 2003: shifts 13, 7, 17).
 */
#ifndef CUT_CHANCE_H
#define CUT_CHANCE_H

#include <stdint.h>

/* The next number, which is the state from then on. A state that is not 0 never becomes 0. */
static inline uint64_t chance_next(uint64_t *state)
{
    *state ^= *state << 13;
    *state ^= *state >> 7;
    *state ^= *state << 17;
    return *state;
}

#endif
