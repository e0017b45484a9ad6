/* What is read of a damaged file: whole where it is whole, sound models whatever is broken, and the
 * file left as it is. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

#include "fixture.h"

struct rescued {
    size_t builds, lost, unread;
    uint64_t digest;
};

static void rescue_model(struct store *store, int64_t build, struct rescued *rescued)
{
    struct arena arena;
    struct model model;
    size_t lost = 0;

    arena_make(&arena);
    if (store_rescue(store, build, &model, &arena, &lost, NULL)) {
        rescued->unread++;
    } else {
        assert_int_equal(model_check(&model, NULL, NULL), 0);
        rescued->digest = rescued->digest * 31 + model_digest(&model);
    }
    rescued->lost += lost;
    arena_release(&arena);
}

static struct rescued rescue_all(struct store *store)
{
    struct rescued rescued = {0};
    struct arena arena;
    int64_t *keys = NULL;

    arena_make(&arena);
    assert_int_equal(store_rescue_builds(store, &arena, &keys, &rescued.builds, NULL), FAULT_NONE);
    rescue_model(store, 0, &rescued);
    for (size_t i = 0; i < rescued.builds; i++)
        rescue_model(store, keys[i], &rescued);
    arena_release(&arena);
    return rescued;
}

/* The same, by store_load; names that are not unique, which the dice give, are mended there too. */
static uint64_t load_all(struct store *store, size_t *mended)
{
    struct arena arena;
    struct model model;
    struct store_build *builds = NULL;
    size_t count = 0;
    uint64_t digest;

    arena_make(&arena);
    assert_int_equal(store_load(store, 0, &model, &arena, NULL), FAULT_NONE);
    *mended = model_mend(&model);
    digest = model_digest(&model);
    assert_int_equal(store_builds(store, &arena, &builds, &count, NULL), FAULT_NONE);
    for (size_t i = 0; i < count; i++) {
        assert_int_equal(store_load(store, builds[i].key, &model, &arena, NULL), FAULT_NONE);
        *mended += model_mend(&model);
        digest = digest * 31 + model_digest(&model);
    }
    arena_release(&arena);
    return digest;
}

static void of_a_whole_file_nothing_is_lost_and_nothing_is_written(void **state)
{
    struct place place;
    struct store *store;
    struct rescued rescued;
    uint64_t file, whole;
    size_t mended;

    (void)state;
    place_with_store(&place);
    store = open_store(place.path);
    whole = load_all(store, &mended);
    store_close(store);
    file = file_digest(place.path);
    assert_int_equal(store_open_damaged(&store, place.path, NULL), FAULT_NONE);
    assert_int_equal(store_read_only(store), FAULT_DAMAGED);
    rescued = rescue_all(store);
    store_close(store);
    assert_int_equal(rescued.builds, 2);
    assert_int_equal(rescued.lost, mended);
    assert_int_equal(rescued.unread, 0);
    assert_true(rescued.digest == whole);
    assert_true(file_digest(place.path) == file);
    place_remove(&place);
}

/* Breaks one page; counts what is rescued from it. */
static void rescue_without(const struct place *place, unsigned char *bytes, size_t size,
                           size_t page, struct rescued *sum)
{
    unsigned char *header = bytes + page + (page == 0 ? 100 : 0);
    unsigned char kind = header[0];
    struct store *store = NULL;
    struct rescued rescued;
    uint64_t file;

    header[0] = 7;
    write_file(place->path, bytes, size);
    header[0] = kind;
    file = file_digest(place->path);
    if (store_open_damaged(&store, place->path, NULL)) {
        sum->unread++;
        return;
    }
    rescued = rescue_all(store);
    store_close(store);
    assert_true(file_digest(place->path) == file);
    sum->builds += rescued.builds;
    sum->lost += rescued.lost > 0;
    sum->unread += rescued.unread;
}

static void without_a_page_the_rest_is_sound(void **state)
{
    struct place place;
    struct rescued sum = {0};
    unsigned char *bytes;
    size_t size, pages;

    (void)state;
    place_with_store(&place);
    read_file(place.path, &bytes, &size);
    pages = size / 4096;
    for (size_t page = 0; page < pages; page++)
        rescue_without(&place, bytes, size, page * 4096, &sum);
    /* Of all pages but those that say what tables there are, both builds are found. */
    assert_in_range(sum.unread, 1, pages / 4);
    assert_in_range(sum.builds, 2 * (pages - sum.unread) - 4, 2 * pages);
    assert_in_range(sum.lost, pages / 3, pages);
    free(bytes);
    place_remove(&place);
}

static void a_file_cut_short_is_read_as_far_as_it_goes(void **state)
{
    struct place place;
    struct store *store = NULL;
    struct rescued rescued;
    unsigned char *bytes;
    size_t size;

    (void)state;
    place_with_store(&place);
    read_file(place.path, &bytes, &size);
    write_file(place.path, bytes, size - 4096 * 3);
    assert_int_equal(store_open(&store, place.path, NULL), FAULT_DAMAGED);
    assert_int_equal(store_open_damaged(&store, place.path, NULL), FAULT_NONE);
    rescued = rescue_all(store);
    store_close(store);
    assert_int_equal(rescued.builds, 2);
    assert_int_equal(rescued.unread, 0);
    free(bytes);
    place_remove(&place);
}

/* A build of four boxes, one of them with a note that is no text. */
static void a_row_that_cannot_be_read_is_lost_alone(void **state)
{
    struct place place;
    struct store *store;
    struct arena arena;
    struct model before, after;
    size_t lost = 0;

    (void)state;
    place_make(&place);
    arena_make(&arena);
    store = open_store(place.path);
    assert_int_equal(store_load(store, 0, &before, &arena, NULL), FAULT_NONE);
    model_copy(&after, &before, &arena);
    after.build.name = "Boxes";
    for (int i = 0; i < 4; i++) {
        struct box *box = MODEL_ADD(&after, box);

        box->name = arena_format(&arena, "B%d", i);
        box->width = box->depth = box->height = LENGTH_INCH * 10;
    }
    assert_int_equal(store_save(store, &before, &after, "New build", NULL), FAULT_NONE);
    store_close(store);
    run_sql(place.path, "UPDATE box SET note = CAST(x'ff41' AS TEXT) WHERE name = 'B1'");
    assert_int_equal(store_open_damaged(&store, place.path, NULL), FAULT_NONE);
    assert_int_equal(store_rescue(store, after.build.key, &before, &arena, &lost, NULL),
                     FAULT_NONE);
    store_close(store);
    assert_int_equal(lost, 1);
    assert_int_equal(before.boxes.count, 3);
    assert_string_equal(before.boxes.at[0].name, "B0");
    assert_string_equal(before.boxes.at[1].name, "B2");
    assert_string_equal(before.boxes.at[2].name, "B3");
    arena_release(&arena);
    place_remove(&place);
}

static void what_is_not_ours_is_not_rescued(void **state)
{
    struct place place;
    struct store *store = NULL;

    (void)state;
    place_make(&place);
    run_sql(place.path, "CREATE TABLE note (body TEXT); PRAGMA user_version = 1");
    assert_int_equal(store_open_damaged(&store, place.path, NULL), FAULT_FOREIGN);
    place_remove(&place);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(of_a_whole_file_nothing_is_lost_and_nothing_is_written),
        cmocka_unit_test(without_a_page_the_rest_is_sound),
        cmocka_unit_test(a_file_cut_short_is_read_as_far_as_it_goes),
        cmocka_unit_test(a_row_that_cannot_be_read_is_lost_alone),
        cmocka_unit_test(what_is_not_ours_is_not_rescued),
    };

    return cmocka_run_group_tests(tests, NULL, NULL) ? 1 : 0;
}
