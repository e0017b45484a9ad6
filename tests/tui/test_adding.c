/* Every kind of item that can be added gets what it must have, or is refused in words. */
#include "stage.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

/* ---- what the screen offers ---- */

/* In their order, and what is missing for each as the first item of an empty build. */
static const struct offering {
    enum entity_kind kind;
    const char *missing; /* "" for nothing */
} of_build[] = {{ENTITY_box, ""},
                {ENTITY_facing, "box"},
                {ENTITY_layer, "box"},
                {ENTITY_join, "box"},
                {ENTITY_member, "box"},
                {ENTITY_fitting, "box"},
                {ENTITY_face, "box"},
                {ENTITY_cutout, "box"},
                {ENTITY_outline_point, "box"},
                {ENTITY_layer_edge, "layer"},
                {ENTITY_tufting, "layer"},
                {ENTITY_opening, "layer"},
                {ENTITY_point, "join"},
                {ENTITY_group, ""},
                {ENTITY_group_box, "group"},
                {ENTITY_passage, ""},
                {ENTITY_wall, ""},
                {ENTITY_object, ""},
                {ENTITY_extra, ""},
                {ENTITY_spend, ""},
                {ENTITY_measure, ""}},
  of_shop[] = {{ENTITY_stock, ""},         {ENTITY_offer, "stock"}, {ENTITY_flaw, "stock"},
               {ENTITY_leftover, "stock"}, {ENTITY_supplier, ""},   {ENTITY_tool, ""},
               {ENTITY_set, ""},           {ENTITY_shop_spend, ""}};

enum { OF_BUILD = sizeof of_build / sizeof *of_build, OF_SHOP = sizeof of_shop / sizeof *of_shop };

static enum fault name_it(struct model *draft, void *context, struct fault_note *note)
{
    (void)note;
    draft->build.name = context;
    return FAULT_NONE;
}

/* A build with nothing in it, in a workshop with nothing in it, on its screen. */
static void begin_with_nothing(struct stage *stage)
{
    static char name[] = "Nothing yet";
    DONE(desk_new_build(stage->desk, "nothing yet", name_it, name, note));
    stage_take_up(stage, name);
}

/* Adds the item at a place of the screen's list, which has to be the kind that is meant. */
static bool add(struct stage *stage, int place, enum entity_kind kind)
{
    size_t count = model_count(desk_model(stage->desk), kind);
    stage_press(stage, "F2");
    for (int i = 0; i < place; i++)
        stage_press(stage, "Down");
    stage_press(stage, "Enter");
    assert_int_equal(model_check(desk_model(stage->desk), NULL, NULL), 0);
    return model_count(desk_model(stage->desk), kind) == count + 1;
}

static void assert_add(struct stage *stage, int place, enum entity_kind kind)
{
    if (!add(stage, place, kind))
        fail_msg("%s: %s", entity_of(kind)->name, stage->tui.message);
    assert_shown(stage, "fields");
    stage_press(stage, "Esc");
}

static void assert_add_or_missing(struct stage *stage, int place, const struct offering *offering)
{
    char words[96];
    unsigned serial = desk_serial(stage->desk);
    if (!*offering->missing) {
        assert_add(stage, place, offering->kind);
        stage_press(stage, "F11");
        assert_int_equal(model_count(desk_model(stage->desk), offering->kind), 0);
        return;
    }
    snprintf(words, sizeof words, "there is no %s yet that it could belong to", offering->missing);
    assert_false(add(stage, place, offering->kind));
    assert_string_equal(stage->tui.message, words);
    assert_true(stage->tui.message_warns);
    assert_int_equal(desk_serial(stage->desk), serial);
}

/* ---- facts ---- */

static void the_screen_offers_these_and_no_more(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "F2 End");
    stage_show(stage, 40, 80);
    assert_int_equal(stage->tui.view.cursor_row, OF_BUILD);
    stage_press(stage, "Esc F10 F2 End");
    stage_show(stage, 40, 80);
    assert_int_equal(stage->tui.view.cursor_row, OF_SHOP);
}

static void everything_can_be_added_to_the_headboard(void **state)
{
    for (int i = 0; i < OF_BUILD; i++) {
        stage_take_up(*state, "Wing headboard");
        assert_add(*state, i, of_build[i].kind);
        stage_press(*state, "Esc");
    }
}

static void everything_can_be_added_to_a_workshop_with_stock(void **state)
{
    stage_press(*state, "F10");
    for (int i = 0; i < OF_SHOP; i++)
        assert_add(*state, i, of_shop[i].kind);
}

static void an_empty_build_says_what_is_missing_first(void **state)
{
    begin_with_nothing(*state);
    for (int i = 0; i < OF_BUILD; i++)
        assert_add_or_missing(*state, i, &of_build[i]);
}

static void an_empty_workshop_says_what_is_missing_first(void **state)
{
    stage_press(*state, "F10");
    for (int i = 0; i < OF_SHOP; i++)
        assert_add_or_missing(*state, i, &of_shop[i]);
}

/* With the line of the build selected no box is meant: the first will do. */
static void a_layer_added_to_the_build_lies_on_its_first_box(void **state)
{
    struct stage *stage = *state;
    stage_take_up(stage, "Wing headboard");
    stage_press(stage, "Home");
    assert_add(stage, 2, ENTITY_layer);
    const struct model *model = desk_model(stage->desk);
    assert_int_equal(model->layers.at[model->layers.count - 1].box, model->boxes.at[0].key);
}

static enum fault lay_flat(struct model *draft, void *context, struct fault_note *note)
{
    (void)context;
    (void)note;
    draft->facings.at[0].side = SIDE_TOP;
    return FAULT_NONE;
}

/* A seat of a board: its only panel lies on top, and so does what goes over it. */
static void a_new_layer_lies_where_the_panel_is(void **state)
{
    struct stage *stage = *state;
    const struct model *model;
    begin_with_nothing(stage);
    stage_press(stage, "F10 F2 Enter Esc Esc");
    assert_add(stage, 0, ENTITY_box);
    assert_add(stage, 2, ENTITY_layer);
    assert_add(stage, 1, ENTITY_facing);
    DONE(desk_edit(stage->desk, "lay flat", lay_flat, NULL, note));
    assert_add(stage, 2, ENTITY_layer);
    model = desk_model(stage->desk);
    assert_int_equal(model->layers.count, 2);
    assert_int_equal(model->layers.at[0].side, SIDE_FRONT);
    assert_int_equal(model->layers.at[1].side, SIDE_TOP);
}

/* Who makes a second box goes on with that one, and with its copy after that. */
static void what_was_just_made_is_chosen(void **state)
{
    struct stage *stage = *state;
    const struct model *model;
    begin_with_nothing(stage);
    stage_press(stage, "F10 F2 Enter Esc Esc"); /* a stick to frame from */
    assert_add(stage, 0, ENTITY_box);
    assert_add(stage, 0, ENTITY_box);
    assert_add(stage, 2, ENTITY_layer);
    model = desk_model(stage->desk);
    assert_int_equal(model->layers.at[0].box, model->boxes.at[1].key);
    stage_press(stage, "Up c");
    assert_add(stage, 2, ENTITY_layer);
    model = desk_model(stage->desk);
    assert_int_equal(model->boxes.count, 3);
    assert_int_equal(model->layers.at[model->layers.count - 1].box, model->boxes.at[2].key);
}

/* One of each, in the order of the list, on what the ones before left there. */
static void an_empty_build_is_filled_from_the_top(void **state)
{
    begin_with_nothing(*state);
    stage_press(*state, "F10 F2 Enter Esc Esc");
    for (int i = 0; i < OF_BUILD; i++)
        assert_add(*state, i, of_build[i].kind);
}

int main(void)
{
#define EMPTY(name) cmocka_unit_test_setup_teardown(name, stage_begin, stage_end)
#define CASES(name) cmocka_unit_test_setup_teardown(name, stage_begin_with_cases, stage_end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        CASES(the_screen_offers_these_and_no_more),
        CASES(everything_can_be_added_to_the_headboard),
        CASES(everything_can_be_added_to_a_workshop_with_stock),
        EMPTY(an_empty_build_says_what_is_missing_first),
        EMPTY(an_empty_workshop_says_what_is_missing_first),
        CASES(a_layer_added_to_the_build_lies_on_its_first_box),
        EMPTY(what_was_just_made_is_chosen),
        EMPTY(a_new_layer_lies_where_the_panel_is),
        EMPTY(an_empty_build_is_filled_from_the_top),
    };
    int failed = cmocka_run_group_tests_name("tui adding", tests, NULL, NULL);
    return failed ? 1 : 0;
}
