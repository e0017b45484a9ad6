#include "base/scan.h"

#include "base/utf8.h"
#include "base/whole.h"

#include <assert.h>
#include <string.h>

bool scan_is_digit(char c)
{
    return c >= '0' && c <= '9';
}

bool scan_is_blank(char c)
{
    return c == ' ' || c == '\t';
}

int64_t scan_power_of_ten(int places)
{
    int64_t power = 1;

    assert(places >= 0 && places <= 18);
    while (places-- > 0)
        power *= 10;
    return power;
}

struct scan scan_start(const char *text, struct fault_note *note)
{
    struct scan scan = {.text = text, .at = text, .note = note};

    scan_blanks(&scan);
    return scan;
}

void scan_blanks(struct scan *scan)
{
    while (scan_is_blank(*scan->at))
        scan->at++;
}

bool scan_take(struct scan *scan, char c)
{
    if (*scan->at != c)
        return false;
    scan->at++;
    return true;
}

int scan_column(const struct scan *scan, const char *at)
{
    const char *next = scan->text;
    unsigned code;
    int column = 1;

    assert(at >= scan->text);
    while (next < at) {
        next += utf8_next(next, strlen(next), &code);
        column++;
    }
    return column;
}

static enum fault add_digit(int64_t *number, char digit)
{
    int64_t tenfold;
    enum fault fault = whole_multiply(*number, 10, &tenfold);

    return fault ? fault : whole_add(tenfold, digit - '0', number);
}

enum fault scan_decimal(struct scan *scan, struct decimal *ret_decimal)
{
    const char *at = scan->at;
    struct decimal decimal = {0};
    enum fault fault = FAULT_NONE;

    for (; scan_is_digit(*at) && !fault; at++)
        fault = add_digit(&decimal.digits, *at);
    if (*at == '.' && (scan_is_digit(at[1]) || at == scan->at))
        decimal.point = at++;
    if (decimal.point && !scan_is_digit(*at)) {
        scan->at = at;
        return scan_misfit(scan, "a digit after the point");
    }
    for (; scan_is_digit(*at) && !fault; at++) {
        if (decimal.places == SCAN_PLACES)
            continue;
        fault = add_digit(&decimal.digits, *at);
        decimal.places++;
    }
    if (fault)
        return fault_say_column(scan->note, fault, scan_column(scan, scan->at),
                                "the number is too large");
    if (at == scan->at)
        return scan_misfit(scan, "a number");
    assert(decimal.digits >= 0 && decimal.places <= SCAN_PLACES);
    decimal.end = scan->at = at;
    *ret_decimal = decimal;
    return FAULT_NONE;
}

enum fault scan_limit_places(const struct scan *scan, const struct decimal *decimal, int most)
{
    if (!decimal->point || decimal->end - decimal->point - 1 <= most)
        return FAULT_NONE;
    if (most == 0)
        return fault_say_column(scan->note, FAULT_SYNTAX, scan_column(scan, decimal->point),
                                "a whole number is needed here");
    return fault_say_column(scan->note, FAULT_SYNTAX, scan_column(scan, decimal->point + 1 + most),
                            "no more than %d digits fit after the point", most);
}

enum fault scan_end(struct scan *scan)
{
    scan_blanks(scan);
    return *scan->at == '\0' ? FAULT_NONE : scan_misfit(scan, "nothing");
}

static const struct {
    char character;
    const char *hint;
} hints[] = {
    {',', "a comma does not fit here: use a point for decimals and nothing between thousands"},
    {'-', "a minus sign stands only before the whole, and a dash only before a fraction or inches"},
    {'+', "sums are not worked out here: give one value"},
    {'.', "a point stands between two digits, once in a number"},
    {'/', "a slash stands only in a fraction of two whole numbers, like 3/4"},
};

enum fault scan_misfit(const struct scan *scan, const char *missing)
{
    int column = scan_column(scan, scan->at);
    unsigned code;
    int bytes;

    if (*scan->at == '\0')
        return fault_say_column(scan->note, FAULT_SYNTAX, column, "%s is missing here", missing);
    for (size_t i = 0; i < sizeof hints / sizeof hints[0]; i++)
        if (*scan->at == hints[i].character)
            return fault_say_column(scan->note, FAULT_SYNTAX, column, "%s", hints[i].hint);
    if (scan_is_digit(*scan->at))
        return fault_say_column(
            scan->note, FAULT_SYNTAX, column,
            "a second number does not fit here: a unit or a fraction is missing");
    bytes = utf8_next(scan->at, strlen(scan->at), &code);
    return fault_say_column(scan->note, FAULT_SYNTAX, column, "\"%.*s\" does not fit here", bytes,
                            scan->at);
}

/* Written from the back: sign, nineteen digits, a point and NUL are the most. */
char *scan_print(char buffer[SCAN_TEXT], int64_t scaled, int places)
{
    uint64_t rest = scaled < 0 ? UINT64_C(0) - (uint64_t)scaled : (uint64_t)scaled;
    char *at = buffer + SCAN_TEXT - 1;

    assert(places >= 0 && places <= 18);
    *at = '\0';
    for (int place = 0; rest > 0 || place <= places; place++) {
        if (place == places && place > 0)
            *--at = '.';
        *--at = (char)('0' + rest % 10);
        rest /= 10;
    }
    if (scaled < 0)
        *--at = '-';
    assert(at >= buffer);
    return memmove(buffer, at, (size_t)(buffer + SCAN_TEXT - at));
}
