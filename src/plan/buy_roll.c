/*
 * What is bought of a roll: one length by its layout. What was bought before is a length of its own
 * and cannot be made longer; of parts that lie beyond its end the whole is bought, in a further
 * length, and not what the layout is longer by.
 */
#include "plan/buy_job.h"

#include "cut/rolljob.h"
#include "model/offer.h"
#include "plan/geometry.h"

#include <assert.h>
#include <string.h>

/* ---- prices ---- */

/* The offer of a roll that costs least by length; one without a price only where none has one. */
static const struct offer *cheapest_roll(const struct model *model, int64_t stock)
{
    const struct offer *best = NULL;
    int64_t least = 0;

    for (size_t i = 0; i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];
        int64_t by_length;

        if (offer->stock != stock || offer->length == 0 ||
            whole_share(offer_price(model, offer), LENGTH_MAX, offer->length, &by_length))
            continue;
        if (!best || best->price == 0 || (offer->price > 0 && by_length < least)) {
            best = offer;
            least = by_length;
        }
    }
    return best;
}

static void price_roll(struct planning *planning, struct purchase *purchase,
                       const struct offer *offer, int64_t used)
{
    purchase_price(planning, purchase, offer, 0, 0);
    if (!purchase->priced)
        return;
    assert(offer && offer->length > 0);
    purchase->priced =
        whole_share(offer_price(planning->model, offer), purchase->length, offer->length,
                    &purchase->price) == 0 &&
        whole_share(offer->price, purchase->length, offer->length, &purchase->stated) == 0;
    purchase->value = purchase->price;
    (void)whole_share(purchase->price, used, purchase->length, &purchase->value);
}

/* ---- lengths ---- */

/* Parts on the roll that no length has been found for yet. */
struct unrolled {
    const struct cutting_job *job;
    const struct cut_layout *layout;
    bool *open; /* by place */
};

static int64_t far_of(const struct unrolled *unrolled, size_t place)
{
    const struct cut_place *at = &unrolled->layout->places.at[place];
    const struct part *part =
        &unrolled->job->planning->plan->parts.at[unrolled->job->first + at->part];

    return at->along + (at->turned ? part->width : part->length);
}

/* From the first of them to the end of the last; *ret_begin is where that is. 0 for none. */
static int64_t span_of(const struct unrolled *unrolled, int64_t *ret_begin)
{
    int64_t begin = INT64_MAX;
    int64_t end = 0;

    for (size_t i = 0; i < unrolled->layout->places.count; i++) {
        if (!unrolled->open[i])
            continue;
        begin = length_smaller(begin, unrolled->layout->places.at[i].along);
        end = length_larger(end, far_of(unrolled, i));
    }
    *ret_begin = begin;
    return end > 0 ? end - begin : 0;
}

/* Parts keep their places to each other on a length that begins with the first of them; what may
 * be lost ahead until the pattern lies right is no place for one. False where none was open. */
static bool cut_from(struct unrolled *unrolled, int64_t length)
{
    const struct cut_sale sale = job_sale(unrolled->job);
    int64_t begin;

    if (span_of(unrolled, &begin) == 0)
        return false;
    for (size_t i = 0; i < unrolled->layout->places.count; i++)
        if (far_of(unrolled, i) <= begin + length - sale.ahead)
            unrolled->open[i] = false;
    return true;
}

static void open_places(struct unrolled *unrolled)
{
    const struct cut_layout *layout = unrolled->layout;

    unrolled->open = ARENA_MANY(unrolled->job->planning->arena, bool, layout->places.count);
    for (size_t i = 0; i < layout->blanks.count; i++) {
        const struct cut_blank *blank = &layout->blanks.at[i];

        for (size_t k = blank->first; k < blank->first + blank->count; k++)
            unrolled->open[k] = !unrolled->job->sources.at[blank->size].leftover;
    }
}

/* The one length that is missing from what was bought, as it is cut. */
static int64_t missing_length(const struct cutting_job *job, const struct cut_layout *layout)
{
    const struct model *model = job->planning->model;
    struct unrolled unrolled = {.job = job, .layout = layout};
    int64_t begin;

    open_places(&unrolled);
    for (size_t i = 0; i < model->boughts.count; i++) {
        const struct bought *bought = &model->boughts.at[i];

        if (bought->stock != job->stock->key)
            continue;
        for (int64_t n = bought->packs; n > 0 && cut_from(&unrolled, bought->length);)
            n--;
    }
    return span_of(&unrolled, &begin);
}

/* ---- what is told ---- */

/* Is something of the job cut already? Then what was bought is what there is. */
static bool is_cut_into(const struct cutting_job *job)
{
    const struct model *model = job->planning->model;
    const struct plan *plan = job->planning->plan;

    for (size_t i = 0; i < model->cut_parts.count; i++)
        for (size_t k = job->first; k < job->first + job->count; k++)
            if (strcmp(plan->parts.at[k].label, model->cut_parts.at[i].part) == 0)
                return true;
    return false;
}

/* Cloth that no longer suffices: its width or a box came out otherwise, or the cover changed. */
static void tell_cloth_short(const struct cutting_job *job, int64_t bought, int64_t used,
                             int64_t missing)
{
    struct finding *finding;

    if (job->stock->kind != STOCK_CLOTH || missing == 0 || is_cut_into(job))
        return;
    finding = finding_add(job->planning, FINDING_CLOTH_SHORT, ENTITY_stock, job->stock->key);
    argument_length(finding, 0, bought);
    argument_length(finding, 1, used);
    argument_length(finding, 2, missing);
}

/* What is left of a cover's cloth when all is cut mends it one day. */
static void tell_reserve(struct planning *planning, const struct stock *stock,
                         const struct purchase *purchase)
{
    int64_t wanted = planning->value[TRADE_CLOTH_RESERVE];
    int64_t left = purchase->length - purchase->used;
    bool covers = false;
    struct finding *finding;

    for (size_t i = 0; i < planning->model->layers.count; i++)
        covers |= planning->model->layers.at[i].kind == LAYER_COVER &&
                  planning->model->layers.at[i].stock == stock->key;
    if (!covers || left >= wanted)
        return;
    finding = finding_add(planning, FINDING_CLOTH_NO_RESERVE, ENTITY_stock, stock->key);
    argument_length(finding, 0, left);
    argument_length(finding, 1, wanted);
}

/* ---- the line ---- */

static int64_t length_bought(const struct cutting_job *job)
{
    const struct model *model = job->planning->model;
    int64_t length = 0;

    for (size_t i = 0; i < model->boughts.count; i++)
        if (model->boughts.at[i].stock == job->stock->key)
            length += model->boughts.at[i].length * model->boughts.at[i].packs;
    return length;
}

static int64_t length_used(const struct cutting_job *job, const struct cut_layout *layout)
{
    int64_t used = 0;

    for (size_t i = 0; i < layout->blanks.count; i++)
        if (!job->sources.at[layout->blanks.at[i].size].leftover)
            used += layout->blanks.at[i].used;
    return used;
}

/* What was bought before, and what is missing from it as it is sold. */
static int64_t length_in_all(const struct cutting_job *job, const struct cut_layout *layout,
                             int64_t bought, int64_t missing)
{
    const struct cut_sale sale = job_sale(job);

    if (bought == 0)
        return layout->cost;
    return bought + (missing > 0 ? roll_sold(&sale, missing) : 0);
}

void job_buy_roll(struct cutting_job *job, const struct cut_layout *layout)
{
    int64_t used = length_used(job, layout);
    int64_t bought = length_bought(job);
    int64_t missing = bought > 0 ? missing_length(job, layout) : 0;
    struct purchase *purchase;

    if (layout->cost == 0 && bought == 0)
        return;
    tell_cloth_short(job, bought, used, missing);
    purchase = purchase_add(job->planning, job->stock->key, job->stock->kind, "");
    purchase->measure = QUANTITY_LENGTH;
    purchase->used = used;
    purchase->need = purchase->length = length_in_all(job, layout, bought, missing);
    purchase->packs = 1;
    tell_reserve(job->planning, job->stock, purchase);
    price_roll(job->planning, purchase, cheapest_roll(job->planning->model, job->stock->key), used);
}

static bool has_parts(const struct plan *plan, int64_t stock)
{
    for (size_t i = 0; i < plan->parts.count; i++)
        if (plan->parts.at[i].stock == stock)
            return true;
    return false;
}

void job_keep_rolls(struct planning *planning)
{
    const struct model *model = planning->model;
    const struct cut_layout nothing = {0};

    for (size_t i = 0; i < model->stocks.count; i++) {
        struct cutting_job job = {.planning = planning, .stock = &model->stocks.at[i]};

        if ((job.stock->kind == STOCK_CLOTH || job.stock->kind == STOCK_BATTING) &&
            !has_parts(planning->plan, job.stock->key))
            job_buy_roll(&job, &nothing);
    }
}
