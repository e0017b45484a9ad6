/* The commands as a script meets them. */
#include "shell.h"

#include "cli/commands.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>
#include <jansson.h>
#include <sqlite3.h>

static void take_headboard(struct shell *shell)
{
    assert_int_equal(shell_run(shell, "import", CASE_FOLDER "/headboard.json", NULL)->code, 0);
}

/* ---- reading ---- */

static void commands_print_the_whole_plan(void **state)
{
    struct shell *shell = *state;
    static const char *const parts[] = {"Wing headboard (ready)",
                                        "FINDINGS",
                                        "Box C, ladder",
                                        "C1   upright",
                                        "#8 x 3 in",
                                        "pilot 3/32",
                                        "Join J1",
                                        "hole 6  3/4 in",
                                        "80-1/2 x 71-3/4 in",
                                        "15-7/8 x 60-1/4",
                                        "STAPLES: 905",
                                        "SHOPPING LIST",
                                        "Screws #8 x 3",
                                        "2 x 50",
                                        "ORDER OF WORK",
                                        "Drill join J1",
                                        "CAUTIONS",
                                        "check your local rule"};
    take_headboard(shell);
    const struct answer *answer = shell_run(shell, "plan", "Wing headboard", NULL);
    assert_int_equal(answer->code, 0);
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
        assert_says(answer->out, parts[i]);
    assert_null(strstr(answer->out, "omplies"));
}

static void commands_print_every_view_as_json_too(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    for (const struct command *command = commands; command->name; command++) {
        if (!command_takes(command, OPTION_JSON))
            continue;
        const struct answer *answer =
            command->least > 0 ? shell_run(shell, command->name, "Wing headboard", "--json", NULL)
                               : shell_run(shell, command->name, "--json", NULL);
        json_error_t error;
        json_t *json = json_loads(answer->out, JSON_REJECT_DUPLICATES, &error);
        if (!json)
            fail_msg("%s --json: line %d: %s", command->name, error.line, error.text);
        json_decref(json);
    }
}

static void take_case(struct shell *shell, const char *file)
{
    char path[1024];
    snprintf(path, sizeof path, "%s/%s.json", CASE_FOLDER, file);
    assert_int_equal(shell_run(shell, "import", path, NULL)->code, 0);
}

static void check_tells_of_a_seat_over_the_wall_screws(void **state)
{
    struct shell *shell = *state;
    take_case(shell, "banquette");
    const struct answer *answer = shell_run(shell, "check", "L-shaped banquette", NULL);
    assert_int_equal(answer->code, 0);
    assert_null(strstr(answer->out, "shuts the way"));
    take_case(shell, "seat-first");
    answer = shell_run(shell, "check", "Seat first", NULL);
    assert_int_equal(answer->code, 1);
    assert_says(answer->out, "stop: R1 shuts the way to 5 heads of join W1");
    assert_says(answer->out, "So W1 has to be driven before R1.");
    assert_says(answer->out, "So R1 has to be made at the bench, before W1.");
    assert_says(answer->out, "1.1 Lay it on without screws, in the room");
    assert_int_equal(shell_run(shell, "check", "Seat first", "--cure", "1.1", NULL)->code, 0);
    assert_int_equal(shell_run(shell, "check", "Seat first", NULL)->code, 0);
}

static void commands_give_the_plans_figures_as_json(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    json_t *json =
        json_loads(shell_run(shell, "plan", "Wing headboard", "--json", NULL)->out, 0, NULL);
    json_t *tally = json_object_get(json, "tally");
    assert_int_equal(json_integer_value(json_object_get(tally, "staples")), 905);
    json_t *join = json_array_get(json_object_get(json, "joins"), 0);
    json_t *hole = json_array_get(json_object_get(join, "points"), 1);
    assert_string_equal(json_string_value(json_object_get(hole, "v")), "13 in");
    assert_string_equal(json_string_value(json_object_get(hole, "bite")), "1-3/8 in");
    json_decref(json);
}

static void commands_list_builds_by_name(void **state)
{
    struct shell *shell = *state;
    assert_says(shell_run(shell, "list", NULL)->out, "There is no build yet");
    take_headboard(shell);
    json_t *json = json_loads(shell_run(shell, "list", "--json", NULL)->out, 0, NULL);
    json_t *build = json_array_get(json_object_get(json, "builds"), 0);
    assert_string_equal(json_string_value(json_object_get(build, "name")), "Wing headboard");
    json_decref(json);
}

static void check_ends_with_1_when_something_stops(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_int_equal(shell_run(shell, "check", "Wing headboard", NULL)->code, 0);
    static const char apart[] =
        "{\"format\": 1, \"kind\": \"build\", \"build\": {\"name\": \"Apart\"}, \"boxes\": ["
        "{\"key\": 1, \"name\": \"A\", \"width\": \"20 in\", \"depth\": \"20 in\", "
        "\"height\": \"20 in\"}]}";
    char path[700];
    snprintf(path, sizeof path, "%s/apart.json", shell->place.folder);
    FILE *file = fopen(path, "w");
    fputs(apart, file);
    fclose(file);
    assert_int_equal(shell_run(shell, "import", path, NULL)->code, 0);
    assert_int_equal(shell_run(shell, "check", "Apart", NULL)->code, 1);
    assert_says(shell->answer.out, "A names no stick");
}

static void steps_prints_one_step_whole(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    const struct answer *answer = shell_run(shell, "steps", "Wing headboard", "drill:32", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "Drill join J1");
    assert_says(answer->out, "Now, because ");
    assert_int_equal(shell_run(shell, "steps", "Wing headboard", "polish:1", NULL)->code, 1);
}

static void steps_tells_what_can_be_done_in_the_minutes_there_are(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    const struct answer *answer =
        shell_run(shell, "steps", "Wing headboard", "--minutes", "40", "--alone", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "IN 40 min, alone");
    assert_says(answer->out, "decide");
    assert_int_equal(shell_run(shell, "steps", "Wing headboard", "--minutes", "soon", NULL)->code,
                     1);
}

static void a_part_that_was_not_cut_cannot_be_spoiled(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_int_equal(shell_run(shell, "spoil", "Wing headboard", "C-R1", NULL)->code, 1);
    assert_int_equal(shell_run(shell, "leave", "Wing headboard", "J1", NULL)->code, 1);
}

static void a_measure_is_given_by_name(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    shell_run(shell, "tick", "Wing headboard", "decide", NULL);
    assert_int_equal(
        shell_run(shell, "tick", "Wing headboard", "route", "--measure", "width", NULL)->code, 2);
    assert_int_equal(
        shell_run(shell, "tick", "Wing headboard", "route", "--measure", "width=3", NULL)->code, 1);
}

static void steps_proves_every_hole(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    const struct answer *answer = shell_run(shell, "steps", "Wing headboard", "--rehearse", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "12 of 12 points proved");
    assert_says(answer->out, "closed");
    answer = shell_run(shell, "steps", "Wing headboard", "--rehearse", "--json", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "\"proved\": true");
    assert_says(answer->out, "\"step\": \"drive:32\"");
}

/* Two wings that look alike: parts, maps and boxes say which is which. */
static void left_and_right_of_a_pair_are_said(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_says(shell_run(shell, "cut", "Wing headboard", NULL)->out, "R1 (right)");
    assert_says(shell_run(shell, "show", "Wing headboard", NULL)->out, "L (left)");
    assert_says(shell_run(shell, "steps", "Wing headboard", "frame:5", NULL)->out,
                "R is the right one of a pair with L");
    assert_says(shell_run(shell, "map", "Wing headboard", "J1", "--json", NULL)->out,
                "\"hand\": \"left\"");
    json_t *json =
        json_loads(shell_run(shell, "show", "Wing headboard", "--json", NULL)->out, 0, NULL);
    json_t *box = json_array_get(json_object_get(json, "boxes"), 2);
    assert_string_equal(json_string_value(json_object_get(box, "hand")), "right");
    assert_int_equal(json_integer_value(json_object_get(box, "twin")), 4);
    json_decref(json);
}

/* What rests before a step, what is waited for, and how a step that was done differs by now. */
static void steps_as_json_tell_rests_waits_and_changes(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_int_equal(shell_run(shell, "tick", "Wing headboard", "check", NULL)->code, 0);
    assert_int_equal(shell_run(shell, "tick", "Wing headboard", "frame:3", NULL)->code, 0);
    assert_int_equal(shell_run(shell, "trade", "screw.gauge.frame", "10", NULL)->code, 0);
    json_t *json =
        json_loads(shell_run(shell, "steps", "Wing headboard", "--json", NULL)->out, 0, NULL);
    json_t *steps = json_object_get(json, "steps");
    size_t rests = 0;
    size_t changes = 0;
    for (size_t i = 0; i < json_array_size(steps); i++) {
        json_t *step = json_array_get(steps, i);
        json_t *rest = json_array_get(json_object_get(step, "rests"), 0);
        assert_true(json_is_array(json_object_get(step, "rests")));
        assert_non_null(json_object_get(step, "wait"));
        changes += json_array_size(json_object_get(step, "changes"));
        if (!rest)
            continue;
        assert_non_null(json_string_value(json_object_get(rest, "after")));
        rests++;
    }
    assert_true(rests > 0);
    assert_true(changes > 0);
    json_decref(json);
}

static void steps_tells_what_no_order_can_do(void **state)
{
    static const char pair[] =
        "{\"format\": 1, \"kind\": \"build\", \"build\": {\"name\": \"Apart\"}, \"boxes\": ["
        "{\"key\": 1, \"name\": \"A\", \"width\": \"20 in\", \"depth\": \"20 in\", "
        "\"height\": \"20 in\"}, {\"key\": 2, \"name\": \"B\", \"width\": \"20 in\", "
        "\"depth\": \"20 in\", \"height\": \"20 in\"}], \"joins\": [{\"key\": 3, "
        "\"name\": \"J\", \"box_a\": 1, \"side_a\": \"right\", \"box_b\": 2, "
        "\"side_b\": \"left\"}]}";
    struct shell *shell = *state;
    char path[700];
    snprintf(path, sizeof path, "%s/pair.json", shell->place.folder);
    FILE *file = fopen(path, "w");
    fputs(pair, file);
    fclose(file);
    assert_int_equal(shell_run(shell, "import", path, NULL)->code, 0);
    assert_int_equal(shell_run(shell, "steps", "Apart", "--rehearse", NULL)->code, 1);
    assert_says(shell->answer.out, "NOT PROVED");
    assert_says(shell->answer.out, "J, a join without a point");
}

static void steps_tells_how_it_comes_apart(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    const struct answer *answer = shell_run(shell, "steps", "Wing headboard", "--apart", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "1  take off the lining of C  (back:25)");
    answer = shell_run(shell, "steps", "Wing headboard", "--apart", "--json", NULL);
    assert_says(answer->out, "\"do\": \"back the screws of J2 out\"");
}

/* ---- writing ---- */

/* Figures of the worked example: hole 6 lies 53 in from the bottom. */
static void map_prints_one_join_as_text_and_json(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    const struct answer *answer = shell_run(shell, "map", "Wing headboard", "J2", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "     6   3/4  19      53  1346  [ ]");
    assert_null(strstr(answer->out, "Join J1"));
    json_t *json =
        json_loads(shell_run(shell, "map", "Wing headboard", "J2", "--json", NULL)->out, 0, NULL);
    json_t *maps = json_object_get(json, "maps");
    assert_int_equal(json_array_size(maps), 1);
    json_t *ends = json_object_get(json_array_get(maps, 0), "ends");
    json_t *hole = json_array_get(json_object_get(json_array_get(ends, 0), "holes"), 5);
    json_t *distance = json_array_get(json_object_get(hole, "distances"), 1);
    assert_string_equal(json_string_value(json_object_get(distance, "edge")), "bottom");
    assert_string_equal(json_string_value(json_object_get(distance, "distance")), "53 in");
    assert_int_equal(json_integer_value(json_object_get(distance, "mm")), 1346);
    json_decref(json);
    assert_int_equal(shell_run(shell, "map", "Wing headboard", "J9", NULL)->code, 1);
}

/* Worked example, computed by hand: ten sticks of 96 in. */
static void cut_prints_layouts_with_their_bound(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    const struct answer *answer = shell_run(shell, "cut", "Wing headboard", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, ": 10 sticks, 42.00, proven the least");
    assert_says(answer->out, "mark ");
    json_t *json = json_loads(
        shell_run(shell, "cut", "Wing headboard", "--json", "--effort", "quick", NULL)->out, 0,
        NULL);
    json_t *sticks = json_array_get(json_object_get(json, "cutting"), 0);
    assert_int_equal(json_array_size(json_object_get(sticks, "pieces")), 10);
    json_decref(json);
    assert_int_equal(shell_run(shell, "cut", "Wing headboard", "--effort", "some", NULL)->code, 2);
}

static void print_gives_papers_as_text_with_and_without_money(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_says(shell_run(shell, "print", NULL)->out, "template");
    const struct answer *answer =
        shell_run(shell, "print", "Wing headboard", "--papers", "shopping,sticks", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "SHOPPING LIST");
    assert_says(answer->out, ": 10 sticks, 42.00");
    answer = shell_run(shell, "print", "Wing headboard", "--papers", "booklet", NULL);
    assert_says(answer->out, "MATERIALS");
    assert_says(answer->out, ": 10 sticks\n");
    assert_says(answer->out, "LABEL, TO BE STAPLED INSIDE");
    assert_null(strstr(answer->out, "42.00"));
    assert_null(strstr(answer->out, "USD"));
    assert_int_equal(
        shell_run(shell, "print", "Wing headboard", "--papers", "wallpaper", NULL)->code, 2);
}

static void print_refuses_other_endings_and_pages(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_int_equal(shell_run(shell, "print", "Wing headboard", "--to", "a.doc", NULL)->code, 2);
    assert_int_equal(
        shell_run(shell, "print", "Wing headboard", "--to", "a.svg", "--pages", "a5", NULL)->code,
        2);
}

static void cut_takes_layouts_and_gives_them_back(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_says(shell_run(shell, "cut", "Wing headboard", "--take", NULL)->out, "as it was taken");
    assert_says(shell_run(shell, "cut", "Wing headboard", NULL)->out, "as it was taken");
    assert_null(strstr(shell_run(shell, "cut", "Wing headboard", "--back", NULL)->out, "taken"));
    assert_int_equal(shell_run(shell, "cut", "Wing headboard", "--back", NULL)->code, 1);
}

/* Twice the sticks of one headboard, cut together, cost no more than apart. */
static void cut_pools_several_builds(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    const struct answer *answer = shell_run(shell, "cut", "Wing headboard", "Wing headboard", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "CUTTING TOGETHER");
    assert_says(answer->out, "each build by itself");
    assert_int_equal(
        shell_run(shell, "cut", "Wing headboard", "Wing headboard", "--take", NULL)->code, 1);
    assert_int_equal(shell_run(shell, "cut", "Wing headboard", "No such", NULL)->code, 1);
}

static void layouts_of_several_builds_are_taken_and_given_back(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_int_equal(shell_run(shell, "copy", "Wing headboard", "Guest room", NULL)->code, 0);
    assert_null(strstr(
        shell_run(shell, "cut", "Wing headboard", "Guest room", "--effort", "quick", NULL)->out,
        "as it was taken"));
    assert_says(
        shell_run(shell, "cut", "Wing headboard", "Guest room", "--effort", "quick", "--take", NULL)
            ->out,
        "as it was taken");
    assert_says(
        shell_run(shell, "cut", "Guest room", "Wing headboard", "--effort", "quick", NULL)->out,
        "as it was taken");
    assert_says(shell_run(shell, "buy", "Guest room", "Wing headboard", NULL)->out,
                "as it was taken");
    assert_null(strstr(shell_run(shell, "cut", "Guest room", "--effort", "quick", NULL)->out,
                       "as it was taken"));
    assert_int_equal(
        shell_run(shell, "change", "Guest room", "box", "C", "height=52 in", NULL)->code, 0);
    assert_says(shell_run(shell, "buy", "Guest room", "Wing headboard", NULL)->out,
                "A layout that was taken together does not hold");
    assert_int_equal(
        shell_run(shell, "cut", "Guest room", "Wing headboard", "--effort", "quick", "--back", NULL)
            ->code,
        0);
    assert_int_equal(
        shell_run(shell, "cut", "Guest room", "Wing headboard", "--effort", "quick", "--back", NULL)
            ->code,
        1);
}

static void cloth_shows_ways_side_by_side_and_takes_one(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    const struct answer *answer = shell_run(shell, "cloth", "Wing headboard", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "1  * as it is ");
    assert_says(answer->out, "3    C cover: one seam down the middle ");
    assert_says(answer->out, "corners of the boxing");
    assert_says(shell_run(shell, "cloth", "Wing headboard", "3", NULL)->out,
                "C cover: seams at a line");
    assert_says(shell_run(shell, "undo", NULL)->out, "C cover: one seam down the middle");
    json_t *json =
        json_loads(shell_run(shell, "cloth", "Wing headboard", "--json", NULL)->out, 0, NULL);
    json_t *way = json_array_get(json_object_get(json, "ways"), 0);
    assert_true(json_is_true(json_object_get(way, "chosen")));
    json_decref(json);
    assert_int_equal(shell_run(shell, "cloth", "Wing headboard", "9", NULL)->code, 1);
}

static void map_tells_one_hole_with_its_ways(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    const struct answer *answer = shell_run(shell, "map", "Wing headboard", "J2", "3", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "Join J2, hole 3 of 6");
    assert_says(answer->out, "23 in (584 mm) from the");
    assert_says(answer->out, "chosen    heads inside C, by the back");
    assert_says(answer->out, "lining of C");
    assert_int_equal(shell_run(shell, "map", "Wing headboard", "J2", "7", NULL)->code, 1);
    assert_int_equal(shell_run(shell, "map", "Wing headboard", "J2", "one", NULL)->code, 1);
}

static void check_takes_no_cure_that_is_not_there(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_int_equal(shell_run(shell, "check", "Wing headboard", "--cure", "9.9", NULL)->code, 1);
    assert_says(shell->answer.error, "no such cure");
    assert_int_equal(shell_run(shell, "check", "Wing headboard", "--cure", "first", NULL)->code, 2);
    assert_int_equal(shell_run(shell, "check", "Wing headboard", "--cure", "1.x", NULL)->code, 2);
}

/* An edge that waits for the room with no join there. */
static void check_takes_a_cure_and_undo_takes_it_back(void **state)
{
    static const char loose[] =
        "{\"format\": 1, \"kind\": \"build\", \"build\": {\"name\": \"Loose\", \"next_key\": 9}, "
        "\"stocks\": [{\"name\": \"Stick\", \"kind\": \"stick\", \"thickness\": \"1-1/2 in\", "
        "\"width\": \"1-1/2 in\"}, {\"name\": \"Linen\", \"kind\": \"cloth\", \"width\": \"54 "
        "in\"}], "
        "\"boxes\": [{\"key\": 1, \"name\": \"A\", \"width\": \"20 in\", \"depth\": \"1-1/2 in\", "
        "\"height\": \"20 in\", \"stick\": \"Stick\"}], \"layers\": [{\"key\": 2, \"box\": 1, "
        "\"kind\": \"lining\", \"shape\": \"flat\", \"stock\": \"Linen\"}], \"layer_edges\": "
        "[{\"key\": 3, \"layer\": 2, \"edge\": \"left\", \"class\": \"site\"}]}";
    struct shell *shell = *state;
    char path[700];
    snprintf(path, sizeof path, "%s/loose.json", shell->place.folder);
    FILE *file = fopen(path, "w");
    fputs(loose, file);
    fclose(file);
    assert_int_equal(shell_run(shell, "import", path, NULL)->code, 0);
    assert_says(shell_run(shell, "check", "Loose", NULL)->out, "cure   1.1 Let the joins say");
    json_t *json = json_loads(shell_run(shell, "check", "Loose", "--json", NULL)->out, 0, NULL);
    json_t *finding = json_array_get(json_object_get(json, "findings"), 0);
    json_t *cure = json_array_get(json_object_get(finding, "cures"), 0);
    assert_string_equal(json_string_value(json_object_get(cure, "cure")), "1.1");
    json_t *edit = json_array_get(json_object_get(cure, "edits"), 0);
    assert_string_equal(json_string_value(json_object_get(edit, "value")), "auto");
    json_decref(json);
    assert_null(
        strstr(shell_run(shell, "check", "Loose", "--cure", "1.1", NULL)->out, "stays loose"));
    assert_null(strstr(shell_run(shell, "check", "Loose", NULL)->out, "stays loose"));
    assert_says(shell_run(shell, "undo", NULL)->out, "Let the joins say when it is stapled");
    assert_says(shell_run(shell, "check", "Loose", NULL)->out, "stays loose");
}

static void tick_and_spend_are_kept(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_int_equal(
        shell_run(shell, "tick", "Wing headboard", "decide", "--minutes", "30", NULL)->code, 0);
    assert_says(shell->answer.out, "1 of ");
    assert_int_equal(shell_run(shell, "spend", "Wing headboard", "41.20", "ten sticks", "--aisle",
                               "lumber", "--date", "2026-11-20", NULL)
                         ->code,
                     0);
    assert_says(shell->answer.out, "41.20");
    assert_says(shell_run(shell, "export", "Wing headboard", NULL)->out, "\"ten sticks\"");
    assert_says(shell->answer.out, "\"step\": \"decide\"");
    assert_int_equal(shell_run(shell, "undo", NULL)->code, 0);
    assert_says(shell->answer.out, "taken back: spend: ten sticks");
    assert_null(strstr(shell_run(shell, "export", "Wing headboard", NULL)->out, "\"ten sticks\""));
    assert_int_equal(shell_run(shell, "redo", NULL)->code, 0);
    assert_says(shell_run(shell, "export", "Wing headboard", NULL)->out, "\"ten sticks\"");
    assert_int_equal(shell_run(shell, "tick", "Wing headboard", "decide", "--back", NULL)->code, 0);
    assert_says(shell->answer.out, "0 of ");
}

/* Worked example of the wing headboard: 70.3 lb, and 117 of the whole. */
static void show_tells_what_takes_care(void **state)
{
    struct shell *shell = *state;

    take_headboard(shell);
    assert_int_equal(shell_run(shell, "show", "Wing headboard", "--care", NULL)->code, 0);
    assert_says(shell->answer.out, "WEIGHTS");
    assert_says(shell->answer.out, "70.3");
    assert_says(shell->answer.out, "116.9"); /* of the whole, in all */
    assert_says(shell->answer.out, "THE WAY IN");
    assert_int_equal(shell_run(shell, "show", "Wing headboard", "--care", "--json", NULL)->code, 0);
    assert_says(shell->answer.out, "\"weights\"");
    assert_says(shell->answer.out, "\"lifts\"");
    assert_says(shell->answer.out, "\"way_in\"");
    assert_int_equal(shell_run(shell, "show", "Wing headboard", "--care", "--picture", NULL)->code,
                     2);
}

/* Worked example, computed by hand: 2 in of foam and 1/4 of batting on 3 in of box. */
static void show_tells_of_the_layers_alone(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_int_equal(shell_run(shell, "show", "Wing headboard", "--layers", NULL)->code, 0);
    assert_says(shell->answer.out, "C front  2-1/4 in thick");
    assert_says(shell->answer.out, "C  63 x 5-1/4 x 56-1/4 in");
    assert_says(shell->answer.out, "front boxing to the face");
    assert_says(shell->answer.out, "STAPLES: 905");
    assert_null(strstr(shell->answer.out, "\nBox C"));
    assert_int_equal(shell_run(shell, "show", "Wing headboard", "--layers", "--json", NULL)->code,
                     0);
    assert_says(shell->answer.out, "\"finished\"");
    assert_null(strstr(shell->answer.out, "\"joins\""));
}

static void show_draws_the_piece_its_boxes_and_their_faces(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_int_equal(shell_run(shell, "show", "Wing headboard", "--picture", NULL)->code, 0);
    assert_says(shell->answer.out, "The piece from the front right");
    assert_int_equal(
        shell_run(shell, "show", "Wing headboard", "C", "--apart", "--corner", "3", NULL)->code, 0);
    assert_says(shell->answer.out, "Box C from the back left, taken apart");
    assert_says(shell->answer.out, "foam");
    assert_int_equal(shell_run(shell, "show", "Wing headboard", "C", "--face", "left", NULL)->code,
                     0);
    assert_says(shell->answer.out, "left of C o head");
    assert_int_equal(
        shell_run(shell, "show", "Wing headboard", "C", "--face", "front", "--cut", "top", NULL)
            ->code,
        0);
    assert_says(shell->answer.out, "batting 1/4 in");
    assert_says(shell_run(shell, "show", "Wing headboard", "--layers", NULL)->out,
                "cut at its top");
    assert_int_equal(shell_run(shell, "show", "Wing headboard", "C", "--cut", "top", NULL)->code,
                     2);
    assert_int_equal(shell_run(shell, "show", "Wing headboard", "Q", NULL)->code, 1);
    assert_says(shell->answer.error, "no box \"Q\"");
    assert_int_equal(shell_run(shell, "show", "Wing headboard", "--corner", "5", NULL)->code, 2);
    assert_int_equal(shell_run(shell, "show", "Wing headboard", "C", "--face", "lid", NULL)->code,
                     2);
    assert_int_equal(shell_run(shell, "show", "Wing headboard", "--picture", "--json", NULL)->code,
                     2);
}

static void mirror_makes_the_image_of_a_box_and_knows_no_other(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_int_equal(shell_run(shell, "mirror", "Wing headboard", "L", "Z", NULL)->code, 0);
    assert_says(shell_run(shell, "show", "Wing headboard", NULL)->out, "Box Z");
    assert_says(shell->answer.out, "one of a pair with L");
    assert_int_equal(shell_run(shell, "mirror", "Wing headboard", "Q", NULL)->code, 1);
    assert_says(shell->answer.error, "no box \"Q\"");
}

static void spend_names_the_field_it_refuses(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_int_equal(shell_run(shell, "spend", "Wing headboard", "4,20", "sticks", NULL)->code, 1);
    assert_says(shell->answer.error, "amount");
    assert_says(shell->answer.error, "column 2");
}

static void trade_prints_and_changes_a_value(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    assert_says(shell_run(shell, "trade", NULL)->out, "join.pitch");
    assert_says(shell->answer.out, "common practice, no source");
    assert_int_equal(shell_run(shell, "trade", "staple.cover.pitch", "2 in", NULL)->code, 0);
    assert_says(shell->answer.out, "workshop");
    assert_null(strstr(shell_run(shell, "plan", "Wing headboard", NULL)->out, "STAPLES: 905"));
    assert_int_equal(shell_run(shell, "trade", "staple.cover.pitch", "", NULL)->code, 0);
    assert_says(shell_run(shell, "plan", "Wing headboard", NULL)->out, "STAPLES: 905");
    assert_int_equal(shell_run(shell, "trade", "staple.cover.pitch", "90 in", NULL)->code, 1);
    assert_int_equal(shell_run(shell, "trade", "no.such", NULL)->code, 1);
}

static void new_begins_a_build_from_given_sizes(void **state)
{
    struct shell *shell = *state;
    assert_says(shell_run(shell, "new", NULL)->out, "wing-headboard");
    assert_int_equal(
        shell_run(shell, "new", "wing-headboard", "Attic", "mattress=54", "--units", "inch", NULL)
            ->code,
        0);
    assert_says(shell_run(shell, "show", "Attic", NULL)->out, "57 wide");
    assert_int_equal(
        shell_run(shell, "new", "wing-headboard", "Too wide", "mattress=5400", NULL)->code, 1);
    assert_says(shell->answer.error, "mattress");
    assert_int_equal(shell_run(shell, "new", "wing-headboard", "Typo", "matress=54", NULL)->code,
                     2);
    assert_int_equal(shell_run(shell, "new", "storage-bench", "Attic", NULL)->code, 1);
    assert_says(shell->answer.error, "build.name: another build has this name");
    assert_int_equal(
        shell_run(shell, "new", "wing-headboard", "Metric", "--units", "mm", NULL)->code, 0);
    assert_says(shell_run(shell, "show", "Metric", NULL)->out, "1675 wide");
}

static void import_refuses_a_file_whole_and_tells_every_fault(void **state)
{
    struct shell *shell = *state;
    char path[700];
    snprintf(path, sizeof path, "%s/bad.json", shell->place.folder);
    FILE *file = fopen(path, "w");
    fputs("{\"format\": 1, \"kind\": \"build\",\n \"build\": {\"name\": \"Bad\", \"hue\": 1},\n"
          " \"boxes\": [{\"key\": 1, \"name\": \"A\", \"width\": \"wide\"}]}\n",
          file);
    fclose(file);
    assert_int_equal(shell_run(shell, "import", path, NULL)->code, 1);
    assert_says(shell->answer.error, "build.hue: line 2");
    assert_says(shell->answer.error, "boxes[0].width: line 3");
    assert_says(shell_run(shell, "list", NULL)->out, "There is no build yet");
}

static void export_gives_what_import_took_to_the_byte(void **state)
{
    struct shell *shell = *state;
    take_headboard(shell);
    char *first = strdup(shell_run(shell, "export", "Wing headboard", NULL)->out);
    struct shell other = {0};
    char path[700];
    place_begin(&other.place);
    snprintf(path, sizeof path, "%s/build.json", other.place.folder);
    FILE *file = fopen(path, "w");
    fputs(first, file);
    fclose(file);
    assert_int_equal(shell_run(&other, "import", path, NULL)->code, 0);
    assert_string_equal(shell_run(&other, "export", "Wing headboard", NULL)->out, first);
    place_end(&other.place);
    answer_forget(&other.answer);
    free(first);
}

/* ---- usage ---- */

static void commands_refuse_what_they_do_not_take(void **state)
{
    struct shell *shell = *state;
    assert_int_equal(shell_run(shell, "upholster", NULL)->code, 2);
    assert_int_equal(shell_run(shell, "plan", NULL)->code, 2);
    assert_int_equal(shell_run(shell, "list", "--minutes", "3", NULL)->code, 2);
    assert_int_equal(shell_run(shell, "plan", "Nowhere", NULL)->code, 1);
    assert_says(shell->answer.error, "Nowhere");
    assert_int_equal(shell_run(shell, "--help", NULL)->code, 0);
    assert_int_equal(shell_run(shell, "--version", NULL)->code, 0);
    assert_int_equal(shell_run(shell, NULL)->code, 77);
}

static size_t longest_line(const char *text)
{
    size_t longest = 0;

    while (*text) {
        size_t length = strcspn(text, "\n");

        longest = length > longest ? length : longest;
        text += length + (text[length] == '\n');
    }
    return longest;
}

static void help_tells_of_one_command_or_of_all_on_eighty_columns(void **state)
{
    struct shell *shell = *state;

    assert_int_equal(shell_run(shell, "cut", "--help", NULL)->code, 0);
    assert_says(shell->answer.out, "usage: stuffover cut BUILD ...");
    assert_says(shell->answer.out, "--effort");
    assert_null(strstr(shell->answer.out, "--minutes"));
    assert_true(longest_line(shell->answer.out) <= 80);
    assert_int_equal(shell_run(shell, "--help", NULL)->code, 0);
    for (const struct command *command = commands; command->name; command++)
        assert_says(shell->answer.out, command->name);
    assert_true(longest_line(shell->answer.out) <= 80);
}

static void commands_end_with_4_on_a_file_that_is_not_ours(void **state)
{
    struct shell *shell = *state;
    FILE *file = fopen(shell->place.path, "w");
    fputs("a shopping list, not a workshop, and longer than a header of a hundred bytes would be "
          "for a store that could be read\n",
          file);
    fclose(file);
    assert_int_equal(shell_run(shell, "list", NULL)->code, 4);
}

/* A page in the middle of the file, which is not that of its tables' names. */
static void break_a_page(const char *path)
{
    FILE *file = fopen(path, "r+b");

    assert_non_null(file);
    fseek(file, 0, SEEK_END);
    fseek(file, ftell(file) / 4096 / 2 * 4096, SEEK_SET);
    fputc(7, file);
    assert_int_equal(fclose(file), 0);
}

static void a_damaged_file_is_told_with_the_way_out_and_rescued(void **state)
{
    struct shell *shell = *state;
    char *folder = shell->place.folder;
    char copy[sizeof shell->place.path + 16];

    snprintf(copy, sizeof copy, "%s.copy", shell->place.path);
    take_headboard(shell);
    assert_says(shell_run(shell, "check", NULL)->out, "whole; builds: 1;");
    assert_int_equal(shell_run(shell, "backup", copy, NULL)->code, 0);
    assert_int_equal(shell_run(shell, "backup", copy, NULL)->code, 1);
    assert_int_equal(shell_run(shell, "backup", copy, "--replace", NULL)->code, 0);
    break_a_page(shell->place.path);
    assert_int_equal(shell_run(shell, "check", NULL)->code, 4);
    assert_says(shell->answer.error, "rescue FOLDER");
    assert_int_equal(shell_run(shell, "rescue", folder, NULL)->code, 0);
    assert_says(shell->answer.out, "workshop.json: ");
    assert_says(shell->answer.out, "Wing headboard");
    assert_int_equal(shell_run(shell, "rescue", folder, NULL)->code, 1);
    assert_says(shell->answer.out, "is there already");
}

static void commands_all_stand_in_the_manual(void **state)
{
    (void)state;
    FILE *file = fopen(MANUAL_PAGE, "rb");
    assert_non_null(file);
    char *page = shell_read_all(file);
    for (const struct command *command = commands; command->name; command++) {
        char entry[64];
        snprintf(entry, sizeof entry, ".It Ic %s", command->name);
        assert_says(page, entry);
    }
    static const char *const options[] = {"json",     "minutes", "back",    "aisle",   "date",
                                          "supplier", "tax",     "build",   "units",   "papers",
                                          "to",       "pages",   "replace", "unpriced"};
    for (size_t i = 0; i < sizeof options / sizeof *options; i++) {
        char entry[64];
        snprintf(entry, sizeof entry, "Fl -%s", options[i]);
        assert_says(page, entry);
    }
    free(page);
}

#define IN_A_SHELL(test) cmocka_unit_test_setup_teardown(test, shell_begin, shell_end)

/* It is waited for, two seconds. */
static void a_file_that_another_program_holds_is_told_with_its_code(void **state)
{
    struct shell *shell = *state;
    sqlite3 *other;
    assert_int_equal(shell_run(shell, "import", CASE_FOLDER "/headboard.json", NULL)->code, 0);
    assert_int_equal(sqlite3_open(shell->place.path, &other), SQLITE_OK);
    assert_int_equal(sqlite3_exec(other, "BEGIN EXCLUSIVE", NULL, NULL, NULL), SQLITE_OK);
    const struct answer *answer = shell_run(shell, "list", NULL);
    assert_int_equal(answer->code, 5);
    assert_says(answer->error, "another program holds the file");
    sqlite3_close(other);
    assert_int_equal(shell_run(shell, "list", NULL)->code, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        IN_A_SHELL(commands_print_the_whole_plan),
        IN_A_SHELL(commands_print_every_view_as_json_too),
        IN_A_SHELL(show_tells_what_takes_care),
        IN_A_SHELL(show_tells_of_the_layers_alone),
        IN_A_SHELL(show_draws_the_piece_its_boxes_and_their_faces),
        IN_A_SHELL(check_tells_of_a_seat_over_the_wall_screws),
        IN_A_SHELL(commands_give_the_plans_figures_as_json),
        IN_A_SHELL(commands_list_builds_by_name),
        IN_A_SHELL(check_ends_with_1_when_something_stops),
        IN_A_SHELL(steps_prints_one_step_whole),
        IN_A_SHELL(steps_proves_every_hole),
        IN_A_SHELL(steps_tells_what_can_be_done_in_the_minutes_there_are),
        IN_A_SHELL(a_part_that_was_not_cut_cannot_be_spoiled),
        IN_A_SHELL(a_measure_is_given_by_name),
        IN_A_SHELL(left_and_right_of_a_pair_are_said),
        IN_A_SHELL(steps_as_json_tell_rests_waits_and_changes),
        IN_A_SHELL(steps_tells_what_no_order_can_do),
        IN_A_SHELL(steps_tells_how_it_comes_apart),
        IN_A_SHELL(map_prints_one_join_as_text_and_json),
        IN_A_SHELL(cut_prints_layouts_with_their_bound),
        IN_A_SHELL(print_gives_papers_as_text_with_and_without_money),
        IN_A_SHELL(print_refuses_other_endings_and_pages),
        IN_A_SHELL(cut_takes_layouts_and_gives_them_back),
        IN_A_SHELL(cut_pools_several_builds),
        IN_A_SHELL(layouts_of_several_builds_are_taken_and_given_back),
        IN_A_SHELL(cloth_shows_ways_side_by_side_and_takes_one),
        IN_A_SHELL(map_tells_one_hole_with_its_ways),
        IN_A_SHELL(check_takes_no_cure_that_is_not_there),
        IN_A_SHELL(check_takes_a_cure_and_undo_takes_it_back),
        IN_A_SHELL(tick_and_spend_are_kept),
        IN_A_SHELL(mirror_makes_the_image_of_a_box_and_knows_no_other),
        IN_A_SHELL(spend_names_the_field_it_refuses),
        IN_A_SHELL(trade_prints_and_changes_a_value),
        IN_A_SHELL(new_begins_a_build_from_given_sizes),
        IN_A_SHELL(import_refuses_a_file_whole_and_tells_every_fault),
        IN_A_SHELL(export_gives_what_import_took_to_the_byte),
        IN_A_SHELL(commands_refuse_what_they_do_not_take),
        IN_A_SHELL(help_tells_of_one_command_or_of_all_on_eighty_columns),
        IN_A_SHELL(commands_end_with_4_on_a_file_that_is_not_ours),
        IN_A_SHELL(a_file_that_another_program_holds_is_told_with_its_code),
        IN_A_SHELL(a_damaged_file_is_told_with_the_way_out_and_rescued),
        cmocka_unit_test(commands_all_stand_in_the_manual),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
