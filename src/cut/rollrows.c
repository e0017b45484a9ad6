/*
 * One group of matched parts is looked at at a time, all others may lie anywhere. From one of its
 * origins across to the next all parts have the same places: an origin is one at which a part is at
 * the left edge, or has just gone over the right one.
 *
 * Where the pattern repeats along, count the spots of the cloth on one line of the repeat, once a
 * repeat: a part of the group meets a known number of them, another part at least as many as it
 * holds whole repeats. They lie in rows, and no row is a part of one; so their number, rounded up,
 * says in which repeat the last one is.
 */
#include "cut/rollrows.h"

#include "base/quantity.h"

#include <assert.h>

#define LIMIT INT64_C(20000000)    /* of one linear program, */
#define LIMIT_DOWN INT64_C(500000) /* and down the roll, where slices meet many parts */

/* ---- kinds ---- */

bool roll_parts_alike(const struct roll_part *a, const struct roll_part *b)
{
    return a->length == b->length && a->width == b->width && a->group == b->group &&
           a->along == b->along && a->across == b->across && a->may_turn == b->may_turn;
}

static void add_part(struct roll_rows *rows, const struct roll_part *part)
{
    size_t k = 0;

    while (k < rows->kind_count && !roll_parts_alike(rows->kinds[k].part, part))
        k++;
    if (k < rows->kind_count) {
        rows->kinds[k].count++;
        return;
    }
    for (k = rows->kind_count++; k > 0 && rows->kinds[k - 1].part->area < part->area; k--)
        rows->kinds[k] = rows->kinds[k - 1];
    rows->kinds[k] = (struct roll_kind){part, 1};
}

struct roll_rows roll_rows_begin(const struct roll_job *job, struct arena *arena)
{
    struct roll_rows rows = {.job = job, .arena = arena, .group = ROLL_NO_GROUP, .line = ROWS_ALL};

    rows.kinds = ARENA_MANY(arena, struct roll_kind, job->count);
    for (size_t i = 0; i < job->count; i++)
        add_part(&rows, &job->parts[i]);
    rows.slices = slices_begin(rows.kind_count, 2 * rows.kind_count, arena);
    return rows;
}

static bool is_tied(const struct roll_rows *rows, const struct roll_part *part)
{
    return part->group != ROLL_NO_GROUP && part->group == rows->group;
}

/* ---- slices ---- */

/* Spots of the line that a part of this length meets, which begins `begin` from the origin. */
static int64_t spots_met(const struct roll_rows *rows, int64_t length, int64_t begin)
{
    int64_t repeat = rows->job->pattern.along;
    int64_t before = whole_modulo(rows->line - begin, repeat);

    return length <= before ? 0 : whole_divide_up(length - before, repeat);
}

static int64_t slices_of(const struct roll_rows *rows, const struct roll_part *part, bool turned,
                         bool dropped)
{
    int64_t length = turned == (rows->down > 0) ? part->length : part->width;
    int64_t repeat = rows->job->pattern.along;

    if (rows->line == ROWS_ALL)
        return length;
    if (!is_tied(rows, part))
        return length / repeat;
    return spots_met(rows, length, part->along + (dropped ? repeat / 2 : 0));
}

static int64_t share_of(const struct roll_rows *rows, const struct roll_part *part, bool turned,
                        bool dropped)
{
    int64_t slices = slices_of(rows, part, turned, dropped);

    return rows->dual ? dual_of(rows->dual, slices, rows->dual_all) : slices;
}

/* Whether it matters in which repeats across a part lies. */
static bool drops(const struct roll_rows *rows, const struct roll_part *part)
{
    return is_tied(rows, part) && rows->job->pattern.half_drop && rows->line != ROWS_ALL;
}

static void add_way(struct roll_rows *rows, const struct roll_part *part, bool turned, bool dropped)
{
    const struct cut_pattern *pattern = &rows->job->pattern;
    struct slices *slices = &rows->slices;
    struct slice_way way = {.kind = slices->kind_count,
                            .size = turned == (rows->down > 0) ? part->width : part->length,
                            .share = share_of(rows, part, turned, dropped),
                            .turned = turned,
                            .dropped = dropped};

    if (is_tied(rows, part) && pattern->across > 0) {
        way.repeat = pattern->across << drops(rows, part);
        way.at = whole_modulo(rows->origin + part->across + dropped * pattern->across, way.repeat);
    }
    if (way.at + way.size <= slices->room &&
        (!rows->dual || slices_of(rows, part, turned, dropped) <= rows->dual_all))
        slices->ways[slices->way_count++] = way;
}

/* A kind that can lie so that no slice meets it is left aside. */
static void add_kind(struct roll_rows *rows, size_t kind)
{
    assert(kind < rows->kind_count);

    const struct roll_part *part = rows->kinds[kind].part;
    struct slices *slices = &rows->slices;
    size_t first = slices->way_count;
    bool met = true;

    for (int turned = 0; turned < 1 + part->may_turn; turned++)
        for (int dropped = 0; dropped < 1 + drops(rows, part); dropped++)
            add_way(rows, part, turned, dropped);
    for (size_t w = first; w < slices->way_count; w++)
        met = met && slices->ways[w].share > 0;
    if (met && slices->way_count > first)
        slices->kinds[slices->kind_count++] =
            (struct slice_kind){kind, rows->kinds[kind].count,
                                rows->wanted ? rows->wanted[kind] : (double)rows->kinds[kind].count,
                                first, slices->way_count - first};
    else
        slices->way_count = first;
}

static int64_t limit_of(const struct roll_rows *rows)
{
    return rows->down > 0 ? LIMIT_DOWN : LIMIT;
}

int64_t roll_rows_slices(struct roll_rows *rows)
{
    int64_t least;

    rows->slices.room = rows->down > 0 ? rows->down : rows->job->width;
    rows->slices.kind_count = rows->slices.way_count = 0;
    for (size_t k = 0; k < rows->kind_count; k++)
        add_kind(rows, k);
    rows->slices.work = 0;
    least = slices_solve(&rows->slices, limit_of(rows));
    rows->work += rows->slices.work;
    return least;
}

static const struct slice_kind *slice_kind_of(const struct roll_rows *rows, size_t kind)
{
    for (size_t k = 0; k < rows->slices.kind_count; k++)
        if (rows->slices.kinds[k].name == kind)
            return &rows->slices.kinds[k];
    return NULL;
}

const struct slice_way *roll_rows_way(const struct roll_rows *rows, size_t kind, bool turned,
                                      bool dropped)
{
    assert(kind < rows->kind_count);

    const struct slice_kind *of = slice_kind_of(rows, kind);

    dropped = dropped && drops(rows, rows->kinds[kind].part);
    for (size_t w = of ? of->first : 0; of && w < of->first + of->way_count; w++)
        if (rows->slices.ways[w].turned == turned && rows->slices.ways[w].dropped == dropped)
            return &rows->slices.ways[w];
    return NULL;
}

int64_t roll_rows_worth(const struct roll_rows *rows, size_t kind)
{
    const struct slice_kind *of = slice_kind_of(rows, kind);

    return of ? slices_kind_worth(&rows->slices, of) : 0;
}

/* ---- lines of the repeat along ---- */

static int64_t last_line(const struct roll_rows *rows, const struct roll_part *part, bool dropped)
{
    int64_t repeat = rows->job->pattern.along;

    return whole_modulo(part->along + part->length - 1 + (dropped ? repeat / 2 : 0), repeat);
}

static size_t add_number(int64_t *list, size_t count, int64_t number)
{
    for (size_t i = 0; i < count; i++)
        if (list[i] == number)
            return count;
    list[count] = number;
    return count + 1;
}

size_t roll_rows_lines(const struct roll_rows *rows, int64_t *ret_lines)
{
    size_t count = 0;

    for (size_t k = 0; k < rows->kind_count && rows->job->pattern.along > 0; k++)
        for (int dropped = 0; dropped < 1 + rows->job->pattern.half_drop; dropped++)
            if (is_tied(rows, rows->kinds[k].part))
                count = add_number(ret_lines, count, last_line(rows, rows->kinds[k].part, dropped));
    return count;
}

/* Whether a part that is not of the group meets spots of the line however it lies. */
static bool others_met(const struct roll_rows *rows)
{
    for (size_t k = 0; k < rows->kind_count; k++) {
        const struct roll_part *part = rows->kinds[k].part;

        if (!is_tied(rows, part) && slices_of(rows, part, false, false) > 0 &&
            (!part->may_turn || slices_of(rows, part, true, false) > 0))
            return true;
    }
    return false;
}

/* The least length that holds so many spots of the line, wherever the first part of the group that
 * begins at all puts its origin. Spots before that part count only where others are met by them;
 * then the first may be at the very beginning. */
static int64_t length_of_rows(const struct roll_rows *rows, int64_t spots)
{
    const struct roll_job *job = rows->job;
    int64_t repeat = job->pattern.along, least = INT64_MAX;

    if (spots > 0 && others_met(rows))
        return (spots - 1) * repeat + 1;
    for (size_t k = 0; k < rows->kind_count; k++)
        for (int dropped = 0; dropped < 1 + job->pattern.half_drop; dropped++) {
            const struct roll_part *part = rows->kinds[k].part;
            int64_t length =
                whole_modulo(rows->line - part->along - (dropped ? repeat / 2 : 0), repeat) +
                (spots - 1) * repeat + 1;

            if (is_tied(rows, part) && length < least)
                least = length;
        }
    return spots > 0 && least < INT64_MAX ? least : 0;
}

int64_t roll_rows_least(struct roll_rows *rows, int64_t most)
{
    int64_t *lines = ARENA_MANY(rows->arena, int64_t, 2 * rows->kind_count);
    size_t count = roll_rows_lines(rows, lines);
    int64_t best;

    rows->line = ROWS_ALL;
    best = roll_rows_slices(rows);
    for (size_t i = 0; i < count && best < most; i++) {
        int64_t length;

        rows->line = lines[i];
        length = length_of_rows(rows, roll_rows_slices(rows));
        best = length > best ? length : best;
    }
    return best;
}

/* How many spots of the line a length holds at most. */
static int64_t rows_in(const struct roll_rows *rows, int64_t length)
{
    int64_t spots;

    if (rows->line == ROWS_ALL)
        return length;
    for (spots = 0; length_of_rows(rows, spots + 1) <= length; spots++)
        ;
    return spots;
}

/* By what parts are worth beside each other, one after another in so many rows. */
static bool refuted_from_both_sides(struct roll_rows *rows, int64_t in)
{
    bool refuted = roll_rows_slices(rows) > in;

    if (refuted || rows->slices.worth == 0)
        return refuted;
    if (!slices_turn(&rows->slices, in))
        return true;
    rows->slices.work = 0;
    refuted = slices_solve(&rows->slices, limit_of(rows)) > SLICES_WHOLE;
    rows->work += rows->slices.work;
    return refuted;
}

/* By the slices that are set, of which there are so many. */
static bool refuted_by(struct roll_rows *rows, int64_t in)
{
    struct duals duals = duals_begin(DUALS_MOST);
    bool refuted = false;

    if (in == 0)
        return false;
    if (refuted_from_both_sides(rows, in))
        return true;
    rows->dual_all = in;
    for (size_t k = 0; k < rows->kind_count; k++)
        for (int turned = 0; turned < 1 + rows->kinds[k].part->may_turn; turned++)
            duals_add(&duals, slices_of(rows, rows->kinds[k].part, turned, false), in);
    for (size_t i = 0; i < duals.count && !refuted; i++) {
        rows->dual = &duals.at[i];
        refuted = roll_rows_slices(rows) > dual_all(rows->dual, in);
    }
    rows->dual = NULL;
    return refuted;
}

/* By slices down the roll: it is as wide as they are many. */
static bool refuted_down(struct roll_rows *rows, int64_t length)
{
    bool refuted;

    rows->line = ROWS_ALL;
    rows->down = length;
    refuted = refuted_by(rows, rows->job->width);
    rows->down = 0;
    return refuted;
}

bool roll_rows_refute(struct roll_rows *rows, int64_t length)
{
    int64_t *lines = ARENA_MANY(rows->arena, int64_t, 2 * rows->kind_count);
    size_t count = roll_rows_lines(rows, lines);
    bool refuted;

    rows->line = ROWS_ALL;
    refuted = refuted_by(rows, length) || (roll_job_plain(rows->job) && refuted_down(rows, length));
    for (size_t i = 0; i < count && !refuted; i++) {
        rows->line = lines[i];
        refuted = refuted_by(rows, rows_in(rows, length));
    }
    return refuted;
}

/* ---- all origins ---- */

size_t roll_rows_origins(const struct roll_rows *rows, int64_t *ret_origins)
{
    const struct roll_job *job = rows->job;
    size_t count = 0;

    if (rows->group == ROLL_NO_GROUP || job->pattern.across == 0 || rows->group == job->pinned) {
        ret_origins[0] = 0;
        return 1;
    }
    for (size_t k = 0; k < rows->kind_count; k++) {
        const struct roll_part *part = rows->kinds[k].part;
        int64_t first = whole_modulo(-part->across, job->pattern.across);
        int64_t after =
            whole_modulo(job->width - part->width - part->across + 1, job->pattern.across);

        if (is_tied(rows, part) && roll_origin_serves(job, rows->group, first))
            count = add_number(ret_origins, count, first);
        if (is_tied(rows, part) && roll_origin_serves(job, rows->group, after))
            count = add_number(ret_origins, count, after);
    }
    assert(count > 0);
    return count;
}

static int64_t shown_by_group(struct roll_rows *rows)
{
    int64_t *origins = ARENA_MANY(rows->arena, int64_t, 2 * rows->kind_count + 1);
    size_t count = roll_rows_origins(rows, origins);
    int64_t least = INT64_MAX;

    for (size_t i = 0; i < count; i++) {
        int64_t shown;

        rows->origin = origins[i];
        shown = roll_rows_least(rows, least);
        least = shown < least ? shown : least;
    }
    return least;
}

int64_t roll_rows_bound(const struct roll_job *job, struct arena *arena, int64_t *work)
{
    struct roll_rows rows = roll_rows_begin(job, arena);
    int64_t best = 0;

    if (job->group_count == 0)
        best = shown_by_group(&rows);
    for (rows.group = 0; rows.group < job->group_count; rows.group++) {
        int64_t shown = shown_by_group(&rows);

        best = shown > best ? shown : best;
    }
    *work += rows.work;
    return best;
}
