#include "tui/view.h"

#include "base/memory.h"
#include "base/show.h"
#include "base/text.h"
#include "base/utf8.h"

#include <string.h>
#include <wchar.h>

void view_init(struct view *view)
{
    memset(view, 0, sizeof *view);
}

void view_release(struct view *view)
{
    memory_release(view->cells);
    view->cells = NULL;
    view->room = 0;
}

void view_begin(struct view *view, int rows, int columns)
{
    view->rows = rows < 1 ? 1 : rows;
    view->columns = columns < 1 ? 1 : columns;
    size_t count = (size_t)view->rows * (size_t)view->columns;
    if (count > view->room) {
        struct view_cell *cells = memory_resize(view->cells, count * sizeof *cells);
        view->failed = !cells;
        if (!cells) {
            view->rows = view->columns = 0;
            return;
        }
        view->cells = cells;
        view->room = count;
    }
    for (size_t i = 0; i < count; i++)
        view->cells[i] = (struct view_cell){' ', VIEW_PLAIN};
    view->cursor_row = view->cursor_column = 0;
}

static bool inside(const struct view *view, int row, int column)
{
    return row >= 0 && row < view->rows && column >= 0 && column < view->columns;
}

void view_cell_put(struct view *view, int row, int column, unsigned code, int style)
{
    if (inside(view, row, column))
        view->cells[(size_t)row * (size_t)view->columns + (size_t)column] =
            (struct view_cell){code, (unsigned char)style};
}

/* Cells of a character; what combines with the one before takes none and is left out here. */
static int cells_of(unsigned code)
{
    int width = wcwidth((wchar_t)code);

    return width < 0 ? 1 : width;
}

int view_text(struct view *view, int row, int column, int width, int style, const char *text)
{
    struct text safe;
    text_init(&safe);
    show_text(&safe, text);
    const char *at = text_string(&safe);
    size_t left = strlen(at);
    int taken = 0;
    unsigned code;
    for (int bytes; (bytes = utf8_next(at, left, &code)) > 0; at += bytes, left -= (size_t)bytes) {
        int wide = cells_of(code);
        if (wide == 0)
            continue;
        if (taken + wide > width || column + taken + wide > view->columns)
            break;
        view_cell_put(view, row, column + taken, code, style);
        if (wide > 1)
            view_cell_put(view, row, column + taken + 1, 0, style);
        taken += wide;
    }
    text_release(&safe);
    return taken;
}

void view_format(struct view *view, int row, int column, int style, const char *format, ...)
{
    struct text text;
    va_list arguments;
    text_init(&text);
    va_start(arguments, format);
    text_format_list(&text, format, arguments);
    va_end(arguments);
    view_text(view, row, column, view->columns - column, style, text_string(&text));
    text_release(&text);
}

void view_row(struct view *view, int row, int column, int width, int style, const char *text)
{
    int taken = view_text(view, row, column, width, style, text);

    for (int i = taken; i < width; i++)
        view_cell_put(view, row, column + i, ' ', style);
}

void view_right(struct view *view, int row, int column, int width, int style, const char *text)
{
    int blank = width - text_columns(text);
    for (int i = 0; i < blank; i++)
        view_cell_put(view, row, column + i, ' ', style);
    blank = blank > 0 ? blank : 0;
    view_text(view, row, column + blank, width - blank, style, text);
}

size_t view_break(const char *text, int width, const char **ret_next)
{
    size_t left = strcspn(text, "\n");
    size_t at = 0;
    size_t blank = 0; /* where the last word ended */
    int taken = 0;
    unsigned code;

    while (at < left) {
        int bytes = utf8_next(text + at, left - at, &code);
        taken += cells_of(code);
        if (taken > width && at > 0)
            break;
        if (code == ' ' && at > 0 && text[at - 1] != ' ')
            blank = at;
        at += (size_t)bytes;
    }
    size_t end = at < left && blank > 0 ? blank : at;
    *ret_next = text + end;
    while (end < left && **ret_next == ' ')
        (*ret_next)++;
    return end;
}

int view_wrapped(struct view *view, int row, int column, int width, int rows, int style,
                 const char *text)
{
    int taken = 0;
    while (*text && taken < rows) {
        char line[1024];
        const char *next;
        size_t length = view_break(text, width, &next);
        if (length >= sizeof line)
            length = sizeof line - 1;
        memcpy(line, text, length);
        line[length] = '\0';
        view_text(view, row + taken++, column, width, style, line);
        text = *next == '\n' ? next + 1 : next;
    }
    return taken;
}

void view_level(struct view *view, int row, int column, int width)
{
    for (int i = 0; i < width; i++)
        view_cell_put(view, row, column + i, view->lines ? 0x2500 : '-', VIEW_FAINT);
}

void view_upright(struct view *view, int row, int column, int height)
{
    for (int i = 0; i < height; i++)
        view_cell_put(view, row + i, column, view->lines ? 0x2502 : '|', VIEW_FAINT);
}

void view_cursor(struct view *view, int row, int column)
{
    view->cursor_row = row < view->rows ? row : view->rows - 1;
    view->cursor_column = column < view->columns ? column : view->columns - 1;
}

const char *view_as_text(const struct view *view, struct arena *arena)
{
    struct text text;
    text_init(&text);
    for (int row = 0; row < view->rows; row++) {
        const struct view_cell *cells = &view->cells[(size_t)row * (size_t)view->columns];
        int end = view->columns;
        while (end > 0 && cells[end - 1].code == ' ')
            end--;
        for (int column = 0; column < end; column++) {
            char bytes[4];
            if (cells[column].code)
                text_add_bytes(&text, bytes, (size_t)utf8_put(cells[column].code, bytes));
        }
        text_add_char(&text, '\n');
    }
    const char *copy = arena_text(arena, text_string(&text));
    text_release(&text);
    return copy;
}
