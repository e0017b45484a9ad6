/*
 * Sticks by their mix: which lengths of stock to take together, each mix filled by best fit.
 */
#ifndef CUT_MIX_H
#define CUT_MIX_H

#include "base/arena.h"

#include <stdbool.h>
#include <stdint.h>

/* Lengths carry a kerf each, and fall; rooms are without the trim, and carry one kerf (bars.c,
 * invariant 1). */
struct mix_job {
    const int64_t *lengths;
    size_t count;
    const int64_t *rooms;  /* by size */
    const int64_t *values; /* by size: what one costs, above 0 on offer */
    const int64_t *shelf;  /* by size: how many lie on the shelf; -1 on offer */
    size_t size_count;
};

struct mix {
    size_t *sizes; /* by stick: its size, the shelf's first */
    size_t stick_count;
    size_t *owner; /* by length: index of its stick */
};

/*
 * Looks for a mix that costs less than `below` and takes all lengths, each laid into the stick that
 * it leaves least of (of equals the first), the longest first. Mixes are tried in a fixed order
 * with a bounded number of steps; ret_mix is the cheapest found, in `arena`. False when there is
 * none: ret_mix is left alone.
 */
bool mix_find(const struct mix_job *job, int64_t below, struct arena *arena, struct mix *ret_mix);

#endif
