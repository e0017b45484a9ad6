/* Running text on a sheet, broken between words at the sheet's 80 columns. */
#ifndef PAPER_LINES_H
#define PAPER_LINES_H

#include "base/text.h"

#define SHEET_COLUMNS 80

/* Appends blanks; none where `count` is negative. */
void lines_add_blanks(struct text *out, int count);

/*
 * Appends "  heading   words ..." with the words from column `indent` on, and the lines that follow
 * set under them. Words longer than a line are not broken. The text is filtered for showing.
 */
void lines_add(struct text *out, const char *heading, int indent, const char *words);

/* The same on lines of another width, as beside a picture. */
void lines_add_within(struct text *out, const char *heading, int indent, const char *words,
                      int columns);

/* Words from the first column on, the lines that follow set in by `indent`. */
void lines_add_hanging(struct text *out, int indent, const char *words);

#endif
