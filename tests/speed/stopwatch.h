/* Times for benchmarks: by the clock on the wall, and as this process used the processor. */
#ifndef SPEED_STOPWATCH_H
#define SPEED_STOPWATCH_H

#include <time.h>

/* Seconds of a clock, and milliseconds. */
static inline double stopwatch_of(clockid_t clock)
{
    struct timespec time;

    clock_gettime(clock, &time);
    return (double)time.tv_sec + (double)time.tv_nsec / 1e9;
}

static inline double stopwatch_wall(void)
{
    return stopwatch_of(CLOCK_MONOTONIC);
}

static inline double stopwatch_used(void)
{
    return stopwatch_of(CLOCK_PROCESS_CPUTIME_ID);
}

static inline double stopwatch_used_ms(void)
{
    return 1e3 * stopwatch_used();
}

/* For qsort of times. */
static inline int stopwatch_compare(const void *a, const void *b)
{
    double left = *(const double *)a;
    double right = *(const double *)b;

    return (left > right) - (left < right);
}

#endif
