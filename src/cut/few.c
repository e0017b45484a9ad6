/*
 * A dynamic program over pieces with the parts that are cut from them. The cuts of a sheet are its
 * leaves less one, parts and waste together. A piece that a part fills is a leaf, so is one without
 * parts; any other is cut in two, either way, and its parts are shared between the sides in every
 * manner. A cut can be moved, and the sides be changed for each other, until parts of the near side
 * reach just to it in a row: so it is tried where sums of measures of some of these are (normal
 * patterns: Christofides and Whitlock, "An algorithm for two-dimensional cutting problems", 1977).
 * Over all that, the parts are shared between sheets in every manner.
 *
 *  1  sets are masks of parts; of equal parts the first ones stand for any (canonical)
 *  2  solved holds what is known of a set in a piece; leaves TOO_MANY: it does not go in
 *  3  with the fewest leaves no two wastes lie beside each other: one cut less would do. So a row
 *     of children has one gap at the most, as trees want it
 */
#include "cut/few.h"

#include <assert.h>
#include <string.h>

#define SLOTS_A_PART 4096
#define SETS (1U << FEW_PARTS)
#define SUMS_MOST 600 /* of a set */
#define TOO_MANY 1000
#define SIZES_MOST 16
#define WORK_CUT 30    /* that is tried */
#define WORK_PIECE 200 /* that is solved */

/* The first cut of a piece; no way where there is none. */
struct solved {
    int32_t size[2];
    int32_t at;
    int16_t leaves; /* 0: an empty slot */
    uint8_t set, near;
    int8_t way;
};

/* Sheets that hold all parts: sets and sizes. */
struct sharing {
    uint8_t sets[FEW_PARTS];
    size_t sizes[FEW_PARTS];
    size_t count;
    int64_t price;
    int32_t cuts;
};

struct few {
    const struct sheet_job *job;
    uint8_t alike[FEW_PARTS]; /* by part: those equal to it, as a set */
    int64_t areas[SETS];
    uint32_t slots, free_slots;
    struct solved *solved;
    bool complete;
    size_t used[SIZES_MOST];
    struct sharing now, best;
    int64_t work, work_most;
};

/* ---- sets ---- */

static int32_t count_of(uint32_t set)
{
    int32_t count = 0;

    for (; set > 0; set &= set - 1)
        count++;
    return count;
}

/* As many of each kind as `like` has, out of `from`. */
static uint32_t pick(const struct few *few, uint32_t from, uint32_t like)
{
    uint32_t picked = 0;

    for (size_t i = 0; i < few->job->part_count; i++) {
        uint32_t alike = few->alike[i];

        if ((from >> i & 1) && count_of(picked & alike) < count_of(like & alike))
            picked |= 1U << i;
    }
    return picked;
}

static uint32_t canonical(const struct few *few, uint32_t set)
{
    return pick(few, (1U << few->job->part_count) - 1, set);
}

struct few *few_make(const struct sheet_job *job, struct arena *arena)
{
    struct few *few = ARENA_NEW(arena, struct few);

    assert(job->part_count <= FEW_PARTS);
    few->job = job;
    few->slots = (uint32_t)(SLOTS_A_PART * job->part_count);
    few->solved = ARENA_MANY(arena, struct solved, few->slots);
    for (size_t i = 0; i < job->part_count; i++)
        for (size_t k = 0; k < job->part_count; k++)
            if (sheetjob_alike(&job->parts[i], &job->parts[k]))
                few->alike[i] |= (uint8_t)(1U << k);
    for (uint32_t set = 1; set < 1U << job->part_count; set++)
        for (size_t i = 0; i < job->part_count; i++)
            few->areas[set] += set >> i & 1 ? job->parts[i].area : 0;
    return few;
}

/* ---- one piece ---- */

static struct solved *slot_of(struct few *few, uint32_t set, const int32_t size[2])
{
    uint32_t key = (uint32_t)size[0] * 73856093U ^ (uint32_t)size[1] * 19349663U ^ set * 83492791U;
    uint32_t slot = (key ^ key >> 15) % few->slots;

    while (few->solved[slot].leaves != 0 &&
           (few->solved[slot].set != set || few->solved[slot].size[0] != size[0] ||
            few->solved[slot].size[1] != size[1]))
        slot = (slot + 1) % few->slots;
    return &few->solved[slot];
}

/* Whether each part of a set fits a piece by itself, and all by area. */
static bool may_fit(const struct few *few, uint32_t set, const int32_t size[2])
{
    const struct sheet_size as_size = {.size = {size[0], size[1]}};

    if (few->areas[set] > (int64_t)size[0] * size[1])
        return false;
    for (size_t i = 0; i < few->job->part_count; i++)
        if ((set >> i & 1) && !sheetjob_fits(&as_size, &few->job->parts[i]))
            return false;
    return true;
}

/* The part that fills a piece, as a set of one does. */
static bool is_filled(const struct few *few, uint32_t set, const int32_t size[2])
{
    return count_of(set) == 1 && few->areas[set] == (int64_t)size[0] * size[1];
}

/* All sums of measures, one way, of some parts of a set, below a limit; each once. */
static size_t list_sums(struct few *few, uint32_t set, int way, int32_t below, int32_t *sums)
{
    size_t count = 0;

    for (size_t i = 0; i < few->job->part_count; i++) {
        const struct sheet_part *part = &few->job->parts[i];
        size_t before = count;

        for (size_t k = 0; (set >> i & 1) && k <= before; k++)
            for (int turned = 0; turned <= part->may_turn; turned++) {
                int32_t sum = (k == before ? 0 : sums[k]) + part->size[way != turned];
                size_t known = 0;

                while (known < count && sums[known] != sum)
                    known++;
                few->work += (int64_t)known / 2 + 4;
                if (known < count || sum >= below)
                    continue;
                if (count == SUMS_MOST)
                    few->complete = false;
                else
                    sums[count++] = sum;
            }
    }
    return count;
}

static int32_t leaves_of(struct few *few, uint32_t set, const int32_t size[2]);

/* One cut with a set on its near side. */
static void try_cut(struct few *few, struct solved *best, uint32_t near, int way, int32_t at)
{
    int32_t near_size[2] = {best->size[0], best->size[1]};
    int32_t far_size[2] = {best->size[0], best->size[1]};
    int32_t leaves;

    few->work += WORK_CUT;
    assert(at > 0 && at < best->size[way]);
    near_size[way] = at;
    far_size[way] -= at;
    if (!may_fit(few, near, near_size) || !may_fit(few, best->set & ~near, far_size))
        return;
    leaves = leaves_of(few, near, near_size);
    if (leaves < best->leaves)
        leaves += leaves_of(few, best->set & ~near, far_size);
    if (leaves >= best->leaves)
        return;
    best->leaves = (int16_t)leaves;
    best->near = (uint8_t)near;
    best->way = (int8_t)way;
    best->at = at;
}

/* All cuts with a set on their near side, until there are as few leaves as can be. */
static void try_cuts(struct few *few, struct solved *best, uint32_t near, int32_t least)
{
    for (int way = 0; way < 2; way++) {
        int32_t sums[SUMS_MOST];
        size_t count = list_sums(few, near, way, best->size[way], sums);

        for (size_t i = 0; i < count && best->leaves > least; i++)
            try_cut(few, best, near, way, sums[i]);
    }
}

/* The fewest leaves of a piece that gives a set. Each cut leaves fewer parts or a piece that one of
 * its parts' measures ends in: the depth is bounded by the parts three times. */
static int32_t leaves_of(struct few *few, uint32_t set, const int32_t size[2])
{
    uint32_t like = canonical(few, set);
    int32_t least = count_of(set) + (few->areas[set] < (int64_t)size[0] * size[1]);
    struct solved best = {
        .size = {size[0], size[1]}, .set = (uint8_t)like, .leaves = TOO_MANY, .way = TREE_NONE};
    const struct solved *known;

    if (!may_fit(few, set, size))
        return TOO_MANY;
    if (set == 0 || is_filled(few, set, size))
        return 1;
    known = slot_of(few, like, size);
    if (known->leaves != 0)
        return known->leaves;
    if (few->free_slots == 0 || few->work >= few->work_most) {
        few->complete = false;
        return TOO_MANY;
    }
    few->free_slots--;
    few->work += WORK_PIECE;
    for (uint32_t near = like; near > 0; near = (near - 1) & like)
        if (canonical(few, near) == near)
            try_cuts(few, &best, near, least);
    assert(best.leaves >= least);
    *slot_of(few, like, size) = best;
    return best.leaves;
}

/* ---- sheets ---- */

static bool is_better(const struct sharing *a, const struct sharing *b)
{
    return a->price != b->price ? a->price < b->price : a->cuts < b->cuts;
}

static void share_rest(struct few *few, uint32_t left);

/* The next sheet is of a size and gives a set. */
static void try_sheet(struct few *few, uint32_t left, uint32_t set, size_t size)
{
    assert(size < few->job->size_count);

    struct sharing *now = &few->now;
    struct sharing before = *now;
    int32_t leaves = !few->complete ? TOO_MANY : leaves_of(few, set, few->job->sizes[size].size);

    if (leaves >= TOO_MANY)
        return;
    assert(now->count < FEW_PARTS && (set & ~left) == 0);
    now->sets[now->count] = (uint8_t)set;
    now->sizes[now->count++] = size;
    now->price += few->job->sizes[size].price;
    now->cuts += leaves - 1;
    few->used[size]++;
    if (is_better(now, &few->best))
        share_rest(few, left & ~set);
    few->used[size]--;
    *now = before;
}

/* Shares what is left between sheets, in every manner; the first part left lies in the next one. */
static void share_rest(struct few *few, uint32_t left)
{
    uint32_t first = left & (~left + 1);

    if (left == 0) {
        few->best = few->now;
        return;
    }
    for (uint32_t set = left; set > 0; set = (set - 1) & left)
        for (size_t s = 0; (set & first) && s < few->job->size_count; s++)
            if (few->job->sizes[s].usable &&
                (few->job->sizes[s].any || few->used[s] < few->job->sizes[s].limit))
                try_sheet(few, left, set, s);
}

/* ---- the trees ---- */

static void grow(struct few *few, struct trees *trees, int32_t node, uint32_t set);

/* The sides of the first cut of a piece below a node; where they are cut on the same way, their
 * sides. */
static void grow_sides(struct few *few, struct trees *trees, int32_t node, int way, uint32_t set,
                       const int32_t size[2])
{
    assert(way == 0 || way == 1);

    const struct solved *solved = slot_of(few, canonical(few, set), size);
    int32_t near_size[2] = {size[0], size[1]}, far_size[2] = {size[0], size[1]};
    uint32_t near;

    if (set == 0 || is_filled(few, set, size) || solved->way != way) {
        grow(few, trees, trees_grow(trees, node, way, size), set);
        return;
    }
    near = pick(few, set, solved->near);
    near_size[way] = solved->at;
    far_size[way] -= solved->at;
    grow_sides(few, trees, node, way, near, near_size);
    grow_sides(few, trees, node, way, set & ~near, far_size);
}

/* What is cut from a node that is open. */
static void grow(struct few *few, struct trees *trees, int32_t node, uint32_t set)
{
    const int32_t size[2] = {trees->nodes[node].size[0], trees->nodes[node].size[1]};
    size_t part = 0;

    if (set == 0) {
        trees_leave(trees, node);
    } else if (is_filled(few, set, size)) {
        while (!(set >> part & 1))
            part++;
        assert(part < few->job->part_count);
        trees_fill(trees, node, part, few->job->parts[part].size[0] != size[0]);
    } else {
        grow_sides(few, trees, node, slot_of(few, canonical(few, set), size)->way, set, size);
    }
}

bool few_solve(struct few *few, struct trees *trees, int64_t work_most, int64_t *ret_price,
               int64_t *work)
{
    few->complete = few->job->size_count <= SIZES_MOST;
    few->free_slots = few->slots / 2;
    few->work = 0;
    few->work_most = work_most;
    few->best = (struct sharing){.price = INT64_MAX};
    memset(few->solved, 0, few->slots * sizeof *few->solved);
    if (few->complete)
        share_rest(few, (1U << few->job->part_count) - 1);
    *work += few->work;
    if (!few->complete || few->best.price == INT64_MAX)
        return false;
    for (size_t i = 0; i < few->best.count; i++) {
        int32_t root = trees_empty_sheet(trees, few->job, few->best.sizes[i]);

        grow(few, trees, trees_break(trees, root), few->best.sets[i]);
    }
    *ret_price = few->best.price;
    return true;
}
