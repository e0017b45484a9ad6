#include "cut/split.h"

#include <assert.h>

struct choice {
    size_t area;
    bool turned;
    int64_t length, width; /* of the part as it lies */
    int64_t miss, second_miss;
};

void areas_open(struct free_areas *free, struct arena *arena, struct free_area area)
{
    if (area.length > 0 && area.width > 0)
        *LIST_ADD(arena, &free->areas) = area;
}

static void judge(struct choice *choice, const struct free_area *area, enum fit_rule fit)
{
    int64_t over_length = area->length - choice->length;
    int64_t over_width = area->width - choice->width;
    int64_t shorter = over_length < over_width ? over_length : over_width;
    int64_t longer = over_length < over_width ? over_width : over_length;

    switch (fit) {
    case FIT_AREA:
        choice->miss = area->length * area->width - choice->length * choice->width;
        choice->second_miss = shorter;
        break;
    case FIT_SHORT_SIDE:
        choice->miss = shorter;
        choice->second_miss = longer;
        break;
    default:
        choice->miss = longer;
        choice->second_miss = shorter;
    }
}

static void try_area(struct choice *best, const struct free_areas *free, size_t index,
                     const struct cut_piece *part, bool turned, enum fit_rule fit)
{
    assert(index < free->areas.count);

    const struct free_area *area = &free->areas.at[index];
    struct choice choice = {.area = index, .turned = turned};

    choice.length = turned ? part->width : part->length;
    choice.width = turned ? part->length : part->width;
    if (choice.length > area->length || choice.width > area->width)
        return;
    judge(&choice, area, fit);
    if (best->area == SIZE_MAX || choice.miss < best->miss ||
        (choice.miss == best->miss && choice.second_miss < best->second_miss))
        *best = choice;
}

/* Whether the rest beyond the part, along, keeps the area's whole width. */
static bool splits_wide_along(const struct free_area *area, const struct choice *choice,
                              enum split_rule split)
{
    int64_t over_length = area->length - choice->length;
    int64_t over_width = area->width - choice->width;
    int64_t along = over_length * area->width;
    int64_t across = over_width * area->length;

    if (over_width == 0 || over_length == 0)
        return over_width == 0;
    switch (split) {
    case SPLIT_WIDE_ALONG:
        return true;
    case SPLIT_WIDE_ACROSS:
        return false;
    case SPLIT_LARGE:
        return along >= across;
    default:
        return along < across;
    }
}

static void split_area(struct free_areas *free, struct arena *arena, const struct choice *choice,
                       enum split_rule split)
{
    struct free_area area = free->areas.at[choice->area];
    bool wide_along = splits_wide_along(&area, choice, split);
    struct free_area beyond = area, beside = area;

    assert(choice->length <= area.length && choice->width <= area.width);
    beyond.along += choice->length;
    beyond.length -= choice->length;
    beside.across += choice->width;
    beside.width -= choice->width;
    if (wide_along)
        beside.length = choice->length;
    else
        beyond.width = choice->width;
    list_remove(&free->areas.any, choice->area, sizeof area);
    if (beyond.length > 0)
        *LIST_ADD(arena, &free->areas) = beyond;
    if (beside.width > 0)
        *LIST_ADD(arena, &free->areas) = beside;
}

bool areas_place(struct free_areas *free, struct arena *arena, const struct cut_piece *part,
                 enum fit_rule fit, enum split_rule split, size_t *ret_blank,
                 struct cut_place *ret_place)
{
    struct choice best = {.area = SIZE_MAX};
    const struct free_area *area;

    assert(part->length > 0 && part->width > 0);
    for (size_t i = 0; i < free->areas.count; i++) {
        try_area(&best, free, i, part, false, fit);
        if (part->may_turn)
            try_area(&best, free, i, part, true, fit);
    }
    free->steps += (int64_t)free->areas.count + 1;
    if (best.area == SIZE_MAX)
        return false;
    area = &free->areas.at[best.area];
    *ret_blank = area->blank;
    ret_place->along = area->along;
    ret_place->across = area->across;
    ret_place->turned = best.turned;
    split_area(free, arena, &best, split);
    return true;
}
