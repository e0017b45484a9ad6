/*
 * Goods that were bought, as sizes to cut from. Nothing more is paid for them, so that a layout
 * made after the purchase takes them before anything else.
 *
 * Of a job's sizes those on the shelf and on offer come first and what was bought last: without
 * that end it is the job as it was before the purchase, and indices below stay what they are.
 */
#include "plan/goods.h"

#include "cut/known.h"
#include "plan/buy_job.h"

#include <assert.h>
#include <string.h>

/* ---- sizes ---- */

/* What was bought before a purchase told how many are in a pack says it by its size, where that is
 * sold in one pack only; else 0. */
static int64_t pack_of(const struct model *model, const struct bought *goods)
{
    int64_t pack = goods->pack;

    for (size_t i = 0; i < model->offers.count && goods->pack == 0; i++) {
        const struct offer *offer = &model->offers.at[i];

        if (offer->stock != goods->stock || offer->length != goods->length ||
            offer->width != goods->width)
            continue;
        if (pack && pack != offer->pack)
            return 0;
        pack = offer->pack;
    }
    return pack;
}

static bool same_goods(const struct model *model, const struct bought *a, const struct bought *b,
                       bool stick)
{
    return a->stock == b->stock && a->length == b->length &&
           pack_of(model, a) == pack_of(model, b) && (stick || a->width == b->width);
}

/* Pieces of the goods that entry `first` names, in all entries; 0 where one before it names them.
 */
static int64_t pieces_bought(const struct model *model, size_t first, bool stick)
{
    const struct bought *goods = &model->boughts.at[first];
    int64_t pieces = 0;

    for (size_t i = 0; i < model->boughts.count; i++) {
        const struct bought *bought = &model->boughts.at[i];

        if (!same_goods(model, bought, goods, stick))
            continue;
        if (i < first)
            return 0;
        pieces += bought->packs * pack_of(model, bought);
    }
    return pieces;
}

/* As many sticks as are straight when `sticks` were bought. */
static int64_t straight_of(const struct cutting_job *job, int64_t sticks)
{
    int64_t straight = sticks;

    while (straight > 0 && job_with_crooked(job, straight) > sticks)
        straight--;
    return straight;
}

/* What is cut of the goods already. */
static int64_t cut_of_goods(const struct cutting_job *job, const struct bought *goods)
{
    bool stick = job->stock->kind == STOCK_STICK;
    const struct cut_stock *from;
    int64_t count = 0;

    for (size_t at = 0; (from = next_cut_stock(job->planning->model, job->stock->key, &at));)
        count += from->origin == ORIGIN_BOUGHT && from->length == goods->length &&
                 from->pack == pack_of(job->planning->model, goods) &&
                 (stick || from->width == goods->width);
    return count;
}

static void add_goods(struct cutting_job *job, const struct bought *goods, int64_t pieces)
{
    const struct offer *offer = bought_offer(job->planning->model, goods);
    int64_t width = job->stock->kind == STOCK_STICK ? 0 : goods->width;

    job_add_size(job, (struct cut_size){goods->length, width, 0, pieces},
                 (struct cut_source){.origin = SIZE_BOUGHT,
                                     .offer = offer ? offer->key : 0,
                                     .pack = pack_of(job->planning->model, goods),
                                     .length = goods->length,
                                     .part = ""});
}

size_t job_add_goods(struct cutting_job *job)
{
    const struct model *model = job->planning->model;
    bool stick = job->stock->kind == STOCK_STICK;
    size_t before = job->sizes.count;

    for (size_t i = 0; i < model->boughts.count && !job_is_roll(job->stock); i++) {
        const struct bought *goods = &model->boughts.at[i];
        int64_t pieces = 0;

        if (goods->stock == job->stock->key && goods->length > 0 && (stick || goods->width > 0))
            pieces = pieces_bought(model, i, stick);
        if (stick)
            pieces = straight_of(job, pieces);
        pieces -= cut_of_goods(job, goods);
        if (pieces > 0)
            add_goods(job, goods, pieces);
    }
    return job->sizes.count - before;
}

/* ---- the job without them ---- */

uint64_t plan_goods_digest(const struct plan_job *job, struct arena *arena)
{
    assert(job->bought_count <= job->job->size_count);

    struct cut_job bare = *job->job;
    struct cut_size *sizes = ARENA_MANY(arena, struct cut_size, bare.size_count);

    bare.size_count -= job->bought_count;
    if (bare.size_count > 0)
        memcpy(sizes, bare.sizes, bare.size_count * sizeof *sizes);
    for (size_t i = 0; i < bare.size_count; i++)
        sizes[i].price = 0;
    bare.sizes = sizes;
    return cut_digest(job->way, &bare);
}

/* The size on offer, below `count`, that is as large as another; `count` where there is none. */
static size_t offered_as(const struct cut_size *sizes, size_t count, size_t size)
{
    size_t found = 0;

    while (found < count &&
           (sizes[found].limit != CUT_ANY || sizes[found].length != sizes[size].length ||
            sizes[found].width != sizes[size].width))
        found++;
    return found;
}

bool plan_goods_layout(const struct plan_job *job, struct arena *arena,
                       struct cut_layout *ret_layout)
{
    size_t offered = job->job->size_count - job->bought_count;
    struct cut_layout layout = cut_layout_copy(job->layout, arena);

    for (size_t i = 0; i < layout.blanks.count; i++) {
        struct cut_blank *blank = &layout.blanks.at[i];

        if (blank->size >= offered)
            blank->size = offered_as(job->job->sizes, offered, blank->size);
        if (blank->size == offered)
            return false;
    }
    *ret_layout = layout;
    return true;
}
