/*
 * How neat trees of cuts are: cuts, fence settings, pieces that pass an opening.
 */
#ifndef CUT_FENCES_H
#define CUT_FENCES_H

#include "cut/trees.h"

/* Less is neater: sheets whose pieces do not pass the opening asked for count most, then cuts, then
 * different widths that nodes are cut into, a guess at fence settings. With parts outside it is
 * beyond all others. */
int64_t fences_judge(const struct trees *trees, const struct sheet_job *job, int32_t outside);

/*
 * Whether a sheet of the job can be cut once, between children of its root, so that both pieces
 * pass the opening asked for (`passage` in layout.h), lying either way. `widths` are those of all
 * children, cut `way`. When true, ret_first says by child whether it lies on the near side of that
 * cut; none does where the whole sheet passes or no opening is asked for. When false ret_first
 * holds nothing of use. Up to 12 children all ways to part them are tried, 2^12 at most; of more
 * only the first ones against the rest.
 */
bool fences_pass(const struct sheet_job *job, const int32_t root[2], int way, const int32_t *widths,
                 size_t count, bool *ret_first);

#endif
