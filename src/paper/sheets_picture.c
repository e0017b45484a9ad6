/* Pictures of the piece, its boxes and their faces as text. */
#include "paper/sheets.h"

#include "base/utf8.h"
#include "draw/field.h"
#include "paper/lines.h"
#include "paper/print.h"

#define PICTURE_INDENT 2
#define PICTURE_COLUMNS (SHEET_COLUMNS - PICTURE_INDENT - 2)
#define PICTURE_ROWS 26
#define SECTION_ROWS 16

/* What is drawn, and how; drawn into an arena that lives as long as the sheet is made. */
struct picture {
    struct text *out;
    const struct plan *plan;
    void (*name)(const struct picture *picture);
    void (*draw)(struct picture *picture, struct drawing *drawing);
    const struct piece_ask *piece;
    int64_t box, side, edge, layer;
    enum raster_style style;
    int rows;
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

static void run_picture(void *context)
{
    struct picture *picture = context;
    struct drawing drawing;
    struct raster raster;

    picture->draw(picture, &drawing);
    raster_draw(&raster, &drawing, picture->rows, PICTURE_COLUMNS, picture->style, &picture->arena);
    text_add_char(picture->out, '\n');
    picture->name(picture);
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

/* ---- the piece ---- */

static void name_piece(const struct picture *picture)
{
    const struct piece_ask *ask = picture->piece;

    if (ask->box)
        text_format(picture->out, "Box %s", print_box(picture->plan, ask->box));
    else
        text_add(picture->out, "The piece");
    text_format(picture->out, " from the %s%s", piece_corner_words(ask->corner),
                ask->apart ? ", taken apart" : "");
}

static void draw_of_piece(struct picture *picture, struct drawing *drawing)
{
    draw_piece(drawing, picture->plan, picture->piece, &picture->arena);
}

void sheet_piece(struct text *out, const struct plan *plan, const struct piece_ask *ask,
                 enum raster_style style)
{
    struct picture picture = {.out = out,
                              .plan = plan,
                              .name = name_piece,
                              .draw = draw_of_piece,
                              .piece = ask,
                              .style = style,
                              .rows = PICTURE_ROWS};

    if (plan->facts->boxes.count)
        print_picture(&picture);
}

void sheet_whole(struct text *out, const struct plan *plan)
{
    sheet_piece(out, plan, &(struct piece_ask){.chosen = ENTITY_none}, RASTER_PLAIN);
}

/* ---- faces ---- */

static void name_face(const struct picture *picture)
{
    text_format(picture->out, "%s of %s", words_side.at[picture->side].name,
                print_box(picture->plan, picture->box));
}

static void draw_of_face(struct picture *picture, struct drawing *drawing)
{
    draw_face(drawing, picture->plan, picture->box, picture->side, &picture->arena);
}

static void name_field(const struct picture *picture)
{
    name_face(picture);
    text_add(picture->out, ", tufted");
}

static void draw_of_field(struct picture *picture, struct drawing *drawing)
{
    draw_field(drawing, picture->plan, picture->layer, &picture->arena);
}

/* Of the tufted layers of a face. */
static void print_fields(struct text *out, const struct plan *plan, int64_t box, int64_t side,
                         enum raster_style style)
{
    for (size_t i = 0; i < plan->facts->layers.count; i++) {
        const struct layer *layer = &plan->facts->layers.at[i];
        struct picture picture = {.out = out,
                                  .plan = plan,
                                  .name = name_field,
                                  .draw = draw_of_field,
                                  .box = box,
                                  .side = side,
                                  .layer = layer->key,
                                  .style = style,
                                  .rows = PICTURE_ROWS};
        if (layer->box == box && layer->side == side && draw_has_field(plan, layer->key))
            print_picture(&picture);
    }
}

void sheet_face(struct text *out, const struct plan *plan, int64_t box, int64_t side,
                enum raster_style style)
{
    struct picture picture = {.out = out,
                              .plan = plan,
                              .name = name_face,
                              .draw = draw_of_face,
                              .box = box,
                              .side = side,
                              .style = style,
                              .rows = PICTURE_ROWS};

    print_picture(&picture);
    print_fields(out, plan, box, side, style);
}

/* ---- sections ---- */

static void name_section(const struct picture *picture)
{
    name_face(picture);
    text_format(picture->out, ", cut at its %s:", words_edge.at[picture->edge].name);
}

static void draw_of_section(struct picture *picture, struct drawing *drawing)
{
    draw_section(drawing, picture->plan, picture->box, picture->side, picture->edge, 0,
                 &picture->arena);
}

void sheet_section(struct text *out, const struct plan *plan, int64_t box, int64_t side,
                   int64_t edge, enum raster_style style)
{
    struct picture picture = {.out = out,
                              .plan = plan,
                              .name = name_section,
                              .draw = draw_of_section,
                              .box = box,
                              .side = side,
                              .edge = edge,
                              .style = style,
                              .rows = SECTION_ROWS};

    print_picture(&picture);
}

void sheet_sections(struct text *out, const struct plan *plan)
{
    for (size_t i = 0; i < plan->paddings.count; i++) {
        const struct padding *padding = &plan->paddings.at[i];
        if (!draw_has_section(plan, padding->box, padding->side))
            continue;
        sheet_section(out, plan, padding->box, padding->side,
                      draw_section_edge(plan, padding->box, padding->side), RASTER_PLAIN);
        print_fields(out, plan, padding->box, padding->side, RASTER_PLAIN);
    }
}
