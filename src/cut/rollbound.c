/*
 * Laid beside each other by f of their widths and g of their lengths, parts that fit W x L still
 * take no more than f(W) g(L). So a length for which they would take more is too short, and so is
 * every shorter one. A part that may turn counts the way it takes less.
 */
#include "cut/rollbound.h"

#include "base/quantity.h"
#include "cut/dual.h"
#include "cut/ranking.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

/* Functions that change something: steps at the measures of parts. */
static struct duals find_duals(const struct roll_job *job, bool of_length, int64_t all, size_t most)
{
    struct duals duals = duals_begin(most);

    for (size_t i = 0; i < job->count; i++) {
        const struct roll_part *part = &job->parts[i];

        duals_add(&duals, of_length ? part->length : part->width, all);
        if (part->may_turn)
            duals_add(&duals, of_length ? part->width : part->length, all);
    }
    return duals;
}

/* ---- whether a length can be enough ---- */

struct judge {
    const struct roll_job *job;
    struct duals across;
    int64_t *widths; /* by function across and part: of its width, */
    int64_t *turned; /* and of its length, where it may turn; else -1 */
};

#define LYING_NOWHERE INT64_C(-1)

static void fill_widths(struct judge *judge, struct arena *arena)
{
    const struct roll_job *job = judge->job;

    judge->widths = ARENA_MANY(arena, int64_t, judge->across.count * job->count);
    judge->turned = ARENA_MANY(arena, int64_t, judge->across.count * job->count);
    for (size_t f = 0; f < judge->across.count; f++)
        for (size_t i = 0; i < job->count; i++) {
            const struct roll_part *part = &job->parts[i];
            const struct dual *dual = &judge->across.at[f];
            size_t at = f * job->count + i;

            judge->widths[at] =
                part->width > job->width ? LYING_NOWHERE : dual_of(dual, part->width, job->width);
            judge->turned[at] = !part->may_turn || part->length > job->width
                                    ? LYING_NOWHERE
                                    : dual_of(dual, part->length, job->width);
        }
}

/* What one part takes by functions of a pair. */
static int64_t taken_by(const struct judge *judge, size_t at, const struct roll_part *part,
                        const struct dual *along, int64_t length)
{
    int64_t least = INT64_MAX;

    if (judge->widths[at] != LYING_NOWHERE && part->length <= length)
        least = judge->widths[at] * dual_of(along, part->length, length);
    if (judge->turned[at] != LYING_NOWHERE && part->width <= length) {
        int64_t turned = judge->turned[at] * dual_of(along, part->width, length);

        least = turned < least ? turned : least;
    }
    return least;
}

/* Whether the parts take more than there is by one pair of functions. */
static bool too_much(const struct judge *judge, size_t f, const struct dual *along, int64_t length)
{
    const struct roll_job *job = judge->job;
    int64_t have, most, taken = 0;

    assert(f < judge->across.count);
    if (whole_multiply(dual_all(&judge->across.at[f], job->width), dual_all(along, length),
                       &have) ||
        whole_multiply(have, (int64_t)job->count + 1, &most))
        return false; /* sums might not fit: nothing is shown */
    for (size_t i = 0; i < job->count; i++) {
        int64_t one = taken_by(judge, f * job->count + i, &job->parts[i], along, length);

        if (one == INT64_MAX)
            return true; /* it is longer than the whole, whichever way it lies */
        taken += one;
    }
    return taken > have;
}

static bool too_short(const struct judge *judge, int64_t length)
{
    struct duals along = find_duals(judge->job, true, length, judge->across.most);

    for (size_t f = 0; f < judge->across.count; f++)
        for (size_t g = 0; g < along.count; g++)
            if (too_much(judge, f, &along.at[g], length))
                return true;
    return false;
}

/* The least length that is not shown too short; all below `least` are known to be. */
static int64_t shown_by_duals(const struct roll_job *job, int64_t least, size_t pairs,
                              struct arena *arena)
{
    struct judge judge = {.job = job};
    int64_t low = least, high = 2 * least;

    judge.across = find_duals(job, false, job->width, (size_t)whole_root((int64_t)pairs));
    fill_widths(&judge, arena);
    if (!too_short(&judge, least))
        return least;
    while (high - low > 1) {
        int64_t middle = low + (high - low) / 2;

        if (too_short(&judge, middle))
            low = middle;
        else
            high = middle;
    }
    return low + 1;
}

/* ---- parts of which none can lie beside another ---- */

static int64_t least_along(const struct roll_job *job, const struct roll_part *part)
{
    int64_t least = part->width <= job->width ? part->length : part->width;

    if (part->may_turn && part->length <= job->width && part->width < least)
        least = part->width;
    return least;
}

/* From where a part begins to where the next one may, `shift` further in the pattern. */
static int64_t pitch(int64_t size, int64_t shift, int64_t repeat)
{
    return shift + whole_divide_up(size - shift, repeat) * repeat;
}

static int64_t pitch_along(const struct roll_job *job, const struct roll_part *part,
                           const struct roll_part *next)
{
    int64_t shift = next->along - part->along;
    int64_t half = job->pattern.half_drop ? job->pattern.along / 2 : 0;
    int64_t least;

    if (job->pattern.along == 0 || part->group == ROLL_NO_GROUP || part->group != next->group)
        return least_along(job, part);
    least = pitch(part->length, shift, job->pattern.along);
    for (int side = -1; half > 0 && side <= 1; side += 2) {
        int64_t to = pitch(part->length, shift + side * half, job->pattern.along);

        least = to < least ? to : least;
    }
    return least;
}

static int64_t pitch_across(const struct roll_job *job, const struct roll_part *part,
                            const struct roll_part *next)
{
    if (job->pattern.across == 0 || part->group == ROLL_NO_GROUP || part->group != next->group)
        return part->width;
    return pitch(part->width, next->across - part->across, job->pattern.across);
}

static int64_t least_across(const struct roll_part *part)
{
    return part->may_turn && part->length < part->width ? part->length : part->width;
}

/* Whether the roll has no room for one part beside the other, on either side. */
static bool clash(const struct roll_job *job, const struct roll_part *a, const struct roll_part *b)
{
    if (a->may_turn || b->may_turn)
        return least_across(a) + least_across(b) > job->width;
    return pitch_across(job, a, b) + b->width > job->width &&
           pitch_across(job, b, a) + a->width > job->width;
}

/* Parts no two of which lie beside each other, so that all lie one after another. */
struct queue {
    const struct roll_part **parts;
    size_t count;
};

static bool clashes_with_all(const struct roll_job *job, const struct queue *queue,
                             const struct roll_part *part)
{
    for (size_t i = 0; i < queue->count; i++)
        if (queue->parts[i] == part || !clash(job, queue->parts[i], part))
            return false;
    return true;
}

/* From one part on, and then those that clash with all before them, the longest first. */
static void fill_queue(const struct roll_job *job, const struct roll_part *first,
                       const size_t *longest, struct queue *queue)
{
    queue->count = 0;
    queue->parts[queue->count++] = first;
    for (size_t i = 0; i < job->count; i++)
        if (clashes_with_all(job, queue, &job->parts[longest[i]]))
            queue->parts[queue->count++] = &job->parts[longest[i]];
}

/* The least from the beginning of a part to that of whichever comes next. */
static int64_t least_pitch(const struct roll_job *job, const struct queue *queue, size_t index)
{
    int64_t least = INT64_MAX;

    for (size_t i = 0; i < queue->count; i++) {
        int64_t to = pitch_along(job, queue->parts[index], queue->parts[i]);

        if (i != index && to < least)
            least = to;
    }
    return least == INT64_MAX ? least_along(job, queue->parts[index]) : least;
}

/* One after another, the last without what it keeps the next away. */
static int64_t length_of_queue(const struct roll_job *job, const struct queue *queue)
{
    int64_t sum = 0, last = 0;

    for (size_t i = 0; i < queue->count; i++) {
        int64_t to = least_pitch(job, queue, i);
        int64_t more = to - least_along(job, queue->parts[i]);

        sum += to;
        last = more > last ? more : last;
    }
    return sum - last;
}

static bool same_measures(const struct roll_part *a, const struct roll_part *b)
{
    return a->length == b->length && a->width == b->width && a->may_turn == b->may_turn &&
           a->group == b->group && a->along == b->along && a->across == b->across;
}

/* The longest queue that begins with a part and is filled up longest first. Each of the `most`
 * longest parts begins one, but for those that would begin the same. */
static int64_t shown_by_queues(const struct roll_job *job, size_t most, struct arena *arena)
{
    struct cut_piece *pieces = ARENA_MANY(arena, struct cut_piece, job->count);
    size_t *longest = ARENA_MANY(arena, size_t, job->count);
    struct queue queue = {ARENA_MANY(arena, const struct roll_part *, job->count), 0};
    int64_t shown = 0;

    for (size_t i = 0; i < job->count; i++) {
        pieces[i].length = least_along(job, &job->parts[i]);
        longest[i] = i;
    }
    ranking_sort(pieces, longest, job->count, BY_LENGTH, arena);
    for (size_t i = 0; i < job->count && i < most; i++) {
        const struct roll_part *first = &job->parts[longest[i]];
        int64_t length;

        if (i > 0 && same_measures(first, &job->parts[longest[i - 1]]))
            continue;
        fill_queue(job, first, longest, &queue);
        length = length_of_queue(job, &queue);
        shown = length > shown ? length : shown;
    }
    return shown;
}

/* ---- sums of measures ---- */

#define SUMS_MOST (1 << 20)

/* In `sums`, by words of 64: marks what is there moved up by `step` as well. */
static void add_moved(uint64_t *sums, size_t words, size_t step)
{
    size_t whole = step / 64, bits = step % 64;

    for (size_t i = words; i-- > whole;) {
        uint64_t moved = sums[i - whole] << bits;

        if (bits > 0 && i > whole)
            moved |= sums[i - whole - 1] >> (64 - bits);
        sums[i] |= moved;
    }
}

/* A part that may turn adds the one measure or the other. */
static void add_either(uint64_t *sums, uint64_t *kept, size_t words, size_t one, size_t other)
{
    memcpy(kept, sums, words * sizeof *sums);
    add_moved(sums, words, one);
    add_moved(kept, words, other);
    for (size_t i = 0; i < words; i++)
        sums[i] |= kept[i];
}

/* Sums of measures of parts, each part once and one way: a bit each, in whole units. */
struct sums {
    uint64_t *at;
    size_t words;
    int64_t unit;
};

static int64_t divisor_of(const struct roll_job *job, bool of_length)
{
    int64_t divisor = 0;

    for (size_t i = 0; i < job->count; i++) {
        const struct roll_part *part = &job->parts[i];

        divisor = whole_common_divisor(divisor, of_length ? part->length : part->width);
        if (part->may_turn)
            divisor = whole_common_divisor(divisor, of_length ? part->width : part->length);
    }
    return divisor;
}

/* Sums up to `most`; false where they are too many to be marked. */
static bool find_sums(const struct roll_job *job, bool of_length, int64_t most,
                      struct sums *ret_sums, struct arena *arena)
{
    int64_t unit = divisor_of(job, of_length);
    struct sums sums = {.unit = unit};
    uint64_t *kept;

    if (unit == 0 || most / unit > SUMS_MOST)
        return false;
    sums.words = (size_t)(most / unit) / 64 + 1;
    sums.at = ARENA_MANY(arena, uint64_t, sums.words);
    kept = ARENA_MANY(arena, uint64_t, sums.words);
    sums.at[0] = 1;
    for (size_t i = 0; i < job->count; i++) {
        const struct roll_part *part = &job->parts[i];
        size_t one = (size_t)((of_length ? part->length : part->width) / unit);
        size_t other = (size_t)((of_length ? part->width : part->length) / unit);

        add_either(sums.at, kept, sums.words, one, part->may_turn ? other : one);
    }
    *ret_sums = sums;
    return true;
}

/* The least sum of measures along that is not below `length`. */
static int64_t next_sum(const struct roll_job *job, int64_t length, struct arena *arena)
{
    struct sums sums;

    if (!find_sums(job, true, 2 * length, &sums, arena))
        return length;
    for (int64_t sum = whole_divide_up(length, sums.unit); sum < (int64_t)sums.words * 64; sum++)
        if (sums.at[sum / 64] >> (sum % 64) & 1)
            return sum * sums.unit;
    return length;
}

/* The most of the width that parts beside each other fill. */
static int64_t width_filled(const struct roll_job *job, struct arena *arena)
{
    struct sums sums;

    if (!find_sums(job, false, job->width, &sums, arena))
        return job->width;
    for (int64_t sum = whole_divide_down(job->width, sums.unit); sum > 0; sum--)
        if (sums.at[sum / 64] >> (sum % 64) & 1)
            return sum * sums.unit;
    return job->width;
}

/* ---- parts of one pattern ---- */

/*
 * Beyond a matched part and beside it no other of its group may begin before the pattern lets it:
 * all may be taken for as long and as wide as that. They still lie apart, on a roll that is wider,
 * and in a length that is longer, by the most that any was made so.
 */
struct swelling {
    int64_t along, across; /* the most that a part was made longer and wider */
};

static int64_t swollen_length(const struct roll_job *job, size_t group,
                              const struct roll_part *part)
{
    int64_t least = INT64_MAX;

    for (size_t i = 0; i < job->count; i++) {
        int64_t to = pitch_along(job, part, &job->parts[i]);

        if (job->parts[i].group == group && &job->parts[i] != part && to < least)
            least = to;
    }
    return least == INT64_MAX ? part->length : least;
}

static int64_t swollen_width(const struct roll_job *job, size_t group, const struct roll_part *part)
{
    int64_t least = INT64_MAX;

    for (size_t i = 0; i < job->count; i++) {
        int64_t to = pitch_across(job, part, &job->parts[i]);

        if (job->parts[i].group == group && &job->parts[i] != part && to < least)
            least = to;
    }
    return least == INT64_MAX ? part->width : least;
}

/* The parts of one group, swollen, as a job of their own without a pattern. */
static struct roll_job swell(const struct roll_job *job, size_t group,
                             struct swelling *ret_swelling, struct arena *arena)
{
    struct roll_job swollen = {.job = job->job, .width = job->width};
    struct swelling most = {0, 0};

    swollen.parts = ARENA_MANY(arena, struct roll_part, job->count);
    for (size_t i = 0; i < job->count; i++) {
        const struct roll_part *part = &job->parts[i];
        struct roll_part *made = &swollen.parts[swollen.count];

        if (part->group != group)
            continue;
        *made = (struct roll_part){.length = swollen_length(job, group, part),
                                   .width = swollen_width(job, group, part),
                                   .group = ROLL_NO_GROUP};
        made->area = made->length * made->width;
        swollen.area += made->area;
        if (made->length - part->length > most.along)
            most.along = made->length - part->length;
        if (made->width - part->width > most.across)
            most.across = made->width - part->width;
        swollen.count++;
    }
    swollen.width += most.across;
    *ret_swelling = most;
    return swollen;
}

/* ---- all of it ---- */

static int64_t bound_of(const struct roll_job *job, size_t pairs, struct arena *arena)
{
    struct roll_job tight = *job;
    int64_t wide, bound;

    if (job->area == 0)
        return job->count == 0 ? 0 : shown_by_queues(job, pairs, arena);
    tight.width = width_filled(job, arena);
    wide = shown_by_queues(job, pairs, arena);
    bound = whole_divide_up(job->area, tight.width);
    bound = shown_by_duals(&tight, wide > bound ? wide : bound, pairs, arena);
    return roll_job_plain(job) ? next_sum(job, bound, arena) : bound;
}

int64_t roll_bound(const struct roll_job *job, size_t pairs, struct arena *arena)
{
    int64_t bound = bound_of(job, pairs, arena);

    for (size_t group = 0; group < job->group_count; group++) {
        struct swelling swelling;
        struct roll_job swollen = swell(job, group, &swelling, arena);
        int64_t shown = bound_of(&swollen, pairs, arena) - swelling.along;

        bound = shown > bound ? shown : bound;
    }
    return bound;
}
