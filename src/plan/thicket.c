/*
 * Space is cut into cubes; a screw hangs on every cube that the block around its axis touches.
 * Whoever asks looks into the cubes that the block around its own axis touches when that is made
 * larger by the distance asked for and the radii: a screw nearer than that shares one of them.
 *
 * 1  The cubes are kept by hash, so that a box of any size takes room for its screws only.
 * 2  The answer does not depend on the order in which cubes are looked at: of screws equally near
 *    the first that was added is the nearest.
 */
#include "plan/thicket.h"

#include "plan/geometry.h"

#include <assert.h>

#define CELL (3 * LENGTH_INCH)
#define CELLS_AT_FIRST 64

struct cells {
    int64_t low[AXIS_COUNT], high[AXIS_COUNT]; /* both included */
};

static struct cells cells_about(const struct screw_axis *axis, int64_t reach)
{
    assert(reach >= 0);

    struct cells cells;

    for (int i = 0; i < AXIS_COUNT; i++) {
        int64_t head = vector_along(axis->head, i);
        int64_t tip = vector_along(axis->tip, i);

        cells.low[i] = whole_divide_down(length_smaller(head, tip) - reach, CELL);
        cells.high[i] = whole_divide_down(length_larger(head, tip) + reach, CELL);
    }
    return cells;
}

static size_t cell_hash(const struct thicket *thicket, int64_t x, int64_t y, int64_t z)
{
    uint64_t mixed = (uint64_t)x * 0x9e3779b97f4a7c15u ^ (uint64_t)y * 0xc2b2ae3d27d4eb4fu ^
                     (uint64_t)z * 0x165667b19e3779f9u;

    /* a power of two, so that the mask reaches every cell */
    assert(thicket->cell_count > 0 && (thicket->cell_count & (thicket->cell_count - 1)) == 0);
    return (size_t)(mixed >> 32) & (thicket->cell_count - 1);
}

static void hang(struct thicket *thicket, size_t screw)
{
    assert(screw < thicket->screws.count);

    struct cells cells = cells_about(&thicket->screws.at[screw].axis, 0);

    for (int64_t x = cells.low[AXIS_X]; x <= cells.high[AXIS_X]; x++)
        for (int64_t y = cells.low[AXIS_Y]; y <= cells.high[AXIS_Y]; y++)
            for (int64_t z = cells.low[AXIS_Z]; z <= cells.high[AXIS_Z]; z++) {
                size_t *first = &thicket->cells[cell_hash(thicket, x, y, z)];

                *LIST_ADD(thicket->arena, &thicket->links) = (struct thicket_link){screw, *first};
                *first = thicket->links.count - 1;
            }
}

/* Twice as many cells, and everything hung up again. */
static void widen(struct thicket *thicket)
{
    thicket->cell_count = thicket->cell_count ? 2 * thicket->cell_count : CELLS_AT_FIRST;
    thicket->cells = ARENA_MANY(thicket->arena, size_t, thicket->cell_count);
    for (size_t i = 0; i < thicket->cell_count; i++)
        thicket->cells[i] = PLAN_NONE;
    thicket->links.count = 0;
    for (size_t i = 0; i < thicket->screws.count; i++)
        hang(thicket, i);
}

static void add(struct thicket *thicket, const struct thicket_screw *screw)
{
    assert(thicket->arena);
    if (thicket->links.count >= thicket->cell_count)
        widen(thicket);
    *LIST_ADD(thicket->arena, &thicket->screws) = *screw;
    thicket->thickest = length_larger(thicket->thickest, screw->axis.diameter);
    hang(thicket, thicket->screws.count - 1);
}

void thicket_add(struct thicket *thicket, const struct screw_axis *axis, size_t screw)
{
    add(thicket, &(struct thicket_screw){*axis, screw, PLAN_NONE});
}

void thicket_add_bolt(struct thicket *thicket, const struct screw_axis *axis, size_t bolt)
{
    add(thicket, &(struct thicket_screw){*axis, PLAN_NONE, bolt});
}

struct asking {
    const struct thicket *thicket;
    const struct screw_axis *axis;
    size_t but;
    int64_t clear;  /* of the nearest so far */
    size_t nearest; /* PLAN_NONE: none is nearer */
};

static void look_in(struct asking *asking, size_t link)
{
    const struct thicket *thicket = asking->thicket;

    for (; link != PLAN_NONE; link = thicket->links.at[link].next) {
        size_t screw = thicket->links.at[link].screw;
        const struct screw_axis *other = &thicket->screws.at[screw].axis;
        int64_t clear;

        if (screw == asking->but || screw_clears(asking->axis, other, asking->clear + 1))
            continue;
        clear = screw_clear(asking->axis, other);
        if (clear < asking->clear ||
            (clear == asking->clear && screw < asking->nearest && asking->nearest != PLAN_NONE)) {
            asking->clear = clear;
            asking->nearest = screw;
        }
    }
}

int64_t thicket_clear(const struct thicket *thicket, const struct screw_axis *axis, int64_t enough,
                      size_t but, size_t *ret_nearest)
{
    struct asking asking = {thicket, axis, but, enough, PLAN_NONE};
    int64_t radii = (thicket->thickest + axis->diameter) / 2 + 1;
    struct cells cells = cells_about(axis, length_larger(enough, 0) + radii);

    if (thicket->screws.count == 0)
        return enough;
    for (int64_t x = cells.low[AXIS_X]; x <= cells.high[AXIS_X]; x++)
        for (int64_t y = cells.low[AXIS_Y]; y <= cells.high[AXIS_Y]; y++)
            for (int64_t z = cells.low[AXIS_Z]; z <= cells.high[AXIS_Z]; z++)
                look_in(&asking, thicket->cells[cell_hash(thicket, x, y, z)]);
    if (ret_nearest && asking.nearest != PLAN_NONE)
        *ret_nearest = asking.nearest;
    assert(asking.clear <= enough);
    return asking.clear;
}
