/*
 * Every check recomputes what it needs from the job and the places alone. Rectangles are compared
 * pair by pair; for cuts from edge to edge they are grown by the kerf and a set of them can be
 * parted when it is single, or when in one direction there is a line that crosses none of them and
 * both sides can be parted.
 */
#include "cut/verify.h"

#include "base/quantity.h"
#include "cut/verify_saw.h"

#include <assert.h>
#include <stdlib.h>

struct rect {
    int64_t near, far, left, right; /* near <= along < far, left <= across < right */
};

struct check {
    enum cut_way way;
    const struct cut_job *job;
    const struct cut_layout *layout;
    struct arena *arena;
};

typedef bool check_fn(const struct check *check);

/* ---- parts and places as a whole ---- */

static bool parts_known(const struct check *check)
{
    for (size_t i = 0; i < check->layout->places.count; i++)
        if (check->layout->places.at[i].part >= check->job->part_count)
            return false;
    for (size_t i = 0; i < check->layout->left_out.count; i++)
        if (check->layout->left_out.at[i] >= check->job->part_count)
            return false;
    return true;
}

static bool sizes_known(const struct check *check)
{
    for (size_t i = 0; i < check->layout->blanks.count; i++)
        if (check->layout->blanks.at[i].size >= check->job->size_count)
            return false;
    return true;
}

static bool blanks_whole(const struct check *check)
{
    size_t next = 0;

    for (size_t i = 0; i < check->layout->blanks.count; i++) {
        const struct cut_blank *blank = &check->layout->blanks.at[i];

        if (blank->first != next || blank->count == 0 ||
            blank->count > check->layout->places.count - next)
            return false;
        next += blank->count;
    }
    return next == check->layout->places.count;
}

static size_t *count_parts(const struct check *check)
{
    size_t *times = ARENA_MANY(check->arena, size_t, check->job->part_count);

    for (size_t i = 0; i < check->layout->places.count; i++)
        times[check->layout->places.at[i].part]++;
    for (size_t i = 0; i < check->layout->left_out.count; i++)
        times[check->layout->left_out.at[i]]++;
    return times;
}

static bool parts_once(const struct check *check)
{
    const size_t *times = count_parts(check);

    for (size_t i = 0; i < check->job->part_count; i++)
        if (times[i] > 1)
            return false;
    return true;
}

static bool parts_all(const struct check *check)
{
    const size_t *times = count_parts(check);

    for (size_t i = 0; i < check->job->part_count; i++)
        if (times[i] == 0)
            return false;
    return true;
}

static bool size_takes(const struct check *check, const struct cut_size *size,
                       const struct cut_piece *part, bool turned)
{
    int64_t length = turned ? part->width : part->length;
    int64_t width = turned ? part->length : part->width;

    switch (check->way) {
    case CUT_BARS:
        return !turned && length <= size->length - check->job->trim;
    case CUT_SHEETS:
        return length <= size->length - 2 * check->job->trim &&
               width <= size->width - 2 * check->job->trim;
    default:
        return width <= size->width;
    }
}

static bool left_out_rightly(const struct check *check)
{
    for (size_t i = 0; i < check->layout->left_out.count; i++) {
        const struct cut_piece *part = &check->job->parts[check->layout->left_out.at[i]];

        for (size_t s = 0; s < check->job->size_count; s++) {
            const struct cut_size *size = &check->job->sizes[s];

            if (size->limit == CUT_ANY && (size_takes(check, size, part, false) ||
                                           (part->may_turn && size_takes(check, size, part, true))))
                return false;
        }
    }
    return true;
}

/* ---- one place ---- */

static bool turned_rightly(const struct check *check)
{
    for (size_t i = 0; i < check->layout->places.count; i++) {
        const struct cut_place *place = &check->layout->places.at[i];

        if (place->turned && (check->way == CUT_BARS || !check->job->parts[place->part].may_turn))
            return false;
    }
    return true;
}

static struct rect rect_of(const struct check *check, size_t index)
{
    const struct cut_place *place = &check->layout->places.at[index];
    const struct cut_piece *part = &check->job->parts[place->part];
    int64_t length = place->turned ? part->width : part->length;
    int64_t width = place->turned ? part->length : part->width;

    return (struct rect){place->along, place->along + length, place->across, place->across + width};
}

/* The part of a blank that may be used. */
static struct rect inside_of(const struct check *check, const struct cut_size *size)
{
    int64_t trim = check->job->trim;

    if (check->way == CUT_BARS)
        return (struct rect){trim, size->length, 0, 0};
    if (check->way == CUT_ROLLS && size->limit == CUT_ANY)
        return (struct rect){0, INT64_MAX, 0, size->width};
    return (struct rect){trim, size->length - trim, trim, size->width - trim};
}

static bool places_inside(const struct check *check)
{
    for (size_t b = 0; b < check->layout->blanks.count; b++) {
        const struct cut_blank *blank = &check->layout->blanks.at[b];
        struct rect inside = inside_of(check, &check->job->sizes[blank->size]);

        for (size_t i = blank->first; i < blank->first + blank->count; i++) {
            struct rect rect = rect_of(check, i);

            if (rect.near < inside.near || rect.far > inside.far || rect.left < inside.left ||
                (check->way != CUT_BARS && rect.right > inside.right))
                return false;
        }
    }
    return true;
}

/* ---- pairs ---- */

/* Whether two rectangles lie nearer than `gap` in both directions (bars: along only). */
static bool nearer_than(const struct check *check, const struct rect *a, const struct rect *b,
                        int64_t gap)
{
    bool along = a->near < b->far + gap && b->near < a->far + gap;
    bool across = a->left < b->right + gap && b->left < a->right + gap;

    return along && (across || check->way == CUT_BARS);
}

static bool blank_spaced(const struct check *check, const struct cut_blank *blank, int64_t gap)
{
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        struct rect a = rect_of(check, i);

        for (size_t j = i + 1; j < blank->first + blank->count; j++) {
            struct rect b = rect_of(check, j);

            if (nearer_than(check, &a, &b, gap))
                return false;
        }
    }
    return true;
}

static bool all_spaced(const struct check *check, int64_t gap)
{
    for (size_t b = 0; b < check->layout->blanks.count; b++)
        if (!blank_spaced(check, &check->layout->blanks.at[b], gap))
            return false;
    return true;
}

static bool none_overlap(const struct check *check)
{
    return all_spaced(check, 0);
}

static bool kerfs_kept(const struct check *check)
{
    return all_spaced(check, check->job->kerf);
}

/* ---- edge to edge ---- */

static int by_near(const void *a, const void *b)
{
    const struct rect *left = a, *right = b;

    return left->near < right->near ? -1 : left->near > right->near;
}

static void turn_over(struct rect *rects, size_t count)
{
    for (size_t i = 0; i < count; i++)
        rects[i] = (struct rect){rects[i].left, rects[i].right, rects[i].near, rects[i].far};
}

static bool can_part(struct rect *rects, size_t count);

/* Sorts by `near` and parts at every line that crosses none; false when there is no such line. */
static bool can_part_along(struct rect *rects, size_t count, bool *ret_line)
{
    size_t first = 0;
    int64_t far;

    qsort(rects, count, sizeof *rects, by_near);
    far = rects[0].far;
    for (size_t i = 1; i < count; i++) {
        if (rects[i].near >= far) {
            *ret_line = true;
            if (!can_part(rects + first, i - first))
                return false;
            first = i;
        }
        if (rects[i].far > far)
            far = rects[i].far;
    }
    return first > 0 && can_part(rects + first, count - first);
}

static bool can_part(struct rect *rects, size_t count)
{
    bool line = false;

    if (count <= 1)
        return true;
    if (can_part_along(rects, count, &line))
        return true;
    if (line)
        return false; /* any first cut may be taken: what it leaves can be parted or nothing can */
    turn_over(rects, count);
    return can_part_along(rects, count, &line);
}

static bool cuttable(const struct check *check)
{
    if (check->way != CUT_SHEETS)
        return true;
    for (size_t b = 0; b < check->layout->blanks.count; b++) {
        const struct cut_blank *blank = &check->layout->blanks.at[b];
        struct rect *rects = ARENA_MANY(check->arena, struct rect, blank->count);

        for (size_t i = 0; i < blank->count; i++) {
            rects[i] = rect_of(check, blank->first + i);
            rects[i].far += check->job->kerf;
            rects[i].right += check->job->kerf;
        }
        if (!can_part(rects, blank->count))
            return false;
    }
    return true;
}

/* ---- sums ---- */

static bool limits_kept(const struct check *check)
{
    for (size_t s = 0; s < check->job->size_count; s++) {
        int64_t limit = check->job->sizes[s].limit;

        if (limit == CUT_ANY)
            continue;
        for (size_t b = 0; b < check->layout->blanks.count; b++)
            limit -= check->layout->blanks.at[b].size == s;
        if (limit < 0)
            return false;
    }
    return true;
}

/* Whether a rest is what lies beyond all parts, or beside them, less a kerf; 0 means none. */
static bool rest_true(const struct check *check, const struct cut_blank *blank, int64_t side)
{
    const struct cut_size *size = &check->job->sizes[blank->size];
    int64_t beyond = size->length - blank->used - check->job->kerf;
    int64_t beside = size->width - side - check->job->kerf;

    if (check->way == CUT_BARS)
        return blank->rest == (beyond > 0 ? beyond : 0) && blank->rest_across == 0;
    if (check->way == CUT_ROLLS || blank->rest == 0)
        return blank->rest == 0 && blank->rest_across == 0;
    return (blank->rest == beyond && blank->rest_across == size->width) ||
           (blank->rest == size->length && blank->rest_across == beside);
}

static bool used_true(const struct check *check)
{
    for (size_t b = 0; b < check->layout->blanks.count; b++) {
        const struct cut_blank *blank = &check->layout->blanks.at[b];
        int64_t far = 0, side = 0;

        for (size_t i = blank->first; i < blank->first + blank->count; i++) {
            struct rect rect = rect_of(check, i);

            far = rect.far > far ? rect.far : far;
            side = rect.right > side ? rect.right : side;
        }
        if (far != blank->used || !rest_true(check, blank, side))
            return false;
    }
    return true;
}

static bool cost_true(const struct check *check)
{
    int64_t cost = 0;

    for (size_t b = 0; b < check->layout->blanks.count; b++) {
        const struct cut_blank *blank = &check->layout->blanks.at[b];
        const struct cut_size *size = &check->job->sizes[blank->size];

        if (check->way != CUT_ROLLS)
            cost += size->price;
        else if (size->limit == CUT_ANY)
            cost += blank->used;
    }
    return cost == check->layout->cost;
}

static bool bound_true(const struct check *check)
{
    return check->layout->left_out.count > 0 || check->layout->bound <= check->layout->cost;
}

/* ---- the saw ---- */

static bool has_strokes(const struct check *check)
{
    return check->way == CUT_SHEETS && check->layout->strokes.count > 0;
}

static bool strokes_true(const struct check *check)
{
    if (!has_strokes(check))
        return check->layout->strokes.count == 0;
    return saw_check(check->job, check->layout, check->arena).sound;
}

static bool fences_true(const struct check *check)
{
    if (!has_strokes(check))
        return check->layout->fences == 0;
    return saw_check(check->job, check->layout, check->arena).fences == check->layout->fences;
}

static bool stuck_true(const struct check *check)
{
    if (!has_strokes(check))
        return true;
    return saw_check(check->job, check->layout, check->arena).stuck == check->layout->stuck;
}

/* By flaw; each may rely on those above it. */
static check_fn *const checks[CUT_FLAWS_COUNT] = {
    [CUT_FLAW_UNKNOWN_PART] = parts_known, [CUT_FLAW_UNKNOWN_SIZE] = sizes_known,
    [CUT_FLAW_BLANKS] = blanks_whole,      [CUT_FLAW_TWICE] = parts_once,
    [CUT_FLAW_MISSING] = parts_all,        [CUT_FLAW_LEFT_OUT] = left_out_rightly,
    [CUT_FLAW_TURNED] = turned_rightly,    [CUT_FLAW_OUTSIDE] = places_inside,
    [CUT_FLAW_OVERLAP] = none_overlap,     [CUT_FLAW_KERF] = kerfs_kept,
    [CUT_FLAW_EDGE_TO_EDGE] = cuttable,    [CUT_FLAW_LIMIT] = limits_kept,
    [CUT_FLAW_USED] = used_true,           [CUT_FLAW_COST] = cost_true,
    [CUT_FLAW_BOUND] = bound_true,         [CUT_FLAW_STROKES] = strokes_true,
    [CUT_FLAW_FENCES] = fences_true,       [CUT_FLAW_STUCK] = stuck_true,
};

enum cut_flaw layout_verify(enum cut_way way, const struct cut_job *job,
                            const struct cut_layout *layout, struct arena *arena)
{
    struct check check = {way, job, layout, arena};

    assert(arena->escape);
    for (int flaw = CUT_FLAW_NONE + 1; flaw < CUT_FLAWS_COUNT; flaw++)
        if (!checks[flaw](&check))
            return (enum cut_flaw)flaw;
    return CUT_FLAW_NONE;
}

const char *cut_flaw_words(enum cut_flaw flaw)
{
    static const char *const words[CUT_FLAWS_COUNT] = {
#define CUT_FLAW_WORDS(name, text) text,
        CUT_FLAWS(CUT_FLAW_WORDS)
#undef CUT_FLAW_WORDS
    };

    assert(flaw >= 0 && flaw < CUT_FLAWS_COUNT);
    return words[flaw];
}
