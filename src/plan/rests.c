#include "plan/rests.h"

#include "plan/steps.h"

#include <stdio.h>

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

/* Days from 1970 in the Gregorian calendar, counted from March so that the leap day comes last. */
static int64_t days_since_1970(int year, int month, int day)
{
    int64_t from_march = month > 2 ? month - 3 : month + 9;
    int64_t y = month > 2 ? year : year - 1;

    return 365 * y + y / 4 - y / 100 + y / 400 + (153 * from_march + 2) / 5 + day - 719469;
}

static bool read_minutes(const char *at, int64_t *ret_minutes)
{
    int year, month, day, hour, minute;

    if (sscanf(at, "%4d-%2d-%2d %2d:%2d", &year, &month, &day, &hour, &minute) != 5 || year < 1970)
        return false;
    *ret_minutes = (days_since_1970(year, month, day) * 24 + hour) * 60 + minute;
    return true;
}

int64_t rest_since(const char *then, const char *now)
{
    int64_t from, to;

    if (!read_minutes(then, &from) || !read_minutes(now, &to))
        return INT64_MAX;
    return (to - from) * 1000;
}
