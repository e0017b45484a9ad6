/*
 * Peeling held against a walk through all orders and all ways, which shares nothing with it: it
 * goes forward from what is done, set by set, where peeling goes backward from what is left.
 */
#include "dice.h"
#include "plan/peel.h"

#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <setjmp.h>

#include <cmocka.h>

#define SEEDS 4000
#define MOST_NODES 8
#define MOST_EDGES 16
#define MOST_WAYS 24
#define MOST_BLOCKERS 72

/* ---- cases by chance ---- */

struct toy {
    struct peel_edge edges[MOST_EDGES];
    struct peel_way ways[MOST_WAYS];
    size_t blockers[MOST_BLOCKERS];
    struct peel_problem problem;
};

static void add_ways(struct toy *toy, struct dice *dice, size_t node)
{
    int64_t ways = dice_between(dice, 0, 3);

    for (int64_t i = 0; i < ways; i++) {
        struct peel_way *way = &toy->ways[toy->problem.way_count++];
        int64_t blockers = dice_between(dice, 0, 3);

        *way = (struct peel_way){node, toy->problem.blocker_count, (size_t)blockers};
        for (int64_t j = 0; j < blockers; j++)
            toy->blockers[toy->problem.blocker_count++] =
                (size_t)dice_between(dice, 0, (int64_t)toy->problem.node_count - 1);
    }
}

static void make_toy(struct toy *toy, uint64_t seed)
{
    struct dice dice = {seed};

    memset(toy, 0, sizeof *toy);
    toy->problem.edges = toy->edges;
    toy->problem.ways = toy->ways;
    toy->problem.blockers = toy->blockers;
    toy->problem.node_count = (size_t)dice_between(&dice, 1, MOST_NODES);
    toy->problem.edge_count = (size_t)dice_between(&dice, 0, (int64_t)toy->problem.node_count);
    for (size_t i = 0; i < toy->problem.edge_count; i++) {
        int64_t last = (int64_t)toy->problem.node_count - 1;
        size_t a = (size_t)dice_between(&dice, 0, last);
        size_t b = (size_t)dice_between(&dice, 0, last);
        bool circle = dice_between(&dice, 0, 9) == 0;

        toy->edges[i] = circle || a < b ? (struct peel_edge){a, b} : (struct peel_edge){b, a};
        if (a == b)
            toy->problem.edge_count = i;
    }
    for (size_t node = 0; node < toy->problem.node_count; node++)
        add_ways(toy, &dice, node);
}

/* ---- all orders, all ways ---- */

static bool has(unsigned set, size_t node)
{
    return (set >> node & 1u) != 0;
}

/* The node can be the next after those in `done`: what comes before it is done, and a way of it has
 * all its blockers still ahead. `only` is the way that a node has to take, SIZE_MAX for any. */
static bool can_be_next(const struct peel_problem *problem, unsigned there, unsigned done,
                        size_t node, const size_t *only)
{
    bool is_act = false;
    bool open = false;

    for (size_t i = 0; i < problem->edge_count; i++)
        if (problem->edges[i].after == node && has(there, problem->edges[i].before) &&
            !has(done, problem->edges[i].before))
            return false;
    for (size_t w = 0; w < problem->way_count; w++) {
        const struct peel_way *way = &problem->ways[w];
        bool clear = only == NULL || only[node] == w;

        if (way->node != node)
            continue;
        is_act = true;
        for (size_t i = 0; i < way->blocker_count; i++) {
            size_t blocker = problem->blockers[way->first_blocker + i];

            clear = clear && (blocker == node || !has(done, blocker));
        }
        open = open || clear;
    }
    return !is_act || open;
}

/* Whether some order does all of `there`: every set of nodes that an order can begin with is
 * visited once. */
static bool some_order(const struct peel_problem *problem, unsigned there, const size_t *only)
{
    bool reached[1u << MOST_NODES] = {true};

    for (unsigned done = 0; done < 1u << problem->node_count; done++) {
        if (!reached[done])
            continue;
        for (size_t node = 0; node < problem->node_count; node++)
            if (has(there, node) && !has(done, node) &&
                can_be_next(problem, there, done, node, only))
                reached[done | 1u << node] = true;
    }
    return reached[there];
}

static unsigned all_of(const struct peel_problem *problem)
{
    return (1u << problem->node_count) - 1u;
}

static unsigned not_gone(const struct peel *peel)
{
    unsigned set = 0;

    for (size_t i = 0; i < peel->problem.node_count; i++)
        set |= peel->gone[i] ? 0u : 1u << i;
    return set;
}

/* ---- the tests ---- */

static void peeling_finds_an_order_exactly_when_there_is_one(void **state)
{
    size_t feasible = 0;

    (void)state;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        struct arena arena;
        struct toy toy;

        arena_init(&arena);
        make_toy(&toy, seed);
        struct peel peel = peel_make(&toy.problem, &arena);
        bool peels = peel_run(&peel) == 0;
        if (peels != some_order(&toy.problem, all_of(&toy.problem), NULL))
            fail_msg("seed %llu", (unsigned long long)seed);
        feasible += peels;
        arena_release(&arena);
    }
    assert_in_range(feasible, SEEDS / 5, SEEDS * 4 / 5);
}

static void ways_that_are_chosen_can_all_be_kept_together(void **state)
{
    size_t peeled = 0;

    (void)state;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        struct arena arena;
        struct toy toy;
        size_t chosen[MOST_NODES];

        arena_init(&arena);
        make_toy(&toy, seed);
        struct peel peel = peel_make(&toy.problem, &arena);
        if (peel_run(&peel) == 0) {
            peel_choose(&peel, chosen);
            if (!some_order(&toy.problem, all_of(&toy.problem), chosen))
                fail_msg("seed %llu", (unsigned long long)seed);
            assert_true(peel.runs <= toy.problem.way_count + 2);
            peeled++;
        }
        arena_release(&arena);
    }
    assert_true(peeled > SEEDS / 5);
}

/* The first way of each, where all of these go together. */
static void cheapest_ways_are_kept_where_they_will_do(void **state)
{
    size_t kept = 0;

    (void)state;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        struct arena arena;
        struct toy toy;
        size_t chosen[MOST_NODES];
        size_t first[MOST_NODES];

        arena_init(&arena);
        make_toy(&toy, seed);
        memset(first, 0xff, sizeof first);
        for (size_t w = toy.problem.way_count; w-- > 0;)
            first[toy.ways[w].node] = w;
        struct peel peel = peel_make(&toy.problem, &arena);
        if (some_order(&toy.problem, all_of(&toy.problem), first)) {
            peel_choose(&peel, chosen);
            assert_memory_equal(chosen, first, toy.problem.node_count * sizeof *chosen);
            kept++;
        }
        arena_release(&arena);
    }
    assert_true(kept > SEEDS / 10);
}

static void what_is_left_after_shrinking_is_stuck_and_smallest(void **state)
{
    size_t entity[MOST_NODES];
    size_t stuck = 0;

    (void)state;
    for (size_t i = 0; i < MOST_NODES; i++)
        entity[i] = i / 2; /* two nodes an entity */
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        struct arena arena;
        struct toy toy;

        arena_init(&arena);
        make_toy(&toy, seed);
        struct peel peel = peel_make(&toy.problem, &arena);
        if (peel_run(&peel) > 0) {
            peel_shrink(&peel, entity, MOST_NODES / 2);
            unsigned core = not_gone(&peel);
            assert_true(core != 0 && !some_order(&toy.problem, core, NULL));
            for (size_t taken = 0; taken < MOST_NODES; taken += 2) {
                unsigned rest = core & ~(3u << taken);

                if (rest != core && !some_order(&toy.problem, rest, NULL))
                    fail_msg("seed %llu", (unsigned long long)seed);
            }
            stuck++;
        }
        arena_release(&arena);
    }
    assert_true(stuck > SEEDS / 10);
}

static void act_whose_ways_are_all_shut_is_stuck(void **state)
{
    const struct peel_way ways[] = {{0, 0, 0}};
    const struct peel_problem problem = {.node_count = 2, .ways = ways, .way_count = 1};
    struct arena arena;

    (void)state;
    arena_init(&arena);
    struct peel peel = peel_make(&problem, &arena);
    peel.shut[0] = true;
    assert_int_equal(peel_run(&peel), 1);
    assert_true(peel.left[0]);
    peel.gone[0] = true;
    assert_int_equal(peel_run(&peel), 0);
    arena_release(&arena);
}

/* a's only way is shut by b, b's first by a: b has to take its second. */
static void act_with_one_way_chooses_before_one_with_two(void **state)
{
    const struct peel_way ways[] = {{0, 0, 1}, {1, 1, 1}, {1, 2, 1}};
    const size_t blockers[] = {1, 0, 2};
    const struct peel_problem problem = {
        .node_count = 3, .ways = ways, .way_count = 3, .blockers = blockers, .blocker_count = 3};
    struct arena arena;
    size_t chosen[3];

    (void)state;
    arena_init(&arena);
    struct peel peel = peel_make(&problem, &arena);
    peel_choose(&peel, chosen);
    assert_int_equal(chosen[0], 0);
    assert_int_equal(chosen[1], 2);
    assert_true(chosen[2] == SIZE_MAX);
    arena_release(&arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(peeling_finds_an_order_exactly_when_there_is_one),
        cmocka_unit_test(ways_that_are_chosen_can_all_be_kept_together),
        cmocka_unit_test(cheapest_ways_are_kept_where_they_will_do),
        cmocka_unit_test(what_is_left_after_shrinking_is_stuck_and_smallest),
        cmocka_unit_test(act_whose_ways_are_all_shut_is_stuck),
        cmocka_unit_test(act_with_one_way_chooses_before_one_with_two),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
