/* Cloth, padding, trim and staples as members of a JSON object. */
#include "cli/report.h"

#include "cli/report_put.h"

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
        put_length(json, plan, "width", cover->cut_width);
        put_length(json, plan, "height", cover->cut_height);
        put_whole(json, "widths", cover->widths);
        put_length(json, plan, "side_strip", cover->side_strip);
        put_length(json, plan, "side_strip_right", cover->side_strip_right);
        put_whole(json, "seams", cover->seams);
        put_length(json, plan, "seam", cover->seam);
        put_bool(json, "railroaded", cover->railroaded);
        put_bool(json, "bias", cover->bias);
        put_whole(json, "repeats", cover->repeats);
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
        put_whole(json, "heads", line->heads);
        put_whole(json, "nails", line->nails);
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

void report_cloth(struct json *json, const struct plan *plan)
{
    report_covers(json, plan);
    report_pieces(json, plan);
    report_webbings(json, plan);
    report_nail_lines(json, plan);
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

void report_staples(struct json *json, const struct plan *plan)
{
    put_array(json, "edges");
    for (size_t i = 0; i < plan->edges.count; i++) {
        const struct edge *edge = &plan->edges.at[i];
        json_put_object(json, JSON_LINE);
        put_whole(json, "layer", edge->layer);
        put_whole(json, "box", edge->box);
        put_text(json, "edge", edge->edge < 0 ? "all" : words_edge.at[edge->edge].name);
        put_length(json, plan, "length", edge->length);
        put_length(json, plan, "pitch", edge->pitch);
        put_length(json, plan, "leg", edge->leg);
        put_whole(json, "staples", edge->staples);
        put_whole(json, "temporary", edge->temporary);
        report_intervals(json, plan, edge);
        json_put_close(json);
    }
    json_put_close(json);
}
