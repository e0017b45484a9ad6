/* Cloth and padding as they are cut, and what goes with them: webbing, nails, buttons, trim. */
#include "paper/sheets.h"

#include "paper/print.h"
#include "paper/table.h"

static void cut_pieces(struct text *out, const struct plan *plan)
{
    struct table table;
    table_begin(&table, "lllrl");
    for (size_t i = 0; i < plan->pieces.count; i++) {
        const struct piece *piece = &plan->pieces.at[i];
        table_cell(&table, "%s", piece->label);
        table_cell(&table, "%s%s", print_box(plan, piece->box), print_hand(plan, piece->box));
        table_cell(&table, "%s", print_word(piece->name).at);
        table_cell(&table, "%s x %s", print_length(plan, piece->width).at,
                   print_length(plan, piece->height).at);
        table_cell(&table, "%s%s", plan_stock_name(plan, piece->stock),
                   piece->across ? ", across the roll" : "");
    }
    table_end(&table, out);
}

/* "47 nails, 46 spaces of 1 in", "106 heads, 23 nails". */
static void nail_lines(struct text *out, const struct plan *plan)
{
    struct table table;
    if (plan->nail_lines.count == 0)
        return;
    text_add(out, "\n  Nails\n");
    table_begin(&table, "lllrl");
    for (size_t i = 0; i < plan->nail_lines.count; i++) {
        const struct nail_line *line = &plan->nail_lines.at[i];
        const struct layer *layer = MODEL_FIND(plan->facts, layer, line->layer);
        table_cell(&table, "%s %s", print_box(plan, line->box), words_side.at[layer->side].name);
        table_cell(&table, "%s", words_edge.at[line->edge].name);
        table_cell(&table, "%s", print_length_unit(plan, line->length).at);
        table_cell(&table, "%lld nails", (long long)line->nails);
        if (line->heads)
            table_cell(&table, "hold a strip of %lld heads", (long long)line->heads);
        else
            table_cell(&table, "%lld spaces of %s", (long long)line->spaces,
                       print_length_unit(plan, whole_divide_even(line->length, line->spaces)).at);
    }
    table_end(&table, out);
}

/* Heights of a template at even distances from the left, and how long the curve is. */
static void templates(struct text *out, const struct plan *plan)
{
    if (plan->outlines.count == 0)
        return;
    text_add(out,
             "\n  Templates (draw one on card, cut wood and pads by it; cloth is cut square)\n");
    for (size_t i = 0; i < plan->outlines.count; i++) {
        const struct plan_outline *outline = &plan->outlines.at[i];
        text_format(out, "  %s %s, %s along the top:", print_box(plan, outline->box),
                    words_side.at[outline->side].name,
                    print_length_unit(plan, outline->lengths[EDGE_TOP]).at);
        for (int k = 0; k < OUTLINE_HEIGHTS; k++)
            text_format(out, "%s %s at %s", k ? "," : "",
                        print_length(plan, outline->heights[k]).at,
                        print_length(plan, outline->width * k / (OUTLINE_HEIGHTS - 1)).at);
        text_add(out, "\n");
    }
}

/* "T cover  22 buttons  7 x 8 in  pulled 2-1/2 in  2-1/2 and 2-1/2 in more each: pull (...)". */
static void tuftings(struct text *out, const struct plan *plan)
{
    struct table table;
    if (plan->tuft_fields.count == 0)
        return;
    text_add(out, "\n  Tufting (try one first: enter what it took, and it is reckoned by that)\n");
    table_begin(&table, "lrlll");
    for (size_t i = 0; i < plan->tuft_fields.count; i++) {
        const struct tuft_field *field = &plan->tuft_fields.at[i];
        table_cell(&table, "%s", print_box(plan, field->box));
        if (field->made == TUFTS_CHANNELS)
            table_cell(&table, "%lld lines", (long long)field->lines);
        else
            table_cell(&table, "%lld buttons", (long long)field->buttons);
        table_cell(&table, "each %s x %s", print_length(plan, field->across_pitch).at,
                   print_length_unit(plan, field->up_pitch).at);
        table_cell(&table, "pulled %s", print_length_unit(plan, field->pull).at);
        table_cell(&table, "cloth +%s across, +%s up by %s (%s)",
                   print_length_unit(plan, field->across_each).at,
                   print_length_unit(plan, field->up_each).at,
                   plan_allowance_word(field->allowance), plan_allowance_source(field->allowance));
    }
    table_end(&table, out);
}

/* "C back  raw  119 staples  0 h 12  4.20": what each way to fix it takes, the one that is taken
 * marked. */
static void back_ways(struct text *out, const struct plan *plan)
{
    struct table table;
    if (plan->back_ways.count == 0)
        return;
    text_add(out, "\n  Outside backs (closing of the layer picks one)\n");
    table_begin(&table, "lllrrl");
    for (size_t i = 0; i < plan->back_ways.count; i++) {
        const struct back_way *way = &plan->back_ways.at[i];
        const struct layer *layer = MODEL_FIND(plan->facts, layer, way->layer);
        table_cell(&table, "%s %s", print_box(plan, way->box), words_side.at[layer->side].name);
        table_cell(&table, "%s%s", print_word(words_closing.at[way->closing].name).at,
                   way->stapled ? ", sides stapled" : "");
        table_cell(&table, "%lld staples", (long long)way->staples);
        table_cell(&table, "%s", print_minutes(way->minutes).at);
        table_cell(&table, "%s", way->priced ? print_money(plan, way->price).at : "no price");
        table_cell(&table, "%s", way->chosen ? "taken" : "");
    }
    table_end(&table, out);
}

/* "L trim  nails that touch  184 nails  1 h 50  12.30": what each way takes, the one that is taken
 * marked. */
static void trim_ways(struct text *out, const struct plan *plan)
{
    struct table table;
    if (plan->trim_ways.count == 0)
        return;
    text_add(out, "\n  Heads along edges (stock and pitch of the trim pick one)\n");
    table_begin(&table, "llrrrrl");
    for (size_t i = 0; i < plan->trim_ways.count; i++) {
        const struct trim_way *way = &plan->trim_ways.at[i];
        const struct layer *layer = MODEL_FIND(plan->facts, layer, way->layer);
        table_cell(&table, "%s %s", print_box(plan, way->box), words_side.at[layer->side].name);
        table_cell(&table, "%s", plan_trim_word(way->made));
        table_cell(&table, "%lld heads", (long long)way->heads);
        table_cell(&table, "%lld nails", (long long)way->nails);
        table_cell(&table, "%s", print_minutes(way->minutes).at);
        table_cell(&table, "%s", way->priced ? print_money(plan, way->price).at : "no price");
        table_cell(&table, "%s", way->chosen ? "taken" : "");
    }
    table_end(&table, out);
}

static void used_up(struct text *out, const struct plan *plan)
{
    struct table table;
    if (plan->consumables.count == 0)
        return;
    text_add(out, "\n  Used up\n");
    table_begin(&table, "lrl");
    for (size_t i = 0; i < plan->consumables.count; i++) {
        const struct consumable *used = &plan->consumables.at[i];
        table_cell(&table, "%s %s", print_box(plan, used->box), print_layer(plan, used->layer).at);
        table_cell(&table, "%s", print_sold(plan, used->stock, used->measure, used->amount).at);
        table_cell(&table, "%s", used->stock ? plan_stock_name(plan, used->stock) : used->what);
    }
    table_end(&table, out);
}

static void webbing(struct text *out, const struct plan *plan)
{
    struct table table;
    if (plan->webbings.count == 0)
        return;
    text_add(out, "\n  Webbing\n");
    table_begin(&table, "lllr");
    for (size_t i = 0; i < plan->webbings.count; i++) {
        const struct webbing *web = &plan->webbings.at[i];
        table_cell(&table, "%s %s", print_box(plan, web->box), words_side.at[web->side].name);
        table_cell(&table, "%lld up, %s each", (long long)web->up,
                   print_length_unit(plan, web->up_length).at);
        table_cell(&table, "%lld across, %s each", (long long)web->across,
                   print_length_unit(plan, web->across_length).at);
        table_cell(&table, "%lld staples, leg %s", (long long)web->staples,
                   print_length_unit(plan, web->leg).at);
    }
    table_end(&table, out);
}

void sheet_cloth(struct text *out, const struct plan *plan)
{
    if (plan->pieces.count == 0 && plan->webbings.count == 0)
        return;
    text_add(out, "\nCLOTH AND PADDING (sizes as cut, landing and handle included)\n");
    sheet_cover_sizes(out, plan);
    text_add(out, "\n  Pieces\n");
    cut_pieces(out, plan);
    webbing(out, plan);
    nail_lines(out, plan);
    templates(out, plan);
    tuftings(out, plan);
    back_ways(out, plan);
    trim_ways(out, plan);
    used_up(out, plan);
}
