/* Commands that look after the workshop file. */
#include "cli/commands.h"

#include "base/show.h"
#include "cli/report_put.h"

#include <inttypes.h>

enum fault command_health(struct cli *cli, struct fault_note *note)
{
    struct desk_health health;
    struct json json;
    enum fault fault = desk_look_through(cli->desk, &health, note);
    if (fault)
        return fault;
    if (!cli->json) {
        show_text(&cli->out, desk_path(cli->desk));
        text_format(&cli->out, ": whole; builds: %zu; %" PRId64 " kB\n", health.builds,
                    (health.bytes + 999) / 1000);
        return FAULT_NONE;
    }
    report_open(&json, &cli->out);
    put_bool(&json, "whole", true);
    put_whole(&json, "builds", (int64_t)health.builds);
    put_whole(&json, "bytes", health.bytes);
    report_close(&json);
    return FAULT_NONE;
}

enum fault command_backup(struct cli *cli, struct fault_note *note)
{
    enum fault fault = desk_backup(cli->desk, cli->operands[0], cli->replace, note);
    if (fault)
        return fault;
    show_text(&cli->out, cli->operands[0]);
    text_add(&cli->out, ": a copy, looked through and whole\n");
    return FAULT_NONE;
}

/* "build-21.json: Corner banquette, whole" */
static void tell_rescued(void *context, const struct desk_rescued *rescued)
{
    struct cli *cli = context;
    char line[512];
    text_add(&cli->out, rescued->file);
    text_add(&cli->out, ": ");
    if (rescued->note) {
        fault_print(line, sizeof line, rescued->note);
        text_add(&cli->out, line);
    } else {
        show_text(&cli->out, rescued->name);
        if (rescued->lost > 0)
            text_format(&cli->out, "; %zu lists, rows or values are lost", rescued->lost);
        else
            text_add(&cli->out, "; nothing is lost");
    }
    text_add_char(&cli->out, '\n');
}

enum fault command_rescue(struct cli *cli, struct fault_note *note)
{
    return desk_rescue(cli->store, cli->operands[0], tell_rescued, cli, note);
}
