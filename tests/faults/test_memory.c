/*
 * Memory runs out at any request of a scene, ours or SQLite's. The call says so or does not need
 * it; nothing is left behind, and the store is the old one or, where no fault was given, the new.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <sqlite3.h>

#include <stdlib.h>

#include "base/memory.h"
#include "sanitized.h"
#include "scene.h"

/* Requests count from the arming; the `at`-th finds nothing. 0: none fails. */
static struct {
    long at;
    long requests;
    long blocks; /* of ours that are out */
    sqlite3_mem_methods sqlite;
} heap;

static bool fails(void)
{
    return ++heap.requests == heap.at;
}

static void *resize(void *block, size_t size)
{
    if (fails())
        return NULL;
    heap.blocks += block == NULL;
    return realloc(block, size);
}

static void release(void *block)
{
    heap.blocks -= block != NULL;
    free(block);
}

static void *sqlite_take(int size)
{
    return fails() ? NULL : heap.sqlite.xMalloc(size);
}

static void *sqlite_resize(void *block, int size)
{
    return fails() ? NULL : heap.sqlite.xRealloc(block, size);
}

static void arm(long at)
{
    heap.at = at;
    heap.requests = 0;
}

/* One act that misses one request. False when it made fewer. */
static bool interrupt(const struct scene_kind *kind, const struct scene_ends *ends, long at)
{
    struct scene scene;

    scene_begin(&scene, kind, ends, NULL);
    /* The model's own functions leave through the escape; the store is what is tested here. */
    jmp_buf escape;
    enum fault fault = FAULT_MEMORY;
    scene.arena.escape = &escape;
    if (setjmp(escape) == 0) {
        arm(at);
        fault = kind->act(&scene);
    }
    bool reached = heap.requests >= at;
    arm(0);
    scene_leave(&scene);

    uint64_t state = scene_state(&scene);
    /* Opening is several steps: what made the file, or brought it up to date, may be done. */
    bool fine = state == ends->new_state ? !fault || kind->opens || ends->old_state == state
                                         : fault && state == ends->old_state;
    if (!fine)
        fail_msg("%s, request %ld: \"%s\", another state", kind->name, at, fault_words(fault));
    assert_int_equal(scene.note.column, 0); /* it is about no text that was typed */
    scene_end(&scene);
    return reached;
}

/* Every early request, then ever fewer: the later ones are the same few over and over. */
#define THINNING UNLESS_SANITIZED(15, 2)

static long next(long at)
{
    return getenv("STUFFOVER_LONG") ? at + 1 : at + 1 + at / THINNING;
}

static void running_out_of_memory_leaves_the_store_whole_and_nothing_behind(void **state)
{
    (void)state;
    long cases = 0;
    long blocks = heap.blocks;

    for (int i = 0; i < scene_count; i++) {
        struct scene_ends ends;

        scene_find_ends(&scene_kinds[i], &ends);
        for (long at = 1; interrupt(&scene_kinds[i], &ends, at); at = next(at))
            cases++;
        scene_forget_ends(&ends);
        assert_int_equal(heap.blocks, blocks);
        assert_int_equal(sqlite3_memory_used(), 0);
    }
    print_message("%ld requests refused in %d scenes\n", cases, scene_count);
    assert_true(cases > THINNING * scene_count);
}

int main(void)
{
    static const struct memory_source source = {.resize = resize, .release = release};

    sqlite3_config(SQLITE_CONFIG_GETMALLOC, &heap.sqlite);
    sqlite3_mem_methods counted = heap.sqlite;
    counted.xMalloc = sqlite_take;
    counted.xRealloc = sqlite_resize;
    sqlite3_config(SQLITE_CONFIG_MALLOC, &counted);
    memory_use(&source);
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(running_out_of_memory_leaves_the_store_whole_and_nothing_behind),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
