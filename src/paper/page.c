#include "paper/page.h"

#include "base/quantity.h"
#include "base/show.h"

#include <assert.h>
#include <string.h>

/* ISO 216 and ANSI/ASME Y14.1. */
const struct page_format page_formats[] = {
    {"a4", 210 * LENGTH_MM, 297 * LENGTH_MM},
    {"letter", 17 * LENGTH_INCH / 2, 11 * LENGTH_INCH},
    {NULL, 0, 0},
};

const struct page_format *page_format_named(const char *name)
{
    for (const struct page_format *format = page_formats; format->name; format++) {
        if (strcmp(format->name, name) == 0)
            return format;
    }
    return NULL;
}

int64_t page_pen_width(enum page_pen pen)
{
    static const int64_t widths[] = {[PEN_FINE] = LENGTH_MM / 8,
                                     [PEN_PLAIN] = LENGTH_MM / 4,
                                     [PEN_BOLD] = LENGTH_MM / 2,
                                     [PEN_DASHED] = LENGTH_MM / 5};

    return widths[pen];
}

/* ---- words ---- */

/* Thousandths of its body that a letter is wide, as in the usual faces of one width (measured). */
#define LETTER_WIDTH 602

int64_t page_words_width(const char *words, int64_t size)
{
    return text_columns(words) * size * LETTER_WIDTH / 1000;
}

int64_t page_words_size(const char *words, int64_t width)
{
    int columns = text_columns(words);

    return columns > 0 ? width * 1000 / LETTER_WIDTH / columns : width;
}

/* How far letters reach above the line that they stand on, and below it. */
static int64_t rise(int64_t size)
{
    return size * 4 / 5;
}

static int64_t fall(int64_t size)
{
    return size / 5;
}

struct page_box page_mark_box(const struct page_mark *mark)
{
    int64_t radius = mark->x1 - mark->x0;
    int64_t width;

    switch (mark->shape) {
    case PAGE_CIRCLE:
        return (struct page_box){mark->x0 - radius, mark->y0 - radius, mark->x0 + radius,
                                 mark->y0 + radius};
    case PAGE_WORDS:
        width = page_words_width(mark->words, mark->size);
        if (mark->upright)
            return (struct page_box){mark->x0 - rise(mark->size), mark->y0 - width,
                                     mark->x0 + fall(mark->size), mark->y0};
        return (struct page_box){mark->x0, mark->y0 - rise(mark->size), mark->x0 + width,
                                 mark->y0 + fall(mark->size)};
    default:
        return (struct page_box){
            mark->x0 < mark->x1 ? mark->x0 : mark->x1, mark->y0 < mark->y1 ? mark->y0 : mark->y1,
            mark->x0 < mark->x1 ? mark->x1 : mark->x0, mark->y0 < mark->y1 ? mark->y1 : mark->y0};
    }
}

static void add_words(struct pages *pages, struct page *page, struct page_mark mark,
                      enum page_align align, const char *words)
{
    struct text safe;
    text_init(&safe);
    show_text(&safe, words);
    mark.words = arena_text(pages->arena, text_string(&safe));
    text_release(&safe);
    int64_t back = page_words_width(mark.words, mark.size) * (int64_t)align / 2;
    mark.x0 -= mark.upright ? 0 : back;
    mark.y0 += mark.upright ? back : 0;
    *LIST_ADD(pages->arena, &page->marks) = mark;
}

void page_words(struct pages *pages, struct page *page, enum page_align align, int64_t x, int64_t y,
                int64_t size, const char *words)
{
    const struct page_mark mark = {
        .shape = PAGE_WORDS, .pen = PEN_PLAIN, .x0 = x, .y0 = y, .size = size};

    add_words(pages, page, mark, align, words);
}

void page_words_bold(struct pages *pages, struct page *page, enum page_align align, int64_t x,
                     int64_t y, int64_t size, const char *words)
{
    const struct page_mark mark = {
        .shape = PAGE_WORDS, .pen = PEN_BOLD, .x0 = x, .y0 = y, .size = size};

    add_words(pages, page, mark, align, words);
}

void page_words_upright(struct pages *pages, struct page *page, enum page_align align, int64_t x,
                        int64_t y, int64_t size, const char *words)
{
    const struct page_mark mark = {
        .shape = PAGE_WORDS, .pen = PEN_PLAIN, .x0 = x, .y0 = y, .size = size, .upright = true};

    add_words(pages, page, mark, align, words);
}

/* ---- lines ---- */

static void add_mark(struct pages *pages, struct page *page, enum page_shape shape,
                     enum page_pen pen, struct page_box box)
{
    *LIST_ADD(pages->arena, &page->marks) = (struct page_mark){
        .shape = shape, .pen = pen, .x0 = box.x0, .y0 = box.y0, .x1 = box.x1, .y1 = box.y1};
}

void page_line(struct pages *pages, struct page *page, enum page_pen pen, struct page_box ends)
{
    add_mark(pages, page, PAGE_LINE, pen, ends);
}

void page_frame(struct pages *pages, struct page *page, enum page_pen pen, struct page_box frame)
{
    add_mark(pages, page, PAGE_FRAME, pen, frame);
}

void page_part(struct pages *pages, struct page *page, struct page_box frame)
{
    add_mark(pages, page, PAGE_PART, PEN_PLAIN, frame);
}

void page_waste(struct pages *pages, struct page *page, struct page_box area)
{
    if (area.x1 > area.x0 && area.y1 > area.y0)
        add_mark(pages, page, PAGE_WASTE, PEN_FINE, area);
}

void page_circle(struct pages *pages, struct page *page, enum page_pen pen, int64_t x, int64_t y,
                 int64_t radius)
{
    add_mark(pages, page, PAGE_CIRCLE, pen, (struct page_box){x, y, x + radius, y + radius});
}

/* ---- pages ---- */

struct page *pages_add(struct pages *pages, const char *title)
{
    struct page *page = LIST_ADD(pages->arena, &pages->list);

    page->title = title;
    return page;
}

struct page_box pages_room(const struct pages *pages)
{
    return (struct page_box){PAGE_MARGIN, PAGE_MARGIN + PAGE_HEAD,
                             pages->format->width - PAGE_MARGIN,
                             pages->format->height - PAGE_MARGIN - PAGE_FOOT};
}

#define TITLE_SIZE (5 * LENGTH_MM)
#define NAME_SIZE (4 * LENGTH_MM) /* of the build's name, which takes half the width at most */
#define FOOT_SIZE (3 * LENGTH_MM)

static void add_heading(struct pages *pages, struct page *page)
{
    int64_t right = pages->format->width - PAGE_MARGIN;
    int64_t y = PAGE_MARGIN + TITLE_SIZE;
    int64_t rule = y + 2 * LENGTH_MM;
    int64_t half = (right - PAGE_MARGIN) / 2 - 2 * LENGTH_MM;
    int64_t name_size = page_words_size(pages->build, half);

    page_words_bold(pages, page, ALIGN_FROM, PAGE_MARGIN, y, TITLE_SIZE, page->title);
    page_words(pages, page, ALIGN_TO, right, y, name_size < NAME_SIZE ? name_size : NAME_SIZE,
               pages->build);
    page_line(pages, page, PEN_PLAIN, (struct page_box){PAGE_MARGIN, rule, right, rule});
}

static void add_foot(struct pages *pages, struct page *page, size_t index)
{
    int64_t right = pages->format->width - PAGE_MARGIN;
    int64_t y = pages->format->height - PAGE_MARGIN;

    page_line(pages, page, PEN_FINE,
              (struct page_box){PAGE_MARGIN, y - 5 * LENGTH_MM, right, y - 5 * LENGTH_MM});
    page_words(pages, page, ALIGN_FROM, PAGE_MARGIN, y - LENGTH_MM, FOOT_SIZE,
               arena_format(pages->arena, "%s  plan %s", pages->date, pages->number));
    page_words(pages, page, ALIGN_TO, right, y - LENGTH_MM, FOOT_SIZE,
               arena_format(pages->arena, "page %zu of %zu", index + 1, pages->list.count));
}

/* A bar at the left margin with marks at every tenth of it, to hold a rule against. */
static void add_bar(struct pages *pages, struct page *page, int64_t y, int64_t length,
                    const char *words)
{
    int64_t x = PAGE_MARGIN;

    page_line(pages, page, PEN_PLAIN, (struct page_box){x, y, x + length, y});
    for (int i = 0; i <= 10; i++) {
        int64_t at = x + length * i / 10;
        int64_t high = (i == 0 || i == 10 ? 2 : 1) * LENGTH_MM;
        page_line(pages, page, PEN_FINE, (struct page_box){at, y - high, at, y});
    }
    page_words(pages, page, ALIGN_FROM, x + length + LENGTH_MM, y, 2 * LENGTH_MM, words);
}

static void add_bars(struct pages *pages, struct page *page)
{
    int64_t y = pages->format->height - PAGE_MARGIN + 4 * LENGTH_MM;

    add_bar(pages, page, y, 100 * LENGTH_MM, "100 mm: measure it, print at 100 %");
    add_bar(pages, page, y + 5 * LENGTH_MM, 4 * LENGTH_INCH, "4 in");
}

void pages_finish(struct pages *pages)
{
    for (size_t i = 0; i < pages->list.count; i++) {
        struct page *page = &pages->list.at[i];
        add_heading(pages, page);
        add_foot(pages, page, i);
        if (page->to_scale)
            add_bars(pages, page);
    }
}
