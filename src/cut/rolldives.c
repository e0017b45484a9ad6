#include "cut/rolldives.h"

#include <assert.h>

/* Work of a dive: so much, and as much more after each few. */
#define DIVE_WORK INT64_C(30000000)
#define DIVES_ALIKE 8

#define WORK_DIVE 1000 /* units to begin one */

static void next_dive(struct roll_dives *dives, int64_t target)
{
    dives->target = target;
    dives->left = DIVE_WORK * (int64_t)(1 + dives->number / DIVES_ALIKE);
    roll_sweep_dive(dives->sweep, target, ++dives->number);
}

bool roll_dives_on(struct roll_dives *dives, const struct roll_job *job, struct arena *arena,
                   int64_t target, int64_t work, int64_t *done)
{
    int64_t end = *done + work;

    assert(job->count > 0 && job->count <= SWEEP_PARTS);
    if (!dives->sweep)
        dives->sweep = roll_sweep_new(job, arena);
    while (*done < end) {
        int64_t before = *done, some;
        enum sweep_verdict verdict;

        if (dives->left <= 0 || dives->target != target) {
            next_dive(dives, target);
            *done += WORK_DIVE;
        }
        some = end - before < dives->left ? end - before : dives->left;
        verdict = roll_sweep_on(dives->sweep, some, done);
        dives->left -= *done - before;
        if (verdict != SWEEP_OPEN)
            dives->left = 0;
        if (verdict == SWEEP_FITS)
            return true;
    }
    return false;
}
