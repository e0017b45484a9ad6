/* One hole of a join: reached from the outline and from findings, gone through by arrows. */
#include "stage.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static void open_join(struct stage *stage, const char *build, const char *join)
{
    stage_take_up(stage, build);
    int64_t key = model_key_named(desk_model(stage->desk), ENTITY_join, join);
    tui_open(&stage->tui, &screen_point, &(struct target){ENTITY_join, key, NULL, NULL});
}

static void a_finding_of_a_join_leads_to_its_holes(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "F8 Ins");
    assert_shown(stage, "Join J1, hole 1 of 6");
    stage_press(stage, "Esc");
    assert_shown(stage, "> findings");
}

static void holes_key_shows_the_maps_elsewhere(void **state)
{
    struct stage *stage = *state;
    stage_go(stage, "Ins");
    assert_shown(stage, "HOLE MAPS");
    stage_press(stage, "Esc F5 h");
    assert_shown(stage, "HOLE MAPS");
}

static void arrows_go_through_the_holes_and_stop_at_the_ends(void **state)
{
    struct stage *stage = *state;
    open_join(stage, "Wing headboard", "J2");
    stage_press(stage, "Left");
    assert_shown(stage, "Join J2, hole 1 of 6");
    stage_press(stage, "Right Right");
    assert_shown(stage, "hole 3 of 6");
    assert_shown(stage, "(584 mm) from the");
    stage_press(stage, "Right Right Right Right");
    assert_shown(stage, "hole 6 of 6");
}

static void the_chosen_way_and_what_comes_after_it_are_told(void **state)
{
    struct stage *stage = *state;
    open_join(stage, "Wing headboard", "J1");
    assert_shown(stage, "chosen    heads inside C, by the back");
    assert_shown(stage, "lining of C: step");
    assert_shown(stage, "@ this");
    assert_shown(stage, "front up");
}

static void enter_opens_the_join(void **state)
{
    struct stage *stage = *state;
    open_join(stage, "Wing headboard", "J1");
    stage_press(stage, "Enter");
    assert_shown(stage, "join: J1");
}

static void a_join_without_holes_says_why(void **state)
{
    struct stage *stage = *state;
    open_join(stage, "L-shaped banquette", "R1");
    assert_shown(stage, "This join has no holes");
    stage_press(stage, "Right Left");
    assert_shown(stage, "This join has no holes");
}

static void a_join_that_is_deleted_has_no_holes(void **state)
{
    struct stage *stage = *state;
    struct fault_note note = {0};
    open_join(stage, "Wing headboard", "J1");
    int64_t key = model_key_named(desk_model(stage->desk), ENTITY_join, "J1");
    assert_int_equal(desk_delete(stage->desk, ENTITY_join, key, &note), FAULT_NONE);
    assert_shown(stage, "This join has no holes");
    stage_press(stage, "Enter");
    assert_shown(stage, "one hole");
}

int main(void)
{
#define CASES(name) cmocka_unit_test_setup_teardown(name, stage_begin_with_cases, stage_end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        CASES(a_finding_of_a_join_leads_to_its_holes),
        CASES(holes_key_shows_the_maps_elsewhere),
        CASES(arrows_go_through_the_holes_and_stop_at_the_ends),
        CASES(the_chosen_way_and_what_comes_after_it_are_told),
        CASES(enter_opens_the_join),
        CASES(a_join_without_holes_says_why),
        CASES(a_join_that_is_deleted_has_no_holes),
    };
    int failed = cmocka_run_group_tests_name("point", tests, NULL, NULL);
    return failed ? 1 : 0;
}
