/* Cloth, padding, trim and staples. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/lines.h"
#include "paper/print.h"
#include "paper/table.h"

static const struct layer *layer_of(const struct plan *plan, int64_t key)
{
    return MODEL_FIND(plan->facts, layer, key);
}

/* "foam 2, batting 2-1/4": how thick a face is after each layer that pads it. */
static void built_up(struct table *table, const struct plan *plan, const struct padding *padding)
{
    struct text layers;
    text_init(&layers);
    for (size_t i = 0; i < plan->coatings.count; i++) {
        const struct coating *coating = &plan->coatings.at[i];
        if (coating->box != padding->box || coating->side != padding->side ||
            coating->thickness == 0)
            continue;
        text_format(&layers, "%s%s %s", layers.length ? ", " : "",
                    words_layer.at[layer_of(plan, coating->layer)->kind].name,
                    print_length(plan, coating->after).at);
    }
    table_cell(table, "%s", text_string(&layers));
    text_release(&layers);
}

static void clear_between(struct text *out, const struct plan *plan)
{
    char name[MODEL_NAME_TEXT];
    for (size_t i = 0; i < plan->clearances.count; i++) {
        const struct clearance *clearance = &plan->clearances.at[i];
        text_format(out, "\n  %s between the padding for %s, which wants %s\n",
                    print_length_unit(plan, clearance->clear).at,
                    model_item_name(name, plan->facts, ENTITY_object, clearance->object),
                    print_length_unit(plan, clearance->wanted).at);
    }
}

/* "C front  2-1/4 in thick  left 2, right 2, top 2-1/4, bottom 0". */
static void padded_faces(struct text *out, const struct plan *plan)
{
    struct table table;
    table_begin(&table, "llrrrrl");
    for (size_t i = 0; i < plan->paddings.count; i++) {
        const struct padding *padding = &plan->paddings.at[i];
        if (padding->pad == 0)
            continue;
        table_cell(&table, "%s %s", print_box(plan, padding->box),
                   words_side.at[padding->side].name);
        table_cell(&table, "%s thick", print_length_unit(plan, padding->pad).at);
        for (int edge = 0; edge < EDGE_COUNT; edge++)
            table_cell(&table, "%s %s", words_edge.at[edge].name,
                       print_length(plan, padding->at[edge]).at);
        built_up(&table, plan, padding);
    }
    table_end(&table, out);
}

void sheet_padding(struct text *out, const struct plan *plan)
{
    struct table table;
    if (plan->loads.count == 0)
        return;
    text_add(out, "\nPADDING (batting as pulled; at each edge of the face; after each layer)\n");
    padded_faces(out, plan);
    text_add(out, "\n  Finished sizes\n");
    table_begin(&table, "ll");
    for (size_t i = 0; i < plan->loads.count; i++) {
        const struct load *load = &plan->loads.at[i];
        table_cell(&table, "%s", print_box(plan, load->box));
        table_cell(&table, "%s x %s x %s", print_length(plan, load->finished.x).at,
                   print_length(plan, load->finished.y).at,
                   print_length_unit(plan, load->finished.z).at);
    }
    table_end(&table, out);
    clear_between(out, plan);
}

/* "4 repeats, 108 in": what each drop takes of the roll. */
static void cover_repeats(struct table *table, const struct plan *plan, const struct cover *cover,
                          int64_t stock_key)
{
    const struct stock *stock = MODEL_FIND(plan->facts, stock, stock_key);
    if (cover->repeats == 0)
        table_cell(table, "%s", "");
    else
        table_cell(table, "%lld repeats, %s", (long long)cover->repeats,
                   print_length_unit(plan, cover->repeats * stock->repeat_along).at);
}

/* "seam 13 in from the bottom", "seams 66, 13 in from the bottom". */
static void cover_alone(struct table *table, const struct plan *plan, const struct cover *cover,
                        const char *on, const char *line)
{
    struct text places;

    text_init(&places);
    for (int i = 0; i < cover->seams; i++)
        text_format(&places, "%s%s", i > 0 ? ", " : "",
                    i + 1 < cover->seams ? print_length(plan, cover->alone[i]).at
                                         : print_length_unit(plan, cover->alone[i]).at);
    table_cell(table, "%s %s from the %s%s%s", cover->seams > 1 ? "seams" : "seam",
               text_string(&places), cover->railroaded ? "bottom" : "left", on, line);
    text_release(&places);
}

/* "seams 26-1/2 each side of the middle, on a row of nails". */
static void cover_seams(struct table *table, const struct plan *plan, const struct cover *cover)
{
    const char *on = cover->hidden_by ? ", on " : "";
    const char *line = cover->hidden_by ? cover->hidden_by : "";
    if (cover->alone)
        cover_alone(table, plan, cover, on, line);
    else if (cover->seam)
        table_cell(table, "seams %s each side of the middle%s%s",
                   print_length(plan, cover->seam).at, on, line);
    else
        table_cell(table, "%s", "");
}

static void cover_sizes(struct text *out, const struct plan *plan)
{
    struct table table;
    table_begin(&table, "llllll");
    for (size_t i = 0; i < plan->covers.count; i++) {
        const struct cover *cover = &plan->covers.at[i];
        const struct layer *layer = layer_of(plan, cover->layer);
        table_cell(&table, "%s %s", print_box(plan, cover->box), words_layer.at[layer->kind].name);
        table_cell(&table, "%s x %s", print_length(plan, cover->cut_width).at,
                   print_length_unit(plan, cover->cut_height).at);
        table_count(&table, cover->widths > 1 ? cover->widths : 0, "widths");
        if (cover->trimmed)
            table_cell(&table, "trimmed along the outline, %s",
                       print_length_unit(plan, cover->trimmed).at);
        else
            cover_seams(&table, plan, cover);
        table_cell(&table, "%s", cover->railroaded ? "railroaded" : cover->bias ? "bias" : "");
        cover_repeats(&table, plan, cover, layer->stock);
    }
    table_end(&table, out);
}

static void cut_pieces(struct text *out, const struct plan *plan)
{
    struct table table;
    table_begin(&table, "lllrl");
    for (size_t i = 0; i < plan->pieces.count; i++) {
        const struct piece *piece = &plan->pieces.at[i];
        table_cell(&table, "%s", piece->label);
        table_cell(&table, "%s%s", print_box(plan, piece->box), print_hand(plan, piece->box));
        table_cell(&table, "%s", piece->name);
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
        const struct layer *layer = layer_of(plan, line->layer);
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
        const struct layer *layer = layer_of(plan, way->layer);
        table_cell(&table, "%s %s", print_box(plan, way->box), words_side.at[layer->side].name);
        table_cell(&table, "%s%s", words_closing.at[way->closing].name,
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
        const struct layer *layer = layer_of(plan, way->layer);
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
        const struct layer *layer = layer_of(plan, used->layer);
        table_cell(&table, "%s %s", print_box(plan, used->box), words_layer.at[layer->kind].name);
        table_cell(&table, "%s", print_sold(plan, used->stock, used->measure, used->amount).at);
        table_cell(&table, "%s", used->stock ? plan_stock_name(plan, used->stock) : used->what);
    }
    table_end(&table, out);
}

static void seam_marks(struct table *table, const struct plan *plan, const struct seam *seam)
{
    struct text marks;
    text_init(&marks);
    text_format(&marks, "%d %s", seam->notches, seam->notches == 1 ? "notch" : "notches");
    if (seam->even)
        text_add(&marks, ", even from the middle");
    if (seam->welt)
        text_add(&marks, ", welt");
    if (seam->clip)
        text_format(&marks, ", clip %s", print_length_unit(plan, seam->clip).at);
    if (seam->zip)
        text_format(&marks, ", zip %s", print_length_unit(plan, seam->zip).at);
    table_cell(table, "%s", text_string(&marks));
    text_release(&marks);
}

static void seam_row(struct table *table, const struct plan *plan, const struct seam *seam)
{
    table_cell(table, "%s", seam->what);
    table_cell(table, "%d of", seam->count);
    table_cell(table, "%s", print_length_unit(plan, seam->length).at);
    table_cell(table, "allowance %s", print_length_unit(plan, seam->allowance).at);
    seam_marks(table, plan, seam);
}

void sheet_sewing(struct text *out, const struct plan *plan)
{
    struct table table;
    if (plan->seams.count == 0)
        return;
    text_add(out, "\nSEWING (in this order; a test seam on scrap first)\n");
    table_begin(&table, "llrlll");
    for (size_t i = 0; i < plan->seams.count; i++) {
        const struct seam *seam = &plan->seams.at[i];
        const struct layer *layer = layer_of(plan, seam->layer);
        table_cell(&table, "%s %s", print_box(plan, seam->box), words_layer.at[layer->kind].name);
        seam_row(&table, plan, seam);
    }
    table_end(&table, out);
    int64_t thread = 0;
    for (size_t i = 0; i < plan->covers.count; i++)
        thread += plan->covers.at[i].thread;
    text_format(out, "  thread %s\n", print_roll(plan, thread).at);
}

/* ---- one cover ---- */

bool sheet_cover_is_cloth(const struct plan *plan, const struct cover *cover)
{
    const struct layer *layer = layer_of(plan, cover->layer);
    const struct stock *stock = MODEL_FIND(plan->facts, stock, layer->stock);
    return stock && stock->kind == STOCK_CLOTH;
}

void sheet_cover_name(struct text *out, const struct plan *plan, const struct cover *cover)
{
    const struct layer *layer = layer_of(plan, cover->layer);
    show_text(out, print_box(plan, cover->box));
    text_format(out, "%s %s", print_hand(plan, cover->box), words_layer.at[layer->kind].name);
}

static void cover_findings(struct text *out, const struct plan *plan, const struct cover *cover)
{
    for (size_t i = 0; i < plan->findings.count; i++) {
        const struct finding *finding = &plan->findings.at[i];
        if (finding->entity != ENTITY_layer || finding->key != cover->layer)
            continue;
        struct text sentence;
        text_init(&sentence);
        plan_finding_text(plan, finding, &sentence);
        lines_add(out, plan_finding_word(finding), 8, text_string(&sentence));
        text_release(&sentence);
    }
}

static void cover_sewing(struct text *out, const struct plan *plan, const struct cover *cover)
{
    struct table table;
    table_begin(&table, "lrlll");
    for (size_t i = 0; i < plan->seams.count; i++)
        if (plan->seams.at[i].layer == cover->layer)
            seam_row(&table, plan, &plan->seams.at[i]);
    if (table.count > 0)
        text_add(out, "\n  Sewing, in this order; a test seam on scrap first\n");
    table_end(&table, out);
    if (cover->thread > 0)
        text_format(out, "  thread %s\n", print_roll(plan, cover->thread).at);
}

/* Its seams, how it lies on the roll, what it takes of the pattern: on one line. */
static void cover_lie(struct text *out, const struct plan *plan, const struct cover *cover,
                      const struct layer *layer)
{
    struct table table;
    table_begin(&table, "lll");
    cover_seams(&table, plan, cover);
    table_cell(&table, "%s", cover->railroaded ? "railroaded" : cover->bias ? "bias" : "");
    cover_repeats(&table, plan, cover, layer->stock);
    table_end(&table, out);
}

void sheet_cover(struct text *out, const struct plan *plan, const struct cover *cover)
{
    const struct layer *layer = layer_of(plan, cover->layer);
    text_add(out, "  ");
    sheet_cover_name(out, plan, cover);
    text_add(out, " of ");
    show_text(out, plan_stock_name(plan, layer->stock));
    text_format(out, ", %s x %s as cut\n", print_length(plan, cover->cut_width).at,
                print_length_unit(plan, cover->cut_height).at);
    if (cover->seams || cover->railroaded || cover->bias || cover->repeats)
        cover_lie(out, plan, cover, layer);
    if (cover->thin) {
        text_format(out, "  below it %s of ", print_length_unit(plan, cover->thin).at);
        show_text(out, plan_stock_name(plan, layer->thin));
        text_add(out, ", as cut\n");
    }
    cover_findings(out, plan, cover);
    cover_sewing(out, plan, cover);
    sheet_layer_cutting(out, plan, cover->layer);
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
    cover_sizes(out, plan);
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

static void staple_row(struct table *table, const struct plan *plan, const struct edge *edge)
{
    const struct layer *layer = layer_of(plan, edge->layer);
    table_cell(table, "%s %s", print_box(plan, edge->box), words_layer.at[layer->kind].name);
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
    int64_t later = 0;
    for (size_t i = 0; i < edge->interval_count; i++) {
        const struct interval *interval = &plan->intervals.at[edge->first_interval + i];
        later += interval->pass == STAPLED_AT_BENCH ? 0 : interval->staples;
    }
    table_count(table, later, "of them after a join");
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

void sheet_staples(struct text *out, const struct plan *plan)
{
    if (plan->edges.count == 0)
        return;
    text_format(out, "\nSTAPLES: %lld\n", (long long)plan->tally.staples);
    struct table table;
    table_begin(&table, "llrrlll");
    for (size_t i = 0; i < plan->edges.count; i++)
        staple_row(&table, plan, &plan->edges.at[i]);
    table_end(&table, out);
    patches_line(out, plan);
}
