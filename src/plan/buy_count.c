/*
 * What is counted: screws, staples, nails, buttons, cord, glue, fittings and whatever else the
 * maker named. Needs are pooled by stock before packs are rounded up.
 */
#include "plan/buy.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* ---- pooling ---- */

static struct need *need_for(struct buying *buying, int64_t stock, int64_t kind, const char *what,
                             enum quantity measure)
{
    struct need *need;

    for (size_t i = 0; i < buying->needs.count; i++) {
        need = &buying->needs.at[i];
        if (need->stock == stock && need->kind == kind && need->measure == measure &&
            (stock || strcmp(need->what, what) == 0))
            return need;
    }
    need = LIST_ADD(buying->planning->arena, &buying->needs);
    *need = (struct need){.stock = stock, .what = what, .kind = kind, .measure = measure};
    return need;
}

static void need_more(struct buying *buying, int64_t stock, int64_t kind, const char *what,
                      enum quantity measure, int64_t amount)
{
    const struct stock *of = MODEL_FIND(buying->planning->model, stock, stock);

    if (amount > 0)
        need_for(buying, stock, of ? of->kind : kind, what, measure)->used += amount;
}

static int64_t first_of_kind(const struct model *model, int64_t kind)
{
    for (size_t i = 0; i < model->stocks.count; i++)
        if (model->stocks.at[i].kind == kind)
            return model->stocks.at[i].key;
    return 0;
}

/* ---- needs ---- */

static void need_screws(struct buying *buying)
{
    const struct plan *plan = buying->planning->plan;

    for (size_t i = 0; i < plan->screw_kinds.count; i++) {
        const struct screw_kind *kind = &plan->screw_kinds.at[i];
        struct text name;

        text_init(&name);
        text_add(&name, "screws ");
        plan_screw_text(plan, kind, &name);
        need_more(buying, kind->stock, STOCK_SCREW,
                  arena_text(buying->planning->arena, text_string(&name)), QUANTITY_COUNT,
                  kind->count);
        text_release(&name);
    }
}

/* A bolt, a washer and a T-nut for each point. */
static void need_bolts(struct buying *buying)
{
    const struct planning *planning = buying->planning;
    enum units units = model_units(planning->model);

    for (size_t i = 0; i < planning->plan->bolts.count; i++) {
        const struct plan_bolt *bolt = &planning->plan->bolts.at[i];
        char thick[QUANTITY_TEXT];
        char length[QUANTITY_TEXT];
        char washer[QUANTITY_TEXT];

        quantity_print(thick, QUANTITY_LENGTH, units, bolt->diameter);
        quantity_print_unit(length, QUANTITY_LENGTH, units, bolt->length);
        quantity_print_unit(washer, QUANTITY_LENGTH, units, planning->value[TRADE_BOLT_WASHER]);
        need_more(buying, bolt->stock, STOCK_BOLT,
                  arena_format(planning->arena, "bolts %s x %s", thick, length), QUANTITY_COUNT, 1);
        need_more(buying, 0, STOCK_BOLT, arena_format(planning->arena, "washers %s", washer),
                  QUANTITY_COUNT, 1);
        need_more(buying, 0, STOCK_BOLT, arena_format(planning->arena, "T-nuts %s", thick),
                  QUANTITY_COUNT, 1);
    }
}

int64_t staple_for(const struct model *model, int64_t leg)
{
    const struct stock *best = NULL;

    for (size_t i = 0; i < model->stocks.count; i++) {
        const struct stock *stock = &model->stocks.at[i];

        if (stock->kind != STOCK_STAPLE)
            continue;
        bool enough = stock->length >= leg;
        if (!best || (enough && (best->length < leg || stock->length < best->length)) ||
            (!enough && best->length < leg && stock->length > best->length))
            best = stock;
    }
    return best ? best->key : 0;
}

static void need_staple(struct buying *buying, int64_t leg, int64_t count)
{
    const struct planning *planning = buying->planning;
    char printed[QUANTITY_TEXT];

    assert(count >= 0);
    quantity_print_unit(printed, QUANTITY_LENGTH, model_units(planning->model), leg);
    need_more(buying, staple_for(planning->model, leg), STOCK_STAPLE,
              arena_format(planning->arena, "staples, leg %s", printed), QUANTITY_COUNT, count);
}

static void need_staples(struct buying *buying)
{
    const struct plan *plan = buying->planning->plan;

    for (size_t i = 0; i < plan->edges.count; i++)
        need_staple(buying, plan->edges.at[i].leg,
                    plan->edges.at[i].staples + plan->edges.at[i].temporary);
    for (size_t i = 0; i < plan->webbings.count; i++)
        need_staple(buying, plan->webbings.at[i].leg, plan->webbings.at[i].staples);
}

static void need_webbing(struct buying *buying)
{
    const struct plan *plan = buying->planning->plan;

    for (size_t i = 0; i < plan->webbings.count; i++) {
        const struct webbing *web = &plan->webbings.at[i];

        need_more(buying, web->stock, STOCK_STRIP, "webbing", QUANTITY_LENGTH,
                  web->up * web->up_length + web->across * web->across_length);
    }
}

static void need_consumables(struct buying *buying)
{
    const struct plan *plan = buying->planning->plan;

    for (size_t i = 0; i < plan->consumables.count; i++) {
        const struct consumable *used = &plan->consumables.at[i];
        int64_t stock = used->stock;

        if (!stock && (used->kind == STOCK_SPRAY || used->kind == STOCK_BUTTON))
            stock = first_of_kind(buying->planning->model, used->kind);
        need_more(buying, stock, used->kind, used->what, used->measure, used->amount);
    }
}

/* Wood glue by the joint, and by the metre of edge of panels that are glued. */
static void need_glue(struct buying *buying)
{
    const struct planning *planning = buying->planning;
    const struct plan *plan = planning->plan;
    int64_t glue = (int64_t)plan->joints.count * planning->value[TRADE_GLUE_PER_JOINT];

    for (size_t i = 0; i < plan->panels.count; i++) {
        const struct panel *panel = &plan->panels.at[i];
        const struct facing *facing = MODEL_FIND(planning->model, facing, panel->facing);
        const struct box *box = MODEL_FIND(planning->model, box, panel->box);
        int64_t round = 2 * (panel->width + panel->height);
        int64_t more = 0;

        if (facing && facing->glued && !panel->loose && box && box->frame != FRAME_BOARD)
            (void)whole_share(round, planning->value[TRADE_GLUE_PER_METRE], 1000 * LENGTH_MM,
                              &more);
        glue += more;
    }
    need_more(buying, first_of_kind(planning->model, STOCK_GLUE), STOCK_GLUE, "wood glue",
              QUANTITY_VOLUME, glue);
}

static bool is_by_length(const struct model *model, int64_t stock)
{
    const struct stock *found = MODEL_FIND(model, stock, stock);

    return found && (found->kind == STOCK_STRIP || found->kind == STOCK_CORD);
}

/* By fitting, its screws that have a place: those are counted with their kind. */
static int64_t *count_placed(const struct buying *buying)
{
    const struct plan *plan = buying->planning->plan;
    int64_t *placed =
        ARENA_MANY(buying->planning->arena, int64_t, buying->planning->model->fittings.count);

    for (size_t i = 0; i < plan->screws.count; i++)
        if (plan->screws.at[i].use == SCREW_FITTING) {
            assert(plan->screws.at[i].of < buying->planning->model->fittings.count);
            placed[plan->screws.at[i].of]++;
        }
    return placed;
}

/* "lid hinge"; of a zip its length too, as it comes out of the seam that it stands in. */
static const char *fitting_said(const struct buying *buying, const struct fitting *fitting)
{
    const struct planning *planning = buying->planning;
    const char *name = *fitting->name ? fitting->name : words_fitting.at[fitting->kind].name;
    char length[QUANTITY_TEXT];

    for (size_t i = 0; i < planning->plan->seams.count; i++) {
        const struct seam *seam = &planning->plan->seams.at[i];

        if (seam->fitting != fitting->key || seam->zip == 0)
            continue;
        quantity_print_unit(length, QUANTITY_LENGTH, model_units(planning->model), seam->zip);
        return arena_format(planning->arena, "%s, %s", name, length);
    }
    return name;
}

/* By the piece or by length; what is cut from a stick is a part. */
static void need_fittings(struct buying *buying)
{
    const struct model *model = buying->planning->model;
    const int64_t *placed = count_placed(buying);

    for (size_t i = 0; i < model->fittings.count; i++) {
        const struct fitting *fitting = &model->fittings.at[i];
        const char *name = fitting_said(buying, fitting);

        if (is_by_length(model, fitting->stock))
            need_more(buying, fitting->stock, STOCK_HARDWARE, name, QUANTITY_LENGTH,
                      fitting->count * fitting->length);
        else if (!fitting_is_cut(model, fitting))
            need_more(buying, fitting->stock, STOCK_HARDWARE, name, QUANTITY_COUNT, fitting->count);
        if (fitting->screw)
            need_more(buying, fitting->screw, STOCK_SCREW, "screws", QUANTITY_COUNT,
                      fitting->count * fitting->screws - placed[i]);
    }
}

/* ---- reserve ---- */

static void add_reserve(struct buying *buying, struct need *need)
{
    const int64_t *value = buying->planning->value;
    int64_t least = 0;

    need->need = need->used;
    switch (need->kind) {
    case STOCK_SCREW:
        need->need = with_reserve(need->used, value[TRADE_SCREW_WASTE]);
        least = value[TRADE_SCREW_RESERVE_LEAST];
        break;
    case STOCK_STAPLE:
        need->need = with_reserve(need->used, value[TRADE_STAPLE_WASTE]);
        break;
    case STOCK_NAIL:
        need->need = with_reserve(need->used, value[TRADE_NAIL_WASTE]);
        break;
    case STOCK_BUTTON:
        need->need = with_reserve(need->used, value[TRADE_BUTTON_WASTE]);
        break;
    case STOCK_CORD:
        need->need = with_reserve(need->used, value[TRADE_CORD_EXTRA]);
        break;
    case STOCK_STRIP:
        need->need = with_reserve(need->used, value[TRADE_CARD_WASTE]);
        break;
    default:
        break;
    }
    if (need->need < need->used + least)
        need->need = need->used + least;
    assert(need->need >= need->used);
}

/* ---- whatever else was named ---- */

static void buy_extra(struct planning *planning, const struct extra *extra)
{
    const struct stock *stock = MODEL_FIND(planning->model, stock, extra->stock);
    struct purchase *purchase =
        purchase_add(planning, extra->stock, stock ? stock->kind : STOCK_OTHER, extra->what);
    const struct need need = {.stock = extra->stock, .measure = QUANTITY_COUNT};

    purchase->measure = QUANTITY_COUNT;
    purchase->used = purchase->need = purchase->packs = extra->count;
    if (!stock) {
        purchase->aisle = extra->aisle;
        purchase->priced =
            extra->price > 0 && whole_multiply(extra->price, extra->count, &purchase->price) == 0;
        purchase->value = purchase->stated = purchase->price;
        if (!purchase->priced)
            purchase_price(planning, purchase, NULL, 0, 0);
        return;
    }
    purchase_price(planning, purchase, cheapest_offer(planning, &need, 1), 0, 0);
}

void buy_counts(struct planning *planning)
{
    struct buying buying = {.planning = planning};

    need_screws(&buying);
    need_bolts(&buying);
    need_staples(&buying);
    need_webbing(&buying);
    need_consumables(&buying);
    need_glue(&buying);
    need_fittings(&buying);
    for (size_t i = 0; i < buying.needs.count; i++) {
        add_reserve(&buying, &buying.needs.at[i]);
        buy_packs(planning, &buying.needs.at[i]);
    }
    for (size_t i = 0; i < planning->model->extras.count; i++)
        buy_extra(planning, &planning->model->extras.at[i]);
}
