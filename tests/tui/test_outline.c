/* The lines of a build: each says which item it is. */
#include "stage.h"
#include "tui/outline.h"

#include <locale.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

struct making {
    struct stage *stage;
    struct outline *outline;
    bool shop;
};

static void run_make(void *context)
{
    const struct making *making = context;
    struct stage *stage = making->stage;
    outline_make(making->outline, desk_model(stage->desk), making->shop, &stage->arena);
}

/* The outline is good until the screen is shown again. */
static void make(struct stage *stage, const char *build, bool shop, struct outline *outline)
{
    struct making making = {stage, outline, shop};
    stage_take_up(stage, build);
    assert_true(arena_try(&stage->arena, run_make, &making));
}

static const char *text_of(struct stage *stage, enum entity_kind kind, size_t index)
{
    const struct model *model = desk_model(stage->desk);
    return outline_text(model, kind, item_key(model_at_const(model, kind, index)), &stage->arena);
}

/* Two rows of the same box and depth with the same words. */
static const char *twin(const struct outline *outline)
{
    for (size_t i = 0; i < outline->rows.count; i++) {
        const struct outline_row *row = &outline->rows.at[i];
        for (size_t k = 0; k < i; k++) {
            const struct outline_row *other = &outline->rows.at[k];
            if (other->box == row->box && other->depth == row->depth &&
                strcmp(other->text, row->text) == 0)
                return row->text;
        }
    }
    return NULL;
}

static void no_two_lines_of_a_box_read_alike(void **state)
{
    static const char *const builds[] = {"Wing headboard", "Tufted ottoman", "L-shaped banquette"};
    for (size_t i = 0; i < sizeof builds / sizeof *builds; i++) {
        struct outline outline;
        make(*state, builds[i], false, &outline);
        const char *alike = twin(&outline);
        if (alike)
            fail_msg("%s: two lines say \"%s\"", builds[i], alike);
        stage_press(*state, "Esc");
    }
}

static void a_part_that_begins_somewhere_says_where(void **state)
{
    struct outline outline;
    make(*state, "Wing headboard", false, &outline);
    assert_string_equal(text_of(*state, ENTITY_facing, 0), "front panel at 0, 8  Plywood 1/2");
    assert_string_equal(text_of(*state, ENTITY_member, 0), "rail at 1-1/2, 0, 7-1/4");
}

static void a_part_of_the_whole_face_says_no_place(void **state)
{
    struct outline outline;
    make(*state, "Wing headboard", false, &outline);
    assert_string_equal(text_of(*state, ENTITY_facing, 1), "front panel  Plywood 1/2");
}

/* Kinds that screens of their own show: trade values, money, order of work, cutting. */
static bool is_shown_elsewhere(enum entity_kind kind)
{
    static const enum entity_kind kinds[] = {ENTITY_build_value, ENTITY_shop_value, ENTITY_spend,
                                             ENTITY_tick,        ENTITY_hole,       ENTITY_cut_part,
                                             ENTITY_left_out,    ENTITY_bought,     ENTITY_layout};
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        if (kinds[i] == kind)
            return true;
    }
    return false;
}

static size_t rows_of(const struct outline *outline, enum entity_kind kind, int64_t key)
{
    size_t count = 0;
    for (size_t i = 0; i < outline->rows.count; i++)
        count += outline->rows.at[i].kind == kind && outline->rows.at[i].key == key;
    return count;
}

/* How many items there are; each has to have one row. */
static size_t assert_each_once(const struct outline *outline, const struct model *model, bool shop)
{
    size_t items = 0;
    for (int kind = 0; kind < ENTITY_COUNT; kind++) {
        if (entity_of((enum entity_kind)kind)->in_shop != shop ||
            is_shown_elsewhere((enum entity_kind)kind))
            continue;
        for (size_t i = 0; i < model_count(model, (enum entity_kind)kind); i++, items++) {
            int64_t key = item_key(model_at_const(model, (enum entity_kind)kind, i));
            if (rows_of(outline, (enum entity_kind)kind, key) != 1)
                fail_msg("%s %lld has %zu rows", entity_of((enum entity_kind)kind)->name,
                         (long long)key, rows_of(outline, (enum entity_kind)kind, key));
        }
    }
    return items;
}

static void each_item_of_a_build_has_one_line(void **state)
{
    static const char *const builds[] = {"Wing headboard", "Tufted ottoman", "L-shaped banquette"};
    struct stage *stage = *state;
    for (size_t i = 0; i < sizeof builds / sizeof *builds; i++) {
        struct outline outline;
        make(stage, builds[i], false, &outline);
        size_t items = assert_each_once(&outline, desk_model(stage->desk), false);
        assert_int_equal(outline.rows.count, items + 1); /* and the build itself */
        stage_press(stage, "Esc");
    }
}

/* A cover over two joined boxes, and one that was taken off what it lay on. */
static enum fault cover_a_group(struct model *draft, void *context, struct fault_note *note)
{
    struct group *group = MODEL_ADD(draft, group);
    struct layer *layers = draft->layers.at;
    (void)context;
    (void)note;
    layers[0].box = 0;
    layers[0].group = group->key;
    group->name = "both";
    layers[1].box = 0;
    struct opening *opening = MODEL_ADD(draft, opening);
    opening->layer = layers[0].key;
    return FAULT_NONE;
}

static void a_layer_on_a_group_or_on_nothing_has_one_line_too(void **state)
{
    struct outline outline;
    struct stage *stage = *state;
    make(stage, "Wing headboard", false, &outline);
    DONE(desk_edit(stage->desk, "cover a group", cover_a_group, NULL, note));
    stage_press(stage, "Esc");
    make(stage, "Wing headboard", false, &outline);
    size_t items = assert_each_once(&outline, desk_model(stage->desk), false);
    assert_int_equal(outline.rows.count, items + 1);
}

static void each_item_of_the_workshop_has_one_line(void **state)
{
    struct outline outline;
    struct stage *stage = *state;
    make(stage, "Wing headboard", true, &outline);
    size_t items = assert_each_once(&outline, desk_model(stage->desk), true);
    assert_int_equal(outline.rows.count, items + 1);
}

int main(void)
{
#define CASES(name) cmocka_unit_test_setup_teardown(name, stage_begin_with_cases, stage_end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        CASES(each_item_of_a_build_has_one_line),
        CASES(a_layer_on_a_group_or_on_nothing_has_one_line_too),
        CASES(each_item_of_the_workshop_has_one_line),
        CASES(no_two_lines_of_a_box_read_alike),
        CASES(a_part_that_begins_somewhere_says_where),
        CASES(a_part_of_the_whole_face_says_no_place),
    };
    int failed = cmocka_run_group_tests_name("tui outline", tests, NULL, NULL);
    return failed ? 1 : 0;
}
