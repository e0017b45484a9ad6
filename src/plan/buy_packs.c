/*
 * What is counted, in packs. A shop sells the same screws by 50 and by 200: the packs are chosen so
 * that together they cost least, by going through what can be taken of each offer in the order of
 * the shop list. The work is counted, so that the same list comes out on every machine; the best
 * offer taken alone is where the search begins, and it is left only for less money.
 */
#include "plan/buy.h"

#include "model/offer.h"

#include <assert.h>

#define STEPS_IN_ALL 20000 /* of one search: two or three offers never come near it */

/* One offer, and how many packs of it are taken. */
struct choice {
    const struct offer *offer; /* NULL: the shop list has none */
    int64_t price;             /* of a pack, without tax */
    int64_t holds;             /* of the need's measure, in a pack; 0: unknown, one pack will do */
    int64_t packs;
    int64_t tried; /* in the combination that is looked at */
};

struct packing {
    LIST_OF(struct choice) choices;
    int64_t least; /* price of the best combination so far */
    int steps_left;
};

/* ---- what a pack holds ---- */

static int64_t coverage_of(const struct planning *planning, const struct need *need)
{
    const struct stock *stock = MODEL_FIND(planning->model, stock, need->stock);

    return stock && stock->coverage ? stock->coverage : planning->value[TRADE_SPRAY_PER_CAN];
}

static int64_t pack_holds(const struct planning *planning, const struct need *need,
                          const struct offer *offer)
{
    switch (need->measure) {
    case QUANTITY_AREA:
        return coverage_of(planning, need);
    case QUANTITY_LENGTH:
        return offer ? offer->length : 0;
    case QUANTITY_VOLUME:
        return offer ? offer->volume : 0;
    default:
        return offer && offer->pack > 0 ? offer->pack : 1;
    }
}

static int64_t packs_for(int64_t amount, int64_t holds)
{
    if (amount <= 0)
        return 0;
    return holds > 0 ? whole_divide_up(amount, holds) : 1;
}

/* ---- one offer ---- */

const struct offer *cheapest_offer(const struct planning *planning, const struct need *need,
                                   int64_t amount)
{
    const struct model *model = planning->model;
    const struct offer *best = NULL;
    int64_t least = INT64_MAX;

    for (size_t i = 0; need->stock && i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];
        int64_t price;

        if (offer->stock != need->stock ||
            whole_multiply(packs_for(amount, pack_holds(planning, need, offer)),
                           offer_price(model, offer), &price) ||
            (best && (offer->price == 0 || (best->price > 0 && price >= least))))
            continue;
        least = price;
        best = offer;
    }
    return best;
}

bool buy_share(const struct planning *planning, const struct need *need, int64_t amount,
               int64_t *ret_price)
{
    const struct offer *offer = cheapest_offer(planning, need, amount);
    int64_t holds = offer ? pack_holds(planning, need, offer) : 0;

    return offer && offer->price > 0 && holds > 0 &&
           whole_share(offer_price(planning->model, offer), amount, holds, ret_price) == 0;
}

/* ---- several offers together ---- */

static void keep_tried(struct packing *packing, int64_t price)
{
    assert(price < packing->least);

    packing->least = price;
    for (size_t i = 0; i < packing->choices.count; i++)
        packing->choices.at[i].packs = packing->choices.at[i].tried;
}

/* Goes through all that can be taken of the offers from `at` on to make up `left`, most packs of
 * the first one first; what is taken of those before costs `price`. */
static void try_packs(struct packing *packing, size_t at, int64_t left, int64_t price)
{
    assert(at <= packing->choices.count);
    if (packing->steps_left-- <= 0 || price >= packing->least)
        return;
    if (left <= 0) {
        keep_tried(packing, price);
        return;
    }
    if (at == packing->choices.count)
        return;
    struct choice *choice = &packing->choices.at[at];
    for (int64_t packs = packs_for(left, choice->holds); packs >= 0; packs--) {
        int64_t sum;

        if (packing->steps_left <= 0)
            break;
        if (whole_multiply(choice->price, packs, &sum) || whole_add(sum, price, &sum))
            continue;
        choice->tried = packs;
        try_packs(packing, at + 1, left - packs * choice->holds, sum);
    }
    choice->tried = 0;
}

/* The offers that can stand together: with a price, and known to hold something. */
static void add_choices(struct packing *packing, const struct planning *planning,
                        const struct need *need)
{
    const struct model *model = planning->model;

    for (size_t i = 0; need->stock && i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];
        int64_t holds = pack_holds(planning, need, offer);

        if (offer->stock == need->stock && offer->price > 0 && holds > 0)
            *LIST_ADD(planning->arena, &packing->choices) =
                (struct choice){offer, offer_price(model, offer), holds, 0, 0};
    }
}

/* Chooses packs for an amount; at least one choice stands there afterwards. */
static void choose(struct packing *packing, const struct planning *planning,
                   const struct need *need, int64_t amount)
{
    const struct offer *alone = cheapest_offer(planning, need, amount);
    const struct choice only = {alone, alone ? offer_price(planning->model, alone) : 0,
                                pack_holds(planning, need, alone),
                                packs_for(amount, pack_holds(planning, need, alone)), 0};

    if (alone && alone->price > 0 && only.holds > 0 && amount > 0 &&
        whole_multiply(only.price, only.packs, &packing->least) == 0) {
        add_choices(packing, planning, need);
        for (size_t i = 0; i < packing->choices.count; i++)
            if (packing->choices.at[i].offer == alone)
                packing->choices.at[i].packs = only.packs;
        try_packs(packing, 0, amount, 0);
        return;
    }
    *LIST_ADD(planning->arena, &packing->choices) = only;
}

/* ---- the lines ---- */

static int64_t on_shelf(const struct planning *planning, const struct need *need)
{
    const struct model *model = planning->model;
    int64_t shelf = 0;

    for (size_t i = 0; need->stock && i < model->leftovers.count; i++) {
        const struct leftover *rest = &model->leftovers.at[i];

        if (rest->stock == need->stock && leftover_is_free(model, rest))
            shelf += need->measure == QUANTITY_LENGTH  ? rest->length * rest->count
                     : need->measure == QUANTITY_COUNT ? rest->count
                                                       : 0;
    }
    return shelf < need->need ? shelf : need->need;
}

/* A line for a choice, which takes its share of what is left of the need. */
static void add_line(struct planning *planning, const struct choice *choice, struct need *left,
                     int64_t shelf, bool last)
{
    struct purchase *purchase = purchase_add(planning, left->stock, left->kind, left->what);
    int64_t upto = shelf + choice->packs * choice->holds;

    purchase->measure = left->measure;
    purchase->need = last || left->need < upto ? left->need : upto;
    purchase->used = last || left->used < upto ? left->used : upto;
    purchase->shelf = shelf;
    purchase->packs = choice->packs;
    left->need -= purchase->need;
    left->used -= purchase->used;
    assert(left->need >= 0 && left->used >= 0);
    if (left->kind == STOCK_SCREW && !left->stock)
        return; /* the fix pass has told that no shop list has them */
    purchase_price(planning, purchase, choice->offer, purchase->used - shelf,
                   choice->packs * choice->holds);
}

void buy_packs(struct planning *planning, const struct need *need)
{
    struct packing packing = {.steps_left = STEPS_IN_ALL};
    struct need left = *need;
    int64_t shelf = on_shelf(planning, need);
    size_t last = 0;

    choose(&packing, planning, need, need->need - shelf);
    assert(packing.choices.count > 0);
    for (size_t i = 0; i < packing.choices.count; i++)
        if (packing.choices.at[i].packs > 0)
            last = i;
    for (size_t i = 0; i <= last; i++) {
        if (i < last && packing.choices.at[i].packs == 0)
            continue;
        add_line(planning, &packing.choices.at[i], &left, shelf, i == last);
        shelf = 0;
    }
    assert(left.need == 0 && left.used == 0);
}
