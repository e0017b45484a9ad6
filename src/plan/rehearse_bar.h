/*
 * A tool behind a head, for the rehearsal alone: a round bar that begins at the head, as long as
 * the tool needs with the screw before it. Nothing comes nearer to its axis than its radius.
 */
#ifndef PLAN_REHEARSE_BAR_H
#define PLAN_REHEARSE_BAR_H

#include "plan/rehearse_look.h"

struct tool_bar {
    int64_t length; /* behind the head, the screw included */
    int64_t radius;
};

#define BARS 5

/* The tools that may be used where the plan chose one (enum tool_word) for a screw of a length:
 * that one, and those that are handier, each in the workshop's own size where it is measured; last
 * a driver at a slant, where a longer or shorter tool was chosen. Their count, at least 1. */
size_t bars_for(const struct stage *stage, int64_t tool, int64_t screw, struct tool_bar bars[BARS]);

/* The first that stands in the bar behind a head, which goes away from the wood along an axis in a
 * direction (1 or -1); NULL when nothing does. Pointer into the view. */
const struct near_by *bar_blocked(const struct view *view, struct vector head, int axis, int sign,
                                  const struct tool_bar *bar);

#endif
