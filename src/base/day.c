/*
 * Years are counted from March, so that the leap day is the last of its year: the months before one
 * of these have (153 m + 2) / 5 days, and 400 years have 146,097.
 */
#include "base/day.h"

#include "base/whole.h"

#include <assert.h>
#include <stdio.h>

#define DAYS_OF_400_YEARS 146097
#define DAYS_BEFORE_1970 719468 /* from 0000-03-01 */

static bool digits(const char *text, int count, int64_t *ret_number)
{
    int64_t number = 0;

    for (int i = 0; i < count; i++) {
        if (text[i] < '0' || text[i] > '9')
            return false;
        number = number * 10 + (text[i] - '0');
    }
    *ret_number = number;
    return true;
}

static int64_t day_of(int64_t year, int64_t month, int64_t day)
{
    int64_t from_march = year - (month <= 2);
    int64_t months = month > 2 ? month - 3 : month + 9;

    assert(months >= 0 && months <= 11);
    return from_march * 365 + whole_divide_down(from_march, 4) -
           whole_divide_down(from_march, 100) + whole_divide_down(from_march, 400) +
           (153 * months + 2) / 5 + day - 1 - DAYS_BEFORE_1970;
}

static int64_t days_in(int64_t year, int64_t month)
{
    return month == 12 ? 31 : day_of(year, month + 1, 1) - day_of(year, month, 1);
}

bool day_read(const char *text, int64_t *ret_day)
{
    int64_t year, month, day;

    if (!digits(text, 4, &year) || text[4] != '-' || !digits(text + 5, 2, &month) ||
        text[7] != '-' || !digits(text + 8, 2, &day))
        return false;
    if (month < 1 || month > 12 || day < 1 || day > days_in(year, month))
        return false;
    *ret_day = day_of(year, month, day);
    return true;
}

bool day_read_minutes(const char *text, int64_t *ret_minutes)
{
    int64_t day, hour, minute;

    if (!day_read(text, &day) || text[10] != ' ' || !digits(text + 11, 2, &hour) ||
        text[13] != ':' || !digits(text + 14, 2, &minute) || hour > 23 || minute > 59)
        return false;
    *ret_minutes = (day * 24 + hour) * 60 + minute;
    return true;
}

char *day_print(char buffer[DAY_TEXT], int64_t day)
{
    int64_t since = day + DAYS_BEFORE_1970;
    int64_t era = whole_divide_down(since, DAYS_OF_400_YEARS);
    int64_t in_era = since - era * DAYS_OF_400_YEARS;
    int64_t year = (in_era - in_era / 1460 + in_era / 36524 - in_era / 146096) / 365;
    int64_t in_year = in_era - (365 * year + year / 4 - year / 100);
    int64_t months = (5 * in_year + 2) / 153;
    int64_t month = months < 10 ? months + 3 : months - 9;

    year += era * 400 + (month <= 2);
    assert(year >= 0 && year <= 9999);
    snprintf(buffer, DAY_TEXT, "%04d-%02d-%02d", (int)year, (int)month,
             (int)(in_year - (153 * months + 2) / 5 + 1));
    return buffer;
}
