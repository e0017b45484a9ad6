/*
 * What each way to fix an outside back, and to make a trim, uses up, pro rata of what the shop
 * asks: the maker weighs it against the minutes. Cloth counts by its area and what is bought over
 * where nothing is laid out.
 */
#include "plan/buy.h"

#include <assert.h>

struct sum {
    int64_t price;
    bool priced;
};

/* Adds the share of an offer's price that an amount takes; the sum is not known where nothing is on
 * offer. */
static void add_share(const struct planning *planning, struct sum *sum, int64_t stock,
                      enum quantity measure, int64_t amount)
{
    const struct need need = {.stock = stock, .measure = measure};
    int64_t price;

    if (amount <= 0)
        return;
    if (buy_share(planning, &need, amount, &price))
        sum->price += price;
    else
        sum->priced = false;
}

static void price_back(const struct planning *planning, struct back_way *way)
{
    const struct model *model = planning->model;
    const struct layer *layer = MODEL_FIND(model, layer, way->layer);
    const struct stock *cloth = MODEL_FIND(model, stock, layer->stock);
    int64_t length = way->height;
    int64_t thread = way->stitched;
    struct sum sum = {0, true};

    assert(cloth);
    if (cloth->width > 0)
        (void)whole_share(way->height, way->width, cloth->width, &length);
    length = with_reserve(length, planning->value[TRADE_CLOTH_ALLOW_BY_AREA]);
    (void)whole_share(way->stitched, planning->value[TRADE_THREAD_PER_SEAM], 1000000, &thread);
    add_share(planning, &sum, cloth->key, QUANTITY_LENGTH, length);
    add_share(planning, &sum, model_stock_of(model, STOCK_STRIP, NATURE_CARD), QUANTITY_LENGTH,
              way->card);
    add_share(planning, &sum, model_stock_of(model, STOCK_STRIP, NATURE_TACK_STRIP),
              QUANTITY_LENGTH, way->strip);
    add_share(planning, &sum, model_stock_of(model, STOCK_CORD, NATURE_STITCHING), QUANTITY_LENGTH,
              thread);
    add_share(planning, &sum, staple_for(model, way->leg), QUANTITY_COUNT, way->staples);
    way->price = sum.price;
    way->priced = sum.priced;
}

static void price_trim(const struct planning *planning, struct trim_way *way)
{
    struct sum sum = {0, true};

    add_share(planning, &sum, way->nail_stock, QUANTITY_COUNT,
              with_reserve(way->nails, planning->value[TRADE_NAIL_WASTE]));
    add_share(planning, &sum, way->strip_stock, QUANTITY_LENGTH,
              with_reserve(way->strip, planning->value[TRADE_CARD_WASTE]));
    way->price = sum.price;
    way->priced = sum.priced;
}

void buy_ways(struct planning *planning)
{
    for (size_t i = 0; i < planning->plan->back_ways.count; i++)
        price_back(planning, &planning->plan->back_ways.at[i]);
    for (size_t i = 0; i < planning->plan->trim_ways.count; i++)
        price_trim(planning, &planning->plan->trim_ways.at[i]);
}
