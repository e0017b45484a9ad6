/*
 * A run counts for each node the edges that lead from it to nodes still there, and for each way the
 * blockers still there; taking a node off counts down what hangs on it, and a node whose counts
 * allow it goes on a stack.
 *
 * Invariants while it runs:
 *   1  out[s] is the number of edges s -> t with t still there
 *   2  blocked[w] is the number of blockers of w still there, the way's own node not counted
 *   3  open[s] is the number of ways of s that are not shut and not blocked
 *   4  a node is on the stack, or was, exactly when it may be taken off
 */
#include "plan/peel.h"

#include "base/fault.h"

#include <assert.h>
#include <stdint.h>
#include <string.h>

/* ---- making ---- */

/* Turns counts at [i + 2] into beginnings at [i + 1]; filling moves them to the ends. */
static void add_up(size_t *first, size_t count)
{
    for (size_t i = 2; i < count + 2; i++)
        first[i] += first[i - 1];
}

static void index_edges(struct peel *peel, struct arena *arena)
{
    const struct peel_problem *problem = &peel->problem;

    peel->first_into = ARENA_MANY(arena, size_t, problem->node_count + 2);
    peel->into = ARENA_MANY(arena, size_t, problem->edge_count);
    for (size_t i = 0; i < problem->edge_count; i++) {
        assert(problem->edges[i].before < problem->node_count);
        assert(problem->edges[i].after < problem->node_count);
        peel->first_into[problem->edges[i].after + 2]++;
    }
    add_up(peel->first_into, problem->node_count);
    for (size_t i = 0; i < problem->edge_count; i++)
        peel->into[peel->first_into[problem->edges[i].after + 1]++] = problem->edges[i].before;
    assert(peel->first_into[problem->node_count] == problem->edge_count);
}

static void index_blockers(struct peel *peel, struct arena *arena)
{
    const struct peel_problem *problem = &peel->problem;

    peel->first_held = ARENA_MANY(arena, size_t, problem->node_count + 2);
    peel->held = ARENA_MANY(arena, size_t, problem->blocker_count);
    for (size_t i = 0; i < problem->blocker_count; i++) {
        assert(problem->blockers[i] < problem->node_count);
        peel->first_held[problem->blockers[i] + 2]++;
    }
    add_up(peel->first_held, problem->node_count);
    for (size_t way = 0; way < problem->way_count; way++) {
        const struct peel_way *of = &problem->ways[way];

        for (size_t i = 0; i < of->blocker_count; i++) {
            size_t node = problem->blockers[of->first_blocker + i];

            peel->held[peel->first_held[node + 1]++] = way;
        }
    }
    assert(peel->first_held[problem->node_count] == problem->blocker_count);
}

static void index_ways(struct peel *peel, struct arena *arena)
{
    const struct peel_problem *problem = &peel->problem;
    size_t way = 0;

    peel->first_way = ARENA_MANY(arena, size_t, problem->node_count + 1);
    for (size_t node = 0; node <= problem->node_count; node++) {
        while (way < problem->way_count && problem->ways[way].node < node)
            way++;
        peel->first_way[node] = way;
    }
    assert(way == problem->way_count);
}

struct peel peel_make(const struct peel_problem *problem, struct arena *arena)
{
    struct peel peel = {.problem = *problem};

    peel.gone = ARENA_MANY(arena, bool, problem->node_count);
    peel.left = ARENA_MANY(arena, bool, problem->node_count);
    peel.shut = ARENA_MANY(arena, bool, problem->way_count);
    peel.out = ARENA_MANY(arena, size_t, problem->node_count);
    peel.open = ARENA_MANY(arena, size_t, problem->node_count);
    peel.stack = ARENA_MANY(arena, size_t, problem->node_count);
    peel.blocked = ARENA_MANY(arena, size_t, problem->way_count);
    peel.shut_at_first = ARENA_MANY(arena, bool, problem->way_count);
    peel.gone_before = ARENA_MANY(arena, bool, problem->node_count);
    peel.acts = ARENA_MANY(arena, size_t, problem->node_count);
    index_edges(&peel, arena);
    index_blockers(&peel, arena);
    index_ways(&peel, arena);
    return peel;
}

/* ---- a run ---- */

static bool is_act(const struct peel *peel, size_t node)
{
    return peel->first_way[node] < peel->first_way[node + 1];
}

static bool may_go(const struct peel *peel, size_t node)
{
    return peel->out[node] == 0 && (!is_act(peel, node) || peel->open[node] > 0);
}

static void count_ways(struct peel *peel)
{
    const struct peel_problem *problem = &peel->problem;

    for (size_t way = 0; way < problem->way_count; way++) {
        const struct peel_way *of = &problem->ways[way];

        peel->blocked[way] = 0;
        for (size_t i = 0; i < of->blocker_count; i++) {
            size_t node = problem->blockers[of->first_blocker + i];

            peel->blocked[way] += node != of->node && peel->left[node];
        }
        peel->open[of->node] += !peel->shut[way] && peel->blocked[way] == 0;
    }
}

static void count_all(struct peel *peel)
{
    const struct peel_problem *problem = &peel->problem;

    for (size_t i = 0; i < problem->node_count; i++) {
        peel->left[i] = !peel->gone[i];
        peel->out[i] = peel->open[i] = 0;
    }
    for (size_t i = 0; i < problem->edge_count; i++)
        peel->out[problem->edges[i].before] += peel->left[problem->edges[i].after];
    count_ways(peel);
}

static void take_off(struct peel *peel, size_t node, size_t *stacked)
{
    for (size_t i = peel->first_into[node]; i < peel->first_into[node + 1]; i++) {
        size_t before = peel->into[i];

        assert(peel->out[before] > 0);
        if (--peel->out[before] == 0 && peel->left[before] && may_go(peel, before))
            peel->stack[(*stacked)++] = before;
    }
    for (size_t i = peel->first_held[node]; i < peel->first_held[node + 1]; i++) {
        size_t way = peel->held[i];
        size_t act = peel->problem.ways[way].node;

        if (act == node)
            continue;
        assert(peel->blocked[way] > 0);
        if (--peel->blocked[way] == 0 && !peel->shut[way] && ++peel->open[act] == 1 &&
            peel->left[act] && may_go(peel, act))
            peel->stack[(*stacked)++] = act;
    }
}

size_t peel_run(struct peel *peel)
{
    size_t stacked = 0;
    size_t left = 0;

    peel->runs++;
    count_all(peel);
    for (size_t i = 0; i < peel->problem.node_count; i++) {
        left += peel->left[i];
        if (peel->left[i] && may_go(peel, i))
            peel->stack[stacked++] = i;
    }
    while (stacked > 0) {
        size_t node = peel->stack[--stacked];
        assert(peel->out[node] == 0);

        assert(peel->left[node]);
        peel->left[node] = false;
        left--;
        take_off(peel, node, &stacked);
    }
    return left;
}

/* ---- the choice ---- */

static size_t ways_of(const struct peel *peel, size_t node)
{
    return peel->first_way[node + 1] - peel->first_way[node];
}

/* Shuts all ways of an act but one, of those that were not shut from the start. */
static void keep_only(struct peel *peel, const bool *shut, size_t node, size_t kept)
{
    assert(peel->first_way[node] <= kept && kept < peel->first_way[node + 1]);
    for (size_t way = peel->first_way[node]; way < peel->first_way[node + 1]; way++)
        peel->shut[way] = shut[way] || way != kept;
}

static void keep_all(struct peel *peel, const bool *shut, size_t node)
{
    for (size_t way = peel->first_way[node]; way < peel->first_way[node + 1]; way++)
        peel->shut[way] = shut[way];
}

static void keep_cheapest(struct peel *peel, const bool *shut, size_t *ret_chosen)
{
    for (size_t node = 0; node < peel->problem.node_count; node++) {
        size_t way = peel->first_way[node];

        ret_chosen[node] = SIZE_MAX;
        if (peel->gone[node] || !is_act(peel, node))
            continue;
        while (way < peel->first_way[node + 1] && shut[way])
            way++;
        assert(way < peel->first_way[node + 1]);
        ret_chosen[node] = way;
        keep_only(peel, shut, node, way);
    }
}

/* The acts that are stuck with their cheapest ways, those with the fewest ways first. */
static size_t list_stuck(const struct peel *peel, size_t *acts)
{
    size_t count = 0;

    for (size_t node = 0; node < peel->problem.node_count; node++) {
        size_t at = count;

        if (!peel->left[node] || !is_act(peel, node))
            continue;
        for (; at > 0 && ways_of(peel, acts[at - 1]) > ways_of(peel, node); at--)
            acts[at] = acts[at - 1];
        acts[at] = node;
        count++;
    }
    return count;
}

static void choose_for(struct peel *peel, const bool *shut, size_t node, size_t *ret_chosen)
{
    for (size_t way = peel->first_way[node]; way < peel->first_way[node + 1]; way++) {
        if (shut[way])
            continue;
        keep_only(peel, shut, node, way);
        ret_chosen[node] = way;
        if (peel_run(peel) == 0)
            return;
    }
    BUG("the rest peeled before, so one of its ways is open");
}

void peel_choose(struct peel *peel, size_t *ret_chosen)
{
    const bool *shut = peel->shut_at_first;
    size_t count;

    memcpy(peel->shut_at_first, peel->shut, peel->problem.way_count * sizeof *peel->shut);
    keep_cheapest(peel, shut, ret_chosen);
    if (peel_run(peel) > 0) {
        count = list_stuck(peel, peel->acts);
        for (size_t i = 0; i < count; i++)
            keep_all(peel, shut, peel->acts[i]);
        for (size_t i = 0; i < count; i++)
            choose_for(peel, shut, peel->acts[i], ret_chosen);
    }
    memcpy(peel->shut, peel->shut_at_first, peel->problem.way_count * sizeof *peel->shut);
}

/* ---- what it is stuck on ---- */

void peel_shrink(struct peel *peel, const size_t *entity, size_t entity_count)
{
    size_t nodes = peel->problem.node_count;

    if (peel_run(peel) == 0)
        return;
    for (size_t i = 0; i < nodes; i++)
        peel->gone[i] = !peel->left[i];
    for (size_t taken = entity_count; taken-- > 0;) {
        bool any = false;

        memcpy(peel->gone_before, peel->gone, nodes * sizeof *peel->gone);
        for (size_t i = 0; i < nodes; i++) {
            any |= entity[i] == taken && !peel->gone[i];
            peel->gone[i] |= entity[i] == taken;
        }
        if (any && peel_run(peel) == 0)
            memcpy(peel->gone, peel->gone_before, nodes * sizeof *peel->gone);
        else if (any)
            for (size_t i = 0; i < nodes; i++)
                peel->gone[i] = !peel->left[i];
    }
    peel_run(peel);
}
