/*
 * Mistakes of buying that the plan prevents, each a figure or a finding: made and told, or made
 * impossible. The numbers are those of the trade's list of mistakes and regrets (common practice,
 * no source); the builds are the worked examples of tests/cases.
 */
#include "workshop.h"

#include "plan/findings.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static const char *const cases[] = {"headboard", "ottoman", "banquette", NULL};
#define CASES 3

static int begin(void **state)
{
    return bench_begin(state, cases);
}

/* Runs a check on the plan of every example. */
typedef void check_fn(const struct plan *plan);

static void each_example(struct bench *bench, check_fn *check)
{
    static const char *const names[CASES] = {"Wing headboard", "Tufted ottoman",
                                             "L-shaped banquette"};
    for (size_t i = 0; i < CASES; i++) {
        DONE(desk_take_up_named(bench->desk, names[i], note));
        check(desk_plan(bench->desk));
    }
}

static const struct purchase *purchase_of(const struct plan *plan, int64_t stock)
{
    for (size_t i = 0; i < plan->purchases.count; i++) {
        if (plan->purchases.at[i].stock == stock)
            return &plan->purchases.at[i];
    }
    return NULL;
}

static bool told(const struct plan *plan, int kind)
{
    for (size_t i = 0; i < plan->findings.count; i++) {
        if (plan->findings.at[i].kind == kind)
            return true;
    }
    return false;
}

/* ---- 2: ran out for the last piece, welt, a button ---- */

static void every_part_has_its_place(const struct plan *plan)
{
    size_t placed = 0;
    for (size_t i = 0; i < plan->jobs.count; i++)
        placed += plan->jobs.at[i].job->part_count - plan->jobs.at[i].layout->left_out.count;
    assert_int_equal(plan->placements.count, placed);
    assert_int_equal(placed, plan->parts.count);
    for (size_t i = 0; i < plan->purchases.count; i++)
        assert_true(plan->purchases.at[i].need >= plan->purchases.at[i].used);
}

static void mistake_2_every_piece_is_in_what_is_bought_and_a_reserve(void **state)
{
    each_example(*state, every_part_has_its_place);
}

/* ---- 3: bought by area ---- */

/* The area of the pieces by the width of the roll is less than what they take of it. */
static void a_roll_is_bought_by_its_layout(const struct plan *plan)
{
    for (size_t i = 0; i < plan->jobs.count; i++) {
        const struct plan_job *job = &plan->jobs.at[i];
        const struct stock *stock = MODEL_FIND(plan->facts, stock, job->stock);
        const struct purchase *purchase = purchase_of(plan, job->stock);
        double area = 0;
        if (job->way != CUT_ROLLS || !purchase)
            continue;
        for (size_t k = 0; k < job->job->part_count; k++)
            area += (double)job->job->parts[k].length * (double)job->job->parts[k].width;
        assert_true((double)purchase->length >= area / (double)stock->width);
        assert_true(purchase->length >= purchase->used);
    }
}

static void mistake_3_cloth_is_bought_by_its_layout_not_by_area(void **state)
{
    each_example(*state, a_roll_is_bought_by_its_layout);
}

/* ---- 4: the roll is narrower than its label ---- */

static enum fault change_narrow(struct model *draft, void *context, struct fault_note *note)
{
    struct measure *measure = MODEL_ADD(draft, measure);
    (void)note;
    measure->stock = *(const int64_t *)context;
    measure->what = "width";
    measure->value = MODEL_FIND(draft, stock, measure->stock)->width * 3 / 4;
    return FAULT_NONE;
}

static int64_t cover_cloth(const struct plan *plan)
{
    for (size_t i = 0; i < plan->facts->layers.count; i++) {
        if (plan->facts->layers.at[i].kind == LAYER_COVER)
            return plan->facts->layers.at[i].stock;
    }
    fail_msg("nothing is covered");
    return 0;
}

static void mistake_4_a_roll_that_is_narrower_takes_more_of_it(void **state)
{
    struct bench *bench = *state;
    DONE(desk_take_up_named(bench->desk, "Wing headboard", note));
    int64_t cloth = cover_cloth(desk_plan(bench->desk));
    int64_t before = purchase_of(desk_plan(bench->desk), cloth)->length;
    DONE(desk_edit(bench->desk, "measured", change_narrow, &cloth, note));
    assert_true(purchase_of(desk_plan(bench->desk), cloth)->length > before);
}

/* ---- 32: something cannot be had ---- */

static enum fault change_offers(struct model *draft, void *context, struct fault_note *note)
{
    int64_t stock = *(const int64_t *)context;
    (void)note;
    for (size_t i = draft->offers.count; i-- > 0;) {
        if (draft->offers.at[i].stock == stock)
            model_remove(draft, ENTITY_offer, draft->offers.at[i].key);
    }
    return FAULT_NONE;
}

static void mistake_32_what_nobody_sells_is_told_before_anything_is_cut(void **state)
{
    struct bench *bench = *state;
    DONE(desk_take_up_named(bench->desk, "Wing headboard", note));
    int64_t cloth = cover_cloth(desk_plan(bench->desk));
    DONE(desk_edit(bench->desk, "no offers", change_offers, &cloth, note));
    assert_true(told(desk_plan(bench->desk), FINDING_NO_PRICE));
    assert_false(purchase_of(desk_plan(bench->desk), cloth)->priced);
}

/* ---- 46: overspent on small goods and second packs ---- */

/* Whole packs are in the estimate, and what of them is used up stands beside it. */
static void packs_are_in_the_estimate(const struct plan *plan)
{
    int64_t bought = 0;
    for (size_t i = 0; i < plan->purchases.count; i++) {
        const struct purchase *purchase = &plan->purchases.at[i];
        const struct offer *offer = MODEL_FIND(plan->facts, offer, purchase->offer);
        if (purchase->priced && offer && !purchase->length)
            assert_int_equal(purchase->price, purchase->packs * offer->price);
        assert_true(purchase->value <= purchase->price);
        bought += purchase->price;
    }
    assert_int_equal(bought, plan->cost.bought);
    assert_true(plan->cost.used < plan->cost.bought);
}

static enum fault change_budget(struct model *draft, void *context, struct fault_note *note)
{
    struct spend *spend = MODEL_ADD(draft, spend);
    (void)context;
    (void)note;
    spend->dated = "2026-11-25";
    spend->what = "a second can";
    spend->aisle = AISLE_ADHESIVES;
    spend->amount = 20000;
    return FAULT_NONE;
}

static void mistake_46_whole_packs_are_counted_and_overspending_is_told(void **state)
{
    struct bench *bench = *state;
    each_example(bench, packs_are_in_the_estimate);
    DONE(desk_take_up_named(bench->desk, "Wing headboard", note));
    assert_false(told(desk_plan(bench->desk), FINDING_OVER_BUDGET));
    DONE(desk_edit(bench->desk, "paid", change_budget, NULL, note));
    assert_true(told(desk_plan(bench->desk), FINDING_OVER_BUDGET));
}

/* ---- 51: what is left over is forgotten and bought again ---- */

static enum fault change_shelf(struct model *draft, void *context, struct fault_note *note)
{
    const struct purchase *line = context;
    struct leftover *left = MODEL_ADD(draft, leftover);
    const struct offer *offer = MODEL_FIND(draft, offer, line->offer);
    (void)note;
    left->stock = line->stock;
    left->length = offer->length;
    left->width = offer->width;
    left->count = 2;
    return FAULT_NONE;
}

static void mistake_51_the_shelf_is_searched_first(void **state)
{
    struct bench *bench = *state;
    DONE(desk_take_up_named(bench->desk, "Wing headboard", note));
    struct purchase sticks = desk_plan(bench->desk)->purchases.at[0];
    assert_int_equal(MODEL_FIND(desk_model(bench->desk), stock, sticks.stock)->kind, STOCK_STICK);
    DONE(desk_edit(bench->desk, "shelf", change_shelf, &sticks, note));
    const struct purchase *after = purchase_of(desk_plan(bench->desk), sticks.stock);
    assert_non_null(after);
    assert_int_equal(after->packs, sticks.packs - 2);
}

int main(void)
{
#define CASE(name) cmocka_unit_test_setup_teardown(name, begin, bench_end)
    const struct CMUnitTest tests[] = {
        CASE(mistake_2_every_piece_is_in_what_is_bought_and_a_reserve),
        CASE(mistake_3_cloth_is_bought_by_its_layout_not_by_area),
        CASE(mistake_4_a_roll_that_is_narrower_takes_more_of_it),
        CASE(mistake_32_what_nobody_sells_is_told_before_anything_is_cut),
        CASE(mistake_46_whole_packs_are_counted_and_overspending_is_told),
        CASE(mistake_51_the_shelf_is_searched_first),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
