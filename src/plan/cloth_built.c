/*
 * 1  A piece is the same in both plans when it is the nth of its name in its layer.
 * 2  Measures of wood stand in both: only what is measured of boxes and of cloth is left out of the
 *    first.
 */
#include "plan/cloth_built.h"

#include <string.h>

struct holding {
    const struct plan *plan;
    struct arena *arena;
    const struct plan *planned, *built;
    struct model facts; /* of the first: as entered, without those measures */
    struct cloth_built *result;
};

static bool is_cloth(const struct model *model, int64_t key)
{
    const struct stock *stock = MODEL_FIND(model, stock, key);

    return stock && stock->kind == STOCK_CLOTH;
}

static bool is_of_cloth(const struct model *model, const struct measure *measure)
{
    return measure->box != 0 || is_cloth(model, measure->stock);
}

/* ---- pieces ---- */

static bool is_like(const struct piece *a, const struct piece *b)
{
    return a->layer == b->layer && strcmp(a->name, b->name) == 0;
}

const struct piece *piece_mate(const struct plan *plan, size_t index, const struct plan *other)
{
    const struct piece *piece = &plan->pieces.at[index];
    size_t nth = 0;

    for (size_t i = 0; i < index; i++)
        nth += is_like(&plan->pieces.at[i], piece);
    for (size_t i = 0; i < other->pieces.count; i++)
        if (is_like(&other->pieces.at[i], piece) && nth-- == 0)
            return &other->pieces.at[i];
    return NULL;
}

static void add_piece(struct holding *holding, const struct piece *piece,
                      const struct piece *planned, const struct piece *built)
{
    struct piece_built *added = LIST_ADD(holding->arena, &holding->result->pieces);

    *added = (struct piece_built){.label = arena_text(holding->arena, piece->label),
                                  .name = arena_text(holding->arena, piece->name),
                                  .layer = piece->layer,
                                  .box = piece->box,
                                  .stock = piece->stock};
    if (planned) {
        added->planned_width = planned->width;
        added->planned_height = planned->height;
    }
    if (built) {
        added->width = built->width;
        added->height = built->height;
    }
}

static void hold_pieces(struct holding *holding)
{
    const struct plan *planned = holding->planned;
    const struct plan *built = holding->built;

    for (size_t i = 0; i < built->pieces.count; i++)
        if (is_cloth(&holding->facts, built->pieces.at[i].stock))
            add_piece(holding, &built->pieces.at[i], piece_mate(built, i, planned),
                      &built->pieces.at[i]);
    for (size_t i = 0; i < planned->pieces.count; i++)
        if (is_cloth(&holding->facts, planned->pieces.at[i].stock) &&
            !piece_mate(planned, i, built))
            add_piece(holding, &planned->pieces.at[i], &planned->pieces.at[i], NULL);
}

/* ---- rolls ---- */

/* What the layout of a stock comes to in the shop, whatever was bought. */
static int64_t length_of(const struct plan *plan, int64_t stock)
{
    int64_t length = 0;

    for (size_t i = 0; i < plan->jobs.count; i++)
        if (plan->jobs.at[i].stock == stock && plan->jobs.at[i].way == CUT_ROLLS)
            length += plan->jobs.at[i].layout->cost;
    return length;
}

static int64_t bought_of(const struct model *model, int64_t stock)
{
    int64_t length = 0;

    for (size_t i = 0; i < model->boughts.count; i++)
        if (model->boughts.at[i].stock == stock)
            length += model->boughts.at[i].length * model->boughts.at[i].packs;
    return length;
}

static void hold_rolls(struct holding *holding)
{
    const struct model *facts = &holding->facts;

    for (size_t i = 0; i < facts->stocks.count; i++) {
        int64_t key = facts->stocks.at[i].key;
        const struct stock *built = MODEL_FIND(holding->built->facts, stock, key);
        struct roll_built roll = {.stock = key,
                                  .planned_usable = facts->stocks.at[i].width,
                                  .usable = built ? built->width : 0,
                                  .planned_length = length_of(holding->planned, key),
                                  .length = length_of(holding->built, key),
                                  .bought = bought_of(facts, key)};

        if (is_cloth(facts, key) && (roll.planned_length > 0 || roll.length > 0))
            *LIST_ADD(holding->arena, &holding->result->rolls) = roll;
    }
}

/* ---- both ---- */

/* The facts without what was measured of boxes and cloth; true where there was such a measure. */
static bool take_measures_out(struct holding *holding)
{
    const struct model *entered = holding->plan->entered;
    struct model *facts = &holding->facts;

    *facts = *entered;
    facts->measures.count = 0;
    facts->measures.at = ARENA_MANY(holding->arena, struct measure, entered->measures.count + 1);
    for (size_t i = 0; i < entered->measures.count; i++)
        if (!is_of_cloth(entered, &entered->measures.at[i]))
            facts->measures.at[facts->measures.count++] = entered->measures.at[i];
    return facts->measures.count < entered->measures.count;
}

static void run_measures(void *context)
{
    struct holding *holding = context;

    holding->result->measured = take_measures_out(holding);
}

static void run_holding(void *context)
{
    struct holding *holding = context;

    hold_pieces(holding);
    hold_rolls(holding);
}

enum fault cloth_built(const struct plan *plan, struct arena *arena, struct cloth_built *ret_built)
{
    struct cloth_built result = {.measured = false};
    struct holding holding = {.plan = plan, .arena = arena, .result = &result};
    struct arena planned, built;
    enum fault fault = FAULT_NONE;

    arena_init(&planned);
    arena_init(&built);
    if (!arena_try(arena, run_measures, &holding))
        fault = FAULT_MEMORY;
    if (!fault && result.measured) {
        fault = plan_make_draft(&holding.facts, NULL, &planned, &holding.planned);
        if (!fault)
            fault = plan_make_draft(plan->entered, NULL, &built, &holding.built);
        if (!fault && !arena_try(arena, run_holding, &holding))
            fault = FAULT_MEMORY;
    }
    arena_release(&planned);
    arena_release(&built);
    if (!fault)
        *ret_built = result;
    return fault;
}
