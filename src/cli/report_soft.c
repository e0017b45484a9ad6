/* Cloth, padding, trim and staples as members of a JSON object. */
#include "cli/report.h"

#include "cli/report_put.h"

static void report_paddings(struct json *json, const struct plan *plan)
{
    put_array(json, "paddings");
    for (size_t i = 0; i < plan->paddings.count; i++) {
        const struct padding *padding = &plan->paddings.at[i];
        if (padding->pad == 0)
            continue;
        json_put_object(json, JSON_LINE);
        put_whole(json, "box", padding->box);
        put_text(json, "side", words_side.at[padding->side].name);
        put_length(json, plan, "thickness", padding->pad);
        put_length(json, plan, "pressed", padding->pressed);
        for (int edge = 0; edge < EDGE_COUNT; edge++)
            put_length(json, plan, words_edge.at[edge].name, padding->at[edge]);
        json_put_close(json);
    }
    json_put_close(json);
}

static void report_coatings(struct json *json, const struct plan *plan)
{
    put_array(json, "coatings");
    for (size_t i = 0; i < plan->coatings.count; i++) {
        const struct coating *coating = &plan->coatings.at[i];
        json_put_object(json, JSON_LINE);
        put_whole(json, "box", coating->box);
        put_text(json, "side", words_side.at[coating->side].name);
        put_whole(json, "layer", coating->layer);
        put_length(json, plan, "thickness", coating->thickness);
        put_length(json, plan, "after", coating->after);
        json_put_close(json);
    }
    json_put_close(json);
}

static void report_clearances(struct json *json, const struct plan *plan)
{
    put_array(json, "clearances");
    for (size_t i = 0; i < plan->clearances.count; i++) {
        const struct clearance *clearance = &plan->clearances.at[i];
        json_put_object(json, JSON_LINE);
        put_whole(json, "object", clearance->object);
        put_length(json, plan, "clear", clearance->clear);
        put_length(json, plan, "wanted", clearance->wanted);
        json_put_close(json);
    }
    json_put_close(json);
}

static void report_finished(struct json *json, const struct plan *plan)
{
    put_array(json, "finished");
    for (size_t i = 0; i < plan->loads.count; i++) {
        const struct load *load = &plan->loads.at[i];
        json_put_object(json, JSON_LINE);
        put_whole(json, "box", load->box);
        put_length(json, plan, "width", load->finished.x);
        put_length(json, plan, "depth", load->finished.y);
        put_length(json, plan, "height", load->finished.z);
        json_put_close(json);
    }
    json_put_close(json);
}

/* How thick each padded face is, at its edges and after each layer; what is left clear, and
 * finished sizes of the boxes. */
void report_padding(struct json *json, const struct plan *plan)
{
    report_paddings(json, plan);
    report_coatings(json, plan);
    report_clearances(json, plan);
    report_finished(json, plan);
}

static void report_pieces(struct json *json, const struct plan *plan)
{
    put_array(json, "pieces");
    for (size_t i = 0; i < plan->pieces.count; i++) {
        const struct piece *piece = &plan->pieces.at[i];
        json_put_object(json, JSON_LINE);
        put_text(json, "label", piece->label);
        put_text(json, "name", piece->name);
        put_whole(json, "layer", piece->layer);
        put_whole(json, "box", piece->box);
        put_text(json, "hand", plan_hand_word(plan_hand(plan, piece->box)));
        put_text(json, "stock", plan_stock_name(plan, piece->stock));
        put_length(json, plan, "width", piece->width);
        put_length(json, plan, "height", piece->height);
        put_bool(json, "across", piece->across);
        json_put_close(json);
    }
    json_put_close(json);
}

/* Where seams without a like stand. */
static void report_alone(struct json *json, const struct plan *plan, const struct cover *cover)
{
    json_put_key(json, "alone");
    json_put_array(json, JSON_LINE);
    for (int i = 0; i < cover->seams && cover->alone; i++)
        json_put_quantity(json, QUANTITY_LENGTH, model_units(plan->facts), cover->alone[i]);
    json_put_close(json);
}

static void report_covers(struct json *json, const struct plan *plan)
{
    put_array(json, "layers");
    for (size_t i = 0; i < plan->covers.count; i++) {
        const struct cover *cover = &plan->covers.at[i];
        const struct layer *layer = MODEL_FIND(plan->facts, layer, cover->layer);
        json_put_object(json, JSON_LINE);
        put_whole(json, "layer", cover->layer);
        put_text(json, "kind", words_layer.at[layer->kind].name);
        put_whole(json, "box", cover->box);
        put_length(json, plan, "trimmed", cover->trimmed);
        put_quantity(json, plan, "away", QUANTITY_AREA, cover->away);
        put_length(json, plan, "width", cover->cut_width);
        put_length(json, plan, "height", cover->cut_height);
        put_whole(json, "widths", cover->width_count);
        put_length(json, plan, "side_strip", cover->side_strip);
        put_length(json, plan, "side_strip_right", cover->side_strip_right);
        put_whole(json, "seams", cover->seams);
        put_length(json, plan, "seam", cover->seam);
        report_alone(json, plan, cover);
        put_length(json, plan, "thin", cover->thin);
        put_bool(json, "railroaded", cover->railroaded);
        put_bool(json, "bias", cover->bias);
        put_length(json, plan, "thread", cover->thread);
        put_whole(json, "repeats", cover->repeats);
        put_length(json, plan, "motif", cover->motif);
        json_put_close(json);
    }
    json_put_close(json);
}

static void report_seams(struct json *json, const struct plan *plan)
{
    put_array(json, "seams");
    for (size_t i = 0; i < plan->seams.count; i++) {
        const struct seam *seam = &plan->seams.at[i];
        json_put_object(json, JSON_LINE);
        put_whole(json, "layer", seam->layer);
        put_text(json, "what", seam->what);
        put_bool(json, "by_hand", seam->kind == SEAM_BY_HAND);
        put_whole(json, "count", seam->count);
        put_length(json, plan, "length", seam->length);
        put_length(json, plan, "allowance", seam->allowance);
        put_whole(json, "notches", seam->notches);
        put_length(json, plan, "clip", seam->clip);
        put_bool(json, "even", seam->even);
        put_bool(json, "welt", seam->welt);
        put_length(json, plan, "zip", seam->zip);
        json_put_close(json);
    }
    json_put_close(json);
}

static void report_webbings(struct json *json, const struct plan *plan)
{
    put_array(json, "webbings");
    for (size_t i = 0; i < plan->webbings.count; i++) {
        const struct webbing *web = &plan->webbings.at[i];
        json_put_object(json, JSON_LINE);
        put_whole(json, "facing", web->facing);
        put_whole(json, "box", web->box);
        put_text(json, "side", words_side.at[web->side].name);
        put_whole(json, "up", web->up);
        put_length(json, plan, "up_length", web->up_length);
        put_whole(json, "across", web->across);
        put_length(json, plan, "across_length", web->across_length);
        put_length(json, plan, "leg", web->leg);
        put_whole(json, "staples", web->staples);
        json_put_close(json);
    }
    json_put_close(json);
}

/* Nails line by line; of a strip the heads and what holds it. */
static void report_nail_lines(struct json *json, const struct plan *plan)
{
    put_array(json, "nail_lines");
    for (size_t i = 0; i < plan->nail_lines.count; i++) {
        const struct nail_line *line = &plan->nail_lines.at[i];
        json_put_object(json, JSON_LINE);
        put_whole(json, "layer", line->layer);
        put_text(json, "edge", words_edge.at[line->edge].name);
        put_length(json, plan, "length", line->length);
        put_whole(json, "spaces", line->spaces);
        put_length(json, plan, "from_edge", line->from_edge);
        put_whole(json, "heads", line->heads);
        put_whole(json, "nails", line->nails);
        json_put_close(json);
    }
    json_put_close(json);
}

/* Fields of buttons and channels, and where their figures of cloth come from. */
static void report_tuftings(struct json *json, const struct plan *plan)
{
    put_array(json, "tuftings");
    for (size_t i = 0; i < plan->tuft_fields.count; i++) {
        const struct tuft_field *field = &plan->tuft_fields.at[i];
        json_put_object(json, JSON_LINE);
        put_whole(json, "layer", field->layer);
        put_text(json, "made", words_tufts.at[field->made].name);
        put_length(json, plan, "border", field->border);
        put_length(json, plan, "across", field->across_pitch);
        put_length(json, plan, "up", field->up_pitch);
        put_length(json, plan, "pull", field->pull);
        put_text(json, "allowance", plan_allowance_word(field->allowance));
        put_text(json, "source", plan_allowance_source(field->allowance));
        put_length(json, plan, "more_across", field->across_each);
        put_length(json, plan, "more_up", field->up_each);
        put_whole(json, "buttons", field->buttons);
        put_whole(json, "lines", field->lines);
        json_put_close(json);
    }
    json_put_close(json);
}

/* The ways to fix an outside back, with what each takes. */
static void report_backs(struct json *json, const struct plan *plan)
{
    put_array(json, "backs");
    for (size_t i = 0; i < plan->back_ways.count; i++) {
        const struct back_way *way = &plan->back_ways.at[i];
        json_put_object(json, JSON_LINE);
        put_whole(json, "layer", way->layer);
        put_whole(json, "box", way->box);
        put_text(json, "closing", words_closing.at[way->closing].name);
        put_bool(json, "sides_stapled", way->stapled);
        put_bool(json, "chosen", way->chosen);
        put_length(json, plan, "width", way->width);
        put_length(json, plan, "height", way->height);
        put_whole(json, "staples", way->staples);
        put_length(json, plan, "card", way->card);
        put_length(json, plan, "strip", way->strip);
        put_length(json, plan, "stitched", way->stitched);
        put_quantity(json, plan, "minutes", QUANTITY_MINUTES, way->minutes);
        if (way->priced)
            put_money(json, plan, "price", way->price);
        json_put_close(json);
    }
    json_put_close(json);
}

/* The three ways to make a trim of heads, with what each takes. */
static void report_trims(struct json *json, const struct plan *plan)
{
    put_array(json, "trims");
    for (size_t i = 0; i < plan->trim_ways.count; i++) {
        const struct trim_way *way = &plan->trim_ways.at[i];
        json_put_object(json, JSON_LINE);
        put_whole(json, "layer", way->layer);
        put_whole(json, "box", way->box);
        put_text(json, "made", plan_trim_word(way->made));
        put_bool(json, "chosen", way->chosen);
        put_whole(json, "heads", way->heads);
        put_whole(json, "nails", way->nails);
        put_length(json, plan, "strip", way->strip);
        put_quantity(json, plan, "minutes", QUANTITY_MINUTES, way->minutes);
        if (way->priced)
            put_money(json, plan, "price", way->price);
        json_put_close(json);
    }
    json_put_close(json);
}

/* Buttons, cord, nails, trim, area glued: by layer, without reserve. */
static void report_used(struct json *json, const struct plan *plan)
{
    put_array(json, "used");
    for (size_t i = 0; i < plan->consumables.count; i++) {
        const struct consumable *used = &plan->consumables.at[i];
        json_put_object(json, JSON_LINE);
        put_whole(json, "layer", used->layer);
        put_text(json, "what", used->what);
        put_quantity(json, plan, "amount", used->measure, used->amount);
        json_put_close(json);
    }
    json_put_close(json);
}

/* Templates of what is no rectangle. */
static void report_outlines(struct json *json, const struct plan *plan)
{
    put_array(json, "outlines");
    for (size_t i = 0; i < plan->outlines.count; i++) {
        const struct plan_outline *outline = &plan->outlines.at[i];
        json_put_object(json, JSON_LINE);
        put_whole(json, "box", outline->box);
        put_text(json, "side", words_side.at[outline->side].name);
        put_length(json, plan, "width", outline->width);
        for (int edge = 0; edge < EDGE_COUNT; edge++)
            put_length(json, plan, words_edge.at[edge].name, outline->lengths[edge]);
        json_put_key(json, "heights");
        json_put_array(json, JSON_LINE);
        for (int k = 0; k < OUTLINE_HEIGHTS; k++)
            json_put_quantity(json, QUANTITY_LENGTH, model_units(plan->facts), outline->heights[k]);
        json_put_close(json);
        json_put_close(json);
    }
    json_put_close(json);
}

void report_cloth(struct json *json, const struct plan *plan)
{
    report_outlines(json, plan);
    report_covers(json, plan);
    report_pieces(json, plan);
    report_seams(json, plan);
    report_webbings(json, plan);
    report_nail_lines(json, plan);
    report_tuftings(json, plan);
    report_backs(json, plan);
    report_trims(json, plan);
    report_used(json, plan);
}

static void report_intervals(struct json *json, const struct plan *plan, const struct edge *edge)
{
    json_put_key(json, "intervals");
    json_put_array(json, JSON_LINE);
    for (size_t i = 0; i < edge->interval_count; i++) {
        const struct interval *interval = &plan->intervals.at[edge->first_interval + i];
        json_put_object(json, JSON_LINE);
        put_length(json, plan, "from", interval->from);
        put_length(json, plan, "to", interval->to);
        put_text(json, "class", words_class.at[interval->class].name);
        put_whole(json, "join", interval->join);
        put_whole(json, "staples", interval->staples);
        json_put_close(json);
    }
    json_put_close(json);
}

static const char *edge_name(const struct edge *edge)
{
    switch (edge->edge) {
    case EDGE_LOOP:
        return "all";
    case EDGE_CORDS:
        return "cords";
    case EDGE_CHANNELS:
        return "channels";
    default:
        return words_edge.at[edge->edge].name;
    }
}

void report_staples(struct json *json, const struct plan *plan)
{
    put_array(json, "edges");
    for (size_t i = 0; i < plan->edges.count; i++) {
        const struct edge *edge = &plan->edges.at[i];
        json_put_object(json, JSON_LINE);
        put_whole(json, "layer", edge->layer);
        put_whole(json, "box", edge->box);
        put_text(json, "edge", edge_name(edge));
        put_length(json, plan, "length", edge->length);
        put_length(json, plan, "pitch", edge->pitch);
        put_length(json, plan, "leg", edge->leg);
        put_whole(json, "staples", edge->staples);
        put_whole(json, "temporary", edge->temporary);
        put_whole(json, "relief", edge->relief);
        report_intervals(json, plan, edge);
        json_put_close(json);
    }
    json_put_close(json);
}
