/*
 * Ticks: a step done, and what it made taken as a fact. The facts hang on the tick, so that taking
 * the tick back takes them back.
 */
#include "desk/internal.h"

#include "model/offer.h"
#include "plan/rules.h"
#include "plan/steps.h"
#include "plan/taken.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define SAID_MOST 8000 /* the field takes no more */

struct tick_change {
    const struct plan *plan; /* of the model the draft was made from */
    const struct step *step;
    const struct desk_done *done;
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

static int64_t packs_bought(const struct model *model, const struct bought *goods,
                            const struct offer *offer)
{
    int64_t packs = 0;
    for (size_t i = 0; i < model->boughts.count; i++) {
        const struct bought *bought = &model->boughts.at[i];
        if (offer ? bought_is_of(model, bought, offer)
                  : bought->stock == goods->stock && bought->length == goods->length &&
                        bought->width == goods->width)
            packs += bought_packs(bought, offer);
    }
    return packs;
}

static int64_t roll_bought(const struct model *model, int64_t stock)
{
    int64_t length = 0;
    for (size_t i = 0; i < model->boughts.count; i++) {
        if (model->boughts.at[i].stock == stock)
            length += model->boughts.at[i].length * model->boughts.at[i].packs;
    }
    return length;
}

/* What the list asks for beyond what was bought before. A length of roll is one pack: what is
 * bought of it later is a length of its own. */
static void take_purchase(struct model *draft, const struct tick_change *change,
                          const struct purchase *purchase)
{
    const struct offer *offer = MODEL_FIND(draft, offer, purchase->offer);
    struct bought goods = {.tick = change->tick,
                           .stock = purchase->stock,
                           .length = purchase->length ? purchase->length
                                     : offer          ? offer->length
                                                      : 0,
                           .width = offer ? offer->width : 0,
                           .packs = purchase->packs,
                           .pack = purchase->length ? 0
                                   : offer          ? offer->pack
                                                    : 1};
    goods.packs -= packs_bought(draft, &goods, offer);
    if (purchase->length)
        goods.length -= roll_bought(draft, purchase->stock);
    if (goods.packs <= 0 || goods.length < 0 || (purchase->length && goods.length == 0))
        return;
    struct bought *bought = MODEL_ADD(draft, bought);
    goods.key = bought->key;
    *bought = goods;
}

/* What is bought is cut as it was laid out by then: a layout that is found later would want other
 * sizes. One that is too long to be kept is no reason not to tick. */
static enum fault take_purchases(struct model *draft, const struct tick_change *change,
                                 struct fault_note *note)
{
    for (size_t i = 0; i < change->plan->purchases.count; i++) {
        const struct purchase *purchase = &change->plan->purchases.at[i];
        if (purchase->stock && purchase->packs)
            take_purchase(draft, change, purchase);
    }
    enum fault fault = desk_keep_goods(draft, change->plan, change->tick, note);
    return fault == FAULT_OVERFLOW ? FAULT_NONE : fault;
}

static enum fault take_facts(struct model *draft, const struct tick_change *change,
                             struct fault_note *note)
{
    switch (step_kinds[change->step->kind].takes) {
    case STEP_TAKES_HOLES:
        take_holes(draft, change);
        break;
    case STEP_TAKES_CUTS:
        cutting_take(draft, change->plan, change->step, change->tick);
        break;
    case STEP_TAKES_PURCHASES:
        return take_purchases(draft, change, note);
    case STEP_TAKES_MEASURES: /* the maker enters them: they are not the plan's to know */
    case STEP_TAKES_NOTHING:
        break;
    }
    return FAULT_NONE;
}

/* ---- measures ---- */

static enum fault read_measure(struct model *draft, const struct tick_change *change,
                               const struct ask *ask, const char *text, struct fault_note *note)
{
    int64_t value = 0;
    int64_t off;
    char planned[QUANTITY_TEXT];
    enum fault fault =
        quantity_parse(QUANTITY_LENGTH, model_units(change->plan->facts), text, &value, note);
    if (fault) {
        fault_at(note, "%s", ask->name);
        return fault;
    }
    off = value > ask->planned ? value - ask->planned : ask->planned - value;
    quantity_print_unit(planned, QUANTITY_LENGTH, model_units(change->plan->facts), ask->planned);
    if (value <= 0 || (ask->planned && off > ask->planned / 4))
        return fault_say(note, FAULT_RANGE, "%s is planned as %s: measure again", ask->name,
                         ask->planned ? planned : "more than nothing");
    struct measure *measure = MODEL_ADD(draft, measure);
    measure->tick = change->tick;
    measure->box = ask->box;
    measure->stock = ask->stock;
    measure->what = arena_text(draft->arena, ask->what);
    measure->value = value;
    return FAULT_NONE;
}

/* Says what the step asks for instead. */
static enum fault refuse_measure(const struct step *step, const struct ask *asks, size_t count,
                                 const char *name, struct fault_note *note)
{
    struct text names;
    text_init(&names);
    for (size_t i = 0; i < count; i++)
        text_format(&names, "%s%s", i ? ", " : "", asks[i].name);
    enum fault fault =
        count ? fault_say(note, FAULT_UNKNOWN, "\"%s\" asks for no \"%s\", but for %s", step->title,
                          name, text_string(&names))
              : fault_say(note, FAULT_UNKNOWN, "\"%s\" asks for no measures", step->title);
    text_release(&names);
    return fault;
}

static enum fault take_measures(struct model *draft, const struct tick_change *change,
                                struct fault_note *note)
{
    size_t count = 0;
    const struct desk_done *done = change->done;
    const struct ask *asks = plan_asks(change->plan, change->step, draft->arena, &count);
    for (size_t i = 0; i < done->measure_count; i++) {
        const struct ask *ask = ask_named(asks, count, done->measures[i].name);
        if (!ask)
            return refuse_measure(change->step, asks, count, done->measures[i].name, note);
        enum fault fault = read_measure(draft, change, ask, done->measures[i].text, note);
        if (fault)
            return fault;
    }
    return FAULT_NONE;
}

/* ---- ticking ---- */

/* As many whole lines as the field takes. */
static const char *said_by(const struct step *step, struct arena *arena)
{
    const char *said = step_said(step, arena);
    int length = (int)strlen(said);
    while (length > SAID_MOST || (length > 0 && said[length - 1] != '\n'))
        length--;
    return arena_format(arena, "%.*s", length, said);
}

/* Whoever ticks is at the bench; with the last tick the piece stands in its room. */
static void follow_state(struct model *draft, const struct tick_change *change)
{
    size_t open = 0;
    for (size_t i = 0; i < change->plan->steps.count; i++)
        open += !change->plan->steps.at[i].ticked;
    draft->build.state = open <= 1 ? STATE_FINISHED : STATE_MAKING;
}

static enum fault change_tick(struct model *draft, void *context, struct fault_note *note)
{
    struct tick_change *change = context;
    struct tick *tick = MODEL_ADD(draft, tick);
    tick->step = arena_text(draft->arena, change->step->name);
    tick->at = arena_text(draft->arena, change->done->at);
    tick->minutes = change->done->minutes;
    tick->content = arena_format(draft->arena, "%016" PRIx64, change->step->content);
    tick->said = said_by(change->step, draft->arena);
    change->tick = tick->key;
    timing_take(draft, tick, change->step->usual);
    follow_state(draft, change);
    enum fault fault = take_facts(draft, change, note);
    return fault ? fault : take_measures(draft, change, note);
}

static int64_t tick_key(const struct model *model, const char *step)
{
    for (size_t i = 0; i < model->ticks.count; i++) {
        if (strcmp(model->ticks.at[i].step, step) == 0)
            return model->ticks.at[i].key;
    }
    return 0;
}

static enum fault change_measures(struct model *draft, void *context, struct fault_note *note)
{
    struct tick_change *change = context;
    change->tick = tick_key(draft, change->step->name);
    return take_measures(draft, change, note);
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
    for (size_t i = 0; i < plan->precedences.count; i++) {
        const struct precedence *precedence = &plan->precedences.at[i];

        if (precedence->after != step || plan->steps.at[precedence->before].ticked)
            continue;
        if (rule_shuts_heads(precedence->rule) || strcmp(precedence->rule, RULE_INNER_FLAP) == 0)
            return precedence;
    }
    return NULL;
}

static enum fault check_may_tick(struct desk *desk, const struct step *step,
                                 struct fault_note *note)
{
    const struct plan *plan = desk->state->plan;
    if (step->ticked)
        return fault_say(note, FAULT_REFUSED, "\"%s\" is ticked already", step->title);
    arena_release(&desk->preview);
    bool *waits = ARENA_MANY(&desk->preview, bool, plan->steps.count);
    if (!waits)
        return fault_say(note, FAULT_MEMORY, "there is not enough memory for this");
    const struct step *hold = hold_before(plan, (size_t)(step - plan->steps.at), waits);
    if (hold)
        return fault_say(note, FAULT_REFUSED, "\"%s\" has to be ticked before it", hold->title);
    const struct precedence *shut = shut_in_by(plan, (size_t)(step - plan->steps.at));
    if (shut)
        return fault_say(note, FAULT_REFUSED, "\"%s\" has to be done before it: %s (%s)",
                         plan->steps.at[shut->before].title, rule_find(shut->rule)->reason,
                         shut->rule);
    return FAULT_NONE;
}

enum fault desk_no_step(const struct desk *desk, const char *name, struct fault_note *note)
{
    const struct plan *plan = desk->state->plan;
    char *end;
    unsigned long number = strtoul(name, &end, 10);
    if (*name >= '0' && *name <= '9' && *end == '\0' && number >= 1 && number <= plan->steps.count)
        return fault_say(note, FAULT_UNKNOWN,
                         "steps go by name, since numbers shift: number %lu is now %s", number,
                         plan->steps.at[number - 1].name);
    return fault_say(note, FAULT_UNKNOWN, "the plan has no step \"%s\"", name);
}

enum fault desk_tick_done(struct desk *desk, const char *name, const struct desk_done *done,
                          struct fault_note *note)
{
    const struct step *step = plan_step(desk->state->plan, name);
    if (!step)
        return desk_no_step(desk, name, note);
    char label[STORE_LABEL];
    struct tick_change change = {desk->state->plan, step, done, 0};
    if (step->ticked && done->measure_count) {
        desk_label(label, "measures: %s", step->title);
        return desk_edit(desk, label, change_measures, &change, note);
    }
    enum fault fault = check_may_tick(desk, step, note);
    if (fault)
        return fault;
    desk_label(label, "tick: %s", step->title);
    return desk_edit(desk, label, change_tick, &change, note);
}

enum fault desk_tick(struct desk *desk, const char *name, const char *at, int64_t minutes,
                     struct fault_note *note)
{
    return desk_tick_done(desk, name, &(struct desk_done){.at = at, .minutes = minutes}, note);
}

/* ---- taking a tick back ---- */

/* Measures do not hang on their tick, but what was taken goes with it. */
static void remove_measures(struct model *draft, int64_t tick)
{
    for (size_t i = draft->measures.count; i-- > 0;) {
        if (draft->measures.at[i].tick == tick)
            model_remove(draft, ENTITY_measure, draft->measures.at[i].key);
    }
}

static enum fault change_untick(struct model *draft, void *context, struct fault_note *note)
{
    const char *step = context;
    const struct tick *tick = MODEL_FIND(draft, tick, tick_key(draft, step));
    remove_measures(draft, tick_key(draft, step));
    if (tick) {
        timing_give_back(draft, tick);
        cutting_give_back(draft, tick);
    }
    if (model_remove(draft, ENTITY_tick, tick_key(draft, step)) == 0)
        return fault_say(note, FAULT_REFUSED, "\"%s\" is not ticked", step);
    draft->build.state = STATE_MAKING;
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
        return fault_say(note, FAULT_REFUSED, "\"%s\" was done after it: take that back first",
                         after->title);
    desk_label(label, "take back: %s", step ? step->title : name);
    snprintf(step_name, sizeof step_name, "%s", name);
    return desk_edit(desk, label, change_untick, step_name, note);
}
