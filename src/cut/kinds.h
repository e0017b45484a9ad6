/*
 * Sheets for parts of few kinds, to the end: the least price of all patterns that are cut from edge
 * to edge.
 */
#ifndef CUT_KINDS_H
#define CUT_KINDS_H

#include "cut/trees.h"

struct kinds;

/* Begins with a job; NULL where some part fits nowhere, or where its parts make more sets than
 * would ever be gone through. */
struct kinds *kinds_begin(const struct sheet_job *job, struct arena *arena);

enum kinds_outcome { KINDS_GOING_ON, KINDS_DONE, KINDS_TOO_MANY };

/* Goes on for about this much work, which is added to *work. */
enum kinds_outcome kinds_step(struct kinds *kinds, int64_t work_most, int64_t *work);

/* Once that is done: the least price, INT64_MAX where the sheets do not take all parts. */
int64_t kinds_price(const struct kinds *kinds);

/* And a plan at that price, put into trees whose sheets are all empty; more are opened as they are
 * needed. */
void kinds_lay(struct kinds *kinds, struct trees *trees);

#endif
