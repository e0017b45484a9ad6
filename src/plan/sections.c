/*
 * What a stick or a sheet measures, and how a stick lies in a box.
 */
#include "plan/wood.h"

#include <assert.h>
#include <ctype.h>

/* Softwood as dressed, by nominal inches, in 64ths (American Softwood Lumber Standard, PS 20). */
struct dressed {
    int nominal;
    int size;
};

static const struct dressed dressed_sizes[] = {
    {1, 48}, {2, 96}, {3, 160}, {4, 224}, {6, 352}, {8, 464}, {10, 592}, {12, 720},
};

static int64_t dressed_size(int nominal)
{
    for (size_t i = 0; i < sizeof dressed_sizes / sizeof *dressed_sizes; i++)
        if (dressed_sizes[i].nominal == nominal)
            return dressed_sizes[i].size * LENGTH_64TH;
    return 0;
}

/* Up to two digits; a nominal size has no more, so that what follows is none. */
static const char *read_small(const char *at, int *ret_number)
{
    *ret_number = 0;
    for (int digits = 0; digits < 2 && isdigit((unsigned char)*at); digits++)
        *ret_number = *ret_number * 10 + (*at++ - '0');
    return at;
}

/* "2x3" and what may follow a size: the end, a blank, a comma. False for any other name. */
static bool read_nominal(const char *name, int *ret_thin, int *ret_wide)
{
    const char *at = read_small(name, ret_thin);

    if (*at != 'x' && *at != 'X')
        return false;
    at = read_small(at + 1, ret_wide);
    return !*at || isspace((unsigned char)*at) || *at == ',';
}

static struct section nominal_section(const char *name)
{
    struct section none = {0, 0};
    int thin, wide;

    if (!read_nominal(name, &thin, &wide))
        return none;
    struct section found = {dressed_size(thin), dressed_size(wide)};
    return found.thin && found.wide ? found : none;
}

int64_t stick_board_feet(const char *name, int64_t length)
{
    int thin, wide;

    if (!read_nominal(name, &thin, &wide) || !dressed_size(thin) || !dressed_size(wide))
        return 0;
    return whole_divide_even(1000 * thin * wide * length, 144 * LENGTH_INCH);
}

struct section stick_section(const struct model *model, int64_t stock)
{
    const struct stock *stick = MODEL_FIND(model, stock, stock);
    struct section section = {0, 0};

    if (!stick || stick->kind != STOCK_STICK)
        return section;
    section = (struct section){stick->thickness, stick->width};
    if (!section.thin || !section.wide)
        section = nominal_section(stick->name);
    if (section.thin > section.wide)
        section = (struct section){section.wide, section.thin};
    return section;
}

int64_t stock_wood(const struct model *model, int64_t stock)
{
    const struct stock *wood = MODEL_FIND(model, stock, stock);

    return wood ? wood->wood : WOOD_SOFT;
}

int64_t sheet_thickness(const struct model *model, int64_t stock)
{
    const struct stock *sheet = MODEL_FIND(model, stock, stock);

    if (!sheet)
        return 0;
    return sheet->thickness ? sheet->thickness : sheet->thickness_sold;
}

/* On edge the narrow side shows in the frame's plane and the wide side runs along its normal. A
 * member that itself runs along the normal shows its narrow side to the left and right. */
struct vector section_across(const struct box *box, struct section section, int64_t setting,
                             int64_t axis)
{
    int normal = frame_normal(box);
    int deep = axis == normal ? (normal == AXIS_Z ? AXIS_Y : AXIS_Z) : normal;
    struct vector across = {0};

    assert(axis >= 0 && axis < AXIS_COUNT);
    for (int i = 0; i < AXIS_COUNT; i++) {
        bool runs_in = i == deep;

        if (i != axis)
            vector_set(&across, i,
                       (setting == SET_ON_EDGE) == runs_in ? section.wide : section.thin);
    }
    return across;
}

/* ---- spans ---- */

struct span_row {
    int64_t thickness; /* as sold, in 64ths */
    enum trade by_use[USE_COUNT];
};

#define SPAN_ROW(sixtyfourths, name)                                                           \
    {                                                                                          \
        sixtyfourths,                                                                          \
        {                                                                                      \
            [USE_COVERING] = TRADE_SPAN_COVERING_##name,                                       \
            [USE_STRUCTURE] = TRADE_SPAN_COVERING_##name, [USE_BACK] = TRADE_SPAN_BACK_##name, \
            [USE_SEAT] = TRADE_SPAN_SEAT_##name, [USE_DECK] = TRADE_SPAN_DECK_##name           \
        }                                                                                      \
    }

static const struct span_row spans[] = {
    SPAN_ROW(48, 3_4), SPAN_ROW(40, 5_8), SPAN_ROW(32, 1_2), SPAN_ROW(24, 3_8), SPAN_ROW(16, 1_4),
};

int64_t span_allowed(const int64_t *value, int64_t use, int64_t thickness)
{
    assert(use >= 0 && use < USE_COUNT);
    for (size_t i = 0; i < sizeof spans / sizeof *spans; i++)
        if (thickness + SHEET_UNDERSIZE >= spans[i].thickness * LENGTH_64TH)
            return value[spans[i].by_use[use]];
    return 0;
}
