/*
 * What a fuzzing target is: a function from bytes to nothing, which stops the program where
 * something that must hold does not. replay.c runs it on files kept here and on changes of them;
 * libFuzzer, where the build asks for it, on all that it finds.
 */
#ifndef FUZZ_TARGET_H
#define FUZZ_TARGET_H

#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* The bytes with a NUL behind them, in a block of just that length; free() it. */
static inline char *target_string(const uint8_t *data, size_t size)
{
    char *string = malloc(size + 1);

    if (!string)
        exit(1);
    if (size > 0)
        memcpy(string, data, size);
    string[size] = '\0';
    return string;
}

/* An assert that no build leaves out. */
#define HOLDS(condition)                                                                   \
    do {                                                                                   \
        if (!(condition)) {                                                                \
            fprintf(stderr, "%s:%d: does not hold: %s\n", __FILE__, __LINE__, #condition); \
            abort();                                                                       \
        }                                                                                  \
    } while (0)

#endif
