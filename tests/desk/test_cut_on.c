/*
 * Parts that change, are spoiled or come to be needed after the first cuts: they are cut from what
 * those left, and what is sawn up is neither cut again nor bought twice. The sums are made by hand
 * beside each check; the saw takes 1/8 in and squaring an end 1/4 in.
 */
#include "../base/inch.h"
#include "paper/sheets.h"
#include "rails.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static void buy_and_cut(const struct rails *rails)
{
    tick_until(rails->bench.desk, "buy");
    rails_tick(rails, "cut");
}

/* The pieces that are to be cut, in order, of what is missing. */
static const struct cutting *to_cut(const struct rails *rails, size_t *ret_count)
{
    const struct plan *plan = rails_plan(rails);
    for (size_t i = 0; i < plan->jobs.count; i++) {
        const struct plan_job *job = &plan->jobs.at[i];
        if (!job->again)
            continue;
        *ret_count = job->layout->blanks.count;
        return &plan->cuttings.at[job->first_cutting];
    }
    *ret_count = 0;
    return NULL;
}

static int64_t on_shelf(const struct rails *rails, int64_t length)
{
    const struct model *model = desk_model(rails->bench.desk);
    int64_t count = 0;
    for (size_t i = 0; i < model->leftovers.count; i++)
        if (model->leftovers.at[i].stock == rails->stock && model->leftovers.at[i].length == length)
            count += model->leftovers.at[i].count;
    return count;
}

static bool says(const struct rails *rails, const char *words)
{
    struct text out;
    text_init(&out);
    sheet_cutting(&out, rails_plan(rails));
    bool found = strstr(text_string(&out), words) != NULL;
    text_release(&out);
    return found;
}

static enum fault add_leftover(struct model *draft, void *context, struct fault_note *note)
{
    const struct rails *rails = context;
    struct leftover *left = MODEL_ADD(draft, leftover);
    left->stock = rails->stock;
    left->length = IN(100);
    left->count = 1;
    left->place = arena_text(draft->arena, "loft");
    (void)note;
    return FAULT_NONE;
}

/* ---- as it was cut ---- */

static void what_is_cut_is_told_as_it_was_cut(void **state)
{
    const struct rails *rails = *state;
    int64_t estimate;
    tick_until(rails->bench.desk, "buy");
    estimate = rails_plan(rails)->cost.estimate;
    rails_tick(rails, "cut");
    const struct plan *plan = rails_plan(rails);
    assert_int_equal(plan->jobs.count, 1);
    assert_true(plan->jobs.at[0].cut);
    assert_int_equal(plan->jobs.at[0].layout->blanks.count, 2);
    assert_int_equal(plan->cost.estimate, estimate);
    assert_true(says(rails, "2 sticks, 8.00, as it was cut"));
    assert_true(says(rails, "mark 90-1/4"));
    assert_true(says(rails, "left 5-5/8"));
    assert_false(says(rails, "bought already"));
}

/* Neither a wider kerf nor another price moves what is sawn. */
static void nothing_moves_what_is_cut(void **state)
{
    const struct rails *rails = *state;
    struct desk *desk = rails->bench.desk;
    buy_and_cut(rails);
    DONE(desk_trade(desk, TRADE_FROM_BUILD, "kerf", "1/4 in", note));
    for (size_t i = 0; i < desk_model(desk)->offers.count; i++)
        if (desk_model(desk)->offers.at[i].stock == rails->stock)
            DONE(desk_set(desk, ENTITY_offer, desk_model(desk)->offers.at[i].key, "price", "1.00",
                          note));
    assert_true(says(rails, "2 sticks, 2.00, as it was cut"));
    assert_true(says(rails, "left 5-5/8"));
    assert_int_equal(rails_listed(rails, IN(96)), 2);
    assert_false(rails_missing(rails));
}

/* A difference that no tape shows is none: its finest mark is 1/16 in. */
static void a_part_that_changes_by_less_than_a_mark_stays_cut(void **state)
{
    const struct rails *rails = *state;
    size_t count;
    buy_and_cut(rails);
    rails_set(rails, "2", "90-1/32");
    to_cut(rails, &count);
    assert_int_equal(count, 0);
    rails_set(rails, "2", "90-1/8");
    to_cut(rails, &count);
    assert_int_equal(count, 2);
}

/* ---- parts that change ---- */

/* A part of 95 in came out of a whole stick of 96; both are sawn up. */
static void a_stick_that_is_sawn_up_is_no_whole_one(void **state)
{
    const struct rails *rails = *state;
    size_t count;
    buy_and_cut(rails);
    rails_set(rails, "1", "95");
    const struct cutting *cutting = to_cut(rails, &count);
    assert_int_equal(count, 1);
    assert_int_equal(cutting->source->origin, SIZE_TO_BUY);
    assert_int_equal(rails_listed(rails, IN(96)), 3);
    assert_true(rails_missing(rails));
}

/* Both of 70 in come out of those of 90, and each leaves 90 - 70 - 1/8. */
static void a_part_that_is_shorter_now_is_cut_from_what_it_was(void **state)
{
    const struct rails *rails = *state;
    size_t count;
    buy_and_cut(rails);
    rails_set(rails, "2", "70");
    const struct cutting *cutting = to_cut(rails, &count);
    assert_int_equal(count, 2);
    for (size_t i = 0; i < count; i++) {
        assert_int_equal(cutting[i].source->origin, SIZE_PART);
        assert_int_equal(cutting[i].length, IN(90));
        assert_int_equal(cutting[i].rest, IN(19.875));
    }
    assert_true(says(rails, "90 in, cut as cleat before"));
    assert_true(says(rails, "cleat 70, mark 70; left 19-7/8"));
    assert_int_equal(rails_plan(rails)->cost.bought, 800);
    assert_false(rails_missing(rails));
    rails_tick(rails, "recut");
    to_cut(rails, &count);
    assert_int_equal(count, 0);
    assert_int_equal(on_shelf(rails, IN(19.875)), 2);
    assert_false(plan_step(rails_plan(rails), "account")->older);
}

/* Of 70 in none came out of the two of 60 that were 90; what those left is 29-7/8. */
static void what_was_cut_up_for_another_is_not_there_twice(void **state)
{
    const struct rails *rails = *state;
    size_t count;
    buy_and_cut(rails);
    rails_set(rails, "2", "60");
    rails_tick(rails, "recut");
    rails_set(rails, "2", "70");
    const struct cutting *cutting = to_cut(rails, &count);
    assert_int_equal(count, 1);
    assert_int_equal(cutting->source->origin, SIZE_TO_BUY);
    assert_int_equal(cutting->length, IN(144));
    rails_set(rails, "4", "29");
    cutting = to_cut(rails, &count);
    for (size_t i = 0; i < count; i++)
        assert_int_not_equal(cutting[i].source->origin, SIZE_TO_BUY);
    assert_false(rails_missing(rails));
}

/* What is screwed on is no wood to cut from. */
static void a_part_that_is_fixed_is_not_cut_from(void **state)
{
    const struct rails *rails = *state;
    size_t count;
    char step[40];
    snprintf(step, sizeof step, "cleat:%d", (int)desk_model(rails->bench.desk)->fittings.at[0].box);
    tick_until(rails->bench.desk, step);
    rails_set(rails, "2", "70");
    const struct cutting *cutting = to_cut(rails, &count);
    assert_int_equal(count, 1);
    assert_int_equal(cutting->source->origin, SIZE_TO_BUY);
}

/* What is missing has its step, which names it; the first one is no longer done otherwise when
 * that is ticked. */
static void a_changed_part_has_a_step_until_it_is_cut(void **state)
{
    const struct rails *rails = *state;
    char cut[40], again[40];
    snprintf(cut, sizeof cut, "cut:%d", (int)rails->stock);
    snprintf(again, sizeof again, "recut:%d-1", (int)rails->stock);
    buy_and_cut(rails);
    assert_null(plan_step(rails_plan(rails), again));
    rails_set(rails, "3", "90");
    assert_string_equal(plan_step(rails_plan(rails), again)->actions[0], "Missing: cleat");
    rails_set(rails, "2", "70");
    assert_true(plan_step(rails_plan(rails), cut)->older);
    assert_string_equal(plan_step(rails_plan(rails), again)->actions[0], "Missing: cleat, cleat");
    rails_tick(rails, "recut");
    assert_false(plan_step(rails_plan(rails), cut)->older);
    assert_true(plan_step(rails_plan(rails), again)->ticked);
}

/* ---- parts that are spoiled ---- */

/* Of a pack of three two are cut; the third is in the house and not on the shelf. */
static void a_spoiled_part_is_cut_from_what_was_bought(void **state)
{
    const struct rails *rails = *state;
    struct desk *desk = rails->bench.desk;
    size_t count;
    for (size_t i = 0; i < desk_model(desk)->offers.count; i++) {
        const struct offer *offer = &desk_model(desk)->offers.at[i];
        if (offer->stock == rails->stock && offer->length == IN(96))
            DONE(desk_set(desk, ENTITY_offer, offer->key, "pack", "3", note));
    }
    buy_and_cut(rails);
    assert_int_equal(rails_plan(rails)->cost.bought, 400);
    DONE(desk_spoil(desk, "cleat", true, note));
    const struct cutting *cutting = to_cut(rails, &count);
    assert_int_equal(count, 1);
    assert_int_equal(cutting->source->origin, SIZE_BOUGHT);
    assert_true(says(rails, "96 in, bought already"));
    assert_false(says(rails, "from the shelf"));
    assert_false(rails_missing(rails));
    rails_tick(rails, "recut");
    DONE(desk_spoil(desk, "cleat", true, note));
    assert_true(rails_missing(rails));
    assert_int_equal(to_cut(rails, &count)->source->origin, SIZE_TO_BUY);
}

/* ---- the shelf ---- */

/* A leftover of 100 in and a stick of 96 hold both; what the first leaves is 9-5/8. */
static void what_is_cut_from_the_shelf_comes_off_it(void **state)
{
    struct rails *rails = *state;
    struct desk *desk = rails->bench.desk;
    char cut[40];
    snprintf(cut, sizeof cut, "cut:%d", (int)rails->stock);
    DONE(desk_edit(desk, "leftover", add_leftover, rails, note));
    buy_and_cut(rails);
    assert_int_equal(on_shelf(rails, IN(100)), 0);
    assert_int_equal(on_shelf(rails, IN(9.625)), 1);
    assert_true(says(rails, "100 in, from the shelf"));
    DONE(desk_untick(desk, cut, note));
    assert_int_equal(on_shelf(rails, IN(100)), 1);
    assert_int_equal(on_shelf(rails, IN(9.625)), 0);
    for (size_t i = 0; i < desk_model(desk)->leftovers.count; i++)
        if (desk_model(desk)->leftovers.at[i].stock == rails->stock)
            assert_string_equal(desk_model(desk)->leftovers.at[i].place, "loft");
    assert_int_equal(desk_model(desk)->cut_stocks.count, 0);
}

/* What the first cuts left is on the shelf, and what is cut from it comes off again. */
static void what_the_first_cuts_left_on_the_shelf_is_cut_first(void **state)
{
    struct rails *rails = *state;
    struct desk *desk = rails->bench.desk;
    char again[40];
    size_t count;
    snprintf(again, sizeof again, "recut:%d-1", (int)rails->stock);
    rails_set(rails, "2", "50");
    buy_and_cut(rails); /* from 144 in: 144 - 1/4 - 100 - 2/8 = 43-1/2 */
    assert_int_equal(on_shelf(rails, IN(43.5)), 1);
    rails_set(rails, "2", "50");
    DONE(desk_spoil(desk, "cleat", true, note));
    rails_set(rails, "2", "43");
    const struct cutting *cutting = to_cut(rails, &count);
    assert_int_equal(count, 2);
    assert_true(cutting[0].source->origin == SIZE_SHELF || cutting[1].source->origin == SIZE_SHELF);
    rails_tick(rails, "recut");
    assert_int_equal(on_shelf(rails, IN(43.5)), 0);
    DONE(desk_untick(desk, again, note));
    assert_int_equal(on_shelf(rails, IN(43.5)), 1);
}

/* ---- ticks from before ---- */

/* As a file has it that was written before pieces were written down; that took nothing off the
 * shelf. */
static enum fault forget_pieces(struct model *draft, void *context, struct fault_note *note)
{
    const struct rails *rails = context;
    for (size_t i = draft->cut_stocks.count; i-- > 0;)
        model_remove(draft, ENTITY_cut_stock, draft->cut_stocks.at[i].key);
    for (size_t i = 0; i < draft->leftovers.count; i++)
        if (draft->leftovers.at[i].stock == rails->stock &&
            draft->leftovers.at[i].length == IN(100))
            draft->leftovers.at[i].count = 1;
    (void)note;
    return FAULT_NONE;
}

static void what_was_cut_before_is_known_with_the_next_edit(void **state)
{
    struct rails *rails = *state;
    struct desk *desk = rails->bench.desk;
    size_t count;
    DONE(desk_edit(desk, "leftover", add_leftover, rails, note));
    buy_and_cut(rails);
    int64_t estimate = rails_plan(rails)->cost.estimate;
    DONE(desk_edit(desk, "forget", forget_pieces, rails, note));
    assert_false(rails_plan(rails)->jobs.at[0].cut);
    assert_int_equal(on_shelf(rails, IN(100)), 1);
    rails_set(rails, "1", "95");
    assert_int_equal(desk_model(desk)->cut_stocks.count, 2);
    assert_int_equal(on_shelf(rails, IN(100)), 0);
    assert_int_equal(on_shelf(rails, IN(9.625)), 1);
    assert_int_equal(to_cut(rails, &count)->source->origin, SIZE_TO_BUY);
    rails_set(rails, "2", "90");
    to_cut(rails, &count);
    assert_int_equal(count, 0);
    assert_true(rails_plan(rails)->jobs.at[0].cut);
    assert_int_equal(rails_plan(rails)->cost.estimate, estimate);
}

/* ---- bought anew ---- */

/* What a second purchase keeps goes with it, and what the first one kept stays. */
static void a_second_purchase_takes_its_layouts_back(void **state)
{
    const struct rails *rails = *state;
    struct desk *desk = rails->bench.desk;
    tick_until(desk, "buy");
    size_t kept = desk_model(desk)->layouts.count;
    assert_int_equal(kept, 1);
    rails_set(rails, "3", "70");
    assert_false(rails_plan(rails)->jobs.at[0].taken);
    rails_tick(rails, "rebuy");
    assert_true(rails_plan(rails)->jobs.at[0].taken);
    DONE(desk_untick(desk, "rebuy:1", note));
    assert_int_equal(desk_model(desk)->layouts.count, kept);
    assert_false(rails_plan(rails)->jobs.at[0].taken);
    rails_set(rails, "2", "90");
    assert_true(rails_plan(rails)->jobs.at[0].taken);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        RAILS_TEST(what_is_cut_is_told_as_it_was_cut),
        RAILS_TEST(nothing_moves_what_is_cut),
        RAILS_TEST(a_part_that_changes_by_less_than_a_mark_stays_cut),
        RAILS_TEST(a_stick_that_is_sawn_up_is_no_whole_one),
        RAILS_TEST(a_part_that_is_shorter_now_is_cut_from_what_it_was),
        RAILS_TEST(what_was_cut_up_for_another_is_not_there_twice),
        RAILS_TEST(a_part_that_is_fixed_is_not_cut_from),
        RAILS_TEST(a_changed_part_has_a_step_until_it_is_cut),
        RAILS_TEST(a_spoiled_part_is_cut_from_what_was_bought),
        RAILS_TEST(what_is_cut_from_the_shelf_comes_off_it),
        RAILS_TEST(what_the_first_cuts_left_on_the_shelf_is_cut_first),
        RAILS_TEST(what_was_cut_before_is_known_with_the_next_edit),
        RAILS_TEST(a_second_purchase_takes_its_layouts_back),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
