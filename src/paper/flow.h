/*
 * A paper in the making: running text and pictures one below the other, either as plain text of 80
 * columns or on pages. What makes a paper does not ask which; text has pictures of characters.
 */
#ifndef PAPER_FLOW_H
#define PAPER_FLOW_H

#include "paper/page.h"
#include "plan/plan.h"

struct flow {
    struct text *text;   /* of a paper as text; else NULL */
    struct pages *pages; /* of a paper on pages; else NULL */
    const struct plan *plan;
    const char *title; /* of the pages that are begun */
    int64_t size;      /* of the letters of running text */
    int64_t y;         /* where the next line goes on the last page */
    bool fresh;        /* nothing stands on the last page yet */
    bool worded;       /* a line stands right above that place */
    bool holding;      /* the last page ends in headings, which belong to what comes: */
    size_t held;       /* its mark with which they begin, */
    int64_t held_y;    /* and where they do */
    bool priced;       /* money may be told */
};

/* Flows that append: to a text, and to pages. The title is a literal or lives in the arena. */
struct flow flow_of_text(struct text *text, const struct plan *plan);
struct flow flow_of_pages(struct pages *pages, const struct plan *plan, const char *title);

/* The next thing stands on a page of its own; in text nothing happens. */
void flow_break(struct flow *flow);

/*
 * Running text, line by line, those that are wider than a sheet on several. A page does not end
 * within a paragraph that has room on the next, nor in a heading: one that begins a paragraph at
 * the margin, or has lines set in deeper below it.
 */
void flow_words(struct flow *flow, const char *words);

/* Running text that stands over what comes next, words or a picture, on one page with it. */
void flow_heading(struct flow *flow, const char *words);

/*
 * Keeps a room of full width and a height for a picture, on a new page where this one has not as
 * much left, and gives that page. A height beyond what a page has below its heading is that.
 */
struct page *flow_room(struct flow *flow, int64_t height, struct page_box *ret_room);

/* As much height as there is on an empty page. */
int64_t flow_page_height(const struct flow *flow);

#endif
