/*
 * Tufting fields: how much cloth the pulls take in, how many buttons, and what they use up.
 *
 * The model of TRADE 2.9 (b): a deep field takes one pull depth for each diamond width and height,
 * and one half more at each border, so that m diamonds take m + 1. Buttons in uncut foam take a
 * fixed bit for each space. Both are guides: the maker tries one diamond first.
 */
#include "plan/cover.h"

#include "plan/geometry.h"

/* Foam on the tufted face, all layers of it. */
static int64_t foam_depth(const struct model *model, const struct layer *cover)
{
    int64_t depth = 0;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *foam = &model->layers.at[i];
        const struct stock *stock = MODEL_FIND(model, stock, foam->stock);

        if (foam->kind != LAYER_FOAM || foam->box != cover->box || foam->group != cover->group ||
            foam->side != cover->side)
            continue;
        if (foam->thickness > 0)
            depth += foam->thickness;
        else if (stock)
            depth += stock->thickness;
    }
    return depth;
}

static int64_t pull_depth(const struct planning *planning, const struct spread *spread)
{
    int64_t foam = foam_depth(planning->model, spread->layer);
    int64_t rest = planning->value[TRADE_TUFT_PULL_REST];

    if (spread->tufting->pull > 0)
        return spread->tufting->pull;
    return foam > rest ? foam - rest : 0;
}

int64_t tuft_extra(const struct planning *planning, const struct spread *spread, bool across)
{
    const struct tufting *tufting = spread->tufting;
    int64_t each;

    if (!tufting)
        return 0;
    if (tufting->pattern == PATTERN_SHALLOW)
        each = planning->value[TRADE_TUFT_EXTRA_SHALLOW];
    else if (whole_share(pull_depth(planning, spread),
                         planning->value[TRADE_TUFT_EXTRA_PER_DIAMOND], 1000000, &each))
        return 0;
    return ((across ? tufting->across : tufting->down) + 1) * each;
}

int64_t tuft_count(const struct tufting *tufting)
{
    return tuft_buttons(tufting->across, tufting->down, tufting->pattern == PATTERN_DIAMOND);
}

/* Circles of cloth for the buttons, cut as one block of squares. */
static void cut_button_cloth(struct planning *planning, struct spread *spread, int64_t buttons)
{
    const struct stock *button = MODEL_FIND(planning->model, stock, spread->tufting->button);
    int64_t diameter =
        button && button->diameter > 0 ? button->diameter : planning->value[TRADE_BUTTON_DIAMETER];
    int64_t circle;
    int64_t columns = 1;

    if (whole_share(diameter, planning->value[TRADE_BUTTON_CLOTH], 1000000, &circle))
        return;
    while (columns * columns < buttons)
        columns++;
    spread_piece(planning, spread, "button cloth", 1, columns * circle,
                 whole_divide_up(buttons, columns) * circle, true);
}

void tuft_consume(struct planning *planning, struct spread *spread)
{
    const struct tufting *tufting = spread->tufting;
    int64_t buttons;

    if (!tufting)
        return;
    buttons = tuft_count(tufting);
    if (spread->stock->kind == STOCK_CLOTH)
        cut_button_cloth(planning, spread, buttons);
    spread_consume(planning, spread, STOCK_BUTTON, tufting->button, QUANTITY_COUNT, buttons,
                   "buttons");
    spread_consume(planning, spread, STOCK_CORD, tufting->cord, QUANTITY_LENGTH,
                   buttons * planning->value[TRADE_TUFT_CORD], "tufting cord");
}
