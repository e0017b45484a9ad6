/*
 * A look round from a box, for the rehearsal alone: which solids stand near it by now, in its own
 * axes. What a tool (rehearse_bar.h) and a hand (rehearse_hand.h) must keep clear of.
 */
#ifndef PLAN_REHEARSE_LOOK_H
#define PLAN_REHEARSE_LOOK_H

#include "plan/rehearse_stage.h"

struct near_by {
    struct solid solid;       /* in the axes of the box with the heads */
    const struct body *leans; /* what lies within it, where that leans to these axes; else NULL */
    enum entity_kind entity;  /* ENTITY_none: the floor */
    int64_t key;
    const char *label; /* of a member or panel; else NULL */
    size_t since;      /* the step that put it there; PLAN_NONE: none did */
};

struct view {
    const struct stage *stage;
    const struct staged_box *box; /* that is looked round from */
    LIST_OF(struct near_by) near;
    size_t at; /* the step of the look round */
};

/* A view of nothing yet, for a stage to keep. Lives in the arena. */
struct view *look_begin(struct arena *arena);

/* What stands near the box now. It is the stage's own view: good until the next call. Cost: the
 * wood of all boxes joined to this one, where the last look was of another step or box. */
const struct view *look_round(const struct stage *stage, const struct staged_box *box);

/* A verdict that names what stands there. */
struct verdict look_lapse(const struct stage *stage, enum lapse lapse, const struct near_by *near);

#endif
