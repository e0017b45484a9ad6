/*
 * Rows of cells. Reading goes through the bytes once; `at` never falls behind, so hostile files
 * cost no more than others. What is read was found to be UTF-8 without NUL at the beginning.
 */
#include "exchange/csv.h"

#include "base/utf8.h"

#include <assert.h>
#include <string.h>

#define CSV_MOST ((size_t)16 << 20)
#define CSV_CELLS_MOST 100
#define BYTE_ORDER_MARK "\xef\xbb\xbf"

/* ---- beginning ---- */

/* Counts on from the last place that was asked for, which stands before this one. */
static int column_of(struct csv *csv, size_t at)
{
    assert(csv->counted <= at);
    for (; csv->counted < at; csv->counted++)
        csv->column += ((unsigned char)csv->bytes[csv->counted] & 0xc0) != 0x80;
    return csv->column;
}

static enum fault fault_in(struct csv *csv, struct fault_note *note, size_t at, const char *why)
{
    enum fault fault = fault_say_column(note, FAULT_SYNTAX, column_of(csv, at), "%s", why);

    if (note)
        note->line = csv->line;
    return fault;
}

static void go_to_line(struct csv *csv, size_t at)
{
    csv->line++;
    csv->counted = at;
    csv->column = 1;
}

static enum fault check_bytes(const struct csv *start, struct fault_note *note)
{
    struct csv csv = *start;
    unsigned code;

    for (size_t at = csv.at; at < csv.length;) {
        int bytes = utf8_next(csv.bytes + at, csv.length - at, &code);

        if (code == 0)
            return fault_in(&csv, note, at, "there is a zero byte: is it a table in UTF-8?");
        if (!utf8_valid(csv.bytes + at, (size_t)bytes))
            return fault_in(&csv, note, at, "this is not UTF-8: save the table as UTF-8");
        at += (size_t)bytes;
        if (code == '\n')
            go_to_line(&csv, at);
    }
    return FAULT_NONE;
}

static size_t separators(const struct csv *csv, char separator)
{
    size_t count = 0;
    bool quoted = false;

    for (size_t i = csv->at; i < csv->length && (quoted || !strchr("\r\n", csv->bytes[i])); i++) {
        quoted ^= csv->bytes[i] == '"';
        count += !quoted && csv->bytes[i] == separator;
    }
    return count;
}

enum fault csv_begin(struct csv *csv, const char *bytes, size_t length, struct fault_note *note)
{
    static const char candidates[] = ",;\t";
    size_t most = 0;
    enum fault fault;

    *csv = (struct csv){.bytes = bytes, .length = length, .line = 1, .column = 1, .separator = ','};
    if (length > CSV_MOST)
        return fault_say(note, FAULT_REFUSED, "the table is larger than 16 MiB");
    if (length >= strlen(BYTE_ORDER_MARK) &&
        memcmp(bytes, BYTE_ORDER_MARK, strlen(BYTE_ORDER_MARK)) == 0)
        csv->at = csv->counted = strlen(BYTE_ORDER_MARK);
    fault = check_bytes(csv, note);
    for (const char *each = candidates; *each && !fault; each++) {
        size_t count = separators(csv, *each);

        if (count > most) {
            most = count;
            csv->separator = *each;
        }
    }
    return fault;
}

/* ---- reading ---- */

static bool is_end(const struct csv *csv)
{
    return csv->at >= csv->length;
}

static bool is_line_end(const struct csv *csv)
{
    return is_end(csv) || csv->bytes[csv->at] == '\n' || csv->bytes[csv->at] == '\r';
}

static bool is_cell_end(const struct csv *csv)
{
    return is_line_end(csv) || csv->bytes[csv->at] == csv->separator;
}

/* Steps over CR LF, LF or CR. */
static void take_line_end(struct csv *csv)
{
    if (!is_end(csv) && csv->bytes[csv->at] == '\r')
        csv->at++;
    if (!is_end(csv) && csv->bytes[csv->at] == '\n')
        csv->at++;
    go_to_line(csv, csv->at);
}

/* Lines without a cell. */
static void skip_empty(struct csv *csv)
{
    while (!is_end(csv) && is_line_end(csv))
        take_line_end(csv);
}

static const char *keep(struct arena *arena, const char *at, size_t length)
{
    char *copy = arena_alloc(arena, length + 1);

    memcpy(copy, at, length);
    return copy;
}

static enum fault read_plain(struct csv *csv, struct arena *arena, const char **ret_text,
                             struct fault_note *note)
{
    size_t begin = csv->at;

    for (; !is_cell_end(csv); csv->at++)
        if (csv->bytes[csv->at] == '"')
            return fault_in(csv, note, csv->at,
                            "a quote stands inside a cell: put the whole cell in quotes, and the "
                            "quote twice");
    *ret_text = keep(arena, csv->bytes + begin, csv->at - begin);
    return FAULT_NONE;
}

/* A quote that is written twice stands for one. */
static bool at_closing_quote(struct csv *csv)
{
    if (csv->bytes[csv->at] != '"')
        return false;
    if (csv->at + 1 >= csv->length || csv->bytes[csv->at + 1] != '"')
        return true;
    csv->at++;
    return false;
}

static enum fault read_quoted(struct csv *csv, struct arena *arena, const char **ret_text,
                              struct fault_note *note)
{
    struct csv opened = *csv;
    char *text;
    size_t used = 0;
    size_t end = csv->at + 1;

    while (end < csv->length &&
           (csv->bytes[end] != '"' || (end + 1 < csv->length && csv->bytes[end + 1] == '"')))
        end += csv->bytes[end] == '"' ? 2 : 1;
    assert(csv->bytes[csv->at] == '"' && end > csv->at);
    text = arena_alloc(arena, end - csv->at + 1);
    for (csv->at++; !is_end(csv) && !at_closing_quote(csv); csv->at++) {
        text[used++] = csv->bytes[csv->at];
        if (csv->bytes[csv->at] == '\n')
            go_to_line(csv, csv->at + 1);
    }
    assert(used < end - opened.at + 1);
    if (is_end(csv))
        return fault_in(&opened, note, opened.at, "this quote is never closed");
    csv->at++;
    if (!is_cell_end(csv))
        return fault_in(csv, note, csv->at, "there is text after the closing quote");
    *ret_text = text;
    return FAULT_NONE;
}

static enum fault read_cell(struct csv *csv, struct arena *arena, struct csv_row *row,
                            struct fault_note *note)
{
    struct csv_cell cell = {.line = csv->line, .column = column_of(csv, csv->at)};
    bool quoted = !is_end(csv) && csv->bytes[csv->at] == '"';
    enum fault fault;

    if (row->cells.count == CSV_CELLS_MOST)
        return fault_in(csv, note, csv->at, "there are more cells in this line than any table has");
    fault = quoted ? read_quoted(csv, arena, &cell.text, note)
                   : read_plain(csv, arena, &cell.text, note);
    if (!fault)
        *LIST_ADD(arena, &row->cells) = cell;
    return fault;
}

bool csv_next(struct csv *csv, struct arena *arena, struct csv_row *ret_row, enum fault *ret_fault,
              struct fault_note *note)
{
    struct csv_row row = {.line = 0};
    enum fault fault;

    skip_empty(csv);
    if (is_end(csv))
        return false;
    row.line = csv->line;
    fault = read_cell(csv, arena, &row, note);
    while (!fault && !is_line_end(csv)) {
        assert(csv->bytes[csv->at] == csv->separator);
        csv->at++;
        fault = read_cell(csv, arena, &row, note);
    }
    while (fault && !is_line_end(csv))
        csv->at++;
    if (!is_end(csv))
        take_line_end(csv);
    if (fault)
        row.cells.count = 0;
    *ret_row = row;
    *ret_fault = fault;
    return true;
}

/* ---- formulas ---- */

/* What makes a cell a formula where it stands in front. */
static bool is_formula(const char *text)
{
    text += strspn(text, "'");
    return *text && strchr("=+-@\t\r\n", *text);
}

const char *csv_unguarded(const char *text)
{
    return *text == '\'' && is_formula(text) ? text + 1 : text;
}

/* ---- out ---- */

const struct csv_style csv_plain = {.separator = ','};
const struct csv_style csv_semicolons = {.separator = ';', .decimal_comma = true, .mark = true};

void csv_put_start(struct text *out, const struct csv_style *style)
{
    if (style->mark)
        text_add(out, BYTE_ORDER_MARK);
}

static bool needs_quotes(const struct csv_style *style, const char *text)
{
    size_t length = strlen(text);

    return strpbrk(text, "\"\r\n") || strchr(text, style->separator) || text[0] == ' ' ||
           (length > 0 && text[length - 1] == ' ');
}

void csv_put_cell(struct text *out, const struct csv_style *style, bool first, const char *text)
{
    bool quotes = needs_quotes(style, text);

    if (!first)
        text_add_char(out, style->separator);
    if (quotes)
        text_add_char(out, '"');
    for (const char *at = text; *at; at++) {
        if (*at == '"')
            text_add_char(out, '"');
        text_add_char(out, *at);
    }
    if (quotes)
        text_add_char(out, '"');
}

void csv_put_text(struct text *out, const struct csv_style *style, bool first, const char *text)
{
    struct text guarded;

    text_init(&guarded);
    if (is_formula(text))
        text_add_char(&guarded, '\'');
    text_add(&guarded, text);
    csv_put_cell(out, style, first, text_string(&guarded));
    out->failed = out->failed || text_failed(&guarded);
    text_release(&guarded);
}

void csv_put_number(struct text *out, const struct csv_style *style, bool first, const char *number)
{
    const char *point = style->decimal_comma ? strchr(number, '.') : NULL;
    struct text written;

    text_init(&written);
    text_add_bytes(&written, number, point ? (size_t)(point - number) : strlen(number));
    if (point)
        text_format(&written, ",%s", point + 1);
    csv_put_cell(out, style, first, text_string(&written));
    out->failed = out->failed || text_failed(&written);
    text_release(&written);
}

void csv_put_end(struct text *out)
{
    text_add(out, "\r\n");
}
