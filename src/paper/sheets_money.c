/* Money of a build: estimate beside spend, by category and line by line. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/print.h"
#include "paper/table.h"

/* Signed, so that more and less than the estimate are told apart; empty for nothing. */
static void over_cell(struct table *table, const struct plan *plan, int64_t over)
{
    table_cell(table, "%s%s", over > 0 ? "+" : "", over ? print_money(plan, over).at : "");
}

/* Of both tables. */
static const char *const heads[] = {"", "estimate", "owed", "paid", "forecast", "over"};

static void sum_cells(struct table *table, const struct plan *plan, const struct cost_sum *sum)
{
    table_cell(table, "%s", print_money(plan, sum->estimate).at);
    table_cell(table, "%s", sum->committed ? print_money(plan, sum->committed).at : "");
    table_cell(table, "%s", sum->paid ? print_money(plan, sum->paid).at : "");
    table_cell(table, "%s", print_money(plan, sum->forecast).at);
    over_cell(table, plan, sum->forecast - sum->estimate);
}

/* ---- by category ---- */

static bool is_empty(const struct cost_sum *sum)
{
    return !sum->estimate && !sum->committed && !sum->paid && !sum->forecast;
}

static void tax_cells(struct table *table, const struct plan *plan)
{
    const struct cost *cost = &plan->cost;
    table_cell(table, "%s", "of it tax");
    table_cell(table, "%s", print_money(plan, cost->tax).at);
    table_cell(table, "%s", "");
    table_cell(table, "%s", cost->spent_tax ? print_money(plan, cost->spent_tax).at : "");
    table_cell(table, "%s", "");
    table_cell(table, "%s", "");
}

static void categories(struct text *out, const struct plan *plan)
{
    const struct cost *cost = &plan->cost;
    const struct cost_sum all = {cost->estimate, cost->committed, cost->spent, cost->forecast};
    struct table table;
    table_begin(&table, "lrrrrr");
    table_heads(&table, heads);
    for (int aisle = 0; aisle < AISLE_COUNT; aisle++) {
        if (is_empty(&cost->by_aisle[aisle]))
            continue;
        table_cell(&table, "%s", words_aisle.at[aisle].help);
        sum_cells(&table, plan, &cost->by_aisle[aisle]);
    }
    table_cell(&table, "%s", "in all");
    sum_cells(&table, plan, &all);
    if (cost->tax || cost->spent_tax)
        tax_cells(&table, plan);
    table_end(&table, out);
}

/* ---- line by line ---- */

static void line_words(char words[SHEET_MONEY_WORDS], const struct plan *plan,
                       const struct cost_line *line)
{
    struct text text;
    text_init(&text);
    if (line->purchase == PLAN_NONE)
        text_format(&text, "on no list: %s", words_aisle.at[line->aisle].help);
    else
        sheet_purchase_words(&text, plan, &plan->purchases.at[line->purchase]);
    show_into(words, SHEET_MONEY_WORDS, text_string(&text));
    text_release(&text);
}

/* What is neither owed nor paid is on the shopping list. */
static bool is_told(const struct cost_line *line)
{
    return line->entered || line->committed;
}

static bool any_told(const struct cost *cost)
{
    for (size_t i = 0; i < cost->lines.count; i++) {
        if (is_told(&cost->lines.at[i]))
            return true;
    }
    return false;
}

static void lines(struct text *out, const struct plan *plan)
{
    struct table table;
    if (!any_told(&plan->cost))
        return;
    text_add(out, "\n line by line, what is owed or paid\n");
    table_begin(&table, "lrrrrr");
    table_heads(&table, heads);
    for (size_t i = 0; i < plan->cost.lines.count; i++) {
        const struct cost_line *line = &plan->cost.lines.at[i];
        const struct cost_sum sum = {line->estimate, line->committed, line->paid, line->forecast};
        char words[SHEET_MONEY_WORDS];
        if (!is_told(line))
            continue;
        line_words(words, plan, line);
        table_cell(&table, "%s", words);
        sum_cells(&table, plan, &sum);
    }
    table_end(&table, out);
}

void sheet_money(struct text *out, const struct plan *plan)
{
    const struct build *build = &plan->facts->build;
    const struct cost *cost = &plan->cost;
    text_add(out, "\nMONEY\n");
    categories(out, plan);
    text_format(out, "  forecast %s\n", print_money(plan, cost->forecast).at);
    if (build->budget)
        text_format(out, "  budget %s, left %s\n", print_money(plan, build->budget).at,
                    print_money(plan, cost->left).at);
    if (build->ready_made)
        text_format(out, "  ready made it costs %s\n", print_money(plan, build->ready_made).at);
    lines(out, plan);
}
