#include "tui/pager.h"

#include <string.h>

static const char *next_line(const char *at)
{
    const char *end = strchr(at, '\n');
    return end ? end + 1 : at + strlen(at);
}

static int count_lines(const char *text)
{
    int lines = 0;
    for (; *text; text = next_line(text))
        lines++;
    return lines;
}

static void paint_line(struct view *view, int row, const char *at)
{
    char line[512];
    size_t length = strcspn(at, "\n");
    if (length >= sizeof line)
        length = sizeof line - 1;
    memcpy(line, at, length);
    line[length] = '\0';
    bool heading = line[0] && line[0] != ' ';
    view_text(view, row, 0, view->columns, heading ? VIEW_STRONG : VIEW_PLAIN, line);
}

void pager_paint(struct pager *pager, struct view *view, int top, int height, const char *text)
{
    pager->lines = count_lines(text);
    pager->height = height;
    if (pager->top > pager->lines - height)
        pager->top = pager->lines - height;
    if (pager->top < 0)
        pager->top = 0;
    for (int i = 0; i < pager->top; i++)
        text = next_line(text);
    for (int row = 0; row < height && *text; row++, text = next_line(text))
        paint_line(view, top + row, text);
    view_cursor(view, top, 0);
}

bool pager_act(struct pager *pager, enum action action)
{
    int page = pager->height > 1 ? pager->height - 1 : 1;

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
