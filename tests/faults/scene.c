#include "scene.h"

#include <sqlite3.h>

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static enum fault save(struct scene *scene, const char *label)
{
    return store_save(scene->store, &scene->before, &scene->after, label, &scene->note);
}

static enum fault act_new_build(struct scene *scene)
{
    scene->after.build.key = 0;
    scene->after.build.name = "Third";
    return save(scene, "New build");
}

static enum fault act_small_edit(struct scene *scene)
{
    scene->after.boxes.at[0].width += 320;
    return save(scene, "Wider");
}

static enum fault act_large_edit(struct scene *scene)
{
    for (size_t i = 0; i < scene->after.stocks.count; i++)
        scene->after.stocks.at[i].note = "bought anew";
    for (size_t i = 0; i < scene->after.boxes.count; i++)
        scene->after.boxes.at[i].note = "to be made wider, and lower";
    for (size_t i = 0; i < scene->after.layers.count; i++)
        scene->after.layers.at[i].rank = 50 - (int64_t)i;
    scene->after.workshop.name = "Shed";
    return save(scene, "Much");
}

static enum fault act_tick(struct scene *scene)
{
    struct tick *tick = MODEL_ADD(&scene->after, tick);

    tick->step = "cut/A/rail";
    tick->minutes = 12000;
    return save(scene, "Tick");
}

static enum fault act_spend(struct scene *scene)
{
    struct spend *spend = MODEL_ADD(&scene->after, spend);

    spend->dated = "2026-11-25";
    spend->what = "Studs";
    spend->amount = 4126;
    return save(scene, "Spend");
}

static enum fault act_long_text(struct scene *scene)
{
    char *content = arena_alloc(&scene->arena, 40001);
    struct layout *layout = MODEL_ADD(&scene->after, layout);

    memset(content, 'x', 40000);
    layout->job = "0123456789abcdef";
    layout->content = content;
    return save(scene, "Layout");
}

static enum fault act_delete_box(struct scene *scene)
{
    model_remove(&scene->after, ENTITY_box, scene->after.boxes.at[0].key);
    return save(scene, "Delete box");
}

static enum fault act_delete_build(struct scene *scene)
{
    return store_delete_build(scene->store, scene->build, "Delete build", &scene->note);
}

static enum fault act_undo(struct scene *scene)
{
    char label[STORE_LABEL];
    int64_t build;

    return store_undo(scene->store, label, &build, &scene->note);
}

static enum fault act_redo(struct scene *scene)
{
    char label[STORE_LABEL];
    int64_t build;

    return store_redo(scene->store, label, &build, &scene->note);
}

static enum fault act_summary(struct scene *scene)
{
    const struct store_summary summary = {.digest = 1, .next_step = "Cut the rails", .missing = ""};

    return store_summary_put(scene->store, scene->build, &summary, &scene->note);
}

/* Stock that another build uses cannot go: then something else is changed. */
static enum fault act_by_chance(struct scene *scene)
{
    struct dice dice = {(uint64_t)scene->kind->edit};
    enum fault fault;

    do {
        model_copy(&scene->after, &scene->before, &scene->arena);
        edit_at_random(&scene->after, &dice, 5);
        scene->after.build.week = 4000 + scene->kind->edit;
        fault = save(scene, "Edit by chance");
    } while (fault == FAULT_REFERENCE);
    return fault;
}

struct scene_kind scene_edit(int number)
{
    return (struct scene_kind){"edit by chance", false, false, act_by_chance, number};
}

static enum fault act_backup(struct scene *scene)
{
    return store_backup(scene->store, scene->copy, true, &scene->note);
}

static enum fault act_open(struct scene *scene)
{
    const struct store_options options = {
        .vfs = scene->vfs, .patience = 1, .steps = store_steps, .step_count = store_step_count};

    return store_open_with(&scene->store, scene->place.path, &options, &scene->note);
}

static enum fault act_migrate(struct scene *scene)
{
    return open_as_next(
        &scene->store, scene->place.path, scene->vfs,
        "ALTER TABLE workshop ADD COLUMN motto TEXT NOT NULL DEFAULT 'slow';"
        "CREATE TABLE later (key INTEGER NOT NULL PRIMARY KEY, body TEXT NOT NULL) STRICT;"
        "INSERT INTO later SELECT key, name FROM build",
        &scene->note);
}

static enum fault act_load(struct scene *scene)
{
    struct model model;
    struct store_build *builds;
    size_t count;
    enum fault fault = store_load(scene->store, scene->build, &model, &scene->arena, &scene->note);

    return fault ? fault : store_builds(scene->store, &scene->arena, &builds, &count, &scene->note);
}

const struct scene_kind scene_kinds[] = {
    {"new build", false, false, act_new_build, 0},
    {"small edit", false, false, act_small_edit, 0},
    {"large edit", false, false, act_large_edit, 0},
    {"tick", false, false, act_tick, 0},
    {"spend", false, false, act_spend, 0},
    {"long text", false, false, act_long_text, 0},
    {"delete box", false, false, act_delete_box, 0},
    {"delete build", false, false, act_delete_build, 0},
    {"undo", false, false, act_undo, 0},
    {"redo", false, false, act_redo, 0},
    {"summary", false, false, act_summary, 0},
    {"backup", false, false, act_backup, 0},
    {"load", false, false, act_load, 0},
    {"open", true, false, act_open, 0},
    {"make anew", true, true, act_open, 0},
    {"migrate", true, false, act_migrate, 0},
};
const int scene_count = sizeof scene_kinds / sizeof scene_kinds[0];

static void name_copy(struct scene *scene)
{
    snprintf(scene->copy, sizeof scene->copy, "%s.copy", scene->place.path);
}

void scene_begin(struct scene *scene, const struct scene_kind *kind, const struct scene_ends *ends,
                 const char *vfs)
{
    *scene = (struct scene){.kind = kind, .vfs = vfs};
    place_make(&scene->place);
    name_copy(scene);
    arena_make(&scene->arena);
    if (!kind->on_nothing)
        write_file(scene->place.path, ends->bytes, ends->size);
    if (kind->opens)
        return;
    assert_int_equal(act_open(scene), FAULT_NONE);
    struct store_build *builds;
    size_t count;
    assert_int_equal(store_builds(scene->store, &scene->arena, &builds, &count, NULL), FAULT_NONE);
    assert_int_equal(count, 2);
    scene->build = builds[1].key;
    assert_int_equal(store_load(scene->store, scene->build, &scene->before, &scene->arena, NULL),
                     FAULT_NONE);
    model_copy(&scene->after, &scene->before, &scene->arena);
}

enum fault scene_act_again(struct scene *scene)
{
    if (scene->kind->opens)
        scene_leave(scene);
    else if (store_load(scene->store, scene->build, &scene->before, &scene->arena, &scene->note) ==
             FAULT_NONE)
        model_copy(&scene->after, &scene->before, &scene->arena);
    return scene->kind->act(scene);
}

void scene_leave(struct scene *scene)
{
    store_close(scene->store);
    scene->store = NULL;
}

static uint64_t state_of(const char *path)
{
    struct store *store = NULL;
    uint64_t state = 1;

    if (store_open(&store, path, NULL) == FAULT_NONE)
        state = state_digest(store);
    store_close(store);
    return state;
}

uint64_t scene_state(const struct scene *scene)
{
    if (access(scene->place.path, F_OK) != 0)
        return 0;
    uint64_t state = state_of(scene->place.path);
    if (access(scene->copy, F_OK) == 0 && state_of(scene->copy) != state)
        return 2;
    return state;
}

void scene_end(struct scene *scene)
{
    arena_release(&scene->arena);
    place_remove(&scene->place);
}

/* The file that every scene begins with, made once. */
static void copy_first_file(struct scene_ends *ret_ends, uint64_t *ret_state)
{
    static unsigned char *bytes;
    static size_t size;
    static uint64_t state;
    struct dice dice = {2026};
    struct place place;

    if (!bytes) {
        place_make(&place);
        make_store(place.path, &dice);
        read_file(place.path, &bytes, &size);
        state = state_of(place.path);
        place_remove(&place);
    }
    ret_ends->bytes = malloc(size);
    assert_non_null(ret_ends->bytes);
    memcpy(ret_ends->bytes, bytes, size);
    ret_ends->size = size;
    *ret_state = state;
}

void scene_find_ends(const struct scene_kind *kind, struct scene_ends *ret_ends)
{
    struct scene scene;
    uint64_t state;

    copy_first_file(ret_ends, &state);
    ret_ends->old_state = kind->on_nothing ? 0 : state;
    scene_begin(&scene, kind, ret_ends, NULL);
    assert_int_equal(kind->act(&scene), FAULT_NONE);
    scene_leave(&scene);
    ret_ends->new_state = scene_state(&scene);
    assert_true(ret_ends->new_state > 2);
    scene_end(&scene);
}

void scene_forget_ends(struct scene_ends *ends)
{
    free(ends->bytes);
}
