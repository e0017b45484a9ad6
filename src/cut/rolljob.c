/*
 * Lengths are as the job's; `across` counts from the usable edge. A kerf is added to the far and
 * the right side of every part and to the width, so that parts may then touch; what is blemished
 * needs no kerf, and so gives one up on its near and left sides.
 */
#include "cut/rolljob.h"

#include "base/quantity.h"

#include <assert.h>
#include <stdlib.h>

#define RATIO_ONE 1000000

/* ---- what is sold ---- */

int64_t roll_sold(const struct cut_sale *sale, int64_t used)
{
    int64_t wanted = used + sale->ahead;

    if (used <= 0)
        return 0;
    if (!whole_multiply(used + sale->ahead, RATIO_ONE + sale->reserve, &wanted))
        wanted = whole_divide_up(wanted, RATIO_ONE);
    if (wanted < sale->least)
        wanted = sale->least;
    return sale->step > 0 ? whole_divide_up(wanted, sale->step) * sale->step : wanted;
}

int64_t roll_used_for(const struct cut_sale *sale, int64_t cost)
{
    int64_t low = 0, high = cost > 0 ? cost : 0;

    if (cost < 0)
        return -1;
    while (low < high) {
        int64_t middle = low + (high - low + 1) / 2;

        if (roll_sold(sale, middle) <= cost)
            low = middle;
        else
            high = middle - 1;
    }
    return low;
}

/* ---- the job ---- */

static int64_t usable_width(const struct cut_job *job, size_t size)
{
    assert(size < job->size_count);
    return job->sizes[size].width - 2 * job->trim;
}

static bool width_takes(const struct cut_job *job, int64_t width, const struct cut_piece *piece)
{
    return piece->width <= width ||
           (piece->may_turn && !piece_matched(job, piece) && piece->length <= width);
}

/* Where arcs on a circle have a point in common, they have the beginning of one of them. */

static struct roll_arc arc_of(int64_t repeat, int64_t offset, int64_t room)
{
    return (struct roll_arc){whole_modulo(-offset, repeat), room};
}

static bool in_arc(const struct roll_arc *arc, int64_t repeat, int64_t at)
{
    return whole_modulo(at - arc->start, repeat) <= arc->length;
}

static bool in_all(const struct roll_arc *arcs, size_t count, int64_t repeat, int64_t at)
{
    for (size_t i = 0; i < count; i++)
        if (!in_arc(&arcs[i], repeat, at))
            return false;
    return true;
}

static bool have_common(const struct roll_arc *arcs, size_t count, int64_t repeat)
{
    for (size_t i = 0; i < count; i++)
        if (in_all(arcs, count, repeat, arcs[i].start))
            return true;
    return count == 0;
}

/* Where the corner of a part lies from the origin of its group. */
static int64_t offset_across(const struct cut_job *job, const struct cut_piece *piece)
{
    return piece->across - (piece->centred_across ? piece->width / 2 : 0) -
           (piece->group == CUT_PINNED ? job->trim : 0);
}

/* Takes those parts of one group that have an origin in common. */
static void take_group(const struct cut_job *job, int64_t width, size_t group, bool *takes,
                       struct roll_arc *arcs)
{
    int64_t repeat = job->pattern.across;
    size_t count = 0;

    if (group == CUT_PINNED)
        arcs[count++] = (struct roll_arc){0, 0};
    for (size_t i = 0; i < job->part_count; i++) {
        const struct cut_piece *piece = &job->parts[i];

        if (piece->group != group || !takes[i])
            continue;
        arcs[count++] = arc_of(repeat, offset_across(job, piece), width - piece->width);
        takes[i] = have_common(arcs, count, repeat);
        count -= !takes[i];
    }
}

static bool first_of_group(const struct cut_job *job, size_t part)
{
    for (size_t i = 0; i < part; i++)
        if (job->parts[i].group == job->parts[part].group)
            return false;
    return true;
}

bool *roll_takes(const struct cut_job *job, size_t size, struct arena *arena)
{
    bool *takes = ARENA_MANY(arena, bool, job->part_count);
    struct roll_arc *arcs = ARENA_MANY(arena, struct roll_arc, job->part_count + 1);
    int64_t width = usable_width(job, size);

    for (size_t i = 0; i < job->part_count; i++)
        takes[i] = width_takes(job, width, &job->parts[i]);
    for (size_t i = 0; i < job->part_count && job->pattern.across > 0; i++)
        if (job->parts[i].group > 0 && first_of_group(job, i))
            take_group(job, width, job->parts[i].group, takes, arcs);
    return takes;
}

/* The group's index among those that are there; ROLL_NO_GROUP for a part that is not matched. */
static size_t group_of(const struct cut_job *job, size_t part, const size_t *parts, size_t index,
                       struct roll_job *made)
{
    assert(part < job->part_count);
    if (!piece_matched(job, &job->parts[part]))
        return ROLL_NO_GROUP;
    for (size_t i = 0; i < index; i++)
        if (made->parts[i].group != ROLL_NO_GROUP &&
            job->parts[parts[i]].group == job->parts[part].group)
            return made->parts[i].group;
    if (job->parts[part].group == CUT_PINNED)
        made->pinned = made->group_count;
    return made->group_count++;
}

static void add_part(const struct cut_job *job, const size_t *parts, size_t index,
                     struct roll_job *made)
{
    const struct cut_piece *piece = &job->parts[parts[index]];
    struct roll_part *part = &made->parts[index];

    *part = (struct roll_part){.length = piece->length + job->kerf,
                               .width = piece->width + job->kerf,
                               .along = piece->along,
                               .across = offset_across(job, piece),
                               .part = parts[index]};
    if (piece->centred_along)
        part->along -= piece->length / 2;
    part->area = part->length * part->width;
    part->group = group_of(job, parts[index], parts, index, made);
    part->may_turn = piece->may_turn && part->group == ROLL_NO_GROUP;
    made->area += part->area;
}

static int by_near(const void *a, const void *b)
{
    const struct roll_rect *left = a, *right = b;

    if (left->near != right->near)
        return left->near < right->near ? -1 : 1;
    if (left->left != right->left)
        return left->left < right->left ? -1 : 1;
    return left->far < right->far ? -1 : left->far > right->far;
}

static void add_blemishes(const struct cut_job *job, struct roll_job *made, struct arena *arena)
{
    struct roll_rect *rects = ARENA_MANY(arena, struct roll_rect, job->blemish_count);

    for (size_t i = 0; i < job->blemish_count; i++) {
        const struct cut_blemish *blemish = &job->blemishes[i];

        rects[i] = (struct roll_rect){blemish->along + job->kerf, blemish->along + blemish->length,
                                      blemish->across - job->trim + job->kerf,
                                      blemish->across - job->trim + blemish->width};
    }
    if (job->blemish_count > 1)
        qsort(rects, job->blemish_count, sizeof *rects, by_near);
    made->blemishes = rects;
    made->blemish_count = job->blemish_count;
}

static void find_starts(const struct roll_job *job, size_t group, struct arena *arena)
{
    assert(group < job->group_count);

    struct roll_arc *arcs = ARENA_MANY(arena, struct roll_arc, job->count);
    struct roll_group *made = &job->groups[group];
    int64_t repeat = job->pattern.across;
    size_t count = 0;

    for (size_t i = 0; i < job->count; i++)
        if (job->parts[i].group == group && job->width - job->parts[i].width < repeat - 1)
            arcs[count++] = arc_of(repeat, job->parts[i].across, job->width - job->parts[i].width);
    made->starts = ARENA_MANY(arena, int64_t, count);
    for (size_t i = 0; i < count; i++)
        if (in_all(arcs, count, repeat, arcs[i].start))
            made->starts[made->start_count++] = arcs[i].start;
    assert(count == 0 || made->start_count > 0);
    made->arcs = arcs;
    made->arc_count = count;
}

struct roll_job roll_job_make(const struct cut_job *job, size_t size, const size_t *parts,
                              size_t count, struct arena *arena)
{
    struct roll_job made = {.job = job,
                            .count = count,
                            .size = size,
                            .width = usable_width(job, size) + job->kerf,
                            .pattern = job->pattern,
                            .pinned = ROLL_NO_GROUP};

    made.pattern.half_drop =
        job->pattern.half_drop && job->pattern.along > 0 && job->pattern.across > 0;
    made.parts = ARENA_MANY(arena, struct roll_part, count);
    for (size_t i = 0; i < count; i++)
        add_part(job, parts, i, &made);
    made.groups = ARENA_MANY(arena, struct roll_group, made.group_count);
    for (size_t i = 0; i < made.group_count && made.pattern.across > 0; i++)
        find_starts(&made, i, arena);
    add_blemishes(job, &made, arena);
    return made;
}

bool roll_job_plain(const struct roll_job *job)
{
    return job->group_count == 0 && job->blemish_count == 0;
}

/* ---- the pattern ---- */

static bool is_tied(const struct roll_part *part, const struct roll_origin *origin, int64_t repeat)
{
    return part->group != ROLL_NO_GROUP && repeat > 0 && origin->known;
}

bool roll_origin_serves(const struct roll_job *job, size_t group, int64_t across)
{
    assert(group < job->group_count);

    const struct roll_group *of = &job->groups[group];

    return in_all(of->arcs, of->arc_count, job->pattern.across, across);
}

/* Where a part that gives its group an origin may lie at or after `across`. */
static int64_t first_serving(const struct roll_job *job, const struct roll_part *part,
                             int64_t across)
{
    const struct roll_group *group = &job->groups[part->group];
    int64_t least = INT64_MAX;

    if (roll_origin_serves(job, part->group, across - part->across))
        return across;
    for (size_t i = 0; i < group->start_count; i++) {
        int64_t at =
            across + whole_modulo(group->starts[i] + part->across - across, job->pattern.across);

        least = at < least ? at : least;
    }
    return least;
}

int64_t roll_snap_right(const struct roll_job *job, const struct roll_part *part,
                        const struct roll_origin *origin, int64_t across)
{
    int64_t repeat = job->pattern.across;
    int64_t from = origin->across + part->across;

    if (part->group != ROLL_NO_GROUP && repeat > 0 && !origin->known)
        return first_serving(job, part, across);

    if (!is_tied(part, origin, repeat))
        return across;
    return from + whole_divide_up(across - from, repeat) * repeat;
}

int64_t roll_snap_left(const struct roll_job *job, const struct roll_part *part,
                       const struct roll_origin *origin, int64_t across)
{
    int64_t repeat = job->pattern.across;
    int64_t from = origin->across + part->across;

    if (!is_tied(part, origin, repeat))
        return across;
    return from + whole_divide_down(across - from, repeat) * repeat;
}

int64_t roll_snap_along(const struct roll_job *job, const struct roll_part *part,
                        const struct roll_origin *origin, int64_t along, int64_t across)
{
    int64_t repeat = job->pattern.along;
    int64_t from = origin->along + part->along;

    if (!is_tied(part, origin, repeat))
        return along;
    if (job->pattern.half_drop &&
        (across - origin->across - part->across) / job->pattern.across % 2 != 0)
        from += repeat / 2;
    return from + whole_divide_up(along - from, repeat) * repeat;
}

void roll_set_origin(const struct roll_part *part, int64_t along, int64_t across,
                     struct roll_origin *origin)
{
    assert(!origin->known);
    *origin = (struct roll_origin){true, along - part->along, across - part->across};
}
