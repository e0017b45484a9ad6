/*
 * What lies on the saw is a list of rectangles that never overlap: the sheet, and then what each
 * stroke makes of one of them. A stroke belongs to the rectangle whose edges it runs between. At
 * the end each part must be one of the rectangles.
 */
#include "cut/verify_saw.h"

#include <assert.h>

struct slab {
    int64_t near[2], far[2]; /* along, across: half-open */
};

struct sawing {
    const struct cut_job *job;
    const struct cut_layout *layout;
    struct arena *arena;
    LIST_OF(struct slab) slabs; /* of the sheet on the saw */
    size_t next;                /* stroke */
    int64_t fence;
    struct saw_check check;
};

static bool takes_stroke(const struct sawing *sawing, const struct slab *slab,
                         const struct cut_stroke *stroke)
{
    int way = stroke->across ? 0 : 1;

    return stroke->from == slab->near[!way] && stroke->to == slab->far[!way] &&
           stroke->at + sawing->job->kerf > slab->near[way] && stroke->at < slab->far[way];
}

static struct slab *find_slab(const struct sawing *sawing, const struct cut_stroke *stroke)
{
    for (size_t i = 0; i < sawing->slabs.count; i++)
        if (takes_stroke(sawing, &sawing->slabs.at[i], stroke))
            return &sawing->slabs.at[i];
    return NULL;
}

/* The fence touches what is cut at one of its two edges. */
static bool fence_right(const struct sawing *sawing, const struct slab *slab,
                        const struct cut_stroke *stroke)
{
    int way = stroke->across ? 0 : 1;

    return stroke->fence == stroke->at - slab->near[way] ||
           stroke->fence == slab->far[way] - stroke->at - sawing->job->kerf;
}

static void cut_slab(struct sawing *sawing, struct slab *slab, const struct cut_stroke *stroke)
{
    int way = stroke->across ? 0 : 1;
    struct slab beyond = *slab;

    assert(takes_stroke(sawing, slab, stroke));
    slab->far[way] = stroke->at;
    beyond.near[way] = stroke->at + sawing->job->kerf;
    *LIST_ADD(sawing->arena, &sawing->slabs) = beyond;
}

static bool passes(const struct sawing *sawing, const struct slab *slab)
{
    int64_t length = slab->far[0] - slab->near[0], width = slab->far[1] - slab->near[1];
    int64_t most_length = sawing->job->passage_length, most_width = sawing->job->passage_width;

    return (length <= most_length && width <= most_width) ||
           (width <= most_length && length <= most_width) || length <= 0 || width <= 0;
}

static bool all_pass(const struct sawing *sawing)
{
    for (size_t i = 0; i < sawing->slabs.count; i++)
        if (!passes(sawing, &sawing->slabs.at[i]))
            return false;
    return true;
}

static bool is_slab(const struct sawing *sawing, const struct cut_place *place)
{
    const struct cut_piece *part = &sawing->job->parts[place->part];
    int64_t length = place->turned ? part->width : part->length;
    int64_t width = place->turned ? part->length : part->width;

    for (size_t i = 0; i < sawing->slabs.count; i++) {
        const struct slab *slab = &sawing->slabs.at[i];

        if (slab->near[0] == place->along && slab->near[1] == place->across &&
            slab->far[0] == place->along + length && slab->far[1] == place->across + width)
            return true;
    }
    return false;
}

static bool saw_stroke(struct sawing *sawing, const struct cut_stroke *stroke)
{
    struct slab *slab = find_slab(sawing, stroke);

    if (!slab || !fence_right(sawing, slab, stroke))
        return false;
    cut_slab(sawing, slab, stroke);
    sawing->check.fences += stroke->fence != sawing->fence;
    sawing->fence = stroke->fence;
    return true;
}

static bool saw_sheet(struct sawing *sawing, size_t index)
{
    const struct cut_blank *blank = &sawing->layout->blanks.at[index];
    const struct cut_size *size = &sawing->job->sizes[blank->size];
    bool asked = sawing->job->passage_length > 0, passed;
    size_t first = sawing->next;

    sawing->slabs.count = 0;
    *LIST_ADD(sawing->arena, &sawing->slabs) = (struct slab){{0, 0}, {size->length, size->width}};
    passed = !asked || all_pass(sawing);
    for (; sawing->next < sawing->layout->strokes.count; sawing->next++) {
        const struct cut_stroke *stroke = &sawing->layout->strokes.at[sawing->next];

        if (stroke->blank != index)
            break;
        if (!saw_stroke(sawing, stroke))
            return false;
        if (sawing->next == first && !passed)
            passed = all_pass(sawing);
    }
    sawing->check.stuck += !passed;
    for (size_t i = blank->first; i < blank->first + blank->count; i++)
        if (!is_slab(sawing, &sawing->layout->places.at[i]))
            return false;
    return true;
}

struct saw_check saw_check(const struct cut_job *job, const struct cut_layout *layout,
                           struct arena *arena)
{
    struct sawing sawing = {.job = job, .layout = layout, .arena = arena, .fence = -1};

    sawing.check.sound = true;
    for (size_t i = 0; i < layout->blanks.count && sawing.check.sound; i++)
        sawing.check.sound = saw_sheet(&sawing, i);
    if (sawing.next != layout->strokes.count)
        sawing.check.sound = false;
    return sawing.check;
}
