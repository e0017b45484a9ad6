/* Trade values: their table, with units and sources, and which value holds. */
#include "dice.h"
#include "fixture.h"
#include "model/trade.h"
#include "scarce.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

/* ---- the table ---- */

static const char *const enum_names[TRADE_COUNT] = {
#define TRADE_NAME(name, key, quantity, inch, mm, least, most, source, help) #name,
    TRADE_VALUES(TRADE_NAME)
#undef TRADE_NAME
};

static void every_enum_name_is_its_key(void **state)
{
    (void)state;
    for (int i = 0; i < TRADE_COUNT; i++) {
        const char *key = trade_values[i].key;

        assert_int_equal(strlen(key), strlen(enum_names[i]));
        assert_int_equal(strspn(key, "abcdefghijklmnopqrstuvwxyz0123456789_."), strlen(key));
        for (size_t j = 0; key[j]; j++) {
            bool is_letter = key[j] >= 'a' && key[j] <= 'z';

            assert_int_equal(enum_names[i][j], key[j] == '.' ? '_'
                                               : is_letter   ? key[j] - 'a' + 'A'
                                                             : key[j]);
        }
    }
}

static void every_key_is_found_and_fits_a_value(void **state)
{
    const struct field *name = field_named(entity_of(ENTITY_build_value), "name");

    (void)state;
    for (int i = 0; i < TRADE_COUNT; i++) {
        assert_int_equal(trade_find(trade_values[i].key), i);
        assert_true(strlen(trade_values[i].key) <= (size_t)name->most);
    }
    assert_int_equal(trade_find("join"), -1);
    assert_int_equal(trade_find(""), -1);
}

static void every_value_has_help_and_a_known_source(void **state)
{
    static const char *const sources[] = {VALUE_PRACTICE, VALUE_DERIVED, VALUE_JOHNSON,
                                          VALUE_APA,      VALUE_SAFETY,  VALUE_NIOSH,
                                          VALUE_TEAM,     VALUE_IBC,     VALUE_STURDY};
    const size_t count = sizeof sources / sizeof *sources;

    (void)state;
    for (int i = 0; i < TRADE_COUNT; i++) {
        size_t source = 0;

        assert_true(strlen(trade_values[i].help) > 4);
        while (source < count && strcmp(trade_values[i].source, sources[source]) != 0)
            source++;
        assert_true(source < count);
    }
}

static void both_standards_lie_in_the_range(void **state)
{
    (void)state;
    for (int i = 0; i < TRADE_COUNT; i++) {
        const struct trade_value *value = &trade_values[i];

        assert_true(value->quantity < QUANTITY_KINDS);
        assert_true(value->least < value->most);
        for (int units = 0; units < 2; units++)
            if (value->standard[units] < value->least || value->standard[units] > value->most)
                fail_msg("%s", value->key);
    }
}

/* Sold or read in steps that differ between the units. */
static bool is_of_its_own_in_each_unit(const char *key)
{
    return strcmp(key, "cloth.round") == 0 || strcmp(key, "mark.grid") == 0 ||
           strcmp(key, "welt.step") == 0;
}

static void inch_and_millimetre_agree_within_fifteen_in_a_hundred(void **state)
{
    (void)state;
    for (int i = 0; i < TRADE_COUNT; i++) {
        int64_t inch = trade_values[i].standard[UNITS_INCH];
        int64_t mm = trade_values[i].standard[UNITS_MM];
        int64_t apart = inch > mm ? inch - mm : mm - inch;
        bool agree = apart * 100 <= 15 * (inch > mm ? inch : mm);

        if (agree == is_of_its_own_in_each_unit(trade_values[i].key))
            fail_msg("%s", trade_values[i].key);
    }
}

static void standards_read_back_from_their_text(void **state)
{
    (void)state;
    for (int i = 0; i < TRADE_COUNT; i++)
        for (int units = 0; units < 2; units++) {
            const struct trade_value *row = &trade_values[i];
            char text[QUANTITY_TEXT];
            char again[QUANTITY_TEXT];
            int64_t value;

            quantity_print_unit(text, row->quantity, (enum units)units, row->standard[units]);
            assert_int_equal(trade_read((enum trade)i, (enum units)units, text, &value, NULL), 0);
            quantity_print_unit(again, row->quantity, (enum units)units, value);
            assert_string_equal(text, again);
        }
}

/* Common practice, no source: the order that the names promise. */
static void least_values_are_not_above_usual_ones(void **state)
{
    static const enum trade pairs[][2] = {
        {TRADE_SCREW_BITE_SIDE_MIN, TRADE_SCREW_BITE_SIDE},
        {TRADE_SCREW_BITE_END_MIN, TRADE_SCREW_BITE_END},
        {TRADE_SEAM_BEARING_MIN, TRADE_SEAM_BEARING},
        {TRADE_PANEL_EDGE_PITCH_SEAT, TRADE_PANEL_EDGE_PITCH_FACE},
        {TRADE_CROSS_CLEAR_REJECT, TRADE_CROSS_CLEAR_WARN},
        {TRADE_END_MIN_PILOTED_REJECT, TRADE_END_MIN_PILOTED_WARN},
        {TRADE_JOIN_END_SHORT, TRADE_JOIN_END},
        {TRADE_JOIN_LEAST, TRADE_JOIN_LEAST_LONG},
        {TRADE_JOINT_WIDTH_NARROW, TRADE_JOINT_WIDTH_MIDDLE},
        {TRADE_JOINT_WIDTH_MIDDLE, TRADE_JOINT_WIDTH_WIDE},
        {TRADE_LANDING_NARROW, TRADE_LANDING},
        {TRADE_DRIVER_STUBBY, TRADE_DRIVER_RIGHT_ANGLE},
        {TRADE_DRIVER_RIGHT_ANGLE, TRADE_DRIVER_INLINE},
        {TRADE_LID_STAY_LEAST, TRADE_LID_STAY_MOST},
        {TRADE_SPAN_SEAT_3_4, TRADE_SPAN_BACK_3_4},
        {TRADE_SPAN_BACK_3_4, TRADE_SPAN_COVERING_3_4},
        {TRADE_LEARNER_SECOND, TRADE_LEARNER_FIRST},
    };

    (void)state;
    for (size_t i = 0; i < sizeof pairs / sizeof pairs[0]; i++)
        for (int units = 0; units < 2; units++)
            if (trade_values[pairs[i][0]].standard[units] >
                trade_values[pairs[i][1]].standard[units])
                fail_msg("%s", trade_values[pairs[i][0]].key);
}

/* Bending over span, P L^3 / (48 E I) / L: P = 250 lb, E = 1.3e6 psi, I = 12 t^3 / 12 for a strip
 * 12 in wide; derived. */
static double share_of_span(double thickness, double span)
{
    double inertia = thickness * thickness * thickness;

    return 250 * span * span * span / (48 * 1.3e6 * inertia) / span;
}

static double in_inches(enum trade trade)
{
    return (double)trade_values[trade].standard[UNITS_INCH] / (double)LENGTH_INCH;
}

static void seats_bend_by_no_more_than_is_allowed(void **state)
{
    double allowed = 1.0 / 180; /* of the span: common practice, no source */

    (void)state;
    assert_true(share_of_span(0.75, in_inches(TRADE_SPAN_SEAT_3_4)) <= allowed);
    assert_true(share_of_span(0.625, in_inches(TRADE_SPAN_SEAT_5_8)) <= allowed);
    assert_true(share_of_span(0.5, in_inches(TRADE_SPAN_SEAT_1_2)) <= allowed);
}

/* Two inches of loose cloth at each side of the patch, so that it folds back: derived. */
static void an_opening_is_its_patch_and_two_margins(void **state)
{
    int64_t patch = trade_values[TRADE_PATCH_PLAIN].standard[UNITS_INCH];
    int64_t margin = 2 * LENGTH_INCH;
    int64_t opening = trade_values[TRADE_OPEN_PER_SCREW].standard[UNITS_INCH];

    (void)state;
    assert_in_range(opening, patch + 2 * margin, patch + 2 * margin + LENGTH_INCH / 2);
}

/* ---- values that hold ---- */

static void a_standard_holds_in_the_units_of_the_build(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    assert_int_equal(trade_of(model, TRADE_JOIN_PITCH), 12 * LENGTH_INCH);
    model->build.units = UNITS_WORD_MM;
    assert_int_equal(trade_of(model, TRADE_JOIN_PITCH), 300 * LENGTH_MM);
    assert_int_equal(trade_origin_of(model, TRADE_JOIN_PITCH), TRADE_FROM_STANDARD);
}

static enum fault change(struct model *model, enum trade_origin where, const char *text)
{
    return trade_change(model, where, "join.pitch", text, NULL);
}

static void the_build_goes_before_the_workshop(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    assert_int_equal(change(model, TRADE_FROM_WORKSHOP, "10"), 0);
    assert_int_equal(trade_of(model, TRADE_JOIN_PITCH), 10 * LENGTH_INCH);
    assert_int_equal(trade_origin_of(model, TRADE_JOIN_PITCH), TRADE_FROM_WORKSHOP);
    assert_int_equal(change(model, TRADE_FROM_BUILD, "9"), 0);
    assert_int_equal(trade_of(model, TRADE_JOIN_PITCH), 9 * LENGTH_INCH);
    assert_int_equal(trade_origin_of(model, TRADE_JOIN_PITCH), TRADE_FROM_BUILD);
    assert_int_equal(trade_of(model, TRADE_JOIN_END), 3 * LENGTH_INCH);
}

static void nothing_typed_goes_back(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    change(model, TRADE_FROM_WORKSHOP, "10");
    change(model, TRADE_FROM_BUILD, "9");
    assert_int_equal(change(model, TRADE_FROM_BUILD, ""), 0);
    assert_int_equal(trade_of(model, TRADE_JOIN_PITCH), 10 * LENGTH_INCH);
    assert_int_equal(change(model, TRADE_FROM_WORKSHOP, "  "), 0);
    assert_int_equal(trade_of(model, TRADE_JOIN_PITCH), 12 * LENGTH_INCH);
    assert_int_equal(change(model, TRADE_FROM_WORKSHOP, ""), 0);
    assert_int_equal(model->shop_values.count + model->build_values.count, 0);
}

static void a_second_change_replaces_the_first(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    change(model, TRADE_FROM_BUILD, "9");
    change(model, TRADE_FROM_BUILD, "8");
    assert_int_equal(model->build_values.count, 1);
    assert_int_equal(trade_of(model, TRADE_JOIN_PITCH), 8 * LENGTH_INCH);
    assert_int_equal(model_check(model, NULL, NULL), 0);
}

static void a_changed_value_is_kept_with_its_unit(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    change(model, TRADE_FROM_BUILD, "9-1/2");
    assert_string_equal(model->build_values.at[0].value, "9-1/2 in");
    change(model, TRADE_FROM_BUILD, "235 mm");
    assert_string_equal(model->build_values.at[0].value, "235 mm");
    change(model, TRADE_FROM_BUILD, "10");
    model->build.units = UNITS_WORD_MM;
    assert_int_equal(trade_of(model, TRADE_JOIN_PITCH), 10 * LENGTH_INCH);
    trade_change(model, TRADE_FROM_BUILD, "screw.waste", "8 %", NULL);
    assert_string_equal(model->build_values.at[1].value, "8 %");
}

/* What the typed number is, counted in 1/320 mm by hand: 0.13 in is 1056.64 of 8128 to the inch. */
static void a_changed_value_is_kept_exactly_as_it_was_typed(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    assert_int_equal(trade_change(model, TRADE_FROM_BUILD, "kerf", "0.13", NULL), FAULT_NONE);
    assert_int_equal(trade_of(model, TRADE_KERF), 1057);
    assert_string_equal(model->build_values.at[0].value, "0.13 in");
    model->build.units = UNITS_WORD_MM;
    assert_int_equal(trade_change(model, TRADE_FROM_BUILD, "kerf", "3.25", NULL), FAULT_NONE);
    assert_int_equal(trade_of(model, TRADE_KERF), 1040);
    assert_int_equal(trade_change(model, TRADE_FROM_BUILD, "screw.waste", "3.3333 %", NULL),
                     FAULT_NONE);
    assert_int_equal(trade_of(model, TRADE_SCREW_WASTE), 33333);
    /* More digits than are kept. */
    assert_int_equal(trade_change(model, TRADE_FROM_BUILD, "kerf",
                                  "3.2500000000000000000000000000000000000000000000000", NULL),
                     FAULT_NONE);
    assert_int_equal(trade_of(model, TRADE_KERF), 1040);
}

static void the_workshop_reads_in_its_own_units(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    model->workshop.units = UNITS_WORD_MM;
    assert_int_equal(change(model, TRADE_FROM_WORKSHOP, "250"), 0);
    assert_int_equal(trade_of(model, TRADE_JOIN_PITCH), 250 * LENGTH_MM);
}

static void a_change_that_cannot_be_is_refused_with_its_reason(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct fault_note note;

    assert_int_equal(trade_change(model, TRADE_FROM_BUILD, "join.colour", "3", &note),
                     FAULT_UNKNOWN);
    assert_int_equal(trade_change(model, TRADE_FROM_BUILD, "join.pitch", "12 x", &note),
                     FAULT_UNIT);
    assert_int_equal(note.column, 4);
    assert_int_equal(trade_change(model, TRADE_FROM_BUILD, "join.pitch", "1 mm", &note),
                     FAULT_RANGE);
    assert_non_null(strstr(note.why, "from 13/16 in to 118 in"));
    assert_int_equal(trade_change(model, TRADE_FROM_BUILD, "nail.waste", "5 mm", &note),
                     FAULT_UNIT);
    assert_int_equal(model->build_values.count, 0);
}

static void a_value_that_cannot_be_read_is_as_if_not_there(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    change(model, TRADE_FROM_WORKSHOP, "10");
    change(model, TRADE_FROM_BUILD, "9");
    model->build_values.at[0].value = "wide";
    assert_int_equal(trade_of(model, TRADE_JOIN_PITCH), 10 * LENGTH_INCH);
    assert_int_equal(trade_origin_of(model, TRADE_JOIN_PITCH), TRADE_FROM_WORKSHOP);
}

static void resolving_all_is_asking_for_each(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct dice dice = {8128};
    static int64_t values[TRADE_COUNT];

    for (int round = 0; round < 200; round++) {
        enum trade trade = (enum trade)dice_between(&dice, 0, TRADE_COUNT - 1);
        const struct trade_value *row = &trade_values[trade];
        char text[QUANTITY_TEXT];

        quantity_print_unit(text, row->quantity, UNITS_MM,
                            dice_between(&dice, row->least, row->most));
        model->build.units = (int64_t)(dice_bits(&dice) % 2);
        trade_change(model, dice_bits(&dice) % 2 ? TRADE_FROM_BUILD : TRADE_FROM_WORKSHOP, row->key,
                     text, NULL);
    }
    assert_true(model->build_values.count > 50 && model->shop_values.count > 50);
    model->build_values.at[0].value = "wide";
    trade_resolve(model, values);
    for (int i = 0; i < TRADE_COUNT; i++)
        assert_int_equal(values[i], trade_of(model, (enum trade)i));
}

static void a_change_without_memory_is_refused(void **state)
{
    struct fixture *fixture = *state;
    struct arena none;

    arena_init(&none);
    fixture->model.arena = &none;
    scarce_begin(1);
    assert_int_equal(change(&fixture->model, TRADE_FROM_BUILD, "9"), FAULT_MEMORY);
    scarce_end();
    assert_int_equal(trade_of(&fixture->model, TRADE_JOIN_PITCH), 12 * LENGTH_INCH);
}

static void groups_hold_every_value_once_in_order(void **state)
{
    int seen = 0;
    (void)state;
    for (int group = 0; group < trade_group_count; group++) {
        assert_true(trade_groups[group].count > 0);
        for (int i = 0; i < trade_groups[group].count; i++, seen++)
            assert_int_equal(trade_group_of((enum trade)seen), group);
    }
    assert_int_equal(seen, TRADE_COUNT);
    assert_string_equal(trade_groups[trade_group_of(TRADE_KERF)].title,
                        "sticks, sheets and what they weigh");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(groups_hold_every_value_once_in_order),
        cmocka_unit_test(every_enum_name_is_its_key),
        cmocka_unit_test(every_key_is_found_and_fits_a_value),
        cmocka_unit_test(every_value_has_help_and_a_known_source),
        cmocka_unit_test(both_standards_lie_in_the_range),
        cmocka_unit_test(inch_and_millimetre_agree_within_fifteen_in_a_hundred),
        cmocka_unit_test(standards_read_back_from_their_text),
        cmocka_unit_test(least_values_are_not_above_usual_ones),
        cmocka_unit_test(seats_bend_by_no_more_than_is_allowed),
        cmocka_unit_test(an_opening_is_its_patch_and_two_margins),
        TEST(a_standard_holds_in_the_units_of_the_build),
        TEST(the_build_goes_before_the_workshop),
        TEST(nothing_typed_goes_back),
        TEST(a_second_change_replaces_the_first),
        TEST(a_changed_value_is_kept_with_its_unit),
        TEST(a_changed_value_is_kept_exactly_as_it_was_typed),
        TEST(the_workshop_reads_in_its_own_units),
        TEST(a_change_that_cannot_be_is_refused_with_its_reason),
        TEST(a_value_that_cannot_be_read_is_as_if_not_there),
        TEST(resolving_all_is_asking_for_each),
        TEST(a_change_without_memory_is_refused),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
