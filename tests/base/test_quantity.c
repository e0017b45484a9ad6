/*
 * Quantities read, printed and read back. An inch is 25.4 mm and a pound 453.59237 g
 * (international yard and pound agreement, 1959).
 */
#include "base/quantity.h"

#include "dice.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdbool.h>
#include <string.h>

#define IN LENGTH_INCH
#define PART LENGTH_64TH
#define MM LENGTH_MM

struct reading {
    enum units units;
    const char *text;
    int64_t value;
};

static void assert_reads(enum quantity quantity, const struct reading *rows, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        struct fault_note note = {0};
        int64_t value = 77;
        enum fault fault = quantity_parse(quantity, rows[i].units, rows[i].text, &value, &note);

        if (fault || value != rows[i].value)
            fail_msg("\"%s\" read as %lld (%s), not %lld", rows[i].text, (long long)value, note.why,
                     (long long)rows[i].value);
    }
}

#define ASSERT_READS(quantity, rows) \
    assert_reads((quantity), (rows), sizeof(rows) / sizeof((rows)[0]))

static void length_reads_inches_and_fractions(void **state)
{
    static const struct reading rows[] = {
        {UNITS_INCH, "76", 76 * IN},
        {UNITS_INCH, "76 1/2", 76 * IN + IN / 2},
        {UNITS_INCH, "76-1/2", 76 * IN + IN / 2},
        {UNITS_INCH, "76   1/2", 76 * IN + IN / 2},
        {UNITS_INCH, "3/4", 48 * PART},
        {UNITS_INCH, "1/64", PART},
        {UNITS_INCH, "5/2", 5 * IN / 2},
        {UNITS_INCH, "0/4", 0},
        {UNITS_INCH, "2-17/32\"", 2 * IN + 34 * PART},
        {UNITS_INCH, "76.5", 76 * IN + IN / 2},
        {UNITS_INCH, ".25", IN / 4},
        {UNITS_INCH, "12in", 12 * IN},
        {UNITS_INCH, "12 Inches", 12 * IN},
        {UNITS_INCH, "1 inch", IN},
        {UNITS_INCH, "-3/4", -48 * PART},
        {UNITS_INCH, "-1-1/2", -IN - IN / 2},
        {UNITS_INCH, " \t76\t ", 76 * IN},
        {UNITS_INCH, "-0", 0},
        {UNITS_MM, "3/4 in", 48 * PART},
        {UNITS_MM, "76\xe2\x80\xb3", 76 * IN},
        {UNITS_MM, "76''", 76 * IN},
    };

    (void)state;
    ASSERT_READS(QUANTITY_LENGTH, rows);
}

static void length_reads_feet_and_inches(void **state)
{
    static const struct reading rows[] = {
        {UNITS_INCH, "6'", 72 * IN},
        {UNITS_INCH, "6'4-1/2\"", 76 * IN + IN / 2},
        {UNITS_INCH, "6'4 1/2\"", 76 * IN + IN / 2},
        {UNITS_INCH, "6' 4", 76 * IN},
        {UNITS_INCH, "6'-4\"", 76 * IN},
        {UNITS_INCH, "6'1/2", 72 * IN + IN / 2},
        {UNITS_INCH, "6 ft 4 in", 76 * IN},
        {UNITS_INCH, "6ft4in", 76 * IN},
        {UNITS_INCH, "6 feet 4 inches", 76 * IN},
        {UNITS_INCH, "1 foot 4.5", 16 * IN + IN / 2},
        {UNITS_INCH, "6.5 ft", 78 * IN},
        {UNITS_INCH, "6 1/2 ft", 78 * IN},
        {UNITS_INCH, "-6'4\"", -76 * IN},
        {UNITS_MM, "6'4", 76 * IN},
        {UNITS_INCH, "6\xe2\x80\xb2 4\xe2\x80\xb3", 76 * IN},
        {UNITS_INCH, "6\xe2\x80\x99 4\xe2\x80\x9d", 76 * IN},
        {UNITS_INCH, "2 yd", 72 * IN},
    };

    (void)state;
    ASSERT_READS(QUANTITY_LENGTH, rows);
}

static void length_reads_metric_units_in_any_work(void **state)
{
    static const struct reading rows[] = {
        {UNITS_INCH, "1.94m", 1940 * MM},
        {UNITS_INCH, "194 cm", 1940 * MM},
        {UNITS_INCH, "1940 mm", 1940 * MM},
        {UNITS_INCH, "1940 MM", 1940 * MM},
        {UNITS_MM, "1940", 1940 * MM},
        {UNITS_MM, "1943.1", 19431 * MM / 10},
        {UNITS_MM, "0.1", MM / 10},
        {UNITS_MM, "1 1/2", 3 * MM / 2},
        {UNITS_MM, "1/64", 5},
        {UNITS_MM, "1000000", LENGTH_MAX},
        {UNITS_MM, "-1000 m", -LENGTH_MAX},
    };

    (void)state;
    ASSERT_READS(QUANTITY_LENGTH, rows);
}

static void a_decimal_between_two_counts_rounds_half_to_even(void **state)
{
    static const struct reading rows[] = {
        {UNITS_MM, "0.0015625", 0}, /* half a count */
        {UNITS_MM, "0.001562501", 1},
        {UNITS_MM, "0.0046875", 2}, /* a count and a half */
        {UNITS_MM, "0.0078125", 2}, /* two and a half */
        {UNITS_MM, "-0.0046875", -2},
        {UNITS_INCH, "0.333333333333333333333333", 2709}, /* 8128 / 3 = 2709.33 */
        {UNITS_INCH, "0.66666666666666666666666666666", 5419},
    };

    (void)state;
    ASSERT_READS(QUANTITY_LENGTH, rows);
}

/* GNU units 2.22, definitions.units, citing NIST SP 811 (2008) and NIST Handbook 44 (2011): the
 * inch 25.4 mm, the yard 0.9144 m, the pound 0.45359237 kg, the US fluid ounce 29.5735295625 mL.
 * In counts; a value between two counts is rounded half to even. */
static void units_convert_as_published(void **state)
{
    static const struct {
        enum quantity quantity;
        const char *text;
        int64_t value;
    } rows[] = {
        {QUANTITY_LENGTH, "1 in", 254 * MM / 10},
        {QUANTITY_LENGTH, "1 yd", 9144 * MM / 10},
        {QUANTITY_LENGTH, "1 ft", 3048 * MM / 10},
        {QUANTITY_MASS, "100 lb", INT64_C(45359237)},
        {QUANTITY_MASS, "1600 oz", INT64_C(45359237)},
        {QUANTITY_VOLUME, "10000000 oz", INT64_C(295735295625)},
        {QUANTITY_VOLUME, "128 oz", INT64_C(3785412)}, /* a gallon is 3785411.784 mm3 */
        {QUANTITY_AREA, "100 ft2", INT64_C(9290304)},
        {QUANTITY_AREA, "100 yd2", INT64_C(83612736)},
        {QUANTITY_DENSITY, "100000000 lb/ft3", INT64_C(1601846337396)},
        {QUANTITY_DENSITY, "1 lb/ft3", INT64_C(16018)},
        {QUANTITY_AREA_MASS, "20903184 oz/yd2", INT64_C(45359237) * 15625},
        {QUANTITY_AREA_MASS, "1 oz/yd2", INT64_C(33906)},
        {QUANTITY_LINE_MASS, "762 lb/ft", INT64_C(45359237) * 25},
        {QUANTITY_LINE_MASS, "1 lb/ft", INT64_C(1488164)},
    };

    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct reading row = {UNITS_INCH, rows[i].text, rows[i].value};

        assert_reads(rows[i].quantity, &row, 1);
    }
}

static void other_quantities_read_in_either_of_their_units(void **state)
{
    static const struct {
        enum quantity quantity;
        struct reading reading;
    } rows[] = {
        {QUANTITY_COUNT, {UNITS_INCH, "12", 12}},
        {QUANTITY_COUNT, {UNITS_MM, "-9223372036854775807", -INT64_MAX}},
        {QUANTITY_RATIO, {UNITS_INCH, "5 %", 50000}},
        {QUANTITY_RATIO, {UNITS_INCH, "5%", 50000}},
        {QUANTITY_RATIO, {UNITS_MM, "0.05", 50000}},
        {QUANTITY_RATIO, {UNITS_MM, "1", 1000000}},
        {QUANTITY_MINUTES, {UNITS_INCH, "2.5", 2500}},
        {QUANTITY_MINUTES, {UNITS_INCH, "1.5 h", 90000}},
        {QUANTITY_MINUTES, {UNITS_INCH, "90 s", 1500}},
        {QUANTITY_MINUTES, {UNITS_INCH, "20 s", 333}},
        {QUANTITY_ANGLE, {UNITS_MM, "12.5", 12500}},
        {QUANTITY_ANGLE, {UNITS_MM, "-8 deg", -8000}},
        {QUANTITY_ANGLE, {UNITS_MM, "8\xc2\xb0", 8000}},
        {QUANTITY_AREA, {UNITS_INCH, "1 m2", 1000000}},
        {QUANTITY_AREA, {UNITS_MM, "1.5", 1500000}},
        {QUANTITY_VOLUME, {UNITS_INCH, "250 ml", 250000}},
        {QUANTITY_VOLUME, {UNITS_MM, "1 L", 1000000}},
        {QUANTITY_MASS, {UNITS_INCH, "1", 453592}},
        {QUANTITY_MASS, {UNITS_MM, "1", 1000000}},
        {QUANTITY_MASS, {UNITS_MM, "250 g", 250000}},
        {QUANTITY_DENSITY, {UNITS_INCH, "30 kg/m3", 30000}},
        {QUANTITY_AREA_MASS, {UNITS_INCH, "300g/m2", 300000}},
        {QUANTITY_LINE_MASS, {UNITS_MM, "2", 2000000}},
    };

    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        assert_reads(rows[i].quantity, &rows[i].reading, 1);
}

struct refusal {
    enum quantity quantity;
    const char *text;
    enum fault fault;
    int column;
    const char *hint; /* part of the reason */
};

static void assert_refused(const struct refusal *rows, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        struct fault_note note = {0};
        int64_t value = 77;
        enum fault fault =
            quantity_parse(rows[i].quantity, UNITS_INCH, rows[i].text, &value, &note);

        if (fault != rows[i].fault || note.column != rows[i].column ||
            !strstr(note.why, rows[i].hint))
            fail_msg("\"%s\": %s, column %d: %s", rows[i].text, fault_words(fault), note.column,
                     note.why);
        assert_int_equal(note.code, fault);
        assert_int_equal(value, 77);
        assert_int_equal(quantity_parse(rows[i].quantity, UNITS_INCH, rows[i].text, &value, NULL),
                         fault);
    }
}

#define ASSERT_REFUSED(rows) assert_refused((rows), sizeof(rows) / sizeof((rows)[0]))

static void length_nonsense_is_refused_with_its_column_and_a_reason(void **state)
{
    static const struct refusal rows[] = {
        {QUANTITY_LENGTH, "", FAULT_SYNTAX, 1, "a number is missing"},
        {QUANTITY_LENGTH, "   ", FAULT_SYNTAX, 4, "a number is missing"},
        {QUANTITY_LENGTH, "-", FAULT_SYNTAX, 2, "a number is missing"},
        {QUANTITY_LENGTH, "--3", FAULT_SYNTAX, 2, "minus"},
        {QUANTITY_LENGTH, "+3", FAULT_SYNTAX, 1, "sums"},
        {QUANTITY_LENGTH, "3+4", FAULT_SYNTAX, 2, "sums"},
        {QUANTITY_LENGTH, "76,5", FAULT_SYNTAX, 3, "use a point"},
        {QUANTITY_LENGTH, "1,940 mm", FAULT_SYNTAX, 2, "use a point"},
        {QUANTITY_LENGTH, ",5", FAULT_SYNTAX, 1, "use a point"},
        {QUANTITY_LENGTH, "76.", FAULT_SYNTAX, 3, "a point stands"},
        {QUANTITY_LENGTH, ".", FAULT_SYNTAX, 2, "after the point"},
        {QUANTITY_LENGTH, "1.2.3", FAULT_SYNTAX, 4, "a point stands"},
        {QUANTITY_LENGTH, "76 12", FAULT_SYNTAX, 4, "second number"},
        {QUANTITY_LENGTH, "76 - 1/2", FAULT_SYNTAX, 4, "a dash only"},
        {QUANTITY_LENGTH, "76 1/", FAULT_SYNTAX, 6, "lower number"},
        {QUANTITY_LENGTH, "76 1/x", FAULT_SYNTAX, 6, "does not fit"},
        {QUANTITY_LENGTH, "76 1/3", FAULT_SYNTAX, 6, "64ths"},
        {QUANTITY_LENGTH, "76 1/0", FAULT_SYNTAX, 6, "64ths"},
        {QUANTITY_LENGTH, "76 1/128", FAULT_SYNTAX, 6, "64ths"},
        {QUANTITY_LENGTH, "76 1/1", FAULT_SYNTAX, 6, "64ths"},
        {QUANTITY_LENGTH, "76 1/2.0", FAULT_SYNTAX, 6, "64ths"},
        {QUANTITY_LENGTH, "76 5/4", FAULT_SYNTAX, 4, "less than one"},
        {QUANTITY_LENGTH, "76 4/4", FAULT_SYNTAX, 4, "less than one"},
        {QUANTITY_LENGTH, "76.5 1/2", FAULT_SYNTAX, 6, "behind a decimal"},
        {QUANTITY_LENGTH, "7.5/8", FAULT_SYNTAX, 4, "slash"},
        {QUANTITY_LENGTH, "1/2/4", FAULT_SYNTAX, 4, "slash"},
        {QUANTITY_LENGTH, "76-1/2-1/4", FAULT_SYNTAX, 7, "dash"},
        {QUANTITY_LENGTH, "6.5 ft 4 in", FAULT_SYNTAX, 8, "second number"},
        {QUANTITY_LENGTH, "6'4\"3", FAULT_SYNTAX, 5, "second number"},
        {QUANTITY_LENGTH, "4 in 6 ft", FAULT_SYNTAX, 6, "second number"},
        {QUANTITY_LENGTH,
         "\xe2\x82\xac"
         "5",
         FAULT_SYNTAX, 1, "\xe2\x82\xac"},
        {QUANTITY_LENGTH, "5\xe2\x80\xb3 \xe2\x82\xac", FAULT_SYNTAX, 4, "\xe2\x82\xac"},
        {QUANTITY_LENGTH, "5 \xff", FAULT_SYNTAX, 3, "\xef\xbf\xbd"},
        {QUANTITY_LENGTH, "5\033[m", FAULT_SYNTAX, 2, "\xef\xbf\xbd"},
        {QUANTITY_LENGTH, "5\n", FAULT_SYNTAX, 2, "does not fit"},
        {QUANTITY_LENGTH, "nan", FAULT_SYNTAX, 1, "\"n\" does not fit"},
        {QUANTITY_LENGTH, "inf", FAULT_SYNTAX, 1, "\"i\" does not fit"},
    };

    (void)state;
    ASSERT_REFUSED(rows);
}

static void a_unit_that_does_not_fit_is_refused_and_those_that_do_are_named(void **state)
{
    static const struct refusal rows[] = {
        {QUANTITY_LENGTH, "5 kg", FAULT_UNIT, 3, "ft, yd, mm, cm or m"},
        {QUANTITY_LENGTH, "5 mmm", FAULT_UNIT, 3, "(in), ft"},
        {QUANTITY_LENGTH, "5 i", FAULT_UNIT, 3, "(in), ft"},
        {QUANTITY_LENGTH, "5 A", FAULT_UNIT, 3, "(in), ft"},
        {QUANTITY_LENGTH, "5 z", FAULT_UNIT, 3, "(in), ft"},
        {QUANTITY_LENGTH, "5 %", FAULT_UNIT, 3, "(in), ft"},
        {QUANTITY_LENGTH, "1e3", FAULT_UNIT, 2, "(in), ft"},
        {QUANTITY_LENGTH, "0x10", FAULT_UNIT, 2, "(in), ft"},
        {QUANTITY_LENGTH, "6 ft 4 cm", FAULT_UNIT, 6, "only inches"},
        {QUANTITY_COUNT, "5 mm", FAULT_UNIT, 3, "no unit"},
        {QUANTITY_RATIO, "5 in", FAULT_UNIT, 3, "%"},
        {QUANTITY_MINUTES, "5 days", FAULT_UNIT, 3, "min, h or s"},
        {QUANTITY_ANGLE, "5 rad", FAULT_UNIT, 3, "deg"},
        {QUANTITY_AREA, "5 mm", FAULT_UNIT, 3, "m2"},
        {QUANTITY_VOLUME, "5 lb", FAULT_UNIT, 3, "ml"},
        {QUANTITY_MASS, "5 lb/ft3", FAULT_UNIT, 3, "lb, oz"},
        {QUANTITY_DENSITY, "5 lb", FAULT_UNIT, 3, "lb/ft3"},
        {QUANTITY_AREA_MASS, "5 oz", FAULT_UNIT, 3, "g/m2"},
        {QUANTITY_LINE_MASS, "5 lb/ft/", FAULT_UNIT, 3, "kg/m"},
    };

    (void)state;
    ASSERT_REFUSED(rows);
}

static void too_much_is_refused(void **state)
{
    static const struct refusal rows[] = {
        {QUANTITY_LENGTH, "1001 m", FAULT_OVERFLOW, 1, "kilometre"},
        {QUANTITY_LENGTH, " -1000.001 m", FAULT_OVERFLOW, 3, "kilometre"},
        {QUANTITY_LENGTH, "3280' 11", FAULT_OVERFLOW, 1, "kilometre"},
        {QUANTITY_LENGTH, "99999999999999999999", FAULT_OVERFLOW, 1, "too large"},
        {QUANTITY_LENGTH, "9223372036854775807", FAULT_OVERFLOW, 1, "too large"},
        {QUANTITY_LENGTH, "1 9223372036854775807/2", FAULT_SYNTAX, 3, "less than one"},
        {QUANTITY_LENGTH, "9223372036854775807/2", FAULT_OVERFLOW, 1, "too large"},
        {QUANTITY_LENGTH, "1/9223372036854775808", FAULT_OVERFLOW, 3, "too large"},
        {QUANTITY_LENGTH, "1' 9000000000000000", FAULT_OVERFLOW, 4, "too large"},
        {QUANTITY_COUNT, "9223372036854775808", FAULT_OVERFLOW, 1, "too large"},
        {QUANTITY_MASS, "9999999999999 kg", FAULT_OVERFLOW, 1, "too large"},
        {QUANTITY_VOLUME, "9223372036854775.808 ml", FAULT_OVERFLOW, 1, "too large"},
    };

    (void)state;
    ASSERT_REFUSED(rows);
}

static void a_count_is_whole_and_only_lengths_take_fractions(void **state)
{
    static const struct refusal rows[] = {
        {QUANTITY_COUNT, "1.5", FAULT_SYNTAX, 2, "whole number"},
        {QUANTITY_COUNT, "4.0", FAULT_SYNTAX, 2, "whole number"},
        {QUANTITY_COUNT, "1/2", FAULT_SYNTAX, 2, "slash"},
        {QUANTITY_MASS, "2 1/2 lb", FAULT_SYNTAX, 3, "second number"},
        {QUANTITY_RATIO, "5 % 3", FAULT_SYNTAX, 5, "second number"},
    };

    (void)state;
    ASSERT_REFUSED(rows);
}

struct printing {
    enum quantity quantity;
    enum units units;
    int64_t value;
    const char *bare;
    const char *with_unit;
};

static void values_print_rounded_reduced_and_short(void **state)
{
    static const struct printing rows[] = {
        {QUANTITY_LENGTH, UNITS_INCH, 76 * IN + IN / 2, "76-1/2", "76-1/2 in"},
        {QUANTITY_LENGTH, UNITS_INCH, 76 * IN, "76", "76 in"},
        {QUANTITY_LENGTH, UNITS_INCH, 48 * PART, "3/4", "3/4 in"},
        {QUANTITY_LENGTH, UNITS_INCH, -48 * PART, "-3/4", "-3/4 in"},
        {QUANTITY_LENGTH, UNITS_INCH, -IN - 3 * PART, "-1-3/64", "-1-3/64 in"},
        {QUANTITY_LENGTH, UNITS_INCH, 63, "0", "0 in"},
        {QUANTITY_LENGTH, UNITS_INCH, -63, "0", "0 in"},
        {QUANTITY_LENGTH, UNITS_INCH, 64, "1/64", "1/64 in"},
        {QUANTITY_LENGTH, UNITS_INCH, IN - 1, "1", "1 in"},
        {QUANTITY_LENGTH, UNITS_MM, 19431 * MM / 10, "1943.1", "1943.1 mm"},
        {QUANTITY_LENGTH, UNITS_MM, 1940 * MM, "1940", "1940 mm"},
        {QUANTITY_LENGTH, UNITS_MM, IN, "25.4", "25.4 mm"},
        {QUANTITY_LENGTH, UNITS_MM, 16, "0", "0 mm"},     /* half a tenth, to even */
        {QUANTITY_LENGTH, UNITS_MM, 48, "0.2", "0.2 mm"}, /* one and a half tenths */
        {QUANTITY_LENGTH, UNITS_MM, -17, "-0.1", "-0.1 mm"},
        {QUANTITY_COUNT, UNITS_MM, -12, "-12", "-12"},
        {QUANTITY_RATIO, UNITS_INCH, 50000, "0.05", "0.05"},
        {QUANTITY_RATIO, UNITS_INCH, 1100000, "1.1", "1.1"},
        {QUANTITY_RATIO, UNITS_INCH, 400, "0", "0"},
        {QUANTITY_MINUTES, UNITS_MM, 2500, "2.5", "2.5 min"},
        {QUANTITY_ANGLE, UNITS_MM, -8001, "-8.001", "-8.001 deg"},
        {QUANTITY_AREA, UNITS_INCH, 9290304, "100", "100 ft2"},
        {QUANTITY_AREA, UNITS_MM, 1500000, "1.5", "1.5 m2"},
        {QUANTITY_VOLUME, UNITS_INCH, 29574, "1", "1 oz"},
        {QUANTITY_VOLUME, UNITS_MM, 250000, "250", "250 ml"},
        {QUANTITY_MASS, UNITS_INCH, 453592, "1", "1 lb"},
        {QUANTITY_MASS, UNITS_MM, 453592, "0.454", "0.454 kg"},
        {QUANTITY_DENSITY, UNITS_INCH, 28800, "1.798", "1.798 lb/ft3"},
        {QUANTITY_DENSITY, UNITS_MM, 28800, "28.8", "28.8 kg/m3"},
        {QUANTITY_AREA_MASS, UNITS_MM, 300000, "300", "300 g/m2"},
        {QUANTITY_LINE_MASS, UNITS_INCH, 1488164, "1", "1 lb/ft"},
    };
    char buffer[QUANTITY_TEXT];

    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const struct printing *row = &rows[i];

        assert_string_equal(quantity_print(buffer, row->quantity, row->units, row->value),
                            row->bare);
        assert_string_equal(quantity_print_unit(buffer, row->quantity, row->units, row->value),
                            row->with_unit);
    }
}

static void the_largest_numbers_print_in_full(void **state)
{
    char buffer[QUANTITY_TEXT];

    (void)state;
    assert_string_equal(quantity_print(buffer, QUANTITY_COUNT, UNITS_MM, INT64_MIN),
                        "-9223372036854775808");
    assert_string_equal(quantity_print(buffer, QUANTITY_MINUTES, UNITS_MM, INT64_MIN),
                        "-9223372036854775.808");
    assert_string_equal(quantity_print_unit(buffer, QUANTITY_DENSITY, UNITS_MM, INT64_MAX),
                        "9223372036854775.807 kg/m3");
    assert_string_equal(quantity_print_unit(buffer, QUANTITY_LENGTH, UNITS_INCH, -LENGTH_MAX),
                        "-39370-5/64 in");
    assert_string_equal(quantity_print(buffer, QUANTITY_LENGTH, UNITS_MM, INT64_MAX),
                        "28823037615171174.4");
}

static void the_exact_print_of_a_value_reads_back_as_that_value(void **state)
{
    struct dice dice = {11};
    char buffer[QUANTITY_TEXT];

    (void)state;
    assert_string_equal(quantity_print_exact(buffer, QUANTITY_LENGTH, UNITS_INCH, 3 * PART),
                        "3/64 in");
    assert_string_equal(quantity_print_exact(buffer, QUANTITY_LENGTH, UNITS_INCH, 813),
                        "2.540625 mm");
    assert_string_equal(quantity_print_exact(buffer, QUANTITY_LENGTH, UNITS_MM, -LENGTH_MAX),
                        "-1000000 mm");
    assert_string_equal(quantity_print_exact(buffer, QUANTITY_LENGTH, UNITS_MM, -1),
                        "-0.003125 mm");
    assert_string_equal(quantity_print_exact(buffer, QUANTITY_LENGTH, UNITS_MM, 0), "0 mm");
    assert_string_equal(quantity_print_exact(buffer, QUANTITY_RATIO, UNITS_INCH, 1), "0.000001");
    for (int round = 0; round < 100000; round++) {
        enum quantity quantity = (enum quantity)(round % QUANTITY_KINDS);
        enum units units = dice_bits(&dice) % 2 ? UNITS_INCH : UNITS_MM;
        enum units work = dice_bits(&dice) % 2 ? UNITS_INCH : UNITS_MM;
        int64_t value = dice_any_size(&dice);
        int64_t back = value + 1;

        if (quantity == QUANTITY_LENGTH)
            value %= LENGTH_MAX;
        quantity_print_exact(buffer, quantity, units, value);
        if (quantity_parse(quantity, work, buffer, &back, NULL) || back != value)
            fail_msg("%lld was printed as \"%s\"", (long long)value, buffer);
    }
}

static void every_quantity_has_its_units(void **state)
{
    (void)state;
    assert_string_equal(quantity_unit(QUANTITY_LENGTH, UNITS_INCH), "in");
    assert_string_equal(quantity_unit(QUANTITY_LENGTH, UNITS_MM), "mm");
    assert_string_equal(quantity_unit(QUANTITY_DENSITY, UNITS_MM), "kg/m3");
    assert_string_equal(quantity_unit(QUANTITY_RATIO, UNITS_INCH), "");
}

/* Prints, reads, prints: the second text is the first. With the unit it reads in any work. */
static void assert_stable(enum quantity quantity, enum units units, int64_t value, bool with_unit)
{
    char *(*print)(char *, enum quantity, enum units, int64_t) =
        with_unit ? quantity_print_unit : quantity_print;
    enum units work = with_unit && units == UNITS_INCH ? UNITS_MM : units;
    char once[QUANTITY_TEXT];
    char twice[QUANTITY_TEXT];
    int64_t back;

    print(once, quantity, units, value);
    if (quantity_parse(quantity, work, once, &back, NULL))
        fail_msg("\"%s\" was printed and cannot be read", once);
    assert_string_equal(once, print(twice, quantity, units, back));
}

static void what_is_printed_reads_back_as_the_same_text(void **state)
{
    struct dice dice = {8};

    (void)state;
    for (int round = 0; round < 200000; round++) {
        enum quantity quantity = (enum quantity)(round % QUANTITY_KINDS);
        enum units units = dice_bits(&dice) % 2 ? UNITS_INCH : UNITS_MM;
        int64_t value = dice_any_size(&dice) / 4;

        if (quantity == QUANTITY_LENGTH)
            value %= LENGTH_MAX;
        assert_stable(quantity, units, value, round % 2);
    }
}

static void every_64th_and_every_tenth_is_kept_exactly(void **state)
{
    char buffer[QUANTITY_TEXT];
    int64_t back;

    (void)state;
    for (int64_t i = -20000; i <= 20000; i++) {
        quantity_print(buffer, QUANTITY_LENGTH, UNITS_INCH, i * PART);
        assert_int_equal(quantity_parse(QUANTITY_LENGTH, UNITS_INCH, buffer, &back, NULL), 0);
        assert_int_equal(back, i * PART);
        quantity_print(buffer, QUANTITY_LENGTH, UNITS_MM, i * MM / 10);
        assert_int_equal(quantity_parse(QUANTITY_LENGTH, UNITS_MM, buffer, &back, NULL), 0);
        assert_int_equal(back, i * MM / 10);
    }
}

static void a_printed_length_is_the_nearest(void **state)
{
    struct dice dice = {9};

    (void)state;
    for (int round = 0; round < 50000; round++) {
        enum units units = round % 2 ? UNITS_INCH : UNITS_MM;
        int64_t step = units == UNITS_INCH ? PART : MM / 10;
        int64_t value = dice_any_size(&dice) % (LENGTH_MAX - step);
        char buffer[QUANTITY_TEXT];
        int64_t back;

        quantity_print(buffer, QUANTITY_LENGTH, units, value);
        assert_int_equal(quantity_parse(QUANTITY_LENGTH, units, buffer, &back, NULL), 0);
        assert_in_range(back - value + step, step - step / 2, step + step / 2);
    }
}

/* Text by chance from the characters that lengths are made of: read or refused, never half. */
static void any_text_is_read_or_refused_with_a_place(void **state)
{
    static const char letters[] = "0123456789 ./-'\",inftmc%";
    struct dice dice = {10};
    int readable = 0;

    (void)state;
    for (int round = 0; round < 300000; round++) {
        enum quantity quantity = (enum quantity)(round % 3 ? 0 : round / 3 % QUANTITY_KINDS);
        size_t length = (size_t)dice_between(&dice, 0, 9);
        struct fault_note note = {0};
        int64_t value = 77;
        char text[10] = "";

        for (size_t i = 0; i < length; i++)
            text[i] = letters[dice_bits(&dice) % (sizeof letters - 1)];
        if (quantity_parse(quantity, UNITS_INCH, text, &value, &note)) {
            assert_in_range(note.column, 1, length + 1);
            assert_true(note.why[0] != '\0');
            assert_int_equal(value, 77);
        } else {
            assert_stable(quantity, UNITS_INCH, value, false);
            readable++;
        }
    }
    assert_true(readable > 3000);
}

/* A pound is 453.59237 g, as was agreed in 1959; what a scale in a workshop shows is common
 * practice. */
static void a_weight_is_told_as_a_scale_would(void **state)
{
    static const struct {
        enum units units;
        int64_t mass; /* mg */
        const char *text;
    } rows[] = {{UNITS_INCH, 31884367, "70 lb"},  {UNITS_INCH, 4535924, "10 lb"},
                {UNITS_INCH, 4400000, "9.7 lb"},  {UNITS_INCH, 453592, "1 lb"},
                {UNITS_INCH, 9072, "0.02 lb"},    {UNITS_INCH, 0, "0 lb"},
                {UNITS_MM, 31884367, "31.9 kg"},  {UNITS_MM, 23000000, "23 kg"},
                {UNITS_MM, 123456, "0.12 kg"},    {UNITS_MM, 1234567, "1.2 kg"},
                {UNITS_INCH, -31884367, "-70 lb"}};
    char buffer[QUANTITY_TEXT];
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        assert_string_equal(quantity_print_weight(buffer, rows[i].units, rows[i].mass),
                            rows[i].text);
}

/* Sizes that a tape shows in inch work, of limits that are whole millimetres; never outside them.
 */
static void limits_are_told_inside_at_marks_of_a_tape(void **state)
{
    static const struct {
        enum quantity quantity;
        enum units units;
        int64_t least, most;
        const char *least_text, *most_text;
    } rows[] = {
        {QUANTITY_LENGTH, UNITS_INCH, 10 * LENGTH_MM, 6000 * LENGTH_MM, "7/16 in", "236 in"},
        {QUANTITY_LENGTH, UNITS_INCH, 0, 10 * LENGTH_MM, "0 in", "3/8 in"},
        {QUANTITY_LENGTH, UNITS_INCH, -10 * LENGTH_MM, 12 * LENGTH_INCH, "-3/8 in", "12 in"},
        {QUANTITY_LENGTH, UNITS_INCH, 350 * LENGTH_MM, 355 * LENGTH_MM, "13-25/32 in",
         "13-31/32 in"},
        {QUANTITY_LENGTH, UNITS_MM, 10 * LENGTH_MM, 6000 * LENGTH_MM, "10 mm", "6000 mm"},
        {QUANTITY_MINUTES, UNITS_INCH, 1500, 60000, "1.5 min", "60 min"},
    };
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct quantity_limits limits =
            quantity_print_limits(rows[i].quantity, rows[i].units, rows[i].least, rows[i].most);
        assert_string_equal(limits.least, rows[i].least_text);
        assert_string_equal(limits.most, rows[i].most_text);
    }
}

/* An inch is 25.4 mm (international yard and pound agreement, 1959). */
static void a_tape_shows_sixteenths_of_an_inch_and_whole_millimetres(void **state)
{
    (void)state;
    assert_int_equal(quantity_on_tape(UNITS_MM, 13 * LENGTH_INCH), 330 * LENGTH_MM);
    assert_int_equal(quantity_on_tape(UNITS_INCH, 13 * LENGTH_INCH), 13 * LENGTH_INCH);
    /* 1345 mm are 52.953 in: 52-15/16 and 0.25 of a sixteenth */
    assert_int_equal(quantity_on_tape(UNITS_INCH, 1345 * LENGTH_MM),
                     52 * LENGTH_INCH + 15 * LENGTH_INCH / 16);
    assert_int_equal(quantity_on_tape(UNITS_INCH, -LENGTH_INCH / 16), -LENGTH_INCH / 16);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(length_reads_inches_and_fractions),
        cmocka_unit_test(length_reads_feet_and_inches),
        cmocka_unit_test(length_reads_metric_units_in_any_work),
        cmocka_unit_test(a_decimal_between_two_counts_rounds_half_to_even),
        cmocka_unit_test(units_convert_as_published),
        cmocka_unit_test(other_quantities_read_in_either_of_their_units),
        cmocka_unit_test(length_nonsense_is_refused_with_its_column_and_a_reason),
        cmocka_unit_test(a_unit_that_does_not_fit_is_refused_and_those_that_do_are_named),
        cmocka_unit_test(too_much_is_refused),
        cmocka_unit_test(a_count_is_whole_and_only_lengths_take_fractions),
        cmocka_unit_test(values_print_rounded_reduced_and_short),
        cmocka_unit_test(the_largest_numbers_print_in_full),
        cmocka_unit_test(the_exact_print_of_a_value_reads_back_as_that_value),
        cmocka_unit_test(every_quantity_has_its_units),
        cmocka_unit_test(what_is_printed_reads_back_as_the_same_text),
        cmocka_unit_test(a_weight_is_told_as_a_scale_would),
        cmocka_unit_test(limits_are_told_inside_at_marks_of_a_tape),
        cmocka_unit_test(every_64th_and_every_tenth_is_kept_exactly),
        cmocka_unit_test(a_printed_length_is_the_nearest),
        cmocka_unit_test(any_text_is_read_or_refused_with_a_place),
        cmocka_unit_test(a_tape_shows_sixteenths_of_an_inch_and_whole_millimetres),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
