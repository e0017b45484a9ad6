/*
 * A gap is worth the square of its area, so that one large gap beats two small ones; a part goes
 * where the gaps lose least by it. Choices by chance come from a state of the search's own.
 */
#include "cut/ruin.h"

#include "cut/chance.h"
#include "cut/fences.h"
#include "cut/ranking.h"

#include <assert.h>
#include <string.h>

#define RUIN_NODES 6     /* nodes that a round takes out, on the average */
#define BLINK_MEAN 200   /* ways to put a part for each that is overlooked */
#define BLINK_WILD 4     /* the same in a wild round */
#define WILD_ODDS 16     /* one round in so many is wild */
#define PATIENCE 1000    /* rounds in vain until worse is accepted for a while */
#define WILD_PARTS 16    /* with no more parts every other round is */
#define CLIMB_ODDS 3     /* one in so many: the node above instead */
#define WORK_ROUND 400   /* units of a round, whatever it does */
#define WORK_GAP 7       /* and of each gap that is looked at */
#define WORK_NODE 4      /* and of each node that is copied */
#define WORK_TAKE 30     /* and of each part that is taken out */
#define LEAF_WEIGHT 40   /* NEAT: a gap more, as a shift of what gaps lose */
#define MUST_WEIGHT 1000 /* NEAT: a part that must not be left out counts as many outside */
#define WORSE_NEAT 2000  /* NEAT: two cuts, as fences_judge weighs them */

/* ---- numbers by chance ---- */

/* From 0 to below `most`, which is above 0. */
static int32_t chance_below(struct ruin *ruin, int32_t most)
{
    return (int32_t)((chance_next(&ruin->dice) >> 33) % (uint64_t)most);
}

/* ---- orders ---- */

static struct ranked measure(const struct sheet_part *part, size_t index, enum ruin_rank rank)
{
    int32_t longer = part->size[part->size[0] < part->size[1]];

    switch (rank) {
    case RANK_AREA:
        return (struct ranked){part->area, longer, index};
    case RANK_LONG:
        return (struct ranked){longer, part->area, index};
    case RANK_LENGTH:
        return (struct ranked){part->size[WAY_ALONG], part->area, index};
    default:
        return (struct ranked){part->size[WAY_ACROSS], part->area, index};
    }
}

static void rank_parts(struct ruin *ruin, struct arena *arena)
{
    size_t count = ruin->job->part_count;
    struct ranked *ranked = ARENA_MANY(arena, struct ranked, count);

    for (int rank = 0; rank < RANKS; rank++) {
        ruin->rank[rank] = ARENA_MANY(arena, int32_t, count);
        for (size_t i = 0; i < count; i++)
            ranked[i] = measure(&ruin->job->parts[i], i, (enum ruin_rank)rank);
        ranked_sort(ranked, count);
        for (size_t i = 0; i < count; i++)
            ruin->rank[rank][ranked[i].part] = (int32_t)i;
    }
}

void ruin_init(struct ruin *ruin, const struct sheet_job *job, struct arena *arena,
               size_t root_most, uint64_t seed)
{
    *ruin = (struct ruin){.job = job,
                          .outside = ARENA_MANY(arena, int32_t, job->part_count),
                          .outside_before = ARENA_MANY(arena, int32_t, job->part_count),
                          .taken = ARENA_MANY(arena, int32_t, job->part_count),
                          .dice = seed | 1,
                          .blink = 1,
                          .blink_mean = BLINK_MEAN};
    trees_init(&ruin->now, arena, job->part_count, root_most);
    trees_init(&ruin->before, arena, job->part_count, root_most);
    rank_parts(ruin, arena);
}

/* ---- scores ---- */

static int64_t worth(const struct ruin *ruin, int64_t length, int64_t width)
{
    int64_t area = (length * width) >> ruin->job->area_shift;

    return area * area;
}

bool ruin_better(struct ruin_score a, struct ruin_score b)
{
    return a.first != b.first ? a.first < b.first : a.second < b.second;
}

struct ruin_score ruin_judge(const struct ruin *ruin)
{
    const struct trees *now = &ruin->now;
    struct ruin_score score = {0, 0};

    for (int32_t i = 0; i < ruin->outside_count; i++) {
        const struct sheet_part *part = &ruin->job->parts[ruin->outside[i]];

        score.first += ruin->aim == RUIN_PLACE ? part->area : 1 + MUST_WEIGHT * part->on_offer;
    }
    if (ruin->aim == RUIN_NEAT)
        score.first = fences_judge(now, ruin->job, (int32_t)score.first);
    for (int32_t i = 0; i < now->gap_count; i++)
        score.second -= worth(ruin, now->gaps[i].size[0], now->gaps[i].size[1]);
    return score;
}

/* ---- putting back ---- */

struct choice {
    int64_t loss;
    int32_t gap;
    int way;
    bool turned;
};

/* What is lost when a part of this size is cut out of a gap one way first. */
static int64_t loss_of(const struct ruin *ruin, const int32_t gap[2], const int32_t size[2],
                       int way)
{
    assert(way == 0 || way == 1);

    int64_t beyond = gap[way] - size[way], beside = gap[!way] - size[!way];
    int64_t loss = worth(ruin, gap[0], gap[1]) - worth(ruin, beyond, gap[!way]) -
                   worth(ruin, size[way], beside);

    if (ruin->aim == RUIN_NEAT)
        loss += (int64_t)((beyond > 0) + (beside > 0)) << LEAF_WEIGHT;
    return loss;
}

/* Whether the next way to put a part is to be overlooked. */
static bool overlook(struct ruin *ruin)
{
    if (--ruin->blink > 0)
        return false;
    ruin->blink = 1 + chance_below(ruin, 2 * ruin->blink_mean - 1);
    return true;
}

static void try_gap(struct ruin *ruin, int32_t index, const struct sheet_part *part, bool turned,
                    struct choice *best)
{
    const int32_t *gap = ruin->now.gaps[index].size;
    int32_t size[2] = {part->size[turned], part->size[!turned]};

    if (size[0] > gap[0] || size[1] > gap[1])
        return;
    for (int way = 0; way < 2; way++) {
        int64_t loss = loss_of(ruin, gap, size, way);

        if (loss < best->loss && !overlook(ruin))
            *best = (struct choice){loss, index, way, turned};
    }
}

bool ruin_put(struct ruin *ruin, size_t part)
{
    assert(part < ruin->job->part_count);

    const struct sheet_part *sized = &ruin->job->parts[part];
    struct choice best = {.loss = INT64_MAX};
    int32_t size[2];

    for (int32_t i = 0; i < ruin->now.gap_count; i++) {
        try_gap(ruin, i, sized, false, &best);
        if (sized->may_turn)
            try_gap(ruin, i, sized, true, &best);
    }
    ruin->work += ruin->now.gap_count * WORK_GAP;
    if (best.loss == INT64_MAX)
        return false;
    size[0] = sized->size[best.turned];
    size[1] = sized->size[!best.turned];
    trees_put(&ruin->now, best.gap, part, size, best.turned, best.way);
    return true;
}

/* Sorts what lies outside by a rank; RANKS: shuffles it. */
static void order_outside(struct ruin *ruin, int rank)
{
    int32_t *outside = ruin->outside;

    assert(rank >= 0 && rank <= RANKS);
    for (int32_t i = 1; i < ruin->outside_count; i++) {
        int32_t part = outside[i], j = i;

        if (rank == RANKS) {
            j = chance_below(ruin, i + 1);
            outside[i] = outside[j];
        } else {
            for (; j > 0 && ruin->rank[rank][outside[j - 1]] > ruin->rank[rank][part]; j--)
                outside[j] = outside[j - 1];
        }
        outside[j] = part;
    }
}

static void put_back(struct ruin *ruin, int rank)
{
    int32_t left = 0;

    order_outside(ruin, rank);
    for (int32_t i = 0; i < ruin->outside_count; i++)
        if (!ruin_put(ruin, (size_t)ruin->outside[i]))
            ruin->outside[left++] = ruin->outside[i];
    ruin->outside_count = left;
}

void ruin_fill(struct ruin *ruin)
{
    ruin->blink = INT32_MAX;
    put_back(ruin, RANK_AREA);
    ruin->blink = 1;
    ruin->score = ruin_judge(ruin);
}

/* ---- taking out ---- */

/* The parts below a node, into ruin->taken. */
static int32_t parts_below(const struct ruin *ruin, int32_t node, int32_t count)
{
    const struct tree_node *at = &ruin->now.nodes[node];

    if (at->part != TREE_NONE)
        ruin->taken[count++] = at->part;
    if (at->way == TREE_NONE)
        return count;
    for (int32_t child = at->first; child != TREE_NONE; child = ruin->now.nodes[child].next)
        count = parts_below(ruin, child, count);
    return count;
}

static void take_below(struct ruin *ruin, int32_t node)
{
    int32_t count = parts_below(ruin, node, 0);

    assert(ruin->outside_count + count <= (int32_t)ruin->job->part_count);
    for (int32_t i = 0; i < count; i++) {
        trees_take(&ruin->now, (size_t)ruin->taken[i]);
        ruin->outside[ruin->outside_count++] = ruin->taken[i];
    }
    ruin->work += count * WORK_TAKE;
}

/* The node of a part by chance, or one above it; TREE_NONE when the draw lies outside. */
static int32_t draw_node(struct ruin *ruin)
{
    int32_t node = ruin->now.where[chance_below(ruin, ruin->now.part_most)];

    while (node != TREE_NONE && ruin->now.nodes[node].parent != TREE_NONE &&
           chance_below(ruin, CLIMB_ODDS) == 0)
        node = ruin->now.nodes[node].parent;
    return node;
}

static void take_some(struct ruin *ruin)
{
    int32_t count = 1 + chance_below(ruin, 2 * RUIN_NODES - 1);

    for (int32_t i = 0; i < count; i++) {
        int32_t node = draw_node(ruin);

        if (node != TREE_NONE)
            take_below(ruin, node);
    }
}

/* ---- rounds ---- */

void ruin_from(struct ruin *ruin, const struct trees *trees, enum ruin_aim aim)
{
    trees_copy(&ruin->now, trees);
    ruin->aim = aim;
    ruin->outside_count = 0;
    for (size_t i = 0; i < ruin->job->part_count; i++)
        if (ruin->now.where[i] == TREE_NONE && ruin->job->parts[i].fits)
            ruin->outside[ruin->outside_count++] = (int32_t)i;
    ruin->score = ruin_judge(ruin);
    for (size_t i = 0; i < RUIN_LATE; i++)
        ruin->late[i] = ruin->score;
    ruin->best = ruin->score;
    ruin->turn = 0;
    ruin->idle = 0;
}

static void remember(struct ruin *ruin)
{
    trees_copy(&ruin->before, &ruin->now);
    memcpy(ruin->outside_before, ruin->outside,
           (size_t)ruin->outside_count * sizeof *ruin->outside);
    ruin->outside_count_before = ruin->outside_count;
    ruin->work += WORK_ROUND + ruin->now.node_count * WORK_NODE;
}

static void go_back(struct ruin *ruin)
{
    struct trees kept = ruin->now;
    int32_t *outside = ruin->outside;

    ruin->now = ruin->before;
    ruin->before = kept;
    ruin->outside = ruin->outside_before;
    ruin->outside_before = outside;
    ruin->outside_count = ruin->outside_count_before;
}

/* After many rounds in vain: scores worse by a part, or by two cuts, are accepted again. */
static void grow_patient(struct ruin *ruin, struct ruin_score score)
{
    int64_t worse = WORSE_NEAT;

    if (ruin_better(score, ruin->best)) {
        ruin->best = score;
        ruin->idle = 0;
    }
    if (++ruin->idle < PATIENCE)
        return;
    if (ruin->aim == RUIN_PLACE)
        worse = ruin->job->parts[chance_below(ruin, ruin->now.part_most)].area;
    for (size_t i = 0; i < RUIN_LATE; i++)
        ruin->late[i] = (struct ruin_score){ruin->score.first + worse, 0};
    ruin->idle = 0;
}

bool ruin_round(struct ruin *ruin)
{
    static const int ranks[] = {RANK_AREA, RANK_AREA, RANK_AREA,   RANK_LONG,
                                RANK_LONG, RANKS,     RANK_LENGTH, RANK_WIDTH};
    const int32_t rank_count = sizeof ranks / sizeof *ranks;
    struct ruin_score *late = &ruin->late[ruin->turn++ % RUIN_LATE];
    struct ruin_score score;
    bool better;

    ruin->blink_mean = BLINK_MEAN;
    if (chance_below(ruin, ruin->now.part_most <= WILD_PARTS ? 2 : WILD_ODDS) == 0)
        ruin->blink_mean = BLINK_WILD;
    remember(ruin);
    take_some(ruin);
    put_back(ruin, ranks[chance_below(ruin, rank_count)]);
    score = ruin_judge(ruin);
    better = ruin_better(score, ruin->score);
    if (ruin_better(*late, score) && ruin_better(ruin->score, score))
        go_back(ruin);
    else
        ruin->score = score;
    if (ruin_better(ruin->score, *late))
        *late = ruin->score;
    grow_patient(ruin, ruin->score);
    return better;
}
