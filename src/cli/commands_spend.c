/* `stuffover spend`: what was paid, for one build or split over several. */
#include "cli/commands.h"

#include "base/memory.h"
#include "base/show.h"
#include "desk/clock.h"
#include "desk/spend.h"
#include "paper/sheets.h"

#include <string.h>

enum fault command_build_key(struct cli *cli, const char *name, int64_t *ret_key,
                             struct fault_note *note)
{
    const struct store_build *builds = NULL;
    size_t count = 0;
    enum fault fault = desk_builds(cli->desk, &builds, &count, note);
    for (size_t i = 0; i < count && !fault; i++) {
        if (strcmp(builds[i].name, name) == 0) {
            *ret_key = builds[i].key;
            return FAULT_NONE;
        }
    }
    return fault ? fault : fault_say(note, FAULT_UNKNOWN, "there is no build called \"%s\"", name);
}

/* A build's name, or "" for the shelf. */
static enum fault place_named(struct cli *cli, const char *name, int64_t *ret_key,
                              struct fault_note *note)
{
    *ret_key = 0;
    return *name ? command_build_key(cli, name, ret_key, note) : FAULT_NONE;
}

static enum fault read_weight(const char *text, int64_t *ret_weight, struct fault_note *note)
{
    enum fault fault = quantity_parse(QUANTITY_COUNT, UNITS_MM, text, ret_weight, note);
    if (!fault && (*ret_weight < 1 || *ret_weight > 1000000))
        fault = fault_say(note, FAULT_RANGE, "a part is a whole number from 1 to 1000000");
    return fault;
}

/* "Corner bench=2", or a name alone, which may have a "=" in it. */
static enum fault read_part(struct cli *cli, const char *given, struct spend_part *part,
                            struct fault_note *note)
{
    const char *equals = strrchr(given, '=');
    struct text name;
    struct fault_note quiet;
    part->weight = 1;
    if (!equals || place_named(cli, given, &part->build, &quiet) == FAULT_NONE)
        return place_named(cli, given, &part->build, note);
    text_init(&name);
    text_add_bytes(&name, given, (size_t)(equals - given));
    enum fault fault = place_named(cli, text_string(&name), &part->build, note);
    text_release(&name);
    return fault ? fault : read_weight(equals + 1, &part->weight, note);
}

static enum fault read_parts(struct cli *cli, struct spend_part *parts, struct fault_note *note)
{
    enum fault fault = place_named(cli, cli->operands[0], &parts[0].build, note);
    parts[0].weight = 1;
    if (!fault && cli->part)
        fault = read_weight(cli->part, &parts[0].weight, note);
    for (size_t i = 0; i < cli->with_count && !fault; i++)
        fault = read_part(cli, cli->with[i], &parts[i + 1], note);
    for (size_t i = 1; i <= cli->with_count && !fault; i++) {
        for (size_t k = 0; k < i; k++) {
            if (parts[k].build == parts[i].build)
                return fault_say(note, FAULT_DUPLICATE, "\"%s\" stands there twice",
                                 cli->with[i - 1]);
        }
    }
    return fault;
}

/* "Corner bench 33.34, Wing bed 33.33, the shelf 33.33" */
static void tell_parts(struct cli *cli, const struct spend_part *parts, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        const char *given = i ? cli->with[i - 1] : cli->operands[0];
        char money[MONEY_TEXT];
        const struct store_build *builds = NULL;
        size_t known = 0;
        const char *name = given;
        if (desk_builds(cli->desk, &builds, &known, NULL))
            known = 0;
        for (size_t k = 0; k < known; k++) {
            if (builds[k].key == parts[i].build)
                name = builds[k].name;
        }
        text_add(&cli->out, i ? ", " : "");
        show_text(&cli->out, parts[i].build ? name : "the shelf");
        text_format(&cli->out, " %s",
                    money_print(money, model_currency(desk_model(cli->desk)), parts[i].amount));
    }
    text_add_char(&cli->out, '\n');
}

static enum fault write_down(struct cli *cli, struct spend_part *parts, size_t count,
                             struct fault_note *note)
{
    char today[CLOCK_TEXT];
    const struct desk_spend spend = {.amount = cli->operands[1],
                                     .what = cli->operands[2],
                                     .dated = cli->date ? cli->date : clock_today(today),
                                     .tax = cli->tax,
                                     .aisle = cli->aisle,
                                     .supplier = cli->supplier,
                                     .stock = cli->stock,
                                     .length = cli->length,
                                     .width = cli->width,
                                     .pack = cli->pack,
                                     .count = cli->counted,
                                     .settles = cli->settles ? "yes" : NULL};
    enum fault fault = FAULT_NONE;
    if (cli->counted && count > 1)
        return fault_say(note, FAULT_USAGE, "--count is of a spend that is not split");
    if (parts[0].build)
        fault = desk_take_up(cli->desk, parts[0].build, note);
    if (!fault)
        fault = desk_spend(cli->desk, &spend, parts, count, note);
    return fault;
}

enum fault command_spend(struct cli *cli, struct fault_note *note)
{
    struct spend_part parts[CLI_WITH + 1] = {{0}};
    size_t count = cli->with_count + 1;
    enum fault fault = read_parts(cli, parts, note);
    if (!fault)
        fault = write_down(cli, parts, count, note);
    if (fault)
        return fault;
    if (count > 1 || parts[0].build == 0)
        tell_parts(cli, parts, count);
    if (parts[0].build)
        sheet_money(&cli->out, desk_plan(cli->desk));
    return FAULT_NONE;
}
