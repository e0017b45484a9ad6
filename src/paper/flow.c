#include "paper/flow.h"

#include "base/quantity.h"
#include "base/utf8.h"
#include "paper/lines.h"

#include <assert.h>
#include <string.h>

#define LEADING(size) ((size)*5 / 4)  /* from one line of running text to the next */
#define BELOW_PICTURE (3 * LENGTH_MM) /* white, */
#define ABOVE_PICTURE (2 * LENGTH_MM) /* and where words without a heading come before it */

/* How much further than its first line the lines that go on from it are set in; and how far they
 * are at most, so that words have room in them whatever stands before the first. */
#define SET_IN 4
#define SET_IN_MOST (SHEET_COLUMNS / 2)

struct flow flow_of_text(struct text *text, const struct plan *plan)
{
    return (struct flow){.text = text, .plan = plan, .priced = true};
}

struct flow flow_of_pages(struct pages *pages, const struct plan *plan, const char *title)
{
    struct page_box room = pages_room(pages);
    char line[SHEET_COLUMNS + 1];

    memset(line, 'm', SHEET_COLUMNS);
    line[SHEET_COLUMNS] = '\0';
    return (struct flow){.pages = pages,
                         .plan = plan,
                         .title = title,
                         .size = page_words_size(line, room.x1 - room.x0),
                         .y = room.y1,
                         .priced = true};
}

int64_t flow_page_height(const struct flow *flow)
{
    struct page_box room = pages_room(flow->pages);

    return room.y1 - room.y0;
}

static struct page *last_page(const struct flow *flow)
{
    return &flow->pages->list.at[flow->pages->list.count - 1];
}

/* The height that is left on the last page. */
static int64_t height_left(const struct flow *flow)
{
    return pages_room(flow->pages).y1 - flow->y;
}

void flow_break(struct flow *flow)
{
    if (flow->pages && !flow->fresh)
        flow->y = pages_room(flow->pages).y1;
    flow->holding = false;
}

/* Moves the headings at the end of the page before the last to the top of the last. */
static void carry_headings(struct flow *flow, int64_t before)
{
    struct pages *pages = flow->pages;
    struct page *from = &pages->list.at[pages->list.count - 2];

    for (size_t i = flow->held; i < from->marks.count; i++) {
        struct page_mark mark = from->marks.at[i];
        mark.y0 += flow->y - flow->held_y;
        mark.y1 += flow->y - flow->held_y;
        *LIST_ADD(pages->arena, &last_page(flow)->marks) = mark;
    }
    from->marks.count = flow->held;
    flow->y += before - flow->held_y;
    flow->held_y = pages_room(pages).y0;
    flow->held = 0;
    flow->fresh = false;
}

static void begin_page(struct flow *flow)
{
    int64_t before = flow->y;

    flow->holding = flow->holding && flow->held > 0; /* headings alone fill no page */
    pages_add(flow->pages, flow->title);
    flow->y = pages_room(flow->pages).y0;
    flow->fresh = true;
    flow->worded = false;
    if (flow->holding)
        carry_headings(flow, before);
}

/* ---- running text ---- */

/* Lines up to the next empty one. */
static int64_t paragraph_lines(const char *at)
{
    int64_t lines = 0;

    while (*at && *at != '\n') {
        at += strcspn(at, "\n");
        at += *at == '\n';
        lines++;
    }
    return lines;
}

struct line_manner {
    bool bold;
    bool kept; /* on one page with what comes after it */
};

static void add_line(struct flow *flow, const char *line, struct line_manner manner)
{
    struct page_box room = pages_room(flow->pages);

    if (manner.kept && !flow->holding) {
        flow->held = last_page(flow)->marks.count;
        flow->held_y = flow->y;
    }
    flow->holding = manner.kept;
    flow->y += LEADING(flow->size);
    (manner.bold ? page_words_bold : page_words)(flow->pages, last_page(flow), ALIGN_FROM, room.x0,
                                                 flow->y - flow->size / 5, flow->size, line);
    flow->fresh = false;
    flow->worded = true;
}

/* Whether a paragraph goes on a new page: it has no room, and would have some there. */
static bool breaks_before(const struct flow *flow, const char *at)
{
    int64_t need = paragraph_lines(at) * LEADING(flow->size);
    int64_t whole = flow_page_height(flow);

    return height_left(flow) < LEADING(flow->size) ||
           (need > height_left(flow) && need <= whole && 2 * height_left(flow) < whole);
}

/* Whether the next line that says something is set in deeper. */
static bool stands_over_next(const char *line)
{
    const char *next = line + strcspn(line, "\n");

    next += strspn(next, "\n");
    return *next && strspn(next, " ") > strspn(line, " ");
}

/* The bytes of a line that go on one line of paper, set in by `indent`: where it is longer those up
 * to the last blanks between its words. */
static size_t fitting_bytes(const char *line, size_t indent)
{
    size_t length = strcspn(line, "\n"), at = 0, blanks = 0, bytes;
    size_t columns = indent;
    unsigned code;

    assert(indent < SHEET_COLUMNS);
    for (; at < length && columns < SHEET_COLUMNS; at += bytes, columns++) {
        if (line[at] == ' ' && at > 0 && line[at - 1] != ' ')
            blanks = at;
        bytes = (size_t)utf8_next(line + at, length - at, &code);
    }
    if (at == length)
        return length;
    return blanks > 0 ? blanks : at;
}

/* How far the lines are set in on which a line goes on. */
static size_t set_in_of(const char *line)
{
    size_t set_in = strspn(line, " ") + SET_IN;

    return set_in < SET_IN_MOST ? set_in : SET_IN_MOST;
}

/* One line of text, on as many of paper as it takes; those that follow stay with the first. */
static void add_lines(struct flow *flow, const char *line, struct line_manner manner)
{
    size_t indent = 0, set_in = set_in_of(line);

    while (*line && *line != '\n') {
        size_t bytes = fitting_bytes(line, indent);
        const char *rest = line + bytes + strspn(line + bytes, " ");
        struct line_manner own = {manner.bold, manner.kept || (*rest && *rest != '\n')};

        if (indent > 0 && height_left(flow) < LEADING(flow->size))
            begin_page(flow);
        add_line(flow,
                 arena_format(flow->pages->arena, "%*s%.*s", (int)indent, "", (int)bytes, line),
                 own);
        line = rest;
        indent = set_in;
    }
}

/* The same lines as on pages: no wider than a sheet. */
static void add_text(struct text *text, const char *words)
{
    while (*words) {
        size_t indent = 0, set_in = set_in_of(words);

        do {
            size_t bytes = fitting_bytes(words, indent);
            text_format(text, "%*s%.*s\n", (int)indent, "", (int)bytes, words);
            words += bytes;
            words += strspn(words, " ");
            indent = set_in;
        } while (*words && *words != '\n');
        words += *words == '\n';
    }
}

static void add_words(struct flow *flow, const char *words, bool heading)
{
    bool begins = true; /* a paragraph */

    if (flow->text) {
        add_text(flow->text, words);
        return;
    }
    while (*words) {
        size_t length = strcspn(words, "\n");
        bool bold = begins && *words != ' ';
        if (length == 0) {
            flow->y += flow->fresh ? 0 : LEADING(flow->size) / 2;
        } else {
            if (begins ? breaks_before(flow, words) : height_left(flow) < LEADING(flow->size))
                begin_page(flow);
            add_lines(flow, words,
                      (struct line_manner){bold, heading || bold || stands_over_next(words)});
        }
        begins = length == 0;
        words += length + (words[length] == '\n');
    }
}

void flow_words(struct flow *flow, const char *words)
{
    add_words(flow, words, false);
}

void flow_heading(struct flow *flow, const char *words)
{
    add_words(flow, words, true);
}

/* ---- pictures ---- */

struct page *flow_room(struct flow *flow, int64_t height, struct page_box *ret_room)
{
    assert(flow->pages);
    struct page_box room = pages_room(flow->pages);
    int64_t most = flow_page_height(flow) - (flow->holding ? flow->y - flow->held_y : 0);

    height = height < most ? height : most;
    if (flow->worded && !flow->holding)
        flow->y += ABOVE_PICTURE;
    if (height_left(flow) < height)
        begin_page(flow);
    flow->holding = false;
    *ret_room = (struct page_box){room.x0, flow->y, room.x1, flow->y + height};
    flow->y += height + BELOW_PICTURE;
    flow->fresh = flow->worded = false;
    return last_page(flow);
}
