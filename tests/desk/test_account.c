/* The workshop's account: sums over builds and months, hours, and weeks at the bench. */
#include "workshop.h"

#include "desk/account.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#define TODAY "2026-11-30"
#define HOUR INT64_C(60000)

struct looking {
    struct bench bench;
    struct arena arena;
    struct account account;
};

static void account_of(struct looking *looking, const char *day)
{
    arena_release(&looking->arena);
    DONE(desk_account(looking->bench.desk, day, &looking->arena, &looking->account, note));
}

static void account(struct looking *looking)
{
    account_of(looking, TODAY);
}

static int begin(void **state)
{
    static const char *const names[] = {"workshop",  "banquette", "corner",
                                        "headboard", "stool",     NULL};
    static struct looking looking;
    arena_init(&looking.arena);
    bench_open(&looking.bench, names);
    account(&looking);
    *state = &looking;
    return 0;
}

static int end(void **state)
{
    struct looking *looking = *state;
    arena_release(&looking->arena);
    bench_close(&looking->bench);
    return 0;
}

static const struct account_build *build_named(const struct looking *looking, const char *name)
{
    for (size_t i = 0; i < looking->account.builds.count; i++) {
        if (strcmp(looking->account.builds.at[i].name, name) == 0)
            return &looking->account.builds.at[i];
    }
    fail_msg("no build %s", name);
    return NULL;
}

/* ---- money ---- */

static void builds_months_and_shelf_add_up_to_what_was_paid(void **state)
{
    const struct account *account = &((struct looking *)*state)->account;
    int64_t builds = 0;
    int64_t months = 0;
    for (size_t i = 0; i < account->builds.count; i++)
        builds += account->builds.at[i].paid;
    for (size_t i = 0; i < account->months.count; i++)
        months += account->months.at[i].paid;
    assert_int_equal(builds, account->paid);
    assert_int_equal(builds + account->shelf, account->all_paid);
    assert_int_equal(months, account->all_paid);
    assert_true(account->shelf > 0 && account->months.count > 1);
}

static enum fault change_paid(struct model *draft, void *context, struct fault_note *note)
{
    static const struct {
        const char *dated;
        int64_t amount;
    } spends[] = {{"2026-12-01", 3000}, {"2026-12-24", -1250}, {"2025-01-31", 400}};
    (void)context;
    (void)note;
    for (size_t i = 0; i < sizeof spends / sizeof *spends; i++) {
        struct spend *spend = MODEL_ADD(draft, spend);
        spend->dated = spends[i].dated;
        spend->amount = spends[i].amount;
        spend->what = "glue";
    }
    return FAULT_NONE;
}

static void months_stand_in_turn_and_hold_refunds(void **state)
{
    struct looking *looking = *state;
    DONE(desk_take_up_named(looking->bench.desk, "Reading corner", note));
    DONE(desk_edit(looking->bench.desk, "paid", change_paid, NULL, note));
    account(looking);
    const struct account *account = &looking->account;
    for (size_t i = 1; i < account->months.count; i++)
        assert_true(strcmp(account->months.at[i - 1].month, account->months.at[i].month) < 0);
    assert_string_equal(account->months.at[0].month, "2025-01");
    assert_int_equal(account->months.at[0].paid, 400);
    assert_string_equal(account->months.at[account->months.count - 1].month, "2026-12");
    assert_int_equal(account->months.at[account->months.count - 1].paid, 1750);
}

static void each_build_is_the_plans_own(void **state)
{
    struct looking *looking = *state;
    DONE(desk_take_up_named(looking->bench.desk, "Reading corner", note));
    const struct account_build *build = build_named(looking, "Reading corner");
    assert_int_equal(build->estimate, desk_plan(looking->bench.desk)->cost.estimate);
    assert_int_equal(build->forecast, desk_plan(looking->bench.desk)->cost.forecast);
    assert_int_equal(build->minutes, desk_plan(looking->bench.desk)->tally.minutes);
}

/* A piece that stands in its room costs nothing more. */
static void what_is_finished_has_cost_what_was_paid(void **state)
{
    const struct account_build *stool = build_named(*state, "Tufted stool");
    assert_int_equal(stool->state, STATE_FINISHED);
    assert_int_equal(stool->forecast, stool->paid);
    assert_int_equal(stool->minutes_left, 0);
    assert_true(stool->taken > 0 && stool->planned_for_taken > 0);
}

/* ---- weeks ---- */

static void set_week(struct looking *looking, const char *build, const char *week, const char *due)
{
    DONE(desk_take_up_named(looking->bench.desk, build, note));
    DONE(desk_set(looking->bench.desk, ENTITY_build, 0, "week", week, note));
    DONE(desk_set(looking->bench.desk, ENTITY_build, 0, "due", due, note));
}

static void weeks_hold_all_that_is_left_and_no_more_than_there_is(void **state)
{
    struct looking *looking = *state;
    int64_t left[8] = {0};
    int64_t in_week = 0;
    set_week(looking, "Reading corner", "4 h", "2026-12-10");
    set_week(looking, "Spare room headboard", "6 h", "");
    account(looking);
    const struct account *account = &looking->account;
    assert_true(account->weeks.count > 1);
    for (size_t i = 0; i < account->weeks.count; i++) {
        const struct account_week *week = &account->weeks.at[i];
        bool same = i > 0 && strcmp(week->begins, account->weeks.at[i - 1].begins) == 0;
        in_week = week->minutes + (same ? in_week : 0);
        assert_true(in_week <= 6 * HOUR);
        assert_true(week->minutes <= account->builds.at[week->build].week);
        left[week->build] += week->minutes;
    }
    for (size_t i = 0; i < account->builds.count; i++) {
        if (account->builds.at[i].week)
            assert_int_equal(left[i], account->builds.at[i].minutes_left);
    }
}

/* The calendar ends with the year 9999: what is beyond it, or no day at all, has no weeks. */
static void weeks_beyond_the_calendar_are_not_told(void **state)
{
    static const char *const without[] = {"9999-12-26", "9999-12-31", "9999-12-32", "0000-01-00"};
    struct looking *looking = *state;
    for (size_t i = 0; i < sizeof without / sizeof *without; i++) {
        account_of(looking, without[i]);
        assert_int_equal(looking->account.weeks.count, 0);
    }
    account_of(looking, "9999-12-25");
    assert_true(looking->account.weeks.count > 0);
    for (size_t i = 0; i < looking->account.weeks.count; i++)
        assert_string_equal(looking->account.weeks.at[i].begins, "9999-12-25");
    account(looking);
}

static void what_is_due_first_comes_first(void **state)
{
    struct looking *looking = *state;
    set_week(looking, "Corner banquette", "5 h", "2027-03-01");
    set_week(looking, "Reading corner", "5 h", "2026-12-10");
    account(looking);
    const struct account *account = &looking->account;
    assert_string_equal(account->weeks.at[0].begins, TODAY);
    assert_string_equal(account->builds.at[account->weeks.at[0].build].name, "Reading corner");
    const struct account_build *corner = build_named(looking, "Reading corner");
    /* 14 hours at 5 a week are three weeks: the last of them ends on the 20th of December. */
    assert_true(corner->minutes_left > 10 * HOUR && corner->minutes_left <= 15 * HOUR);
    assert_string_equal(corner->done_by, "2026-12-20");
    assert_true(corner->late);
    assert_false(build_named(looking, "Corner banquette")->late);
    assert_string_equal(build_named(looking, "Spare room headboard")->done_by, "");
}

static void a_workshop_without_builds_has_an_empty_account(void **state)
{
    struct looking *looking = *state;
    for (size_t i = looking->account.builds.count; i-- > 0;) {
        const struct store_build *builds = NULL;
        size_t count = 0;
        DONE(desk_builds(looking->bench.desk, &builds, &count, note));
        DONE(desk_delete_build(looking->bench.desk, builds[i].key, note));
    }
    account(looking);
    assert_int_equal(looking->account.builds.count, 0);
    assert_int_equal(looking->account.all_paid, looking->account.shelf);
}

int main(void)
{
#define CASE(name) cmocka_unit_test_setup_teardown(name, begin, end)
    const struct CMUnitTest tests[] = {
        CASE(builds_months_and_shelf_add_up_to_what_was_paid),
        CASE(months_stand_in_turn_and_hold_refunds),
        CASE(each_build_is_the_plans_own),
        CASE(what_is_finished_has_cost_what_was_paid),
        CASE(weeks_hold_all_that_is_left_and_no_more_than_there_is),
        CASE(weeks_beyond_the_calendar_are_not_told),
        CASE(what_is_due_first_comes_first),
        CASE(a_workshop_without_builds_has_an_empty_account),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
