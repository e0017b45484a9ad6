#include "plan/slices.h"

#include <assert.h>

typedef bool before_fn(const struct plan *plan, size_t index, int64_t box);

static bool panel_before(const struct plan *plan, size_t index, int64_t box)
{
    assert(index < plan->panels.count);
    return plan->panels.at[index].box < box;
}

static bool member_before(const struct plan *plan, size_t index, int64_t box)
{
    assert(index < plan->members.count);
    return plan->members.at[index].box < box;
}

static bool frame_screw_before(const struct plan *plan, size_t index, int64_t box)
{
    assert(index < plan->screws.count);

    const struct screw *screw = &plan->screws.at[index];

    return screw->use == SCREW_FRAME && screw->box < box;
}

/* The first of a list that is not before a box. */
static size_t bound(const struct plan *plan, size_t count, before_fn *before, int64_t box)
{
    size_t low = 0;
    size_t high = count;

    while (low < high) {
        size_t middle = low + (high - low) / 2;

        if (before(plan, middle, box))
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

static struct slice slice_of(const struct plan *plan, size_t count, before_fn *before, int64_t box)
{
    struct slice slice = {bound(plan, count, before, box), bound(plan, count, before, box + 1)};

    assert(slice.from <= slice.to && slice.to <= count);
    return slice;
}

struct slice plan_panels_of(const struct plan *plan, int64_t box)
{
    return slice_of(plan, plan->panels.count, panel_before, box);
}

struct slice plan_members_of(const struct plan *plan, int64_t box)
{
    return slice_of(plan, plan->members.count, member_before, box);
}

struct slice plan_frame_screws_of(const struct plan *plan, int64_t box)
{
    return slice_of(plan, plan->screws.count, frame_screw_before, box);
}

bool plan_is_panelled(const struct plan *plan, int64_t box, int64_t side)
{
    struct slice panels = plan_panels_of(plan, box);

    for (size_t i = panels.from; i < panels.to; i++)
        if (plan->panels.at[i].side == side && !plan->panels.at[i].loose)
            return true;
    return false;
}
