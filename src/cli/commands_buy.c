/* `stuffover buy`: the shopping list of a build, or of several as one trip. */
#include "cli/commands.h"

#include "base/memory.h"
#include "cli/report.h"
#include "cli/report_put.h"
#include "desk/trip.h"
#include "paper/sheets.h"

#include <string.h>

/* ---- which builds ---- */

enum fault command_keys(struct cli *cli, int64_t *keys, struct fault_note *note)
{
    const struct store_build *builds = NULL;
    size_t count = 0;
    enum fault fault = desk_builds(cli->desk, &builds, &count, note);
    if (fault)
        return fault;
    for (int i = 0; i < cli->count; i++) {
        keys[i] = 0;
        for (size_t k = 0; k < count; k++) {
            if (strcmp(builds[k].name, cli->operands[i]) == 0)
                keys[i] = builds[k].key;
        }
        for (int k = 0; k < i; k++) {
            if (keys[k] == keys[i] && keys[i])
                return fault_say(note, FAULT_DUPLICATE, 0, "\"%s\" stands there twice",
                                 cli->operands[i]);
        }
        if (!keys[i])
            return fault_say(note, FAULT_UNKNOWN, 0, "there is no build called \"%s\"",
                             cli->operands[i]);
    }
    return FAULT_NONE;
}

/* ---- as JSON ---- */

static void report_line(struct json *json, const struct trip *trip, const struct trip_line *line)
{
    const struct plan *plan = trip->builds.at[0].plan;
    struct text words;
    text_init(&words);
    sheet_trip_words(&words, trip, line);
    json_put_object(json, JSON_LINE);
    put_text(json, "aisle", words_aisle.at[line->aisle].name);
    put_text(json, "what", text_string(&words));
    put_money(json, plan, "price", line->till);
    put_money(json, plan, "paid", line->amount);
    put_array(json, "shares");
    for (size_t i = 0; i < line->shares.count; i++) {
        const struct trip_share *share = &line->shares.at[i];
        json_put_object(json, JSON_LINE);
        put_text(json, "build", trip->builds.at[share->build].model->build.name);
        put_money(json, plan, "price", share->till);
        json_put_close(json);
    }
    json_put_close(json);
    json_put_close(json);
    text_release(&words);
}

static void report_trip(struct text *out, const struct trip *trip)
{
    struct json json;
    json_put_start(&json, out);
    json_put_object(&json, JSON_LINES);
    put_array(&json, "lines");
    for (size_t i = 0; i < trip->lines.count; i++)
        report_line(&json, trip, &trip->lines.at[i]);
    json_put_close(&json);
    put_money(&json, trip->builds.at[0].plan, "total", trip->till);
    put_money(&json, trip->builds.at[0].plan, "paid", trip->paid);
    json_put_close(&json);
    json_put_end(&json);
}

enum fault command_buy(struct cli *cli, struct fault_note *note)
{
    struct desk_trip *trip = NULL;
    int64_t *keys = memory_resize(NULL, (size_t)cli->count * sizeof *keys);
    if (!keys)
        return fault_say(note, FAULT_MEMORY, 0, "there is not enough memory for this");
    enum fault fault = command_keys(cli, keys, note);
    if (!fault)
        fault =
            desk_trip_begin(&trip, cli->desk, keys, (size_t)cli->count, sheet_purchase_words, note);
    if (!fault && cli->json)
        report_trip(&cli->out, desk_trip_of(trip));
    else if (!fault)
        sheet_trip(&cli->out, desk_trip_of(trip));
    desk_trip_free(trip);
    memory_release(keys);
    return fault;
}
