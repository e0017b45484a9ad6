/*
 * What a cutting step leaves goes on the shelf when it is ticked: pieces worth keeping, by the
 * trade values of the stock; and what it cut from the shelf comes off it. Taking the tick back
 * takes both back. An entry of which nothing is left stays, so that its place and its note are
 * known when a piece comes back.
 */
#include "desk/internal.h"

#include "plan/steps.h"

#include <string.h>

struct shelving {
    struct model *draft;
    const struct plan *plan;
    const char *step;
    const struct stock *stock;
};

/* The least length and width of a piece worth keeping. */
static void least_kept(const struct shelving *shelving, int64_t *ret_length, int64_t *ret_width)
{
    const int64_t *value = shelving->plan->value;
    int64_t least = value[TRADE_KEEP_CLOTH];

    *ret_width = 0;
    if (shelving->stock->kind == STOCK_STICK) {
        *ret_length = value[TRADE_KEEP_STICK];
        return;
    }
    if (shelving->stock->kind == STOCK_SHEET)
        least = value[TRADE_KEEP_SHEET];
    else if (shelving->stock->kind == STOCK_FOAM)
        least = value[TRADE_KEEP_FOAM];
    *ret_length = *ret_width = least;
}

/* Cloth is kept as well where it is a long strip: for welt. */
static bool is_strip(const struct shelving *shelving, int64_t length, int64_t width)
{
    const int64_t *value = shelving->plan->value;
    int64_t longer = length > width ? length : width;
    int64_t narrow = length > width ? width : length;

    return shelving->stock->kind == STOCK_CLOTH && narrow >= value[TRADE_KEEP_CLOTH_STRIP] &&
           longer >= value[TRADE_KEEP_CLOTH_STRIP_LENGTH];
}

static struct leftover *alike(const struct shelving *shelving, int64_t length, int64_t width)
{
    struct model *draft = shelving->draft;

    for (size_t i = 0; i < draft->leftovers.count; i++) {
        struct leftover *left = &draft->leftovers.at[i];

        if (left->stock == shelving->stock->key && left->length == length && left->width == width &&
            strcmp(left->from_step, shelving->step) == 0 &&
            strcmp(left->from_build, draft->build.name) == 0)
            return left;
    }
    return NULL;
}

static bool is_kept(const struct shelving *shelving, int64_t length, int64_t width)
{
    int64_t least_length, least_width;

    least_kept(shelving, &least_length, &least_width);
    return length > 0 &&
           ((length >= least_length && width >= least_width) || is_strip(shelving, length, width));
}

static bool shelve(const struct shelving *shelving, int64_t length, int64_t width)
{
    struct leftover *left = alike(shelving, length, width);

    if (!is_kept(shelving, length, width))
        return false;
    if (left) {
        left->count++;
        return true;
    }
    left = MODEL_ADD(shelving->draft, leftover);
    left->stock = shelving->stock->key;
    left->length = length;
    left->width = width;
    left->count = 1;
    left->from_build = arena_text(shelving->draft->arena, shelving->draft->build.name);
    left->from_step = arena_text(shelving->draft->arena, shelving->step);
    return true;
}

bool shelf_keeps(struct model *draft, const struct plan *plan, const char *step,
                 const struct cut_stock *from)
{
    struct shelving shelving = {draft, plan, step, MODEL_FIND(draft, stock, step_key_of(step))};

    return shelving.stock && is_kept(&shelving, from->rest, from->rest_across);
}

bool shelf_put(struct model *draft, const struct plan *plan, const char *step,
               const struct cut_stock *from)
{
    struct shelving shelving = {draft, plan, step, MODEL_FIND(draft, stock, step_key_of(step))};

    return shelving.stock && shelve(&shelving, from->rest, from->rest_across);
}

/* The end of a roll that was bought longer than it is cut. */
static void shelve_roll(const struct shelving *shelving, int64_t used)
{
    for (size_t i = 0; i < shelving->plan->purchases.count; i++) {
        const struct purchase *line = &shelving->plan->purchases.at[i];

        if (line->stock == shelving->stock->key && line->length > used)
            shelve(shelving, line->length - used, shelving->stock->width);
    }
}

void shelf_put_roll(struct model *draft, const struct plan *plan, const char *step)
{
    struct shelving shelving = {draft, plan, step, MODEL_FIND(draft, stock, step_key_of(step))};
    int64_t used = 0;

    for (size_t i = 0; shelving.stock && i < plan->cuttings.count; i++) {
        const struct cutting *cutting = &plan->cuttings.at[i];

        if (cutting->stock == shelving.stock->key && !cutting->source->leftover)
            used += cutting->used;
    }
    if (used > 0)
        shelve_roll(&shelving, used);
}

void shelf_take(struct model *draft, int64_t leftover)
{
    struct leftover *left = model_find(draft, ENTITY_leftover, leftover);

    if (left && left->count > 0)
        left->count--;
}

/* An entry that has given one, of equals one with nothing left. */
static struct leftover *entry_of(struct model *draft, int64_t stock, const struct cut_stock *from)
{
    struct leftover *found = NULL;

    for (size_t i = 0; i < draft->leftovers.count; i++) {
        struct leftover *left = &draft->leftovers.at[i];

        if (left->stock == stock && left->length == from->length &&
            (from->width == 0 || left->width == from->width) && (!found || left->count == 0))
            found = left;
    }
    return found;
}

void shelf_give_back(struct model *draft, int64_t stock, const struct cut_stock *from)
{
    struct leftover *left = entry_of(draft, stock, from);

    if (left) {
        left->count++;
        return;
    }
    left = MODEL_ADD(draft, leftover);
    left->stock = stock;
    left->length = from->length;
    left->width = from->width;
    left->count = 1;
}

void shelf_give_rests_back(struct model *draft, const char *step)
{
    for (size_t i = draft->leftovers.count; i-- > 0;) {
        const struct leftover *left = &draft->leftovers.at[i];

        if (strcmp(left->from_step, step) == 0 && strcmp(left->from_build, draft->build.name) == 0)
            model_remove(draft, ENTITY_leftover, left->key);
    }
}
