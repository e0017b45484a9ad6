/*
 * What a maker in a hurry runs into, on an empty workshop and from a starter piece: a key that is
 * pressed one screen too early, prices that nobody entered yet, measures in the middle of ticking.
 */
#include "stage.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include <stdio.h>

/* A storage bench with every answer as it stands, and the list of builds again. */
static void make_bench(struct stage *stage)
{
    stage_press(stage, "a Down Enter Enter Enter Enter Enter Enter");
    assert_shown(stage, "made;");
    stage_press(stage, "Esc");
}

/* ---- the list of builds ---- */

static void a_key_of_a_build_takes_the_chosen_one_up(void **state)
{
    struct stage *stage = *state;
    make_bench(stage);
    stage_press(stage, "o");
    assert_shown(stage, "Storage bench > order of work");
    stage_press(stage, "Esc");
    assert_shown(stage, "boxes, layers, joins");
}

static void an_empty_list_names_the_key_that_begins_a_build(void **state)
{
    struct stage *stage = *state;
    assert_not_shown(stage, "Enter open");
    stage_press(stage, "o");
    assert_shown(stage, "there is no build yet: a begins one");
    stage_press(stage, "Enter");
    assert_shown(stage, "there is no build yet: a begins one");
    make_bench(stage);
    assert_shown(stage, "Enter open");
}

/* ---- prices ---- */

static int64_t price_of(const struct stage *stage, const char *name)
{
    const struct model *model = desk_model(stage->desk);
    int64_t stock = model_key_named(model, ENTITY_stock, name);
    for (size_t i = 0; i < model->offers.count; i++) {
        if (model->offers.at[i].stock == stock)
            return model->offers.at[i].price;
    }
    return -1;
}

static void a_missing_price_leads_to_where_it_is_typed(void **state)
{
    struct stage *stage = *state;
    make_bench(stage);
    stage_press(stage, "f");
    stage_show(stage, 24, 80); /* how many lines there are is known when they are painted */
    stage_press(stage, "/ '2x2 stick has no price' Enter Enter");
    assert_shown(stage, "stock and shelf");
    stage_press(stage, "'3.25' Enter");
    assert_int_equal(price_of(stage, "2x2 stick"), 325);
    stage_press(stage, "Esc");
    assert_shown(stage, "findings");
    assert_not_shown(stage, "2x2 stick has no price");
}

/* A cost that leaves goods out says so, until each has its price. */
static void a_cost_says_how_much_has_no_price_yet(void **state)
{
    struct stage *stage = *state;
    char open[64];
    make_bench(stage);
    stage_press(stage, "Enter");
    size_t lines = plan_unpriced(desk_plan(stage->desk));
    assert_true(lines > 1);
    assert_shown(stage, "cost 0.00+");
    stage_press(stage, "b");
    snprintf(open, sizeof open, "total 0.00, without %zu that have no price", lines);
    assert_shown(stage, open);
    stage_press(stage, "S '3.25' Enter");
    assert_true(plan_unpriced(desk_plan(stage->desk)) < lines);
    for (size_t i = 1; i < desk_model(stage->desk)->stocks.count; i++)
        stage_press(stage, "'3.25' Enter");
    const struct plan *plan = desk_plan(stage->desk);
    for (size_t i = 0; i < plan->purchases.count; i++) /* what is of no stock has no price there */
        assert_int_equal(plan->purchases.at[i].priced, plan->purchases.at[i].stock != 0);
}

static void a_price_goes_on_to_the_next_stock(void **state)
{
    struct stage *stage = *state;
    make_bench(stage);
    stage_press(stage, "S '9.50/100' Enter '14' Enter");
    assert_shown(stage, "100 in a pack 9.50");
    const struct model *model = desk_model(stage->desk);
    assert_int_equal(price_of(stage, model->stocks.at[0].name), 950);
    assert_int_equal(price_of(stage, model->stocks.at[1].name), 1400);
    stage_press(stage, "u u");
    assert_int_equal(desk_model(stage->desk)->offers.count, 0);
}

static void a_price_that_is_none_stays_with_its_reason(void **state)
{
    struct stage *stage = *state;
    make_bench(stage);
    stage_press(stage, "S '9.5x' Enter");
    assert_shown(stage, "\"x\" does not fit here");
    assert_int_equal(desk_model(stage->desk)->offers.count, 0);
    stage_press(stage, "Esc");
    assert_shown(stage, "nobody has it");
}

static void of_several_sizes_none_is_taken_for_the_other(void **state)
{
    struct stage *stage = *state;
    make_bench(stage);
    stage_press(stage, "w Down a Down Enter Esc a Down Enter Esc Esc S '9'");
    assert_shown(stage, "comes in several sizes: Enter shows them");
    assert_int_equal(desk_model(stage->desk)->offers.count, 2);
    stage_press(stage, "Enter");
    assert_shown(stage, "prices of one stock");
}

static void the_list_says_the_size_that_nobody_offers_yet(void **state)
{
    struct stage *stage = *state;
    make_bench(stage);
    stage_press(stage, "b");
    assert_shown(stage, "of 96"); /* sticks: the usual length, as a trade value */
}

/* ---- at the bench ---- */

static void after_measures_the_next_step_is_chosen(void **state)
{
    struct stage *stage = *state;
    make_bench(stage);
    stage_press(stage, "o Space Space Space Space Space");
    assert_shown(stage, "by the plan");
    stage_press(stage, "Space");
    assert_shown(stage, "done, nothing measured");
    size_t ticks = desk_model(stage->desk)->ticks.count;
    stage_press(stage, "Space");
    assert_int_equal(desk_model(stage->desk)->ticks.count, ticks + 1);
}

/* A spoiled part puts a step before the chosen one. */
static void the_chosen_step_stays_chosen_when_the_plan_changes(void **state)
{
    struct stage *stage = *state;
    make_bench(stage);
    stage_press(stage, "o");
    tick_until(stage->desk, "cut:4");
    stage_press(stage, "/ 'Label' Enter s / 'B13' Enter Space Esc");
    assert_shown(stage, "order of work");
    stage_press(stage, "Enter");
    assert_shown(stage, "Label every part");
}

/* A step in between is ticked already: the next Space would take its tick back. */
static void after_a_tick_what_is_ticked_is_passed_over(void **state)
{
    struct stage *stage = *state;
    make_bench(stage);
    stage_press(stage, "o");
    tick_until(stage->desk, "unroll");
    size_t ticks = desk_model(stage->desk)->ticks.count;
    stage_press(stage, "Esc o Down Space Up Up Space Space"); /* three stocks to be cut */
    assert_int_equal(desk_model(stage->desk)->ticks.count, ticks + 3);
}

static void a_step_names_the_key_to_its_work(void **state)
{
    struct stage *stage = *state;
    make_bench(stage);
    stage_press(stage, "o / 'Buy what' Enter Enter");
    assert_shown(stage, "b buy");
    stage_press(stage, "?");
    assert_shown(stage, "the shopping list");
    stage_press(stage, "Esc Esc / 'Cut Plywood' Enter Enter");
    assert_shown(stage, "k cutting");
    assert_not_shown(stage, "b buy");
}

static void a_new_layer_is_made_of_its_own_kind_of_stock(void **state)
{
    struct stage *stage = *state;
    stage_press(stage, "a End Enter 'Plain' Enter Enter a Enter Esc a Down Down Enter");
    const struct model *model = desk_model(stage->desk);
    assert_int_equal(model->layers.count, 1);
    assert_int_equal(MODEL_FIND(model, stock, model->layers.at[0].stock)->kind, STOCK_FOAM);
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, stage_begin, stage_end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        FACT(a_key_of_a_build_takes_the_chosen_one_up),
        FACT(an_empty_list_names_the_key_that_begins_a_build),
        FACT(a_missing_price_leads_to_where_it_is_typed),
        FACT(a_cost_says_how_much_has_no_price_yet),
        FACT(a_price_goes_on_to_the_next_stock),
        FACT(a_price_that_is_none_stays_with_its_reason),
        FACT(of_several_sizes_none_is_taken_for_the_other),
        FACT(the_list_says_the_size_that_nobody_offers_yet),
        FACT(after_measures_the_next_step_is_chosen),
        FACT(the_chosen_step_stays_chosen_when_the_plan_changes),
        FACT(after_a_tick_what_is_ticked_is_passed_over),
        FACT(a_step_names_the_key_to_its_work),
        FACT(a_new_layer_is_made_of_its_own_kind_of_stock),
    };
    int failed = cmocka_run_group_tests_name("hurry", tests, NULL, NULL);
    return failed ? 1 : 0;
}
