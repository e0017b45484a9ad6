/* What can be done in the time there is, with what is here. */
#ifndef PLAN_DOABLE_H
#define PLAN_DOABLE_H

#include "plan/plan.h"

struct doable_ask {
    int64_t minutes; /* 1/1000 min */
    int people;      /* 1 or 2 */
    bool room;       /* work in the room counts too */
    const char *now; /* "2026-11-25 14:05", for what has to dry; "" when not known */
};

/* Why a step that waits for nothing else is not in the list. */
enum doable_bar { BAR_PEOPLE, BAR_GOODS, BAR_WET, BAR_TIME, BARS };

struct doable {
    const size_t *steps; /* indices into plan->steps, in the order they are done */
    size_t count;
    int64_t minutes;     /* that they take */
    size_t barred[BARS]; /* how many steps are held back by each */
    const char *wet;     /* what still rests, of the first such step: "the glue cures"; or "" */
    int64_t wet_for;     /* and how long, 1/1000 min */
    const char *missing; /* the first goods that are missing; or "" */
};

/*
 * Goes through the steps in their order and takes each that fits: what comes before it is ticked or
 * taken already, everything that it is made from is bought or on the shelf, no glue before it is
 * wet, hands and minutes are there. Shopping is not for the bench: it is left out, and a step for
 * which all is here does not wait for it. Buying without a tick counts nothing as bought. Pure; in
 * the arena, FAULT_MEMORY is the only fault. O(steps + precedences + purchases * steps).
 */
enum fault plan_doable(const struct plan *plan, const struct doable_ask *ask, struct arena *arena,
                       const struct doable **ret_doable);

/*
 * The ticked steps that hang on a step, the last of the order first: what has to come off again
 * before it can be done anew. Hard waits only, through others too. FAULT_MEMORY is the only fault.
 * O(steps + precedences).
 */
enum fault plan_hangs_on(const struct plan *plan, size_t step, struct arena *arena,
                         const size_t **ret_steps, size_t *ret_count);

#endif
