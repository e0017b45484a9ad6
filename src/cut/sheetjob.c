#include "cut/sheetjob.h"

#include "base/whole.h"

#include <assert.h>

/* The greatest common divisor of all lengths that the search adds up. */
static int64_t common_of(const struct cut_job *job)
{
    int64_t unit = 0;

    for (size_t i = 0; i < job->part_count; i++) {
        unit = whole_common_divisor(unit, job->parts[i].length + job->kerf);
        unit = whole_common_divisor(unit, job->parts[i].width + job->kerf);
    }
    for (size_t i = 0; i < job->size_count; i++) {
        int64_t length = job->sizes[i].length - 2 * job->trim + job->kerf;
        int64_t width = job->sizes[i].width - 2 * job->trim + job->kerf;

        if (length > 0 && width > 0)
            unit = whole_common_divisor(whole_common_divisor(unit, length), width);
    }
    return unit > 0 ? unit : 1;
}

bool sheetjob_fits(const struct sheet_size *size, const struct sheet_part *part)
{
    return (part->size[0] <= size->size[0] && part->size[1] <= size->size[1]) ||
           (part->may_turn && part->size[1] <= size->size[0] && part->size[0] <= size->size[1]);
}

bool sheetjob_alike(const struct sheet_part *a, const struct sheet_part *b)
{
    return a->size[0] == b->size[0] && a->size[1] == b->size[1] && a->may_turn == b->may_turn;
}

static void make_size(struct sheet_job *made, size_t index)
{
    assert(index < made->job->size_count);

    const struct cut_size *size = &made->job->sizes[index];
    struct sheet_size *sized = &made->sizes[index];
    int64_t length = size->length - 2 * made->job->trim + made->job->kerf;
    int64_t width = size->width - 2 * made->job->trim + made->job->kerf;

    if (length <= 0 || width <= 0)
        return;
    sized->size[WAY_ALONG] = (int32_t)(length / made->unit);
    sized->size[WAY_ACROSS] = (int32_t)(width / made->unit);
    assert(length % made->unit == 0 && width % made->unit == 0);
    sized->area = (int64_t)sized->size[0] * sized->size[1];
    sized->any = size->limit == CUT_ANY;
    sized->price = size->price;
    while (sized->area >> made->area_shift >= INT64_C(1) << SHEET_AREA_BITS)
        made->area_shift++;
}

static void price_sizes(struct sheet_job *made)
{
    made->fair_prices = false;
    for (size_t i = 0; i < made->size_count; i++)
        if (made->sizes[i].price > 0)
            made->fair_prices = true;
    for (size_t i = 0; i < made->size_count && !made->fair_prices; i++)
        if (made->sizes[i].any)
            made->sizes[i].price = made->sizes[i].area;
}

static void make_part(struct sheet_job *made, size_t index)
{
    assert(index < made->job->part_count);

    const struct cut_piece *part = &made->job->parts[index];
    struct sheet_part *sized = &made->parts[index];

    sized->size[WAY_ALONG] = (int32_t)((part->length + made->job->kerf) / made->unit);
    sized->size[WAY_ACROSS] = (int32_t)((part->width + made->job->kerf) / made->unit);
    assert((part->length + made->job->kerf) % made->unit == 0);
    sized->area = (int64_t)sized->size[0] * sized->size[1];
    sized->may_turn = part->may_turn && sized->size[0] != sized->size[1];
    for (size_t s = 0; s < made->size_count; s++) {
        struct sheet_size *size = &made->sizes[s];

        if (made->job->sizes[s].limit == 0 || !sheetjob_fits(size, sized))
            continue;
        size->usable = true;
        sized->fits = true;
        sized->on_offer |= size->any;
    }
}

/* A sheet for each part that fits is as many as can be of use. */
static void limit_size(struct sheet_job *made, size_t index)
{
    assert(index < made->size_count);

    struct sheet_size *size = &made->sizes[index];
    int64_t limit = made->job->sizes[index].limit;
    size_t use = 0;

    for (size_t i = 0; i < made->part_count; i++)
        use += sheetjob_fits(size, &made->parts[i]);
    size->limit = size->any || limit > (int64_t)use ? use : (size_t)limit;
}

void sheetjob_make(const struct cut_job *job, struct arena *arena, struct sheet_job *ret_job)
{
    assert(job->kerf >= 0 && job->trim >= 0);
    *ret_job = (struct sheet_job){.job = job,
                                  .parts = ARENA_MANY(arena, struct sheet_part, job->part_count),
                                  .part_count = job->part_count,
                                  .sizes = ARENA_MANY(arena, struct sheet_size, job->size_count),
                                  .size_count = job->size_count,
                                  .unit = common_of(job)};
    for (size_t i = 0; i < ret_job->size_count; i++)
        make_size(ret_job, i);
    price_sizes(ret_job);
    for (size_t i = 0; i < ret_job->part_count; i++)
        make_part(ret_job, i);
    for (size_t i = 0; i < ret_job->size_count; i++)
        limit_size(ret_job, i);
}
