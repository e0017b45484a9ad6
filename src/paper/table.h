/*
 * Tables as text: columns as wide as their widest cell, numbers set to the right. Cells are
 * filtered for showing when they are added.
 */
#ifndef PAPER_TABLE_H
#define PAPER_TABLE_H

#include "base/text.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define TABLE_COLUMNS 10 /* at most */
#define TABLE_NAME_MOST 28

struct table {
    struct text cells; /* each with its NUL, row after row */
    size_t count;      /* of cells */
    int columns;
    bool right[TABLE_COLUMNS];
    int width[TABLE_COLUMNS];
};

/* `shape` has one letter a column: 'l' set to the left, 'r' to the right. */
void table_begin(struct table *table, const char *shape);

/* Adds the next cell; a row is full after as many as there are columns. */
void table_cell(struct table *table, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* The next cell: a name, of which no more than `bytes` (TABLE_NAME_MOST at most) are shown, cut at
 * a character's edge. */
void table_name(struct table *table, int bytes, const char *name);

/* Adds a row of headings: `words` has one for each column. */
void table_heads(struct table *table, const char *const words[]);

/* The next cell: "12 to hold", or empty for a count of 0. */
void table_count(struct table *table, int64_t count, const char *words);

/* Appends all rows, each after two blanks and without blanks at its end, and releases the table. */
void table_end(struct table *table, struct text *out);

#endif
