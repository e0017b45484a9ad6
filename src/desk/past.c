/*
 * What offers cost before an edit. An offer is known by its key, or by what it offers: a workshop
 * that is taken in brings its offers anew.
 */
#include "desk/internal.h"

#include <string.h>

static bool same_goods(const struct offer *a, const struct offer *b)
{
    return a->stock == b->stock && a->length == b->length && a->width == b->width &&
           a->pack == b->pack && a->volume == b->volume && strcmp(a->supplier, b->supplier) == 0;
}

/* What has become of an offer; NULL where it is gone. */
static const struct offer *offer_now(const struct model *draft, const struct offer *before)
{
    const struct offer *now = MODEL_FIND(draft, offer, before->key);

    for (size_t i = 0; i < draft->offers.count && !now; i++) {
        if (same_goods(&draft->offers.at[i], before))
            now = &draft->offers.at[i];
    }
    return now;
}

static bool is_kept(const struct model *draft, const struct offer *before)
{
    for (size_t i = 0; i < draft->past_prices.count; i++) {
        const struct past_price *past = &draft->past_prices.at[i];
        const struct offer offer = {.stock = past->stock,
                                    .length = past->length,
                                    .width = past->width,
                                    .pack = past->pack,
                                    .volume = past->volume,
                                    .supplier = past->supplier};
        if (same_goods(&offer, before) && past->price == before->price &&
            strcmp(past->dated, before->dated) == 0)
            return true;
    }
    return false;
}

static void keep(struct model *draft, const struct offer *before)
{
    struct past_price *past = MODEL_ADD(draft, past_price);
    past->stock = before->stock;
    past->length = before->length;
    past->width = before->width;
    past->pack = before->pack;
    past->volume = before->volume;
    past->price = before->price;
    past->supplier = arena_text(draft->arena, before->supplier);
    past->dated = arena_text(draft->arena, before->dated);
}

void past_keep_prices(const struct model *before, struct model *draft)
{
    for (size_t i = 0; i < before->offers.count; i++) {
        const struct offer *offer = &before->offers.at[i];
        const struct offer *now = offer_now(draft, offer);
        if (now && offer->price > 0 && now->price != offer->price && !is_kept(draft, offer))
            keep(draft, offer);
    }
}
