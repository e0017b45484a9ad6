/* Layouts and cloth as a script meets them: shown, taken, given back. */
#include "shell.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>
#include <jansson.h>

/* Worked example, computed by hand: ten sticks of 96 in. */
static void cut_prints_layouts_with_their_bound(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
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

/* What `cut --json` says of a blank of a stock, both counted from 0; NULL for nothing. */
static const char *way_home(json_t *json, size_t stock, size_t blank)
{
    json_t *layout = json_array_get(json_object_get(json, "cutting"), stock);
    json_t *piece = json_array_get(json_object_get(layout, "pieces"), blank);
    assert_non_null(piece);
    assert_int_equal(!json_object_get(piece, "way_home"),
                     !json_object_get(piece, "goes_home_then"));
    return json_string_value(json_object_get(piece, "way_home"));
}

static void assert_goes_then(json_t *json, size_t stock, size_t blank, bool goes)
{
    json_t *layout = json_array_get(json_object_get(json, "cutting"), stock);
    json_t *piece = json_array_get(json_object_get(layout, "pieces"), blank);
    assert_int_equal(json_is_true(json_object_get(piece, "goes_home_then")), goes);
}

static json_t *cut_of(struct shell *shell)
{
    json_t *json =
        json_loads(shell_run(shell, "cut", "Wing headboard", "--json", NULL)->out, 0, NULL);
    assert_non_null(json);
    return json;
}

#define STICKS 0 /* of the headboard's cutting, in order */
#define PANELS 1
#define FOAM 3

/* Sheets of 96 x 48 in, the first of which the layout parts at 63 in and the second at 56, and a
 * van whose floor is 60 in and then 70 in long. Through its opening of 40 x 30 in goes a sheet of
 * 48 in at a slant (its diagonal is 50, Euclid I.47). */
static void cut_tells_what_the_shop_cuts_so_that_a_sheet_goes_home(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    json_t *json = cut_of(shell);
    assert_null(way_home(json, PANELS, 0));
    json_decref(json);
    assert_int_equal(shell_say(shell, "add 'Wing headboard' passage kind=vehicle name=van"
                                      " 'width=40 in' 'height=30 in' 'length=60 in'")
                         ->code,
                     0);
    json = cut_of(shell);
    assert_string_equal(way_home(json, PANELS, 0),
                        "let the shop cut it across at 63 in first, and then on: its parts do not "
                        "either");
    assert_goes_then(json, PANELS, 0, false);
    assert_string_equal(way_home(json, PANELS, 1), "let the shop cut it across at 56 in first");
    assert_goes_then(json, PANELS, 1, true);
    json_decref(json);
    assert_int_equal(shell_say(shell, "change 'Wing headboard' passage van 'length=70 in'")->code,
                     0);
    json = cut_of(shell);
    assert_string_equal(way_home(json, PANELS, 0), "let the shop cut it across at 63 in first");
    assert_goes_then(json, PANELS, 0, true);
    json_decref(json);
}

/* Foam bends, and sticks have no face: neither is sawn for the ride. */
static void cut_has_nothing_sawn_for_the_ride_but_sheets(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    assert_int_equal(shell_say(shell, "add 'Wing headboard' passage kind=vehicle name=van"
                                      " 'width=20 in' 'height=20 in' 'length=40 in'")
                         ->code,
                     0);
    json_t *json = cut_of(shell);
    assert_non_null(way_home(json, PANELS, 0));
    assert_null(way_home(json, STICKS, 0));
    assert_null(way_home(json, FOAM, 0));
    json_decref(json);
}

static void cut_takes_layouts_and_gives_them_back(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
    assert_says(shell_run(shell, "cut", "Wing headboard", "--take", NULL)->out, "as it was taken");
    assert_says(shell_run(shell, "cut", "Wing headboard", NULL)->out, "as it was taken");
    assert_null(strstr(shell_run(shell, "cut", "Wing headboard", "--back", NULL)->out, "taken"));
    assert_int_equal(shell_run(shell, "cut", "Wing headboard", "--back", NULL)->code, 1);
}

/* Twice the sticks of one headboard, cut together, cost no more than apart. */
static void cut_pools_several_builds(void **state)
{
    struct shell *shell = *state;
    shell_take(shell, "headboard");
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
    shell_take(shell, "headboard");
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
    shell_take(shell, "headboard");
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

int main(void)
{
    const struct CMUnitTest tests[] = {
        IN_A_SHELL(cut_prints_layouts_with_their_bound),
        IN_A_SHELL(cut_tells_what_the_shop_cuts_so_that_a_sheet_goes_home),
        IN_A_SHELL(cut_has_nothing_sawn_for_the_ride_but_sheets),
        IN_A_SHELL(cut_takes_layouts_and_gives_them_back),
        IN_A_SHELL(cut_pools_several_builds),
        IN_A_SHELL(layouts_of_several_builds_are_taken_and_given_back),
        IN_A_SHELL(cloth_shows_ways_side_by_side_and_takes_one),
    };
    int failed = cmocka_run_group_tests_name("cutting", tests, NULL, NULL);
    return failed ? 1 : 0;
}
