/* The workshop's account: money and hours of all builds, month by month, and time at the bench. */
#include "paper/sheets.h"

#include "paper/print.h"
#include "paper/table.h"

#include <string.h>

#define NAME_BYTES 28 /* of a build, so that its row fits a line */

/* ---- money ---- */

static void money_row(struct table *table, const struct model *model,
                      const struct account_build *build)
{
    table_name(table, NAME_BYTES, build->name);
    table_cell(table, "%s", print_money_in(model, build->estimate).at);
    table_cell(table, "%s", print_money_in(model, build->paid).at);
    table_cell(table, "%s", print_money_in(model, build->forecast - build->paid).at);
    table_cell(table, "%s", print_money_in(model, build->forecast).at);
    table_cell(table, "%s%s", build->forecast > build->estimate ? "+" : "",
               print_money_in(model, build->forecast - build->estimate).at);
    table_cell(table, "%s",
               build->budget ? print_money_in(model, build->budget - build->forecast).at : "-");
}

static void account_money(struct text *out, const struct model *model,
                          const struct account *account)
{
    static const char *const words[] = {"",         "estimate", "paid",       "to come",
                                        "forecast", "over",     "budget left"};
    const struct account_build sum = {.name = "in all",
                                      .estimate = account->estimate,
                                      .paid = account->paid,
                                      .forecast = account->forecast};
    struct table table;
    table_begin(&table, "lrrrrrr");
    table_heads(&table, words);
    for (size_t i = 0; i < account->builds.count; i++)
        money_row(&table, model, &account->builds.at[i]);
    money_row(&table, model, &sum);
    table_end(&table, out);
    if (account->committed)
        text_format(out, "  bought and not paid yet %s\n",
                    print_money_in(model, account->committed).at);
    if (account->shelf)
        text_format(out, "  paid for the shelf %s\n", print_money_in(model, account->shelf).at);
}

static void account_months(struct text *out, const struct model *model,
                           const struct account *account)
{
    static const char *const words[] = {"", "paid", "of it tax"};
    struct table table;
    if (account->months.count == 0)
        return;
    text_add(out, "\nMONTH BY MONTH\n");
    table_begin(&table, "lrr");
    table_heads(&table, words);
    for (size_t i = 0; i < account->months.count; i++) {
        table_cell(&table, "%s", account->months.at[i].month);
        table_cell(&table, "%s", print_money_in(model, account->months.at[i].paid).at);
        table_cell(&table, "%s", print_money_in(model, account->months.at[i].tax).at);
    }
    table_cell(&table, "%s", "in all");
    table_cell(&table, "%s", print_money_in(model, account->all_paid).at);
    table_cell(&table, "%s", "");
    table_end(&table, out);
}

/* ---- hours ---- */

static void hours_row(struct table *table, const struct account_build *build)
{
    table_name(table, NAME_BYTES, build->name);
    table_cell(table, "%s", print_minutes(build->minutes).at);
    if (build->taken) {
        table_cell(table, "%s", print_minutes(build->taken).at);
        table_cell(table, "(planned %s)", print_minutes(build->planned_for_taken).at);
    } else {
        table_cell(table, "%s", "-");
        table_cell(table, "%s", "");
    }
    table_cell(table, "%s", print_minutes(build->minutes_left).at);
    table_cell(table, "%s", *build->due ? build->due : "-");
    table_cell(table, "%s%s", *build->done_by ? build->done_by : "-",
               build->late ? " too late" : "");
}

static void account_hours(struct text *out, const struct account *account)
{
    static const char *const words[] = {"", "time", "taken", "", "left", "due", "done by"};
    struct table table;
    if (account->builds.count == 0)
        return;
    text_add(out, "\nHOURS\n");
    table_begin(&table, "lrrlrll");
    table_heads(&table, words);
    for (size_t i = 0; i < account->builds.count; i++)
        hours_row(&table, &account->builds.at[i]);
    table_end(&table, out);
}

static void account_weeks(struct text *out, const struct account *account)
{
    struct table table;
    if (account->weeks.count == 0)
        return;
    text_add(out, "\nWEEKS AT THE BENCH (what is due first comes first)\n");
    table_begin(&table, "lrl");
    for (size_t i = 0; i < account->weeks.count; i++) {
        const struct account_week *week = &account->weeks.at[i];
        bool same = i > 0 && strcmp(week->begins, account->weeks.at[i - 1].begins) == 0;
        table_cell(&table, "%s", same ? "" : week->begins);
        table_cell(&table, "%s", print_minutes(week->minutes).at);
        table_cell(&table, "%s", account->builds.at[week->build].name);
    }
    table_end(&table, out);
}

void sheet_account(struct text *out, const struct model *model, const struct account *account)
{
    text_add(out, "\nALL BUILDS\n");
    account_money(out, model, account);
    account_months(out, model, account);
    account_hours(out, account);
    account_weeks(out, account);
}
