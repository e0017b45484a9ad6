/* Cutting layouts as JSON. */
#include "cli/report.h"

#include "cli/report_put.h"
#include "paper/blank.h"

static void put_cost(struct json *json, const struct cut_sheet *sheet, const char *key,
                     int64_t cost)
{
    if (sheet->way == CUT_ROLLS)
        put_length(json, sheet->plan, key, cost);
    else
        put_money(json, sheet->plan, key, cost);
}

static void put_place(struct json *json, const struct cut_sheet *sheet,
                      const struct cut_blank *blank, const struct cut_place *place)
{
    const struct cut_piece *part = &sheet->job->parts[place->part];

    json_put_object(json, JSON_LINE);
    put_text(json, "part", sheet->label(sheet, place->part));
    put_length(json, sheet->plan, "length", part->length);
    if (sheet->way != CUT_BARS)
        put_length(json, sheet->plan, "width", part->width);
    put_length(json, sheet->plan, "along", blank_along(sheet, blank, place));
    if (sheet->way != CUT_BARS) {
        put_length(json, sheet->plan, "across", place->across);
        put_bool(json, "turned", place->turned);
    }
    json_put_close(json);
}

static void put_strokes(struct json *json, const struct cut_sheet *sheet, size_t blank)
{
    put_array(json, "cuts");
    for (size_t i = 0; i < sheet->layout->strokes.count; i++) {
        const struct cut_stroke *stroke = &sheet->layout->strokes.at[i];

        if (stroke->blank != blank)
            continue;
        json_put_object(json, JSON_LINE);
        put_text(json, "runs", stroke->across ? "across" : "along");
        put_length(json, sheet->plan, "at", stroke->at);
        put_length(json, sheet->plan, "from", stroke->from);
        put_length(json, sheet->plan, "to", stroke->to);
        put_length(json, sheet->plan, "fence", stroke->fence);
        json_put_close(json);
    }
    json_put_close(json);
}

/* Of a sheet that does not go into the vehicle whole: what the shop cuts first. */
static void put_way_home(struct json *json, const struct cut_sheet *sheet, size_t blank)
{
    struct homeward home;
    char words[HOMEWARD_TEXT];

    if (!blank_cut_for_home(sheet, blank, &home, words))
        return;
    put_text(json, "way_home", words);
    put_bool(json, "goes_home_then", home.goes);
}

static void put_blank(struct json *json, const struct cut_sheet *sheet, size_t index)
{
    const struct cut_blank *blank = &sheet->layout->blanks.at[index];
    const struct cut_size *size = &sheet->job->sizes[blank->size];
    const struct cut_source *source = blank_source(sheet, blank);

    json_put_object(json, JSON_LINES);
    put_length(json, sheet->plan, "length", blank_length(sheet, blank));
    if (sheet->way != CUT_BARS)
        put_length(json, sheet->plan, "width", size->width);
    put_bool(json, "shelf", source->origin == SIZE_SHELF);
    put_bool(json, "bought", source->origin == SIZE_BOUGHT);
    put_bool(json, "left", source->origin == SIZE_REST);
    if (source->origin == SIZE_PART)
        put_text(json, "cut_before_as", source->part);
    put_length(json, sheet->plan, "rest", blank->rest);
    put_array(json, "parts");
    for (size_t i = blank->first; i < blank->first + blank->count; i++)
        put_place(json, sheet, blank, &sheet->layout->places.at[i]);
    json_put_close(json);
    if (sheet->way == CUT_SHEETS) {
        put_way_home(json, sheet, index);
        put_strokes(json, sheet, index);
    }
    json_put_close(json);
}

void report_layout(struct json *json, const struct cut_sheet *sheet)
{
    json_put_object(json, JSON_LINES);
    put_text(json, "stock", plan_stock_name(sheet->plan, sheet->stock));
    put_cost(json, sheet, "cost", sheet->layout->cost);
    put_cost(json, sheet, "bound", sheet->layout->bound);
    put_bool(json, "proven", layout_proven(sheet->layout));
    put_bool(json, "taken", sheet->taken);
    put_bool(json, "cut", sheet->cut);
    put_bool(json, "missing", sheet->again);
    put_array(json, "pieces");
    for (size_t i = 0; i < sheet->layout->blanks.count; i++)
        put_blank(json, sheet, i);
    json_put_close(json);
    json_put_close(json);
}

void report_cutting(struct json *json, const struct plan *plan)
{
    put_array(json, "cutting");
    for (size_t i = 0; i < plan->jobs.count; i++) {
        const struct cut_sheet sheet = sheet_of_job(plan, &plan->jobs.at[i]);

        report_layout(json, &sheet);
    }
    json_put_close(json);
}
