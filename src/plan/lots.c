/* Sorted extracts of the plan and the model, for look-ups by owner. */
#include "plan/counted.h"

#include "base/fault.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

static int compare_keys(int64_t a, int64_t b)
{
    return (a > b) - (a < b);
}

/* The first of the figures that is not 0. */
static int first_difference(const int *differences, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (differences[i])
            return differences[i];
    return 0;
}

#define FIRST_DIFFERENCE(differences) \
    first_difference((differences), sizeof(differences) / sizeof *(differences))

typedef int compare_fn(const void *a, const void *b);

static void sort(void *items, size_t count, size_t size, compare_fn *compare)
{
    if (count)
        qsort(items, count, size, compare);
}

/* ---- flaps ---- */

static int compare_flaps(const void *a, const void *b)
{
    const struct flap *left = a;
    const struct flap *right = b;
    const int differences[] = {compare_keys(left->layer, right->layer),
                               compare_keys(left->join, right->join)};

    return FIRST_DIFFERENCE(differences);
}

static size_t merge_flaps(struct flap *flaps, size_t count)
{
    size_t kept = 0;

    for (size_t i = 0; i < count; i++) {
        if (kept && compare_flaps(&flaps[kept - 1], &flaps[i]) == 0) {
            flaps[kept - 1].length += flaps[i].length;
            flaps[kept - 1].staples += flaps[i].staples;
        } else {
            flaps[kept++] = flaps[i];
        }
    }
    return kept;
}

struct flaps flaps_make(const struct planning *planning)
{
    const struct plan *plan = planning->plan;
    struct flaps flaps = {ARENA_MANY(planning->arena, struct flap, plan->intervals.count), 0};

    for (size_t i = 0; i < plan->intervals.count; i++) {
        const struct interval *interval = &plan->intervals.at[i];

        assert(interval->edge < plan->edges.count);
        if (interval->pass != STAPLED_AT_BENCH && interval->join)
            flaps.at[flaps.count++] =
                (struct flap){plan->edges.at[interval->edge].layer, interval->join,
                              interval->to - interval->from, interval->staples};
    }
    sort(flaps.at, flaps.count, sizeof *flaps.at, compare_flaps);
    flaps.count = merge_flaps(flaps.at, flaps.count);
    return flaps;
}

const struct flap *flaps_find(const struct flaps *flaps, int64_t layer, int64_t join)
{
    const struct flap wanted = {.layer = layer, .join = join};

    return flaps->count
               ? bsearch(&wanted, flaps->at, flaps->count, sizeof *flaps->at, compare_flaps)
               : NULL;
}

/* ---- screws ---- */

static int compare_screw_owners(const struct screw_lot *left, const struct screw_lot *right)
{
    const int differences[] = {(int)left->use - (int)right->use,
                               compare_keys(left->owner, right->owner)};

    return FIRST_DIFFERENCE(differences);
}

static int compare_screw_lots(const void *a, const void *b)
{
    const struct screw_lot *left = a;
    const struct screw_lot *right = b;
    const int differences[] = {compare_screw_owners(left, right),
                               (left->kind > right->kind) - (left->kind < right->kind)};

    return FIRST_DIFFERENCE(differences);
}

static int64_t screw_owner(const struct planning *planning, const struct counted *counted,
                           const struct screw *screw)
{
    const struct plan *plan = planning->plan;

    switch (screw->use) {
    case SCREW_FRAME:
        return screw->box;
    case SCREW_PANEL:
        return counted_facing(planning, counted, plan->panels.at[screw->of].facing)->first;
    case SCREW_JOIN:
        return plan->points.at[screw->of].join;
    case SCREW_FITTING:
        return planning->model->fittings.at[screw->of].key;
    }
    BUG("a screw is used for nothing");
}

/* One lot for each screw, and for each piece of wood or panel that has screws without a place. */
static size_t list_screws(const struct planning *planning, const struct counted *counted,
                          struct screw_lot *lots)
{
    const struct plan *plan = planning->plan;
    size_t count = 0;

    for (size_t i = 0; i < plan->screws.count; i++) {
        const struct screw *screw = &plan->screws.at[i];

        lots[count++] =
            (struct screw_lot){screw->use, screw_owner(planning, counted, screw), screw->kind, 1};
    }
    for (size_t i = 0; i < plan->crown_pieces.count; i++) {
        const struct crown_piece *piece = &plan->crown_pieces.at[i];

        if (piece->screws > 0)
            lots[count++] =
                (struct screw_lot){SCREW_FRAME, piece->box, piece->screw, piece->screws};
    }
    for (size_t i = 0; i < plan->panels.count; i++) {
        const struct panel *panel = &plan->panels.at[i];

        if (panel->screws > 0)
            lots[count++] = (struct screw_lot){
                SCREW_PANEL, counted_facing(planning, counted, panel->facing)->first, panel->screw,
                panel->screws};
    }
    return count;
}

/* Sorted lots of one owner and kind become one; how many are left. */
static size_t merge_screw_lots(struct screw_lot *lots, size_t count)
{
    size_t kept = 0;

    for (size_t i = 0; i < count; i++) {
        if (kept && compare_screw_lots(&lots[kept - 1], &lots[i]) == 0)
            lots[kept - 1].count += lots[i].count;
        else
            lots[kept++] = lots[i];
    }
    assert(kept <= count);
    return kept;
}

struct screw_lots screw_lots_make(const struct planning *planning, const struct counted *counted)
{
    const struct plan *plan = planning->plan;
    struct screw_lot *lots =
        ARENA_MANY(planning->arena, struct screw_lot,
                   plan->screws.count + plan->crown_pieces.count + plan->panels.count);
    size_t count = list_screws(planning, counted, lots);

    sort(lots, count, sizeof *lots, compare_screw_lots);
    return (struct screw_lots){lots, merge_screw_lots(lots, count)};
}

const struct screw_lot *screw_lots_of(const struct screw_lots *lots, enum screw_use use,
                                      int64_t owner, size_t *ret_count)
{
    const struct screw_lot wanted = {.use = use, .owner = owner};
    size_t low = 0;
    size_t high = lots->count;
    size_t end;

    while (low < high) {
        size_t middle = low + (high - low) / 2;

        if (compare_screw_owners(&lots->at[middle], &wanted) < 0)
            low = middle + 1;
        else
            high = middle;
    }
    for (end = low; end < lots->count && compare_screw_owners(&lots->at[end], &wanted) == 0;)
        end++;
    *ret_count = end - low;
    return lots->at + low;
}

/* ---- members ---- */

static int compare_member_lots(const void *a, const void *b)
{
    const struct member_lot *left = a;
    const struct member_lot *right = b;
    const int differences[] = {
        compare_keys(left->box, right->box), compare_keys(left->kind, right->kind),
        compare_keys(right->length, left->length), compare_keys(left->stock, right->stock)};

    return FIRST_DIFFERENCE(differences);
}

struct member_lots member_lots_make(const struct planning *planning)
{
    const struct plan *plan = planning->plan;
    struct member_lot *lots = ARENA_MANY(planning->arena, struct member_lot, plan->members.count);
    size_t kept = 0;

    for (size_t i = 0; i < plan->members.count; i++) {
        const struct plan_member *member = &plan->members.at[i];

        lots[i] = (struct member_lot){member->box, member->kind, member->stock, member->length, 1};
    }
    sort(lots, plan->members.count, sizeof *lots, compare_member_lots);
    for (size_t i = 0; i < plan->members.count; i++) {
        if (kept && compare_member_lots(&lots[kept - 1], &lots[i]) == 0)
            lots[kept - 1].count++;
        else
            lots[kept++] = lots[i];
    }
    return (struct member_lots){lots, kept};
}

const struct member_lot *member_lots_of(const struct member_lots *lots, int64_t box,
                                        size_t *ret_count)
{
    size_t low = 0;
    size_t high = lots->count;
    size_t end;

    while (low < high) {
        size_t middle = low + (high - low) / 2;

        if (lots->at[middle].box < box)
            low = middle + 1;
        else
            high = middle;
    }
    for (end = low; end < lots->count && lots->at[end].box == box;)
        end++;
    *ret_count = end - low;
    return lots->at + low;
}

/* ---- ticks ---- */

static int compare_ticks(const void *a, const void *b)
{
    const struct tick *left = *(const struct tick *const *)a;
    const struct tick *right = *(const struct tick *const *)b;
    const int differences[] = {strcmp(left->step, right->step),
                               compare_keys(left->key, right->key)};

    return FIRST_DIFFERENCE(differences);
}

struct ticked ticked_make(const struct planning *planning)
{
    const struct model *model = planning->model;
    const struct tick **ticks =
        ARENA_MANY(planning->arena, const struct tick *, model->ticks.count);
    size_t kept = 0;

    for (size_t i = 0; i < model->ticks.count; i++)
        ticks[i] = &model->ticks.at[i];
    sort(ticks, model->ticks.count, sizeof *ticks, compare_ticks);
    for (size_t i = 0; i < model->ticks.count; i++) {
        if (kept && strcmp(ticks[kept - 1]->step, ticks[i]->step) == 0)
            ticks[kept - 1] = ticks[i];
        else
            ticks[kept++] = ticks[i];
    }
    return (struct ticked){ticks, kept};
}

static int compare_step(const void *step, const void *tick)
{
    return strcmp(step, (*(const struct tick *const *)tick)->step);
}

const struct tick *ticked_find(const struct ticked *ticked, const char *step)
{
    const struct tick **found =
        ticked->count ? bsearch(step, ticked->at, ticked->count, sizeof *ticked->at, compare_step)
                      : NULL;

    return found ? *found : NULL;
}
