/*
 * Pages: lines, frames, circles and words at their places, in 1/320 mm from the top left corner of
 * the paper. SVG and PDF are made from the same pages.
 *
 * Words are set in a face whose letters are all as wide. So what a word takes is known before any
 * font is, and labels that lie apart here lie apart on every machine.
 */
#ifndef PAPER_PAGE_H
#define PAPER_PAGE_H

#include "base/list.h"
#include "base/quantity.h"
#include "base/text.h"

#include <stdint.h>

struct page_format {
    const char *name; /* as the option gives it */
    int64_t width, height;
};

/* Ends with an entry whose name is NULL; the first is ISO 216 A4, the second ANSI Letter. */
extern const struct page_format page_formats[];
const struct page_format *page_format_named(const char *name); /* NULL: unknown */

enum page_shape {
    PAGE_LINE,   /* from one corner to the other */
    PAGE_FRAME,  /* an outline */
    PAGE_PART,   /* an outline, white inside */
    PAGE_WASTE,  /* an area with slanting lines PAGE_WASTE_PITCH apart, without an outline */
    PAGE_CIRCLE, /* x0, y0 is its centre, x1 - x0 its radius */
    PAGE_WORDS   /* x0, y0 is the start of the line they stand on; upright: read from the right */
};
enum page_pen { PEN_FINE, PEN_PLAIN, PEN_BOLD, PEN_DASHED };

struct page_mark {
    enum page_shape shape;
    enum page_pen pen;
    int64_t x0, y0, x1, y1;
    int64_t size;      /* of words: height of the letters' body */
    bool upright;      /* turned a quarter to the left */
    const char *words; /* safe to show */
};

/* Of waste, from line to line along an edge; and of a dashed line, its dashes and the gaps between.
 */
#define PAGE_WASTE_PITCH (3 * LENGTH_MM)
#define PAGE_DASH (2 * LENGTH_MM)
#define PAGE_DASH_GAP (1 * LENGTH_MM)

int64_t page_pen_width(enum page_pen pen);

/* The box that a mark fills, x0 <= x1 and y0 <= y1; that of words by the width of the face. */
struct page_box {
    int64_t x0, y0, x1, y1;
};
struct page_box page_mark_box(const struct page_mark *mark);

struct page {
    const char *title;
    bool to_scale; /* a size can be taken off it: it carries bars to check the print with */
    LIST_OF(struct page_mark) marks;
};

/* All pages of one print. What is told on each of them stands here. */
struct pages {
    struct arena *arena; /* its escape must be armed */
    const struct page_format *format;
    const char *build, *number, *date;
    LIST_OF(struct page) list;
};

#define PAGE_MARGIN (15 * LENGTH_MM)
#define PAGE_HEAD \
    (9 * LENGTH_MM) /* heading and rule above, and the line below what the page holds */
#define PAGE_FOOT (9 * LENGTH_MM)

/* A new page, and its room between heading and foot. Pointers to earlier pages are stale after it.
 */
struct page *pages_add(struct pages *pages, const char *title);
struct page_box pages_room(const struct pages *pages);

/* Headings, feet ("page 2 of 7") and check bars, when all pages are there. */
void pages_finish(struct pages *pages);

void page_line(struct pages *pages, struct page *page, enum page_pen pen, struct page_box ends);
void page_frame(struct pages *pages, struct page *page, enum page_pen pen, struct page_box frame);
void page_part(struct pages *pages, struct page *page, struct page_box frame);
void page_waste(struct pages *pages, struct page *page, struct page_box area);
void page_circle(struct pages *pages, struct page *page, enum page_pen pen, int64_t x, int64_t y,
                 int64_t radius);

/* Where words stand beside the place that they are given: they begin at it, have their middle there
 * or end there. */
enum page_align { ALIGN_FROM, ALIGN_MIDDLE, ALIGN_TO };

/* Words with the base line through x, y. The page keeps a filtered copy. */
void page_words(struct pages *pages, struct page *page, enum page_align align, int64_t x, int64_t y,
                int64_t size, const char *words);
void page_words_bold(struct pages *pages, struct page *page, enum page_align align, int64_t x,
                     int64_t y, int64_t size, const char *words);
void page_words_upright(struct pages *pages, struct page *page, enum page_align align, int64_t x,
                        int64_t y, int64_t size, const char *words);

/* How wide words of a size are, and the size at which they fill a width at most. */
int64_t page_words_width(const char *words, int64_t size);
int64_t page_words_size(const char *words, int64_t width);

/* Appends a drawing of the pages in SVG 1.1, one below the other, in millimetres. */
void page_svg(struct text *out, const struct pages *pages);

#endif
