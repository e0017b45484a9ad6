/* Sticks, sheets and rolls as they are cut: a picture to scale, and what blank.c tells of each. */
#include "paper/sheets.h"

#include "paper/blank.h"
#include "paper/canvas.h"

#include <stdio.h>

/* ---- pictures ---- */

static int picture_columns(const struct cut_sheet *sheet)
{
    bool narrow = sheet->columns > 0 && sheet->columns < CANVAS_COLUMNS;

    return narrow ? sheet->columns : CANVAS_COLUMNS;
}

/* As much of a part's label as a picture can show. */
struct drawn_label {
    char at[CANVAS_COLUMNS];
};

static struct drawn_label drawn_label(const struct cut_sheet *sheet, size_t part)
{
    struct drawn_label drawn;

    snprintf(drawn.at, sizeof drawn.at, "%s%s", sheet->label(sheet, part), blank_hand(sheet, part));
    return drawn;
}

/* A stick on one line: each part from a bar to a bar; what is left stays blank. */
static void stick_picture(struct text *out, const struct cut_sheet *sheet,
                          const struct cut_blank *blank)
{
    struct canvas canvas;

    canvas_begin(&canvas, picture_columns(sheet), blank_length(sheet, blank), 0);
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &sheet->layout->places.at[i];
        canvas_part(&canvas, blank_along(sheet, blank, place),
                    sheet->job->parts[place->part].length, drawn_label(sheet, place->part).at);
    }
    canvas_print(&canvas, out);
}

static void area_picture(struct text *out, const struct cut_sheet *sheet,
                         const struct cut_blank *blank)
{
    int64_t whole = blank_length(sheet, blank), whole_width = sheet->job->sizes[blank->size].width;
    struct canvas canvas;

    canvas_begin(&canvas, picture_columns(sheet), whole, whole_width);
    canvas_area(&canvas, 0, 0, whole, whole_width, NULL);
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &sheet->layout->places.at[i];
        int64_t length, width;

        blank_place_size(sheet, place, &length, &width);
        canvas_area(&canvas, place->along, place->across, length, width,
                    blank_names_part(sheet, place->part) ? drawn_label(sheet, place->part).at
                                                         : NULL);
    }
    canvas_print(&canvas, out);
}

/* ---- one blank ---- */

void sheet_blank(struct text *out, const struct cut_sheet *sheet, size_t index)
{
    const struct cut_blank *blank = &sheet->layout->blanks.at[index];

    blank_heading(out, sheet, index);
    (sheet->way == CUT_BARS ? stick_picture : area_picture)(out, sheet, blank);
    blank_words(out, sheet, index);
}

void sheet_ways_home(struct text *out, const struct plan *plan)
{
    for (size_t i = 0; i < plan->jobs.count; i++) {
        const struct cut_sheet sheet = sheet_of_job(plan, &plan->jobs.at[i]);

        for (size_t k = 0; sheet.way == CUT_SHEETS && k < sheet.layout->blanks.count; k++) {
            struct text line;

            text_init(&line);
            blank_way_home(&line, &sheet, k);
            if (*text_string(&line)) {
                text_format(out, "    sheet %zu of %s\n", k + 1,
                            plan_stock_name(plan, sheet.stock));
                text_add(out, text_string(&line));
            }
            text_release(&line);
        }
    }
}

/* ---- one job ---- */

void sheet_layout(struct text *out, const struct cut_sheet *sheet)
{
    blank_job_heading(out, sheet, true);
    for (size_t i = 0; i < sheet->layout->blanks.count; i++)
        sheet_blank(out, sheet, i);
}

static const char *part_label(const struct cut_sheet *sheet, size_t part)
{
    return sheet->parts[part].label;
}

struct cut_sheet sheet_of_job(const struct plan *plan, const struct plan_job *job)
{
    return (struct cut_sheet){.plan = plan,
                              .stock = job->stock,
                              .way = job->way,
                              .job = job->job,
                              .layout = job->layout,
                              .taken = job->taken,
                              .cut = job->cut,
                              .again = job->again,
                              .beside_bought = job->bought_count > 0,
                              .sources = job->sources,
                              .parts = &plan->parts.at[job->first_part],
                              .label = part_label};
}

static bool names_something(const struct cut_sheet *sheet, const struct cut_blank *blank)
{
    for (size_t i = blank->first; i < blank->first + blank->count; i++)
        if (blank_names_part(sheet, sheet->layout->places.at[i].part))
            return true;
    return false;
}

void sheet_layer_cutting(struct text *out, const struct plan *plan, int64_t layer)
{
    for (size_t i = 0; i < plan->jobs.count; i++) {
        struct cut_sheet sheet = sheet_of_job(plan, &plan->jobs.at[i]);

        sheet.layer = layer;
        for (size_t k = 0; k < sheet.layout->blanks.count; k++)
            if (names_something(&sheet, &sheet.layout->blanks.at[k]))
                sheet_blank(out, &sheet, k);
    }
}

void sheet_cutting(struct text *out, const struct plan *plan)
{
    if (plan->jobs.count > 0)
        text_add(out, "\nCUTTING\n");
    for (size_t i = 0; i < plan->jobs.count; i++) {
        const struct cut_sheet sheet = sheet_of_job(plan, &plan->jobs.at[i]);

        sheet_layout(out, &sheet);
    }
}
