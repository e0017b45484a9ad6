/*
 * An outline as a chain of straight lines: for pictures, and for what is looked at from place to
 * place.
 */
#ifndef PLAN_CHAIN_H
#define PLAN_CHAIN_H

#include "plan/plan.h"

struct chain_place {
    int64_t u, v; /* on the main face */
    bool corner;  /* the outline itself turns here, and not only its chain */
};

struct chain {
    LIST_OF(struct chain_place) of;
};

/*
 * The top of a box's main face from its left end to its right one. u never falls; where the outline
 * steps up or down two places have the same. No place of the outline lies farther than `off` from
 * it. In `arena`, whose escape must be armed.
 */
struct chain chain_of(const struct model *model, const struct box *box, int64_t off,
                      struct arena *arena);

#endif
