/* What a form knows of an item, without a screen. */
#include "stage.h"
#include "tui/form.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

struct sheet {
    struct arena arena;
    struct model model;
    struct text text;
};

static int begin(void **state)
{
    struct sheet *sheet = calloc(1, sizeof *sheet);
    assert_non_null(sheet);
    arena_init(&sheet->arena);
    model_init(&sheet->model, &sheet->arena);
    text_init(&sheet->text);
    *state = sheet;
    return 0;
}

static int end(void **state)
{
    struct sheet *sheet = *state;
    arena_release(&sheet->arena);
    text_release(&sheet->text);
    free(sheet);
    return 0;
}

static const struct field *field_of(enum entity_kind kind, const char *name)
{
    const struct field *field = field_named(entity_of(kind), name);
    assert_non_null(field);
    return field;
}

static int64_t add_box(struct sheet *sheet, const char *name)
{
    struct box *box = MODEL_ADD(&sheet->model, box);
    box->name = name;
    return box->key;
}

static const char *turned(struct sheet *sheet, const struct field *field, const char *from, int by)
{
    text_clear(&sheet->text);
    assert_true(form_turn(field, &sheet->model, from, by, &sheet->text));
    return text_string(&sheet->text);
}

static const char *completed(struct sheet *sheet, const struct field *field, const char *typed)
{
    text_clear(&sheet->text);
    form_complete(field, &sheet->model, typed, &sheet->text);
    return text_string(&sheet->text);
}

static void every_field_is_in_its_form_but_the_counter(void **state)
{
    const struct field *fields[FORM_FIELDS];
    (void)state;
    for (int kind = 0; kind < ENTITY_COUNT; kind++)
        assert_int_equal(form_fields((enum entity_kind)kind, fields),
                         entity_of((enum entity_kind)kind)->field_count);
    int count = form_fields(ENTITY_workshop, fields);
    assert_int_equal(count + 1, entity_of(ENTITY_workshop)->field_count);
}

static void words_turn_in_a_circle(void **state)
{
    const struct field *frame = field_of(ENTITY_box, "frame");
    assert_string_equal(turned(*state, frame, "ladder", 1), "crate");
    assert_string_equal(turned(*state, frame, "ladder", -1), "cushion");
    assert_string_equal(turned(*state, frame, "cushion", 1), "ladder");
}

static void turning_from_a_beginning_takes_what_it_means(void **state)
{
    const struct field *frame = field_of(ENTITY_box, "frame");
    assert_string_equal(turned(*state, frame, "cr", 1), "crate");
    assert_string_equal(turned(*state, frame, "cr", -1), "crate");
}

static void a_flag_is_no_or_yes(void **state)
{
    const struct field *glued = field_of(ENTITY_facing, "glued");
    assert_string_equal(turned(*state, glued, "no", 1), "yes");
    assert_string_equal(turned(*state, glued, "yes", 1), "no");
}

static void a_reference_that_may_be_empty_has_nothing_among_its_choices(void **state)
{
    struct sheet *sheet = *state;
    const struct field *mirror = field_of(ENTITY_box, "mirror_of");
    add_box(sheet, "C");
    add_box(sheet, "L");
    assert_int_equal(form_choices(mirror, &sheet->model), 3);
    assert_string_equal(turned(sheet, mirror, "", 1), "C");
    assert_string_equal(turned(sheet, mirror, "L", 1), "");
}

static void a_reference_that_must_be_given_goes_through_items_only(void **state)
{
    struct sheet *sheet = *state;
    const struct field *box = field_of(ENTITY_facing, "box");
    add_box(sheet, "C");
    add_box(sheet, "L");
    assert_int_equal(form_choices(box, &sheet->model), 2);
    assert_string_equal(turned(sheet, box, "L", 1), "C");
}

static void items_without_a_name_of_their_own_go_by_key(void **state)
{
    struct sheet *sheet = *state;
    const struct field *box = field_of(ENTITY_facing, "box");
    char key[32];
    add_box(sheet, "#1");
    snprintf(key, sizeof key, "#%lld", (long long)add_box(sheet, ""));
    assert_string_equal(turned(sheet, box, "x", -1), key);
}

static void a_field_that_is_typed_does_not_turn(void **state)
{
    struct sheet *sheet = *state;
    assert_false(form_turn(field_of(ENTITY_box, "width"), &sheet->model, "1", 1, &sheet->text));
    assert_int_equal(form_choices(field_of(ENTITY_box, "width"), &sheet->model), 0);
    assert_int_equal(form_choices(field_of(ENTITY_facing, "box"), &sheet->model), 0);
}

static void first_letters_will_do_where_they_mean_one_word(void **state)
{
    const struct field *frame = field_of(ENTITY_box, "frame");
    assert_string_equal(completed(*state, frame, "l"), "ladder");
    assert_string_equal(completed(*state, frame, "BO"), "board");
    assert_string_equal(completed(*state, frame, "c"), "c"); /* crate, cushion */
    assert_string_equal(completed(*state, frame, "cu"), "cushion");
    assert_string_equal(completed(*state, frame, "sofa"), "sofa");
    assert_string_equal(completed(*state, frame, ""), "");
}

static void what_is_typed_in_full_is_never_taken_for_more(void **state)
{
    struct sheet *sheet = *state;
    const struct field *box = field_of(ENTITY_facing, "box");
    add_box(sheet, "S");
    add_box(sheet, "SA");
    assert_string_equal(completed(sheet, box, "S"), "S");
}

static void a_new_item_passes_the_model_check(void **state)
{
    struct sheet *sheet = *state;
    struct fault_note note = {0};
    sheet->model.build.key = 1;
    sheet->model.build.name = "piece";
    static const enum entity_kind kinds[] = {ENTITY_stock,  ENTITY_offer, ENTITY_box,
                                             ENTITY_facing, ENTITY_layer, ENTITY_join,
                                             ENTITY_member, ENTITY_spend, ENTITY_fitting};
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        void *item = model_add(&sheet->model, kinds[i]);
        enum fault fault = form_fill(&sheet->model, kinds[i], item, 0, "2026-11-25", &note);
        if (fault || model_check(&sheet->model, NULL, NULL))
            fail_msg("%s: %s", entity_of(kinds[i])->name, note.why);
    }
}

static void new_boxes_are_lettered(void **state)
{
    struct sheet *sheet = *state;
    struct fault_note note = {0};
    add_box(sheet, "A");
    struct box *box = MODEL_ADD(&sheet->model, box);
    assert_int_equal(form_fill(&sheet->model, ENTITY_box, box, 0, "2026-11-25", &note), 0);
    assert_string_equal(box->name, "B");
}

static void what_belongs_to_nothing_is_refused_in_words(void **state)
{
    struct sheet *sheet = *state;
    struct fault_note note = {0};
    void *facing = model_add(&sheet->model, ENTITY_facing);
    assert_int_equal(form_fill(&sheet->model, ENTITY_facing, facing, 0, "2026-11-25", &note),
                     FAULT_REFUSED);
    assert_string_equal(note.why, "there is no box yet that it could belong to");
}

static void labels_are_names_with_blanks(void **state)
{
    struct sheet *sheet = *state;
    form_label(field_of(ENTITY_box, "mirror_of"), &sheet->text);
    assert_string_equal(text_string(&sheet->text), "mirror of");
    text_clear(&sheet->text);
    form_label(field_of(ENTITY_point, "v"), &sheet->text);
    assert_string_equal(text_string(&sheet->text), "from bottom/back");
}

static const char *allowed(struct sheet *sheet, enum entity_kind kind, const char *name)
{
    text_clear(&sheet->text);
    form_allowed(field_of(kind, name), &sheet->model, &sheet->text);
    return text_string(&sheet->text);
}

static void what_may_stand_in_a_field_is_told_by_its_kind(void **state)
{
    struct sheet *sheet = *state;
    add_box(sheet, "C");
    add_box(sheet, "L");
    assert_string_equal(allowed(sheet, ENTITY_facing, "glued"), "yes, no");
    assert_string_equal(allowed(sheet, ENTITY_facing, "box"), "C, L");
    assert_string_equal(allowed(sheet, ENTITY_spend, "dated"), "a day as 2026-11-25");
    assert_string_equal(allowed(sheet, ENTITY_box, "name"), "");
    assert_non_null(strstr(allowed(sheet, ENTITY_box, "frame"), "ladder, crate"));
}

static void what_may_stand_in_a_field_is_told_in_the_units_of_the_build(void **state)
{
    struct sheet *sheet = *state;
    sheet->model.build.units = UNITS_MM;
    form_allowed(field_of(ENTITY_box, "width"), &sheet->model, &sheet->text);
    assert_string_equal(text_string(&sheet->text), "10 mm to 6000 mm");
}

int main(void)
{
#define FACT(name) cmocka_unit_test_setup_teardown(name, begin, end)
    const struct CMUnitTest tests[] = {
        FACT(every_field_is_in_its_form_but_the_counter),
        FACT(words_turn_in_a_circle),
        FACT(turning_from_a_beginning_takes_what_it_means),
        FACT(a_flag_is_no_or_yes),
        FACT(a_reference_that_may_be_empty_has_nothing_among_its_choices),
        FACT(a_reference_that_must_be_given_goes_through_items_only),
        FACT(items_without_a_name_of_their_own_go_by_key),
        FACT(a_field_that_is_typed_does_not_turn),
        FACT(first_letters_will_do_where_they_mean_one_word),
        FACT(what_is_typed_in_full_is_never_taken_for_more),
        FACT(a_new_item_passes_the_model_check),
        FACT(new_boxes_are_lettered),
        FACT(what_belongs_to_nothing_is_refused_in_words),
        FACT(labels_are_names_with_blanks),
        FACT(what_may_stand_in_a_field_is_told_by_its_kind),
        FACT(what_may_stand_in_a_field_is_told_in_the_units_of_the_build),
    };
    int failed = cmocka_run_group_tests_name("form", tests, NULL, NULL);
    return failed ? 1 : 0;
}
