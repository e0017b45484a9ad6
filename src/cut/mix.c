#include "cut/mix.h"

#include "base/quantity.h"

#include <assert.h>
#include <string.h>

#define STEPS_IN_ALL 60000
#define STICKS_MOST 24 /* of a mix: beyond it there are too many mixes to go through */
#define SPARE_STICKS 2 /* over what the length alone asks for */

struct mixing {
    const struct mix_job *job;
    int64_t total; /* of all lengths */
    int64_t best_value;
    int steps_left;
    size_t sizes[STICKS_MOST];
    int64_t left[STICKS_MOST];
    size_t *owner;
    struct mix best;
};

/* Lays a length into the stick that it leaves least of; false when no stick takes it. */
static bool lay(struct mixing *mixing, size_t length, size_t stick_count)
{
    int64_t need = mixing->job->lengths[length];
    size_t best = stick_count;

    for (size_t i = 0; i < stick_count; i++)
        if (mixing->left[i] >= need &&
            (best == stick_count || mixing->left[i] < mixing->left[best]))
            best = i;
    mixing->steps_left -= (int)stick_count;
    if (best == stick_count)
        return false;
    mixing->left[best] -= need;
    mixing->owner[length] = best;
    return true;
}

/* Lays all lengths into the sticks of a mix; keeps it when that can be done. */
static void try_mix(struct mixing *mixing, size_t stick_count, int64_t value)
{
    for (size_t i = 0; i < stick_count; i++)
        mixing->left[i] = mixing->job->rooms[mixing->sizes[i]];
    for (size_t i = 0; i < mixing->job->count; i++)
        if (!lay(mixing, i, stick_count))
            return;
    assert(value < mixing->best_value);
    mixing->best_value = value;
    mixing->best.stick_count = stick_count;
    memcpy(mixing->best.sizes, mixing->sizes, stick_count * sizeof *mixing->sizes);
    memcpy(mixing->best.owner, mixing->owner, mixing->job->count * sizeof *mixing->owner);
}

/* Goes through all mixes that begin with the `sticks` sticks chosen, which hold `room` and cost
 * `value`, and go on with sizes from `size`; a mix is tried once it holds the total. */
static void extend(struct mixing *mixing, size_t size, size_t sticks, size_t spare, int64_t room,
                   int64_t value)
{
    assert(sticks <= STICKS_MOST);
    if (value >= mixing->best_value || mixing->steps_left <= 0)
        return;
    if (room >= mixing->total) {
        try_mix(mixing, sticks, value);
        if (spare++ == SPARE_STICKS)
            return;
    }
    for (size_t next = size; next < mixing->job->size_count && sticks < STICKS_MOST; next++) {
        int64_t more = mixing->job->rooms[next];

        if (mixing->job->shelf[next] >= 0 || more <= 0)
            continue;
        mixing->steps_left--;
        mixing->sizes[sticks] = next;
        extend(mixing, next, sticks + 1, spare, room + more, value + mixing->job->values[next]);
    }
}

/* The shelf as the beginning of every mix; false when it alone is too much for the search. */
static bool open_shelf(struct mixing *mixing, size_t *ret_count, int64_t *ret_room)
{
    size_t count = 0;
    int64_t room = 0;

    for (size_t size = 0; size < mixing->job->size_count; size++)
        for (int64_t n = 0; n < mixing->job->shelf[size]; n++) {
            if (count == STICKS_MOST)
                return false;
            mixing->sizes[count++] = size;
            room += mixing->job->rooms[size] > 0 ? mixing->job->rooms[size] : 0;
        }
    *ret_count = count;
    *ret_room = room;
    return true;
}

bool mix_find(const struct mix_job *job, int64_t below, struct arena *arena, struct mix *ret_mix)
{
    struct mixing mixing = {.job = job, .best_value = below, .steps_left = STEPS_IN_ALL};
    size_t count;
    int64_t room;

    for (size_t i = 0; i < job->count; i++) {
        assert(i == 0 || job->lengths[i] <= job->lengths[i - 1]);
        mixing.total += job->lengths[i];
    }
    mixing.owner = ARENA_MANY(arena, size_t, job->count);
    mixing.best.owner = ARENA_MANY(arena, size_t, job->count);
    mixing.best.sizes = ARENA_MANY(arena, size_t, STICKS_MOST);
    if (!open_shelf(&mixing, &count, &room))
        return false;
    extend(&mixing, 0, count, 0, room, 0);
    if (mixing.best_value == below)
        return false;
    *ret_mix = mixing.best;
    return true;
}
