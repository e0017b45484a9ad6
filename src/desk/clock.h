/*
 * The one place that asks what time it is. SOURCE_DATE_EPOCH (seconds since 1970, UTC), where it is
 * set, stands in for the clock, so that what is printed can be made again to the byte.
 */
#ifndef DESK_CLOCK_H
#define DESK_CLOCK_H

#define CLOCK_TEXT 20

/* "2026-11-25 14:05" and "2026-11-25", local time. Returns the buffer. */
char *clock_now(char at[CLOCK_TEXT]);
char *clock_today(char day[CLOCK_TEXT]);

#endif
