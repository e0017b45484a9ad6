#include "base/utf8.h"

#include <assert.h>
#include <string.h>

#define REPLACEMENT 0xfffdu

/* The well-formed byte sequences of UTF-8, by first byte: how many bytes, and where the second
 * must lie (The Unicode Standard, table 3-7). Those after the second are 80 to BF. */
static const struct utf8_lead {
    unsigned char first_least, first_most;
    unsigned char second_least, second_most;
    int bytes;
} utf8_leads[] = {
    {0xc2, 0xdf, 0x80, 0xbf, 2}, {0xe0, 0xe0, 0xa0, 0xbf, 3}, {0xe1, 0xec, 0x80, 0xbf, 3},
    {0xed, 0xed, 0x80, 0x9f, 3}, {0xee, 0xef, 0x80, 0xbf, 3}, {0xf0, 0xf0, 0x90, 0xbf, 4},
    {0xf1, 0xf3, 0x80, 0xbf, 4}, {0xf4, 0xf4, 0x80, 0x8f, 4},
};

static const struct utf8_lead *find_lead(unsigned char first)
{
    for (size_t i = 0; i < sizeof utf8_leads / sizeof utf8_leads[0]; i++)
        if (first >= utf8_leads[i].first_least && first <= utf8_leads[i].first_most)
            return &utf8_leads[i];
    return NULL;
}

static bool well_formed(const struct utf8_lead *lead, const unsigned char *bytes, size_t left)
{
    if (left < (size_t)lead->bytes)
        return false;
    if (bytes[1] < lead->second_least || bytes[1] > lead->second_most)
        return false;
    for (int i = 2; i < lead->bytes; i++)
        if ((bytes[i] & 0xc0u) != 0x80u)
            return false;
    return true;
}

int utf8_next(const char *at, size_t left, unsigned *ret_code)
{
    const unsigned char *bytes = (const unsigned char *)at;
    const struct utf8_lead *lead;
    unsigned code;

    if (left == 0)
        return 0;
    if (bytes[0] < 0x80) {
        *ret_code = bytes[0];
        return 1;
    }
    lead = find_lead(bytes[0]);
    if (!lead || !well_formed(lead, bytes, left)) {
        *ret_code = REPLACEMENT;
        return 1;
    }
    code = bytes[0] & (0x7fu >> lead->bytes);
    for (int i = 1; i < lead->bytes; i++)
        code = code << 6 | (bytes[i] & 0x3fu);
    *ret_code = code;
    return lead->bytes;
}

/* U+FFFD itself takes three bytes, so a single byte with that code is a broken one. */
bool utf8_valid(const char *string, size_t length)
{
    unsigned code;

    for (size_t i = 0; i < length;) {
        int bytes = utf8_next(string + i, length - i, &code);

        if (bytes == 1 && code == REPLACEMENT)
            return false;
        i += (size_t)bytes;
    }
    return true;
}

size_t utf8_count(const char *string)
{
    size_t left = strlen(string);
    size_t count = 0;
    unsigned code;
    int bytes;

    for (; (bytes = utf8_next(string, left, &code)) > 0; count++) {
        string += bytes;
        left -= (size_t)bytes;
    }
    return count;
}

static char tail(unsigned code, int shift)
{
    return (char)(0x80u | (code >> shift & 0x3fu));
}

int utf8_put(unsigned code, char bytes[4])
{
    assert(code <= 0x10ffff && (code < 0xd800 || code > 0xdfff));
    if (code < 0x80) {
        bytes[0] = (char)code;
        return 1;
    }
    if (code < 0x800) {
        bytes[0] = (char)(0xc0u | code >> 6);
        bytes[1] = tail(code, 0);
        return 2;
    }
    if (code < 0x10000) {
        bytes[0] = (char)(0xe0u | code >> 12);
        bytes[1] = tail(code, 6);
        bytes[2] = tail(code, 0);
        return 3;
    }
    bytes[0] = (char)(0xf0u | code >> 18);
    bytes[1] = tail(code, 12);
    bytes[2] = tail(code, 6);
    bytes[3] = tail(code, 0);
    return 4;
}
