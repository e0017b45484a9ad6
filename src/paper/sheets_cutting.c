/* Sticks, sheets and rolls as they are cut: a picture to scale and the marks. */
#include "paper/sheets.h"

#include "base/show.h"
#include "desk/trip.h"
#include "paper/blank.h"
#include "paper/lines.h"
#include "paper/print.h"
#include "plan/homeward.h"

#include <stdio.h>
#include <string.h>

#define PICTURE_COLUMNS 72
#define PICTURE_ROWS 18

/* ---- pictures ---- */

struct canvas {
    char at[PICTURE_ROWS + 1][PICTURE_COLUMNS + 2];
    int rows, columns;
    int64_t length, width; /* what the canvas shows */
};

static int picture_columns(const struct cut_sheet *sheet)
{
    bool narrow = sheet->columns > 0 && sheet->columns < PICTURE_COLUMNS;

    return narrow ? sheet->columns : PICTURE_COLUMNS;
}

/* Two columns of a terminal are about as wide as a row is high. */
static void canvas_begin(struct canvas *canvas, const struct cut_sheet *sheet, int64_t length,
                         int64_t width)
{
    int columns = picture_columns(sheet);
    int64_t rows = length > 0 ? width * columns / length / 2 : 0;

    *canvas = (struct canvas){.columns = columns, .length = length, .width = width};
    canvas->rows = rows < 3 ? 3 : rows > PICTURE_ROWS ? PICTURE_ROWS : (int)rows;
    for (int row = 0; row <= canvas->rows; row++)
        memset(canvas->at[row], ' ', (size_t)canvas->columns + 1);
}

static int across_to_row(const struct canvas *canvas, int64_t across)
{
    return canvas->width > 0 ? (int)(across * canvas->rows / canvas->width) : 0;
}

static int along_to_column(const struct canvas *canvas, int64_t along)
{
    return canvas->length > 0 ? (int)(along * canvas->columns / canvas->length) : 0;
}

static void put(struct canvas *canvas, int row, int column, char c)
{
    if (row < 0 || row > canvas->rows || column < 0 || column > canvas->columns)
        return;
    canvas->at[row][column] =
        canvas->at[row][column] == ' ' || canvas->at[row][column] == c ? c : '+';
}

static void draw_box(struct canvas *canvas, int top, int left, int bottom, int right)
{
    for (int column = left + 1; column < right; column++) {
        put(canvas, top, column, '-');
        put(canvas, bottom, column, '-');
    }
    for (int row = top + 1; row < bottom; row++) {
        put(canvas, row, left, '|');
        put(canvas, row, right, '|');
    }
    put(canvas, top, left, '+');
    put(canvas, top, right, '+');
    put(canvas, bottom, left, '+');
    put(canvas, bottom, right, '+');
}

static void draw_label(struct canvas *canvas, int row, int left, int right, const char *label)
{
    int room = right - left - 1;
    int length = (int)strlen(label);

    if (length > room)
        length = (int)strcspn(label, " "); /* what stands behind it is said below */
    for (int i = 0; i < length && i < room; i++)
        canvas->at[row][left + 1 + i] = label[i] >= ' ' && label[i] < 127 ? label[i] : '?';
}

static void draw_area(struct canvas *canvas, int64_t along, int64_t across, int64_t length,
                      int64_t width, const char *label)
{
    int top = across_to_row(canvas, across), bottom = across_to_row(canvas, across + width);
    int left = along_to_column(canvas, along), right = along_to_column(canvas, along + length);

    draw_box(canvas, top, left, bottom, right);
    if (label && right - left > 1)
        draw_label(canvas, bottom - top > 1 ? (top + bottom) / 2 : top, left, right, label);
}

static void print_canvas(const struct canvas *canvas, struct text *out)
{
    for (int row = 0; row <= canvas->rows; row++) {
        int end = canvas->columns + 1;

        while (end > 0 && canvas->at[row][end - 1] == ' ')
            end--;
        text_format(out, "    %.*s\n", end, canvas->at[row]);
    }
}

/* ---- one blank ---- */

int64_t blank_length(const struct cut_sheet *sheet, const struct cut_blank *blank)
{
    int64_t length = sheet->job->sizes[blank->size].length;

    return length > 0 ? length : blank->used;
}

void blank_place_size(const struct cut_sheet *sheet, const struct cut_place *place,
                      int64_t *ret_length, int64_t *ret_width)
{
    const struct cut_piece *part = &sheet->job->parts[place->part];

    *ret_length = place->turned ? part->width : part->length;
    *ret_width = place->turned ? part->length : part->width;
}

/* Is a part one of those that are named? */
static bool is_named(const struct cut_sheet *sheet, size_t part)
{
    size_t piece;

    if (sheet->layer == 0)
        return true;
    piece = sheet->parts[part].piece;
    return piece != PLAN_NONE && sheet->plan->pieces.at[piece].layer == sheet->layer;
}

const char *blank_hand(const struct cut_sheet *sheet, size_t part)
{
    return sheet->parts ? print_hand(sheet->plan, sheet->parts[part].box) : "";
}

/* As much of a part's label as a picture can show. */
struct drawn_label {
    char at[PICTURE_COLUMNS];
};

static struct drawn_label drawn_label(const struct cut_sheet *sheet, size_t part)
{
    struct drawn_label drawn;

    snprintf(drawn.at, sizeof drawn.at, "%s%s", sheet->label(sheet, part), blank_hand(sheet, part));
    return drawn;
}

/* A stick on one line: each part from a bar to a bar, its label in it, what is left blank. */
static void stick_picture(struct text *out, const struct cut_sheet *sheet,
                          const struct cut_blank *blank)
{
    struct canvas canvas;

    canvas_begin(&canvas, sheet, blank_length(sheet, blank), 0);
    canvas.rows = 0;
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &sheet->layout->places.at[i];
        int left = along_to_column(&canvas, place->along);
        int right = along_to_column(&canvas, place->along + sheet->job->parts[place->part].length);

        for (int column = left + 1; column < right; column++)
            canvas.at[0][column] = '-';
        canvas.at[0][left] = canvas.at[0][right] = '|';
        draw_label(&canvas, 0, left, right, drawn_label(sheet, place->part).at);
    }
    canvas.at[0][canvas.columns] = '|';
    print_canvas(&canvas, out);
}

static void area_picture(struct text *out, const struct cut_sheet *sheet,
                         const struct cut_blank *blank)
{
    int64_t whole = blank_length(sheet, blank), whole_width = sheet->job->sizes[blank->size].width;
    struct canvas canvas;

    canvas_begin(&canvas, sheet, whole, whole_width);
    draw_area(&canvas, 0, 0, whole, whole_width, NULL);
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &sheet->layout->places.at[i];
        int64_t length, width;

        blank_place_size(sheet, place, &length, &width);
        draw_area(&canvas, place->along, place->across, length, width,
                  is_named(sheet, place->part) ? drawn_label(sheet, place->part).at : NULL);
    }
    print_canvas(&canvas, out);
}

/* Pile runs down uprights and to the front on seats, so along every piece from its top: all tops
 * lie to the left. */
static void pile_arrow(struct text *out, const struct cut_sheet *sheet)
{
    const struct stock *stock = MODEL_FIND(sheet->plan->facts, stock, sheet->stock);

    if (sheet->way == CUT_ROLLS && stock && stock->pile)
        text_add(out,
                 "    pile -----> down every piece: all tops lie to the left, none is turned;\n"
                 "    draw the arrow on the back of each before it is cut off\n");
}

/* The marks of a stick, from its squared end, behind the label of each part. */
static void stick_marks(struct text *out, const struct cut_sheet *sheet,
                        const struct cut_blank *blank)
{
    struct text line;

    text_init(&line);
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &sheet->layout->places.at[i];
        int64_t length = sheet->job->parts[place->part].length;

        text_format(&line, "%s%s%s %s, mark %s", i > blank->first ? "; " : "",
                    sheet->label(sheet, place->part), blank_hand(sheet, place->part),
                    print_length(sheet->plan, length).at,
                    print_length(sheet->plan, place->along + length).at);
    }
    if (blank->rest > 0)
        text_format(&line, "; left %s", print_length(sheet->plan, blank->rest).at);
    lines_add(out, "", 4, text_string(&line));
    text_release(&line);
}

/* "side strip": what a piece of cloth is, and so what it is sewn to. */
static const char *name_of(const struct cut_sheet *sheet, size_t part)
{
    size_t piece = sheet->parts ? sheet->parts[part].piece : PLAN_NONE;

    return piece == PLAN_NONE ? "" : sheet->plan->pieces.at[piece].name;
}

static void area_parts(struct text *out, const struct cut_sheet *sheet,
                       const struct cut_blank *blank)
{
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &sheet->layout->places.at[i];
        const struct cut_piece *part = &sheet->job->parts[place->part];

        if (!is_named(sheet, place->part))
            continue;
        text_add(out, "    ");
        show_text(out, sheet->label(sheet, place->part));
        text_add(out, blank_hand(sheet, place->part));
        text_format(out, "%s%s", *name_of(sheet, place->part) ? "  " : "",
                    name_of(sheet, place->part));
        text_format(
            out, "  %s x %s at %s along, %s across%s\n", print_length(sheet->plan, part->length).at,
            print_length(sheet->plan, part->width).at, print_length(sheet->plan, place->along).at,
            print_length(sheet->plan, place->across).at, place->turned ? ", turned" : "");
    }
}

/* Of a sheet that does not go home whole: what the shop does before. */
static void put_way_home(struct text *out, const struct cut_sheet *sheet, size_t blank)
{
    const struct model *facts = sheet->plan->facts;
    const struct stock *stock = MODEL_FIND(facts, stock, sheet->stock);
    struct homeward home;
    char words[HOMEWARD_TEXT];

    if (!stock ||
        !homeward_first_cut(facts, sheet->job, sheet->layout, blank, stock->thickness, &home))
        return;
    text_add(out, "    does not go whole into ");
    show_text(out, *home.vehicle->name ? home.vehicle->name : "the vehicle");
    text_format(out, ": %s\n", homeward_words(words, facts, &home));
}

/* The cuts of one sheet in the order of the saw. */
static void saw_cuts(struct text *out, const struct cut_sheet *sheet, size_t blank)
{
    int number = 0;

    put_way_home(out, sheet, blank);

    for (size_t i = 0; i < sheet->layout->strokes.count; i++) {
        const struct cut_stroke *stroke = &sheet->layout->strokes.at[i];

        if (stroke->blank != blank)
            continue;
        text_format(out, "    cut %d: %s at %s, fence %s\n", ++number,
                    stroke->across ? "across" : "along", print_length(sheet->plan, stroke->at).at,
                    print_length(sheet->plan, stroke->fence).at);
    }
}

void sheet_ways_home(struct text *out, const struct plan *plan)
{
    for (size_t i = 0; i < plan->jobs.count; i++) {
        const struct cut_sheet sheet = sheet_of_job(plan, &plan->jobs.at[i]);

        for (size_t k = 0; sheet.way == CUT_SHEETS && k < sheet.layout->blanks.count; k++) {
            struct text line;

            text_init(&line);
            put_way_home(&line, &sheet, k);
            if (*text_string(&line)) {
                text_format(out, "    sheet %zu of %s\n", k + 1,
                            plan_stock_name(plan, sheet.stock));
                text_add(out, text_string(&line));
            }
            text_release(&line);
        }
    }
}

void blank_heading(struct text *out, const struct cut_sheet *sheet, size_t index)
{
    const struct cut_blank *blank = &sheet->layout->blanks.at[index];
    const struct cut_size *size = &sheet->job->sizes[blank->size];

    text_format(out, "\n  %zu  %s", index + 1,
                print_length_unit(sheet->plan, blank_length(sheet, blank)).at);
    if (size->width > 0)
        text_format(out, " x %s", print_length_unit(sheet->plan, size->width).at);
    text_add(out, size->limit == CUT_ANY ? "\n" : ", from the shelf\n");
}

void blank_words(struct text *out, const struct cut_sheet *sheet, size_t index)
{
    const struct cut_blank *blank = &sheet->layout->blanks.at[index];

    if (sheet->way == CUT_BARS) {
        stick_marks(out, sheet, blank);
        return;
    }
    pile_arrow(out, sheet);
    area_parts(out, sheet, blank);
    saw_cuts(out, sheet, index);
}

void sheet_blank(struct text *out, const struct cut_sheet *sheet, size_t index)
{
    const struct cut_blank *blank = &sheet->layout->blanks.at[index];

    blank_heading(out, sheet, index);
    (sheet->way == CUT_BARS ? stick_picture : area_picture)(out, sheet, blank);
    blank_words(out, sheet, index);
}

/* ---- one job ---- */

/* What it costs: money, of a roll its length. */
static struct printed print_cost(const struct cut_sheet *sheet, int64_t cost)
{
    return sheet->way == CUT_ROLLS ? print_length_unit(sheet->plan, cost)
                                   : print_money(sheet->plan, cost);
}

static void put_cost(struct text *out, const struct cut_sheet *sheet)
{
    text_format(out, ", %s", print_cost(sheet, sheet->layout->cost).at);
    if (sheet->way == CUT_ROLLS && sheet->layout->cost > 0)
        text_add(out, " sold");
    if (sheet->taken)
        text_add(out, ", as it was taken");
    else if (layout_proven(sheet->layout))
        text_add(out, ", proven the least");
    else
        text_format(out, ", at least %s", print_cost(sheet, sheet->layout->bound).at);
}

/* What was bought to be cut together with other builds is laid out for all of them elsewhere. */
static void tell_together(struct text *out, const struct plan *plan, int64_t stock)
{
    for (size_t i = 0; i < plan->facts->spends.count; i++) {
        const struct spend *spend = &plan->facts->spends.at[i];
        struct text words;

        if (spend->stock != stock ||
            strncmp(spend->note, TRIP_TOGETHER, sizeof TRIP_TOGETHER - 1) != 0)
            continue;
        text_init(&words);
        text_format(&words,
                    "Bought to be %s: the layout of that trip holds, this one is for the build by"
                    " itself.",
                    spend->note);
        lines_add(out, "", 2, text_string(&words));
        text_release(&words);
        return;
    }
}

void blank_job_heading(struct text *out, const struct cut_sheet *sheet, bool priced)
{
    static const char *const blanks[] = {
        [CUT_BARS] = "stick", [CUT_SHEETS] = "sheet", [CUT_ROLLS] = "length"};
    size_t count = sheet->layout->blanks.count;

    text_add(out, "\n");
    show_text(out, plan_stock_name(sheet->plan, sheet->stock));
    text_format(out, ": %zu %s%s", count, blanks[sheet->way], count == 1 ? "" : "s");
    if (priced || sheet->way == CUT_ROLLS)
        put_cost(out, sheet);
    text_add(out, "\n");
    if (!sheet->source)
        tell_together(out, sheet->plan, sheet->stock);
}

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
                              .parts = &plan->parts.at[job->first_part],
                              .label = part_label};
}

static bool names_something(const struct cut_sheet *sheet, const struct cut_blank *blank)
{
    for (size_t i = blank->first; i < blank->first + blank->count; i++)
        if (is_named(sheet, sheet->layout->places.at[i].part))
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
