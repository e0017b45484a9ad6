#include "draw/dots.h"

#include <assert.h>
#include <stdlib.h>

static void set_dot(struct dots *dots, int x, int y)
{
    int row = y / DOTS_DOWN;
    int column = x / DOTS_ACROSS;

    assert(x >= 0 && y >= 0 && row < dots->rows && column < dots->columns);
    dots->masks[row * dots->columns + column] |=
        (dots_mask)(1u << (DOTS_ACROSS * (y % DOTS_DOWN) + x % DOTS_ACROSS));
}

/* The nearest whole part of `of` steps; of is not negative. */
static int part_of(int way, int step, int of)
{
    return of ? (2 * way * step + (way < 0 ? -of : of)) / (2 * of) : 0;
}

void dots_line(struct dots *dots, int x0, int y0, int x1, int y1, int every)
{
    int wide = abs(x1 - x0);
    int high = abs(y1 - y0);
    int steps = wide > high ? wide : high;

    for (int i = 0; i <= steps; i += every)
        set_dot(dots, x0 + part_of(x1 - x0, i, steps), y0 + part_of(y1 - y0, i, steps));
}

/* Dots 1 to 6 of braille run down the columns of the upper three rows, 7 and 8 lie below. */
unsigned dots_braille(dots_mask mask)
{
    static const unsigned char bits[] = {0x01, 0x08, 0x02, 0x10, 0x04, 0x20, 0x40, 0x80};
    unsigned code = 0x2800;

    for (unsigned i = 0; i < 8; i++)
        code |= mask >> i & 1 ? bits[i] : 0;
    return mask ? code : ' ';
}

/* ---- plain ---- */

/* Where one column of dots has some: rows from the top; none: top > bottom. */
struct extent {
    int top, bottom;
};

static struct extent extent_of(dots_mask mask, int column)
{
    struct extent extent = {DOTS_DOWN, -1};

    for (int row = 0; row < DOTS_DOWN; row++) {
        if (!(mask >> (DOTS_ACROSS * row + column) & 1))
            continue;
        extent.bottom = row;
        if (extent.top > row)
            extent.top = row;
    }
    return extent;
}

static bool is_none(struct extent extent)
{
    return extent.top > extent.bottom;
}

/* One column: a line up, or a dot at some height. */
static unsigned plain_column(struct extent extent)
{
    if (extent.bottom - extent.top > 1)
        return '|';
    return extent.bottom <= 1 ? '\'' : extent.top >= 2 ? '.' : ':';
}

/* Both columns: a line across at some height, or one that falls or rises. */
static unsigned plain_across(struct extent left, struct extent right)
{
    int sum_left = left.top + left.bottom;
    int sum_right = right.top + right.bottom;
    bool tall = left.bottom - left.top > 1 || right.bottom - right.top > 1;

    if (abs(sum_left - sum_right) > 2)
        return sum_left > sum_right ? '/' : '\\';
    if (tall)
        return '+';
    return sum_left + sum_right <= 2 ? '"' : sum_left + sum_right >= 10 ? '_' : '-';
}

unsigned dots_plain(dots_mask mask)
{
    struct extent left = extent_of(mask, 0);
    struct extent right = extent_of(mask, 1);

    if (is_none(left) && is_none(right))
        return ' ';
    if (is_none(left) || is_none(right))
        return plain_column(is_none(left) ? right : left);
    return plain_across(left, right);
}
