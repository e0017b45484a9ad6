/* Taking out and copying items with all that hangs on them. */
#include "dice.h"
#include "fixture.h"
#include "scarce.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

/* ---- taking out ---- */

static void a_box_goes_with_all_that_hangs_on_it(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct small_build build = fixture_build(model);

    /* the box; facing, layer, its edge, its tufting, its opening; member; two joins, a point */
    assert_int_equal(model_remove_count(model, ENTITY_box, build.box_a), 10);
    assert_int_equal(model_remove(model, ENTITY_box, build.box_a), 10);
    assert_int_equal(model->boxes.count, 1);
    assert_int_equal(model->boxes.at[0].key, build.box_b);
    assert_int_equal(model->layers.count + model->layer_edges.count + model->tuftings.count, 0);
    assert_int_equal(model->openings.count + model->joins.count + model->points.count, 0);
    assert_int_equal(model->stocks.count, 3);
    assert_int_equal(model_check(model, NULL, NULL), 0);
}

static void a_join_goes_with_either_of_its_boxes(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct small_build build = fixture_build(model);

    assert_int_equal(model_remove(model, ENTITY_box, build.box_b), 2);
    assert_null(MODEL_FIND(model, join, build.join));
    assert_non_null(MODEL_FIND(model, join, build.wall_join));
    assert_int_equal(model_check(model, NULL, NULL), 0);
}

static void a_reference_that_may_be_empty_is_cleared(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct small_build build = fixture_build(model);

    assert_int_equal(model_remove(model, ENTITY_stock, build.stick), 1);
    assert_int_equal(model->boxes.at[0].stick, 0);
    assert_int_equal(model->boxes.at[1].stick, 0);
    assert_int_equal(model_remove(model, ENTITY_join, build.wall_join), 2);
    assert_int_equal(model->openings.count, 1);
    assert_int_equal(model->openings.at[0].join, 0);
    assert_int_equal(model_check(model, NULL, NULL), 0);
}

static void a_mirror_image_stays_without_its_original(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct small_build build = fixture_build(model);

    model->boxes.at[1].mirror_of = build.box_a;
    model_remove(model, ENTITY_box, build.box_a);
    assert_int_equal(model->boxes.count, 1);
    assert_int_equal(model->boxes.at[0].mirror_of, 0);
}

static void the_build_forgets_a_set_that_goes(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct set *set = MODEL_ADD(model, set);

    set->name = "bed";
    model->build.set = set->key;
    assert_int_equal(model_remove(model, ENTITY_set, set->key), 1);
    assert_int_equal(model->build.set, 0);
}

static void a_hole_goes_with_its_tick_and_is_counted_once_with_its_join(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct small_build build = fixture_build(model);
    struct tick *tick = MODEL_ADD(model, tick);
    struct hole *hole = MODEL_ADD(model, hole);

    tick->step = "drill J";
    hole->tick = tick->key;
    hole->join = build.join;
    assert_int_equal(model_remove_count(model, ENTITY_join, build.join), 2);
    assert_int_equal(model_remove(model, ENTITY_tick, tick->key), 2);
    assert_int_equal(model->holes.count, 0);
    assert_non_null(MODEL_FIND(model, join, build.join));
}

static void nothing_goes_with_a_key_that_is_not_there(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct small_build build = fixture_build(model);

    assert_int_equal(model_remove(model, ENTITY_box, 99), 0);
    assert_int_equal(model_remove(model, ENTITY_box, build.join), 0);
    assert_int_equal(model_remove(model, ENTITY_box, 0), 0);
    assert_int_equal(model_remove_count(model, ENTITY_box, 99), 0);
    assert_int_equal(model->boxes.count, 2);
}

/* ---- copying ---- */

static void a_copied_box_brings_its_parts_under_new_keys(void **state)
{
    struct fixture *fixture = *state;
    struct model *model = &fixture->model;
    struct small_build build = fixture_build(model);
    int64_t next = model->build.next_key;
    int64_t copy;

    FIXTURE_ARM(fixture);
    copy = model_duplicate(model, ENTITY_box, build.box_a);
    assert_int_equal(copy, next);
    assert_int_equal(model->boxes.count, 3);
    assert_int_equal(MODEL_FIND(model, box, copy)->width, model->boxes.at[0].width);
    assert_int_equal(model->facings.count, 2);
    assert_int_equal(model->facings.at[1].box, copy);
    assert_int_equal(model->facings.at[1].stock, build.sheet);
    assert_true(model->facings.at[1].key >= next);
    assert_int_equal(model->members.at[1].box, copy);
    assert_int_equal(model_check(model, NULL, NULL), 0);
}

static void references_among_copies_go_to_copies(void **state)
{
    struct fixture *fixture = *state;
    struct model *model = &fixture->model;
    struct small_build build = fixture_build(model);
    int64_t copy;

    model->layers.at[0].land_box = build.box_a;
    FIXTURE_ARM(fixture);
    copy = model_duplicate(model, ENTITY_box, build.box_a);
    assert_int_equal(model->layers.at[1].box, copy);
    assert_int_equal(model->layers.at[1].land_box, copy);
    assert_int_equal(model->layer_edges.at[1].layer, model->layers.at[1].key);
    assert_int_equal(model->tuftings.at[1].layer, model->layers.at[1].key);
    assert_int_equal(model->openings.at[1].layer, model->layers.at[1].key);
    assert_int_equal(model->openings.at[1].join, model->joins.at[2].key);
    assert_int_equal(model->points.at[1].join, model->joins.at[2].key);
    assert_int_equal(model->layers.at[0].box, build.box_a);
    assert_int_equal(model->openings.at[0].join, build.wall_join);
}

static void a_join_to_a_box_that_stays_alone_is_not_copied(void **state)
{
    struct fixture *fixture = *state;
    struct model *model = &fixture->model;
    struct small_build build = fixture_build(model);

    FIXTURE_ARM(fixture);
    model_duplicate(model, ENTITY_box, build.box_a);
    assert_int_equal(model->joins.count, 3);
    assert_int_equal(model->joins.at[2].target, TARGET_WALL);
}

static void facts_are_not_copied(void **state)
{
    struct fixture *fixture = *state;
    struct model *model = &fixture->model;
    struct small_build build = fixture_build(model);
    struct measure *measure = MODEL_ADD(model, measure);
    struct leftover *leftover = MODEL_ADD(model, leftover);

    measure->box = build.box_a;
    leftover->stock = build.cloth;
    FIXTURE_ARM(fixture);
    model_duplicate(model, ENTITY_box, build.box_a);
    model_duplicate(model, ENTITY_stock, build.cloth);
    assert_int_equal(model->measures.count, 1);
    assert_int_equal(model->leftovers.count, 1);
}

static void a_copied_stock_brings_its_offers_but_nothing_of_the_build(void **state)
{
    struct fixture *fixture = *state;
    struct model *model = &fixture->model;
    struct small_build build = fixture_build(model);
    int64_t copy;

    MODEL_ADD(model, offer)->stock = build.cloth;
    FIXTURE_ARM(fixture);
    copy = model_duplicate(model, ENTITY_stock, build.cloth);
    assert_int_equal(model->offers.count, 2);
    assert_int_equal(model->offers.at[1].stock, copy);
    assert_int_equal(model->layers.count, 1);
}

static void a_copy_has_a_free_name_that_fits(void **state)
{
    struct fixture *fixture = *state;
    struct model *model = &fixture->model;
    struct small_build build = fixture_build(model);
    int64_t copy;

    FIXTURE_ARM(fixture);
    copy = model_duplicate(model, ENTITY_box, build.box_a);
    assert_string_equal(MODEL_FIND(model, box, copy)->name, "A 2");
    copy = model_duplicate(model, ENTITY_box, build.box_a);
    assert_string_equal(MODEL_FIND(model, box, copy)->name, "A 3");
    model->boxes.at[1].name = "\xc3\xa4ngstlich langer Nam"; /* 20 characters, 21 bytes */
    copy = model_duplicate(model, ENTITY_box, build.box_b);
    assert_string_equal(MODEL_FIND(model, box, copy)->name, "\xc3\xa4ngstlich langer N 2");
    assert_int_equal(model_check(model, NULL, NULL), 0);
}

static void there_is_no_copy_of_nothing(void **state)
{
    struct fixture *fixture = *state;

    FIXTURE_ARM(fixture);
    assert_int_equal(model_duplicate(&fixture->model, ENTITY_box, 3), 0);
    assert_int_equal(fixture->model.build.next_key, 1);
}

/* True when request n came and failed. */
static bool duplicate_fails_at(int n)
{
    struct arena arena;
    jmp_buf escape;
    struct model model;
    struct small_build build;

    arena_init(&arena);
    scarce_begin(n);
    arena.escape = &escape;
    if (!setjmp(escape)) {
        model_init(&model, &arena);
        build = fixture_build(&model);
        model_duplicate(&model, ENTITY_box, build.box_a);
        assert_false(scarce_failed());
    } else {
        assert_true(scarce_failed());
    }
    arena_release(&arena);
    assert_int_equal(scarce_end(), 0);
    return scarce_failed();
}

static void building_without_memory_leaves_through_the_escape(void **state)
{
    int n = 1;

    (void)state;
    while (duplicate_fails_at(n))
        n++;
    assert_true(n > 2);
}

/* ---- both, at random ---- */

static void change_at_random(struct model *model, struct dice *dice)
{
    static const enum entity_kind kinds[] = {ENTITY_stock, ENTITY_box,  ENTITY_facing,
                                             ENTITY_layer, ENTITY_join, ENTITY_opening};
    enum entity_kind kind = kinds[dice_between(dice, 0, 5)];
    size_t count = model_count(model, kind);
    int64_t key;

    if (count == 0)
        return;
    key = item_key(model_at(model, kind, (size_t)dice_between(dice, 0, (int64_t)count - 1)));
    if (dice_bits(dice) % 2 && model->boxes.count < 12) {
        assert_true(model_duplicate(model, kind, key) > 0);
    } else {
        size_t foretold = model_remove_count(model, kind, key);

        assert_int_equal(model_remove(model, kind, key), foretold);
        assert_null(model_find(model, kind, key));
    }
}

static void copying_and_taking_out_at_random_keeps_the_invariants(void **state)
{
    struct fixture *fixture = *state;

    FIXTURE_ARM(fixture);
    for (uint64_t seed = 1; seed <= 40; seed++) {
        struct dice dice = {seed};

        model_init(&fixture->model, &fixture->arena);
        fixture_build(&fixture->model);
        for (int i = 0; i < 30; i++) {
            change_at_random(&fixture->model, &dice);
            assert_int_equal(model_check(&fixture->model, NULL, NULL), 0);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(a_box_goes_with_all_that_hangs_on_it),
        TEST(a_join_goes_with_either_of_its_boxes),
        TEST(a_reference_that_may_be_empty_is_cleared),
        TEST(a_mirror_image_stays_without_its_original),
        TEST(the_build_forgets_a_set_that_goes),
        TEST(a_hole_goes_with_its_tick_and_is_counted_once_with_its_join),
        TEST(nothing_goes_with_a_key_that_is_not_there),
        TEST(a_copied_box_brings_its_parts_under_new_keys),
        TEST(references_among_copies_go_to_copies),
        TEST(a_join_to_a_box_that_stays_alone_is_not_copied),
        TEST(facts_are_not_copied),
        TEST(a_copied_stock_brings_its_offers_but_nothing_of_the_build),
        TEST(a_copy_has_a_free_name_that_fits),
        TEST(there_is_no_copy_of_nothing),
        TEST(building_without_memory_leaves_through_the_escape),
        TEST(copying_and_taking_out_at_random_keeps_the_invariants),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
