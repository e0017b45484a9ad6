#include "desk/trip_bring.h"

#include "model/offer.h"
#include "plan/delivery.h"

#include <string.h>

struct bringing {
    struct arena *arena;
    struct trip *trip;
    const struct supplier *supplier;
    int64_t *goods; /* by build: what it has from him, without tax */
    int64_t sum;
};

static bool has_offer(const struct bringing *bringing, int64_t key)
{
    const struct model *model = bringing->trip->builds.at[0].model;
    const struct offer *offer = MODEL_FIND(model, offer, key);
    return offer && strcmp(offer_supplier(model, offer), bringing->supplier->name) == 0;
}

/* What of a line comes from the supplier: of what is cut together, its sizes one by one. */
static int64_t price_from(const struct bringing *bringing, const struct trip_line *line)
{
    int64_t price = 0;
    if (line->supplier)
        return 0;
    if (!line->cut)
        return has_offer(bringing, line->offer) ? line->price : 0;
    for (size_t i = 0; i < line->cut->sizes.count; i++) {
        if (has_offer(bringing, line->cut->sizes.at[i].offer))
            (void)whole_add(price, line->cut->sizes.at[i].price, &price);
    }
    return price;
}

static void add_goods(struct bringing *bringing, const struct trip_line *line)
{
    size_t count = line->shares.count;
    int64_t price = price_from(bringing, line);
    int64_t *weights = ARENA_MANY(bringing->arena, int64_t, count);
    int64_t *shares = ARENA_MANY(bringing->arena, int64_t, count);
    for (size_t i = 0; i < count; i++)
        weights[i] = line->shares.at[i].weight;
    money_share_out(price, weights, count, shares);
    for (size_t i = 0; i < count; i++)
        bringing->goods[line->shares.at[i].build] += shares[i];
    (void)whole_add(bringing->sum, price, &bringing->sum);
}

static size_t paid_shares(const struct trip_line *line)
{
    size_t paid = 0;
    for (size_t i = 0; i < line->shares.count; i++)
        paid += line->shares.at[i].paid;
    return paid;
}

static bool any_paid(const struct trip_line *line)
{
    for (size_t i = 0; i < line->shares.count; i++) {
        if (line->shares.at[i].paid || line->shares.at[i].amount)
            return true;
    }
    return false;
}

static void bring(struct bringing *bringing, struct trip_line *line)
{
    size_t paid = paid_shares(line);
    if (paid > 0 && paid < line->shares.count)
        return;
    bringing->goods = ARENA_MANY(bringing->arena, int64_t, bringing->trip->builds.count);
    for (size_t i = 0; i < bringing->trip->lines.count; i++)
        add_goods(bringing, &bringing->trip->lines.at[i]);
    for (size_t i = 0; i < line->shares.count; i++)
        line->shares.at[i].weight = bringing->goods[line->shares.at[i].build];
    line->packs = 1;
    line->price = line->stated = delivery_charge(bringing->supplier, bringing->sum);
}

void trip_bring_together(struct arena *arena, struct trip *trip)
{
    size_t kept = 0;
    for (size_t i = 0; i < trip->lines.count; i++) {
        struct trip_line *line = &trip->lines.at[i];
        struct bringing bringing = {
            .arena = arena,
            .trip = trip,
            .supplier = MODEL_FIND(trip->builds.at[0].model, supplier, line->supplier)};
        if (bringing.supplier)
            bring(&bringing, line);
    }
    for (size_t i = 0; i < trip->lines.count; i++) {
        const struct trip_line *line = &trip->lines.at[i];
        if (line->supplier == 0 || line->price > 0 || any_paid(line))
            trip->lines.at[kept++] = *line;
    }
    trip->lines.count = kept;
}
