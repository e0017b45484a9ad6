/*
 * A beam is a sweep that keeps many states instead of going back: each state that is taken up is
 * followed by all that come next of it, up to the next time. What comes next waits at the level of
 * its place along the roll, and of each level only so many are taken up, those first that lost the
 * least share of what may be lost, by the measure by which that is most.
 *
 *  1. A state is kept as the ways of lying that started at one time after the state before it. It
 *     is taken up by going the whole way again, so that a measure learnt meanwhile counts as well.
 *  2. Measures are learnt of the first states of a level only: the others are not the ones that
 *     would go on. What was learnt stays for the next beam of the same target and origin.
 *  3. The sweep remembers states that were there (rollfailed.c): none comes twice.
 *  4. Of a level no more states are taken up than the beam is wide, and no more wait than
 *     LEVEL_WAITING times as many: so NODES_MOST is never reached.
 *
 * After Lowerre and Reddy ("The HARPY speech understanding system", 1976); that the states that
 * lost least are compared at one place along, and that the width is doubled, is what Libralesso and
 * Fontan do where sheets are cut ("An anytime tree search algorithm for the 2018 ROADEF/EURO
 * challenge glass cutting problem", 2021).
 */
#include "cut/rollbeams.h"

#include "cut/chance.h"
#include "cut/rollsweep_state.h"

#include <assert.h>
#include <stdlib.h>

#define LEVELS 40
#define LEVEL_WAITING 2
#define WIDTH_FIRST 125
#define WIDTHS 4 /* each twice the one before */
#define WIDTH_MOST (WIDTH_FIRST << (WIDTHS - 1))
#define NODES_MOST (1 + LEVELS * WIDTH_MOST * (1 + LEVEL_WAITING))
#define LEARN_OF 3     /* states of a level */
#define CHANCE_MOST 5  /* once the beam is widest, one in so much of a share comes by chance */
#define STARTS_MOST 11 /* at one time; more are not followed, */
#define DEPTH_MOST 512 /* nor more states one after another */

#define WORK_BEAM 1000 /* units to begin one, */
#define WORK_AGAIN 30  /* and for each step on the way to a state */

#define NO_NODE UINT32_MAX

struct node {
    uint32_t before; /* the state before; of one that is free the next free one */
    uint16_t depth;  /* states before */
    uint16_t count, starts[STARTS_MOST];
};

/* A state that waits to be taken up. */
struct waiting {
    int64_t lost; /* a share of SHARE_WHOLE */
    uint32_t node;
};

/* A heap: none lost less than the one half as far on. */
struct level {
    struct waiting *waiting;
    size_t count, taken;
};

struct roll_beams {
    struct roll_sweep *sweep;
    int64_t target;
    size_t number; /* of the beam among those of its target, from 1 on */
    size_t width;
    uint64_t chance;

    struct node *nodes;
    size_t node_count;
    uint32_t free;
    struct level levels[LEVELS];
    size_t level; /* LEVELS: the next beam begins */
};

struct roll_beams *roll_beams_new(const struct roll_job *job, struct arena *arena)
{
    struct roll_beams *beams = ARENA_NEW(arena, struct roll_beams);

    beams->sweep = roll_sweep_new(job, arena);
    beams->chance = UINT64_C(88172645463325252);
    beams->nodes = ARENA_MANY(arena, struct node, NODES_MOST);
    beams->level = LEVELS;
    for (size_t i = 0; i < LEVELS; i++)
        beams->levels[i].waiting = ARENA_MANY(arena, struct waiting, LEVEL_WAITING * WIDTH_MOST);
    return beams;
}

/* ---- levels ---- */

static uint32_t take_node(struct roll_beams *beams)
{
    uint32_t node = beams->free;

    if (node != NO_NODE) {
        beams->free = beams->nodes[node].before;
        return node;
    }
    assert(beams->node_count < NODES_MOST);
    return (uint32_t)beams->node_count++;
}

static void give_node(struct roll_beams *beams, uint32_t node)
{
    beams->nodes[node].before = beams->free;
    beams->free = node;
}

/* A total order: the same on every machine. */
static int by_loss(const void *a, const void *b)
{
    const struct waiting *left = a, *right = b;

    if (left->lost != right->lost)
        return left->lost < right->lost ? -1 : 1;
    return left->node < right->node ? -1 : left->node > right->node;
}

/* Gives up those that lost most. A list in order is a heap. */
static void thin_out(struct roll_beams *beams, struct level *level)
{
    qsort(level->waiting, level->count, sizeof *level->waiting, by_loss);
    while (level->count > beams->width)
        give_node(beams, level->waiting[--level->count].node);
}

static void level_add(struct roll_beams *beams, struct level *level, struct waiting waiting)
{
    size_t at;

    if (level->count == LEVEL_WAITING * beams->width)
        thin_out(beams, level);
    for (at = level->count++; at > 0; at = (at - 1) / 2) {
        if (by_loss(&waiting, &level->waiting[(at - 1) / 2]) >= 0)
            break;
        level->waiting[at] = level->waiting[(at - 1) / 2];
    }
    level->waiting[at] = waiting;
}

static uint32_t level_take(struct level *level)
{
    assert(level->count > 0);

    struct waiting *heap = level->waiting, last = heap[--level->count];
    uint32_t first = heap[0].node;
    size_t at = 0, next;

    for (; (next = 2 * at + 1) < level->count; at = next) {
        if (next + 1 < level->count && by_loss(&heap[next + 1], &heap[next]) < 0)
            next++;
        if (by_loss(&last, &heap[next]) <= 0)
            break;
        heap[at] = heap[next];
    }
    heap[at] = last;
    level->taken++;
    return first;
}

/* ---- states ---- */

/* Lets the sweep go all the way to a state. */
static void go_to(struct roll_beams *beams, uint32_t node)
{
    struct roll_sweep *sweep = beams->sweep;
    uint32_t way[DEPTH_MOST];
    size_t count = 0;

    assert(beams->nodes[node].depth <= DEPTH_MOST);
    while (sweep->steps.count > 0)
        sweep_go_back(sweep);
    sweep->cursor = 0;
    for (; beams->nodes[node].before != NO_NODE; node = beams->nodes[node].before)
        way[count++] = node;
    while (count-- > 0) {
        const struct node *on = &beams->nodes[way[count]];

        for (size_t i = 0; i < on->count; i++)
            sweep_start(sweep, on->starts[i]);
        sweep_go_on(sweep);
    }
    sweep->work += WORK_AGAIN * (int64_t)sweep->steps.count;
}

static int64_t loss_of(struct roll_beams *beams)
{
    int64_t lost = sweep_share_lost(beams->sweep);

    if (beams->number > WIDTHS * beams->sweep->origin_count)
        lost += lost / CHANCE_MOST * (int64_t)(chance_next(&beams->chance) >> 54) / 1024;
    return lost;
}

/* The state that the sweep is in, which comes after `before` by what started after step `first`. */
static void keep_state(struct roll_beams *beams, uint32_t before, size_t first)
{
    const struct roll_sweep *sweep = beams->sweep;
    struct level *level = &beams->levels[sweep->time * LEVELS / sweep->target];
    size_t count = sweep->steps.count - 1 - first;
    struct node *node;
    uint32_t at;

    if (count > STARTS_MOST || beams->nodes[before].depth == DEPTH_MOST ||
        level->taken == beams->width)
        return;
    at = take_node(beams);
    node = &beams->nodes[at];
    node->before = before;
    node->depth = (uint16_t)(beams->nodes[before].depth + 1);
    node->count = (uint16_t)count;
    for (size_t i = 0; i < count; i++)
        node->starts[i] = (uint16_t)sweep->steps.at[first + i].stay;
    level_add(beams, level, (struct waiting){loss_of(beams), at});
}

/* All that come next of a state. True when all parts have found seats. */
static bool follow(struct roll_beams *beams, uint32_t node)
{
    struct roll_sweep *sweep = beams->sweep;
    size_t first;

    go_to(beams, node);
    first = sweep->steps.count;
    if (beams->levels[beams->level].taken <= LEARN_OF && sweep_learn(sweep))
        return false;
    while (sweep->steps.count > first || sweep->cursor <= sweep->stay_count) {
        size_t before = sweep->steps.count;
        bool went_on;

        (void)sweep_move(sweep);
        went_on = sweep->steps.count > before && sweep->steps.at[before].advance;
        if (sweep->left_count == 0 && sweep_find_seats(sweep) == SEATS_FOUND) {
            sweep_set_spots(sweep);
            return true;
        }
        if (went_on)
            keep_state(beams, node, first);
        if (went_on || sweep->left_count == 0)
            sweep_go_back(sweep);
    }
    return false;
}

/* ---- beams ---- */

/* Each width for one origin after the other. */
static void next_beam(struct roll_beams *beams, int64_t target)
{
    struct roll_sweep *sweep = beams->sweep;
    size_t doubled = beams->number / sweep->origin_count;

    if (target != beams->target)
        beams->number = doubled = 0;
    if (beams->number == 0 || sweep->origin_count > 1) {
        roll_sweep_aim(sweep, target);
        sweep->origin = beams->number % sweep->origin_count;
        sweep_open(sweep);
        sweep->learn_at = INT64_MAX; /* not on the way: rule 2 */
    } else {
        sweep_start_over(sweep);
    }
    beams->target = target;
    beams->number++;
    beams->width = (size_t)WIDTH_FIRST << (doubled < WIDTHS ? doubled : WIDTHS - 1);
    beams->node_count = 0;
    beams->free = NO_NODE;
    for (size_t i = 0; i < LEVELS; i++)
        beams->levels[i].count = beams->levels[i].taken = 0;
    beams->level = 0;
    beams->nodes[take_node(beams)] = (struct node){.before = NO_NODE};
    level_add(beams, &beams->levels[0], (struct waiting){0, 0});
    sweep->work += WORK_BEAM;
}

bool roll_beams_on(struct roll_beams *beams, int64_t target, int64_t work, int64_t *done)
{
    struct roll_sweep *sweep = beams->sweep;
    int64_t begin = sweep->work;
    bool found = false;

    while (!found && sweep->work - begin < work) {
        struct level *level;

        if (beams->level == LEVELS || target != beams->target)
            next_beam(beams, target);
        level = &beams->levels[beams->level];
        if (level->count > 0 && level->taken < beams->width)
            found = follow(beams, level_take(level));
        else
            beams->level++;
    }
    *done += sweep->work - begin;
    return found;
}

const struct roll_spot *roll_beams_spots(const struct roll_beams *beams)
{
    return beams->sweep->spots;
}
