/*
 * The acts of joining in time, as nodes of a peeling problem (peel.h): which of them there are,
 * what each is about, and what holds them apart. Shared by the choice and by its stories.
 */
#ifndef PLAN_ACCESS_TIME_H
#define PLAN_ACCESS_TIME_H

#include "plan/access_work.h"
#include "plan/peel.h"

enum act_kind {
    ACT_DRY,    /* fitted dry, drilled, mapped */
    ACT_OFFER,  /* the boxes come together for good */
    ACT_DRIVE,  /* its screws are driven */
    ACT_PLACED, /* the boxes have come together: what stands in their way comes later */
    ACT_FACING,
    ACT_LAYER,
    ACT_MOVE /* into the room */
};

struct act {
    enum act_kind kind;
    size_t task; /* of DRY, OFFER, DRIVE, PLACED; else SIZE_MAX */
    int64_t key; /* of the join, the facing, the layer; 0 for the move */
};

struct timeline {
    struct planning *planning;
    struct tasks *tasks;
    LIST_OF(struct act) acts;
    LIST_OF(struct peel_edge) edges;
    LIST_OF(const char *) rules; /* one an edge: the id of that which holds the acts apart */
    LIST_OF(struct peel_way) ways;
    LIST_OF(size_t) way_of; /* index of each among the task's ways, or approaches */
    LIST_OF(size_t) blockers;
    size_t first_facing, first_layer, move; /* nodes */
    size_t *placed; /* of each task; PLAN_NONE where nothing can be in its way */
};

/* Nodes of a task's join. */
static inline size_t timeline_dry(size_t task)
{
    return 3 * task;
}

static inline size_t timeline_offer(size_t task)
{
    return 3 * task + 1;
}

static inline size_t timeline_drive(size_t task)
{
    return 3 * task + 2;
}

struct timeline timeline_make(struct planning *planning, struct tasks *tasks);

/* ---- access_story.c ---- */

/* Tells why the join of a task cannot be driven: what is left in the peel is the smallest part that
 * does not go. Fills the task's story and core. */
void access_tell_trapped(const struct timeline *timeline, const struct peel *peel,
                         struct task *task);

#endif
