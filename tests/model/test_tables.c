/* The tables of entities, fields and words: each row is whole and says what it is. */
#include "model/model.h"
#include "model/trade.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

static enum entity_kind kind_at(int i)
{
    return (enum entity_kind)(i < ENTITY_COUNT ? i : i + 1);
}

#define KINDS (ENTITY_COUNT + 2) /* workshop and build included */

static void assert_plain_name(const char *name)
{
    assert_true(*name != '\0');
    assert_int_equal(strspn(name, "abcdefghijklmnopqrstuvwxyz_"), strlen(name));
}

static void every_entity_has_a_plain_name_and_help(void **state)
{
    (void)state;
    for (int i = 0; i < KINDS; i++) {
        const struct entity *entity = entity_of(kind_at(i));

        assert_int_equal(entity->kind, kind_at(i));
        assert_plain_name(entity->name);
        assert_plain_name(entity->plural);
        assert_true(*entity->help != '\0');
        assert_ptr_equal(entity_named(entity->name), entity);
    }
}

static void no_other_entity_has_a_name(void **state)
{
    (void)state;
    assert_null(entity_named("none"));
    assert_null(entity_named("boxes"));
    assert_null(entity_named(""));
}

static void every_field_has_a_plain_name_of_its_own(void **state)
{
    (void)state;
    for (int i = 0; i < KINDS; i++) {
        const struct entity *entity = entity_of(kind_at(i));

        for (size_t j = 0; j < entity->field_count; j++) {
            assert_plain_name(entity->fields[j].name);
            assert_string_not_equal(entity->fields[j].name, "key");
            assert_ptr_equal(field_named(entity, entity->fields[j].name), &entity->fields[j]);
            assert_ptr_equal(entity_with_field(&entity->fields[j]), entity);
        }
        assert_null(field_named(entity, "no_such_field"));
    }
}

static void every_field_has_help_and_a_range(void **state)
{
    (void)state;
    for (int i = 0; i < KINDS; i++) {
        const struct entity *entity = entity_of(kind_at(i));

        for (size_t j = 0; j < entity->field_count; j++) {
            const struct field *field = &entity->fields[j];

            assert_true(*field->help != '\0');
            assert_true(field->least <= field->most || field->type == FIELD_REF);
            if (field_is_text(field))
                assert_in_range(field->most, 1, 100000);
            assert_int_equal(field->words != NULL, field->type == FIELD_CHOICE);
            assert_int_equal(field->target != ENTITY_none, field->type == FIELD_REF);
        }
    }
}

static void fields_do_not_overlap(void **state)
{
    (void)state;
    for (int i = 0; i < KINDS; i++) {
        const struct entity *entity = entity_of(kind_at(i));
        size_t end = entity->kind == ENTITY_workshop ? 0 : sizeof(int64_t);

        for (size_t j = 0; j < entity->field_count; j++) {
            const struct field *field = &entity->fields[j];

            assert_true(field->offset >= end);
            end = field->offset + (field_is_text(field) ? sizeof(const char *) : sizeof(int64_t));
        }
        assert_true(end <= entity->size);
    }
}

static void what_an_item_hangs_on_comes_before_it(void **state)
{
    (void)state;
    for (int kind = 0; kind < ENTITY_COUNT; kind++) {
        const struct entity *entity = entity_of((enum entity_kind)kind);

        for (size_t j = 0; j < entity->field_count; j++) {
            const struct field *field = &entity->fields[j];

            if (field->type == FIELD_REF)
                assert_true((int)field->target + field_hangs(field) <= kind);
        }
    }
}

static void the_workshop_does_not_refer_to_a_build(void **state)
{
    (void)state;
    for (int i = 0; i < KINDS; i++) {
        const struct entity *entity = entity_of(kind_at(i));

        for (size_t j = 0; entity->in_shop && j < entity->field_count; j++)
            if (entity->fields[j].type == FIELD_REF)
                assert_true(entity_of(entity->fields[j].target)->in_shop);
    }
}

static void kinds_with_names_of_their_own_have_a_name(void **state)
{
    (void)state;
    for (int kind = 0; kind < ENTITY_COUNT; kind++)
        if (entity_has_own_names((enum entity_kind)kind)) {
            const struct field *name = field_named(entity_of((enum entity_kind)kind), "name");

            assert_non_null(name);
            assert_int_equal(name->type, FIELD_TEXT);
            assert_int_equal(name->least, 1);
        }
}

static void a_whole_is_set_and_had_through_its_field(void **state)
{
    struct box box = {.key = 7};
    const struct field *width = field_named(entity_of(ENTITY_box), "width");

    (void)state;
    field_set_whole(width, &box, 12345);
    assert_int_equal(box.width, 12345);
    box.width = 54321;
    assert_int_equal(field_whole(width, &box), 54321);
    assert_int_equal(box.key, 7);
    assert_int_equal(item_key(&box), 7);
}

static void a_text_is_set_and_had_through_its_field(void **state)
{
    static const char text[] = "A";
    struct box box = {.key = 7};
    const struct field *name = field_named(entity_of(ENTITY_box), "name");

    (void)state;
    field_set_string(name, &box, text);
    assert_ptr_equal(box.name, text);
    assert_ptr_equal(field_string(name, &box), text);
}

static void numbers_have_the_quantity_of_their_type(void **state)
{
    const struct entity *stock = entity_of(ENTITY_stock);

    (void)state;
    assert_int_equal(field_quantity(field_named(stock, "width")), QUANTITY_LENGTH);
    assert_int_equal(field_quantity(field_named(stock, "gauge")), QUANTITY_COUNT);
    assert_int_equal(field_quantity(field_named(stock, "density")), QUANTITY_DENSITY);
    assert_int_equal(field_quantity(field_named(stock, "area_mass")), QUANTITY_AREA_MASS);
    assert_int_equal(field_quantity(field_named(stock, "coverage")), QUANTITY_AREA);
    assert_int_equal(field_quantity(field_named(stock, "pile")), QUANTITY_KINDS);
    assert_int_equal(field_quantity(field_named(stock, "name")), QUANTITY_KINDS);
}

#define PUT_WORDS(name, P) &words_##name,
static const struct words *const vocabularies[] = {VOCABULARIES(PUT_WORDS)};
#undef PUT_WORDS

static void every_word_is_plain_has_help_and_is_found(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof vocabularies / sizeof vocabularies[0]; i++) {
        const struct words *words = vocabularies[i];

        assert_plain_name(words->name);
        assert_true(words->count > 1);
        for (size_t j = 0; j < words->count; j++) {
            assert_plain_name(words->at[j].name);
            assert_true(*words->at[j].help != '\0');
            assert_int_equal(words_find(words, words->at[j].name), j);
        }
        assert_int_equal(words_find(words, "no such word"), -1);
        assert_int_equal(words_find(words, ""), -1);
    }
}

static void words_stand_for_their_enum(void **state)
{
    (void)state;
    assert_int_equal(words_find(&words_side, "bottom"), SIDE_BOTTOM);
    assert_int_equal(words_find(&words_frame, "crate"), FRAME_CRATE);
    assert_int_equal(words_find(&words_layer, "outside_back"), LAYER_OUTSIDE_BACK);
    assert_int_equal(words_side.count, SIDE_COUNT);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_entity_has_a_plain_name_and_help),
        cmocka_unit_test(no_other_entity_has_a_name),
        cmocka_unit_test(every_field_has_a_plain_name_of_its_own),
        cmocka_unit_test(every_field_has_help_and_a_range),
        cmocka_unit_test(fields_do_not_overlap),
        cmocka_unit_test(what_an_item_hangs_on_comes_before_it),
        cmocka_unit_test(the_workshop_does_not_refer_to_a_build),
        cmocka_unit_test(kinds_with_names_of_their_own_have_a_name),
        cmocka_unit_test(a_whole_is_set_and_had_through_its_field),
        cmocka_unit_test(a_text_is_set_and_had_through_its_field),
        cmocka_unit_test(numbers_have_the_quantity_of_their_type),
        cmocka_unit_test(every_word_is_plain_has_help_and_is_found),
        cmocka_unit_test(words_stand_for_their_enum),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
