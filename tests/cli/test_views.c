/* What the commands that only look print, as text and as JSON. */
#include "kept.h"
#include "shell.h"

#include "cli/commands.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>
#include <jansson.h>

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
    shell_take(shell, "headboard");
    const struct answer *answer = shell_run(shell, "plan", "Wing headboard", NULL);
    assert_int_equal(answer->code, 0);
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
        assert_says(answer->out, parts[i]);
    assert_null(strstr(answer->out, "omplies"));
}

static void commands_print_every_view_as_json_too(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
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

static void commands_give_the_plans_figures_as_json(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
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
    shell_take(shell, "headboard");
    json_t *json = json_loads(shell_run(shell, "list", "--json", NULL)->out, 0, NULL);
    json_t *build = json_array_get(json_object_get(json, "builds"), 0);
    assert_string_equal(json_string_value(json_object_get(build, "name")), "Wing headboard");
    json_decref(json);
}

/* Two wings that look alike: parts, maps and boxes say which is which. */
static void left_and_right_of_a_pair_are_said(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
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

/* Worked example of the wing headboard: 70.3 lb, and 117 of the whole. */
static void show_tells_what_takes_care(void **state)
{
    struct shell *shell = *state;

    shell_take(shell, "headboard");
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
    shell_take(shell, "headboard");
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
    shell_take(shell, "headboard");
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

static void check_tells_of_a_seat_over_the_wall_screws(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "banquette");
    const struct answer *answer = shell_run(shell, "check", "L-shaped banquette", NULL);
    assert_int_equal(answer->code, 0);
    assert_null(strstr(answer->out, "shuts the way"));
    shell_take(shell, "seat-first");
    answer = shell_run(shell, "check", "Seat first", NULL);
    assert_int_equal(answer->code, 1);
    assert_says(answer->out, "stop: R1 shuts the way to 5 heads of join W1");
    assert_says(answer->out, "So W1 has to be driven before R1.");
    assert_says(answer->out, "So R1 has to be made at the bench, before W1.");
    assert_says(answer->out, "1.1 Lay it on without screws, in the room");
    assert_int_equal(shell_run(shell, "check", "Seat first", "--cure", "1.1", NULL)->code, 0);
    assert_int_equal(shell_run(shell, "check", "Seat first", NULL)->code, 0);
}

static void check_ends_with_1_when_something_stops(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    assert_int_equal(shell_run(shell, "check", "Wing headboard", NULL)->code, 0);
    static const char apart[] =
        "{\"format\": 1, \"kind\": \"build\", \"build\": {\"name\": \"Apart\"}, \"boxes\": ["
        "{\"key\": 1, \"name\": \"A\", \"width\": \"20 in\", \"depth\": \"20 in\", "
        "\"height\": \"20 in\"}]}";
    char path[700];
    snprintf(path, sizeof path, "%s/apart.json", shell->place.folder);
    file_put(path, apart);
    assert_int_equal(shell_run(shell, "import", path, NULL)->code, 0);
    assert_int_equal(shell_run(shell, "check", "Apart", NULL)->code, 1);
    assert_says(shell->answer.out, "A names no stick");
}

static void steps_prints_one_step_whole(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    const struct answer *answer = shell_run(shell, "steps", "Wing headboard", "drill:32", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "Drill join J1");
    assert_says(answer->out, "Now, because ");
    assert_int_equal(shell_run(shell, "steps", "Wing headboard", "polish:1", NULL)->code, 1);
}

static void steps_tells_what_can_be_done_in_the_minutes_there_are(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    const struct answer *answer =
        shell_run(shell, "steps", "Wing headboard", "--minutes", "40", "--alone", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "IN 40 min, alone");
    assert_says(answer->out, "decide");
    assert_int_equal(shell_run(shell, "steps", "Wing headboard", "--minutes", "soon", NULL)->code,
                     1);
}

static void steps_proves_every_hole(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    const struct answer *answer = shell_run(shell, "steps", "Wing headboard", "--rehearse", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "12 of 12 points proved");
    assert_says(answer->out, "closed");
    answer = shell_run(shell, "steps", "Wing headboard", "--rehearse", "--json", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "\"proved\": true");
    assert_says(answer->out, "\"step\": \"drive:32\"");
}

/* What rests before a step, what is waited for, and how a step that was done differs by now. */
static void steps_as_json_tell_rests_waits_and_changes(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
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
    file_put(path, pair);
    assert_int_equal(shell_run(shell, "import", path, NULL)->code, 0);
    assert_int_equal(shell_run(shell, "steps", "Apart", "--rehearse", NULL)->code, 1);
    assert_says(shell->answer.out, "NOT PROVED");
    assert_says(shell->answer.out, "J, a join without a point");
}

static void steps_tells_how_it_comes_apart(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    const struct answer *answer = shell_run(shell, "steps", "Wing headboard", "--apart", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "1  take off the lining of C  (back:25)");
    answer = shell_run(shell, "steps", "Wing headboard", "--apart", "--json", NULL);
    assert_says(answer->out, "\"do\": \"back the screws of J2 out\"");
}

/* Figures of the worked example: hole 6 lies 53 in from the bottom. */
static void map_prints_one_join_as_text_and_json(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
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

static void map_tells_one_hole_with_its_ways(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    const struct answer *answer = shell_run(shell, "map", "Wing headboard", "J2", "3", NULL);
    assert_int_equal(answer->code, 0);
    assert_says(answer->out, "Join J2, hole 3 of 6");
    assert_says(answer->out, "23 in (584 mm) from the");
    assert_says(answer->out, "chosen    heads inside C, by the back");
    assert_says(answer->out, "lining of C");
    assert_int_equal(shell_run(shell, "map", "Wing headboard", "J2", "7", NULL)->code, 1);
    assert_int_equal(shell_run(shell, "map", "Wing headboard", "J2", "one", NULL)->code, 1);
}

static void print_gives_papers_as_text_with_and_without_money(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
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
    shell_take(shell, "headboard");
    assert_int_equal(shell_run(shell, "print", "Wing headboard", "--to", "a.doc", NULL)->code, 2);
    assert_int_equal(
        shell_run(shell, "print", "Wing headboard", "--to", "a.svg", "--pages", "a5", NULL)->code,
        2);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        IN_A_SHELL(commands_print_the_whole_plan),
        IN_A_SHELL(commands_print_every_view_as_json_too),
        IN_A_SHELL(commands_give_the_plans_figures_as_json),
        IN_A_SHELL(commands_list_builds_by_name),
        IN_A_SHELL(left_and_right_of_a_pair_are_said),
        IN_A_SHELL(show_tells_what_takes_care),
        IN_A_SHELL(show_tells_of_the_layers_alone),
        IN_A_SHELL(show_draws_the_piece_its_boxes_and_their_faces),
        IN_A_SHELL(check_tells_of_a_seat_over_the_wall_screws),
        IN_A_SHELL(check_ends_with_1_when_something_stops),
        IN_A_SHELL(steps_prints_one_step_whole),
        IN_A_SHELL(steps_tells_what_can_be_done_in_the_minutes_there_are),
        IN_A_SHELL(steps_proves_every_hole),
        IN_A_SHELL(steps_as_json_tell_rests_waits_and_changes),
        IN_A_SHELL(steps_tells_what_no_order_can_do),
        IN_A_SHELL(steps_tells_how_it_comes_apart),
        IN_A_SHELL(map_prints_one_join_as_text_and_json),
        IN_A_SHELL(map_tells_one_hole_with_its_ways),
        IN_A_SHELL(print_gives_papers_as_text_with_and_without_money),
        IN_A_SHELL(print_refuses_other_endings_and_pages),
    };
    int failed = cmocka_run_group_tests_name("views", tests, NULL, NULL);
    return failed ? 1 : 0;
}
