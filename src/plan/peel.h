/*
 * Acts in time: can things that shut each other out be done in some order, and by which ways?
 *
 * A problem has nodes (something that is done: a screw row driven, a panel fixed, a box set down),
 * edges (one before another, always) and ways. A node with ways is an act: it is done by one of
 * them, and the blockers of that way are nodes that must come after it. The problem knows nothing
 * of furniture.
 *
 * Peeling takes nodes off from the last one backwards: of what remains (R), a node can be the last
 * when no edge leads from it to another of R, and, if it is an act, some way of it has no blocker
 * in R besides itself.
 *
 * Peeling is complete. Say that some order does everything, and that peeling stands still at R.
 * Look at the last node s of R in that order. All that comes after s in the order is not in R, so
 * no edge leads from s into R, and the blockers of the way that s uses there, which come after s,
 * are not in R either: s could have been taken off. So R is empty. And it is monotone: what can be
 * taken off stays so while others go, so that any order of taking gives the same R; and fewer
 * nodes, fewer edges or more ways never leave a larger R.
 */
#ifndef PLAN_PEEL_H
#define PLAN_PEEL_H

#include "base/arena.h"

#include <stdbool.h>
#include <stddef.h>

struct peel_edge {
    size_t before, after;
};

/* Ways stand node by node in order of nodes, those of a node with the cheapest first. */
struct peel_way {
    size_t node;
    size_t first_blocker, blocker_count; /* into the problem's blockers: nodes */
};

/* Borrowed by the peel made from it. */
struct peel_problem {
    size_t node_count;
    const struct peel_edge *edges;
    size_t edge_count;
    const struct peel_way *ways;
    size_t way_count;
    const size_t *blockers;
    size_t blocker_count;
};

struct peel {
    struct peel_problem problem;
    bool *gone;                /* nodes that are not looked at: an act given up, a join left out */
    bool *shut;                /* ways that are not to be used */
    bool *left;                /* after a run: nodes that no order can place */
    size_t runs;               /* how often it was run, for tests of the cost */
    size_t *first_way;         /* of each node, and of the one past the last */
    size_t *first_into, *into; /* edges by the node they lead to */
    size_t *first_held, *held; /* ways by the node that blocks them */
    size_t *out, *blocked, *open; /* counts while it runs */
    size_t *stack;
    bool *shut_at_first, *gone_before; /* while it chooses, while it shrinks */
    size_t *acts;
};

/* Everything in the arena; nothing gone, nothing shut. O(nodes + edges + ways + blockers), as is a
 * run. */
struct peel peel_make(const struct peel_problem *problem, struct arena *arena);

/* Peels; how many nodes are left. */
size_t peel_run(struct peel *peel);

/*
 * One way for each act, so that all still peels; ret_chosen[node] is a way, SIZE_MAX for a node
 * that is no act or gone. The problem must peel. Acts whose cheapest ways will do keep them; among
 * the others those with the fewest ways choose first, and each takes the cheapest with which the
 * rest still peels.
 *
 * Nothing is ever tried twice: before each choice the rest peels with all its ways, and the way
 * that this peeling used for the act is one that can be kept. So some way of each act succeeds, and
 * at most `ways` runs are made. Nodes that peel while all acts have only their cheapest way do so
 * whatever the others choose, since none of those stood in their way.
 */
void peel_choose(struct peel *peel, size_t *ret_chosen);

/*
 * Of a problem that does not peel, the smallest part that does not: marks nodes gone, entity by
 * entity, while the rest is still stuck. `entity` gives each node's, smaller than entity_count or
 * SIZE_MAX for a node that always stays. Afterwards taking out any one entity that is left makes
 * the rest peel. O(entities left) runs.
 */
void peel_shrink(struct peel *peel, const size_t *entity, size_t entity_count);

#endif
