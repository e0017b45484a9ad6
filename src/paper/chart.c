#include "paper/chart.h"

#include "base/quantity.h"
#include "plan/geometry.h"

#define LEGIBLE (9 * LENGTH_MM / 5) /* smallest letters, about 5 points */

/* Dimension lines: heads of arrows, letters, how far off the picture they stand. */
#define ARROW (2 * LENGTH_MM)
#define DIMENSION_SIZE (7 * LENGTH_MM / 2)
#define DIMENSION_BELOW (5 * LENGTH_MM)
#define DIMENSION_BESIDE (3 * LENGTH_MM)

/* ---- scale ---- */

int64_t chart_height(struct area shown, int64_t width)
{
    return area_width(&shown) > 0 ? width * area_height(&shown) / area_width(&shown) : 0;
}

struct chart chart_of(struct pages *pages, struct page *page, struct area shown,
                      struct page_box room)
{
    int64_t width = room.x1 - room.x0;
    int64_t height = room.y1 - room.y0;

    if (chart_height(shown, width) > height)
        width = height * area_width(&shown) / area_height(&shown);
    else
        height = chart_height(shown, width);
    int64_t left = (room.x0 + room.x1 - width) / 2;
    return (struct chart){pages, page, shown, {left, room.y0, left + width, room.y0 + height}};
}

int64_t chart_x(const struct chart *chart, int64_t u)
{
    int64_t width = area_width(&chart->shown);

    return chart->drawn.x0 +
           (width > 0 ? (u - chart->shown.u0) * (chart->drawn.x1 - chart->drawn.x0) / width : 0);
}

int64_t chart_y(const struct chart *chart, int64_t v)
{
    int64_t height = area_height(&chart->shown);

    return chart->drawn.y1 -
           (height > 0 ? (v - chart->shown.v0) * (chart->drawn.y1 - chart->drawn.y0) / height : 0);
}

struct page_box chart_box(const struct chart *chart, struct area area)
{
    return (struct page_box){chart_x(chart, area.u0), chart_y(chart, area.v1),
                             chart_x(chart, area.u1), chart_y(chart, area.v0)};
}

/* ---- labels ---- */

static bool boxes_meet(const struct page_box *a, const struct page_box *b)
{
    return a->x0 < b->x1 && b->x0 < a->x1 && a->y0 < b->y1 && b->y0 < a->y1;
}

static bool box_within(const struct page_box *inner, const struct page_box *outer)
{
    return inner->x0 >= outer->x0 && inner->x1 <= outer->x1 && inner->y0 >= outer->y0 &&
           inner->y1 <= outer->y1;
}

/* Whether no words stand where these would, and they stay within the page's room. */
static bool is_free(const struct chart *chart, const struct page_mark *words)
{
    struct page_box box = page_mark_box(words);
    struct page_box room = pages_room(chart->pages);

    if (!box_within(&box, &room))
        return false;
    for (size_t i = 0; i < chart->page->marks.count; i++) {
        const struct page_mark *mark = &chart->page->marks.at[i];
        struct page_box other = page_mark_box(mark);
        if (mark->shape == PAGE_WORDS && boxes_meet(&box, &other))
            return false;
    }
    return true;
}

bool chart_words(struct chart *chart, enum page_align align, int64_t x, int64_t y, int64_t size,
                 const char *words)
{
    int64_t back = page_words_width(words, size) * (int64_t)align / 2;
    const struct page_mark mark = {
        .shape = PAGE_WORDS, .x0 = x - back, .y0 = y, .size = size, .words = words};

    if (!is_free(chart, &mark))
        return false;
    page_words(chart->pages, chart->page, align, x, y, size, words);
    return true;
}

/* Puts words upright with their middle at x, y. */
static bool put_upright(struct chart *chart, int64_t x, int64_t y, int64_t size, const char *words)
{
    int64_t back = page_words_width(words, size) / 2;
    const struct page_mark mark = {.shape = PAGE_WORDS,
                                   .x0 = x + size / 3,
                                   .y0 = y + back,
                                   .size = size,
                                   .upright = true,
                                   .words = words};

    if (!is_free(chart, &mark))
        return false;
    page_words_upright(chart->pages, chart->page, ALIGN_MIDDLE, x + size / 3, y, size, words);
    return true;
}

/* The size at which words fit into a width and height with some white round them. */
static int64_t fitting_size(const char *words, int64_t width, int64_t height, int64_t most)
{
    int64_t size = page_words_size(words, width * 9 / 10);

    size = length_smaller(size, height * 4 / 5);
    return length_smaller(size, most);
}

bool chart_label(struct chart *chart, struct area area, int64_t most, const char *words)
{
    struct page_box box = chart_box(chart, area);
    int64_t width = box.x1 - box.x0, height = box.y1 - box.y0;
    int64_t level = fitting_size(words, width, height, most);
    int64_t upright = fitting_size(words, height, width, most);
    int64_t x = (box.x0 + box.x1) / 2, y = (box.y0 + box.y1) / 2;

    if (level >= LEGIBLE && level >= upright)
        return chart_words(chart, ALIGN_MIDDLE, x, y + level / 3, level, words);
    return upright >= LEGIBLE && put_upright(chart, x, y, upright, words);
}

/* ---- dimension lines ---- */

/* The head of an arrow at x, y; the line that it ends goes on from there along_x or along_y (one of
 * them 1 or -1, the other 0). */
static void add_arrow(struct chart *chart, int64_t x, int64_t y, int64_t along_x, int64_t along_y)
{
    for (int turn = -1; turn <= 1; turn += 2)
        page_line(chart->pages, chart->page, PEN_PLAIN,
                  (struct page_box){x, y, x + ARROW * along_x + turn * ARROW / 4 * along_y,
                                    y + ARROW * along_y + turn * ARROW / 4 * along_x});
}

void chart_dimensions(struct chart *chart, const char *length, const char *width)
{
    const struct page_box *drawn = &chart->drawn;
    int64_t size = DIMENSION_SIZE;
    int64_t y = drawn->y1 + DIMENSION_BELOW, x = drawn->x0 - DIMENSION_BESIDE;

    page_line(chart->pages, chart->page, PEN_FINE, (struct page_box){drawn->x0, y, drawn->x1, y});
    add_arrow(chart, drawn->x0, y, 1, 0);
    add_arrow(chart, drawn->x1, y, -1, 0);
    chart_words(chart, ALIGN_MIDDLE, (drawn->x0 + drawn->x1) / 2, y + size, size, length);
    if (!*width)
        return;
    page_line(chart->pages, chart->page, PEN_FINE, (struct page_box){x, drawn->y0, x, drawn->y1});
    add_arrow(chart, x, drawn->y0, 0, 1);
    add_arrow(chart, x, drawn->y1, 0, -1);
    put_upright(chart, x - size / 2 - LENGTH_MM / 2, (drawn->y0 + drawn->y1) / 2, size, width);
}

int64_t chart_spread(int64_t *places, size_t count, int64_t gap, int64_t low, int64_t high)
{
    if (count > 1)
        gap = length_smaller(gap, (high - low) / (int64_t)(count - 1));
    for (size_t i = 0; i < count; i++)
        places[i] = length_larger(places[i], i ? places[i - 1] + gap : low);
    for (size_t i = count; i-- > 0;)
        places[i] = length_smaller(places[i], i + 1 < count ? places[i + 1] - gap : high);
    return gap;
}
