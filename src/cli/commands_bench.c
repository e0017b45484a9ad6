/* Commands of the bench: what can be done now, ticks with measures, what turned out otherwise. */
#include "cli/commands.h"

#include "cli/report.h"
#include "desk/clock.h"
#include "paper/print.h"
#include "paper/sheets.h"
#include "plan/doable.h"

#include <stdio.h>
#include <string.h>

/* ---- steps --minutes ---- */

enum fault command_doable(struct cli *cli, struct fault_note *note)
{
    const struct plan *plan = desk_plan(cli->desk);
    char now[CLOCK_TEXT];
    struct doable_ask ask = {.people = cli->alone ? 1 : 2, .room = true, .now = clock_now(now)};
    enum fault fault =
        quantity_parse(QUANTITY_MINUTES, UNITS_INCH, cli->minutes, &ask.minutes, note);
    if (fault)
        return fault;
    struct arena arena;
    const struct doable *doable;
    arena_init(&arena);
    fault = plan_doable(plan, &ask, &arena, &doable);
    if (fault)
        fault_say(note, fault, "there is not enough memory for this");
    else if (cli->json)
        report_doable(&cli->out, plan, doable);
    else
        sheet_doable(&cli->out, plan, &ask, doable);
    arena_release(&arena);
    return fault;
}

/* ---- tick ---- */

#define NAME_MOST 100

struct given_measure {
    char name[NAME_MOST];
};

/* "width=76 1/4": the name ends at the last "=". */
static enum fault split_measure(const char *given, struct given_measure *name,
                                struct desk_measure *measure, struct fault_note *note)
{
    const char *equals = strrchr(given, '=');
    if (!equals || equals - given >= NAME_MOST)
        return fault_say(note, FAULT_USAGE, "\"%s\" is no NAME=VALUE", given);
    snprintf(name->name, sizeof name->name, "%.*s", (int)(equals - given), given);
    *measure = (struct desk_measure){name->name, equals + 1};
    return FAULT_NONE;
}

static void tell_next(struct cli *cli)
{
    const struct plan *plan = desk_plan(cli->desk);
    text_format(&cli->out, "%lld of %lld steps done\n", (long long)plan->tally.steps_done,
                (long long)plan->tally.steps);
    for (size_t i = 0; i < plan->steps.count; i++) {
        if (plan->steps.at[i].ready) {
            text_format(&cli->out, "next: %s (%s)\n", plan->steps.at[i].title,
                        plan->steps.at[i].name);
            break;
        }
    }
}

/* "done ahead of: Cut 2x2 stick (cut:3)" */
static void tell_ahead(struct cli *cli, const char *name)
{
    const struct plan *plan = desk_plan(cli->desk);
    const struct step *step = plan_step(plan, name);
    const struct step *awaited = step ? plan_waits_for(plan, step) : NULL;
    if (awaited)
        text_format(&cli->out, "done ahead of: %s (%s)\n", awaited->title, awaited->name);
}

static enum fault tick_one(struct cli *cli, const char *step, const struct desk_done *done,
                           struct fault_note *note)
{
    if (cli->back)
        return desk_untick(cli->desk, step, note);
    enum fault fault = desk_tick_done(cli->desk, step, done, note);
    if (!fault)
        tell_ahead(cli, step);
    return fault;
}

/* One after the other, up to the first that is refused; those before it stay ticked, each an edit
 * of its own. */
static enum fault tick_all(struct cli *cli, const struct desk_done *done, struct fault_note *note)
{
    enum fault fault = FAULT_NONE;
    for (int i = 1; i < cli->count && !fault; i++)
        fault = tick_one(cli, cli->operands[i], done, note);
    return fault;
}

enum fault command_tick(struct cli *cli, struct fault_note *note)
{
    struct desk_measure measures[CLI_MEASURES];
    struct given_measure names[CLI_MEASURES];
    char now[CLOCK_TEXT];
    struct desk_done done = {
        .at = clock_now(now), .measures = measures, .measure_count = cli->measure_count};
    enum fault fault = FAULT_NONE;
    if (cli->count > 2 && (cli->minutes || cli->measure_count))
        return fault_say(note, FAULT_USAGE, "minutes and measures are of one step");
    if (cli->minutes)
        fault = quantity_parse(QUANTITY_MINUTES, UNITS_INCH, cli->minutes, &done.minutes, note);
    for (size_t i = 0; i < cli->measure_count && !fault; i++)
        fault = split_measure(cli->measures[i], &names[i], &measures[i], note);
    if (!fault)
        fault = tick_all(cli, &done, note);
    if (!fault)
        tell_next(cli);
    return fault;
}

enum fault command_clock(struct cli *cli, struct fault_note *note)
{
    char now[CLOCK_TEXT];
    const char *step = cli->operands[1];
    enum fault fault = desk_clock(cli->desk, step, clock_now(now), note);
    const struct timing *timing = desk_timing(cli->desk, step);
    if (!fault)
        text_format(&cli->out, "the clock %s: %s\n", *timing->began ? "runs" : "stands",
                    print_minutes(timing->minutes).at);
    return fault;
}

/* ---- what turned out otherwise ---- */

enum fault command_spoil(struct cli *cli, struct fault_note *note)
{
    enum fault fault = desk_spoil(cli->desk, cli->operands[1], !cli->back, note);
    if (!fault)
        tell_next(cli);
    return fault;
}

enum fault command_leave(struct cli *cli, struct fault_note *note)
{
    enum fault fault = desk_leave_out(cli->desk, cli->operands[1], !cli->back, note);
    if (!fault)
        tell_next(cli);
    return fault;
}
