/*
 * What the passes share. Each pass is one file with one entry; it reads what the passes before it
 * wrote and adds its own lists to the plan. Allocation goes through the plan's arena, whose escape
 * is armed in plan_make: nothing here tests for NULL. A pass never fails: what cannot be built is
 * left out and told as a finding.
 */
#ifndef PLAN_PASS_H
#define PLAN_PASS_H

#include "plan/plan.h"

struct planning {
    const struct model *model;
    struct plan *plan;
    struct arena *arena;
    const struct cut_known *known; /* layouts; NULL: none */
    const int64_t *value;          /* trade values: value[TRADE_KERF] */
    struct cut_known *quick;       /* layouts of this plan and of its trials so far; NULL: none */
};

/*
 * The plan of the model with a cure taken, as far as the access pass, or whole; NULL when the cure
 * cannot be read or breaks the model. It tells no stories and offers no cures itself, and cuts only
 * what the plan or an earlier trial has not cut already. In the planning's arena.
 */
const struct plan *pass_try(const struct planning *planning, const struct cure *cure, bool whole);

void pass_resolve(struct planning *planning);
void pass_panel(struct planning *planning);
void pass_frame(struct planning *planning);
void pass_point(struct planning *planning);
void pass_clash(struct planning *planning);
void pass_twins(struct planning *planning);
void pass_access(struct planning *planning);
void pass_measure(struct planning *planning);
void pass_fix(struct planning *planning);
void pass_cover(struct planning *planning);
void pass_buy(struct planning *planning);
void pass_cost(struct planning *planning);
void pass_load(struct planning *planning);
void pass_order(struct planning *planning);
void pass_card(struct planning *planning);
void pass_finding(struct planning *planning);

#endif
