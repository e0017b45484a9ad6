/*
 * A 64-bit digest of bytes (FNV-1a, 64 bits: offset basis 14695981039346656037, prime
 * 1099511628211), to tell whether two contents are the same. Not for secrets.
 */
#ifndef BASE_DIGEST_H
#define BASE_DIGEST_H

#include <stddef.h>
#include <stdint.h>

#define DIGEST_START UINT64_C(14695981039346656037)

uint64_t digest_bytes(uint64_t digest, const void *bytes, size_t count);
uint64_t digest_text(
    uint64_t digest,
    const char *text); /* with its ending NUL, so that "ab","c" differs from "a","bc" */
uint64_t digest_whole(uint64_t digest, int64_t value); /* the same on every machine */

#endif
