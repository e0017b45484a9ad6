/*
 * What belongs to one box. Panels, members and the screws of frames are made box by box in the
 * order of keys, and frames are screwed before anything else is: those of a box stand together in
 * the plan's list, and are found by halving it.
 */
#ifndef PLAN_SLICES_H
#define PLAN_SLICES_H

#include "plan/plan.h"

struct slice {
    size_t from, to; /* half-open, in the plan's list */
};

/* O(log n). Empty for a box that has none, or is none. */
struct slice plan_panels_of(const struct plan *plan, int64_t box);
struct slice plan_members_of(const struct plan *plan, int64_t box);
struct slice plan_frame_screws_of(const struct plan *plan, int64_t box);

/* Whether a panel is fixed on a side of a box; one that is laid on loose does not count. */
bool plan_is_panelled(const struct plan *plan, int64_t box, int64_t side);

#endif
