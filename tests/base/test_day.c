/* Days of the calendar: known ones, and every day of four hundred years in turn. */
#include "base/day.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>

static int64_t day_of(const char *text)
{
    int64_t day = 0;

    if (!day_read(text, &day))
        fail_msg("%s is no day", text);
    return day;
}

/* POSIX.1-2017, "Seconds Since the Epoch", counts 86,400 s a day from 1970-01-01; RFC 3339 section
 * 5.8 has 1985-04-12, and second 1,000,000,000 was in 2001-09-09 (from memory). A week has 7 days:
 * 1970-01-01 was a Thursday, 2000-01-01 a Saturday (from memory). */
static void known_days_are_where_they_were(void **state)
{
    (void)state;
    assert_int_equal(day_of("1970-01-01"), 0);
    assert_int_equal(day_of("2001-09-09"), 1000000000 / 86400);
    assert_int_equal(day_of("1969-12-31"), -1);
    assert_int_equal((day_of("2000-01-01") + 4) % 7, 6);
    assert_int_equal(day_of("2000-03-01") - day_of("2000-02-28"), 2);
    assert_int_equal(day_of("1900-03-01") - day_of("1900-02-28"), 1);
    assert_int_equal(day_of("2026-11-25 14:05"), day_of("2026-11-25"));
}

static void what_is_no_day_is_refused(void **state)
{
    static const char *const texts[] = {"",           "2026-11",    "2026-13-01", "2026-00-10",
                                        "2026-11-31", "2026-02-29", "2026-11-00", "2026/11/25",
                                        "20261125",   "abcd-11-25", "2026-1-25",  "0000-01-00",
                                        "9999-12-32", "2026-04-31"};
    int64_t day;

    (void)state;
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++)
        assert_false(day_read(texts[i], &day));
}

static void the_calendar_has_a_first_and_a_last_day(void **state)
{
    char buffer[DAY_TEXT];

    (void)state;
    assert_string_equal(day_print(buffer, day_of("0000-01-01")), "0000-01-01");
    assert_string_equal(day_print(buffer, day_of("9999-12-31")), "9999-12-31");
    assert_int_equal(day_of("9999-12-31"), DAY_LAST);
}

static int days_in(int year, int month)
{
    static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    int leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;

    return days[month - 1] + (month == 2 && leap);
}

/* Counted up one by one, as a calendar on the wall is. */
static void each_day_follows_the_one_before(void **state)
{
    int64_t expected = day_of("1800-01-01");

    (void)state;
    for (int year = 1800; year < 2200; year++)
        for (int month = 1; month <= 12; month++)
            for (int day = 1; day <= days_in(year, month); day++) {
                char text[40];
                char again[DAY_TEXT];

                snprintf(text, sizeof text, "%04d-%02d-%02d", year, month, day);
                assert_int_equal(day_of(text), expected);
                assert_string_equal(day_print(again, expected), text);
                expected++;
            }
}

/* 1234567890 seconds after 1970 it was 2009-02-13 23:31:30 (POSIX, "Seconds Since the Epoch"). */
static void a_time_of_day_is_minutes_from_1970(void **state)
{
    static const char *const none[] = {"2026-11-25",       "2026-11-25 24:00", "2026-11-25 23:60",
                                       "2026-11-25T14:05", "2026-11-25 1:05",  "2026-02-30 14:05"};
    int64_t minutes = 7;
    (void)state;
    assert_true(day_read_minutes("2009-02-13 23:31", &minutes));
    assert_int_equal(minutes, 1234567890 / 60);
    for (size_t i = 0; i < sizeof none / sizeof *none; i++)
        assert_false(day_read_minutes(none[i], &minutes));
    assert_int_equal(minutes, 1234567890 / 60);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(known_days_are_where_they_were),
        cmocka_unit_test(what_is_no_day_is_refused),
        cmocka_unit_test(the_calendar_has_a_first_and_a_last_day),
        cmocka_unit_test(each_day_follows_the_one_before),
        cmocka_unit_test(a_time_of_day_is_minutes_from_1970),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
