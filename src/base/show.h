/*
 * The one filter between people's text and a screen, a page or a pipe. C0 and C1 controls, DEL,
 * bidirectional overrides and isolates, zero-width characters, line and paragraph separators, tags,
 * non-characters and broken UTF-8 become U+FFFD; everything else stays.
 */
#ifndef BASE_SHOW_H
#define BASE_SHOW_H

#include "base/text.h"

#include <stdbool.h>

/* Whether a code point passes as it is. */
bool show_is_safe(unsigned code);

/* Appends the safe form of `string` (NULL: nothing); show_lines lets newlines stay. */
void show_text(struct text *out, const char *string);
void show_lines(struct text *out, const char *string);

/* The same into a buffer, cut at a character's edge; always ends with NUL. Returns buffer. */
char *show_into(char *buffer, size_t size, const char *string);

#endif
