#include "plan/hole.h"

#include "plan/geometry.h"
#include "plan/rules.h"
#include "plan/steps.h"

#include <assert.h>
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

static bool was_drilled(const struct model *model, const struct plan_point *point)
{
    for (size_t i = 0; i < model->holes.count; i++)
        if (model->holes.at[i].join == point->join && model->holes.at[i].rank == point->rank)
            return true;
    return false;
}

struct hole_work hole_work(const struct plan *plan, const struct plan_point *point)
{
    struct hole_work work = {.drilled = point->existing || was_drilled(plan->facts, point)};

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

    assert(join);
    if (of_b && !junction->box_b)
        return false;
    ret_end->of_b = of_b;
    ret_end->box = of_b ? junction->box_b : junction->box_a;
    ret_end->side = of_b ? join->side_b : join->side_a;
    ret_end->heads = ret_end->box == junction->head_box;
    ret_end->seen = ret_end->heads ? junction->head_side : ret_end->side;
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
            constraint->item == layer && strcmp(constraint->rule, RULE_SHUT_SIDE) == 0)
            return true;
    }
    return false;
}

bool hole_opening(const struct plan *plan, const struct interval *interval, int64_t join)
{
    return interval->join == join && interval->pass != STAPLED_AT_BENCH &&
           !hole_keeps_off(plan, plan->edges.at[interval->edge].layer, join);
}

/* Whether a loop goes round the whole face of its box; its four lengths in the loop's order. */
static bool loop_lengths(const struct plan *plan, const struct edge *edge,
                         const int64_t order[EDGE_COUNT], int64_t ret_lengths[EDGE_COUNT])
{
    const struct layer *layer = MODEL_FIND(plan->facts, layer, edge->layer);
    const struct box *box = MODEL_FIND(plan->facts, box, edge->box);
    int64_t whole = 0;

    for (int i = 0; layer && box && i < EDGE_COUNT; i++) {
        ret_lengths[i] = edge_length(box, layer->side, order[i]);
        whole += ret_lengths[i];
    }
    return whole == edge->length;
}

bool hole_part(const struct plan *plan, const struct interval *interval, int nth,
               struct edge_part *ret_part)
{
    static const int64_t order[EDGE_COUNT] = {EDGE_BOTTOM, EDGE_RIGHT, EDGE_TOP, EDGE_LEFT};
    const struct edge *edge = &plan->edges.at[interval->edge];
    int64_t lengths[EDGE_COUNT];
    int64_t begin = 0;

    if (edge->edge != EDGE_LOOP || !loop_lengths(plan, edge, order, lengths)) {
        *ret_part = (struct edge_part){edge->edge, interval->from, interval->to};
        return nth == 0;
    }
    for (int i = 0; i < nth; i++)
        begin += lengths[i];
    int64_t from = length_larger(interval->from - begin, 0);
    int64_t to = length_smaller(interval->to - begin, lengths[nth]);
    if (from >= to)
        return false;
    bool backward = nth >= 2; /* the top from its right, the left side from its top */
    *ret_part = (struct edge_part){order[nth], backward ? lengths[nth] - to : from,
                                   backward ? lengths[nth] - from : to};
    return true;
}
