/*
 * 1  A build takes part with a stock when its plan has one job for it, that was not taken, of which
 *    everything has a price, and nothing was bought yet. Either all builds have paid, or none.
 * 2  A stock of which a piece of the shelf is kept for one of the builds, or was left by one of
 *    them, or which a build that takes no part cuts from, is cut for each build by itself.
 * 3  What is laid out together holds only where it costs less than the builds apart, or was taken.
 */
#include "desk/trip_cut.h"

#include "model/offer.h"

#include <assert.h>
#include <string.h>

struct cutting_stock {
    const struct trip_cutter *cutter;
    int64_t stock;
    LIST_OF(struct trip_user) users;
};

static const struct plan *plan_at(const struct trip_cutter *cutter, size_t build)
{
    return cutter->trip->builds.at[build].plan;
}

/* ---- who takes part ---- */

/* The one job of a stock; NULL where there is none, more than one, or it was taken. */
static const struct plan_job *only_job(const struct plan *plan, int64_t stock)
{
    const struct plan_job *found = NULL;
    for (size_t i = 0; i < plan->jobs.count; i++) {
        if (plan->jobs.at[i].stock != stock)
            continue;
        if (found)
            return NULL;
        found = &plan->jobs.at[i];
    }
    return found && !found->taken && found->layout->left_out.count == 0 ? found : NULL;
}

static bool is_bought(const struct plan *plan, int64_t stock)
{
    for (size_t i = 0; i < plan->facts->boughts.count; i++) {
        if (plan->facts->boughts.at[i].stock == stock)
            return true;
    }
    return false;
}

/* What the purchases of a stock come to; false where there are none, or one has no price. */
static bool price_of(const struct plan *plan, int64_t stock, int64_t *ret_price)
{
    int64_t price = 0;
    size_t count = 0;
    for (size_t i = 0; i < plan->purchases.count; i++) {
        const struct purchase *purchase = &plan->purchases.at[i];
        if (purchase->stock != stock)
            continue;
        if (!purchase->priced || whole_add(price, purchase->price, &price))
            return false;
        count++;
    }
    *ret_price = price;
    return count > 0;
}

/* What parts of a job take of the stock. */
static int64_t use_of(const struct plan_job *job)
{
    int64_t use = 0;
    for (size_t i = 0; i < job->job->part_count; i++) {
        const struct cut_piece *part = &job->job->parts[i];
        int64_t own = job->way == CUT_BARS ? part->length + job->job->kerf
                                           : part->length / LENGTH_MM * (part->width / LENGTH_MM);
        (void)whole_add(use, own, &use);
    }
    return use;
}

static void add_user(struct cutting_stock *cutting, size_t build)
{
    const struct plan *plan = plan_at(cutting->cutter, build);
    struct trip_user user = {.build = build, .job = only_job(plan, cutting->stock)};
    if (!user.job || is_bought(plan, cutting->stock) ||
        !price_of(plan, cutting->stock, &user.price))
        return;
    user.paid = cutting->cutter->paid(cutting->cutter->context, build, cutting->stock);
    user.use = use_of(user.job);
    *LIST_ADD(cutting->cutter->arena, &cutting->users) = user;
}

static bool paid_alike(const struct cutting_stock *cutting)
{
    for (size_t i = 0; i < cutting->users.count; i++) {
        if (cutting->users.at[i].paid == TRIP_SOME_PAID ||
            cutting->users.at[i].paid != cutting->users.at[0].paid)
            return false;
    }
    return true;
}

static bool is_users(const struct cutting_stock *cutting, const char *build)
{
    for (size_t i = 0; i < cutting->users.count; i++) {
        const struct plan *plan = plan_at(cutting->cutter, cutting->users.at[i].build);
        if (strcmp(plan->facts->build.name, build) == 0)
            return true;
    }
    return false;
}

/* Lies a piece on the shelf that is one build's more than the others'? */
static bool shelf_is_somebodys(const struct cutting_stock *cutting)
{
    const struct model *model = cutting->cutter->trip->builds.at[0].model;
    for (size_t i = 0; i < model->leftovers.count; i++) {
        const struct leftover *left = &model->leftovers.at[i];
        if (left->stock == cutting->stock &&
            (is_users(cutting, left->kept_for) || is_users(cutting, left->from_build)))
            return true;
    }
    return false;
}

/* Does a build that takes no part cut from the shelf? */
static bool shelf_is_cut_apart(const struct cutting_stock *cutting)
{
    const struct trip *trip = cutting->cutter->trip;
    for (size_t build = 0; build < trip->builds.count; build++) {
        const struct plan *plan = trip->builds.at[build].plan;
        if (is_users(cutting, plan->facts->build.name))
            continue;
        for (size_t i = 0; i < plan->cuttings.count; i++) {
            if (plan->cuttings.at[i].stock == cutting->stock &&
                plan->cuttings.at[i].source->leftover)
                return true;
        }
    }
    return false;
}

/* ---- what it costs ---- */

/* Sticks with those that turn out crooked, by the most careful of the builds. */
static int64_t with_crooked(const struct cutting_stock *cutting, int64_t count)
{
    int64_t most = 0;
    for (size_t i = 0; i < cutting->users.count; i++) {
        const struct plan *plan = plan_at(cutting->cutter, cutting->users.at[i].build);
        int64_t reserve = plan->value[TRADE_STICK_RESERVE];
        most = reserve > most ? reserve : most;
    }
    return count + whole_divide_up(count * most, 1000000);
}

/* The offer behind a size: sizes on offer stand in the order of the offers. */
static const struct offer *offer_of(const struct cutting_stock *cutting,
                                    const struct cut_size *size)
{
    const struct plan *plan = plan_at(cutting->cutter, cutting->users.at[0].build);
    bool stick = cutting->users.at[0].job->way == CUT_BARS;
    int64_t far = stick ? plan->value[TRADE_STICK_TRIM_FAR] : 0;
    for (size_t i = 0; i < plan->facts->offers.count; i++) {
        const struct offer *offer = &plan->facts->offers.at[i];
        if (offer->stock == cutting->stock && offer->length - far == size->length &&
            (stick || offer->width == size->width) &&
            whole_divide_up(offer_price(plan->facts, offer), offer->pack) == size->price)
            return offer;
    }
    return NULL;
}

/* Packs of one size; false where no offer can be found for it. */
static bool add_size(const struct cutting_stock *cutting, struct trip_cut *cut, size_t index)
{
    const struct cut_size *size = &cut->job.job.sizes[index];
    const struct offer *offer;
    const struct plan *plan = plan_at(cutting->cutter, cutting->users.at[0].build);
    int64_t count = 0;
    int64_t price;
    int64_t stated;
    for (size_t i = 0; i < cut->job.layout.blanks.count; i++)
        count += cut->job.layout.blanks.at[i].size == index;
    if (count == 0 || size->limit != CUT_ANY)
        return true;
    offer = offer_of(cutting, size);
    if (!offer)
        return false;
    if (cut->job.way == CUT_BARS)
        count = with_crooked(cutting, count);
    count = whole_divide_up(count, offer->pack);
    if (whole_multiply(count, offer_price(plan->facts, offer), &price) ||
        whole_multiply(count, offer->price, &stated))
        return false;
    *LIST_ADD(cutting->cutter->arena, &cut->sizes) =
        (struct trip_size){offer->key, count, price, stated};
    return !whole_add(cut->together, price, &cut->together);
}

/* A roll is one length, at the price of the offer that the builds take by themselves. */
static bool add_roll(const struct cutting_stock *cutting, struct trip_cut *cut)
{
    const struct plan *plan = plan_at(cutting->cutter, cutting->users.at[0].build);
    const struct offer *offer = NULL;
    int64_t stated;
    for (size_t i = 0; i < plan->purchases.count && !offer; i++) {
        if (plan->purchases.at[i].stock == cutting->stock)
            offer = MODEL_FIND(plan->facts, offer, plan->purchases.at[i].offer);
    }
    if (!offer || offer->length == 0)
        return false;
    cut->length = cut->job.layout.cost;
    if (whole_share(offer_price(plan->facts, offer), cut->length, offer->length, &cut->together) ||
        whole_share(offer->price, cut->length, offer->length, &stated))
        return false;
    *LIST_ADD(cutting->cutter->arena, &cut->sizes) =
        (struct trip_size){offer->key, 1, cut->together, stated};
    return true;
}

static bool price_together(const struct cutting_stock *cutting, struct trip_cut *cut)
{
    if (cut->job.way == CUT_ROLLS)
        return add_roll(cutting, cut);
    for (size_t i = 0; i < cut->job.job.size_count; i++) {
        if (!add_size(cutting, cut, i))
            return false;
    }
    return true;
}

/* ---- together ---- */

/* The user whose build has the least key above one; NULL where there is none. */
static const struct trip_user *next_user(const struct cutting_stock *cutting, int64_t above)
{
    const struct trip_user *next = NULL;
    int64_t least = INT64_MAX;
    for (size_t i = 0; i < cutting->users.count; i++) {
        int64_t key = plan_at(cutting->cutter, cutting->users.at[i].build)->facts->build.key;
        if (key > above && key < least) {
            next = &cutting->users.at[i];
            least = key;
        }
    }
    return next;
}

/* One job out of those of all users, the same in whatever order they go shopping; false where their
 * saws or sizes differ. */
static bool pool_jobs(const struct cutting_stock *cutting, struct trip_cut *cut)
{
    struct pool pool = {.arena = cutting->cutter->arena, .one_shelf = true};
    const struct trip_user *user = next_user(cutting, 0);
    while (user) {
        const struct plan *plan = plan_at(cutting->cutter, user->build);
        pool_add_job(&pool, plan, user->job);
        pool_add_taken(&pool, plan->facts);
        cut->apart += user->price;
        user = next_user(cutting, plan->facts->build.key);
    }
    if (pool.jobs.count != 1)
        return false;
    pool_cut(&pool, cutting->cutter->effort);
    cut->job = pool.jobs.at[0];
    return cut->job.layout.left_out.count == 0;
}

static void cut_stock(const struct trip_cutter *cutter, int64_t stock)
{
    struct cutting_stock cutting = {.cutter = cutter, .stock = stock};
    struct trip_cut cut = {.stock = stock};
    for (size_t i = 0; i < cutter->trip->builds.count; i++)
        add_user(&cutting, i);
    if (cutting.users.count < 2 || !paid_alike(&cutting) || shelf_is_somebodys(&cutting) ||
        shelf_is_cut_apart(&cutting) || !pool_jobs(&cutting, &cut) ||
        !price_together(&cutting, &cut) || (cut.together >= cut.apart && !cut.job.taken))
        return;
    for (size_t i = 0; i < cutting.users.count; i++) {
        const struct trip_user *user = &cutting.users.at[i];
        *LIST_ADD(cutter->arena, &cut.users) = (struct trip_use){user->build, user->use};
    }
    *LIST_ADD(cutter->arena, &cutter->trip->cuts) = cut;
}

static bool is_in_force(const struct trip *trip, const struct layout *layout)
{
    char name[POOL_NAME];
    for (size_t i = 0; i < trip->cuts.count; i++) {
        pool_name(&trip->cuts.at[i].job, name);
        if (strcmp(layout->job, name) == 0)
            return true;
    }
    return false;
}

static size_t count_stale(const struct trip *trip, const struct model *facts)
{
    size_t count = 0;
    for (size_t i = 0; i < facts->layouts.count; i++) {
        const struct layout *layout = &facts->layouts.at[i];
        count += pool_is_together(layout) && !is_in_force(trip, layout);
    }
    return count;
}

void trip_cut_together(const struct trip_cutter *cutter)
{
    if (cutter->trip->builds.count < 2)
        return;
    const struct model *model = cutter->trip->builds.at[0].model;
    for (size_t i = 0; i < model->stocks.count; i++)
        cut_stock(cutter, model->stocks.at[i].key);
    for (size_t i = 0; i < cutter->trip->builds.count; i++)
        cutter->trip->stale += count_stale(cutter->trip, cutter->trip->builds.at[i].model);
}

const struct trip_cut *trip_cut_of(const struct trip *trip, size_t build, int64_t stock)
{
    for (size_t i = 0; i < trip->cuts.count; i++) {
        const struct trip_cut *cut = &trip->cuts.at[i];
        if (!stock || cut->stock != stock)
            continue;
        for (size_t k = 0; k < cut->users.count; k++) {
            if (cut->users.at[k].build == build)
                return cut;
        }
    }
    return NULL;
}
