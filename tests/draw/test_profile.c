/*
 * Outlines as chains, and what they make of the blocks of a box. Circles are those of plane
 * geometry: a chord of 48 with a rise of 12 belongs to a radius of 30, for 18, 24 and 30 are 3, 4
 * and 5.
 */
#include "../base/inch.h"
#include "draw/profile.h"
#include "plan/curve.h"
#include "plan/geometry.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>

#define NEAR_ENOUGH (2 * LENGTH_MM)

struct scene {
    struct arena arena;
    struct model model;
    struct box *box;
    struct chain chain;
    struct profile profile;
    struct solid solid;
    bool bent;
};

static void run(void *context)
{
    struct scene *scene = context;
    struct crown crown = {.box = scene->box, .over = IN(0.5)};

    scene->chain = chain_of(&scene->model, scene->box, NEAR_ENOUGH, &scene->arena);
    if (curve_has(scene->box, scene->box->main_side))
        crown.chain = scene->chain;
    scene->profile = scene->bent ? profile_bent(&crown, &scene->solid, &scene->arena)
                                 : profile_cut(&crown, &scene->solid, &scene->arena);
}

static void add_box(void *context)
{
    struct scene *scene = context;

    model_init(&scene->model, &scene->arena);
    scene->box = MODEL_ADD(&scene->model, box);
    scene->box->name = "H";
    scene->box->width = IN(48);
    scene->box->depth = IN(10);
    scene->box->height = IN(30);
}

/* A box 48 x 10 x 30 whose front is seen. */
static int begin(void **state)
{
    static struct scene scene;

    scene = (struct scene){.bent = false};
    arena_init(&scene.arena);
    assert_true(arena_try(&scene.arena, add_box, &scene));
    scene.solid = (struct solid){{0, 0, 0}, box_size(scene.box)};
    *state = &scene;
    return 0;
}

static int end(void **state)
{
    arena_release(&((struct scene *)*state)->arena);
    return 0;
}

static void make(struct scene *scene, enum outline_word outline, double rise)
{
    scene->box->outline = (int64_t)outline;
    scene->box->rise = IN(rise);
    assert_true(arena_try(&scene->arena, run, scene));
}

struct point_at {
    double u, v;
};

struct points {
    struct scene *scene;
    const struct point_at *at;
    size_t count;
};

static void add_points(void *context)
{
    const struct points *points = context;

    for (size_t i = 0; i < points->count; i++) {
        struct outline_point *point = MODEL_ADD(&points->scene->model, outline_point);

        point->box = points->scene->box->key;
        point->rank = (int64_t)i + 1;
        point->u = IN(points->at[i].u);
        point->v = IN(points->at[i].v);
    }
}

static void make_points(struct scene *scene, const struct point_at *at, size_t count)
{
    struct points points = {scene, at, count};

    assert_true(arena_try(&scene->arena, add_points, &points));
    make(scene, OUTLINE_POINTS, 0);
}

/* ---- chains ---- */

static double from_centre(const struct chain_place *place, double u, double v)
{
    return hypot((double)place->u - u * (double)LENGTH_INCH,
                 (double)place->v - v * (double)LENGTH_INCH) /
           (double)LENGTH_INCH;
}

/* Every place lies on the circle round 24, 0, and so does the middle of each chord, to 2 mm. */
static void the_chain_of_an_arch_is_as_near_to_it_as_was_asked(void **state)
{
    struct scene *scene = *state;
    const struct chain_place *places;

    make(scene, OUTLINE_ARCH, 12);
    places = scene->chain.of.at;
    assert_in_range(scene->chain.of.count, 5, 40);
    assert_int_equal(places[0].u, 0);
    assert_int_equal(places[scene->chain.of.count - 1].u, IN(48));
    for (size_t i = 0; i < scene->chain.of.count; i++) {
        assert_true(fabs(from_centre(&places[i], 24, 0) - 30) < 0.001);
        assert_false(places[i].corner);
        if (i > 0) {
            struct chain_place middle = {(places[i - 1].u + places[i].u) / 2,
                                         (places[i - 1].v + places[i].v) / 2, false};
            assert_true(places[i - 1].u < places[i].u);
            assert_true(from_centre(&middle, 24, 0) > 30 - 2 / 25.4);
        }
    }
}

static void a_slope_is_one_line(void **state)
{
    struct scene *scene = *state;

    make(scene, OUTLINE_SLOPE, 6);
    assert_int_equal(scene->chain.of.count, 2);
    assert_int_equal(scene->chain.of.at[0].v, IN(30));
    assert_int_equal(scene->chain.of.at[1].v, IN(24));
}

/* A quarter round of 10 begins upright, and its straight top is one line. */
static void a_shoulder_is_two_quarter_rounds_and_a_line(void **state)
{
    struct scene *scene = *state;
    size_t level = 0;

    make(scene, OUTLINE_SHOULDER, 10);
    for (size_t i = 0; i < scene->chain.of.count; i++) {
        const struct chain_place *place = &scene->chain.of.at[i];

        assert_false(place->corner);
        level += place->v == IN(30);
        if (place->u <= IN(10))
            assert_true(fabs(from_centre(place, 10, 20) - 10) < 0.001);
        else
            assert_true(fabs(from_centre(place, 38, 20) - 10) < 0.001);
    }
    assert_int_equal(level, 2);
}

/* Up to a peak, down to a step, level from there, and back along the bottom: the peak and both ends
 * of the step are corners. */
static void points_make_corners_and_steps(void **state)
{
    static const struct point_at at[] = {{0, 20},  {16, 30}, {32, 20}, {32, 12},
                                         {48, 12}, {48, 0},  {0, 0}};
    struct scene *scene = *state;
    const struct chain_place *places;

    make_points(scene, at, sizeof at / sizeof *at);
    places = scene->chain.of.at;
    assert_int_equal(scene->chain.of.count, 5);
    for (size_t i = 0; i < 5; i++) {
        assert_int_equal(places[i].u, IN(at[i].u));
        assert_in_range(places[i].v, IN(at[i].v) - 2, IN(at[i].v) + 2);
        assert_int_equal(places[i].corner, i >= 1 && i <= 3);
    }
}

/* Every 10 degrees of the circle round 24, 0: no corner is meant. */
static void points_that_turn_little_are_a_round(void **state)
{
    struct point_at at[11] = {[9] = {48, 0}};
    struct scene *scene = *state;

    for (int i = 0; i < 9; i++)
        at[i] = (struct point_at){24 - 24 * cos((i * 22.5) * 0.0174532925),
                                  24 * sin((i * 22.5) * 0.0174532925)};
    for (int i = 0; i < 9; i++)
        at[i].v = at[i].v / 3 + 4; /* an ellipse */
    make_points(scene, at, 11);
    assert_true(scene->chain.of.count >= 9);
    for (size_t i = 2; i + 2 < scene->chain.of.count; i++)
        assert_false(scene->chain.of.at[i].corner);
}

/* ---- blocks ---- */

static void a_rectangle_has_two_places(void **state)
{
    struct scene *scene = *state;

    make(scene, OUTLINE_RECTANGLE, 0);
    assert_int_equal(scene->profile.of.count, 2);
    assert_int_equal(scene->profile.of.at[1].high.v, IN(30));
}

/* A stick under the arch is whole, and what stands up into it is cut: at 36 from the left, half
 * way out, the circle lies sqrt(30^2 - 12^2) = 27.495 high, and the ends at 18. */
static void what_stands_up_into_an_arch_is_cut_along_it(void **state)
{
    struct scene *scene = *state;
    const struct profile_place *last;

    scene->solid.high.z = IN(2);
    make(scene, OUTLINE_ARCH, 12);
    assert_int_equal(scene->profile.of.count, 2);
    assert_int_equal(scene->profile.of.at[0].high.v, IN(2));
    scene->solid = (struct solid){{IN(36), 0, IN(20)}, {IN(48), IN(1), IN(30)}};
    make(scene, OUTLINE_ARCH, 12);
    last = &scene->profile.of.at[scene->profile.of.count - 1];
    assert_int_equal(scene->profile.of.at[0].low.u, IN(36));
    assert_true(fabs(from_centre(&scene->profile.of.at[0].high, 24, 0) - 30) < 2 / 25.4);
    assert_in_range(scene->profile.of.at[0].high.v, IN(27.495 - 0.08), IN(27.495 + 0.001));
    /* it ends where the arch comes down to its foot: sqrt(30^2 - 20^2) = 22.361 from the middle */
    assert_int_equal(last->high.v, IN(20));
    assert_int_equal(last->low.v, IN(20));
    assert_in_range(last->low.u, IN(24 + 22.361 - 0.1), IN(24 + 22.361 + 0.001));
}

/* Half an inch is bent over it: a post that ends below that ends there all along. */
static void wood_under_a_bent_panel_ends_below_it(void **state)
{
    struct scene *scene = *state;

    scene->solid = (struct solid){{IN(24), 0, IN(4)}, {IN(25), IN(1), IN(29.5)}};
    make(scene, OUTLINE_ARCH, 12);
    assert_in_range(scene->profile.of.at[0].high.v, IN(29.5) - 2, IN(29.5));
    assert_true(scene->profile.of.at[scene->profile.of.count - 1].high.v < IN(29.5));
}

static void nothing_is_left_of_what_lies_over_the_outline(void **state)
{
    struct scene *scene = *state;

    scene->solid = (struct solid){{0, 0, IN(27)}, {IN(6), IN(1), IN(30)}};
    make(scene, OUTLINE_ARCH, 12);
    assert_int_equal(scene->profile.of.count, 0);
}

/* Two inches of foam over the arch: 30 from the centre below, 32 above. */
static void what_is_bent_over_an_arch_is_as_thick_everywhere(void **state)
{
    struct scene *scene = *state;

    scene->solid = (struct solid){{0, 0, IN(30)}, {IN(48), IN(10), IN(32)}};
    scene->bent = true;
    make(scene, OUTLINE_ARCH, 12);
    assert_true(scene->profile.of.count > 4);
    for (size_t i = 1; i + 1 < scene->profile.of.count; i++) {
        assert_true(fabs(from_centre(&scene->profile.of.at[i].low, 24, 0) - 30) < 0.01);
        assert_true(fabs(from_centre(&scene->profile.of.at[i].high, 24, 0) - 32) < 0.01);
    }
}

/* A panel 2 in thick inside of quarter rounds of 1 cannot turn back in itself. */
static void what_is_thicker_than_its_round_does_not_turn_back(void **state)
{
    struct scene *scene = *state;

    scene->solid = (struct solid){{0, 0, IN(28)}, {IN(48), IN(10), IN(30)}};
    scene->bent = true;
    make(scene, OUTLINE_SHOULDER, 1);
    assert_true(scene->profile.of.count > 2);
    for (size_t i = 1; i < scene->profile.of.count; i++) {
        assert_true(scene->profile.of.at[i].low.u >= scene->profile.of.at[i - 1].low.u);
        assert_true(scene->profile.of.at[i].high.u >= scene->profile.of.at[i - 1].high.u);
    }
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, end)
    const struct CMUnitTest tests[] = {
        FACT(the_chain_of_an_arch_is_as_near_to_it_as_was_asked),
        FACT(a_slope_is_one_line),
        FACT(a_shoulder_is_two_quarter_rounds_and_a_line),
        FACT(points_make_corners_and_steps),
        FACT(points_that_turn_little_are_a_round),
        FACT(a_rectangle_has_two_places),
        FACT(what_stands_up_into_an_arch_is_cut_along_it),
        FACT(wood_under_a_bent_panel_ends_below_it),
        FACT(nothing_is_left_of_what_lies_over_the_outline),
        FACT(what_is_bent_over_an_arch_is_as_thick_everywhere),
        FACT(what_is_thicker_than_its_round_does_not_turn_back),
    };
    int failed = cmocka_run_group_tests_name("profile", tests, NULL, NULL);
    return failed ? 1 : 0;
}
