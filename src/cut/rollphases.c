/*
 * Where the origin of a group may lie along, when the group is not alone on the roll.
 *
 * Such a group is pushed as a whole. What stops it is a part at the end of a chain of free ones
 * from the beginning on, so its origin lies along at a sum of lengths of free parts, less the place
 * of one of its own. What is not found while the origin is left open is looked for with each of
 * these phases.
 */
#include "cut/rollsweep_state.h"

#include "base/whole.h"

#include <string.h>

#define PHASES_MOST 1024U

static void add_phase(struct roll_sweep *sweep, int64_t phase)
{
    int64_t at = whole_modulo(phase, sweep->job->pattern.along);

    for (size_t i = 0; i < sweep->phase_count; i++)
        if (sweep->phases[i] == at)
            return;
    if (sweep->phase_count < PHASES_MOST)
        sweep->phases[sweep->phase_count] = at;
    sweep->phase_count++;
}

/* The sums of lengths of any free parts, modulo the repeat; too many where there are more than
 * PHASES_MOST. */
static void add_sums(struct roll_sweep *sweep)
{
    add_phase(sweep, 0);
    for (size_t i = 0; i < sweep->job->count; i++) {
        const struct roll_part *part = &sweep->job->parts[i];
        size_t before = sweep->phase_count;

        if (part->group != ROLL_NO_GROUP)
            continue;
        for (size_t p = 0; p < before && sweep->phase_count <= PHASES_MOST; p++) {
            add_phase(sweep, sweep->phases[p] + part->length);
            if (part->may_turn && sweep->phase_count <= PHASES_MOST)
                add_phase(sweep, sweep->phases[p] + part->width);
        }
    }
}

/* Each sum less the place of each part of the group, in a column that is dropped and in one that is
 * not. */
void sweep_find_phases(struct roll_sweep *sweep)
{
    const struct roll_job *job = sweep->job;
    int64_t drop = job->pattern.half_drop ? job->pattern.along / 2 : 0;
    int64_t *sums = ARENA_MANY(sweep->arena, int64_t, PHASES_MOST);
    size_t count;

    sweep->phases = ARENA_MANY(sweep->arena, int64_t, PHASES_MOST);
    add_sums(sweep);
    count = sweep->phase_count;
    if (count > PHASES_MOST) {
        sweep->phase_count = 0;
        return;
    }
    memcpy(sums, sweep->phases, count * sizeof *sums);
    sweep->phase_count = 0;
    for (size_t i = 0; i < job->count && sweep->phase_count <= PHASES_MOST; i++)
        for (size_t s = 0; s < count && job->parts[i].group == 0; s++) {
            add_phase(sweep, sums[s] - job->parts[i].along);
            if (drop > 0 && sweep->phase_count <= PHASES_MOST)
                add_phase(sweep, sums[s] - job->parts[i].along - drop);
        }
    if (sweep->phase_count > PHASES_MOST)
        sweep->phase_count = 0;
}

bool sweep_pushes_whole(const struct roll_job *job)
{
    for (size_t i = 0; i < job->count && job->pattern.along > 0; i++)
        if (job->parts[i].group != job->parts[0].group)
            return job->group_count == 0 || (job->group_count == 1 && job->pinned == 0);
    return true;
}
