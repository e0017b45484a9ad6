/*
 * A job of sheets made ready for the search: kerfs on the parts and on the sheets, trims off, all
 * lengths divided by what they have in common.
 *
 * n parts side by side take n widths and n - 1 kerfs; so with a kerf more on each part and on the
 * sheet, both ways, parts may touch. For cuts from edge to edge that is exact.
 */
#ifndef CUT_SHEETJOB_H
#define CUT_SHEETJOB_H

#include "cut/layout.h"

#define SHEET_AREA_BITS 20

enum sheet_way { WAY_ALONG, WAY_ACROSS };

struct sheet_part {
    int32_t size[2]; /* by sheet_way, as it lies when it is not turned */
    int64_t area;
    bool may_turn;
    bool on_offer; /* a size of which any number can be had takes it: it must not be left out */
    bool fits;     /* some size takes it */
};

struct sheet_size {
    int32_t size[2];
    int64_t area;
    int64_t price;    /* what is made least: prices, or areas where nothing has a price */
    size_t limit;     /* at most so many can be of use */
    bool any, usable; /* as many as are wanted; some part fits */
};

struct sheet_job {
    const struct cut_job *job;
    struct sheet_part *parts;
    size_t part_count;
    struct sheet_size *sizes;
    size_t size_count;
    int64_t unit;     /* lengths are multiples of this */
    int area_shift;   /* areas of sheets shifted right by this stay below 2^SHEET_AREA_BITS */
    bool fair_prices; /* prices are those of the job */
};

/* All in `arena`. O(parts * sizes). */
void sheetjob_make(const struct cut_job *job, struct arena *arena, struct sheet_job *ret_job);

/* Whether a size takes a part, turned where it may be. */
bool sheetjob_fits(const struct sheet_size *size, const struct sheet_part *part);

/* Whether two parts can stand for each other. */
bool sheetjob_alike(const struct sheet_part *a, const struct sheet_part *b);

#endif
