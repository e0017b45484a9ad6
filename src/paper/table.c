#include "paper/table.h"

#include "base/show.h"
#include "paper/lines.h"

#include <assert.h>
#include <stdarg.h>
#include <string.h>

#define GAP 2 /* blanks between columns */

void table_begin(struct table *table, const char *shape)
{
    size_t columns = strlen(shape);
    assert(columns > 0 && columns <= TABLE_COLUMNS);
    memset(table, 0, sizeof *table);
    text_init(&table->cells);
    table->columns = (int)columns;
    for (size_t i = 0; i < columns; i++)
        table->right[i] = shape[i] == 'r';
}

void table_cell(struct table *table, const char *format, ...)
{
    struct text raw;
    struct text safe;
    text_init(&raw);
    text_init(&safe);
    va_list arguments;
    va_start(arguments, format);
    text_format_list(&raw, format, arguments);
    va_end(arguments);
    show_text(&safe, text_string(&raw));
    const char *cell = text_string(&safe);
    int *width = &table->width[table->count++ % (size_t)table->columns];
    int wide = text_columns(cell);
    if (wide > *width)
        *width = wide;
    text_add_bytes(&table->cells, cell, strlen(cell) + 1);
    text_release(&raw);
    text_release(&safe);
}

void table_name(struct table *table, int bytes, const char *name)
{
    char shown[TABLE_NAME_MOST + 1];

    assert(bytes > 0 && bytes <= TABLE_NAME_MOST);
    table_cell(table, "%s", show_into(shown, (size_t)bytes + 1, name));
}

void table_heads(struct table *table, const char *const words[])
{
    assert(table->count % (size_t)table->columns == 0);
    for (int column = 0; column < table->columns; column++)
        table_cell(table, "%s", words[column]);
}

void table_count(struct table *table, int64_t count, const char *words)
{
    if (count)
        table_cell(table, "%lld %s", (long long)count, words);
    else
        table_cell(table, "%s", "");
}

static void add_row(const struct table *table, const char **at, struct text *out)
{
    int owed = GAP; /* blanks that are written only when something follows */
    for (int column = 0; column < table->columns; column++) {
        const char *cell = *at;
        int slack = table->width[column] - text_columns(cell);
        if (*cell) {
            lines_add_blanks(out, owed + (table->right[column] ? slack : 0));
            text_add(out, cell);
            owed = table->right[column] ? 0 : slack;
        } else {
            owed += slack;
        }
        owed += GAP;
        *at += strlen(cell) + 1;
    }
    text_add_char(out, '\n');
}

void table_end(struct table *table, struct text *out)
{
    assert(table->count % (size_t)table->columns == 0);
    const char *at = text_string(&table->cells);
    if (!text_failed(&table->cells)) {
        for (size_t i = 0; i < table->count; i += (size_t)table->columns)
            add_row(table, &at, out);
    }
    text_release(&table->cells);
}
