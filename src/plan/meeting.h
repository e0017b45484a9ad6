/*
 * What meets the way to a join's heads, and when: the step that puts each thing there, beside the
 * step that drives the screws.
 */
#ifndef PLAN_MEETING_H
#define PLAN_MEETING_H

#include "plan/plan.h"

struct meeting {
    enum blocker_kind kind;
    int64_t item;  /* as of a blocker */
    size_t placed; /* step that puts it there; PLAN_NONE where none does */
    size_t closed; /* step that closes it over the heads, where it was left open; else PLAN_NONE */
    bool lasting;
};

struct meetings {
    LIST_OF(struct meeting) of;
};

/*
 * All that meets the chosen way of a join or must wait for it, each once, in the order of the steps
 * that put it there. Lies in the arena, whose escape must be armed.
 */
void meetings_make(struct meetings *meetings, const struct plan *plan, int64_t join,
                   struct arena *arena);

/* The step that drives or fixes a join; PLAN_NONE where the plan has none. */
size_t meeting_drive_step(const struct plan *plan, int64_t join);

/* "panel of C, front", "cover of W", "upright C3". Appends to `out`, not filtered. */
void meeting_name(const struct plan *plan, enum blocker_kind kind, int64_t item, struct text *out);

#endif
