/*
 * Fewest cuts for parts that lie as they lie.
 */
#ifndef CUT_RECOUNT_H
#define CUT_RECOUNT_H

#include "cut/strokes.h"

/*
 * A tree of branches for the same places with fewer cuts, if there is one: the root to go on with,
 * which is `root` itself otherwise. Exact for sheets of up to RECOUNT_PARTS parts, as far as
 * RECOUNT_REGIONS different pieces go; beyond that the root comes back as it is. Needs room for as
 * many branches again.
 */
#define RECOUNT_PARTS 24
#define RECOUNT_REGIONS 512

struct recount; /* scratch: made once */

struct recount *recount_make(struct arena *arena);

int32_t recount_cuts(struct strokes *strokes, int32_t root);

#endif
