/*
 * Rows of text as RFC 4180 has them, out and in: cells between commas, quotes where a cell holds a
 * comma, a quote or the end of a line. In goes as well what spreadsheets make of it: semicolons or
 * tabs between cells, a byte order mark, lines that end with LF alone. To this file a cell is only
 * text.
 */
#ifndef EXCHANGE_CSV_H
#define EXCHANGE_CSV_H

#include "base/arena.h"
#include "base/fault.h"
#include "base/list.h"
#include "base/text.h"

#include <stdbool.h>
#include <stddef.h>

/* ---- in ---- */

struct csv_cell {
    const char *text;
    int line, column; /* where it begins, in characters from 1 */
};

struct csv_row {
    int line;
    LIST_OF(struct csv_cell) cells;
};

struct csv {
    const char *bytes; /* not owned */
    size_t length, at;
    int line, column; /* of the byte at `counted` */
    size_t counted;
    char separator;
};

/*
 * Begins with bytes that stay the caller's. The separator is the one of comma, semicolon and tab
 * that stands most often in the first line, outside quotes; of equals the first of these. Faults:
 * SYNTAX for what is not UTF-8 or holds a NUL, with line and column; REFUSED over 16 MiB.
 */
enum fault csv_begin(struct csv *csv, const char *bytes, size_t length, struct fault_note *note);

/*
 * The next row that is not empty, in the arena (escape armed); false at the end. A row that cannot
 * be read (a quote inside a cell without quotes, text after a closing quote, a quote that is never
 * closed) has a fault, its line and no cells, and the rows after it can be read.
 */
bool csv_next(struct csv *csv, struct arena *arena, struct csv_row *ret_row, enum fault *ret_fault,
              struct fault_note *note);

/*
 * Text as it stood before csv_put_text guarded it: one of the apostrophes in front goes, where
 * formula letters follow them.
 */
const char *csv_unguarded(const char *text);

/* ---- out ---- */

struct csv_style {
    char separator;
    bool decimal_comma;
    bool mark; /* a byte order mark in front */
};

/* Commas and decimal points, as RFC 4180; and what spreadsheets of half of the world open. */
extern const struct csv_style csv_plain, csv_semicolons;

void csv_put_start(struct text *out, const struct csv_style *style);

/* A cell; `first` of its row or behind another one. */
void csv_put_cell(struct text *out, const struct csv_style *style, bool first, const char *text);

/*
 * The same for what people wrote: text that a spreadsheet would take for a formula (it begins with
 * = + - @, a tab or the end of a line, be it behind apostrophes) gets an apostrophe in front.
 */
void csv_put_text(struct text *out, const struct csv_style *style, bool first, const char *text);

/* A number, whose decimal point becomes the style's. */
void csv_put_number(struct text *out, const struct csv_style *style, bool first,
                    const char *number);

void csv_put_end(struct text *out); /* of a row */

#endif
