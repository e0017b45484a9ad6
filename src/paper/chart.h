/*
 * Pictures on pages: a part of the piece laid to scale into a room of the page, v upwards. Labels
 * are only put where no other stands; a picture is never the only place where a figure is told.
 */
#ifndef PAPER_CHART_H
#define PAPER_CHART_H

#include "draw/piece.h"
#include "paper/flow.h"
#include "paper/sheets.h"
#include "plan/hole.h"

struct chart {
    struct pages *pages;
    struct page *page;
    struct area shown;     /* in the piece */
    struct page_box drawn; /* where that lies on the page */
};

/* Lays an area into a room, as large as its shape allows, at the top and in the middle. */
struct chart chart_of(struct pages *pages, struct page *page, struct area shown,
                      struct page_box room);

/* The height that it takes in rooms of a width. */
int64_t chart_height(struct area shown, int64_t width);

int64_t chart_x(const struct chart *chart, int64_t u);
int64_t chart_y(const struct chart *chart, int64_t v);
struct page_box chart_box(const struct chart *chart, struct area area);

/* Words in the middle of an area, as large as they fit up to `most`, upright where it is narrow;
 * false, with nothing put, where they would not be legible or other words stand. */
bool chart_label(struct chart *chart, struct area area, int64_t most, const char *words);

/* Words at a place of the page, unless other words stand there or they leave the page's room. */
bool chart_words(struct chart *chart, enum page_align align, int64_t x, int64_t y, int64_t size,
                 const char *words);

/* The whole length below what is drawn and the width at its left, as dimension lines. */
void chart_dimensions(struct chart *chart, const char *length, const char *width);

/*
 * Moves places that are given in rising order apart until each is `gap` from the next, as near to
 * where they were as `low` to `high` allows; closer where there is no room. Sum of moves is not the
 * least, but order and ends are kept.
 */
void chart_spread(int64_t *places, size_t count, int64_t gap, int64_t low, int64_t high);

/* A blank's picture with its parts, what is lost and the numbers of the saw's cuts. */
void chart_blank(struct flow *flow, const struct cut_sheet *sheet, size_t blank);

/* The piece or a box of it from a corner, with words above; nothing where there is nothing. */
void chart_piece(struct flow *flow, const struct piece_ask *ask, const char *caption);

/* Where a hole is on the face of an end that is looked at. */
void chart_hole(const struct plan_point *point, const struct join_end *end, int64_t *ret_u,
                int64_t *ret_v);

/* The face of an end of a join: wood, bare patches, openings, and each of its holes with the
 * distances from the two edges of the hole map. */
void chart_end(struct flow *flow, const struct junction *junction, const struct join_end *end);

/* The drilling template of that end at full size, on as many pages as it takes. The join has a
 * hole. */
void chart_template(struct flow *flow, const struct junction *junction, const struct join_end *end);

#endif
