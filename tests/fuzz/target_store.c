/*
 * A store with some of its bytes changed: a byte that says whether pages of the schema change too,
 * then four bytes for each change, its place (three) and what stands there then. The file is
 * refused, or read; what can be read of it is sound; and not a byte of it changes.
 *
 * A schema that differs is compared with one that is made anew, which takes a hundred times as long
 * as to look at a damaged row: so most inputs leave it alone but for the header before it.
 */
#include "target.h"

#include "exchange/exchange.h"
#include "store/store.h"

#include <fcntl.h>
#include <limits.h>
#include <setjmp.h>
#include <unistd.h>

#define FILE_MOST ((size_t)1 << 20) /* up to here the store looks through it when it is opened */
#define HEADER 100
#define PAGE 4096
#define SCHEMA_TOO 0xf0 /* from here on the first byte lets the schema change */

static char path[PATH_MAX];
static int file;
static unsigned char whole[FILE_MOST], changed[FILE_MOST], after[FILE_MOST];
static size_t whole_size;
static bool of_schema[FILE_MOST / PAGE];

static size_t read_into(const char *name, unsigned char *bytes)
{
    FILE *from = fopen(name, "rb");
    size_t size;

    HOLDS(from);
    size = fread(bytes, 1, FILE_MOST, from);
    fclose(from);
    return size;
}

static void remove_file(void)
{
    close(file);
    unlink(path);
    *strrchr(path, '/') = '\0';
    rmdir(path);
}

/* Puts the worked example into the store, as a build of its own. */
static void fill(struct store *store)
{
    struct arena arena;
    struct model before, example;
    jmp_buf escape;
    size_t size = read_into(FUZZ_EXAMPLE, whole);

    arena_init(&arena);
    arena.escape = &escape;
    HOLDS(setjmp(escape) == 0);
    HOLDS(store_load(store, 0, &before, &arena, NULL) == FAULT_NONE);
    model_copy(&example, &before, &arena);
    HOLDS(exchange_build_in((const char *)whole, size, &example, NULL, NULL) == FAULT_NONE);
    example.build.key = 0;
    HOLDS(store_save(store, &before, &example, "fill", NULL) == FAULT_NONE);
    arena_release(&arena);
}

/* Rows of the schema say CREATE. */
static void find_schema(void)
{
    for (size_t at = 0; at + 7 < whole_size; at++)
        if (memcmp(whole + at, "CREATE ", 7) == 0)
            of_schema[at / PAGE] = true;
}

static void make_file(void)
{
    struct store *store = NULL;
    const char *folder = getenv("TMPDIR");

    snprintf(path, sizeof path, "%s/stuffover-fuzz-XXXXXX", folder ? folder : "/tmp");
    HOLDS(mkdtemp(path));
    strcat(path, "/store");
    HOLDS(store_open(&store, path, NULL) == FAULT_NONE);
    fill(store);
    store_close(store);
    whole_size = read_into(path, whole);
    HOLDS(whole_size < FILE_MOST);
    memcpy(changed, whole, whole_size);
    find_schema();
    file = open(path, O_WRONLY);
    HOLDS(file >= 0);
    atexit(remove_file);
}

static void write_byte(size_t at, unsigned char byte)
{
    changed[at] = byte;
    HOLDS(pwrite(file, &byte, 1, (off_t)at) == 1);
}

static void change(const uint8_t *data, size_t size, bool back)
{
    bool schema_too = size > 0 && data[0] >= SCHEMA_TOO;

    for (size_t i = 1; i + 3 < size; i += 4) {
        size_t at = ((size_t)data[i] << 16 | (size_t)data[i + 1] << 8 | data[i + 2]) % whole_size;

        if (schema_too || at < HEADER || !of_schema[at / PAGE])
            write_byte(at, back ? whole[at] : data[i + 3]);
    }
}

/* What the store says it holds, row by row. */
static void read_builds(struct store *store, struct arena *arena)
{
    struct store_build *builds;
    struct model model;
    size_t count;

    store_load(store, 0, &model, arena, NULL);
    if (store_builds(store, arena, &builds, &count, NULL) == FAULT_NONE)
        for (size_t i = 0; i < count; i++)
            store_load(store, builds[i].key, &model, arena, NULL);
}

static void rescue_builds(struct store *store, struct arena *arena)
{
    int64_t *builds;
    struct model model;
    size_t count, lost;

    if (store_rescue_builds(store, arena, &builds, &count, NULL) != FAULT_NONE)
        return;
    for (size_t i = 0; i <= count; i++) /* and the workshop alone */
        if (store_rescue(store, i < count ? builds[i] : 0, &model, arena, &lost, NULL) ==
            FAULT_NONE)
            HOLDS(model_check(&model, NULL, NULL) == 0);
}

static void read_store(void)
{
    struct store *store = NULL;
    struct arena arena;

    arena_init(&arena);
    if (store_open(&store, path, NULL) == FAULT_NONE)
        read_builds(store, &arena);
    store_close(store);
    store = NULL;
    if (store_open_damaged(&store, path, NULL) == FAULT_NONE)
        rescue_builds(store, &arena);
    store_close(store);
    arena_release(&arena);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    if (whole_size == 0)
        make_file();
    change(data, size, false);
    read_store();
    HOLDS(read_into(path, after) == whole_size && memcmp(changed, after, whole_size) == 0);
    change(data, size, true);
    return 0;
}
