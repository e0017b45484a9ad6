/*
 * Money: what the shopping list costs, what of it is used up, what is owed and what was paid. Sums
 * are checked; a sum that does not fit stays as it was, which only made-up prices can bring about.
 *
 * 1  A spend belongs to one line: that of its stock and size, else the first of its stock that has
 *    none yet (money given back: that has one), else one that is called what it says; else to its
 *    aisle.
 * 2  A spend that settles its line, or says that it is for all of its packs, leaves nothing to pay,
 *    whatever it came to. Any other pays a part: its packs' share of the estimate, or where it says
 *    none, as much as it is; the rest stays to be paid.
 * 3  What belongs to no line stands for what is to be paid in the aisle: it was entered by hand,
 *    for something that the list calls otherwise. So it raises the forecast only by what it is
 *    more than that, and pays first what is owed.
 */
#include "model/offer.h"
#include "plan/delivery.h"
#include "plan/pass.h"

#include <assert.h>
#include <string.h>

struct costing {
    struct planning *planning;
    const struct model *model;
    struct plan *plan;
    struct cost *cost;
    bool finished; /* and something was paid: nothing more is to come */
};

static void add_to(int64_t *sum, int64_t money)
{
    (void)whole_add(*sum, money, sum);
}

/* ---- the list ---- */

static struct cost_line *add_line(struct costing *costing, int64_t aisle, size_t purchase)
{
    assert(aisle >= 0 && aisle < AISLE_COUNT);

    struct cost_line *line = LIST_ADD(costing->planning->arena, &costing->cost->lines);

    line->purchase = purchase;
    line->aisle = aisle;
    return line;
}

/* Aisle by aisle, as the list is shown; after the lines of an aisle what is on no list. */
static void add_purchases(struct costing *costing)
{
    struct plan *plan = costing->plan;
    struct cost *cost = costing->cost;
    struct till till = {.model = costing->model};

    for (int aisle = 0; aisle < AISLE_COUNT; aisle++) {
        for (size_t i = 0; i < plan->purchases.count; i++) {
            struct purchase *purchase = &plan->purchases.at[i];

            assert(purchase->aisle >= 0 && purchase->aisle < AISLE_COUNT);
            if (purchase->aisle != aisle)
                continue;
            purchase->till = till_line(&till, MODEL_FIND(costing->model, offer, purchase->offer),
                                       purchase->price, purchase->stated);
            add_to(&cost->bought, purchase->price);
            add_to(&cost->used, purchase->value);
            add_line(costing, aisle, i)->estimate = purchase->till;
        }
        add_line(costing, aisle, PLAN_NONE);
    }
}

/* ---- what was paid ---- */

/* Whether a size says nothing against another one; nothing is one that was not told. */
static bool may_be(int64_t told, int64_t is)
{
    return told == 0 || told == is;
}

static bool may_be_of_size(const struct model *model, const struct purchase *purchase,
                           const struct spend *spend)
{
    static const struct offer unknown = {.pack = 0};
    const struct offer *offer = MODEL_FIND(model, offer, purchase->offer);

    if (!offer)
        offer = &unknown;
    return may_be(spend->length, offer->length) && may_be(spend->width, offer->width) &&
           may_be(spend->pack, offer->pack);
}

/* "wax, 2" is what a line called "wax" says. */
static bool is_called(const struct purchase *purchase, const struct spend *spend)
{
    size_t length = strlen(purchase->what);

    return length > 0 && strncmp(spend->what, purchase->what, length) == 0 &&
           (spend->what[length] == '\0' || spend->what[length] == ',');
}

static bool is_for(const struct costing *costing, const struct cost_line *line,
                   const struct spend *spend)
{
    const struct purchase *purchase;

    if (line->purchase == PLAN_NONE)
        return false;
    purchase = &costing->plan->purchases.at[line->purchase];
    if (purchase->stock != spend->stock)
        return false;
    if (purchase->stock == 0)
        return is_called(purchase, spend);
    return may_be_of_size(costing->model, purchase, spend);
}

static struct cost_line *loose_line(const struct costing *costing, int64_t aisle)
{
    for (size_t i = 0; i < costing->cost->lines.count; i++) {
        struct cost_line *line = &costing->cost->lines.at[i];

        if (line->purchase == PLAN_NONE && line->aisle == aisle)
            return line;
    }
    BUG("an aisle has no line for what is on no list");
}

/* Of a stock on the list, the aisle that it stands in there. */
static int64_t aisle_of_spend(const struct plan *plan, const struct spend *spend)
{
    for (size_t i = 0; spend->stock && i < plan->purchases.count; i++)
        if (plan->purchases.at[i].stock == spend->stock)
            return plan->purchases.at[i].aisle;
    return spend->aisle;
}

/* A payment looks for a line that has none yet, money given back for one that has. */
static struct cost_line *line_for(const struct costing *costing, const struct spend *spend)
{
    struct cost_line *found = NULL;
    bool back = spend->amount < 0;

    for (size_t i = 0; i < costing->cost->lines.count; i++) {
        struct cost_line *line = &costing->cost->lines.at[i];

        if (is_for(costing, line, spend) &&
            (!found || (found->entered != back && line->entered == back)))
            found = line;
    }
    return found ? found : loose_line(costing, aisle_of_spend(costing->plan, spend));
}

/* 0 of a length of roll, and of what is on no list. */
static int64_t packs_wanted(const struct costing *costing, const struct cost_line *line)
{
    const struct purchase *purchase;

    if (line->purchase == PLAN_NONE)
        return 0;
    purchase = &costing->plan->purchases.at[line->purchase];
    return purchase->length ? 0 : purchase->packs;
}

/* `paid`, by line: what those spends come to that do not say how many packs they are for. */
static void add_spends(struct costing *costing, int64_t *paid)
{
    for (size_t i = 0; i < costing->model->spends.count; i++) {
        const struct spend *spend = &costing->model->spends.at[i];
        struct cost_line *line = line_for(costing, spend);
        bool counted = spend->count > 0 && packs_wanted(costing, line) > 0;

        line->entered = true;
        line->settled = line->settled || spend->settles;
        if (counted)
            add_to(&line->packs, spend->amount < 0 ? -spend->count : spend->count);
        else if (spend->amount > 0)
            add_to(&paid[line - costing->cost->lines.at], spend->amount);
        add_to(&line->paid, spend->amount);
        add_to(&costing->cost->spent, spend->amount);
        add_to(&costing->cost->spent_tax, spend->tax);
    }
}

/* What of a line's estimate is paid for, when `paid` of it does not say for how many packs. */
static int64_t covered_of(const struct costing *costing, const struct cost_line *line, int64_t paid)
{
    int64_t wanted = packs_wanted(costing, line);
    int64_t packs = line->packs < wanted ? line->packs : wanted;
    int64_t covered = 0;

    if (packs > 0)
        (void)whole_share(line->estimate, packs, wanted, &covered);
    add_to(&covered, paid);
    return covered < line->estimate ? covered : line->estimate;
}

static void settle_lines(struct costing *costing)
{
    struct cost *cost = costing->cost;
    int64_t *paid = ARENA_MANY(costing->planning->arena, int64_t, cost->lines.count);

    add_spends(costing, paid);
    costing->finished = costing->model->build.state == STATE_FINISHED && cost->spent > 0;
    for (size_t i = 0; i < cost->lines.count; i++) {
        struct cost_line *line = &cost->lines.at[i];

        if (line->purchase == PLAN_NONE)
            continue;
        if (!line->settled && !costing->finished)
            line->rest = line->estimate - covered_of(costing, line, paid[i]);
        assert(line->rest >= 0);
        line->settled = line->entered && line->rest == 0;
    }
}

/* ---- what is owed ---- */

/* How much a purchase asks for, packs or a length of roll, and how much of that a bought entry has;
 * 0 of another stock or size. */
static int64_t had_of(const struct model *model, const struct purchase *purchase,
                      const struct bought *bought)
{
    const struct offer *offer = MODEL_FIND(model, offer, purchase->offer);

    if (purchase->stock != bought->stock)
        return 0;
    if (purchase->length)
        return bought->length * bought->packs;
    if (offer)
        return bought_is_of(model, bought, offer) ? bought_packs(bought, offer) : 0;
    return bought->length == 0 && bought->width == 0 ? bought_packs(bought, NULL) : 0;
}

/* What ticked steps bought of a line, of equal ones the first first; `used` is what lines before it
 * took of each bought entry. */
static int64_t bought_of(const struct costing *costing, const struct purchase *purchase,
                         int64_t *used)
{
    int64_t wanted = purchase->length ? purchase->length : purchase->packs;
    int64_t had = 0;

    for (size_t i = 0; i < costing->model->boughts.count && had < wanted; i++) {
        int64_t more = had_of(costing->model, purchase, &costing->model->boughts.at[i]) - used[i];

        if (more <= 0)
            continue;
        more = more < wanted - had ? more : wanted - had;
        used[i] += more;
        had += more;
    }
    assert(had == 0 || had <= wanted);
    return had;
}

/* Of what is no stock of the workshop nothing remembers that it was bought but what was paid for
 * it: as many as were said, or else all once it is paid. */
static int64_t paid_of(const struct cost_line *line, int64_t wanted)
{
    if (line->packs > 0)
        return line->packs < wanted ? line->packs : wanted;
    return line->settled && line->paid > 0 ? wanted : 0;
}

static bool is_bought_at_all(const struct model *model, const struct purchase *purchase)
{
    for (size_t i = 0; i < model->boughts.count; i++)
        if (had_of(model, purchase, &model->boughts.at[i]) > 0)
            return true;
    return false;
}

/* An order was brought when something of it was bought. */
static int64_t brought_of(const struct costing *costing, const struct purchase *charge)
{
    const struct model *model = costing->model;
    const struct supplier *supplier = MODEL_FIND(model, supplier, charge->supplier);

    for (size_t i = 0; supplier && i < costing->plan->purchases.count; i++) {
        const struct purchase *purchase = &costing->plan->purchases.at[i];

        if (is_bought_from(model, purchase, supplier) && is_bought_at_all(model, purchase))
            return charge->packs;
    }
    return 0;
}

static void commit_lines(struct costing *costing)
{
    int64_t *used = ARENA_MANY(costing->planning->arena, int64_t, costing->model->boughts.count);

    for (size_t i = 0; i < costing->cost->lines.count; i++) {
        struct cost_line *line = &costing->cost->lines.at[i];

        if (line->purchase == PLAN_NONE)
            continue;
        const struct purchase *purchase = &costing->plan->purchases.at[line->purchase];
        int64_t wanted = purchase->length ? purchase->length : purchase->packs;
        int64_t had = purchase->supplier ? brought_of(costing, purchase)
                      : purchase->stock  ? bought_of(costing, purchase, used)
                                         : paid_of(line, wanted);
        int64_t worth = 0;
        if (wanted > 0)
            (void)whole_share(line->estimate, had, wanted, &worth);
        line->bought = had;
        worth -= line->estimate - line->rest;
        line->committed = worth > 0 ? worth : 0;
    }
}

/* ---- what is to come ---- */

/* Pays what is owed in an aisle with what was paid there for no line of the list. */
static void pay_owed(struct costing *costing, const struct cost_line *loose)
{
    int64_t left = loose->paid;

    assert(loose->purchase == PLAN_NONE);
    for (size_t i = 0; i < costing->cost->lines.count && left > 0; i++) {
        struct cost_line *line = &costing->cost->lines.at[i];
        int64_t own = line->committed < left ? line->committed : left;

        if (line->aisle != loose->aisle)
            continue;
        line->committed -= own;
        left -= own;
    }
}

/* What is still to be paid for the lines of an aisle. */
static int64_t open_in(const struct costing *costing, int64_t aisle)
{
    int64_t open = 0;

    for (size_t i = 0; i < costing->cost->lines.count; i++)
        if (costing->cost->lines.at[i].aisle == aisle)
            add_to(&open, costing->cost->lines.at[i].rest);
    return open;
}

static int64_t forecast_of(const struct costing *costing, const struct cost_line *line)
{
    int64_t forecast = line->paid;
    int64_t open;

    if (line->purchase != PLAN_NONE)
        add_to(&forecast, line->rest);
    if (line->purchase != PLAN_NONE || line->paid < 0 || costing->finished)
        return forecast;
    open = open_in(costing, line->aisle);
    return line->paid > open ? line->paid - open : 0;
}

static void foresee(struct costing *costing)
{
    for (size_t i = 0; i < costing->cost->lines.count; i++) {
        struct cost_line *line = &costing->cost->lines.at[i];

        if (line->purchase == PLAN_NONE)
            pay_owed(costing, line);
        line->forecast = forecast_of(costing, line);
    }
}

/* ---- sums ---- */

static void add_sums(struct costing *costing)
{
    struct cost *cost = costing->cost;

    for (size_t i = 0; i < cost->lines.count; i++) {
        struct cost_line *line = &cost->lines.at[i];
        struct cost_sum *sum = &cost->by_aisle[line->aisle];

        add_to(&sum->estimate, line->estimate);
        add_to(&sum->committed, line->committed);
        add_to(&sum->paid, line->paid);
        add_to(&sum->forecast, line->forecast);
        add_to(&cost->estimate, line->estimate);
        add_to(&cost->committed, line->committed);
        add_to(&cost->forecast, line->forecast);
    }
    cost->tax = cost->estimate - cost->bought;
}

void pass_cost(struct planning *planning)
{
    const struct model *model = planning->model;
    struct costing costing = {.planning = planning,
                              .model = model,
                              .plan = planning->plan,
                              .cost = &planning->plan->cost};

    add_purchases(&costing);
    settle_lines(&costing);
    commit_lines(&costing);
    foresee(&costing);
    add_sums(&costing);
    costing.cost->left = model->build.budget;
    add_to(&costing.cost->left, -costing.cost->forecast);
}
