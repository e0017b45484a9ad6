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
    int64_t apart;                    /* cost of the layouts that the builds have each by itself */
    size_t builds;                    /* how many share it */
    bool taken;                       /* the layout is a fact of the builds */
    bool alone;                       /* of one build: some of its sizes are no other's */
    bool again;                       /* of parts that are missing after the first cuts */
    bool beside_bought;               /* some of its sizes were bought already */
    const struct cut_source *sources; /* of its sizes */
};

/* What a layout that was taken together is kept under among the facts of its builds: no digest of
 * a build's own job begins so. The digest is that of the job of all builds, in the order of their
 * keys. */
#define POOL_NAME 17
void pool_name(const struct pool_job *job, char ret_name[POOL_NAME]);
bool pool_is_together(const struct layout *layout);

/* In the order in which builds and their stocks came. All memory is the arena's, whose escape must
 * be armed. */
struct pool {
    LIST_OF(struct pool_job) jobs;
    LIST_OF(struct layout) taken; /* together, by any of the builds */
    bool one_shelf; /* pieces of the shelf were given to one of the plans: jobs are alike without */
    struct arena *arena;
};

/* Adds the jobs of a plan; nothing of the plan is needed afterwards. Jobs that were taken are left
 * as they are: they are not pooled. */
void pool_add(struct pool *pool, const struct plan *plan);

/* Adds one job of a plan, whether it was taken or not. */
void pool_add_job(struct pool *pool, const struct plan *plan, const struct plan_job *from);

/* Adds the layouts that a build has taken together with others; nothing of the facts is needed
 * afterwards. */
void pool_add_taken(struct pool *pool, const struct model *facts);

/* Cuts every job: as it was taken, where that still holds, else with a search. */
void pool_cut(struct pool *pool, enum cut_effort effort);

#endif
