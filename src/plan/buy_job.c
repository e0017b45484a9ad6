/*
 * Parts to jobs. The leftovers of the shelf are sizes without a price and with a limit, the offers
 * are sizes of which any number can be had. Where the shop list names no size, the usual one stands
 * in, without a price. What was bought already joins them when its layout holds no more.
 *
 * Lengths and prices go to the solver as they are; it knows no furniture.
 */
#include "plan/buy_job.h"

#include "model/offer.h"
#include "plan/geometry.h"
#include "plan/goods.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

bool job_is_roll(const struct stock *stock)
{
    return stock->kind == STOCK_CLOTH || stock->kind == STOCK_BATTING ||
           (stock->kind == STOCK_STRIP && stock->width > 0);
}

bool job_is_cut(const struct stock *stock)
{
    return job_is_roll(stock) || stock->kind == STOCK_STICK || stock->kind == STOCK_SHEET ||
           stock->kind == STOCK_FOAM;
}

/* ---- sizes ---- */

/* A second end that is squared comes off a stick's length. */
void job_add_size(struct cutting_job *job, struct cut_size size, struct cut_source source)
{
    if (job->stock->kind == STOCK_STICK)
        size.length -= job->planning->value[TRADE_STICK_TRIM_FAR];
    *LIST_ADD(job->planning->arena, &job->sizes) = size;
    *LIST_ADD(job->planning->arena, &job->sources) = source;
    assert(job->sizes.count == job->sources.count);
}

/* Once what is cut is known piece by piece, what the build left itself is on the shelf like
 * anything else. */
static bool may_cut(const struct cutting_job *job, const struct leftover *rest)
{
    const struct model *model = job->planning->model;

    return leftover_is_free(model, rest) || (job->begun && leftover_is_ours(model, rest));
}

static void add_leftovers(struct cutting_job *job)
{
    const struct model *model = job->planning->model;
    bool stick = job->stock->kind == STOCK_STICK;

    for (size_t i = 0; i < model->leftovers.count; i++) {
        const struct leftover *rest = &model->leftovers.at[i];

        if (rest->stock != job->stock->key || rest->count == 0 || rest->length == 0 ||
            (!stick && rest->width == 0) || !may_cut(job, rest))
            continue;
        job_add_size(
            job, (struct cut_size){rest->length, stick ? 0 : rest->width, 0, rest->count},
            (struct cut_source){
                .origin = SIZE_SHELF, .leftover = rest->key, .length = rest->length, .part = ""});
    }
}

static bool offer_fits(const struct cutting_job *job, const struct offer *offer)
{
    return offer->stock == job->stock->key && offer->length > 0 &&
           (job->stock->kind == STOCK_STICK || offer->width > 0);
}

static bool any_priced(const struct cutting_job *job)
{
    const struct model *model = job->planning->model;

    for (size_t i = 0; i < model->offers.count; i++)
        if (offer_fits(job, &model->offers.at[i]) && model->offers.at[i].price > 0)
            return true;
    return false;
}

/* Offers without a price are left aside where others have one: they would seem free. */
static void add_offers(struct cutting_job *job)
{
    const struct model *model = job->planning->model;
    bool stick = job->stock->kind == STOCK_STICK;
    bool priced = any_priced(job);

    for (size_t i = 0; i < model->offers.count; i++) {
        const struct offer *offer = &model->offers.at[i];

        if (!offer_fits(job, offer) || (priced && offer->price == 0))
            continue;
        job_add_size(
            job,
            (struct cut_size){offer->length, stick ? 0 : offer->width,
                              whole_divide_up(offer_price(model, offer), offer->pack), CUT_ANY},
            (struct cut_source){
                .offer = offer->key, .pack = offer->pack, .length = offer->length, .part = ""});
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
    const struct cut_source nowhere = {.length = job->stock->kind == STOCK_STICK
                                                     ? value[TRADE_STICK_LENGTH]
                                                     : value[TRADE_SHEET_LENGTH],
                                       .pack = 1,
                                       .part = ""};

    if (job->stock->kind == STOCK_STICK)
        job_add_size(job, (struct cut_size){value[TRADE_STICK_LENGTH], 0, 0, CUT_ANY}, nowhere);
    else
        job_add_size(
            job, (struct cut_size){value[TRADE_SHEET_LENGTH], value[TRADE_SHEET_WIDTH], 0, CUT_ANY},
            nowhere);
}

void job_set_sizes(struct cutting_job *job)
{
    add_leftovers(job);
    if (job_is_roll(job->stock)) {
        job_add_size(job, (struct cut_size){0, job->stock->width, 0, CUT_ANY},
                     (struct cut_source){.part = ""});
        return;
    }
    add_offers(job);
    if (!can_be_bought(job))
        add_usual_size(job);
}

int64_t job_with_crooked(const struct cutting_job *job, int64_t sticks)
{
    return with_reserve(sticks, job->planning->value[TRADE_STICK_RESERVE]);
}

/* ---- the layout ---- */

/* Pieces that show the pattern the same way: those that lie upright, and those railroaded. */
enum { MATCH_UPRIGHT = 1, MATCH_RAILROADED };

static bool has_pattern(const struct stock *stock)
{
    return job_is_roll(stock) && (stock->repeat_along > 0 || stock->repeat_across > 0);
}

/*
 * Pieces of patterned cloth begin at one place of the repeat along, and across have their middles
 * on one line of it, or have that line where their layer says; what is sewn beside another goes on
 * in the pattern there. Strips and the like, which may lie either way, need not match, and layers
 * of which the maker says so. Where a half-drop has no repeat across, each width sewn on drops.
 */
static void match(const struct cutting_job *job, const struct part *part, struct cut_piece *piece)
{
    const struct piece *cut;
    const struct layer *layer;

    if (!has_pattern(job->stock) || part->piece == PLAN_NONE)
        return;
    cut = &job->planning->plan->pieces.at[part->piece];
    layer = MODEL_FIND(job->planning->model, layer, cut->layer);
    if (cut->turned_allowed || (layer && layer->unmatched))
        return;
    piece->may_turn = false;
    piece->group = cut->across ? MATCH_RAILROADED : MATCH_UPRIGHT;
    piece->centred_across = true;
    piece->across = cut->aside - (layer ? layer->motif : 0);
    if (job->stock->half_drop && job->stock->repeat_across == 0 && cut->nth % 2 != 0)
        piece->along = job->stock->repeat_along / 2;
}

struct cut_piece job_piece(const struct cutting_job *job, const struct part *part)
{
    struct cut_piece piece = {
        .length = part->length, .width = part->width, .may_turn = part->may_turn};

    match(job, part, &piece);
    return piece;
}

/* How the shop sells a roll: with the allowance, in its steps, at least its least cut. Where the
 * pattern begins on it is not known before it lies there: a repeat more. */
struct cut_sale job_sale(const struct cutting_job *job)
{
    const int64_t *value = job->planning->value;
    const struct stock *stock = job->stock;
    int64_t reserve = stock->kind == STOCK_CLOTH ? value[TRADE_CLOTH_ALLOW_AFTER_LAYOUT] : 0;

    return (struct cut_sale){.ahead = has_pattern(stock) ? stock->repeat_along : 0,
                             .reserve = reserve + (stock->pile ? value[TRADE_CLOTH_ALLOW_PILE] : 0),
                             .least = stock->least_cut,
                             .step = stock->step_cut ? stock->step_cut : value[TRADE_CLOTH_ROUND]};
}

/* What the roll's flaws spoil, within its width. */
static void set_flaws(const struct cutting_job *job, struct cut_job *made)
{
    const struct model *model = job->planning->model;
    struct cut_blemish *blemishes =
        ARENA_MANY(job->planning->arena, struct cut_blemish, model->flaws.count);

    made->blemishes = blemishes;
    for (size_t i = 0; i < model->flaws.count; i++) {
        const struct flaw *flaw = &model->flaws.at[i];
        int64_t rest = job->stock->width - flaw->across;

        if (flaw->stock != job->stock->key || rest <= 0)
            continue;
        blemishes[made->blemish_count++] = (struct cut_blemish){
            .along = flaw->along,
            .across = flaw->across,
            .length = flaw->length,
            .width = flaw->width > 0 ? length_smaller(flaw->width, rest) : rest};
    }
}

static void set_roll(const struct cutting_job *job, struct cut_job *made)
{
    made->sale = job_sale(job);
    made->pattern = (struct cut_pattern){job->stock->repeat_along, job->stock->repeat_across,
                                         job->stock->half_drop};
    set_flaws(job, made);
}

enum cut_way job_way(const struct stock *stock)
{
    if (stock->kind == STOCK_STICK)
        return CUT_BARS;
    return job_is_roll(stock) ? CUT_ROLLS : CUT_SHEETS;
}

/* Of two limits, the first of which may not be known yet (0). */
static int64_t narrower(int64_t known, int64_t next)
{
    return known > 0 && known < next ? known : next;
}

/* What is asked of the first cut: pieces that go into every vehicle, where a whole sheet does not.
 * A sheet goes in lying or on edge, down the length that there is. */
static void ask_of_first_cut(const struct planning *planning, struct cut_job *made)
{
    for (size_t i = 0; i < planning->model->passages.count; i++) {
        const struct passage *vehicle = &planning->model->passages.at[i];
        int64_t opening = length_larger(vehicle->width, vehicle->height);

        if (vehicle->kind != PASSAGE_VEHICLE || opening == 0)
            continue;
        made->passage_length =
            narrower(made->passage_length, vehicle->length > 0 ? vehicle->length : CUT_LENGTH_MAX);
        made->passage_width = narrower(made->passage_width, opening);
    }
}

static struct cut_job *make_job(struct cutting_job *job)
{
    const struct plan *plan = job->planning->plan;
    struct cut_piece *parts = ARENA_MANY(job->planning->arena, struct cut_piece, job->count);
    struct cut_job *made = ARENA_NEW(job->planning->arena, struct cut_job);

    for (size_t i = 0; i < job->count; i++)
        parts[i] = job_piece(job, &plan->parts.at[job->first + i]);
    *made = (struct cut_job){.parts = parts,
                             .part_count = job->count,
                             .sizes = job->sizes.at,
                             .size_count = job->sizes.count};
    if (job->stock->kind == STOCK_STICK || job->stock->kind == STOCK_SHEET) {
        made->kerf = job->planning->value[TRADE_KERF];
        made->trim =
            job->planning
                ->value[job->stock->kind == STOCK_STICK ? TRADE_STICK_TRIM : TRADE_SHEET_EDGE_TRIM];
    }
    if (job->stock->kind == STOCK_SHEET)
        ask_of_first_cut(job->planning, made);
    if (job_is_roll(job->stock))
        set_roll(job, made);
    return made;
}

/* A layout that was taken for a job of that digest, and is sound for this one. */
static bool read_digest(const struct planning *planning, const struct plan_job *job,
                        uint64_t digest, struct cut_layout *ret_layout)
{
    char name[17];

    snprintf(name, sizeof name, "%016" PRIx64, digest);
    for (size_t i = 0; i < planning->model->layouts.count; i++) {
        const struct layout *layout = &planning->model->layouts.at[i];

        if (strcmp(layout->job, name) == 0)
            return cut_layout_read(layout->content, job->way, job->job, planning->arena,
                                   ret_layout);
    }
    return false;
}

/* What is bought stays as it was laid out, whatever shops ask by now. */
static bool read_taken(const struct planning *planning, const struct plan_job *job,
                       struct cut_layout *ret_layout)
{
    if (planning->model->layouts.count == 0)
        return false;
    return read_digest(planning, job, job->digest, ret_layout) ||
           (job->bought_count == 0 &&
            read_digest(planning, job, plan_goods_digest(job, planning->arena), ret_layout));
}

/* One that is known, or a quick one, which is then kept for the trials that come after. */
static void find_layout(const struct planning *planning, const struct plan_job *job,
                        struct cut_layout *ret_layout)
{
    const struct cut_known_layout *known = cut_known_find(planning->known, job->digest);

    if (!known)
        known = cut_known_find(planning->quick, job->digest);
    if (known) {
        *ret_layout = cut_layout_copy(&known->layout, planning->arena);
        return;
    }
    cut_search_all(job->way, job->job, CUT_QUICK, planning->arena, ret_layout);
    if (planning->quick)
        cut_known_keep(planning->quick, planning->arena,
                       &(struct cut_known_layout){job->digest, CUT_QUICK, *ret_layout});
}

static void describe(struct cutting_job *job, struct plan_job *made)
{
    made->job = make_job(job);
    made->digest = cut_digest(made->way, made->job);
}

const struct cut_layout *job_lay_out(struct cutting_job *job)
{
    struct arena *arena = job->planning->arena;
    struct plan_job *made = LIST_ADD(arena, &job->planning->plan->jobs);
    struct cut_layout *layout = ARENA_NEW(arena, struct cut_layout);

    made->stock = job->stock->key;
    made->way = job_way(job->stock);
    made->layout = layout;
    made->first_part = job->first;
    made->first_cutting = job->planning->plan->cuttings.count;
    describe(job, made);
    made->taken = read_taken(job->planning, made, layout);
    if (!made->taken && (job->begun || !job->again) &&
        (made->bought_count = job_add_goods(job)) > 0) {
        describe(job, made);
        made->taken = read_taken(job->planning, made, layout);
    }
    if (!made->taken)
        find_layout(job->planning, made, layout);
    made->again = job->again;
    made->sources = job->sources.at;
    return layout;
}
