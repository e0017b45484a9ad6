/*
 * Every write, sync, truncation and deletion of every scene fails once: with an error, for want of
 * room, and as a crash with several fates of what was not synced. Afterwards the store is as it was
 * or as it was to be, whole, and never between.
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
#include "scene.h"

struct sweep {
    const struct scene_kind *kind;
    struct scene_ends ends;
    enum disk_fault fault;
    bool syncs; /* false: synchronous = OFF, to see that loss is caught */
    long cases;
    long losses;
};

/* One interrupted act. False when there was no `at`-th operation. */
static bool interrupt(struct sweep *sweep, long at, uint64_t seed)
{
    struct scene scene;

    scene_begin(&scene, sweep->kind, &sweep->ends, DISK_VFS);
    if (!sweep->syncs)
        sqlite3_exec(scene.store->db, "PRAGMA synchronous = OFF", NULL, NULL, NULL);
    disk_arm(sweep->fault, at, seed);
    enum fault fault = sweep->kind->act(&scene);
    bool reached = disk_operations() >= at;
    scene_leave(&scene);
    disk_heal();

    uint64_t state = scene_state(&scene);
    bool is_old = state == sweep->ends.old_state;
    bool is_new = state == sweep->ends.new_state;
    /* What was said to be done is done. What failed is not, but for a crash after the last word. */
    bool fine = fault == FAULT_NONE ? is_new : is_old || (sweep->fault == DISK_CRASH && is_new);
    sweep->cases++;
    sweep->losses += !fine;
    if (!fine && sweep->syncs)
        print_error("%s, fault %d at %ld, seed %d: \"%s\", state %s\n", sweep->kind->name,
                    (int)sweep->fault, at, (int)seed, fault_words(fault),
                    is_new   ? "new"
                    : is_old ? "old"
                             : "between");
    scene_end(&scene);
    return reached;
}

/* The sanitizers watch over the calls that are made; a part of the operations makes all of them. */
#ifdef __SANITIZE_ADDRESS__
#define STRIDE 10
#else
#define STRIDE 1
#endif

static void run(struct sweep *sweep, int seeds)
{
    bool reached = true;

    for (long at = 1; reached; at += STRIDE)
        for (int seed = 1; seed <= seeds; seed++)
            reached = interrupt(sweep, at, (uint64_t)(at * 1000 + seed));
}

static void sweep_all(enum disk_fault fault, const char *name, int seeds)
{
    long cases = 0;
    long losses = 0;

    for (int i = 0; i < scene_count; i++) {
        struct sweep sweep = {.kind = &scene_kinds[i], .fault = fault, .syncs = true};

        scene_find_ends(sweep.kind, &sweep.ends);
        run(&sweep, seeds);
        scene_forget_ends(&sweep.ends);
        cases += sweep.cases;
        losses += sweep.losses;
    }
    print_message("%s: %ld cases in %d scenes, %ld losses\n", name, cases, scene_count, losses);
    assert_true(STRIDE * cases > 10 * scene_count);
    assert_int_equal(losses, 0);
}

static void an_error_at_any_operation_leaves_the_old_store(void **state)
{
    (void)state;
    sweep_all(DISK_ERROR, "error", 1);
}

static void a_full_disk_at_any_write_leaves_the_old_store(void **state)
{
    (void)state;
    sweep_all(DISK_FULL, "full", 1);
}

static void a_crash_at_any_operation_leaves_the_old_store_or_the_new(void **state)
{
    (void)state;
    sweep_all(DISK_CRASH, "crash", getenv("STUFFOVER_LONG") ? 20 : 2);
}

/* The proof of the harness: where SQLite does not sync, crashes do harm, and it is seen. */
static void without_syncs_the_sweep_finds_losses(void **state)
{
    (void)state;
    struct sweep sweep = {.kind = &scene_kinds[2], .fault = DISK_CRASH, .syncs = false};

    scene_find_ends(sweep.kind, &sweep.ends);
    run(&sweep, 3);
    scene_forget_ends(&sweep.ends);
    print_message("crash without syncs: %ld cases, %ld losses\n", sweep.cases, sweep.losses);
    assert_true(sweep.losses > 0);
}

int main(void)
{
    disk_register();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_error_at_any_operation_leaves_the_old_store),
        cmocka_unit_test(a_full_disk_at_any_write_leaves_the_old_store),
        cmocka_unit_test(a_crash_at_any_operation_leaves_the_old_store_or_the_new),
        cmocka_unit_test(without_syncs_the_sweep_finds_losses),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
