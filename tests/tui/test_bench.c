/* At the bench: ticking, the step card, spend, findings, trade values, the workshop, help. */
#include "stage.h"

#include "plan/cloth_ways.h"

#include <limits.h>
#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

static void go(struct stage *stage, const char *keys)
{
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, keys);
}

/* ---- order of work ---- */

static void the_order_begins_at_the_first_step_that_can_be_done(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5 Space Space Esc F5 Enter");
    assert_shown(stage, "Step 3 of");
}

static void space_ticks_and_goes_on(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5 Space");
    assert_int_equal(desk_model(stage->desk)->ticks.count, 1);
    assert_string_equal(desk_model(stage->desk)->ticks.at[0].at, "2026-11-25 09:00");
    assert_shown(stage, "[x]   1");
}

static void space_on_a_ticked_step_takes_the_tick_back(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5 Space Up Space");
    assert_int_equal(desk_model(stage->desk)->ticks.count, 0);
    assert_shown(stage, "the tick is taken back");
}

static void a_step_that_has_to_wait_says_so(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5 End Space");
    assert_int_equal(desk_model(stage->desk)->ticks.count, 0);
    assert_true(stage->tui.message_warns);
}

static void one_step_goes_to_the_next_and_back(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5 Enter");
    assert_shown(stage, "Step 1 of");
    stage_press(stage, "Left");
    assert_shown(stage, "Step 1 of");
    stage_press(stage, "Right Right Left");
    assert_shown(stage, "Step 2 of");
}

static void a_step_is_ticked_where_it_stands_large(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5 Enter Space");
    assert_int_equal(desk_model(stage->desk)->ticks.count, 1);
}

static void what_a_step_closes_stands_there_before_it_is_ticked(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    const struct plan *plan = desk_plan(stage->desk);
    size_t closing = 0;
    while (closing < plan->steps.count && !*plan->steps.at[closing].closes)
        closing++;
    assert_true(closing < plan->steps.count);
    stage_press(stage, "F5 Enter");
    for (size_t i = 0; i < closing; i++)
        stage_press(stage, "Right");
    assert_shown(stage, plan->steps.at[closing].title);
    assert_shown(stage, "loses");
}

/* The clock of these pages stands at 1795597200, which is 09:00. */
static void the_clock_runs_from_one_key_to_the_tick(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5 i");
    assert_shown(stage, "the clock runs: Fix sizes");
    assert_shown(stage, "clock since 09:00");
    assert_shown(stage, "[~]>  1");
    setenv("SOURCE_DATE_EPOCH", "1795598400", 1); /* 20 minutes on */
    stage_press(stage, "Space");
    assert_shown(stage, "done in 20 min");
    assert_not_shown(stage, "clock since");
    assert_int_equal(desk_model(stage->desk)->ticks.at[0].minutes, 20000);
    stage_press(stage, "w");
    stage_show(stage, 24, 80); /* how many lines there are is known when they are painted */
    stage_press(stage, "End");
    assert_shown(stage, "pace  decide: 20 min");
}

static void the_clock_is_stopped_with_the_same_key(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5 Enter i");
    setenv("SOURCE_DATE_EPOCH", "1795597500", 1);
    stage_press(stage, "i");
    assert_shown(stage, "the clock stands at 5 min");
    stage_press(stage, "Space i");
    assert_shown(stage, "is ticked already");
}

static void measures_are_entered_before_the_tick(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5");
    tick_until(stage->desk, "buy");
    stage_press(stage, "Esc F5 Space");
    assert_shown(stage, "by the plan");
    stage_press(stage, "Down Down Enter '12mm' Enter Space");
    assert_int_equal(desk_model(stage->desk)->measures.count, 1);
    assert_shown(stage, "done, with 1 measure");
    stage_press(stage, "u");
    assert_int_equal(desk_model(stage->desk)->measures.count, 0);
}

static void esc_leaves_measures_and_step_as_they_were(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5");
    tick_until(stage->desk, "buy");
    size_t ticks = desk_model(stage->desk)->ticks.count;
    stage_press(stage, "Esc F5 Space Enter '12mm' Enter Esc");
    assert_int_equal(desk_model(stage->desk)->ticks.count, ticks);
}

static void what_can_be_done_now_follows_the_minutes(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5 n");
    assert_shown(stage, "In 40 min");
    assert_shown(stage, "Fix sizes");
    stage_press(stage, "Left Left Left");
    assert_shown(stage, "In 10 min, alone: 0 steps");
    stage_press(stage, "Right Right n");
    assert_shown(stage, "In 30 min, two people: 1 steps");
    stage_press(stage, "Enter");
    assert_shown(stage, "Step 1 of");
}

static void a_part_is_spoiled_and_taken_back(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5 s");
    assert_shown(stage, "Nothing is cut yet");
    tick_until(stage->desk, "cut:1");
    stage_press(stage, "Space");
    assert_shown(stage, "spoiled");
    assert_int_equal(desk_model(stage->desk)->cut_parts.at[0].spoiled, 1);
    stage_press(stage, "Space");
    assert_int_equal(desk_model(stage->desk)->cut_parts.at[0].spoiled, 0);
}

static void a_join_that_is_needed_is_not_left_out(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5");
    tick_until(stage->desk, "record:5");
    stage_press(stage, "Esc F5 l");
    assert_true(stage->tui.message_warns);
    assert_int_equal(desk_model(stage->desk)->left_outs.count, 0);
}

/* ---- money ---- */

static void a_spend_is_written_down_with_today(void **state)
{
    struct stage *stage = *state;
    go(stage, "F7 F2 Enter '61.35' Enter");
    const struct model *model = desk_model(stage->desk);
    assert_int_equal(model->spends.count, 1);
    assert_int_equal(model->spends.at[0].amount, 6135);
    assert_string_equal(model->spends.at[0].dated, "2026-11-25");
    stage_press(stage, "Esc");
    assert_shown(stage, "61.35");
}

static void a_spend_is_deleted_and_comes_back(void **state)
{
    struct stage *stage = *state;
    go(stage, "F7 F2 Enter '61.35' Enter Esc Del");
    assert_int_equal(desk_model(stage->desk)->spends.count, 0);
    stage_press(stage, "F11");
    assert_int_equal(desk_model(stage->desk)->spends.count, 1);
}

/* ---- findings ---- */

static void a_finding_leads_to_what_it_is_about(void **state)
{
    struct stage *stage = *state;
    go(stage, "F8 Enter");
    assert_shown(stage, "join: J1");
}

/* ---- trade values ---- */

static void a_trade_value_is_changed_for_the_build(void **state)
{
    struct stage *stage = *state;
    go(stage, "F9 Enter '3/16' Enter");
    assert_int_equal(desk_model(stage->desk)->build_values.count, 1);
    assert_shown(stage, "3/16 in");
    stage_press(stage, "Del");
    assert_int_equal(desk_model(stage->desk)->build_values.count, 0);
}

static void a_trade_value_is_changed_for_the_workshop_where_no_build_is_open(void **state)
{
    struct stage *stage = *state;
    stage_press(stage, "F9 '3/16' Enter");
    assert_int_equal(desk_model(stage->desk)->shop_values.count, 1);
}

static void a_trade_value_that_is_refused_stays(void **state)
{
    struct stage *stage = *state;
    go(stage, "F9 Enter '9 lb' Enter");
    assert_shown(stage, "9 lb");
    assert_shown(stage, "a length is in");
    stage_press(stage, "Esc");
    assert_not_shown(stage, "9 lb");
}

/* ---- workshop ---- */

static void trade_values_are_leafed_through_by_groups(void **state)
{
    struct stage *stage = *state;
    go(stage, "F9 Right Right Down Down");
    assert_shown(stage, "panels and what carries them, 3 of");
    stage_press(stage, "Left");
    assert_shown(stage, "panels and what carries them, 1 of");
    stage_press(stage, "Left Left Left Left");
    assert_shown(stage, "sticks, sheets and what they weigh, 1 of");
    stage_press(stage, "End Right");
    assert_shown(stage, "what minutes are multiplied by");
}

static void a_value_that_is_standard_stays_so(void **state)
{
    struct stage *stage = *state;
    go(stage, "F9 Del");
    assert_shown(stage, "it is the standard value already");
    stage_press(stage, "'3/16' Enter Home Del");
    assert_shown(stage, "back to 1/8 in; u takes that back");
}

static void stock_is_told_with_what_the_build_buys_of_it(void **state)
{
    struct stage *stage = *state;
    go(stage, "F10");
    assert_shown(stage, "Workshop  Workshop");
    stage_press(stage, "Down");
    assert_shown(stage, "96 in for 4.20");
    assert_shown(stage, "Wing headboard buys");
}

static void stock_is_added_with_an_offer(void **state)
{
    struct stage *stage = *state;
    size_t stocks = desk_model(stage->desk)->stocks.count;
    size_t offers = desk_model(stage->desk)->offers.count;
    stage_press(stage, "F10 F2 Enter Esc End F2 Down Enter");
    assert_int_equal(desk_model(stage->desk)->stocks.count, stocks + 1);
    assert_int_equal(desk_model(stage->desk)->offers.count, offers + 1);
}

static void screens_of_a_build_ask_for_one(void **state)
{
    static const char *const keys[] = {"F5", "F6", "F7", "F8"};
    struct stage *stage = *state;
    stage_press(stage, "w");
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
        stage_press(stage, keys[i]);
        assert_shown(stage, "choose a build first: Esc leads to the list");
    }
}

/* ---- getting about ---- */

/* ---- cutting ---- */

static void each_stick_and_sheet_is_shown_with_its_cuts(void **state)
{
    struct stage *stage = *state;
    go(stage, "k");
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
    go(stage, "k");
    assert_shown(stage, "looking for less waste: 2x3 stud, 1 of ");
    stage_rest(stage);
    assert_not_shown(stage, "looking for less waste");
}

static void a_search_that_was_asked_for_is_stopped_by_esc(void **state)
{
    struct stage *stage = *state;
    go(stage, "k");
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
    go(stage, "k Space");
    assert_shown(stage, "taken: so it is cut, as long as its parts stay the same");
    assert_shown(stage, "as it was taken; Space gives it back");
    stage_press(stage, "Space");
    assert_shown(stage, "given back");
    assert_not_shown(stage, "as it was taken");
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

    go(stage, "");
    type_file(stage, ".txt");
    assert_shown(stage, "is written");
    snprintf(path, sizeof path, "%s.txt", stage->place.path);
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    fclose(file);
    type_file(stage, ".txt");
    assert_shown(stage, "Space replaces it");
    file = fopen(path, "rb");
    assert_int_equal(fgetc(file), EOF);
    fclose(file);
    stage_press(stage, "Space");
    assert_shown(stage, "is written");
    file = fopen(path, "rb");
    assert_int_not_equal(fgetc(file), EOF);
    fclose(file);
    assert_int_equal(unlink(path), 0);
}

static void papers_wait_for_the_search_and_can_be_called_off(void **state)
{
    struct stage *stage = *state;
    char path[PATH_MAX + 8];
    char keys[PATH_MAX + 40];
    snprintf(path, sizeof path, "%s.txt", stage->place.path);
    snprintf(keys, sizeof keys, "p Enter Ctrl-U '%s' Enter", path);
    go(stage, keys);
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
    go(stage, keys);
    assert_shown(stage, "is written");
}

static void papers_of_an_unknown_ending_are_refused(void **state)
{
    struct stage *stage = *state;

    go(stage, "");
    type_file(stage, ".doc");
    assert_shown(stage, "ends in .pdf, .svg or .txt");
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

static void help_names_the_keys_of_every_action(void **state)
{
    struct stage *stage = *state;
    char key[ACTION_KEY_TEXT];
    stage_press(stage, "?");
    const char *screen = stage_show(stage, 60, 120);
    for (int i = 0; i < ACTION_COUNT; i++) {
        assert_non_null(strstr(screen, action_key_name(actions[i].key, key)));
        assert_non_null(strstr(screen, actions[i].help));
    }
}

static void help_begins_with_the_screen_it_was_asked_on(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5 F1");
    assert_shown(stage, "Here: order of work");
    stage_press(stage, "F1");
    assert_not_shown(stage, "Here:");
}

static void screens_do_not_pile_up_without_end(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    for (int i = 0; i < 40; i++)
        stage_press(stage, "F5 F6 F7 F8 F9 F10 F1");
    for (int i = 0; i < TUI_DEPTH; i++)
        stage_press(stage, "Esc");
    assert_shown(stage, "all builds");
}

static void esc_leads_from_any_place_to_the_build(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5 F6 F7 F8 F9 F10 o b Esc");
    assert_shown(stage, "boxes, layers, joins");
}

static void a_place_that_is_open_below_is_gone_back_to(void **state)
{
    struct stage *stage = *state;
    go(stage, "F5 Down Down Enter b");
    assert_shown(stage, "> buying");
    stage_press(stage, "F5");
    assert_shown(stage, "> order of work");
    stage_press(stage, "Esc");
    assert_shown(stage, "boxes, layers, joins");
}

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

static void places_of_a_build_are_named_on_each_of_them(void **state)
{
    static const char *const keys[] = {"F5", "b", "k", "e", "m", "h", "f", "p", "t", "w"};
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
        stage_press(stage, keys[i]);
        assert_shown(stage, "o order  b buy  k cutting  e cloth  m money  f findings  h holes");
    }
    assert_null(strstr(stage_show(stage, 23, 80), "o order  b buy"));
    stage_press(stage, "Esc Enter");
    assert_not_shown(stage, "o order  b buy");
}

static void the_picture_follows_when_keys_pause(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    assert_shown(stage, "C, front right");
    driver_key(&stage->tui, KEY_GO_LAST); /* a join: its own picture, not the box's */
    assert_shown(stage, "C, front right");
    assert_true(driver_rest(&stage->tui));
    assert_not_shown(stage, "C, front right");
    assert_false(driver_rest(&stage->tui));
}

static void a_key_that_does_nothing_says_so(void **state)
{
    struct stage *stage = *state;
    go(stage, "F8 c");
    assert_shown(stage, "c does nothing here; ? shows the keys of this screen");
    stage_press(stage, "Left");
    assert_not_shown(stage, "does nothing here");
    stage_press(stage, "%");
    assert_shown(stage, "% does nothing here");
}

static void esc_on_the_first_screen_stays_there(void **state)
{
    struct stage *stage = *state;
    stage_press(stage, "Esc Esc Esc");
    assert_false(stage->over);
    assert_shown(stage, "all builds");
    stage_press(stage, "q");
    assert_true(stage->over);
}

static void nothing_breaks_at_any_size(void **state)
{
    static const char *const screens[] = {
        "",   "F5", "Enter", "F6", "F7",
        "F8", "F9", "F10",   "F1", "Esc Esc Esc Esc Esc Esc Esc Enter",
        "F2"};
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    for (size_t i = 0; i < sizeof screens / sizeof *screens; i++) {
        stage_press(stage, screens[i]);
        for (int rows = 1; rows < 50; rows += 3) {
            for (int columns = 1; columns < 200; columns += 7)
                assert_non_null(stage_show(stage, rows, columns));
        }
    }
}

static void too_small_a_window_says_what_is_needed(void **state)
{
    struct stage *stage = *state;
    assert_string_equal(stage_show(stage, 1, 50), "stuffover: 60 x 18 or more\n");
    assert_non_null(strstr(stage_show(stage, 18, 60), "all builds"));
}

static void what_another_program_wrote_shows_when_idle(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_rest(stage);
    assert_false(driver_idle(&stage->tui));
    struct desk *other = desk_at(&stage->place);
    DONE(desk_take_up_named(other, "Wing headboard", note));
    DONE(desk_set(other, ENTITY_build, 0, "name", "Guest bed", note));
    desk_close(other);
    assert_true(driver_idle(&stage->tui));
    assert_shown(stage, "Guest bed");
    stage_rest(stage);
    assert_false(driver_idle(&stage->tui));
}

static void assert_whole_copy(const struct stage *stage, const char *ending)
{
    struct workshop_place copy = stage->place;
    strncat(copy.path, ending, sizeof copy.path - strlen(copy.path) - 1);
    assert_place_is_sound(&copy);
    struct desk *desk = desk_at(&copy);
    DONE(desk_take_up_named(desk, "Wing headboard", note));
    desk_close(desk);
}

/* Deleted, and then replaced by another file. */
static void of_a_file_that_is_gone_a_copy_is_offered(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_rest(stage);
    assert_int_equal(unlink(stage->place.path), 0);
    assert_true(driver_idle(&stage->tui));
    stage_press(stage, "Down");
    assert_shown(stage, "the file was moved, deleted or replaced: Enter keeps a copy");
    stage_press(stage, "Enter");
    assert_shown(stage, "kept as /");
    assert_whole_copy(stage, ".copy");
    stage_rest(stage);
    assert_not_shown(stage, "Enter keeps a copy");
    stage_again(stage);
    stage_press(stage, "F1");
    stage_rest(stage);
    struct workshop_place other = stage->place;
    strncat(other.path, ".copy", sizeof other.path - strlen(other.path) - 1);
    assert_int_equal(rename(other.path, stage->place.path), 0);
    assert_true(driver_idle(&stage->tui));
    assert_shown(stage, "Enter keeps a copy");
    stage_press(stage, "Esc");
    assert_not_shown(stage, "kept as");
    assert_int_not_equal(access(other.path, F_OK), 0);
}

/* A copy that is there stays as it is. */
static void a_copy_gets_a_name_of_its_own(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    char path[700];
    snprintf(path, sizeof path, "%s.copy", stage->place.path);
    DONE(desk_backup(stage->desk, path, false, note));
    stage_rest(stage);
    assert_int_equal(unlink(stage->place.path), 0);
    assert_true(driver_idle(&stage->tui));
    stage_press(stage, "Enter");
    assert_shown(stage, "kept as /");
    assert_whole_copy(stage, ".copy-2");
}

static void a_hostile_name_cannot_move_the_cursor(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    DONE(desk_set(stage->desk, ENTITY_build, 0, "name",
                  "bed\u202e\xc2\x85"
                  "x",
                  note));
    assert_shown(stage, "bed\ufffd\ufffdx");
}

int main(void)
{
#define EMPTY(name) cmocka_unit_test_setup_teardown(name, stage_begin, stage_end)
#define CASES(name) cmocka_unit_test_setup_teardown(name, stage_begin_with_cases, stage_end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        CASES(the_search_for_less_waste_is_told_until_it_ends),
        CASES(a_search_that_was_asked_for_is_stopped_by_esc),
        CASES(layouts_are_taken_and_given_back_with_space),
        CASES(each_stick_and_sheet_is_shown_with_its_cuts),
        CASES(papers_replace_a_file_only_by_another_key),
        CASES(papers_wait_for_the_search_and_can_be_called_off),
        CASES(papers_are_printed_at_once_by_a_second_enter),
        CASES(papers_of_an_unknown_ending_are_refused),
        CASES(a_build_with_nothing_to_cut_says_so),
        CASES(the_order_begins_at_the_first_step_that_can_be_done),
        CASES(space_ticks_and_goes_on),
        CASES(space_on_a_ticked_step_takes_the_tick_back),
        CASES(a_step_that_has_to_wait_says_so),
        CASES(one_step_goes_to_the_next_and_back),
        CASES(a_step_is_ticked_where_it_stands_large),
        CASES(the_clock_runs_from_one_key_to_the_tick),
        CASES(the_clock_is_stopped_with_the_same_key),
        CASES(measures_are_entered_before_the_tick),
        CASES(esc_leaves_measures_and_step_as_they_were),
        CASES(what_can_be_done_now_follows_the_minutes),
        CASES(a_part_is_spoiled_and_taken_back),
        CASES(a_join_that_is_needed_is_not_left_out),
        CASES(what_a_step_closes_stands_there_before_it_is_ticked),
        CASES(a_spend_is_written_down_with_today),
        CASES(a_spend_is_deleted_and_comes_back),
        CASES(a_finding_leads_to_what_it_is_about),
        CASES(a_trade_value_is_changed_for_the_build),
        CASES(a_trade_value_is_changed_for_the_workshop_where_no_build_is_open),
        CASES(a_trade_value_that_is_refused_stays),
        CASES(trade_values_are_leafed_through_by_groups),
        CASES(a_value_that_is_standard_stays_so),
        CASES(stock_is_told_with_what_the_build_buys_of_it),
        CASES(stock_is_added_with_an_offer),
        CASES(screens_of_a_build_ask_for_one),
        EMPTY(help_names_the_keys_of_every_action),
        CASES(help_begins_with_the_screen_it_was_asked_on),
        CASES(screens_do_not_pile_up_without_end),
        CASES(esc_leads_from_any_place_to_the_build),
        CASES(a_place_that_is_open_below_is_gone_back_to),
        CASES(every_way_to_take_cloth_shows_its_money),
        CASES(places_of_a_build_are_named_on_each_of_them),
        CASES(the_picture_follows_when_keys_pause),
        CASES(a_key_that_does_nothing_says_so),
        EMPTY(esc_on_the_first_screen_stays_there),
        CASES(nothing_breaks_at_any_size),
        EMPTY(too_small_a_window_says_what_is_needed),
        CASES(what_another_program_wrote_shows_when_idle),
        CASES(of_a_file_that_is_gone_a_copy_is_offered),
        CASES(a_copy_gets_a_name_of_its_own),
        CASES(a_hostile_name_cannot_move_the_cursor),
    };
    int failed = cmocka_run_group_tests_name("bench", tests, NULL, NULL);
    return failed ? 1 : 0;
}
