/*
 * The tools that drive screws, and what room each takes.
 */
#ifndef PLAN_TOOL_H
#define PLAN_TOOL_H

#include "plan/pass.h"

struct tool_size {
    int64_t length; /* in line with the screw, the screw itself left out */
    int64_t radius; /* of its body, about the screw's axis */
};

/* Of a kind of tool (enum tool_word): the workshop's own where it is measured, else the trade's. */
struct tool_size tool_size(const struct planning *planning, int64_t kind);

/* No right-angle head is shorter, beside the screw. Common practice, no source. */
#define TOOL_SHORTEST (40 * LENGTH_MM)

#endif
