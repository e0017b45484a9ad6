/* The lists of a model: keys, order, names, copies, and memory that runs out. */
#include "dice.h"
#include "fixture.h"
#include "scarce.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

static void an_empty_model_passes_the_check(void **state)
{
    struct fixture *fixture = *state;

    assert_int_equal(model_check(&fixture->model, NULL, NULL), 0);
    assert_string_equal(fixture->model.workshop.name, "Workshop");
    assert_string_equal(model_currency(&fixture->model).code, "USD");
    assert_int_equal(model_currency(&fixture->model).digits, 2);
}

static void a_workshop_without_a_build_passes_the_check(void **state)
{
    struct fixture *fixture = *state;

    model_init(&fixture->model, &fixture->arena);
    assert_int_equal(fixture->model.build.key, 0);
    assert_int_equal(model_check(&fixture->model, NULL, NULL), 0);
}

static void a_new_item_has_the_standard_of_every_field(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    for (int kind = 0; kind < ENTITY_COUNT; kind++) {
        const struct entity *entity = entity_of((enum entity_kind)kind);
        const void *item = model_add(model, (enum entity_kind)kind);

        for (size_t i = 0; i < entity->field_count; i++) {
            const struct field *field = &entity->fields[i];

            if (field_is_text(field))
                assert_string_equal(field_string(field, item), "");
            else
                assert_int_equal(field_whole(field, item), field->standard);
        }
    }
}

static void keys_of_workshop_and_build_are_counted_apart(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    assert_int_equal(item_key(model_add(model, ENTITY_stock)), 1);
    assert_int_equal(item_key(model_add(model, ENTITY_box)), 1);
    assert_int_equal(item_key(model_add(model, ENTITY_join)), 2);
    assert_int_equal(item_key(model_add(model, ENTITY_offer)), 2);
}

static void a_key_is_never_given_out_twice(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct dice dice = {20261125};
    int64_t last = 0;

    for (int i = 0; i < 2000; i++) {
        enum entity_kind kind = dice_bits(&dice) % 2 ? ENTITY_box : ENTITY_group;

        if (dice_bits(&dice) % 3 && model_count(model, kind) > 0) {
            size_t index = (size_t)dice_between(&dice, 0, (int64_t)model_count(model, kind) - 1);

            model_remove(model, kind, item_key(model_at(model, kind, index)));
        } else {
            int64_t key = item_key(model_add(model, kind));

            assert_true(key > last);
            last = key;
        }
    }
    assert_true(last > 500);
}

static void a_keyed_item_finds_its_place_in_the_order(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    static const int64_t keys[] = {9, 2, 30, 5, 4};

    for (size_t i = 0; i < 5; i++)
        assert_non_null(model_add_keyed(model, ENTITY_box, keys[i]));
    for (size_t i = 1; i < 5; i++)
        assert_true(model->boxes.at[i - 1].key < model->boxes.at[i].key);
    assert_int_equal(model->build.next_key, 31);
    assert_int_equal(item_key(model_add(model, ENTITY_layer)), 31);
}

static void a_key_that_is_taken_or_no_key_is_refused(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    assert_non_null(model_add_keyed(model, ENTITY_box, 5));
    assert_null(model_add_keyed(model, ENTITY_box, 5));
    assert_null(model_add_keyed(model, ENTITY_join, 5));
    assert_null(model_add_keyed(model, ENTITY_join, 0));
    assert_null(model_add_keyed(model, ENTITY_join, -1));
    assert_null(model_add_keyed(model, ENTITY_join, FIELDS_LAST_KEY));
    assert_null(model_add_keyed(model, ENTITY_join, INT64_MAX));
    assert_non_null(model_add_keyed(model, ENTITY_stock, 5));
    assert_int_equal(model->joins.count, 0);
}

static void every_item_is_found_by_its_key_and_no_other(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    for (int64_t key = 2; key <= 60; key += 2)
        assert_non_null(model_add_keyed(model, ENTITY_box, key));
    for (int64_t key = 1; key <= 61; key++) {
        const struct box *box = MODEL_FIND(model, box, key);

        assert_int_equal(box != NULL, key % 2 == 0);
        if (box)
            assert_int_equal(box->key, key);
        assert_int_equal(model_index(model, ENTITY_box, key),
                         key % 2 == 0 ? (size_t)key / 2 - 1 : 30);
    }
    assert_null(MODEL_FIND(model, join, 2));
}

static void workshop_and_build_are_lists_of_one(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    assert_int_equal(model_count(model, ENTITY_workshop), 1);
    assert_int_equal(model_count(model, ENTITY_build), 1);
    assert_ptr_equal(model_at(model, ENTITY_workshop, 0), &model->workshop);
    assert_ptr_equal(model_at(model, ENTITY_build, 0), &model->build);
}

static void a_list_by_kind_is_the_list_by_name(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

#define IS_SAME(name, list, help) \
    assert_ptr_equal(model_list(model, ENTITY_##name), &model->list.any);
    ENTITIES(IS_SAME)
#undef IS_SAME
}

static void an_item_is_called_by_its_name_or_its_kind_and_key(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct small_build build = fixture_build(model);
    char name[MODEL_NAME_TEXT];

    assert_string_equal(model_item_name(name, model, ENTITY_box, build.box_a), "A");
    assert_int_equal(build.layer_edge, 5);
    assert_string_equal(model_item_name(name, model, ENTITY_layer_edge, 5), "layer edge 5");
    assert_string_equal(model_item_name(name, model, ENTITY_box, 99), "box 99");
    assert_string_equal(model_item_name(name, model, ENTITY_build, 1), "bench");
}

static void a_name_is_shown_without_what_could_harm_a_screen(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct box *box = MODEL_ADD(model, box);
    char name[MODEL_NAME_TEXT];

    box->name = "A\x1b[2J";
    model_item_name(name, model, ENTITY_box, box->key);
    assert_null(strchr(name, '\x1b'));
}

static void an_item_is_found_by_its_name(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct small_build build = fixture_build(model);

    assert_int_equal(model_key_named(model, ENTITY_box, "B"), build.box_b);
    assert_int_equal(model_key_named(model, ENTITY_box, "b"), 0);
    assert_int_equal(model_key_named(model, ENTITY_layer, "A"), 0);
}

/* Every text of an item, so that equal models print alike. */
static void write_model(const struct model *model, struct text *out)
{
    for (int kind = 0; kind <= ENTITY_build; kind++) {
        const struct entity *entity;

        if (kind == ENTITY_COUNT)
            continue;
        entity = entity_of((enum entity_kind)kind);
        for (size_t i = 0; i < model_count(model, entity->kind); i++)
            for (size_t j = 0; j < entity->field_count; j++) {
                text_format(out, "%s %zu %s=", entity->name, i, entity->fields[j].name);
                field_write(&entity->fields[j], model, model_at_const(model, entity->kind, i), out);
                text_add(out, "\n");
            }
    }
}

static bool is_shared(const struct model *a, const struct model *b)
{
    for (int kind = 0; kind < ENTITY_COUNT; kind++) {
        const struct entity *entity = entity_of((enum entity_kind)kind);

        if (model_count(a, entity->kind) == 0)
            continue;
        if (model_list_const(a, entity->kind)->at == model_list_const(b, entity->kind)->at)
            return true;
        for (size_t j = 0; j < entity->field_count; j++) {
            const struct field *field = &entity->fields[j];
            const void *item = model_at_const(a, entity->kind, 0);

            if (field_is_text(field) && *field_string(field, item) &&
                field_string(field, item) ==
                    field_string(field, model_at_const(b, entity->kind, 0)))
                return true;
        }
    }
    return a->workshop.name == b->workshop.name || a->build.name == b->build.name;
}

static void a_copy_says_the_same_and_shares_nothing(void **state)
{
    struct fixture *fixture = *state;
    struct arena arena;
    jmp_buf escape;
    struct model copy;
    struct text before;
    struct text after;

    fixture_build(&fixture->model);
    text_init(&before);
    text_init(&after);
    write_model(&fixture->model, &before);
    arena_init(&arena);
    arena.escape = &escape;
    if (setjmp(escape))
        fail_msg("memory is out");
    model_copy(&copy, &fixture->model, &arena);
    assert_false(is_shared(&copy, &fixture->model));
    arena_release(&fixture->arena);
    write_model(&copy, &after);
    assert_string_equal(text_string(&before), text_string(&after));
    arena_release(&arena);
    text_release(&before);
    text_release(&after);
}

static void a_change_of_a_copy_leaves_the_model_alone(void **state)
{
    struct fixture *fixture = *state;
    struct small_build build = fixture_build(&fixture->model);
    struct model copy;

    FIXTURE_ARM(fixture);
    model_copy(&copy, &fixture->model, &fixture->arena);
    model_remove(&copy, ENTITY_box, build.box_a);
    model_add(&copy, ENTITY_box);
    assert_int_equal(fixture->model.boxes.count, 2);
    assert_string_equal(fixture->model.boxes.at[0].name, "A");
    assert_int_equal(fixture->model.layers.count, 1);
    assert_int_equal(model_check(&fixture->model, NULL, NULL), 0);
}

/* True when the n-th request came and failed, and the copy left through the escape. */
static bool copy_fails_at(const struct model *model, int n)
{
    struct arena arena;
    jmp_buf escape;
    struct model copy;

    arena_init(&arena);
    arena.escape = &escape;
    scarce_begin(n);
    if (!setjmp(escape)) {
        model_copy(&copy, model, &arena);
        assert_false(scarce_failed());
    } else {
        assert_true(scarce_failed());
    }
    arena_release(&arena);
    assert_int_equal(scarce_end(), 0);
    return scarce_failed();
}

static void a_copy_without_memory_leaves_through_the_escape(void **state)
{
    struct fixture *fixture = *state;
    int n = 1;

    fixture_build(&fixture->model);
    for (int i = 0; i < 300; i++)
        MODEL_ADD(&fixture->model, box)->name = "padded";
    while (copy_fails_at(&fixture->model, n))
        n++;
    assert_true(n > 2);
}

static void an_item_without_memory_and_escape_is_not_added(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct arena arena;

    arena_init(&arena);
    model->arena = &arena;
    scarce_begin(1);
    assert_null(model_add(model, ENTITY_box));
    assert_int_equal(model->boxes.count, 0);
    assert_int_equal(model->build.next_key, 1);
    arena_release(&arena);
    assert_int_equal(scarce_end(), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(an_empty_model_passes_the_check),
        TEST(a_workshop_without_a_build_passes_the_check),
        TEST(a_new_item_has_the_standard_of_every_field),
        TEST(keys_of_workshop_and_build_are_counted_apart),
        TEST(a_key_is_never_given_out_twice),
        TEST(a_keyed_item_finds_its_place_in_the_order),
        TEST(a_key_that_is_taken_or_no_key_is_refused),
        TEST(every_item_is_found_by_its_key_and_no_other),
        TEST(workshop_and_build_are_lists_of_one),
        TEST(a_list_by_kind_is_the_list_by_name),
        TEST(an_item_is_called_by_its_name_or_its_kind_and_key),
        TEST(a_name_is_shown_without_what_could_harm_a_screen),
        TEST(an_item_is_found_by_its_name),
        TEST(a_copy_says_the_same_and_shares_nothing),
        TEST(a_change_of_a_copy_leaves_the_model_alone),
        TEST(a_copy_without_memory_leaves_through_the_escape),
        TEST(an_item_without_memory_and_escape_is_not_added),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
