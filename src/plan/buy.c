/*
 * What has to be bought. Parts that are cut from one stock are pooled and laid out, what lies on
 * the shelf first; the rest is counted, with its reserve, and rounded to packs. Both prices are
 * kept: what is paid, and what of it is used up; the difference is stock, not loss.
 */
#include "plan/buy.h"

#include "model/offer.h"

#include <stdio.h>
#include <string.h>

int64_t aisle_of(int64_t kind)
{
    static const int64_t aisles[STOCK_COUNT] = {
        [STOCK_STICK] = AISLE_LUMBER,       [STOCK_SHEET] = AISLE_SHEETS,
        [STOCK_CLOTH] = AISLE_CLOTH,        [STOCK_FOAM] = AISLE_SOFT_GOODS,
        [STOCK_BATTING] = AISLE_SOFT_GOODS, [STOCK_SCREW] = AISLE_FASTENERS,
        [STOCK_BOLT] = AISLE_FASTENERS,     [STOCK_STAPLE] = AISLE_FASTENERS,
        [STOCK_NAIL] = AISLE_TRIM,          [STOCK_STRIP] = AISLE_TRIM,
        [STOCK_BUTTON] = AISLE_TRIM,        [STOCK_CORD] = AISLE_TRIM,
        [STOCK_GLUE] = AISLE_ADHESIVES,     [STOCK_SPRAY] = AISLE_ADHESIVES,
        [STOCK_HARDWARE] = AISLE_HARDWARE,  [STOCK_OTHER] = AISLE_HARDWARE,
    };

    return aisles[kind];
}

struct purchase *purchase_add(struct planning *planning, int64_t stock, int64_t kind,
                              const char *what)
{
    struct purchase *purchase = LIST_ADD(planning->arena, &planning->plan->purchases);

    purchase->stock = stock;
    purchase->aisle = aisle_of(kind);
    snprintf(purchase->what, sizeof purchase->what, "%s", what);
    return purchase;
}

static void tell_no_price(struct planning *planning, const struct purchase *purchase)
{
    const char *name = purchase->stock ? plan_stock_name(planning->plan, purchase->stock)
                                       : arena_text(planning->arena, purchase->what);
    struct finding *finding =
        finding_add(planning, FINDING_NO_PRICE, ENTITY_stock, purchase->stock);

    argument_text(finding, 0, name);
}

void purchase_price(struct planning *planning, struct purchase *purchase, const struct offer *offer,
                    int64_t used, int64_t bought)
{
    if (purchase->packs == 0)
        return;
    purchase->offer = offer ? offer->key : 0;
    if (!offer || offer->price == 0) {
        tell_no_price(planning, purchase);
        return;
    }
    purchase->priced = whole_multiply(offer_price(planning->model, offer), purchase->packs,
                                      &purchase->price) == 0 &&
                       whole_multiply(offer->price, purchase->packs, &purchase->stated) == 0;
    purchase->value = purchase->price;
    if (bought > 0 && used < bought)
        (void)whole_share(purchase->price, used > 0 ? used : 0, bought, &purchase->value);
}

int64_t with_reserve(int64_t amount, int64_t ratio)
{
    int64_t more;

    if (whole_multiply(amount, 1000000 + ratio, &more))
        return amount;
    return whole_divide_up(more, 1000000);
}

static bool is_kept_for_another(const struct model *model, const struct leftover *leftover)
{
    return *leftover->kept_for && strcmp(leftover->kept_for, model->build.name) != 0;
}

static bool is_left_by_us(const struct model *model, const struct leftover *leftover)
{
    return *leftover->from_step && strcmp(leftover->from_build, model->build.name) == 0;
}

bool leftover_is_free(const struct model *model, const struct leftover *leftover)
{
    return !is_left_by_us(model, leftover) && !is_kept_for_another(model, leftover);
}

bool leftover_is_ours(const struct model *model, const struct leftover *leftover)
{
    return is_left_by_us(model, leftover) && !is_kept_for_another(model, leftover);
}

void pass_buy(struct planning *planning)
{
    buy_parts(planning);
    buy_cuts(planning);
    buy_counts(planning);
    buy_boughts(planning);
    buy_deliveries(planning);
    buy_ways(planning);
}
