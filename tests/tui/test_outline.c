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
};

static void run_make(void *context)
{
    const struct making *making = context;
    struct stage *stage = making->stage;
    outline_make(making->outline, desk_model(stage->desk), false, &stage->arena);
}

/* The outline is good until the screen is shown again. */
static void make(struct stage *stage, const char *build, struct outline *outline)
{
    struct making making = {stage, outline};
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
        make(*state, builds[i], &outline);
        const char *alike = twin(&outline);
        if (alike)
            fail_msg("%s: two lines say \"%s\"", builds[i], alike);
        stage_press(*state, "Esc");
    }
}

static void a_part_that_begins_somewhere_says_where(void **state)
{
    struct outline outline;
    make(*state, "Wing headboard", &outline);
    assert_string_equal(text_of(*state, ENTITY_facing, 0), "front panel at 0, 8  Plywood 1/2");
    assert_string_equal(text_of(*state, ENTITY_member, 0), "rail at 1-1/2, 0, 7-1/4");
}

static void a_part_of_the_whole_face_says_no_place(void **state)
{
    struct outline outline;
    make(*state, "Wing headboard", &outline);
    assert_string_equal(text_of(*state, ENTITY_facing, 1), "front panel  Plywood 1/2");
}

int main(void)
{
#define CASES(name) cmocka_unit_test_setup_teardown(name, stage_begin_with_cases, stage_end)
    setlocale(LC_ALL, "");
    const struct CMUnitTest tests[] = {
        CASES(no_two_lines_of_a_box_read_alike),
        CASES(a_part_that_begins_somewhere_says_where),
        CASES(a_part_of_the_whole_face_says_no_place),
    };
    int failed = cmocka_run_group_tests_name("tui outline", tests, NULL, NULL);
    return failed ? 1 : 0;
}
