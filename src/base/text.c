#include "base/text.h"

#include "base/memory.h"
#include "base/utf8.h"

#include <assert.h>
#include <ctype.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <wchar.h>

#define ROOM_LEAST ((size_t)64)

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

void text_blank(char *word)
{
    for (; *word; word++) {
        if (*word == '_')
            *word = ' ';
    }
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
