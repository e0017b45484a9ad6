/*
 * Quantities in and out.
 *
 *  1. A unit is a row of `unit_rows`: so many counts, as an exact fraction. Nothing else knows a
 *     factor. Reading multiplies by the fraction, printing divides by it; each rounds once, half to
 *     even.
 *  2. What is printed is coarser than a count: a step of the last printed place is at least one
 *     count. So what is printed reads back within half a count, and prints the same again.
 *  3. A length in feet and inches is the only value made of two terms.
 */
#include "base/quantity.h"

#include "base/scan.h"
#include "base/whole.h"

#include <assert.h>
#include <inttypes.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define THOUSAND INT64_C(1000)

/* The pound is 453592.37 mg, the US fluid ounce 29573.5295625 mm3 (NIST SP 811). */
#define POUND_HUNDREDTHS INT64_C(45359237)

struct unit {
    enum quantity quantity;
    const char *name;
    int64_t counts; /* one unit is counts / parts */
    int64_t parts;
};

static const struct unit unit_rows[] = {
    {QUANTITY_LENGTH, "in", LENGTH_INCH, 1},
    {QUANTITY_LENGTH, "inch", LENGTH_INCH, 1},
    {QUANTITY_LENGTH, "inches", LENGTH_INCH, 1},
    {QUANTITY_LENGTH, "\"", LENGTH_INCH, 1},
    {QUANTITY_LENGTH, "''", LENGTH_INCH, 1},
    {QUANTITY_LENGTH, "\xe2\x80\xb3", LENGTH_INCH, 1}, /* double prime */
    {QUANTITY_LENGTH, "\xe2\x80\x9d", LENGTH_INCH, 1}, /* the quote a telephone makes of it */
    {QUANTITY_LENGTH, "ft", 12 * LENGTH_INCH, 1},
    {QUANTITY_LENGTH, "foot", 12 * LENGTH_INCH, 1},
    {QUANTITY_LENGTH, "feet", 12 * LENGTH_INCH, 1},
    {QUANTITY_LENGTH, "'", 12 * LENGTH_INCH, 1},
    {QUANTITY_LENGTH, "\xe2\x80\xb2", 12 * LENGTH_INCH, 1}, /* prime */
    {QUANTITY_LENGTH, "\xe2\x80\x99", 12 * LENGTH_INCH, 1}, /* the quote made of it */
    {QUANTITY_LENGTH, "yd", 36 * LENGTH_INCH, 1},
    {QUANTITY_LENGTH, "mm", LENGTH_MM, 1},
    {QUANTITY_LENGTH, "cm", 10 * LENGTH_MM, 1},
    {QUANTITY_LENGTH, "m", 1000 * LENGTH_MM, 1},
    {QUANTITY_COUNT, "", 1, 1},
    {QUANTITY_RATIO, "", 1000000, 1},
    {QUANTITY_RATIO, "%", 10000, 1},
    {QUANTITY_MINUTES, "min", 1000, 1},
    {QUANTITY_MINUTES, "h", 60000, 1},
    {QUANTITY_MINUTES, "s", 50, 3},
    {QUANTITY_ANGLE, "deg", 1000, 1},
    {QUANTITY_ANGLE, "\xc2\xb0", 1000, 1}, /* degree sign */
    {QUANTITY_AREA, "ft2", 9290304, 100},
    {QUANTITY_AREA, "yd2", 83612736, 100},
    {QUANTITY_AREA, "m2", 1000000, 1},
    {QUANTITY_VOLUME, "oz", 473176473, 16000},
    {QUANTITY_VOLUME, "ml", 1000, 1},
    {QUANTITY_VOLUME, "l", 1000000, 1},
    {QUANTITY_MASS, "lb", POUND_HUNDREDTHS, 100},
    {QUANTITY_MASS, "oz", POUND_HUNDREDTHS, 1600},
    {QUANTITY_MASS, "kg", 1000000, 1},
    {QUANTITY_MASS, "g", 1000, 1},
    /* (453.59237 g) / (0.3048 m)^3, both sides divided by 2^7 */
    {QUANTITY_DENSITY, "lb/ft3", POUND_HUNDREDTHS * 78125, 221225364},
    {QUANTITY_DENSITY, "kg/m3", 1000, 1},
    /* (453592.37 mg / 16) / (0.9144 m)^2 */
    {QUANTITY_AREA_MASS, "oz/yd2", POUND_HUNDREDTHS * 15625, 20903184},
    {QUANTITY_AREA_MASS, "g/m2", 1000, 1},
    /* 453592.37 mg / 0.3048 m */
    {QUANTITY_LINE_MASS, "lb/ft", POUND_HUNDREDTHS * 25, 762},
    {QUANTITY_LINE_MASS, "kg/m", 1000000, 1},
};

#define UNIT_ROWS (sizeof unit_rows / sizeof unit_rows[0])

static const char *const shown_units[QUANTITY_KINDS][2] = {
#define SHOWN_ROW(name, base, inch, mm) [QUANTITY_##name] = {(inch), (mm)},
    QUANTITIES(SHOWN_ROW)
#undef SHOWN_ROW
};

static const char *const unit_hints[QUANTITY_KINDS] = {
    [QUANTITY_LENGTH] = "a length is in inches (in), ft, yd, mm, cm or m",
    [QUANTITY_COUNT] = "a count has no unit",
    [QUANTITY_RATIO] = "a ratio is a plain number or in %",
    [QUANTITY_MINUTES] = "a time is in min, h or s",
    [QUANTITY_ANGLE] = "an angle is in deg",
    [QUANTITY_AREA] = "an area is in ft2, yd2 or m2",
    [QUANTITY_VOLUME] = "a volume is in oz, ml or l",
    [QUANTITY_MASS] = "a mass is in lb, oz, kg or g",
    [QUANTITY_DENSITY] = "a density is in lb/ft3 or kg/m3",
    [QUANTITY_AREA_MASS] = "the mass of an area is in oz/yd2 or g/m2",
    [QUANTITY_LINE_MASS] = "the mass of a length is in lb/ft or kg/m",
};

const char *quantity_unit(enum quantity quantity, enum units units)
{
    assert(quantity < QUANTITY_KINDS && (units == UNITS_INCH || units == UNITS_MM));
    return shown_units[quantity][units];
}

static const struct unit *shown_unit(enum quantity quantity, enum units units)
{
    const char *name = quantity_unit(quantity, units);

    for (size_t i = 0; i < UNIT_ROWS; i++)
        if (unit_rows[i].quantity == quantity && strcmp(unit_rows[i].name, name) == 0)
            return &unit_rows[i];
    BUG("a unit that is shown has no row");
}

/* Reading. */

static char lower(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool is_letter(char c)
{
    return lower(c) >= 'a' && lower(c) <= 'z';
}

/* How many bytes of `at` are the unit's name, in any case; 0 when the word there goes on, as "m"
 * does in "mm" and "lb" in "lb/ft". */
static size_t match_name(const char *name, const char *at)
{
    size_t length = strlen(name);

    for (size_t i = 0; i < length; i++)
        if (lower(at[i]) != name[i])
            return 0;
    if (length > 0 && is_letter(name[0]) && (is_letter(at[length]) || at[length] == '/'))
        return 0;
    return length;
}

static bool starts_word(const char *at)
{
    for (size_t i = 0; i < UNIT_ROWS; i++)
        if (match_name(unit_rows[i].name, at) > 0)
            return true;
    return is_letter(*at);
}

static enum fault refuse_unit(const struct scan *scan, enum quantity quantity)
{
    return fault_say_column(scan->note, FAULT_UNIT, scan_column(scan, scan->at), "%s",
                            unit_hints[quantity]);
}

/* The unit typed next, the longest name that matches; `plain` where there is none. */
static enum fault read_unit(struct scan *scan, enum quantity quantity, const struct unit *plain,
                            const struct unit **ret_unit)
{
    const struct unit *found = plain;
    size_t longest = 0;

    scan_blanks(scan);
    for (size_t i = 0; i < UNIT_ROWS; i++) {
        size_t length = match_name(unit_rows[i].name, scan->at);

        if (unit_rows[i].quantity == quantity && length > longest) {
            found = &unit_rows[i];
            longest = length;
        }
    }
    if (longest == 0 && starts_word(scan->at))
        return refuse_unit(scan, quantity);
    scan->at += longest;
    *ret_unit = found;
    return FAULT_NONE;
}

/* A whole or decimal number and a fraction beside it; the denominator is 1 where there is none. */
struct mixed {
    struct decimal number;
    int64_t numerator;
    int64_t denominator;
};

static enum fault to_counts(const struct scan *scan, const char *start, const struct mixed *mixed,
                            const struct unit *unit, int64_t *ret_value)
{
    int64_t power = scan_power_of_ten(mixed->number.places);
    int64_t value;
    int64_t part;

    assert(unit->parts <= INT64_MAX / power);
    if (whole_share(mixed->number.digits, unit->counts, unit->parts * power, &value) ||
        whole_share(mixed->numerator, unit->counts, unit->parts * mixed->denominator, &part) ||
        whole_add(value, part, ret_value))
        return fault_say_column(scan->note, FAULT_OVERFLOW, scan_column(scan, start),
                                "the number is too large");
    return FAULT_NONE;
}

static enum fault read_denominator(struct scan *scan, int64_t *ret_denominator)
{
    const char *start = scan->at;
    struct decimal number;
    enum fault fault;

    if (!scan_is_digit(*start))
        return scan_misfit(scan, "the lower number of the fraction");
    fault = scan_decimal(scan, &number);
    if (fault)
        return fault;
    for (int64_t allowed = 2; allowed <= 64; allowed *= 2)
        if (number.digits == allowed && !number.point) {
            *ret_denominator = allowed;
            return FAULT_NONE;
        }
    return fault_say_column(scan->note, FAULT_SYNTAX, scan_column(scan, start),
                            "a fraction is in halves, 4ths, 8ths, 16ths, 32nds or 64ths");
}

/* Where a fraction begins behind a whole number: after blanks or one dash. NULL without one. */
static const char *find_fraction(const char *at)
{
    const char *start;

    if (*at == '-')
        at++;
    else if (!scan_is_blank(*at))
        return NULL;
    while (scan_is_blank(*at))
        at++;
    start = at;
    while (scan_is_digit(*at))
        at++;
    return at > start && *at == '/' ? start : NULL;
}

static enum fault read_fraction(struct scan *scan, struct mixed *mixed)
{
    const char *start = scan->at;
    struct decimal numerator;
    enum fault fault = scan_decimal(scan, &numerator);

    if (fault)
        return fault;
    if (mixed->number.point)
        return fault_say_column(scan->note, FAULT_SYNTAX, scan_column(scan, start),
                                "a fraction does not fit behind a decimal");
    scan_take(scan, '/');
    fault = read_denominator(scan, &mixed->denominator);
    if (fault)
        return fault;
    if (numerator.digits >= mixed->denominator)
        return fault_say_column(scan->note, FAULT_SYNTAX, scan_column(scan, start),
                                "the fraction behind a whole number is less than one");
    mixed->numerator = numerator.digits;
    return FAULT_NONE;
}

/* Reads "76", "76.5", "3/4", "76 3/4" or "76-3/4". */
static enum fault read_mixed(struct scan *scan, struct mixed *ret_mixed)
{
    struct mixed mixed = {.denominator = 1};
    enum fault fault = scan_decimal(scan, &mixed.number);
    const char *fraction;

    if (fault)
        return fault;
    fraction = find_fraction(scan->at);
    if (fraction) {
        scan->at = fraction;
        fault = read_fraction(scan, &mixed);
    } else if (!mixed.number.point && scan_take(scan, '/')) {
        mixed.numerator = mixed.number.digits;
        mixed.number.digits = 0;
        fault = read_denominator(scan, &mixed.denominator);
    }
    if (!fault)
        *ret_mixed = mixed;
    return fault;
}

struct term {
    const struct unit *unit;
    int64_t value;
    bool whole; /* neither decimals nor a fraction */
};

static enum fault read_term(struct scan *scan, const struct unit *plain, struct term *ret_term)
{
    const char *start = scan->at;
    struct term term;
    struct mixed mixed;
    enum fault fault = read_mixed(scan, &mixed);

    if (!fault)
        fault = read_unit(scan, QUANTITY_LENGTH, plain, &term.unit);
    if (!fault)
        fault = to_counts(scan, start, &mixed, term.unit, &term.value);
    if (fault)
        return fault;
    term.whole = !mixed.number.point && mixed.denominator == 1;
    *ret_term = term;
    return FAULT_NONE;
}

/* The inches of "6'4-1/2\"", "6' 4", "6'-4\"" and "6 ft 4 in", added to whole feet. */
static enum fault read_inches(struct scan *scan, int64_t feet, int64_t *ret_value)
{
    const char *start;
    struct term inches;
    enum fault fault;

    scan_take(scan, '-');
    scan_blanks(scan);
    start = scan->at;
    fault = read_term(scan, shown_unit(QUANTITY_LENGTH, UNITS_INCH), &inches);
    if (fault)
        return fault;
    if (inches.unit->counts != LENGTH_INCH)
        return fault_say_column(scan->note, FAULT_UNIT, scan_column(scan, start),
                                "only inches fit behind feet");
    if (whole_add(feet, inches.value, ret_value))
        return fault_say_column(scan->note, FAULT_OVERFLOW, scan_column(scan, start),
                                "the number is too large");
    return FAULT_NONE;
}

static bool goes_on(const struct scan *scan)
{
    const char *at = scan->at;

    while (scan_is_blank(*at))
        at++;
    return scan_is_digit(*at) || *at == '.' || (at == scan->at && *at == '-');
}

static enum fault read_length(struct scan *scan, enum units units, int64_t *ret_value)
{
    const char *start = scan->at;
    struct term first;
    int64_t value;
    enum fault fault = read_term(scan, shown_unit(QUANTITY_LENGTH, units), &first);

    if (fault)
        return fault;
    value = first.value;
    if (first.unit->counts == 12 * LENGTH_INCH && first.whole && goes_on(scan))
        fault = read_inches(scan, first.value, &value);
    if (fault)
        return fault;
    if (value > LENGTH_MAX)
        return fault_say_column(scan->note, FAULT_OVERFLOW, scan_column(scan, start),
                                "a length is at most a kilometre");
    *ret_value = value;
    return FAULT_NONE;
}

static enum fault read_decimal(struct scan *scan, enum quantity quantity, enum units units,
                               int64_t *ret_value)
{
    const char *start = scan->at;
    struct mixed mixed = {.denominator = 1};
    const struct unit *unit;
    enum fault fault = scan_decimal(scan, &mixed.number);

    if (!fault)
        fault = read_unit(scan, quantity, shown_unit(quantity, units), &unit);
    if (!fault && unit->counts == unit->parts)
        fault = scan_limit_places(scan, &mixed.number, 0);
    return fault ? fault : to_counts(scan, start, &mixed, unit, ret_value);
}

enum fault quantity_parse(enum quantity quantity, enum units units, const char *text,
                          int64_t *ret_value, struct fault_note *note)
{
    struct scan scan = scan_start(text, note);
    bool negative = scan_take(&scan, '-');
    int64_t value;
    enum fault fault;

    fault = quantity == QUANTITY_LENGTH ? read_length(&scan, units, &value)
                                        : read_decimal(&scan, quantity, units, &value);
    if (!fault)
        fault = scan_end(&scan);
    if (fault)
        return fault;
    assert(value >= 0);
    *ret_value = negative ? -value : value;
    return FAULT_NONE;
}

/* Printing. */

static void print_inches(char *buffer, int64_t value)
{
    int64_t parts = whole_divide_even(value, LENGTH_64TH);
    const char *sign = parts < 0 ? "-" : "";
    int64_t whole = parts / 64 < 0 ? -(parts / 64) : parts / 64;
    int64_t numerator = parts % 64 < 0 ? -(parts % 64) : parts % 64;
    int64_t denominator = 64;

    assert(numerator < denominator);
    while (numerator > 0 && numerator % 2 == 0) {
        numerator /= 2;
        denominator /= 2;
    }
    if (numerator == 0)
        snprintf(buffer, QUANTITY_TEXT, "%s%" PRId64, sign, whole);
    else if (whole == 0)
        snprintf(buffer, QUANTITY_TEXT, "%s%d/%d", sign, (int)numerator, (int)denominator);
    else
        snprintf(buffer, QUANTITY_TEXT, "%s%" PRId64 "-%d/%d", sign, whole, (int)numerator,
                 (int)denominator);
}

static void print_scaled(char *buffer, int64_t scaled, int places)
{
    while (places > 0 && scaled % 10 == 0) {
        scaled /= 10;
        places--;
    }
    scan_print(buffer, scaled, places);
}

/* A unit is one count, or at least a thousand (invariant 2), so thousandths never overflow. */
static void print_decimal(char *buffer, const struct unit *unit, int64_t value)
{
    int64_t thousandths;

    if (unit->counts == unit->parts) {
        print_scaled(buffer, value, 0);
        return;
    }
    assert(unit->counts / unit->parts >= THOUSAND);
    if (whole_share(value, unit->parts * THOUSAND, unit->counts, &thousandths))
        BUG("a unit of less than a thousand counts");
    print_scaled(buffer, thousandths, 3);
}

char *quantity_print(char buffer[QUANTITY_TEXT], enum quantity quantity, enum units units,
                     int64_t value)
{
    if (quantity != QUANTITY_LENGTH)
        print_decimal(buffer, shown_unit(quantity, units), value);
    else if (units == UNITS_INCH)
        print_inches(buffer, value);
    else
        print_scaled(buffer, whole_divide_even(value, LENGTH_MM / 10), 1);
    return buffer;
}

char *quantity_print_unit(char buffer[QUANTITY_TEXT], enum quantity quantity, enum units units,
                          int64_t value)
{
    const char *unit = quantity_unit(quantity, units);
    char number[QUANTITY_TEXT];

    quantity_print(number, quantity, units, value);
    snprintf(buffer, QUANTITY_TEXT, "%.30s%s%.8s", number, unit[0] ? " " : "", unit);
    return buffer;
}

/* So many decimals of a unit. A unit is more than a hundred counts, so the result is smaller than
 * `mass` and fits. */
static int64_t weight_scaled(const struct unit *unit, int64_t mass, int places)
{
    int64_t scaled;

    assert(places <= 2 && unit->counts / unit->parts >= THOUSAND);
    if (whole_share(mass, unit->parts * scan_power_of_ten(places), unit->counts, &scaled))
        BUG("a unit of less than a hundred counts");
    return scaled;
}

int64_t quantity_tape_grain(enum units units)
{
    return units == UNITS_INCH ? LENGTH_INCH / 16 : LENGTH_MM;
}

int64_t quantity_on_tape(enum units units, int64_t length)
{
    int64_t grain = quantity_tape_grain(units);

    return grain * whole_divide_even(length, grain);
}

/* What a limit in inch work is told at. */
static int64_t limit_grain(int64_t length)
{
    return length < 12 * LENGTH_INCH ? quantity_tape_grain(UNITS_INCH) : LENGTH_INCH;
}

struct quantity_limits quantity_print_limits(enum quantity quantity, enum units units,
                                             int64_t least, int64_t most)
{
    struct quantity_limits limits;
    if (quantity == QUANTITY_LENGTH && units == UNITS_INCH) {
        int64_t up = limit_grain(least) * whole_divide_up(least, limit_grain(least));
        int64_t down = limit_grain(most) * whole_divide_down(most, limit_grain(most));
        least = up <= down ? up : least;
        most = up <= down ? down : most;
    }
    quantity_print_unit(limits.least, quantity, units, least);
    quantity_print_unit(limits.most, quantity, units, most);
    return limits;
}

char *quantity_print_weight(char buffer[QUANTITY_TEXT], enum units units, int64_t mass)
{
    const struct unit *unit = shown_unit(QUANTITY_MASS, units);
    bool large = llabs(weight_scaled(unit, mass, 1)) >= (units == UNITS_INCH ? 100 : 10);
    int places = (units == UNITS_INCH ? 1 : 2) - large;
    int64_t scaled = weight_scaled(unit, mass, places);
    char number[SCAN_TEXT];

    if (scaled == 0)
        return quantity_print_unit(buffer, QUANTITY_MASS, units, mass);
    print_scaled(number, scaled, places);
    snprintf(buffer, QUANTITY_TEXT, "%.30s %.8s", number, quantity_unit(QUANTITY_MASS, units));
    return buffer;
}

/* One count of 1/320 mm is 3125 millionths. The whole and the rest are set apart, so that no length
 * overflows. */
static void print_millionths(char *buffer, int64_t value)
{
    int64_t whole = value / LENGTH_MM;
    int64_t rest = value % LENGTH_MM * 3125;
    char decimals[SCAN_TEXT];

    print_scaled(decimals, rest < 0 ? -rest : rest, 6);
    snprintf(buffer, QUANTITY_TEXT, "%s%" PRId64 "%.7s", value < 0 ? "-" : "",
             whole < 0 ? -whole : whole, decimals + 1);
}

/* Metric units other than the millimetre are a power of ten of counts, at most a million. */
static void print_power(char *buffer, const struct unit *unit, int64_t value)
{
    int places = 0;

    while (scan_power_of_ten(places) < unit->counts)
        places++;
    assert(scan_power_of_ten(places) == unit->counts && unit->parts == 1);
    print_scaled(buffer, value, places);
}

char *quantity_print_exact(char buffer[QUANTITY_TEXT], enum quantity quantity, enum units units,
                           int64_t value)
{
    const char *unit = quantity_unit(quantity, UNITS_MM);
    char number[QUANTITY_TEXT];

    if (quantity == QUANTITY_LENGTH && units == UNITS_INCH && value % LENGTH_64TH == 0)
        return quantity_print_unit(buffer, quantity, units, value);
    if (quantity == QUANTITY_LENGTH)
        print_millionths(number, value);
    else
        print_power(number, shown_unit(quantity, UNITS_MM), value);
    snprintf(buffer, QUANTITY_TEXT, "%.30s%s%.8s", number, unit[0] ? " " : "", unit);
    return buffer;
}
