#include "desk/pool.h"

#include <string.h>

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

/* Cut from the same sizes with the same saw: nothing but the parts differs. */
static bool same_saw(const struct cut_job *a, const struct cut_job *b)
{
    bool same = a->size_count == b->size_count && a->kerf == b->kerf && a->trim == b->trim &&
                a->passage_length == b->passage_length && a->passage_width == b->passage_width &&
                same_pattern(&a->pattern, &b->pattern) && same_sale(&a->sale, &b->sale) &&
                same_blemishes(a, b);

    for (size_t i = 0; same && i < a->size_count; i++)
        same = same_size(&a->sizes[i], &b->sizes[i]);
    return same;
}

static struct pool_job *job_for(struct pool *pool, const struct plan_job *from)
{
    for (size_t i = 0; i < pool->jobs.count; i++) {
        struct pool_job *job = &pool->jobs.at[i];

        if (job->stock == from->stock && job->way == from->way && same_saw(&job->job, from->job))
            return job;
    }
    struct pool_job *job = LIST_ADD(pool->arena, &pool->jobs);
    job->stock = from->stock;
    job->way = from->way;
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

/* Parts of several builds match each among themselves: groups are numbered on. */
static void add_job(struct pool *pool, const struct plan *plan, const struct plan_job *from)
{
    struct pool_job *job = job_for(pool, from);
    size_t groups = last_group(job);

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
            add_job(pool, plan, &plan->jobs.at[i]);
}

void pool_cut(struct pool *pool, enum cut_effort effort)
{
    for (size_t i = 0; i < pool->jobs.count; i++) {
        struct pool_job *job = &pool->jobs.at[i];

        cut_search_all(job->way, &job->job, effort, pool->arena, &job->layout);
    }
}
