/* One blank: a stick, a sheet or a length of roll, as text sheets and pages both tell it. */
#ifndef PAPER_BLANK_H
#define PAPER_BLANK_H

#include "paper/sheets.h"
#include "plan/homeward.h"

/* Its length as it lies there; of a roll that is bought by length, what is used of it. */
int64_t blank_length(const struct cut_sheet *sheet, const struct cut_blank *blank);

/* Where a part begins along it. */
int64_t blank_along(const struct cut_sheet *sheet, const struct cut_blank *blank,
                    const struct cut_place *place);

/* The lengths that a part takes along and across, as it lies. */
void blank_place_size(const struct cut_sheet *sheet, const struct cut_place *place,
                      int64_t *ret_length, int64_t *ret_width);

/* " (right)": parts of a mirrored pair are told apart. "" for others. */
const char *blank_hand(const struct cut_sheet *sheet, size_t part);

/* Is a part one of those that the sheet names? */
bool blank_names_part(const struct cut_sheet *sheet, size_t part);

/* Where it comes from. */
const struct cut_source *blank_source(const struct cut_sheet *sheet, const struct cut_blank *blank);

/* Appends its heading ("1  96 in x 48 in"), and the marks, parts and cuts without a picture. */
void blank_heading(struct text *out, const struct cut_sheet *sheet, size_t blank);
void blank_words(struct text *out, const struct cut_sheet *sheet, size_t blank);

/* What the shop cuts first of a sheet that does not go into the vehicle whole, with words for it;
 * false, and both left alone, for any other blank, foam among them, which bends. */
bool blank_cut_for_home(const struct cut_sheet *sheet, size_t blank, struct homeward *ret_home,
                        char words[HOMEWARD_TEXT]);

/* Appends that as a line; nothing for any other blank. */
void blank_way_home(struct text *out, const struct cut_sheet *sheet, size_t blank);

/* Appends a job's heading; where money may be told (of a roll always) with its cost and whether
 * that is proven the least. */
void blank_job_heading(struct text *out, const struct cut_sheet *sheet, bool priced);

#endif
