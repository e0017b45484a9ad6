#include "paper/flow.h"

#include "base/quantity.h"
#include "paper/lines.h"

#include <assert.h>
#include <string.h>

/* The leading of running text, and white below a picture. */
#define LEADING(size) ((size)*5 / 4)
#define BELOW_PICTURE (3 * LENGTH_MM)

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

static int64_t left(const struct flow *flow)
{
    return pages_room(flow->pages).y1 - flow->y;
}

void flow_break(struct flow *flow)
{
    if (flow->pages && !flow->fresh)
        flow->y = pages_room(flow->pages).y1;
}

static void begin_page(struct flow *flow)
{
    pages_add(flow->pages, flow->title);
    flow->y = pages_room(flow->pages).y0;
    flow->fresh = true;
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

static void add_line(struct flow *flow, const char *line, bool heading)
{
    struct page_box room = pages_room(flow->pages);

    flow->y += LEADING(flow->size);
    (heading ? page_words_bold : page_words)(flow->pages, last_page(flow), ALIGN_FROM, room.x0,
                                             flow->y - flow->size / 5, flow->size, line);
    flow->fresh = false;
}

/* Whether what begins here goes on a new page: it has no room, and would have some there. A
 * heading alone stays with the lines behind it. */
static bool breaks_before(const struct flow *flow, const char *at)
{
    int64_t lines = paragraph_lines(at);
    int64_t need = (lines == 1 ? 4 : lines) * LEADING(flow->size);
    int64_t whole = flow_page_height(flow);

    return left(flow) < LEADING(flow->size) ||
           (need > left(flow) && need <= whole && 2 * left(flow) < whole);
}

/* The bytes of a line that go on one line of paper: up to a blank where it is longer. */
static size_t fitting_bytes(const char *line, size_t indent)
{
    size_t length = strcspn(line, "\n"), at = 0, blank = 0, bytes;
    size_t columns = indent;
    unsigned code;

    for (; at < length && columns < SHEET_COLUMNS; at += bytes, columns++) {
        if (line[at] == ' ')
            blank = at;
        bytes = (size_t)utf8_next(line + at, length - at, &code);
    }
    if (at == length)
        return length;
    return blank > strspn(line, " ") ? blank : at;
}

/* One line of text, on as many of paper as it takes; those that follow are set in. */
static void add_lines(struct flow *flow, const char *line, bool begins)
{
    size_t indent = 0, set_in = strspn(line, " ") + 4;
    bool heading = begins && *line != ' ';

    while (*line && *line != '\n') {
        size_t bytes = fitting_bytes(line, indent);

        if (indent > 0 && left(flow) < LEADING(flow->size))
            begin_page(flow);
        add_line(flow,
                 arena_format(flow->pages->arena, "%*s%.*s", (int)indent, "", (int)bytes, line),
                 heading);
        line += bytes;
        line += strspn(line, " ");
        indent = set_in;
    }
}

void flow_words(struct flow *flow, const char *words)
{
    bool begins = true; /* a paragraph */

    if (flow->text) {
        text_add(flow->text, words);
        return;
    }
    while (*words) {
        size_t length = strcspn(words, "\n");
        if (length == 0) {
            flow->y += flow->fresh ? 0 : LEADING(flow->size) / 2;
        } else {
            if (begins ? breaks_before(flow, words) : left(flow) < LEADING(flow->size))
                begin_page(flow);
            add_lines(flow, words, begins);
        }
        begins = length == 0;
        words += length + (words[length] == '\n');
    }
}

/* ---- pictures ---- */

struct page *flow_room(struct flow *flow, int64_t height, struct page_box *ret_room)
{
    assert(flow->pages);
    struct page_box room = pages_room(flow->pages);
    int64_t whole = flow_page_height(flow);

    height = height < whole ? height : whole;
    if (left(flow) < height)
        begin_page(flow);
    *ret_room = (struct page_box){room.x0, flow->y, room.x1, flow->y + height};
    flow->y += height + BELOW_PICTURE;
    flow->fresh = false;
    return last_page(flow);
}
