#include "draw/raster.h"

#include "base/utf8.h"
#include "draw/dots.h"

#include <assert.h>
#include <string.h>

/* Directions in which a line leaves a cell. */
enum { TO_UP = 1, TO_DOWN = 2, TO_LEFT = 4, TO_RIGHT = 8 };

struct grid {
    struct raster *raster;
    const struct drawing *drawing;
    enum raster_style style;
    unsigned char *lines;      /* directions, cell by cell */
    bool dotted;               /* or as dots: */
    struct dots dots, hatch;   /* outlines and lines; hatching */
    int64_t wide, high;        /* of the drawing */
    int columns;               /* of cells that the picture may take */
    int last_row, last_column; /* of it */
    int last_x, last_y;        /* in dots */
    struct arena *arena;
};

/* Corners and crossings by the directions that meet there. */
static const unsigned line_codes[16] = {
    [0] = ' ',
    [TO_UP] = 0x2502,
    [TO_DOWN] = 0x2502,
    [TO_UP | TO_DOWN] = 0x2502,
    [TO_LEFT] = 0x2500,
    [TO_RIGHT] = 0x2500,
    [TO_LEFT | TO_RIGHT] = 0x2500,
    [TO_UP | TO_LEFT] = 0x2518,
    [TO_UP | TO_RIGHT] = 0x2514,
    [TO_DOWN | TO_LEFT] = 0x2510,
    [TO_DOWN | TO_RIGHT] = 0x250c,
    [TO_UP | TO_DOWN | TO_LEFT] = 0x2524,
    [TO_UP | TO_DOWN | TO_RIGHT] = 0x251c,
    [TO_UP | TO_LEFT | TO_RIGHT] = 0x2534,
    [TO_DOWN | TO_LEFT | TO_RIGHT] = 0x252c,
    [TO_UP | TO_DOWN | TO_LEFT | TO_RIGHT] = 0x253c,
};

static unsigned plain_code(unsigned char lines)
{
    bool upright = lines & (TO_UP | TO_DOWN);
    bool level = lines & (TO_LEFT | TO_RIGHT);

    return upright && level ? '+' : upright ? '|' : level ? '-' : ' ';
}

static int part_of(int64_t at, int64_t of, int last)
{
    int64_t part = whole_divide_even(at * last, of);

    return part < 0 ? 0 : part > last ? last : (int)part;
}

static int dot_x(const struct grid *grid, int64_t u)
{
    return part_of(u - grid->drawing->bounds.u0, grid->wide, grid->last_x);
}

static int dot_y(const struct grid *grid, int64_t v)
{
    return part_of(grid->drawing->bounds.v1 - v, grid->high, grid->last_y);
}

static int column_of(const struct grid *grid, int64_t u)
{
    return grid->dotted ? dot_x(grid, u) / DOTS_ACROSS
                        : part_of(u - grid->drawing->bounds.u0, grid->wide, grid->last_column);
}

static int row_of(const struct grid *grid, int64_t v)
{
    return grid->dotted ? dot_y(grid, v) / DOTS_DOWN
                        : part_of(grid->drawing->bounds.v1 - v, grid->high, grid->last_row);
}

static size_t index_of(const struct grid *grid, int row, int column)
{
    assert(row >= 0 && row < grid->raster->rows && column >= 0 && column < grid->raster->columns);
    return (size_t)row * (size_t)grid->raster->columns + (size_t)column;
}

static void level_line(struct grid *grid, int row, int from, int to)
{
    for (int column = from; column <= to && from < to; column++)
        grid->lines[index_of(grid, row, column)] |=
            (unsigned char)((column > from ? TO_LEFT : 0) | (column < to ? TO_RIGHT : 0));
}

static void upright_line(struct grid *grid, int column, int from, int to)
{
    for (int row = from; row <= to && from < to; row++)
        grid->lines[index_of(grid, row, column)] |=
            (unsigned char)((row > from ? TO_UP : 0) | (row < to ? TO_DOWN : 0));
}

static void dotted_line(struct grid *grid, struct dots *dots, const struct area *line, int every)
{
    dots_line(dots, dot_x(grid, line->u0), dot_y(grid, line->v0), dot_x(grid, line->u1),
              dot_y(grid, line->v1), every);
}

static void dotted_outline(struct grid *grid, const struct area *area)
{
    const struct area sides[] = {{area->u0, area->v0, area->u1, area->v0},
                                 {area->u0, area->v1, area->u1, area->v1},
                                 {area->u0, area->v0, area->u0, area->v1},
                                 {area->u1, area->v0, area->u1, area->v1}};

    for (size_t i = 0; i < sizeof sides / sizeof *sides; i++)
        dotted_line(grid, &grid->dots, &sides[i], 1);
}

static void outline(struct grid *grid, const struct area *area)
{
    int left = column_of(grid, area->u0);
    int right = column_of(grid, area->u1);
    int top = row_of(grid, area->v1);
    int bottom = row_of(grid, area->v0);

    if (grid->dotted) {
        dotted_outline(grid, area);
        return;
    }
    level_line(grid, top, left, right);
    level_line(grid, bottom, left, right);
    upright_line(grid, left, top, bottom);
    upright_line(grid, right, top, bottom);
}

static void fill(struct grid *grid, const struct area *area, unsigned code, bool strong)
{
    int left = column_of(grid, area->u0);
    int right = column_of(grid, area->u1);
    int top = row_of(grid, area->v1);
    int bottom = row_of(grid, area->v0);

    for (int row = top; row <= bottom; row++) {
        for (int column = left; column <= right; column++) {
            grid->raster->cells[index_of(grid, row, column)] = code;
            grid->raster->strong[index_of(grid, row, column)] = strong;
        }
    }
}

static bool is_outline(enum mark_kind kind)
{
    return kind == MARK_FACE || kind == MARK_PANEL || kind == MARK_MEMBER;
}

/* Hidden edges have gaps. */
static void draw_lines(struct grid *grid)
{
    for (size_t i = 0; i < grid->drawing->marks.count; i++) {
        const struct mark *mark = &grid->drawing->marks.at[i];
        if (is_outline(mark->kind))
            outline(grid, &mark->area);
        else if (mark_is_line(mark->kind))
            dotted_line(grid, mark->kind == MARK_HATCH ? &grid->hatch : &grid->dots, &mark->area,
                        mark->kind == MARK_BEHIND ? 3 : 1);
    }
}

/* ---- lines as characters ---- */

static unsigned dotted_code(const struct grid *grid, size_t cell)
{
    dots_mask dots = grid->dots.masks[cell];
    dots_mask hatch = grid->hatch.masks[cell];

    if (grid->style == RASTER_LINES)
        return dots_braille(dots | hatch);
    return hatch && !dots ? raster_sign(MARK_HATCH) : dots_plain(dots);
}

static unsigned lined_code(const struct grid *grid, size_t cell)
{
    unsigned char lines = grid->lines[cell];

    return grid->style == RASTER_LINES ? line_codes[lines] : plain_code(lines);
}

static void put_lines(struct grid *grid, size_t cells)
{
    for (size_t i = 0; i < cells; i++) {
        grid->raster->cells[i] = grid->dotted ? dotted_code(grid, i) : lined_code(grid, i);
        grid->raster->strong[i] = grid->dotted && grid->hatch.masks[i];
    }
}

/* ---- signs ---- */

static const struct sign {
    const char *word; /* in the legend */
    unsigned char character;
    bool strong;
} signs[MARK_KINDS] = {[MARK_HATCH] = {"this", '%', true},
                       [MARK_SEAM] = {"seam", '#', false},
                       [MARK_LIMIT] = {"this", '%', true},
                       [MARK_CLOTH_SEAM] = {"sewn", '$', false},
                       [MARK_PADDING] = {"pad", ':', false},
                       [MARK_OPEN] = {"open", '=', false},
                       [MARK_DRIVER] = {"driver", '~', false},
                       [MARK_BLOCKER] = {"in its way", '!', true},
                       [MARK_PATCH] = {"bare", '.', false},
                       [MARK_CUT_WOOD] = {"wood", '/', false},
                       [MARK_CUT_PANEL] = {"panel", '#', false},
                       [MARK_CUT_FOAM] = {"foam", '.', false},
                       [MARK_CUT_BATTING] = {"batting", '~', false},
                       [MARK_CUT_LINING] = {"cloth", '-', false},
                       [MARK_CUT_COVER] = {"cover", '=', false},
                       [MARK_CUT_CHOSEN] = {"this", '%', true},
                       [MARK_CUT_STAPLE] = {"staple", 'T', true},
                       [MARK_BUTTON] = {"button", 'O', false},
                       [MARK_SCREW] = {"screw", '*', false},
                       [MARK_TIP] = {"tip", 'x', false},
                       [MARK_POINT] = {"head", 'o', true},
                       [MARK_CHOSEN] = {"this", '@', true},
                       [MARK_WEB] = {"web", 'w', false}};

unsigned raster_sign(enum mark_kind kind)
{
    return signs[kind].character;
}

/* Lines that have a sign show it in the legend alone. */
static void draw_signs(struct grid *grid)
{
    for (enum mark_kind kind = MARK_HATCH + 1; kind < MARK_KINDS; kind++) {
        for (size_t i = 0; raster_sign(kind) && i < grid->drawing->marks.count; i++) {
            const struct mark *mark = &grid->drawing->marks.at[i];
            if (mark->kind == kind)
                fill(grid, &mark->area, raster_sign(kind), signs[kind].strong);
        }
    }
}

void raster_legend(struct text *out, const struct drawing *drawing, enum raster_style style)
{
    static const enum mark_kind order[] = {
        MARK_CHOSEN,     MARK_POINT,      MARK_BLOCKER,    MARK_LIMIT,       MARK_HATCH,
        MARK_CUT_CHOSEN, MARK_TIP,        MARK_PATCH,      MARK_OPEN,        MARK_PADDING,
        MARK_SEAM,       MARK_CLOTH_SEAM, MARK_BUTTON,     MARK_DRIVER,      MARK_SCREW,
        MARK_CUT_STAPLE, MARK_CUT_COVER,  MARK_CUT_LINING, MARK_CUT_BATTING, MARK_CUT_FOAM,
        MARK_CUT_PANEL,  MARK_CUT_WOOD,   MARK_WEB};

    for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
        const struct sign *sign = &signs[order[i]];
        if (!drawing_has(drawing, order[i]))
            continue;
        if (order[i] == MARK_HATCH && style == RASTER_LINES)
            text_format(out, " hatched: %s", sign->word);
        else
            text_format(out, " %c %s", sign->character, sign->word);
    }
}

/* ---- labels ---- */

/* A blank on each side keeps the words from lines that run on there. */
static void put_blank(struct grid *grid, int row, int column)
{
    if (column >= 0 && column < grid->raster->columns)
        grid->raster->cells[index_of(grid, row, column)] = ' ';
}

static void put_label(struct grid *grid, const struct label_place *place, const char *text)
{
    size_t left = strlen(text);
    int column = place->column;
    unsigned code;

    put_blank(grid, place->row, column - 1);
    for (int bytes; (bytes = utf8_next(text, left, &code)) > 0; left -= (size_t)bytes) {
        char one[5] = "";
        memcpy(one, text, (size_t)bytes);
        int wide = text_columns(one);
        if (column + wide > place->column + place->width)
            break;
        for (int i = 0; i < wide; i++)
            grid->raster->cells[index_of(grid, place->row, column + i)] = i ? 0 : code;
        column += wide;
        text += bytes;
    }
    put_blank(grid, place->row, column);
}

static void draw_labels(struct grid *grid)
{
    const struct drawing *drawing = grid->drawing;
    size_t count = drawing->labels.count;
    struct label_place *places = ARENA_MANY(grid->arena, struct label_place, count);
    struct label_field field = {grid->raster->rows, grid->raster->columns, grid->raster->columns};

    if (grid->columns < grid->raster->columns)
        field.margin = grid->last_column + 2;
    for (size_t i = 0; i < count; i++)
        places[i] = (struct label_place){row_of(grid, drawing->labels.at[i].v),
                                         column_of(grid, drawing->labels.at[i].u),
                                         text_columns(drawing->labels.at[i].text), false};
    labels_place(places, drawing->labels.at, count, field);
    grid->raster->places = places;
    for (size_t i = 0; i < count; i++) {
        if (places[i].shown)
            put_label(grid, &places[i], drawing->labels.at[i].text);
    }
}

/* Columns of the labels that stand aside, a blank before them; at most half of all. */
static int aside_columns(const struct drawing *drawing, int columns)
{
    int widest = 0;

    for (size_t i = 0; i < drawing->labels.count; i++) {
        int wide = drawing->labels.at[i].aside ? text_columns(drawing->labels.at[i].text) + 2 : 0;
        widest = wide > widest ? wide : widest;
    }
    return widest < columns / 2 ? widest : columns / 2;
}

/* ---- all of it ---- */

/* A picture is three cells wide and high at least: its last ones are no nearer than these. */
#define LEAST_LAST 2

/* The part of the cells that keeps the drawing's shape, a cell being twice as high as wide. */
static void set_scale(struct grid *grid)
{
    int64_t columns = grid->columns - 1;
    int64_t rows = grid->raster->rows - 1;

    if (columns * grid->high <= 2 * rows * grid->wide)
        rows = whole_divide_even(columns * grid->high, 2 * grid->wide);
    else
        columns = whole_divide_even(2 * rows * grid->wide, grid->high);
    grid->last_row = rows < LEAST_LAST ? LEAST_LAST : (int)rows;
    grid->last_column = columns < LEAST_LAST ? LEAST_LAST : (int)columns;
}

/* The same in dots, which are as high as wide. */
static void set_dot_scale(struct grid *grid)
{
    int64_t across = DOTS_ACROSS * (int64_t)grid->columns - 1;
    int64_t down = DOTS_DOWN * (int64_t)grid->raster->rows - 1;

    if (across * grid->high <= down * grid->wide)
        down = whole_divide_even(across * grid->high, grid->wide);
    else
        across = whole_divide_even(down * grid->wide, grid->high);
    grid->last_x = across < LEAST_LAST * DOTS_ACROSS ? LEAST_LAST * DOTS_ACROSS : (int)across;
    grid->last_y = down < LEAST_LAST * DOTS_DOWN ? LEAST_LAST * DOTS_DOWN : (int)down;
    grid->last_column = grid->last_x / DOTS_ACROSS;
    grid->last_row = grid->last_y / DOTS_DOWN;
}

static bool has_slopes(const struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->marks.count; i++) {
        if (mark_is_line(drawing->marks.at[i].kind))
            return true;
    }
    return false;
}

static struct dots dots_over(const struct raster *raster, size_t cells, struct arena *arena)
{
    return (struct dots){raster->rows, raster->columns, ARENA_MANY(arena, dots_mask, cells)};
}

void raster_draw(struct raster *raster, const struct drawing *drawing, int rows, int columns,
                 enum raster_style style, struct arena *arena)
{
    size_t count = (size_t)(rows > 0 ? rows : 0) * (size_t)(columns > 0 ? columns : 0);
    struct grid grid = {.raster = raster,
                        .drawing = drawing,
                        .style = style,
                        .lines = ARENA_MANY(arena, unsigned char, count),
                        .dotted = has_slopes(drawing),
                        .wide = drawing->bounds.u1 - drawing->bounds.u0,
                        .high = drawing->bounds.v1 - drawing->bounds.v0,
                        .columns = columns - aside_columns(drawing, columns),
                        .arena = arena};

    *raster = (struct raster){rows, columns, ARENA_MANY(arena, unsigned, count),
                              ARENA_MANY(arena, bool, count), NULL};
    for (size_t i = 0; i < count; i++)
        raster->cells[i] = ' ';
    if (rows <= LEAST_LAST || grid.columns <= LEAST_LAST || grid.wide <= 0 || grid.high <= 0)
        return;
    grid.dots = dots_over(raster, count, arena);
    grid.hatch = dots_over(raster, count, arena);
    (grid.dotted ? set_dot_scale : set_scale)(&grid);
    draw_lines(&grid);
    put_lines(&grid, count);
    draw_signs(&grid);
    draw_labels(&grid);
}
