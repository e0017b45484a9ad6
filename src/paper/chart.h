/*
 * Pictures on pages: a part of the piece laid to scale into a room of the page, v upwards. A label
 * that would cover another, or leave the page, is left out. So a picture is never the only place
 * where a figure is told.
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
    struct area shown;     /* of a face, a blank or a view, in lengths */
    struct page_box drawn; /* where that lies on the page */
};

/* Lays an area into a room, as large as its shape allows, at the top and in the middle from left to
 * right. */
struct chart chart_of(struct pages *pages, struct page *page, struct area shown,
                      struct page_box room);

/* The height that an area takes in a room of a width. */
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
 * Moves places that are given in rising order apart until each is `gap` from the next, between
 * `low` and `high`; closer where there is no room for that. Order and ends are kept; the
 * sum of all moves may not be the least. Returns the gap that there was room for.
 */
int64_t chart_spread(int64_t *places, size_t count, int64_t gap, int64_t low, int64_t high);

/* A blank's picture with its parts, what is lost and the numbers of the saw's cuts. */
void chart_blank(struct flow *flow, const struct cut_sheet *sheet, size_t blank);

/* The piece or a box of it from a corner, with words above; nothing where there is nothing. */
void chart_piece(struct flow *flow, const struct piece_ask *ask, const char *caption);

/* A hole of a join, by its index in the join; and where it is on the face of an end that is looked
 * at. */
const struct plan_point *chart_point(const struct plan *plan, const struct junction *junction,
                                     size_t index);
void chart_hole(const struct plan_point *point, const struct join_end *end, int64_t *ret_u,
                int64_t *ret_v);

/* The face of an end of a join: wood, bare patches, openings, and each of its holes with the
 * distances from the two edges of the hole map. */
void chart_end(struct flow *flow, const struct junction *junction, const struct join_end *end);

/* The drilling template of that end at full size, on as many pages as it takes. The join has a
 * hole. */
void chart_template(struct flow *flow, const struct junction *junction, const struct join_end *end);

#endif
