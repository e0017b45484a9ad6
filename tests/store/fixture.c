#include "fixture.h"

#include "base/digest.h"
#include "store/internal.h"

#include <sqlite3.h>

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

sqlite3 *schema_db;

int schema_make(void **state)
{
    (void)state;
    assert_int_equal(sqlite3_open(":memory:", &schema_db), SQLITE_OK);
    for (int i = 0; i < store_step_count; i++)
        assert_int_equal(sqlite3_exec(schema_db, store_steps[i], NULL, NULL, NULL), SQLITE_OK);
    return 0;
}

int schema_drop(void **state)
{
    (void)state;
    sqlite3_close(schema_db);
    return 0;
}

void place_make(struct place *place)
{
    const char *base = getenv("TMPDIR");

    snprintf(place->folder, sizeof place->folder, "%s/store-XXXXXX", base ? base : "/tmp");
    assert_non_null(mkdtemp(place->folder));
    snprintf(place->path, sizeof place->path, "%s/workshop.stuffover", place->folder);
}

/* Calls on each file's path; counts them. */
static int each_file(const struct place *place, int (*call)(const char *))
{
    DIR *names = opendir(place->folder);
    const struct dirent *entry;
    char path[PATH_MAX + 256];
    int count = 0;

    assert_non_null(names);
    while ((entry = readdir(names)) != NULL) {
        if (entry->d_name[0] == '.')
            continue;
        snprintf(path, sizeof path, "%s/%s", place->folder, entry->d_name);
        if (call)
            call(path);
        count++;
    }
    closedir(names);
    return count;
}

void place_remove(struct place *place)
{
    each_file(place, unlink);
    assert_int_equal(rmdir(place->folder), 0);
}

int place_files(const struct place *place)
{
    return each_file(place, NULL);
}

void arena_make(struct arena *arena)
{
    static jmp_buf nowhere;

    arena_init(arena);
    if (setjmp(nowhere))
        abort();
    arena->escape = &nowhere;
}

struct store *open_store(const char *path)
{
    struct store *store = NULL;
    struct fault_note note = {.why = ""};

    if (store_open(&store, path, &note))
        fail_msg("%s: %s", note.path, note.why);
    return store;
}

enum fault open_as_next(struct store **ret_store, const char *path, const char *vfs,
                        const char *step, struct fault_note *note)
{
    const char *steps[16];
    char whole[400];
    const struct store_options options = {
        .vfs = vfs, .patience = 1, .steps = steps, .step_count = store_step_count + 1};

    assert_true(store_step_count < 16);
    for (int i = 0; i < store_step_count; i++)
        steps[i] = store_steps[i];
    steps[store_step_count] = whole;
    assert_in_range(
        snprintf(whole, sizeof whole, "%s; PRAGMA user_version = %d;", step, store_step_count + 1),
        1, sizeof whole - 1);
    return store_open_with(ret_store, path, &options, note);
}

void table_lay(struct table *table, struct store *store)
{
    arena_make(&table->arena);
    table->store = store;
    assert_int_equal(store_load(store, 0, &table->before, &table->arena, NULL), FAULT_NONE);
    model_copy(&table->after, &table->before, &table->arena);
}

void table_clear(struct table *table)
{
    store_close(table->store);
    arena_release(&table->arena);
    place_remove(&table->place);
}

/* Letters of one to four bytes, quotes and a line's end among them. */
static const char *roll_text(struct arena *arena, struct dice *dice, const struct field *field)
{
    static const char *const letters[] = {
        "a", "Z", " ", "'", "\"", ";", "\n", "%", "\xc3\xa9", "\xe2\x82\xac", "\xf0\x9f\xaa\x91"};
    int64_t most = field->most < 30 ? field->most : 30;
    int64_t count = dice_between(dice, field->least, most);
    char text[128] = "";

    for (int64_t i = 0; i < count; i++)
        strncat(text, letters[dice_between(dice, 0, 10)], 4);
    return arena_text(arena, text);
}

static const char *roll_date(struct arena *arena, struct dice *dice, const struct field *field)
{
    if (field->least == 0 && dice_between(dice, 0, 1) == 0)
        return "";
    return arena_format(arena, "2026-%02d-%02d", (int)dice_between(dice, 1, 12),
                        (int)dice_between(dice, 1, 28));
}

static int64_t roll_reference(const struct model *model, struct dice *dice,
                              const struct field *field)
{
    size_t count = model_count(model, field->target);
    int64_t index = dice_between(dice, field->least ? 0 : -1, (int64_t)count - 1);

    return index < 0 ? 0 : item_key(model_at_const(model, field->target, (size_t)index));
}

static void roll_field(struct model *model, struct dice *dice, const struct field *field,
                       void *item)
{
    if (strcmp(field->name, "next_key") == 0)
        return;
    if (field->type == FIELD_TEXT)
        field_set_string(field, item, roll_text(model->arena, dice, field));
    else if (field->type == FIELD_DATE)
        field_set_string(field, item, roll_date(model->arena, dice, field));
    else if (field->type == FIELD_CHOICE)
        field_set_whole(field, item, dice_between(dice, 0, (int64_t)field->words->count - 1));
    else if (field->type == FIELD_REF)
        field_set_whole(field, item, roll_reference(model, dice, field));
    else
        field_set_whole(field, item, dice_between(dice, field->least, field->most));
}

static void roll_item(struct model *model, struct dice *dice, const struct entity *entity,
                      void *item)
{
    for (size_t i = 0; i < entity->field_count; i++)
        roll_field(model, dice, &entity->fields[i], item);
}

/* An item that must refer to another needs that to be there. */
static bool can_add(const struct model *model, const struct entity *entity)
{
    if (!entity->in_shop && model->build.name[0] == '\0')
        return false;
    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];

        if (field->type == FIELD_REF && field->least > 0 && model_count(model, field->target) == 0)
            return false;
    }
    return true;
}

static void edit_one(struct model *model, struct dice *dice)
{
    enum entity_kind kind = (enum entity_kind)dice_between(dice, 0, ENTITY_COUNT - 1);
    const struct entity *entity = entity_of(kind);
    size_t count = model_count(model, kind);
    int64_t what = dice_between(dice, 0, 9);
    size_t index = count > 0 ? (size_t)dice_between(dice, 0, (int64_t)count - 1) : 0;

    if (count > 0 && what < 2)
        model_remove(model, kind, item_key(model_at(model, kind, index)));
    else if (count > 0 && what < 5)
        roll_item(model, dice, entity, model_at(model, kind, index));
    else if (can_add(model, entity))
        roll_item(model, dice, entity, model_add(model, kind));
}

/* Builds of one store have names of their own, which short texts by chance have not. */
static void roll_build(struct model *model, struct dice *dice)
{
    roll_item(model, dice, entity_of(ENTITY_build), &model->build);
    model->build.name =
        arena_format(model->arena, "%s%u", model->build.name, (unsigned)(dice->state >> 32));
}

void edit_at_random(struct model *model, struct dice *dice, int count)
{
    for (int i = 0; i < count; i++)
        edit_one(model, dice);
    if (dice_between(dice, 0, 4) == 0)
        roll_item(model, dice, entity_of(ENTITY_workshop), &model->workshop);
    if (model->build.name[0] != '\0' && dice_between(dice, 0, 4) == 0)
        roll_build(model, dice);
}

void furnish(struct model *model, struct arena *arena, struct dice *dice)
{
    model_init(model, arena);
    model->build.name = "Bench";
    for (int round = 0; round < 3; round++)
        for (int kind = 0; kind < ENTITY_COUNT; kind++)
            if (can_add(model, entity_of((enum entity_kind)kind)))
                roll_item(model, dice, entity_of((enum entity_kind)kind),
                          model_add(model, (enum entity_kind)kind));
    roll_item(model, dice, entity_of(ENTITY_workshop), &model->workshop);
    roll_build(model, dice);
}

static uint64_t item_digest(uint64_t digest, const struct entity *entity, const void *item)
{
    if (entity->kind != ENTITY_workshop)
        digest = digest_whole(digest, item_key(item));
    for (size_t i = 0; i < entity->field_count; i++) {
        const struct field *field = &entity->fields[i];

        digest = field_is_text(field) ? digest_text(digest, field_string(field, item))
                                      : digest_whole(digest, field_whole(field, item));
    }
    return digest;
}

uint64_t model_digest(const struct model *model)
{
    uint64_t digest = item_digest(DIGEST_START, entity_of(ENTITY_workshop), &model->workshop);

    digest = item_digest(digest, entity_of(ENTITY_build), &model->build);
    for (int kind = 0; kind < ENTITY_COUNT; kind++) {
        size_t count = model_count(model, (enum entity_kind)kind);

        digest = digest_whole(digest, (int64_t)count);
        for (size_t i = 0; i < count; i++)
            digest = item_digest(digest, entity_of((enum entity_kind)kind),
                                 model_at_const(model, (enum entity_kind)kind, i));
    }
    return digest;
}

static uint64_t labels_digest(struct store *store, uint64_t digest)
{
    char label[STORE_LABEL] = "";

    store_undo_label(store, label, NULL);
    digest = digest_text(digest, label);
    label[0] = '\0';
    store_redo_label(store, label, NULL);
    return digest_text(digest, label);
}

uint64_t state_digest(struct store *store)
{
    struct arena arena;
    struct store_build *builds = NULL;
    size_t count = 0;
    struct model model;
    uint64_t digest = DIGEST_START;

    arena_make(&arena);
    assert_int_equal(store_builds(store, &arena, &builds, &count, NULL), FAULT_NONE);
    assert_int_equal(store_peek(store, 0, &model, &arena, NULL), FAULT_NONE);
    digest = digest_whole(digest, (int64_t)model_digest(&model));
    for (size_t i = 0; i < count; i++) {
        assert_int_equal(store_peek(store, builds[i].key, &model, &arena, NULL), FAULT_NONE);
        digest = digest_whole(digest, (int64_t)model_digest(&model));
    }
    arena_release(&arena);
    return labels_digest(store, digest);
}

void make_store(const char *path, struct dice *dice)
{
    struct store *store = open_store(path);
    struct arena arena;
    struct model before;
    struct model after;
    char label[STORE_LABEL];
    int64_t build;

    arena_make(&arena);
    assert_int_equal(store_load(store, 0, &before, &arena, NULL), FAULT_NONE);
    furnish(&after, &arena, dice);
    assert_int_equal(store_save(store, &before, &after, "New build", NULL), FAULT_NONE);
    model_copy(&before, &after, &arena);
    after.build.key = 0;
    after.build.name = "Second";
    assert_int_equal(store_save(store, &before, &after, "Copy build", NULL), FAULT_NONE);
    for (int i = 0; i < 3; i++) {
        enum fault fault;

        model_copy(&before, &after, &arena);
        do { /* stock that the other build uses cannot go: then something else is changed */
            model_copy(&after, &before, &arena);
            edit_at_random(&after, dice, 5);
            after.build.week = 1000 * (i + 1);
            fault = store_save(store, &before, &after, i < 2 ? "Edit" : "Last", NULL);
        } while (fault == FAULT_REFERENCE);
        assert_int_equal(fault, FAULT_NONE);
    }
    assert_int_equal(store_undo(store, label, &build, NULL), FAULT_NONE);
    arena_release(&arena);
    store_close(store);
}

void read_file(const char *path, unsigned char **ret_bytes, size_t *ret_size)
{
    FILE *file = fopen(path, "rb");
    struct stat about;

    assert_non_null(file);
    assert_int_equal(fstat(fileno(file), &about), 0);
    *ret_size = (size_t)about.st_size;
    *ret_bytes = malloc(*ret_size + 1);
    assert_non_null(*ret_bytes);
    assert_int_equal(fread(*ret_bytes, 1, *ret_size, file), *ret_size);
    fclose(file);
}

void write_file(const char *path, const void *bytes, size_t size)
{
    FILE *file = fopen(path, "wb");

    assert_non_null(file);
    assert_int_equal(fwrite(bytes, 1, size, file), size);
    assert_int_equal(fclose(file), 0);
}

uint64_t file_digest(const char *path)
{
    unsigned char *bytes;
    size_t size;

    read_file(path, &bytes, &size);
    uint64_t digest = digest_bytes(DIGEST_START, bytes, size);
    free(bytes);
    return digest;
}

void run_sql(const char *path, const char *sql)
{
    sqlite3 *db;
    char *why = NULL;

    assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
    if (sqlite3_exec(db, sql, NULL, NULL, &why) != SQLITE_OK)
        fail_msg("%s: %s", sql, why);
    sqlite3_close(db);
}

int64_t ask_sql(const char *path, const char *sql)
{
    sqlite3 *db;
    sqlite3_stmt *statement;

    assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
    assert_int_equal(sqlite3_prepare_v2(db, sql, -1, &statement, NULL), SQLITE_OK);
    assert_int_equal(sqlite3_step(statement), SQLITE_ROW);
    int64_t value = sqlite3_column_int64(statement, 0);
    sqlite3_finalize(statement);
    sqlite3_close(db);
    return value;
}

void place_with_store(struct place *place)
{
    struct dice dice = {43};

    place_make(place);
    make_store(place->path, &dice);
}
