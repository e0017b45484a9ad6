/*
 * The engine's one door. The passes stand in a table in the order in which they run; each reads
 * what those above it wrote and writes its own lists, so that the order here is the order of
 * dependence and nothing is worked out twice. Memory that runs out anywhere leaves through the
 * arena's escape, which is armed here and nowhere else.
 */
#include "plan/plan.h"

#include "plan/cure.h"
#include "plan/pass.h"
#include "plan/screws.h"
#include "plan/taken.h"

#include <assert.h>
#include <stddef.h>
#include <string.h>

typedef void pass_fn(struct planning *planning);

static pass_fn *const passes[] = {
    pass_resolve, pass_panel,   pass_frame, pass_point,   pass_clash, pass_twins,
    pass_access,  pass_measure, pass_fix,   pass_cover,   pass_buy,   pass_cost,
    pass_load,    pass_order,   pass_card,  pass_finding,
};

static void tally_findings(struct plan *plan)
{
    int64_t *const counts[] = {[SEVERITY_STOP] = &plan->tally.stops,
                               [SEVERITY_WARN] = &plan->tally.warns,
                               [SEVERITY_NOTE] = &plan->tally.notes};

    for (size_t i = 0; i < plan->findings.count; i++)
        ++*counts[plan_finding_severity(&plan->findings.at[i])];
}

static void tally_steps(struct plan *plan)
{
    plan->tally.steps = (int64_t)plan->steps.count;
    for (size_t i = 0; i < plan->steps.count; i++) {
        plan->tally.minutes += plan->steps.at[i].minutes;
        plan->tally.steps_done += plan->steps.at[i].ticked;
    }
}

static int64_t pieces_of(const struct plan *plan, const struct purchase *line)
{
    const struct offer *offer = MODEL_FIND(plan->facts, offer, line->offer);

    return line->packs * (offer ? offer->pack : 1);
}

static void tally_purchases(struct plan *plan)
{
    for (size_t i = 0; i < plan->purchases.count; i++) {
        const struct purchase *line = &plan->purchases.at[i];
        const struct stock *stock = MODEL_FIND(plan->facts, stock, line->stock);

        if (!stock)
            continue;
        if (stock->kind == STOCK_STICK)
            plan->tally.sticks += pieces_of(plan, line);
        else if (stock->kind == STOCK_SHEET)
            plan->tally.sheets += pieces_of(plan, line);
        else if (stock->kind == STOCK_CLOTH)
            plan->tally.cloth += line->length;
    }
    plan->tally.cost = plan->cost.estimate;
}

static void tally_fixings(struct plan *plan)
{
    for (size_t i = 0; i < plan->edges.count; i++)
        plan->tally.staples += plan->edges.at[i].staples + plan->edges.at[i].temporary;
    for (size_t i = 0; i < plan->webbings.count; i++)
        plan->tally.staples += plan->webbings.at[i].staples;
    for (size_t i = 0; i < plan->screw_kinds.count; i++)
        plan->tally.screws += plan->screw_kinds.at[i].count;
}

/* Runs the passes up to one, or all, on a model with what the planning has of memory and layouts.
 */
static struct plan *run_passes(const struct planning *given, const struct model *facts, bool trial,
                               pass_fn *last)
{
    struct plan *plan = ARENA_NEW(given->arena, struct plan);
    struct planning planning = *given;

    planning.model = facts_as_measured(facts, given->arena);
    planning.plan = plan;
    planning.value = plan->value;
    plan->entered = facts;
    plan->facts = planning.model;
    plan->trial = trial;
    trade_resolve(facts, plan->value);
    for (size_t i = 0; i < sizeof passes / sizeof *passes; i++) {
        passes[i](&planning);
        if (passes[i] == last)
            break;
    }
    return plan;
}

static struct plan *plan_fill(const struct model *facts, const struct cut_known *known,
                              struct arena *arena, bool draft)
{
    struct cut_known quick = {0};
    struct planning given = {.arena = arena, .known = known, .quick = &quick};
    struct plan *plan = run_passes(&given, facts, draft, NULL);

    tally_purchases(plan);
    tally_fixings(plan);
    tally_steps(plan);
    tally_findings(plan);
    return plan;
}

const struct plan *pass_try(const struct planning *planning, const struct cure *cure, bool whole)
{
    struct model *facts = ARENA_NEW(planning->arena, struct model);
    struct fault_note note;

    model_copy(facts, planning->model, planning->arena);
    if (cure_apply(facts, cure, &note) ||
        model_check(facts, NULL, NULL) > model_check(planning->model, NULL, NULL))
        return NULL;
    return run_passes(planning, facts, true, whole ? NULL : pass_access);
}

struct filling {
    const struct model *facts;
    const struct cut_known *known;
    struct arena *arena;
    bool draft;
    const struct plan *plan;
};

static void run_filling(void *context)
{
    struct filling *filling = context;

    filling->plan = plan_fill(filling->facts, filling->known, filling->arena, filling->draft);
}

static enum fault make(struct filling *filling, const struct plan **ret_plan)
{
    if (!arena_try(filling->arena, run_filling, filling))
        return FAULT_MEMORY;
    *ret_plan = filling->plan;
    return FAULT_NONE;
}

enum fault plan_make_known(const struct model *facts, const struct cut_known *known,
                           struct arena *arena, const struct plan **ret_plan)
{
    return make(&(struct filling){facts, known, arena, false, NULL}, ret_plan);
}

enum fault plan_make_draft(const struct model *facts, const struct cut_known *known,
                           struct arena *arena, const struct plan **ret_plan)
{
    return make(&(struct filling){facts, known, arena, true, NULL}, ret_plan);
}

struct changing {
    const struct plan *plan;
    const struct cure *cure;
    struct arena *arena;
    enum fault fault;
    const struct plan *made;
};

static void run_changing(void *context)
{
    struct changing *changing = context;
    const struct model *entered = changing->plan->entered;
    struct model *facts = ARENA_NEW(changing->arena, struct model);

    model_copy(facts, entered, changing->arena);
    changing->fault = cure_apply(facts, changing->cure, NULL);
    if (!changing->fault && model_check(facts, NULL, NULL) > model_check(entered, NULL, NULL))
        changing->fault = FAULT_REFUSED;
    if (!changing->fault)
        changing->made = plan_fill(facts, NULL, changing->arena, true);
}

enum fault plan_make_changed(const struct plan *plan, const struct cure *cure, struct arena *arena,
                             const struct plan **ret_plan)
{
    struct changing changing = {plan, cure, arena, FAULT_NONE, NULL};

    if (!arena_try(arena, run_changing, &changing))
        return FAULT_MEMORY;
    if (!changing.fault)
        *ret_plan = changing.made;
    return changing.fault;
}

enum fault plan_make(const struct model *facts, struct arena *arena, const struct plan **ret_plan)
{
    return plan_make_known(facts, NULL, arena, ret_plan);
}

/* The poses, junctions and loads stand in the order of boxes and joins, one for each. */

const struct pose *plan_pose(const struct plan *plan, int64_t box)
{
    size_t index = model_index(plan->facts, ENTITY_box, box);

    return index < plan->poses.count ? &plan->poses.at[index] : NULL;
}

const struct padding *plan_padding(const struct plan *plan, int64_t box, int64_t side)
{
    assert(side >= 0 && side < SIDE_COUNT);

    size_t index = model_index(plan->facts, ENTITY_box, box) * SIDE_COUNT + (size_t)side;

    return index < plan->paddings.count ? &plan->paddings.at[index] : NULL;
}

const struct junction *plan_junction(const struct plan *plan, int64_t join)
{
    size_t index = model_index(plan->facts, ENTITY_join, join);

    return index < plan->junctions.count ? &plan->junctions.at[index] : NULL;
}

const struct cost_line *plan_cost_line(const struct plan *plan, const struct purchase *purchase)
{
    for (size_t i = 0; i < plan->cost.lines.count; i++) {
        const struct cost_line *line = &plan->cost.lines.at[i];

        if (line->purchase != PLAN_NONE && &plan->purchases.at[line->purchase] == purchase)
            return line;
    }
    BUG("a purchase has no line of the cost");
}

bool plan_is_bought(const struct purchase *purchase)
{
    return purchase->packs > 0 || purchase->length > 0;
}

size_t plan_unpriced(const struct plan *plan)
{
    size_t count = 0;
    for (size_t i = 0; i < plan->purchases.count; i++)
        count += plan_is_bought(&plan->purchases.at[i]) && !plan->purchases.at[i].priced;
    return count;
}

const struct load *plan_load(const struct plan *plan, int64_t box)
{
    size_t index = model_index(plan->facts, ENTITY_box, box);

    return index < plan->loads.count ? &plan->loads.at[index] : NULL;
}

const char *plan_hand_word(enum hand hand)
{
    static const char *const words[] = {
        [HAND_NONE] = "", [HAND_LEFT] = "left", [HAND_RIGHT] = "right"};

    assert(hand >= HAND_NONE && hand <= HAND_RIGHT);
    return words[hand];
}

enum hand plan_hand(const struct plan *plan, int64_t box)
{
    const struct pose *pose = plan_pose(plan, box);

    return pose ? pose->hand : HAND_NONE;
}

const struct step *plan_step(const struct plan *plan, const char *name)
{
    for (size_t i = 0; i < plan->steps.count; i++)
        if (strcmp(plan->steps.at[i].name, name) == 0)
            return &plan->steps.at[i];
    return NULL;
}

const struct step *plan_waits_for(const struct plan *plan, const struct step *step)
{
    size_t first = plan->steps.count;

    for (size_t i = 0; i < plan->precedences.count; i++) {
        const struct precedence *wait = &plan->precedences.at[i];

        if (&plan->steps.at[wait->after] == step && !wait->soft &&
            !plan->steps.at[wait->before].ticked && wait->before < first)
            first = wait->before;
    }
    return first < plan->steps.count ? &plan->steps.at[first] : NULL;
}

void plan_screw_text(const struct plan *plan, const struct screw_kind *kind, struct text *out)
{
    char buffer[SCREW_TEXT];

    text_add(out, screw_kind_print(buffer, kind, model_units(plan->facts)));
}

const char *plan_stock_name(const struct plan *plan, int64_t stock)
{
    const struct stock *found = MODEL_FIND(plan->facts, stock, stock);

    return found ? found->name : "stock that has gone";
}
