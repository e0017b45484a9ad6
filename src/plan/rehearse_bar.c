/*
 * A driver with a bit may be held at a slant, which takes as much off its radius as the slant moves
 * its body aside.
 */
#include "plan/rehearse_bar.h"

#include <assert.h>

static struct tool_bar own_tool(const struct stage *stage, int64_t kind, struct tool_bar bar)
{
    for (size_t i = 0; i < stage->model->tools.count; i++) {
        const struct tool *tool = &stage->model->tools.at[i];

        if (tool->kind == kind && tool->length > 0)
            return (struct tool_bar){tool->length, tool->radius > 0 ? tool->radius : bar.radius};
    }
    return bar;
}

#define MICRORADIANS 17453 /* in a degree, rounded down */

size_t bars_for(const struct stage *stage, int64_t tool, int64_t screw, struct tool_bar bars[BARS])
{
    static const int64_t kinds[] = {TOOL_DRIVER, TOOL_LONG_BIT, TOOL_RIGHT_ANGLE, TOOL_STUBBY};
    const int64_t *value = stage->plan->value;
    const struct tool_bar usual[] = {
        {value[TRADE_DRIVER_INLINE], value[TRADE_DRIVER_RADIUS]},
        {value[TRADE_DRIVER_BODY] + value[TRADE_DRIVER_BIT_LONG] + value[TRADE_DRIVER_SLACK],
         value[TRADE_DRIVER_RADIUS_LONG_BIT]},
        {value[TRADE_DRIVER_RIGHT_ANGLE], value[TRADE_DRIVER_RADIUS_LONG_BIT]},
        {value[TRADE_DRIVER_STUBBY], value[TRADE_DRIVER_RADIUS_LONG_BIT]}};
    size_t count = 0;

    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        bars[count] = own_tool(stage, kinds[i], usual[i]);
        bars[count++].length += screw;
        if (kinds[i] == tool)
            break;
    }
    if (tool != TOOL_DRIVER) {
        int64_t aside = (value[TRADE_DRIVER_BIT] + screw) * value[TRADE_DRIVER_OFF_AXIS] / 1000 *
                        MICRORADIANS / 1000000;

        bars[count] = bars[0];
        bars[count++].radius -= aside;
    }
    assert(count > 0 && count <= BARS);
    return count;
}

static int64_t gap(int64_t at, int64_t low, int64_t high)
{
    return at < low ? low - at : at > high ? at - high : 0;
}

static bool is_in_bar(const struct solid *solid, struct vector head, int axis, int sign,
                      const struct tool_bar *bar)
{
    int64_t from = stage_along(head, axis);
    int64_t low = sign > 0 ? from : from - bar->length;
    int64_t square = 0;

    if (stage_along(solid->low, axis) >= low + bar->length || stage_along(solid->high, axis) <= low)
        return false;
    for (int other = 0; other < AXIS_COUNT; other++) {
        int64_t aside = other == axis
                            ? 0
                            : gap(stage_along(head, other), stage_along(solid->low, other),
                                  stage_along(solid->high, other));
        square += aside * aside;
    }
    return square < bar->radius * bar->radius;
}

/* What leans may come into the block that the bar meets and not into the bar. */
static bool leans_into_bar(const struct near_by *near, struct vector head, int axis, int sign,
                           const struct tool_bar *bar)
{
    struct body round;

    if (!near->leans)
        return true;
    round = body_of_bar(head, axis, sign * bar->length, bar->radius);
    return bodies_meet(near->leans, &round);
}

const struct near_by *bar_blocked(const struct view *view, struct vector head, int axis, int sign,
                                  const struct tool_bar *bar)
{
    for (size_t i = 0; i < view->near.count; i++)
        if (is_in_bar(&view->near.at[i].solid, head, axis, sign, bar) &&
            leans_into_bar(&view->near.at[i], head, axis, sign, bar))
            return &view->near.at[i];
    return NULL;
}
