/*
 * Every check recomputes what it needs from the job and the places alone. Rectangles are compared
 * pair by pair; for cuts from edge to edge they are grown by the kerf and a set of them can be
 * parted when it is single, or when in one direction there is a line that crosses none of them and
 * both sides can be parted.
 */
#include "cut/verify.h"

#include "base/whole.h"
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

static bool is_matched(const struct check *check, const struct cut_piece *part)
{
    return check->way == CUT_ROLLS && part->group != 0 &&
           (check->job->pattern.along != 0 || check->job->pattern.across != 0);
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
        return width <= size->width - 2 * check->job->trim && !(turned && is_matched(check, part));
    }
}

/* Where a part's corner would lie had the pattern's origin not moved at all. */
static void offset_in(const struct cut_piece *part, int64_t *ret_along, int64_t *ret_across)
{
    *ret_along = part->along - (part->centred_along ? part->length / 2 : 0);
    *ret_across = part->across - (part->centred_across ? part->width / 2 : 0);
}

static const struct cut_size *widest_roll(const struct check *check)
{
    const struct cut_size *widest = NULL;

    for (size_t s = 0; s < check->job->size_count; s++)
        if (check->job->sizes[s].limit == CUT_ANY &&
            (!widest || check->job->sizes[s].width > widest->width))
            widest = &check->job->sizes[s];
    return widest;
}

/* Whether a part has a place on a roll when the pattern begins at `origin`: the leftmost is in the
 * first repeat that it can begin in. */
static bool lies_by(const struct check *check, const struct cut_piece *part, int64_t roll,
                    int64_t origin)
{
    int64_t repeat = check->job->pattern.across, trim = check->job->trim;
    int64_t along, across;

    assert(repeat > 0);
    offset_in(part, &along, &across);
    across = (origin + across - trim) % repeat;
    if (across < 0)
        across += repeat;
    return trim + across + part->width <= roll - trim;
}

/* Whether an origin suits the parts that are marked. */
static bool origin_suits(const struct check *check, const bool *marked, int64_t roll,
                         int64_t origin)
{
    for (size_t i = 0; i < check->job->part_count; i++)
        if (marked[i] && !lies_by(check, &check->job->parts[i], roll, origin))
            return false;
    return true;
}

/* Whether some origin suits the parts that are marked: one that puts a part at the left edge. */
static bool some_origin_suits(const struct check *check, const bool *marked, size_t group,
                              int64_t roll)
{
    int64_t along, across;

    if (group == CUT_PINNED)
        return origin_suits(check, marked, roll, 0);
    for (size_t i = 0; i < check->job->part_count; i++) {
        if (!marked[i])
            continue;
        offset_in(&check->job->parts[i], &along, &across);
        if (origin_suits(check, marked, roll, check->job->trim - across))
            return true;
    }
    return false;
}

/* A matched part that the roll is wide enough for, but not with those of its group before it. */
static bool meets_nowhere(const struct check *check, size_t part)
{
    const struct cut_size *roll = widest_roll(check);
    size_t group = check->job->parts[part].group;
    bool *marked = ARENA_MANY(check->arena, bool, check->job->part_count);

    if (!roll || check->job->pattern.across == 0 || !is_matched(check, &check->job->parts[part]))
        return false;
    for (size_t i = 0; i <= part; i++) {
        const struct cut_piece *other = &check->job->parts[i];

        if (other->group != group || !size_takes(check, roll, other, false))
            continue;
        marked[i] = true;
        marked[i] = some_origin_suits(check, marked, group, roll->width);
    }
    return !marked[part];
}

static bool left_out_rightly(const struct check *check)
{
    for (size_t i = 0; i < check->layout->left_out.count; i++) {
        const struct cut_piece *part = &check->job->parts[check->layout->left_out.at[i]];

        if (meets_nowhere(check, check->layout->left_out.at[i]))
            continue;
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

        if (place->turned && (check->way == CUT_BARS || !check->job->parts[place->part].may_turn ||
                              is_matched(check, &check->job->parts[place->part])))
            return false;
    }
    return true;
}

static struct rect rect_of(const struct check *check, size_t index)
{
    assert(index < check->layout->places.count);

    const struct cut_place *place = &check->layout->places.at[index];
    const struct cut_piece *part = &check->job->parts[place->part];
    int64_t length = place->turned ? part->width : part->length;
    int64_t width = place->turned ? part->length : part->width;

    return (struct rect){place->along, place->along + length, place->across, place->across + width};
}

/* The part of a blank that may be used. Pieces of a roll on the shelf have lost their selvedge. */
static struct rect inside_of(const struct check *check, const struct cut_size *size)
{
    int64_t trim = check->job->trim;

    if (check->way == CUT_BARS)
        return (struct rect){trim, size->length, 0, 0};
    if (check->way == CUT_ROLLS && size->limit == CUT_ANY)
        return (struct rect){0, INT64_MAX, trim, size->width - trim};
    if (check->way == CUT_ROLLS)
        return (struct rect){0, size->length, 0, size->width};
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

    assert(count > 1);
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

/* ---- rolls ---- */

static const struct cut_size *size_of_blank(const struct check *check, size_t blank)
{
    return &check->job->sizes[check->layout->blanks.at[blank].size];
}

/* Whether a place is the part's own one moved by whole repeats from an origin; with a half-drop
 * every odd repeat across goes with half of one along. */
static bool meets(const struct check *check, const struct cut_place *place, int64_t origin_along,
                  int64_t origin_across)
{
    const struct cut_pattern *pattern = &check->job->pattern;
    int64_t along, across, repeats = 0;

    offset_in(&check->job->parts[place->part], &along, &across);
    along = place->along - origin_along - along;
    across = place->across - origin_across - across;
    if (pattern->across > 0) {
        if (across % pattern->across != 0)
            return false;
        repeats = across / pattern->across;
    }
    if (pattern->half_drop && pattern->across > 0 && repeats % 2 != 0)
        along -= pattern->along / 2;
    return pattern->along == 0 || along % pattern->along == 0;
}

static bool all_meet(const struct check *check, size_t group, int64_t origin_along,
                     int64_t origin_across)
{
    for (size_t i = 0; i < check->layout->places.count; i++)
        if (check->job->parts[check->layout->places.at[i].part].group == group &&
            !meets(check, &check->layout->places.at[i], origin_along, origin_across))
            return false;
    return true;
}

/* Whether a group has an origin: one that suits the place of one of its parts suits all, which may
 * stand in an even or in an odd repeat across. */
static bool group_meets(const struct check *check, const struct cut_place *place)
{
    const struct cut_piece *part = &check->job->parts[place->part];
    const struct cut_pattern *pattern = &check->job->pattern;
    int64_t along, across;

    if (part->group == CUT_PINNED)
        return all_meet(check, part->group, 0, 0);
    offset_in(part, &along, &across);
    along = place->along - along;
    across = place->across - across;
    return all_meet(check, part->group, along, across) ||
           (pattern->half_drop &&
            all_meet(check, part->group, along - pattern->along / 2, across - pattern->across));
}

static bool matched_meet(const struct check *check)
{
    for (size_t b = 0; b < check->layout->blanks.count; b++) {
        const struct cut_blank *blank = &check->layout->blanks.at[b];

        for (size_t i = blank->first; i < blank->first + blank->count; i++) {
            const struct cut_place *place = &check->layout->places.at[i];

            if (is_matched(check, &check->job->parts[place->part]) &&
                (size_of_blank(check, b)->limit != CUT_ANY || !group_meets(check, place)))
                return false;
        }
    }
    return true;
}

static bool touches(const struct rect *rect, const struct cut_blemish *blemish)
{
    return rect->near < blemish->along + blemish->length && rect->far > blemish->along &&
           rect->left < blemish->across + blemish->width && rect->right > blemish->across;
}

static bool blemishes_free(const struct check *check)
{
    for (size_t b = 0; b < check->layout->blanks.count; b++) {
        const struct cut_blank *blank = &check->layout->blanks.at[b];

        if (check->way != CUT_ROLLS || size_of_blank(check, b)->limit != CUT_ANY)
            continue;
        for (size_t i = blank->first; i < blank->first + blank->count; i++) {
            struct rect rect = rect_of(check, i);

            for (size_t k = 0; k < check->job->blemish_count; k++)
                if (touches(&rect, &check->job->blemishes[k]))
                    return false;
        }
    }
    return true;
}

static bool in_sequence(const struct check *check)
{
    for (size_t b = 0; b < check->layout->blanks.count; b++) {
        const struct cut_blank *blank = &check->layout->blanks.at[b];

        if (check->way != CUT_ROLLS || size_of_blank(check, b)->limit != CUT_ANY)
            continue;
        for (size_t i = blank->first + 1; i < blank->first + blank->count; i++) {
            const struct cut_place *before = &check->layout->places.at[i - 1];
            const struct cut_place *place = &check->layout->places.at[i];

            if (before->along > place->along ||
                (before->along == place->along && before->across > place->across))
                return false;
        }
    }
    return true;
}

/* Added, then raised to the least length, then to whole steps. A sum that does not fit is wrong. */
static int64_t sold_for(const struct check *check, int64_t used)
{
    const struct cut_sale *sale = &check->job->sale;
    int64_t more, length = used + sale->ahead;

    if (whole_multiply(length, sale->reserve, &more))
        return -1;
    length += more / 1000000 + (more % 1000000 > 0);
    if (sale->least > length)
        length = sale->least;
    if (sale->step > 0 && length % sale->step > 0)
        length += sale->step - length % sale->step;
    return length;
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
            cost += sold_for(check, blank->used);
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
    [CUT_FLAW_USED] = used_true,           [CUT_FLAW_MATCHED] = matched_meet,
    [CUT_FLAW_BLEMISH] = blemishes_free,   [CUT_FLAW_SEQUENCE] = in_sequence,
    [CUT_FLAW_COST] = cost_true,           [CUT_FLAW_BOUND] = bound_true,
    [CUT_FLAW_STROKES] = strokes_true,     [CUT_FLAW_FENCES] = fences_true,
    [CUT_FLAW_STUCK] = stuck_true,
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
