/*
 * What the files of the access pass share: one join while its ways are looked at and chosen.
 */
#ifndef PLAN_ACCESS_WORK_H
#define PLAN_ACCESS_WORK_H

#include "plan/access.h"
#include "plan/rules.h"
#include "plan/way.h"

#include <string.h>

/*
 * What has to come after a join, or before it. `rule` is the one of the plan's constraint; NULL
 * where the rules of the order hold it anyway (a back over the reach side, away from the hand).
 */
struct held {
    enum blocker_kind kind; /* FACING, LAYER or JOIN */
    int64_t item;
    const char *rule;
    int64_t sets; /* of a join: the box that it sets over the way; 0 for the wall */
};

/* Whether it waits with its flap only: the layer itself goes on before the join (rule P46). */
static inline bool held_is_flap(const struct held *held)
{
    return held->rule && strcmp(held->rule, RULE_FLAP) == 0;
}

struct helds {
    LIST_OF(struct held) list;
};

/* What lies on the box with the heads and may be held back. */
struct around {
    LIST_OF(const struct layer *) cloth;
    LIST_OF(const struct junction *) joined; /* others than the task's own, left-out ones apart */
};

/* A way with what it holds back. */
struct candidate {
    struct way way;
    struct helds helds;
    int64_t cost;
    enum way_treatment treatment;
    bool open; /* some tool fits and a hand comes in */
};

/* A straight way for the boxes of a join to come together, and the joins that would set others in
 * its way. */
struct approach {
    int64_t from; /* side of the room that the second box comes from */
    struct helds helds;
};

struct task {
    struct planning *planning;
    const struct vicinity *vicinity;
    const struct join *join;
    struct junction *junction;
    struct faces faces;
    struct candidate *ways; /* the cheapest first; none for a join without points */
    size_t way_count;
    LIST_OF(struct approach) approaches; /* none: a free one, or the boxes shut each other out */
    bool shut_out;                       /* the latter */
    size_t approach;                     /* the one chosen */
    struct helds needed;                 /* layers and facings that come before it */
    size_t chosen;                       /* of the ways */
    bool given_up;                       /* no order lets it be driven */
    bool kept_out;                       /* for want of a straight way */
    const char **story;                  /* why it cannot be driven */
    size_t story_count;
    struct helds core;     /* joins, facings and layers that the story names */
    size_t finding;        /* of the plan's, that tells it; PLAN_NONE for none */
    const struct box *box; /* with the heads of the way that is looked at */
    struct around around;
    struct scene scenes[2]; /* heads in box a, in b; without a box where they cannot lie there */
    struct scene *scene;    /* of the two, round the heads of the way that is looked at */
    struct way way;
};

struct tasks {
    struct task *at; /* one a junction */
    size_t count;
    struct vicinity vicinity;
};

/* ---- access_held.c ---- */

/* Sets the task to one of its ways. */
void task_look(struct task *task, const struct way *way);

/* The place on the reach side that has to stay open for one of the junction's points: before the
 * head where that lies outside, at the hand's entry otherwise. False when there is none. */
bool task_opening(const struct task *task, size_t point, int64_t *ret_u, int64_t *ret_v);

/* Finds what has to come after the join when it is driven the way it looks at, each once, how it is
 * treated, and whether it can be driven at all. */
void task_hold_back(struct task *task, struct candidate *candidate);

/* Finds what has to come before it, each once: wood that the screws need, edges that are stapled
 * between the faces, cloth that lies there. */
void task_bring_forward(struct task *task);

/* The place in the hollow right before a head, in the box's axes. False when there is no head. */
bool task_before_head(const struct task *task, size_t point, struct vector *ret_at);

/* Finds the straight ways for its boxes to come together. */
void task_find_approaches(struct task *task);

/* ---- access_story.c ---- */

/* Tells what shuts every way of a task whose ways are all shut: its story and core. */
void access_tell_shut(struct task *task);

/* Tells that the boxes of a task shut each other out. */
void access_tell_shut_out(struct task *task);

/* "left panel of W"; in the arena. */
const char *access_facing_called(const struct planning *planning, int64_t key);

/* ---- access_cure.c ---- */

/* Adds to the findings of joins that cannot be driven the cures that help, tried on a copy of the
 * facts; nothing in a trial. */
void access_add_cures(struct planning *planning, struct tasks *tasks);

/* ---- access_time.c ---- */

/* Chooses a way for each join so that all of them can be done in some order; joins for which there
 * is no order are given up and told. */
void access_choose(struct planning *planning, struct tasks *tasks);

#endif
