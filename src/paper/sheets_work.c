/* Buying and steps. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/lines.h"
#include "paper/print.h"
#include "paper/table.h"
#include "plan/wood.h"

#include <stdio.h>

/* ---- buying ---- */

/* The usual size that stands in for what nobody offers yet; NULL for what is not cut. */
static const struct cutting *usual_size(const struct plan *plan, const struct purchase *purchase)
{
    for (size_t i = 0; i < plan->cuttings.count && !purchase->offer; i++) {
        const struct cutting *cutting = &plan->cuttings.at[i];
        if (cutting->stock == purchase->stock && !cutting->offer && !cutting->leftover &&
            !cutting->rest_of_another && cutting->length)
            return cutting;
    }
    return NULL;
}

static void add_cut_size(struct text *out, const struct plan *plan, int64_t packs,
                         const struct cutting *size)
{
    text_format(out, "%lld of %s", (long long)packs, print_length(plan, size->length).at);
    if (size->width)
        text_format(out, " x %s", print_length(plan, size->width).at);
}

void sheet_purchase_size(struct text *out, const struct plan *plan, const struct purchase *purchase)
{
    const struct offer *offer = MODEL_FIND(plan->facts, offer, purchase->offer);
    const struct cutting *usual = usual_size(plan, purchase);
    if (purchase->length) {
        text_add(out, print_roll(plan, purchase->length).at);
    } else if (usual && purchase->measure == QUANTITY_COUNT) {
        add_cut_size(out, plan, purchase->packs, usual);
    } else if (offer && offer->width) {
        text_format(out, "%lld of %s x %s", (long long)purchase->packs,
                    print_length(plan, offer->length).at, print_length(plan, offer->width).at);
    } else if (offer && offer->length) {
        text_format(out, "%lld of %s", (long long)purchase->packs,
                    purchase->measure == QUANTITY_LENGTH
                        ? print_sold(plan, purchase->stock, QUANTITY_LENGTH, offer->length).at
                        : print_length(plan, offer->length).at);
    } else if (offer && offer->pack > 1) {
        text_format(out, "%lld x %lld", (long long)purchase->packs, (long long)offer->pack);
    } else {
        text_format(out, "%lld", (long long)purchase->packs);
    }
}

struct printed sheet_purchase_amount(const struct plan *plan, const struct purchase *purchase,
                                     int64_t amount)
{
    return print_sold(plan, purchase->stock, purchase->measure, amount);
}

const char *sheet_purchase_name(const struct plan *plan, const struct purchase *purchase)
{
    return purchase->stock ? plan_stock_name(plan, purchase->stock) : purchase->what;
}

void sheet_purchase_words(struct text *out, const struct plan *plan,
                          const struct purchase *purchase)
{
    struct text size;
    text_init(&size);
    sheet_purchase_size(&size, plan, purchase);
    text_format(out, "%.80s, %.36s", sheet_purchase_name(plan, purchase), text_string(&size));
    text_release(&size);
}

/* "26.7 board feet" of the sticks of a line, as lumber yards count; "" for anything else. */
static struct printed board_feet(const struct plan *plan, const struct purchase *purchase)
{
    const struct stock *stock = MODEL_FIND(plan->facts, stock, purchase->stock);
    const struct offer *offer = MODEL_FIND(plan->facts, offer, purchase->offer);
    struct printed printed = {""};
    int64_t feet = stock && stock->kind == STOCK_STICK && offer
                       ? stick_board_feet(stock->name, offer->length * purchase->packs)
                       : 0;
    int64_t tenths = whole_divide_even(feet, 100);
    if (tenths)
        snprintf(printed.at, sizeof printed.at, "%lld.%lld board feet", (long long)(tenths / 10),
                 (long long)(tenths % 10));
    return printed;
}

static void purchase_row(struct table *table, const struct plan *plan,
                         const struct purchase *purchase)
{
    struct text size;
    text_init(&size);
    sheet_purchase_size(&size, plan, purchase);
    table_cell(table, "%s", sheet_purchase_name(plan, purchase));
    table_cell(table, "%s", text_string(&size));
    table_cell(table, "%s", purchase->priced ? print_money(plan, purchase->till).at : "no price");
    table_cell(table, "need %s", sheet_purchase_amount(plan, purchase, purchase->need).at);
    table_cell(table, purchase->shelf ? "%s on the shelf" : "%s",
               purchase->shelf ? sheet_purchase_amount(plan, purchase, purchase->shelf).at
                               : board_feet(plan, purchase).at);
    text_release(&size);
}

void sheet_total(struct text *out, const struct plan *plan)
{
    text_format(out, "total %s", print_money(plan, plan->cost.estimate).at);
    if (plan->cost.tax)
        text_format(out, ", of it tax %s", print_money(plan, plan->cost.tax).at);
    if (plan_unpriced(plan))
        text_format(out, ", without %zu that %s no price", plan_unpriced(plan),
                    plan_unpriced(plan) == 1 ? "has" : "have");
}

void sheet_buying(struct text *out, const struct plan *plan)
{
    if (plan->purchases.count == 0)
        return;
    text_add(out, "\nSHOPPING LIST\n");
    for (int aisle = 0; aisle < AISLE_COUNT; aisle++) {
        struct table table;
        table_begin(&table, "llrll");
        for (size_t i = 0; i < plan->purchases.count; i++) {
            if (plan->purchases.at[i].aisle == aisle)
                purchase_row(&table, plan, &plan->purchases.at[i]);
        }
        if (table.count)
            text_format(out, " %s\n", words_aisle.at[aisle].help);
        table_end(&table, out);
    }
    sheet_ways_home(out, plan);
    text_add(out, "  ");
    sheet_total(out, plan);
    text_format(out, "; used up of it%s %s\n", plan->cost.tax ? " without tax" : "",
                print_money(plan, plan->cost.used).at);
}

/* ---- steps ---- */

/* "in the room; two people; holes shift when ..." */
static void step_remark(struct table *table, const struct step *step)
{
    const char *const parts[] = {step->place == PLACE_SITE ? "in the room" : "",
                                 step_people(step) > 1 ? "two people" : "", step->because};
    struct text remark;
    text_init(&remark);
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
        if (*parts[i])
            text_format(&remark, "%s%s", remark.length ? "; " : "", parts[i]);
    }
    table_cell(table, "%s", text_string(&remark));
    text_release(&remark);
}

void sheet_steps(struct text *out, const struct plan *plan)
{
    if (plan->steps.count == 0)
        return;
    text_format(out, "\nORDER OF WORK: %s\n", print_minutes(plan->tally.minutes).at);
    struct table table;
    table_begin(&table, "lrllrl");
    for (size_t i = 0; i < plan->steps.count; i++) {
        const struct step *step = &plan->steps.at[i];
        table_cell(&table, "[%c]", step->ticked ? 'x' : ' ');
        table_cell(&table, "%zu", i + 1);
        table_cell(&table, "%s", step->title);
        table_cell(&table, "%s", step->name);
        table_cell(&table, "%s", print_minutes(step->minutes).at);
        step_remark(&table, step);
    }
    table_end(&table, out);
}

static void step_list(struct text *out, const char *heading, const char *const *lines, size_t count)
{
    if (count)
        text_format(out, "%s\n", heading);
    for (size_t i = 0; i < count; i++)
        lines_add(out, "-", 4, lines[i]);
}

static void step_line(struct text *out, const char *heading, const char *line)
{
    struct text whole;

    if (!*line)
        return;
    text_init(&whole);
    text_format(&whole, "%s%s", heading, line);
    lines_add_hanging(out, 2, text_string(&whole));
    text_release(&whole);
}

/* The last first: what was done since and hangs on it. */
static void comes_off(struct text *out, const struct plan *plan, const struct step *step)
{
    struct arena arena;
    const size_t *steps;
    size_t count = 0;
    arena_init(&arena);
    if (step->older &&
        !plan_hangs_on(plan, (size_t)(step - plan->steps.at), &arena, &steps, &count) && count)
        text_add(out, "To do it anew, take back first\n");
    for (size_t i = 0; i < count; i++) {
        text_add(out, "  - ");
        show_text(out, plan->steps.at[steps[i]].title);
        text_add_char(out, '\n');
    }
    arena_release(&arena);
}

/* "L is the left one of a pair with R" */
static void step_hand(struct text *out, const struct plan *plan, int64_t box)
{
    const struct pose *pose = plan_pose(plan, box);

    if (!pose || pose->hand == HAND_NONE)
        return;
    show_text(out, print_box(plan, box));
    text_format(out, " is the %s one of a pair with ", plan_hand_word(pose->hand));
    show_text(out, print_box(plan, pose->twin));
    text_add_char(out, '\n');
}

static void step_hands(struct text *out, const struct plan *plan, const struct step *step)
{
    const struct join *join = MODEL_FIND(plan->facts, join, step->join);

    step_hand(out, plan, join ? join->box_a : step->box);
    if (join)
        step_hand(out, plan, join->box_b);
}

void sheet_step(struct text *out, const struct plan *plan, const struct step *step)
{
    text_format(out, "Step %zu of %zu: ", (size_t)(step - plan->steps.at) + 1, plan->steps.count);
    show_text(out, step->title);
    text_format(out, "%s\n%s, %s, %d %s\n", step->ticked ? " (done)" : "",
                step->place == PLACE_SITE ? "in the room" : "at the bench",
                print_minutes(step->minutes).at, step_people(step),
                step_people(step) == 1 ? "person" : "people");
    step_line(out, "Lifted: ", step->crew);
    step_hands(out, plan, step);
    step_line(out, "Now, because ", step->because);
    step_line(out, "Not as usual: ", step->unusual);
    if (step->need_count)
        text_add(out, "Needs\n");
    for (size_t i = 0; i < step->need_count; i++) {
        text_add(out, "  - ");
        show_text(out, step->needs[i].text);
        text_add_char(out, '\n');
    }
    step_list(out, "Do", step->actions, step->action_count);
    step_list(out, "Measure and write down", step->measures, step->measure_count);
    step_line(out, "This closes for good: ", step->closes);
    step_line(out, "Caution: ", step->caution);
    if (step->wait)
        text_format(out, "Something dries before it: %s to wait at the bench\n",
                    print_minutes(step->wait).at);
    if (step->older)
        text_add(out, "It was done to an older plan: the figures above are those of today.\n");
    step_list(out, "Different since it was done", step->changes, step->change_count);
    comes_off(out, plan, step);
}
