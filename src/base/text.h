/*
 * A text that grows. A failed allocation is remembered and shows at the end, so that a caller
 * checks once: text_failed(). The content is always a valid C string.
 */
#ifndef BASE_TEXT_H
#define BASE_TEXT_H

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>

struct text {
    char *at; /* NULL while empty: use text_string() */
    size_t length;
    size_t room;
    bool failed;
};

void text_init(struct text *text);
void text_release(struct text *text);
void text_clear(struct text *text);

/* The content, never NULL; it stays the text's. */
const char *text_string(const struct text *text);
static inline bool text_failed(const struct text *text)
{
    return text->failed;
}

void text_add(struct text *text, const char *string);
void text_add_bytes(struct text *text, const char *bytes, size_t count);
void text_add_char(struct text *text, char c);
void text_format(struct text *text, const char *format, ...) __attribute__((format(printf, 2, 3)));
void text_format_list(struct text *text, const char *format, va_list arguments)
    __attribute__((format(printf, 2, 0)));

/* Appends blanks until the last line is `columns` cells wide (as text_columns measures); nothing
 * when it is. */
void text_pad(struct text *text, int columns);

/* Puts blanks for underscores: a stored word ("outline_point") as people read it. */
void text_blank(char *word);

/* Whether `words` stand somewhere in `length` bytes; plain letters are the same in either case. No
 * words stand everywhere. */
bool text_has_words(const char *at, size_t length, const char *words);

/* Cells that a string takes on a terminal (wcwidth; what has no width counts 1 as U+FFFD does).
 * Needs LC_CTYPE set. */
int text_columns(const char *string);

#endif
