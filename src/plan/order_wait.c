/*
 * What waits for what. A link of the rules is applied key by key: the touches are sorted by what
 * they touch and by kind of step, so that the works of two kinds that share a box are two ranges
 * next to each other, and only pairs that may belong together are looked at.
 */
#include "plan/order.h"

#include "plan/rests.h"

#include <assert.h>
#include <stdlib.h>

struct range {
    size_t from, to; /* half-open, in touches */
};

static int compare_touch(const struct touch *touch, enum touch_kind of, int64_t key, int kind)
{
    if (touch->of != of)
        return touch->of < of ? -1 : 1;
    if (touch->key != key)
        return touch->key < key ? -1 : 1;
    return (touch->kind > kind) - (touch->kind < kind);
}

/* The first touch that is not before the one asked for. */
static size_t touch_bound(const struct ordering *ordering, enum touch_kind of, int64_t key,
                          int kind)
{
    size_t low = 0;
    size_t high = ordering->touches.count;

    while (low < high) {
        size_t middle = low + (high - low) / 2;

        if (compare_touch(&ordering->touches.at[middle], of, key, kind) < 0)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

static struct range touches_of(const struct ordering *ordering, enum touch_kind of, int64_t key,
                               int kind)
{
    return (struct range){touch_bound(ordering, of, key, kind),
                          touch_bound(ordering, of, key, kind + 1)};
}

static int64_t rest_of(const struct ordering *ordering, size_t before, size_t after)
{
    assert(before < ordering->works.count);
    assert(after < ordering->works.count);

    const struct rest *rest =
        rest_between(ordering->works.at[before].step.kind, ordering->works.at[after].step.kind,
                     ordering->planning->value);

    return rest ? ordering->planning->value[rest->value] : 0;
}

static void add_wait(struct ordering *ordering, size_t before, size_t after,
                     const struct rule *rule)
{
    struct wait *wait;

    assert(before < ordering->works.count && after < ordering->works.count && rule);
    if (before == after)
        return;
    wait = LIST_ADD(ordering->planning->arena, &ordering->waits);
    *wait = (struct wait){before, after, rule, false, rest_of(ordering, before, after)};
}

static void link_ranges(struct ordering *ordering, const struct link *link, const struct rule *rule,
                        struct range before, struct range after)
{
    for (size_t i = before.from; i < before.to; i++) {
        for (size_t j = after.from; j < after.to; j++) {
            size_t first = ordering->touches.at[i].work;
            size_t second = ordering->touches.at[j].work;

            if (order_relates(ordering, link->relation, &ordering->works.at[first],
                              &ordering->works.at[second]))
                add_wait(ordering, first, second, rule);
        }
    }
}

/* The touches of one key, from..to, kind by kind: those of a kind lie from first[kind] to
 * first[kind + 1]. */
static void split_by_kind(const struct ordering *ordering, struct range touches,
                          size_t first[STEP_KINDS + 1])
{
    size_t at = touches.from;

    for (int kind = 0; kind <= STEP_KINDS; kind++) {
        while (at < touches.to && ordering->touches.at[at].kind < kind)
            at++;
        first[kind] = at;
    }
    assert(first[STEP_KINDS] == touches.to);
}

static void wait_by_links(struct ordering *ordering, const struct rule *const *rule_of_link,
                          struct range touches)
{
    assert(touches.from < touches.to);

    size_t first[STEP_KINDS + 1];
    enum touch_kind of = ordering->touches.at[touches.from].of;

    split_by_kind(ordering, touches, first);
    for (size_t i = 0; i < link_count; i++) {
        struct range before = {first[links[i].before], first[links[i].before + 1]};
        struct range after = {first[links[i].after], first[links[i].after + 1]};

        if (order_relation_touch(links[i].relation) == of)
            link_ranges(ordering, &links[i], rule_of_link[i], before, after);
    }
}

/* What shares a key stands together in the sorted touches. */
static struct range next_key(const struct ordering *ordering, size_t from)
{
    assert(from < ordering->touches.count);

    const struct touch *first = &ordering->touches.at[from];
    struct range range = {from, from};

    while (range.to < ordering->touches.count && ordering->touches.at[range.to].of == first->of &&
           ordering->touches.at[range.to].key == first->key)
        range.to++;
    return range;
}

static const struct rule **rules_of_links(const struct ordering *ordering)
{
    const struct rule **found =
        ARENA_MANY(ordering->planning->arena, const struct rule *, link_count);

    for (size_t i = 0; i < link_count; i++) {
        found[i] = rule_find(links[i].rule);
        assert(found[i]);
    }
    return found;
}

static void wait_by_rules(struct ordering *ordering)
{
    const struct rule *const *rule_of_link = rules_of_links(ordering);
    struct range touches;

    for (size_t at = 0; at < ordering->touches.count; at = touches.to) {
        touches = next_key(ordering, at);
        wait_by_links(ordering, rule_of_link, touches);
    }
}

/* ---- constraints ---- */

/* The work of one of the kinds for a key, the first kind that there is; PLAN_NONE for none. */
static size_t work_of(const struct ordering *ordering, enum touch_kind of, int64_t key,
                      const int *kinds, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        struct range range = touches_of(ordering, of, key, kinds[i]);

        if (range.from < range.to)
            return ordering->touches.at[range.from].work;
    }
    return PLAN_NONE;
}

#define WORK_OF(ordering, of, key, kinds) \
    work_of((ordering), (of), (key), (kinds), sizeof(kinds) / sizeof *(kinds))

/* The step after which a join holds. */
static size_t join_done(const struct ordering *ordering, int64_t join)
{
    static const int kinds[] = {STEP_DRIVE, STEP_FIX, STEP_OFFER};

    return WORK_OF(ordering, TOUCH_JOIN, join, kinds);
}

static size_t join_begun(const struct ordering *ordering, int64_t join)
{
    static const int kinds[] = {STEP_OFFER, STEP_FIX};

    return WORK_OF(ordering, TOUCH_JOIN, join, kinds);
}

static size_t layer_begun(const struct ordering *ordering, int64_t layer)
{
    static const int kinds[] = {STEP_COVER, STEP_PAD,  STEP_BATTING, STEP_LINING,
                                STEP_BACK,  STEP_DUST, STEP_STAPLE,  STEP_TRIM};

    return WORK_OF(ordering, TOUCH_LAYER, layer, kinds);
}

static size_t layer_done(const struct ordering *ordering, int64_t layer)
{
    static const int kinds[] = {STEP_CORNER, STEP_STAPLE, STEP_PAD,  STEP_BATTING,
                                STEP_LINING, STEP_BACK,   STEP_DUST, STEP_TRIM};

    return WORK_OF(ordering, TOUCH_LAYER, layer, kinds);
}

/* The flap of a layer at a join; PLAN_NONE when all of it is stapled at the bench. */
static size_t flap_at(const struct ordering *ordering, int64_t layer, int64_t join)
{
    struct range range = touches_of(ordering, TOUCH_LAYER, layer, STEP_FLAP);

    for (size_t i = range.from; i < range.to; i++)
        if (ordering->works.at[ordering->touches.at[i].work].step.join == join)
            return ordering->touches.at[i].work;
    return PLAN_NONE;
}

static size_t panel_of(const struct ordering *ordering, int64_t facing)
{
    const struct planning *planning = ordering->planning;
    const struct facing *found = MODEL_FIND(planning->model, facing, facing);
    int64_t first = counted_facing(planning, &ordering->counted, facing)->first;
    struct range range;

    if (!found)
        return PLAN_NONE;
    range = touches_of(ordering, TOUCH_BOX, found->box, STEP_PANEL);
    for (size_t i = range.from; i < range.to; i++)
        if (ordering->works.at[ordering->touches.at[i].work].step.facing == first)
            return ordering->touches.at[i].work;
    return PLAN_NONE;
}

static void add_wait_if(struct ordering *ordering, size_t before, size_t after,
                        const struct rule *rule)
{
    if (before != PLAN_NONE && after != PLAN_NONE)
        add_wait(ordering, before, after, rule);
}

static void wait_by_constraint(struct ordering *ordering, const struct constraint *constraint)
{
    static const char *const usual[] = {[JOIN_BEFORE_LAYER] = RULE_SHUT_SIDE,
                                        [LAYER_BEFORE_JOIN] = RULE_TRAPPED_EDGE,
                                        [JOIN_BEFORE_FACING] = RULE_SHUT_SIDE,
                                        [FACING_BEFORE_JOIN] = RULE_NEEDED_WOOD,
                                        [JOIN_BEFORE_JOIN] = RULE_LAID_OVER};
    static const int dry[] = {STEP_DRY, STEP_DRILL, STEP_OFFER, STEP_FIX};
    const struct rule *rule = rule_find(constraint->rule);
    size_t done = join_done(ordering, constraint->join);
    size_t flap;

    if (!rule)
        rule = rule_find(usual[constraint->kind]);
    switch (constraint->kind) {
    case JOIN_BEFORE_LAYER:
        flap = flap_at(ordering, constraint->item, constraint->join);
        add_wait_if(ordering, done,
                    flap != PLAN_NONE ? flap : layer_begun(ordering, constraint->item), rule);
        break;
    case LAYER_BEFORE_JOIN:
        add_wait_if(ordering, layer_done(ordering, constraint->item),
                    join_begun(ordering, constraint->join), rule);
        break;
    case JOIN_BEFORE_FACING:
        add_wait_if(ordering, done, panel_of(ordering, constraint->item), rule);
        break;
    case FACING_BEFORE_JOIN:
        add_wait_if(ordering, panel_of(ordering, constraint->item),
                    WORK_OF(ordering, TOUCH_JOIN, constraint->join, dry), rule);
        break;
    case JOIN_BEFORE_JOIN:
        add_wait_if(ordering, done, join_begun(ordering, constraint->item), rule);
        break;
    }
}

/* An edge that is trapped in a joint is stapled before it; a side that shuts waits for each join
 * that some of its edge waits for. */
static void wait_by_interval(struct ordering *ordering, const struct interval *interval)
{
    assert(interval->edge < ordering->planning->plan->edges.count);

    int64_t layer = ordering->planning->plan->edges.at[interval->edge].layer;

    if (!interval->join)
        return;
    if (interval->class == CLASS_TRAPPED)
        add_wait_if(ordering, layer_done(ordering, layer), join_begun(ordering, interval->join),
                    rule_find(RULE_TRAPPED_EDGE));
    else if (interval->pass != STAPLED_AT_BENCH &&
             flap_at(ordering, layer, interval->join) == PLAN_NONE)
        add_wait_if(ordering, join_done(ordering, interval->join), layer_begun(ordering, layer),
                    rule_find(RULE_SHUT_SIDE));
}

static int compare_waits(const void *a, const void *b)
{
    const struct wait *left = a;
    const struct wait *right = b;

    if (left->before != right->before)
        return left->before < right->before ? -1 : 1;
    if (left->after != right->after)
        return left->after < right->after ? -1 : 1;
    return (left->rule > right->rule) - (left->rule < right->rule);
}

/* Two ways may lead to one wait: a layer over two boxes shares both with a join. */
static void keep_each_once(struct ordering *ordering)
{
    size_t kept = 0;

    if (ordering->waits.count)
        qsort(ordering->waits.at, ordering->waits.count, sizeof *ordering->waits.at, compare_waits);
    for (size_t i = 0; i < ordering->waits.count; i++)
        if (!kept || compare_waits(&ordering->waits.at[kept - 1], &ordering->waits.at[i]) != 0)
            ordering->waits.at[kept++] = ordering->waits.at[i];
    ordering->waits.count = kept;
}

void order_wait(struct ordering *ordering)
{
    const struct plan *plan = ordering->planning->plan;

    wait_by_rules(ordering);
    for (size_t i = 0; i < plan->constraints.count; i++)
        wait_by_constraint(ordering, &plan->constraints.at[i]);
    for (size_t i = 0; i < plan->intervals.count; i++)
        wait_by_interval(ordering, &plan->intervals.at[i]);
    keep_each_once(ordering);
}

/* ---- the ends ---- */

/* Which works something else waits for: at the bench, and at all. */
static void mark_waited_for(const struct ordering *ordering, bool *at_bench, bool *at_all)
{
    for (size_t i = 0; i < ordering->waits.count; i++) {
        const struct wait *wait = &ordering->waits.at[i];

        if (wait->dropped || wait->rule->kind == RULE_SOFT)
            continue;
        at_all[wait->before] = true;
        if (!ordering->works.at[wait->after].in_room)
            at_bench[wait->before] = true;
    }
}

/* What nothing holds back, like legs under a cushion, waits at least for the shop. */
static void wait_for_shop(struct ordering *ordering)
{
    static const int shop[] = {STEP_BUY};
    size_t buy = WORK_OF(ordering, TOUCH_BUILD, 0, shop);
    bool *held = ARENA_MANY(ordering->planning->arena, bool, ordering->works.count);

    for (size_t i = 0; i < ordering->waits.count; i++)
        if (!ordering->waits.at[i].dropped && ordering->waits.at[i].rule->kind != RULE_SOFT)
            held[ordering->waits.at[i].after] = true;
    for (size_t i = 0; buy != PLAN_NONE && i < ordering->works.count; i++)
        if (!held[i] && ordering->works.at[i].step.phase > step_kinds[STEP_BUY].phase &&
            ordering->works.at[i].step.phase < step_kinds[STEP_FINAL].phase)
            add_wait(ordering, buy, i, rule_find(RULE_SUPPLIES));
}

void order_wait_ends(struct ordering *ordering)
{
    static const int moving[] = {STEP_MOVE};
    static const int final[] = {STEP_FINAL};
    size_t count = ordering->works.count;
    bool *at_bench = ARENA_MANY(ordering->planning->arena, bool, count);
    bool *at_all = ARENA_MANY(ordering->planning->arena, bool, count);
    size_t move = WORK_OF(ordering, TOUCH_BUILD, 0, moving);
    size_t end = WORK_OF(ordering, TOUCH_BUILD, 0, final);

    mark_waited_for(ordering, at_bench, at_all);
    for (size_t i = 0; i < count; i++) {
        const struct work *work = &ordering->works.at[i];
        bool last = work->step.phase == step_kinds[STEP_FINAL].phase;

        if (!last && move != PLAN_NONE && !work->in_room && !at_bench[i]) {
            add_wait(ordering, i, move, rule_find(RULE_AT_BENCH));
            at_all[i] = true;
        }
    }
    if (move != PLAN_NONE)
        at_all[move] = at_bench[move] = false;
    mark_waited_for(ordering, at_bench, at_all);
    for (size_t i = 0; i < count; i++) {
        struct work *work = &ordering->works.at[i];

        if (at_all[i] || end == PLAN_NONE || work->step.phase == step_kinds[STEP_FINAL].phase)
            continue;
        add_wait(ordering, i, end, rule_find(RULE_LAST));
        ordering->works.at[end].in_room |= work->in_room;
    }
    wait_for_shop(ordering);
}
