/* Papers of a plan into a file: which, how, where to. The terminal and the command share it. */
#ifndef PAPER_PRESS_H
#define PAPER_PRESS_H

#include "base/fault.h"
#include "desk/trip.h"
#include "paper/papers.h"

struct press {
    const char *papers; /* names with commas between; "booklet": all that another maker needs, and
                           no money; NULL: all papers */
    const char *format; /* of pages, as page_formats; NULL: by the build's units */
    const char *path;   /* its ending says what is made: .pdf, .svg or .txt */
    bool replace;       /* a file that is there may go */
    bool unpriced;      /* no money on any paper */
    const char *date;   /* on every page: "2026-11-25" */
};

struct pressed {
    size_t pages;        /* 0 of a text */
    long unknown_glyphs; /* characters that came out as empty frames */
};

/* Appends the papers as text of 80 columns. Faults: USAGE (no such paper), MEMORY. */
enum fault press_text(const struct press *press, const struct plan *plan, struct text *out,
                      struct fault_note *note);

/*
 * Makes the whole file in memory and then delivers it (base/deliver.h). Faults: USAGE (no such
 * paper, format or ending), DUPLICATE (the file is there), REFUSED (there is no PDF), MEMORY, FULL,
 * IO.
 */
enum fault press_file(const struct press *press, const struct plan *plan,
                      struct pressed *ret_pressed, struct fault_note *note);

/*
 * The same for the list of a trip, which has a build at least, and what is cut together for it: one
 * paper of its own, so that `papers` and `unpriced` are not asked.
 */
enum fault press_trip(const struct press *press, const struct trip *trip,
                      struct pressed *ret_pressed, struct fault_note *note);

#endif
