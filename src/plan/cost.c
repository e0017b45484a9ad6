/*
 * Money: what the shopping list costs, what of it is used up, and what was paid. Sums are checked;
 * a sum that does not fit stays as it was, which only made-up prices can bring about.
 */
#include "plan/pass.h"

#include <assert.h>

static void add_to(int64_t *sum, int64_t money)
{
    (void)whole_add(*sum, money, sum);
}

static int64_t with_tax(const struct model *model, int64_t money)
{
    int64_t tax = 0;

    (void)whole_share(money, model->workshop.tax, 1000000, &tax);
    add_to(&tax, money);
    return tax;
}

/* Aisle by aisle, as the list is shown: a line is what it adds to the whole with tax, so that the
 * rounding of many lines adds nothing. */
static void add_purchases(struct plan *plan, const struct model *model)
{
    struct cost *cost = &plan->cost;

    for (int aisle = 0; aisle < AISLE_COUNT; aisle++) {
        for (size_t i = 0; i < plan->purchases.count; i++) {
            struct purchase *purchase = &plan->purchases.at[i];

            assert(purchase->aisle >= 0 && purchase->aisle < AISLE_COUNT);
            if (purchase->aisle != aisle)
                continue;
            add_to(&cost->bought, purchase->price);
            add_to(&cost->used, purchase->value);
            purchase->till = with_tax(model, cost->bought) - cost->estimate;
            cost->estimate += purchase->till;
            add_to(&cost->by_aisle[aisle], purchase->till);
        }
    }
    cost->tax = cost->estimate - cost->bought;
}

/* What was paid for a stock of the list belongs where that stands. */
static int64_t aisle_paid(const struct plan *plan, const struct spend *spend)
{
    for (size_t i = 0; spend->stock && i < plan->purchases.count; i++)
        if (plan->purchases.at[i].stock == spend->stock)
            return plan->purchases.at[i].aisle;
    return spend->aisle;
}

static void add_spends(struct plan *plan, const struct model *model)
{
    for (size_t i = 0; i < model->spends.count; i++) {
        const struct spend *spend = &model->spends.at[i];

        add_to(&plan->cost.spent, spend->amount);
        add_to(&plan->cost.spent_tax, spend->tax);
        add_to(&plan->cost.spent_by_aisle[aisle_paid(plan, spend)], spend->amount);
    }
}

/* What it will have cost: in each aisle the estimate, or what was paid where that is more. What is
 * finished, and was written down, has cost what was paid. */
static int64_t forecast(const struct model *model, const struct cost *cost)
{
    int64_t sum = 0;

    if (model->build.state == STATE_FINISHED && cost->spent > 0)
        return cost->spent;
    for (int aisle = 0; aisle < AISLE_COUNT; aisle++) {
        int64_t spent = cost->spent_by_aisle[aisle];
        int64_t estimate = cost->by_aisle[aisle];

        add_to(&sum, spent > estimate ? spent : estimate);
    }
    return sum;
}

void pass_cost(struct planning *planning)
{
    const struct model *model = planning->model;
    struct cost *cost = &planning->plan->cost;

    add_purchases(planning->plan, model);
    add_spends(planning->plan, model);
    cost->forecast = forecast(model, cost);
    cost->left = model->build.budget;
    add_to(&cost->left, -cost->forecast);
}
