/*
 * From trees of cuts to a layout: where each part lies, and the cuts in the order in which a saw
 * makes them with its fence set as seldom as can be.
 */
#ifndef CUT_STROKES_H
#define CUT_STROKES_H

#include "cut/trees.h"

/* A node as it is laid out: like one of a tree, but its children may follow in a chosen order. */
struct branch {
    int32_t size[2];
    int32_t first, next; /* children; sibling */
    int32_t part;        /* TREE_NONE: a gap, or cut on */
    int8_t way;          /* its children follow each other; TREE_NONE: it is not cut on */
    bool turned;
};

/* A piece on the saw: what is left of a node, between its edges on the sheet. */
struct saw_piece {
    int32_t branch;
    int64_t at[2];   /* near left corner in job lengths */
    int64_t ends[2]; /* its far edges */
    int32_t left;    /* children not yet cut off */
};

/* One saw and what lies on it; made once, for trees of a number of nodes. */
struct strokes {
    const struct sheet_job *job;
    struct arena *arena;
    struct branch *branches;
    int32_t branch_count, branch_most;
    bool *done; /* by branch: cut off */
    struct saw_piece *pieces;
    int32_t piece_count;
    int64_t fence;  /* as it stands, or -1 */
    int64_t *needs; /* fence settings that are still needed, and how often */
    int32_t *times;
    int32_t need_count;
    size_t blank; /* that is being laid out */
    struct cut_layout *layout;
    struct recount *recount;    /* scratch of recount.h */
    int32_t *children, *widths; /* scratch: of a root */
    bool *marks; /* scratch: by child of a root, whether it lies before the first cut */
};

/* A new branch that is a gap; its index. */
int32_t strokes_branch(struct strokes *strokes, const int32_t size[2]);

/* Whether nothing is cut from a branch. */
static inline bool branch_is_gap(const struct branch *branch)
{
    return branch->part == TREE_NONE && branch->way == TREE_NONE;
}

void strokes_init(struct strokes *strokes, const struct sheet_job *job, struct arena *arena,
                  const struct trees *trees);

/*
 * Lays the sheets of the trees that are in use out into `layout`, which is emptied first (its lists
 * keep their room): blanks, places, left_out, strokes, fences, cost and `stuck`; not its bound.
 * O(strokes * nodes) a sheet.
 */
void strokes_lay_out(struct strokes *strokes, const struct trees *trees, struct cut_layout *layout);

#endif
