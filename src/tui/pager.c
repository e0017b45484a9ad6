#include "tui/pager.h"

#include "base/text.h"

#include <string.h>

/* One row of a sheet: a line, or what of it was broken off to the next row. */
struct row {
    const char *at;
    size_t length;
    int indent; /* of what is continued */
    bool heading;
};

/* The row at `*at`, which moves on; `*within` tells that it goes on with a line. */
static struct row next_row(const char **at, int columns, bool *within)
{
    struct row row = {*at, 0, *within ? 4 : 0, !*within && **at && **at != ' '};
    const char *next;
    row.length = view_break(*at, columns - row.indent, &next);
    *within = *next && *next != '\n';
    *at = *within ? next : *next ? next + 1 : next;
    return row;
}

static int count_rows(const char *text, int columns)
{
    bool within = false;
    int rows = 0;
    while (*text) {
        next_row(&text, columns, &within);
        rows++;
    }
    return rows;
}

static void paint_row(struct view *view, int at, const struct row *row, bool marked)
{
    int style = marked ? VIEW_CHOSEN : row->heading ? VIEW_STRONG : VIEW_PLAIN;
    char line[1024];
    size_t length = row->length < sizeof line ? row->length : sizeof line - 1;
    memcpy(line, row->at, length);
    line[length] = '\0';
    view_text(view, at, row->indent, view->columns - row->indent, style, line);
}

void pager_paint(struct pager *pager, struct view *view, int top, int height, const char *text)
{
    bool within = false;
    pager->lines = count_rows(text, view->columns);
    pager->height = height;
    if (pager->top > pager->lines - height)
        pager->top = pager->lines - height;
    if (pager->top < 0)
        pager->top = 0;
    for (int i = 0; *text && i < pager->top + height; i++) {
        struct row row = next_row(&text, view->columns, &within);
        if (i >= pager->top)
            paint_row(view, top + i - pager->top, &row, i + 1 == pager->found);
    }
    int marked = pager->found - 1 - pager->top;
    view_cursor(view, marked >= 0 && marked < height ? top + marked : top, 0);
}

int pager_find(const char *text, int columns, const char *words, int from, int step)
{
    bool within = false;
    int first = -1;
    int last = -1;
    int best = -1; /* on the right side of `from` */
    for (int row = 0; *text; row++) {
        bool begins = !within;
        if (begins && text_has_words(text, strcspn(text, "\n"), words)) {
            first = first < 0 ? row : first;
            last = row;
            if (step < 0 ? row < from : best < 0 && row >= from)
                best = row;
        }
        next_row(&text, columns, &within);
    }
    return best >= 0 ? best : step < 0 ? last : first;
}

void pager_mark(struct pager *pager, int row)
{
    pager->found = row + 1;
    if (row < pager->top || row >= pager->top + pager->height)
        pager->top = row - pager->height / 3;
}

bool pager_act(struct pager *pager, enum action action)
{
    int page = pager->height > 1 ? pager->height - 1 : 1;

    pager->found = 0;
    switch (action) {
    case ACTION_UP:
        pager->top--;
        return true;
    case ACTION_DOWN:
        pager->top++;
        return true;
    case ACTION_LEAF_UP:
        pager->top -= page;
        return true;
    case ACTION_LEAF_DOWN:
        pager->top += page;
        return true;
    case ACTION_FIRST:
        pager->top = 0;
        return true;
    case ACTION_LAST:
        pager->top = pager->lines;
        return true;
    default:
        return false;
    }
}
