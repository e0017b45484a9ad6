/*
 * A 64-bit digest of bytes (FNV-1a, 64 bits: offset basis 14695981039346656037, prime
 * 1099511628211), to tell whether two contents are the same. Not for secrets.
 */
#ifndef BASE_DIGEST_H
#define BASE_DIGEST_H

#include <stddef.h>
#include <stdint.h>

#define DIGEST_START UINT64_C(14695981039346656037)

/* Goes on with a digest, from DIGEST_START at first. */
uint64_t digest_bytes(uint64_t digest, const void *bytes, size_t count);

/* With the NUL at its end, so that "ab", "c" differs from "a", "bc". */
uint64_t digest_text(uint64_t digest, const char *text);

/* The same on every machine, whatever its order of bytes. */
uint64_t digest_whole(uint64_t digest, int64_t value);

#endif
