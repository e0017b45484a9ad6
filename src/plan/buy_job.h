/*
 * The parts of one stock as a job for the solver: the sizes that they can come out of, how they may
 * lie, and the layout that is known or found for them.
 */
#ifndef PLAN_BUY_JOB_H
#define PLAN_BUY_JOB_H

#include "plan/buy.h"

/* Where a size of the job comes from. */
struct source {
    const struct offer *offer;       /* NULL: from the shelf, or the usual size */
    const struct leftover *leftover; /* NULL: to be bought */
    bool rest;                       /* what another cutting of the job left */
};

struct cutting_job {
    struct planning *planning;
    const struct stock *stock;
    size_t first, count; /* parts of the plan */
    LIST_OF(struct cut_size) sizes;
    LIST_OF(struct source) sources; /* parallel to sizes */
};

/* Whether a stock is cut from a roll; whether it is cut at all. */
bool job_is_roll(const struct stock *stock);
bool job_is_cut(const struct stock *stock);

/* Adds a size as it is sold, with where it comes from. */
void job_add_size(struct cutting_job *job, struct cut_size size, struct source source);

/* Gives a job without sizes all that its parts can be cut from: of some size any number can be
 * bought. */
void job_set_sizes(struct cutting_job *job);

/* A part as the solver takes it. */
struct cut_piece job_piece(const struct cutting_job *job, const struct part *part);

/* Adds the job to the plan with its layout: the one that was taken for just this job, else one that
 * is known, else a quick one. The layout lives in the arena. */
const struct cut_layout *job_lay_out(struct cutting_job *job);

#endif
