/*
 * Padding cut open, and tufting fields, of the worked examples; their figures were computed by
 * hand.
 */
#include "sketched.h"
#include "work.h"

#include "draw/field.h"
#include "draw/raster.h"
#include "draw/section.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

/* Keys in the files of the examples. */
enum { HEADBOARD_C = 3, OTTOMAN_FIELD = 11 };

struct scene {
    struct work_bench bench;
    struct arena arena;
    struct drawing drawing;
    int64_t box, side, edge, chosen, layer;
};

static int begin(void **state)
{
    static struct scene scene;
    scene = (struct scene){.box = HEADBOARD_C, .side = SIDE_FRONT, .edge = EDGE_TOP};
    work_case(&scene.bench, "headboard");
    arena_init(&scene.arena);
    *state = &scene;
    return 0;
}

static int end(void **state)
{
    struct scene *scene = *state;
    arena_release(&scene->arena);
    work_end(&scene->bench);
    return 0;
}

static void run_section(void *context)
{
    struct scene *scene = context;
    draw_section(&scene->drawing, scene->bench.plan, scene->box, scene->side, scene->edge,
                 scene->chosen, &scene->arena);
}

static void run_field(void *context)
{
    struct scene *scene = context;
    draw_field(&scene->drawing, scene->bench.plan, scene->layer, &scene->arena);
}

static void draw(struct scene *scene, void (*run)(void *))
{
    assert_true(arena_try(&scene->arena, run, scene));
}

/* Whether a mark of the kind holds the place. */
static bool is_at(const struct drawing *drawing, enum mark_kind kind, int64_t u, int64_t v)
{
    for (size_t i = 0; i < drawing->marks.count; i++) {
        const struct mark *mark = &drawing->marks.at[i];
        if (mark->kind == kind && u >= mark->area.u0 && u <= mark->area.u1 && v >= mark->area.v0 &&
            v <= mark->area.v1)
            return true;
    }
    return false;
}

/* 1/2 in of plywood; on it 2 in of foam, 1/2 in of batting that is pulled to 1/4, the cover. */
static void layers_lie_on_each_other_as_thick_as_they_are(void **state)
{
    struct scene *scene = *state;
    const int64_t u = IN(2);
    draw(scene, run_section);
    assert_true(is_at(&scene->drawing, MARK_CUT_PANEL, u, -IN(0.25)));
    assert_false(is_at(&scene->drawing, MARK_CUT_PANEL, u, -IN(0.75)));
    assert_true(is_at(&scene->drawing, MARK_CUT_FOAM, u, IN(1)));
    assert_false(is_at(&scene->drawing, MARK_CUT_FOAM, u, IN(2.125)));
    assert_true(is_at(&scene->drawing, MARK_CUT_BATTING, u, IN(2.125)));
    assert_true(is_at(&scene->drawing, MARK_CUT_COVER, u, IN(2.25)));
    assert_true(has_label(&scene->drawing, "foam 2 in"));
    assert_true(has_label(&scene->drawing, "panel 1/2 in"));
}

/* Over the top edge batting and cover go on, down the side and on to the back, 3 in behind; the
 * foam ends there. */
static void what_is_wrapped_goes_round_the_edge_to_the_back(void **state)
{
    struct scene *scene = *state;
    draw(scene, run_section);
    assert_false(is_at(&scene->drawing, MARK_CUT_FOAM, -IN(0.125), -IN(1)));
    assert_true(is_at(&scene->drawing, MARK_CUT_BATTING, -IN(0.125), -IN(1)));
    assert_true(is_at(&scene->drawing, MARK_CUT_COVER, -IN(0.25), -IN(1)));
    assert_true(is_at(&scene->drawing, MARK_CUT_COVER, IN(0.5), -IN(3)));
    assert_true(marks_of(&scene->drawing, MARK_CUT_STAPLE) > 0);
    assert_true(has_label(&scene->drawing, "lands 1-1/2 in"));
    assert_true(is_at(&scene->drawing, MARK_CUT_WOOD, IN(0.5), -IN(2)));
}

/* The foam begins 12 in from the bottom: there batting lies on the wood. */
static void a_slab_that_stops_short_is_not_at_that_edge(void **state)
{
    struct scene *scene = *state;
    scene->edge = EDGE_BOTTOM;
    draw(scene, run_section);
    assert_int_equal(marks_of(&scene->drawing, MARK_CUT_FOAM), 0);
    assert_true(is_at(&scene->drawing, MARK_CUT_BATTING, IN(2), IN(0.125)));
    assert_true(is_at(&scene->drawing, MARK_CUT_COVER, IN(2), IN(0.25)));
}

static void the_layer_that_is_looked_at_is_marked(void **state)
{
    struct scene *scene = *state;
    for (size_t i = 0; i < scene->bench.model.layers.count; i++) {
        if (scene->bench.model.layers.at[i].kind == LAYER_FOAM)
            scene->chosen = scene->bench.model.layers.at[i].key;
    }
    draw(scene, run_section);
    assert_int_equal(marks_of(&scene->drawing, MARK_CUT_FOAM), 0);
    assert_true(is_at(&scene->drawing, MARK_CUT_CHOSEN, IN(2), IN(1)));
}

static void a_face_without_padding_has_no_section(void **state)
{
    struct scene *scene = *state;
    assert_true(draw_has_section(scene->bench.plan, HEADBOARD_C, SIDE_FRONT));
    assert_false(draw_has_section(scene->bench.plan, HEADBOARD_C, SIDE_LEFT));
}

/* ---- tufting ---- */

static void take_ottoman(struct scene *scene)
{
    work_end(&scene->bench);
    work_case(&scene->bench, "ottoman");
    scene->layer = OTTOMAN_FIELD;
}

/* 4 by 2 diamonds: five rows of four and five buttons in turn; between two rows next to each other
 * each of the four is joined to two of the five. */
static void diamonds_have_buttons_at_their_corners_and_pleats_along_their_sides(void **state)
{
    struct scene *scene = *state;
    take_ottoman(scene);
    draw(scene, run_field);
    assert_int_equal(marks_of(&scene->drawing, MARK_BUTTON) +
                         marks_of(&scene->drawing, MARK_BLOCKER),
                     4 + 5 + 4 + 5 + 4);
    assert_int_equal(marks_of(&scene->drawing, MARK_PLEAT), 4 * 4 * 2);
    assert_true(has_label(&scene->drawing, "border 4 in"));
    assert_true(has_label(&scene->drawing, "22 buttons"));
}

/* 4 by 2 squares: three rows of five. */
static void squares_have_pleats_beside_and_above(void **state)
{
    struct scene *scene = *state;
    take_ottoman(scene);
    scene->bench.model.tuftings.at[0].pattern = PATTERN_SQUARE;
    work_plan(&scene->bench);
    draw(scene, run_field);
    assert_int_equal(
        marks_of(&scene->drawing, MARK_BUTTON) + marks_of(&scene->drawing, MARK_BLOCKER), 3 * 5);
    assert_int_equal(marks_of(&scene->drawing, MARK_PLEAT), 3 * 4 + 2 * 5);
}

static void buttons_in_uncut_foam_have_no_pleats(void **state)
{
    struct scene *scene = *state;
    take_ottoman(scene);
    scene->bench.model.tuftings.at[0].pattern = PATTERN_SHALLOW;
    work_plan(&scene->bench);
    draw(scene, run_field);
    assert_true(marks_of(&scene->drawing, MARK_BUTTON) > 0);
    assert_int_equal(marks_of(&scene->drawing, MARK_PLEAT), 0);
}

/* Members that reach up to the panel of the top, that is 3/4 in thick. */
static size_t buttons_over_members(const struct plan *plan, int64_t box, int64_t top)
{
    size_t found = 0;
    for (size_t i = 0; i < plan->tufts.count; i++) {
        const struct tuft *tuft = &plan->tufts.at[i];
        bool over = false;
        for (size_t k = 0; k < plan->members.count; k++) {
            const struct solid *solid = &plan->members.at[k].solid;
            over |= plan->members.at[k].box == box && solid->high.z >= top - IN(1) &&
                    solid->low.x <= tuft->u && tuft->u < solid->high.x && solid->low.y <= tuft->v &&
                    tuft->v < solid->high.y;
        }
        found += over;
    }
    return found;
}

/* A board has nothing behind it; made a crate it has, and a stick goes across under the buttons. */
static void holes_that_meet_a_member_are_marked(void **state)
{
    struct scene *scene = *state;
    take_ottoman(scene);
    draw(scene, run_field);
    assert_int_equal(marks_of(&scene->drawing, MARK_BLOCKER), 0);
    const struct layer *layer = MODEL_FIND(&scene->bench.model, layer, OTTOMAN_FIELD);
    struct box *box = model_find(&scene->bench.model, ENTITY_box, layer->box);
    box->frame = FRAME_CRATE;
    box->height = IN(6);
    box->stick = scene->bench.model.boxes.at[0].stick;
    struct member *member = MODEL_ADD(&scene->bench.model, member);
    member->box = box->key;
    member->kind = MEMBER_RAIL;
    member->axis = AXIS_X;
    member->x = IN(1.5);
    member->y = box->depth / 2 - IN(0.75);
    member->z = box->height - IN(1.5);
    member->length = box->width - IN(3);
    work_plan(&scene->bench);
    draw(scene, run_field);
    size_t over = buttons_over_members(scene->bench.plan, box->key, box->height);
    assert_true(over >= 4);
    assert_int_equal(marks_of(&scene->drawing, MARK_BLOCKER), over);
}

static void a_layer_without_tufts_has_no_field(void **state)
{
    struct scene *scene = *state;
    scene->layer = scene->bench.model.layers.at[0].key;
    assert_false(draw_has_field(scene->bench.plan, scene->layer));
    draw(scene, run_field);
    assert_int_equal(scene->drawing.marks.count, 0);
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, end)
    const struct CMUnitTest tests[] = {
        FACT(layers_lie_on_each_other_as_thick_as_they_are),
        FACT(what_is_wrapped_goes_round_the_edge_to_the_back),
        FACT(a_slab_that_stops_short_is_not_at_that_edge),
        FACT(the_layer_that_is_looked_at_is_marked),
        FACT(a_face_without_padding_has_no_section),
        FACT(diamonds_have_buttons_at_their_corners_and_pleats_along_their_sides),
        FACT(squares_have_pleats_beside_and_above),
        FACT(buttons_in_uncut_foam_have_no_pleats),
        FACT(holes_that_meet_a_member_are_marked),
        FACT(a_layer_without_tufts_has_no_field),
    };
    int failed = cmocka_run_group_tests_name("section", tests, NULL, NULL);
    return failed ? 1 : 0;
}
