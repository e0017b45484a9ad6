/*
 * Invariants:
 *  1  the children of a cut node measure together what it measures its way, and all measure what it
 *     measures the other way
 *  2  a cut node has two children or more, at most one of them a gap, none cut the same way
 *  3  gaps[nodes[n].gap].node == n for each gap n, and their sizes agree
 */
#include "cut/trees.h"

#include <assert.h>
#include <string.h>

void trees_init(struct trees *trees, struct arena *arena, size_t part_most, size_t root_most)
{
    size_t node_most = 5 * part_most + root_most + 8; /* parts, as many cut nodes twice, gaps */

    *trees = (struct trees){.nodes = ARENA_MANY(arena, struct tree_node, node_most),
                            .gaps = ARENA_MANY(arena, struct tree_gap, node_most),
                            .roots = ARENA_MANY(arena, struct tree_root, root_most),
                            .where = ARENA_MANY(arena, int32_t, part_most),
                            .free_node = TREE_NONE,
                            .part_most = (int32_t)part_most,
                            .root_most = (int32_t)root_most,
                            .node_most = (int32_t)node_most};
    for (size_t i = 0; i < part_most; i++)
        trees->where[i] = TREE_NONE;
}

void trees_clear(struct trees *trees)
{
    trees->node_count = trees->gap_count = trees->root_count = 0;
    trees->free_node = TREE_NONE;
    for (int32_t i = 0; i < trees->part_most; i++)
        trees->where[i] = TREE_NONE;
}

void trees_copy(struct trees *trees, const struct trees *from)
{
    assert(trees->part_most == from->part_most && trees->root_most == from->root_most);
    memcpy(trees->nodes, from->nodes, (size_t)from->node_count * sizeof *from->nodes);
    memcpy(trees->gaps, from->gaps, (size_t)from->gap_count * sizeof *from->gaps);
    memcpy(trees->roots, from->roots, (size_t)from->root_count * sizeof *from->roots);
    memcpy(trees->where, from->where, (size_t)from->part_most * sizeof *from->where);
    trees->node_count = from->node_count;
    trees->gap_count = from->gap_count;
    trees->root_count = from->root_count;
    trees->free_node = from->free_node;
}

/* ---- nodes and gaps ---- */

static int32_t new_node(struct trees *trees, const int32_t size[2])
{
    int32_t node = trees->free_node;

    if (node != TREE_NONE)
        trees->free_node = trees->nodes[node].next;
    else
        node = trees->node_count++;
    assert(node < trees->node_most);
    trees->nodes[node] = (struct tree_node){.size = {size[0], size[1]},
                                            .parent = TREE_NONE,
                                            .first = TREE_NONE,
                                            .next = TREE_NONE,
                                            .before = TREE_NONE,
                                            .part = TREE_NONE,
                                            .gap = TREE_NONE,
                                            .way = TREE_NONE};
    return node;
}

static void free_node(struct trees *trees, int32_t node)
{
    assert(node >= 0 && node < trees->node_count);
    trees->nodes[node].next = trees->free_node;
    trees->free_node = node;
}

static bool is_gap(const struct tree_node *node)
{
    return node->part == TREE_NONE && node->way == TREE_NONE;
}

static void add_gap(struct trees *trees, int32_t node)
{
    struct tree_node *at = &trees->nodes[node];

    assert(is_gap(at) && trees->gap_count < trees->node_most);
    at->gap = trees->gap_count;
    trees->gaps[trees->gap_count++] = (struct tree_gap){{at->size[0], at->size[1]}, node};
    if (at->parent != TREE_NONE)
        trees->nodes[at->parent].gap = node;
}

static void drop_gap(struct trees *trees, int32_t node)
{
    struct tree_node *at = &trees->nodes[node];
    struct tree_gap last = trees->gaps[trees->gap_count - 1];

    assert(trees->gaps[at->gap].node == node); /* invariant 3 */
    trees->gap_count--;
    trees->gaps[at->gap] = last;
    trees->nodes[last.node].gap = at->gap;
    at->gap = TREE_NONE;
    if (at->parent != TREE_NONE)
        trees->nodes[at->parent].gap = TREE_NONE;
}

static void resize_gap(struct trees *trees, int32_t node, int way, int32_t by)
{
    assert(way == 0 || way == 1);
    trees->nodes[node].size[way] += by;
    trees->gaps[trees->nodes[node].gap].size[way] += by;
}

static void link_child(struct trees *trees, int32_t parent, int32_t child)
{
    int32_t first = trees->nodes[parent].first;

    trees->nodes[child].parent = parent;
    trees->nodes[child].before = TREE_NONE;
    trees->nodes[child].next = first;
    if (first != TREE_NONE)
        trees->nodes[first].before = child;
    trees->nodes[parent].first = child;
}

static void unlink_child(struct trees *trees, int32_t child)
{
    struct tree_node *at = &trees->nodes[child];

    if (at->before != TREE_NONE)
        trees->nodes[at->before].next = at->next;
    else
        trees->nodes[at->parent].first = at->next;
    if (at->next != TREE_NONE)
        trees->nodes[at->next].before = at->before;
}

/* ---- sheets ---- */

void trees_open(struct trees *trees, const struct sheet_job *job, size_t size)
{
    assert(size < job->size_count);

    int32_t node = new_node(trees, job->sizes[size].size);

    assert(trees->root_count < trees->root_most);
    trees->roots[trees->root_count++] = (struct tree_root){node, (uint32_t)size};
    add_gap(trees, node);
}

bool trees_used(const struct trees *trees, int32_t root)
{
    return !is_gap(&trees->nodes[trees->roots[root].node]);
}

int32_t trees_empty_sheet(struct trees *trees, const struct sheet_job *job, size_t size)
{
    for (int32_t i = 0; i < trees->root_count; i++)
        if (trees->roots[i].size == size && !trees_used(trees, i))
            return i;
    trees_open(trees, job, size);
    return trees->root_count - 1;
}

void trees_close(struct trees *trees, int32_t root)
{
    int32_t node = trees->roots[root].node;

    assert(!trees_used(trees, root));
    drop_gap(trees, node);
    free_node(trees, node);
    trees->roots[root] = trees->roots[--trees->root_count];
}

int32_t trees_top(const struct trees *trees, int32_t node)
{
    while (trees->nodes[node].parent != TREE_NONE)
        node = trees->nodes[node].parent;
    return node;
}

int32_t trees_cuts(const struct trees *trees, size_t parts_placed)
{
    /* A sheet that is not in use is one gap, so it adds nothing. */
    return (int32_t)parts_placed + trees->gap_count - trees->root_count;
}

/* ---- putting ---- */

/* A gap that stood alone becomes a cut node with the gap as its child. */
static void deepen(struct trees *trees, int32_t gap, int way)
{
    struct tree_node *at = &trees->nodes[gap];
    int32_t child = new_node(trees, at->size);
    int32_t index = at->gap;

    if (at->parent != TREE_NONE)
        trees->nodes[at->parent].gap = TREE_NONE;
    at->way = (int8_t)way;
    at->gap = child;
    trees->nodes[child].gap = index;
    trees->gaps[index].node = child;
    link_child(trees, gap, child);
}

/* Cuts `width` off a gap one way: the node that is cut off, no gap of its parent's any more. The
 * whole gap when it is just as wide. */
static int32_t cut_off(struct trees *trees, int32_t gap, int way, int32_t width)
{
    int32_t size[2] = {trees->nodes[gap].size[0], trees->nodes[gap].size[1]};
    int32_t parent = trees->nodes[gap].parent;
    int32_t piece;

    assert(width <= size[way]);
    if (width == size[way])
        return gap;
    if (parent == TREE_NONE || trees->nodes[parent].way != way) {
        deepen(trees, gap, way);
        parent = gap;
        gap = trees->nodes[parent].gap;
    }
    size[way] = width;
    piece = new_node(trees, size);
    resize_gap(trees, gap, way, -width);
    link_child(trees, parent, piece);
    return piece;
}

/* Cuts a strip that is no gap into a piece and a gap. */
static int32_t cut_strip(struct trees *trees, int32_t strip, int way, int32_t width)
{
    int32_t size[2] = {trees->nodes[strip].size[0], trees->nodes[strip].size[1]};
    int32_t piece, rest;

    if (width == size[way])
        return strip;
    trees->nodes[strip].way = (int8_t)way;
    size[way] -= width;
    rest = new_node(trees, size);
    size[way] = width;
    piece = new_node(trees, size);
    link_child(trees, strip, rest);
    add_gap(trees, rest);
    link_child(trees, strip, piece);
    return piece;
}

void trees_put(struct trees *trees, int32_t gap, size_t part, const int32_t size[2], bool turned,
               int way)
{
    assert(way == 0 || way == 1);

    int32_t node = trees->gaps[gap].node;
    int32_t strip = cut_off(trees, node, way, size[way]);
    int32_t piece;

    assert(trees->where[part] == TREE_NONE);
    piece = strip == node ? cut_off(trees, node, !way, size[!way])
                          : cut_strip(trees, strip, !way, size[!way]);
    if (piece == node)
        drop_gap(trees, node);
    trees->nodes[piece].part = (int32_t)part;
    trees->nodes[piece].turned = turned;
    trees->where[part] = piece;
}

/* ---- growing ---- */

int32_t trees_break(struct trees *trees, int32_t root)
{
    assert(!trees_used(trees, root));
    drop_gap(trees, trees->roots[root].node);
    return trees->roots[root].node;
}

int32_t trees_grow(struct trees *trees, int32_t node, int way, const int32_t size[2])
{
    int32_t child = new_node(trees, size);

    assert(size[!way] == trees->nodes[node].size[!way]);
    trees->nodes[node].way = (int8_t)way;
    link_child(trees, node, child);
    return child;
}

void trees_fill(struct trees *trees, int32_t node, size_t part, bool turned)
{
    assert(trees->where[part] == TREE_NONE);
    trees->nodes[node].part = (int32_t)part;
    trees->nodes[node].turned = turned;
    trees->where[part] = node;
}

void trees_leave(struct trees *trees, int32_t node)
{
    assert(trees->nodes[node].parent == TREE_NONE ||
           trees->nodes[trees->nodes[node].parent].gap == TREE_NONE);
    add_gap(trees, node);
}

/* ---- taking ---- */

/* Lets a node that holds nothing join the gap beside it. True when only a gap is left of the
 * parent, which then holds nothing either. */
static bool join_gap(struct trees *trees, int32_t node)
{
    int32_t parent = trees->nodes[node].parent;
    int32_t gap = trees->nodes[parent].gap;
    int way = trees->nodes[parent].way;

    assert(gap != TREE_NONE && gap != node);
    resize_gap(trees, gap, way, trees->nodes[node].size[way]);
    unlink_child(trees, node);
    free_node(trees, node);
    if (trees->nodes[parent].first != gap || trees->nodes[gap].next != TREE_NONE)
        return false;
    drop_gap(trees, gap);
    free_node(trees, gap);
    trees->nodes[parent].first = TREE_NONE;
    trees->nodes[parent].way = TREE_NONE;
    return true;
}

void trees_take(struct trees *trees, size_t part)
{
    int32_t node = trees->where[part];

    assert(node != TREE_NONE && trees->nodes[node].part == (int32_t)part);
    trees->where[part] = TREE_NONE;
    trees->nodes[node].part = TREE_NONE;
    for (;;) {
        int32_t parent = trees->nodes[node].parent;

        if (parent == TREE_NONE || trees->nodes[parent].gap == TREE_NONE)
            break;
        if (!join_gap(trees, node))
            return;
        node = parent;
    }
    add_gap(trees, node);
}

void trees_empty(struct trees *trees, int32_t root)
{
    while (trees_used(trees, root)) {
        int32_t node = trees->roots[root].node;

        while (trees->nodes[node].part == TREE_NONE) {
            int32_t gap = trees->nodes[node].gap;

            node = trees->nodes[node].first;
            node = node == gap ? trees->nodes[node].next : node;
        }
        trees_take(trees, (size_t)trees->nodes[node].part);
    }
}
