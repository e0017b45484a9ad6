/*
 * Sheets for a handful of parts, to the end: the least price, and with it the fewest cuts of all
 * patterns that are cut from edge to edge.
 */
#ifndef CUT_FEW_H
#define CUT_FEW_H

#include "cut/trees.h"

#define FEW_PARTS 8

struct few;

/* Scratch for a job of up to FEW_PARTS parts. */
struct few *few_make(const struct sheet_job *job, struct arena *arena);

/*
 * Goes through all patterns. True: no plan of all parts has a lower price than *ret_price, and none
 * at that price takes fewer cuts than the one that is put into `trees`, whose sheets are all empty
 * before; more are opened as they are needed. False when about `work_most` of work or the scratch
 * is not enough, or when some part fits nowhere; `trees` are then left alone. Adds to *work.
 */
bool few_solve(struct few *few, struct trees *trees, int64_t work_most, int64_t *ret_price,
               int64_t *work);

#endif
