/* Changing a build with keys: previews, refusals, undo, adding, copying, deleting. */
#include "stage.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static const struct box *box_named(const struct stage *stage, const char *name)
{
    const struct model *model = desk_model(stage->desk);
    return MODEL_FIND(model, box, model_key_named(model, ENTITY_box, name));
}

/* The form of box C, its width selected. */
static void open_width(struct stage *stage)
{
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "Enter Down Down");
}

/* ---- fields ---- */

static void each_key_shows_what_it_would_change(void **state)
{
    struct stage *stage = *state;
    open_width(stage);
    stage_press(stage, "Enter '8'");
    assert_shown(stage, "cost ");
    stage_press(stage, "'0'");
    assert_shown(stage, "(+");
    assert_int_equal(box_named(stage, "C")->width, 63 * LENGTH_INCH);
}

static void esc_leaves_the_field_as_it_was(void **state)
{
    struct stage *stage = *state;
    open_width(stage);
    unsigned serial = desk_serial(stage->desk);
    stage_press(stage, "Enter '80' Esc");
    assert_not_shown(stage, "(+");
    assert_shown(stage, "63 in");
    assert_int_equal(desk_serial(stage->desk), serial);
}

static void enter_takes_the_field_and_goes_to_the_next(void **state)
{
    struct stage *stage = *state;
    open_width(stage);
    stage_press(stage, "Enter '80' Enter");
    assert_int_equal(box_named(stage, "C")->width, 80 * LENGTH_INCH);
    assert_shown(stage, "back to front");
}

static void a_digit_begins_a_field_at_once(void **state)
{
    struct stage *stage = *state;
    open_width(stage);
    stage_press(stage, "'194 cm' Enter");
    assert_int_equal(box_named(stage, "C")->width, 1940 * LENGTH_MM);
}

static void letters_are_text_while_a_field_is_typed(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "Enter End Enter 'quick?adm' Enter");
    assert_false(stage->over);
    assert_string_equal(box_named(stage, "C")->note, "quick?adm");
}

static void a_refused_value_stays_with_its_reason(void **state)
{
    struct stage *stage = *state;
    open_width(stage);
    unsigned serial = desk_serial(stage->desk);
    stage_press(stage, "Enter '80 acres' Enter");
    assert_shown(stage, "80 acres");
    assert_shown(stage, "a length is in inches (in), ft, yd, mm, cm or m");
    assert_int_equal(box_named(stage, "C")->width, 63 * LENGTH_INCH);
    assert_int_equal(desk_serial(stage->desk), serial);
    stage_press(stage, "Backspace Backspace Backspace Backspace Backspace Backspace Enter");
    assert_int_equal(box_named(stage, "C")->width, 80 * LENGTH_INCH);
}

static void a_value_out_of_range_says_the_range(void **state)
{
    struct stage *stage = *state;
    open_width(stage);
    stage_press(stage, "Enter '9999' Enter");
    assert_shown(stage, "236 in");
    assert_int_equal(box_named(stage, "C")->width, 63 * LENGTH_INCH);
}

static void a_choice_is_turned_seen_and_taken(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "Enter Down Right");
    assert_shown(stage, "crate");
    assert_int_equal(box_named(stage, "C")->frame, FRAME_LADDER);
    stage_press(stage, "Right Enter");
    assert_int_equal(box_named(stage, "C")->frame, FRAME_BOARD);
}

static void a_choice_is_taken_by_its_first_letters(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "Enter Down Enter 'cr' Enter");
    assert_int_equal(box_named(stage, "C")->frame, FRAME_CRATE);
}

static void a_paste_goes_into_the_field_that_is_open(void **state)
{
    struct stage *stage = *state;
    open_width(stage);
    stage_press(stage, "Enter");
    driver_paste(&stage->tui, "72\n");
    stage_press(stage, "Enter");
    assert_int_equal(box_named(stage, "C")->width, 72 * LENGTH_INCH);
}

static void a_paste_outside_a_field_does_nothing(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    unsigned serial = desk_serial(stage->desk);
    driver_paste(&stage->tui, "dq\n");
    assert_shown(stage, "pasted text goes into a field");
    assert_int_equal(desk_serial(stage->desk), serial);
}

/* An edit on top of what another program wrote meanwhile is made on that. */
static void an_edit_meets_what_another_program_wrote(void **state)
{
    struct stage *stage = *state;
    open_width(stage);
    stage_press(stage, "Enter '80'");
    struct desk *other = desk_at(&stage->place);
    DONE(desk_take_up_named(other, "Wing headboard", note));
    int64_t key = model_key_named(desk_model(other), ENTITY_box, "C");
    DONE(desk_set(other, ENTITY_box, key, "height", "60 in", note));
    desk_close(other);
    stage_press(stage, "Enter");
    assert_int_equal(box_named(stage, "C")->width, 80 * LENGTH_INCH);
    assert_int_equal(box_named(stage, "C")->height, 60 * LENGTH_INCH);
}

/* ---- undo ---- */

static void undo_and_redo_work_on_every_screen(void **state)
{
    static const char *const screens[] = {"", "F5", "F6", "F7", "F8", "F9", "F10", "F1"};
    struct stage *stage = *state;
    open_width(stage);
    stage_press(stage, "Enter '80' Enter Esc");
    for (size_t i = 0; i < sizeof screens / sizeof *screens; i++) {
        stage_press(stage, screens[i]);
        stage_press(stage, "F11");
        assert_shown(stage, "taken back: width of C");
        assert_int_equal(box_named(stage, "C")->width, 63 * LENGTH_INCH);
        stage_press(stage, "F12");
        assert_shown(stage, "done again: width of C");
        assert_int_equal(box_named(stage, "C")->width, 80 * LENGTH_INCH);
    }
}

static void undo_reaches_over_a_pause(void **state)
{
    struct stage *stage = *state;
    open_width(stage);
    stage_press(stage, "Enter '80' Enter");
    stage_again(stage);
    stage_press(stage, "u");
    assert_int_equal(box_named(stage, "C")->width, 63 * LENGTH_INCH);
}

static void undo_of_another_build_takes_that_one_up(void **state)
{
    struct stage *stage = *state;
    open_width(stage);
    stage_press(stage, "Enter '80' Enter Esc Esc");
    stage_take_up(stage, "Tufted ottoman");
    stage_press(stage, "F11");
    assert_shown(stage, "Wing headboard > boxes, layers, joins");
}

/* ---- items ---- */

static void a_box_is_added_and_its_fields_are_open(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "F2 Enter");
    assert_shown(stage, "box: A");
    assert_non_null(box_named(stage, "A"));
}

static void what_is_added_to_a_box_lies_on_it(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    size_t count = desk_model(stage->desk)->layers.count;
    stage_press(stage, "F2 Down Down Enter");
    const struct model *model = desk_model(stage->desk);
    assert_int_equal(model->layers.count, count + 1);
    assert_int_equal(model->layers.at[count].box, box_named(stage, "C")->key);
}

static void a_box_is_copied_with_all_on_it(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    size_t facings = desk_model(stage->desk)->facings.count;
    stage_press(stage, "F3");
    assert_non_null(box_named(stage, "C 2"));
    assert_int_equal(desk_model(stage->desk)->facings.count, facings + 3);
}

static void a_box_gets_its_mirror_image_by_a_key(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    size_t facings = desk_model(stage->desk)->facings.count;
    stage_press(stage, "x");
    assert_non_null(box_named(stage, "C 2"));
    assert_int_equal(box_named(stage, "C 2")->mirror_of, box_named(stage, "C")->key);
    assert_int_equal(desk_model(stage->desk)->facings.count, facings + 3);
    stage_press(stage, "u Down x");
    assert_null(box_named(stage, "C 2"));
}

static void what_nothing_hangs_on_is_deleted_at_once(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "Del");
    assert_null(box_named(stage, "C"));
    stage_press(stage, "F11");
    assert_non_null(box_named(stage, "C"));
}

static void what_is_worked_on_is_deleted_by_another_key(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    char frame[64];
    snprintf(frame, sizeof frame, "frame:%lld", (long long)box_named(stage, "C")->key);
    tick_until(stage->desk, frame);
    stage_press(stage, "Del");
    assert_shown(stage, "work done or money spent hangs on it");
    stage_press(stage, "Del Up");
    assert_non_null(box_named(stage, "C"));
    stage_press(stage, "Down Del Enter");
    assert_null(box_named(stage, "C"));
}

/* Not even undo acts: what it would take back is an edit before the question. */
static void a_key_that_keeps_does_nothing_else(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "a Enter Esc Esc Home Del u");
    assert_shown(stage, "kept as it was");
    stage_press(stage, "u");
    assert_shown(stage, "taken back");
}

static void a_build_is_deleted_by_another_key_and_comes_back(void **state)
{
    struct stage *stage = *state;
    stage_press(stage, "Del Down");
    assert_shown(stage, "Wing headboard");
    stage_press(stage, "Home Del Enter");
    assert_shown(stage, "Wing headboard is deleted");
    stage_press(stage, "F11");
    stage_press(stage, "Esc");
    assert_shown(stage, "Wing headboard        ready");
}

/* The question was about one build; another program's change must not turn it on the next, so it
 * lapses. */
static void a_question_lapses_when_another_program_changes_the_list(void **state)
{
    struct stage *stage = *state;
    const struct store_build *builds;
    size_t count;
    DONE(desk_builds(stage->desk, &builds, &count, note));
    assert_int_equal(count, 3);
    const int64_t keys[] = {builds[0].key, builds[1].key, builds[2].key};
    stage_press(stage, "Home Down Del");
    assert_shown(stage, "Enter");
    struct desk *other = desk_at(&stage->place);
    DONE(desk_delete_build(other, keys[0], note));
    desk_close(other);
    assert_true(driver_idle(&stage->tui));
    stage_press(stage, "Enter");
    DONE(desk_take_up(stage->desk, 0, note));
    DONE(desk_builds(stage->desk, &builds, &count, note));
    assert_int_equal(count, 2);
    assert_int_equal(builds[0].key, keys[1]);
    assert_int_equal(builds[1].key, keys[2]);
}

/* ---- new builds ---- */

static void a_build_is_made_in_few_keys(void **state)
{
    struct stage *stage = *state;
    stage_press(stage, "F2 Down Down Enter Enter Enter Enter Enter Enter");
    assert_shown(stage, "boxes, layers, joins");
    assert_int_equal(desk_model(stage->desk)->boxes.count, 3);
}

static void units_are_taken_by_a_letter_or_turned(void **state)
{
    struct stage *stage = *state;
    stage_press(stage, "F2 Enter Enter m Enter");
    assert_shown(stage, "2100 mm");
    stage_press(stage, "Up Right");
    assert_shown(stage, "84 in");
}

static void an_answer_out_of_range_waits_for_a_better_one(void **state)
{
    struct stage *stage = *state;
    stage_press(stage, "F2 Down Down Enter 'Guest bed' Enter Enter '4' Enter");
    assert_shown(stage, "it has to lie between");
    stage_press(stage, "Backspace '48' Enter Enter Enter");
    assert_shown(stage, "Guest bed > boxes, layers, joins");
}

static void a_second_piece_of_a_kind_gets_a_name_of_its_own(void **state)
{
    struct stage *stage = *state;
    stage_press(stage, "F2 Enter Enter Enter Enter Enter Enter Enter Enter Esc F2 Enter");
    assert_shown(stage, "Corner banquette 2");
}

int main(void)
{
#define EMPTY(name) cmocka_unit_test_setup_teardown(name, stage_begin, stage_end)
#define CASES(name) cmocka_unit_test_setup_teardown(name, stage_begin_with_cases, stage_end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        CASES(each_key_shows_what_it_would_change),
        CASES(esc_leaves_the_field_as_it_was),
        CASES(enter_takes_the_field_and_goes_to_the_next),
        CASES(a_digit_begins_a_field_at_once),
        CASES(letters_are_text_while_a_field_is_typed),
        CASES(a_refused_value_stays_with_its_reason),
        CASES(a_value_out_of_range_says_the_range),
        CASES(a_choice_is_turned_seen_and_taken),
        CASES(a_choice_is_taken_by_its_first_letters),
        CASES(a_paste_goes_into_the_field_that_is_open),
        CASES(a_paste_outside_a_field_does_nothing),
        CASES(an_edit_meets_what_another_program_wrote),
        CASES(undo_and_redo_work_on_every_screen),
        CASES(undo_reaches_over_a_pause),
        CASES(undo_of_another_build_takes_that_one_up),
        CASES(a_box_is_added_and_its_fields_are_open),
        CASES(what_is_added_to_a_box_lies_on_it),
        CASES(a_box_is_copied_with_all_on_it),
        CASES(a_box_gets_its_mirror_image_by_a_key),
        CASES(what_nothing_hangs_on_is_deleted_at_once),
        CASES(what_is_worked_on_is_deleted_by_another_key),
        CASES(a_key_that_keeps_does_nothing_else),
        CASES(a_build_is_deleted_by_another_key_and_comes_back),
        CASES(a_question_lapses_when_another_program_changes_the_list),
        EMPTY(a_build_is_made_in_few_keys),
        EMPTY(units_are_taken_by_a_letter_or_turned),
        EMPTY(an_answer_out_of_range_waits_for_a_better_one),
        EMPTY(a_second_piece_of_a_kind_gets_a_name_of_its_own),
    };
    int failed = cmocka_run_group_tests_name("editing", tests, NULL, NULL);
    return failed ? 1 : 0;
}
