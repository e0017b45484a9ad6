/*
 * Cloth off a roll: whether a piece lies railroaded, and how one that is wider than the roll is
 * sewn from a centre and equal sides.
 */
#include "plan/cover.h"
#include "plan/cover_sums.h"
#include "plan/findings.h"

#include <stdio.h>

bool stock_turns(const struct stock *stock)
{
    return !stock->pile && stock->repeat_along == 0 && stock->repeat_across == 0;
}

static bool is_hidden(const struct layer *layer)
{
    return layer->kind == LAYER_LINING || layer->kind == LAYER_DUST_COVER;
}

/* Usable width; 0 where the stock says none, or none from which anything could be sewn. */
static int64_t usable(const struct planning *planning, const struct stock *stock, int64_t cut)
{
    int64_t seams = 4 * planning->value[TRADE_SEAM_ALLOWANCE];
    int64_t too_narrow = seams + planning->value[TRADE_SIDE_STRIP_MIN];

    if (stock->width <= too_narrow || cut > (stock->width - seams) * PARTS_AT_MOST)
        return 0;
    return stock->width;
}

/* The maker's word decides for cloth that is seen; what is hidden lies as saves a seam. */
static bool railroaded(const struct spread *spread, int64_t roll, int64_t width, int64_t height)
{
    const struct stock *stock = spread->stock;

    if (!stock->railroad)
        return false;
    if (spread->layer->direction == DIRECTION_ACROSS)
        return true;
    return is_hidden(spread->layer) && stock_turns(stock) && width > roll && height <= roll;
}

static void tell_widths(struct planning *planning, const struct spread *spread, int count,
                        int64_t cut, int64_t roll)
{
    struct finding *finding;

    if (spread->layer->seams) {
        finding = finding_add(planning, FINDING_CLOTH_WIDTHS, ENTITY_layer, spread->layer->key);
        argument_quantity(finding, 0, QUANTITY_COUNT, count);
        return;
    }
    finding = finding_add(planning, FINDING_CLOTH_NO_SEAM, ENTITY_layer, spread->layer->key);
    argument_length(finding, 0, cut);
    argument_length(finding, 1, roll);
}

/* Strips of one width: upright on the roll, or lying when the piece is railroaded. */
static void add_strips(struct planning *planning, struct spread *spread, const char *name,
                       int count, int64_t across_roll, int64_t along_roll, bool across)
{
    size_t first = planning->plan->pieces.count;
    bool turns = is_hidden(spread->layer) && stock_turns(spread->stock);

    if (across)
        spread_piece(planning, spread, name, count, along_roll, across_roll, turns);
    else
        spread_piece(planning, spread, name, count, across_roll, along_roll, turns);
    for (size_t i = first; i < planning->plan->pieces.count; i++)
        planning->plan->pieces.at[i].across = across;
}

struct widths spread_cloth(struct planning *planning, struct spread *spread, const char *name,
                           int64_t width, int64_t height, bool *ret_across)
{
    int64_t roll = usable(planning, spread->stock, width > height ? width : height);
    bool across = roll > 0 && railroaded(spread, roll, width, height);
    int64_t cut = across ? height : width;
    int64_t along = across ? width : height;
    struct widths widths = {.count = 1, .centre = cut};
    char part[40];

    if (roll > 0)
        widths = widths_split(cut, roll, planning->value[TRADE_SEAM_ALLOWANCE],
                              planning->value[TRADE_SIDE_STRIP_MIN], spread->stock->repeat_across);
    if (widths.count > 1)
        tell_widths(planning, spread, widths.count, cut, roll);
    add_strips(planning, spread, name, 1, widths.centre, along, across);
    snprintf(part, sizeof part, "%s width", name);
    if (widths.inner > 0)
        add_strips(planning, spread, part, 2 * widths.inner, widths.full, along, across);
    snprintf(part, sizeof part, "%s side", name);
    if (widths.side > 0)
        add_strips(planning, spread, part, 2, widths.side, along, across);
    *ret_across = across;
    return widths;
}

static int64_t repeats_of(const struct stock *stock, int64_t along)
{
    return stock->repeat_along > 0 ? drop_repeats(along, stock->repeat_along) : 0;
}

void cut_cloth(struct planning *planning, struct spread *spread, const char *name, int64_t width,
               int64_t height)
{
    bool across;
    struct widths widths = spread_cloth(planning, spread, name, width, height, &across);
    struct cover *cover = spread_cover(planning, spread, width, height);

    cover->widths = widths.count;
    cover->side_strip = widths.side;
    cover->seam = widths.seam;
    cover->railroaded = across;
    cover->repeats = repeats_of(spread->stock, across ? width : height);
}
