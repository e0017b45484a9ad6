/* What is missing before the work on a build can go on. */
#include "desk/desk.h"

#include "base/arena.h"
#include "base/text.h"
#include "plan/buy.h"

struct shortage {
    const struct plan *plan;
    struct arena arena;
    struct text *out;
};

/* "3 to buy: Plywood 1/2 in, Moss weave, batting" */
static void tell_short(void *context)
{
    struct shortage *shortage = context;
    const struct model *facts = shortage->plan->facts;
    const bool *is_short = stocks_short(shortage->plan, &shortage->arena);
    long long count = 0;

    for (size_t i = 0; i < facts->stocks.count; i++)
        count += is_short[i];
    if (count == 0)
        return;
    text_format(shortage->out, "%lld to buy", count);
    const char *before = ": ";
    for (size_t i = 0; i < facts->stocks.count; i++) {
        if (!is_short[i])
            continue;
        text_format(shortage->out, "%s%s", before, facts->stocks.at[i].name);
        before = ", ";
    }
}

/* "2 stops: join J1 finds no place with wood on both sides" */
static void tell_stops(const struct plan *plan, struct text *out)
{
    long long stops = (long long)plan->tally.stops;

    text_format(out, "%lld %s: ", stops, stops == 1 ? "stop" : "stops");
    plan_finding_text(plan, &plan->findings.at[0], out);
}

void desk_missing(const struct plan *plan, struct text *out)
{
    struct shortage shortage = {.plan = plan, .out = out};

    if (plan->facts->build.state == STATE_FINISHED)
        return;
    if (plan->facts->boxes.count == 0) {
        text_add(out, "no box yet");
        return;
    }
    if (plan->tally.stops > 0) {
        tell_stops(plan, out);
        return;
    }
    arena_init(&shortage.arena);
    (void)arena_try(&shortage.arena, tell_short, &shortage);
    arena_release(&shortage.arena);
}
