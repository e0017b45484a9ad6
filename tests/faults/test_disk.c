/*
 * Every opening, write, sync, truncation and deletion of every scene fails: once or from then on,
 * with an error or for want of room, or as a crash with several fates of what was not synced.
 * Afterwards the store is as it was or as it was to be, whole, and never between; the fault says
 * why; and with the disk well again the same act succeeds.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <sqlite3.h>

#include <stdio.h>
#include <stdlib.h>

#include "disk.h"
#include "sanitized.h"
#include "scene.h"

struct sweep {
    const struct scene_kind *kind;
    struct scene_ends ends;
    enum disk_fault fault;
    bool syncs; /* false: synchronous = OFF, to see that loss is caught */
    long cases;
    long losses;
};

static void complain(const struct sweep *sweep, long at, uint64_t seed, enum fault fault,
                     uint64_t state)
{
    print_error("%s %d, fault %d at %ld, seed %d: \"%s\", state %s\n", sweep->kind->name,
                sweep->kind->edit, (int)sweep->fault, at, (int)seed, fault_words(fault),
                state == sweep->ends.new_state   ? "new"
                : state == sweep->ends.old_state ? "old"
                                                 : "between");
}

/* What was said to be done is done. What failed is not, but for a crash after the last word, and
 * for a store where there was none: that is whole before it is opened under its name, which may
 * fail.
 */
static bool is_kept(const struct sweep *sweep, enum fault fault, uint64_t state)
{
    bool is_new = state == sweep->ends.new_state;

    if (fault == FAULT_NONE)
        return is_new;
    return state == sweep->ends.old_state ||
           ((sweep->fault == DISK_CRASH || sweep->kind->on_nothing) && is_new);
}

/* With a disk that is well again, the store that is open does what it could not do before. */
static bool goes_on(const struct sweep *sweep, struct scene *scene)
{
    disk_heal();
    bool fine = scene->note.why[0] != '\0' && scene_act_again(scene) == FAULT_NONE;
    scene_leave(scene);
    if (!fine)
        print_error("it does not go on: \"%s\"\n", scene->note.why);
    return fine && scene_state(scene) == sweep->ends.new_state;
}

/* One interrupted act; then the file is looked at, or every other time work goes on. False when
 * there was no `at`-th operation. */
static bool interrupt(struct sweep *sweep, long at, uint64_t seed)
{
    struct scene scene;
    uint64_t state = 0;
    bool fine;

    scene_begin(&scene, sweep->kind, &sweep->ends, DISK_VFS);
    if (!sweep->syncs)
        sqlite3_exec(scene.store->db, "PRAGMA synchronous = OFF", NULL, NULL, NULL);
    disk_arm(sweep->fault, at, seed);
    enum fault fault = sweep->kind->act(&scene);
    bool reached = disk_operations() >= at;
    if (fault != FAULT_NONE && sweep->fault != DISK_CRASH && at % 2 == 0) {
        fine = goes_on(sweep, &scene);
    } else {
        scene_leave(&scene);
        disk_heal();
        state = scene_state(&scene);
        fine = is_kept(sweep, fault, state);
    }
    sweep->cases++;
    sweep->losses += !fine;
    if (!fine && sweep->syncs)
        complain(sweep, at, seed, fault, state);
    scene_end(&scene);
    return reached;
}

/* An ordinary run tries every third operation. The sanitizers watch over the calls that are made; a
 * part of the operations makes all of them. */
#define STRIDE UNLESS_SANITIZED(3, 45)
#define STRIDE_WITHOUT_SYNCS 4 /* enough to see harm done */

static int runs;

static void run(struct sweep *sweep, long first, long stride, int seeds)
{
    bool reached = true;

    runs++;
    for (long at = first; reached; at += stride)
        for (int seed = 1; seed <= seeds; seed++)
            reached = interrupt(sweep, at, (uint64_t)(at * 1000 + seed));
}

/* How often each scene and each fate is tried, and of how many operations one. */
struct thoroughness {
    const char *name;
    enum disk_fault fault;
    int seeds, long_seeds;
    int edits, long_edits; /* by chance; eleven more kinds of edits are scenes */
    int stride;
};

static void sweep_one(const struct thoroughness *how, const struct scene_kind *kind, long first,
                      long stride, int seeds, struct sweep *total)
{
    struct sweep sweep = {.kind = kind, .fault = how->fault, .syncs = true};

    scene_find_ends(kind, &sweep.ends);
    run(&sweep, first, stride, seeds);
    scene_forget_ends(&sweep.ends);
    total->cases += sweep.cases;
    total->losses += sweep.losses;
}

/* Edits by chance are much alike: an ordinary run tries other operations of each. */
static void sweep_all(const struct thoroughness *how)
{
    bool all = getenv("STUFFOVER_LONG") != NULL;
    long stride = all ? 1 : STRIDE * how->stride;
    int edits = all ? how->long_edits : how->edits;
    int seeds = all ? how->long_seeds : how->seeds;
    struct sweep total = {0};

    for (int i = 0; i < scene_count; i++)
        sweep_one(how, &scene_kinds[i], 1 + i % stride, stride, seeds, &total);
    for (int i = 0; i < edits; i++) {
        struct scene_kind kind = scene_edit(i + 1);
        long step = all ? 1 : 25 * stride;

        sweep_one(how, &kind, 1 + i % step, step, all ? 2 : 1, &total);
    }
    print_message("%s: %ld cases in %d scenes, %ld losses\n", how->name, total.cases,
                  scene_count + edits, total.losses);
    assert_true(stride * total.cases > 10 * scene_count);
    assert_int_equal(total.losses, 0);
}

static void an_error_at_any_operation_leaves_the_old_store(void **state)
{
    (void)state;
    sweep_all(&(struct thoroughness){"error", DISK_ERROR, 1, 1, 49, 489, 1});
}

static void a_broken_disk_leaves_the_old_store(void **state)
{
    (void)state;
    sweep_all(&(struct thoroughness){"error for good", DISK_BROKEN, 1, 1, 12, 489, 9});
}

static void a_full_disk_at_any_write_leaves_the_old_store(void **state)
{
    (void)state;
    sweep_all(&(struct thoroughness){"full", DISK_FULL, 1, 1, 12, 489, 1});
}

static void a_disk_that_stays_full_leaves_the_old_store(void **state)
{
    (void)state;
    sweep_all(&(struct thoroughness){"full for good", DISK_STUFFED, 1, 1, 12, 489, 9});
}

static void a_crash_at_any_operation_leaves_the_old_store_or_the_new(void **state)
{
    (void)state;
    sweep_all(&(struct thoroughness){"crash", DISK_CRASH, 2, 20, 49, 489, 1});
}

/* The proof of the harness: where SQLite does not sync, crashes do harm, and it is seen. */
static void without_syncs_the_sweep_finds_losses(void **state)
{
    (void)state;
    struct sweep sweep = {.kind = &scene_kinds[2], .fault = DISK_CRASH, .syncs = false};

    scene_find_ends(sweep.kind, &sweep.ends);
    run(&sweep, 1, STRIDE_WITHOUT_SYNCS, 3);
    scene_forget_ends(&sweep.ends);
    print_message("crash without syncs: %ld cases, %ld losses\n", sweep.cases, sweep.losses);
    assert_true(sweep.losses > 0);
}

/* With a pattern, as cmocka takes it, those of its tests alone. */
int main(int argc, char **argv)
{
    disk_register();
    if (argc > 1)
        cmocka_set_test_filter(argv[1]);
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_error_at_any_operation_leaves_the_old_store),
        cmocka_unit_test(a_broken_disk_leaves_the_old_store),
        cmocka_unit_test(a_full_disk_at_any_write_leaves_the_old_store),
        cmocka_unit_test(a_disk_that_stays_full_leaves_the_old_store),
        cmocka_unit_test(a_crash_at_any_operation_leaves_the_old_store_or_the_new),
        cmocka_unit_test(without_syncs_the_sweep_finds_losses),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed || runs == 0 ? 1 : 0;
}
