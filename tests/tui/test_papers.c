/* Layouts, cloth and papers: what is cut, how the search for less waste is told, what is printed.
 */
#include "kept.h"
#include "stage.h"

#include "plan/cloth_ways.h"

#include <limits.h>
#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

/* ---- cutting ---- */

static void each_stick_and_sheet_is_shown_with_its_cuts(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "k");
    assert_shown(stage, "2x3 stud  1 of 10");
    assert_shown(stage, "mark 60-1/4");
    stage_press(stage, "/ 'plywood 1/2  2' Enter");
    assert_shown(stage, "L-P1 (left)");
    assert_not_shown(stage, "cut 1:");
    stage_press(stage, "Right Right");
    assert_shown(stage, "cut 1:");
    stage_press(stage, "Left Left");
    assert_not_shown(stage, "cut 1:");
}

static void the_search_for_less_waste_is_told_until_it_ends(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "k");
    assert_shown(stage, "looking for less waste: 2x3 stud, 1 of ");
    stage_rest(stage);
    assert_not_shown(stage, "looking for less waste");
}

static void a_search_that_was_asked_for_is_stopped_by_esc(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "k");
    assert_shown(stage, "looking for less waste");
    stage_press(stage, "Enter Down Up");
    assert_shown(stage, "0 %; Esc stops it");
    stage_press(stage, "Esc");
    assert_shown(stage, "stopped; what was found by then is in the plan");
    assert_not_shown(stage, "Esc stops it");
    stage_press(stage, "Esc");
    assert_shown(stage, "boxes, layers, joins");
}

static void layouts_are_taken_and_given_back_with_space(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "k Space");
    assert_shown(stage, "taken: so it is cut, as long as its parts stay the same");
    assert_shown(stage, "as it was taken; Space gives it back");
    stage_press(stage, "Space");
    assert_shown(stage, "given back");
    assert_not_shown(stage, "as it was taken");
}

static void a_build_with_nothing_to_cut_says_so(void **state)
{
    struct stage *stage = *state;
    struct fault_note note = {0};
    stage_take_up(stage, "Wing headboard");
    while (desk_model(stage->desk)->boxes.count > 0)
        assert_int_equal(
            desk_delete(stage->desk, ENTITY_box, desk_model(stage->desk)->boxes.at[0].key, &note),
            FAULT_NONE);
    stage_press(stage, "k");
    assert_shown(stage, "Nothing has to be cut yet");
}

/* ---- cloth ---- */

static enum fault name_at_length(struct model *draft, void *context, struct fault_note *note)
{
    struct box *box = model_find(draft, ENTITY_box, model_key_named(draft, ENTITY_box, "C"));

    (void)context;
    (void)note;
    box->name = "Centre, long as sofa";
    return FAULT_NONE;
}

/* The name of the way is cut, not its figures; it stands in full below the list. */
static void every_way_to_take_cloth_shows_its_money(void **state)
{
    static const int columns[] = {VIEW_LEAST_COLUMNS, 80, 120};
    struct stage *stage = *state;
    const struct cloth_way *ways;
    size_t count;
    char printed[MONEY_TEXT];
    const struct plan *plan;
    struct arena arena; /* the stage's own is emptied at each showing */

    arena_init(&arena);
    stage_take_up(stage, "Wing headboard");
    assert_int_equal(desk_edit(stage->tui.desk, "name", name_at_length, NULL, NULL), FAULT_NONE);
    plan = desk_plan(stage->tui.desk);
    assert_int_equal(cloth_ways(plan, &arena, &ways, &count), FAULT_NONE);
    assert_true(count > 2);
    stage_press(stage, "e End");
    for (size_t i = 0; i < sizeof columns / sizeof *columns; i++) {
        const char *shown = stage_show(stage, 24, columns[i]);

        for (size_t k = 0; k < count; k++) {
            money_print(printed, model_currency(plan->facts), ways[k].cost);
            if (!ways[k].barred && !strstr(shown, printed))
                fail_msg("%s, %s, is not to be seen:\n%s", ways[k].cure.text, printed, shown);
        }
        assert_int_equal(columns[i] < 100, strstr(shown, "...") != NULL);
    }
    arena_release(&arena);
    stage_press(stage, "Home Down Down");
    assert_shown(stage, "sofa cover: one seam down the middle");
}

/* ---- papers ---- */

static void type_file(struct stage *stage, const char *ending)
{
    char keys[PATH_MAX + 40];

    snprintf(keys, sizeof keys, "p Enter Ctrl-U '%s%s' Enter", stage->place.path, ending);
    stage_press(stage, keys);
    stage_rest(stage);
}

static void papers_replace_a_file_only_by_another_key(void **state)
{
    struct stage *stage = *state;
    char path[PATH_MAX + 8];
    struct text written;

    stage_go(stage, "");
    type_file(stage, ".txt");
    assert_shown(stage, "is written");
    snprintf(path, sizeof path, "%s.txt", stage->place.path);
    file_put(path, "");
    text_init(&written);
    type_file(stage, ".txt");
    assert_shown(stage, "Space replaces it");
    file_take(&written, path);
    assert_int_equal(written.length, 0);
    stage_press(stage, "Space");
    assert_shown(stage, "is written");
    file_take(&written, path);
    assert_true(written.length > 0);
    text_release(&written);
    assert_int_equal(unlink(path), 0);
}

static void papers_wait_for_the_search_and_can_be_called_off(void **state)
{
    struct stage *stage = *state;
    char path[PATH_MAX + 8];
    char keys[PATH_MAX + 40];
    snprintf(path, sizeof path, "%s.txt", stage->place.path);
    snprintf(keys, sizeof keys, "p Enter Ctrl-U '%s' Enter", path);
    stage_go(stage, keys);
    assert_shown(stage, "looking for less waste: 2x3 stud, 1 of ");
    assert_shown(stage, "Enter prints at once, Esc not at all");
    stage_press(stage, "Esc");
    assert_shown(stage, "nothing was printed");
    stage_rest(stage);
    assert_int_equal(access(path, F_OK), -1);
    stage_press(stage, "Enter Enter");
    assert_shown(stage, "is written");
    assert_int_equal(access(path, F_OK), 0);
}

static void papers_are_printed_at_once_by_a_second_enter(void **state)
{
    struct stage *stage = *state;
    char keys[PATH_MAX + 40];
    snprintf(keys, sizeof keys, "p Enter Ctrl-U '%s.txt' Enter Enter", stage->place.path);
    stage_go(stage, keys);
    assert_shown(stage, "is written");
}

static void papers_of_an_unknown_ending_are_refused(void **state)
{
    struct stage *stage = *state;

    stage_go(stage, "");
    type_file(stage, ".doc");
    assert_shown(stage, "ends in .pdf, .svg or .txt");
}

int main(void)
{
#define CASES(name) cmocka_unit_test_setup_teardown(name, stage_begin_with_cases, stage_end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        CASES(each_stick_and_sheet_is_shown_with_its_cuts),
        CASES(the_search_for_less_waste_is_told_until_it_ends),
        CASES(a_search_that_was_asked_for_is_stopped_by_esc),
        CASES(layouts_are_taken_and_given_back_with_space),
        CASES(a_build_with_nothing_to_cut_says_so),
        CASES(every_way_to_take_cloth_shows_its_money),
        CASES(papers_replace_a_file_only_by_another_key),
        CASES(papers_wait_for_the_search_and_can_be_called_off),
        CASES(papers_are_printed_at_once_by_a_second_enter),
        CASES(papers_of_an_unknown_ending_are_refused),
    };
    int failed = cmocka_run_group_tests_name("papers", tests, NULL, NULL);
    return failed ? 1 : 0;
}
