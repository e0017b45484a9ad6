#include "workshop.h"

#include "kept.h"

#include <dirent.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

void place_begin(struct workshop_place *place)
{
    const char *root = getenv("TMPDIR");
    snprintf(place->folder, sizeof place->folder, "%s/stuffover-desk-XXXXXX",
             root && *root ? root : P_tmpdir);
    assert_non_null(mkdtemp(place->folder));
    snprintf(place->path, sizeof place->path, "%s/workshop", place->folder);
}

void place_end(struct workshop_place *place)
{
    DIR *folder = opendir(place->folder);
    assert_non_null(folder);
    for (struct dirent *entry; (entry = readdir(folder)) != NULL;) {
        char path[1024];
        snprintf(path, sizeof path, "%s/%s", place->folder, entry->d_name);
        if (entry->d_name[0] != '.')
            unlink(path);
    }
    closedir(folder);
    assert_int_equal(rmdir(place->folder), 0);
}

struct desk *desk_at(const struct workshop_place *place)
{
    struct desk *desk = NULL;
    DONE(desk_open(&desk, place->path, note));
    return desk;
}

static void take_file(struct desk *desk, const char *folder, const char *name)
{
    char path[1024];
    snprintf(path, sizeof path, "%s/%s.json", folder, name);
    struct text bytes;
    text_init(&bytes);
    file_take(&bytes, path);
    DONE(desk_import(desk, text_string(&bytes), bytes.length, NULL, NULL, note));
    text_release(&bytes);
}

void desk_take_case(struct desk *desk, const char *name)
{
    take_file(desk, CASE_FOLDER, name);
}

void desk_take_demo(struct desk *desk, const char *name)
{
    take_file(desk, DEMO_FOLDER, name);
}

void tick_until(struct desk *desk, const char *name)
{
    char next[64];
    do {
        const struct plan *plan = desk_plan(desk);
        size_t i = 0;
        while (i < plan->steps.count && plan->steps.at[i].ticked)
            i++;
        assert_true(i < plan->steps.count);
        snprintf(next, sizeof next, "%s", plan->steps.at[i].name);
        DONE(desk_tick(desk, next, "2026-11-25 10:00", 0, note));
    } while (strcmp(next, name) != 0);
}

static void assert_builds_are_sound(struct desk *desk)
{
    const struct store_build *builds;
    size_t count;
    DONE(desk_builds(desk, &builds, &count, note));
    for (size_t i = 0; i < count; i++) {
        DONE(desk_take_up(desk, builds[i].key, note));
        assert_int_equal(model_check(desk_model(desk), NULL, NULL), 0);
        DONE(desk_builds(desk, &builds, &count, note));
    }
}

void assert_place_is_sound(const struct workshop_place *place)
{
    struct store *store;
    struct desk *desk = desk_at(place);
    assert_builds_are_sound(desk);
    desk_close(desk);
    DONE(store_open(&store, place->path, note));
    DONE(store_check(store, note));
    store_close(store);
}

/* ---- benches ---- */

void bench_open(struct bench *bench, const char *const *names)
{
    bool demo = names[0] && strcmp(names[0], "workshop") == 0;
    size_t count = 0;
    *bench = (struct bench){.desk = NULL};
    place_begin(&bench->place);
    bench->desk = desk_at(&bench->place);
    for (size_t i = 0; names[i]; i++) {
        (demo ? desk_take_demo : desk_take_case)(bench->desk, names[i]);
        if (demo && i == 0)
            continue;
        assert_true(count < BENCH_BUILDS);
        bench->builds[count++] = desk_model(bench->desk)->build.key;
    }
}

void bench_close(struct bench *bench)
{
    desk_close(bench->desk);
    assert_place_is_sound(&bench->place);
    place_end(&bench->place);
}

int bench_begin(void **state, const char *const *names)
{
    static struct bench bench;
    bench_open(&bench, names);
    *state = &bench;
    return 0;
}

int bench_end(void **state)
{
    bench_close(*state);
    return 0;
}
