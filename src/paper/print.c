#include "paper/print.h"

#include "base/text.h"

#include <stdio.h>

#define LENGTH_YARD (36 * LENGTH_INCH)
#define LENGTH_METRE (1000 * LENGTH_MM)

/* 16,000 US fluid ounces are so many cubic millimetres, exactly (quantity.c). */
#define OUNCES 16000
#define OUNCES_IN_MM3 473176473

struct printed print_quantity(const struct plan *plan, enum quantity quantity, int64_t value)
{
    struct printed printed;
    if (quantity == QUANTITY_MASS)
        quantity_print_weight(printed.at, model_units(plan->facts), value);
    else
        quantity_print_unit(printed.at, quantity, model_units(plan->facts), value);
    return printed;
}

struct printed print_length_unit(const struct plan *plan, int64_t length)
{
    return print_quantity(plan, QUANTITY_LENGTH, length);
}

struct printed print_length(const struct plan *plan, int64_t length)
{
    struct printed printed;
    quantity_print(printed.at, QUANTITY_LENGTH, model_units(plan->facts), length);
    return printed;
}

struct printed print_marked(int64_t length, enum units units)
{
    struct printed printed;
    quantity_print(printed.at, QUANTITY_LENGTH, units, quantity_on_tape(units, length));
    return printed;
}

struct printed print_both(const struct plan *plan, int64_t length)
{
    bool inch = model_units(plan->facts) == UNITS_INCH;
    struct printed printed;
    snprintf(printed.at, sizeof printed.at, "%.15s %s (%.15s %s)",
             print_marked(length, inch ? UNITS_INCH : UNITS_MM).at, inch ? "in" : "mm",
             print_marked(length, inch ? UNITS_MM : UNITS_INCH).at, inch ? "mm" : "in");
    return printed;
}

struct printed print_money_in(const struct model *model, int64_t money)
{
    struct printed printed;
    money_print(printed.at, model_currency(model), money);
    return printed;
}

struct printed print_money(const struct plan *plan, int64_t money)
{
    return print_money_in(plan->facts, money);
}

struct printed print_roll(const struct plan *plan, int64_t length)
{
    bool inch = model_units(plan->facts) == UNITS_INCH;
    int64_t hundredths = whole_divide_up(100 * length, inch ? LENGTH_YARD : LENGTH_METRE);
    struct printed printed;
    snprintf(printed.at, sizeof printed.at, "%lld.%02lld %s", (long long)(hundredths / 100),
             (long long)(hundredths % 100), inch ? "yd" : "m");
    return printed;
}

/* Glue as near as anybody measures it, rounded up: a millilitre, or a tenth of an ounce. */
static struct printed print_volume(const struct plan *plan, int64_t volume)
{
    struct printed printed;
    int64_t tenths = 0;
    if (model_units(plan->facts) != UNITS_INCH)
        return print_quantity(plan, QUANTITY_VOLUME, 1000 * whole_divide_up(volume, 1000));
    (void)whole_share(volume, 10 * OUNCES, OUNCES_IN_MM3, &tenths);
    snprintf(printed.at, sizeof printed.at, "%lld.%lld oz", (long long)(tenths / 10),
             (long long)(tenths % 10));
    return printed;
}

/* Nail strip in pieces of 30 in, say, and not card strip on a reel. */
static bool sold_in_pieces(const struct model *facts, int64_t stock)
{
    const struct stock *found = MODEL_FIND(facts, stock, stock);

    for (size_t i = 0; found && found->kind == STOCK_STRIP && i < facts->offers.count; i++) {
        const struct offer *offer = &facts->offers.at[i];
        if (offer->stock == stock && offer->length > 0 && offer->length < LENGTH_YARD)
            return true;
    }
    return false;
}

struct printed print_sold(const struct plan *plan, int64_t stock, enum quantity quantity,
                          int64_t amount)
{
    int64_t grain = quantity_tape_grain(model_units(plan->facts));

    if (quantity == QUANTITY_VOLUME)
        return print_volume(plan, amount);
    if (quantity != QUANTITY_LENGTH)
        return print_quantity(plan, quantity, amount);
    if (amount >= LENGTH_YARD && !sold_in_pieces(plan->facts, stock))
        return print_roll(plan, amount);
    return print_length_unit(plan, grain * whole_divide_up(amount, grain));
}

struct printed print_minutes(int64_t minutes)
{
    int64_t whole = whole_divide_even(minutes, 1000);
    struct printed printed;
    if (whole < 60)
        snprintf(printed.at, sizeof printed.at, "%lld min", (long long)whole);
    else
        snprintf(printed.at, sizeof printed.at, "%lld h %02lld", (long long)(whole / 60),
                 (long long)(whole % 60));
    return printed;
}

const char *print_box(const struct plan *plan, int64_t box)
{
    const struct box *found = MODEL_FIND(plan->facts, box, box);
    return found ? found->name : "";
}

struct printed print_word(const char *word)
{
    struct printed printed;
    snprintf(printed.at, sizeof printed.at, "%s", word);
    text_blank(printed.at);
    return printed;
}

struct printed print_layer(const struct plan *plan, int64_t layer)
{
    const struct layer *found = MODEL_FIND(plan->facts, layer, layer);
    return print_word(found ? words_layer.at[found->kind].name : "");
}

const char *print_hand(const struct plan *plan, int64_t box)
{
    static const char *const words[] = {
        [HAND_NONE] = "", [HAND_LEFT] = " (left)", [HAND_RIGHT] = " (right)"};

    return words[plan_hand(plan, box)];
}
