/*
 * Decimal numbers as people type and read them: what the parsers and printers of this floor share.
 * A fault names the column of the character that does not fit, counted in characters from 1.
 */
#ifndef BASE_SCAN_H
#define BASE_SCAN_H

#include "base/fault.h"

#include <stdbool.h>
#include <stdint.h>

struct scan {
    const char *text;
    const char *at; /* the next character */
    struct fault_note *note;
};

/* A number as typed: digits / 10^places. Decimals after the ninth are dropped: no unit here tells
 * them apart. */
#define SCAN_PLACES 9
struct decimal {
    int64_t digits;
    int places;
    const char *point; /* in the text; NULL when there is none */
    const char *end;
};

bool scan_is_digit(char c);
bool scan_is_blank(char c);
int64_t scan_power_of_ten(int places); /* places from 0 to 18 */

/* Starts behind the blanks in front. */
struct scan scan_start(const char *text, struct fault_note *note);
void scan_blanks(struct scan *scan);

/* Takes `c` if it is next; whether it was. */
bool scan_take(struct scan *scan, char c);

/* The column of a place in the text, which is not before its start. */
int scan_column(const struct scan *scan, const char *at);

/* Reads digits, a point, or both: "12", "12.5", ".5". Faults: SYNTAX, OVERFLOW. */
enum fault scan_decimal(struct scan *scan, struct decimal *ret_decimal);

/* SYNTAX where there are more decimals than `most`. */
enum fault scan_limit_places(const struct scan *scan, const struct decimal *decimal, int most);

/* FAULT_NONE when only blanks are left. */
enum fault scan_end(struct scan *scan);

/* The fault for a next character that does not fit, with a hint where the mistake is a known one;
 * at the end of the text, that `missing` is not there. */
enum fault scan_misfit(const struct scan *scan, const char *missing);

/* Prints scaled / 10^places with all its places and returns buffer, which has SCAN_TEXT bytes. */
#define SCAN_TEXT 24
char *scan_print(char buffer[SCAN_TEXT], int64_t scaled, int places);

#endif
