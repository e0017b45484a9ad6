/* What suppliers ask for bringing an order: one charge for all that the list has from them. */
#include "plan/buy.h"

#include "model/offer.h"
#include "plan/delivery.h"

#include <string.h>

bool is_bought_from(const struct model *model, const struct purchase *purchase,
                    const struct supplier *supplier)
{
    const struct offer *offer = MODEL_FIND(model, offer, purchase->offer);

    return offer && purchase->packs > 0 &&
           strcmp(offer_supplier(model, offer), supplier->name) == 0;
}

int64_t delivery_charge(const struct supplier *supplier, int64_t goods)
{
    return supplier->free_from && goods >= supplier->free_from ? 0 : supplier->delivery;
}

static void buy_delivery(struct planning *planning, const struct supplier *supplier)
{
    struct plan *plan = planning->plan;
    int64_t goods = 0;
    size_t count = 0;

    for (size_t i = 0; i < plan->purchases.count; i++) {
        if (!is_bought_from(planning->model, &plan->purchases.at[i], supplier))
            continue;
        (void)whole_add(goods, plan->purchases.at[i].price, &goods);
        count++;
    }
    if (count == 0 || delivery_charge(supplier, goods) == 0)
        return;
    struct purchase *purchase = purchase_add(
        planning, 0, STOCK_OTHER, arena_format(planning->arena, "delivery, %s", supplier->name));
    purchase->supplier = supplier->key;
    purchase->measure = QUANTITY_COUNT;
    purchase->need = purchase->used = purchase->packs = 1;
    purchase->price = purchase->stated = purchase->value = supplier->delivery;
    purchase->priced = true;
}

void buy_deliveries(struct planning *planning)
{
    const struct model *model = planning->model;

    for (size_t i = 0; i < model->suppliers.count; i++)
        buy_delivery(planning, &model->suppliers.at[i]);
}
