/* `steps --rehearse` and `steps --apart`: the proof of an order of work, and the way back. */
#include "cli/commands.h"

#include "cli/report_put.h"
#include "cli/report_rehearsal.h"
#include "paper/sheets.h"
#include "plan/rehearse.h"

static enum fault say_memory(struct fault_note *note)
{
    return fault_say(note, FAULT_MEMORY, "there is not enough memory to rehearse");
}

enum fault command_rehearse(struct cli *cli, struct fault_note *note)
{
    const struct plan *plan = desk_plan(cli->desk);
    const struct rehearsal *rehearsal;
    struct json json;
    struct arena arena;
    enum fault fault;

    arena_init(&arena);
    fault = rehearse(plan, &arena, &rehearsal);
    if (fault) {
        fault = say_memory(note);
        goto done;
    }
    cli->negative = !rehearsal->proved;
    if (!cli->json) {
        sheet_rehearsal(&cli->out, plan, rehearsal);
        goto done;
    }
    report_open(&json, &cli->out);
    report_rehearsal(&json, plan, rehearsal);
    report_close(&json);
done:
    arena_release(&arena);
    return fault;
}

enum fault command_apart(struct cli *cli, struct fault_note *note)
{
    const struct plan *plan = desk_plan(cli->desk);
    struct rehearsed_steps steps;
    struct json json;
    struct arena arena;
    enum fault fault;

    arena_init(&arena);
    fault = rehearse_apart(plan, &arena, &steps);
    if (fault) {
        fault = say_memory(note);
        goto done;
    }
    if (!cli->json) {
        sheet_apart(&cli->out, plan, &steps);
        goto done;
    }
    report_open(&json, &cli->out);
    report_apart(&json, plan, &steps);
    report_close(&json);
done:
    arena_release(&arena);
    return fault;
}
