/*
 * Several builds of the demo bought and cut together: one list, one cutting plan, what each build
 * is charged to the cent, and what it saves.
 */
#include "shopping.h"

#include "cut/verify.h"
#include "desk/trip.h"
#include "paper/sheets.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#define DAY "2026-11-25"

static int begin(void **state)
{
    static const char *const names[] = {"workshop", "headboard", "corner", "banquette", NULL};
    static struct shopping shopping;
    bench_open(&shopping.bench, names);
    DONE(desk_take_up(shopping.bench.desk, 0, note));
    shopping_begin(&shopping);
    *state = &shopping;
    return 0;
}

static size_t first_cut_line(const struct shopping *shopping)
{
    for (size_t i = 0; i < trip_of(shopping)->lines.count; i++) {
        if (trip_of(shopping)->lines.at[i].cut)
            return i;
    }
    fail_msg("nothing is cut together");
    return 0;
}

/* ---- money ---- */

static void three_builds_together_are_cheaper_than_apart(void **state)
{
    const struct trip *trip = trip_of(*state);
    int64_t apart = 0;
    for (size_t i = 0; i < trip->builds.count; i++)
        apart += trip->builds.at[i].plan->cost.estimate;
    assert_int_equal(trip->apart, apart);
    assert_true(trip->till < apart);
    assert_true(trip->cuts.count >= 3);
    for (size_t i = 0; i < trip->cuts.count; i++)
        assert_true(trip->cuts.at[i].together < trip->cuts.at[i].apart);
}

static void the_charges_add_up_to_the_till_to_the_cent(void **state)
{
    const struct trip *trip = trip_of(*state);
    int64_t lines = 0;
    int64_t builds = 0;
    for (size_t i = 0; i < trip->lines.count; i++) {
        int64_t shares = 0;
        for (size_t build = 0; build < trip->builds.count; build++) {
            int64_t till;
            int64_t amount;
            trip_line_of(&trip->lines.at[i], build, &till, &amount);
            shares += till;
        }
        assert_int_equal(shares, trip->lines.at[i].till);
        lines += shares;
    }
    for (size_t i = 0; i < trip->builds.count; i++)
        builds += trip->builds.at[i].till;
    assert_int_equal(lines, trip->till);
    assert_int_equal(builds, trip->till);
}

/* What a build takes of the stock, from its own parts: length with the kerf, or area. */
static double use_of(const struct plan *plan, int64_t stock, const struct cut_job *job)
{
    double use = 0;
    for (size_t i = 0; i < plan->parts.count; i++) {
        const struct part *part = &plan->parts.at[i];
        if (part->stock != stock)
            continue;
        use += part->width && job->sizes[0].width ? (double)part->length * (double)part->width
                                                  : (double)(part->length + job->kerf);
    }
    return use;
}

/* Each build pays of what is cut together what it uses of it, within a cent for each share. */
static void what_is_cut_together_is_charged_by_use(void **state)
{
    const struct trip *trip = trip_of(*state);
    size_t looked_at = 0;
    for (size_t i = 0; i < trip->lines.count; i++) {
        const struct trip_line *line = &trip->lines.at[i];
        double uses[3] = {0};
        double all = 0;
        if (!line->cut)
            continue;
        for (size_t k = 0; k < line->cut->users.count; k++) {
            size_t build = line->cut->users.at[k].build;
            uses[build] = use_of(trip->builds.at[build].plan, line->stock, &line->cut->job.job);
            all += uses[build];
        }
        for (size_t build = 0; build < 3; build++) {
            int64_t till;
            int64_t amount;
            trip_line_of(line, build, &till, &amount);
            double due = (double)line->till * uses[build] / all;
            assert_true((double)till > due - 3 && (double)till < due + 3);
            looked_at++;
        }
    }
    assert_true(looked_at > 3);
}

/* ---- cutting ---- */

/* The verifier shares no code with what lays out. */
static void every_layout_for_all_is_sound(void **state)
{
    const struct trip *trip = trip_of(*state);
    assert_true(trip->cuts.count > 0);
    for (size_t i = 0; i < trip->cuts.count; i++) {
        const struct pool_job *job = &trip->cuts.at[i].job;
        struct arena arena;
        jmp_buf escape;
        arena_init(&arena);
        if (setjmp(escape))
            fail_msg("memory");
        arena.escape = &escape;
        assert_string_equal(
            cut_flaw_words(layout_verify(job->way, &job->job, &job->layout, &arena)),
            cut_flaw_words(CUT_FLAW_NONE));
        arena_release(&arena);
    }
}

static size_t parts_of_stock(const struct plan *plan, int64_t stock)
{
    size_t count = 0;
    for (size_t i = 0; i < plan->parts.count; i++)
        count += plan->parts.at[i].stock == stock;
    return count;
}

static void the_cutting_plan_holds_every_part_of_every_build(void **state)
{
    const struct trip *trip = trip_of(*state);
    assert_true(trip->cuts.count > 0);
    for (size_t i = 0; i < trip->cuts.count; i++) {
        const struct trip_cut *cut = &trip->cuts.at[i];
        size_t parts = 0;
        for (size_t k = 0; k < cut->users.count; k++)
            parts += parts_of_stock(trip->builds.at[cut->users.at[k].build].plan, cut->stock);
        assert_int_equal(cut->job.job.part_count, parts);
        assert_int_equal(cut->job.layout.places.count, parts);
    }
}

/* What is bought holds what is cut from: as many of each size, or the length of the roll. */
static void as_much_is_bought_as_is_cut_from(void **state)
{
    const struct trip *trip = trip_of(*state);
    assert_true(trip->cuts.count > 0);
    for (size_t i = 0; i < trip->cuts.count; i++) {
        const struct trip_cut *cut = &trip->cuts.at[i];
        int64_t blanks = 0;
        int64_t bought = 0;
        int64_t used = 0;
        for (size_t k = 0; k < cut->job.layout.blanks.count; k++) {
            const struct cut_blank *blank = &cut->job.layout.blanks.at[k];
            bool shelf = cut->job.job.sizes[blank->size].limit != CUT_ANY;
            blanks += !shelf;
            used += shelf ? 0 : blank->used;
        }
        for (size_t k = 0; k < cut->sizes.count; k++)
            bought += cut->sizes.at[k].packs;
        if (cut->job.way == CUT_ROLLS)
            assert_true(cut->length >= used);
        else
            assert_true(bought >= blanks);
    }
}

/* ---- paying ---- */

static int64_t spent(struct shopping *shopping)
{
    int64_t sum = 0;
    for (size_t i = 0; i < 3; i++) {
        DONE(desk_take_up(shopping->bench.desk, shopping->bench.builds[i], note));
        sum += desk_plan(shopping->bench.desk)->cost.spent;
    }
    DONE(desk_take_up(shopping->bench.desk, 0, note));
    return sum;
}

static void paying_for_what_is_cut_together_is_one_edit(void **state)
{
    struct shopping *shopping = *state;
    char label[STORE_LABEL];
    int64_t before = spent(shopping);
    size_t line = first_cut_line(shopping);
    int64_t till = trip_of(shopping)->till;
    DONE(desk_trip_pay(shopping->bench.desk, shopping->trip, line, DAY, "40.01", note));
    assert_int_equal(spent(shopping) - before, 4001);
    shopping_begin(shopping);
    assert_true(trip_of(shopping)->lines.at[line].cut && trip_of(shopping)->lines.at[line].paid);
    assert_int_equal(trip_of(shopping)->lines.at[line].amount, 4001);
    assert_int_equal(trip_of(shopping)->till, till);
    DONE(desk_undo(shopping->bench.desk, label, note));
    assert_int_equal(spent(shopping), before);
}

/* Each build's own papers tell that another layout than theirs holds; those of the trip do not. */
static void papers_tell_what_was_bought_to_be_cut_together(void **state)
{
    struct shopping *shopping = *state;
    size_t line = first_cut_line(shopping);
    const struct trip_cut *cut = trip_of(shopping)->lines.at[line].cut;
    size_t users[8], count = cut->users.count;
    struct text text;
    assert_true(count >= 2 && count <= 8);
    for (size_t i = 0; i < count; i++)
        users[i] = cut->users.at[i].build;
    text_init(&text);
    sheet_trip_cutting(&text, trip_of(shopping));
    assert_null(strstr(text_string(&text), TRIP_TOGETHER));
    DONE(desk_trip_pay(shopping->bench.desk, shopping->trip, line, DAY, NULL, note));
    for (size_t i = 0; i < count; i++) {
        const char *other = trip_of(shopping)->builds.at[users[(i + 1) % count]].model->build.name;
        const char *told;
        DONE(desk_take_up(shopping->bench.desk, shopping->bench.builds[users[i]], note));
        text_clear(&text);
        sheet_cutting(&text, desk_plan(shopping->bench.desk));
        told = strstr(text_string(&text), "Bought to be " TRIP_TOGETHER);
        assert_non_null(told);
        assert_non_null(strstr(told, other));
    }
    text_release(&text);
}

static void paying_is_taken_back_in_every_build(void **state)
{
    struct shopping *shopping = *state;
    int64_t before = spent(shopping);
    size_t line = first_cut_line(shopping);
    DONE(desk_trip_pay(shopping->bench.desk, shopping->trip, line, DAY, NULL, note));
    assert_int_equal(spent(shopping) - before, trip_of(shopping)->lines.at[line].till);
    shopping_begin(shopping);
    DONE(desk_trip_unpay(shopping->bench.desk, shopping->trip, line, note));
    assert_int_equal(spent(shopping), before);
}

/* ---- who takes part ---- */

static bool is_cut_together(const struct shopping *shopping, const char *stock)
{
    const struct trip *trip = trip_of(shopping);
    int64_t key = model_key_named(trip->builds.at[0].model, ENTITY_stock, stock);
    for (size_t i = 0; i < trip->cuts.count; i++) {
        if (trip->cuts.at[i].stock == key)
            return true;
    }
    return false;
}

static enum fault change_shelf(struct model *draft, void *context, struct fault_note *note)
{
    struct leftover *left = MODEL_ADD(draft, leftover);
    (void)context;
    (void)note;
    left->stock = model_key_named(draft, ENTITY_stock, "2x3 stick");
    left->length = 60 * LENGTH_INCH;
    left->count = 2;
    left->kept_for = "Reading corner";
    return FAULT_NONE;
}

static void a_piece_kept_for_one_build_keeps_its_stock_apart(void **state)
{
    struct shopping *shopping = *state;
    assert_true(is_cut_together(shopping, "2x3 stick"));
    DONE(desk_edit(shopping->bench.desk, "kept", change_shelf, NULL, note));
    shopping_begin(shopping);
    assert_false(is_cut_together(shopping, "2x3 stick"));
}

/* The banquette's sticks are bought and cut. */
static void what_a_build_has_bought_is_not_bought_again(void **state)
{
    const struct trip *trip = trip_of(*state);
    for (size_t i = 0; i < trip->cuts.count; i++)
        for (size_t k = 0; k < trip->cuts.at[i].users.count; k++) {
            const struct model *model = trip->builds.at[trip->cuts.at[i].users.at[k].build].model;
            for (size_t m = 0; m < model->boughts.count; m++)
                assert_int_not_equal(model->boughts.at[m].stock, trip->cuts.at[i].stock);
        }
    assert_true(trip->builds.at[2].model->boughts.count > 0);
}

/* ---- taken ---- */

static size_t taken_cuts(const struct shopping *shopping)
{
    size_t count = 0;
    for (size_t i = 0; i < trip_of(shopping)->cuts.count; i++)
        count += trip_of(shopping)->cuts.at[i].job.taken;
    return count;
}

static void taking_is_one_edit_and_holds_in_any_order(void **state)
{
    struct shopping *shopping = *state;
    char label[STORE_LABEL];
    size_t cuts = trip_of(shopping)->cuts.count;
    int64_t till = trip_of(shopping)->till;
    assert_int_equal(taken_cuts(shopping), 0);
    DONE(desk_trip_take(shopping->bench.desk, shopping->trip, note));
    shopping_begin(shopping);
    assert_int_equal(taken_cuts(shopping), cuts);
    assert_int_equal(trip_of(shopping)->cuts.count, cuts);
    assert_int_equal(trip_of(shopping)->till, till);
    assert_int_equal(trip_of(shopping)->stale, 0);
    int64_t first = shopping->bench.builds[0];
    shopping->bench.builds[0] = shopping->bench.builds[2];
    shopping->bench.builds[2] = first;
    shopping_begin(shopping);
    assert_int_equal(taken_cuts(shopping), cuts);
    DONE(desk_undo(shopping->bench.desk, label, note));
    shopping_begin(shopping);
    assert_int_equal(taken_cuts(shopping), 0);
    assert_int_equal(trip_of(shopping)->stale, 0);
}

static void what_is_taken_stays_whatever_would_be_found_later(void **state)
{
    struct shopping *shopping = *state;
    DONE(desk_trip_take(shopping->bench.desk, shopping->trip, note));
    int64_t till = trip_of(shopping)->till;
    desk_trip_free(shopping->trip);
    shopping->trip = NULL;
    DONE(desk_trip_begin(&shopping->trip, shopping->bench.desk, shopping->bench.builds, 3, CUT_GOOD,
                         sheet_purchase_words, note));
    assert_int_equal(trip_of(shopping)->till, till);
    DONE(desk_trip_leave(shopping->bench.desk, shopping->trip, note));
    shopping_begin(shopping);
    assert_int_equal(taken_cuts(shopping), 0);
    assert_int_equal(desk_trip_leave(shopping->bench.desk, shopping->trip, &(struct fault_note){0}),
                     FAULT_REFUSED);
}

static enum fault change_box(struct model *draft, void *context, struct fault_note *note)
{
    (void)context;
    (void)note;
    draft->boxes.at[0].height += LENGTH_INCH;
    return FAULT_NONE;
}

static void what_does_not_hold_any_more_is_told_and_laid_out_anew(void **state)
{
    struct shopping *shopping = *state;
    struct text out;
    DONE(desk_trip_take(shopping->bench.desk, shopping->trip, note));
    DONE(desk_take_up(shopping->bench.desk, shopping->bench.builds[1], note));
    DONE(desk_edit(shopping->bench.desk, "higher", change_box, NULL, note));
    shopping_begin(shopping);
    assert_true(taken_cuts(shopping) < trip_of(shopping)->cuts.count);
    assert_true(trip_of(shopping)->stale > 0);
    text_init(&out);
    sheet_trip_cutting(&out, trip_of(shopping));
    assert_non_null(strstr(text_string(&out), "taken together does not hold"));
    text_release(&out);
}

/* A build's own layouts are taken and given back without those that it shares. */
static void a_builds_own_layouts_are_another_matter(void **state)
{
    struct shopping *shopping = *state;
    struct desk *desk = shopping->bench.desk;
    DONE(desk_trip_take(desk, shopping->trip, note));
    size_t cuts = trip_of(shopping)->cuts.count;
    DONE(desk_take_up(desk, shopping->bench.builds[1], note));
    assert_int_equal(desk_leave_layouts(desk, &(struct fault_note){0}), FAULT_REFUSED);
    DONE(desk_take_layouts(desk, note));
    DONE(desk_leave_layouts(desk, note));
    shopping_begin(shopping);
    assert_int_equal(taken_cuts(shopping), cuts);
}

static void one_build_alone_is_cut_as_it_is(void **state)
{
    struct shopping *shopping = *state;
    struct desk_trip *alone = NULL;
    DONE(desk_trip_begin(&alone, shopping->bench.desk, shopping->bench.builds, 1, CUT_QUICK,
                         sheet_purchase_words, note));
    assert_int_equal(desk_trip_of(alone)->cuts.count, 0);
    assert_int_equal(desk_trip_of(alone)->till, desk_trip_of(alone)->apart);
    desk_trip_free(alone);
}

int main(void)
{
#define CASE(name) cmocka_unit_test_setup_teardown(name, begin, shopping_end)
    const struct CMUnitTest tests[] = {
        CASE(three_builds_together_are_cheaper_than_apart),
        CASE(the_charges_add_up_to_the_till_to_the_cent),
        CASE(what_is_cut_together_is_charged_by_use),
        CASE(every_layout_for_all_is_sound),
        CASE(the_cutting_plan_holds_every_part_of_every_build),
        CASE(as_much_is_bought_as_is_cut_from),
        CASE(paying_for_what_is_cut_together_is_one_edit),
        CASE(papers_tell_what_was_bought_to_be_cut_together),
        CASE(paying_is_taken_back_in_every_build),
        CASE(a_piece_kept_for_one_build_keeps_its_stock_apart),
        CASE(what_a_build_has_bought_is_not_bought_again),
        CASE(taking_is_one_edit_and_holds_in_any_order),
        CASE(what_is_taken_stays_whatever_would_be_found_later),
        CASE(what_does_not_hold_any_more_is_told_and_laid_out_anew),
        CASE(a_builds_own_layouts_are_another_matter),
        CASE(one_build_alone_is_cut_as_it_is),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
