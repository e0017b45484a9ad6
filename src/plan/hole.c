#include "plan/hole.h"

#include "plan/geometry.h"
#include "plan/steps.h"

#include <stdlib.h>
#include <string.h>

struct bore hole_bore(const struct plan *plan, const struct plan_point *point)
{
    const struct junction *junction = plan_junction(plan, point->join);
    struct bore bore = {0};

    if (point->screw == PLAN_NONE)
        return bore;
    const struct screw *screw = &plan->screws.at[point->screw];
    struct vector face = screw->box == junction->box_a ? point->in_a : point->in_b;
    int64_t pilot = screw->bite - plan->value[TRADE_SCREW_PILOT_SHORT];

    bore.kind = &plan->screw_kinds.at[screw->kind];
    bore.clearance_depth =
        llabs(vector_along(face, screw->axis) - vector_along(screw->at, screw->axis));
    bore.pilot_depth = length_larger(pilot, 0);
    return bore;
}

struct hole_work hole_work(const struct plan *plan, const struct plan_point *point)
{
    struct hole_work work = {.drilled = point->taken};

    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.at[i];

        if (step->join != point->join || !step->ticked)
            continue;
        work.drilled |= step->kind == STEP_DRILL;
        work.tried |= step->kind == STEP_DRILL; /* every screw is driven once, then backed out */
        work.located |= step->kind == STEP_LOCATE;
        work.found |= step->kind == STEP_FIND;
        work.driven |= step->kind == STEP_DRIVE || step->kind == STEP_FIX;
    }
    return work;
}

bool hole_end(const struct plan *plan, const struct junction *junction, bool of_b,
              struct join_end *ret_end)
{
    const struct join *join = MODEL_FIND(plan->facts, join, junction->join);

    if (of_b && !junction->box_b)
        return false;
    ret_end->box = of_b ? junction->box_b : junction->box_a;
    ret_end->side = of_b ? join->side_b : join->side_a;
    ret_end->heads = ret_end->box == junction->head_box;
    return true;
}

const struct from_edge *hole_edges(const struct plan_point *point, bool of_b)
{
    return of_b ? point->edges_b : point->edges;
}

bool hole_keeps_off(const struct plan *plan, int64_t layer, int64_t join)
{
    for (size_t i = 0; i < plan->constraints.count; i++) {
        const struct constraint *constraint = &plan->constraints.at[i];

        if (constraint->kind == JOIN_BEFORE_LAYER && constraint->join == join &&
            constraint->item == layer && strcmp(constraint->rule, "P51") == 0)
            return true;
    }
    return false;
}

bool hole_opening(const struct plan *plan, const struct interval *interval, int64_t join)
{
    return interval->join == join && interval->pass != STAPLED_AT_BENCH &&
           !hole_keeps_off(plan, plan->edges.at[interval->edge].layer, join);
}
