/*
 * The parts of one stock as a job for the solver: the sizes that they can come out of, how they may
 * lie, and the layout that is known or found for them.
 */
#ifndef PLAN_BUY_JOB_H
#define PLAN_BUY_JOB_H

#include "plan/buy.h"

/* Where a size of the job comes from. */
struct source {
    const struct offer *offer;       /* NULL: from the shelf, or a size that none has */
    const struct leftover *leftover; /* NULL: to be bought */
    bool rest;                       /* what another cutting of the job left */
    bool bought;                     /* it is in the house already */
};

struct cutting_job {
    struct planning *planning;
    const struct stock *stock;
    size_t first, count; /* parts of the plan */
    LIST_OF(struct cut_size) sizes;
    LIST_OF(struct source) sources; /* parallel to sizes */
    bool again;                     /* of what an earlier layout of the stock leaves */
};

/* Whether a stock is cut from a roll; whether it is cut at all. */
bool job_is_roll(const struct stock *stock);
bool job_is_cut(const struct stock *stock);

/* Adds a size as it is sold, with where it comes from. */
void job_add_size(struct cutting_job *job, struct cut_size size, struct source source);

/* Gives a job without sizes all that its parts can be cut from, as if nothing were bought yet: of
 * some size any number can be bought. */
void job_set_sizes(struct cutting_job *job);

/* buy_goods.c: adds what was bought for the job of sticks, sheets and foam as sizes without a
 * price, as many as there are; of sticks less those that are held against crooked ones. How
 * many sizes were added. */
size_t job_add_goods(struct cutting_job *job);

/* A part as the solver takes it. */
struct cut_piece job_piece(const struct cutting_job *job, const struct part *part);

/* How the shop sells the job's roll. */
struct cut_sale job_sale(const struct cutting_job *job);

/* buy_roll.c: what is bought of a job's roll for its layout, with what was bought before. */
void job_buy_roll(struct cutting_job *job, const struct cut_layout *layout);

/* buy_roll.c: the lines of cloth and batting that were bought and that nothing is cut from any
 * more. */
void job_keep_rolls(struct planning *planning);

/* Sticks with those that turn out crooked. */
int64_t job_with_crooked(const struct cutting_job *job, int64_t sticks);

/*
 * Adds the job to the plan with its layout: the one that was taken for just this job, or for it and
 * other prices when the goods were bought. Else what was bought is offered as well, but to what is
 * cut again, and the layout is one that was taken for that job, or is known, or a quick one. It
 * lives in the arena.
 */
const struct cut_layout *job_lay_out(struct cutting_job *job);

#endif
