/* `stuffover buy`: the shopping list of a build, or of several as one trip. */
#include "cli/commands.h"

#include "base/memory.h"
#include "cli/report.h"
#include "cli/report_put.h"
#include "desk/clock.h"
#include "desk/trip.h"
#include "paper/press.h"
#include "paper/sheets.h"

#include <string.h>

/* ---- which builds ---- */

enum fault command_keys(struct cli *cli, int64_t *keys, struct fault_note *note)
{
    for (int i = 0; i < cli->count; i++) {
        enum fault fault = command_build_key(cli, cli->operands[i], &keys[i], note);
        if (fault)
            return fault;
        for (int k = 0; k < i; k++) {
            if (keys[k] == keys[i])
                return fault_say(note, FAULT_DUPLICATE, "\"%s\" stands there twice",
                                 cli->operands[i]);
        }
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
    report_bought(json, plan, line->length > 0, line->bought);
    put_array(json, "shares");
    for (size_t i = 0; i < trip->builds.count; i++) {
        int64_t till;
        int64_t amount;
        trip_line_of(line, i, &till, &amount);
        if (!till && !amount)
            continue;
        json_put_object(json, JSON_LINE);
        put_text(json, "build", trip->builds.at[i].model->build.name);
        put_money(json, plan, "price", till);
        put_money(json, plan, "paid", amount);
        json_put_close(json);
    }
    json_put_close(json);
    if (line->cut)
        put_money(json, plan, "less_than_apart", line->cut->apart - line->cut->together);
    json_put_close(json);
    text_release(&words);
}

static void report_trip(struct text *out, const struct trip *trip)
{
    struct json json;
    report_open(&json, out);
    put_array(&json, "lines");
    for (size_t i = 0; i < trip->lines.count; i++)
        report_line(&json, trip, &trip->lines.at[i]);
    json_put_close(&json);
    put_array(&json, "builds");
    for (size_t i = 0; i < trip->builds.count; i++) {
        json_put_object(&json, JSON_LINE);
        put_text(&json, "build", trip->builds.at[i].model->build.name);
        put_money(&json, trip->builds.at[i].plan, "price", trip->builds.at[i].till);
        put_money(&json, trip->builds.at[i].plan, "apart", trip->builds.at[i].plan->cost.estimate);
        json_put_close(&json);
    }
    json_put_close(&json);
    put_array(&json, "cutting");
    for (size_t i = 0; i < trip->cuts.count; i++) {
        const struct cut_sheet sheet =
            sheet_of_pool_job(trip->builds.at[0].plan, &trip->cuts.at[i].job);
        report_layout(&json, &sheet);
    }
    json_put_close(&json);
    put_money(&json, trip->builds.at[0].plan, "apart", trip->apart);
    put_money(&json, trip->builds.at[0].plan, "total", trip->till);
    put_money(&json, trip->builds.at[0].plan, "paid", trip->paid);
    report_close(&json);
}

static enum fault into_file(struct cli *cli, const struct trip *trip, struct fault_note *note)
{
    char today[CLOCK_TEXT];
    const struct press press = {
        .format = cli->pages, .path = cli->to, .replace = cli->replace, .date = clock_today(today)};
    struct pressed pressed;
    enum fault fault = press_trip(&press, trip, &pressed, note);
    if (!fault)
        command_pressed(cli, &pressed);
    return fault;
}

static enum fault put_trip(struct cli *cli, const struct trip *trip, struct fault_note *note)
{
    if (cli->to)
        return into_file(cli, trip, note);
    if (cli->json) {
        report_trip(&cli->out, trip);
        return FAULT_NONE;
    }
    sheet_trip(&cli->out, trip);
    sheet_trip_cutting(&cli->out, trip);
    return FAULT_NONE;
}

enum fault command_buy(struct cli *cli, struct fault_note *note)
{
    struct desk_trip *trip = NULL;
    enum cut_effort effort;
    int64_t *keys = memory_resize(NULL, (size_t)cli->count * sizeof *keys);
    if (!keys)
        return fault_say(note, FAULT_MEMORY, "there is not enough memory for this");
    enum fault fault = command_keys(cli, keys, note);
    if (!fault)
        fault = command_effort(cli, CUT_QUICK, &effort, note);
    if (!fault)
        fault = desk_trip_begin(&trip, cli->desk, keys, (size_t)cli->count, effort,
                                sheet_purchase_words, note);
    if (!fault)
        fault = put_trip(cli, desk_trip_of(trip), note);
    desk_trip_free(trip);
    memory_release(keys);
    return fault;
}
