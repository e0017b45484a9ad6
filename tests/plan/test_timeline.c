/*
 * What the acts of joining wait for, of models of a box and a few layers: which rule holds which
 * act back (TRADE rules P26 and S14, common practice, no source).
 */
#include "plan/access_time.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

struct bench {
    struct arena arena;
    struct model model;
    struct plan plan;
    struct planning planning;
    struct tasks tasks; /* none: no join */
};

static int begin(void **state)
{
    static struct bench bench;

    bench = (struct bench){.planning = {.model = &bench.model,
                                        .plan = &bench.plan,
                                        .arena = &bench.arena,
                                        .value = bench.plan.value}};
    arena_init(&bench.arena);
    model_init(&bench.model, &bench.arena);
    MODEL_ADD(&bench.model, box);
    *state = &bench;
    return 0;
}

static int end(void **state)
{
    struct bench *bench = *state;

    arena_release(&bench->arena);
    return 0;
}

/* Indices of layers among the model's; `add` gives that of the one it added. */
static size_t add(struct bench *bench, int64_t kind, int64_t shape, int64_t side)
{
    struct layer *layer = MODEL_ADD(&bench->model, layer);

    layer->box = bench->model.boxes.at[0].key;
    layer->kind = kind;
    layer->shape = shape;
    layer->side = side;
    layer->left = layer->right = layer->top = layer->bottom = ENDING_WRAP;
    return bench->model.layers.count - 1;
}

static bool waits(const struct timeline *timeline, size_t before, size_t after, const char *rule)
{
    for (size_t i = 0; i < timeline->edges.count; i++)
        if (timeline->edges.at[i].before == before && timeline->edges.at[i].after == after &&
            strcmp(timeline->rules.at[i], rule) == 0)
            return true;
    return false;
}

static bool layer_waits(struct bench *bench, size_t before, size_t after)
{
    struct timeline timeline = timeline_make(&bench->planning, &bench->tasks);

    return waits(&timeline, timeline.first_layer + before, timeline.first_layer + after, "P26");
}

static bool layer_waits_for_panel(struct bench *bench, size_t layer)
{
    struct timeline timeline = timeline_make(&bench->planning, &bench->tasks);

    return waits(&timeline, timeline.first_facing, timeline.first_layer + layer, "S14");
}

static void a_cover_waits_for_the_padding_under_it(void **state)
{
    struct bench *bench = *state;
    size_t foam = add(bench, LAYER_FOAM, SHAPE_SLAB, SIDE_FRONT);
    size_t cover = add(bench, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT);

    assert_true(layer_waits(bench, foam, cover));
    assert_false(layer_waits(bench, cover, foam));
}

/* Batting that is wrapped round to the back lies under the lining that closes the back. */
static void a_lining_that_closes_the_back_waits_for_padding_wrapped_to_it(void **state)
{
    struct bench *bench = *state;
    size_t batting = add(bench, LAYER_BATTING, SHAPE_WRAPPED, SIDE_FRONT);
    size_t lining = add(bench, LAYER_LINING, SHAPE_FLAT, SIDE_BACK);

    assert_true(layer_waits(bench, batting, lining));
}

/* A face that closes is closed after its cover is on, whose edge it hides. */
static void a_lining_that_closes_a_face_is_not_held_to_come_before_covers(void **state)
{
    struct bench *bench = *state;
    size_t lining = add(bench, LAYER_LINING, SHAPE_FLAT, SIDE_BACK);
    size_t cover = add(bench, LAYER_COVER, SHAPE_FLAT, SIDE_FRONT);

    assert_false(layer_waits(bench, lining, cover));
}

static void a_lining_under_a_cover_waits_as_the_cover_does(void **state)
{
    struct bench *bench = *state;
    size_t foam = add(bench, LAYER_FOAM, SHAPE_SLAB, SIDE_FRONT);
    size_t lining = add(bench, LAYER_LINING, SHAPE_WRAPPED, SIDE_FRONT);
    size_t cover = add(bench, LAYER_COVER, SHAPE_WRAPPED, SIDE_FRONT);

    assert_true(layer_waits(bench, foam, lining));
    assert_true(layer_waits(bench, lining, cover));
}

static void whatever_lies_on_a_panel_waits_for_it(void **state)
{
    static const struct {
        int64_t kind, side;
        bool waits;
    } cases[] = {
        {LAYER_FOAM, SIDE_BACK, true},     {LAYER_COVER, SIDE_BACK, true},
        {LAYER_LINING, SIDE_BACK, true}, /* that closes: no cover is over it */
        {LAYER_LINING, SIDE_FRONT, false}, {LAYER_OUTSIDE_BACK, SIDE_BACK, true},
        {LAYER_TRIM, SIDE_BACK, false}, /* decoration may come whenever it likes */
    };
    struct bench *bench = *state;
    struct facing *facing = MODEL_ADD(&bench->model, facing);

    facing->box = bench->model.boxes.at[0].key;
    facing->side = SIDE_BACK;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bench->model.layers.count = 0;
        size_t layer = add(bench, cases[i].kind, SHAPE_FLAT, cases[i].side);

        assert_int_equal(layer_waits_for_panel(bench, layer), cases[i].waits);
    }
}

int main(void)
{
#define TIMELINE_TEST(name) cmocka_unit_test_setup_teardown(name, begin, end)
    const struct CMUnitTest tests[] = {
        TIMELINE_TEST(a_cover_waits_for_the_padding_under_it),
        TIMELINE_TEST(a_lining_that_closes_the_back_waits_for_padding_wrapped_to_it),
        TIMELINE_TEST(a_lining_that_closes_a_face_is_not_held_to_come_before_covers),
        TIMELINE_TEST(a_lining_under_a_cover_waits_as_the_cover_does),
        TIMELINE_TEST(whatever_lies_on_a_panel_waits_for_it),
    };
    int failed = cmocka_run_group_tests_name("timeline", tests, NULL, NULL);

    return failed ? 1 : 0;
}
