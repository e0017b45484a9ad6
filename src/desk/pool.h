/*
 * Cutting for several builds at once: what is cut from the same stock in the same way is one job.
 */
#ifndef DESK_POOL_H
#define DESK_POOL_H

#include "plan/plan.h"

struct pool_job {
    int64_t stock;
    enum cut_way way;
    struct cut_job job;
    LIST_OF(struct cut_piece) parts;
    LIST_OF(const char *) labels; /* "Corner bench: C-P1", by part */
    struct cut_layout layout;
    int64_t apart; /* cost of the layouts that the builds have each by itself */
    size_t builds; /* how many share it */
};

/* In the order in which builds and their stocks came. All memory is the arena's, whose escape must
 * be armed. */
struct pool {
    LIST_OF(struct pool_job) jobs;
    bool one_shelf; /* pieces of the shelf were given to one of the plans: jobs are alike without */
    struct arena *arena;
};

/* Adds the jobs of a plan; nothing of the plan is needed afterwards. Jobs that were taken are left
 * as they are: they are not pooled. */
void pool_add(struct pool *pool, const struct plan *plan);

/* Adds one job of a plan, whether it was taken or not. */
void pool_add_job(struct pool *pool, const struct plan *plan, const struct plan_job *from);

/* Cuts every job. */
void pool_cut(struct pool *pool, enum cut_effort effort);

#endif
