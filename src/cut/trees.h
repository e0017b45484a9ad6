/*
 * Sheets as trees of cuts. A sheet is the root of its tree. A node is a part, a gap (nothing yet),
 * or is cut into children that follow each other one way, along or across; children of those are
 * cut the other way. The order of children means nothing until the sheet is laid out, so a node
 * has at most one gap among its children: what one part leaves joins what others have left.
 *
 * cuts = parts + gaps of sheets in use - sheets in use
 */
#ifndef CUT_TREES_H
#define CUT_TREES_H

#include "cut/sheetjob.h"

#define TREE_NONE INT32_C(-1)

struct tree_node {
    int32_t size[2];
    int32_t parent;
    int32_t first, next, before; /* children; siblings */
    int32_t part;                /* TREE_NONE where none lies */
    int32_t gap;                 /* a gap: its index in gaps; a cut node: its child that is a gap */
    int8_t way;                  /* a cut node: how its children follow; else TREE_NONE */
    bool turned;
};

struct tree_gap {
    int32_t size[2];
    int32_t node;
};

struct tree_root {
    int32_t node;
    uint32_t size; /* index into sizes */
};

/* Made once, for as many parts and open sheets as there can be. A root is known by its index, and a
 * node, a gap by theirs. */
struct trees {
    struct tree_node *nodes;
    struct tree_gap *gaps;
    struct tree_root *roots;
    int32_t *where; /* by part: its node, or TREE_NONE */
    int32_t node_count, gap_count, root_count, free_node;
    int32_t part_most, root_most, node_most;
};

void trees_init(struct trees *trees, struct arena *arena, size_t part_most, size_t root_most);

/* No sheet is open. */
void trees_clear(struct trees *trees);

/* Copies between trees made for the same numbers. Linear. */
void trees_copy(struct trees *trees, const struct trees *from);

/* Opens a sheet. */
void trees_open(struct trees *trees, const struct sheet_job *job, size_t size);

/* The root of a sheet of that size that is empty: one that is open, or else a new one. */
int32_t trees_empty_sheet(struct trees *trees, const struct sheet_job *job, size_t size);

/* Puts a part, which measures `size` as it lies, into a gap that takes it: cut off first one way,
 * then the other. */
void trees_put(struct trees *trees, int32_t gap, size_t part, const int32_t size[2], bool turned,
               int way);

/*
 * For a sheet whose cuts are known, from its root downward. trees_break opens an empty sheet for
 * this and gives its node. Each open node is then cut on (each trees_grow adds one more open child
 * of this size; all of a node go the same way), filled by a part of the same size, or left as a
 * gap. All open nodes have to be dealt with before anything else is done, and the whole has to hold
 * to the invariants of trees.c.
 */
int32_t trees_break(struct trees *trees, int32_t root);
int32_t trees_grow(struct trees *trees, int32_t node, int way, const int32_t size[2]);
void trees_fill(struct trees *trees, int32_t node, size_t part, bool turned);
void trees_leave(struct trees *trees, int32_t node);

/* Takes a part out; what it leaves joins what lies beside it. */
void trees_take(struct trees *trees, size_t part);

/* The topmost node above a node; whether a sheet (by its root) holds any part. */
int32_t trees_top(const struct trees *trees, int32_t node);
bool trees_used(const struct trees *trees, int32_t root);

/* Takes all parts out of a sheet. */
void trees_empty(struct trees *trees, int32_t root);

/* Takes an empty sheet away; the last root takes its index. */
void trees_close(struct trees *trees, int32_t root);

/* How many cuts part all sheets in use; `parts_placed` are the parts in them. */
int32_t trees_cuts(const struct trees *trees, size_t parts_placed);

#endif
