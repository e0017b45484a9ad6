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
 * Whether a sheet of the job can be cut once so that both pieces pass the opening asked for, lying
 * either way; true where none is asked. `widths` are those of the children of its root, cut `way`;
 * sets ret_first by child: whether it lies on the near side of that cut. (`passage` in
 * layout.h.) O(2^count) at worst, limited to 2^12 sums: beyond them only sums in order are tried.
 */
bool fences_pass(const struct sheet_job *job, const int32_t root[2], int way, const int32_t *widths,
                 size_t count, bool *ret_first);

#endif
