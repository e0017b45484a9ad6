/*
 * Layouts into the plan: each stock is one job (buy_job.h), and what the solver gives back is put
 * in terms of parts, sticks, sheets and rolls, with what is bought for it.
 *
 * Parts that are cut anew are laid out by themselves, after the first: what those leave of a stick
 * or a sheet, and what is left of the shelf, are their sizes without a price. Of a roll both are
 * cut from one length. Where it is known what was cut from what, the first layout is as it was cut
 * (buy_begun.c).
 */
#include "plan/buy_job.h"

#include "cut/shortfall.h"
#include "model/offer.h"
#include "plan/geometry.h"

#include <assert.h>
#include <string.h>

/* ---- a layout into the plan ---- */

static void keep_blank(const struct cutting_job *job, const struct cut_layout *layout,
                       const struct cut_blank *blank)
{
    assert(blank->size < job->sizes.count);
    assert(blank->first + blank->count <= layout->places.count);

    struct plan *plan = job->planning->plan;
    const struct cut_source *source = &job->sources.at[blank->size];
    const struct cut_size *size = &job->sizes.at[blank->size];
    struct cutting *cutting = LIST_ADD(job->planning->arena, &plan->cuttings);

    *cutting = (struct cutting){.stock = job->stock->key,
                                .source = source,
                                .length = source->length ? source->length : blank->used,
                                .width = size->width,
                                .first_placement = plan->placements.count,
                                .placement_count = blank->count,
                                .used = blank->used,
                                .rest = blank->rest,
                                .rest_across = blank->rest_across};
    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &layout->places.at[i];

        *LIST_ADD(job->planning->arena, &plan->placements) = (struct placement){
            job->first + place->part, place->along - source->ahead, place->across, place->turned};
    }
}

void job_keep_blanks(const struct cutting_job *job, const struct cut_layout *layout)
{
    for (size_t i = 0; i < layout->blanks.count; i++)
        keep_blank(job, layout, &layout->blanks.at[i]);
}

/* By how much a part misses a size when it lies one way. */
static int64_t missing_from(const struct cutting_job *job, const struct cut_size *size,
                            int64_t length, int64_t width)
{
    const int64_t *value = job->planning->value;
    int64_t over_length, over_width;

    if (job->stock->kind == STOCK_STICK)
        return length + value[TRADE_STICK_TRIM] - size->length;
    if (job_is_roll(job->stock))
        return width - size->width;
    over_length = length - size->length;
    over_width = width - size->width;
    if (job->stock->kind == STOCK_SHEET) {
        over_length += 2 * value[TRADE_SHEET_EDGE_TRIM];
        over_width += 2 * value[TRADE_SHEET_EDGE_TRIM];
    }
    return over_length > over_width ? over_length : over_width;
}

/* The least by which a part misses what is on offer. */
static int64_t missing(const struct cutting_job *job, const struct part *part)
{
    struct cut_piece piece = job_piece(job, part);
    int64_t least = INT64_MAX;

    for (size_t i = 0; i < job->sizes.count; i++) {
        const struct cut_size *size = &job->sizes.at[i];
        int64_t straight = missing_from(job, size, piece.length, piece.width);
        int64_t turned =
            piece.may_turn ? missing_from(job, size, piece.width, piece.length) : straight;

        if (size->limit != CUT_ANY)
            continue;
        least = straight < least ? straight : least;
        least = turned < least ? turned : least;
    }
    assert(least < INT64_MAX); /* some size of each job can be bought */
    return least;
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
        argument_length(finding, 2, missing(job, part));
    }
}

#define SHORTFALLS_TOLD 3

/* Parts that would just come out of a sheet beside each other but for the saw. */
static void tell_shortfalls(const struct cutting_job *job, const struct cut_job *cut)
{
    struct planning *planning = job->planning;
    struct sheet_shortfalls shortfalls = {0};

    sheets_shortfalls(cut, planning->arena, &shortfalls);
    for (size_t i = 0; i < shortfalls.list.count && i < SHORTFALLS_TOLD; i++) {
        const struct sheet_shortfall *told = &shortfalls.list.at[i];
        const struct part *part = &planning->plan->parts.at[job->first + told->part];
        struct finding *finding =
            finding_add(planning, FINDING_SAW_TAKES_TOO_MUCH, ENTITY_box, part->box);

        argument_quantity(finding, 0, QUANTITY_COUNT, (int64_t)told->number);
        argument_text(finding, 1, part->label);
        argument_length(finding, 2, told->needs);
        argument_length(finding, 3, told->has);
    }
}

/* ---- all ---- */

/* Both layouts of a job as one, for what is bought: places and what is left out are told by part
 * and stay with their own. */
static void join_layouts(const struct cutting_job *job, struct cut_layout *layout,
                         const struct cut_layout *more)
{
    size_t places = layout->places.count;

    for (size_t i = 0; i < more->places.count; i++)
        *LIST_ADD(job->planning->arena, &layout->places) = more->places.at[i];
    for (size_t i = 0; i < more->blanks.count; i++) {
        struct cut_blank *blank = LIST_ADD(job->planning->arena, &layout->blanks);

        *blank = more->blanks.at[i];
        blank->first += places;
    }
}

/* The sizes of a job that is laid out stay with it. */
static void copy_sizes(struct cutting_job *job)
{
    size_t count = job->sizes.count;
    const struct cut_size *sizes = job->sizes.at;

    job->sizes.at = NULL;
    job->sizes.count = job->sizes.room = 0;
    for (size_t i = 0; i < count; i++)
        *LIST_ADD(job->planning->arena, &job->sizes) = sizes[i];
}

/* What the first layout leaves: less of the shelf, and the rest of each stick and sheet, whose
 * edges are squared already. */
static void add_rests(struct cutting_job *job, const struct cut_layout *first)
{
    bool stick = job->stock->kind == STOCK_STICK;
    const int64_t *value = job->planning->value;
    int64_t squared = stick                             ? value[TRADE_STICK_TRIM]
                      : job->stock->kind == STOCK_SHEET ? 2 * value[TRADE_SHEET_EDGE_TRIM]
                                                        : 0;

    copy_sizes(job);
    for (size_t i = 0; i < first->blanks.count; i++) {
        const struct cut_blank *blank = &first->blanks.at[i];
        struct cut_size *size = &job->sizes.at[blank->size];
        struct cut_size rest = {blank->rest + squared, 0, 0, 1};

        assert(blank->size < job->sizes.count); /* the first layout is of these sizes */
        if (size->limit != CUT_ANY)
            size->limit--;
        if (blank->rest <= 0 || (!stick && blank->rest_across <= 0))
            continue;
        if (stick)
            rest.length += value[TRADE_STICK_TRIM_FAR];
        else
            rest.width = blank->rest_across + squared;
        job_add_size(job, rest,
                     (struct cut_source){.origin = SIZE_REST,
                                         .length = blank->rest,
                                         .ahead = stick ? squared : 0,
                                         .part = ""});
    }
}

static const struct cut_layout *lay_out_and_keep(struct cutting_job *job)
{
    const struct cut_layout *layout = job_lay_out(job);

    job_keep_blanks(job, layout);
    tell_left_out(job, layout);
    if (job->stock->kind == STOCK_SHEET)
        tell_shortfalls(job, job->planning->plan->jobs.at[job->planning->plan->jobs.count - 1].job);
    return layout;
}

/* Parts that are cut anew stand after the others. */
static size_t count_first(const struct cutting_job *job)
{
    size_t count = 0;

    while (count < job->count && !job->planning->plan->parts.at[job->first + count].again)
        count++;
    return count;
}

/* Lays out what is cut anew, and gives both layouts as one. */
static struct cut_layout lay_out_again(struct cutting_job *job, const struct cut_layout *first,
                                       size_t count)
{
    struct cut_layout whole = cut_layout_copy(first, job->planning->arena);
    struct cut_layout more;
    size_t begin = job->first;
    size_t end = job->first + job->count + count;

    assert(count > 0);
    add_rests(job, first);
    job->first += job->count;
    job->count = count;
    job->again = true;
    more = cut_layout_copy(lay_out_and_keep(job), job->planning->arena);
    for (size_t i = 0; i < more.places.count; i++)
        more.places.at[i].part += job->first - begin;
    join_layouts(job, &whole, &more);
    job->count = end - begin;
    job->first = begin;
    return whole;
}

/* What is missing is cut from what there is, then from what has to be bought. */
static void cut_on(struct cutting_job *job, size_t again)
{
    static const struct cut_layout nothing = {0};
    const struct cut_layout *layout = &nothing;
    struct cutting_job cut = *job;

    cut.count -= again;
    if (cut.count > 0)
        job_put_as_cut(&cut);
    job->first += cut.count;
    job->count = again;
    job->again = true;
    job_set_sizes(job);
    job_add_remains(job);
    if (again > 0)
        layout = lay_out_and_keep(job);
    job_buy_sizes(job, layout);
}

static void cut_stock(struct cutting_job *job)
{
    const struct cut_layout *layout;
    struct cut_layout whole;
    size_t again;

    job->begun = stock_is_begun(job->planning->model, job->stock->key);
    if (job->begun) {
        cut_on(job, job->count - count_first(job));
        return;
    }
    job_set_sizes(job);
    if (job_is_roll(job->stock)) {
        job_buy_roll(job, lay_out_and_keep(job));
        return;
    }
    again = job->count - count_first(job);
    job->count -= again;
    layout = lay_out_and_keep(job);
    if (again > 0) {
        whole = lay_out_again(job, layout, again);
        layout = &whole;
    }
    job_buy_sizes(job, layout);
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
        assert(end > first);
        job.count = end - first;
        if (job.stock && job_is_cut(job.stock))
            cut_stock(&job);
    }
    job_keep_rolls(planning);
}
