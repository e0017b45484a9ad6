#include "desk/pool.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#define TOGETHER 'p'

static bool same_size(const struct cut_size *a, const struct cut_size *b)
{
    return a->length == b->length && a->width == b->width && a->price == b->price &&
           a->limit == b->limit;
}

static bool same_pattern(const struct cut_pattern *a, const struct cut_pattern *b)
{
    return a->along == b->along && a->across == b->across && a->half_drop == b->half_drop;
}

static bool same_sale(const struct cut_sale *a, const struct cut_sale *b)
{
    return a->ahead == b->ahead && a->reserve == b->reserve && a->least == b->least &&
           a->step == b->step;
}

static bool same_blemishes(const struct cut_job *a, const struct cut_job *b)
{
    bool same = a->blemish_count == b->blemish_count;

    for (size_t i = 0; same && i < a->blemish_count; i++)
        same = a->blemishes[i].along == b->blemishes[i].along &&
               a->blemishes[i].across == b->blemishes[i].across &&
               a->blemishes[i].length == b->blemishes[i].length &&
               a->blemishes[i].width == b->blemishes[i].width;
    return same;
}

/* The next size from an index on that counts: every one, or those on offer. */
static size_t next_size(const struct cut_job *job, size_t index, bool on_offer)
{
    while (on_offer && index < job->size_count && job->sizes[index].limit != CUT_ANY)
        index++;
    return index;
}

static bool same_sizes(const struct cut_job *a, const struct cut_job *b, bool on_offer)
{
    size_t i = next_size(a, 0, on_offer);
    size_t k = next_size(b, 0, on_offer);

    while (i < a->size_count && k < b->size_count && same_size(&a->sizes[i], &b->sizes[k])) {
        i = next_size(a, i + 1, on_offer);
        k = next_size(b, k + 1, on_offer);
    }
    return i == a->size_count && k == b->size_count;
}

/* Cut from the same sizes with the same saw: nothing but the parts differs, and with `one_shelf`
 * what of the shelf each was given. */
static bool same_saw(const struct cut_job *a, const struct cut_job *b, bool one_shelf)
{
    return a->kerf == b->kerf && a->trim == b->trim && a->passage_length == b->passage_length &&
           a->passage_width == b->passage_width && same_pattern(&a->pattern, &b->pattern) &&
           same_sale(&a->sale, &b->sale) && same_blemishes(a, b) && same_sizes(a, b, one_shelf);
}

static bool is_alone(const struct plan_job *job)
{
    return job->again || job->bought_count > 0;
}

static const struct cut_source *copy_sources(struct pool *pool, const struct plan_job *from)
{
    struct cut_source *sources = ARENA_MANY(pool->arena, struct cut_source, from->job->size_count);

    for (size_t i = 0; i < from->job->size_count; i++) {
        sources[i] = from->sources[i];
        sources[i].part = arena_text(pool->arena, from->sources[i].part);
    }
    return sources;
}

static struct pool_job *job_for(struct pool *pool, const struct plan_job *from)
{
    for (size_t i = 0; i < pool->jobs.count; i++) {
        struct pool_job *job = &pool->jobs.at[i];

        if (!job->alone && !is_alone(from) && job->stock == from->stock && job->way == from->way &&
            same_saw(&job->job, from->job, pool->one_shelf))
            return job;
    }
    struct pool_job *job = LIST_ADD(pool->arena, &pool->jobs);
    job->stock = from->stock;
    job->way = from->way;
    job->alone = is_alone(from);
    job->again = from->again;
    job->beside_bought = from->bought_count > 0;
    job->sources = copy_sources(pool, from);
    job->job = cut_job_copy(from->job, pool->arena);
    job->job.part_count = 0;
    return job;
}

static size_t last_group(const struct pool_job *job)
{
    size_t last = 0;

    for (size_t i = 0; i < job->parts.count; i++)
        if (job->parts.at[i].group != CUT_PINNED && job->parts.at[i].group > last)
            last = job->parts.at[i].group;
    return last;
}

/* The sizes of the plan that was given more of the shelf. */
static void take_sizes(struct pool *pool, struct pool_job *job, const struct plan_job *from)
{
    size_t count = from->job->size_count;
    struct cut_size *sizes = ARENA_MANY(pool->arena, struct cut_size, count);

    assert(pool->one_shelf);
    memcpy(sizes, from->job->sizes, count * sizeof *sizes);
    job->job.sizes = sizes;
    job->job.size_count = count;
    job->sources = copy_sources(pool, from);
}

/* Parts of several builds match each among themselves: groups are numbered on. */
void pool_add_job(struct pool *pool, const struct plan *plan, const struct plan_job *from)
{
    struct pool_job *job = job_for(pool, from);
    size_t groups = last_group(job);

    if (from->job->size_count > job->job.size_count)
        take_sizes(pool, job, from);
    for (size_t i = 0; i < from->job->part_count; i++) {
        struct cut_piece *part = LIST_ADD(pool->arena, &job->parts);

        *part = from->job->parts[i];
        if (part->group > 0 && part->group != CUT_PINNED)
            part->group += groups;
        *LIST_ADD(pool->arena, &job->labels) =
            arena_format(pool->arena, "%s: %s", plan->facts->build.name,
                         plan->parts.at[from->first_part + i].label);
    }
    job->job.parts = job->parts.at;
    job->job.part_count = job->parts.count;
    job->apart += from->layout->cost;
    job->builds++;
}

void pool_add(struct pool *pool, const struct plan *plan)
{
    for (size_t i = 0; i < plan->jobs.count; i++)
        if (!plan->jobs.at[i].taken)
            pool_add_job(pool, plan, &plan->jobs.at[i]);
}

/* ---- taken ---- */

void pool_name(const struct pool_job *job, char ret_name[POOL_NAME])
{
    snprintf(ret_name, POOL_NAME, "%c%015" PRIx64, TOGETHER, cut_digest(job->way, &job->job) >> 4);
}

bool pool_is_together(const struct layout *layout)
{
    return layout->job[0] == TOGETHER;
}

void pool_add_taken(struct pool *pool, const struct model *facts)
{
    for (size_t i = 0; i < facts->layouts.count; i++) {
        const struct layout *layout = &facts->layouts.at[i];

        if (pool_is_together(layout))
            *LIST_ADD(pool->arena, &pool->taken) =
                (struct layout){.job = arena_text(pool->arena, layout->job),
                                .content = arena_text(pool->arena, layout->content)};
    }
}

static bool read_taken(const struct pool *pool, struct pool_job *job)
{
    char name[POOL_NAME];

    pool_name(job, name);
    for (size_t i = 0; i < pool->taken.count; i++)
        if (strcmp(pool->taken.at[i].job, name) == 0)
            return cut_layout_read(pool->taken.at[i].content, job->way, &job->job, pool->arena,
                                   &job->layout);
    return false;
}

void pool_cut(struct pool *pool, enum cut_effort effort)
{
    for (size_t i = 0; i < pool->jobs.count; i++) {
        struct pool_job *job = &pool->jobs.at[i];

        job->taken = read_taken(pool, job);
        if (!job->taken)
            cut_search_all(job->way, &job->job, effort, pool->arena, &job->layout);
    }
}
