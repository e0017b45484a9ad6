/*
 * A set says how many parts of each kind it has. Every pattern that is cut from edge to edge,
 * pushed together, is two patterns beside each other, one way or the other; so the smallest boxes
 * that hold a set are put together from those of two sets that make it up. Boxes that no sheet
 * takes are of no use, and of two boxes the one that is no smaller either way. Which sheets take
 * which sets then gives the least price of ever larger sets.
 *
 *  1  a set's number has a digit for each kind, to the base of one more than there are parts of it;
 *     so the numbers of two sets that make up a set add up to its own
 *  2  sets are made in the order of their numbers
 *  3  boxes of a set follow each other in the pool, rising along and falling across
 */
#include "cut/kinds.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#define KINDS_MOST 14
#define SETS_MOST 16384
#define BOXES_MOST 100000
#define STAIRS_MOST 2000 /* boxes of one set */
#define SHEETS_MOST 12   /* that are limited, each by itself */
#define SIZES_MOST 32
#define NO_BOX UINT32_MAX

struct box {
    int32_t size[2];
    uint32_t near, far; /* boxes side by side; near NO_BOX: a single part of the kind `far` */
    int8_t way;
    bool turned;
};

/* A set: its boxes, the sizes that take one of them, and how it is bought at least. */
struct parts_set {
    uint32_t first, count;
    uint32_t taken_by; /* by size: a bit */
    int64_t price;
};

/* Goes through the sets within a set, from none on: true while there is a next one. */
struct within {
    uint32_t set;
    uint32_t left[KINDS_MOST]; /* by kind: how many more the whole has */
    uint32_t has[KINDS_MOST];
};

struct kinds {
    const struct sheet_job *job;
    struct arena *arena;
    size_t kind_count;
    uint32_t set_count;
    uint32_t steps[KINDS_MOST];  /* a part more of a kind, in numbers */
    uint32_t counts[KINDS_MOST]; /* of parts */
    size_t parts[KINDS_MOST];    /* one of each kind */
    uint8_t *kind_of;            /* by part */
    struct parts_set *sets;
    uint32_t now;         /* the set that is being made, or priced with the next sheet */
    struct within within; /* sets within it that have been joined with what they leave of it */
    bool begun;           /* the set that is being made */
    LIST_OF(struct box) boxes;
    struct box *stairs; /* of the set that is being made */
    uint32_t stair_count;
    size_t sheets[SHEETS_MOST]; /* sizes of single sheets, those that are limited */
    size_t sheet_count;
    int64_t *prices;  /* by sheet and set: with the sheets up to this one */
    uint32_t *choice; /* by sheet and set: what lies in it; after the last sheet, in one more */
    size_t priced;    /* sheets that prices are known with */
    bool *placed;     /* scratch, by part */
    bool full;
    int64_t work;
};

/* ---- begin ---- */

static bool count_kinds(struct kinds *kinds)
{
    const struct sheet_job *job = kinds->job;

    for (size_t i = 0; i < job->part_count; i++) {
        size_t kind = 0;

        while (kind < kinds->kind_count &&
               !sheetjob_alike(&job->parts[kinds->parts[kind]], &job->parts[i]))
            kind++;
        if (kind == KINDS_MOST || !job->parts[i].fits)
            return false;
        if (kind == kinds->kind_count)
            kinds->parts[kinds->kind_count++] = i;
        kinds->counts[kind]++;
        kinds->kind_of[i] = (uint8_t)kind;
    }
    return true;
}

static bool number_sets(struct kinds *kinds)
{
    uint32_t count = 1;

    for (size_t kind = 0; kind < kinds->kind_count && count <= SETS_MOST; kind++) {
        kinds->steps[kind] = count;
        count *= kinds->counts[kind] + 1;
    }
    kinds->set_count = count;
    return count <= SETS_MOST;
}

static bool list_sheets(struct kinds *kinds)
{
    const struct sheet_job *job = kinds->job;

    for (size_t s = 0; s < job->size_count; s++) {
        if (!job->sizes[s].usable || job->sizes[s].any)
            continue;
        for (size_t n = 0; n < job->sizes[s].limit; n++) {
            if (kinds->sheet_count == SHEETS_MOST)
                return false;
            kinds->sheets[kinds->sheet_count++] = s;
        }
    }
    return job->size_count <= SIZES_MOST;
}

struct kinds *kinds_begin(const struct sheet_job *job, struct arena *arena)
{
    struct kinds *kinds = ARENA_NEW(arena, struct kinds);

    kinds->job = job;
    kinds->arena = arena;
    kinds->kind_of = ARENA_MANY(arena, uint8_t, job->part_count);
    if (!count_kinds(kinds) || !number_sets(kinds) || !list_sheets(kinds))
        return NULL;
    kinds->placed = ARENA_MANY(arena, bool, job->part_count);
    kinds->sets = ARENA_MANY(arena, struct parts_set, kinds->set_count);
    kinds->stairs = ARENA_MANY(arena, struct box, STAIRS_MOST);
    kinds->now = 1;
    return kinds;
}

/* ---- sets that make up a set ---- */

static struct within within_begin(const struct kinds *kinds, uint32_t whole)
{
    struct within within = {0};

    for (size_t kind = 0; kind < kinds->kind_count; kind++)
        within.left[kind] = whole / kinds->steps[kind] % (kinds->counts[kind] + 1);
    return within;
}

static bool within_next(const struct kinds *kinds, struct within *within)
{
    for (size_t kind = 0; kind < kinds->kind_count; kind++) {
        if (within->left[kind] > 0) {
            within->left[kind]--;
            within->has[kind]++;
            within->set += kinds->steps[kind];
            return true;
        }
        within->set -= within->has[kind] * kinds->steps[kind];
        within->left[kind] = within->has[kind];
        within->has[kind] = 0;
    }
    return false;
}

/* ---- boxes ---- */

/* Sizes that take a box: a bit each. */
static uint32_t sizes_for(const struct kinds *kinds, const int32_t size[2])
{
    uint32_t sizes = 0;

    for (size_t s = 0; s < kinds->job->size_count; s++) {
        const struct sheet_size *sheet = &kinds->job->sizes[s];

        if (sheet->usable && size[0] <= sheet->size[0] && size[1] <= sheet->size[1])
            sizes |= UINT32_C(1) << s;
    }
    return sizes;
}

/* The boxes of a set, none of them no smaller than another both ways, are like stairs. Adds a box
 * to them, if it is a step, and takes those away that it makes useless. */
static void add_box(struct kinds *kinds, const struct box *box)
{
    struct box *stairs = kinds->stairs;
    uint32_t low = 0, high = kinds->stair_count, gone;

    while (low < high) {
        uint32_t middle = low + (high - low) / 2;

        if (stairs[middle].size[0] <= box->size[0])
            low = middle + 1;
        else
            high = middle;
    }
    if (low > 0 && stairs[low - 1].size[1] <= box->size[1])
        return;
    low -= low > 0 && stairs[low - 1].size[0] == box->size[0];
    for (gone = low; gone < kinds->stair_count && stairs[gone].size[1] >= box->size[1];)
        gone++;
    if (kinds->stair_count - (gone - low) == STAIRS_MOST || sizes_for(kinds, box->size) == 0) {
        kinds->full = kinds->full || sizes_for(kinds, box->size) != 0;
        return;
    }
    memmove(&stairs[low + 1], &stairs[gone], (kinds->stair_count - gone) * sizeof *stairs);
    stairs[low] = *box;
    kinds->stair_count += 1 - (gone - low);
    assert(low == 0 ||
           (stairs[low - 1].size[0] < box->size[0] && stairs[low - 1].size[1] > box->size[1]));
    kinds->work += 20 + kinds->stair_count / 4;
}

static void add_single(struct kinds *kinds, uint32_t set)
{
    for (uint32_t kind = 0; kind < kinds->kind_count; kind++) {
        const struct sheet_part *part = &kinds->job->parts[kinds->parts[kind]];

        if (set != kinds->steps[kind])
            continue;
        for (int turned = 0; turned <= part->may_turn; turned++)
            add_box(kinds, &(struct box){.size = {part->size[turned], part->size[!turned]},
                                         .near = NO_BOX,
                                         .far = kind,
                                         .turned = turned});
    }
}

static void join_sets(struct kinds *kinds, const struct parts_set *a, const struct parts_set *b)
{
    for (uint32_t i = a->first; i < a->first + a->count; i++)
        for (uint32_t k = b->first; k < b->first + b->count; k++) {
            const struct box *near = &kinds->boxes.at[i], *far = &kinds->boxes.at[k];

            for (int8_t way = 0; way < 2; way++) {
                struct box box = {.near = i, .far = k, .way = way};
                int32_t side = near->size[!way], other = far->size[!way];

                box.size[way] = near->size[way] + far->size[way];
                box.size[!way] = side > other ? side : other;
                add_box(kinds, &box);
            }
        }
    kinds->work += (int64_t)a->count * b->count * 30;
}

static void begin_set(struct kinds *kinds)
{
    kinds->within = within_begin(kinds, kinds->now);
    kinds->stair_count = 0;
    kinds->begun = true;
    add_single(kinds, kinds->now);
}

static void end_set(struct kinds *kinds)
{
    struct parts_set *made = &kinds->sets[kinds->now++];

    kinds->begun = false;
    made->first = (uint32_t)kinds->boxes.count;
    made->count = kinds->stair_count;
    for (uint32_t i = 0; i < kinds->stair_count; i++) {
        made->taken_by |= sizes_for(kinds, kinds->stairs[i].size);
        *LIST_ADD(kinds->arena, &kinds->boxes) = kinds->stairs[i];
    }
    kinds->full = kinds->full || kinds->boxes.count > BOXES_MOST;
}

/* The next two sets that make up the one that is being made. */
static void make_next(struct kinds *kinds)
{
    uint32_t part;

    if (!kinds->begun)
        begin_set(kinds);
    kinds->work += 4;
    if (!within_next(kinds, &kinds->within) || kinds->within.set == kinds->now) {
        end_set(kinds);
        return;
    }
    part = kinds->within.set;
    assert(part > 0 && part < kinds->now);
    if (part <= kinds->now - part)
        join_sets(kinds, &kinds->sets[part], &kinds->sets[kinds->now - part]);
}

/* ---- prices ---- */

static int64_t *price_at(const struct kinds *kinds, size_t sheet, uint32_t set)
{
    return &kinds->prices[sheet * kinds->set_count + set];
}

static uint32_t *choice_at(const struct kinds *kinds, size_t sheet, uint32_t set)
{
    return &kinds->choice[sheet * kinds->set_count + set];
}

/* The cheapest size without a limit that takes a set; size_count: none does. */
static size_t size_for(const struct kinds *kinds, uint32_t set)
{
    const struct sheet_size *sizes = kinds->job->sizes;
    size_t best = kinds->job->size_count;

    for (size_t s = 0; s < kinds->job->size_count; s++)
        if (sizes[s].any && (kinds->sets[set].taken_by >> s & 1) &&
            (best == kinds->job->size_count || sizes[s].price < sizes[best].price))
            best = s;
    return best;
}

/* Takes a set in one more sheet at this price beside what the rest costs, if that is the least. */
static void offer(const struct kinds *kinds, size_t sheet, uint32_t whole, uint32_t set,
                  int64_t rest, int64_t price)
{
    if (rest == INT64_MAX || rest + price >= *price_at(kinds, sheet, whole))
        return;
    *price_at(kinds, sheet, whole) = rest + price;
    *choice_at(kinds, sheet, whole) = set;
}

/* One more sheet that is limited: what of a set lies in it, if anything. */
static void price_with_sheet(struct kinds *kinds, size_t sheet, uint32_t whole)
{
    size_t size = kinds->sheets[sheet];
    struct within part = within_begin(kinds, whole);

    *price_at(kinds, sheet + 1, whole) = *price_at(kinds, sheet, whole);
    for (; within_next(kinds, &part); kinds->work += 4)
        if (kinds->sets[part.set].taken_by >> size & 1)
            offer(kinds, sheet + 1, whole, part.set, *price_at(kinds, sheet, whole - part.set),
                  kinds->job->sizes[size].price);
}

/* Sheets without a limit for what the others do not take. */
static void price_without_limit(struct kinds *kinds, uint32_t whole)
{
    size_t last = kinds->sheet_count;
    struct within part = within_begin(kinds, whole);

    *price_at(kinds, last + 1, whole) = *price_at(kinds, last, whole);
    for (; within_next(kinds, &part); kinds->work += 8) {
        size_t size = size_for(kinds, part.set);

        if (size < kinds->job->size_count)
            offer(kinds, last + 1, whole, part.set, *price_at(kinds, last + 1, whole - part.set),
                  kinds->job->sizes[size].price);
    }
}

/* All sets are made: without any sheet only nothing is had. */
static void begin_prices(struct kinds *kinds)
{
    size_t fields = (kinds->sheet_count + 2) * kinds->set_count;

    kinds->prices = ARENA_MANY(kinds->arena, int64_t, fields);
    kinds->choice = ARENA_MANY(kinds->arena, uint32_t, fields);
    for (uint32_t set = 1; set < kinds->set_count; set++)
        *price_at(kinds, 0, set) = INT64_MAX;
    kinds->now = 0;
}

/* The next set with the next sheet that is limited, or after them with those without a limit. */
static void price_next(struct kinds *kinds)
{
    if (kinds->priced < kinds->sheet_count)
        price_with_sheet(kinds, kinds->priced, kinds->now);
    else
        price_without_limit(kinds, kinds->now);
    if (++kinds->now == kinds->set_count) {
        kinds->now = 0;
        kinds->priced++;
    }
}

static bool is_done(const struct kinds *kinds)
{
    return kinds->priced > kinds->sheet_count;
}

enum kinds_outcome kinds_step(struct kinds *kinds, int64_t work_most, int64_t *work)
{
    int64_t begun = kinds->work;

    while (!kinds->full && !is_done(kinds) && kinds->work - begun < work_most)
        if (kinds->prices)
            price_next(kinds);
        else if (kinds->now < kinds->set_count)
            make_next(kinds);
        else
            begin_prices(kinds);
    *work += kinds->work - begun;
    return kinds->full ? KINDS_TOO_MANY : is_done(kinds) ? KINDS_DONE : KINDS_GOING_ON;
}

int64_t kinds_price(const struct kinds *kinds)
{
    assert(is_done(kinds));
    return *price_at(kinds, kinds->sheet_count + 1, kinds->set_count - 1);
}

/* ---- a plan ---- */

static void grow_box(struct kinds *kinds, struct trees *trees, int32_t node, const struct box *box);

/* Adds a box to a row of children; where it is such a row itself, its own two sides. */
static void grow_row(struct kinds *kinds, struct trees *trees, int32_t node, int way,
                     const struct box *box)
{
    int32_t size[2] = {trees->nodes[node].size[0], trees->nodes[node].size[1]};

    if (box->near != NO_BOX && box->way == way) {
        grow_row(kinds, trees, node, way, &kinds->boxes.at[box->near]);
        grow_row(kinds, trees, node, way, &kinds->boxes.at[box->far]);
        return;
    }
    size[way] = box->size[way];
    grow_box(kinds, trees, trees_grow(trees, node, way, size), box);
}

static size_t next_part(struct kinds *kinds, uint32_t kind)
{
    size_t part = kinds->parts[kind];

    while (kinds->kind_of[part] != kind || kinds->placed[part]) {
        part++;
        assert(part < kinds->job->part_count); /* no more are taken than there are */
    }
    kinds->placed[part] = true;
    return part;
}

/* Cuts a box out of an open node that is no smaller. */
static void grow_box(struct kinds *kinds, struct trees *trees, int32_t node, const struct box *box)
{
    int32_t rest[2] = {trees->nodes[node].size[0], trees->nodes[node].size[1]};
    int way = box->way;

    assert(rest[0] >= box->size[0] && rest[1] >= box->size[1]);
    if (box->near == NO_BOX)
        way = rest[0] > box->size[0] ? 0 : 1;
    if (box->near == NO_BOX && rest[way] == box->size[way]) {
        trees_fill(trees, node, next_part(kinds, box->far), box->turned);
        return;
    }
    rest[way] -= box->size[way];
    grow_row(kinds, trees, node, way, box);
    if (rest[way] > 0)
        trees_leave(trees, trees_grow(trees, node, way, rest));
}

static void lay_sheet(struct kinds *kinds, struct trees *trees, size_t size, uint32_t set)
{
    const struct parts_set *of = &kinds->sets[set];
    uint32_t box = of->first;

    while (!(sizes_for(kinds, kinds->boxes.at[box].size) >> size & 1))
        box++;
    assert(box < of->first + of->count);
    grow_box(kinds, trees, trees_break(trees, trees_empty_sheet(trees, kinds->job, size)),
             &kinds->boxes.at[box]);
}

void kinds_lay(struct kinds *kinds, struct trees *trees)
{
    size_t sheet = kinds->sheet_count + 1;
    uint32_t left = kinds->set_count - 1;

    assert(kinds_price(kinds) < INT64_MAX);
    memset(kinds->placed, 0, kinds->job->part_count * sizeof *kinds->placed);
    while (sheet > 0) {
        uint32_t set = *choice_at(kinds, sheet, left);

        if (set > 0)
            lay_sheet(kinds, trees,
                      sheet > kinds->sheet_count ? size_for(kinds, set) : kinds->sheets[sheet - 1],
                      set);
        assert(set <= left);
        left -= set;
        sheet -= set == 0 || sheet <= kinds->sheet_count;
    }
    assert(left == 0);
}
