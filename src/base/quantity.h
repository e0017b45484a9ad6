/*
 * Quantities: whole numbers of a small unit, entered and printed in inches or millimetres and the
 * units that go with them.
 *
 * A length is an int64 count of 1/320 mm, so that 1/64 in (127) and 0.1 mm (32) are both whole and
 * sums are exact. The inch is 25.4 mm, the pound 0.45359237 kg, the US fluid ounce 29.5735295625 mL
 * (NIST SP 811).
 */
#ifndef BASE_QUANTITY_H
#define BASE_QUANTITY_H

#include "base/fault.h"
#include "base/whole.h"

#include <stddef.h>
#include <stdint.h>

#define LENGTH_MM INT64_C(320)
#define LENGTH_INCH INT64_C(8128) /* 25.4 * 320 */
#define LENGTH_64TH INT64_C(127)

/* The largest length that is taken in: a kilometre. Products of two stay far inside int64. */
#define LENGTH_MAX (INT64_C(1000000) * LENGTH_MM)

enum units { UNITS_INCH, UNITS_MM };

/* name, what one count is, unit shown in inch work, unit shown in millimetre work */
#define QUANTITIES(Q)                         \
    Q(LENGTH, "1/320 mm", "in", "mm")         \
    Q(COUNT, "1", "", "")                     \
    Q(RATIO, "1/1000000", "", "")             \
    Q(MINUTES, "1/1000 min", "min", "min")    \
    Q(ANGLE, "1/1000 degree", "deg", "deg")   \
    Q(AREA, "1 mm2", "ft2", "m2")             \
    Q(VOLUME, "1 mm3", "oz", "ml")            \
    Q(MASS, "1 mg", "lb", "kg")               \
    Q(DENSITY, "1 g/m3", "lb/ft3", "kg/m3")   \
    Q(AREA_MASS, "1 mg/m2", "oz/yd2", "g/m2") \
    Q(LINE_MASS, "1 mg/m", "lb/ft", "kg/m")

enum quantity {
#define QUANTITY_ENUM(name, base, inch, mm) QUANTITY_##name,
    QUANTITIES(QUANTITY_ENUM)
#undef QUANTITY_ENUM
        QUANTITY_KINDS
};

/* The unit's short name as printed ("in", "kg/m3", "" for a plain number). */
const char *quantity_unit(enum quantity quantity, enum units units);

/*
 * Reads what a person typed. A length takes "76 1/2", "76-1/2", "6'4-1/2\"", "6 ft 4 in", "1.94m",
 * "194 cm", "1940 mm", "3/4"; where no unit is given, the unit of `units`. A fraction's denominator
 * is 2, 4, 8, 16, 32 or 64. A decimal that is not a whole count is rounded half to even; digits
 * after the ninth decimal are dropped. A ratio takes "5 %" and "0.05", a count no decimals. The
 * other quantities take a decimal number and either of their units, or another that is usual for
 * them ("1.5 h", "250 g"). Units are read in capitals too. Blanks around are ignored; a minus sign
 * stands before the whole.
 *
 * Faults: SYNTAX (with the column of the first character that does not fit), UNIT, OVERFLOW (a
 * length over LENGTH_MAX included).
 */
enum fault quantity_parse(enum quantity quantity, enum units units, const char *text,
                          int64_t *ret_value, struct fault_note *note);

/*
 * Prints a value with its unit left out: lengths as "76-1/2" (nearest 1/64, reduced) or "1943.1"
 * (nearest 0.1 mm, ".0" left out); the others as a decimal with at most three places ("0.05" for a
 * ratio of five in a hundred), no trailing zeros. What is printed, read (with the same units)
 * and printed again is the same text, as far as it is in the range taken in. Returns buffer.
 */
#define QUANTITY_TEXT 40
char *quantity_print(char buffer[QUANTITY_TEXT], enum quantity quantity, enum units units,
                     int64_t value);

/* The same with the unit: "76-1/2 in", "1943.1 mm". */
char *quantity_print_unit(char buffer[QUANTITY_TEXT], enum quantity quantity, enum units units,
                          int64_t value);

/* The finest mark of a tape: 1/16 in or a millimetre; and a length to the nearest of them. */
int64_t quantity_tape_grain(enum units units);
int64_t quantity_on_tape(enum units units, int64_t length);

/*
 * Two limits with their units as people can keep to them: lengths in inch work inside the exact
 * ones, at the sixteenth, from a foot on at the inch ("7/16 in", "236 in" for 10 and 6000 mm); the
 * others as they are.
 */
struct quantity_limits {
    char least[QUANTITY_TEXT];
    char most[QUANTITY_TEXT];
};
struct quantity_limits quantity_print_limits(enum quantity quantity, enum units units,
                                             int64_t least, int64_t most);

/*
 * Prints a weight that was worked out as a maker would read it off a scale: from ten pounds on
 * whole pounds, else tenths; from a kilogram on tenths of it, else hundredths; what is less than
 * one of those as quantity_print_unit does. Returns buffer.
 */
char *quantity_print_weight(char buffer[QUANTITY_TEXT], enum units units, int64_t mass);

/*
 * Prints a value with its unit so that quantity_parse gives exactly that value again, for files: a
 * length of whole 64ths in inch work as "76-1/2 in", any other length in millimetres with as many
 * of six decimals as it needs ("2.540625 mm"), the other quantities in their metric unit. Holds for
 * every value that quantity_parse can give. Returns buffer.
 */
char *quantity_print_exact(char buffer[QUANTITY_TEXT], enum quantity quantity, enum units units,
                           int64_t value);

#endif
