/* The piece from its corners: sizes, corners, what is moved, what is marked. */
#include "sketched.h"

#include "joined.h"

#include "draw/piece.h"
#include "plan/geometry.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>
#include <stdlib.h>
#include <string.h>

struct scene {
    struct joined piece;
    struct sketched sketched;
    struct drawing drawing;
    struct piece_ask ask;
    int64_t join;
};

static int begin(void **state)
{
    static struct scene scene;
    scene.join = joined_headboard(&scene.piece);
    scene.ask = (struct piece_ask){.box = 0};
    sketched_begin(&scene.sketched);
    *state = &scene;
    return 0;
}

static int end(void **state)
{
    struct scene *scene = *state;
    sketched_end(&scene->sketched);
    joined_end(&scene->piece);
    return 0;
}

static void run(void *context)
{
    struct scene *scene = context;
    draw_piece(&scene->drawing, scene->piece.plan, &scene->ask, &scene->sketched.arena);
}

static void draw(struct scene *scene)
{
    assert_true(arena_try(&scene->sketched.arena, run, scene));
}

static int64_t wide(const struct scene *scene)
{
    return scene->drawing.bounds.u1 - scene->drawing.bounds.u0;
}

static int64_t high(const struct scene *scene)
{
    return scene->drawing.bounds.v1 - scene->drawing.bounds.v0;
}

/* One bare box, of 40 by 20 by 30 in. */
static int64_t one_box(struct scene *scene)
{
    joined_end(&scene->piece);
    joined_start(&scene->piece, 2.5);
    int64_t key = joined_box(&scene->piece, FRAME_CUSHION, 40, 20, 30)->key;
    joined_plan(&scene->piece);
    return key;
}

/* ISO 5456-3, isometric axonometry: two of the axes rise by 30 degrees from the level, the third
 * stands upright, and lengths along all three are to one scale. */
static void lengths_along_all_three_axes_are_to_one_scale(void **state)
{
    struct scene *scene = *state;
    double level = sqrt(0.75); /* the cosine of 30 degrees */
    one_box(scene);
    for (int corner = 0; corner < CORNER_COUNT; corner++) {
        scene->ask.corner = (enum corner)corner;
        draw(scene);
        assert_true(llabs(wide(scene) - llround((double)IN(60) * level)) <= 2);
        assert_true(llabs(high(scene) - IN(30 + 60 / 2)) <= 2);
        assert_int_equal(marks_of(&scene->drawing, MARK_EDGE), 9);
    }
}

/* From the front right the width runs to the left, and is the longer side there. */
static void the_corners_are_seen_one_after_the_other(void **state)
{
    static const bool longer_left[] = {[CORNER_FRONT_RIGHT] = true,
                                       [CORNER_BACK_RIGHT] = false,
                                       [CORNER_BACK_LEFT] = true,
                                       [CORNER_FRONT_LEFT] = false};
    struct scene *scene = *state;
    one_box(scene);
    for (int corner = 0; corner < CORNER_COUNT; corner++) {
        const struct area *bounds = &scene->drawing.bounds;
        scene->ask.corner = (enum corner)corner;
        draw(scene);
        /* the lowest corner parts the two sides */
        int64_t lowest = 0;
        for (size_t i = 0; i < scene->drawing.marks.count; i++) {
            const struct area *line = &scene->drawing.marks.at[i].area;
            lowest = line->v0 == bounds->v0 ? line->u0 : lowest;
            lowest = line->v1 == bounds->v0 ? line->u1 : lowest;
        }
        assert_int_equal(lowest - bounds->u0 > bounds->u1 - lowest, longer_left[corner]);
    }
}

static void a_box_is_seen_from_the_corner_where_its_side_shows(void **state)
{
    struct scene *scene = *state;
    int64_t box = one_box(scene);
    const struct plan *plan = scene->piece.plan;
    assert_int_equal(piece_corner_of(plan, box, SIDE_FRONT), CORNER_FRONT_RIGHT);
    assert_int_equal(piece_corner_of(plan, box, SIDE_LEFT), CORNER_FRONT_LEFT);
    assert_int_equal(piece_corner_of(plan, box, SIDE_BACK), CORNER_BACK_RIGHT);
    assert_int_equal(piece_corner_of(plan, box, SIDE_TOP), CORNER_FRONT_RIGHT);
}

/* The headboard and its wing touch; taken apart they do not, and the picture is larger. */
static void boxes_go_apart_along_their_join(void **state)
{
    struct scene *scene = *state;
    draw(scene);
    int64_t closed = wide(scene);
    scene->ask.apart = true;
    draw(scene);
    assert_true(wide(scene) > closed);
}

static void a_join_shows_both_its_boxes_and_every_hole_on_both(void **state)
{
    struct scene *scene = *state;
    const struct join *join = MODEL_FIND(&scene->piece.model, join, scene->join);
    size_t points = joined_junction(&scene->piece, scene->join)->point_count;
    scene->ask = piece_ask_of(scene->piece.plan, ENTITY_join, scene->join);
    draw(scene);
    assert_int_equal(marks_of(&scene->drawing, MARK_POINT), points);
    assert_int_equal(marks_of(&scene->drawing, MARK_TIP), points);
    assert_true(
        has_label(&scene->drawing, MODEL_FIND(&scene->piece.model, box, join->box_a)->name));
    assert_true(
        has_label(&scene->drawing, MODEL_FIND(&scene->piece.model, box, join->box_b)->name));
}

/* Where it shows it is hatched; where it does not its edges are dotted. */
static void what_is_chosen_is_marked_even_where_it_is_hidden(void **state)
{
    struct scene *scene = *state;
    const struct join *join = MODEL_FIND(&scene->piece.model, join, scene->join);
    draw(scene);
    assert_int_equal(marks_of(&scene->drawing, MARK_HATCH), 0);
    assert_int_equal(marks_of(&scene->drawing, MARK_BEHIND), 0);
    scene->ask = piece_ask_of(scene->piece.plan, ENTITY_box, join->box_a);
    draw(scene);
    assert_true(marks_of(&scene->drawing, MARK_HATCH) > 3);
    assert_true(marks_of(&scene->drawing, MARK_BEHIND) >= 3);
}

/* Panels and layers each at their own distance from the frame, named. */
static void a_box_taken_apart_names_what_was_lifted_off(void **state)
{
    struct scene *scene = *state;
    const struct join *join = MODEL_FIND(&scene->piece.model, join, scene->join);
    joined_layer(&scene->piece, join->box_a, LAYER_FOAM, SHAPE_SLAB, SIDE_FRONT);
    joined_plan(&scene->piece);
    scene->ask = (struct piece_ask){.box = join->box_a, .apart = true};
    draw(scene);
    assert_true(has_label(&scene->drawing, "foam"));
    assert_true(has_label(&scene->drawing, scene->piece.plan->panels.at[0].label));
}

/* 48 in wide, 10 deep and 30 high, of which the arch rises 12. */
static void draw_arch(struct scene *scene)
{
    joined_end(&scene->piece);
    joined_start(&scene->piece, 2.5);
    struct box *box = joined_box(&scene->piece, FRAME_CUSHION, 48, 10, 30);
    box->outline = OUTLINE_ARCH;
    box->rise = IN(12);
    joined_plan(&scene->piece);
    draw(scene);
}

/* Of an arch 48 wide and 12 high, part of a circle of 30, the highest place of the picture is where
 * it falls by one in two: 30 / sqrt 5 off its middle. With up = z - (x + y) / 2, and the box 30
 * high, that is 30 - 30 + 30 sqrt 5 / 2 - 48 / 4 over the corner at the back. */
static void an_arch_is_as_high_as_its_contour(void **state)
{
    struct scene *scene = *state;
    int64_t wanted = (int64_t)((15 * sqrt(5) - 12) * (double)LENGTH_INCH);
    draw_arch(scene);
    assert_in_range(scene->drawing.bounds.v1, wanted - 2 * LENGTH_MM, wanted + 2);
    /* both rims of many chords, and but for them the nine edges less the top's far one */
    assert_true(marks_of(&scene->drawing, MARK_EDGE) > 16);
    scene->ask.corner = CORNER_BACK_LEFT; /* it is the same from there */
    int64_t wide_there = wide(scene);
    int64_t high_there = high(scene);
    draw(scene);
    assert_true(llabs(wide(scene) - wide_there) <= 2);
    assert_true(llabs(high(scene) - high_there) <= 2);
}

/* Both rims of the arch, and of the one at the back what its top does not hide. */
static void an_arch_shows_as_one(void **state)
{
    struct scene *scene = *state;
    draw_arch(scene);
    sketched_raster(&scene->sketched, &scene->drawing, 14, 44, RASTER_LINES);
    assert_sketched(&scene->sketched, "     ⣀⠤⠒⠊⠉⠉⠉⠉⠒⠢⣀\n"
                                      " ⢀⡤⠶⠛⠒⠢⠤⣀⡀      ⠑⠢⣀\n"
                                      "⡎⠁       ⠈⠉⠒⠤⡀     ⠑⠢⡀\n"
                                      "⡇            ⠈⠢⡀     ⠈⢢\n"
                                      "⡇              ⠈⠢⡀     ⠱⡀\n"
                                      "⡇                ⠈⠢⡀    ⠈⢆\n"
                                      "⡇                  ⠑⢄    ⠈⠢⡀\n"
                                      "⠣⢄⡀                 ⠈⢢    ⢀⣱\n"
                                      "  ⠈⠑⠤⣀                ⠣⡠⠔⠊⠁⢸\n"
                                      "      ⠉⠒⢄⡀             ⡇   ⢸\n"
                                      "         ⠈⠑⠢⣀          ⡇   ⢸\n"
                                      "             ⠉⠒⢄⡀      ⡇   ⢸\n"
                                      "                ⠈⠑⠢⢄   ⡇  ⢀⡸\n"
                                      "                    ⠉⠒⠤⡧⠔⠊⠁\n");
}

static void no_boxes_give_an_empty_picture(void **state)
{
    struct scene *scene = *state;
    joined_end(&scene->piece);
    joined_start(&scene->piece, 2.5);
    joined_plan(&scene->piece);
    draw(scene);
    assert_int_equal(scene->drawing.marks.count, 0);
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, end)
    const struct CMUnitTest tests[] = {
        FACT(lengths_along_all_three_axes_are_to_one_scale),
        FACT(the_corners_are_seen_one_after_the_other),
        FACT(a_box_is_seen_from_the_corner_where_its_side_shows),
        FACT(boxes_go_apart_along_their_join),
        FACT(a_join_shows_both_its_boxes_and_every_hole_on_both),
        FACT(what_is_chosen_is_marked_even_where_it_is_hidden),
        FACT(a_box_taken_apart_names_what_was_lifted_off),
        FACT(an_arch_is_as_high_as_its_contour),
        FACT(an_arch_shows_as_one),
        FACT(no_boxes_give_an_empty_picture),
    };
    int failed = cmocka_run_group_tests_name("piece", tests, NULL, NULL);
    return failed ? 1 : 0;
}
