/*
 * What was bought is a fact: it stands on the shopping list and in the cost, whatever the plan has
 * come to need since. A purchase remembers its stock and the size of one, not the offer; so packs
 * are set against the lines of that stock, size and pack all together, and only what is over is
 * added. What is added is stock, none of it used up.
 */
#include "plan/buy.h"

#include "model/offer.h"

#include <assert.h>

/* How much an offer is like what was bought: by its pack first, then by having a price. */
static int likeness(const struct offer *offer, const struct bought *bought)
{
    return (offer->pack == bought->pack ? 2 : 0) + (offer->price > 0 ? 1 : 0);
}

const struct offer *bought_offer(const struct model *model, const struct bought *bought)
{
    const struct offer *found = NULL;

    for (size_t i = 0; i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];

        if (offer->stock == bought->stock && offer->length == bought->length &&
            offer->width == bought->width &&
            (!found || likeness(offer, bought) > likeness(found, bought)))
            found = offer;
    }
    return found;
}

/* Entries of one size and pack, which count on the same lines. */
static bool same_goods(const struct model *model, const struct bought *a, const struct bought *b)
{
    return a->stock == b->stock && a->length == b->length && a->width == b->width &&
           (a->pack == b->pack || a->length == 0 ||
            bought_offer(model, a) == bought_offer(model, b));
}

static bool is_line_of(const struct model *model, const struct purchase *line,
                       const struct bought *bought)
{
    const struct offer *offer = MODEL_FIND(model, offer, line->offer);

    return offer ? bought_is_of(model, bought, offer)
                 : line->stock == bought->stock && bought->length == 0 && bought->width == 0;
}

/* All packs, as the offer has them, that were bought of the goods that entry `first` names; 0 when
 * an entry before it names them too. */
static int64_t packs_bought(const struct model *model, size_t first, const struct offer *offer)
{
    assert(first < model->boughts.count);

    const struct bought *goods = &model->boughts.at[first];
    int64_t packs = 0;

    for (size_t i = 0; i < model->boughts.count; i++) {
        if (!same_goods(model, &model->boughts.at[i], goods))
            continue;
        if (i < first)
            return 0;
        packs += bought_packs(&model->boughts.at[i], offer);
    }
    return packs;
}

/* Whether a stock stands on the list by length, as buy_cut.c has settled. */
static bool is_by_length(const struct plan *plan, int64_t stock)
{
    for (size_t i = 0; i < plan->purchases.count; i++)
        if (plan->purchases.at[i].stock == stock && plan->purchases.at[i].length > 0)
            return true;
    return false;
}

static void add_packs(struct planning *planning, struct purchase *line, const struct offer *offer,
                      int64_t packs)
{
    bool told = line->packs > 0 && !line->priced;
    int64_t value = line->value;

    line->packs += packs;
    if (told)
        return;
    purchase_price(planning, line, offer, 0, 1);
    line->value = value;
}

/* The first line of the goods; how many packs all of them ask for. */
static struct purchase *lines_of(const struct planning *planning, const struct bought *goods,
                                 int64_t *ret_packs)
{
    struct purchase *first = NULL;

    *ret_packs = 0;
    for (size_t i = 0; i < planning->plan->purchases.count; i++) {
        struct purchase *line = &planning->plan->purchases.at[i];

        if (!is_line_of(planning->model, line, goods))
            continue;
        *ret_packs += line->packs;
        if (!first)
            first = line;
    }
    return first;
}

static void keep_goods(struct planning *planning, size_t index)
{
    const struct model *model = planning->model;
    const struct bought *goods = &model->boughts.at[index];
    const struct stock *stock = MODEL_FIND(model, stock, goods->stock);
    const struct offer *offer = bought_offer(model, goods);
    int64_t packs;
    struct purchase *first = lines_of(planning, goods, &packs);

    if (first && first->offer)
        offer = MODEL_FIND(model, offer, first->offer);
    packs = packs_bought(model, index, offer) - packs;
    if (packs <= 0 || !stock || is_by_length(planning->plan, goods->stock))
        return;
    if (!first && !offer)
        return; /* a size that no shop list has: what was paid for it is known, not its price */
    if (!first) {
        first = purchase_add(planning, goods->stock, stock->kind, "");
        first->measure = QUANTITY_COUNT;
    }
    add_packs(planning, first, offer, packs);
}

void buy_boughts(struct planning *planning)
{
    for (size_t i = 0; i < planning->model->boughts.count; i++)
        keep_goods(planning, i);
}

static int64_t pack_of(const struct offer *offer)
{
    return offer ? offer->pack : 1;
}

/* Pieces are counted, rolls measured: of a roll the list says the whole length. */
const bool *stocks_short(const struct plan *plan, struct arena *arena)
{
    const struct model *facts = plan->facts;
    size_t count = facts->stocks.count;
    bool *missing = ARENA_MANY(arena, bool, count + 1);
    int64_t *pieces = ARENA_MANY(arena, int64_t, count + 1);
    int64_t *length = ARENA_MANY(arena, int64_t, count + 1);

    for (size_t i = 0; i < plan->purchases.count; i++) {
        const struct purchase *line = &plan->purchases.at[i];
        size_t stock = model_index(facts, ENTITY_stock, line->stock);

        pieces[stock] +=
            line->length ? 0 : line->packs * pack_of(MODEL_FIND(facts, offer, line->offer));
        length[stock] += line->length;
    }
    for (size_t i = 0; i < facts->boughts.count; i++) {
        const struct bought *bought = &facts->boughts.at[i];
        size_t stock = model_index(facts, ENTITY_stock, bought->stock);
        const struct offer *offer = bought_offer(facts, bought);

        pieces[stock] -= bought_packs(bought, offer) * pack_of(offer);
        length[stock] -= bought->length * bought->packs;
    }
    for (size_t i = 0; i < count; i++)
        missing[i] = pieces[i] > 0 || length[i] > 0;
    return missing;
}
