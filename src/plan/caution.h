/*
 * Cautions where a step has them, and the rules that a seller usually meets. Words are common
 * practice, no source, where no rule is named; nothing here says that a piece keeps to a rule.
 */
#ifndef PLAN_CAUTION_H
#define PLAN_CAUTION_H

#include "plan/plan.h"

/*
 * What a step has to be careful of beside the words of its kind (card.h): staples and locators
 * counted in and out, foam near flames, lids and children, cables in a wall, what tips, glue that
 * is green, scale bars of what was printed. `said` is what its kind says, or NULL. In the arena,
 * whose escape is armed; "" when there is nothing. Needs the load and order passes. O(edges +
 * fittings).
 */
const char *caution_of_step(const struct plan *plan, const struct step *step, const char *said,
                            struct arena *arena);

/* A rule that applies to pieces of a kind that are sold: names and years only. */
struct caution_rule {
    const char *where;
    const char *rule; /* "16 CFR 1640, 2021" */
    const char *about;
};

/* The next rule after `index` that usually applies to the piece; NULL after the last. Begin with
 * *index 0. */
const struct caution_rule *caution_rule_next(const struct plan *plan, size_t *index);

#endif
