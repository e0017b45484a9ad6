/*
 * Beams look for a layout of a roll that is short enough: the sweep's states (rollsweep.h), many at
 * a time from the beginning of the roll on, of which only those go on that lost least so far. One
 * beam after another, each wider than the last up to a most.
 */
#ifndef CUT_ROLLBEAMS_H
#define CUT_ROLLBEAMS_H

#include "cut/rollpack.h"

struct roll_beams;

/* All memory is the arena's, some 10 MB. For a job of at least one part and at most SWEEP_PARTS. */
struct roll_beams *roll_beams_new(const struct roll_job *job, struct arena *arena);

/*
 * Goes on for about `work` units and adds what it did; a target other than the last begins with a
 * narrow beam. True when all parts lie before the target, kerf included. It never ends by itself,
 * and that it finds nothing shows nothing.
 */
bool roll_beams_on(struct roll_beams *beams, int64_t target, int64_t work, int64_t *done);

/* Of what was found last: by part. */
const struct roll_spot *roll_beams_spots(const struct roll_beams *beams);

#endif
