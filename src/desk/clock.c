#include "desk/clock.h"

#include <errno.h>
#include <stdlib.h>
#include <time.h>

static time_t clock_seconds(void)
{
    const char *fixed = getenv("SOURCE_DATE_EPOCH");
    if (fixed && *fixed) {
        char *end;
        errno = 0;
        long long seconds = strtoll(fixed, &end, 10);
        if (!errno && !*end)
            return (time_t)seconds;
    }
    return time(NULL);
}

static char *clock_write(char buffer[CLOCK_TEXT], const char *format)
{
    time_t seconds = clock_seconds();
    struct tm parts;
    buffer[0] = '\0';
    if (localtime_r(&seconds, &parts))
        strftime(buffer, CLOCK_TEXT, format, &parts);
    return buffer;
}

char *clock_now(char at[CLOCK_TEXT])
{
    return clock_write(at, "%Y-%m-%d %H:%M");
}

char *clock_today(char day[CLOCK_TEXT])
{
    return clock_write(day, "%Y-%m-%d");
}
