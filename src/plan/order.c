/*
 * The order of work: which steps there are, what each waits for, the sequence, and what was ticked.
 *
 * The sequence is made twice. The first time shows which waits close a circle and are dropped, and
 * with the rest what has to be done in the room because something before it is; the second time all
 * that is left of the bench stands before the move.
 */
#include "plan/order.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

/* ---- the room ---- */

/* What is done in the room has the phases of the room: a join after the move is no bench work. */
static void move_phases(struct ordering *ordering)
{
    for (size_t i = 0; i < ordering->works.count; i++) {
        struct work *work = &ordering->works.at[i];

        if (work->in_room && work->step.phase < step_kinds[STEP_MOVE].phase)
            work->step.phase = step_kinds[STEP_FIX].phase;
    }
}

/* A step that waits for one in the room is done there, but for the books. */
static void spread_room(struct ordering *ordering, const size_t *position)
{
    size_t count = ordering->waits.count;
    struct wait **by_place = ARENA_MANY(ordering->planning->arena, struct wait *, count);
    size_t *first = ARENA_MANY(ordering->planning->arena, size_t, ordering->works.count + 1);

    for (size_t i = 0; i < count; i++)
        first[position[ordering->waits.at[i].before] + 1]++;
    for (size_t i = 0; i < ordering->works.count; i++)
        first[i + 1] += first[i];
    for (size_t i = count; i-- > 0;)
        by_place[--first[position[ordering->waits.at[i].before] + 1]] = &ordering->waits.at[i];
    for (size_t i = 0; i < count; i++) {
        struct work *after = &ordering->works.at[by_place[i]->after];

        if (!by_place[i]->dropped && by_place[i]->rule->kind != RULE_SOFT &&
            ordering->works.at[by_place[i]->before].in_room && after->step.kind != STEP_ACCOUNT)
            after->in_room = true;
    }
    move_phases(ordering);
}

static size_t *positions(const struct ordering *ordering)
{
    size_t *position = ARENA_MANY(ordering->planning->arena, size_t, ordering->works.count);

    for (size_t i = 0; i < ordering->works.count; i++)
        position[ordering->sequence[i]] = i;
    return position;
}

/* ---- ticks ---- */

static void mark_ticks(struct planning *planning)
{
    struct ticked ticked = ticked_make(planning);

    for (size_t i = 0; i < planning->plan->steps.count; i++) {
        struct step *step = &planning->plan->steps.at[i];

        step->ticked = ticked_find(&ticked, step->name) != NULL;
    }
}

/* Ready is what is not ticked and waits for nothing but what is soft. */
static void mark_ready(struct plan *plan, const struct ordering *ordering, const size_t *position)
{
    for (size_t i = 0; i < plan->steps.count; i++)
        plan->steps.at[i].ready = !plan->steps.at[i].ticked;
    for (size_t i = 0; i < ordering->waits.count; i++) {
        const struct wait *wait = &ordering->waits.at[i];

        if (!wait->dropped && wait->rule->kind != RULE_SOFT &&
            !plan->steps.at[position[wait->before]].ticked)
            plan->steps.at[position[wait->after]].ready = false;
    }
}

/* ---- into the plan ---- */

static void put_steps(struct plan *plan, struct ordering *ordering)
{
    struct arena *arena = ordering->planning->arena;

    list_make_room(arena, &plan->steps.any, ordering->works.count, sizeof *plan->steps.at);
    for (size_t i = 0; i < ordering->works.count; i++) {
        assert(ordering->sequence[i] < ordering->works.count);
        const struct work *work = &ordering->works.at[ordering->sequence[i]];
        struct step *step = LIST_ADD(arena, &plan->steps);

        *step = work->step;
        step->place = work->in_room ? PLACE_SITE : PLACE_BENCH;
    }
    assert(plan->steps.count == ordering->works.count);
}

static int compare_precedences(const void *a, const void *b)
{
    const struct precedence *left = a;
    const struct precedence *right = b;

    if (left->after != right->after)
        return left->after < right->after ? -1 : 1;
    if (left->before != right->before)
        return left->before < right->before ? -1 : 1;
    return strcmp(left->rule, right->rule);
}

static void put_precedences(struct plan *plan, const struct ordering *ordering,
                            const size_t *position)
{
    struct arena *arena = ordering->planning->arena;

    list_make_room(arena, &plan->precedences.any, ordering->waits.count,
                   sizeof *plan->precedences.at);
    for (size_t i = 0; i < ordering->waits.count; i++) {
        const struct wait *wait = &ordering->waits.at[i];
        struct precedence *precedence;

        if (wait->dropped)
            continue;
        precedence = LIST_ADD(arena, &plan->precedences);
        *precedence = (struct precedence){.before = position[wait->before],
                                          .after = position[wait->after],
                                          .hard = wait->rule->kind == RULE_HARD,
                                          .soft = wait->rule->kind == RULE_SOFT,
                                          .rest = wait->rest};
        assert(precedence->before < precedence->after);
        assert(strlen(wait->rule->id) < sizeof precedence->rule);
        memcpy(precedence->rule, wait->rule->id, strlen(wait->rule->id) + 1);
    }
    if (plan->precedences.count)
        qsort(plan->precedences.at, plan->precedences.count, sizeof *plan->precedences.at,
              compare_precedences);
}

/* Why a step is done that waits for nothing. */
static const char *free_reason(int kind)
{
    static const char *const reasons[STEP_KINDS] = {
        [STEP_DECIDE] = "every size hangs on it",
        [STEP_ROUTE] = "what has to pass the narrowest place decides where the piece is split",
        [STEP_BED] = "the frame is there already, and its holes do not move",
    };

    return reasons[kind] ? reasons[kind] : "nothing holds it back, and what follows waits for it";
}

/* Why now: of what the step waited for, the last; a hard rule before one of quality. */
static void put_reasons(struct plan *plan)
{
    const struct rule *held = NULL; /* of the step; precedences of one step stand together */

    for (size_t i = 0; i < plan->steps.count; i++)
        plan->steps.at[i].because = free_reason(plan->steps.at[i].kind);
    for (size_t i = 0; i < plan->precedences.count; i++) {
        const struct precedence *precedence = &plan->precedences.at[i];
        struct step *step = &plan->steps.at[precedence->after];
        const struct rule *rule = rule_find(precedence->rule);
        assert(rule); /* of the table */

        if (i == 0 || plan->precedences.at[i - 1].after != precedence->after)
            held = NULL;
        if (held && rule->kind > held->kind)
            continue;
        held = rule;
        step->because = rule->reason;
        memcpy(step->rule, precedence->rule, sizeof step->rule);
    }
}

/* Waits that closed a circle are left out; what now comes before what it should wait for says so.
 * Of several the one that matters most: quality before what is only slower. */
static void put_departures(struct plan *plan, const struct ordering *ordering,
                           const size_t *position)
{
    const struct wait **most =
        ARENA_MANY(ordering->planning->arena, const struct wait *, plan->steps.count);

    for (size_t i = 0; i < ordering->waits.count; i++) {
        const struct wait *wait = &ordering->waits.at[i];
        const struct wait **kept = &most[position[wait->after]];

        if (!wait->dropped || wait->rule->kind == RULE_HARD)
            continue;
        if (!*kept || wait->rule->kind < (*kept)->rule->kind ||
            (wait->rule->kind == (*kept)->rule->kind &&
             position[wait->before] < position[(*kept)->before]))
            *kept = wait;
    }
    for (size_t i = 0; i < plan->steps.count; i++)
        if (most[i])
            plan->steps.at[i].unusual = arena_format(
                ordering->planning->arena, "before \"%s\", though %s",
                plan->steps.at[position[most[i]->before]].title, most[i]->rule->reason);
}

void pass_order(struct planning *planning)
{
    struct ordering ordering = {
        .planning = planning, .counted = counted_make(planning), .flaps = flaps_make(planning)};
    const size_t *position;

    order_make(&ordering);
    order_minutes(&ordering);
    order_wait(&ordering);
    order_sort(&ordering);
    spread_room(&ordering, positions(&ordering));
    order_wait_ends(&ordering);
    order_sort(&ordering);
    order_tell_circles(&ordering);
    position = positions(&ordering);
    put_steps(planning->plan, &ordering);
    put_precedences(planning->plan, &ordering, position);
    put_reasons(planning->plan);
    put_departures(planning->plan, &ordering, position);
    mark_ticks(planning);
    mark_ready(planning->plan, &ordering, position);
}
