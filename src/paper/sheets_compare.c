/* Builds side by side, and what a build could be made from otherwise. */
#include "paper/sheets.h"

#include "paper/print.h"
#include "paper/table.h"

#include <stdio.h>

static struct printed figure_of(const struct figure *figure, const struct plan *plan)
{
    struct printed printed = {"-"};
    int64_t value = figure->of(plan);
    if (figure->known && !figure->known(plan))
        return printed;
    switch (figure->kind) {
    case FIGURE_MONEY:
        return print_money(plan, value);
    case FIGURE_ROLL:
        return print_roll(plan, value);
    case FIGURE_MINUTES:
        return print_minutes(value);
    case FIGURE_MASS:
        return print_quantity(plan, QUANTITY_MASS, value);
    case FIGURE_COUNT:
        break;
    }
    snprintf(printed.at, sizeof printed.at, "%lld", (long long)value);
    return printed;
}

/* So many stand beside each other in a table; the others follow below. */
#define SIDE_BY_SIDE 4
#define NAME_BYTES 24 /* of a build, over its column */

static void compare_some(struct text *out, const struct plan *const *plans, size_t count,
                         size_t first)
{
    char shape[SIDE_BY_SIDE + 3] = "ll";
    struct table table;
    size_t end = first + SIDE_BY_SIDE < count ? first + SIDE_BY_SIDE : count;
    for (size_t i = first; i < end; i++)
        shape[i - first + 2] = 'r';
    table_begin(&table, shape);
    table_cell(&table, "%s", "");
    table_cell(&table, "%s", "");
    for (size_t i = first; i < end; i++)
        table_name(&table, NAME_BYTES, plans[i]->facts->build.name);
    for (const struct figure *figure = plan_figures; figure->key; figure++) {
        table_cell(&table, "%s", figure_differs(figure, plans, count) ? "*" : "");
        table_cell(&table, "%s", figure->words);
        for (size_t i = first; i < end; i++)
            table_cell(&table, "%s", figure_of(figure, plans[i]).at);
    }
    table_end(&table, out);
}

void sheet_compare(struct text *out, const struct plan *const *plans, size_t count)
{
    text_add(out, "\nSIDE BY SIDE (* where they differ)\n");
    for (size_t first = 0; first < count; first += SIDE_BY_SIDE) {
        if (first)
            text_add(out, "\n");
        compare_some(out, plans, count, first);
    }
}

/* ---- otherwise ---- */

static void more_cell(struct table *table, int64_t more, const char *words)
{
    table_cell(table, "%s%s%s%s", more ? "(" : "", more > 0 ? "+" : "", more ? words : "",
               more ? ")" : "");
}

static void otherwise_row(struct table *table, const struct plan *plan, const struct otherwise *way)
{
    int64_t less = way->more_minutes < 0 ? -way->more_minutes : way->more_minutes;
    char minutes[QUANTITY_TEXT + 1];
    snprintf(minutes, sizeof minutes, "%s%s", way->more_minutes < 0 ? "-" : "",
             print_minutes(less).at);
    table_cell(table, "%s", way->text);
    table_cell(table, "%s", print_money(plan, way->cost).at);
    more_cell(table, way->more_cost, print_money(plan, way->more_cost).at);
    table_cell(table, "%s", print_minutes(way->minutes).at);
    more_cell(table, way->more_minutes, minutes);
    table_cell(table, "%s", way->more_stops > 0 ? "cannot be made so" : "");
}

void sheet_otherwise(struct text *out, const struct plan *plan, const struct otherwise *ways,
                     size_t count)
{
    struct table table;
    text_add(out, "\nOTHERWISE (cost and time of the whole build; quick layouts)\n");
    if (count == 0)
        text_add(out, "  There is one way only: no cloth could lie otherwise, and no stick or "
                      "sheet comes in several sizes.\n");
    table_begin(&table, "lrrrrl");
    for (size_t i = 0; i < count; i++)
        otherwise_row(&table, plan, &ways[i]);
    table_end(&table, out);
}
