/*
 * Ticks: a step done, and what it made taken as a fact. The facts hang on the tick, so that taking
 * the tick back takes them back.
 */
#include "desk/internal.h"

#include "plan/rules.h"
#include "plan/steps.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

struct tick_change {
    const struct plan *plan; /* of the model the draft was made from */
    const struct step *step;
    const char *at;
    int64_t minutes;
    int64_t tick; /* key of the new tick */
};

/* ---- what a step takes ---- */

static void take_holes(struct model *draft, const struct tick_change *change)
{
    const struct junction *junction = plan_junction(change->plan, change->step->join);
    for (size_t i = 0; junction && i < junction->point_count; i++) {
        const struct plan_point *point = &change->plan->points.at[junction->first_point + i];
        struct hole *hole = MODEL_ADD(draft, hole);
        hole->tick = change->tick;
        hole->join = point->join;
        hole->rank = point->rank;
        hole->u = point->u;
        hole->v = point->v;
    }
}

static void take_cuts(struct model *draft, const struct tick_change *change)
{
    int64_t stock = step_key_of(change->step->name);
    for (size_t i = 0; i < change->plan->parts.count; i++) {
        const struct part *part = &change->plan->parts.at[i];
        if (part->stock != stock)
            continue;
        struct cut_part *cut = MODEL_ADD(draft, cut_part);
        cut->tick = change->tick;
        cut->part = arena_text(draft->arena, part->label);
        cut->length = part->length;
        cut->width = part->width;
    }
}

static void take_purchases(struct model *draft, const struct tick_change *change)
{
    for (size_t i = 0; i < change->plan->purchases.count; i++) {
        const struct purchase *purchase = &change->plan->purchases.at[i];
        if (!purchase->stock || !purchase->packs)
            continue;
        const struct offer *offer = MODEL_FIND(draft, offer, purchase->offer);
        int64_t length = purchase->length ? purchase->length : offer ? offer->length : 0;
        struct bought *bought = MODEL_ADD(draft, bought);
        bought->tick = change->tick;
        bought->stock = purchase->stock;
        bought->length = length;
        bought->width = offer ? offer->width : 0;
        bought->packs = purchase->packs;
    }
}

static void take_facts(struct model *draft, const struct tick_change *change)
{
    switch (step_kinds[change->step->kind].takes) {
    case STEP_TAKES_HOLES:
        take_holes(draft, change);
        break;
    case STEP_TAKES_CUTS:
        take_cuts(draft, change);
        break;
    case STEP_TAKES_PURCHASES:
        take_purchases(draft, change);
        break;
    case STEP_TAKES_MEASURES: /* the maker enters them: they are not the plan's to know */
    case STEP_TAKES_NOTHING:
        break;
    }
}

/* ---- ticking ---- */

static enum fault change_tick(struct model *draft, void *context, struct fault_note *note)
{
    (void)note;
    struct tick_change *change = context;
    struct tick *tick = MODEL_ADD(draft, tick);
    tick->step = arena_text(draft->arena, change->step->name);
    tick->at = arena_text(draft->arena, change->at);
    tick->minutes = change->minutes;
    tick->content = arena_format(draft->arena, "%016" PRIx64, change->step->content);
    change->tick = tick->key;
    take_facts(draft, change);
    return FAULT_NONE;
}

/*
 * A hold point that is not ticked and that `step` waits for, directly or through others; NULL when
 * there is none. Precedences run forward in the list of steps, so one sweep backwards reaches all.
 */
static const struct step *hold_before(const struct plan *plan, size_t step, bool *waits)
{
    memset(waits, 0, plan->steps.count * sizeof *waits);
    waits[step] = true;
    const struct step *hold = NULL;
    for (size_t at = step + 1; at-- > 0;) {
        if (!waits[at])
            continue;
        if (at != step && plan->steps.at[at].hold && !plan->steps.at[at].ticked)
            hold = &plan->steps.at[at];
        for (size_t i = 0; i < plan->precedences.count; i++) {
            if (plan->precedences.at[i].after == at)
                waits[plan->precedences.at[i].before] = true;
        }
    }
    return hold;
}

/*
 * What a step would shut in for good: a step that is not ticked, and that the rules of ways and
 * flaps put before it. Other steps may be ticked late, for they can be done late.
 */
static const struct precedence *shut_in_by(const struct plan *plan, size_t step)
{
    static const char *const shutting[] = {"P46", "P50", "P51", "P77"};

    for (size_t i = 0; i < plan->precedences.count; i++) {
        const struct precedence *precedence = &plan->precedences.at[i];

        if (precedence->after != step || plan->steps.at[precedence->before].ticked)
            continue;
        for (size_t k = 0; k < sizeof shutting / sizeof *shutting; k++)
            if (strcmp(precedence->rule, shutting[k]) == 0)
                return precedence;
    }
    return NULL;
}

static enum fault check_may_tick(struct desk *desk, const struct step *step,
                                 struct fault_note *note)
{
    const struct plan *plan = desk->state->plan;
    if (step->ticked)
        return fault_say(note, FAULT_REFUSED, 0, "\"%s\" is ticked already", step->title);
    arena_release(&desk->preview);
    bool *waits = ARENA_MANY(&desk->preview, bool, plan->steps.count);
    if (!waits)
        return fault_say(note, FAULT_MEMORY, 0, "there is not enough memory for this");
    const struct step *hold = hold_before(plan, (size_t)(step - plan->steps.at), waits);
    if (hold)
        return fault_say(note, FAULT_REFUSED, 0, "\"%s\" has to be ticked before it", hold->title);
    const struct precedence *shut = shut_in_by(plan, (size_t)(step - plan->steps.at));
    if (shut)
        return fault_say(note, FAULT_REFUSED, 0, "\"%s\" has to be done before it: %s (%s)",
                         plan->steps.at[shut->before].title, rule_find(shut->rule)->reason,
                         shut->rule);
    return FAULT_NONE;
}

enum fault desk_tick(struct desk *desk, const char *name, const char *at, int64_t minutes,
                     struct fault_note *note)
{
    const struct step *step = plan_step(desk->state->plan, name);
    if (!step)
        return fault_say(note, FAULT_UNKNOWN, 0, "the plan has no step \"%s\"", name);
    enum fault fault = check_may_tick(desk, step, note);
    if (fault)
        return fault;
    char label[STORE_LABEL];
    desk_label(label, "tick: %s", step->title);
    struct tick_change change = {desk->state->plan, step, at, minutes, 0};
    return desk_edit(desk, label, change_tick, &change, note);
}

/* ---- taking a tick back ---- */

static int64_t tick_key(const struct model *model, const char *step)
{
    for (size_t i = 0; i < model->ticks.count; i++) {
        if (strcmp(model->ticks.at[i].step, step) == 0)
            return model->ticks.at[i].key;
    }
    return 0;
}

static enum fault change_untick(struct model *draft, void *context, struct fault_note *note)
{
    const char *step = context;
    if (model_remove(draft, ENTITY_tick, tick_key(draft, step)) == 0)
        return fault_say(note, FAULT_REFUSED, 0, "\"%s\" is not ticked", step);
    return FAULT_NONE;
}

/* A ticked step that hard rules put after `step`. */
static const struct step *ticked_after(const struct plan *plan, const struct step *step)
{
    size_t index = (size_t)(step - plan->steps.at);
    for (size_t i = 0; i < plan->precedences.count; i++) {
        const struct precedence *precedence = &plan->precedences.at[i];
        const struct step *after = &plan->steps.at[precedence->after];
        if (precedence->before == index && precedence->hard && after->ticked)
            return after;
    }
    return NULL;
}

enum fault desk_untick(struct desk *desk, const char *name, struct fault_note *note)
{
    char label[STORE_LABEL];
    char step_name[sizeof((struct step *)0)->name];
    const struct step *step = plan_step(desk->state->plan, name);
    const struct step *after = step ? ticked_after(desk->state->plan, step) : NULL;
    if (after)
        return fault_say(note, FAULT_REFUSED, 0, "\"%s\" was done after it: take that back first",
                         after->title);
    desk_label(label, "take back: %s", step ? step->title : name);
    snprintf(step_name, sizeof step_name, "%s", name);
    return desk_edit(desk, label, change_untick, step_name, note);
}
