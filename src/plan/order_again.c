/*
 * What has to be done once more: parts that were spoiled, have changed or are new since the others
 * were cut are cut, and what the plan has come to need since the shopping is bought. Each time has
 * its own step, numbered; those that were ticked stay, so that their ticks can be taken back.
 */
#include "plan/buy.h"
#include "plan/order.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

/* How many steps of the name's beginning are ticked, up to a number or a hyphen and a number. */
static int64_t times_ticked(const struct model *model, const char *beginning)
{
    size_t length = strlen(beginning);
    int64_t times = 0;

    for (size_t i = 0; i < model->ticks.count; i++)
        times += strncmp(model->ticks.at[i].step, beginning, length) == 0;
    return times;
}

static bool is_ticked(const struct model *model, const char *step)
{
    for (size_t i = 0; i < model->ticks.count; i++)
        if (strcmp(model->ticks.at[i].step, step) == 0)
            return true;
    return false;
}

/* ---- cut anew ---- */

static const struct tick *tick_of(const struct model *model, const struct cut_part *cut)
{
    const struct tick *tick = MODEL_FIND(model, tick, cut->tick);

    assert(tick);
    return tick;
}

static int64_t missing_of(const struct plan *plan, int64_t stock)
{
    int64_t open = 0;

    for (size_t i = 0; i < plan->parts.count; i++)
        open += plan->parts.at[i].again && plan->parts.at[i].stock == stock;
    return open;
}

/* Parts of a stock that were spoiled, less those that were cut in a step for just that; where it is
 * known what was cut from what, all that are not there. */
static int64_t open_of(const struct planning *planning, int64_t stock)
{
    const struct model *model = planning->model;
    int64_t open = 0;

    if (stock_is_begun(model, stock))
        return missing_of(planning->plan, stock);
    for (size_t i = 0; i < model->cut_parts.count; i++) {
        const struct cut_part *cut = &model->cut_parts.at[i];
        const char *step = tick_of(model, cut)->step;

        if (step_key_of(step) != stock)
            continue;
        open += cut->spoiled;
        open -= step_kind_of(step) == STEP_RECUT;
    }
    return open;
}

static void touch_missing(struct ordering *ordering, int64_t stock)
{
    const struct plan *plan = ordering->planning->plan;

    for (size_t i = 0; i < plan->parts.count; i++)
        if (plan->parts.at[i].again && plan->parts.at[i].stock == stock)
            order_touch(ordering, TOUCH_BOX, plan->parts.at[i].box);
}

static void make_recuts(struct ordering *ordering, int64_t stock)
{
    const struct model *model = ordering->planning->model;
    int64_t open = open_of(ordering->planning, stock);
    char beginning[48];
    int64_t times;

    snprintf(beginning, sizeof beginning, "%s:%" PRId64 "-", step_kinds[STEP_RECUT].word, stock);
    times = times_ticked(model, beginning) + (open > 0);
    for (int64_t n = 1; n <= times; n++) {
        struct work work = {
            .step.kind = STEP_RECUT, .stock = stock, .spoiled = n == times ? open : 0};

        order_add(ordering, work, stock, n);
        order_touch(ordering, TOUCH_STOCK, stock);
        touch_missing(ordering, stock);
    }
}

/* ---- bought anew ---- */

/* After the shop the list asks for more of some stock than was bought. */
static bool is_short(const struct planning *planning)
{
    const struct model *model = planning->model;
    const bool *missing = stocks_short(planning->plan, planning->arena);

    if (!is_ticked(model, step_kinds[STEP_BUY].word))
        return false;
    for (size_t i = 0; i < model->stocks.count; i++)
        if (missing[i])
            return true;
    return false;
}

static void make_rebuys(struct ordering *ordering)
{
    const struct model *model = ordering->planning->model;
    int64_t times = times_ticked(model, "rebuy:") + is_short(ordering->planning);

    for (int64_t n = 1; n <= times; n++)
        order_add(ordering, (struct work){.step.kind = STEP_REBUY}, n, 0);
}

void order_make_again(struct ordering *ordering)
{
    const struct model *model = ordering->planning->model;

    for (size_t i = 0; i < model->stocks.count; i++)
        make_recuts(ordering, model->stocks.at[i].key);
    make_rebuys(ordering);
}
