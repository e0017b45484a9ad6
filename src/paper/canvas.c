#include "paper/canvas.h"

#include <assert.h>
#include <string.h>

#define LEAST_ROWS 3

/* Two columns of a terminal are about as wide as a row is high. */
static int rows_of(int columns, int64_t length, int64_t width)
{
    int64_t rows = length > 0 ? width * columns / length / 2 : 0;

    if (width == 0)
        return 0;
    return rows < LEAST_ROWS ? LEAST_ROWS : rows > CANVAS_ROWS ? CANVAS_ROWS : (int)rows;
}

void canvas_begin(struct canvas *canvas, int columns, int64_t length, int64_t width)
{
    assert(columns > 0 && columns <= CANVAS_COLUMNS);
    *canvas = (struct canvas){.rows = rows_of(columns, length, width),
                              .columns = columns,
                              .length = length,
                              .width = width};
    for (int row = 0; row <= canvas->rows; row++)
        memset(canvas->at[row], ' ', (size_t)columns + 1);
    if (width == 0)
        canvas->at[0][columns] = '|';
}

static int across_to_row(const struct canvas *canvas, int64_t across)
{
    return canvas->width > 0 ? (int)(across * canvas->rows / canvas->width) : 0;
}

static int along_to_column(const struct canvas *canvas, int64_t along)
{
    return canvas->length > 0 ? (int)(along * canvas->columns / canvas->length) : 0;
}

/* A sign in a cell; a corner where another stands there already. */
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

/* A label between two lines. Where it is too long, its first word as far as there is room: what
 * stands behind it is told in words below a picture. */
static void draw_label(struct canvas *canvas, int row, int left, int right, const char *label)
{
    int room = right - left - 1;
    int length = (int)strlen(label);

    if (length > room)
        length = (int)strcspn(label, " ");
    for (int i = 0; i < length && i < room; i++)
        canvas->at[row][left + 1 + i] = label[i] >= ' ' && label[i] < 127 ? label[i] : '?';
}

void canvas_area(struct canvas *canvas, int64_t along, int64_t across, int64_t length,
                 int64_t width, const char *label)
{
    int top = across_to_row(canvas, across), bottom = across_to_row(canvas, across + width);
    int left = along_to_column(canvas, along), right = along_to_column(canvas, along + length);

    draw_box(canvas, top, left, bottom, right);
    if (label && right - left > 1)
        draw_label(canvas, bottom - top > 1 ? (top + bottom) / 2 : top, left, right, label);
}

void canvas_part(struct canvas *canvas, int64_t along, int64_t length, const char *label)
{
    int left = along_to_column(canvas, along), right = along_to_column(canvas, along + length);

    assert(canvas->rows == 0);
    for (int column = left + 1; column < right; column++)
        canvas->at[0][column] = '-';
    canvas->at[0][left] = canvas->at[0][right] = '|';
    draw_label(canvas, 0, left, right, label);
}

void canvas_print(const struct canvas *canvas, struct text *out)
{
    for (int row = 0; row <= canvas->rows; row++) {
        int end = canvas->columns + 1;

        while (end > 0 && canvas->at[row][end - 1] == ' ')
            end--;
        text_format(out, "    %.*s\n", end, canvas->at[row]);
    }
}
