#include "desk/compare.h"

#include "base/memory.h"
#include "desk/internal.h"
#include "plan/cloth_ways.h"

#include <assert.h>
#include <string.h>

/* ---- figures ---- */

/* A figure that stands somewhere in the plan. */
#define FIGURE_OF(name, place)                   \
    static int64_t name(const struct plan *plan) \
    {                                            \
        return (int64_t)plan->place;             \
    }
FIGURE_OF(estimate_of, cost.estimate)
FIGURE_OF(used_of, cost.used)
FIGURE_OF(tax_of, cost.tax)
FIGURE_OF(spent_of, cost.spent)
FIGURE_OF(forecast_of, cost.forecast)
FIGURE_OF(left_of, cost.left)
FIGURE_OF(ready_made_of, facts->build.ready_made)
FIGURE_OF(sticks_of, tally.sticks)
FIGURE_OF(sheets_of, tally.sheets)
FIGURE_OF(cloth_of, tally.cloth)
FIGURE_OF(staples_of, tally.staples)
FIGURE_OF(screws_of, tally.screws)
FIGURE_OF(boxes_of, facts->boxes.count)
FIGURE_OF(joins_of, facts->joins.count)
FIGURE_OF(seams_of, seams.count)
FIGURE_OF(steps_of, tally.steps)
FIGURE_OF(minutes_of, tally.minutes)
FIGURE_OF(stops_of, tally.stops)
FIGURE_OF(warns_of, tally.warns)
FIGURE_OF(notes_of, tally.notes)
#undef FIGURE_OF

static int64_t mass_of(const struct plan *plan)
{
    int64_t mass = 0;
    for (size_t i = 0; i < plan->loads.count; i++)
        (void)whole_add(mass, plan->loads.at[i].mass, &mass);
    return mass;
}

static int64_t heaviest_of(const struct plan *plan)
{
    int64_t most = 0;
    for (size_t i = 0; i < plan->loads.count; i++)
        most = plan->loads.at[i].mass > most ? plan->loads.at[i].mass : most;
    return most;
}

static bool has_budget(const struct plan *plan)
{
    return plan->facts->build.budget > 0;
}

static bool has_ready_made(const struct plan *plan)
{
    return plan->facts->build.ready_made > 0;
}

const struct figure plan_figures[] = {
    {"estimate", "estimate", FIGURE_MONEY, estimate_of, NULL},
    {"tax", "of it, tax", FIGURE_MONEY, tax_of, NULL},
    {"used", "used up, without tax", FIGURE_MONEY, used_of, NULL},
    {"spent", "paid so far", FIGURE_MONEY, spent_of, NULL},
    {"forecast", "forecast", FIGURE_MONEY, forecast_of, NULL},
    {"left", "left of the budget", FIGURE_MONEY, left_of, has_budget},
    {"ready_made", "ready-made piece", FIGURE_MONEY, ready_made_of, has_ready_made},
    {"minutes", "time", FIGURE_MINUTES, minutes_of, NULL},
    {"steps", "steps", FIGURE_COUNT, steps_of, NULL},
    {"boxes", "boxes", FIGURE_COUNT, boxes_of, NULL},
    {"joins", "joins", FIGURE_COUNT, joins_of, NULL},
    {"sticks", "sticks", FIGURE_COUNT, sticks_of, NULL},
    {"sheets", "sheets", FIGURE_COUNT, sheets_of, NULL},
    {"cloth", "cloth to buy", FIGURE_ROLL, cloth_of, NULL},
    {"seams", "seams", FIGURE_COUNT, seams_of, NULL},
    {"staples", "staples", FIGURE_COUNT, staples_of, NULL},
    {"screws", "screws", FIGURE_COUNT, screws_of, NULL},
    {"mass", "weight", FIGURE_MASS, mass_of, NULL},
    {"heaviest", "heaviest box", FIGURE_MASS, heaviest_of, NULL},
    {"stops", "stops", FIGURE_COUNT, stops_of, NULL},
    {"warns", "warnings", FIGURE_COUNT, warns_of, NULL},
    {"notes", "notes", FIGURE_COUNT, notes_of, NULL},
    {NULL, NULL, FIGURE_COUNT, NULL, NULL},
};

static bool knows(const struct figure *figure, const struct plan *plan)
{
    return !figure->known || figure->known(plan);
}

bool figure_differs(const struct figure *figure, const struct plan *const *plans, size_t count)
{
    for (size_t i = 1; i < count; i++) {
        if (knows(figure, plans[i]) != knows(figure, plans[0]) ||
            figure->of(plans[i]) != figure->of(plans[0]))
            return true;
    }
    return false;
}

/* ---- builds ---- */

struct desk_compare {
    struct arena arena;
    LIST_OF(struct desk_state *) states;
    LIST_OF(const struct plan *) plans;
};

struct adding {
    struct desk_compare *compare;
    struct desk *desk;
    int64_t build;
};

static enum fault run_add(void *context, struct fault_note *note)
{
    const struct adding *adding = context;
    struct desk_compare *compare = adding->compare;
    struct desk_state **slot = LIST_ADD(&compare->arena, &compare->states);
    *slot = desk_state_new();
    if (!*slot)
        return fault_say(note, FAULT_MEMORY, "there is not enough memory for this");
    struct desk_state *state = *slot;
    enum fault fault =
        store_peek(adding->desk->store, adding->build, &state->model, &state->arena, note);
    if (!fault)
        fault = desk_state_plan(state, &adding->desk->known, note);
    if (!fault)
        *LIST_ADD(&compare->arena, &compare->plans) = state->plan;
    return fault;
}

enum fault desk_compare_begin(struct desk_compare **ret_compare, struct desk *desk,
                              const int64_t *builds, size_t count, struct fault_note *note)
{
    enum fault fault = FAULT_NONE;
    struct desk_compare *compare = memory_resize(NULL, sizeof *compare);
    if (!compare)
        return fault_say(note, FAULT_MEMORY, "there is not enough memory for this");
    memset(compare, 0, sizeof *compare);
    arena_init(&compare->arena);
    for (size_t i = 0; i < count && !fault; i++) {
        struct adding adding = {compare, desk, builds[i]};
        fault = desk_guard(&compare->arena, run_add, &adding, note);
    }
    if (fault)
        desk_compare_free(compare);
    else
        *ret_compare = compare;
    return fault;
}

void desk_compare_free(struct desk_compare *compare)
{
    if (!compare)
        return;
    for (size_t i = 0; i < compare->states.count; i++)
        desk_state_free(compare->states.at[i]);
    arena_release(&compare->arena);
    memory_release(compare);
}

size_t desk_compare_count(const struct desk_compare *compare)
{
    return compare->plans.count;
}

const struct plan *const *desk_compare_plans(const struct desk_compare *compare)
{
    return compare->plans.at;
}

/* ---- otherwise ---- */

struct trying {
    const struct plan *plan;
    const struct plan *base; /* the same with quick layouts */
    struct arena *arena;
    LIST_OF(struct otherwise) ways;
    enum fault fault;
};

static void add_way(struct trying *trying, const char *text, const struct plan *with)
{
    *LIST_ADD(trying->arena, &trying->ways) = (struct otherwise){
        .text = text,
        .cost = with->tally.cost,
        .minutes = with->tally.minutes,
        .more_cost = with->tally.cost - trying->base->tally.cost,
        .more_minutes = with->tally.minutes - trying->base->tally.minutes,
        .more_stops = with->tally.stops - trying->base->tally.stops,
    };
}

/* Does a stock come in several sizes at a price? */
static size_t priced_offers(const struct model *model, int64_t stock)
{
    size_t count = 0;
    for (size_t i = 0; i < model->offers.count; i++)
        count += model->offers.at[i].stock == stock && model->offers.at[i].price > 0;
    return count;
}

static const char *size_words(const struct trying *trying, const struct offer *offer)
{
    enum units units = model_units(trying->plan->facts);
    char length[QUANTITY_TEXT];
    char width[QUANTITY_TEXT];
    quantity_print_unit(length, QUANTITY_LENGTH, units, offer->length);
    quantity_print_unit(width, QUANTITY_LENGTH, units, offer->width);
    return arena_format(trying->arena, "%s: %s%s%s alone",
                        plan_stock_name(trying->plan, offer->stock), length,
                        offer->width ? " x " : "", offer->width ? width : "");
}

/* The model in which a stock comes in this offer alone. */
static struct model *alone(const struct trying *trying, const struct offer *offer)
{
    struct model *model = ARENA_NEW(trying->arena, struct model);
    model_copy(model, trying->plan->entered, trying->arena);
    for (size_t i = model->offers.count; i-- > 0;) {
        const struct offer *other = &model->offers.at[i];
        if (other->stock == offer->stock && other->key != offer->key)
            model_remove(model, ENTITY_offer, other->key);
    }
    return model;
}

struct planned {
    struct arena arena;
    const struct plan *plan;
};

static void try_offer(struct trying *trying, const struct offer *offer)
{
    struct planned with = {.plan = NULL};
    const struct model *model = alone(trying, offer);
    arena_init(&with.arena);
    trying->fault = plan_make_draft(model, NULL, &with.arena, &with.plan);
    if (!trying->fault)
        add_way(trying, size_words(trying, offer), with.plan);
    arena_release(&with.arena);
}

static void try_sizes(struct trying *trying, const struct stock *stock)
{
    const struct model *model = trying->plan->entered;
    if (stock->kind != STOCK_STICK && stock->kind != STOCK_SHEET)
        return;
    if (priced_offers(model, stock->key) < 2)
        return;
    for (size_t i = 0; i < model->offers.count && !trying->fault; i++) {
        const struct offer *offer = &model->offers.at[i];
        if (offer->stock == stock->key && offer->price > 0)
            try_offer(trying, offer);
    }
}

static bool is_cut(const struct plan *plan, int64_t stock)
{
    for (size_t i = 0; i < plan->jobs.count; i++) {
        if (plan->jobs.at[i].stock == stock)
            return true;
    }
    return false;
}

static void try_stocks(void *context)
{
    struct trying *trying = context;
    const struct model *model = trying->plan->entered;
    for (size_t i = 0; i < model->stocks.count && !trying->fault; i++) {
        if (is_cut(trying->plan, model->stocks.at[i].key))
            try_sizes(trying, &model->stocks.at[i]);
    }
}

struct cloths {
    struct trying *trying;
    const struct cloth_way *ways;
    size_t count;
};

static void add_cloths(void *context)
{
    const struct cloths *cloths = context;
    struct trying *trying = cloths->trying;
    for (size_t i = 0; i < cloths->count; i++) {
        const struct cloth_way *way = &cloths->ways[i];
        if (way->barred || way->chosen)
            continue;
        *LIST_ADD(trying->arena, &trying->ways) = (struct otherwise){
            .text = arena_format(trying->arena, "%s: %s", plan_stock_name(trying->plan, way->stock),
                                 way->cure.text),
            .cost = way->cost,
            .minutes = way->minutes,
            .more_cost = way->cost - trying->base->tally.cost,
            .more_minutes = way->minutes - trying->base->tally.minutes,
        };
    }
}

enum fault desk_otherwise(const struct plan *plan, struct arena *arena,
                          const struct otherwise **ret_ways, size_t *ret_count)
{
    struct planned base = {.plan = NULL};
    struct trying trying = {.plan = plan, .arena = arena};
    struct cloths cloths = {.trying = &trying};
    arena_init(&base.arena);
    trying.fault = plan_make_draft(plan->entered, NULL, &base.arena, &base.plan);
    trying.base = base.plan;
    if (!trying.fault)
        trying.fault = cloth_ways(plan, arena, &cloths.ways, &cloths.count);
    if (!trying.fault &&
        (!arena_try(arena, add_cloths, &cloths) || !arena_try(arena, try_stocks, &trying)))
        trying.fault = FAULT_MEMORY;
    arena_release(&base.arena);
    if (!trying.fault) {
        *ret_ways = trying.ways.at;
        *ret_count = trying.ways.count;
    }
    return trying.fault;
}

/* ---- copies ---- */

struct copying {
    struct desk *desk;
    int64_t build;
    const char *name;
};

/* What was done and paid at a build was done once. */
static bool is_entered(const struct entity *entity)
{
    return !entity->in_shop && entity->kind != ENTITY_spend && entity->kind < ENTITY_tick;
}

static void copy_list(struct model *draft, const struct model *source, enum entity_kind kind)
{
    const struct entity *entity = entity_of(kind);
    for (size_t i = 0; i < model_count(source, kind); i++) {
        const void *item = model_at_const(source, kind, i);
        memcpy(model_add_keyed(draft, kind, item_key(item)), item, entity->size);
    }
}

static enum fault change_copy(struct model *draft, void *context, struct fault_note *note)
{
    const struct copying *copying = context;
    struct model *source = ARENA_NEW(draft->arena, struct model);
    enum fault fault = store_peek(copying->desk->store, copying->build, source, draft->arena, note);
    if (fault)
        return fault;
    assert(draft->build.key == 0);
    draft->build = source->build;
    draft->build.key = 0;
    draft->build.state = STATE_IDEA;
    for (int kind = 0; kind < ENTITY_COUNT; kind++) {
        if (is_entered(entity_of((enum entity_kind)kind)))
            copy_list(draft, source, (enum entity_kind)kind);
    }
    return field_read(field_named(entity_of(ENTITY_build), "name"), draft, &draft->build,
                      copying->name, note);
}

enum fault desk_copy_build(struct desk *desk, int64_t build, const char *name,
                           struct fault_note *note)
{
    char label[STORE_LABEL];
    struct copying copying = {desk, build, name};
    desk_label(label, "copy: %s", name);
    return desk_new_build(desk, label, change_copy, &copying, note);
}
