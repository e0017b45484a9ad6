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

static bool same_goods(const struct bought *a, const struct bought *b, bool stick)
{
    return a->stock == b->stock && a->length == b->length && a->pack == b->pack &&
           (stick || a->width == b->width);
}

/* Pieces of the goods that entry `first` names, in all entries; 0 where one before it names them.
 */
static int64_t pieces_bought(const struct model *model, size_t first, bool stick)
{
    const struct bought *goods = &model->boughts.at[first];
    int64_t pieces = 0;

    for (size_t i = 0; i < model->boughts.count; i++) {
        const struct bought *bought = &model->boughts.at[i];

        if (!same_goods(bought, goods, stick))
            continue;
        if (i < first)
            return 0;
        pieces += bought->packs * bought->pack;
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
        if (pieces > 0)
            job_add_size(job, (struct cut_size){goods->length, stick ? 0 : goods->width, 0, pieces},
                         (struct source){.offer = bought_offer(model, goods), .bought = true});
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
