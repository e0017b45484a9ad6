/* The commands as a script meets them. */
#include "kept.h"
#include "shell.h"

#include "cli/commands.h"
#include "cli/options.h"

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

static void a_part_that_was_not_cut_cannot_be_spoiled(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    assert_int_equal(shell_run(shell, "spoil", "Wing headboard", "C3", NULL)->code, 1);
    assert_says(shell->answer.error, "no part \"C3\" was cut");
}

static void a_join_that_is_needed_cannot_be_left_out(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    assert_int_equal(shell_run(shell, "leave", "Wing headboard", "J1", NULL)->code, 1);
    assert_says(shell->answer.error, "J1 is needed");
}

/* Sticks as they were bought are a sixteenth thinner. */
static void a_measure_is_given_by_name(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    assert_int_equal(shell_say(shell, "tick 'Wing headboard' decide route check shelf buy")->code,
                     0);
    assert_int_equal(
        shell_say(shell, "tick 'Wing headboard' gauge --measure '2x3 stud thickness=1-7/16 in'")
            ->code,
        0);
    assert_says(shell_say(shell, "export 'Wing headboard'")->out,
                "\"what\": \"thickness\", \"value\": \"1-7/16 in\"");
    assert_says(shell_say(shell, "show 'Wing headboard'")->out, "x from x 1-7/16");
}

static void a_measure_that_the_step_does_not_ask_for_is_refused(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    assert_int_equal(shell_say(shell, "tick 'Wing headboard' decide")->code, 0);
    assert_int_equal(shell_say(shell, "tick 'Wing headboard' route --measure width")->code, 2);
    assert_int_equal(shell_say(shell, "tick 'Wing headboard' route --measure width=3")->code, 1);
}

static void a_step_that_is_ticked_ahead_of_another_says_so(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    assert_says(shell_say(shell, "tick 'Wing headboard' check")->out,
                "done ahead of: Fix sizes, cloth and where it stands (decide)");
    assert_null(strstr(shell_say(shell, "tick 'Wing headboard' decide")->out, "ahead of"));
}

/* "spend Bench 1 wax --with Bench --with Bench ..." */
static void repeat_option(struct text *line, const char *command, const char *option, int count)
{
    text_clear(line);
    text_add(line, command);
    for (int i = 0; i < count; i++)
        text_format(line, " %s", option);
}

/* None is left out in silence; one fewer is looked at, and refused for what it says. */
static void options_are_repeated_only_so_often(void **state)
{
    static const struct {
        const char *command, *option;
        int most;
        const char *told;
    } repeated[] = {{"tick 'Wing headboard' decide", "--measure width=3", CLI_MEASURES, "at most"},
                    {"spend 'Wing headboard' 1 wax", "--with=", CLI_WITH, "at most"}};
    struct shell *shell = *state;
    struct text line;
    shell_take(shell, "headboard");
    text_init(&line);
    for (size_t i = 0; i < sizeof repeated / sizeof *repeated; i++) {
        repeat_option(&line, repeated[i].command, repeated[i].option, repeated[i].most);
        assert_int_equal(shell_say(shell, text_string(&line))->code, 1);
        assert_null(strstr(shell->answer.error, repeated[i].told));
        repeat_option(&line, repeated[i].command, repeated[i].option, repeated[i].most + 1);
        assert_int_equal(shell_say(shell, text_string(&line))->code, 2);
        assert_says(shell->answer.error, repeated[i].told);
    }
    text_release(&line);
}

static void check_takes_no_cure_that_is_not_there(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
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
    file_put(path, loose);
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
    shell_take(shell, "headboard");
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

static void mirror_makes_the_image_of_a_box_and_knows_no_other(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    assert_int_equal(shell_run(shell, "mirror", "Wing headboard", "L", "Z", NULL)->code, 0);
    assert_says(shell_run(shell, "show", "Wing headboard", NULL)->out, "Box Z");
    assert_says(shell->answer.out, "one of a pair with L");
    assert_int_equal(shell_run(shell, "mirror", "Wing headboard", "Q", NULL)->code, 1);
    assert_says(shell->answer.error, "no box \"Q\"");
}

static void spend_names_the_field_it_refuses(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    assert_int_equal(shell_run(shell, "spend", "Wing headboard", "4,20", "sticks", NULL)->code, 1);
    assert_says(shell->answer.error, "amount");
    assert_says(shell->answer.error, "column 2");
}

static void trade_prints_and_changes_a_value(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
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
    file_put(path,
             "{\"format\": 1, \"kind\": \"build\",\n \"build\": {\"name\": \"Bad\", \"hue\": 1},\n"
             " \"boxes\": [{\"key\": 1, \"name\": \"A\", \"width\": \"wide\"}]}\n");
    assert_int_equal(shell_run(shell, "import", path, NULL)->code, 1);
    assert_says(shell->answer.error, "build.hue: line 2");
    assert_says(shell->answer.error, "boxes[0].width: line 3");
    assert_says(shell_run(shell, "list", NULL)->out, "There is no build yet");
}

static void export_gives_what_import_took_to_the_byte(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    char *first = strdup(shell_run(shell, "export", "Wing headboard", NULL)->out);
    struct shell other = {0};
    char path[700];
    place_begin(&other.place);
    snprintf(path, sizeof path, "%s/build.json", other.place.folder);
    file_put(path, first);
    assert_int_equal(shell_run(&other, "import", path, NULL)->code, 0);
    assert_string_equal(shell_run(&other, "export", "Wing headboard", NULL)->out, first);
    place_end(&other.place);
    answer_forget(&other.answer);
    free(first);
}

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

    for (int before = 0; before < 2; before++) {
        shell_run(shell, before ? "--help" : "cut", before ? "cut" : "--help", NULL);
        assert_int_equal(shell->answer.code, 0);
        assert_says(shell->answer.out, "usage: stuffover cut BUILD ...");
        assert_says(shell->answer.out, "--effort");
        assert_null(strstr(shell->answer.out, "--minutes"));
        assert_true(longest_line(shell->answer.out) <= 80);
    }
    assert_int_equal(shell_run(shell, "--help", NULL)->code, 0);
    for (const struct command *command = commands; command->name; command++)
        assert_says(shell->answer.out, command->name);
    assert_true(longest_line(shell->answer.out) <= 80);
}

static void commands_end_with_4_on_a_file_that_is_not_ours(void **state)
{
    struct shell *shell = *state;
    file_put(
        shell->place.path,
        "a shopping list, not a workshop, and longer than a header of a hundred bytes would be "
        "for a store that could be read\n");
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
    shell_take(shell, "headboard");
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

static void commands_and_options_all_stand_in_the_manual(void **state)
{
    (void)state;
    struct text text;
    text_init(&text);
    file_take(&text, MANUAL_PAGE);
    const char *page = text_string(&text);
    for (const struct command *command = commands; command->name; command++) {
        char entry[64];
        snprintf(entry, sizeof entry, ".It Ic %s", command->name);
        assert_says(page, entry);
    }
    for (const struct command_option *option = command_options; option->name; option++) {
        char entry[64];
        snprintf(entry, sizeof entry, "Fl -%s", option->name);
        assert_says(page, entry);
    }
    text_release(&text);
}

/* It is waited for, two seconds. */
static void a_file_that_another_program_holds_is_told_with_its_code(void **state)
{
    struct shell *shell = *state;
    sqlite3 *other;
    shell_take(shell, "headboard");
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
        IN_A_SHELL(a_part_that_was_not_cut_cannot_be_spoiled),
        IN_A_SHELL(a_join_that_is_needed_cannot_be_left_out),
        IN_A_SHELL(a_measure_is_given_by_name),
        IN_A_SHELL(a_measure_that_the_step_does_not_ask_for_is_refused),
        IN_A_SHELL(a_step_that_is_ticked_ahead_of_another_says_so),
        IN_A_SHELL(options_are_repeated_only_so_often),
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
        IN_A_SHELL(a_damaged_file_is_told_with_the_way_out_and_rescued),
        cmocka_unit_test(commands_and_options_all_stand_in_the_manual),
        IN_A_SHELL(a_file_that_another_program_holds_is_told_with_its_code),
    };
    int failed = cmocka_run_group_tests_name("commands", tests, NULL, NULL);
    return failed ? 1 : 0;
}
