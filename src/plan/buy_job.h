/*
 * The parts of one stock as a job for the solver: the sizes that they can come out of, how they may
 * lie, and the layout that is known or found for them.
 */
#ifndef PLAN_BUY_JOB_H
#define PLAN_BUY_JOB_H

#include "plan/buy.h"

struct cutting_job {
    struct planning *planning;
    const struct stock *stock;
    size_t first, count; /* parts of the plan */
    LIST_OF(struct cut_size) sizes;
    LIST_OF(struct cut_source) sources; /* parallel to sizes */
    bool again;                         /* of what an earlier layout of the stock leaves */
    bool begun;                         /* what was cut from the stock is known piece by piece */
};

/* Whether a stock is cut from a roll; whether it is cut at all. */
bool job_is_roll(const struct stock *stock);
bool job_is_cut(const struct stock *stock);

enum cut_way job_way(const struct stock *stock);

/* Adds a size as it is sold, with where it comes from. */
void job_add_size(struct cutting_job *job, struct cut_size size, struct cut_source source);

/* Gives a job without sizes all that its parts can be cut from, as if nothing were bought yet: of
 * some size any number can be bought. */
void job_set_sizes(struct cutting_job *job);

/* buy_goods.c: adds what was bought for the job of sticks, sheets and foam as sizes without a
 * price, as many as there are; of sticks less those that are held against crooked ones, and
 * of all less those that are cut already. How many sizes were added. */
size_t job_add_goods(struct cutting_job *job);

/* A part as the solver takes it. */
struct cut_piece job_piece(const struct cutting_job *job, const struct part *part);

/* How the shop sells the job's roll. */
struct cut_sale job_sale(const struct cutting_job *job);

/* buy_cut.c: adds cuttings and placements to the plan for each blank of a layout. */
void job_keep_blanks(const struct cutting_job *job, const struct cut_layout *layout);

/* buy_begun.c: adds the job's parts to the plan as they were cut. */
void job_put_as_cut(struct cutting_job *job);

/* buy_begun.c: adds the pieces that were left when the job's stock was cut, but for what lies on
 * the shelf, and the parts of it that are not needed any more as they were cut and that are in no
 * frame or cover yet; without a price, one by one. */
void job_add_remains(struct cutting_job *job);

/* buy_sizes.c: the lines of a job of sticks, sheets or foam: what its layout, and what is cut of it
 * already, takes of each size that can be bought. Not less than what was bought. */
void job_buy_sizes(struct cutting_job *job, const struct cut_layout *layout);

/* buy_begun.c: how many pieces of a size that can be bought are cut already; *ret_used grows by the
 * lengths or areas that were cut from them. */
int64_t job_cut_of(const struct cutting_job *job, size_t size, int64_t *ret_used);

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
