/* Commands that look: each view of the terminal has a twin here, as text and as JSON. */
#include "cli/commands.h"

#include "base/show.h"
#include "cli/report.h"
#include "cli/report_put.h"
#include "paper/lines.h"
#include "paper/print.h"
#include "paper/sheets.h"
#include "paper/table.h"

#include <stdlib.h>
#include <string.h>

/* ---- list ---- */

static void list_json(struct text *out, struct currency currency, const struct store_build *builds,
                      size_t count)
{
    struct json json;
    report_open(&json, out);
    put_array(&json, "builds");
    for (size_t i = 0; i < count; i++) {
        const struct store_build *build = &builds[i];
        json_put_object(&json, JSON_LINE);
        put_text(&json, "name", build->name);
        put_text(&json, "state", words_state.at[build->state].name);
        put_text(&json, "due", build->due);
        json_put_key(&json, "budget");
        json_put_money(&json, currency, build->budget);
        json_put_key(&json, "estimate");
        json_put_money(&json, currency, build->summary.estimate);
        json_put_key(&json, "spent");
        json_put_money(&json, currency, build->spend);
        put_whole(&json, "steps", build->summary.steps_total);
        put_whole(&json, "steps_done", build->summary.steps_done);
        put_text(&json, "next", build->summary.next_step);
        put_text(&json, "missing", build->summary.missing);
        json_put_close(&json);
    }
    json_put_close(&json);
    report_close(&json);
}

static void list_text(struct text *out, struct currency currency, const struct store_build *builds,
                      size_t count)
{
    struct table table;
    char money[MONEY_TEXT];
    table_begin(&table, "llrrrl");
    for (size_t i = 0; i < count; i++) {
        const struct store_build *build = &builds[i];
        table_cell(&table, "%s", build->name);
        table_cell(&table, "%s", words_state.at[build->state].name);
        table_cell(&table, "%lld of %lld steps", (long long)build->summary.steps_done,
                   (long long)build->summary.steps_total);
        table_cell(&table, "estimate %s", money_print(money, currency, build->summary.estimate));
        table_cell(&table, "spent %s", money_print(money, currency, build->spend));
        table_cell(&table, *build->summary.next_step ? "next: %s" : "%s", build->summary.next_step);
    }
    table_end(&table, out);
    if (count == 0)
        text_add(out, "There is no build yet: \"stuffover new\" begins one.\n");
}

enum fault command_list(struct cli *cli, struct fault_note *note)
{
    const struct store_build *builds;
    size_t count;
    enum fault fault = desk_builds(cli->desk, &builds, &count, note);
    if (fault)
        return fault;
    struct currency currency = model_currency(desk_model(cli->desk));
    (cli->json ? list_json : list_text)(&cli->out, currency, builds, count);
    return FAULT_NONE;
}

/* ---- views of one plan ---- */

typedef void sheet_fn(struct text *out, const struct plan *plan);
typedef void report_fn(struct json *json, const struct plan *plan);

/* Prints the sheets, or the reports as one object. Both lists end with NULL. */
static enum fault view(struct cli *cli, sheet_fn *const *sheets, report_fn *const *reports)
{
    const struct plan *plan = desk_told_plan(cli->desk);
    if (!cli->json) {
        for (; *sheets; sheets++)
            (*sheets)(&cli->out, plan);
        return FAULT_NONE;
    }
    struct json json;
    report_open(&json, &cli->out);
    for (; *reports; reports++)
        (*reports)(&json, plan);
    report_close(&json);
    return FAULT_NONE;
}

enum fault command_show(struct cli *cli, struct fault_note *note)
{
    static sheet_fn *const sheets[] = {sheet_heading, sheet_boxes,  sheet_screws,  sheet_joins,
                                       sheet_cloth,   sheet_sewing, sheet_staples, NULL};
    static report_fn *const reports[] = {
        report_heading, report_boxes,   report_screws, report_joins,
        report_cloth,   report_staples, NULL};
    static sheet_fn *const layers[] = {sheet_heading, sheet_padding, sheet_sections,
                                       sheet_cloth,   sheet_sewing,  sheet_staples,
                                       NULL};
    static report_fn *const layer_reports[] = {report_heading, report_padding, report_cloth,
                                               report_staples, NULL};
    static sheet_fn *const care[] = {sheet_heading,  sheet_weights,  sheet_lifts, sheet_route,
                                     sheet_strength, sheet_cautions, NULL};
    static report_fn *const care_reports[] = {report_heading, report_weights,  report_lifts,
                                              report_route,   report_strength, NULL};
    if (cli->picture || cli->count > 1 || cli->corner || cli->face || cli->cut || cli->apart)
        return command_picture(cli, note);
    if (cli->care)
        return view(cli, care, care_reports);
    return cli->layers ? view(cli, layers, layer_reports) : view(cli, sheets, reports);
}

enum fault command_plan(struct cli *cli, struct fault_note *note)
{
    static sheet_fn *const sheets[] = {sheet_plan, NULL};
    static report_fn *const reports[] = {
        report_heading, report_findings, report_boxes, report_screws, report_joins, report_cloth,
        report_staples, report_buying,   report_money, report_steps,  NULL};
    (void)note;
    return view(cli, sheets, reports);
}

enum fault command_money(struct cli *cli, struct fault_note *note)
{
    static sheet_fn *const sheets[] = {sheet_buying, sheet_money, NULL};
    static report_fn *const reports[] = {report_heading, report_buying, report_money, NULL};
    if (cli->count == 0)
        return command_account(cli, note);
    enum cut_effort effort;
    enum fault fault = command_effort(cli, CUT_QUICK, &effort, note);
    if (!fault)
        fault = desk_take_up_named(cli->desk, cli->operands[0], note);
    if (!fault)
        fault = desk_cut(cli->desk, effort, note);
    return fault ? fault : view(cli, sheets, reports);
}

/* Takes the cure "3.1": the first of the third finding. */
static enum fault take_cure(struct cli *cli, struct fault_note *note)
{
    char *end;
    unsigned long finding = strtoul(cli->cure, &end, 10);
    unsigned long cure = *end == '.' ? strtoul(end + 1, &end, 10) : 0;
    if (*end || finding == 0 || cure == 0)
        return fault_say(note, FAULT_USAGE, "\"%s\" is no cure: they are numbered like 1.2",
                         cli->cure);
    return desk_cure(cli->desk, finding - 1, cure - 1, note);
}

enum fault command_check(struct cli *cli, struct fault_note *note)
{
    static sheet_fn *const sheets[] = {sheet_findings, NULL};
    static report_fn *const reports[] = {report_findings, NULL};
    enum fault fault = FAULT_NONE;
    if (cli->count == 0)
        return command_health(cli, note);
    fault = desk_take_up_named(cli->desk, cli->operands[0], note);
    if (!fault && cli->cure)
        fault = take_cure(cli, note);
    if (fault)
        return fault;
    cli->negative = desk_plan(cli->desk)->tally.stops > 0;
    return view(cli, sheets, reports);
}

/* One join's map, or one hole of it. */
static enum fault map_of(struct cli *cli, const struct junction *junction, struct fault_note *note)
{
    const struct plan *plan = desk_plan(cli->desk);
    char nothing[] = "";
    char *end = nothing;
    unsigned long hole = cli->count > 2 ? strtoul(cli->operands[2], &end, 10) : 0;
    struct json json;
    if (cli->count > 2 && (*end || hole == 0 || hole > junction->point_count))
        return fault_say(note, FAULT_UNKNOWN, "the join has no hole \"%s\"", cli->operands[2]);
    if (!cli->json && hole)
        sheet_point(&cli->out, plan, junction->first_point + hole - 1, SHEET_COLUMNS);
    else if (!cli->json)
        sheet_join_map(&cli->out, plan, junction);
    if (!cli->json)
        return FAULT_NONE;
    report_open(&json, &cli->out);
    report_join_map(&json, plan, junction);
    report_ways(&json, plan, junction->join);
    report_close(&json);
    return FAULT_NONE;
}

enum fault command_map(struct cli *cli, struct fault_note *note)
{
    static sheet_fn *const sheets[] = {sheet_map, NULL};
    static report_fn *const reports[] = {report_maps, NULL};
    const struct plan *plan = desk_plan(cli->desk);
    if (cli->count < 2)
        return view(cli, sheets, reports);
    int64_t join = model_key_named(plan->facts, ENTITY_join, cli->operands[1]);
    const struct junction *junction = plan_junction(plan, join);
    if (!junction)
        return fault_say(note, FAULT_UNKNOWN, "the build has no join \"%s\"", cli->operands[1]);
    return map_of(cli, junction, note);
}

enum fault command_steps(struct cli *cli, struct fault_note *note)
{
    static sheet_fn *const sheets[] = {sheet_steps, NULL};
    static report_fn *const reports[] = {report_steps, NULL};
    if (cli->minutes)
        return command_doable(cli, note);
    if (cli->rehearse || cli->apart)
        return cli->rehearse ? command_rehearse(cli, note) : command_apart(cli, note);
    if (cli->count < 2)
        return view(cli, sheets, reports);
    const struct step *step = plan_step(desk_plan(cli->desk), cli->operands[1]);
    if (!step)
        return desk_no_step(cli->desk, cli->operands[1], note);
    sheet_step(&cli->out, desk_plan(cli->desk), step);
    return FAULT_NONE;
}

/* ---- trade values ---- */

static const char *const origins[] = {"", "workshop", "build"};

static void trade_row(struct table *table, const struct model *model, enum trade trade)
{
    const struct trade_value *value = &trade_values[trade];
    char held[QUANTITY_TEXT];
    char inch[QUANTITY_TEXT];
    char mm[QUANTITY_TEXT];
    enum trade_origin origin = trade_origin_of(model, trade);
    table_cell(table, "%s", value->key);
    table_cell(
        table, "%s",
        quantity_print_unit(held, value->quantity, model_units(model), trade_of(model, trade)));
    table_cell(table, "%s", origins[origin]);
    table_cell(table, "%s",
               quantity_print_unit(inch, value->quantity, UNITS_INCH, value->standard[UNITS_INCH]));
    table_cell(table, "%s",
               quantity_print_unit(mm, value->quantity, UNITS_MM, value->standard[UNITS_MM]));
    table_cell(table, "%s", value->source);
    table_cell(table, "%s", value->help);
}

static void trade_object(struct json *json, const struct model *model, enum trade trade)
{
    const struct trade_value *value = &trade_values[trade];
    json_put_object(json, JSON_LINE);
    put_text(json, "key", value->key);
    json_put_key(json, "value");
    json_put_quantity(json, value->quantity, model_units(model), trade_of(model, trade));
    put_text(json, "origin",
             trade_origin_of(model, trade) ? origins[trade_origin_of(model, trade)] : "standard");
    json_put_key(json, "least");
    json_put_quantity(json, value->quantity, model_units(model), value->least);
    json_put_key(json, "most");
    json_put_quantity(json, value->quantity, model_units(model), value->most);
    put_text(json, "source", value->source);
    put_text(json, "help", value->help);
    json_put_close(json);
}

static void trade_print(struct cli *cli, enum trade first, enum trade end)
{
    const struct model *model = desk_model(cli->desk);
    if (cli->json) {
        struct json json;
        report_open(&json, &cli->out);
        put_array(&json, "values");
        for (enum trade trade = first; trade < end; trade++)
            trade_object(&json, model, trade);
        json_put_close(&json);
        report_close(&json);
        return;
    }
    struct table table;
    table_begin(&table, "lrlrrll");
    for (enum trade trade = first; trade < end; trade++)
        trade_row(&table, model, trade);
    table_end(&table, &cli->out);
}

enum fault command_trade(struct cli *cli, struct fault_note *note)
{
    enum fault fault = FAULT_NONE;
    if (cli->build)
        fault = desk_take_up_named(cli->desk, cli->build, note);
    if (fault)
        return fault;
    if (cli->count == 0) {
        trade_print(cli, 0, TRADE_COUNT);
        return FAULT_NONE;
    }
    int found = trade_find(cli->operands[0]);
    if (found < 0)
        return fault_say(note, FAULT_UNKNOWN, "there is no trade value \"%s\"", cli->operands[0]);
    if (cli->count == 2)
        fault = desk_trade(cli->desk, cli->build ? TRADE_FROM_BUILD : TRADE_FROM_WORKSHOP,
                           cli->operands[0], cli->operands[1], note);
    if (!fault)
        trade_print(cli, (enum trade)found, (enum trade)found + 1);
    return fault;
}
