#include "cut/sheetsets.h"

#include "base/whole.h"

#include <assert.h>
#include <string.h>

#define NODES_MOST 40000 /* of a search through sets */

/* ---- the search through sets ---- */

struct walk {
    const struct sheet_covers *covers;
    const struct sheet_job *job;
    struct sheet_sets *sets; /* NULL where only the least price is wanted */
    size_t *order;           /* sizes that have a price, the best price for area first */
    size_t order_count;
    size_t *counts; /* by size */
    int64_t below;
    size_t sheets; /* in all, never more than parts */
    int nodes;
};

/* Whether a gives more area for its price than b. */
static bool better_value(const struct sheet_size *a, const struct sheet_size *b)
{
    int64_t left, right;

    if (whole_multiply(a->price, b->area, &left) || whole_multiply(b->price, a->area, &right))
        return a->price / (a->area >> 20 | 1) < b->price / (b->area >> 20 | 1);
    return left < right;
}

static void order_sizes(struct walk *walk)
{
    walk->order_count = 0;
    for (size_t s = 0; s < walk->job->size_count; s++) {
        const struct sheet_size *size = &walk->job->sizes[s];
        size_t i = walk->order_count;

        if (!size->usable || size->price == 0)
            continue;
        for (; i > 0 && better_value(size, &walk->job->sizes[walk->order[i - 1]]); i--)
            walk->order[i] = walk->order[i - 1];
        walk->order[i] = s;
        walk->order_count++;
    }
}

/* What `need` of a cover costs at least with sizes from `from` on, in fractions of sheets;
 * INT64_MAX where none of them gives any. */
static int64_t price_of_need(const struct walk *walk, size_t cover, size_t from, int64_t need)
{
    int64_t least = INT64_MAX;

    if (need <= 0)
        return 0;
    for (size_t i = from; i < walk->order_count; i++) {
        int64_t gives = walk->covers->gives[cover][walk->order[i]];
        int64_t price = walk->job->sizes[walk->order[i]].price, product;

        if (gives <= 0)
            continue;
        price = whole_multiply(need, price, &product) ? need / gives * price
                                                      : whole_divide_up(product, gives);
        least = price < least ? price : least;
    }
    return least;
}

/* The dearest of all covers. */
static int64_t price_of_needs(const struct walk *walk, size_t from, const int64_t *needs)
{
    int64_t dearest = 0;

    for (size_t c = 0; c < walk->covers->count; c++) {
        int64_t price = price_of_need(walk, c, from, needs[c]);

        dearest = price > dearest ? price : dearest;
    }
    return dearest;
}

/* Whether one more of some size could be bought. */
static bool can_grow(const struct walk *walk, int64_t price)
{
    for (size_t i = 0; i < walk->order_count; i++) {
        const struct sheet_size *size = &walk->job->sizes[walk->order[i]];

        if (walk->counts[walk->order[i]] < size->limit && price + size->price < walk->below)
            return true;
    }
    return false;
}

static void keep_set(struct sheet_sets *sets, const struct sheet_job *job, const size_t *counts)
{
    size_t width = job->size_count, i = sets->count;
    int64_t area = 0;

    assert(sets->count <= sets->room);
    for (size_t s = 0; s < width; s++)
        area += (int64_t)counts[s] * job->sizes[s].area;
    for (size_t k = 0; k < sets->count; k++)
        if (memcmp(&sets->counts[k * width], counts, width * sizeof *counts) == 0)
            return;
    if (i == sets->room && (i == 0 || sets->area[--i] >= area))
        return;
    for (; i > 0 && sets->area[i - 1] < area; i--) {
        sets->area[i] = sets->area[i - 1];
        memcpy(&sets->counts[i * width], &sets->counts[(i - 1) * width], width * sizeof *counts);
    }
    sets->area[i] = area;
    memcpy(&sets->counts[i * width], counts, width * sizeof *counts);
    sets->count += sets->count < sets->room;
}

static bool all_met(const struct walk *walk, const int64_t *needs)
{
    for (size_t c = 0; c < walk->covers->count; c++)
        if (needs[c] > 0)
            return false;
    return true;
}

static void end_set(struct walk *walk, int64_t price, const int64_t *needs)
{
    if (!all_met(walk, needs) || price >= walk->below)
        return;
    if (!walk->sets)
        walk->below = price;
    else if (!can_grow(walk, price) || walk->sheets >= walk->job->part_count)
        keep_set(walk->sets, walk->job, walk->counts);
}

/* Goes through all numbers of sheets of the sizes from `from` on, many first. `needs` is what the
 * sheets so far leave to be held. */
static void walk_sizes(struct walk *walk, size_t from, int64_t price, const int64_t *needs)
{
    const struct sheet_size *size;
    int64_t left[COVERS_MOST];
    size_t s, most;

    if (walk->nodes++ >= NODES_MOST || price >= walk->below ||
        price_of_needs(walk, from, needs) >= walk->below - price)
        return;
    if (from == walk->order_count) {
        end_set(walk, price, needs);
        return;
    }
    s = walk->order[from];
    size = &walk->job->sizes[s];
    assert(size->price > 0 && walk->sheets <= walk->job->part_count);
    most = (size_t)((walk->below - 1 - price) / size->price);
    most = most > size->limit ? size->limit : most;
    if (most > walk->job->part_count - walk->sheets)
        most = walk->job->part_count - walk->sheets;
    for (size_t n = most + 1; n-- > 0;) {
        for (size_t c = 0; c < walk->covers->count; c++)
            left[c] = needs[c] - (int64_t)n * walk->covers->gives[c][s];
        walk->counts[s] = n;
        walk->sheets += n;
        walk_sizes(walk, from + 1, price + (int64_t)n * size->price, left);
        walk->sheets -= n;
    }
    walk->counts[s] = 0;
}

int64_t covers_bound(const struct sheet_covers *covers, const struct sheet_job *job, int64_t known,
                     struct arena *arena)
{
    struct walk walk = {.covers = covers,
                        .job = job,
                        .below = known + 1,
                        .order = ARENA_MANY(arena, size_t, job->size_count),
                        .counts = ARENA_MANY(arena, size_t, job->size_count)};
    int64_t fractions;

    assert(known >= 0);
    order_sizes(&walk);
    fractions = price_of_needs(&walk, 0, covers->need);
    walk_sizes(&walk, 0, 0, covers->need);
    if (walk.nodes < NODES_MOST)
        return walk.below > known ? known : walk.below;
    return fractions > known ? known : fractions;
}

void sets_init(struct sheet_sets *sets, const struct sheet_job *job, size_t room,
               struct arena *arena)
{
    *sets = (struct sheet_sets){.room = room,
                                .counts = ARENA_MANY(arena, size_t, room * (job->size_count + 1)),
                                .area = ARENA_MANY(arena, int64_t, room),
                                .order = ARENA_MANY(arena, size_t, job->size_count),
                                .tried = ARENA_MANY(arena, size_t, job->size_count)};
}

/* ---- sets near a plan ---- */

/* Adds as many of a size as may be bought. */
static void fill_size(struct walk *walk, size_t s, int64_t *price)
{
    const struct sheet_size *size = &walk->job->sizes[s];

    while (walk->counts[s] < size->limit && *price + size->price < walk->below &&
           walk->sheets < walk->job->part_count) {
        walk->counts[s]++;
        walk->sheets++;
        *price += size->price;
    }
}

static bool covers_met(const struct walk *walk)
{
    for (size_t c = 0; c < walk->covers->count; c++) {
        int64_t need = walk->covers->need[c];

        for (size_t i = 0; i < walk->order_count; i++)
            need -= (int64_t)walk->counts[walk->order[i]] * walk->covers->gives[c][walk->order[i]];
        if (need > 0)
            return false;
    }
    return true;
}

/* The plan's sheets but for one of size `out` and one of size `out_too`, then as many as can be of
 * size `in`, then of all others in order. */
static void step_away(struct walk *walk, const size_t *best, size_t out, size_t out_too, size_t in)
{
    assert(out < walk->job->size_count);

    int64_t price = 0;

    memcpy(walk->counts, best, walk->job->size_count * sizeof *best);
    walk->sheets = 0;
    if (walk->counts[out]-- == 0 || (out_too != SIZE_MAX && walk->counts[out_too]-- == 0))
        return;
    for (size_t s = 0; s < walk->job->size_count; s++) {
        price += (int64_t)walk->counts[s] * walk->job->sizes[s].price;
        walk->sheets += walk->counts[s];
    }
    fill_size(walk, in, &price);
    for (size_t i = 0; i < walk->order_count; i++)
        fill_size(walk, walk->order[i], &price);
    if (price < walk->below && covers_met(walk))
        keep_set(walk->sets, walk->job, walk->counts);
}

static void walk_near(struct walk *walk, const size_t *best)
{
    for (size_t a = 0; a < walk->order_count; a++)
        for (size_t b = a; b <= walk->order_count; b++)
            for (size_t in = 0; in < walk->order_count; in++)
                step_away(walk, best, walk->order[a],
                          b == walk->order_count ? SIZE_MAX : walk->order[b], walk->order[in]);
}

void sets_find(struct sheet_sets *sets, const struct sheet_covers *covers,
               const struct sheet_job *job, int64_t below, const size_t *best)
{
    struct walk walk = {.covers = covers,
                        .job = job,
                        .sets = sets,
                        .below = below,
                        .order = sets->order,
                        .counts = sets->tried};

    memset(walk.counts, 0, job->size_count * sizeof *walk.counts);
    sets->count = 0;
    order_sizes(&walk);
    walk_sizes(&walk, 0, 0, covers->need);
    if (walk.nodes >= NODES_MOST)
        walk_near(&walk, best);
}

void sets_add(struct sheet_sets *sets, const struct sheet_job *job, const size_t *counts)
{
    assert(sets->room > 0);
    sets->count -= sets->count == sets->room;
    memcpy(&sets->counts[sets->count * job->size_count], counts, job->size_count * sizeof *counts);
    sets->area[sets->count++] = 0;
}
