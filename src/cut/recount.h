/*
 * Fewest cuts for parts that lie as they lie.
 */
#ifndef CUT_RECOUNT_H
#define CUT_RECOUNT_H

#include "cut/strokes.h"

#define RECOUNT_PARTS 24
#define RECOUNT_REGIONS 512

/* Scratch, made once in the arena; strokes_init does it. */
struct recount;
struct recount *recount_make(struct arena *arena);

/*
 * The root of a tree of branches for the same places with fewer cuts, where there is one; else
 * `root` itself. Exact for sheets of up to RECOUNT_PARTS parts, as far as RECOUNT_REGIONS different
 * pieces go; beyond that the root comes back as it is. Needs room for as many branches again.
 */
int32_t recount_cuts(struct strokes *strokes, int32_t root);

#endif
