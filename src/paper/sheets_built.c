/* The cloth plan as it was planned, and as the boxes were built and the cloth was measured. */
#include "paper/sheets.h"

#include "paper/print.h"
#include "paper/table.h"

/* "+1/2", "-3/4", nothing where both are the same. */
static void difference_cell(struct table *table, const struct plan *plan, int64_t planned,
                            int64_t built)
{
    if (planned == built)
        table_cell(table, "%s", "");
    else
        table_cell(table, "%s%s", built > planned ? "+" : "",
                   print_length(plan, built - planned).at);
}

static void size_cell(struct table *table, const struct plan *plan, int64_t width, int64_t height)
{
    if (width == 0)
        table_cell(table, "%s", "-");
    else
        table_cell(table, "%s x %s", print_length(plan, width).at, print_length(plan, height).at);
}

static void piece_row(struct table *table, const struct plan *plan, const struct piece_built *piece)
{
    bool both = piece->width && piece->planned_width;
    table_cell(table, "%s%s", piece->label, print_hand(plan, piece->box));
    table_cell(table, "%s", piece->name);
    size_cell(table, plan, piece->planned_width, piece->planned_height);
    size_cell(table, plan, piece->width, piece->height);
    if (both) {
        difference_cell(table, plan, piece->planned_width, piece->width);
        difference_cell(table, plan, piece->planned_height, piece->height);
    } else {
        table_cell(table, "%s", piece->width ? "new" : "gone");
        table_cell(table, "%s", "");
    }
}

static void pieces(struct text *out, const struct plan *plan, const struct cloth_built *built)
{
    static const char *const heads[] = {"", "", "as planned", "as built", "across", "up"};
    struct table table;
    table_begin(&table, "llrrrr");
    table_heads(&table, heads);
    for (size_t i = 0; i < built->pieces.count; i++)
        piece_row(&table, plan, &built->pieces.at[i]);
    table_end(&table, out);
}

/* "5.50 yd, 54 in wide" */
static void roll_cell(struct table *table, const struct plan *plan, int64_t length, int64_t usable)
{
    table_cell(table, "%s, %s wide", print_roll(plan, length).at,
               print_length_unit(plan, usable).at);
}

static void rolls(struct text *out, const struct plan *plan, const struct cloth_built *built)
{
    static const char *const heads[] = {"to buy", "as planned", "as built", "bought"};
    struct table table;
    text_add(out, "\n");
    table_begin(&table, "lrrr");
    table_heads(&table, heads);
    for (size_t i = 0; i < built->rolls.count; i++) {
        const struct roll_built *roll = &built->rolls.at[i];
        table_cell(&table, "%s", plan_stock_name(plan, roll->stock));
        roll_cell(&table, plan, roll->planned_length, roll->planned_usable);
        roll_cell(&table, plan, roll->length, roll->usable);
        table_cell(&table, "%s", roll->bought ? print_roll(plan, roll->bought).at : "");
    }
    table_end(&table, out);
}

void sheet_cloth_built(struct text *out, const struct plan *plan, const struct cloth_built *built)
{
    if (!built->measured)
        return;
    text_add(out, "\nCLOTH AS PLANNED AND AS BUILT (before it is cut)\n");
    pieces(out, plan, built);
    rolls(out, plan, built);
}
