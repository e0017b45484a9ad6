/* `stuffover money` without a build: the account of all of them. */
#include "cli/commands.h"

#include "base/day.h"
#include "cli/report_put.h"
#include "desk/clock.h"
#include "paper/sheets.h"

#include <string.h>

static void put_sum(struct json *json, const struct model *model, const char *key, int64_t money)
{
    json_put_key(json, key);
    json_put_money(json, model_currency(model), money);
}

static void put_time(struct json *json, const char *key, int64_t minutes)
{
    json_put_key(json, key);
    json_put_quantity(json, QUANTITY_MINUTES, UNITS_MM, minutes);
}

static void put_build(struct json *json, const struct model *model,
                      const struct account_build *build)
{
    json_put_object(json, JSON_LINES);
    put_text(json, "build", build->name);
    put_text(json, "state", words_state.at[build->state].name);
    put_sum(json, model, "estimate", build->estimate);
    put_sum(json, model, "committed", build->committed);
    put_sum(json, model, "paid", build->paid);
    put_sum(json, model, "forecast", build->forecast);
    put_sum(json, model, "variance", build->forecast - build->estimate);
    if (build->budget)
        put_sum(json, model, "left", build->budget - build->forecast);
    put_time(json, "minutes", build->minutes);
    put_time(json, "minutes_taken", build->taken);
    put_time(json, "planned_for_taken", build->planned_for_taken);
    put_time(json, "minutes_left", build->minutes_left);
    put_text(json, "due", build->due);
    put_text(json, "done_by", build->done_by);
    put_bool(json, "late", build->late);
    json_put_close(json);
}

static void put_months(struct json *json, const struct model *model, const struct account *account)
{
    put_array(json, "months");
    for (size_t i = 0; i < account->months.count; i++) {
        json_put_object(json, JSON_LINE);
        put_text(json, "month", account->months.at[i].month);
        put_sum(json, model, "paid", account->months.at[i].paid);
        put_sum(json, model, "tax", account->months.at[i].tax);
        json_put_close(json);
    }
    json_put_close(json);
}

static void put_weeks(struct json *json, const struct account *account)
{
    put_array(json, "weeks");
    for (size_t i = 0; i < account->weeks.count; i++) {
        const struct account_week *week = &account->weeks.at[i];
        json_put_object(json, JSON_LINE);
        put_text(json, "begins", week->begins);
        put_text(json, "build", account->builds.at[week->build].name);
        put_time(json, "minutes", week->minutes);
        json_put_close(json);
    }
    json_put_close(json);
}

static void report_account(struct text *out, const struct model *model,
                           const struct account *account)
{
    struct json json;
    report_open(&json, out);
    put_array(&json, "builds");
    for (size_t i = 0; i < account->builds.count; i++)
        put_build(&json, model, &account->builds.at[i]);
    json_put_close(&json);
    put_months(&json, model, account);
    put_weeks(&json, account);
    put_sum(&json, model, "estimate", account->estimate);
    put_sum(&json, model, "committed", account->committed);
    put_sum(&json, model, "paid", account->paid);
    put_sum(&json, model, "forecast", account->forecast);
    put_sum(&json, model, "variance", account->forecast - account->estimate);
    put_sum(&json, model, "shelf", account->shelf);
    put_sum(&json, model, "all_paid", account->all_paid);
    report_close(&json);
}

enum fault command_account(struct cli *cli, struct fault_note *note)
{
    struct account account;
    struct arena arena;
    char today[CLOCK_TEXT];
    int64_t day;
    if (cli->date && (strlen(cli->date) != DAY_TEXT - 1 || !day_read(cli->date, &day)))
        return fault_say(note, FAULT_USAGE, "\"%s\" is no day, as 2026-11-25 is one", cli->date);
    arena_init(&arena);
    enum fault fault =
        desk_account(cli->desk, cli->date ? cli->date : clock_today(today), &arena, &account, note);
    if (!fault && cli->json)
        report_account(&cli->out, desk_model(cli->desk), &account);
    else if (!fault)
        sheet_account(&cli->out, desk_model(cli->desk), &account);
    arena_release(&arena);
    return fault;
}
