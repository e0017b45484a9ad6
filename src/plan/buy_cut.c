/*
 * Parts to layouts. Each stock is one job: the leftovers of the shelf are sizes without a price and
 * with a limit, the offers are sizes of which any number can be had. Where the shop list names no
 * size, the usual one stands in, without a price.
 *
 * Lengths and prices go to the solver as they are; it knows no furniture, and what it gives back is
 * put in terms of the plan here.
 */
#include "plan/buy.h"

#include "cut/bars.h"
#include "cut/rolls.h"
#include "cut/sheets.h"

#include <assert.h>

/* Where a size of the job comes from. */
struct source {
    const struct offer *offer;       /* NULL: from the shelf, or the usual size */
    const struct leftover *leftover; /* NULL: to be bought */
};

struct cutting_job {
    struct planning *planning;
    const struct stock *stock;
    size_t first, count; /* parts of the plan */
    LIST_OF(struct cut_size) sizes;
    LIST_OF(struct source) sources; /* parallel to sizes */
};

static bool is_roll(const struct stock *stock)
{
    return stock->kind == STOCK_CLOTH || stock->kind == STOCK_BATTING ||
           (stock->kind == STOCK_STRIP && stock->width > 0);
}

static bool is_cut(const struct stock *stock)
{
    return is_roll(stock) || stock->kind == STOCK_STICK || stock->kind == STOCK_SHEET ||
           stock->kind == STOCK_FOAM;
}

/* ---- sizes ---- */

static void add_size(struct cutting_job *job, struct cut_size size, struct source source)
{
    *LIST_ADD(job->planning->arena, &job->sizes) = size;
    *LIST_ADD(job->planning->arena, &job->sources) = source;
}

static void add_leftovers(struct cutting_job *job)
{
    const struct model *model = job->planning->model;
    bool stick = job->stock->kind == STOCK_STICK;

    for (size_t i = 0; i < model->leftovers.count; i++) {
        const struct leftover *rest = &model->leftovers.at[i];

        if (rest->stock != job->stock->key || rest->count == 0 || rest->length == 0 ||
            (!stick && rest->width == 0))
            continue;
        add_size(job, (struct cut_size){rest->length, stick ? 0 : rest->width, 0, rest->count},
                 (struct source){NULL, rest});
    }
}

static void add_offers(struct cutting_job *job)
{
    const struct model *model = job->planning->model;
    bool stick = job->stock->kind == STOCK_STICK;

    for (size_t i = 0; i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];

        if (offer->stock != job->stock->key || offer->length == 0 || (!stick && offer->width == 0))
            continue;
        add_size(job,
                 (struct cut_size){offer->length, stick ? 0 : offer->width, offer->price, CUT_ANY},
                 (struct source){offer, NULL});
    }
}

static bool can_be_bought(const struct cutting_job *job)
{
    for (size_t i = 0; i < job->sizes.count; i++)
        if (job->sizes.at[i].limit == CUT_ANY)
            return true;
    return false;
}

static void add_usual_size(struct cutting_job *job)
{
    const int64_t *value = job->planning->value;
    const struct source nowhere = {NULL, NULL};

    if (job->stock->kind == STOCK_STICK)
        add_size(job, (struct cut_size){value[TRADE_STICK_LENGTH], 0, 0, CUT_ANY}, nowhere);
    else
        add_size(job,
                 (struct cut_size){value[TRADE_SHEET_LENGTH], value[TRADE_SHEET_WIDTH], 0, CUT_ANY},
                 nowhere);
}

static void set_sizes(struct cutting_job *job)
{
    add_leftovers(job);
    if (is_roll(job->stock)) {
        add_size(job, (struct cut_size){0, job->stock->width, 0, CUT_ANY},
                 (struct source){NULL, NULL});
        return;
    }
    add_offers(job);
    if (!can_be_bought(job))
        add_usual_size(job);
}

/* ---- the layout ---- */

static struct cut_layout lay_out(struct cutting_job *job)
{
    const struct plan *plan = job->planning->plan;
    struct cut_piece *parts = ARENA_MANY(job->planning->arena, struct cut_piece, job->count);
    struct cut_job cut = {parts, job->count, job->sizes.at, job->sizes.count, 0, 0};
    struct cut_layout layout = {0};

    for (size_t i = 0; i < job->count; i++) {
        const struct part *part = &plan->parts.at[job->first + i];

        parts[i] = (struct cut_piece){part->length, part->width, part->may_turn};
    }
    if (job->stock->kind == STOCK_STICK) {
        cut.kerf = job->planning->value[TRADE_KERF];
        cut.trim = job->planning->value[TRADE_STICK_TRIM];
        bars_cut(&cut, job->planning->arena, &layout);
    } else if (is_roll(job->stock)) {
        rolls_cut(&cut, job->planning->arena, &layout);
    } else {
        if (job->stock->kind == STOCK_SHEET) {
            cut.kerf = job->planning->value[TRADE_KERF];
            cut.trim = job->planning->value[TRADE_SHEET_EDGE_TRIM];
        }
        sheets_cut(&cut, job->planning->arena, &layout);
    }
    return layout;
}

static void keep_blank(const struct cutting_job *job, const struct cut_layout *layout,
                       const struct cut_blank *blank)
{
    struct plan *plan = job->planning->plan;
    const struct source *source = &job->sources.at[blank->size];
    const struct cut_size *size = &job->sizes.at[blank->size];
    struct cutting *cutting = LIST_ADD(job->planning->arena, &plan->cuttings);

    *cutting = (struct cutting){.stock = job->stock->key,
                                .offer = source->offer ? source->offer->key : 0,
                                .leftover = source->leftover ? source->leftover->key : 0,
                                .length = size->length ? size->length : blank->used,
                                .width = size->width,
                                .first_placement = plan->placements.count,
                                .placement_count = blank->count,
                                .used = blank->used,
                                .rest = blank->rest};
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &layout->places.at[i];

        *LIST_ADD(job->planning->arena, &plan->placements) = (struct placement){
            job->first + place->part, place->along, place->across, place->turned};
    }
}

static void tell_left_out(const struct cutting_job *job, const struct cut_layout *layout)
{
    for (size_t i = 0; i < layout->left_out.count; i++) {
        const struct part *part =
            &job->planning->plan->parts.at[job->first + layout->left_out.at[i]];
        char size[QUANTITY_TEXT];
        struct finding *finding =
            finding_add(job->planning, FINDING_NOT_SOLD, ENTITY_box, part->box);

        quantity_print_unit(size, QUANTITY_LENGTH, model_units(job->planning->model), part->length);
        argument_text(finding, 0,
                      arena_format(job->planning->arena, "part %s, %s long,", part->label, size));
        argument_text(finding, 1, job->stock->name);
    }
}

/* ---- what is bought for it ---- */

static int64_t used_of_blank(const struct cutting_job *job, const struct cut_layout *layout,
                             const struct cut_blank *blank)
{
    int64_t used = 0;

    if (job->stock->kind == STOCK_STICK)
        return blank->used;
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct part *part =
            &job->planning->plan->parts.at[job->first + layout->places.at[i].part];

        used += part->length / LENGTH_MM * (part->width / LENGTH_MM);
    }
    return used;
}

/* One line for each size that is bought. */
static void buy_blanks(struct cutting_job *job, const struct cut_layout *layout, size_t size)
{
    const struct cut_size *of = &job->sizes.at[size];
    bool stick = job->stock->kind == STOCK_STICK;
    int64_t count = 0;
    int64_t used = 0;
    int64_t whole = stick ? of->length : of->length / LENGTH_MM * (of->width / LENGTH_MM);

    if (job->sources.at[size].leftover)
        return;
    for (size_t i = 0; i < layout->blanks.count; i++) {
        if (layout->blanks.at[i].size != size)
            continue;
        count++;
        used += used_of_blank(job, layout, &layout->blanks.at[i]);
    }
    int64_t taken = bought_packs(job->planning->model, job->stock->key, of->length, of->width);
    if (count == 0 && taken == 0)
        return;
    struct purchase *purchase = purchase_add(job->planning, job->stock->key, job->stock->kind, "");
    purchase->measure = QUANTITY_COUNT;
    purchase->used = purchase->need = count;
    purchase->packs = count > taken ? count : taken;
    purchase_price(job->planning, purchase, job->sources.at[size].offer, used,
                   purchase->packs * whole);
}

static const struct offer *first_offer(const struct model *model, int64_t stock)
{
    for (size_t i = 0; i < model->offers.count; i++)
        if (model->offers.at[i].stock == stock && model->offers.at[i].length)
            return &model->offers.at[i];
    return NULL;
}

/* A length of roll as the shop cuts it: with the allowance, in its steps, at least its least cut.
 */
static int64_t roll_to_buy(const struct cutting_job *job, int64_t used)
{
    const int64_t *value = job->planning->value;
    int64_t step = job->stock->step_cut ? job->stock->step_cut : value[TRADE_CLOTH_ROUND];
    int64_t wanted = job->stock->kind == STOCK_CLOTH
                         ? with_reserve(used, value[TRADE_CLOTH_ALLOW_AFTER_LAYOUT])
                         : used;

    if (wanted < job->stock->least_cut)
        wanted = job->stock->least_cut;
    return step > 0 ? whole_divide_up(wanted, step) * step : wanted;
}

static void price_roll(struct planning *planning, struct purchase *purchase,
                       const struct offer *offer, int64_t used)
{
    purchase_price(planning, purchase, offer, 0, 0);
    if (!purchase->priced)
        return;
    purchase->priced =
        whole_share(offer->price, purchase->length, offer->length, &purchase->price) == 0;
    purchase->value = purchase->price;
    (void)whole_share(purchase->price, used, purchase->length, &purchase->value);
}

static void buy_roll(struct cutting_job *job, const struct cut_layout *layout)
{
    const struct model *model = job->planning->model;
    int64_t used = 0;
    int64_t taken = 0;

    for (size_t i = 0; i < layout->blanks.count; i++)
        if (!job->sources.at[layout->blanks.at[i].size].leftover)
            used += layout->blanks.at[i].used;
    for (size_t i = 0; i < model->boughts.count; i++)
        if (model->boughts.at[i].stock == job->stock->key)
            taken += model->boughts.at[i].length * model->boughts.at[i].packs;
    int64_t length = used > 0 ? roll_to_buy(job, used) : 0;
    if (length == 0 && taken == 0)
        return;
    struct purchase *purchase = purchase_add(job->planning, job->stock->key, job->stock->kind, "");
    purchase->measure = QUANTITY_LENGTH;
    purchase->used = used;
    purchase->need = purchase->length = length > taken ? length : taken;
    purchase->packs = 1;
    price_roll(job->planning, purchase, first_offer(model, job->stock->key), used);
}

/* ---- all ---- */

static void cut_stock(struct cutting_job *job)
{
    set_sizes(job);
    struct cut_layout layout = lay_out(job);

    for (size_t i = 0; i < layout.blanks.count; i++)
        keep_blank(job, &layout, &layout.blanks.at[i]);
    tell_left_out(job, &layout);
    if (is_roll(job->stock)) {
        buy_roll(job, &layout);
        return;
    }
    for (size_t i = 0; i < job->sizes.count; i++)
        buy_blanks(job, &layout, i);
}

void buy_cuts(struct planning *planning)
{
    const struct plan *plan = planning->plan;
    size_t end;

    for (size_t first = 0; first < plan->parts.count; first = end) {
        struct cutting_job job = {
            .planning = planning,
            .stock = MODEL_FIND(planning->model, stock, plan->parts.at[first].stock),
            .first = first};

        for (end = first;
             end < plan->parts.count && plan->parts.at[end].stock == plan->parts.at[first].stock;)
            end++;
        job.count = end - first;
        if (job.stock && is_cut(job.stock))
            cut_stock(&job);
    }
}
