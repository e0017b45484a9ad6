/*
 * Whether a roll of a given length can hold its parts: a search along the roll that goes on until
 * it knows.
 */
#ifndef CUT_ROLLSWEEP_H
#define CUT_ROLLSWEEP_H

#include "cut/rollpack.h"
#include "cut/rollrows.h"

#define SWEEP_PARTS 64 /* no job with more is swept */

enum sweep_verdict {
    SWEEP_OPEN,    /* not known yet */
    SWEEP_FITS,    /* spots say how */
    SWEEP_NEVER,   /* no layout is as short */
    SWEEP_UNKNOWN, /* it went through everything, and some of it could not be judged */
};

struct roll_sweep;

/* All memory is the arena's. For a job of at least one part. */
struct roll_sweep *roll_sweep_new(const struct roll_job *job, struct arena *arena);

/* Begins anew: whether all parts lie before `target`, kerf included. */
void roll_sweep_aim(struct roll_sweep *sweep, int64_t target);

/* Goes on for about `work` units and adds what it did. */
enum sweep_verdict roll_sweep_on(struct roll_sweep *sweep, int64_t work, int64_t *done);

/* Of SWEEP_FITS: by part. */
const struct roll_spot *roll_sweep_spots(const struct roll_sweep *sweep);

#endif
