/*
 * A store with some of its bytes changed: each three bytes of the input are a place (the file is
 * larger than two bytes can say: four bytes apart) and what stands there then. It is refused, or
 * read; what can be read of it is sound; and not a byte of the file changes.
 */
#include "target.h"

#include "store/store.h"

#include <limits.h>
#include <unistd.h>

static char path[PATH_MAX];
static unsigned char *whole;
static size_t whole_size;

static void read_file(unsigned char *bytes, size_t *size, size_t most)
{
    FILE *file = fopen(path, "rb");

    HOLDS(file);
    *size = fread(bytes, 1, most, file);
    fclose(file);
}

static void remove_file(void)
{
    unlink(path);
    *strrchr(path, '/') = '\0';
    rmdir(path);
}

static void make_file(void)
{
    struct store *store = NULL;
    const char *folder = getenv("TMPDIR");

    snprintf(path, sizeof path, "%s/stuffover-fuzz-XXXXXX", folder ? folder : "/tmp");
    HOLDS(mkdtemp(path));
    strcat(path, "/store");
    HOLDS(store_open(&store, path, NULL) == FAULT_NONE);
    store_close(store);
    whole = malloc(1 << 20);
    HOLDS(whole);
    read_file(whole, &whole_size, 1 << 20);
    atexit(remove_file);
}

static void write_changed(const uint8_t *data, size_t size)
{
    unsigned char *bytes = malloc(whole_size);
    FILE *file = fopen(path, "wb");

    HOLDS(bytes && file);
    memcpy(bytes, whole, whole_size);
    for (size_t i = 0; i + 2 < size; i += 3)
        bytes[((size_t)data[i] << 8 | data[i + 1]) * 4 % whole_size] = data[i + 2];
    HOLDS(fwrite(bytes, 1, whole_size, file) == whole_size && fclose(file) == 0);
    free(bytes);
}

static void read_store(void)
{
    struct store *store = NULL;
    struct arena arena;
    struct model model;
    size_t lost;

    arena_init(&arena);
    if (store_open(&store, path, NULL) == FAULT_NONE)
        store_load(store, 0, &model, &arena, NULL);
    store_close(store);
    store = NULL;
    if (store_open_damaged(&store, path, NULL) == FAULT_NONE &&
        store_rescue(store, 0, &model, &arena, &lost, NULL) == FAULT_NONE)
        HOLDS(model_check(&model, NULL, NULL) == 0);
    store_close(store);
    arena_release(&arena);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    unsigned char *before, *after;
    size_t length;

    if (!whole)
        make_file();
    before = malloc(whole_size + 1);
    after = malloc(whole_size + 1);
    HOLDS(before && after);
    write_changed(data, size);
    read_file(before, &length, whole_size + 1);
    read_store();
    read_file(after, &length, whole_size + 1);
    HOLDS(length == whole_size && memcmp(before, after, whole_size) == 0);
    free(before);
    free(after);
    return 0;
}
