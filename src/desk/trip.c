/*
 * 1  A build is planned from the file as it is, but without the shelf's pieces of those stocks that
 *    a build before it took some of.
 * 2  A line is what has the same stock, offer and name in the builds' lists. Where its packs are
 *    counted or measured and each build has one line for the stock, the builds' needs are added up
 *    and the packs counted anew; there are never more of them.
 * 3  Shares of a line are by need where packs were counted anew, else by price.
 */
#include "desk/trip.h"

#include "base/memory.h"
#include "desk/internal.h"
#include "desk/trip_bring.h"
#include "desk/trip_cut.h"
#include "model/offer.h"

#include <assert.h>
#include <string.h>

struct desk_trip {
    struct arena arena;
    struct trip trip;
    trip_words_fn *words;
    enum cut_effort effort;
    LIST_OF(struct desk_state *) states;
    LIST_OF(int64_t) taken; /* stocks whose shelf is used */
};

/* ---- the builds ---- */

static bool shelf_is_taken(const struct desk_trip *trip, int64_t stock)
{
    for (size_t i = 0; i < trip->taken.count; i++) {
        if (trip->taken.at[i] == stock)
            return true;
    }
    return false;
}

static void clear_shelf(const struct desk_trip *trip, struct model *model)
{
    for (size_t i = model->leftovers.count; i-- > 0;) {
        if (shelf_is_taken(trip, model->leftovers.at[i].stock))
            model_remove(model, ENTITY_leftover, model->leftovers.at[i].key);
    }
}

/* Stocks of which the plan takes something from the shelf. */
static void take_shelf(struct desk_trip *trip, const struct plan *plan)
{
    for (size_t i = 0; i < plan->purchases.count; i++) {
        if (plan->purchases.at[i].shelf > 0)
            *LIST_ADD(&trip->arena, &trip->taken) = plan->purchases.at[i].stock;
    }
    for (size_t i = 0; i < plan->cuttings.count; i++) {
        if (plan->cuttings.at[i].source->leftover)
            *LIST_ADD(&trip->arena, &trip->taken) = plan->cuttings.at[i].stock;
    }
}

/* ---- lines ---- */

static bool same_goods(const struct trip *trip, const struct trip_line *line,
                       const struct purchase *purchase)
{
    const struct trip_share *share = &line->shares.at[0];
    assert(share->build < trip->builds.count);
    return !line->cut && line->stock == purchase->stock && line->offer == purchase->offer &&
           line->aisle == purchase->aisle && strcmp(share->purchase->what, purchase->what) == 0;
}

static struct trip_line *line_for(struct desk_trip *trip, const struct purchase *purchase)
{
    for (size_t i = 0; i < trip->trip.lines.count; i++) {
        if (same_goods(&trip->trip, &trip->trip.lines.at[i], purchase))
            return &trip->trip.lines.at[i];
    }
    struct trip_line *line = LIST_ADD(&trip->arena, &trip->trip.lines);
    line->stock = purchase->stock;
    line->offer = purchase->offer;
    line->aisle = purchase->aisle;
    line->priced = true;
    return line;
}

/* The last spend that a build has for just a line of its list. */
static const struct spend *spend_for(const struct desk_trip *trip, const struct plan *plan,
                                     const struct purchase *purchase)
{
    const struct spend *found = NULL;
    struct text words;
    text_init(&words);
    trip->words(&words, plan, purchase);
    for (size_t i = 0; i < plan->facts->spends.count; i++) {
        const struct spend *spend = &plan->facts->spends.at[i];
        if (spend->stock == purchase->stock && strcmp(spend->what, text_string(&words)) == 0)
            found = spend;
    }
    text_release(&words);
    return found;
}

static void add_paid(const struct desk_trip *trip, struct trip_share *share)
{
    const struct plan *plan = trip->trip.builds.at[share->build].plan;
    const struct cost_line *line = plan_cost_line(plan, share->purchase);
    share->spend = spend_for(trip, plan, share->purchase);
    share->paid = line->settled;
    share->amount = line->paid;
}

static void add_share(struct desk_trip *trip, size_t build, const struct purchase *purchase)
{
    struct trip_line *line = line_for(trip, purchase);
    struct trip_share *share = LIST_ADD(&trip->arena, &line->shares);
    *share = (struct trip_share){.build = build, .purchase = purchase, .weight = purchase->price};
    add_paid(trip, share);
    line->packs += purchase->packs;
    line->length += purchase->length;
    line->bought += plan_cost_line(trip->trip.builds.at[build].plan, purchase)->bought;
    line->price += purchase->price;
    line->stated += purchase->stated;
    line->supplier = purchase->supplier;
    line->priced = line->priced && purchase->priced;
}

/* ---- lines of what is cut together ---- */

/* What a build uses is shared by the prices of its own lines, each of which may be paid. */
static void add_users(struct desk_trip *trip, struct trip_line *line, const struct trip_use *user)
{
    const struct plan *plan = trip->trip.builds.at[user->build].plan;
    size_t most = plan->purchases.count;
    int64_t *prices = ARENA_MANY(&trip->arena, int64_t, most);
    int64_t *uses = ARENA_MANY(&trip->arena, int64_t, most);
    const struct purchase **own = ARENA_MANY(&trip->arena, const struct purchase *, most);
    size_t count = 0;
    for (size_t i = 0; i < most; i++) {
        if (plan->purchases.at[i].stock != line->stock)
            continue;
        own[count] = &plan->purchases.at[i];
        prices[count++] = plan->purchases.at[i].price;
    }
    money_share_out(user->use, prices, count, uses);
    for (size_t i = 0; i < count; i++) {
        struct trip_share *share = LIST_ADD(&trip->arena, &line->shares);
        *share = (struct trip_share){.build = user->build, .purchase = own[i], .weight = uses[i]};
        add_paid(trip, share);
    }
}

static int64_t aisle_of_cut(const struct trip *trip, const struct trip_cut *cut)
{
    const struct plan *plan = trip->builds.at[cut->users.at[0].build].plan;
    for (size_t i = 0; i < plan->purchases.count; i++) {
        if (plan->purchases.at[i].stock == cut->stock)
            return plan->purchases.at[i].aisle;
    }
    BUG("a build cuts together what it does not buy");
}

static void add_cut(struct desk_trip *trip, const struct trip_cut *cut, int64_t aisle)
{
    struct trip_line *line = LIST_ADD(&trip->arena, &trip->trip.lines);
    *line = (struct trip_line){.stock = cut->stock,
                               .offer = cut->sizes.count ? cut->sizes.at[0].offer : 0,
                               .cut = cut,
                               .aisle = aisle,
                               .length = cut->length,
                               .price = cut->together,
                               .priced = true};
    for (size_t i = 0; i < cut->sizes.count; i++)
        line->packs += cut->sizes.at[i].packs;
    for (size_t i = 0; i < cut->users.count; i++)
        add_users(trip, line, &cut->users.at[i]);
}

static void add_cuts_of_aisle(struct desk_trip *trip, int64_t aisle)
{
    for (size_t i = 0; i < trip->trip.cuts.count; i++) {
        if (aisle_of_cut(&trip->trip, &trip->trip.cuts.at[i]) == aisle)
            add_cut(trip, &trip->trip.cuts.at[i], aisle);
    }
}

static enum trip_paid how_much_is_paid(const void *context, size_t build, int64_t stock)
{
    const struct desk_trip *trip = context;
    const struct plan *plan = trip->trip.builds.at[build].plan;
    bool any = false;
    bool all = true;
    for (size_t i = 0; i < plan->purchases.count; i++) {
        if (plan->purchases.at[i].stock != stock)
            continue;
        const struct cost_line *line = plan_cost_line(plan, &plan->purchases.at[i]);
        any = any || line->entered;
        all = all && line->settled;
    }
    if (!any)
        return TRIP_NOTHING_PAID;
    return all ? TRIP_ALL_PAID : TRIP_SOME_PAID;
}

/* ---- other lines ---- */

/* A line that is bought, or was. */
static bool is_on_list(const struct plan *plan, const struct purchase *purchase)
{
    return plan_is_bought(purchase) || plan_cost_line(plan, purchase)->entered;
}

static void add_lines_of_aisle(struct desk_trip *trip, size_t build, int64_t aisle)
{
    const struct plan *plan = trip->trip.builds.at[build].plan;
    for (size_t i = 0; i < plan->purchases.count; i++) {
        const struct purchase *purchase = &plan->purchases.at[i];
        if (purchase->aisle == aisle && is_on_list(plan, purchase) &&
            !trip_cut_of(&trip->trip, build, purchase->stock))
            add_share(trip, build, purchase);
    }
}

static void add_lines(struct desk_trip *trip)
{
    for (int64_t aisle = 0; aisle < AISLE_COUNT; aisle++) {
        add_cuts_of_aisle(trip, aisle);
        for (size_t build = 0; build < trip->trip.builds.count; build++)
            add_lines_of_aisle(trip, build, aisle);
    }
}

/* ---- packs ---- */

static int64_t lines_of_stock(const struct plan *plan, int64_t stock)
{
    int64_t lines = 0;
    for (size_t i = 0; i < plan->purchases.count; i++)
        lines += plan->purchases.at[i].stock == stock;
    return lines;
}

/* What a pack of a line's offer holds, in the measure of its needs; 0 where that is not known. A
 * can covers what the most careful of the builds trusts it with. */
static int64_t pack_holds(const struct desk_trip *trip, const struct trip_line *line)
{
    const struct model *model = trip->trip.builds.at[0].model;
    const struct offer *offer = MODEL_FIND(model, offer, line->offer);
    const struct stock *stock = MODEL_FIND(model, stock, line->stock);
    int64_t covers = stock ? stock->coverage : 0;
    if (!offer || !stock)
        return 0;
    switch (line->shares.at[0].purchase->measure) {
    case QUANTITY_COUNT:
        return offer->pack;
    case QUANTITY_VOLUME:
        return offer->volume;
    case QUANTITY_AREA:
        for (size_t i = 0; i < line->shares.count && stock->coverage == 0; i++) {
            const struct trip_share *share = &line->shares.at[i];
            int64_t own = trip->trip.builds.at[share->build].plan->value[TRADE_SPRAY_PER_CAN];
            covers = covers == 0 || own < covers ? own : covers;
        }
        return covers;
    default:
        return offer->length;
    }
}

/* Packs and cans, no build mixes packs of two sizes, and nobody bought his share apart. */
static bool is_counted(const struct desk_trip *trip, const struct trip_line *line)
{
    size_t paid = 0;
    for (size_t i = 0; i < line->shares.count; i++) {
        const struct trip_share *share = &line->shares.at[i];
        if (share->purchase->measure != line->shares.at[0].purchase->measure ||
            share->purchase->length || (!share->paid && share->amount) ||
            lines_of_stock(trip->trip.builds.at[share->build].plan, line->stock) != 1)
            return false;
        paid += share->paid;
    }
    return !line->cut && line->shares.count > 1 && (paid == 0 || paid == line->shares.count);
}

static void pool_packs(struct desk_trip *trip, struct trip_line *line)
{
    int64_t holds = pack_holds(trip, line);
    int64_t need = 0;
    if (holds < 1 || !is_counted(trip, line))
        return;
    for (size_t i = 0; i < line->shares.count; i++)
        need += line->shares.at[i].purchase->need - line->shares.at[i].purchase->shelf;
    int64_t packs = whole_divide_up(need, holds);
    if (packs < 0 || packs >= line->packs)
        return;
    for (size_t i = 0; i < line->shares.count; i++)
        line->shares.at[i].weight =
            line->shares.at[i].purchase->need - line->shares.at[i].purchase->shelf;
    line->saved = line->packs - packs;
    line->packs = packs;
    const struct model *model = trip->trip.builds.at[0].model;
    const struct offer *offer = MODEL_FIND(model, offer, line->offer);
    line->price = packs * offer_price(model, offer);
    line->stated = packs * offer->price;
}

/* ---- money ---- */

static void share_till(struct desk_trip *trip, struct trip_line *line)
{
    int64_t *weights = ARENA_MANY(&trip->arena, int64_t, line->shares.count);
    int64_t *shares = ARENA_MANY(&trip->arena, int64_t, line->shares.count);
    for (size_t i = 0; i < line->shares.count; i++)
        weights[i] = line->shares.at[i].weight;
    money_share_out(line->till, weights, line->shares.count, shares);
    line->paid = true;
    for (size_t i = 0; i < line->shares.count; i++) {
        struct trip_share *share = &line->shares.at[i];
        share->till = shares[i];
        trip->trip.builds.at[share->build].till += shares[i];
        line->paid = line->paid && share->paid;
        line->amount += share->amount;
    }
}

/* What a line adds to the whole with tax, as on the list of one build. */
static int64_t till_of(struct till *till, const struct trip_line *line)
{
    int64_t sum = 0;
    if (!line->cut)
        return till_line(till, MODEL_FIND(till->model, offer, line->offer), line->price,
                         line->stated);
    for (size_t i = 0; i < line->cut->sizes.count; i++) {
        const struct trip_size *size = &line->cut->sizes.at[i];
        sum +=
            till_line(till, MODEL_FIND(till->model, offer, size->offer), size->price, size->stated);
    }
    return sum;
}

static void add_money(struct desk_trip *trip)
{
    struct till till = {.model = trip->trip.builds.at[0].model};
    for (size_t i = 0; i < trip->trip.builds.count; i++)
        trip->trip.apart += trip->trip.builds.at[i].plan->cost.estimate;
    for (size_t i = 0; i < trip->trip.lines.count; i++) {
        struct trip_line *line = &trip->trip.lines.at[i];
        line->till = till_of(&till, line);
        trip->trip.till += line->till;
        share_till(trip, line);
        trip->trip.paid += line->amount;
    }
}

/* ---- the trip ---- */

static enum fault run_pool(void *context, struct fault_note *note)
{
    struct desk_trip *trip = context;
    const struct trip_cutter cutter = {&trip->arena, &trip->trip, trip->effort, how_much_is_paid,
                                       trip};
    (void)note;
    trip_cut_together(&cutter);
    add_lines(trip);
    for (size_t i = 0; i < trip->trip.lines.count; i++)
        pool_packs(trip, &trip->trip.lines.at[i]);
    trip_bring_together(&trip->arena, &trip->trip);
    if (trip->trip.builds.count)
        add_money(trip);
    return FAULT_NONE;
}

struct joining {
    struct desk_trip *trip;
    struct desk *desk;
    int64_t build;
};

/* Loads and plans one build more. */
static enum fault run_join(void *context, struct fault_note *note)
{
    const struct joining *joining = context;
    struct desk_trip *trip = joining->trip;
    struct desk_state **slot = LIST_ADD(&trip->arena, &trip->states);
    *slot = desk_state_new();
    if (!*slot)
        return fault_say(note, FAULT_MEMORY, "there is not enough memory for this");
    struct desk_state *state = *slot;
    enum fault fault =
        store_peek(joining->desk->store, joining->build, &state->model, &state->arena, note);
    if (fault)
        return fault;
    clear_shelf(trip, &state->model);
    fault = desk_state_plan(state, &joining->desk->known, note);
    if (fault)
        return fault;
    *LIST_ADD(&trip->arena, &trip->trip.builds) =
        (struct trip_build){&state->model, state->plan, 0};
    take_shelf(trip, state->plan);
    return FAULT_NONE;
}

enum fault desk_trip_begin(struct desk_trip **ret_trip, struct desk *desk, const int64_t *builds,
                           size_t count, enum cut_effort effort, trip_words_fn *words,
                           struct fault_note *note)
{
    enum fault fault = FAULT_NONE;
    struct desk_trip *trip = memory_resize(NULL, sizeof *trip);
    if (!trip)
        return fault_say(note, FAULT_MEMORY, "there is not enough memory for this");
    memset(trip, 0, sizeof *trip);
    arena_init(&trip->arena);
    trip->words = words;
    trip->effort = effort;
    for (size_t i = 0; i < count && !fault; i++) {
        struct joining joining = {trip, desk, builds[i]};
        fault = desk_guard(&trip->arena, run_join, &joining, note);
    }
    if (!fault)
        fault = desk_guard(&trip->arena, run_pool, trip, note);
    if (fault)
        desk_trip_free(trip);
    else
        *ret_trip = trip;
    return fault;
}

void desk_trip_free(struct desk_trip *trip)
{
    if (!trip)
        return;
    for (size_t i = 0; i < trip->states.count; i++)
        desk_state_free(trip->states.at[i]);
    arena_release(&trip->arena);
    memory_release(trip);
}

void trip_line_of(const struct trip_line *line, size_t build, int64_t *ret_till,
                  int64_t *ret_amount)
{
    *ret_till = *ret_amount = 0;
    for (size_t i = 0; i < line->shares.count; i++) {
        const struct trip_share *share = &line->shares.at[i];
        if (share->build != build)
            continue;
        *ret_till += share->till;
        *ret_amount += share->amount;
    }
}

const struct trip *desk_trip_of(const struct desk_trip *trip)
{
    return &trip->trip;
}

trip_words_fn *desk_trip_words(const struct desk_trip *trip)
{
    return trip->words;
}
