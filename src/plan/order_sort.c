/*
 * The sequence: always the first of the works that are free, by a fixed rank (bench before room,
 * phase, people, tool, box, join, layer, panels, kind). A work that is free but still rests, after
 * glue say, stands aside while the bench's clock runs and others are done; when nothing else is
 * left the clock waits.
 *
 * When no work is free the waits that are left hold a circle: it is found by walking from a work to
 * one it waits for until one comes again, and the softest wait on it is dropped. A wait may turn
 * out to have been dropped for nothing, when its circle had to be broken at a harder one as well.
 * Such waits are taken back, the hardest first, and the sequence is made anew: in the end each wait
 * that is dropped closes a circle of waits that hold.
 *
 * Invariants while it runs:
 *   1  a work that is free (nothing left that it waits for) and not yet done is in the heap, or
 *      among those that rest
 *   2  left[w] is the number of waits of w whose first work is not done
 */
#include "plan/order.h"

#include "plan/findings.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

struct sorting {
    struct ordering *ordering;
    size_t *rank;    /* of each work: smaller goes first */
    size_t *by_rank; /* and back */
    size_t *left;
    bool *done;
    size_t *incoming, *first_incoming; /* waits of each work, work i from first[i] to first[i+1] */
    size_t *outgoing, *first_outgoing;
    size_t *heap; /* of ranks */
    size_t heap_count;
    size_t next;  /* no work of a smaller rank is left */
    size_t *seen; /* on the walk: round in which a work was met */
    size_t round;
    struct bench_clock clock;
    int64_t *dry;    /* of each work: when all that it rests after has rested */
    size_t *resting; /* ranks of works that are free but for that */
    size_t resting_count;
};

/* ---- rank ---- */

struct ranked {
    const struct work *work;
    size_t index;
};

static int compare_keys(int64_t a, int64_t b)
{
    return (a > b) - (a < b);
}

/* Work for two is done while two are there; but a join that is offered is driven at once. */
static int bunched(const struct work *work)
{
    return work->of_join && work->step.phase >= step_kinds[STEP_OFFER].phase ? 0
                                                                             : work->step.people;
}

static int compare_ranked(const void *a, const void *b)
{
    const struct work *left = ((const struct ranked *)a)->work;
    const struct work *right = ((const struct ranked *)b)->work;
    const int steps[] = {
        left->in_room - right->in_room,
        left->step.phase - right->step.phase,
        bunched(right) - bunched(left),
        strcmp(step_kinds[left->step.kind].tool, step_kinds[right->step.kind].tool),
        compare_keys(left->step.box, right->step.box),
        compare_keys(left->step.join, right->step.join),
        compare_keys(left->step.layer, right->step.layer),
        compare_keys(left->step.facing, right->step.facing),
        left->step.kind - right->step.kind,
        compare_keys(left->stock, right->stock),
    };

    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
        if (steps[i])
            return steps[i];
    return 0;
}

static void rank_works(struct sorting *sorting)
{
    const struct ordering *ordering = sorting->ordering;
    struct arena *arena = ordering->planning->arena;
    size_t count = ordering->works.count;
    struct ranked *ranked = ARENA_MANY(arena, struct ranked, count);

    for (size_t i = 0; i < count; i++)
        ranked[i] = (struct ranked){&ordering->works.at[i], i};
    qsort(ranked, count, sizeof *ranked, compare_ranked);
    sorting->rank = ARENA_MANY(arena, size_t, count);
    sorting->by_rank = ARENA_MANY(arena, size_t, count);
    for (size_t i = 0; i < count; i++) {
        sorting->by_rank[i] = ranked[i].index;
        sorting->rank[ranked[i].index] = i;
    }
}

/* ---- waits by work ---- */

static size_t end_of(const struct wait *wait, bool incoming)
{
    return incoming ? wait->after : wait->before;
}

static void index_waits(const struct ordering *ordering, bool incoming, size_t **ret_waits,
                        size_t **ret_first)
{
    struct arena *arena = ordering->planning->arena;
    size_t works = ordering->works.count;
    size_t *first = ARENA_MANY(arena, size_t, works + 2);
    size_t *waits = ARENA_MANY(arena, size_t, ordering->waits.count);

    for (size_t i = 0; i < ordering->waits.count; i++)
        first[end_of(&ordering->waits.at[i], incoming) + 2]++;
    for (size_t i = 2; i < works + 2; i++)
        first[i] += first[i - 1];
    for (size_t i = 0; i < ordering->waits.count; i++)
        waits[first[end_of(&ordering->waits.at[i], incoming) + 1]++] = i;
    *ret_waits = waits;
    *ret_first = first;
    assert(first[works] == ordering->waits.count);
}

/* ---- heap of ranks ---- */

static void heap_put(struct sorting *sorting, size_t rank)
{
    size_t at = sorting->heap_count++;

    assert(at < sorting->ordering->works.count);
    while (at > 0 && sorting->heap[(at - 1) / 2] > rank) {
        sorting->heap[at] = sorting->heap[(at - 1) / 2];
        at = (at - 1) / 2;
    }
    sorting->heap[at] = rank;
}

static size_t heap_take(struct sorting *sorting)
{
    assert(sorting->heap_count > 0);

    size_t taken = sorting->heap[0];
    size_t last = sorting->heap[--sorting->heap_count];
    size_t at = 0;

    for (;;) {
        size_t child = 2 * at + 1;

        if (child + 1 < sorting->heap_count && sorting->heap[child + 1] < sorting->heap[child])
            child++;
        if (child >= sorting->heap_count || sorting->heap[child] >= last)
            break;
        sorting->heap[at] = sorting->heap[child];
        at = child;
    }
    sorting->heap[at] = last;
    return taken;
}

/* ---- circles ---- */

/* A wait that still holds the work back; there is one, or the work would be free. */
static size_t wait_that_holds(const struct sorting *sorting, size_t work)
{
    for (size_t i = sorting->first_incoming[work];; i++) {
        const struct wait *wait;

        assert(i < sorting->first_incoming[work + 1]);
        wait = &sorting->ordering->waits.at[sorting->incoming[i]];
        if (!wait->dropped && !sorting->done[wait->before])
            return sorting->incoming[i];
    }
}

/* Some work on a circle. */
static size_t work_on_circle(struct sorting *sorting)
{
    size_t work;

    while (sorting->done[sorting->by_rank[sorting->next]])
        sorting->next++;
    work = sorting->by_rank[sorting->next];
    sorting->round++;
    while (sorting->seen[work] != sorting->round) {
        sorting->seen[work] = sorting->round;
        work = sorting->ordering->waits.at[wait_that_holds(sorting, work)].before;
    }
    return work;
}

/* The softest wait on the circle through a work; of equals the one whose last work ranks first. */
static size_t softest_wait(const struct sorting *sorting, size_t start)
{
    const struct wait *waits = sorting->ordering->waits.at;
    size_t softest = wait_that_holds(sorting, start);

    for (size_t work = waits[softest].before; work != start;) {
        size_t wait = wait_that_holds(sorting, work);
        enum rule_kind kind = waits[wait].rule->kind;
        enum rule_kind least = waits[softest].rule->kind;

        if (kind > least || (kind == least && sorting->rank[waits[wait].after] <
                                                  sorting->rank[waits[softest].after]))
            softest = wait;
        work = waits[wait].before;
    }
    return softest;
}

static void release(struct sorting *sorting, size_t work)
{
    assert(sorting->left[work] > 0);
    if (--sorting->left[work] == 0)
        heap_put(sorting, sorting->rank[work]);
}

static void break_circle(struct sorting *sorting)
{
    size_t index = softest_wait(sorting, work_on_circle(sorting));
    struct wait *wait = &sorting->ordering->waits.at[index];

    assert(!wait->dropped);
    wait->dropped = true;
    release(sorting, wait->after);
}

/* ---- all ---- */

static struct sorting sorting_begin(struct ordering *ordering)
{
    struct arena *arena = ordering->planning->arena;
    size_t count = ordering->works.count;
    struct sorting sorting = {.ordering = ordering,
                              .left = ARENA_MANY(arena, size_t, count),
                              .done = ARENA_MANY(arena, bool, count),
                              .heap = ARENA_MANY(arena, size_t, count),
                              .seen = ARENA_MANY(arena, size_t, count),
                              .clock = clock_begin(ordering),
                              .dry = ARENA_MANY(arena, int64_t, count),
                              .resting = ARENA_MANY(arena, size_t, count)};

    rank_works(&sorting);
    index_waits(ordering, true, &sorting.incoming, &sorting.first_incoming);
    index_waits(ordering, false, &sorting.outgoing, &sorting.first_outgoing);
    for (size_t i = 0; i < ordering->waits.count; i++)
        if (!ordering->waits.at[i].dropped)
            sorting.left[ordering->waits.at[i].after]++;
    for (size_t i = 0; i < count; i++)
        if (sorting.left[i] == 0)
            heap_put(&sorting, sorting.rank[i]);
    return sorting;
}

static void finish(struct sorting *sorting, size_t work)
{
    assert(!sorting->done[work] && sorting->left[work] == 0);

    sorting->done[work] = true;
    for (size_t i = sorting->first_outgoing[work]; i < sorting->first_outgoing[work + 1]; i++) {
        const struct wait *wait = &sorting->ordering->waits.at[sorting->outgoing[i]];

        if (wait->dropped)
            continue;
        if (sorting->dry[wait->after] < sorting->clock.now + wait->rest)
            sorting->dry[wait->after] = sorting->clock.now + wait->rest;
        release(sorting, wait->after);
    }
}

/* ---- what rests ---- */

static int64_t dry_at(const struct sorting *sorting, size_t rank)
{
    return sorting->dry[sorting->by_rank[rank]];
}

/* Back into the heap with all that has rested by now. */
static void take_up_rested(struct sorting *sorting)
{
    size_t kept = 0;

    for (size_t i = 0; i < sorting->resting_count; i++) {
        if (dry_at(sorting, sorting->resting[i]) <= sorting->clock.now)
            heap_put(sorting, sorting->resting[i]);
        else
            sorting->resting[kept++] = sorting->resting[i];
    }
    sorting->resting_count = kept;
}

/* Nothing else is left to do: what rests least is waited for. */
static size_t wait_for_one(struct sorting *sorting)
{
    size_t first = 0;
    size_t rank;

    assert(sorting->resting_count > 0);
    for (size_t i = 1; i < sorting->resting_count; i++)
        if (dry_at(sorting, sorting->resting[i]) < dry_at(sorting, sorting->resting[first]))
            first = i;
    rank = sorting->resting[first];
    sorting->resting[first] = sorting->resting[--sorting->resting_count];
    clock_wait(&sorting->clock, dry_at(sorting, rank),
               &sorting->ordering->works.at[sorting->by_rank[rank]]);
    return rank;
}

/* The rank of the next work; some work is free. */
static size_t next_rank(struct sorting *sorting)
{
    take_up_rested(sorting);
    while (sorting->heap_count > 0) {
        size_t rank = heap_take(sorting);

        if (dry_at(sorting, rank) <= sorting->clock.now)
            return rank;
        sorting->resting[sorting->resting_count++] = rank;
    }
    return wait_for_one(sorting);
}

/* False when no circle had to be broken. */
static bool put_in_sequence(struct sorting *sorting)
{
    struct ordering *ordering = sorting->ordering;
    bool broken = false;

    for (size_t placed = 0; placed < ordering->works.count; placed++) {
        size_t work;

        for (; sorting->heap_count + sorting->resting_count == 0; broken = true)
            break_circle(sorting);
        work = sorting->by_rank[next_rank(sorting)];
        ordering->sequence[placed] = work;
        clock_work(&sorting->clock, ordering, &ordering->works.at[work]);
        finish(sorting, work);
    }
    assert(sorting->heap_count == 0 && sorting->resting_count == 0);
    return broken;
}

/* ---- waits that were dropped for nothing ---- */

/* Whether waits that hold lead from one work to another. Uses the heap, which is empty by then, for
 * what is still to be looked at. */
static bool leads_to(struct sorting *sorting, size_t from, size_t to)
{
    size_t *open = sorting->heap;
    size_t count = 1;

    open[0] = from;
    sorting->seen[from] = ++sorting->round;
    while (count > 0 && sorting->seen[to] != sorting->round) {
        size_t work = open[--count];

        for (size_t i = sorting->first_outgoing[work]; i < sorting->first_outgoing[work + 1]; i++) {
            const struct wait *wait = &sorting->ordering->waits.at[sorting->outgoing[i]];

            if (wait->dropped || sorting->seen[wait->after] == sorting->round)
                continue;
            sorting->seen[wait->after] = sorting->round;
            open[count++] = wait->after;
        }
    }
    return sorting->seen[to] == sorting->round;
}

/* O(dropped * (works + waits)). */
static bool take_back(struct sorting *sorting)
{
    static const enum rule_kind hardest_first[] = {RULE_HARD, RULE_QUALITY, RULE_SOFT};
    struct ordering *ordering = sorting->ordering;
    bool taken = false;

    assert(sorting->heap_count == 0);
    for (size_t kind = 0; kind < sizeof hardest_first / sizeof *hardest_first; kind++)
        for (size_t i = 0; i < ordering->waits.count; i++) {
            struct wait *wait = &ordering->waits.at[i];

            if (!wait->dropped || wait->rule->kind != hardest_first[kind] ||
                leads_to(sorting, wait->after, wait->before))
                continue;
            wait->dropped = false;
            taken = true;
        }
    return taken;
}

void order_sort(struct ordering *ordering)
{
    struct sorting sorting = sorting_begin(ordering);

    ordering->sequence = ARENA_MANY(ordering->planning->arena, size_t, ordering->works.count);
    if (put_in_sequence(&sorting) && take_back(&sorting)) {
        sorting = sorting_begin(ordering);
        put_in_sequence(&sorting);
    }
}

/* ---- what is told ---- */

#define SENTENCES 6

/* For each work the wait by which it is reached from the first one, over hard waits that hold, in
 * as few as there are: SIZE_MAX where it is not reached. */
static size_t *reach_from(const struct ordering *ordering, size_t start)
{
    struct arena *arena = ordering->planning->arena;
    size_t count = ordering->works.count;
    size_t *by = ARENA_MANY(arena, size_t, count);
    size_t *queue = ARENA_MANY(arena, size_t, count);
    size_t *outgoing, *first;
    size_t queued = 1;

    index_waits(ordering, false, &outgoing, &first);
    memset(by, 0xff, count * sizeof *by);
    queue[0] = start;
    for (size_t at = 0; at < queued; at++)
        for (size_t i = first[queue[at]]; i < first[queue[at] + 1]; i++) {
            const struct wait *wait = &ordering->waits.at[outgoing[i]];

            if (wait->dropped || wait->rule->kind != RULE_HARD || wait->after == start ||
                by[wait->after] != SIZE_MAX)
                continue;
            by[wait->after] = outgoing[i];
            queue[queued++] = wait->after;
        }
    return by;
}

static const char *sentence_of(const struct ordering *ordering, const struct wait *wait)
{
    return arena_format(ordering->planning->arena, "First \"%s\", then \"%s\": %s.",
                        ordering->works.at[wait->before].step.title,
                        ordering->works.at[wait->after].step.title, wait->rule->reason);
}

/* The circle that a wait closes, wait by wait: what leads from its last work back to its first, and
 * the wait itself. Of a longer one the part next to it. */
static void tell_story(const struct ordering *ordering, const struct wait *closing,
                       struct finding *finding)
{
    const size_t *by = reach_from(ordering, closing->after);
    const char **story = ARENA_MANY(ordering->planning->arena, const char *, SENTENCES);
    size_t at = SENTENCES;

    assert(closing->dropped && closing->rule->kind == RULE_HARD);
    story[--at] = sentence_of(ordering, closing);
    for (size_t work = closing->before; at > 0 && work != closing->after && by[work] != SIZE_MAX;) {
        const struct wait *wait = &ordering->waits.at[by[work]];

        story[--at] = sentence_of(ordering, wait);
        work = wait->before;
    }
    finding->story = story + at;
    finding->story_count = SENTENCES - at;
}

static void tell_circle(const struct ordering *ordering, const struct wait *wait)
{
    const struct step *step = &ordering->works.at[wait->after].step;
    enum entity_kind entity = step->join ? ENTITY_join : step->layer ? ENTITY_layer : ENTITY_box;
    int64_t key = step->join ? step->join : step->layer ? step->layer : step->box;

    tell_story(ordering, wait, finding_add(ordering->planning, FINDING_ORDER_CIRCLE, entity, key));
}

void order_tell_circles(const struct ordering *ordering)
{
    for (size_t i = 0; i < ordering->waits.count; i++) {
        const struct wait *wait = &ordering->waits.at[i];

        if (wait->dropped && wait->rule->kind == RULE_HARD)
            tell_circle(ordering, wait);
    }
}
