/*
 * The workshop's account over all builds: money and hours of each, what was paid month by month,
 * and when there will be time at the bench for what is left to do.
 */
#ifndef DESK_ACCOUNT_H
#define DESK_ACCOUNT_H

#include "desk/desk.h"

struct account_build {
    const char *name;
    int64_t state; /* enum state_word */
    const char *due;
    int64_t estimate, committed, paid, forecast; /* as in struct cost */
    int64_t budget;                              /* 0: there is none */
    int64_t minutes, taken; /* of the whole build as planned; of the steps done that were timed */
    int64_t planned_for_taken; /* what those steps were planned to take */
    int64_t minutes_left;      /* of the steps that are not done; 0 of a finished build */
    int64_t week;              /* bench time a week; 0: not told */
    char done_by[12];          /* end of the week in which the last step fits; "" without a week */
    bool late;                 /* that is after it is due */
};

struct account_month {
    char month[8]; /* "2026-11" */
    int64_t paid, tax;
};

/* Time at the bench for one build in one week. */
struct account_week {
    char begins[12];
    size_t build; /* index into account.builds */
    int64_t minutes;
};

struct account {
    LIST_OF(struct account_build) builds;        /* in order of keys */
    LIST_OF(struct account_month) months;        /* rising; with what was paid for the shelf */
    LIST_OF(struct account_week) weeks;          /* rising, and in a week by what is due first */
    int64_t estimate, committed, paid, forecast; /* sums over the builds */
    int64_t shelf;                               /* paid for the shelf */
    int64_t all_paid;                            /* sum over the months, and of builds and shelf */
};

/*
 * Plans every build. Weeks begin on `today` ("2026-11-25"). In each there is as much time as the
 * build with the most hours a week has; builds that are due first take theirs first, those without
 * a day last. Two years are looked ahead at most. In the arena, which has no escape armed. Faults:
 * as desk_take_up.
 */
enum fault desk_account(struct desk *desk, const char *today, struct arena *arena,
                        struct account *ret_account, struct fault_note *note);

#endif
