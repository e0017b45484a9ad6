#include "base/digest.h"

#include <string.h>

#define PRIME UINT64_C(1099511628211)

uint64_t digest_bytes(uint64_t digest, const void *bytes, size_t count)
{
    const unsigned char *at = bytes;

    for (size_t i = 0; i < count; i++)
        digest = (digest ^ at[i]) * PRIME;
    return digest;
}

uint64_t digest_text(uint64_t digest, const char *text)
{
    return digest_bytes(digest, text, strlen(text) + 1);
}

uint64_t digest_whole(uint64_t digest, int64_t value)
{
    unsigned char bytes[8];

    for (int i = 0; i < 8; i++)
        bytes[i] = (unsigned char)((uint64_t)value >> (8 * i) & 0xff);
    return digest_bytes(digest, bytes, sizeof bytes);
}
