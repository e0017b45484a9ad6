#include "desk/account.h"

#include "base/day.h"
#include "base/memory.h"
#include "desk/compare.h"
#include "desk/internal.h"

#include <stdlib.h>
#include <string.h>

#define WEEKS_MOST 104

struct accounting {
    struct desk *desk;
    const char *today;
    struct arena *arena;
    struct account account;
    LIST_OF(int64_t) keys;
    struct desk_compare *compare;
};

static void add_to(int64_t *sum, int64_t money)
{
    (void)whole_add(*sum, money, sum);
}

/* ---- months ---- */

static int by_month(const void *left, const void *right)
{
    return strcmp(((const struct account_month *)left)->month,
                  ((const struct account_month *)right)->month);
}

static void add_paid(struct accounting *accounting, const char *dated, int64_t amount, int64_t tax)
{
    struct account *account = &accounting->account;
    struct account_month *month = NULL;
    for (size_t i = 0; i < account->months.count && !month; i++) {
        if (strncmp(account->months.at[i].month, dated, 7) == 0)
            month = &account->months.at[i];
    }
    if (!month) {
        month = LIST_ADD(accounting->arena, &account->months);
        memcpy(month->month, dated, 7); /* what is paid has a day: 10 characters */
    }
    add_to(&month->paid, amount);
    add_to(&month->tax, tax);
    add_to(&account->all_paid, amount);
}

static void add_shelf(struct accounting *accounting, const struct model *model)
{
    for (size_t i = 0; i < model->shop_spends.count; i++) {
        const struct shop_spend *spend = &model->shop_spends.at[i];
        add_paid(accounting, spend->dated, spend->amount, spend->tax);
        add_to(&accounting->account.shelf, spend->amount);
    }
}

/* ---- builds ---- */

static void add_hours(struct account_build *build, const struct plan *plan)
{
    for (size_t i = 0; i < plan->facts->ticks.count; i++) {
        const struct tick *tick = &plan->facts->ticks.at[i];
        if (tick->minutes == 0)
            continue;
        add_to(&build->taken, tick->minutes);
        for (size_t k = 0; k < plan->steps.count; k++) {
            if (strcmp(plan->steps.at[k].name, tick->step) == 0)
                add_to(&build->planned_for_taken, plan->steps.at[k].minutes);
        }
    }
    for (size_t i = 0; i < plan->steps.count && build->state != STATE_FINISHED; i++) {
        if (!plan->steps.at[i].ticked)
            add_to(&build->minutes_left, plan->steps.at[i].minutes);
    }
}

static void add_build(struct accounting *accounting, const struct plan *plan)
{
    struct account *account = &accounting->account;
    const struct build *of = &plan->facts->build;
    struct account_build *build = LIST_ADD(accounting->arena, &account->builds);
    *build = (struct account_build){.name = arena_text(accounting->arena, of->name),
                                    .state = of->state,
                                    .due = arena_text(accounting->arena, of->due),
                                    .estimate = plan->cost.estimate,
                                    .committed = plan->cost.committed,
                                    .paid = plan->cost.spent,
                                    .forecast = plan->cost.forecast,
                                    .budget = of->budget,
                                    .minutes = plan->tally.minutes,
                                    .week = of->week};
    add_hours(build, plan);
    for (size_t i = 0; i < plan->facts->spends.count; i++) {
        const struct spend *spend = &plan->facts->spends.at[i];
        add_paid(accounting, spend->dated, spend->amount, spend->tax);
    }
    add_to(&account->estimate, build->estimate);
    add_to(&account->committed, build->committed);
    add_to(&account->paid, build->paid);
    add_to(&account->forecast, build->forecast);
}

/* ---- weeks ---- */

struct turn {
    size_t build;
    int64_t left;
};

struct turns {
    struct accounting *accounting;
    struct turn *at;
    size_t count;
};

/* Days sort as text; a build without one comes last. */
static bool is_due_before(const struct account_build *a, const struct account_build *b)
{
    if (!*a->due || !*b->due)
        return *a->due && !*b->due;
    return strcmp(a->due, b->due) < 0;
}

/* Those with work and a time for it, by what is due first; of one day in order of keys. */
static void order_turns(struct turns *turns)
{
    const struct account *account = &turns->accounting->account;
    turns->at = ARENA_MANY(turns->accounting->arena, struct turn, account->builds.count);
    for (size_t i = 0; i < account->builds.count; i++) {
        const struct account_build *build = &account->builds.at[i];
        size_t at = turns->count;
        if (build->week == 0 || build->minutes_left == 0)
            continue;
        for (; at > 0 && is_due_before(build, &account->builds.at[turns->at[at - 1].build]); at--)
            turns->at[at] = turns->at[at - 1];
        turns->at[at] = (struct turn){i, build->minutes_left};
        turns->count++;
    }
}

static int64_t bench_week(const struct turns *turns)
{
    int64_t most = 0;
    for (size_t i = 0; i < turns->count; i++) {
        int64_t week = turns->accounting->account.builds.at[turns->at[i].build].week;
        most = week > most ? week : most;
    }
    return most;
}

static void finish(struct account_build *build, int64_t first_day)
{
    char day[DAY_TEXT];
    memcpy(build->done_by, day_print(day, first_day + 6), DAY_TEXT);
    build->late = *build->due && strcmp(build->done_by, build->due) > 0;
}

/* Shares a week out; false when nothing was left to do. */
static bool fill_week(struct turns *turns, int64_t first_day, int64_t free)
{
    struct accounting *accounting = turns->accounting;
    bool any = false;
    for (size_t i = 0; i < turns->count && free > 0; i++) {
        struct turn *turn = &turns->at[i];
        struct account_build *build = &accounting->account.builds.at[turn->build];
        int64_t time = turn->left < build->week ? turn->left : build->week;
        struct account_week *week;
        if (time > free)
            time = free;
        if (time == 0)
            continue;
        week = LIST_ADD(accounting->arena, &accounting->account.weeks);
        *week = (struct account_week){.build = turn->build, .minutes = time};
        day_print(week->begins, first_day);
        turn->left -= time;
        free -= time;
        any = true;
        if (turn->left == 0)
            finish(build, first_day);
    }
    return any;
}

static void fill_weeks(struct accounting *accounting)
{
    struct turns turns = {.accounting = accounting};
    int64_t day;
    if (!day_read(accounting->today, &day))
        return;
    order_turns(&turns);
    /* A week is told only where its last day is in the calendar. */
    for (int week = 0; week < WEEKS_MOST && day + 7 * week + 6 <= DAY_LAST; week++) {
        if (!fill_week(&turns, day + 7 * week, bench_week(&turns)))
            return;
    }
}

/* ---- all ---- */

static enum fault run_keys(void *context, struct fault_note *note)
{
    struct accounting *accounting = context;
    const struct store_build *builds = NULL;
    size_t count = 0;
    enum fault fault = desk_builds(accounting->desk, &builds, &count, note);
    for (size_t i = 0; i < count && !fault; i++)
        *LIST_ADD(accounting->arena, &accounting->keys) = builds[i].key;
    return fault;
}

static enum fault run_account(void *context, struct fault_note *note)
{
    struct accounting *accounting = context;
    struct model *shop = ARENA_NEW(accounting->arena, struct model);
    enum fault fault = store_peek(accounting->desk->store, 0, shop, accounting->arena, note);
    if (fault)
        return fault;
    add_shelf(accounting, shop);
    for (size_t i = 0; i < desk_compare_count(accounting->compare); i++)
        add_build(accounting, desk_compare_plans(accounting->compare)[i]);
    if (accounting->account.months.count)
        qsort(accounting->account.months.at, accounting->account.months.count,
              sizeof *accounting->account.months.at, by_month);
    fill_weeks(accounting);
    return FAULT_NONE;
}

enum fault desk_account(struct desk *desk, const char *today, struct arena *arena,
                        struct account *ret_account, struct fault_note *note)
{
    struct accounting accounting = {.desk = desk, .today = today, .arena = arena};
    enum fault fault = desk_guard(arena, run_keys, &accounting, note);
    if (!fault)
        fault = desk_compare_begin(&accounting.compare, desk, accounting.keys.at,
                                   accounting.keys.count, note);
    if (!fault)
        fault = desk_guard(arena, run_account, &accounting, note);
    desk_compare_free(accounting.compare);
    if (!fault)
        *ret_account = accounting.account;
    return fault;
}
