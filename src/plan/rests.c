#include "plan/rests.h"

#include "base/day.h"
#include "plan/steps.h"

/* Common practice of the trade, no source: rules P24, P25, P27. */
static const struct rest rests[] = {
    {STEP_FRAME, STEP_DRY, TRADE_GLUE_CLAMP, "the glue of the frame grabs"},
    {STEP_PANEL, STEP_DRY, TRADE_GLUE_CLAMP, "the glue of the panel grabs"},
    {STEP_FRAME, STEP_WEB, TRADE_GLUE_CURE, "the glue of the frame cures"},
    {STEP_FRAME, STEP_LINING, TRADE_GLUE_CURE, "the glue of the frame cures"},
    {STEP_FRAME, STEP_COVER, TRADE_GLUE_CURE, "the glue of the frame cures"},
    {STEP_PANEL, STEP_COVER, TRADE_GLUE_CURE, "the glue of the panel cures"},
    {STEP_UNROLL, STEP_BATTING, TRADE_BATTING_REST, "the batting comes up"},
    {STEP_PAD, STEP_PAD, TRADE_MINUTES_FOAM_WAIT, "the glue under the foam grabs"},
    {STEP_PAD, STEP_BATTING, TRADE_MINUTES_FOAM_WAIT, "the glue under the foam grabs"},
    {STEP_PAD, STEP_LINING, TRADE_SPRAY_SET, "the glue under the foam sets"},
    {STEP_PAD, STEP_COVER, TRADE_SPRAY_SET, "the glue under the foam sets"},
};

const struct rest *rest_between(int before, int after, const int64_t *value)
{
    const struct rest *longest = NULL;

    for (size_t i = 0; i < sizeof rests / sizeof *rests; i++) {
        const struct rest *rest = &rests[i];

        if (rest->before == before && rest->after == after && value[rest->value] > 0 &&
            (!longest || value[rest->value] > value[longest->value]))
            longest = rest;
    }
    return longest;
}

int64_t rest_since(const char *then, const char *now)
{
    int64_t from, to;

    if (!day_read_minutes(then, &from) || !day_read_minutes(now, &to))
        return INT64_MAX;
    return (to - from) * 1000;
}
