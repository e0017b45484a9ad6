/* Staples, edge by edge. */
#include "paper/sheets.h"

#include "paper/print.h"
#include "paper/table.h"

static const char *edge_name(const struct edge *edge)
{
    switch (edge->edge) {
    case EDGE_LOOP:
        return "all round";
    case EDGE_CORDS:
        return "cords";
    case EDGE_CHANNELS:
        return "each channel";
    default:
        return words_edge.at[edge->edge].name;
    }
}

static int64_t staples_later(const struct plan *plan, const struct edge *edge)
{
    int64_t later = 0;
    for (size_t i = 0; i < edge->interval_count; i++) {
        const struct interval *interval = &plan->intervals.at[edge->first_interval + i];
        later += interval->pass == STAPLED_AT_BENCH ? 0 : interval->staples;
    }
    return later;
}

static void staple_row(struct table *table, const struct plan *plan, const struct edge *edge)
{
    table_cell(table, "%s %s", print_box(plan, edge->box), print_layer(plan, edge->layer).at);
    table_cell(table, "%s", edge_name(edge));
    table_cell(table, "%s", print_length_unit(plan, edge->length).at);
    table_cell(table, "%lld", (long long)edge->staples);
    if (edge->pitch)
        table_cell(table, "every %s, leg %s", print_length_unit(plan, edge->pitch).at,
                   print_length_unit(plan, edge->leg).at);
    else if (edge->edge == EDGE_CORDS)
        table_cell(table, "leg %s", print_length_unit(plan, edge->leg).at);
    else
        table_cell(table, "in the row of the layer over it");
    table_count(table, staples_later(plan, edge), "of them after a join");
    table_count(table, edge->temporary, "to hold");
}

static void patches_line(struct text *out, const struct plan *plan)
{
    size_t slits = 0;
    for (size_t i = 0; i < plan->patches.count; i++)
        slits += plan->patches.at[i].slit;
    if (plan->patches.count > slits)
        text_format(out, "  %zu bare patches stay round the points of the joins\n",
                    plan->patches.count - slits);
    if (slits)
        text_format(out, "  %zu slits let the screws through cloth\n", slits);
}

/* Those that come out again; the rows tell them beside the others. */
static int64_t temporary_staples(const struct plan *plan)
{
    int64_t count = 0;
    for (size_t i = 0; i < plan->edges.count; i++)
        count += plan->edges.at[i].temporary;
    return count;
}

void sheet_staples(struct text *out, const struct plan *plan)
{
    if (plan->edges.count == 0)
        return;
    text_format(out, "\nSTAPLES: %lld", (long long)plan->tally.staples);
    if (temporary_staples(plan))
        text_format(out, ", of them %lld only to hold", (long long)temporary_staples(plan));
    text_add_char(out, '\n');
    struct table table;
    table_begin(&table, "llrrlll");
    for (size_t i = 0; i < plan->edges.count; i++)
        staple_row(&table, plan, &plan->edges.at[i]);
    table_end(&table, out);
    patches_line(out, plan);
}
