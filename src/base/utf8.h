/*
 * UTF-8, one character at a time (The Unicode Standard, section 3.9).
 */
#ifndef BASE_UTF8_H
#define BASE_UTF8_H

#include <stdbool.h>
#include <stddef.h>

/*
 * Reads the character at `at`, of which `left` bytes may be looked at: its code point into
 * *ret_code, and its bytes as the result (1 to 4). A byte that starts no valid character (overlong
 * forms, surrogates, beyond U+10FFFF) counts as one byte with code U+FFFD. Where `left` is 0 the
 * result is 0, and *ret_code is left alone.
 */
int utf8_next(const char *at, size_t left, unsigned *ret_code);

bool utf8_valid(const char *string, size_t length);

/* How many characters a string has; a broken byte counts as one. */
size_t utf8_count(const char *string);

/* Writes a code point that is no surrogate; returns its bytes (1 to 4), without a NUL. */
int utf8_put(unsigned code, char bytes[4]);

#endif
