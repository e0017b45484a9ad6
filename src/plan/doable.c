/*
 * One walk along the order. Precedences are sorted by the step that waits, so that those of a step
 * are looked at once; when a step is taken the minute at which it ends is kept, for what has to
 * rest after it.
 *
 * 1  A step is in the list only after all that it waits for, ticked or in the list before it; soft
 *    waits and the shop are left aside.
 * 2  The minutes of the list are at most those that were asked for.
 */
#include "plan/doable.h"

#include "plan/buy.h"
#include "plan/counted.h"
#include "plan/rests.h"
#include "plan/steps.h"

#include <assert.h>
#include <string.h>

#define NOT_DONE INT64_C(-1)

struct walk {
    const struct plan *plan;
    const struct doable_ask *ask;
    struct arena *arena;
    struct planning planning;
    struct ticked ticked;
    bool shopped;        /* see has_shopped */
    const bool *missing; /* of each stock of the facts */
    int64_t *ends;       /* of each step taken: minute in the list; NOT_DONE */
    size_t precedence;   /* the first that ends at the step or after it */
    struct doable *found;
    size_t *steps;
};

/* ---- goods ---- */

static bool stock_is_here(const struct walk *walk, int64_t stock)
{
    return !walk->missing[model_index(walk->plan->facts, ENTITY_stock, stock)];
}

/* Of what a layer is made of, what is not here; else its material. */
static int64_t layer_stock(const struct walk *walk, int64_t key)
{
    const struct layer *layer = MODEL_FIND(walk->plan->facts, layer, key);

    if (!layer)
        return 0;
    return stock_is_here(walk, layer->thin) ? layer->stock : layer->thin;
}

/* Screws of a frame or of a box's panels that are not here; 0 for none, and for other steps. */
static int64_t screws_missing(const struct walk *walk, const struct step *step)
{
    const struct plan *plan = walk->plan;
    enum screw_use use = step->kind == STEP_FRAME ? SCREW_FRAME : SCREW_PANEL;

    if (step->kind != STEP_FRAME && step->kind != STEP_PANEL)
        return 0;
    for (size_t i = 0; i < plan->screws.count; i++) {
        const struct screw *screw = &plan->screws.at[i];
        int64_t stock = plan->screw_kinds.at[screw->kind].stock;

        if (screw->use == use && screw->box == step->box && !stock_is_here(walk, stock))
            return stock;
    }
    return 0;
}

/* The kinds of stock that a step of the whole build is about. */
static bool is_about(int kind, int64_t stock)
{
    switch (kind) {
    case STEP_GAUGE:
        return stock == STOCK_STICK || stock == STOCK_SHEET;
    case STEP_INSPECT:
    case STEP_CHALK:
        return stock == STOCK_CLOTH;
    case STEP_UNROLL:
        return stock == STOCK_BATTING;
    default:
        return false;
    }
}

/* A stock that the step takes and that is not here; 0 when all is. */
static int64_t stock_missing(const struct walk *walk, const struct step *step)
{
    const struct model *facts = walk->plan->facts;
    int64_t stock = step->layer ? layer_stock(walk, step->layer) : 0;

    if (step_kinds[step->kind].scope == SCOPE_STOCK)
        stock = step_key_of(step->name);
    if (!stock_is_here(walk, stock))
        return stock;
    for (size_t i = 0; i < walk->plan->parts.count; i++) {
        const struct stock *of = MODEL_FIND(facts, stock, walk->plan->parts.at[i].stock);

        if (of && is_about(step->kind, of->kind) && !stock_is_here(walk, of->key))
            return of->key;
    }
    return screws_missing(walk, step);
}

/* ---- waits ---- */

/* How long a step has to rest still after another that is done: ticked, or in the list. */
static int64_t rest_left(const struct walk *walk, const struct precedence *wait)
{
    const struct step *before = &walk->plan->steps.at[wait->before];
    const struct tick *tick = ticked_find(&walk->ticked, before->name);
    int64_t since = walk->ends[wait->before] == NOT_DONE
                        ? rest_since(tick ? tick->at : "", walk->ask->now)
                        : walk->found->minutes - walk->ends[wait->before];

    if (since != INT64_MAX && walk->ends[wait->before] == NOT_DONE)
        since += walk->found->minutes;
    return since >= wait->rest ? 0 : wait->rest - since;
}

static bool is_shopping(int kind)
{
    return kind == STEP_BUY || kind == STEP_REBUY;
}

static void tell_wet(struct walk *walk, const struct precedence *wait, int64_t left)
{
    const struct rest *rest =
        rest_between(walk->plan->steps.at[wait->before].kind,
                     walk->plan->steps.at[wait->after].kind, walk->plan->value);

    walk->found->barred[BAR_WET]++;
    if (!*walk->found->wet && rest) {
        walk->found->wet = rest->what;
        walk->found->wet_for = left;
    }
}

/* Whether all that the step waits for is done and dry. */
static bool may_begin(struct walk *walk, size_t index)
{
    const struct plan *plan = walk->plan;
    const struct precedence *wet = NULL;
    bool free = true;

    /* each step took those that end at it */
    assert(walk->precedence == plan->precedences.count ||
           plan->precedences.at[walk->precedence].after >= index);
    for (; walk->precedence < plan->precedences.count &&
           plan->precedences.at[walk->precedence].after == index;
         walk->precedence++) {
        const struct precedence *wait = &plan->precedences.at[walk->precedence];
        const struct step *before = &plan->steps.at[wait->before];
        bool done = before->ticked || walk->ends[wait->before] != NOT_DONE;

        if (wait->soft || (!done && is_shopping(before->kind)))
            continue;
        free = free && done;
        if (done && wait->rest > 0 && rest_left(walk, wait) > 0 &&
            (!wet || rest_left(walk, wait) > rest_left(walk, wet)))
            wet = wait;
    }
    if (free && wet)
        tell_wet(walk, wet, rest_left(walk, wet));
    return free && !wet;
}

/* ---- the walk ---- */

static bool has_goods(struct walk *walk, const struct step *step)
{
    int64_t missing = stock_missing(walk, step);

    if (!missing && (walk->shopped || step->phase < step_kinds[STEP_CUT].phase ||
                     step_kinds[step->kind].scope == SCOPE_STOCK))
        return true;
    walk->found->barred[BAR_GOODS]++;
    if (missing && !*walk->found->missing)
        walk->found->missing = plan_stock_name(walk->plan, missing);
    return false;
}

static bool fits(struct walk *walk, const struct step *step)
{
    if (step_people(step) > walk->ask->people) {
        walk->found->barred[BAR_PEOPLE]++;
        return false;
    }
    if (!has_goods(walk, step))
        return false;
    if (walk->found->minutes + step->minutes > walk->ask->minutes) {
        walk->found->barred[BAR_TIME]++;
        return false;
    }
    return true;
}

static void walk_steps(struct walk *walk)
{
    const struct plan *plan = walk->plan;

    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.at[i];
        bool free = may_begin(walk, i);

        if (!free || step->ticked || is_shopping(step->kind) ||
            (step->place == PLACE_SITE && !walk->ask->room) || !fits(walk, step))
            continue;
        walk->found->minutes += step->minutes;
        walk->ends[i] = walk->found->minutes;
        walk->steps[walk->found->count++] = i;
    }
    assert(walk->found->minutes <= walk->ask->minutes || walk->found->count == 0);
}

/* The shop's step is ticked, or there is nothing that it would bring. */
static bool has_shopped(const struct plan *plan)
{
    bool wanted = false;

    for (size_t i = 0; i < plan->steps.count; i++)
        if (plan->steps.at[i].kind == STEP_BUY && plan->steps.at[i].ticked)
            return true;
    for (size_t i = 0; i < plan->purchases.count; i++)
        wanted = wanted || plan->purchases.at[i].packs > 0;
    return !wanted;
}

static void walk_fill(void *context)
{
    struct walk *walk = context;

    walk->planning = (struct planning){
        .model = walk->plan->facts, .arena = walk->arena, .value = walk->plan->value};
    walk->ticked = ticked_make(&walk->planning);
    walk->shopped = has_shopped(walk->plan);
    walk->found = ARENA_NEW(walk->arena, struct doable);
    walk->found->wet = walk->found->missing = "";
    walk->steps = ARENA_MANY(walk->arena, size_t, walk->plan->steps.count);
    walk->ends = ARENA_MANY(walk->arena, int64_t, walk->plan->steps.count);
    for (size_t i = 0; i < walk->plan->steps.count; i++)
        walk->ends[i] = NOT_DONE;
    walk->missing = stocks_short(walk->plan, walk->arena);
    walk_steps(walk);
    walk->found->steps = walk->steps;
}

enum fault plan_doable(const struct plan *plan, const struct doable_ask *ask, struct arena *arena,
                       const struct doable **ret_doable)
{
    struct walk walk = {.plan = plan, .ask = ask, .arena = arena};

    if (!arena_try(arena, walk_fill, &walk))
        return FAULT_MEMORY;
    *ret_doable = walk.found;
    return FAULT_NONE;
}

/* ---- what hangs on a step ---- */

struct hanging {
    const struct plan *plan;
    size_t step;
    struct arena *arena;
    size_t *steps;
    size_t count;
};

/* Precedences are sorted by the step that waits, so one sweep forward reaches all. */
static void find_hanging(void *context)
{
    struct hanging *hanging = context;
    const struct plan *plan = hanging->plan;
    bool *hangs = ARENA_MANY(hanging->arena, bool, plan->steps.count);

    hangs[hanging->step] = true;
    hanging->steps = ARENA_MANY(hanging->arena, size_t, plan->steps.count);
    for (size_t i = 0; i < plan->precedences.count; i++) {
        const struct precedence *wait = &plan->precedences.at[i];

        assert(wait->before < wait->after);
        if (wait->hard && hangs[wait->before])
            hangs[wait->after] = true;
    }
    for (size_t i = plan->steps.count; i-- > hanging->step + 1;)
        if (hangs[i] && plan->steps.at[i].ticked)
            hanging->steps[hanging->count++] = i;
}

enum fault plan_hangs_on(const struct plan *plan, size_t step, struct arena *arena,
                         const size_t **ret_steps, size_t *ret_count)
{
    struct hanging hanging = {.plan = plan, .step = step, .arena = arena};

    assert(step < plan->steps.count);
    if (!arena_try(arena, find_hanging, &hanging))
        return FAULT_MEMORY;
    *ret_steps = hanging.steps;
    *ret_count = hanging.count;
    return FAULT_NONE;
}
