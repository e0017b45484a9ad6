/* The invariants of a model, one by one: what breaks one is told, with its place. */
#include "fixture.h"
#include "model/trade.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

/* The first fault told, and how many there were. */
struct told {
    struct fault_note first;
    size_t count;
};

static void tell(void *context, const struct fault_note *note)
{
    struct told *told = context;

    if (told->count++ == 0)
        told->first = *note;
}

static struct told check(const struct model *model)
{
    struct told told = {.count = 0};

    size_t count = model_check(model, tell, &told);

    assert_int_equal(told.count, count);
    assert_int_equal(model_check(model, NULL, NULL), count);
    return told;
}

static void assert_one_fault(const struct model *model, enum fault code, const char *path,
                             const char *why)
{
    struct told told = check(model);

    assert_int_equal(told.count, 1);
    assert_int_equal(told.first.code, code);
    assert_string_equal(told.first.path, path);
    if (!strstr(told.first.why, why))
        fail_msg("\"%s\" does not say \"%s\"", told.first.why, why);
}

/* ---- invariant 1: keys ---- */

static void a_whole_build_has_no_fault(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    assert_int_equal(check(model).count, 0);
}

static void a_list_out_of_order_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct group *group;

    MODEL_ADD(model, group)->name = "one";
    MODEL_ADD(model, group)->name = "two";
    group = model->groups.at;
    group[0].key = 2;
    group[1].key = 1;
    assert_one_fault(model, FAULT_DUPLICATE, "two", "does not follow");
}

static void a_key_twice_in_one_list_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    MODEL_ADD(model, group)->name = "one";
    MODEL_ADD(model, group)->name = "two";
    model->groups.at[1].key = 1;
    assert_one_fault(model, FAULT_DUPLICATE, "one", "does not follow");
}

static void a_key_in_two_lists_of_a_build_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    MODEL_ADD(model, wall);
    MODEL_ADD(model, group)->name = "one";
    model->groups.at[0].key = 1;
    assert_one_fault(model, FAULT_DUPLICATE, "one", "that of a wall");
}

static void workshop_and_build_may_use_one_key(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    MODEL_ADD(model, set)->name = "bed";
    MODEL_ADD(model, group)->name = "one";
    assert_int_equal(model->sets.at[0].key, model->groups.at[0].key);
    assert_int_equal(check(model).count, 0);
}

static void a_key_not_given_out_yet_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    MODEL_ADD(model, group)->name = "one";
    model->build.next_key = 1;
    assert_one_fault(model, FAULT_RANGE, "one", "next key, 1");
}

static void a_key_that_is_none_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    MODEL_ADD(model, group)->name = "one";
    model->groups.at[0].key = 0;
    assert_one_fault(model, FAULT_RANGE, "one", "key 0 ");
}

/* ---- invariant 2: references ---- */

static void a_reference_to_nothing_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    model->boxes.at[1].stick = 77;
    assert_one_fault(model, FAULT_REFERENCE, "stick of B", "no stock with key 77");
}

static void a_reference_to_another_kind_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct small_build build = fixture_build(model);

    model->facings.at[0].box = build.layer;
    assert_one_fault(model, FAULT_REFERENCE, "box of facing 3", "no box");
}

static void a_reference_that_must_be_given_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    model->facings.at[0].stock = 0;
    assert_one_fault(model, FAULT_MISSING, "stock of panel of A", "a stock is needed");
}

static void the_set_of_the_build_is_looked_for(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    model->build.set = 5;
    assert_one_fault(model, FAULT_REFERENCE, "set of the build", "no set");
}

/* ---- invariant 3: ranges ---- */

static void a_value_out_of_range_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    model->boxes.at[0].width = 7000 * LENGTH_MM;
    assert_one_fault(model, FAULT_RANGE, "width of A", "width must be from");
}

static void a_value_of_the_workshop_out_of_range_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    model->workshop.skill = 0;
    assert_one_fault(model, FAULT_RANGE, "skill of the workshop", "skill must be from 0.1 to 10");
}

static void a_flag_that_is_neither_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    model->facings.at[0].glued = 2;
    assert_one_fault(model, FAULT_RANGE, "glued of panel of A", "from 0 to 1");
}

static void a_choice_that_is_no_word_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    model->boxes.at[0].frame = FRAME_COUNT;
    assert_one_fault(model, FAULT_UNKNOWN, "frame of A", "no such word");
    model->boxes.at[0].frame = -1;
    assert_one_fault(model, FAULT_UNKNOWN, "frame of A", "no such word");
}

static void a_text_too_long_or_missing_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    model->boxes.at[0].name = "";
    assert_one_fault(model, FAULT_MISSING, "name of box 1", "at least 1");
    model->boxes.at[0].name = "a name of more than twenty";
    assert_one_fault(model, FAULT_RANGE, "name of a name of more than twenty", "at most 20");
}

static void a_text_that_is_not_utf8_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    model->boxes.at[0].note = "\xc0\x80";
    assert_one_fault(model, FAULT_SYNTAX, "note of A", "UTF-8");
}

static void a_day_that_is_none_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    model->build.due = "2026-02-30";
    assert_one_fault(model, FAULT_SYNTAX, "due of the build", "no such day");
}

/* ---- invariant 4: names ---- */

static void a_name_given_twice_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    model->boxes.at[1].name = "A";
    assert_one_fault(model, FAULT_DUPLICATE, "name of A", "another box has this name");
    model->boxes.at[1].name = "B";
    model->joins.at[1].name = "J";
    assert_one_fault(model, FAULT_DUPLICATE, "name of J", "another join has this name");
    model->joins.at[1].name = "W";
    model->stocks.at[2].name = "stud";
    assert_one_fault(model, FAULT_DUPLICATE, "name of stud", "another stock has this name");
}

static void a_box_may_be_called_as_a_join_is(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    fixture_build(model);
    model->joins.at[0].name = "A";
    assert_int_equal(check(model).count, 0);
}

/* ---- invariant 5: trade values ---- */

static void change(struct model *model, const char *name, const char *value)
{
    struct build_value *item = MODEL_ADD(model, build_value);

    item->name = name;
    item->value = value;
}

static void a_trade_value_that_is_none_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    change(model, "join.colour", "10 in");
    assert_one_fault(model, FAULT_UNKNOWN, "value of join.colour", "no such trade value");
}

static void a_trade_value_that_cannot_be_read_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    change(model, "join.pitch", "wide");
    assert_int_equal(check(model).count, 1);
    assert_string_equal(check(model).first.path, "value of join.pitch");
}

static void a_trade_value_out_of_range_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct shop_value *item = MODEL_ADD(model, shop_value);

    item->name = "join.pitch";
    item->value = "9000 mm";
    assert_one_fault(model, FAULT_RANGE, "value of join.pitch", "join.pitch must be from");
}

/* As trade_of reads it: 2 in is a pitch, 2 mm is none. */
static void a_trade_value_of_the_workshop_is_read_in_its_units(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct shop_value *item = MODEL_ADD(model, shop_value);

    item->name = "join.pitch";
    item->value = "2";
    model->build.units = UNITS_WORD_MM;
    assert_int_equal(check(model).count, 0);
    assert_int_equal(trade_of(model, TRADE_JOIN_PITCH), 2 * LENGTH_INCH);
    model->workshop.units = UNITS_WORD_MM;
    model->build.units = UNITS_WORD_INCH;
    assert_one_fault(model, FAULT_RANGE, "value of join.pitch", "join.pitch must be from");
}

static void a_trade_value_changed_twice_is_told(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;

    change(model, "join.pitch", "10 in");
    change(model, "join.pitch", "11 in");
    assert_one_fault(model, FAULT_DUPLICATE, "value of join.pitch", "changed twice");
}

/* ---- all of them ---- */

static void every_fault_is_told_in_order(void **state)
{
    struct model *model = &((struct fixture *)*state)->model;
    struct told told;

    fixture_build(model);
    model->stocks.at[0].gauge = 31;
    model->boxes.at[0].width = 0;
    model->boxes.at[1].stick = 9;
    model->workshop.name = "";
    told = check(model);
    assert_int_equal(told.count, 4);
    assert_string_equal(told.first.path, "gauge of stud");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(a_whole_build_has_no_fault),
        TEST(a_list_out_of_order_is_told),
        TEST(a_key_twice_in_one_list_is_told),
        TEST(a_key_in_two_lists_of_a_build_is_told),
        TEST(workshop_and_build_may_use_one_key),
        TEST(a_key_not_given_out_yet_is_told),
        TEST(a_key_that_is_none_is_told),
        TEST(a_reference_to_nothing_is_told),
        TEST(a_reference_to_another_kind_is_told),
        TEST(a_reference_that_must_be_given_is_told),
        TEST(the_set_of_the_build_is_looked_for),
        TEST(a_value_out_of_range_is_told),
        TEST(a_value_of_the_workshop_out_of_range_is_told),
        TEST(a_flag_that_is_neither_is_told),
        TEST(a_choice_that_is_no_word_is_told),
        TEST(a_text_too_long_or_missing_is_told),
        TEST(a_text_that_is_not_utf8_is_told),
        TEST(a_day_that_is_none_is_told),
        TEST(a_name_given_twice_is_told),
        TEST(a_box_may_be_called_as_a_join_is),
        TEST(a_trade_value_that_is_none_is_told),
        TEST(a_trade_value_that_cannot_be_read_is_told),
        TEST(a_trade_value_out_of_range_is_told),
        TEST(a_trade_value_of_the_workshop_is_read_in_its_units),
        TEST(a_trade_value_changed_twice_is_told),
        TEST(every_fault_is_told_in_order),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
