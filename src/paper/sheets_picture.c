/* Pictures of the piece, its boxes and their faces as text. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/lines.h"
#include "paper/print.h"

#define PICTURE_INDENT 2
#define PICTURE_COLUMNS (SHEET_COLUMNS - PICTURE_INDENT - 2)
#define PICTURE_ROWS 26

/* What is drawn, and how; drawn into an arena that lives as long as the sheet is made. */
struct picture {
    struct text *out;
    const struct plan *plan;
    const struct piece_ask *piece; /* NULL for a face */
    int64_t box, side;
    enum raster_style style;
    struct arena arena;
};

/* ---- cells ---- */

static int row_end(const struct raster *raster, int row)
{
    int end = raster->columns;

    while (end > 0 && raster->cells[row * raster->columns + end - 1] == ' ')
        end--;
    return end;
}

static void add_row(struct text *out, const struct raster *raster, int row)
{
    int end = row_end(raster, row);

    for (int i = 0; end && i < PICTURE_INDENT; i++)
        text_add_char(out, ' ');
    for (int column = 0; column < end; column++) {
        unsigned code = raster->cells[row * raster->columns + column];
        char bytes[4];
        if (code)
            text_add_bytes(out, bytes, (size_t)utf8_put(code, bytes));
    }
    text_add_char(out, '\n');
}

static void add_cells(struct text *out, const struct raster *raster)
{
    int rows = raster->rows;

    while (rows > 0 && row_end(raster, rows - 1) == 0)
        rows--;
    for (int row = 0; row < rows; row++)
        add_row(out, raster, row);
}

/* ---- pictures ---- */

static void add_piece_name(const struct picture *picture)
{
    const struct piece_ask *ask = picture->piece;
    const struct join *join = MODEL_FIND(picture->plan->facts, join, ask->join);

    if (join) {
        text_add(picture->out, "Join ");
        show_text(picture->out, join->name);
    } else if (ask->box) {
        text_format(picture->out, "Box %s", print_box(picture->plan, ask->box));
    } else {
        text_add(picture->out, "The piece");
    }
    text_format(picture->out, " from the %s%s", piece_corner_words(ask->corner),
                ask->apart ? ", taken apart" : "");
}

static void add_name(const struct picture *picture)
{
    text_add_char(picture->out, '\n');
    if (picture->piece)
        add_piece_name(picture);
    else
        text_format(picture->out, "%s of %s", words_side.at[picture->side].name,
                    print_box(picture->plan, picture->box));
}

static void run_picture(void *context)
{
    struct picture *picture = context;
    struct drawing drawing;
    struct raster raster;

    if (picture->piece)
        draw_piece(&drawing, picture->plan, picture->piece, &picture->arena);
    else
        draw_face(&drawing, picture->plan, picture->box, picture->side, &picture->arena);
    raster_draw(&raster, &drawing, PICTURE_ROWS, PICTURE_COLUMNS, picture->style, &picture->arena);
    add_name(picture);
    raster_legend(picture->out, &drawing, picture->style);
    text_add_char(picture->out, '\n');
    add_cells(picture->out, &raster);
}

static void print_picture(struct picture *picture)
{
    arena_init(&picture->arena);
    if (!arena_try(&picture->arena, run_picture, picture))
        picture->out->failed = true;
    arena_release(&picture->arena);
}

void sheet_piece(struct text *out, const struct plan *plan, const struct piece_ask *ask,
                 enum raster_style style)
{
    struct picture picture = {.out = out, .plan = plan, .piece = ask, .style = style};

    if (plan->facts->boxes.count)
        print_picture(&picture);
}

void sheet_whole(struct text *out, const struct plan *plan)
{
    sheet_piece(out, plan, &(struct piece_ask){.chosen = ENTITY_none}, RASTER_PLAIN);
}

void sheet_face(struct text *out, const struct plan *plan, int64_t box, int64_t side,
                enum raster_style style)
{
    struct picture picture = {.out = out, .plan = plan, .box = box, .side = side, .style = style};

    print_picture(&picture);
}
