#include "cut/skyline.h"

#include <assert.h>

struct spot {
    bool found, turned;
    int64_t across, along;
    int64_t length, width; /* of the part as it lies */
    int64_t end;
    int64_t shut_in; /* area left empty before it */
};

void skyline_clear(struct skyline *skyline, struct arena *arena, int64_t width)
{
    assert(width > 0);
    skyline->ledges.count = 0;
    *LIST_ADD(arena, &skyline->ledges) = (struct ledge){0, width, 0};
}

static int64_t ledge_end(const struct ledge *ledge)
{
    return ledge->across + ledge->width;
}

static int64_t overlap(const struct ledge *ledge, int64_t from, int64_t to)
{
    int64_t begin = ledge->across > from ? ledge->across : from;
    int64_t end = ledge_end(ledge) < to ? ledge_end(ledge) : to;

    return end > begin ? end - begin : 0;
}

/* Fills in along, end and shut_in for a spot with across, length and width. */
static void drop(struct spot *spot, struct skyline *skyline)
{
    int64_t covered = 0;

    spot->along = 0;
    for (size_t i = 0; i < skyline->ledges.count; i++) {
        const struct ledge *ledge = &skyline->ledges.at[i];
        int64_t over = overlap(ledge, spot->across, spot->across + spot->width);

        if (over > 0 && ledge->along > spot->along)
            spot->along = ledge->along;
        covered += over * ledge->along;
    }
    skyline->steps += (int64_t)skyline->ledges.count;
    spot->end = spot->along + spot->length;
    spot->shut_in = spot->along * spot->width - covered;
}

static bool spot_better(const struct spot *a, const struct spot *b)
{
    if (!b->found || a->end != b->end)
        return !b->found || a->end < b->end;
    if (a->shut_in != b->shut_in)
        return a->shut_in < b->shut_in;
    return a->across < b->across;
}

static void try_spot(struct spot *best, struct skyline *skyline, struct spot spot)
{
    const struct ledge *last = &skyline->ledges.at[skyline->ledges.count - 1];

    if (spot.across < 0 || spot.across + spot.width > ledge_end(last))
        return;
    drop(&spot, skyline);
    if (spot_better(&spot, best))
        *best = spot;
}

static void try_way(struct spot *best, struct skyline *skyline, const struct cut_piece *part,
                    bool turned)
{
    struct spot spot = {.found = true, .turned = turned};

    spot.length = turned ? part->width : part->length;
    spot.width = turned ? part->length : part->width;
    for (size_t i = 0; i < skyline->ledges.count; i++) {
        spot.across = skyline->ledges.at[i].across;
        try_spot(best, skyline, spot);
        spot.across = ledge_end(&skyline->ledges.at[i]) - spot.width;
        try_spot(best, skyline, spot);
    }
}

static void add_ledge(struct skyline *skyline, struct arena *arena, struct ledge ledge)
{
    struct ledge *last =
        skyline->ledges.count > 0 ? &skyline->ledges.at[skyline->ledges.count - 1] : NULL;

    if (ledge.width <= 0)
        return;
    if (last && last->along == ledge.along)
        last->width += ledge.width;
    else
        *LIST_ADD(arena, &skyline->ledges) = ledge;
}

/* Rebuilds the ledges from left to right: what lies beside the part stays, the part covers the
 * rest. */
static void raise_ledges(struct skyline *skyline, struct arena *arena, const struct spot *spot)
{
    int64_t from = spot->across, to = from + spot->width;
    size_t count = skyline->ledges.count;

    skyline->before.count = 0;
    for (size_t i = 0; i < count; i++)
        *LIST_ADD(arena, &skyline->before) = skyline->ledges.at[i];
    skyline->ledges.count = 0;
    for (size_t i = 0; i < count; i++) {
        struct ledge ledge = skyline->before.at[i];
        int64_t left = overlap(&ledge, 0, from), right = overlap(&ledge, to, INT64_MAX);

        add_ledge(skyline, arena, (struct ledge){ledge.across, left, ledge.along});
        if (ledge.across <= from && from < ledge_end(&ledge))
            add_ledge(skyline, arena, (struct ledge){from, spot->width, spot->end});
        add_ledge(skyline, arena, (struct ledge){ledge_end(&ledge) - right, right, ledge.along});
    }
}

bool skyline_place(struct skyline *skyline, struct arena *arena, const struct cut_piece *part,
                   struct cut_place *ret_place)
{
    struct spot best = {0};

    assert(skyline->ledges.count > 0 && part->length > 0 && part->width > 0);
    try_way(&best, skyline, part, false);
    if (part->may_turn)
        try_way(&best, skyline, part, true);
    if (!best.found)
        return false;
    raise_ledges(skyline, arena, &best);
    ret_place->along = best.along;
    ret_place->across = best.across;
    ret_place->turned = best.turned;
    return true;
}
