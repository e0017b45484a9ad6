/*
 * Days of the calendar as whole numbers, so that weeks can be counted: days since 1970-01-01 in the
 * Gregorian calendar, also before it was kept (ISO 8601).
 */
#ifndef BASE_DAY_H
#define BASE_DAY_H

#include <stdbool.h>
#include <stdint.h>

/* Reads "2026-11-25"; what follows is not looked at. False for what is no day. */
bool day_read(const char *text, int64_t *ret_day);

/* Reads "2026-11-25 14:05": minutes since 1970-01-01 00:00. What follows is not looked at. False
 * for what is no day and time. */
bool day_read_minutes(const char *text, int64_t *ret_minutes);

/* Prints a day of the years 0 to 9999 (up to DAY_LAST) as it is read. Returns buffer. */
#define DAY_TEXT 11
#define DAY_LAST INT64_C(2932896) /* 9999-12-31 */
char *day_print(char buffer[DAY_TEXT], int64_t day);

#endif
