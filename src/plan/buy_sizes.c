/*
 * Sticks, sheets and slabs onto the list. A length may be sold by the piece and in bundles: the
 * layouts say how many pieces of it are cut, and the packs that cost least together make them up,
 * beside those that were bought. A bundle holds what single ones would cost more for, or what is
 * left of it lies about: which of both is found by going through every number of pieces.
 */
#include "plan/buy_job.h"

#include "model/offer.h"
#include "plan/geometry.h"

#include <assert.h>

#define PIECES_MOST 10000 /* beyond it one offer makes up all of them */

/* One of the offers of a size. */
struct selling {
    size_t size;               /* of the job */
    const struct offer *offer; /* NULL: nobody has it */
    int64_t pack;
    int64_t price; /* of a pack, without tax; 0: unknown */
    int64_t had;   /* packs that were bought */
    int64_t packs; /* with those */
};

/* Pieces of one size. */
struct batch {
    LIST_OF(struct selling) sellings;
    int64_t whole; /* length of a stick, area of the others */
    int64_t count; /* pieces that are cut */
    int64_t need;  /* with those held against crooked ones */
    int64_t used;  /* lengths or areas of what is cut from them */
};

/* ---- what is cut ---- */

static int64_t used_of_blank(const struct cutting_job *job, const struct cut_layout *layout,
                             const struct cut_blank *blank)
{
    int64_t used = 0;

    if (job->stock->kind == STOCK_STICK)
        return blank->used;
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct part *part =
            &job->planning->plan->parts.at[job->first + layout->places.at[i].part];

        used += part->length / LENGTH_MM * (part->width / LENGTH_MM);
    }
    return used;
}

/* Whether a blank is on the line of a size: what was bought stands on its offer's. */
static bool is_on_line(const struct cutting_job *job, size_t size, const struct cut_blank *blank)
{
    const struct cut_source *source = &job->sources.at[blank->size];

    return blank->size == size || (source->origin == SIZE_BOUGHT && source->offer &&
                                   source->offer == job->sources.at[size].offer);
}

static void count_pieces(const struct cutting_job *job, const struct cut_layout *layout,
                         size_t size, struct batch *batch)
{
    if (job->begun)
        batch->count += job_cut_of(job, size, &batch->used);
    for (size_t i = 0; i < layout->blanks.count; i++) {
        if (!is_on_line(job, size, &layout->blanks.at[i]))
            continue;
        batch->count++;
        batch->used += used_of_blank(job, layout, &layout->blanks.at[i]);
    }
}

/* ---- who sells it ---- */

/* Packs of an offer that were bought; those that count on a line before it do not count here. */
static int64_t packs_had(const struct model *model, const struct batch *batch,
                         const struct offer *offer)
{
    int64_t packs = 0;

    for (size_t i = 0; i < model->boughts.count; i++) {
        const struct bought *bought = &model->boughts.at[i];
        bool counted = false;

        for (size_t k = 0; k < batch->sellings.count && !counted; k++)
            counted = bought_is_of(model, bought, batch->sellings.at[k].offer);
        if (!counted && bought_is_of(model, bought, offer))
            packs += bought_packs(bought, offer);
    }
    return packs;
}

static void add_selling(const struct cutting_job *job, size_t size, struct batch *batch)
{
    const struct model *model = job->planning->model;
    const struct offer *offer = MODEL_FIND(model, offer, job->sources.at[size].offer);
    int64_t had = offer ? packs_had(model, batch, offer) : 0;

    *LIST_ADD(job->planning->arena, &batch->sellings) = (struct selling){
        size, offer, offer ? offer->pack : 1, offer ? offer_price(model, offer) : 0, had, had};
}

static bool is_sold_as(const struct cutting_job *job, size_t a, size_t b)
{
    const struct cut_size *sizes = job->sizes.at;

    return job->sources.at[a].origin == SIZE_TO_BUY && job->sources.at[b].origin == SIZE_TO_BUY &&
           sizes[a].length == sizes[b].length && sizes[a].width == sizes[b].width;
}

/* ---- which packs ---- */

/* What a number of pieces costs at the least, the last pack of it, and how many packs it takes. */
struct sum {
    int64_t price, packs;
    const struct selling *last;
};

static struct sum sum_with(const struct sum *sums, int64_t pieces, const struct selling *selling)
{
    int64_t left = pieces > selling->pack ? pieces - selling->pack : 0;

    return (struct sum){sums[left].price + selling->price, sums[left].packs + 1, selling};
}

static bool is_less(const struct sum *a, const struct sum *b)
{
    return !b->last || a->price < b->price || (a->price == b->price && a->packs < b->packs);
}

static void choose_together(const struct cutting_job *job, struct batch *batch, int64_t missing)
{
    struct sum *sums = ARENA_MANY(job->planning->arena, struct sum, (size_t)missing + 1);

    for (int64_t pieces = 1; pieces <= missing; pieces++)
        for (size_t i = 0; i < batch->sellings.count; i++) {
            struct sum sum = sum_with(sums, pieces, &batch->sellings.at[i]);

            if (is_less(&sum, &sums[pieces]))
                sums[pieces] = sum;
        }
    while (missing > 0) {
        struct selling *selling = &batch->sellings.at[sums[missing].last - batch->sellings.at];

        selling->packs++;
        missing -= selling->pack < missing ? selling->pack : missing;
    }
}

static void choose_packs(const struct cutting_job *job, struct batch *batch)
{
    int64_t missing = batch->need;

    assert(batch->sellings.count > 0);
    for (size_t i = 0; i < batch->sellings.count; i++)
        missing -= batch->sellings.at[i].had * batch->sellings.at[i].pack;
    if (missing <= 0)
        return;
    if (batch->sellings.count == 1 || missing > PIECES_MOST)
        batch->sellings.at[0].packs += whole_divide_up(missing, batch->sellings.at[0].pack);
    else
        choose_together(job, batch, missing);
}

/* ---- the lines ---- */

/* Pieces are told on the first lines that hold them; what is used up is shared by what they hold.
 */
static void add_lines(struct cutting_job *job, struct batch *batch)
{
    int64_t need = batch->need, count = batch->count, all = 0;

    for (size_t i = 0; i < batch->sellings.count; i++)
        all += batch->sellings.at[i].packs * batch->sellings.at[i].pack;
    for (size_t i = 0; i < batch->sellings.count; i++) {
        const struct selling *selling = &batch->sellings.at[i];
        int64_t holds = selling->packs * selling->pack;
        int64_t used = batch->used;
        struct purchase *purchase;

        if (holds == 0)
            continue;
        purchase = purchase_add(job->planning, job->stock->key, job->stock->kind, "");
        purchase->measure = QUANTITY_COUNT;
        purchase->need = need < holds ? need : holds;
        purchase->used = count < holds ? count : holds;
        purchase->packs = selling->packs;
        need -= purchase->need;
        count -= purchase->used;
        if (holds < all)
            (void)whole_share(batch->used, holds, all, &used);
        purchase_price(job->planning, purchase, selling->offer, used, holds * batch->whole);
    }
}

void job_buy_sizes(struct cutting_job *job, const struct cut_layout *layout)
{
    bool stick = job->stock->kind == STOCK_STICK;

    for (size_t i = 0; i < job->sizes.count; i++) {
        const struct cut_size *size = &job->sizes.at[i];
        struct batch batch = {
            .whole = stick ? size->length : size->length / LENGTH_MM * (size->width / LENGTH_MM)};
        size_t first = 0;

        while (!is_sold_as(job, first, i) && first < i)
            first++;
        if (first < i || job->sources.at[i].origin != SIZE_TO_BUY)
            continue;
        for (size_t k = i; k < job->sizes.count; k++) {
            if (!is_sold_as(job, i, k))
                continue;
            add_selling(job, k, &batch);
            count_pieces(job, layout, k, &batch);
        }
        batch.need = stick ? job_with_crooked(job, batch.count) : batch.count;
        if (batch.count == 0)
            continue;
        choose_packs(job, &batch);
        add_lines(job, &batch);
    }
}
