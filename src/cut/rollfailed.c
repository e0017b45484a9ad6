/*
 * States that failed, by what is left to start and what still lies there, both from now on: one
 * that was there as soon or sooner is not looked through again.
 *
 * Where seats were not found, how the parts came to lie so plays a part in it: a state from which
 * one came to that has not failed for those that come to it by other ways, and is forgotten.
 */
#include "cut/rollsweep_state.h"

#include "base/whole.h"

#define MEMO_SLOTS (1U << 17)
#define MEMO_TRIES 4U

#define WORK_FORGET 40 /* units for each state that is forgotten */

struct memo sweep_memo(struct arena *arena)
{
    return (struct memo){.slots = ARENA_MANY(arena, struct memo_slot, MEMO_SLOTS)};
}

/* Two mixes of splitmix64's kind (Steele, Lea and Flood, 2014), with steps of their own, so that no
 * run of small numbers leaves them as they were. */
static void key_add_two(struct memo *memo, uint64_t one, uint64_t other)
{
    static const uint64_t steps[2] = {UINT64_C(0x9e3779b97f4a7c15), UINT64_C(0xd1342543de82ef95)};
    const uint64_t numbers[2] = {one, other};

    for (int i = 0; i < 2; i++) {
        uint64_t mixed = (memo->hash[i] ^ numbers[i]) + steps[i];

        mixed = (mixed ^ mixed >> 30) * UINT64_C(0xbf58476d1ce4e5b9);
        mixed = (mixed ^ mixed >> 27) * UINT64_C(0x94d049bb133111eb);
        memo->hash[i] = mixed ^ mixed >> 31;
    }
}

static void key_add(struct memo *memo, uint64_t number)
{
    key_add_two(memo, number, number);
}

/* Three numbers as one, another one for each of both mixes. */
static void key_add_three(struct memo *memo, int64_t a, int64_t b, int64_t c)
{
    const uint64_t x = (uint64_t)a, y = (uint64_t)b, z = (uint64_t)c;

    key_add_two(memo, x + y * UINT64_C(0xa0761d6478bd642f) + z * UINT64_C(0xe7037ed1a0b428db),
                x + y * UINT64_C(0x8ebc6af09c88c6e3) + z * UINT64_C(0x589965cc75374cc3));
}

/* Eight kinds at a time: no job that is swept has as many parts as a byte counts. */
static void key_add_left(struct roll_sweep *sweep)
{
    uint64_t packed = 0;

    for (size_t k = 0; k < sweep->rows.kind_count; k++) {
        packed = packed << 8 | (uint64_t)sweep->left[k];
        if (k % 8 == 7)
            key_add(&sweep->memo, packed);
    }
    key_add(&sweep->memo, packed);
}

/* Starts that still lie there, the first to end first. */
static void sort_lying(struct roll_sweep *sweep)
{
    for (size_t i = 1; i < sweep->lying_count; i++) {
        uint8_t kept = sweep->lying[i];
        const struct start *start = &sweep->starts[kept];
        size_t at = i;

        for (; at > 0; at--) {
            const struct start *other = &sweep->starts[sweep->lying[at - 1]];

            if (other->far < start->far ||
                (other->far == start->far && other->across <= start->across))
                break;
            sweep->lying[at] = sweep->lying[at - 1];
        }
        sweep->lying[at] = kept;
    }
}

/* Free parts that end together are as one. */
static void key_add_lying(struct roll_sweep *sweep)
{
    struct memo *memo = &sweep->memo;

    sort_lying(sweep);
    for (size_t i = 0; i < sweep->lying_count; i++) {
        const struct start *start = &sweep->starts[sweep->lying[i]];
        int64_t width = sweep->stays[start->stay].width;

        while (start->across == FREE && i + 1 < sweep->lying_count &&
               sweep->starts[sweep->lying[i + 1]].across == FREE &&
               sweep->starts[sweep->lying[i + 1]].far == start->far)
            width += sweep->stays[sweep->starts[sweep->lying[++i]].stay].width;
        key_add_three(memo, start->far - sweep->time, start->across, width);
    }
}

/* What can start now: by rule 5 what lay there before has a say in it. */
static void key_add_startable(struct roll_sweep *sweep)
{
    uint64_t startable = 0;

    for (size_t s = 0; s < sweep->stay_count; s++) {
        startable = startable << 1 | (uint64_t)sweep_can_start(sweep, &sweep->stays[s]);
        if (s % 64 == 63)
            key_add(&sweep->memo, startable);
    }
    key_add(&sweep->memo, startable);
}

static void make_key(struct roll_sweep *sweep)
{
    struct memo *memo = &sweep->memo;
    int64_t repeat = sweep->job->pattern.along;

    memo->hash[0] = 1;
    memo->hash[1] = 2;
    key_add_left(sweep);
    if (repeat > 0)
        key_add(memo, (uint64_t)(sweep->time - sweep->event));
    for (size_t g = 0; g < sweep->job->group_count && repeat > 0; g++)
        key_add(memo, sweep->known[g]
                          ? (uint64_t)whole_modulo(sweep->time - sweep->begin[g], repeat)
                          : UINT64_MAX);
    key_add_lying(sweep);
    if (sweep->compact)
        key_add_startable(sweep);
}

/* Of those that want the same slot the ones stay of which most is left to be done. */
bool sweep_known_to_fail(struct roll_sweep *sweep)
{
    struct memo *memo = &sweep->memo;
    struct memo_slot *slot = NULL;

    make_key(sweep);
    for (size_t i = 0; i < MEMO_TRIES; i++) {
        struct memo_slot *other = &memo->slots[(memo->hash[0] + i) % MEMO_SLOTS];

        if (other->round == memo->round && other->hash[0] == memo->hash[0] &&
            other->hash[1] == memo->hash[1]) {
            bool fails = other->time <= sweep->time;

            other->time = fails ? other->time : sweep->time;
            return fails;
        }
        if (other->round != memo->round) {
            slot = other;
            break;
        }
        if (!slot || other->left < slot->left)
            slot = other;
    }
    *slot = (struct memo_slot){
        {memo->hash[0], memo->hash[1]}, sweep->time, (uint32_t)sweep->left_count, memo->round};
    return false;
}

void sweep_forget_path(struct roll_sweep *sweep)
{
    struct memo *memo = &sweep->memo;

    for (size_t at = sweep->advanced; at != NEVER_ADVANCED; at = sweep->steps.at[at].advanced) {
        const struct step *step = &sweep->steps.at[at];

        for (size_t i = 0; i < MEMO_TRIES; i++) {
            struct memo_slot *slot = &memo->slots[(step->hash[0] + i) % MEMO_SLOTS];

            if (slot->round == memo->round && slot->hash[0] == step->hash[0] &&
                slot->hash[1] == step->hash[1])
                slot->round = 0;
        }
        sweep->work += WORK_FORGET;
    }
    sweep->forgotten++;
}
