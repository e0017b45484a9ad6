/* Ways to take the cloth of a build, side by side. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/lines.h"
#include "paper/print.h"
#include "paper/table.h"

#include <stdio.h>

/* "412.60", "394.20 (-18.40)": beside what the way in force costs. */
static void cost_cell(struct table *table, const struct plan *plan, const struct cloth_way *way,
                      const struct cloth_way *now)
{
    int64_t more = way->cost - now->cost;
    table_cell(table, "%s", print_money(plan, way->cost).at);
    if (more)
        table_cell(table, "(%s%s)", more > 0 ? "+" : "", print_money(plan, more).at);
    else
        table_cell(table, "%s", "");
}

static void way_row(struct table *table, const struct plan *plan, const struct cloth_way *way,
                    size_t number, const struct cloth_way *now)
{
    table_cell(table, "%zu", number);
    table_cell(table, "%c %s", way->chosen ? '*' : ' ', way->cure.text);
    table_cell(table, "%s", print_roll(plan, way->length).at);
    if (way->seams)
        table_cell(table, "%d, %s", way->seams, print_length_unit(plan, way->seam_length).at);
    else
        table_cell(table, "%s", "none");
    table_cell(table, "%s", print_minutes(way->minutes).at);
    cost_cell(table, plan, way, now);
}

static void barred_ways(struct text *out, const struct cloth_way *ways, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        struct text line;
        if (!ways[i].barred)
            continue;
        text_init(&line);
        text_format(&line, "not %s: %s", ways[i].cure.text, ways[i].barred);
        lines_add(out, "", 7, text_string(&line));
        text_release(&line);
    }
}

/* Those of one cloth, the first of them the one in force. */
static void ways_of_cloth(struct text *out, const struct plan *plan, const struct cloth_way *ways,
                          size_t count, size_t number)
{
    static const char *const heads[] = {"", "", "to buy", "seams", "time", "cost", ""};
    struct table table;
    text_add(out, "\n  ");
    show_text(out, plan_stock_name(plan, ways->stock));
    text_add(out, "\n");
    table_begin(&table, "rlrlrrl");
    table_heads(&table, heads);
    for (size_t i = 0; i < count; i++)
        if (!ways[i].barred)
            way_row(&table, plan, &ways[i], number + i, ways);
    table_end(&table, out);
    barred_ways(out, ways, count);
}

void sheet_cloth_ways(struct text *out, const struct plan *plan, const struct cloth_way *ways,
                      size_t count)
{
    size_t end;
    text_add(out, "\nCLOTH, WAY BY WAY (time and cost of the whole build; quick layouts)\n");
    if (count == 0)
        text_add(out, "  Nothing is covered yet.\n");
    for (size_t first = 0; first < count; first = end) {
        for (end = first; end < count && ways[end].stock == ways[first].stock;)
            end++;
        ways_of_cloth(out, plan, &ways[first], end - first, first + 1);
    }
}

/* ---- one ---- */

static void figure_row(struct table *table, const char *name, const char *now, const char *then)
{
    table_cell(table, "%s", name);
    table_cell(table, "%s", now);
    table_cell(table, "%s", then);
}

static void figures(struct text *out, const struct plan *plan, const struct cloth_way *way,
                    const struct cloth_way *now)
{
    char seams[2][24];
    struct table table;
    snprintf(seams[0], sizeof seams[0], "%d", now->seams);
    snprintf(seams[1], sizeof seams[1], "%d", way->seams);
    table_begin(&table, "lrr");
    figure_row(&table, "", "now", "so");
    figure_row(&table, "cloth to buy", print_roll(plan, now->length).at,
               print_roll(plan, way->length).at);
    figure_row(&table, "seams between widths", seams[0], seams[1]);
    figure_row(&table, "their length", print_length_unit(plan, now->seam_length).at,
               print_length_unit(plan, way->seam_length).at);
    figure_row(&table, "time of the build", print_minutes(now->minutes).at,
               print_minutes(way->minutes).at);
    figure_row(&table, "cost of the build", print_money(plan, now->cost).at,
               print_money(plan, way->cost).at);
    table_end(&table, out);
}

void sheet_cloth_way(struct text *out, const struct plan *plan, const struct cloth_way *way,
                     const struct cloth_way *now)
{
    struct text line;
    text_init(&line);
    text_format(&line, "%s, %s%s", plan_stock_name(plan, way->stock), way->barred ? "not " : "",
                way->cure.text);
    if (way->barred)
        text_format(&line, ": %s", way->barred);
    lines_add(out, "", 2, text_string(&line));
    text_release(&line);
    if (!way->barred)
        figures(out, plan, way, now);
}
