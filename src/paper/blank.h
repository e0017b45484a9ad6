/* One stick, sheet or length of roll, as text sheets and pages both tell it. */
#ifndef PAPER_BLANK_H
#define PAPER_BLANK_H

#include "paper/sheets.h"

/* Its length; of a roll on offer, what is used of it. */
int64_t blank_length(const struct cut_sheet *sheet, const struct cut_blank *blank);

/* The lengths that a part takes along and across, as it lies. */
void blank_place_size(const struct cut_sheet *sheet, const struct cut_place *place,
                      int64_t *ret_length, int64_t *ret_width);

/* " (right)": parts of a mirrored pair are told apart. "" for others. */
const char *blank_hand(const struct cut_sheet *sheet, size_t part);

/* Its heading ("1  96 in x 48 in"), and the marks, parts and cuts without a picture. */
void blank_heading(struct text *out, const struct cut_sheet *sheet, size_t blank);
void blank_words(struct text *out, const struct cut_sheet *sheet, size_t blank);

/* A job's heading, where money may be told with its cost and whether that is proven the least. */
void blank_job_heading(struct text *out, const struct cut_sheet *sheet, bool priced);

#endif
