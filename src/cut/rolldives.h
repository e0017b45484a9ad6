/*
 * Dives for a layout of a roll that is short enough, one after another, each with an order of its
 * own (rollsweep.h): where one has found nothing for a while the next has better chances.
 */
#ifndef CUT_ROLLDIVES_H
#define CUT_ROLLDIVES_H

#include "cut/rollsweep.h"

struct roll_dives {
    struct roll_sweep *sweep; /* none before the first dive */
    uint64_t number;
    int64_t target;
    int64_t left; /* work of the dive that is on; not positive: the next begins */
};

/*
 * Goes on for about `work` units and adds what it did; a target other than the last begins a dive.
 * True when all parts lie before the target: then the sweep's spots say where. All memory is the
 * arena's. For a job of at least one part and at most SWEEP_PARTS.
 */
bool roll_dives_on(struct roll_dives *dives, const struct roll_job *job, struct arena *arena,
                   int64_t target, int64_t work, int64_t *done);

#endif
