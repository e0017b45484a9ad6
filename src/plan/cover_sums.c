#include "plan/cover_sums.h"

#include "base/quantity.h"

#include <assert.h>

static int64_t smaller(int64_t a, int64_t b)
{
    return a < b ? a : b;
}

static int64_t larger(int64_t a, int64_t b)
{
    return a > b ? a : b;
}

int widths_least(int64_t cut, int64_t usable, int64_t allowance)
{
    assert(usable > 2 * allowance);
    if (cut <= usable)
        return 1;
    return (int)whole_divide_up(cut - 2 * allowance, usable - 2 * allowance);
}

int64_t widths_matched(int64_t usable, int64_t allowance, int64_t repeat)
{
    int64_t finished = usable - 2 * allowance;

    assert(finished > 0);
    if (repeat <= 0 || repeat > finished)
        return usable;
    return finished / repeat * repeat + 2 * allowance;
}

static int widths_of(const struct widths *widths, int64_t usable)
{
    return 1 + 2 * widths->inner + (widths->side + widths->side_right <= usable ? 1 : 2);
}

struct widths widths_split(int64_t cut, int64_t usable, int64_t allowance, int64_t least_side,
                           int64_t repeat)
{
    struct widths widths = {.count = 1, .centre = cut};
    int64_t full = widths_matched(usable, allowance, repeat);
    int64_t rest;

    assert(cut >= 0 && allowance >= 0);
    if (widths_least(cut, usable, allowance) == 1)
        return widths;
    widths.full = full;
    for (rest = cut + 4 * allowance - full; rest > 2 * usable; rest -= 2 * (full - 2 * allowance))
        widths.inner++;
    widths.side = whole_divide_up(rest, 2);
    widths.centre = full;
    if (widths.side < least_side) {
        widths.centre -= 2 * (least_side - widths.side);
        widths.side = least_side;
    }
    widths.side_right = widths.side;
    widths.seam = widths.centre / 2 - allowance;
    widths.count = widths_of(&widths, usable);
    return widths;
}

bool widths_draw_in(struct widths *widths, int64_t left, int64_t right, int64_t usable,
                    int64_t allowance, int64_t least_side, int64_t seam)
{
    int64_t inner = widths->inner * (widths->full - 2 * allowance);
    int64_t side = left - seam - inner + allowance;
    int64_t side_right = right - seam - inner + allowance;

    assert(widths->count > 1);
    if (seam <= 0 || seam > widths->seam || smaller(side, side_right) < least_side ||
        larger(side, side_right) > usable)
        return false;
    widths->seam = seam;
    widths->centre = 2 * (seam + allowance);
    widths->side = side;
    widths->side_right = side_right;
    widths->count = widths_of(widths, usable);
    return true;
}

struct widths widths_about(int64_t *left, int64_t *right, int64_t usable, int64_t allowance,
                           int64_t least_side, int64_t repeat)
{
    int64_t cut = *left + *right;
    struct widths widths = widths_split(cut, usable, allowance, least_side, repeat);
    struct widths drawn = widths;
    int64_t inner = widths.inner * (widths.full - 2 * allowance);
    int64_t seam = smaller(*left, *right) - inner + allowance - least_side;

    if (widths.count == 1)
        return widths;
    seam = smaller(seam, widths.seam);
    if (repeat > 0 && repeat <= usable - 2 * allowance)
        seam = whole_divide_down(2 * seam, repeat) * repeat / 2;
    if (widths_draw_in(&drawn, *left, *right, usable, allowance, least_side, seam) &&
        drawn.count <= widths.count)
        return drawn;
    *left = cut / 2;
    *right = cut - *left;
    return widths;
}

bool widths_in_two(struct widths *widths, int64_t first, int64_t second, int64_t usable,
                   int64_t allowance, int64_t least_side)
{
    int64_t one = first + allowance;
    int64_t other = second + allowance;

    if (smaller(one, other) < least_side || larger(one, other) > usable)
        return false;
    *widths = (struct widths){.count = 2, .centre = larger(one, other), .full = usable};
    if (one < other)
        widths->side = one;
    else
        widths->side_right = other;
    return true;
}

int widths_seams(const struct widths *widths)
{
    return 2 * widths->inner + widths->under + (widths->side > 0) + (widths->side_right > 0);
}

int64_t drop_repeats(int64_t length, int64_t repeat)
{
    assert(length >= 0 && repeat > 0);
    return whole_divide_up(length, repeat);
}

struct slabs slabs_cover(int64_t width, int64_t height, int64_t length, int64_t breadth)
{
    assert(length > 0 && breadth > 0);
    struct slabs along = {length, breadth, whole_divide_up(width, length),
                          whole_divide_up(height, breadth)};
    struct slabs upright = {breadth, length, whole_divide_up(width, breadth),
                            whole_divide_up(height, length)};

    return upright.columns * upright.rows < along.columns * along.rows ? upright : along;
}

int64_t welt_strip(int64_t cord, int64_t allowance, int64_t step, int64_t more)
{
    assert(step > 0);
    /* pi as 355/113: off by less than a tenth of a millionth, and never under */
    int64_t strip = whole_divide_up(cord * 355, 113) + 2 * allowance + more;

    return whole_divide_up(strip, step) * step;
}

int64_t welt_strips(int64_t length, int64_t usable)
{
    assert(usable > 0);
    return whole_divide_up(length, usable);
}

#define MILLION 1000000

int64_t bias_length(int64_t width, int64_t height, int64_t strip)
{
    assert(strip > 0);
    return whole_divide_down(width * height, strip);
}

/* The area that strips take of the cloth, rounded up; in two parts, for their product with a
 * million would not fit. */
static int64_t bias_area(int64_t length, int64_t strip, int64_t share)
{
    int64_t area = length * strip;

    assert(length >= 0 && strip > 0 && share > 0);
    return area / share * MILLION + whole_divide_up(area % share * MILLION, share);
}

int64_t bias_square(int64_t length, int64_t strip, int64_t share, int64_t step)
{
    int64_t area = bias_area(length, strip, share);
    int64_t side = whole_root(area);

    return whole_divide_up(side * side < area ? side + 1 : side, step) * step;
}

int64_t bias_roll(int64_t length, int64_t strip, int64_t share, int64_t usable, int64_t step)
{
    assert(usable > 0 && step > 0);
    return whole_divide_up(whole_divide_up(bias_area(length, strip, share), usable), step) * step;
}

int64_t bias_longest(int64_t usable)
{
    assert(usable > 0);

    return whole_root(2 * usable * usable);
}

int64_t bias_side(int64_t longest, int64_t step)
{
    int64_t side = whole_root(longest * longest / 2);

    assert(step > 0);
    return whole_divide_up(side + 1, step) * step;
}

int64_t web_strips(int64_t inside, int64_t strip, int64_t gap)
{
    int64_t strips;

    assert(inside >= 0 && strip + gap > 0);
    strips = whole_divide_even(inside + gap, strip + gap);
    return strips > 0 ? strips : 1;
}

int64_t tuft_buttons(int64_t across, int64_t down, bool diamond)
{
    if (diamond)
        return (down + 1) * across + down * (across + 1);
    return (across + 1) * (down + 1);
}

int64_t tuft_least(int64_t space, int64_t depth)
{
    assert(space >= 0 && depth >= 0);
    return whole_root(space * space + 4 * depth * depth) - space;
}

int64_t nail_spaces(int64_t length, int64_t pitch)
{
    int64_t spaces;

    assert(length >= 0 && pitch > 0);
    spaces = whole_divide_even(length, pitch);
    return spaces > 0 ? spaces : 1;
}

int64_t strip_nails(int64_t heads, int64_t every)
{
    assert(heads >= 0 && every > 0);
    return whole_divide_up(heads, every) + 1;
}

int64_t staples_open(int64_t length, int64_t pitch)
{
    return length > 0 ? whole_divide_up(length, pitch) + 1 : 0;
}

int64_t staples_loop(int64_t length, int64_t pitch)
{
    return length > 0 ? whole_divide_up(length, pitch) : 0;
}

int64_t staples_between(int64_t count, int64_t length, bool loop, int64_t from, int64_t to)
{
    int64_t gaps = loop ? count : count - 1;
    int64_t before_to;
    int64_t before_from;

    assert(0 <= from && from <= to && to <= length);
    if (count <= 0 || from == to)
        return 0;
    before_from = whole_divide_up(from * gaps, length);
    before_to = whole_divide_up(to * gaps, length);
    return before_to - before_from + (!loop && to == length);
}

int64_t leg_from(const int64_t *legs, size_t count, int64_t need)
{
    assert(count > 0);
    for (size_t i = 0; i < count; i++)
        if (legs[i] >= need)
            return legs[i];
    return legs[count - 1];
}
