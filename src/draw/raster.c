#include "draw/raster.h"

#include <assert.h>

/* Directions in which a line leaves a cell. */
enum { TO_UP = 1, TO_DOWN = 2, TO_LEFT = 4, TO_RIGHT = 8 };

struct grid {
    struct raster *raster;
    const struct drawing *drawing;
    unsigned char *lines; /* directions, cell by cell */
    int64_t wide, high;   /* of the drawing */
    int last_row, last_column;
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

static int column_of(const struct grid *grid, int64_t u)
{
    int64_t at = whole_divide_even((u - grid->drawing->bounds.u0) * grid->last_column, grid->wide);

    return at < 0 ? 0 : at > grid->last_column ? grid->last_column : (int)at;
}

static int row_of(const struct grid *grid, int64_t v)
{
    int64_t at = whole_divide_even((grid->drawing->bounds.v1 - v) * grid->last_row, grid->high);

    return at < 0 ? 0 : at > grid->last_row ? grid->last_row : (int)at;
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

static void outline(struct grid *grid, const struct area *area)
{
    int left = column_of(grid, area->u0);
    int right = column_of(grid, area->u1);
    int top = row_of(grid, area->v1);
    int bottom = row_of(grid, area->v0);

    level_line(grid, top, left, right);
    level_line(grid, bottom, left, right);
    upright_line(grid, left, top, bottom);
    upright_line(grid, right, top, bottom);
}

static void fill(struct grid *grid, const struct area *area, unsigned code)
{
    int left = column_of(grid, area->u0);
    int right = column_of(grid, area->u1);
    int top = row_of(grid, area->v1);
    int bottom = row_of(grid, area->v0);

    for (int row = top; row <= bottom; row++) {
        for (int column = left; column <= right; column++)
            grid->raster->cells[index_of(grid, row, column)] = code;
    }
}

static void draw_lines(struct grid *grid)
{
    for (size_t i = 0; i < grid->drawing->marks.count; i++) {
        const struct mark *mark = &grid->drawing->marks.at[i];
        if (mark->kind == MARK_FACE || mark->kind == MARK_PANEL || mark->kind == MARK_MEMBER)
            outline(grid, &mark->area);
    }
}

unsigned raster_sign(enum mark_kind kind)
{
    static const unsigned char signs[MARK_KINDS] = {
        [MARK_SEAM] = '#',    [MARK_PADDING] = ':', [MARK_OPEN] = '=',  [MARK_DRIVER] = '~',
        [MARK_BLOCKER] = '!', [MARK_PATCH] = '.',   [MARK_SCREW] = '*', [MARK_TIP] = 'x',
        [MARK_POINT] = 'o',   [MARK_CHOSEN] = '@'};

    return signs[kind];
}

static void draw_signs(struct grid *grid)
{
    for (enum mark_kind kind = 0; kind < MARK_KINDS; kind++) {
        for (size_t i = 0; raster_sign(kind) && i < grid->drawing->marks.count; i++) {
            const struct mark *mark = &grid->drawing->marks.at[i];
            if (mark->kind == kind)
                fill(grid, &mark->area, raster_sign(kind));
        }
    }
}

/* The part of the cells that keeps the drawing's shape, a cell being twice as high as wide. */
static void set_scale(struct grid *grid)
{
    int64_t columns = grid->raster->columns - 1;
    int64_t rows = grid->raster->rows - 1;

    if (columns * grid->high <= 2 * rows * grid->wide)
        rows = whole_divide_even(columns * grid->high, 2 * grid->wide);
    else
        columns = whole_divide_even(2 * rows * grid->wide, grid->high);
    grid->last_row = rows < 2 ? 2 : (int)rows;
    grid->last_column = columns < 2 ? 2 : (int)columns;
}

void raster_draw(struct raster *raster, const struct drawing *drawing, int rows, int columns,
                 enum raster_style style, struct arena *arena)
{
    size_t count = (size_t)(rows > 0 ? rows : 0) * (size_t)(columns > 0 ? columns : 0);
    struct grid grid = {.raster = raster,
                        .drawing = drawing,
                        .lines = ARENA_MANY(arena, unsigned char, count),
                        .wide = drawing->bounds.u1 - drawing->bounds.u0,
                        .high = drawing->bounds.v1 - drawing->bounds.v0};

    *raster = (struct raster){rows, columns, ARENA_MANY(arena, unsigned, count)};
    for (size_t i = 0; i < count; i++)
        raster->cells[i] = ' ';
    if (rows < 3 || columns < 3 || grid.wide <= 0 || grid.high <= 0)
        return;
    set_scale(&grid);
    draw_lines(&grid);
    for (size_t i = 0; i < count; i++) {
        unsigned char lines = grid.lines[i];
        if (lines)
            raster->cells[i] = style == RASTER_LINES ? line_codes[lines] : plain_code(lines);
    }
    draw_signs(&grid);
}
