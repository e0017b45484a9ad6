/*
 * Mixes of sticks packed by branching over fillings, against going through every way to lay the
 * parts into the sticks. The jobs by chance have as much room as their parts, or hardly more: there
 * the relaxation says yes far more often than whole sticks do.
 */
#include "dice.h"
#include "saw.h"

#include "cut/bars.h"
#include "cut/bars_pool.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define KINDS 5
#define SIZES 3
#define FILLINGS 4000
#define WORK INT64_C(400000000)

static int rounds(int usual)
{
    return getenv("STUFFOVER_LONG") ? 25 * usual : usual;
}

struct small {
    struct arena arena;
    jmp_buf escape;
    struct parts parts;
    struct cut_size sizes[SIZES];
    struct cut_job job;
    struct cut_layout quick;
    struct bar_task task;
    struct bar_values values;
    int64_t counts[KINDS], limits[SIZES];
};

/* Sticks that some parts fill, and parts of these kinds by chance as long as there is room. */
static void draw(struct small *small, struct dice *dice)
{
    int64_t kinds[KINDS];
    int64_t last = dice_between(dice, 1, KINDS - 1);
    int64_t room = -dice_between(dice, 0, 2);

    small->parts.count = 0;
    for (size_t k = 0; k < KINDS; k++)
        kinds[k] = dice_between(dice, 9, 30);
    small->job = (struct cut_job){.sizes = small->sizes, .size_count = SIZES};
    for (size_t s = 0; s < SIZES; s++) {
        int64_t length = 0;

        while (length < 30)
            length += kinds[dice_between(dice, 0, last)];
        small->sizes[s] = (struct cut_size){.length = length, .limit = dice_between(dice, 1, 2)};
        room += length * small->sizes[s].limit;
    }
    for (int tries = 0; tries < 30; tries++) {
        int64_t length = kinds[dice_between(dice, 0, last)];

        if (length <= room)
            parts_add(&small->parts, 1, length, 0, false);
        room -= length <= room ? length : 0;
    }
    small->job.parts = small->parts.at;
    small->job.part_count = small->parts.count;
}

/* The task of a job, with all its parts, whatever the quick layout could place. */
static void make_task(struct small *small)
{
    arena_init(&small->arena);
    small->arena.escape = &small->escape;
    if (setjmp(small->escape))
        fail_msg("memory is out");
    for (size_t i = 0; i < small->parts.count; i++)
        *LIST_ADD(&small->arena, &small->quick.places) = (struct cut_place){.part = i};
    assert_true(bar_task_make(&small->task, &small->job, &small->quick, &small->arena));
    for (size_t k = 0; k < small->task.kind_count; k++)
        small->counts[k] = small->task.kinds[k].count;
    for (size_t s = 0; s < small->task.size_count; s++) {
        small->task.sizes[s].price = 0;
        small->limits[s] = small->task.sizes[s].limit;
    }
}

static void value_by_length(struct small *small)
{
    double worth[KINDS];

    for (size_t k = 0; k < small->task.kind_count; k++)
        worth[k] = (double)small->task.kinds[k].length / (double)small->task.longest;
    bar_values_begin(&small->values, &small->task);
    bar_values_set(&small->values, &small->task, worth, 0);
}

/* ---- every way ---- */

static bool lay_stick(const struct small *small, int64_t *counts, int64_t *limits);

/* Fills the rest of a stick with kinds from `kind` on, each number of them. */
static bool fill_stick(const struct small *small, int64_t *counts, int64_t *limits, size_t kind,
                       int64_t room)
{
    int64_t length;
    bool found = false;

    if (kind == small->task.kind_count)
        return lay_stick(small, counts, limits);
    length = small->task.kinds[kind].length;
    for (int64_t n = room / length < counts[kind] ? room / length : counts[kind]; n >= 0 && !found;
         n--) {
        counts[kind] -= n;
        found = fill_stick(small, counts, limits, kind + 1, room - n * length);
        counts[kind] += n;
    }
    return found;
}

/* The longest part left lies in some stick. */
static bool lay_stick(const struct small *small, int64_t *counts, int64_t *limits)
{
    size_t kind = 0;
    bool found = false;

    while (kind < small->task.kind_count && counts[kind] == 0)
        kind++;
    if (kind == small->task.kind_count)
        return true;
    for (size_t s = 0; s < small->task.size_count && !found; s++) {
        int64_t room = small->task.sizes[s].room - small->task.kinds[kind].length;

        if (limits[s] == 0 || room < 0)
            continue;
        limits[s]--;
        counts[kind]--;
        found = fill_stick(small, counts, limits, kind, room);
        counts[kind]++;
        limits[s]++;
    }
    return found;
}

/* ---- the plan found ---- */

static void check_plan(const struct small *small, const struct bar_plan *plan)
{
    int64_t left[KINDS], sticks[SIZES];

    memcpy(left, small->counts, sizeof left);
    memcpy(sticks, small->limits, sizeof sticks);
    for (size_t i = 0; i < plan->fillings.count; i++) {
        const struct bar_filling *filling = &plan->fillings.at[i];
        int64_t taken = 0;

        sticks[filling->size] -= filling->times;
        for (size_t j = filling->first; j < filling->first + filling->count; j++) {
            const struct bar_take *take = &plan->takes.at[j];

            left[take->kind] -= filling->times * take->count;
            taken += take->count * small->task.kinds[take->kind].length;
        }
        assert_true(taken <= small->task.sizes[filling->size].room);
    }
    for (size_t k = 0; k < small->task.kind_count; k++)
        assert_true(left[k] <= 0);
    for (size_t s = 0; s < small->task.size_count; s++)
        assert_true(sticks[s] >= 0);
}

/* Packs in one go or in many; what comes out is the same. */
static enum bar_outcome pack(struct small *small, const struct bar_plan *fillings,
                             struct bar_plan *plan, int64_t slice)
{
    struct bar_pool *pool = bar_pool_begin(&small->task);
    enum bar_outcome outcome;
    int64_t done = 0;

    bar_pool_set_out(pool, fillings, small->counts, small->limits, WORK);
    do
        outcome = bar_pool_go_on(pool, slice, plan, &done);
    while (outcome == BAR_GOES_ON);
    return outcome;
}

/* The same part by part. */
static enum bar_outcome pack_parts(struct small *small, struct bar_exact *exact,
                                   struct bar_plan *plan, int64_t slice)
{
    enum bar_outcome outcome;
    int64_t done = 0;

    bar_exact_set_out(exact, &small->values, small->counts, small->limits, 0, WORK);
    do
        outcome = bar_exact_go_on(exact, slice, plan, &done);
    while (outcome == BAR_GOES_ON);
    return outcome;
}

static void mixes_are_packed_exactly_where_some_way_packs_them(void **state)
{
    struct dice dice = {41};
    int packed = 0, not_packed = 0;

    (void)state;
    for (int i = 0; i < rounds(800); i++) {
        static struct small small;
        struct bar_plan fillings = {0}, plan = {0}, by_parts = {0};
        struct bar_exact *exact;
        enum bar_outcome outcome, parts_outcome;
        int64_t done = 0;

        memset(&small, 0, sizeof small);
        draw(&small, &dice);
        make_task(&small);
        value_by_length(&small);
        exact = bar_exact_begin(&small.task);
        assert_true(bar_exact_fillings(exact, &small.values, small.counts, small.limits, 0,
                                       FILLINGS, WORK, &fillings, &done));
        outcome = pack(&small, &fillings, &plan, i % 3 ? WORK : 50);
        parts_outcome = pack_parts(&small, exact, &by_parts, i % 3 ? 1 : WORK);
        assert_int_equal(parts_outcome, outcome);
        if (lay_stick(&small, small.counts, small.limits)) {
            assert_int_equal(outcome, BAR_FOUND);
            check_plan(&small, &plan);
            check_plan(&small, &by_parts);
            packed++;
        } else {
            assert_int_equal(outcome, BAR_NONE);
            not_packed++;
        }
        arena_release(&small.arena);
    }
    print_message("%d packed, %d not\n", packed, not_packed);
    assert_true(packed > rounds(800) / 10 && not_packed > rounds(800) / 10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(mixes_are_packed_exactly_where_some_way_packs_them)};

    return cmocka_run_group_tests(tests, NULL, NULL);
}
