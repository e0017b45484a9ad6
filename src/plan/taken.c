/*
 * Measures are put into copies of the lists that hold what they stand in for, so that the passes
 * read one number and never ask where it came from. What was entered stays beside it, in
 * plan->entered, for whoever compares.
 *
 * 1  A copy shares every list with its original but the one that it changes.
 * 2  What nobody measured is as it was entered.
 * 3  Of measures of one thing the one with the largest key counts; lists are sorted by key.
 */
#include "plan/taken.h"

#include "plan/findings.h"
#include "plan/steps.h"
#include "plan/wood.h"

#include <assert.h>
#include <string.h>
#include <strings.h>

/* What a shim, a thread of cloth or a tape's hook is worth: 1/8 in. */
#define TAKEN_SLACK (LENGTH_INCH / 8)

/* ---- one figure of a box or a stock ---- */

static int64_t *box_figure(struct box *box, const char *what)
{
    if (strcmp(what, "width") == 0)
        return &box->width;
    if (strcmp(what, "depth") == 0)
        return &box->depth;
    return strcmp(what, "height") == 0 ? &box->height : NULL;
}

static int64_t stock_planned(const struct model *facts, const struct stock *stock, const char *what)
{
    bool thickness = strcmp(what, "thickness") == 0;
    struct section section;

    if (!thickness && strcmp(what, "width") != 0)
        return 0;
    switch (stock->kind) {
    case STOCK_STICK:
        section = stick_section(facts, stock->key);
        return thickness ? section.thin : section.wide;
    case STOCK_SHEET:
        return thickness ? sheet_thickness(facts, stock->key) : 0;
    default:
        return thickness ? stock->thickness : stock->width;
    }
}

static bool is_near(int64_t value, int64_t planned)
{
    int64_t off = value > planned ? value - planned : planned - value;

    return value > 0 && (planned == 0 || off <= planned / 4);
}

/* ---- stock ---- */

static bool measures_stock(const struct model *facts)
{
    for (size_t i = 0; i < facts->measures.count; i++)
        if (facts->measures.at[i].stock)
            return true;
    return false;
}

static void put_stock(const struct model *facts, struct stock *stock, const struct measure *measure)
{
    struct section section;

    if (!is_near(measure->value, stock_planned(facts, stock, measure->what)))
        return;
    if (stock->kind == STOCK_STICK && (!stock->thickness || !stock->width)) {
        section = stick_section(facts, stock->key);
        stock->thickness = section.thin;
        stock->width = section.wide;
    }
    if (strcmp(measure->what, "thickness") == 0)
        stock->thickness = measure->value;
    else if (strcmp(measure->what, "width") == 0)
        stock->width = measure->value;
}

const struct model *facts_as_measured(const struct model *facts, struct arena *arena)
{
    struct model *copy;

    if (!measures_stock(facts))
        return facts;
    copy = ARENA_NEW(arena, struct model);
    *copy = *facts;
    copy->stocks.at = ARENA_MANY(arena, struct stock, facts->stocks.count);
    memcpy(copy->stocks.at, facts->stocks.at, facts->stocks.count * sizeof *facts->stocks.at);
    for (size_t i = 0; i < facts->measures.count; i++) {
        const struct measure *measure = &facts->measures.at[i];
        size_t index = model_index(facts, ENTITY_stock, measure->stock);

        if (index < copy->stocks.count)
            put_stock(facts, &copy->stocks.at[index], measure);
    }
    return copy;
}

/* ---- boxes ---- */

static bool measures_boxes(const struct model *model)
{
    for (size_t i = 0; i < model->measures.count; i++)
        if (model->measures.at[i].box)
            return true;
    return false;
}

static void put_box(const struct model *model, struct box *box, const struct measure *measure)
{
    struct box planned = *MODEL_FIND(model, box, box->key);
    int64_t *figure = box_figure(box, measure->what);

    if (figure && is_near(measure->value, *box_figure(&planned, measure->what)))
        *figure = measure->value;
}

const struct model *model_as_built(const struct planning *planning)
{
    const struct model *model = planning->model;
    struct model *copy;

    if (!measures_boxes(model))
        return model;
    copy = ARENA_NEW(planning->arena, struct model);
    *copy = *model;
    copy->boxes.at = ARENA_MANY(planning->arena, struct box, model->boxes.count);
    memcpy(copy->boxes.at, model->boxes.at, model->boxes.count * sizeof *model->boxes.at);
    for (size_t i = 0; i < model->measures.count; i++) {
        size_t index = model_index(model, ENTITY_box, model->measures.at[i].box);

        if (index < copy->boxes.count)
            put_box(model, &copy->boxes.at[index], &model->measures.at[i]);
    }
    return copy;
}

/* ---- findings ---- */

/* The latest measure of a thing, NULL when there is none. */
static const struct measure *measure_find(const struct model *model, int64_t box, int64_t stock,
                                          const char *what)
{
    for (size_t i = model->measures.count; i-- > 0;) {
        const struct measure *measure = &model->measures.at[i];

        if (measure->box == box && measure->stock == stock && strcmp(measure->what, what) == 0)
            return measure;
    }
    return NULL;
}

static void tell_measure(struct planning *planning, const struct measure *measure, int64_t planned)
{
    int64_t off = measure->value - planned;
    bool near = is_near(measure->value, planned);
    enum entity_kind kind = measure->box ? ENTITY_box : ENTITY_stock;
    struct finding *finding;

    if (planned == 0 || (near && (measure->stock || (off <= TAKEN_SLACK && off >= -TAKEN_SLACK))))
        return;
    finding = finding_add(planning, near ? FINDING_BUILT_OTHERWISE : FINDING_MEASURE_DOUBTFUL, kind,
                          measure->box ? measure->box : measure->stock);
    argument_text(finding, 0, measure->what);
    argument_length(finding, 1, measure->value);
    argument_length(finding, 2, planned);
}

void tell_measures(struct planning *planning)
{
    const struct model *facts = planning->plan->entered;

    for (size_t i = 0; i < facts->measures.count; i++) {
        const struct measure *measure = &facts->measures.at[i];
        const struct box *box = MODEL_FIND(facts, box, measure->box);
        const struct stock *stock = MODEL_FIND(facts, stock, measure->stock);
        struct box planned = box ? *box : (struct box){0};
        const int64_t *figure = box_figure(&planned, measure->what);

        if (measure_find(facts, measure->box, measure->stock, measure->what) != measure)
            continue;
        if (box && figure)
            tell_measure(planning, measure, *figure);
        else if (stock)
            tell_measure(planning, measure, stock_planned(facts, stock, measure->what));
    }
}

/* ---- what a step asks for ---- */

struct asking {
    const struct plan *plan;
    struct arena *arena;
    LIST_OF(struct ask) asks;
};

static void ask_for(struct asking *asking, struct ask ask)
{
    const struct measure *measure =
        measure_find(asking->plan->entered, ask.box, ask.stock, ask.what);

    ask.taken = measure ? measure->value : 0;
    *LIST_ADD(asking->arena, &asking->asks) = ask;
}

static void ask_box(struct asking *asking, int64_t key)
{
    static const char *const figures[] = {"width", "height", "depth"};
    static const char *const diagonals[] = {"diagonal", "other diagonal"};
    const struct box *box = MODEL_FIND(asking->plan->entered, box, key);
    struct box planned;

    assert(box);
    planned = *box;
    for (size_t i = 0; i < sizeof figures / sizeof *figures; i++) {
        const int64_t *figure = box_figure(&planned, figures[i]);

        assert(figure);
        ask_for(
            asking,
            (struct ask){.name = figures[i], .what = figures[i], .box = key, .planned = *figure});
    }
    for (size_t i = 0; i < sizeof diagonals / sizeof *diagonals; i++)
        ask_for(asking, (struct ask){.name = diagonals[i], .what = diagonals[i], .box = key});
}

static void ask_stock(struct asking *asking, const struct stock *stock, const char *what)
{
    ask_for(asking, (struct ask){.name = arena_format(asking->arena, "%s %s", stock->name, what),
                                 .what = what,
                                 .stock = stock->key,
                                 .planned = stock_planned(asking->plan->entered, stock, what)});
}

/* Each stock of which something is cut. */
static void ask_stocks(struct asking *asking, int kind)
{
    const struct model *facts = asking->plan->entered;
    bool *used = ARENA_MANY(asking->arena, bool, facts->stocks.count + 1);

    for (size_t i = 0; i < asking->plan->parts.count; i++)
        used[model_index(facts, ENTITY_stock, asking->plan->parts.at[i].stock)] = true;
    for (size_t i = 0; i < facts->stocks.count; i++) {
        const struct stock *stock = &facts->stocks.at[i];
        bool wood = stock->kind == STOCK_STICK || stock->kind == STOCK_SHEET;

        if (!used[i])
            continue;
        if (kind == STEP_GAUGE && wood)
            ask_stock(asking, stock, "thickness");
        if (kind == STEP_GAUGE ? stock->kind == STOCK_STICK : stock->kind == STOCK_CLOTH)
            ask_stock(asking, stock, "width");
    }
}

const struct ask *plan_asks(const struct plan *plan, const struct step *step, struct arena *arena,
                            size_t *ret_count)
{
    struct asking asking = {.plan = plan, .arena = arena};

    if (step_kinds[step->kind].takes == STEP_TAKES_MEASURES) {
        if (step->kind == STEP_RECORD)
            ask_box(&asking, step->box);
        else if (step->kind == STEP_GAUGE || step->kind == STEP_INSPECT)
            ask_stocks(&asking, step->kind);
    }
    *ret_count = asking.asks.count;
    return asking.asks.at;
}

struct asks_of {
    const struct plan *plan;
    const struct step *step;
    struct arena *arena;
    const struct ask *asks;
    size_t count;
};

static void run_asks(void *context)
{
    struct asks_of *of = context;

    of->asks = plan_asks(of->plan, of->step, of->arena, &of->count);
}

const struct ask *plan_asks_of(const struct plan *plan, const struct step *step,
                               struct arena *arena, size_t *ret_count)
{
    struct asks_of of = {plan, step, arena, NULL, 0};

    if (!arena_try(arena, run_asks, &of))
        of.count = 0;
    *ret_count = of.count;
    return of.count ? of.asks : NULL;
}

/* Whether `name` is the whole of a text, its first words or its last word. */
static bool names(const char *text, const char *name)
{
    size_t whole = strlen(text);
    size_t part = strlen(name);

    if (part == 0 || part > whole)
        return false;
    if (strncasecmp(text, name, part) == 0 && (text[part] == ' ' || !text[part]))
        return true;
    return part < whole && text[whole - part - 1] == ' ' &&
           strcasecmp(text + whole - part, name) == 0;
}

const struct ask *ask_named(const struct ask *asks, size_t count, const char *name)
{
    const struct ask *found = NULL;

    for (size_t i = 0; i < count; i++)
        if (strcasecmp(asks[i].name, name) == 0)
            return &asks[i];
    for (size_t i = 0; i < count; i++) {
        if (!names(asks[i].name, name))
            continue;
        if (found)
            return NULL;
        found = &asks[i];
    }
    return found;
}
