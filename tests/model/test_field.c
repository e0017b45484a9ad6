/* Fields read from what is typed and written back. */
#include "dice.h"
#include "fixture.h"
#include "scarce.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

/* ---- helpers ---- */

static const struct field *field_of(enum entity_kind kind, const char *name)
{
    const struct field *field = field_named(entity_of(kind), name);

    assert_non_null(field);
    return field;
}

struct reading {
    enum entity_kind kind;
    const char *field;
    const char *text;
    int64_t value;
};

/* Reads each into the only item of its kind; the build is in inches. */
static void assert_read(struct model *model, const struct reading *readings, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        const struct field *field = field_of(readings[i].kind, readings[i].field);
        void *item = model_count(model, readings[i].kind) > 0 ? model_at(model, readings[i].kind, 0)
                                                              : model_add(model, readings[i].kind);
        struct fault_note note;

        if (field_read(field, model, item, readings[i].text, &note) != FAULT_NONE)
            fail_msg("%s: %s", readings[i].text, note.why);
        assert_int_equal(field_whole(field, item), readings[i].value);
    }
}

struct refusal {
    enum entity_kind kind;
    const char *field;
    const char *text;
    enum fault fault;
    int column;
    const char *why; /* part of the reason */
};

/* Each is refused with its reason and column, and the item stays as it was. */
static void assert_refused(struct model *model, const struct refusal *refusals, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        const struct refusal *refusal = &refusals[i];
        const struct field *field = field_of(refusal->kind, refusal->field);
        char *item = model_count(model, refusal->kind) > 0 ? model_at(model, refusal->kind, 0)
                                                           : model_add(model, refusal->kind);
        char before[1024];
        struct fault_note note;
        size_t size = entity_of(refusal->kind)->size;

        assert_true(size <= sizeof before);
        memcpy(before, item, size);
        assert_int_equal(field_read(field, model, item, refusal->text, &note), refusal->fault);
        assert_int_equal(note.code, refusal->fault);
        assert_int_equal(note.column, refusal->column);
        if (!strstr(note.why, refusal->why))
            fail_msg("%s: \"%s\" does not say \"%s\"", refusal->text, note.why, refusal->why);
        assert_memory_equal(before, item, size);
        assert_int_equal(field_read(field, model, item, refusal->text, NULL), refusal->fault);
    }
}

#define ASSERT_READ(model, list) assert_read((model), (list), sizeof(list) / sizeof(list)[0])
#define ASSERT_REFUSED(model, list) assert_refused((model), (list), sizeof(list) / sizeof(list)[0])

/* ---- reading ---- */

static void every_kind_of_number_is_read(void **state)
{
    static const struct reading readings[] = {
        {ENTITY_box, "width", "76 1/2", 76 * LENGTH_INCH + LENGTH_INCH / 2},
        {ENTITY_box, "width", " 1940 mm ", 1940 * LENGTH_MM},
        {ENTITY_box, "lean", "7.5", 7500},
        {ENTITY_layer, "rank", "3", 3},
        {ENTITY_workshop, "tax", "8.25 %", 82500},
        {ENTITY_workshop, "skill", "1.6", 1600000},
        {ENTITY_workshop, "session", "3 h", 180000},
        {ENTITY_stock, "coverage", "2 m2", 2000000},
        {ENTITY_stock, "density", "40 kg/m3", 40000},
        {ENTITY_stock, "area_mass", "400 g/m2", 400000},
        {ENTITY_offer, "volume", "500 ml", 500000},
        {ENTITY_offer, "price", "12.50", 1250},
        {ENTITY_offer, "price", "12.50 USD", 1250},
        {ENTITY_offer, "price", "12.50USD ", 1250},
        {ENTITY_spend, "amount", "-3", -300},
    };

    ASSERT_READ(&((struct fixture *)*state)->model, readings);
}

static void a_length_without_a_unit_is_in_the_units_of_the_build(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct box *box = MODEL_ADD(model, box);

    model->build.units = UNITS_WORD_MM;
    assert_int_equal(field_read(field_of(ENTITY_box, "width"), model, box, "1940", NULL), 0);
    assert_int_equal(box->width, 1940 * LENGTH_MM);
}

static void flags_and_choices_are_read_as_words(void **state)
{
    static const struct reading readings[] = {
        {ENTITY_facing, "glued", "no", 0},        {ENTITY_facing, "glued", "yes", 1},
        {ENTITY_facing, "glued", " false", 0},    {ENTITY_facing, "glued", "true ", 1},
        {ENTITY_facing, "use", "seat", USE_SEAT}, {ENTITY_facing, "side", " bottom ", SIDE_BOTTOM},
    };

    ASSERT_READ(&((struct fixture *)*state)->model, readings);
}

static void a_reference_is_read_by_name_and_by_key(void **state)
{
    static const struct reading readings[] = {
        {ENTITY_facing, "box", "B", 2},
        {ENTITY_facing, "box", "1", 1},
        {ENTITY_facing, "box", "#2", 2},
        {ENTITY_layer_edge, "layer", "#4", 4},
    };
    struct model *model = &((struct fixture *)*state)->model;

    assert_int_equal(fixture_build(model).box_b, 2);
    ASSERT_READ(model, readings);
}

static void a_name_of_digits_is_taken_before_the_key(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct small_build build = fixture_build(model);
    const struct field *box = field_of(ENTITY_facing, "box");

    model->boxes.at[1].name = "1";
    assert_int_equal(field_read(box, model, &model->facings.at[0], "1", NULL), 0);
    assert_int_equal(model->facings.at[0].box, build.box_b);
    assert_int_equal(field_read(box, model, &model->facings.at[0], "#1", NULL), 0);
    assert_int_equal(model->facings.at[0].box, build.box_a);
}

static void nothing_is_zero_where_zero_is_in_range(void **state)
{
    static const struct reading readings[] = {
        {ENTITY_facing, "width", "", 0}, {ENTITY_facing, "width", "  ", 0},
        {ENTITY_box, "stick", "", 0},    {ENTITY_join, "count", "", 0},
        {ENTITY_offer, "price", "", 0},
    };
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    ASSERT_READ(model, readings);
}

static void a_text_is_copied_into_the_model(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct box *box = MODEL_ADD(model, box);
    char typed[] = "Wing";

    assert_int_equal(field_read(field_of(ENTITY_box, "name"), model, box, typed, NULL), 0);
    typed[0] = 'R';
    assert_string_equal(box->name, "Wing");
}

static void a_date_is_a_day_of_the_calendar(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    const struct field *due = field_of(ENTITY_build, "due");

    assert_int_equal(field_read(due, model, &model->build, "2028-02-29", NULL), 0);
    assert_string_equal(model->build.due, "2028-02-29");
    assert_int_equal(field_read(due, model, &model->build, "", NULL), 0);
    assert_string_equal(model->build.due, "");
}

/* ---- refusing ---- */

static void a_number_that_does_not_fit_is_refused_with_its_place(void **state)
{
    static const struct refusal refusals[] = {
        {ENTITY_box, "width", "76 x", FAULT_UNIT, 4, ""},
        {ENTITY_box, "width", "76 1", FAULT_SYNTAX, 4, ""},
        {ENTITY_box, "width", "9000 mm", FAULT_RANGE, 1, "in"},
        {ENTITY_box, "width", "", FAULT_RANGE, 1, "width must be from"},
        {ENTITY_box, "lean", "60", FAULT_RANGE, 1, "from -45 deg to 45 deg"},
        {ENTITY_box, "lean", "5 kg", FAULT_UNIT, 3, ""},
        {ENTITY_layer, "rank", "101", FAULT_RANGE, 1, "from 0 to 100"},
        {ENTITY_offer, "price", "1.234", FAULT_SYNTAX, 5, ""},
        {ENTITY_offer, "price", "-1", FAULT_RANGE, 1, "from 0.00 USD to"},
        {ENTITY_offer, "price", "99999999999999999999", FAULT_OVERFLOW, 1, ""},
        {ENTITY_offer, "pack", "0", FAULT_RANGE, 1, "from 1 to"},
        {ENTITY_workshop, "digits", "4", FAULT_RANGE, 1, "from 0 to 3"},
    };

    ASSERT_REFUSED(&((struct fixture *)*state)->model, refusals);
}

static void a_range_is_told_in_the_units_of_the_build(void **state)
{
    static const struct refusal inch[] = {
        {ENTITY_box, "width", "0", FAULT_RANGE, 1, "from 7/16 in to 236 in"}};
    static const struct refusal mm[] = {
        {ENTITY_box, "width", "0", FAULT_RANGE, 1, "from 10 mm to 6000 mm"}};
    struct model *model = &((struct fixture *)*state)->model;

    ASSERT_REFUSED(model, inch);
    model->build.units = UNITS_WORD_MM;
    ASSERT_REFUSED(model, mm);
}

static void an_unknown_word_is_refused_with_those_known(void **state)
{
    static const struct refusal refusals[] = {
        {ENTITY_box, "frame", "sofa", FAULT_UNKNOWN, 1, "ladder, crate, board, cushion"},
        {ENTITY_box, "frame", "ladderr", FAULT_UNKNOWN, 1, "ladder, crate"},
        {ENTITY_box, "frame", "", FAULT_MISSING, 1, "frame is needed"},
        {ENTITY_facing, "glued", "maybe", FAULT_UNKNOWN, 1, "yes or no"},
        {ENTITY_facing, "glued", "", FAULT_MISSING, 1, "glued is needed"},
    };

    ASSERT_REFUSED(&((struct fixture *)*state)->model, refusals);
}

static void a_reference_to_nothing_is_refused(void **state)
{
    static const struct refusal refusals[] = {
        {ENTITY_facing, "box", "C", FAULT_REFERENCE, 1, "there is no box \"C\""},
        {ENTITY_facing, "box", "#9", FAULT_REFERENCE, 1, "there is no box"},
        {ENTITY_facing, "box", "9", FAULT_REFERENCE, 1, "there is no box"},
        {ENTITY_facing, "box", "0", FAULT_REFERENCE, 1, "there is no box"},
        {ENTITY_facing, "box", "1 2", FAULT_REFERENCE, 1, "there is no box"},
        {ENTITY_facing, "box", "99999999999999999999", FAULT_REFERENCE, 1, "there is no box"},
        {ENTITY_facing, "box", "", FAULT_MISSING, 1, "a box is needed"},
        {ENTITY_box, "stick", "oak", FAULT_REFERENCE, 1, "there is no stock \"oak\""},
    };
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    ASSERT_REFUSED(model, refusals);
}

static void a_text_that_does_not_fit_is_refused(void **state)
{
    static const struct refusal refusals[] = {
        {ENTITY_box, "name", "", FAULT_MISSING, 1, "at least 1"},
        {ENTITY_box, "name", "123456789012345678901", FAULT_RANGE, 21, "at most 20"},
        {ENTITY_box, "name", "A\xff", FAULT_SYNTAX, 0, "UTF-8"},
        {ENTITY_box, "name", "B", FAULT_DUPLICATE, 1, "another box"},
        {ENTITY_join, "name", "W", FAULT_DUPLICATE, 1, "another join"},
        {ENTITY_stock, "name", "velvet", FAULT_DUPLICATE, 1, "another stock"},
        {ENTITY_workshop, "currency", "EU", FAULT_RANGE, 1, "at least 3"},
    };
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    ASSERT_REFUSED(model, refusals);
}

static void an_item_keeps_its_own_name(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    assert_int_equal(
        field_read(field_of(ENTITY_box, "name"), model, &model->boxes.at[0], "A", NULL), 0);
}

static void a_day_that_is_none_is_refused_with_its_place(void **state)
{
    static const struct refusal refusals[] = {
        {ENTITY_build, "due", "tomorrow", FAULT_SYNTAX, 1, "year-month-day"},
        {ENTITY_build, "due", "2026-1-25", FAULT_SYNTAX, 7, "year-month-day"},
        {ENTITY_build, "due", "2026/11/25", FAULT_SYNTAX, 5, "year-month-day"},
        {ENTITY_build, "due", "2026-11-25 ", FAULT_SYNTAX, 11, "year-month-day"},
        {ENTITY_build, "due", "2026-11", FAULT_SYNTAX, 8, "year-month-day"},
        {ENTITY_build, "due", "2026-13-01", FAULT_SYNTAX, 6, "twelve months"},
        {ENTITY_build, "due", "2026-00-01", FAULT_SYNTAX, 6, "twelve months"},
        {ENTITY_build, "due", "2026-02-29", FAULT_SYNTAX, 9, "no such day"},
        {ENTITY_build, "due", "2100-02-29", FAULT_SYNTAX, 9, "no such day"},
        {ENTITY_build, "due", "2026-04-31", FAULT_SYNTAX, 9, "no such day"},
        {ENTITY_build, "due", "2026-04-00", FAULT_SYNTAX, 9, "no such day"},
        {ENTITY_spend, "dated", "", FAULT_MISSING, 1, "date"},
    };

    ASSERT_REFUSED(&((struct fixture *)*state)->model, refusals);
}

static void a_text_without_memory_is_refused(void **state)
{
    struct fixture *fixture = *state;
    struct box *box = MODEL_ADD(&fixture->model, box);
    struct arena none;
    struct fault_note note;

    arena_init(&none);
    fixture->model.arena = &none;
    scarce_begin(1);
    assert_int_equal(field_read(field_of(ENTITY_box, "name"), &fixture->model, box, "A", &note),
                     FAULT_MEMORY);
    scarce_end();
    assert_string_equal(box->name, "");
}

/* ---- writing ---- */

static void assert_written(struct model *model, enum entity_kind kind, const char *name,
                           const char *expected)
{
    struct text out;

    text_init(&out);
    field_write(field_of(kind, name), model, model_at(model, kind, 0), &out);
    assert_string_equal(text_string(&out), expected);
    text_release(&out);
}

static void values_are_written_with_their_unit(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    model->boxes.at[0].width = 76 * LENGTH_INCH + LENGTH_INCH / 2;
    assert_written(model, ENTITY_box, "width", "76-1/2 in");
    model->build.units = UNITS_WORD_MM;
    assert_written(model, ENTITY_box, "width", "1943.1 mm");
    model->build.budget = 41260;
    assert_written(model, ENTITY_build, "budget", "412.60 USD");
    assert_written(model, ENTITY_box, "frame", "ladder");
    assert_written(model, ENTITY_facing, "glued", "yes");
    assert_written(model, ENTITY_facing, "box", "A");
    assert_written(model, ENTITY_layer_edge, "layer", "#4");
    assert_written(model, ENTITY_facing, "loose", "no");
}

static void what_comes_as_it_comes_is_written_as_nothing(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    assert_written(model, ENTITY_facing, "width", "");
    assert_written(model, ENTITY_join, "count", "");
    assert_written(model, ENTITY_layer, "land_box", "");
    assert_written(model, ENTITY_facing, "u", "0 in");
}

/* ---- writing and reading, at random ---- */

/* A step that prints in full in the units of the build, so that nothing is rounded away. */
static int64_t step_of(const struct field *field, enum units units)
{
    switch (field->type) {
    case FIELD_LENGTH:
        return units == UNITS_MM ? LENGTH_MM / 10 : LENGTH_64TH;
    case FIELD_RATIO:
    case FIELD_AREA:
    case FIELD_DENSITY:
    case FIELD_AREA_MASS:
        return 1000;
    default:
        return 1;
    }
}

static bool prints_in_full(const struct field *field, enum units units)
{
    enum field_type type = field->type;

    return units == UNITS_MM || (type != FIELD_AREA && type != FIELD_VOLUME &&
                                 type != FIELD_DENSITY && type != FIELD_AREA_MASS);
}

static int64_t random_value(const struct field *field, struct model *model, struct dice *dice)
{
    int64_t step = step_of(field, model_units(model));

    switch (field->type) {
    case FIELD_CHOICE:
        return dice_between(dice, 0, (int64_t)field->words->count - 1);
    case FIELD_REF:
        return model_count(model, field->target) > 0 && (field->least || dice_bits(dice) % 2)
                   ? item_key(model_at(model, field->target, 0))
                   : 0;
    default:
        return dice_between(dice, whole_divide_up(field->least, step),
                            whole_divide_down(field->most, step)) *
               step;
    }
}

/* Sets, writes, reads into a second item, and asks for the same value (or the same text, where
 * printing rounds). */
static void assert_round_trip(struct model *model, const struct field *field, void *item,
                              struct dice *dice)
{
    int64_t value = random_value(field, model, dice);
    struct fault_note note;
    struct text first;
    struct text second;

    text_init(&first);
    text_init(&second);
    field_set_whole(field, item, value);
    field_write(field, model, item, &first);
    field_set_whole(field, item, field->standard);
    if (field_read(field, model, item, text_string(&first), &note))
        fail_msg("%s \"%s\": %s", field->name, text_string(&first), note.why);
    if (prints_in_full(field, model_units(model)))
        assert_int_equal(field_whole(field, item), value);
    field_write(field, model, item, &second);
    assert_string_equal(text_string(&first), text_string(&second));
    text_release(&first);
    text_release(&second);
}

static void round_trip_all(struct model *model, struct dice *dice)
{
    for (int kind = 0; kind <= ENTITY_build; kind++) {
        const struct entity *entity;

        if (kind == ENTITY_COUNT)
            continue;
        entity = entity_of((enum entity_kind)kind);
        for (size_t i = 0; i < entity->field_count; i++) {
            const struct field *field = &entity->fields[i];
            bool is_part_of_reading = strcmp(field->name, "units") == 0 ||
                                      strcmp(field->name, "digits") == 0 ||
                                      strcmp(field->name, "next_key") == 0;

            if (!field_is_text(field) && !is_part_of_reading)
                assert_round_trip(model, field, model_at(model, entity->kind, 0), dice);
        }
    }
}

static void what_is_written_reads_back_as_the_same(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct dice dice = {64};

    for (int kind = 0; kind < ENTITY_COUNT; kind++)
        model_add(model, (enum entity_kind)kind);
    for (int i = 0; i < 60; i++) {
        model->build.units = i % 2;
        model->workshop.digits = i % 4;
        round_trip_all(model, &dice);
    }
}

static void whatever_is_typed_keeps_the_value_in_range(void **state)
{
    static const char letters[] = "0123456789 /-.'\"#%mincftkgyeosUSD\xc3\xa4";
    struct model *model = &((struct fixture *)*state)->model;
    const struct entity *stock = entity_of(ENTITY_stock);
    struct dice dice = {320};

    fixture_build(model);
    for (int i = 0; i < 20000; i++) {
        const struct field *field =
            &stock->fields[dice_between(&dice, 0, (int64_t)stock->field_count - 1)];
        char typed[12] = "";

        for (int64_t j = dice_between(&dice, 0, 10); j-- > 0;)
            typed[j] = letters[dice_between(&dice, 0, (int64_t)sizeof letters - 2)];
        field_read(field, model, &model->stocks.at[0], typed, NULL);
    }
    assert_int_equal(model_check(model, NULL, NULL), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(every_kind_of_number_is_read),
        TEST(a_length_without_a_unit_is_in_the_units_of_the_build),
        TEST(flags_and_choices_are_read_as_words),
        TEST(a_reference_is_read_by_name_and_by_key),
        TEST(a_name_of_digits_is_taken_before_the_key),
        TEST(nothing_is_zero_where_zero_is_in_range),
        TEST(a_text_is_copied_into_the_model),
        TEST(a_date_is_a_day_of_the_calendar),
        TEST(a_number_that_does_not_fit_is_refused_with_its_place),
        TEST(a_range_is_told_in_the_units_of_the_build),
        TEST(an_unknown_word_is_refused_with_those_known),
        TEST(a_reference_to_nothing_is_refused),
        TEST(a_text_that_does_not_fit_is_refused),
        TEST(an_item_keeps_its_own_name),
        TEST(a_day_that_is_none_is_refused_with_its_place),
        TEST(a_text_without_memory_is_refused),
        TEST(values_are_written_with_their_unit),
        TEST(what_comes_as_it_comes_is_written_as_nothing),
        TEST(what_is_written_reads_back_as_the_same),
        TEST(whatever_is_typed_keeps_the_value_in_range),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
