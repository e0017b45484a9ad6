/*
 * A dynamic program over pieces. The cuts of a sheet are its leaves less one, parts and waste
 * together. A piece without parts is a leaf, so is a piece that a part fills; any other is cut
 * along an edge of one of its parts, each way in turn, where the cut crosses no part, and has the
 * leaves of both sides. Cuts elsewhere only make more waste.
 */
#include "cut/recount.h"

#include <assert.h>
#include <string.h>

#define SLOTS (2 * RECOUNT_REGIONS)
#define TOO_MANY (INT32_MAX / 4)

struct region {
    int32_t near[2], far[2];
};

struct solved {
    struct region region;
    int32_t leaves; /* 0: an empty slot */
    int32_t at;
    int way;
};

struct recount {
    struct strokes *strokes;
    struct region rects[RECOUNT_PARTS];
    int32_t branch[RECOUNT_PARTS]; /* by rect */
    int32_t count;
    struct solved solved[SLOTS];
    int32_t solved_count;
};

/* ---- where the parts lie ---- */

/* Lists the parts below a branch that lies at `at`; false when there are too many. */
static bool list_rects(struct recount *recount, int32_t index, const int32_t at[2])
{
    const struct branch *branch = &recount->strokes->branches[index];
    int32_t child_at[2] = {at[0], at[1]};

    if (branch->part != TREE_NONE) {
        if (recount->count == RECOUNT_PARTS)
            return false;
        recount->branch[recount->count] = index;
        recount->rects[recount->count++] =
            (struct region){{at[0], at[1]}, {at[0] + branch->size[0], at[1] + branch->size[1]}};
    }
    for (int32_t child = branch->first; child != TREE_NONE;
         child = recount->strokes->branches[child].next) {
        const struct branch *below = &recount->strokes->branches[child];

        if (branch_is_gap(below))
            continue; /* gaps lie last */
        if (!list_rects(recount, child, child_at))
            return false;
        child_at[branch->way] += below->size[branch->way];
    }
    return true;
}

static bool inside(const struct region *rect, const struct region *region)
{
    return rect->near[0] >= region->near[0] && rect->far[0] <= region->far[0] &&
           rect->near[1] >= region->near[1] && rect->far[1] <= region->far[1];
}

/* ---- fewest leaves ---- */

static struct solved *slot_of(struct recount *recount, const struct region *region)
{
    uint32_t key = (uint32_t)region->near[0] * 73856093U ^ (uint32_t)region->far[0] * 19349663U ^
                   (uint32_t)region->near[1] * 83492791U ^ (uint32_t)region->far[1] * 2654435761U;
    size_t slot = (key ^ key >> 15) % SLOTS;

    while (recount->solved[slot].leaves != 0 &&
           memcmp(&recount->solved[slot].region, region, sizeof *region) != 0)
        slot = (slot + 1) % SLOTS;
    return &recount->solved[slot];
}

static bool crosses_none(const struct recount *recount, const struct region *region, int way,
                         int32_t at)
{
    assert(way == 0 || way == 1);
    for (int32_t i = 0; i < recount->count; i++)
        if (inside(&recount->rects[i], region) && recount->rects[i].near[way] < at &&
            recount->rects[i].far[way] > at)
            return false;
    return true;
}

static int32_t fewest_leaves(struct recount *recount, const struct region *region);

static void try_cut(struct recount *recount, const struct region *region, int way, int32_t at,
                    struct solved *best)
{
    struct region near = *region, far = *region;
    int32_t leaves;

    if (at <= region->near[way] || at >= region->far[way] ||
        !crosses_none(recount, region, way, at))
        return;
    near.far[way] = far.near[way] = at;
    leaves = fewest_leaves(recount, &near);
    if (leaves < best->leaves)
        leaves += fewest_leaves(recount, &far);
    if (leaves < best->leaves) {
        best->leaves = leaves;
        best->way = way;
        best->at = at;
    }
}

/* The parts in a region and, when they do not fill it, one leaf of waste. */
static int32_t least_leaves(const struct recount *recount, const struct region *region)
{
    int64_t waste =
        (int64_t)(region->far[0] - region->near[0]) * (region->far[1] - region->near[1]);
    int32_t leaves = 0;

    for (int32_t i = 0; i < recount->count; i++) {
        const struct region *rect = &recount->rects[i];

        if (!inside(rect, region))
            continue;
        leaves++;
        waste -= (int64_t)(rect->far[0] - rect->near[0]) * (rect->far[1] - rect->near[1]);
    }
    assert(waste >= 0);
    return leaves + (waste > 0);
}

static int32_t fewest_leaves(struct recount *recount, const struct region *region)
{
    int32_t least = least_leaves(recount, region);
    struct solved best = {.region = *region, .leaves = TOO_MANY};
    const struct solved *known;

    if (least == 1)
        return 1;
    known = slot_of(recount, region);
    if (known->leaves != 0)
        return known->leaves;
    if (recount->solved_count >= RECOUNT_REGIONS)
        return TOO_MANY;
    recount->solved_count++;
    for (int32_t i = 0; i < recount->count && best.leaves > least; i++) {
        if (!inside(&recount->rects[i], region))
            continue;
        for (int way = 0; way < 2; way++) {
            try_cut(recount, region, way, recount->rects[i].far[way], &best);
            try_cut(recount, region, way, recount->rects[i].near[way], &best);
        }
    }
    *slot_of(recount, region) = best;
    return best.leaves;
}

/* ---- the tree anew ---- */

/* Adds a child, a waste one to the waste that there is. */
static void add_child(struct strokes *strokes, int32_t parent, int32_t child)
{
    struct branch *branches = strokes->branches;
    int way = branches[parent].way;

    for (int32_t other = branches[parent].first; other != TREE_NONE; other = branches[other].next)
        if (branch_is_gap(&branches[child]) && branch_is_gap(&branches[other])) {
            branches[other].size[way] += branches[child].size[way];
            return;
        }
    branches[child].next = branches[parent].first;
    branches[parent].first = child;
}

static int32_t build(struct recount *recount, const struct region *region);

/* Adds one side of a cut: its children where it is cut the same way. */
static void add_side(struct recount *recount, int32_t parent, const struct region *side)
{
    struct strokes *strokes = recount->strokes;
    int32_t child = build(recount, side);

    if (strokes->branches[child].way != strokes->branches[parent].way) {
        add_child(strokes, parent, child);
        return;
    }
    for (int32_t next, at = strokes->branches[child].first; at != TREE_NONE; at = next) {
        next = strokes->branches[at].next;
        add_child(strokes, parent, at);
    }
}

static int32_t build(struct recount *recount, const struct region *region)
{
    struct strokes *strokes = recount->strokes;
    const int32_t size[2] = {region->far[0] - region->near[0], region->far[1] - region->near[1]};
    int32_t index = strokes_branch(strokes, size);
    struct region near = *region, far = *region;
    const struct solved *solved;

    if (least_leaves(recount, region) == 1) {
        for (int32_t i = 0; i < recount->count; i++)
            if (inside(&recount->rects[i], region)) {
                strokes->branches[index].part = strokes->branches[recount->branch[i]].part;
                strokes->branches[index].turned = strokes->branches[recount->branch[i]].turned;
            }
        return index;
    }
    solved = slot_of(recount, region);
    assert(solved->leaves > 0 && solved->leaves < TOO_MANY);
    near.far[solved->way] = far.near[solved->way] = solved->at;
    strokes->branches[index].way = (int8_t)solved->way;
    add_side(recount, index, &near);
    add_side(recount, index, &far);
    return index;
}

static int32_t leaves_below(const struct strokes *strokes, int32_t index)
{
    const struct branch *branch = &strokes->branches[index];
    int32_t leaves = branch->way == TREE_NONE;

    for (int32_t child = branch->first; child != TREE_NONE; child = strokes->branches[child].next)
        leaves += leaves_below(strokes, child);
    return leaves;
}

struct recount *recount_make(struct arena *arena)
{
    return ARENA_NEW(arena, struct recount);
}

int32_t recount_cuts(struct strokes *strokes, int32_t root)
{
    struct recount *recount = strokes->recount;
    const struct branch *branch = &strokes->branches[root];
    struct region whole = {{0, 0}, {branch->size[0], branch->size[1]}};
    const int32_t at[2] = {0, 0};
    int32_t before = leaves_below(strokes, root);

    assert(root >= 0 && root < strokes->branch_count);
    memset(recount, 0, sizeof *recount);
    recount->strokes = strokes;
    if (!list_rects(recount, root, at) || before == least_leaves(recount, &whole) ||
        fewest_leaves(recount, &whole) >= before)
        return root;
    return build(recount, &whole);
}
