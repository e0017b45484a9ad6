#include "base/text.h"

#include "base/memory.h"

#include <assert.h>
#include <ctype.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <wchar.h>

#define ROOM_LEAST ((size_t)64)
#define REPLACEMENT 0xfffdu

void text_init(struct text *text)
{
    *text = (struct text){0};
}

void text_release(struct text *text)
{
    if (!text)
        return;
    memory_release(text->at);
    text_init(text);
}

void text_clear(struct text *text)
{
    text->length = 0;
    text->failed = false;
    if (text->at)
        text->at[0] = '\0';
}

const char *text_string(const struct text *text)
{
    return text->at ? text->at : "";
}

/* Room for `count` more bytes and the ending NUL. After a failure nothing more is taken in: a text
 * with a hole in it is worse than a short one. */
static bool reserve(struct text *text, size_t count)
{
    size_t room = text->room ? text->room : ROOM_LEAST;
    char *at;

    assert(text->room == 0 || text->length < text->room);
    if (text->failed)
        return false;
    if (text->room > 0 && count < text->room - text->length)
        return true;
    if (count >= SIZE_MAX / 4 - text->length)
        goto out;
    while (room <= text->length + count)
        room *= 2;
    at = memory_resize(text->at, room);
    if (!at)
        goto out;
    text->at = at;
    text->room = room;
    return true;

out:
    text->failed = true;
    return false;
}

void text_add_bytes(struct text *text, const char *bytes, size_t count)
{
    if (count == 0 || !reserve(text, count))
        return;
    memcpy(text->at + text->length, bytes, count);
    text->length += count;
    text->at[text->length] = '\0';
}

void text_add(struct text *text, const char *string)
{
    text_add_bytes(text, string, strlen(string));
}

void text_add_char(struct text *text, char c)
{
    text_add_bytes(text, &c, 1);
}

void text_format(struct text *text, const char *format, ...)
{
    va_list arguments;

    va_start(arguments, format);
    text_format_list(text, format, arguments);
    va_end(arguments);
}

void text_format_list(struct text *text, const char *format, va_list arguments)
{
    va_list again;
    int length;

    va_copy(again, arguments);
    length = vsnprintf(NULL, 0, format, again);
    va_end(again);
    if (length < 0) {
        text->failed = true;
        return;
    }
    if (!reserve(text, (size_t)length))
        return;
    vsnprintf(text->at + text->length, (size_t)length + 1, format, arguments);
    text->length += (size_t)length;
}

void text_pad(struct text *text, int columns)
{
    const char *all = text_string(text);
    const char *newline = strrchr(all, '\n');
    int missing = columns - text_columns(newline ? newline + 1 : all);

    for (int i = 0; i < missing; i++)
        text_add_char(text, ' ');
}

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

static bool begins_with(const char *at, size_t length, const char *words)
{
    for (; *words; at++, words++, length--) {
        if (!length || tolower((unsigned char)*at) != tolower((unsigned char)*words))
            return false;
    }
    return true;
}

bool text_has_words(const char *at, size_t length, const char *words)
{
    for (; length > 0; at++, length--) {
        if (begins_with(at, length, words))
            return true;
    }
    return !*words;
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

/* wchar_t holds code points as they are on every system with __STDC_ISO_10646__ and 32 bits. */
_Static_assert(WCHAR_MAX >= 0x10ffff, "wcwidth takes any code point");

int text_columns(const char *string)
{
    size_t left = strlen(string);
    int columns = 0;
    unsigned code;
    int bytes;

    while ((bytes = utf8_next(string, left, &code)) > 0) {
        int width = wcwidth((wchar_t)code);

        columns += width < 0 ? 1 : width;
        string += bytes;
        left -= (size_t)bytes;
    }
    return columns;
}
