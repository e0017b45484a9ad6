/* Builds side by side, what one could be made from otherwise, and copies of builds. */
#include "workshop.h"

#include "desk/compare.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static int begin(void **state)
{
    static const char *const names[] = {"headboard", NULL};
    return bench_begin(state, names);
}

static const struct figure *figure_named(const char *key)
{
    for (const struct figure *figure = plan_figures; figure->key; figure++) {
        if (strcmp(figure->key, key) == 0)
            return figure;
    }
    fail_msg("no figure %s", key);
    return NULL;
}

/* ---- copies ---- */

static enum fault change_paid(struct model *draft, void *context, struct fault_note *note)
{
    struct spend *spend = MODEL_ADD(draft, spend);
    (void)context;
    (void)note;
    spend->dated = "2026-11-25";
    spend->what = "glue";
    spend->amount = 500;
    return FAULT_NONE;
}

static void a_copy_has_all_that_was_entered_and_nothing_that_was_done(void **state)
{
    struct bench *bench = *state;
    char step[80];
    snprintf(step, sizeof step, "%s", desk_plan(bench->desk)->steps.at[5].name);
    tick_until(bench->desk, step);
    DONE(desk_edit(bench->desk, "paid", change_paid, NULL, note));
    size_t boxes = desk_model(bench->desk)->boxes.count;
    size_t layers = desk_model(bench->desk)->layers.count;
    size_t joins = desk_model(bench->desk)->joins.count;
    int64_t screws = desk_plan(bench->desk)->tally.screws;
    DONE(desk_copy_build(bench->desk, bench->builds[0], "Second wing headboard", note));
    const struct model *copy = desk_model(bench->desk);
    assert_string_equal(copy->build.name, "Second wing headboard");
    assert_true(copy->build.key != bench->builds[0]);
    assert_int_equal(copy->build.state, STATE_IDEA);
    assert_int_equal(copy->build.budget, 48000);
    assert_int_equal(copy->boxes.count, boxes);
    assert_int_equal(copy->layers.count, layers);
    assert_int_equal(copy->joins.count, joins);
    assert_int_equal(desk_plan(bench->desk)->tally.screws, screws);
    assert_int_equal(copy->ticks.count, 0);
    assert_int_equal(copy->spends.count, 0);
}

static void a_copy_is_one_edit_and_its_change_leaves_the_other_alone(void **state)
{
    struct bench *bench = *state;
    char label[STORE_LABEL];
    size_t count;
    const struct store_build *builds;
    DONE(desk_copy_build(bench->desk, bench->builds[0], "B", note));
    int64_t box = desk_model(bench->desk)->boxes.at[0].key;
    DONE(desk_set(bench->desk, ENTITY_box, box, "width", "40 in", note));
    DONE(desk_take_up(bench->desk, bench->builds[0], note));
    assert_int_not_equal(desk_model(bench->desk)->boxes.at[0].width, 40 * LENGTH_INCH);
    DONE(desk_undo(bench->desk, label, note));
    DONE(desk_undo(bench->desk, label, note));
    assert_string_equal(label, "copy: B");
    DONE(desk_builds(bench->desk, &builds, &count, note));
    assert_int_equal(count, 1);
}

static void a_copy_needs_a_name_of_its_own(void **state)
{
    struct bench *bench = *state;
    struct fault_note note;
    assert_int_equal(desk_copy_build(bench->desk, bench->builds[0], "Wing headboard", &note),
                     FAULT_DUPLICATE);
    assert_int_equal(desk_copy_build(bench->desk, bench->builds[0], "", &note), FAULT_MISSING);
    assert_int_equal(desk_model(bench->desk)->build.key, bench->builds[0]);
}

/* ---- side by side ---- */

static void a_copy_differs_in_nothing_until_something_is_changed(void **state)
{
    struct bench *bench = *state;
    struct desk_compare *compare = NULL;
    int64_t builds[2] = {bench->builds[0]};
    DONE(desk_copy_build(bench->desk, bench->builds[0], "B", note));
    builds[1] = desk_model(bench->desk)->build.key;
    DONE(desk_compare_begin(&compare, bench->desk, builds, 2, note));
    for (const struct figure *figure = plan_figures; figure->key; figure++)
        assert_false(figure_differs(figure, desk_compare_plans(compare), 2));
    desk_compare_free(compare);
    DONE(desk_set(bench->desk, ENTITY_build, 0, "budget", "500", note));
    DONE(desk_compare_begin(&compare, bench->desk, builds, 2, note));
    assert_true(figure_differs(figure_named("left"), desk_compare_plans(compare), 2));
    assert_false(figure_differs(figure_named("estimate"), desk_compare_plans(compare), 2));
    desk_compare_free(compare);
}

static void a_figure_is_the_plans(void **state)
{
    struct bench *bench = *state;
    struct desk_compare *compare = NULL;
    DONE(desk_compare_begin(&compare, bench->desk, &bench->builds[0], 1, note));
    const struct plan *plan = desk_compare_plans(compare)[0];
    assert_int_equal(figure_named("estimate")->of(plan), desk_plan(bench->desk)->cost.estimate);
    assert_false(figure_named("ready_made")->known(plan));
    desk_compare_free(compare);
}

/* ---- otherwise ---- */

/* The same by hand: the other offers of the stock taken out of the workshop. */
static int64_t cost_with_alone(struct bench *bench, const char *stock, const struct offer *kept)
{
    int64_t key = model_key_named(desk_model(bench->desk), ENTITY_stock, stock);
    int64_t keep = kept->key;
    char label[STORE_LABEL];
    int edits = 0;
    for (size_t i = desk_model(bench->desk)->offers.count; i-- > 0;) {
        const struct offer *offer = &desk_model(bench->desk)->offers.at[i];
        if (offer->stock != key || offer->key == keep)
            continue;
        DONE(desk_delete(bench->desk, ENTITY_offer, offer->key, note));
        edits++;
    }
    int64_t cost = desk_plan(bench->desk)->cost.estimate;
    for (; edits > 0; edits--)
        DONE(desk_undo(bench->desk, label, note));
    return cost;
}

/* The example has one length of stick and one size of sheet: another of each, dearer by the foot.
 */
static enum fault change_offers(struct model *draft, void *context, struct fault_note *note)
{
    (void)context;
    (void)note;
    for (size_t i = 0; i < draft->stocks.count; i++) {
        int64_t kind = draft->stocks.at[i].kind;
        if (kind != STOCK_STICK && kind != STOCK_SHEET)
            continue;
        struct offer *offer = MODEL_ADD(draft, offer);
        offer->stock = draft->stocks.at[i].key;
        offer->length = (kind == STOCK_STICK ? 120 : 48) * LENGTH_INCH;
        offer->width = kind == STOCK_STICK ? 0 : 48 * LENGTH_INCH;
        offer->price = kind == STOCK_STICK ? 590 : 2100;
    }
    return FAULT_NONE;
}

static void size_text(char *text, size_t size, const struct stock *stock, const struct offer *offer)
{
    char length[QUANTITY_TEXT];
    char width[QUANTITY_TEXT];
    quantity_print_unit(length, QUANTITY_LENGTH, UNITS_INCH, offer->length);
    quantity_print_unit(width, QUANTITY_LENGTH, UNITS_INCH, offer->width);
    snprintf(text, size, "%s: %s%s%s alone", stock->name, length, offer->width ? " x " : "",
             offer->width ? width : "");
}

static void each_size_alone_costs_what_it_does_by_hand(void **state)
{
    struct bench *bench = *state;
    struct arena arena;
    const struct otherwise *ways = NULL;
    size_t count = 0, found = 0;
    arena_init(&arena);
    DONE(desk_edit(bench->desk, "offers", change_offers, NULL, note));
    assert_int_equal(desk_otherwise(desk_plan(bench->desk), &arena, &ways, &count), FAULT_NONE);
    for (size_t k = 0; k < desk_model(bench->desk)->offers.count; k++) {
        const struct offer offer = desk_model(bench->desk)->offers.at[k];
        const struct stock *stock = MODEL_FIND(desk_model(bench->desk), stock, offer.stock);
        char text[200];
        size_text(text, sizeof text, stock, &offer);
        for (size_t i = 0; i < count; i++) {
            if (strcmp(ways[i].text, text) != 0)
                continue;
            found++;
            assert_int_equal(ways[i].cost, cost_with_alone(bench, stock->name, &offer));
        }
    }
    assert_int_equal(found, 4);
    arena_release(&arena);
}

int main(void)
{
#define CASE(name) cmocka_unit_test_setup_teardown(name, begin, bench_end)
    const struct CMUnitTest tests[] = {
        CASE(a_copy_has_all_that_was_entered_and_nothing_that_was_done),
        CASE(a_copy_is_one_edit_and_its_change_leaves_the_other_alone),
        CASE(a_copy_needs_a_name_of_its_own),
        CASE(a_copy_differs_in_nothing_until_something_is_changed),
        CASE(a_figure_is_the_plans),
        CASE(each_size_alone_costs_what_it_does_by_hand),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
