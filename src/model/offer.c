#include "model/offer.h"

#include "base/whole.h"

#include <assert.h>

#define WHOLE 1000000 /* a ratio of 1: rates of tax are millionths */

const char *offer_supplier(const struct model *model, const struct offer *offer)
{
    const struct stock *stock = MODEL_FIND(model, stock, offer->stock);

    if (*offer->supplier || !stock)
        return offer->supplier;
    return stock->supplier;
}

int64_t offer_tax(const struct model *model, const struct offer *offer)
{
    if (offer && offer->taxed == TAXED_FREE)
        return 0;
    return offer && offer->tax ? offer->tax : model->workshop.tax;
}

int64_t offer_price(const struct model *model, const struct offer *offer)
{
    int64_t price = offer->price;

    if (offer->taxed == TAXED_INCLUDED)
        (void)whole_share(offer->price, WHOLE, WHOLE + offer_tax(model, offer), &price);
    return price;
}

/* Rounded half to even, as the sum of the tax is. */
static int64_t add_on_top(struct till *till, int64_t taxed)
{
    int64_t tax = whole_divide_down(taxed, WHOLE);
    int64_t rest = taxed - tax * WHOLE;

    if (rest > WHOLE / 2 || (rest == WHOLE / 2 && (till->tax + tax) % 2 != 0)) {
        tax++;
        rest -= WHOLE;
    }
    assert(rest >= -WHOLE / 2 && rest <= WHOLE / 2);
    till->carry = rest;
    return whole_add(till->tax, tax, &till->tax) ? 0 : tax;
}

int64_t till_line(struct till *till, const struct offer *offer, int64_t price, int64_t stated)
{
    int64_t taxed;

    if (offer && offer->taxed == TAXED_INCLUDED)
        return stated;
    if (whole_multiply(price, offer_tax(till->model, offer), &taxed) ||
        whole_add(taxed, till->carry, &taxed))
        return price;
    return price + add_on_top(till, taxed);
}

static bool is_of_size(const struct bought *bought, const struct offer *offer)
{
    return offer->stock == bought->stock && offer->length == bought->length &&
           offer->width == bought->width;
}

bool bought_is_of(const struct model *model, const struct bought *bought, const struct offer *offer)
{
    if (!offer || !is_of_size(bought, offer))
        return false;
    if (bought->pack == 0 || bought->length == 0 || bought->pack == offer->pack)
        return true;
    for (size_t i = 0; i < model->offers.count; i++)
        if (is_of_size(bought, &model->offers.at[i]) && model->offers.at[i].pack == bought->pack)
            return false;
    return true;
}

int64_t bought_packs(const struct bought *bought, const struct offer *offer)
{
    if (bought->pack == 0)
        return bought->packs;
    return whole_divide_up(bought->packs * bought->pack, offer ? offer->pack : 1);
}
