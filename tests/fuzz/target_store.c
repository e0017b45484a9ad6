/*
 * A store with some of its bytes changed: a byte that says what may change and how it is read, then
 * four bytes for each change, its place (three) and what stands there then. The file is refused, or
 * read; what can be read of it is sound; and not a byte of it changes.
 *
 * To open a file takes ten times as long as to read its rows, and to compare a schema that differs
 * ten times as long again. So most inputs change rows alone, under a store that stays open and is
 * told, as if another program had written, that what it knows of the file is out of date.
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
#define COUNTER 24 /* in the header: changes with every write */

/* What the first byte says, from here on. */
#define OPENED 0xe0     /* the header may change too, and the file is opened anew */
#define SCHEMA_TOO 0xf0 /* and so may the schema */

static char path[PATH_MAX];
static int file;
static unsigned char whole[FILE_MOST], changed[FILE_MOST], after[FILE_MOST];
static size_t whole_size;
static bool of_schema[FILE_MOST / PAGE];
static struct store *sound, *damaged; /* stay open */

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
    store_close(sound);
    store_close(damaged);
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
    HOLDS(store_open(&sound, path, NULL) == FAULT_NONE);
    HOLDS(store_open_damaged(&damaged, path, NULL) == FAULT_NONE);
    atexit(remove_file);
}

static void write_byte(size_t at, unsigned char byte)
{
    changed[at] = byte;
    HOLDS(pwrite(file, &byte, 1, (off_t)at) == 1);
}

static bool may_change(size_t at, uint8_t how)
{
    return at < HEADER ? how >= OPENED : how >= SCHEMA_TOO || !of_schema[at / PAGE];
}

static void change(const uint8_t *data, size_t size, bool back)
{
    for (size_t i = 1; i + 3 < size; i += 4) {
        size_t at = ((size_t)data[i] << 16 | (size_t)data[i + 1] << 8 | data[i + 2]) % whole_size;

        if (may_change(at, data[0]))
            write_byte(at, back ? whole[at] : data[i + 3]);
    }
}

/* As another program that wrote would: so what was read before is read again. */
static void count_change(void)
{
    static uint32_t counter;

    counter++;
    for (size_t i = 0; i < sizeof counter; i++)
        write_byte(COUNTER + i, (unsigned char)(counter >> (8 * i)));
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

static void open_and_read(struct arena *arena)
{
    struct store *store = NULL;

    if (store_open(&store, path, NULL) == FAULT_NONE)
        read_builds(store, arena);
    store_close(store);
    store = NULL;
    if (store_open_damaged(&store, path, NULL) == FAULT_NONE)
        rescue_builds(store, arena);
    store_close(store);
}

static void read_again(struct arena *arena)
{
    count_change();
    read_builds(sound, arena);
    rescue_builds(damaged, arena);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    struct arena arena;

    if (size == 0)
        return 0;
    if (whole_size == 0)
        make_file();
    arena_init(&arena);
    change(data, size, false);
    if (data[0] >= OPENED)
        open_and_read(&arena);
    else
        read_again(&arena);
    arena_release(&arena);
    HOLDS(read_into(path, after) == whole_size && memcmp(changed, after, whole_size) == 0);
    change(data, size, true);
    return 0;
}
