/*
 * Runs a target on files and on changes of them, the same ones everywhere.
 *
 *     target_X CHANGES FILE...
 *
 * CHANGES is how many changes of each file are tried: bytes set, cut out, doubled.
 */
#include "target.h"

#include "dice.h"

#define FILE_MOST 65536

static size_t read_seed(const char *path, uint8_t *bytes)
{
    FILE *file = fopen(path, "rb");
    size_t size;

    if (!file) {
        fprintf(stderr, "cannot read %s\n", path);
        exit(1);
    }
    size = fread(bytes, 1, FILE_MOST, file);
    fclose(file);
    return size;
}

static size_t change(struct dice *dice, uint8_t *bytes, size_t size)
{
    size_t at = size > 0 ? (size_t)dice_between(dice, 0, (int64_t)size - 1) : 0;
    size_t length = (size_t)dice_between(dice, 1, 8);

    if (length > size - at)
        length = size - at;
    switch (dice_between(dice, 0, 3)) {
    case 0: /* goes */
        memmove(bytes + at, bytes + at + length, size - at - length);
        return size - length;
    case 1: /* comes twice */
        if (size + length > FILE_MOST)
            return size;
        memmove(bytes + at + length, bytes + at, size - at);
        return size + length;
    default:
        if (size > 0)
            bytes[at] = (uint8_t)dice_between(dice, 0, 255);
        return size;
    }
}

int main(int argc, char **argv)
{
    static uint8_t seed[FILE_MOST], changed[FILE_MOST];
    long changes = argc > 1 ? strtol(argv[1], NULL, 10) : 0;
    struct dice dice = {1};

    if (getenv("STUFFOVER_LONG"))
        changes *= 100;
    if (argc < 3)
        return 2;
    for (int i = 2; i < argc; i++) {
        size_t size = read_seed(argv[i], seed);

        LLVMFuzzerTestOneInput(seed, size);
        for (long n = 0; n < changes; n++) {
            size_t length = size;

            memcpy(changed, seed, size);
            for (int64_t k = dice_between(&dice, 1, 4); k > 0; k--)
                length = change(&dice, changed, length);
            LLVMFuzzerTestOneInput(changed, length);
        }
    }
    printf("%d files, each and %ld changes of it\n", argc - 2, changes);
    return 0;
}
