/* Sticks, sheets and lengths of roll on pages: parts, what is lost, the cuts by number. */
#include "paper/chart.h"

#include "base/quantity.h"
#include "paper/blank.h"
#include "paper/print.h"
#include "plan/geometry.h"

#include <stdio.h>

#define STICK_HEIGHT (8 * LENGTH_MM)
#define STICK_MARK_LINES 4            /* of letters that there is room for below a stick */
#define MARK_SIZE (5 * LENGTH_MM / 2) /* letters of marks and of the numbers of cuts */
#define LABEL_MOST (5 * LENGTH_MM)    /* letters of a part's label */
#define BELOW (11 * LENGTH_MM)        /* for the dimension line under a sheet */
#define BESIDE (8 * LENGTH_MM)        /* for the one at its left */
#define SHEET_MOST (120 * LENGTH_MM)  /* height of a sheet or of a row of a roll */
#define ROLL_SHAPE 3                  /* a row of a roll is so many times as long as wide */

/* The area that a part takes, seen with the edge that "across" counts from at the top. A stick is 1
 * wide. */
static struct area place_area(const struct cut_sheet *sheet, const struct cut_blank *blank,
                              const struct cut_place *place)
{
    int64_t whole = sheet->job->sizes[blank->size].width;
    int64_t length, width;

    blank_place_size(sheet, place, &length, &width);
    if (sheet->way == CUT_BARS) {
        int64_t along = blank_along(sheet, blank, place);

        return (struct area){along, 0, along + length, 1};
    }
    return (struct area){place->along, whole - place->across - width, place->along + length,
                         whole - place->across};
}

static const char *place_label(const struct chart *chart, const struct cut_sheet *sheet,
                               const struct cut_place *place)
{
    return arena_format(chart->pages->arena, "%s%s", sheet->label(sheet, place->part),
                        blank_hand(sheet, place->part));
}

/* "30 x 12", under the label where there is room for both. */
static const char *place_figures(const struct chart *chart, const struct cut_sheet *sheet,
                                 const struct cut_place *place)
{
    const struct cut_piece *part = &sheet->job->parts[place->part];

    return arena_format(chart->pages->arena, "%s x %s", print_length(sheet->plan, part->length).at,
                        print_length(sheet->plan, part->width).at);
}

/* A part with its label, and under it its size where it is no stick and wide enough. */
static void add_part(struct chart *chart, const struct cut_sheet *sheet,
                     const struct cut_place *place, struct area area)
{
    struct area upper = area, lower = area;

    page_part(chart->pages, chart->page, chart_box(chart, area));
    upper.v0 = lower.v1 = area.v0 + area_height(&area) / 2;
    if (sheet->way == CUT_BARS || area_height(&area) > area_width(&area) ||
        !chart_label(chart, upper, LABEL_MOST, place_label(chart, sheet, place)))
        chart_label(chart, area, LABEL_MOST, place_label(chart, sheet, place));
    else
        chart_label(chart, lower, LABEL_MOST * 4 / 5, place_figures(chart, sheet, place));
}

static void add_parts(struct chart *chart, const struct cut_sheet *sheet,
                      const struct cut_blank *blank)
{
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &sheet->layout->places.at[i];
        struct area whole = place_area(sheet, blank, place);
        struct area area = area_cut(&whole, &chart->shown);

        if (!area_empty(&area))
            add_part(chart, sheet, place, area);
    }
}

/* ---- sticks ---- */

static int64_t longest_blank(const struct cut_sheet *sheet)
{
    int64_t longest = 1;

    for (size_t i = 0; i < sheet->layout->blanks.count; i++)
        longest = length_larger(longest, blank_length(sheet, &sheet->layout->blanks.at[i]));
    return longest;
}

/* The marks from the squared end, each below its place, on the first of two lines that is free. */
static void add_stick_marks(struct chart *chart, const struct cut_sheet *sheet,
                            const struct cut_blank *blank)
{
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &sheet->layout->places.at[i];
        int64_t at = blank_along(sheet, blank, place) + sheet->job->parts[place->part].length;
        int64_t x = chart_x(chart, at);
        const char *words = print_length(sheet->plan, at).at;

        for (int line = 0; line < 2; line++) {
            int64_t y = chart->drawn.y1 + (line + 1) * MARK_SIZE * 5 / 4;
            if (chart_words(chart, ALIGN_TO, x, y, MARK_SIZE, words))
                break;
        }
    }
}

static void chart_stick(struct flow *flow, const struct cut_sheet *sheet,
                        const struct cut_blank *blank)
{
    struct page_box room;
    struct page *page = flow_room(flow, STICK_HEIGHT + STICK_MARK_LINES * MARK_SIZE, &room);
    struct area shown = {0, 0, longest_blank(sheet), 1};
    struct area whole = {0, 0, blank_length(sheet, blank), 1};
    struct chart chart = {
        flow->pages, page, shown, {room.x0, room.y0, room.x1, room.y0 + STICK_HEIGHT}};

    page_frame(flow->pages, page, PEN_BOLD, chart_box(&chart, whole));
    page_waste(flow->pages, page, chart_box(&chart, whole));
    add_parts(&chart, sheet, blank);
    add_stick_marks(&chart, sheet, blank);
}

/* ---- sheets ---- */

/* The number of a cut somewhere on its line where no other words stand. */
static void add_cut_number(struct chart *chart, const struct cut_stroke *stroke, int64_t whole,
                           int number)
{
    static const int tenths[] = {5, 3, 7, 1, 9, 2, 8, 4, 6};
    char words[16];

    snprintf(words, sizeof words, "%d", number);
    for (size_t i = 0; i < sizeof tenths / sizeof *tenths; i++) {
        int64_t on = stroke->from + (stroke->to - stroke->from) * tenths[i] / 10;
        int64_t u = stroke->across ? stroke->at : on;
        int64_t v = whole - (stroke->across ? on : stroke->at);
        if (chart_words(chart, ALIGN_MIDDLE, chart_x(chart, u), chart_y(chart, v) + MARK_SIZE / 3,
                        MARK_SIZE, words))
            return;
    }
}

static void add_cut_numbers(struct chart *chart, const struct cut_sheet *sheet, size_t index)
{
    int64_t whole = sheet->job->sizes[sheet->layout->blanks.at[index].size].width;
    int number = 0;

    for (size_t i = 0; i < sheet->layout->strokes.count; i++) {
        const struct cut_stroke *stroke = &sheet->layout->strokes.at[i];
        if (stroke->blank == index)
            add_cut_number(chart, stroke, whole, ++number);
    }
}

/* A part of a blank from `from` to `to` along it, at the scale at which `row` would fill a line. */
static void chart_stretch(struct flow *flow, const struct cut_sheet *sheet, size_t index,
                          int64_t from, int64_t to, int64_t row)
{
    const struct cut_blank *blank = &sheet->layout->blanks.at[index];
    struct area shown = {from, 0, to, sheet->job->sizes[blank->size].width};
    struct page_box whole = pages_room(flow->pages);
    struct area full = {0, 0, row, shown.v1};
    int64_t height = length_smaller(chart_height(full, whole.x1 - whole.x0 - BESIDE), SHEET_MOST);
    struct page_box room;
    struct page *page = flow_room(flow, height + BELOW, &room);

    room.x0 += BESIDE;
    room.y1 -= BELOW;
    struct chart chart = chart_of(flow->pages, page, shown, room);
    page_frame(flow->pages, page, PEN_BOLD, chart.drawn);
    page_waste(flow->pages, page, chart.drawn);
    add_parts(&chart, sheet, blank);
    add_cut_numbers(&chart, sheet, index);
    chart_dimensions(&chart,
                     from > 0 ? arena_format(flow->pages->arena, "%s to %s",
                                             print_length(sheet->plan, from).at,
                                             print_length_unit(sheet->plan, to).at)
                              : print_length_unit(sheet->plan, to).at,
                     print_length_unit(sheet->plan, shown.v1).at);
}

void chart_blank(struct flow *flow, const struct cut_sheet *sheet, size_t index)
{
    const struct cut_blank *blank = &sheet->layout->blanks.at[index];
    int64_t length = blank_length(sheet, blank);
    int64_t row =
        sheet->way == CUT_ROLLS ? ROLL_SHAPE * sheet->job->sizes[blank->size].width : length;

    if (sheet->way == CUT_BARS) {
        chart_stick(flow, sheet, blank);
        return;
    }
    for (int64_t from = 0; from < length; from += row)
        chart_stretch(flow, sheet, index, from, length_smaller(from + row, length), row);
}
