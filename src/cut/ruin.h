/*
 * Ruin and recreate over trees of cuts: takes some parts out of sheets that are open, puts them and
 * those that lie outside back where least is spoilt, and keeps what that gives unless it is worse
 * than what was there a while ago (late acceptance).
 */
#ifndef CUT_RUIN_H
#define CUT_RUIN_H

#include "cut/trees.h"

#define RUIN_LATE 30 /* rounds ago: what a round is compared with */

/* PLACE: as little outside as can be, by area. NEAT: the fewest cuts, with no part outside that was
 * not outside before. */
enum ruin_aim { RUIN_PLACE, RUIN_NEAT };

/* Orders in which parts are put back: the largest first, by area, by the longer side, or by what
 * they measure along or across. */
enum ruin_rank { RANK_AREA, RANK_LONG, RANK_LENGTH, RANK_WIDTH, RANKS };

struct ruin_score {
    int64_t first, second; /* less is better */
};

struct ruin {
    const struct sheet_job *job;
    enum ruin_aim aim;
    struct trees now, before;
    int32_t *outside, *outside_before; /* parts in no sheet that fit some size */
    int32_t outside_count, outside_count_before;
    int32_t *rank[RANKS]; /* by part: its place in each order */
    struct ruin_score score, late[RUIN_LATE];
    struct ruin_score best; /* since the beginning */
    int32_t idle;           /* rounds since it became better, or since patience was out */
    size_t turn;            /* rounds so far */
    uint64_t dice;          /* state of the numbers by chance */
    int32_t blink; /* ways to put a part until one is overlooked, and how many on the average */
    int32_t blink_mean;
    int64_t work;   /* done so far, in units */
    int32_t *taken; /* scratch: parts below a node */
};

/* For up to `root_most` sheets open at once. Any seed will do. The memory is the arena's. */
void ruin_init(struct ruin *ruin, const struct sheet_job *job, struct arena *arena,
               size_t root_most, uint64_t seed);

/* Begins anew with what `trees` hold; parts that they lack lie outside. */
void ruin_from(struct ruin *ruin, const struct trees *trees, enum ruin_aim aim);

/* Puts the parts that lie outside where they fit, largest first, no part overlooked. */
void ruin_fill(struct ruin *ruin);

/* One round. True when the score became better than it was before the round. */
bool ruin_round(struct ruin *ruin);

/* The score of what the trees hold now. */
struct ruin_score ruin_judge(const struct ruin *ruin);

bool ruin_better(struct ruin_score a, struct ruin_score b);

/* Puts one part into the gap where it spoils least; false when none takes it. */
bool ruin_put(struct ruin *ruin, size_t part);

#endif
