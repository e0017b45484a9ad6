#include "cut/fences.h"

#include <assert.h>
#include <string.h>

#define CHILDREN_ALL 12  /* of a root: up to these all ways to part them are tried */
#define CHILDREN_MOST 64 /* of a root: only these are looked at, for a guess */
#define WEIGHT_CUT INT64_C(1000)
#define WEIGHT_STUCK INT64_C(10000000)
#define WEIGHT_OUTSIDE INT64_C(1000000000000)

/* ---- the opening ---- */

/* The most that a piece may measure one way when it measures `other` the other way. */
static int64_t passes_to(const struct cut_job *job, int64_t other)
{
    int64_t most = -1;

    if (other <= job->passage_width)
        most = job->passage_length;
    if (other <= job->passage_length && job->passage_width > most)
        most = job->passage_width;
    return most;
}

/* Marks the children of a subset whose sum lies in the range; false when there is none. */
static bool find_subset(const int32_t *widths, size_t count, int64_t least, int64_t most,
                        bool *ret_first)
{
    assert(count <= CHILDREN_ALL); /* 2^count subsets */
    for (uint32_t set = 1; set + 1 < UINT32_C(1) << count; set++) {
        int64_t sum = 0;

        for (size_t i = 0; i < count; i++)
            sum += set >> i & 1 ? widths[i] : 0;
        if (sum < least || sum > most)
            continue;
        for (size_t i = 0; i < count; i++)
            ret_first[i] = set >> i & 1;
        return true;
    }
    return false;
}

/* The same with the first children alone, one more at a time. */
static bool find_prefix(const int32_t *widths, size_t count, int64_t least, int64_t most,
                        bool *ret_first)
{
    int64_t sum = 0;

    for (size_t i = 0; i + 1 < count; i++) {
        sum += widths[i];
        ret_first[i] = true;
        if (sum >= least && sum <= most)
            return true;
    }
    return false;
}

bool fences_pass(const struct sheet_job *job, const int32_t root[2], int way, const int32_t *widths,
                 size_t count, bool *ret_first)
{
    assert(way == 0 || way == 1);

    const struct cut_job *asked = job->job;
    int64_t slack = 2 * asked->trim - asked->kerf;
    int64_t whole = root[way] * job->unit + slack;
    int64_t most = passes_to(asked, root[!way] * job->unit + slack);

    memset(ret_first, 0, count * sizeof *ret_first);
    if (asked->passage_length == 0 || whole <= most)
        return true;
    if (count < 2)
        return false;
    /* The most that a side's children measure together, with the kerf that each carries. */
    most = most + asked->kerf - asked->trim;
    if (most < 0)
        return false;
    most /= job->unit;
    if (count <= CHILDREN_ALL)
        return find_subset(widths, count, root[way] - most, most, ret_first);
    return find_prefix(widths, count, root[way] - most, most, ret_first);
}

/* A guess: of many children the last are not looked at. */
static bool root_passes(const struct trees *trees, const struct sheet_job *job, int32_t node)
{
    const struct tree_node *root = &trees->nodes[node];
    int32_t widths[CHILDREN_MOST];
    bool first[CHILDREN_MOST];
    int way = root->way == TREE_NONE ? WAY_ALONG : root->way;
    size_t count = 0;

    if (root->way != TREE_NONE)
        for (int32_t child = root->first; child != TREE_NONE && count < CHILDREN_MOST;
             child = trees->nodes[child].next)
            widths[count++] = trees->nodes[child].size[way];
    return fences_pass(job, root->size, way, widths, count, first);
}

/* ---- settings ---- */

/* Whether no child before this one is as wide. */
static bool is_new_width(const struct trees *trees, int32_t child, int way)
{
    assert(way == 0 || way == 1);

    const struct tree_node *nodes = trees->nodes;

    for (int32_t other = nodes[child].before; other != TREE_NONE; other = nodes[other].before)
        if (nodes[other].size[way] == nodes[child].size[way])
            return false;
    return true;
}

/* Different widths that a node and those below it are cut into, gaps aside. */
static int64_t settings_below(const struct trees *trees, int32_t node)
{
    const struct tree_node *at = &trees->nodes[node];
    int64_t settings = 0;

    if (at->way == TREE_NONE)
        return 0;
    for (int32_t child = at->first; child != TREE_NONE; child = trees->nodes[child].next) {
        if (child != at->gap)
            settings += is_new_width(trees, child, at->way);
        settings += settings_below(trees, child);
    }
    return settings;
}

int64_t fences_judge(const struct trees *trees, const struct sheet_job *job, int32_t outside)
{
    size_t placed = 0;
    int64_t judged;

    assert(outside >= 0);
    for (int32_t i = 0; i < trees->part_most; i++)
        placed += trees->where[i] != TREE_NONE;
    judged = outside * WEIGHT_OUTSIDE + trees_cuts(trees, placed) * WEIGHT_CUT;
    for (int32_t i = 0; i < trees->root_count; i++) {
        int32_t node = trees->roots[i].node;

        if (!trees_used(trees, i))
            continue;
        judged += settings_below(trees, node);
        if (job->job->passage_length > 0 && !root_passes(trees, job, node))
            judged += WEIGHT_STUCK;
    }
    return judged;
}
